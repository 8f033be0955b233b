package worksheets

import (
	"math"
	"strings"

	"plainlift/calc"
	"plainlift/calc/lift"
)

// usualDead is the most dead weight, as a share of the lift, that is reckoned
// with when nothing better is known. Common practice, no source: a plain bucket
// stays under it, a grapple can pass 50 %.
const usualDead = 0.30

// lifting are the branches of what a change of pressure lifts, in the names of
// the gain worksheet; others take them with names of their own.
var lifting = []calc.Verdict{
	{Key: "over-limit-now", Head: "Already above the limit",
		Sentence: "{now} already reads above the manual's {limit}; bring it down first."},
	{Key: "over-limit", Head: "Above the manual's limit",
		Sentence: "{target} is above the manual's {limit}: by arithmetic {gain:n} to {gain_hi} more, but don't set it there."},
	{Key: "none", Head: "Arms and tool take it all",
		Sentence: "At {now} the arms and tool use all the pressure, so no percentage can be given."},
	{Key: "equal", Head: "No change",
		Sentence: "The target is what the gauge shows: nothing to gain."},
	{Key: "lower", Head: "−{loss}",
		Sentence: "Lowering it from {now} to {target} gives up {loss} of {lift_now}."},
	{Key: "more", Head: "+{gain:n} to {gain_hi}",
		Sentence: "{target} instead of {now} ({dp_pct} more) lifts {gain:n} to {gain_hi} more on {lift_now}; carrying the load about {closer} nearer does the same. It won't raise faster or keep the rear wheels down."},
}

// liftingBranch chooses among them, in the order that matters. limit is +Inf
// where none is known.
func liftingBranch(now, target, limit, liftNow float64) string {
	switch {
	case now > limit:
		return "over-limit-now"
	case target > limit:
		return "over-limit"
	case liftNow <= 0:
		return "none"
	case target == now:
		return "equal"
	case target < now:
		return "lower"
	}
	return "more"
}

// liftingSentence is a branch's sentence in another worksheet's names, given as
// old, new pairs.
func liftingSentence(key string, names ...string) string {
	for _, v := range lifting {
		if v.Key == key {
			return strings.NewReplacer(names...).Replace(v.Sentence)
		}
	}
	panic("worksheets: no such branch: " + key)
}

// floorAndHigh rates a lift at a pressure with nothing held up besides, and with
// as much as usualDead allows.
func floorAndHigh(load, at float64) (floor, high lift.Rating) {
	return lift.Rating{Load: load, At: at}, lift.Rating{Load: load, Dead: usualDead * load, At: at}
}

// noEnd stands beside more pressure where the manual's upper limit is not known.
const noEnd = "Enter the manual's upper limit: without it this page can't tell you where to stop."

// setOr sets a figure, or says why it does not exist when si is NaN.
func setOr(out *calc.Out, id string, si float64, why string) {
	if math.IsNaN(si) {
		out.None(id, why)
	} else {
		out.Set(id, si)
	}
}
