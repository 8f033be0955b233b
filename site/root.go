package site

import (
	"encoding/json"
	"maps"
	"path"
	"slices"
	"strconv"
	"strings"
)

// notFound is the page that a host shows for an address that is none.
const notFound = "404.html"

// addRoot adds what must lie at the site's top: the script that keeps the site
// for use without a network, and what a device needs to install it.
func addRoot(out map[string][]byte) error {
	manifest, err := json.Marshal(map[string]any{
		"name": "Plainlift", "short_name": "Plainlift", "start_url": "./", "scope": "./", "display": "standalone",
		"description":      "What a pressure reading on a tractor really means.",
		"background_color": "#faf6ec", "theme_color": "#faf6ec",
		"icons": []map[string]string{
			{"src": "icon.svg", "type": "image/svg+xml", "sizes": "any"},
			{"src": "icon-192.png", "type": "image/png", "sizes": "192x192"},
			{"src": "icon-512.png", "type": "image/png", "sizes": "512x512"},
		},
	})
	if err != nil {
		return err
	}
	out["manifest.webmanifest"] = manifest
	for _, size := range []int{192, 512} {
		if out["icon-"+strconv.Itoa(size)+".png"], err = icon(size); err != nil {
			return err
		}
	}
	entries, err := files.ReadDir("root")
	if err != nil {
		return err
	}
	for _, e := range entries {
		if out[e.Name()], err = files.ReadFile(path.Join("root", e.Name())); err != nil {
			return err
		}
	}
	var kept []string
	for _, name := range slices.Sorted(maps.Keys(out)) {
		// A page that frames one of ours is not there without a signal.
		if name != "sw.js" && name != notFound && !isFramed(name) {
			kept = append(kept, strings.TrimSuffix(name, "index.html"))
		}
	}
	list, err := json.Marshal(kept)
	if err != nil {
		return err
	}
	head := "const VERSION = \"" + version(out) + "\";\nconst FILES = " + strings.ReplaceAll(string(list), `""`, `"./"`) + ";\n\n"
	out["sw.js"] = append([]byte(head), out["sw.js"]...)
	return nil
}
