// Package host serves a folder as a plain static host does: the right types,
// compressed where the browser accepts it, nothing special in the headers.
package host

import (
	"io/fs"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"
)

// types are the media types of what the site writes. The machine's own table
// is not asked: it differs from one to the next.
var types = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".ico":         "image/x-icon",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".txt":         "text/plain; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".xml":         "application/xml",
}

// Handler serves dir. Quality is brotli's, 0 to 11; 11 is what a careful static
// host has ready, and takes seconds for the first request of a large file.
func Handler(dir string, quality int) http.Handler {
	return &handler{dir: dir, packed: newPacked(quality)}
}

type handler struct {
	dir    string
	packed *packed
}

func (h *handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
		return
	}
	name, info, err := h.find(r.URL.Path)
	switch {
	case err != nil:
		h.missing(w)
		return
	case info.IsDir():
		// Relative, so that the site may stand below any folder of a proxy.
		w.Header().Set("Location", path.Base(r.URL.Path)+"/")
		w.WriteHeader(http.StatusMovedPermanently)
		return
	}
	head := w.Header()
	head.Set("Content-Type", kind(name))
	head.Set("Cache-Control", "no-cache")
	head.Set("Vary", "Accept-Encoding")
	body, encoding, err := h.packed.read(name, info, accepted(r))
	if err != nil {
		http.Error(w, "the file cannot be read", http.StatusInternalServerError)
		return
	}
	if encoding != "" {
		head.Set("Content-Encoding", encoding)
	}
	head.Set("ETag", tag(info, encoding))
	http.ServeContent(w, r, "", time.Time{}, strings.NewReader(body))
}

// find returns the file behind a path of the site: a path that ends in a slash
// is its index.html. For a folder without the slash it returns the folder.
func (h *handler) find(url string) (string, os.FileInfo, error) {
	p := path.Clean("/" + url)[1:]
	if strings.HasSuffix(url, "/") {
		p = path.Join(p, "index.html")
	}
	for part := range strings.SplitSeq(p, "/") {
		if strings.HasPrefix(part, ".") {
			return "", nil, fs.ErrNotExist
		}
	}
	name := filepath.Join(h.dir, filepath.FromSlash(p))
	info, err := os.Stat(name)
	return name, info, err
}

// missing answers with the site's own page where it has one.
func (h *handler) missing(w http.ResponseWriter) {
	page, err := os.ReadFile(filepath.Join(h.dir, "404.html"))
	if err != nil {
		http.Error(w, "no such page", http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", types[".html"])
	w.WriteHeader(http.StatusNotFound)
	w.Write(page)
}

func kind(name string) string {
	if t, ok := types[filepath.Ext(name)]; ok {
		return t
	}
	return "application/octet-stream"
}
