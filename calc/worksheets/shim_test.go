package worksheets

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// SI per unit, for expectations.
const (
	psiPa    = 6894.757293168361
	inchM    = 0.0254
	perTenth = psiPa / (0.010 * inchM) // Pa/m of 1 psi per 0.010 in
)

// mine is the example scenario, all of it the reader's own, with changes given
// as "field=text". A field with the text "example" is left as the example's.
func mine(changes ...string) calc.Entries {
	e := calc.Entries{}
	for _, c := range append([]string{
		"now=2610 psi", "target=2735 psi", "low=2680 psi", "limit=2790 psi", "gauge_err=80 psi", "repeat=10 psi",
		"kit=0.005 in : 2; 0.010 in : 2; 0.020 in : 2; 0.040 in : 1",
	}, changes...) {
		id, text, _ := strings.Cut(c, "=")
		if delete(e, id); text != "example" {
			e[id] = calc.Entry{Text: text, Own: true}
		}
	}
	return e
}

func askShim(changes ...string) *calc.Answer { return All.Evaluate("shim", mine(changes...), unit.US) }

// value is a figure in SI, NaN where it does not exist.
func value(a *calc.Answer, id string) float64 {
	x, err := strconv.ParseFloat(a.Figure(id).Value, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// A valve that read over its limit once, with a scatter that makes little of it,
// and that has less shim in now.
const (
	overOnce       = "repeat=30 psi|gauge_err=1 psi|target=2765 psi|trials=0.030 in : 2795 psi; 0.010 in : 2655 psi; 0.010 in : 2655 psi; 0.010 in : 2655 psi; 0.010 in : 2655 psi; 0.010 in : 2655 psi"
	overOnceTurned = "pitch=1 mm|kit=|repeat=50 psi|gauge_err=1 psi|target=2765 psi|trials=0.5 mm : 2795 psi; 0.125 mm : 2632 psi; 0.125 mm : 2632 psi; 0.125 mm : 2632 psi; 0.125 mm : 2632 psi"
)

// shimBranches are entries, as changes with "|" between, and what is said of them.
var shimBranches = []struct{ changes, id, head, says string }{
	// The limit first, then what is above it, then the rest of what must be the reader's.
	{"limit=example", "yours", "Enter your manual's limit", "the 2,790 psi shown belongs to the example"},
	{"limit=example|now=2800 psi", "yours", "Enter your manual's limit", "With the example's highest pressure: no stack"},
	{"now=2800 psi", "stop", "Stop: take shim out", "Stop: 2,800 psi is above the manual's 2,790 psi; take shim out, do not add."},
	{"now=2800 psi|gauge_err=example", "stop", "Stop: take shim out", "2,800 psi is above"},
	{"now=2800 psi|target=2900 psi", "stop", "Stop: take shim out", "2,800 psi is above"},
	{"now=2800 psi|pitch=1 mm|kit=", "stop", "Stop: turn the screw out", "turn the screw out, not in"},
	{"now=2790.4 psi", "stop", "Stop: take shim out", "Stop: 2,790.4 psi is above the manual's 2,790 psi"},
	{"trials=0.010 in : 2655 psi; 0.030 in : 2795 psi", "stop", "Stop: take shim out", "Stop: 2,795 psi is above"},
	{"trials=0.030 in : 2795 psi; 0.030 in : 2780 psi", "stop", "Stop: take shim out", "is above the manual's 2,790 psi"},
	{"now=2795 psi|repeat=40 psi|trials=0.001 in : 2740 psi", "stop", "Stop: take shim out", "Stop: 2,795 psi is above"},
	{"now=2786 psi|target=2788 psi|trials=0.005 in : 2782 psi", "stop", "Stop: take shim out", "Stop: 2,795 psi is above"},
	{"target=2791 psi", "stop", "Stop: target too high", "Stop: the target 2,791 psi is above the manual's 2,790 psi."},
	{"now=example", "yours", "Enter your own numbers", "no stack until you enter your own reading."},
	{"now=example|target=example|gauge_err=example", "yours", "Enter your own numbers", "your own reading, target and gauge limit."},
	{"target=example|limit=2700 psi", "yours", "Enter your own numbers", "your own target."},
	{"now=example|limit=2500 psi|target=2450 psi|low=", "yours", "Enter your own numbers", "your own reading."},
	// The reading does not follow.
	{"trials=0.020 in : 2611 psi", "stuck", "Stop: shim isn't raising it", "Stop: 0.020 in of shim should have added about 90 psi, and the gauge shows a change of 1 psi; a leak, the pump or another relief may be setting this pressure."},
	{"trials=0.010 in : 2610 psi", "stuck", "Stop: shim isn't raising it", "about 45 psi, and the gauge shows a change of 0 psi"},
	{"trials=0.002 in : 2570 psi", "stuck", "Stop: shim isn't raising it", "the gauge shows a change of −40 psi"},
	{"trials=0.020 in : 2611 psi; 0.005 in : 2608 psi", "stuck", "Stop: shim isn't raising it", "0.020 in of shim"},
	// At the target.
	{"now=2735 psi|gauge_err=20 psi", "there", "At the target", "It reads 2,735 psi, at the target; the chance that it is truly over 2,790 psi is under 1 %."},
	{"now=2736 psi", "there", "At the target", "is 16 %. That is too much: don't add, check it on a better gauge."},
	{"now=2760 psi", "there", "Past the target", "past the target 2,735 psi: add nothing; the chance that it is truly over 2,790 psi is 31 %. That is too much"},
	{"target=2600 psi|low=", "there", "At the target", "It reads 2,610 psi"},
	{"target=2500 psi|low=", "there", "Past the target", "past the target 2,500 psi: add nothing"},
	{"gauge_err=20 psi|trials=0.010 in : 2660 psi; 0.025 in : 2755 psi", "there", "At the target", "It read 2,755 psi last, and all readings together put it at 2,7"},
	{"gauge_err=20 psi|target=2700 psi|trials=0.010 in : 2700 psi; 0.020 in : 2760 psi", "there", "Past the target", "It read 2,760 psi last, and all readings together put it at 2,7"},
	// The kit.
	{"kit=", "no-kit", "No shims listed", "About 0.028 in would reach 2,735 psi; list the shims you have to see where to stop. That much would leave the chance of truly being over 2,790 psi at 16 %, which is too much."},
	{"kit=|gauge_err=20 psi", "no-kit", "No shims listed", "list the shims you have to see where to stop."},
	{"kit=0.005 in : 0", "no-kit", "No shims listed", "About 0.028 in would"},
	{"kit=|trials=0.010 in : 2655 psi", "no-kit", "No shims listed", "About 0.028 in, counting what is in, would reach"},
	{"kit=0.010 in : 1|trials=0.010 in : 2655 psi", "no-kit", "No shims left", "All the shims listed are in; about 0.028 in, counting what is in, would reach 2,735 psi."},
	{"target=2620 psi", "small", "Already within one shim", "The thinnest shim, 0.005 in, would pass 2,620 psi by about 12 psi: leave it, or use a thinner one."},
	{"kit=0.010 in : 1; 0.015 in : 1|gauge_err=10 psi|target=2670 psi|trials=0.010 in : 2655 psi", "small", "Already within one shim", "The least change these shims allow, 0.005 in more, would pass 2,670 psi by about 7.5 psi"},
	{"now=2700 psi", "small", "No shim here is safe", "Even 0.005 in more leaves the chance of truly being over 2,790 psi at 8 %; a better gauge, a thinner shim or a lower target would help, in that order."},
	{"gauge_err=20 psi|kit=0.040 in : 3", "small", "No shim here is safe", "Even 0.040 in more leaves the chance of truly being over 2,790 psi at 50 %, and too much on any gauge: leave it, or use a thinner one."},
	{"gauge_err=20 psi|kit=|pitch=8 mm", "small", "Not even 1/8 turn is safe", "and too much on any gauge: leave it."},
	{overOnce + "|kit=0.020 in : 1", "small", "No shim here is safe", "0.020 in more is as much as has already read over 2,790 psi: leave it."},
	// Too much already, whatever there is to add.
	{"now=2730 psi", "small", "Nothing more is safe", "As it is, the chance of truly being over 2,790 psi is 13 % already: add nothing, and read it on a better gauge."},
	{"now=2730 psi|kit=", "small", "Nothing more is safe", "is 13 % already: add nothing"},
	{"gauge_err=200 psi|now=2700 psi|target=2750 psi|kit=0.010 in : 1|trials=0.010 in : 2740 psi", "small", "Nothing more is safe", "is 38 % already: add nothing"},
	// A step.
	{"", "go", "Next: fit 0.005 in", "Fit 0.005 in, read, enter it here; the most these numbers allow is a total of 0.020 in (0.020 in more), about 2,700 psi; the chance of truly being over 2,790 psi is then under 1 %. It stops short of 2,735 psi on purpose: 0.025 in would leave a chance of 8 %."},
	{"gauge_err=20 psi", "go", "Next: fit 0.005 in", "It stops short of 2,735 psi: 0.030 in would pass it."},
	{"gauge_err=20 psi|target=2700 psi", "go", "Next: fit 0.005 in", "a total of 0.020 in (0.020 in more), about 2,700 psi; the chance of truly being over 2,790 psi is then under 1 %."},
	{"kit=0.005 in : 1; 0.002 in : 1", "go", "Next: fit 0.002 in", "That stops short of 2,735 psi, with all the shims listed."},
	{"trials=0.010 in : 2655 psi", "go", "Next: fit 0.005 in", "a total of 0.020 in (0.010 in more)"},
	{"kit=0.010 in : 1; 0.015 in : 1|trials=0.010 in : 2655 psi", "go", "Next: change to a total of 0.015 in", "Take out 0.010 in and fit 0.015 in (0.005 in more), read"},
	{overOnce, "go", "Next: fit 0.005 in", "a total of 0.025 in (0.015 in more), about 2,7"},
	{overOnce, "go", "Next: fit 0.005 in", "It stops short of 2,765 psi on purpose: with 0.030 in it has read over 2,790 psi."},
	{"kit=example", "go", "Next: fit 0.005 in", "With the example's shims: fit 0.005 in"},
	// A screw.
	{"pitch=1 mm|kit=", "screw", "Next: 1/8 turn in", "Turn the screw 1/8 turn in, read, enter it; the most is 1/2 turn in all, about 2,699 psi; the chance of truly being over 2,790 psi is then under 1 %. It stops short of 2,735 psi on purpose: 5/8 turn would leave a chance of 8 %."},
	{"pitch=1 mm|kit=example", "screw", "Next: 1/8 turn in", "Turn the screw"},
	{overOnceTurned, "screw", "Next: 1/8 turn in", "the most is 3/8 turn in all, about 2,693 psi"},
	{"pitch=1 mm|kit=|gauge_err=1 psi|low=|target=2632.6 psi|trials=0.000246 in : 2611.1 psi", "small", "Already within 1/8 turn", "would pass"},
	{"pitch=1 mm|kit=|gauge_err=1 psi|low=|target=2645.4 psi|trials=0.0625 mm : 2621 psi", "screw", "Next: 1/8 turn in", "the most is 1/8 turn in all, about 2,64"},
	{"pitch=1 mm", "go", "Next: fit 0.005 in", "Fit 0.005 in"},
	{"pitch=1 mm|kit=|now=2725 psi", "small", "Nothing more is safe", "is 10 % already: add nothing"},
	{"pitch=1 mm|kit=|now=2700 psi", "small", "Not even 1/8 turn is safe", "Even 1/8 turn more leaves the chance of truly being over 2,790 psi at 8 %"},
	{"pitch=1 mm|kit=|now=2734 psi|gauge_err=10 psi", "small", "Already within 1/8 turn", "Another 1/8 turn would pass 2,735 psi by about 21 psi: leave it."},
}

func TestShimBranches(t *testing.T) {
	t.Parallel()
	for _, test := range shimBranches {
		a := askShim(strings.Split(test.changes, "|")...)
		if !a.OK() {
			t.Errorf("%s: %v", test.changes, a.Problems)
			continue
		}
		if v := a.Verdict; v.ID != test.id || v.Head != test.head || !strings.Contains(v.Sentence, test.says) {
			t.Errorf("%s:\ngot  %s · %s · %s\nwant %s · %s · … %s", test.changes, v.ID, v.Head, v.Sentence, test.id, test.head, test.says)
		}
		steps := test.id == "go" || test.id == "screw"
		for _, id := range []string{"first", "add", "stack", "stack_total", "screw_turns"} {
			if f := a.Figure(id); f.Value != "" && !steps {
				t.Errorf("%s: %s is %s", test.changes, id, f.Text)
			} else if f.Value == "" && f.Text == "" {
				t.Errorf("%s: %s is missing and does not say why", test.changes, id)
			}
		}
		if diamond := strings.Contains(a.Picture, "about "); diamond != steps {
			t.Errorf("%s: the picture names a stack: %v", test.changes, diamond)
		}
	}
}

// The page as it stands before anybody typed: invented numbers give no stack.
func TestShimExample(t *testing.T) {
	t.Parallel()
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		a := All.Evaluate("shim", calc.Entries{}, sys)
		if a.Verdict.ID != "yours" || a.Verdict.Head != "Enter your manual's limit" {
			t.Errorf("got %+v", a.Verdict)
		}
		for _, id := range []string{"first", "add", "stack", "stack_total", "screw_turns", "thickness", "expected", "p_over"} {
			if f := a.Figure(id); f.Value != "" || f.Text == "" {
				t.Errorf("%s: %+v", id, f)
			}
		}
		if len(a.Cautions) < 6 || !strings.HasPrefix(a.Picture, "<svg") {
			t.Errorf("%d cautions, picture %.20q", len(a.Cautions), a.Picture)
		}
	}
}

func TestShimLines(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		changes, want string // "!" before what must not be there
	}{
		{"", "It is probably low (93 %), but the gauge can't show it: there may be nothing to correct."},
		{"", "No reading on this gauge could show “in range”: ±80 psi against a range 110 psi wide."},
		{"now=2660 psi", "The gauge can't show that it is low: there may be nothing to correct."},
		{"low=", "!low"},
		{"now=2500 psi", "!nothing to correct"},
		{"gauge_err=20 psi", "!nothing to correct"},
		{"low=example", "The lowest of 2,680 psi belongs to the example"},
		{"trials=0.010 in : 2690 psi", "Your own readings give 80 psi per 0.010 in, not the usual 40 to 50 psi per 0.010 in; they are used."},
		{"trials=0.010 in : 2690 psi|rate_lo=41 psi per 0.010 in", "not 41 to 50 psi per 0.010 in; they are used."},
		{"trials=0.010 in : 2655 psi", "!they are used"},
		{"trials=0.010 in : 2660 psi; 0.010 in : 2655 psi", "not thicker than the one above"},
		{"now=2700 psi", "The pressure to expect and the chance are for 0.005 in more."},
		{"kit=", "The pressure to expect and the chance are for what is in now."},
		{"pitch=1 mm|kit=", "An eighth of a turn counts as 0.004921 in"},
	} {
		lines := strings.Join(askShim(strings.Split(test.changes, "|")...).Lines, "\n")
		want, absent := strings.CutPrefix(test.want, "!")
		if strings.Contains(lines, want) == absent {
			t.Errorf("%s: want %q in\n%s", test.changes, test.want, lines)
		}
	}
}

func TestShimNotes(t *testing.T) {
	t.Parallel()
	a := askShim("trials=0.010 in : 2655 psi; 0.020 in : 2701 psi; 0.015 in : 2677 psi", "target=2670 psi", "gauge_err=1 psi")
	want := []calc.Note{
		{Field: "trials", Row: 0, Text: "0.010 in more than at the first reading"},
		{Field: "trials", Row: 1, Text: "0.010 in more than the row above"},
		{Field: "trials", Row: 2, Text: "Not thicker than the row above: enter the total added, not the last shim alone"},
		{Field: "target", Row: -1, Text: "Under the manual's lowest, 2,680 psi"},
	}
	if len(a.Notes) != len(want) {
		t.Fatalf("got %v", a.Notes)
	}
	for i := range want {
		if a.Notes[i] != want[i] {
			t.Errorf("got %v, want %v", a.Notes[i], want[i])
		}
	}
	a = askShim("trials=0.007 in : 2640 psi")
	if n := a.Notes[len(a.Notes)-1]; n.Field != "kit" || !strings.Contains(n.Text, "0.007 in, can't be made of these") {
		t.Errorf("got %v", n)
	}
	if f := a.Figure("stack"); !strings.HasPrefix(f.Text, "0.007 in in now + ") {
		t.Errorf("got %q", f.Text)
	}
}

func TestShimProblems(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		changes, field string
		row            int
		says           string
	}{
		{"low=2800 psi", "low", -1, "Must not be above the highest, 2,790 psi"},
		{"rate_lo=60 psi per 0.010 in", "rate_hi", -1, "Must not be under the lowest, 60 psi per 0.010 in"},
		{"trials=0.010 in : 2655 psi; 0.010 in : 2701 psi", "trials", 1, "enter the total added"},
		{"trials=0.010 in : 2655 psi; 0.005 in : 2675 psi", "trials", 1, "enter the total added"},
		{"trials=3 in : 2655 psi", "trials", 0, "Must be above 0 in and up to 1.968 in"},
		{"trials=0.010 in : 9000 psi", "trials", 0, "up to 5,801 psi"},
		{"trials=0.010 in", "trials", 0, "Two numbers with a colon between"},
		{"kit=0.010 in : 1.5", "kit", 0, "not a whole number"},
		{"kit=0.010 in : 101", "kit", 0, "100"},
		{"limit=", "limit", -1, "Enter a value"},
		{"gauge_err=-1 psi", "gauge_err", -1, "from 0 psi"},
		{"repeat=0 psi", "repeat", -1, "above 0 psi"},
		{"material=music", "wire", -1, "Needed with the spring's wire"},
		{"material=music|wire=0.4 in|coil=2 in|turns=5|seat=0.5 in", "wire", -1, "Thicker than this wire is made"},
		{"material=music|wire=0.2 in|coil=0.2 in|turns=5|seat=0.5 in", "coil", -1, "Must be more than the wire's 0.2 in"},
	} {
		a := askShim(strings.Split(test.changes, "|")...)
		if a.OK() {
			t.Errorf("%s: no complaint", test.changes)
			continue
		}
		if p := a.Problems[0]; p.Field != test.field || p.Row != test.row || !strings.Contains(p.Message, test.says) {
			t.Errorf("%s: got %+v", test.changes, p)
		}
		if len(a.Figures) != 0 || a.Picture != "" {
			t.Errorf("%s: figures beside a complaint", test.changes)
		}
	}
}

func TestShimFigures(t *testing.T) {
	t.Parallel()
	const exact = 1e-9
	for _, test := range []struct {
		changes, figure string
		want, tol       float64
		source          string
	}{
		{"", "rate", 45 * perTenth, exact, "40 to 50 psi per 0.010 in: common practice, no source"},
		{"", "rate_u", 10 / math.Sqrt(12) * perTenth, exact, "width ÷ √12"},
		{"", "thickness", 125. / 45 * 0.010 * inchM, exact, "arithmetic"},
		{"", "stack_total", 0.020 * inchM, exact, "computed apart: 5 % at 0.0241 in"},
		{"", "expected", 2700 * psiPa, exact, "2,610 + 2 × 45"},
		{"kit=0.010 in : 1", "expected", 2655 * psiPa, exact, "40 to 50 psi per 0.010 in: common practice, no source"},
		{"now=2760 psi", "p_over", 0.3125, 1e-7, "(2,760 + 80 − 2,790) ÷ 160; the scatter's share is under 1e-8"},
		{"now=2760 psi", "expected", 2760 * psiPa, exact, "nothing added"},
		{"trials=0.010 in : 2655 psi", "fitted", 0.010 * inchM, exact, "the last row"},
		{"trials=0.010 in : 2655 psi", "add", 0.010 * inchM, exact, "0.020 less 0.010 in"},
		{"trials=0.020 in : 2701 psi; 0.010 in : 2655 psi", "fitted", 0.010 * inchM, exact, "the last row, not the thickest"},
		{"pitch=1 mm|kit=", "screw_turns", 0.5, exact, "0.0241 in is 0.61 turns of 1 mm"},
		{"pitch=1 mm", "screw_turns", 0.5, exact, "the same beside a kit"},
		// Esposito, Fluid Power with Applications, Ex. 8-1 (read): seat 0.75 in²,
		// spring 2,500 lb/in; this spring has that rate: 11.2e6·0.25⁴/(8·1³·2.1875).
		{"material=oil-tempered|wire=0.25 in|coil=1 in|turns=2.1875|seat=0.9772050238058398 in", "rate", 100. / 3 * perTenth, 1e-9, "33.33 psi per 0.010 in, computed from the read example"},
		{"material=oil-tempered|wire=0.25 in|coil=1 in|turns=2.1875|seat=0.9772050238058398 in", "rate_u", 0.15 / math.Sqrt(3) * 100 / 3 * perTenth, 1e-9, "±15 % is u = 8.7 %"},
	} {
		a := askShim(strings.Split(test.changes, "|")...)
		if got := value(a, test.figure); !scalar.EqualWithinAbsOrRel(got, test.want, 0, test.tol) {
			t.Errorf("%s: %s is %.12g, want %.12g; %s", test.changes, test.figure, got, test.want, test.source)
		}
	}
}

// A stack that reaches the target exactly is not lost to rounding, and does not
// pass it by rounding.
func TestShimReachesTarget(t *testing.T) {
	t.Parallel()
	psi := unit.Pressure.Shown(unit.US)
	for n := 1.0; n <= 60; n++ {
		now := 2500 + 1.7*n
		target := math.Round(10*(now+4.5*n)) / 10
		a := askShim("now="+strconv.FormatFloat(now, 'f', -1, 64)+" psi", "kit=1 thou : 60", "gauge_err=0 psi", "limit=3100 psi", "target="+strconv.FormatFloat(target, 'f', -1, 64)+" psi", "low=")
		if got := value(a, "stack_total") / inchM * 1000; math.Abs(got-n) > 1e-9 || value(a, "expected") > psi.ToSI(target) {
			t.Errorf("%v psi: %v thou, %v over", target, got, value(a, "expected")-psi.ToSI(target))
		}
	}
}

// Both systems of units show one answer.
func TestShimUnits(t *testing.T) {
	t.Parallel()
	e := mine("trials=0.010 in : 2655 psi")
	us, metric := All.Evaluate("shim", e, unit.US), All.Evaluate("shim", e, unit.Metric)
	for i, f := range us.Figures {
		m := metric.Figures[i]
		if f.Value != m.Value && f.ID != "stack" {
			t.Errorf("%s: %s in US, %s in metric", f.ID, f.Value, m.Value)
		}
	}
	if s := metric.Verdict.Sentence; !strings.Contains(s, "0.127 mm") || !strings.Contains(s, "bar") || strings.Contains(s, "psi") {
		t.Error(s)
	}
	if got := metric.Figure("rate").Text; got != "1.222 bar per 0.1 mm" && got != "1.22 bar per 0.1 mm" {
		t.Error(got)
	}
}

// Every reading more narrows what is expected of the same stack.
func TestShimTrialsNarrow(t *testing.T) {
	t.Parallel()
	width, u := math.Inf(1), math.Inf(1)
	for _, trials := range []string{"", "0.010 in : 2655 psi", "0.010 in : 2655 psi; 0.015 in : 2677 psi", "0.010 in : 2655 psi; 0.015 in : 2677 psi; 0.020 in : 2701 psi"} {
		a := askShim("gauge_err=20 psi", "trials="+trials)
		if got := value(a, "stack_total"); !scalar.EqualWithinRel(got, 0.025*inchM, 1e-9) {
			t.Fatalf("%s: the stack is %v", trials, a.Figure("stack_total").Text)
		}
		w, r := value(a, "expected_hi")-value(a, "expected_lo"), value(a, "rate_u")
		if !(w < width && r < u) {
			t.Errorf("%s: width %v after %v, u of the rate %v after %v", trials, w, width, r, u)
		}
		width, u = w, r
	}
}

// The values travel with the link, and an example's mark with them.
func TestShimLink(t *testing.T) {
	t.Parallel()
	for _, e := range []calc.Entries{{}, mine(), mine("trials=0.010 in : 2655 psi", "limit=example"), mine("pitch=1 mm", "kit=example"), mine("pitch=1 mm", "kit=")} {
		a := All.Evaluate("shim", e, unit.US)
		b := All.Evaluate("shim", calc.FromLink(a.Link), unit.US)
		if a.Verdict.ID != b.Verdict.ID || a.Verdict.Head != b.Verdict.Head || a.Figure("stack").Text != b.Figure("stack").Text {
			t.Errorf("got %+v, want %+v", b.Verdict, a.Verdict)
		}
	}
}

func BenchmarkShim(b *testing.B) {
	e := mine("trials=0.010 in : 2655 psi; 0.015 in : 2677 psi")
	for b.Loop() {
		All.Evaluate("shim", e, unit.US)
	}
}
