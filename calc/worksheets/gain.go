package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/lift"
	"plainlift/calc/unit"
)

// gain says what another pressure would lift, at the height and the point for
// which the lift is known.
var gain = &calc.Worksheet{
	ID:    "gain",
	Title: "What would more pressure lift?",
	Menu:  "What it lifts",
	Reply: calc.Reply{
		About: "What {set_to} instead of {now} would be worth on a loader that lifts {lift} at {at}:",
		How:   "At one height the load is a straight line in pressure, {slope} at the least.",
		After: "So many percent of pressure are about so many percent of lift, and carrying the load closer and lower does as much. Stay under the manual's limit.",
	},
	Fields: []calc.Field{
		{ID: "lift", Label: "Lift capacity", Noun: "lift capacity", Kind: unit.Load, Example: "1,580 lb",
			Range: calc.Loads, Quantity: "lift",
			Hint: "As rated, or as measured, at the height and the point that matter to you. The answer is for the same height and point."},
		{ID: "at", Label: "Rated at pressure", Noun: "rated pressure", Kind: unit.Pressure, Example: "2,735 psi",
			Range: calc.Pressures, Quantity: "lift pressure",
			Hint: "The pressure at which that lift was rated or measured; for a rating, mostly the middle of the manual's range."},
		{ID: "now", Label: "Gauge shows", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi",
			Range: calc.Pressures, Quantity: "pressure now",
			Hint: "With the oil warm, at rated engine speed, the cylinder held at the end of its stroke for seconds. Not read: enter the pressure the lift was rated at; a given rise adds the same load from anywhere."},
		{ID: "target", Label: "If it were set to", Noun: "target", Kind: unit.Pressure, Example: "2,735 psi",
			Range: calc.Pressures, Quantity: "target pressure",
			Hint: "The pressure somebody wants to set. Not above the manual's highest."},
		{ID: "rise", Label: "Or raised by", Noun: "rise", Kind: unit.Pressure,
			Range: calc.Zeros, Signed: true, Empty: "not given",
			Hint: "For “turned it up 250”: a rise entered here counts from what the gauge shows and wins over the pressure above."},
		{ID: "limit", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
			Range: calc.Pressures, Quantity: "manual highest", Empty: "not known",
			Hint: "The upper end of the range in the service manual. Never set it above this."},
		{ID: "dead", Label: "Arms and tool, felt at the load", Noun: "arms and tool", Kind: unit.Load, Quantity: "dead weight",
			Range: calc.Range{Min: "0 kN", Max: "50 kN"}, Empty: "not known",
			Hint: "What the pressure holds up besides the load, as heavy as it would be at the load's own point. Leave it empty if you don't know: the answer then runs from none to 30 % of the lift (common practice, no source). A grapple can pass 50 %."},
		{ID: "reach", Label: "Pivot to load, level", Noun: "reach", Kind: unit.Length, Example: "100 in",
			Range: calc.Lengths, Quantity: "pivot to load",
			Hint: "From the pivot of the arms to where the load hangs, measured level."},
	},
	Figures: []calc.Figure{
		{ID: "gain", Label: "More lift, at least", Kind: unit.Load, Round: calc.Two},
		{ID: "gain_hi", Label: "More lift, at most", Kind: unit.Load, Round: calc.Two},
		{ID: "gain_pct", Label: "More lift, of the lift now", Kind: unit.Percent, Round: calc.Two},
		{ID: "closer", Label: "The same by carrying the load nearer", Kind: unit.Length, Round: calc.Two},
		{ID: "lift_now", Label: "Lift at the reading", Kind: unit.Load, Place: calc.More},
		{ID: "lift_target", Label: "Lift at the target", Kind: unit.Load, Place: calc.More},
		{ID: "dp", Label: "More pressure", Kind: unit.Pressure, Place: calc.More},
		{ID: "dp_pct", Label: "More pressure, of the pressure now", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "slope", Label: "Load per pressure, at least", Kind: unit.LoadSlope, Round: calc.Two, Place: calc.More},
		{ID: "gain_lo", Label: "More lift, with no dead weight unless it is known", Kind: unit.Load, Round: calc.Two, Place: calc.More},
		{ID: "gain_pct_hi", Label: "More lift, of the lift now, at most", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "set_to", Kind: unit.Pressure, Place: calc.Quoted, Quantity: "target pressure", From: []string{"now", "rise"}, Against: []string{"now", "limit"}},
		{ID: "room", Kind: unit.Pressure, Place: calc.Quoted, Against: []string{"0 psi"}},
		{ID: "loss", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
		{ID: "loss_hi", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
	},
	Verdicts: gainVerdicts(),
	Next: []calc.Next{
		{ID: "reading", Text: "What does the gauge prove? Is it really low?"},
		{ID: "before-after", Text: "Before and after: how much is pressure?"},
		{ID: "shim", Text: "How much shim, and where to stop?"},
		{ID: "tip", Text: "What tips first? With this lift"},
		{ID: "flow", Text: "Slow or weak? What the pump does"},
	},
	Compute: computeGain,
}

// gainVerdicts are the common branches, and how three of them are put when one
// number is not a pair: the dead weight is known.
func gainVerdicts() []calc.Verdict {
	var vs []calc.Verdict
	for _, v := range lifting {
		v.Sentence = liftingSentence(v.Key, "{target}", "{set_to}")
		vs = append(vs, v)
		switch v.Key {
		case "over-limit":
			vs = append(vs, calc.Verdict{Key: "over-limit-known", ID: v.Key, Head: v.Head,
				Sentence: "{set_to} is above the manual's {limit}: by arithmetic {gain} more, but don't set it there."})
		case "lower":
			vs = append(vs, calc.Verdict{Key: "lower-known", ID: v.Key, Head: v.Head, Sentence: v.Sentence})
			last := &vs[len(vs)-2]
			last.Head = "−{loss:n} to {loss_hi}"
			last.Sentence = "Lowering it from {now} to {set_to} gives up {loss:n} to {loss_hi} of {lift_now}."
		case "more":
			vs = append(vs, calc.Verdict{Key: "more-known", ID: v.Key, Head: "+{gain}",
				Sentence: "{set_to} instead of {now} ({dp_pct} more) lifts {gain} more ({gain_pct}) on {lift_now}; carrying the load about {closer} nearer does the same. It won't raise faster or keep the rear wheels down."})
		}
	}
	return vs
}

// farOff is a share of the pressure that no gauge worth reading is off by.
const farOff = 0.1

// mostPressure is the end of the range of pressures, Pa.
const mostPressure = 400e5

func computeGain(in *calc.In, out *calc.Out) {
	now, load, reach := in.SI("now"), in.SI("lift"), in.SI("reach")
	limit := math.Inf(1)
	if in.Has("limit") {
		limit = in.SI("limit")
	}
	target := in.SI("target")
	if in.Has("rise") {
		out.Unused("target")
		target = now + in.SI("rise")
		if math.Abs(target-limit) < 1e-9*limit {
			target = limit // the sum of two typed numbers, up to the last bits
		}
		if !(target > 0 && target <= mostPressure) {
			out.Problem("rise", out.Words("From {now} that must end above 0 and at 400 bar (5,801 psi) or less"))
			return
		}
	}
	floor, high := floorAndHigh(load, in.SI("at"))
	known := in.Has("dead")
	if known {
		floor.Dead = in.SI("dead")
		high = floor
	}
	more := gainFigures(out, floor, high, now, target, reach)

	branch := liftingBranch(now, target, limit, floor.Lift(now))
	key := branch
	if known && (branch == "over-limit" || branch == "lower" || branch == "more") {
		key += "-known"
	}
	out.Verdict(key)
	switch branch {
	case "none":
		if floor.Lift(target) <= 0 {
			out.Add("{set_to} would not lift a load either.")
		}
	case "over-limit":
		if floor.Lift(now) > 0 {
			out.Line("Carrying the load about {closer} nearer lifts as much without touching the pressure.")
		}
	case "more":
		out.Line("At any other height or reach it is at least {dp_pct} of what is lifted there: the load gained follows the lift.")
	}
	out.None("room", noLimit)
	switch room := limit - target; {
	case !in.Has("limit"):
		if more > 0 {
			out.Line(noEnd)
		}
	case branch != "more" || room > farOff*target:
	case room == 0:
		out.Line("Set to {set_to}, a gauge that reads low at all has it truly over the manual's {limit}.")
	default:
		out.Set("room", room)
		out.Line("Set to {set_to}, a gauge that reads more than {room} low has it truly over the manual's {limit}.")
	}

	gainPicture(in, out, floor, high, target, limit)
	gainRests(in, out)
	gainWorking(in, out, floor, target)
	out.Caution("limit")
	switch branch {
	case "more":
		out.Caution("low", "turn")
	case "over-limit-now":
		out.Caution("turn")
	}
	out.Caution("hold", "skin", "leaks", "arm", "warranty", "technician")
}

const takesAll = "the arms and tool use all the pressure"

// gainFigures sets the figures for the two ratings between which the truth is
// taken to lie, and returns the rise in pressure.
func gainFigures(out *calc.Out, floor, high lift.Rating, now, target, reach float64) (rise float64) {
	rise = target - now
	out.Set("set_to", target)
	out.Set("dp", rise)
	out.Set("dp_pct", rise/now)
	out.Set("lift_now", floor.Lift(now))
	out.Set("lift_target", floor.Lift(target))
	out.Set("slope", floor.Slope())
	least, most := floor.Gain(now, target), high.Gain(now, target)
	out.Set("gain", least)
	out.Set("gain_lo", least)
	out.Set("gain_hi", most)
	out.Set("loss", -least)
	out.Set("loss_hi", -most)
	setOr(out, "gain_pct", floor.GainShare(now, target), takesAll)
	why := takesAll
	if high != floor {
		why = "with 30 % dead weight, " + takesAll
	}
	setOr(out, "gain_pct_hi", high.GainShare(now, target), why)
	switch {
	case floor.Lift(target) <= 0:
		out.None("closer", "the target does not lift a load")
	case floor.Lift(now) <= 0:
		out.None("closer", "none: "+takesAll+" now, at any reach")
	default:
		out.Set("closer", lift.Closer(reach, least, floor.Lift(target)))
	}
	return rise
}
