package main

import (
	"fmt"
	"io"
	"os"
	"path"
	"regexp"
	"sort"

	"plainlift/build/host"
	"plainlift/calc/worksheets"
	"plainlift/site"
)

// Budgets in bytes, as they travel.
const (
	wasmBrotli = 600_000
	wasmGzip   = 780_000
	pageBrotli = 30_000
)

// sizes prints what the site weighs beside what it may weigh.
func sizes(out io.Writer) error {
	compiled, err := calculator(".")
	if err != nil {
		return err
	}
	wasm := compiled[wasmFile]
	files, err := site.Render(os.DirFS("content"), worksheets.All, nil, "")
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "\nWebAssembly\n")
	line(out, "as it is", len(wasm), 0)
	line(out, "gzip 9", len(host.Gzip(wasm, 9)), wasmGzip)
	line(out, "brotli 11", len(host.Brotli(wasm, 11)), wasmBrotli)

	fmt.Fprintf(out, "\nPages with their styles and scripts, brotli 11\n")
	packed := map[string]int{}
	for name, data := range files {
		packed[name] = len(host.Brotli(data, 11))
	}
	var names []string
	for name := range files {
		if isPage(name) {
			names = append(names, name)
		}
	}
	sort.Strings(names)
	for _, name := range names {
		total := packed[name]
		for _, needed := range loads(files, name) {
			total += packed[needed]
		}
		line(out, name, total, pageBrotli)
	}
	return nil
}

// line prints one size; a budget of 0 is none.
func line(out io.Writer, name string, size, budget int) {
	fmt.Fprintf(out, "  %-28s %9.1f KB", name, float64(size)/1000)
	switch {
	case budget > 0 && size > budget:
		fmt.Fprintf(out, "  of %d KB  OVER by %.1f KB", budget/1000, float64(size-budget)/1000)
	case budget > 0:
		fmt.Fprintf(out, "  of %d KB", budget/1000)
	}
	fmt.Fprintln(out)
}

// reference finds what a page's tags and a script's import lines load. The
// worker and its WebAssembly are started by the script and are not among them.
var reference = regexp.MustCompile(`<(?:link|script)\b[^>]*\b(?:href|src)="?([^"\s>]+)|\b(?:import|export)\b[^"';(]*["'](\.[^"']+)["']`)

// loads returns the styles and scripts of the site that a page loads, those
// that its scripts import included, each once.
func loads(files map[string][]byte, page string) []string {
	seen := map[string]bool{page: true}
	var found []string
	todo := []string{page}
	for len(todo) > 0 {
		from := todo[0]
		todo = todo[1:]
		for _, m := range reference.FindAllSubmatch(files[from], -1) {
			name := path.Join(path.Dir(from), string(m[1])+string(m[2]))
			ext := path.Ext(name)
			if _, ours := files[name]; ours && !seen[name] && (ext == ".css" || ext == ".js") {
				seen[name] = true
				found = append(found, name)
				todo = append(todo, name)
			}
		}
	}
	return found
}
