package main

import (
	"bytes"
	"net/url"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"plainlift/calc/worksheets"
	"plainlift/site"
)

// rendered is the real site with its pages parsed.
type rendered struct {
	files map[string][]byte
	pages map[string]*html.Node
	ids   map[string]map[string]int // page, id: how often
}

func realSite(t *testing.T) rendered {
	t.Helper()
	return siteAt(t, "")
}

func siteAt(t *testing.T, address string) rendered {
	t.Helper()
	files, err := site.Render(os.DirFS("../content"), worksheets.All, map[string][]byte{wasmFile: []byte("\x00asm"), execFile: []byte("exec")}, address)
	if err != nil {
		t.Fatal(err)
	}
	r := rendered{files, map[string]*html.Node{}, map[string]map[string]int{}}
	for name, data := range files {
		if !isPage(name) {
			continue
		}
		page, err := html.Parse(bytes.NewReader(data))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		r.pages[name] = page
		r.ids[name] = map[string]int{}
		for n := range elements(page) {
			if id, ok := attribute(n, "id"); ok {
				r.ids[name][id]++
			}
		}
	}
	return r
}

// elements are the elements of a tree, those inside a template included.
func elements(n *html.Node) func(yield func(*html.Node) bool) {
	return func(yield func(*html.Node) bool) {
		for d := range n.Descendants() {
			if d.Type == html.ElementNode && !yield(d) {
				return
			}
		}
	}
}

func attribute(n *html.Node, name string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val, true
		}
	}
	return "", false
}

func TestSiteHasEveryWorksheet(t *testing.T) {
	r := realSite(t)
	if len(worksheets.All) == 0 || len(r.pages) < len(worksheets.All) {
		t.Fatalf("%d pages for %d worksheets", len(r.pages), len(worksheets.All))
	}
	for _, w := range worksheets.All {
		found := 0
		for _, page := range r.pages {
			fits := len(w.Fields) > 0
			names := map[string]bool{}
			for n := range elements(page) {
				if name, ok := attribute(n, "name"); ok {
					names[name] = true
				}
			}
			for _, f := range w.Fields {
				fits = fits && names[f.ID]
			}
			if fits {
				found++
			}
		}
		if found == 0 {
			t.Errorf("no page has every field of worksheet %s", w.ID)
		}
	}
}

func TestSiteIDs(t *testing.T) {
	r := realSite(t)
	for name, page := range r.pages {
		for id, n := range r.ids[name] {
			if n > 1 {
				t.Errorf("%s: %d elements with id %q", name, n, id)
			}
			if id == "" || strings.ContainsAny(id, " \t\n") {
				t.Errorf("%s: bad id %q", name, id)
			}
		}
		for n := range elements(page) {
			for _, key := range []string{"for", "form", "list", "headers", "aria-describedby", "aria-labelledby", "aria-controls", "aria-owns", "aria-details", "aria-errormessage"} {
				value, _ := attribute(n, key)
				for id := range strings.FieldsSeq(value) {
					if r.ids[name][id] == 0 {
						t.Errorf("%s: <%s %s=%q> points to nothing", name, n.Data, key, id)
					}
				}
			}
		}
	}
}

// Every field has a name that a screen reader can say.
func TestSiteFieldsHaveLabels(t *testing.T) {
	r := realSite(t)
	for name, page := range r.pages {
		labelled := map[string]bool{}
		for n := range elements(page) {
			if id, ok := attribute(n, "for"); ok && n.Data == "label" {
				labelled[id] = true
			}
		}
		for n := range elements(page) {
			if n.Data != "input" && n.Data != "select" && n.Data != "textarea" {
				continue
			}
			if kind, _ := attribute(n, "type"); kind == "hidden" {
				continue
			}
			id, _ := attribute(n, "id")
			_, named := attribute(n, "aria-label")
			_, pointed := attribute(n, "aria-labelledby")
			inside := false
			for up := n.Parent; up != nil; up = up.Parent {
				inside = inside || up.Data == "label"
			}
			if !labelled[id] && !named && !pointed && !inside {
				t.Errorf("%s: <%s id=%q> has no label", name, n.Data, id)
			}
		}
	}
}

// A link inside the site is relative, so that the site works from any folder,
// and leads to a file and to an id that are there. What a page loads is never
// another host's.
func TestSiteLinks(t *testing.T) {
	r := realSite(t)
	for name, page := range r.pages {
		links := 0
		for n := range elements(page) {
			for _, key := range []string{"href", "src", "action", "data", "poster", "xlink:href"} {
				link, ok := attribute(n, key)
				if !ok {
					continue
				}
				links++
				if problem := r.follow(name, n.Data, key, link); problem != "" {
					t.Errorf("%s: <%s %s=%q> %s", name, n.Data, key, link, problem)
				}
			}
			if set, ok := attribute(n, "srcset"); ok {
				t.Errorf("%s: srcset %q is not looked at by this test", name, set)
			}
		}
		if links == 0 {
			t.Errorf("%s has no link at all", name)
		}
	}
}

// follow says what is wrong with a link of a page; "" if nothing is.
func (r rendered) follow(from, element, key, link string) string {
	u, err := url.Parse(link)
	switch {
	case err != nil:
		return "cannot be read"
	case u.Scheme == "data":
		return ""
	case u.Scheme != "" || u.Host != "":
		if element == "a" && (u.Scheme == "https" || u.Scheme == "mailto") {
			return ""
		}
		return "leaves the site"
	case strings.HasPrefix(u.Path, "/"):
		return "works only from the top of a host"
	}
	target := from
	if u.Path != "" {
		target = path.Join(path.Dir(from), u.Path)
		if strings.HasSuffix(u.Path, "/") || target == "." || path.Base(u.Path) == ".." {
			target = path.Join(target, "index.html")
		}
	}
	if _, ok := r.files[target]; !ok {
		return "leads to " + target + ", which is not there"
	}
	if ids, isPage := r.ids[target]; isPage && u.Fragment != "" && !strings.Contains(u.Fragment, "=") && ids[u.Fragment] == 0 {
		return "leads to an id that is not there"
	}
	return ""
}

// otherHost finds what a style or script would load from elsewhere, or from the
// top of its host.
var otherHost = regexp.MustCompile(`(?:url\(\s*|@import\s+|\bimport\s*\(?\s*|\bfrom\s*|\bfetch\(\s*|\bimportScripts\(\s*|\bnew (?:Worker|URL)\(\s*)["']?(?:[a-z]+:)?/[^*]`)

func TestSiteLoadsNothingFromElsewhere(t *testing.T) {
	for _, bad := range []string{`url(https://x.example/a)`, `url("//x.example/a")`, `import "https://x.example/a.js"`, `import a from '/a.js'`, `fetch("/a")`, `@import "http://x.example"`} {
		if !otherHost.MatchString(bad) {
			t.Errorf("the test would not see %s", bad)
		}
	}
	for name, data := range realSite(t).files {
		if ext := path.Ext(name); ext != ".js" && ext != ".css" && ext != ".svg" && ext != ".html" {
			continue
		}
		for _, found := range otherHost.FindAll(data, -1) {
			t.Errorf("%s: %s", name, found)
		}
	}
}

// The links of a page work under every folder, since none starts at the top.
func TestFollow(t *testing.T) {
	r := rendered{
		files: map[string][]byte{"index.html": nil, "shim/index.html": nil, "assets/page.js": nil},
		ids:   map[string]map[string]int{"index.html": {"answer": 1}, "shim/index.html": {}},
	}
	for _, test := range []struct {
		from, element, link string
		good                bool
	}{
		{"index.html", "a", "shim/", true},
		{"index.html", "a", "./", true},
		{"index.html", "a", "#answer", true},
		{"index.html", "a", "#v=1&reading=2610+psi", true},
		{"index.html", "a", "#none", false},
		{"index.html", "a", "shim", false},
		{"index.html", "a", "/shim/", false},
		{"index.html", "a", "https://standard.example/", true},
		{"index.html", "a", "http://standard.example/", false},
		{"index.html", "a", "javascript:x()", false},
		{"index.html", "script", "assets/page.js", true},
		{"index.html", "script", "https://elsewhere.example/page.js", false},
		{"index.html", "img", "//elsewhere.example/a.png", false},
		{"shim/index.html", "script", "assets/page.js", false},
		{"shim/index.html", "script", "../assets/page.js", true},
		{"shim/index.html", "a", "../", true},
		{"shim/index.html", "a", "..", true},
		{"shim/index.html", "a", "../#answer", true},
		{"shim/index.html", "a", "../#none", false},
	} {
		if problem := r.follow(test.from, test.element, "href", test.link); (problem == "") != test.good {
			t.Errorf("%s, <%s> %s: %q", test.from, test.element, test.link, problem)
		}
	}
}
