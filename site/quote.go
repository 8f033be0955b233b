package site

import (
	"fmt"
	"html/template"
	"regexp"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// A guide quotes what the core works out, so that prose cannot drift from it:
//
//	{gain.gain_pct}                   a figure of the worksheet's example
//	{gain.verdict}                    the head of its verdict
//	{gain.gain target="2,790 psi"}    a figure with some fields changed
//	{gain:target}                     what stands in a field
//
// Entries are written as an American reader would type them, and count as the
// reader's own. A brace that opens no quote is written \{.
var (
	quotePattern  = regexp.MustCompile(`^([a-z][a-z0-9-]*)([.:])([A-Za-z0-9_]+)((?:\s+[a-z0-9_]+="[^"]*")*)\s*$`)
	changePattern = regexp.MustCompile(`([a-z0-9_]+)="([^"]*)"`)
)

// quoteParser is the inline parser of quotes.
type quoteParser struct{ g *guide }

// Trigger says at which byte a quote may begin.
func (p *quoteParser) Trigger() []byte { return []byte{'{'} }

// Parse reads one quote. After a complaint the text stands as it is; the page
// is not written anyway.
func (p *quoteParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	inside, ok := upToBrace(string(line[1:]))
	if !ok {
		p.g.fault(segment.Start, `a quote has no } on its line (a plain brace is written \{)`)
		return nil
	}
	q, err := p.g.quote(inside)
	if err != nil {
		p.g.fault(segment.Start, "{%s}: %v", inside, err)
		return nil
	}
	block.Advance(len(inside) + 2)
	return &quoteNode{quoted: q}
}

// upToBrace returns what stands before the closing brace; a brace between
// double quotes does not close.
func upToBrace(s string) (string, bool) {
	quotes := false
	for i, c := range s {
		switch {
		case c == '"':
			quotes = !quotes
		case c == '}' && !quotes:
			return s[:i], true
		}
	}
	return "", false
}

// quote works out what stands between the braces.
func (g *guide) quote(inside string) (quoted, error) {
	m := quotePattern.FindStringSubmatch(inside)
	if m == nil {
		return quoted{}, fmt.Errorf(`not understood; write worksheet.figure or worksheet:field, then field="value" for each change`)
	}
	changed := map[string]string{}
	for _, c := range changePattern.FindAllStringSubmatch(m[4], -1) {
		if _, twice := changed[c[1]]; twice {
			return quoted{}, fmt.Errorf("%q is changed twice", c[1])
		}
		changed[c[1]] = c[2]
	}
	a, err := answer(g.book, m[1], changed)
	if err != nil {
		return quoted{}, err
	}
	if m[2] == ":" {
		return a.field(m[3])
	}
	return a.figure(m[3])
}

// quoted is one quoted text, as US and as metric readers see it.
type quoted struct{ us, metric string }

func (q quoted) html() template.HTML {
	attribute := ""
	if q.metric != q.us {
		attribute = ` data-metric="` + template.HTMLEscapeString(q.metric) + `"`
	}
	return template.HTML(`<span class="quoted"` + attribute + `>` + template.HTMLEscapeString(q.us) + `</span>`)
}

// quoteNode is a quote in the Markdown tree.
type quoteNode struct {
	ast.BaseInline
	quoted
}

var kindQuote = ast.NewNodeKind("Quote")

// Kind implements ast.Node.
func (n *quoteNode) Kind() ast.NodeKind { return kindQuote }

// Dump implements ast.Node.
func (n *quoteNode) Dump(source []byte, level int) {
	ast.DumpHelper(n, source, level, map[string]string{"US": n.us, "Metric": n.metric}, nil)
}
