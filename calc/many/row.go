package many

import (
	"math"
	"strconv"
	"strings"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// Result is the answer to one row.
type Result struct {
	Row     int // in the file, counted from 0
	Branch  int // which of the declared verdicts
	Verdict string
	Head    string
	Figures []calc.BriefFigure
	Link    []calc.Pair
	Error   string // what is wrong with the row; then there is no answer

	value, lo, hi, from, to float64 // what the picture draws
}

// Batch answers the rows of a plan one after the other.
type Batch struct {
	*Plan
	Results []Result // those that are answered
	Wrong   int      // how many of them have an error
	shared  calc.Entries
	sys     unit.System
}

// Start returns a batch. shared are the entries that are the same for every row.
func (p *Plan) Start(shared calc.Entries, sys unit.System) *Batch {
	return &Batch{Plan: p, shared: shared, sys: sys}
}

// Total is how many rows there are to answer.
func (b *Batch) Total() int { return len(b.File.Rows) }

// Next answers one more row and reports whether there are others.
func (b *Batch) Next() (more bool) {
	i := len(b.Results)
	if i == b.Total() {
		return false
	}
	r := b.answer(i)
	if r.Error != "" {
		b.Wrong++
	}
	b.Results = append(b.Results, r)
	return i+1 < b.Total()
}

func (b *Batch) answer(i int) (r Result) {
	r.Row = i
	if r.Error = b.File.Rows[i].Error; r.Error != "" {
		return r
	}
	entries := b.Entries(i)
	defer func() {
		if recover() != nil {
			r = Result{Row: i, Error: "The calculator cannot work this row out"}
		}
	}()
	a := b.book.Brief(b.Worksheet.ID, entries, b.sys)
	r.Link = a.Link
	if len(a.Problems) > 0 {
		r.Error = b.complaint(a.Problems, entries)
		return r
	}
	r.Branch, r.Verdict, r.Head, r.Figures = a.Branch, a.Verdict.ID, a.Verdict.Head, a.Figures
	if m := b.Worksheet.Banded; m != nil {
		r.value, r.lo, r.hi, r.from, r.to = a.SI(m.Value), a.SI(m.Lo), a.SI(m.Hi), a.SI(m.From), a.SI(m.To)
		if math.IsNaN(r.from) {
			r.from = math.Inf(-1)
		}
		if math.IsNaN(r.to) {
			r.to = math.Inf(1)
		}
	}
	return r
}

// Entries are what a row enters into the worksheet.
func (b *Batch) Entries(i int) calc.Entries {
	entries := calc.Entries{}
	for _, m := range b.Missing {
		e := b.shared[m.ID]
		e.Own = true
		entries[m.ID] = e
	}
	for j, c := range b.Columns {
		f := c.Field
		if f == nil {
			continue
		}
		text := strings.TrimSpace(b.File.Rows[i].Cells[j])
		if text == "" && f.Usual {
			continue // the usual value
		}
		switch {
		case f.Shape == calc.Choice:
			text = option(f, text)
		case b.comma:
			text = pointed(text)
		}
		entries[f.ID] = calc.Entry{Text: text, Unit: c.Unit, UnitTo: c.UnitTo, Own: true}
	}
	for i := range b.Worksheet.Fields { // those that stand in nobody's way: empty
		f := &b.Worksheet.Fields[i]
		if _, there := entries[f.ID]; !there && !f.Usual {
			entries[f.ID] = calc.Entry{Own: true}
		}
	}
	return entries
}

// option returns the id of the choice that a cell names by id or label: "B",
// "b", "Grade B", "1.6", "class 1,6", "1.0" for 1.
func option(f *calc.Field, text string) string {
	for _, o := range f.Options {
		if o.ID == text {
			return text
		}
	}
	for _, o := range f.Options {
		if strings.EqualFold(o.Label, text) {
			return o.ID
		}
	}
	mark := strings.Replace(text, ",", ".", 1)
	if kind, rest, ok := strings.Cut(mark, " "); ok && (strings.EqualFold(kind, "class") || strings.EqualFold(kind, "grade")) {
		mark = strings.TrimSpace(rest)
	}
	x, err := strconv.ParseFloat(mark, 64)
	for _, o := range f.Options {
		y, no := strconv.ParseFloat(o.ID, 64)
		if strings.EqualFold(o.ID, mark) || err == nil && no == nil && x == y {
			return o.ID
		}
	}
	return text
}

// complaint says what is wrong with a row: up to three things.
func (b *Batch) complaint(problems []calc.Problem, entries calc.Entries) string {
	var parts []string
	for _, p := range problems {
		f := field(b.Worksheet, p.Field)
		if strings.TrimSpace(entries[p.Field].Text) == "" && f.Empty == "" && !f.Usual {
			parts = append(parts, "“"+f.Label+"” is not given")
		} else {
			parts = append(parts, "“"+f.Label+"”: "+strings.TrimSuffix(p.Message, "."))
		}
		if len(parts) == 3 {
			break
		}
	}
	return strings.Join(parts, "; ")
}
