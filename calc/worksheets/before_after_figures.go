package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/lift"
	"plainlift/calc/unit"
)

// readReported reads what was reported: two loads, or the load before and the
// load gained, or a percentage, the first that is given. It returns nil after
// complaining.
func readReported(in *calc.In, out *calc.Out) *gains {
	first, after, gained := in.SI("lift_before"), in.SI("lift_after"), in.SI("gained")
	switch {
	case !in.Has("lift_before") && (in.Has("lift_after") || in.Has("gained")):
		out.Problem("lift_before", "Enter the load before too, or clear the load that stands without it")
		return nil
	case in.Has("lift_after"):
		out.Unused("gained")
	case in.Has("gained"):
		if after = first + gained; !(after > 0) {
			out.Problem("gained", out.Words("From {lift_before} that leaves no load"))
			return nil
		}
	case in.Has("claimed"):
		if in.Has("lift_before") {
			out.Note("lift_before", -1, "The reported percentage is taken of this load. With the load after, the two loads are used instead.")
		}
		pct := in.SI("claimed")
		r := &gains{pct: pct, lo: pct, hi: pct}
		for r.places < 4 && math.Abs(rounded(pct, r.places)-100*pct) > 1e-9 {
			r.places++
		}
		return r
	default:
		out.Problem("claimed", "Enter what was reported: a percentage here, or the loads before and after")
		return nil
	}
	out.Unused("claimed")
	ratio := after / first
	r := &gains{pct: ratio - 1, lo: ratio - 1, hi: ratio - 1, loads: true}
	if w := in.SI("weigh_err"); w > 0 {
		// Two loads, each within ±w of itself, are like two readings of 1 on two
		// gauges good to ±w; the ratio of the loads multiplies theirs.
		lo, hi := doubt.Gain{Before: 1, After: 1, Err: w}.Interval(coverage)
		r.lo, r.hi = ratio*(1+lo)-1, ratio*(1+hi)-1
	}
	return r
}

// neededLeast is the pressure that the reported gain takes, with the most dead
// weight.
func (r gains) neededLeast() float64 { return lift.Needed(r.before, r.pct, r.deadMax) }

func beforeAfterFigures(in *calc.In, out *calc.Out, g doubt.Gain, r gains) {
	middle := g.Median()
	out.Set("expected", middle)
	r.show(out)
	out.Set("unexplained", r.pct-middle)
	out.Set("needed", lift.Needed(r.before, r.pct, 0))
	out.Set("needed_lo", r.neededLeast())
	out.Set("dp_pct", lift.Share(r.before, r.after, 0))
	if r.most > 0 {
		out.Set("times", r.lo/r.most)
	} else {
		out.None("times", "pressure should give no gain")
	}
	switch d := lift.DeadNeeded(r.before, r.after, r.pct); {
	case d >= 0:
		out.Set("dead_needed", d)
	case r.after > r.before:
		out.None("dead_needed", "none: pressure alone gives more")
	default:
		out.None("dead_needed", "no dead weight would explain it")
	}

	load, rise := in.SI("lift_before"), r.after-r.before // load is NaN when not known
	const noLoad = "needs the load before"
	setOr(out, "unexplained_load", (r.pct-middle)*load, noLoad)
	why := noLoad
	if rise == 0 {
		rise, why = math.NaN(), "the pressure did not change"
	}
	lo, hi := r.least*load/rise, r.most*load/rise
	setOr(out, "slope_reported", r.pct*load/rise, why)
	setOr(out, "slope_lo", min(lo, hi), why)
	setOr(out, "slope_hi", max(lo, hi), why)

	switch {
	case !r.loads:
		out.Text("reported", "", out.Words("{claimed}"))
	case r.lo < r.hi:
		out.Text("reported", "", out.Words("{claimed_lo:n} to {claimed_hi}"))
	default:
		out.Text("reported", "", out.Words("{claimed_pct}"))
	}
}

// show sets the two sides of the comparison, with two significant digits, a typed
// percentage with those it has, and more where the sides would else seem to meet
// though they do not.
func (r gains) show(out *calc.Out) {
	two := func(share float64) int { return unit.PlaceSig(100*share, 2) }
	least, most, lo, hi := two(r.least), two(r.most), two(r.lo), two(r.hi)
	if !r.loads {
		lo, hi = r.places, r.places
	}
	switch {
	case r.short():
		hi, least = apart(r.hi, r.least, hi, least)
	case r.over():
		most, lo = apart(r.most, r.lo, most, lo)
	}
	set := func(id string, share float64, places int) {
		out.SetDoubt(id, share, math.Pow(10, float64(1-places))/100)
	}
	set("expected_lo", r.least, least)
	set("expected_hi", r.most, most)
	set("claimed_pct", r.pct, max(lo, hi))
	set("claimed_lo", r.lo, lo)
	set("claimed_hi", r.hi, hi)
}

// apart returns from how many decimal places on, no fewer than given, the
// percentage of a share a shows as less than that of the larger share b.
func apart(a, b float64, placesA, placesB int) (int, int) {
	for range 8 {
		if rounded(a, placesA) < rounded(b, placesB) {
			break
		}
		finer := max(placesA, placesB)
		if placesA == placesB {
			finer++
		}
		placesA, placesB = finer, finer
	}
	return placesA, placesB
}

// rounded is a share in percent with that many decimal places.
func rounded(share float64, places int) float64 {
	scale := math.Pow(10, float64(places))
	return math.Round(100*share*scale) / scale
}

// gainBudget is what makes the gain that pressure gives uncertain, by the law of
// propagation: with r = after ÷ before and d in the middle of its range,
//
//	∂/∂E = (1 + d)·(1 − r)/before   one gauge, off alike both times
//	∂/∂E = (1 + d)·√(1 + r²)/before  two errors of the same limit, together
//	∂/∂d = r − 1
func gainBudget(g doubt.Gain) doubt.Budget {
	r, inf := g.After/g.Before, math.Inf(1)
	per := (1 + (g.DeadLo+g.DeadHi)/2) / g.Before
	both := per * math.Hypot(1, r)
	off := both
	if g.Shared {
		off = per * (1 - r)
	}
	return doubt.Budget{
		{Name: "what arms and tool weigh", U: doubt.Rect((g.DeadHi - g.DeadLo) / 2), Sens: r - 1, DOF: inf},
		{Name: "what the gauge is off", U: doubt.Rect(g.Err), Sens: off, DOF: inf},
		{Name: "reading to a step", U: doubt.Step(g.Step), Sens: both, DOF: inf},
	}
}
