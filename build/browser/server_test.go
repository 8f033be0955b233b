//go:build browser

package browser

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"sync"
	"testing"

	"plainlift/build/host"
)

// folder is where on its host the site stands. It works from any.
const folder = "/sheds/lift/"

// siteHost packs every file once for all servers.
var siteHost = sync.OnceValue(func() http.Handler { return http.StripPrefix(folder[:len(folder)-1], host.Handler(siteDir, 5)) })

// version is the name of the folder whose files are of one build.
var version = regexp.MustCompile(`^assets/[0-9a-f]{12}/`)

// server serves the site and can be told to misbehave.
type server struct {
	*httptest.Server
	mu    sync.Mutex
	site  http.Handler                // what answers otherwise
	odd   map[string]http.HandlerFunc // path below the folder, without the version: what answers instead
	asked []string                    // paths, in order
	bad   []string                    // answers of 400 and more
}

func serve(t *testing.T) *server {
	s := &server{odd: map[string]http.HandlerFunc{}, site: siteHost()}
	s.Server = httptest.NewServer(s)
	t.Cleanup(func() {
		s.CloseClientConnections()
		s.Close()
	})
	return s
}

// at is the address of a page: "" for the home page, "reading/#scale=4000+psi".
func (s *server) at(page string) string { return s.URL + folder + page }

// instead makes a path of the site be answered by h; nil puts the site back.
func (s *server) instead(path string, h http.HandlerFunc) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.odd[path] = h
}

// count tells how often a path of the site was asked for.
func (s *server) count(path string) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	n := 0
	for _, p := range s.asked {
		if p == path {
			n++
		}
	}
	return n
}

func (s *server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	path := version.ReplaceAllString(strings.TrimPrefix(r.URL.Path, folder), "assets/")
	s.mu.Lock()
	h, site := s.odd[path], s.site
	s.asked = append(s.asked, path)
	s.mu.Unlock()
	noted := &noting{ResponseWriter: w}
	if h != nil {
		h(noted, r)
	} else {
		site.ServeHTTP(noted, r)
	}
	if noted.status >= 400 {
		s.mu.Lock()
		s.bad = append(s.bad, fmt.Sprintf("%d for %s", noted.status, r.URL.Path))
		s.mu.Unlock()
	}
}

// noting keeps the status that was sent.
type noting struct {
	http.ResponseWriter
	status int
}

func (n *noting) WriteHeader(status int) {
	n.status = status
	n.ResponseWriter.WriteHeader(status)
}

// text answers with a file of that type.
func text(kind, body string) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", kind)
		w.Header().Set("Cache-Control", "no-store")
		fmt.Fprint(w, body)
	}
}
