package worksheets

import (
	"math"
	"slices"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/lift"
	"plainlift/calc/line"
	"plainlift/calc/unit"
)

// adjusted is a job: both series of readings and the trials between them, Pa.
type adjusted struct {
	found, left taken
	trials      []calc.Measured // total thickness added (m), reading
	oneGauge    bool
	high        float64 // manual's highest, +Inf where not known
	rate        float64 // what a shim added by the trials, Pa/m; NaN without trials
}

// takeJob reads the fields; the rate is the slope of the line through the mean as
// found and the trials.
func takeJob(in *calc.In) *adjusted {
	j := &adjusted{found: takeSeries(in, "found"), left: takeSeries(in, "left"), trials: in.Pairs("trials"),
		oneGauge: in.Choice("same_gauge") == "yes", high: math.Inf(1), rate: math.NaN()}
	if in.Has("high") {
		j.high = in.SI("high")
	}
	t, p := []float64{0}, []float64{j.found.mean}
	for _, m := range j.trials {
		t, p = append(t, m.A), append(p, m.B)
	}
	if l, err := line.Ordinary(t, p); err == nil {
		j.rate = l.Slope
	}
	return j
}

// scatter is what the repeats leave in the difference of the means.
func (j *adjusted) scatter() (u, dof float64) {
	return doubt.Difference(doubt.Repeats{N: len(j.found.readings), S: j.found.scatter}, doubt.Repeats{N: len(j.left.readings), S: j.left.scatter})
}

// unseen reports whether the readings are too few to show any scatter: then none
// is counted, and it is what would part two readings on one gauge the most.
func (j *adjusted) unseen() bool {
	u, _ := j.scatter()
	return u == 0 && max(len(j.found.readings), len(j.left.readings)) < manyReadings
}

// unseenScatter is how far two readings of one pressure may part by scatter that
// nobody has seen: four steps, or 1 %, whichever is more. Both are ours.
func (j *adjusted) unseenScatter() float64 {
	return max(manySteps*2*j.left.step, 0.01*j.found.mean)
}

// offApart are the limits of what gauges leave in the change. What one gauge is
// off, it is off both times, in proportion to what its class or grade allows where
// the pointer stood; only the difference of the two limits is left. Two gauges are
// off without regard to each other.
func (j *adjusted) offApart() []float64 {
	if j.oneGauge {
		return []float64{math.Abs(j.left.grade - j.found.grade)}
	}
	return []float64{j.found.grade, j.left.grade}
}

// change is the true change of pressure: as left less as found, each read to a
// step, with the scatter of both.
//
// Source: JCGM 101:2008, 6.4.9, for the scatter; shared causes: JCGM 100:2008,
// F.1.2.3 (from memory).
func (j *adjusted) change() doubt.Sum {
	u, dof := j.scatter()
	return doubt.Sum{Mid: j.left.mean - j.found.mean, Rects: append(j.offApart(), j.found.step, j.left.step), Scale: u, DOF: dof}
}

// budget is the same by standard uncertainties.
func (j *adjusted) budget() doubt.Budget {
	u, dof := j.scatter()
	off := 0.0
	for _, a := range j.offApart() {
		off = math.Hypot(off, doubt.Rect(a))
	}
	return doubt.Budget{
		{Name: "what the gauge is off", U: off, Sens: 1, DOF: math.Inf(1)},
		{Name: "reading to a step", U: doubt.Rect(j.left.step), Sens: math.Sqrt2, DOF: math.Inf(1)},
		{Name: "the scatter of the readings", U: u, Sens: 1, DOF: dof},
	}
}

func computeJob(in *calc.In, out *calc.Out) {
	j := takeJob(in)
	if badJob(in, out, j) {
		return
	}
	d := j.change().Dist()
	lo, hi := d.Interval(settled)
	lo, hi = out.CheckInterval(unit.Pressure, settled, lo, hi, j.budget().U())
	j.changeFigures(out, d, lo, hi)
	j.partFigures(in, out)
	j.shimFigures(out)
	from, to := j.found.model(j.found.grade).Dist().Interval(settled)
	out.SetDoubt("found_mean", j.found.mean, (to-from)/2)
	left := j.left.model(j.left.grade).Dist()
	from, to = left.Interval(settled)
	half := (to - from) / 2
	from = max(0, from) // a relief holds no less
	out.SetDoubt("left_mean", j.left.mean, half)
	out.SetDoubt("lo", from, half)
	out.SetDoubt("hi", to, half)
	_, _, above := left.Within(math.Inf(-1), j.high)
	way := j.way(lo, hi)
	jobJudgement.judge(in, out, judged{x: j.left.mean, half: half, a: j.left.grade, confidence: settled,
		limit: j.left.grade, model: j.left.model, dist: left},
		func(key string) { j.say(out, way, key, above) })
	j.remarks(in, out, way)
	j.notes(in, out)
	j.picture(in, out, from, to)
	j.rests(in, out)
	j.working(in, out)
	out.Caution("limit", "travel", "turn", "arm", "skin", "leaks", "hold", "repeat", "low", "warranty", "technician")
}

// badJob complains about entries that no gauge can have shown.
func badJob(in *calc.In, out *calc.Out, j *adjusted) bool {
	low, high := limits(in, out)
	bad, scale := low > high, in.SI("scale")
	check := func(id string, i int, p float64) {
		if p > scale {
			out.RowProblem(id, i, "The dial only goes up to {scale}")
			bad = true
		}
	}
	for i, p := range j.found.readings {
		check("found", i, p)
	}
	for i, t := range j.trials {
		check("trials", i, t.B)
	}
	for i, p := range j.left.readings {
		check("left", i, p)
	}
	return bad
}

// way says which way the pressure went, as the keys of the verdicts do. A change
// counts when the range of 95 % is on one side of nothing and the means are
// further apart than reading to a step can part them, or scatter that was not seen.
func (j *adjusted) way(lo, hi float64) string {
	const rounding = 1 + 1e-9
	apart := math.Abs(j.left.mean - j.found.mean)
	switch step := 2 * j.left.step * rounding; {
	case lo <= 0 && hi >= 0:
		return "no-change"
	case apart <= step:
		return "no-change-step"
	case j.unseen() && apart <= j.unseenScatter()*rounding:
		return "no-change-few"
	case lo > 0:
		return "rose"
	}
	return "fell"
}

// say chooses the verdict by the way it went and by how it is judged as left.
func (j *adjusted) say(out *calc.Out, way, judged string, above float64) {
	most := slices.Max(j.left.readings)
	moved := way == "rose" || way == "fell"
	over := j.left.mean > j.high
	out.Set("left_most", most)
	if moved && !over && most <= j.high {
		share := lift.Share(j.found.mean, j.left.mean, 0)
		out.Set("lift_pct", share)
		out.Set("lift_size", math.Abs(share))
	} else {
		why := "no change is shown"
		if moved {
			why = "bring the pressure down first"
		}
		out.None("lift_pct", why)
		out.None("lift_size", why)
	}
	switch {
	case over:
		out.Verdict("over")
	case most > j.high:
		out.Verdict("over-once")
		out.Line("As left: " + jobJudgement.sentence(judged))
	case moved && above > mostOver:
		out.Verdict(way + " risk")
	case moved:
		out.Verdict(way + " " + judged)
	default:
		out.Verdict(way)
		if judged != "no-range" {
			out.Add("As left: " + jobJudgement.sentence(judged))
		}
		if above > mostOver {
			out.Add("That leaves a chance of {p_above} of truly being over {high}, which is too much: check it on a better gauge, or bring it down.")
		}
	}
	switch {
	case most <= j.high:
	case moved:
		out.Line(movedSentence(way))
	default:
		out.Line("No change from as found is shown.")
	}
}

func (j *adjusted) changeFigures(out *calc.Out, d *doubt.Dist, lo, hi float64) {
	change, half := j.left.mean-j.found.mean, max((hi-lo)/2, 2*j.left.step)
	rise := 1 - d.CDF(0)
	out.SetDoubt("change", change, half)
	out.SetDoubt("change_lo", lo, half)
	out.SetDoubt("change_hi", hi, half)
	if change < 0 {
		lo, hi = -hi, -lo
	}
	out.SetDoubt("size", math.Abs(change), half)
	out.SetDoubt("size_lo", lo, half)
	out.SetDoubt("size_hi", hi, half)
	out.Text("sure", "", "95 %")
	if out.Set("p_rise", rise); j.unseen() {
		out.Text("sure", "", "95 %, scatter not counted")
		out.None("p_rise", "too few readings to say")
	}
	out.Set("change_pct", change/j.found.mean)
}

// partFigures sets what the remarks and the working quote, and what travels.
func (j *adjusted) partFigures(in *calc.In, out *calc.Out) {
	u, dof := j.scatter()
	out.Set("n_found", float64(len(j.found.readings)))
	out.Set("n_left", float64(len(j.left.readings)))
	out.Set("s_found", j.found.scatter)
	out.Set("s_left", j.left.scatter)
	out.Set("u_scatter", u)
	if out.Set("dof", dof); u == 0 {
		out.None("dof", "none needed")
	}
	out.Set("half_step", j.left.step)
	out.Set("a_found", j.found.grade)
	out.Set("a_apart", j.offApart()[0])
	out.Set("main_share", slices.Max(j.budget().Shares()))
	setMark(in, out)
	out.Set("accuracy", j.left.grade/in.SI("scale"))
}

// shimFigures sets what the trials say of the shim.
func (j *adjusted) shimFigures(out *calc.Out) {
	for _, id := range []string{"fitted", "rate", "last"} {
		out.None(id, "no shim trials")
	}
	out.None("over_trial", "no trial read over the limit")
	out.None("over_shim", "no trial read over the limit")
	if len(j.trials) == 0 {
		return
	}
	highest := j.trials[0]
	for _, m := range j.trials {
		if m.B > highest.B {
			highest = m
		}
	}
	if highest.B > j.high {
		out.Set("over_trial", highest.B)
		out.Set("over_shim", highest.A)
	}
	last := j.trials[len(j.trials)-1]
	out.Set("fitted", last.A)
	out.Set("last", last.B)
	setOr(out, "rate", j.rate, "no shim went in or out")
}
