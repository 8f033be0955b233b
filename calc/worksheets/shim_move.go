package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/relief"
)

// move is what to do with a valve.
type move struct {
	verdict string
	why     string  // why there is no stack, "" when there is one
	at      float64 // the total that the expected pressure and its chance are for; NaN for none

	plan  relief.Plan
	turns float64 // for a screw: the most in all
	next  float64 // the least total over the most, without shims the one for the target; NaN when there is none
	high  float64 // for a stop: what reads over the limit, Pa
}

// reachable reports whether it makes sense to say what would reach the target.
func (mv move) reachable() bool {
	return !math.IsNaN(mv.at) && mv.high == 0 && mv.verdict != "stop-target" && mv.verdict != "stuck"
}

// yours are the fields that must be the reader's own before there is a stack.
var yours = []string{"now", "target", "limit", "gauge_err"}

// decide chooses the branch; the order is what keeps it safe.
func (v *valve) decide(in *calc.In) move {
	own := func(ids ...string) bool {
		for _, id := range ids {
			if !in.Own(id) {
				return false
			}
		}
		return true
	}
	none := math.NaN()
	stop := "stop-now"
	if v.screw {
		stop = "stop-now-screw"
	}
	m, _ := v.line.At(v.fitted)
	high, isHigh := v.overLimit()
	switch {
	case !own("limit"):
		return move{verdict: "yours-limit", why: "after you enter your manual's limit", at: none}
	case own("now") && isHigh:
		return move{verdict: stop, why: "none: it reads over the limit", at: v.fitted, high: high}
	case own("target") && v.target > v.limit:
		return move{verdict: "stop-target", why: "none: the target is over the limit", at: v.fitted}
	case !own(yours...):
		return move{verdict: "yours", why: "after you enter your own numbers", at: none}
	case v.line.Stuck(v.ruleLow) || !(v.line.Rate > 0):
		return move{verdict: "stuck", why: "none: shim isn't raising it", at: v.fitted}
	case m >= v.target:
		key := "there"
		if _, sigma := v.line.At(v.fitted); m-v.target > 2*sigma {
			key = "there-past"
		}
		if n := len(v.trials); n > 0 && math.Abs(v.trials[n-1].P-m) > 1e-9*m {
			key += "-line" // which no reading need lie on
		}
		return move{verdict: key, why: "none: it is at the target", at: v.fitted}
	case !(v.over(v.fitted) <= mostOver):
		return move{verdict: "small-now", why: "none is safe", at: v.fitted}
	case v.screw:
		return v.turn()
	case v.pieces == 0:
		return move{verdict: "no-kit", why: "no shims listed", at: v.fitted, next: v.line.Thickness(v.target)}
	}
	return v.shims()
}

// overLimit returns a pressure over the limit that what is fitted gives: a
// reading with no more shim than that, or the line's own height.
func (v *valve) overLimit() (pressure float64, is bool) {
	m, _ := v.line.At(v.fitted)
	switch {
	case v.now > v.limit:
		return v.now, true
	case m > v.limit:
		pressure, is = m, true
	}
	for _, t := range v.trials {
		if t.P > v.limit && t.T <= v.fitted {
			pressure, is = t.P, true
		}
	}
	return pressure, is
}

// shims chooses among the stacks of the kit.
func (v *valve) shims() move {
	const nanometre = 1e-9
	plan := v.kit.Plan(v.fitted, v.safe())
	for plan.Most != nil && v.against(plan.Most.Total) != "" {
		plan = v.kit.Plan(v.fitted, plan.Most.Total-nanometre)
	}
	mv := move{plan: plan, next: math.NaN()}
	if plan.Next != nil {
		mv.next = plan.Next.Total
	}
	switch {
	case plan.First == nil:
		mv.verdict, mv.why, mv.at = "no-kit-left", "none: all the shims listed are in", v.fitted
		mv.next = v.line.Thickness(v.target)
	case plan.Most == nil:
		mv.at = plan.First.Total
		mv.verdict, mv.why = v.small(&mv)
		if mv.verdict == "small-target" && (len(plan.First.Out) > 0 || pieceCount(plan.First.In) > 1) {
			mv.verdict = "small-target-change"
		}
	default:
		mv.verdict, mv.at = "go", plan.Most.Total
		if len(plan.First.Out) > 0 {
			mv.verdict = "go-change"
		}
	}
	return mv
}

// small says why even the least step may not be taken; it is what the figures
// are for, unless what is fitted is itself too much.
func (v *valve) small(mv *move) (verdict, why string) {
	switch v.against(mv.at) {
	case byChance:
		if m, sigma := v.line.At(mv.at); relief.POver(m, sigma, 0, v.limit) > mostOver {
			return "small-chance-any", "none is safe"
		}
		return "small-chance", "none is safe"
	case bySeen:
		return "small-seen", "none: it would read over the limit"
	case byTarget:
		return "small-target", "none: the least would pass the target"
	}
	mv.at = v.fitted
	return "small-now", "none is safe"
}

// turn chooses among turns of a screw, an eighth at a time.
func (v *valve) turn() move {
	eighth, safe := v.pitch/8, v.safe()
	step := v.fitted + eighth
	if !math.IsNaN(safe) && v.against(step) == "" {
		mv := move{verdict: "screw", turns: relief.Turns(safe, v.pitch)}
		for mv.turns*v.pitch > step && v.against(mv.turns*v.pitch) != "" {
			mv.turns -= 1. / 8
		}
		// More than whole eighths may be in, when a total was typed otherwise.
		mv.at = max(mv.turns*v.pitch, step)
		mv.next = mv.at + eighth
		return mv
	}
	mv := move{at: step, next: math.NaN()}
	mv.verdict, mv.why = v.small(&mv)
	if mv.verdict != "small-now" && mv.verdict != "small-seen" {
		mv.verdict += "-screw"
	}
	return mv
}

func pieceCount(pieces []relief.Piece) int {
	n := 0
	for _, p := range pieces {
		n += p.Count
	}
	return n
}
