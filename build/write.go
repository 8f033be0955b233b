package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"sort"
	"strings"
)

const (
	// record lists, one path a line, what builds wrote into a folder. Only such
	// files are ever replaced or removed.
	record = ".written"
	// unfinished ends the name of a file that is being written.
	unfinished = ".new"
)

// write makes dir hold files, and nothing else. Each file is replaced in one step, pages after what they load, so that
// a server may go on serving dir. A folder with files that no build wrote is
// refused.
func write(dir string, files map[string][]byte) error {
	for name := range files {
		if !fs.ValidPath(name) || name == record || strings.HasSuffix(name, unfinished) {
			return fmt.Errorf("build: the site has a file of a bad name: %q", name)
		}
	}
	old, err := recorded(dir)
	if err != nil {
		return err
	}
	if err := refuseForeign(dir, old); err != nil {
		return err
	}
	for _, name := range append(old, record) {
		if err := remove(dir, name+unfinished); err != nil {
			return err
		}
	}
	var names []string
	for name := range files {
		names = append(names, name)
	}
	sort.Slice(names, func(i, j int) bool {
		if a, b := isPage(names[i]), isPage(names[j]); a != b {
			return b
		}
		return names[i] < names[j]
	})
	// The record comes first and names old and new, so that a build that was
	// cut short leaves nothing behind that the next one does not know.
	if err := setRecord(dir, append(slices.Clone(names), old...)); err != nil {
		return err
	}
	for _, name := range names {
		if err := replace(filepath.Join(dir, filepath.FromSlash(name)), files[name]); err != nil {
			return err
		}
	}
	for _, name := range old {
		if slices.Contains(names, name) {
			continue
		}
		if err := remove(dir, name); err != nil {
			return err
		}
	}
	return setRecord(dir, names)
}

func isPage(name string) bool { return path.Ext(name) == ".html" }

// recorded reads which files earlier builds wrote into dir.
func recorded(dir string) ([]string, error) {
	text, err := os.ReadFile(filepath.Join(dir, record))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	names := strings.Fields(string(text))
	for _, name := range names {
		if !fs.ValidPath(name) {
			return nil, fmt.Errorf("build: %s names a file outside the folder: %q; remove the folder and build again", filepath.Join(dir, record), name)
		}
	}
	return names, nil
}

func setRecord(dir string, names []string) error {
	names = slices.Clone(names)
	slices.Sort(names)
	names = slices.Compact(names)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	return replace(filepath.Join(dir, record), []byte(strings.Join(names, "\n")+"\n"))
}

// refuseForeign complains about files in dir that no build wrote.
func refuseForeign(dir string, ours []string) error {
	known := map[string]bool{record: true, record + unfinished: true}
	for _, name := range ours {
		known[name], known[name+unfinished] = true, true
	}
	var foreign []string
	err := filepath.WalkDir(dir, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(dir, file)
		if err == nil && !known[filepath.ToSlash(name)] {
			foreign = append(foreign, filepath.ToSlash(name))
		}
		return err
	})
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case len(foreign) == 0:
		return nil
	}
	more := ""
	if n := len(foreign) - 3; n > 0 {
		foreign, more = foreign[:3], fmt.Sprintf(" and %d more", n)
	}
	return fmt.Errorf("build: %s holds files that no build wrote (%s%s), so nothing was written; choose another folder or move them", dir, strings.Join(foreign, ", "), more)
}

// replace writes a file in one step, and not at all when it would not change.
func replace(file string, data []byte) error {
	if now, err := os.ReadFile(file); err == nil && bytes.Equal(now, data) {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(file+unfinished, data, 0o644); err != nil {
		return err
	}
	return os.Rename(file+unfinished, file)
}

// remove removes a file, if it is there, and the folders that this empties.
func remove(dir, name string) error {
	err := os.Remove(filepath.Join(dir, filepath.FromSlash(name)))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	for parent := path.Dir(name); parent != "."; parent = path.Dir(parent) {
		if os.Remove(filepath.Join(dir, filepath.FromSlash(parent))) != nil {
			break // not empty
		}
	}
	return nil
}
