package site

import (
	"crypto/sha256"
	"encoding/hex"
	"maps"
	"path"
	"slices"
)

const (
	script = "page.js"   // the script that a page starts; the others are its modules
	worker = "worker.js" // what the scripts start, not a module of theirs
)

// assets are the files that every page loads.
type assets struct {
	files   map[string][]byte // by name
	folder  string            // "assets/0123456789ab/"
	scripts []string          // the modules beside page.js
}

// readAssets puts the page's own files and the compiled ones together.
func readAssets(compiled map[string][]byte) (*assets, error) {
	a := &assets{files: maps.Clone(compiled)}
	if a.files == nil {
		a.files = map[string][]byte{}
	}
	entries, err := files.ReadDir("assets")
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		if a.files[e.Name()], err = files.ReadFile(path.Join("assets", e.Name())); err != nil {
			return nil, err
		}
		if path.Ext(e.Name()) == ".js" && e.Name() != script && e.Name() != worker {
			a.scripts = append(a.scripts, e.Name())
		}
	}
	a.folder = "assets/" + version(a.files) + "/"
	return a, nil
}

// version is short for what all these files hold and are called.
func version(files map[string][]byte) string {
	sum := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		one := sha256.Sum256(files[name])
		sum.Write([]byte(name))
		sum.Write(one[:])
	}
	return hex.EncodeToString(sum.Sum(nil))[:12]
}
