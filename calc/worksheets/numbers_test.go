package worksheets

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc"
	"plainlift/calc/unit"
)

const lbN = 4.4482216152605 // N, exact

// owned is entries that are the reader's own, from id, text pairs.
func owned(pairs ...string) calc.Entries {
	e := calc.Entries{}
	for i := 0; i < len(pairs); i += 2 {
		e[pairs[i]] = calc.Entry{Text: pairs[i+1], Own: true}
	}
	return e
}

// ask answers a worksheet with the reader's own texts, given as id, text pairs.
func ask(t *testing.T, worksheet string, pairs ...string) *calc.Answer {
	t.Helper()
	a := All.Checked(worksheet, owned(pairs...), unit.US)
	if !a.OK() {
		t.Fatalf("%s %v: %v", worksheet, pairs, a.Problems)
	}
	return a
}

// Figures against arithmetic by hand. The numbers are the invented example's and
// cases close to it; what each row rests on stands beside it.
func TestFigures(t *testing.T) {
	tests := []struct {
		worksheet string
		pairs     []string
		figure    string
		want, tol float64
		by        string
	}{
		{"short", nil, "p_low", 0.9375, 1e-9, "rectangle: (2680 − 2530)/160"},
		{"short", nil, "lo", 2530 * psiPa, 1e-3, "2 % of 4,000 under 2,610"},
		{"short", []string{"accuracy", "1.925 %"}, "p_low", 147.0 / 154, 1e-9, "±77: (2680 − 2533)/154"},
		{"short", []string{"reading", "2727 psi", "accuracy", "1.25 %"}, "p_within", 0.97, 1e-9, "±50: 3 of 100 psi are under 2,680"},
		{"short", []string{"reading", "2735 psi"}, "p_within", 0.6875, 1e-9, "110/160: the best that ±80 can show"},
		{"short", nil, "gain", 1580.0 / 2735 * 125 * lbN, 1e-6, "lift/mid × rise"},
		{"short", nil, "gain_hi", 1.3 * 1580.0 / 2735 * 125 * lbN, 1e-6, "the same with 30 % dead weight"},
		{"short", nil, "gain_pct", 125.0 / 2610, 1e-12, "so many percent of pressure, so many of lift"},
		{"short", nil, "closer", 100 * (1 - 2610.0/2735) * inchM, 1e-9, "moments about the pivot"},

		{"reading", nil, "mean", 2610 * psiPa, 1e-3, "(2600 + 2620 + 2610 + 2610)/4"},
		{"reading", []string{"zero", "20 psi"}, "mean", 2590 * psiPa, 1e-3, "what the pointer shows at rest comes off"},
		{"reading", nil, "u", math.Sqrt(80*80/3.0+100/12.0+200/3.0/4) * psiPa, 1e-2, "JCGM 100:2008, 4.3.7, H.6.3.1 and 4.2.3"},
		{"reading", nil, "dof", 3 * math.Pow(80*80/3.0+100/12.0+200/3.0/4, 2) / math.Pow(200/3.0/4, 2), 1, "Welch–Satterthwaite, JCGM 100:2008, G.4.1"},
		{"reading", []string{"readings", "2610 psi", "step", "0 psi"}, "lo", (2610 - 0.95*80) * psiPa, 1, "one rectangle: 95 % of its width"},
		{"reading", nil, "shortfall", 70 * psiPa, 1e-3, "2680 − 2610"},
		{"reading", []string{"readings", "500 psi; 500 psi", "step", "0 psi"}, "lo", (500 - 0.95*120) * psiPa, 1, "grade B outside the middle half: 3 % (from memory)"},
		{"reading", []string{"readings", "1000 psi", "step", "0 psi"}, "lo", (1000 - 0.95*80) * psiPa, 1, "25 % of the scale is still the middle half"},
		{"reading", []string{"readings", "2610 psi", "step", "0 psi", "grade", "1.6"}, "lo", (2610 - 0.95*64) * psiPa, 1, "EN 837-1 class 1.6, any part of the scale"},
		{"reading", []string{"readings", "2610 psi", "step", "0 psi", "grade", "0.1", "temp", "60 degC"}, "u", math.Sqrt(4*4/3.0+64*64/3.0) * psiPa, 1, "EN 837-1: 0.04 %/K × 40 K of scale (second-hand)"},

		{"gain", nil, "slope", 1580.0 / 2735 * lbN / psiPa, 1e-12, "lift/at"},
		{"gain", nil, "lift_now", 1580.0 / 2735 * 2610 * lbN, 1e-6, "in proportion"},
		{"gain", []string{"dead", "474 lb"}, "gain", (1580 + 474) / 2735.0 * 125 * lbN, 1e-6, "(lift + dead)/at × rise"},
		{"gain", []string{"dead", "474 lb"}, "gain_pct", (1580 + 474) / 2735.0 * 125 / (1580 - (1580+474)/2735.0*125), 1e-9, "gain ÷ lift now"},
		{"gain", []string{"now", "2500 psi", "target", "2550 psi"}, "gain_pct", 0.02, 1e-9, "2 % pressure is about 2 % lift: common practice, no source"},

		{"before-after", nil, "needed", 2450 * 1.3 * psiPa, 1e-3, "before × (1 + reported)"},
		{"before-after", nil, "needed_lo", 2450 * (1 + 0.3/1.3) * psiPa, 1e-3, "with 30 % dead weight"},
		{"before-after", nil, "dead_needed", 0.3/(2700.0/2450-1) - 1, 1e-9, "about 1.9 times the load"},
		{"before-after", []string{"gauge_err", "0 psi", "step", "0 psi", "dead_lo", "20 %", "dead_hi", "20 %"}, "expected", 1.2 * (2700.0/2450 - 1), 1e-6, "nothing in doubt: (1 + d)(p₂/p₁ − 1)"},
		{"before-after", []string{"lift_before", "1390 lb", "lift_after", "1565 lb"}, "claimed_pct", 1565.0/1390 - 1, 1e-9, "two loads win over a percentage"},
	}
	for _, test := range tests {
		a := ask(t, test.worksheet, test.pairs...)
		if got := value(a, test.figure); !scalar.EqualWithinAbs(got, test.want, test.tol) {
			t.Errorf("%s %v: %s = %v, want %v (%s)", test.worksheet, test.pairs, test.figure, got, test.want, test.by)
		}
	}
}

// Verdicts that were computed when the words were chosen.
func TestVerdicts(t *testing.T) {
	tests := []struct {
		worksheet string
		pairs     []string
		id, head  string
	}{
		{"short", nil, "undecided", "Probably low, not shown"},
		{"short", []string{"accuracy", "1.925 %"}, "low", "Low by 70 psi"},
		{"short", []string{"reading", "2727 psi", "accuracy", "1.25 %"}, "within", "In range"},
		{"short", []string{"reading", "2735 psi"}, "undecided", "Probably in range, not shown"},
		{"short", []string{"reading", "2900 psi"}, "high", "High by 110 psi"},
		{"short", []string{"reading", "2690 psi"}, "undecided", "Can't tell with this gauge"},
		{"gain", nil, "more", "+72 to 94 lb"},
		{"gain", []string{"target", "2800 psi"}, "over-limit", "Above the manual's limit"},
		{"gain", []string{"now", "2800 psi"}, "over-limit-now", "Already above the limit"},
		{"gain", []string{"target", "2500 psi"}, "lower", "−64 to 83 lb"},
		{"before-after", nil, "beyond", "More than pressure explains"},
		{"before-after", []string{"claimed", "12 %"}, "fits", "Fits"},
		{"before-after", []string{"claimed", "5 %"}, "less", "Less than expected"},
		{"before-after", []string{"claimed", "0 %"}, "no-gain", "No gain reported"},
		{"before-after", []string{"after", "2460 psi"}, "no-rise", "No pressure rise shown"},
		{"before-after", []string{"after", "2300 psi"}, "fell", "Pressure went down"},
		{"before-after", []string{"same_gauge", "no", "after", "2500 psi", "claimed", "8 %"}, "untestable", "Too coarse to judge"},
	}
	for _, test := range tests {
		if v := ask(t, test.worksheet, test.pairs...).Verdict; v.ID != test.id || v.Head != test.head {
			t.Errorf("%s %v: %s %q, want %s %q", test.worksheet, test.pairs, v.ID, v.Head, test.id, test.head)
		}
	}
}

// What a target costs in risk is said before anybody sets it.
func TestTargetOnThisGauge(t *testing.T) {
	tests := []struct {
		target string
		chance float64 // of truly being over 2,790 psi, a rectangle ±80 psi about the target
		says   string
	}{
		{"2735 psi", 25.0 / 160, "chance of truly being over 2,790 psi is 16 %: that is too much."},
		{"2790 psi", 0.5, "is 50 %: that is too much."},
		{"2715 psi", 5.0 / 160, ""},
		{"2850 psi", 140.0 / 160, "don't set it there."}, // a row of many has no lines: the chance says it
		{"2500 psi", 0, ""},
	}
	for _, test := range tests {
		a := ask(t, "short", "target", test.target)
		lines := strings.Join(a.Lines, "\n")
		if got := value(a, "p_target"); math.Abs(got-test.chance) > 1e-9 || !strings.Contains(lines, test.says) || test.says == "" && strings.Contains(lines, "too much") {
			t.Errorf("%s: %v, %q", test.target, got, lines)
		}
	}
	if a := ask(t, "shim", "now", "2720 psi", "target", "2735 psi", "limit", "2790 psi", "gauge_err", "20 psi", "low", "2680 psi"); !strings.Contains(a.Verdict.Sentence, "nothing to correct") {
		t.Errorf("a valve shown to be in range is shimmed: %q", a.Verdict.Sentence)
	}
}

// A worse gauge never makes anything better known; a shared error cancels.
func TestDoubtProperties(t *testing.T) {
	width := func(a *calc.Answer, lo, hi string) float64 { return value(a, hi) - value(a, lo) }
	last := 0.0
	for _, grade := range []string{"0.1", "0.25", "0.6", "1", "1.6", "2.5", "4"} {
		a := ask(t, "reading", "grade", grade)
		w, u := width(a, "lo", "hi"), value(a, "U")
		if w <= last {
			t.Errorf("class %s: an interval %v wide, not wider than that of the class before", grade, w)
		}
		if wide := grade == "1.6" || grade == "2.5" || grade == "4"; wide && u < w/2 {
			t.Errorf("class %s: one wide rectangle, and yet U = %v does not overshoot the interval's half, %v", grade, u, w/2)
		}
		last = w
	}
	one := width(ask(t, "before-after"), "expected_lo", "expected_hi")
	two := width(ask(t, "before-after", "same_gauge", "no"), "expected_lo", "expected_hi")
	if one >= two {
		t.Errorf("one gauge gives %v, two give %v", one, two)
	}
}
