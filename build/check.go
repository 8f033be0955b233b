package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// forbidden are packages that are too large for the WebAssembly: the smallest
// adds 24 KB to the download, the largest 640.
var forbidden = []string{"encoding/json", "regexp", "net/url", "html", "text/template", "html/template", "embed"}

// scriptLines is how long a script of ours may be.
const scriptLines = 150

var errCheck = errors.New("check: something above needs fixing")

// check looks at what no test looks at, says what it found, and returns an
// error if any of it must be fixed. Sizes are only told.
func check(out io.Writer) error {
	failed := false
	for _, c := range []struct {
		name string
		find func() (complaints []string, err error)
	}{
		{"format", format},
		{"vet, this machine", func() ([]string, error) { return vet(false, "./...") }},
		{"vet, browser tests", func() ([]string, error) { return vet(false, "-tags", "browser", "./build/browser") }},
		{"vet, WebAssembly", func() ([]string, error) { return vet(true, "./calc/...", "./wasm") }},
		{"imports of the WebAssembly", imports},
		{"length of scripts", scripts},
	} {
		complaints, err := c.find()
		if err != nil {
			complaints = append(complaints, err.Error())
		}
		if len(complaints) == 0 {
			fmt.Fprintf(out, "ok    %s\n", c.name)
			continue
		}
		failed = true
		fmt.Fprintf(out, "FAIL  %s\n", c.name)
		for _, complaint := range complaints {
			fmt.Fprintf(out, "      %s\n", strings.ReplaceAll(complaint, "\n", "\n      "))
		}
	}
	if err := sizes(out); err != nil {
		return err
	}
	if failed {
		return errCheck
	}
	return nil
}

// format names the Go files that gofmt would change.
func format() ([]string, error) {
	said, err := exec.Command("gofmt", "-l", ".").CombinedOutput()
	var complaints []string
	for file := range strings.FieldsSeq(string(said)) {
		complaints = append(complaints, file+": run gofmt -w on it")
	}
	return complaints, err
}

func vet(browser bool, args ...string) ([]string, error) {
	_, err := goTool(".", browser, append([]string{"vet"}, args...)...)
	return nil, err
}

// imports names the forbidden packages that the WebAssembly holds.
func imports() ([]string, error) {
	list, err := goTool(".", true, "list", "-deps", "./wasm")
	if err != nil {
		return nil, err
	}
	var complaints []string
	for name := range strings.FieldsSeq(list) {
		if slices.Contains(forbidden, name) {
			complaints = append(complaints, name+" makes the download too large; to see who imports it: GOOS=js GOARCH=wasm go list -deps -f '{{.ImportPath}}: {{.Imports}}' ./wasm")
		}
	}
	return complaints, nil
}

// scripts names the scripts that are too long.
func scripts() ([]string, error) {
	var complaints []string
	err := filepath.WalkDir("site", func(file string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(file) != ".js" {
			return err
		}
		text, err := os.ReadFile(file)
		if n := bytes.Count(text, []byte("\n")); n > scriptLines {
			complaints = append(complaints, fmt.Sprintf("%s: %d lines, more than %d", file, n, scriptLines))
		}
		return err
	})
	return complaints, err
}
