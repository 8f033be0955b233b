package worksheets

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// marks are the pressures of the page and one part, all the reader's; the rest is
// cleared.
func marks(changes ...string) calc.Entries {
	e := calc.Entries{}
	for _, f := range ratings.Fields {
		if !f.Usual {
			e[f.ID] = calc.Entry{Own: true}
		}
	}
	for _, c := range append([]string{"pressure=2610 psi", "target=2735 psi", "limit=2790 psi"}, changes...) {
		id, text, _ := strings.Cut(c, "=")
		e[id] = calc.Entry{Text: text, Own: true}
	}
	return e
}

// all are the example's numbers as the reader's own, with changes.
func all(changes ...string) calc.Entries {
	var texts []string
	for _, f := range ratings.Fields {
		texts = append(texts, f.ID+"="+f.Example)
	}
	return marks(append(texts, changes...)...)
}

// rods are the measures of a loader's cylinder.
var rods = []string{"bore=1.75 in", "rod=1 in", "tube_outside=2.25 in", "closed=32.9 in", "stroke=20.5 in", "gland=1.5 in"}

var ratingsBranches = []struct {
	entries             calc.Entries
	id, head, says, not string
}{
	{calc.Entries{}, "holds", "Weakest: cylinder's rod", "With the example's numbers: at 2,735 psi nothing entered here is past what it is good for; the cylinder's rod comes first, at 2,874 psi, with 5.1 % to spare. That is no reason to pass the manual's 2,790 psi.", "you"},
	{all(), "holds", "Weakest: cylinder's rod", "At 2,735 psi nothing entered here", "example"},
	{marks("pump=3000 psi"), "holds", "Weakest: pump", "the pump comes first, at 3,000 psi, with 9.7 % to spare. That is no reason to pass the manual's 2,790 psi. Judged: pump. Not judged: control valve, hose with fittings,", "example"},
	{marks(), "none", "No part entered", "Nothing is judged yet", "Judged:"},
	{marks("pump=2600 psi"), "over-now", "Past its mark now: pump", "The pump is marked 2,600 psi and the gauge shows 2,610 psi: have the pressure lowered", ""},
	{marks("pump=2609.9 psi"), "over-now", "Past its mark now: pump", "is marked 2,609.9 psi", ""},
	{marks("pump=2610 psi"), "over-target", "Target past its mark: pump", "The pump is marked 2,610 psi: don't set it to 2,735 psi.", ""},
	{marks("pump=2735 psi"), "holds", "Weakest: pump", "with 0 % to spare", ""},
	{marks("pump=3000 psi", "fitting=2700 psi", "hose=3500 psi"), "over-target", "Target past its mark: hose fitting", "The hose fitting is marked 2,700 psi", ""},
	{marks("fitting=3700 psi", "hose=3500 psi"), "holds", "Weakest: hose", "the hose comes first, at 3,500 psi", "as good as"},
	{marks(append(rods, "buckle_factor=2")...), "over-now", "Too much now: cylinder's rod", "The cylinder's rod works out good for 2,155 psi with the factor asked for, and the gauge shows 2,610 psi: raise nothing", ""},
	{marks(append(rods, "buckle_factor=1.6")...), "over-target", "Target too high: cylinder's rod", "works out good for 2,694 psi with the factor asked for: don't set it to 2,735 psi.", ""},
	// The manual's limit goes before every part, weak or strong.
	{marks("pump=5000 psi", "target=2800 psi"), "over-limit", "Above the manual's limit", "2,800 psi is above the manual's 2,790 psi: don't set it there, however strong the parts are.", "It is also"},
	{marks("pump=2700 psi", "target=2800 psi"), "over-limit", "Above the manual's limit", "It is also more than the pump is good for, 2,700 psi.", ""},
	{marks("pump=5000 psi", "pressure=2800 psi"), "over-limit-now", "Already above the limit", "bring it down first, whatever the parts are marked.", "It is also"},
	{marks("target=2800 psi"), "over-limit", "Above the manual's limit", "however strong", "Judged:"},
	// Without it there is no go-ahead.
	{marks("pump=3000 psi", "limit="), "no-limit", "What does the manual allow?", "that is no limit to set by: enter the manual's highest pressure.", "tell you where to stop"},
	{marks("pump=2700 psi", "limit="), "over-target", "Target past its mark: pump", "tell you where to stop", ""},
	// Spikes only where they are asked for.
	{marks("pump=3000 psi", "spike=1.25"), "spike-only", "Steady yes, spikes no: pump", "Steady, 2,735 psi passes nothing entered here; with spikes of 1.25 times that, 3,419 psi, it passes the 3,000 psi that the pump is good for. With such spikes it does so at 2,610 psi already.", ""},
	{marks("pump=3400 psi", "spike=1.25"), "spike-only", "Steady yes, spikes no: pump", "Smoother driving takes spikes away", "already"},
	{marks("pump=3420 psi", "spike=1.25"), "holds", "Weakest: pump", "", "Smoother"},
	{marks("pump=2700 psi", "spike=1.25"), "over-target", "Target past its mark: pump", "", "Smoother"},
	{marks("pump=3000 psi", "target=2500 psi"), "holds", "Weakest: pump", "At 2,610 psi nothing entered here is past what it is good for; the pump comes first, at 3,000 psi, with 15 % to spare.", "2,500"},
	{marks("pump=3000 psi", "target=2500 psi", "spike=1.2"), "spike-only", "Steady yes, spikes no: pump", "Steady, 2,610 psi passes nothing", "already"},
	// The example's parts neither clear a machine nor condemn it.
	{owned("pressure", "2600 psi"), "yours", "Enter your own parts", "With the example's target, highest pressure, pump, control valve, hose, hose fittings and 4 more: this says nothing of your machine yet", ""},
	{owned("pump", "2000 psi"), "yours", "Enter your own parts", "this says nothing of your machine yet", ""},
	{owned("pressure", "3100 psi", "limit", "3200 psi", "target", "3150 psi"), "yours", "Enter your own parts", "", "past its mark"},
	{owned("pressure", "2600 psi", "pump", "2500 psi"), "over-now", "Past its mark now: pump", "the pump is marked 2,500 psi and the gauge shows 2,600 psi", ""},
	{owned("target", "2700 psi", "pump", "2600 psi"), "over-target", "Target past its mark: pump", "", ""},
	{owned("target", "2900 psi"), "over-limit", "Above the manual's limit", "", "It is also"},
}

func TestRatingsBranches(t *testing.T) {
	for _, b := range ratingsBranches {
		a := All.Evaluate("ratings", b.entries, unit.US)
		if !a.OK() {
			t.Errorf("%v: %v", b.entries, a.Problems)
			continue
		}
		said := strings.Join(append([]string{a.Verdict.Sentence}, append(a.Lines, a.Rests...)...), " ")
		if a.Verdict.ID != b.id || a.Verdict.Head != b.head || !strings.Contains(said, b.says) || b.not != "" && strings.Contains(a.Verdict.Sentence+strings.Join(a.Lines, " "), b.not) {
			t.Errorf("%s · %s\nwant %q and not %q in\n%s · %s\n%s", b.id, b.head, b.says, b.not, a.Verdict.ID, a.Verdict.Head, said)
		}
		if !strings.HasPrefix(a.Cautions[0], "Stay under the service manual's upper limit") {
			t.Errorf("first caution %q", a.Cautions[0])
		}
	}
}

// Whatever is entered: a go-ahead is never above the manual's limit or what any
// part is good for, and never rests on the example's numbers beside the reader's.
func TestRatingsNeverPastALimit(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	holds := 0
	for range 3000 {
		entries := all()
		for i := range ratings.Fields {
			f := &ratings.Fields[i]
			text := near(f, r)
			if r.IntN(8) == 0 && f.Empty != "" {
				text = ""
			}
			entries[f.ID] = calc.Entry{Text: text, Own: true}
		}
		if r.IntN(4) == 0 {
			entries["spike"] = calc.Entry{Text: "1.3", Own: true}
		}
		stranger := r.IntN(6) == 0
		if stranger {
			delete(entries, []string{"limit", "target", "pump"}[r.IntN(3)])
		}
		a := All.Evaluate("ratings", entries, unit.US)
		if !a.OK() {
			continue
		}
		si := func(id string) float64 {
			v, err := unit.Parse(entries[id].Text, unit.Pressure, unit.Pressure.Shown(unit.US), unit.US)
			if err != nil {
				return math.NaN()
			}
			return v.SI
		}
		id := a.Verdict.ID
		now, target, limit := si("pressure"), si("target"), si("limit")
		if !stranger {
			if over := now > limit || target > limit; over != strings.HasPrefix(id, "over-limit") {
				t.Errorf("%v: %s, with the limit passed: %v", entries, id, over)
			}
		}
		if id != "holds" && id != "spike-only" {
			continue
		}
		if holds++; stranger {
			t.Errorf("%v: %s with numbers of the example's", entries, id)
		}
		lowest := math.Inf(1)
		for _, p := range parts {
			if x := value(a, "allow_"+p.id); !math.IsNaN(x) {
				lowest = min(lowest, x)
			}
		}
		if !(max(now, target) <= min(lowest, limit)) || value(a, "allow_weakest") != lowest || value(a, "margin_target") != lowest/target-1 || value(a, "margin_now") != lowest/now-1 {
			t.Errorf("%v: %s: now %v, target %v, limit %v, weakest %v of %v", entries, id, now, target, limit, value(a, "allow_weakest"), lowest)
		}
	}
	if holds < 100 {
		t.Errorf("only %d held", holds)
	}
}

// Published and independent values, through the page.
func TestRatingsAgainstTheOutside(t *testing.T) {
	tube := func(changes ...string) *calc.Answer {
		return must(t, marks(append([]string{"tube_od=1.25 in", "tube_wall=0.095 in", "tube_strength=55000 psi", "factor=8"}, changes...)...))
	}
	for _, c := range []struct {
		what      string
		got, want float64
		rel       float64
		source    string
	}{
		{"tube as if thin", value(tube(), "thin"), 1232 * psiPa, 0.5 / 1232, "Esposito, Fluid Power with Applications, Ex. 10-3: read"},
		// Lamé: 55,000/8·(1.25² − 1.06²)/(1.25² + 1.06²).
		{"the same tube, thick", value(tube(), "allow_wall"), 6875 * psiPa * (1.25*1.25 - 1.06*1.06) / (1.25*1.25 + 1.06*1.06), 1e-12, "Lamé by hand"},
		{"bore 50, outside 60 mm, 110.909 MPa", value(tube("tube_od=60 mm", "tube_wall=5 mm", "tube_strength=110.909091 MPa", "factor=1"), "allow_wall"), 20e6, 1e-8, "Lamé: computed"},
		{"Clavarino's wall, 250 mm, 15 MPa", value(must(t, marks("target=15 MPa", "tube_od=310 mm", "tube_wall=30 mm", "tube_strength=340 MPa", "factor=5")), "least_wall"), 0.029623, 2e-5, "Bhandari, Design of Machine Elements, Ex. 22.4: read"},
		// 40 kN from a bore of 50 mm is 20.3718 MPa.
		{"pin of 25 mm under 40 kN", value(must(t, marks("target=20.371832715763 MPa", "bore=50 mm", "pin_d=25 mm", "pin_strength=250 MPa")), "shear"), 40.743665e6, 1e-7, "F/(2A): computed"},
		{"its bearing in 40 mm", value(must(t, marks("target=20.371832715763 MPa", "bore=50 mm", "pin_d=25 mm", "pin_strength=250 MPa", "pin_width=40 mm")), "bearing"), 40e6, 1e-9, "F/(d·b): computed"},
		// A power series without sines gives 46,031.84751 N for 206 GPa (computed).
		{"a cylinder pushed out", value(must(t, marks(append(rods, "gland=2 in")...)), "critical"), 46_031.84751 * 200 / 206, 1e-9, "computed"},
		{"a plain rod, 30 mm, 1 m", value(must(t, marks("bore=50 mm", "rod=30 mm", "tube_outside=60 mm", "closed=0.6 m", "stroke=0.4 m")), "plain"), 80_839.18 * 200 / 206, 1e-7, "Euler: computed"},
		{"push of 1.75 in at 2,735 psi", value(must(t, marks("bore=1.75 in")), "push"), 2735 * math.Pi / 4 * 1.75 * 1.75 * lbN, 1e-12, "by hand"},
	} {
		if !scalar.EqualWithinRel(c.got, c.want, c.rel) {
			t.Errorf("%s: %v, want %v; %s", c.what, c.got, c.want, c.source)
		}
	}
}

// must answers without a problem.
func must(t *testing.T, e calc.Entries) *calc.Answer {
	t.Helper()
	a := All.Evaluate("ratings", e, unit.US)
	if !a.OK() {
		t.Fatalf("%v: %v", e, a.Problems)
	}
	return a
}

// What each entry does to what a part is good for.
func TestRatingsParts(t *testing.T) {
	allow := func(id string, changes ...string) float64 { return value(must(t, all(changes...)), "allow_"+id) }
	for _, c := range []struct {
		part, change string
		times        float64
	}{
		{"hose", "fitting=3,000 psi", 3000.0 / 3250},
		{"hose", "fitting=", 1},
		{"hose", "hose=", 4000.0 / 3250},
		{"wall", "factor=8", 0.5},
		{"rod", "buckle_factor=3", 0.5},
		{"pin", "pin_factor=6", 0.5},
		{"pin", "pin_d=0.5 in", 0.25},
		{"pin", "pin_width=", 1},
		{"pin", "pump=1 psi", 1},
		{"rod", "target=100 psi", 1},
	} {
		if got, want := allow(c.part, c.change), c.times*allow(c.part); !scalar.EqualWithinRel(got, want, 1e-9) {
			t.Errorf("%s: %s is good for %v, want %v", c.change, c.part, got, want)
		}
	}
	// An eye as thin as a fifth of the pin is what limits it.
	if got, want := allow("pin", "pin_width=0.2 in"), 20_000*psiPa*0.2/(math.Pi/4*1.75*1.75); !scalar.EqualWithinRel(got, want, 1e-9) {
		t.Errorf("a thin eye: %v, want %v", got, want)
	}
	// Nothing entered of the gland is twice the rod; a stub of a rod goes by Johnson, not Euler.
	if got, want := allow("rod", "gland="), allow("rod", "gland=2 in"); got != want {
		t.Errorf("gland empty: %v, two rods %v", got, want)
	}
	stub := value(must(t, all("closed=5 in", "stroke=1 in", "gland=1 in")), "critical")
	if squash := 250e6 * math.Pi / 4 * 0.0254 * 0.0254; !(stub > 0.95*squash && stub < squash) {
		t.Errorf("a stub of a rod bears %v, yield is at %v", stub, squash)
	}
	for _, changes := range []string{"hose=", "fitting="} {
		if a := must(t, all(changes)); !strings.Contains(strings.Join(a.Rests, " "), "as good as") {
			t.Errorf("%s: nothing says what is taken", changes)
		}
	}
}

func TestRatingsProblemsAndNotes(t *testing.T) {
	for changes, field := range map[string]string{
		"rod=1.75 in":          "rod",
		"tube_outside=1.75 in": "tube_outside",
		"stroke=32.9 in":       "stroke",
		"gland=33 in":          "closed",
		"tube_wall=0.25 in":    "tube_wall",
		"pump=0 psi":           "pump",
		"spike=0.9":            "spike",
		"factor=0":             "factor",
		"pin_strength=5 MPa":   "pin_strength",
		"pressure=":            "pressure",
	} {
		a := All.Evaluate("ratings", all(strings.Split(changes, "|")...), unit.US)
		if len(a.Problems) != 1 || a.Problems[0].Field != field || strings.Contains(a.Problems[0].Message, "{") {
			t.Errorf("%s: %v", changes, a.Problems)
		}
	}
	for _, c := range []struct{ entries, field string }{
		{"filter=150 psi", "filter"},
		{"filter=3000 psi", ""},
		{"bore=2 in", ""},
		{"bore=2 in|rod=1 in", "stroke"},
		{"pin_d=1 in", "bore"},
		{"pin_d=1 in|bore=2 in", "pin_strength"},
		{"tube_od=1 in", "tube_strength"},
	} {
		a := must(t, marks(strings.Split(c.entries, "|")...))
		if got := fmt.Sprint(a.Notes); (len(a.Notes) > 0) != (c.field != "") || c.field != "" && a.Notes[0].Field != c.field {
			t.Errorf("%s: notes %s, want one at %q", c.entries, got, c.field)
		}
	}
}

// A cylinder and the pressures travel here and on.
func TestRatingsCarry(t *testing.T) {
	a := must(t, all())
	for _, n := range a.Next {
		link := fmt.Sprint(n.Link)
		for _, want := range []string{"{now 2610 psi}", "{target 2735 psi}", "{limit 2790 psi}"} {
			if !strings.Contains(link, want) {
				t.Errorf("%s: %s does not carry %s", n.ID, link, want)
			}
		}
	}
}

// A part of which some measures are the reader's and some the example's is not
// judged, and never a complaint: the reader's bore may not fit the example's
// barrel.
func TestRatingsMixedPart(t *testing.T) {
	a := All.Evaluate("ratings", owned("bore", "3.5 in", "rod", "1.75 in"), unit.US)
	if !a.OK() || a.Verdict.ID != "yours" || a.Figure("allow_rod").Value != "" || a.Figure("allow_pin").Value != "" {
		t.Errorf("%v %+v %q", a.Problems, a.Verdict, a.Lines)
	}
	noted := false
	for _, n := range a.Notes {
		noted = noted || n.Field == "stroke" && strings.Contains(n.Text, "Still the example's: enter yours")
	}
	if !noted {
		t.Errorf("%v", a.Notes)
	}
}

// Every cylinder that can be arrives here from the cylinder's page without a
// complaint, the example's as well as the reader's.
func TestRatingsFromCylinder(t *testing.T) {
	for _, changes := range []string{"", "bore=6 in", "bore=3 in|rod=2.5 in|stroke=60 in", "bore=0.5 in|rod=0.25 in"} {
		a := All.Evaluate("cylinder", owned(changed(changes)...), unit.US)
		if !a.OK() {
			a = All.Evaluate("cylinder", nil, unit.US)
		}
		found := false
		for _, n := range a.Next {
			if n.ID == "ratings" {
				found = true
				if b := All.Evaluate("ratings", calc.FromLink(n.Link), unit.US); !b.OK() {
					t.Errorf("%s: arrives with %v", changes, b.Problems)
				}
			}
		}
		if !found {
			t.Errorf("%s: no way on to the ratings", changes)
		}
	}
}

// A margin within what gauges are off is called out.
func TestRatingsLittleToSpare(t *testing.T) {
	for mark, want := range map[string]bool{"2735 psi": true, "2800 psi": true, "2820 psi": false} { // 2,735 × 1.03 = 2,817
		a := All.Evaluate("ratings", marks("pump="+mark), unit.US)
		if got := strings.Contains(strings.Join(a.Lines, " "), "So little to spare"); got != want || a.Verdict.ID != "holds" {
			t.Errorf("%s: %s, %q", mark, a.Verdict.ID, a.Lines)
		}
	}
}
