package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// change is how much has to be built after a change; a greater one includes the
// smaller.
type change int

const (
	nothing    change = iota
	pages             // content only
	program           // the program that writes the pages
	everything        // that, and the calculator in WebAssembly
)

// sources are the folders and files that the site is made from.
var sources = map[string]change{
	"content": pages,
	"site":    program,
	"build":   program,
	"calc":    everything,
	"wasm":    everything,
	"go.mod":  everything,
}

// stamps is what the sources looked like at one moment.
type stamps map[string]stamp

type stamp struct {
	time time.Time
	size int64
	kind change
}

// look reads the stamps of every source file below root. A file that goes away
// meanwhile is left out.
func look(root string) stamps {
	found := stamps{}
	for source, kind := range sources {
		filepath.WalkDir(filepath.Join(root, source), func(file string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return nil
			case d.IsDir() && (strings.HasPrefix(d.Name(), "_") || d.Name() == "testdata"):
				return filepath.SkipDir
			case d.IsDir() || strings.HasPrefix(d.Name(), ".") || strings.HasSuffix(file, "_test.go"):
				return nil
			}
			if info, err := os.Stat(file); err == nil {
				found[file] = stamp{info.ModTime(), info.Size(), kind}
			}
			return nil
		})
	}
	return found
}

// changed says what has to be built when s became now.
func (s stamps) changed(now stamps) change {
	what := nothing
	for file, stamp := range now {
		if s[file] != stamp {
			what = max(what, stamp.kind)
		}
	}
	for file, stamp := range s {
		if _, ok := now[file]; !ok {
			what = max(what, stamp.kind)
		}
	}
	return what
}
