// Package site turns the guides and the book of worksheets into the files of a
// static site. It is the only package that makes HTML.
//
// Every worksheet has one Markdown file that names it in its front matter; the
// page is that worksheet's form and worked example, with the guide below. A
// file that names no worksheet becomes a plain page. "index.md" is written to
// "index.html", any other "x.md" to "x/index.html", and every link is relative,
// so that the output works from any folder of any host.
package site

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"html/template"
	"io/fs"
	"sort"
	"strconv"
	"strings"
	"sync"

	"plainlift/calc"
)

//go:embed templates assets root
var files embed.FS

// Render returns every file of the site by output path. The compiled calculator,
// by file name, joins the scripts and styles in a folder that is named after what
// they all hold: a page and what it loads are always of one build, whatever a
// host, a browser or a saved copy keeps of another. The address is where the site
// will stand, as Address returns it, or "" where that is not known.
func Render(content fs.FS, book calc.Book, compiled map[string][]byte, address string) (map[string][]byte, error) {
	docs, err := readDocs(content, book)
	if err != nil {
		return nil, err
	}
	assets, err := readAssets(compiled)
	if err != nil {
		return nil, err
	}
	out := map[string][]byte{}
	for name, data := range assets.files {
		out[assets.folder+name] = data
	}
	var public []*page
	for _, d := range docs {
		full, err := newPage(d, docs, book)
		if err != nil {
			return nil, err
		}
		if address != "" && !full.NotFound {
			full.Canonical, full.Preview = address+d.folder(), address+"previews/"+d.stem()+".png"
			public = append(public, full)
		}
		pages := map[string]*page{d.output(): full}
		if full.Worksheet != nil {
			e, output := full.embedded(d)
			pages[output] = e
		}
		for output, p := range pages {
			if out[output], err = p.render(assets); err != nil {
				return nil, fmt.Errorf("content/%s: %w", d.name, err)
			}
		}
	}
	if err := addRoot(out); err != nil {
		return nil, err
	}
	if address == "" {
		return out, nil
	}
	return out, publish(out, address, public)
}

// doc is one Markdown file of the content.
type doc struct {
	*Doc
	name string // "shim.md"
}

func (d doc) stem() string { return strings.TrimSuffix(d.name, ".md") }

// folder is the page's place in the site: "" for the home page, "shim/".
func (d doc) folder() string {
	if d.stem() == "index" {
		return ""
	}
	return d.stem() + "/"
}

func (d doc) output() string {
	if d.stem()+".html" == notFound {
		return notFound
	}
	return d.folder() + "index.html"
}

func readDocs(content fs.FS, book calc.Book) ([]doc, error) {
	names, err := fs.Glob(content, "*.md")
	if err != nil {
		return nil, err
	}
	docs, errs := make([]doc, len(names)), make([]error, len(names))
	var wait sync.WaitGroup
	for i, name := range names { // at once: what they quote is simulated
		wait.Go(func() {
			src, err := fs.ReadFile(content, name)
			if err == nil {
				docs[i].name = name
				docs[i].Doc, err = parseDoc("content/"+name, src, book)
			}
			errs[i] = err
		})
	}
	wait.Wait()
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	guides := map[string]string{}
	for _, d := range docs {
		if id := d.Front["worksheet"]; id != "" {
			guides[id] = d.name
		}
	}
	for _, w := range book {
		if guides[w.ID] == "" {
			return nil, fmt.Errorf("content: no page names the worksheet %q", w.ID)
		}
	}
	sort.SliceStable(docs, func(i, j int) bool { return docs[i].order() < docs[j].order() })
	return docs, nil
}

// order puts pages into the menu by their front matter; one that gives none
// comes last.
func (d doc) order() int {
	if n, err := strconv.Atoi(d.Front["order"]); err == nil {
		return n
	}
	return 1 << 30
}

// render runs the templates: base.html for every page, keep.html for what is kept, or embed.html for one in a
// frame, with the blocks of worksheet.html on a page that calculates and of its own
// on one of its own kind.
func (p *page) render(a *assets) ([]byte, error) {
	if a.files[p.Script] == nil {
		return nil, fmt.Errorf("no script site/assets/%s", p.Script)
	}
	p.Assets, p.Scripts = p.Root+a.folder, a.imports(p.Script)
	base := "base.html"
	if p.Embed {
		base = "embed.html"
	}
	names := []string{"templates/" + base, "templates/keep.html"}
	if p.Worksheet != nil {
		names = append(names, "templates/worksheet.html")
	}
	if p.Kind != "" {
		names = append(names, "templates/"+p.Kind+".html")
	}
	t, err := template.New(base).Funcs(template.FuncMap{"row": newRow}).ParseFS(files, names...)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := t.Execute(&b, p); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
