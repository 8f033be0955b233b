package host

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
)

// folder writes files into a new folder.
func folder(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		file := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func get(h http.Handler, url string, headers ...string) *http.Response {
	r := httptest.NewRequest("GET", url, nil)
	for i := 0; i < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func TestPathsAndTypes(t *testing.T) {
	h := Handler(folder(t, map[string]string{
		"index.html":         "home",
		"404.html":           "lost",
		"reading/index.html": "reading",
		"assets/a.wasm":      "\x00asm",
		"assets/a.js":        "js",
		"assets/a.css":       "css",
		"assets/a.svg":       "svg",
		".hidden":            "hidden",
		"a.strange":          "strange",
	}), 5)
	for _, test := range []struct {
		url, kind, body, location string
		status                    int
	}{
		{"/", "text/html; charset=utf-8", "home", "", 200},
		{"/index.html", "text/html; charset=utf-8", "home", "", 200},
		{"/reading/", "text/html; charset=utf-8", "reading", "", 200},
		{"/reading", "", "", "reading/", 301},
		{"/assets/a.wasm", "application/wasm", "\x00asm", "", 200},
		{"/assets/a.js", "text/javascript; charset=utf-8", "js", "", 200},
		{"/assets/a.css", "text/css; charset=utf-8", "css", "", 200},
		{"/assets/a.svg", "image/svg+xml", "svg", "", 200},
		{"/a.strange", "application/octet-stream", "strange", "", 200},
		{"/.hidden", "text/html; charset=utf-8", "lost", "", 404},
		{"/none/", "text/html; charset=utf-8", "lost", "", 404},
		{"/assets/", "text/html; charset=utf-8", "lost", "", 404},
		{"/../../etc/passwd", "text/html; charset=utf-8", "lost", "", 404},
	} {
		r := get(h, test.url)
		body, _ := io.ReadAll(r.Body)
		if r.StatusCode != test.status || r.Header.Get("Content-Type") != test.kind || string(body) != test.body || r.Header.Get("Location") != test.location {
			t.Errorf("%s: %d, type %q, body %q, location %q", test.url, r.StatusCode, r.Header.Get("Content-Type"), body, r.Header.Get("Location"))
		}
	}
}

func TestOnlyReads(t *testing.T) {
	w := httptest.NewRecorder()
	Handler(t.TempDir(), 5).ServeHTTP(w, httptest.NewRequest("POST", "/", nil))
	if w.Code != http.StatusMethodNotAllowed {
		t.Errorf("POST: %d", w.Code)
	}
}

func TestCompression(t *testing.T) {
	text := strings.Repeat("what a pressure reading really means\n", 100)
	h := Handler(folder(t, map[string]string{"a.js": text, "a.png": text, "small.js": "x"}), 5)
	for _, test := range []struct{ url, accept, want string }{
		{"/a.js", "", ""},
		{"/a.js", "gzip, deflate, br, zstd", "br"},
		{"/a.js", "gzip;q=1.0, br;q=0", "gzip"},
		{"/a.js", "GZIP", "gzip"},
		{"/a.js", "deflate", ""},
		{"/a.png", "gzip, br", ""},
		{"/small.js", "gzip, br", ""},
	} {
		r := get(h, test.url, "Accept-Encoding", test.accept)
		if got := r.Header.Get("Content-Encoding"); got != test.want {
			t.Errorf("%s for %q: encoding %q, want %q", test.url, test.accept, got, test.want)
		}
		if r.Header.Get("Vary") != "Accept-Encoding" {
			t.Errorf("%s: a cache must know that the form varies", test.url)
		}
		if test.url != "/a.js" {
			continue
		}
		var plain io.Reader = r.Body
		switch test.want {
		case "br":
			plain = brotli.NewReader(r.Body)
		case "gzip":
			var err error
			if plain, err = gzip.NewReader(r.Body); err != nil {
				t.Fatal(err)
			}
		}
		if body, err := io.ReadAll(plain); err != nil || string(body) != text {
			t.Errorf("%s for %q: %v, %d bytes", test.url, test.accept, err, len(body))
		}
	}
}

// A browser that has the page asks whether it changed; after an edit it must
// get the new one, in every form.
func TestChange(t *testing.T) {
	dir := folder(t, map[string]string{"a.js": strings.Repeat("old ", 500)})
	h := Handler(dir, 5)
	first := get(h, "/a.js", "Accept-Encoding", "br")
	tag := first.Header.Get("ETag")
	if r := get(h, "/a.js", "Accept-Encoding", "br", "If-None-Match", tag); r.StatusCode != http.StatusNotModified {
		t.Errorf("unchanged file: %d", r.StatusCode)
	}
	if err := os.WriteFile(filepath.Join(dir, "a.js"), bytes.Repeat([]byte("newer "), 500), 0o644); err != nil {
		t.Fatal(err)
	}
	r := get(h, "/a.js", "Accept-Encoding", "br", "If-None-Match", tag)
	body, err := io.ReadAll(brotli.NewReader(r.Body))
	if r.StatusCode != 200 || err != nil || !bytes.HasPrefix(body, []byte("newer")) {
		t.Errorf("changed file: %d, %v, %.20s", r.StatusCode, err, body)
	}
}
