package site

import (
	"fmt"
	"html/template"
	"net/url"
	"slices"
	"strings"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// page is what the templates see.
type page struct {
	Title, Description string
	Root, Home         string // relative way to the site's top: "" or "../"
	Assets             string // and to what it loads: "../assets/0123456789ab/"
	Script             string
	Scripts            []string
	Menu               []menuItem
	Guide              template.HTML
	NotFound           bool   // the page for an address that is none
	Canonical, Preview string // its full address and its picture's, where the site's address is known
	Kind               string // of a page of its own kind: its template and its script have this name
	Sheets             []sheet

	// Of a page that calculates; nil and empty elsewhere.
	Worksheet *calc.Worksheet
	Answer    *calc.Answer
	Picture   template.HTML
	Fields    []field
	Aside     *nextItem
	Next      []nextItem
	Embed     bool   // stands in a frame of somebody else's page,
	Full      string // whose full page is there
}

type menuItem struct {
	Text, Href string
	Here       bool
}

type nextItem struct{ Text, Href string }

func newPage(d doc, docs []doc, book calc.Book) (*page, error) {
	p := &page{
		Title:       d.Front["title"],
		Description: d.Front["description"],
		Script:      wordsScript,
		Guide:       d.HTML,
	}
	if d.folder() != "" {
		p.Root = "../"
	}
	p.NotFound = d.output() == notFound
	if p.NotFound {
		p.Root = ""
	}
	p.Home = p.Root
	if p.Home == "" {
		p.Home = "./"
	}
	for _, other := range docs {
		if text := other.menu(book); text != "" {
			p.Menu = append(p.Menu, menuItem{text, p.href(other.folder()), other.name == d.name})
		}
	}
	id := d.Front["worksheet"]
	if id == "" {
		if p.Title == "" {
			return nil, fmt.Errorf("content/%s:1: a page without a worksheet needs a title", d.name)
		}
		if p.Kind = d.Front["page"]; p.Kind != "" {
			p.Script = p.Kind + ".js"
			p.sheets(docs, book)
		}
		return p, nil
	}
	w := book.Lookup(id)
	if w == nil {
		return nil, fmt.Errorf("content/%s:1: no worksheet %q", d.name, id)
	}
	folders := map[string]string{}
	for _, other := range docs {
		if id := other.Front["worksheet"]; id != "" {
			folders[id] = other.folder()
		}
	}
	p.Title, p.Worksheet, p.Script = w.Title, w, sheetScript
	example, err := answer(book, id, nil)
	if err != nil {
		return nil, fmt.Errorf("worksheet %s: its example has a problem: %w", id, err)
	}
	p.Answer = book.EvaluateWith(id, nil, unit.US, example.sim)
	p.Picture = template.HTML(p.Answer.Picture) // made by calc/chart, which escapes its labels
	for i := range w.Fields {
		p.Fields = append(p.Fields, newField(&w.Fields[i], &p.Answer.Fields[i], p.Answer.Notes))
	}
	if w.Aside != nil {
		p.Aside = &nextItem{w.Aside.Text, p.href(folders[w.Aside.ID])}
	}
	for _, n := range p.Answer.Next {
		p.Next = append(p.Next, nextItem{n.Text, p.href(folders[n.ID]) + "#" + fragment(n.Link)})
	}
	return p, nil
}

func (p *page) href(folder string) string {
	if p.Root+folder == "" {
		return "./"
	}
	return p.Root + folder
}

// menu is the page's text in the list of pages, "" for a page that is not in it.
func (d doc) menu(book calc.Book) string {
	if w := book.Lookup(d.Front["worksheet"]); w != nil {
		return w.Menu
	}
	return d.Front["menu"]
}

// fragment writes a link's keys and values as the page's script does.
func fragment(pairs []calc.Pair) string {
	var parts []string
	for _, p := range pairs {
		parts = append(parts, url.QueryEscape(p.Key)+"="+url.QueryEscape(p.Value))
	}
	return strings.Join(parts, "&")
}

// Quantities are what the page's fields are values of.
func (p *page) Quantities() []string {
	var all []string
	for _, f := range p.Fields {
		if f.Quantity != "" {
			all = append(all, f.Quantity)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// HasTape reports whether any field is measured with a tape.
func (p *page) HasTape() bool {
	return slices.ContainsFunc(p.Fields, func(f field) bool { return f.Tape })
}

// part is a folded part of the form; the first has no title and stands open.
type part struct {
	Title  string
	Fields []field
}

// Parts are the fields in the parts of the form, in the order of the declaration.
func (p *page) Parts() []part {
	parts := []part{{}}
	for _, f := range p.Fields {
		title := f.Group
		if f.More {
			title = "More that bears on it"
		}
		i := slices.IndexFunc(parts, func(p part) bool { return p.Title == title })
		if i < 0 {
			i = len(parts)
			parts = append(parts, part{Title: title})
		}
		parts[i].Fields = append(parts[i].Fields, f)
	}
	return parts
}

// Empty items, from which the templates draw what the script copies.
func (p *page) NoUsed() calc.Used        { return calc.Used{} }
func (p *page) NoBudget() calc.BudgetRow { return calc.BudgetRow{} }
func (p *page) NoStep() calc.Step        { return calc.Step{} }
func (p *page) NoNext() nextItem         { return nextItem{} }
