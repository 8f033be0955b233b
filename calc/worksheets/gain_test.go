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

// answer works a worksheet without its simulation from the reader's own texts.
func answer(t *testing.T, worksheet string, sys unit.System, pairs ...string) *calc.Answer {
	t.Helper()
	a := All.Evaluate(worksheet, owned(pairs...), sys)
	if !a.OK() {
		t.Fatalf("%s %v: %v", worksheet, pairs, a.Problems)
	}
	return a
}

// Every branch by the invented example's numbers and some close to them.
func TestGainBranches(t *testing.T) {
	for _, b := range []struct{ changes, id, head, says string }{
		{"now=2610 psi", "more", "+72 to 94 lb", "2,735 psi instead of 2,610 psi (4.8 % more) lifts 72 to 94 lb more on 1,508 lb; carrying the load about 4.6 in nearer does the same. It won't raise faster or keep the rear wheels down."},
		{"dead=474 lb", "more", "+94 lb", "lifts 94 lb more (6.3 %) on 1,486 lb"},
		{"dead=0 lb", "more", "+72 lb", "lifts 72 lb more (4.8 %) on 1,508 lb"},
		{"target=2800 psi", "over-limit", "Above the manual's limit", "2,800 psi is above the manual's 2,790 psi: by arithmetic 110 to 140 lb more, but don't set it there."},
		{"target=2800 psi|dead=474 lb", "over-limit", "Above the manual's limit", "by arithmetic 140 lb more, but don't set it there."},
		{"now=2800 psi", "over-limit-now", "Already above the limit", "2,800 psi already reads above the manual's 2,790 psi; bring it down first."},
		{"now=2800 psi|target=2900 psi", "over-limit-now", "Already above the limit", "bring it down first"},
		{"target=2610 psi", "equal", "No change", "nothing to gain"},
		{"target=2500 psi", "lower", "−64 to 83 lb", "owering it from 2,610 psi to 2,500 psi gives up 64 to 83 lb of 1,508 lb."},
		{"target=2500 psi|dead=474 lb", "lower", "−83 lb", "gives up 83 lb of 1,486 lb."},
		{"now=1000 psi|target=1200 psi|dead=2000 lb", "none", "Arms and tool take it all", "no percentage can be given. 1,200 psi would not lift a load either."},
		{"now=1000 psi|dead=2000 lb", "none", "Arms and tool take it all", "no percentage can be given."},
		// Raised by.
		{"rise=125 psi", "more", "+72 to 94 lb", "2,735 psi instead of 2,610 psi"},
		{"rise=180 psi", "more", "+100 to 140 lb", "2,790 psi instead of 2,610 psi"},
		{"rise=181 psi", "over-limit", "Above the manual's limit", "2,791 psi is above"},
		{"rise=180.0001 psi", "over-limit", "Above the manual's limit", "2,790.0001 psi is above the manual's 2,790 psi"},
		{"rise=0 psi", "equal", "No change", ""},
		{"rise=-110 psi", "lower", "−64 to 83 lb", "to 2,500 psi gives up"},
		{"rise=125 psi|target=2900 psi", "more", "+72 to 94 lb", "2,735 psi instead"},
		{"limit=|target=3000 psi", "more", "+230 to 290 lb", "3,000 psi instead"},
	} {
		v := answer(t, "gain", unit.US, changed(b.changes)...).Verdict
		if v.ID != b.id || v.Head != b.head || !strings.Contains(v.Sentence, b.says) {
			t.Errorf("%s:\ngot  %s · %s · %s\nwant %s · %s · … %s", b.changes, v.ID, v.Head, v.Sentence, b.id, b.head, b.says)
		}
	}
	if a := answer(t, "gain", unit.US, changed("now=1000 psi|dead=2000 lb")...); strings.Contains(a.Verdict.Sentence, "either") {
		t.Errorf("the target lifts %s, yet: %s", a.Figure("lift_target").Text, a.Verdict.Sentence)
	}
}

// What is said beside the verdict, and what must not be.
func TestGainRemarks(t *testing.T) {
	const noLimitSays, closerSays, watch = "without it this page can't tell you where to stop", "without touching the pressure", "Watch the gauge while turning"
	for _, test := range []struct{ changes, says, not string }{
		{"now=2610 psi", "it is at least 4.8 % of what is lifted there", noLimitSays},
		{"now=2610 psi", watch, closerSays},
		{"limit=", noLimitSays, ""},
		{"limit=|rise=-100 psi", "", noLimitSays},
		{"target=2800 psi", closerSays, watch},
		{"now=2800 psi", watch, ""}, // it has to come down
		{"target=2610 psi", "", watch},
		{"dead=474 lb", "as much of the pressure as 474 lb more load would", "is not known"},
		{"now=2610 psi", "Pressure does not change speed", ""},
		{"now=2610 psi", "the rear wheels often lift before the relief opens", ""},
	} {
		a := answer(t, "gain", unit.US, changed(test.changes)...)
		all := texts(a) + strings.Join(a.Cautions, "\n")
		if !strings.Contains(all, test.says) || test.not != "" && strings.Contains(all, test.not) {
			t.Errorf("%s: want %q and not %q in\n%s", test.changes, test.says, test.not, all)
		}
		if !strings.HasPrefix(a.Cautions[0], "Stay under the service manual's upper limit") {
			t.Errorf("%s: first caution %q", test.changes, a.Cautions[0])
		}
	}
}

func TestGainProblems(t *testing.T) {
	for changes, field := range map[string]string{
		"rise=-2610 psi":           "rise",
		"rise=-2700 psi":           "rise",
		"rise=3500 psi":            "rise",
		"rise=fast":                "rise",
		"dead=-1 lb":               "dead",
		"at=0 psi":                 "at",
		"reach=0 in":               "reach",
		"lift=":                    "lift",
		"target=6000 psi":          "target",
		"now=":                     "now",
		"rise=3500 psi|now=50 bar": "",
	} {
		a := All.Evaluate("gain", owned(changed(changes)...), unit.US)
		if field == "" && !a.OK() || field != "" && (len(a.Problems) != 1 || a.Problems[0].Field != field || strings.Contains(a.Problems[0].Message, "{")) {
			t.Errorf("%s: %v", changes, a.Problems)
		}
	}
}

// A rise wins over the target, which then stands nowhere.
func TestGainRise(t *testing.T) {
	a := answer(t, "gain", unit.US, "rise", "125 psi")
	for _, p := range a.Link {
		if p.Key == "target" {
			t.Error("the link carries the target")
		}
	}
	if strings.Contains(a.Verdict.Sentence, "example's target") || strings.Contains(strings.Join(a.Examples, " "), "target") {
		t.Errorf("the target passes for used: %s", a.Verdict.Sentence)
	}
	for _, n := range a.Next {
		if n.ID == "shim" && !strings.Contains(fmt.Sprint(n.Link), "{target 2735 psi}") {
			t.Errorf("shim gets %v", n.Link)
		}
	}
	// The same load is gained from any pressure: whoever has not read it may say so.
	for _, now := range []string{"1500 psi", "2400 psi", "2735 psi"} {
		b := answer(t, "gain", unit.US, "rise", "125 psi", "now", now, "limit", "")
		if got, want := value(b, "gain"), value(a, "gain"); !scalar.EqualWithinRel(got, want, 1e-9) {
			t.Errorf("from %s: %v, want %v", now, got, want)
		}
	}
}

// Published and independent values. Each rests on statics that the straight
// line did not come from.
func TestGainAgainstStatics(t *testing.T) {
	// Esposito, Fluid Power with Applications, Ex. 6-5 (read): a lever of arms 10
	// and 10 in, its cylinder square to it, holds 1000 lb with 2000 lb as a class 3
	// lever; on a piston of 1 in² that is 2000 psi, and the lever weighs nothing.
	a := answer(t, "gain", unit.US, "lift", "1000 lb", "at", "2000 psi", "now", "1000 psi", "target", "2000 psi", "dead", "0 lb")
	if got := value(a, "lift_now"); !scalar.EqualWithinRel(got, 500*lbN, 1e-12) {
		t.Errorf("the lever at half its pressure: %v N, want 500 lb", got)
	}
	// OECD Code 2 corrects lift to 90 % of the relief setting (memory, high).
	a = answer(t, "gain", unit.US, "lift", "1000 lb", "at", "2000 psi", "now", "1800 psi", "target", "2000 psi")
	if got := value(a, "lift_now"); !scalar.EqualWithinRel(got, 900*lbN, 1e-12) {
		t.Errorf("lift at 90 %% of the setting: %v N, want 900 lb", got)
	}

	// Beer & Johnston, Statics: a table on two linkages carries a 1000-kg crate
	// with 5.15 kN in each cylinder (problem and value from memory, high); links of
	// 2a = 1.4 m, L = 3.20 m, θ = 60°. Virtual work: F·ds = (W/2)·dy, the
	// derivative taken numerically.
	const half, long, theta, h = 0.70, 3.20, math.Pi / 3, 1e-5
	y := func(q float64) float64 { return 2 * half * math.Sin(q) }
	s := func(q float64) float64 { return math.Sqrt(half*half + long*long - 2*half*long*math.Cos(q)) }
	each := func(w float64) float64 { return w / 2 * (y(theta+h) - y(theta-h)) / (s(theta+h) - s(theta-h)) }
	if got := each(1000 * 9.81); math.Abs(got-5150) > 10 {
		t.Fatalf("each cylinder %v N, want 5.15 kN", got)
	}
	// The table itself weighs 100 kg; the bore is 50 mm.
	area := math.Pi * 0.05 * 0.05 / 4
	bar := func(kg float64) string { return fmt.Sprintf("%.12g bar", each((kg+100)*9.80665)/area/1e5) }
	a = answer(t, "gain", unit.Metric, "lift", "1000 kg", "at", bar(1000), "now", bar(900), "target", bar(1200), "dead", "100 kg", "limit", "")
	for id, want := range map[string]float64{"lift_now": 900, "lift_target": 1200, "gain": 300, "gain_lo": 300, "gain_hi": 300} {
		if got := value(a, id) / 9.80665; !scalar.EqualWithinAbs(got, want, 1e-6) {
			t.Errorf("table: %s = %v kg, want %v", id, got, want)
		}
	}
	if got := value(a, "gain_pct"); !scalar.EqualWithinAbs(got, 1.0/3, 1e-9) {
		t.Errorf("table: gain_pct = %v, want a third", got)
	}
}

// gain % = pressure % × (1 + dead ÷ lift now), whatever the loader; with nothing
// known of it the truth for 0 to 30 % lies between the two figures.
func TestGainIdentities(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	for range 300 {
		load, at, now, target, reach := between(300, 3000), between(1500, 4000), between(1500, 4000), between(1500, 4000), between(40, 150)
		dead := between(0, 0.3) * load
		pairs := []string{"lift", fmt.Sprint(load, " lb"), "at", fmt.Sprint(at, " psi"), "now", fmt.Sprint(now, " psi"),
			"target", fmt.Sprint(target, " psi"), "reach", fmt.Sprint(reach, " in"), "limit", ""}
		open := answer(t, "gain", unit.US, pairs...)
		known := answer(t, "gain", unit.US, append(pairs, "dead", fmt.Sprint(dead, " lb"))...)
		near := func(what string, got, want float64) {
			t.Helper()
			if !scalar.EqualWithinAbsOrRel(got, want, 1e-9, 1e-9) {
				t.Errorf("%v: %s = %v, want %v", pairs, what, got, want)
			}
		}
		g := func(id string) float64 { return value(known, id) }
		near("dp_pct", g("dp_pct"), target/now-1)
		near("gain_pct", g("gain_pct"), g("dp_pct")*(1+dead*lbN/g("lift_now")))
		near("lift_target − lift_now", g("lift_target")-g("lift_now"), g("gain"))
		near("slope × dp", g("slope")*g("dp"), g("gain"))
		near("the moment of what is lifted", g("lift_target")*(reach*inchM-g("closer")), g("lift_now")*reach*inchM)
		near("floor", value(open, "gain_pct"), target/now-1)
		near("gain_lo", value(open, "gain_lo"), value(open, "gain"))
		for _, id := range []string{"gain", "gain_pct"} {
			floor, most := value(open, id), value(open, id+"_hi")
			if x := g(id); math.Abs(x) < math.Abs(floor)*(1-1e-12) || math.Abs(x) > math.Abs(most)*(1+1e-12) {
				t.Errorf("%v: %s = %v with %v of dead weight is not between %v and %v", pairs, id, x, dead, floor, most)
			}
		}
	}
}

// Both systems of units say the same, each in its own.
func TestGainUnits(t *testing.T) {
	us, metric := answer(t, "gain", unit.US), answer(t, "gain", unit.Metric)
	for _, f := range us.Figures {
		if g := metric.Figure(f.ID); g.Value != f.Value {
			t.Errorf("%s: %s and %s", f.ID, f.Value, g.Value)
		}
	}
	for id, want := range map[string]string{"gain": "33 kg", "gain_hi": "43 kg", "closer": "120 mm", "slope": "38 kg per 10 bar", "dp": "8.6 bar", "lift_now": "684 kg"} {
		if got := metric.Figure(id).Text; got != want {
			t.Errorf("%s: %s, want %s", id, got, want) // 321.2 N, 417.6 N, 0.1161 m, 3.727e-4 N/Pa by hand
		}
	}
	if got := us.Figure("slope").Text; got != "58 lb per 100 psi" {
		t.Errorf("slope: %s", got)
	}
}
