package site

import (
	"strings"

	"plainlift/calc"
)

// embedded is a worksheet's page for a frame in somebody else's page: the form
// and the answer without what is around them. Its links lead to the full pages,
// in a tab of their own, and its script is one that knows nothing of what the
// full pages keep on the device.
func (p *page) embedded(d doc) (*page, string) {
	e := *p
	e.Embed, e.Script, e.Root = true, embedScript, "../../"
	e.Full = e.Root + d.folder()
	e.Aside, e.Next = nil, nil
	for _, n := range p.Next {
		e.Next = append(e.Next, nextItem{n.Text, e.Root + strings.TrimPrefix(strings.TrimPrefix(n.Href, "./"), p.Root)})
	}
	return &e, embedFolder(p.Worksheet) + "index.html"
}

// Frame is the way to the page for a frame.
func (p *page) Frame() string { return p.Root + embedFolder(p.Worksheet) }

// embedFolder is where a worksheet's page for frames lies.
func embedFolder(w *calc.Worksheet) string { return "embed/" + w.ID + "/" }

// isFramed reports whether a file of the site is such a page.
func isFramed(name string) bool {
	return strings.HasPrefix(name, "embed/") && name != "embed/index.html"
}
