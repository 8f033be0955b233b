package worksheets

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc"
	"plainlift/calc/gauge"
	"plainlift/calc/unit"
)

// readingBranches are entries, as changes with "|" between, and what is said of
// them. The numbers are invented.
var readingBranches = []struct{ changes, id, head, says string }{
	{"readings=2600 psi; 2610 psi; 2590 psi; 2600 psi", "low", "Low by 80 psi", "the chance that the true pressure is under is 98 %"},
	{"readings=2870 psi; 2880 psi; 2870 psi; 2880 psi", "high", "High by 85 psi", "Bring it down before anything else."},
	{"readings=2735 psi; 2740 psi; 2730 psi; 2735 psi|grade=1", "within", "In range", "the true pressure is between 2,680 and 2,790 psi is over 99 %"},
	{"step=10 psi", "undecided", "Probably low, not shown", "it reads 70 psi under 2,680 psi"},
	{"readings=2735 psi; 2740 psi; 2730 psi; 2735 psi", "undecided", "Probably in range, not shown", "with 16 % for low and 16 % for high"},
	{"readings=2830 psi; 2840 psi; 2830 psi; 2840 psi", "undecided", "Probably high, not shown", "Don't raise it."},
	{"readings=2690 psi; 2700 psi; 2690 psi; 2700 psi", "undecided", "Can't tell with this gauge", "showing 2,695 psi fits low (41 %) and in range (59 %)."},
	{"low=|high=", "no-range", "2,532 to 2,688 psi", "probably 2,532 to 2,688 psi (95 %); enter the manual's range"},
	{"low=|high=|confidence=50 %", "no-range", "2,570 to 2,650 psi", "(50 %)"},
	// With one limit only.
	{"high=|readings=3900 psi", "not-low", "Not low", "is at or above 2,680 psi is over 99 %; enter the manual's highest"},
	{"low=|readings=50 psi", "not-high", "Not high", "is at or below 2,790 psi is over 99 %; enter the manual's lowest"},
	{"low=|readings=2780 psi", "undecided", "Can't tell with this gauge", "fits not high (56 %) and high (44 %)."},
	{"high=|readings=2710 psi", "undecided", "Probably not low, not shown", "robably not low, but this gauge can't show it: the chance is 69 %, with 31 % for low."},
	{"low=|readings=2760 psi", "undecided", "Probably not high, not shown", "the chance is 69 %, with 31 % for high. Don't raise it."},
	// What the reader asks for decides.
	{"confidence=90 %", "low", "Low by 70 psi", "is 94 %"},
	{"confidence=99.9 %|readings=2599 psi", "undecided", "Probably low, not shown", "the chance of truly low is 99.5 %"},
}

// changed takes changes apart into id, text pairs.
func changed(changes string) []string {
	var pairs []string
	for _, c := range strings.Split(changes, "|") {
		id, text, _ := strings.Cut(c, "=")
		pairs = append(pairs, id, text)
	}
	return pairs
}

// read answers the reading worksheet from its closed forms alone.
func read(t *testing.T, pairs ...string) *calc.Answer {
	t.Helper()
	a := All.Evaluate("reading", owned(pairs...), unit.US)
	if !a.OK() {
		t.Fatalf("%v: %v", pairs, a.Problems)
	}
	return a
}

func TestReadingBranches(t *testing.T) {
	for _, b := range readingBranches {
		v := read(t, changed(b.changes)...).Verdict
		if v.ID != b.id || v.Head != b.head || !strings.Contains(v.Sentence, b.says) {
			t.Errorf("%s:\ngot  %s · %s · %s\nwant %s · %s · … %s", b.changes, v.ID, v.Head, v.Sentence, b.id, b.head, b.says)
		}
	}
}

// texts is everything an answer remarks, for looking words up.
func texts(a *calc.Answer) string {
	all := append(append(append([]string{}, a.Lines...), a.Rests...), a.Notices...)
	for _, n := range a.Notes {
		all = append(all, n.Field+": "+n.Text)
	}
	return strings.Join(all, "\n")
}

func TestReadingRemarks(t *testing.T) {
	tests := []struct{ changes, says, not string }{
		{"step=10 psi", "The gauge itself is 99 % of the doubt: repeating the reading will not help.", "Take four or more"},
		{"readings=2610 psi", "One reading says nothing of how readings scatter", "hardly known"},
		{"readings=2610 psi; 2610 psi", "2 readings, all alike, hardly show", ""},
		{"readings=2600 psi; 2610 psi; 2620 psi", "With 3 readings the scatter is hardly known yet", "will not help"},
		{"readings=2500 psi; 2700 psi; 2550 psi; 2690 psi", "more readings help", "will not help"},
		{"readings=2500 psi; 2700 psi; 2550 psi; 2690 psi", "readings: They differ by 200 psi, far more than the step", ""},
		{"readings=2600 psi; 2640 psi; 2610 psi; 2620 psi", "", "They differ by"},
		{"grade=4A|step=100 psi", "a dial with finer marks helps", ""},
		{"grade=1|temp=80 °C", "temp: Away from 20 °C (68 °F) this gauge may drift by ±96 psi", ""},
		{"grade=1|temp=80 °C", "The gauge's temperature is", ""},
		{"grade=B|temp=25 °C", "", "temp:"},
		{"readings=900 psi|low=950 psi|high=1000 psi", "scale: The readings stand at 23 % of the dial.", ""},
		{"readings=1000 psi|low=950 psi|high=1000 psi", "", "scale:"},
		{"readings=3100 psi", "scale: The readings stand at 78 % of the dial.", ""},
		{"zero=-90 psi", "zero: The pointer rests further off zero than ±80 psi", ""},
		{"zero=80 psi", "zero: It rests above zero: every reading counts 80 psi less than it shows.", "zero: The pointer"},
		{"zero=-30 psi", "zero: It rests below zero: every reading counts 30 psi more than it shows.", "zero: The pointer"},
		{"zero=0 psi", "", "zero:"},
		{"oil=30 °C", "oil: Cold oil reads higher", ""},
		{"oil=60 °C|rpm=2400", "Read at 2,400 rpm.", "oil:"},
		{"oil=60 °C|rpm=2400", "Read with the oil at 140 °F.", ""},
		{"grade=span|percent=0 %|step=0 psi|readings=2610 psi", "No gauge is that good.", ""},
		{"step=10 psi", "a gauge good to ±1.6 % of the same scale would settle it", "No gauge class"},
		{"readings=2679 psi", "No gauge class would settle this one: the reading is too near the limit.", ""},
		{"temp=120 °C", "No gauge class alone would settle this one", ""},
		{"step=10 psi", "No reading on this gauge could show “in range”: ±80 psi against a range 110 psi wide.", ""},
		{"grade=1", "", "No reading on this gauge"},
	}
	for _, test := range tests {
		got := texts(read(t, changed(test.changes)...))
		if !strings.Contains(got, test.says) || test.not != "" && strings.Contains(got, test.not) {
			t.Errorf("%s: says\n%s\nwant %q, and not %q", test.changes, got, test.says, test.not)
		}
	}
}

func TestReadingProblems(t *testing.T) {
	tests := []struct {
		changes, field string
		row            int
		says           string
	}{
		{"readings=2600 psi; 4100 psi", "readings", 1, "The dial only goes up to 4,000 psi"},
		{"low=2800 psi", "high", -1, "Must be above the lowest, 2,800 psi"},
		{"confidence=49 %", "confidence", -1, "Must be from 50 % to 99.9 %"},
		{"zero=2610 psi", "zero", -1, "as much as the readings themselves"},
		{"zero=4100 psi", "zero", -1, "the dial only goes up to 4,000 psi"},
		{"grade=of-reading|percent=30 %", "percent", -1, "Must be from 0 % to 20 %"},
		{"grade=5Z", "grade", -1, "not one of the choices"},
		{"readings=" + strings.Repeat("2600;", 500), "readings", -1, "up to 200 can be used"},
		{"readings=", "readings", -1, "Enter a value, such as 2,600; 2,620; 2,610; 2,610 psi"},
	}
	for _, test := range tests {
		a := All.Evaluate("reading", owned(changed(test.changes)...), unit.US)
		if len(a.Problems) == 0 {
			t.Errorf("%.40s: no problem", test.changes)
			continue
		}
		if p := a.Problems[0]; p.Field != test.field || p.Row != test.row || !strings.Contains(p.Message, test.says) {
			t.Errorf("%.40s: %+v, want %s row %d %q", test.changes, p, test.field, test.row, test.says)
		}
	}
}

// The interval of the example, and of the same without repeats and step, worked
// out apart: by integrating the t density over the two limits, and by hand. The
// trials, which draw from the model itself, must agree with each.
func TestReadingIntervals(t *testing.T) {
	tests := []struct {
		changes string
		half    float64 // psi
		below   float64
		by      string
	}{
		{"step=10 psi", 77.58425, 0.9353997258, "t of three degrees, ±80 and ±5, by a midpoint sum of 20,000 points"},
		{"readings=2610 psi|step=0 psi", 76, 0.9375, "one rectangle: 0.95 × 80; (70 + 80)/160"},
	}
	for _, test := range tests {
		a := ask(t, "reading", changed(test.changes)...)
		if lo := (2610 - test.half) * psiPa; !scalar.EqualWithinAbs(value(a, "lo"), lo, 0.02*psiPa) {
			t.Errorf("%s: lo %v, want %v (%s)", test.changes, value(a, "lo")/psiPa, lo/psiPa, test.by)
		}
		if !scalar.EqualWithinAbs(value(a, "p_below"), test.below, 1e-4) {
			t.Errorf("%s: p_below %v, want %v (%s)", test.changes, value(a, "p_below"), test.below, test.by)
		}
	}
	for _, changes := range []string{
		"step=10 psi", "readings=2610 psi|step=0 psi", "readings=2600 psi; 2620 psi", "readings=2600 psi; 2610 psi; 2630 psi|confidence=99.9 %",
		"grade=4A|temp=45 °C|step=50 psi", "readings=2400 psi; 2800 psi; 2500 psi; 2700 psi; 2600 psi|confidence=68 %", "grade=of-reading|percent=3 %|zero=-20 psi",
		"grade=span|percent=0 %|step=0 psi|readings=2610 psi",
	} {
		if a := ask(t, "reading", changed(changes)...); !strings.Contains(a.Check, "the closed form agrees") {
			t.Errorf("%s: %s", changes, a.Check)
		}
	}
}

// The pointer at rest moves the mean, and not the place on the dial by which a
// grade is judged; more of the same readings leave the gauge's part as it is.
func TestReadingZeroAndRepeats(t *testing.T) {
	edge := read(t, "readings", "1000 psi", "zero", "30 psi", "step", "0 psi", "low", "", "high", "")
	if got := value(edge, "hi") / psiPa; !scalar.EqualWithinAbs(got, 970+76, 1e-6) {
		t.Errorf("grade B at a quarter of the dial, pointer 30 psi high: hi %v, want 1046", got)
	}
	same := strings.Repeat("2610 psi;", 40)
	one, many := read(t, "readings", "2610 psi"), read(t, "readings", same)
	for _, id := range []string{"mean", "lo", "hi", "u", "p_below"} {
		if !scalar.EqualWithinRel(value(one, id), value(many, id), 1e-12) {
			t.Errorf("%s: one reading %v, forty alike %v", id, value(one, id), value(many, id))
		}
	}
	for _, a := range []*calc.Answer{one, many} {
		if f := a.Figure("dof"); f.Value != "Infinity" {
			t.Errorf("degrees of freedom without scatter: %+v", f)
		}
	}
}

// A mean just past show_low shows low, one just short of it does not; so for
// high.
func TestReadingShows(t *testing.T) {
	a := read(t, "step", "10 psi")
	for _, test := range []struct {
		figure string
		past   float64 // psi, towards the verdict
		want   string
	}{{"show_low", -0.01, "low"}, {"show_high", 0.01, "high"}} {
		// The example's scatter about another middle.
		at := func(mean float64) string {
			var rows []string
			for _, d := range []float64{-10, 10, 0, 0} {
				rows = append(rows, unit.Pressure.Shown(unit.US).Edit((mean+d)*psiPa)+" psi")
			}
			return read(t, "readings", strings.Join(rows, "; ")).Verdict.ID
		}
		edge := value(a, test.figure) / psiPa
		if past, short := at(edge+test.past), at(edge-test.past); past != test.want || short != "undecided" {
			t.Errorf("%s %v: %s past it, %s short of it", test.figure, edge, past, short)
		}
	}
}

// Every grade known to gauge can be chosen, says what it allows, and gives that
// limit in the middle of the dial.
func TestGradeOptions(t *testing.T) {
	options := map[string]string{}
	for _, o := range gradeOptions() {
		options[o.ID] = o.Label
	}
	if len(options) != len(gauge.Grades)+2 {
		t.Errorf("%d choices for %d grades and two percentages", len(options), len(gauge.Grades))
	}
	for id, want := range map[string]string{"1.6": "1.6 (EN 837-1)", "B": "B: 3-2-3 % (ASME)", "2A": "2A: 0.5 % (ASME)", "D": "D: 5 % (ASME)",
		"not-marked": "nothing printed: 3 % (common practice)", "span": "percent of full scale", "of-reading": "percent of reading"} {
		if options[id] != want {
			t.Errorf("%s reads %q, want %q", id, options[id], want)
		}
	}
	for _, g := range gauge.Grades {
		a := read(t, "grade", g.ID, "readings", "2000 psi")
		if got := value(a, "a") / psiPa; !scalar.EqualWithinRel(got, g.Middle*4000, 1e-9) {
			t.Errorf("grade %s is good to ±%v psi, want %v", g.ID, got, g.Middle*4000)
		}
	}
	of := read(t, "grade", "of-reading", "percent", "3 %", "readings", "2000 psi", "zero", "100 psi")
	if got := value(of, "a") / psiPa; !scalar.EqualWithinRel(got, 60, 1e-9) {
		t.Errorf("3 %% of a reading of 2,000 is %v psi", got)
	}
}

// The short answer and this page hand each other the same gauge.
func TestReadingCarries(t *testing.T) {
	carried := func(a *calc.Answer, to string) *calc.Answer {
		for _, n := range a.Next {
			if n.ID == to {
				return All.Evaluate(to, calc.FromLink(n.Link), unit.US)
			}
		}
		t.Fatalf("no way on to %s", to)
		return nil
	}
	short := ask(t, "short", "reading", "2600 psi", "accuracy", "1.6 %", "scale", "5000 psi", "low", "2650 psi", "high", "2750 psi")
	here := carried(short, "reading")
	if got := value(here, "a"); !scalar.EqualWithinRel(got, value(short, "a"), 1e-9) || !scalar.EqualWithinRel(value(here, "mean"), 2600*psiPa, 1e-9) {
		t.Errorf("1.6 %% of 5,000 psi arrives as %v psi, 2,600 psi as %v", got/psiPa, value(here, "mean")/psiPa)
	}
	if len(here.Examples) > 0 {
		t.Errorf("the reader's numbers arrive as the example's: %v", here.Examples)
	}
	// A grade of three parts, of a warm gauge, goes back as what it allows here.
	back := carried(read(t, "readings", "900 psi", "temp", "30 °C", "low", "", "high", ""), "short")
	if got, want := value(back, "a")/psiPa, 0.03*4000+0.004*4000; math.Abs(got-want) > 1e-3 {
		t.Errorf("±%v psi goes back as ±%v", want, got)
	}
	if back.Verdict.ID != "no-range" {
		t.Errorf("a range left empty goes back as %s", back.Verdict.Sentence)
	}
	for _, id := range back.Examples {
		if id == "reading" {
			t.Error("the reader's mean goes back as the example's")
		}
	}
}

// Beside a complaint there are no figures, so no remark that quotes one is left.
func TestReadingRemarksBesideComplaint(t *testing.T) {
	a := All.Evaluate("reading", owned("zero", "-4100 psi", "readings", "2600 psi; 2640 psi"), unit.US)
	for _, n := range a.Notes {
		a.Notices = append(a.Notices, n.Text)
	}
	for _, s := range a.Notices {
		if a.OK() || strings.Contains(s, "{") {
			t.Errorf("%v %q", a.Problems, s)
		}
	}
}

// A machine keeps the class or grade that is printed on its gauge.
func TestReadingKeepsTheGrade(t *testing.T) {
	for choice, want := range map[string]string{"A": "A", "1.6": "1.6", gradeOfScale: gradeOfScale, gradeOfReading: gradeOfScale} {
		a := All.Evaluate("reading", calc.Entries{"grade": {Text: choice, Own: true}, "percent": {Text: "1 %", Own: true}}, unit.US)
		got := "nothing"
		for _, k := range a.Known {
			if k.Quantity == "gauge grade" && k.Lasts {
				got = k.Text
			}
		}
		if got != want {
			t.Errorf("grade %s is kept as %s, want %s", choice, got, want)
		}
	}
	if a := All.Evaluate("reading", nil, unit.US); len(a.Known) != 0 {
		t.Errorf("the example is kept: %v", a.Known)
	}
}
