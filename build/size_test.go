package main

import (
	"bytes"
	"slices"
	"testing"
)

func TestLoads(t *testing.T) {
	files := map[string][]byte{
		"reading/index.html": []byte(`<link rel=stylesheet href="../assets/style.css"><link rel="icon" href="../assets/icon.svg">
<script type="module" src="../assets/page.js"></script><link rel=modulepreload href=../assets/a.js><a href="../assets/not.js">no</a>`),
		"assets/style.css": nil,
		"assets/icon.svg":  nil,
		"assets/page.js":   []byte("import { a } from \"./a.js\";\nimport {\n b,\n} from './b.js'; new Worker(\"./worker.js\")"),
		"assets/a.js":      []byte(`export * from "./b.js"; import "./page.js"; import x from "https://elsewhere.example/x.js"`),
		"assets/b.js":      nil,
		"assets/not.js":    nil,
		"assets/worker.js": nil,
	}
	got := loads(files, "reading/index.html")
	slices.Sort(got)
	want := []string{"assets/a.js", "assets/b.js", "assets/page.js", "assets/style.css"}
	if !slices.Equal(got, want) {
		t.Errorf("loads %v, want %v", got, want)
	}
}

func TestLine(t *testing.T) {
	for _, test := range []struct {
		size, budget int
		want         string
	}{
		{612_345, 600_000, "  wasm                             612.3 KB  of 600 KB  OVER by 12.3 KB\n"},
		{600_000, 600_000, "  wasm                             600.0 KB  of 600 KB\n"},
		{1, 0, "  wasm                               0.0 KB\n"},
	} {
		var b bytes.Buffer
		if line(&b, "wasm", test.size, test.budget); b.String() != test.want {
			t.Errorf("got %q, want %q", b.String(), test.want)
		}
	}
}
