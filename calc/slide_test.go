package calc

import (
	"math"
	"testing"

	"plainlift/calc/unit"
)

// slider is a book whose one field slides between a figure and another field.
func slider() Book {
	return Book{{
		ID: "slider", Title: "How high?", Menu: "High",
		Fields: []Field{
			{ID: "height", Label: "Height", Kind: unit.Length, Example: "60 in", Slide: &Slide{"low", "top"}},
			{ID: "top", Label: "Top", Kind: unit.Length, Example: "110.3 in", Empty: "not known"},
		},
		Figures:  []Figure{{ID: "low", Label: "Low", Kind: unit.Length}},
		Verdicts: []Verdict{{Key: "ok", Head: "{height}", Sentence: "It is {height}."}},
		Compute: func(in *In, out *Out) {
			out.Set("low", 5.13*0.0254)
			out.Verdict("ok")
		},
	}}
}

func TestSlide(t *testing.T) {
	for _, c := range []struct {
		height, top string
		want        *SlideState
	}{
		// From 5.13 to 110.3 in is 105.17: a 200th is 0.53, a round step 1.
		{"60 in", "110.3 in", &SlideState{6, 110, 1, 60, "in", "60 in"}},
		{"60.4", "110.3 in", &SlideState{6, 110, 1, 60, "in", "60.4 in"}},
		{"1500 mm", "110.3 in", &SlideState{6, 110, 1, 59, "in", "59.06 in"}},
		{"200 in", "110.3 in", &SlideState{6, 110, 1, 110, "in", "200 in"}},
		{"6 in", "6.4 in", &SlideState{5.13, 6.4, 0.01, 6, "in", "6 in"}}, // 1.27 in: 0.00635, so 0.01
		{"6 in", "5 in", nil},
		{"6 in", "", nil},
	} {
		a := slider().Evaluate("slider", Entries{"height": {Text: c.height, Own: true}, "top": {Text: c.top, Own: true}}, unit.US)
		got := a.Fields[0].Slide
		if !a.OK() || (got == nil) != (c.want == nil) {
			t.Errorf("%s of %s: %v, want %v (%v)", c.height, c.top, got, c.want, a.Problems)
			continue
		}
		if got != nil && (math.Abs(got.Min-c.want.Min)+math.Abs(got.Max-c.want.Max)+math.Abs(got.Step-c.want.Step)+math.Abs(got.Value-c.want.Value) > 1e-9 || got.Text != c.want.Text || got.Unit != c.want.Unit) {
			t.Errorf("%s of %s: %v, want %v", c.height, c.top, *got, *c.want)
		}
		if a.Fields[1].Slide != nil {
			t.Error("a field without a slider has one")
		}
	}
}

// While an entry has a problem nothing is known of the ends.
func TestSlideWithProblem(t *testing.T) {
	a := slider().Evaluate("slider", Entries{"height": {Text: "high", Own: true}}, unit.US)
	if a.OK() || a.Fields[0].Slide != nil {
		t.Errorf("%v, %v", a.Problems, a.Fields[0].Slide)
	}
}
