package calc

import (
	"reflect"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

// FuzzLink feeds the engine with links of any kind: nothing panics, the answer
// has figures or problems that name a field, and a link that could be answered
// comes back as the same figures.
func FuzzLink(f *testing.F) {
	f.Fuzz(func(t *testing.T, link string, metric bool) {
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		var pairs []Pair
		for _, part := range strings.Split(link, "&") {
			k, v, _ := strings.Cut(part, "=")
			pairs = append(pairs, Pair{k, v})
		}
		e := FromLink(pairs)
		a := book.Evaluate("trial", e, sys)
		book.Convert("trial", e, sys, unit.Metric)
		if a.OK() == (len(a.Figures) == 0) {
			t.Fatalf("figures %v beside problems %v", a.Figures, a.Problems)
		}
		for _, p := range a.Problems {
			if trial.field(p.Field) == nil || p.Message == "" {
				t.Errorf("problem %+v", p)
			}
		}
		if !a.OK() {
			return
		}
		b := book.Evaluate("trial", FromLink(a.Link), unit.US)
		if !b.OK() {
			t.Fatalf("%s is refused: %v", text(a.Link), b.Problems)
		}
		for i := range a.Figures {
			if a.Figures[i].Value != b.Figures[i].Value {
				t.Errorf("%s: %s becomes %s", a.Figures[i].ID, a.Figures[i].Value, b.Figures[i].Value)
			}
		}
		if !reflect.DeepEqual(a.Link, b.Link) {
			t.Errorf("%s\nbecomes\n%s", text(a.Link), text(b.Link))
		}
	})
}
