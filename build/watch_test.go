package main

import (
	"os"
	"path/filepath"
	"testing"
)

func TestWatch(t *testing.T) {
	root := t.TempDir()
	put := func(name, text string) {
		t.Helper()
		file := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"content/a.md", "site/site.go", "calc/calc.go", "calc/unit/unit.go", "wasm/main.go", "go.mod"} {
		put(name, "1")
	}
	for _, test := range []struct {
		name string // is written, or removed when it starts with "-"
		want change
	}{
		{"README.md", nothing},
		{"build/_site/index.html", nothing},
		{"calc/calc_test.go", nothing},
		{"calc/testdata/a.txt", nothing},
		{"content/.a.md.swp", nothing},
		{"content/a.md", pages},
		{"content/new/b.md", pages},
		{"-content/new/b.md", pages},
		{"site/assets/page.js", program},
		{"site/templates/base.html", program},
		{"build/main.go", program},
		{"calc/unit/unit.go", everything},
		{"wasm/main.go", everything},
		{"go.mod", everything},
		{"-calc/calc.go", everything},
	} {
		before := look(root)
		if got := before.changed(look(root)); got != nothing {
			t.Fatalf("before %s: a change where there was none", test.name)
		}
		if test.name[0] == '-' {
			if err := os.Remove(filepath.Join(root, filepath.FromSlash(test.name[1:]))); err != nil {
				t.Fatal(err)
			}
		} else {
			put(test.name, "another size")
		}
		if got := before.changed(look(root)); got != test.want {
			t.Errorf("%s: %d, want %d", test.name, got, test.want)
		}
	}
}
