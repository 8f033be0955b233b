package worksheets

import (
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// corners are the texts at the ends of a field: its range, just inside an end
// that is not accepted, one row, two and many, every choice, nothing.
func corners(f *calc.Field) []string {
	var texts []string
	switch f.Shape {
	case calc.Choice:
		for _, o := range f.Options {
			texts = append(texts, o.ID)
		}
		return texts
	case calc.Single:
		texts = ends(f.Kind, f.Range)
	case calc.List:
		for _, x := range ends(f.Kind, f.Range) {
			texts = append(texts, x, x+"; "+x, strings.Repeat(x+"; ", 150))
		}
		texts = append(texts, strings.Join(ends(f.Kind, f.Range), "; "))
	case calc.Pairs:
		var all []string
		for _, x := range ends(f.Kind, f.Range) {
			for _, y := range ends(f.With, f.RangeTo) {
				all = append(all, x+" : "+y)
			}
		}
		texts = append(all, all[0]+"; "+all[0], strings.Join(all, "; "))
	}
	if f.Empty != "" {
		texts = append(texts, "")
	}
	return texts
}

// ends are the two ends of a range, as text that the range accepts.
func ends(k unit.Kind, r calc.Range) []string {
	min, max := r.Min, r.Max
	if min == "" {
		min = "-1e6 " + k.Shown(unit.US).Name
	}
	if max == "" {
		max = "1e6 " + k.Shown(unit.US).Name
	}
	if r.Above {
		number, name, _ := strings.Cut(min, " ")
		if number != "0" {
			panic("a range above something else than 0: " + min)
		}
		min = "0.000001 " + name
	}
	return []string{min, max}
}

// At every corner of every two fields there is a sound answer or a problem that
// names its field.
func TestCorners(t *testing.T) {
	every(t, func(t *testing.T, w *calc.Worksheet) {
		tried, answered := 0, 0
		for i := range w.Fields {
			for j := range w.Fields[:i] {
				f, g := &w.Fields[i], &w.Fields[j]
				for _, x := range corners(f) {
					for _, y := range corners(g) {
						entries := calc.Entries{f.ID: {Text: x, Own: true}, g.ID: {Text: y, Own: true}}
						a := All.Evaluate(w.ID, entries, unit.System((i+j)%2))
						sound(t, w, entries, a)
						if tried++; a.OK() {
							answered++
						}
					}
				}
			}
		}
		if answered < tried/4 {
			t.Errorf("%d of %d corners are answered; the rest are refused", answered, tried)
		}
	})
}
