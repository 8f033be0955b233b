package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// tree reads a folder, the record left out.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	found := map[string]string{}
	err := filepath.WalkDir(dir, func(file string, d fs.DirEntry, err error) error {
		if err != nil || file == dir || d.Name() == record {
			return err
		}
		name, _ := filepath.Rel(dir, file)
		if d.IsDir() {
			found[filepath.ToSlash(name)+"/"] = ""
			return nil
		}
		data, err := os.ReadFile(file)
		found[filepath.ToSlash(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func wantTree(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	got := tree(t, dir)
	for name, text := range want {
		if g, ok := got[name]; !ok || g != text {
			t.Errorf("%s: got %q (there: %v), want %q", name, g, ok, text)
		}
	}
	for name := range got {
		if _, ok := want[name]; !ok {
			t.Errorf("%s should not be there", name)
		}
	}
}

func mustWrite(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	data := map[string][]byte{}
	for name, text := range files {
		data[name] = []byte(text)
	}
	if err := write(dir, data); err != nil {
		t.Fatal(err)
	}
}

func TestWriteReplacesAndRemoves(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "not", "there", "yet")
	mustWrite(t, dir, map[string]string{"index.html": "1", "old/deep/index.html": "old", "assets/a.js": "a"})
	wantTree(t, dir, map[string]string{"index.html": "1", "old/": "", "old/deep/": "", "old/deep/index.html": "old", "assets/": "", "assets/a.js": "a"})

	mustWrite(t, dir, map[string]string{"index.html": "2"})
	wantTree(t, dir, map[string]string{"index.html": "2"})
}

// A file that does not change keeps its time, and so its place in caches.
func TestWriteLeavesUnchanged(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, map[string]string{"index.html": "1"})
	before, err := os.Stat(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, map[string]string{"index.html": "1", "b.html": "2"})
	after, err := os.Stat(filepath.Join(dir, "index.html"))
	if err != nil || !os.SameFile(before, after) || before.ModTime() != after.ModTime() {
		t.Errorf("an unchanged file was written again (%v)", err)
	}
}

func TestWriteRefusesForeignFolder(t *testing.T) {
	dir := t.TempDir()
	mine := filepath.Join(dir, "mine.txt")
	if err := os.WriteFile(mine, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	err := write(dir, map[string][]byte{"index.html": []byte("1")})
	if err == nil || !strings.Contains(err.Error(), "mine.txt") {
		t.Errorf("error %v does not name the file", err)
	}
	wantTree(t, dir, map[string]string{"mine.txt": "mine"})

	// The same after a build has been there.
	if err := os.Remove(mine); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, map[string]string{"index.html": "1"})
	if err := os.WriteFile(mine, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := write(dir, map[string][]byte{"index.html": []byte("2")}); err == nil {
		t.Error("a foreign file among ours was not refused")
	}
	wantTree(t, dir, map[string]string{"index.html": "1", "mine.txt": "mine"})
}

// A link out of the folder is a foreign file, never followed.
func TestWriteRefusesLink(t *testing.T) {
	outside := t.TempDir()
	dir := t.TempDir()
	if err := os.Symlink(outside, filepath.Join(dir, "assets")); err != nil {
		t.Fatal(err)
	}
	if err := write(dir, map[string][]byte{"assets/a.js": []byte("a")}); err == nil {
		t.Error("wrote through a link")
	}
	wantTree(t, outside, map[string]string{})
}

// A record can't make a build remove what lies outside.
func TestWriteRefusesBadNames(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"../a", "/a", "a/../b", record, "a" + unfinished, ""} {
		if err := write(dir, map[string][]byte{name: nil}); err == nil {
			t.Errorf("%q was written", name)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, record), []byte("index.html\n../victim\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := write(dir, map[string][]byte{"index.html": nil}); err == nil {
		t.Error("a record that names a file outside was believed")
	}
}

// What a build that was cut short left behind does not stop the next one.
func TestWriteAfterInterruption(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, map[string]string{"index.html": "1", "same.html": "same", "gone/index.html": "x"})
	for _, name := range []string{"index.html", "same.html", "gone/index.html", record} {
		if err := os.WriteFile(filepath.Join(dir, filepath.FromSlash(name)+unfinished), []byte("half"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	mustWrite(t, dir, map[string]string{"index.html": "2", "same.html": "same"})
	wantTree(t, dir, map[string]string{"index.html": "2", "same.html": "same"})
}
