package calc

import (
	"slices"
	"testing"

	"plainlift/calc/unit"
)

// An answer lists what is the reader's own, once for each quantity, and nothing
// of the example's.
func TestKnown(t *testing.T) {
	field := func(id, quantity, example string) Field {
		return Field{ID: id, Label: id, Kind: unit.Pressure, Example: example, Empty: "none", Quantity: quantity}
	}
	b := Book{{
		ID: "w", Title: "W", Menu: "w",
		Fields:   []Field{field("a", "now", "100 psi"), field("b", "limit", "200 psi"), field("c", "now", "300 psi"), field("d", "", "1 psi")},
		Figures:  []Figure{{ID: "twice", Label: "t", Kind: unit.Pressure, Quantity: "double", From: []string{"a"}}, {ID: "mark", Label: "m", Round: Words, Quantity: "mark", From: []string{"b"}}, {ID: "no", Label: "n", Kind: unit.Pressure, Quantity: "nothing"}},
		Verdicts: []Verdict{{Key: "ok", Head: "x", Sentence: "x"}},
		Compute: func(in *In, out *Out) {
			out.Set("twice", 2*in.SI("a"))
			out.Text("mark", "B", "grade B")
			out.None("no", "none")
			out.Verdict("ok")
		},
	}}
	for _, c := range []struct {
		typed Entries
		want  []Known
	}{
		{nil, nil},
		{Entries{"a": {Text: "150", Own: true}}, []Known{{"now", "a", "150 psi", "150 psi", false}, {"double", "t", "300 psi", "300 psi", false}}},
		{Entries{"a": {Text: "10 bar", Own: true}}, []Known{{"now", "a", "10 bar", "145 psi", false}, {"double", "t", "290.075 psi", "290 psi", false}}},
		{Entries{"b": {Text: "250", Own: true}}, []Known{{"limit", "b", "250 psi", "250 psi", false}, {"mark", "m", "B", "grade B", false}}},
		{Entries{"b": {Text: "", Own: true}}, []Known{{"mark", "m", "B", "grade B", false}}},
		{Entries{"d": {Text: "7", Own: true}}, nil},
		{Entries{"a": {Text: "rubbish", Own: true}}, nil},
	} {
		if got := b.Evaluate("w", c.typed, unit.US).Known; !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.typed, got, c.want)
		}
	}
}
