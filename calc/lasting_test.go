package calc

import (
	"slices"
	"testing"

	"plainlift/calc/unit"
)

// What an answer knows says whether it stays with the machine, and is called as
// its field is; a figure that stands only in sentences, as its quantity is.
func TestKnownLasts(t *testing.T) {
	b := Book{{
		ID: "w", Title: "W", Menu: "w",
		Fields: []Field{
			{ID: "now", Label: "Gauge shows", Kind: unit.Pressure, Example: "100 psi", Quantity: "pressure now"},
			{ID: "low", Label: "Manual: lowest", Kind: unit.Pressure, Example: "200 psi", Quantity: "manual lowest"},
		},
		Figures:  []Figure{{ID: "a", Kind: unit.Pressure, Place: Quoted, Quantity: "gauge limit", From: []string{"now"}}},
		Verdicts: []Verdict{{Key: "ok", Head: "x", Sentence: "x"}},
		Compute: func(in *In, out *Out) {
			out.Set("a", in.SI("now")/50)
			out.Verdict("ok")
		},
	}}
	got := b.Evaluate("w", Entries{"now": {Text: "150", Own: true}, "low": {Text: "250", Own: true}}, unit.US).Known
	want := []Known{
		{"pressure now", "Gauge shows", "150 psi", "150 psi", false},
		{"manual lowest", "Manual: lowest", "250 psi", "250 psi", true},
		{"gauge limit", "Gauge limit", "3 psi", "3 psi", true},
	}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
