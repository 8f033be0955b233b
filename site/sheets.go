package site

import (
	"encoding/json"

	"plainlift/calc"
)

// sheet is a page that calculates, as a page of its own kind lists it.
type sheet struct {
	ID, Title, Href string
	Compares        string // JSON for the script, "" where it compares nothing
}

// sheets lists the pages that calculate, with what those that compare two values
// take: the quantities compared, and every field that takes a quantity or may be
// left empty.
func (p *page) sheets(docs []doc, book calc.Book) {
	type field struct {
		ID       string   `json:"id"`
		Quantity string   `json:"quantity"`
		Options  []string `json:"options"` // of a choice
		Optional bool     `json:"optional"`
	}
	for _, d := range docs {
		w := book.Lookup(d.Front["worksheet"])
		if w == nil {
			continue
		}
		s := sheet{ID: w.ID, Title: w.Title, Href: p.href(d.folder())}
		if w.Compare != nil {
			fields := []field{}
			for _, f := range w.Fields {
				if f.Quantity == "" && f.Empty == "" {
					continue
				}
				options := []string{}
				for _, o := range f.Options {
					options = append(options, o.ID)
				}
				fields = append(fields, field{f.ID, f.Quantity, options, f.Empty != ""})
			}
			text, err := json.Marshal(struct {
				Pairs  []calc.Compared `json:"pairs"`
				Fields []field         `json:"fields"`
			}{w.Compare, fields})
			if err != nil {
				panic("site: what a worksheet compares cannot be written")
			}
			s.Compares = string(text)
		}
		p.Sheets = append(p.Sheets, s)
	}
}
