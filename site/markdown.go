package site

import (
	"bytes"
	"errors"
	"fmt"
	"html/template"
	"sort"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"plainlift/calc"
)

// Doc is one guide, ready for the page's template.
type Doc struct {
	// Front holds title, description, worksheet (its ID), menu, order, and page
	// for a page of its own kind: its template and script have that name. Title,
	// menu and page are absent on a worksheet's page: the worksheet declares it.
	Front map[string]string
	HTML  template.HTML
}

// parseDoc reads a guide: front matter, then Markdown with quoted figures (see
// quote.go) and fenced blocks of our own (see fence.go). Every complaint about
// the guide is in the error, in order of lines, each starting "path:line: ".
func parseDoc(path string, src []byte, book calc.Book) (*Doc, error) {
	g := &guide{path: path, src: src, book: book}
	front := g.frontMatter()
	md := goldmark.New(goldmark.WithExtensions(extension.Table, g),
		goldmark.WithParserOptions(parser.WithAutoHeadingID()))
	var out bytes.Buffer
	if err := md.Convert(src[g.start:], &out); err != nil {
		return nil, fmt.Errorf("%s:1: %w", path, err)
	}
	if err := g.complaints(); err != nil {
		return nil, err
	}
	return &Doc{front, template.HTML(out.String())}, nil
}

// guide is one Markdown file while it is read, and the extension that reads it.
type guide struct {
	path  string
	src   []byte
	start int // where the Markdown begins in src; offsets count from here
	book  calc.Book
	wrong []complaint
}

type complaint struct {
	line    int
	message string
}

// fault notes a complaint at an offset into the Markdown.
func (g *guide) fault(at int, format string, args ...any) {
	line := 1 + bytes.Count(g.src[:min(g.start+at, len(g.src))], []byte("\n"))
	g.faultLine(line, format, args...)
}

func (g *guide) faultLine(line int, format string, args ...any) {
	g.wrong = append(g.wrong, complaint{line, fmt.Sprintf(format, args...)})
}

// complaints joins what was noted, nil when all is well.
func (g *guide) complaints() error {
	sort.SliceStable(g.wrong, func(i, j int) bool { return g.wrong[i].line < g.wrong[j].line })
	var errs []error
	for _, c := range g.wrong {
		errs = append(errs, fmt.Errorf("%s:%d: %s", g.path, c.line, c.message))
	}
	return errors.Join(errs...)
}

// frontKeys are the keys that front matter may have.
var frontKeys = []string{"title", "description", "worksheet", "menu", "order", "page"}

// frontMatter reads the "key: value" lines between two lines "---" at the top.
func (g *guide) frontMatter() map[string]string {
	front := map[string]string{}
	const fence = "---"
	for number := 1; ; number++ {
		raw, _, more := bytes.Cut(g.src[g.start:], []byte("\n"))
		line := strings.TrimSpace(string(raw))
		switch {
		case number == 1 && line != fence:
			g.faultLine(1, "a guide starts with front matter: a line ---, lines key: value, a line ---")
			return front
		case number > 1 && line == fence:
			g.start = min(g.start+len(raw)+1, len(g.src))
			g.checkFront(front, number)
			return front
		case number > 1 && (more || line != ""):
			g.frontLine(front, number, line)
		}
		if !more {
			g.faultLine(number, "front matter has no closing ---")
			g.start = len(g.src)
			return front
		}
		g.start += len(raw) + 1
	}
}

func (g *guide) frontLine(front map[string]string, number int, line string) {
	key, value, ok := strings.Cut(line, ":")
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	_, twice := front[key]
	switch {
	case !ok || value == "":
		g.faultLine(number, "front matter wants key: value, not %q", line)
		return
	case twice:
		g.faultLine(number, "front matter has %q twice", key)
		return
	}
	known := false
	for _, k := range frontKeys {
		known = known || k == key
	}
	if !known {
		g.faultLine(number, "front matter has no key %q; it has %s", key, strings.Join(frontKeys, ", "))
		return
	}
	front[key] = value
	if key == "order" {
		if _, err := strconv.Atoi(value); err != nil {
			g.faultLine(number, "order is a whole number, not %q", value)
		}
	}
	if key == "worksheet" && g.book.Lookup(value) == nil {
		g.faultLine(number, "no worksheet %q", value)
	}
}

// checkFront looks at the front matter as a whole.
func (g *guide) checkFront(front map[string]string, number int) {
	if front["worksheet"] == "" {
		if front["title"] == "" {
			g.faultLine(number, "front matter has no title")
		}
		return
	}
	for _, key := range []string{"title", "menu", "page"} {
		if front[key] != "" {
			g.faultLine(number, "the worksheet declares the %s: leave it out here", key)
		}
	}
}

// Extend adds what is ours to Markdown.
func (g *guide) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(
		parser.WithInlineParsers(util.Prioritized(&quoteParser{g}, 150)),
		parser.WithASTTransformers(util.Prioritized(g, 500)))
	m.Renderer().AddOptions(renderer.WithNodeRenderers(util.Prioritized(nodes{}, 100)))
}

// Transform fills in our fenced blocks and complains about what a guide may not
// hold: raw HTML, and a heading of the first level, which is the page's title.
func (g *guide) Transform(doc *ast.Document, reader text.Reader, _ parser.Context) {
	var fences []*ast.FencedCodeBlock
	ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.FencedCodeBlock:
			fences = append(fences, n)
		case *ast.HTMLBlock:
			g.fault(n.Lines().At(0).Start, "raw HTML is not used in guides")
		case *ast.RawHTML:
			g.fault(n.Segments.At(0).Start, "raw HTML is not used in guides")
		case *ast.Heading:
			if n.Level == 1 && n.Lines().Len() > 0 {
				g.fault(n.Lines().At(0).Start, "headings in a guide start with ##: the title is the page's only first heading")
			}
		}
		return ast.WalkContinue, nil
	})
	for _, f := range fences {
		g.fill(f, reader.Source())
	}
}

// nodes renders our own nodes, and tables in a box that scrolls sideways.
type nodes struct{}

func (nodes) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(kindQuote, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			w.WriteString(string(n.(*quoteNode).html()))
		}
		return ast.WalkContinue, nil
	})
	r.Register(kindFilled, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			w.WriteString(string(n.(*filledNode).html))
		}
		return ast.WalkContinue, nil
	})
	r.Register(east.KindTable, func(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			w.WriteString("<div class=\"table\"><table>\n")
		} else {
			w.WriteString("</table></div>\n")
		}
		return ast.WalkContinue, nil
	})
}
