package site

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"path"
	"regexp"
	"slices"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	"github.com/tdewolff/minify/v2/js"
)

// The scripts that most pages start; a page of its own kind starts the one of
// its name, and the others are their modules.
const (
	wordsScript = "page.js"
	sheetScript = "sheet.js"
	embedScript = "embed.js"
)

// assets are the files that every page loads.
type assets struct {
	files  map[string][]byte // by name
	folder string            // "assets/0123456789ab/"
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
		data, err := files.ReadFile(path.Join("assets", e.Name()))
		if err != nil {
			return nil, err
		}
		if a.files[e.Name()], err = short(e.Name(), data); err != nil {
			return nil, fmt.Errorf("site/assets/%s: %w", e.Name(), err)
		}
	}
	a.folder = "assets/" + version(a.files) + "/"
	return a, nil
}

var importLine = regexp.MustCompile(`\bimport\b[^"(]*"\./([^"]+)"`)

// imports returns what a script imports from its first line on, itself left out:
// what is imported later, when it is needed, is not among it.
func (a *assets) imports(script string) []string {
	found := []string{script}
	for i := 0; i < len(found); i++ {
		for _, m := range importLine.FindAllSubmatch(a.files[found[i]], -1) {
			if name := string(m[1]); !slices.Contains(found, name) {
				found = append(found, name)
			}
		}
	}
	slices.Sort(found[1:])
	return found[1:]
}

// short returns a script or style without what only its authors need.
func short(name string, data []byte) ([]byte, error) {
	m := minify.New()
	m.AddFunc(".css", css.Minify)
	m.AddFunc(".js", js.Minify)
	return m.Bytes(path.Ext(name), data)
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
