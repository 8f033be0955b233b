package many

import (
	"strconv"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// Texts are a row's figures as a page shows them; nil for a row with an error.
func (b *Batch) Texts(r *Result) []string {
	if r.Error != "" {
		return nil
	}
	return b.book.Brief(b.Worksheet.ID, b.Entries(r.Row), b.sys).Shown()
}

// Heading names the columns of the file that goes out: those that came in, the
// figures with their unit, the verdict.
func (b *Batch) Heading() []string {
	names := append([]string(nil), b.File.Heading...)
	for _, g := range b.Worksheet.Answers() {
		name := g.ID
		if u := g.Kind.Shown(b.sys).Name; u != "" && g.Round != calc.Words {
			name += " (" + u + ")"
		}
		names = append(names, name)
	}
	return append(names, "verdict", "answer")
}

// Cells are a row of that file: what came in as it was, each figure as the full
// number, with a point.
func (b *Batch) Cells(r *Result) []string {
	row := b.File.Rows[r.Row]
	cells := make([]string, len(b.File.Heading), len(b.File.Heading)+len(r.Figures)+2)
	copy(cells, row.Cells)
	for i, g := range b.Worksheet.Answers() {
		text := ""
		if i < len(r.Figures) {
			f := r.Figures[i]
			if text = f.Text; f.SI == f.SI {
				text = full(g.Kind.Shown(b.sys), f.SI)
			}
		}
		cells = append(cells, text)
	}
	return append(cells, r.Verdict, r.Head)
}

// full is a value in a unit, to 12 digits: more than any figure deserves, and
// without what the conversion's rounding leaves.
func full(u unit.Unit, si float64) string {
	x, _ := strconv.ParseFloat(strconv.FormatFloat(u.FromSI(si), 'g', 12, 64), 64)
	return strconv.FormatFloat(x+0, 'f', -1, 64)
}

// Count is how many rows have a verdict.
type Count struct {
	Verdict string // its id
	Rows    int
}

// Counts tells how many rows have which verdict, in declared order.
func (b *Batch) Counts() []Count {
	var counts []Count
	w := b.Worksheet
	at := make([]int, len(w.Verdicts)) // which count each branch is part of
	for i := range w.Verdicts {
		id := w.Verdicts[i].Figure()
		for at[i] < len(counts) && counts[at[i]].Verdict != id {
			at[i]++
		}
		if at[i] == len(counts) {
			counts = append(counts, Count{Verdict: id})
		}
	}
	for i := range b.Results {
		if r := &b.Results[i]; r.Error == "" {
			counts[at[r.Branch]].Rows++
		}
	}
	return counts
}
