package site

import (
	"html/template"
	"strings"

	"github.com/yuin/goldmark/ast"
)

// fences are the fenced blocks that are filled in while the site is built, by
// the first word after the fence. Each returns the block's HTML, and notes
// complaints with fault.
var fences = map[string]func(g *guide, f fence) template.HTML{
	"checks": (*guide).checks,
	"table":  (*guide).table,
}

// fence is a fenced block as written.
type fence struct {
	at    int      // offset of the info string
	words []string // of the info string, after the first
	lines []fenceLine
}

type fenceLine struct {
	at   int
	text string // trimmed, never empty
}

// fill puts a filled block in place of a fenced one. A fence with no words is
// plain code.
func (g *guide) fill(n *ast.FencedCodeBlock, source []byte) {
	if n.Info == nil {
		return
	}
	segment := n.Info.Segment
	words := strings.Fields(string(segment.Value(source)))
	if len(words) == 0 {
		return
	}
	write, ok := fences[words[0]]
	if !ok {
		g.fault(segment.Start, "no block %q", words[0])
		return
	}
	f := fence{at: segment.Start, words: words[1:]}
	for i := range n.Lines().Len() {
		s := n.Lines().At(i)
		if line := strings.TrimSpace(string(s.Value(source))); line != "" {
			f.lines = append(f.lines, fenceLine{s.Start, line})
		}
	}
	n.Parent().ReplaceChild(n.Parent(), n, &filledNode{html: write(g, f)})
}

// filledNode is a filled block in the Markdown tree.
type filledNode struct {
	ast.BaseBlock
	html template.HTML
}

var kindFilled = ast.NewNodeKind("Filled")

// Kind implements ast.Node.
func (n *filledNode) Kind() ast.NodeKind { return kindFilled }

// Dump implements ast.Node.
func (n *filledNode) Dump(source []byte, level int) {
	ast.DumpHelper(n, source, level, map[string]string{"HTML": string(n.html)}, nil)
}
