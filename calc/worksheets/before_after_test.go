package worksheets

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// Every branch of the claim, by invented numbers. "no" doubt means no error, no
// step and no dead weight, so that the branch can be told by hand.
func TestBeforeAfterBranches(t *testing.T) {
	const sure = "gauge_err=0 psi|step=0 psi|dead_hi=0 %|before=2000 psi|"
	for _, b := range []struct{ changes, id, head, says string }{
		{"claimed=30 %", "beyond", "More than pressure explains",
			"2,450 to 2,700 psi should give 10 to 13 % more and 30 % is reported; pressure alone would need about 3,015 psi or more, or arms and tool weighing 1.9 times the load. Hook height, reach, warm oil and engine speed are the usual other causes. 3,015 psi is above the manual's 2,790 psi; don't go there."},
		{"claimed=13.2 %", "fits", "Fits", "should give 10 to 13.4 % more, and 13.2 % is reported."},
		{"claimed=13.5 %", "beyond", "More than pressure explains", "should give 10 to 13 % more and 13.5 % is reported; pressure alone would need about 2,704 psi"},
		{"claimed=12.5 %", "fits", "Fits", "and 12.5 % is reported"},
		{"claimed=10 %", "less", "Less than expected", "should give 10.1 to 13 % more and 10 % is reported: worth checking for a sticking valve, a worn seal, or a different height."},
		{"claimed=0 %", "no-gain", "No gain reported", "0 % is reported where pressure should give 10 to 13 % more: check that both pulls were at one height and reach."},
		{"claimed=-5 %", "no-gain", "No gain reported", "−5 % is reported"},
		{"after=2460 psi", "no-rise", "No pressure rise shown", "any gain came from something else. A difference that small could give 0.85 % at most."},
		{"after=2440 psi", "no-rise", "No pressure rise shown", "any gain came from something else."},
		{"after=2460 psi|claimed=0.5 %", "no-rise", "No pressure rise shown", "that could change the lift by 0.10 % to 0.85 %, and 0.5 % is reported, which fits."},
		{"after=2450 psi|claimed=0 %", "no-rise", "No pressure rise shown", "by −0.37 % to 0.37 %, and 0 % is reported, which fits."},
		{"after=2461 psi|claimed=0.6 %", "fits", "Fits", ""},
		{"after=2439 psi", "fell", "Pressure went down", "2,439 psi is under 2,450 psi: pressure alone would lift less, so something else changed."},
		{"after=2300 psi|claimed=-7 %", "fell", "Pressure went down", "pressure alone should change the lift by −8.1 % to −6.0 %, and −7 % is reported, which fits."},
		{"after=2300 psi|claimed=-20 %", "fell", "Pressure went down", "so something else changed"},
		// Two gauges may be off in opposite directions.
		{"same_gauge=no|after=2500 psi", "untestable", "Too coarse, yet more than pressure gives", "could give anything from a loss to 8.5 % more, and 30 % is more than even that."},
		{"same_gauge=no|after=2500 psi|claimed=8 %", "untestable", "Too coarse to judge", "ith ±80 psi on two gauges, 2,450 to 2,500 psi could give anything from a loss to 8.5 % more: this can't be judged."},
		{"same_gauge=no|after=2450 psi|claimed=5 %", "untestable", "Too coarse to judge", ""},
		{"same_gauge=no|after=2400 psi|claimed=3 %", "untestable", "Too coarse to judge", ""},
		{"same_gauge=no|after=2200 psi", "fell", "Pressure went down", "so something else changed"},
		{"same_gauge=no|after=2450 psi|gauge_err=0 psi", "no-rise", "No pressure rise shown", ""},
		{"same_gauge=no|claimed=18 %", "fits", "Fits", "should give 5.7 to 19 % more"},
		// With nothing in doubt, 10 % of pressure is 10 % of lift.
		{sure + "after=2200 psi|claimed=10 %", "fits", "Fits", "10 to 10 % more"},
		{sure + "after=2200 psi|claimed=10.1 %", "beyond", "More than pressure explains", "10 to 10 % more and 10.1 % is reported"},
		{sure + "after=2200 psi|claimed=9.9 %", "less", "Less than expected", "10 to 10 % more and 9.9 % is reported"},
		{sure + "after=2000 psi", "no-rise", "No pressure rise shown", "came from something else."},
		// Over the 97.5 % end, though not over what the most dead weight would give.
		{"gauge_err=0 psi|step=0 psi|claimed=13.2 %", "beyond", "More than pressure explains", "13.2 % is reported: just more than pressure explains."},
		// Two loads.
		{"lift_before=1390 lb|lift_after=1565 lb", "fits", "Fits", "and 13 % is reported"},
		{"lift_before=1390 lb|lift_after=1565 lb|weigh_err=2 %", "fits", "Fits", "and 9.1 to 16 % is reported"},
		{"lift_before=1390 lb|lift_after=1900 lb", "beyond", "More than pressure explains", "37 % is reported"},
		{"lift_before=1390 lb|gained=150 lb", "fits", "Fits", "11 % is reported"},
	} {
		v := answer(t, "before-after", unit.US, changed(b.changes)...).Verdict
		if v.ID != b.id || v.Head != b.head || !strings.Contains(v.Sentence, b.says) {
			t.Errorf("%s:\ngot  %s · %s · %s\nwant %s · %s · … %s", b.changes, v.ID, v.Head, v.Sentence, b.id, b.head, b.says)
		}
		if strings.Contains(strings.ToLower(v.Head+v.Sentence), "claim") {
			t.Errorf("%s: a poster reads “claim” in %s", b.changes, v.Sentence)
		}
	}
}

// The limit, the dial, the slope and the shares, where they bear and only there.
func TestBeforeAfterRemarks(t *testing.T) {
	for _, test := range []struct{ changes, says, not string }{
		{"after=2800 psi|claimed=15 %", "2,800 psi is above the manual's 2,790 psi; don't go there.", ""},
		{"after=2800 psi", "2,800 psi is above the manual's", "3,015 psi is above"},
		{"limit=", "", "don't go there"},
		{"limit=3100 psi", "", "don't go there"},
		{"claimed=12 %", "", "don't go there"},
		{"after=2460 psi", "The 3,015 psi that 30 % would take is above the manual's 2,790 psi; don't go there.", ""},
		{"claimed=30 %", "That is at least 2.2 times what pressure can give.", "tenth of the dial apart"},
		{"scale=4000 psi", "", "tenth of the dial apart"},
		{"scale=2700 psi|before=2400 psi", "The readings are more than a tenth of the dial apart", ""},
		{"scale=2700 psi|before=2400 psi|same_gauge=no", "", "tenth of the dial apart"},
		{"lift_before=1390 lb", "Against the pressure: 170 lb per 100 psi reported, 56 to 75 lb per 100 psi to be expected.", ""},
		{"lift_before=1390 lb", "lift_before: The reported percentage is taken of this load.", ""},
		{"lift_before=1390 lb|after=2450 psi", "", "Against the pressure"},
		{"claimed=30 %", "90 % is what arms and tool weigh", ""},
		{"same_gauge=no", "is what the gauge is off: a better gauge, the same one both times", "One gauge"},
		{"dead_hi=0 %|gauge_err=0 psi", "% is reading to a step: a dial with finer steps", ""},
		{"dead_hi=0 %|gauge_err=0 psi|step=0 psi", "Nothing entered leaves a doubt", ""},
	} {
		a := answer(t, "before-after", unit.US, changed(test.changes)...)
		all := a.Verdict.Sentence + "\n" + texts(a)
		if !strings.Contains(all, test.says) || test.not != "" && strings.Contains(all, test.not) {
			t.Errorf("%s: want %q and not %q in\n%s", test.changes, test.says, test.not, all)
		}
		for _, c := range []string{"Stay under the service manual's", "does not open at exactly the same pressure twice", "Carry the load low"} {
			if !strings.Contains(strings.Join(a.Cautions, "\n"), c) {
				t.Errorf("%s: no caution “%s”", test.changes, c)
			}
		}
	}
}

func TestBeforeAfterProblems(t *testing.T) {
	for changes, field := range map[string]string{
		"lift_after=1565 lb":                     "lift_before",
		"gained=150 lb":                          "lift_before",
		"lift_before=100 lb|gained=-100 lb":      "gained",
		"claimed=":                               "claimed",
		"claimed=|lift_before=1390 lb":           "claimed",
		"claimed=lots":                           "claimed",
		"dead_lo=40 %":                           "dead_hi",
		"scale=2600 psi":                         "after",
		"gauge_err=2450 psi":                     "gauge_err",
		"gauge_err=0 psi|step=400 bar":           "gauge_err",
		"weigh_err=51 %":                         "weigh_err",
		"claimed=|lift_before=1 lb|gained=1 lb":  "",
		"dead_lo=30 %":                           "",
		"claimed=|lift_before=9 lb|lift_after=8": "",
	} {
		a := All.Evaluate("before-after", owned(changed(changes)...), unit.US)
		if field == "" && !a.OK() || field != "" && (len(a.Problems) != 1 || a.Problems[0].Field != field || strings.Contains(a.Problems[0].Message, "{")) {
			t.Errorf("%s: %v", changes, a.Problems)
		}
	}
}

// What wins leaves the rest out of the link and of what passes for used.
func TestBeforeAfterLoadsWin(t *testing.T) {
	a := answer(t, "before-after", unit.US, "lift_before", "1390 lb", "lift_after", "1565 lb", "gained", "900 lb")
	for _, p := range a.Link {
		if p.Key == "claimed" || p.Key == "gained" {
			t.Errorf("the link carries %v", p)
		}
	}
	if slices.Contains(a.Examples, "claimed") || strings.Contains(a.Verdict.Sentence, "reported gain") {
		t.Errorf("the percentage passes for used: %s", a.Verdict.Sentence)
	}
	if b := All.Evaluate("before-after", calc.FromLink(a.Link), unit.Metric); b.Figure("claimed_pct").Value != a.Figure("claimed_pct").Value {
		t.Errorf("the link says %s", b.Figure("claimed_pct").Text)
	}
}

// model is one trial of what pressure gives, written out from the words of the
// worksheet and not from the code that it checks.
type model struct {
	before, after, err, step, deadLo, deadHi float64
	same                                     bool
}

func (m model) trial(r *rand.Rand) float64 {
	within := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	off := within(-m.err, m.err)
	p1 := m.before + off + within(-m.step/2, m.step/2)
	if !m.same {
		off = within(-m.err, m.err)
	}
	p2 := m.after + off + within(-m.step/2, m.step/2)
	arms := within(m.deadLo, m.deadHi)
	return (p2 - p1) / p1 * (1 + arms)
}

func (m model) pairs() []string {
	psi := func(x float64) string { return fmt.Sprint(x, " psi") }
	same := map[bool]string{true: "yes", false: "no"}[m.same]
	return []string{"before", psi(m.before), "after", psi(m.after), "gauge_err", psi(m.err), "step", psi(m.step), "same_gauge", same,
		"dead_lo", fmt.Sprint(100*m.deadLo, " %"), "dead_hi", fmt.Sprint(100*m.deadHi, " %")}
}

// central returns the middle of the trials and the ends of their middle 95 %.
func central(x []float64) (lo, middle, hi float64) {
	slices.Sort(x)
	at := func(p float64) float64 { return x[int(p*float64(len(x)-1)+0.5)] }
	return at(0.025), at(0.5), at(0.975)
}

// The closed form against trials of the model (JCGM 101:2008, clause 7).
func TestBeforeAfterAgainstTrials(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for _, m := range []model{
		{2450, 2700, 80, 10, 0, 0.3, true},
		{2450, 2700, 80, 10, 0, 0.3, false},
		{2450, 2460, 80, 10, 0, 0.3, true},
		{2450, 2300, 80, 50, 0, 0.3, true},
		{2450, 2500, 120, 0, 0.1, 0.6, false},
		{600, 900, 240, 50, 0.5, 2, true},
		{600, 900, 240, 50, 0, 0, false},
		{2450, 3000, 0, 0, 0, 0.5, true},
	} {
		a := ask(t, "before-after", m.pairs()...)
		if !strings.HasSuffix(a.Check, "the closed form agrees.") {
			t.Errorf("%+v: %s", m, a.Check)
		}
		trials := make([]float64, 200_000)
		for i := range trials {
			trials[i] = m.trial(r)
		}
		lo, middle, hi := central(trials)
		// An end of the interval varies by about 0.001 of its width at this number.
		for id, want := range map[string]float64{"expected_lo": lo, "expected": middle, "expected_hi": hi} {
			if got := value(a, id); math.Abs(got-want) > 0.006*(hi-lo) {
				t.Errorf("%+v: %s = %v, trials give %v", m, id, got, want)
			}
		}
	}
}

// The interval of two loads against trials, and against one rectangle's width
// where only the half-width w counts: both ends of the ratio for small w.
func TestBeforeAfterLoads(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for _, w := range []float64{0.005, 0.02, 0.1} {
		a := answer(t, "before-after", unit.US, "lift_before", "1390 lb", "lift_after", "1565 lb", "weigh_err", fmt.Sprint(100*w, " %"))
		trials := make([]float64, 200_000)
		for i := range trials {
			trials[i] = 1565*(1+w*(2*r.Float64()-1))/(1390*(1+w*(2*r.Float64()-1))) - 1
		}
		lo, _, hi := central(trials)
		for id, want := range map[string]float64{"claimed_lo": lo, "claimed_hi": hi} {
			if got := value(a, id); math.Abs(got-want) > 0.006*(hi-lo) {
				t.Errorf("±%v: %s = %v, trials give %v", w, id, got, want)
			}
		}
		// The sum of two alike rectangles is a triangle of reach 2w; 95 % of it lies
		// within 2w(1 − √0.05), and to first order the ratio is that sum.
		if half := 1565.0 / 1390 * 2 * w * (1 - math.Sqrt(0.05)); w < 0.01 && !scalar.EqualWithinRel((hi-lo)/2, half, 0.01) {
			t.Errorf("±%v: half-width %v, a triangle gives %v", w, (hi-lo)/2, half)
		}
	}
}

// Where a simulation contradicts the closed form its interval is shown, and the
// verdict follows it. No entries do that here, so the trials are made up.
func TestBeforeAfterFollowsTheSimulation(t *testing.T) {
	for _, test := range []struct {
		lo, hi float64
		id     string
	}{{0.25, 0.35, "fits"}, {0.31, 0.35, "less"}, {0.1, 0.2, "beyond"}} {
		sim := doubt.NewSimulation(func(r *rand.Rand) float64 { return test.lo + (test.hi-test.lo)*r.Float64() })
		sim.Run(100_000)
		a := All.EvaluateWith("before-after", nil, unit.US, sim)
		if a.Verdict.ID != test.id || !scalar.EqualWithinAbs(value(a, "expected_lo"), test.lo+0.025*(test.hi-test.lo), 1e-3) ||
			strings.Contains(a.Check, "agrees") {
			t.Errorf("%v: %s, from %s; %s", test, a.Verdict.ID, a.Figure("expected_lo").Text, a.Check)
		}
	}
}

// Whatever is entered, the verdict says what the figures say, and the numbers
// as shown say so too.
func TestBeforeAfterConsistent(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	seen := map[string]int{}
	for range 1500 {
		before := 2000 + 1000*r.Float64()
		m := model{before, before * (0.95 + 0.2*r.Float64()), 100 * r.Float64(), 20 * r.Float64(), 0, 0.6 * r.Float64(), r.IntN(4) > 0}
		load, claimed := 1000+1000*r.Float64(), (m.after/m.before-1)*(0.7+r.Float64())+0.04*(r.Float64()-0.3)
		pairs := append(m.pairs(), "claimed", fmt.Sprintf("%.2f %%", 100*claimed), "lift_before", fmt.Sprint(load, " lb"))
		if r.IntN(2) == 0 {
			pairs = append(pairs, "lift_after", fmt.Sprint(load*(1+claimed), " lb"), "weigh_err", fmt.Sprint(r.Float64(), " %"))
		}
		a := answer(t, "before-after", unit.System(r.IntN(2)), pairs...)
		seen[a.Verdict.ID]++
		v := func(id string) float64 { return value(a, id) }
		lo, hi, from, to, pct := v("expected_lo"), v("expected_hi"), v("claimed_lo"), v("claimed_hi"), v("claimed_pct")
		var ok bool
		switch a.Verdict.ID {
		case "no-rise":
			ok = m.same && math.Abs(m.after-m.before) <= m.step*1.000001
		case "fell":
			ok = m.after < m.before && hi <= 0
		case "untestable":
			ok = !m.same && lo <= 0 && hi >= 0
		case "fits":
			ok = lo > 0 && from <= hi && to >= lo
		case "less":
			ok = lo > 0 && to < lo && pct > 0 && shownShare(a, "claimed_hi") < shownShare(a, "expected_lo")
		case "no-gain":
			ok = lo > 0 && to < lo && pct <= 0
		case "beyond":
			ok = lo > 0 && from > hi && shownShare(a, "claimed_lo") > shownShare(a, "expected_hi") && v("times") > 1
		}
		if !ok {
			t.Errorf("%v: %s with %v to %v expected, %v to %v reported", pairs, a.Verdict.Sentence, lo, hi, from, to)
		}
		if !(lo <= v("expected") && v("expected") <= hi && from <= pct && pct <= to) {
			t.Errorf("%v: the middle is not inside", pairs)
		}
		for _, same := range []struct {
			what      string
			got, want float64
		}{
			{"needed", v("needed"), m.before * (1 + pct) * psiPa},
			{"needed_lo gives the reported gain", (1 + m.deadHi) * (v("needed_lo")/(m.before*psiPa) - 1), pct},
			{"unexplained", v("unexplained"), pct - v("expected")},
			{"unexplained_load", v("unexplained_load"), (pct - v("expected")) * load * lbN},
			{"slope × rise", v("slope_reported") * (m.after - m.before) * psiPa, pct * load * lbN},
		} {
			if !scalar.EqualWithinAbsOrRel(same.got, same.want, 1e-9, 1e-6) {
				t.Errorf("%v: %s: %v, want %v", pairs, same.what, same.got, same.want)
			}
		}
		if hi > 0 != !math.IsNaN(v("times")) || hi > 0 && !scalar.EqualWithinRel(v("times"), from/hi, 1e-9) {
			t.Errorf("%v: times %v", pairs, v("times"))
		}
		if d := v("dead_needed"); !math.IsNaN(d) && !scalar.EqualWithinAbsOrRel((1+d)*(m.after/m.before-1), pct, 1e-9, 1e-6) {
			t.Errorf("%v: dead_needed %v does not give %v", pairs, d, pct)
		}
	}
	for _, id := range []string{"no-rise", "fell", "untestable", "fits", "less", "no-gain", "beyond"} {
		if seen[id] == 0 {
			t.Errorf("no trial gave %s: %v", id, seen)
		}
	}
}

// shownShare is a percentage as a reader sees it.
func shownShare(a *calc.Answer, id string) float64 {
	v, err := unit.Parse(a.Figure(id).Text, unit.Percent, unit.Percent.Shown(unit.US), unit.US)
	if err != nil {
		return math.NaN()
	}
	return v.SI
}

// The budget's u is the standard deviation of the trials where the doubts are
// small beside the pressures (JCGM 101:2008, clause 8).
func TestBeforeAfterBudget(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for _, m := range []model{
		{2450, 2700, 80, 10, 0, 0.3, true},
		{2450, 2700, 80, 10, 0, 0.3, false},
		{2450, 2700, 80, 0, 0.2, 0.2, true},
		{2450, 2500, 0, 10, 0, 0, false},
	} {
		g := doubt.Gain{Before: m.before, After: m.after, Err: m.err, Step: m.step, Shared: m.same, DeadLo: m.deadLo, DeadHi: m.deadHi}
		trials := make([]float64, 100_000)
		for i := range trials {
			trials[i] = m.trial(r)
		}
		if _, s := doubt.StdDev(trials); !scalar.EqualWithinRel(gainBudget(g).U(), s, 0.01) {
			t.Errorf("%+v: u = %v, trials give %v", m, gainBudget(g).U(), s)
		}
	}
}

// Common practice, no source: on a small loader +250 psi gave +150 lb. With the
// invented example's lift of 1,390 lb that is no more than pressure explains.
func TestBeforeAfterCommonPractice(t *testing.T) {
	a := answer(t, "before-after", unit.US, "lift_before", "1390 lb", "gained", "150 lb")
	if a.Verdict.ID != "fits" || a.Figure("slope_reported").Text != "60 lb per 100 psi" {
		t.Errorf("%s, %s", a.Verdict.Sentence, a.Figure("slope_reported").Text)
	}
	b := answer(t, "before-after", unit.Metric, "lift_before", "1390 lb", "gained", "150 lb")
	if b.Figure("slope_reported").Text != "39 kg per 10 bar" || b.Verdict.ID != a.Verdict.ID {
		t.Errorf("metric: %s, %s", b.Verdict.Sentence, b.Figure("slope_reported").Text)
	}
}
