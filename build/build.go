package main

import (
	"errors"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"

	"plainlift/calc/worksheets"
	"plainlift/site"
)

// The files of the site that are compiled or copied, not rendered.
const (
	wasmFile = "plainlift.wasm"
	execFile = "wasm_exec.js"
)

// build writes the site of the project at root into dir, for an address where it
// will stand if that is known.
func build(root, dir, address string, pagesOnly bool) error {
	compiled, err := written(dir)
	if err != nil {
		return err
	}
	if !pagesOnly || len(compiled) < 2 {
		if compiled, err = calculator(root); err != nil {
			return err
		}
	}
	files, err := site.Render(os.DirFS(filepath.Join(root, "content")), worksheets.All, compiled, address)
	if err != nil {
		return err
	}
	return write(dir, files)
}

// written returns the compiled files that an earlier build left in dir.
func written(dir string) (map[string][]byte, error) {
	names, err := recorded(dir)
	compiled := map[string][]byte{}
	for _, name := range names {
		if base := path.Base(name); base == wasmFile || base == execFile {
			if data, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name))); err == nil {
				compiled[base] = data
			}
		}
	}
	return compiled, err
}

// calculator returns the compiled files, newly made.
func calculator(root string) (map[string][]byte, error) {
	wasm, err := compile(root)
	if err != nil {
		return nil, err
	}
	exec, err := wasmExec()
	return map[string][]byte{wasmFile: wasm, execFile: exec}, err
}

// inlined are the packages in which the calculator's calls are written out in
// place. That is longer, and pays in the trials, the distributions and the arcs,
// which run up to twice as fast. Everywhere else calls stay calls: an answer takes up to a
// millisecond more, a keystroke in a browser no longer that can be measured, and
// the download is 110 KB less.
var inlined = []string{
	"plainlift/calc/doubt", "plainlift/calc/linkage", "math/...", "internal/chacha8rand",
}

// compile returns the calculator as WebAssembly, without symbol table and
// debugging data. Its error holds what the compiler said.
func compile(root string) ([]byte, error) {
	tmp, err := os.MkdirTemp("", "plainlift-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(tmp)
	file := filepath.Join(tmp, "plainlift.wasm")
	args := []string{"build", "-trimpath", "-ldflags=-s -w", "-gcflags=all=-l"}
	for _, path := range inlined {
		args = append(args, "-gcflags="+path+"=")
	}
	if _, err := goTool(root, true, append(args, "-o", file, "./wasm")...); err != nil {
		return nil, err
	}
	return os.ReadFile(file)
}

// wasmExec returns the script that Go ships to start its WebAssembly. It must be
// of the same release as the compiler.
func wasmExec() ([]byte, error) {
	root, err := goTool(".", false, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(root, "lib", "wasm", "wasm_exec.js"))
}

// goTool runs the go command in root, for the browser or for this machine, and
// returns what it printed. Its error is what it complained.
func goTool(root string, browser bool, args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	if browser {
		cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	}
	var complaint strings.Builder
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	text := strings.TrimSpace(string(out))
	if err == nil {
		return text, nil
	}
	if said := strings.TrimSpace(complaint.String()); said != "" {
		return text, errors.New(said)
	}
	return text, err
}
