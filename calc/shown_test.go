package calc

import (
	"math"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

func TestFigureRounding(t *testing.T) {
	psi := unit.Pressure.Shown(unit.US)
	lb := unit.Load.Shown(unit.US)
	tests := []struct {
		name    string
		g       Figure
		x, half float64 // in the shown unit
		sys     unit.System
		u       unit.Unit
		against []float64
		want    string
	}{
		{"four digits", Figure{Kind: unit.Pressure}, 2610.44, 0, unit.US, psi, nil, "2,610"},
		{"no zeros at the end", Figure{Kind: unit.Pressure}, 70, 0, unit.US, psi, nil, "70"},
		{"two digits", Figure{Kind: unit.Load, Round: Two}, 72.21, 0, unit.US, lb, nil, "72"},
		{"two digits above a hundred", Figure{Kind: unit.Load, Round: Two}, 1234, 0, unit.US, lb, nil, "1,200"},
		{"by its doubt", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2610.44, 76.2, unit.US, psi, nil, "2,610"},
		{"by a small doubt", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2610.44, 0.76, unit.US, psi, nil, "2,610.44"},
		{"by a large doubt", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2654, 760, unit.US, psi, nil, "2,650"},
		{"no doubt: four digits", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2610.44, 0, unit.US, psi, nil, "2,610"},
		{"endless doubt: four digits", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2610.44, math.Inf(1), unit.US, psi, nil, "2,610"},
		// A shown number never meets or crosses a limit that it does not.
		{"under a limit", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2679.6, 76, unit.US, psi, []float64{2680}, "2,679.6"},
		{"over a limit", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2680.04, 76, unit.US, psi, []float64{2680}, "2,680.04"},
		{"at a limit", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2680, 76, unit.US, psi, []float64{2680}, "2,680"},
		{"clear of a limit", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2678.6, 76, unit.US, psi, []float64{2680}, "2,679"},
		{"over none", Figure{Kind: unit.Pressure, Round: ByDoubt}, 0.04, 76, unit.US, psi, []float64{0}, "0.04"},
		{"no limit entered", Figure{Kind: unit.Pressure, Round: ByDoubt}, 2679.6, 76, unit.US, psi, []float64{math.NaN()}, "2,680"},
		{"nearer than shows", Figure{Kind: unit.Pressure}, 2680.0000001, 0, unit.US, psi, []float64{2680}, "2,680"},
	}
	for _, test := range tests {
		var against []float64
		for _, l := range test.against {
			against = append(against, test.u.ToSI(l))
		}
		half := test.u.ToSI(test.half) - test.u.ToSI(0)
		if got := test.g.number(test.u.ToSI(test.x), half, against, test.sys); got != test.want {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
}

func TestChance(t *testing.T) {
	tests := []struct {
		percent float64
		against []float64
		want    string
	}{
		{93.75, []float64{95}, "94"},
		{50, nil, "50"},
		{0, nil, "under 1"},
		{0.99, nil, "under 1"},
		{1, nil, "1"},
		{99, nil, "99"},
		{99.01, nil, "over 99"},
		{100, nil, "over 99"},
		{94.6, []float64{95}, "94.6"},
		{94.97, []float64{95}, "94.97"},
		{95, []float64{95}, "95"},
		{95.2, []float64{95}, "95.2"},
		{95.6, []float64{95}, "96"},
		// Asked for more than 99 %, the words must tell which side it is.
		{99.5, []float64{99.9}, "99.5"},
		{99.87, []float64{99.9}, "99.87"},
		{99.9, []float64{99.9}, "99.9"},
		{99.95, []float64{99.9}, "over 99.9"},
		{98.7, []float64{99}, "98.7"},
		{99.5, []float64{95}, "over 99"},
	}
	g := Figure{Kind: unit.Percent, Round: Chance}
	for _, test := range tests {
		var against []float64
		for _, l := range test.against {
			against = append(against, l/100)
		}
		if got := g.number(test.percent/100, 0, against, unit.US); got != test.want {
			t.Errorf("%v against %v: %q, want %q", test.percent, test.against, got, test.want)
		}
	}
}

// TestAgainstNames: limits are named by field, by figure or as a number with
// its unit.
func TestAgainstNames(t *testing.T) {
	w := &Worksheet{ID: "w",
		Fields: []Field{{ID: "limit", Label: "Limit", Kind: unit.Pressure, Example: "2680 psi"}},
		Figures: []Figure{
			{ID: "near", Kind: unit.Pressure, Round: ByDoubt},
			{ID: "field", Kind: unit.Pressure, Round: ByDoubt, Against: []string{"limit"}},
			{ID: "figure", Kind: unit.Pressure, Round: ByDoubt, Against: []string{"near"}},
			{ID: "number", Kind: unit.Pressure, Round: ByDoubt, Against: []string{"2680 psi"}},
		},
		Verdicts: []Verdict{{Key: "v", Head: "{near} {field} {figure} {number}"}},
		Compute: func(in *In, out *Out) {
			psi := unit.Pressure.Shown(unit.US)
			out.SetDoubt("near", psi.ToSI(2680.1), psi.ToSI(76))
			for _, id := range []string{"field", "figure", "number"} {
				out.SetDoubt(id, psi.ToSI(2679.7), psi.ToSI(76))
			}
			out.Verdict("v")
		},
	}
	a := Book{w}.Evaluate("w", nil, unit.US)
	if got := a.Verdict.Head; got != "2,680 psi 2,679.7 psi 2,680 psi 2,679.7 psi" {
		t.Error(got)
	}
}

func TestQuotedWithoutUnit(t *testing.T) {
	in, a := trial.read(own("list", "2,600; 2,620"), unit.US)
	out := trial.compute(in, a)
	for text, want := range map[string]string{
		"{p:n} to {double}": "2,610 to 5,220 psi",
		"{list:n}":          "2,600; 2,620",
		"{how}, {pairs}":    "as it is, none",
		"{word}":            "the way",
		"no quote":          "no quote",
	} {
		if got := out.Words(text); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

func TestAnd(t *testing.T) {
	for want, names := range map[string]string{"": "", "a": "a", "a and b": "a b", "a, b and c": "a b c"} {
		if got := And(strings.Fields(names)); got != want {
			t.Errorf("%q: %q", names, got)
		}
	}
	if lower("Über") != "Über" || lower("") != "" || lower("Reading") != "reading" {
		t.Error("the first letter changes wrongly")
	}
}
