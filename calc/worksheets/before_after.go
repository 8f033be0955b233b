package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// beforeAfter holds a reported gain in lift against what the pressures read
// before and after can give.
var beforeAfter = &calc.Worksheet{
	ID:    "before-after",
	Title: "Before and after: how much is pressure?",
	Menu:  "Before and after",
	Reply: calc.Reply{
		About: "Thanks for putting numbers to it: {before} before, {after} after, {reported} more lift.",
		How:   "{before:n} to {after} is {dp_pct} more pressure; arms and tool weighing {dead_lo} to {dead_hi} of the load make that a range.",
		After: "I don't doubt that it feels stronger. Two pulls at one height and reach, with warm oil, would show what came from where.",
	},
	Fields: []calc.Field{
		{ID: "before", Label: "Gauge showed before", Noun: "pressure before", Kind: unit.Pressure, Example: "2,450 psi",
			Range: calc.Pressures, Quantity: "pressure now",
			Hint: "The relief pressure read before the change."},
		{ID: "after", Label: "Gauge showed after", Noun: "pressure after", Kind: unit.Pressure, Example: "2,700 psi",
			Range: calc.Pressures, Quantity: "target pressure",
			Hint: "Read after the change at the same port, with the oil as warm and the engine as fast. Only the rise is known: add it to the pressure before."},
		{ID: "claimed", Label: "Reported: more lift", Noun: "reported gain", Kind: unit.Percent, Example: "30 %",
			Range: calc.Range{Min: "-100 %", Max: "1000 %"}, Signed: true, Empty: "not given",
			Hint: "The gain somebody reports, in percent of the lift before. With two loads, leave it: they win."},
		{ID: "lift_before", Label: "Or the load lifted before", Noun: "load before", Kind: unit.Load,
			Range: calc.Loads, Empty: "not known",
			Hint: "As weighed, or the known lift; at the same height and point as the load after."},
		{ID: "lift_after", Label: "and the load lifted after", Noun: "load after", Kind: unit.Load,
			Range: calc.Loads, Empty: "not known",
			Hint: "With the load before it wins over the percentage."},
		{ID: "gained", Label: "or the load gained", Noun: "load gained", Kind: unit.Load, More: true,
			Range: calc.Range{Min: "-50 kN", Max: "50 kN"}, Signed: true, Empty: "not given",
			Hint: "For “it picked up 150 lb more” or “150 lb for every 100 psi”: enter the load gained over this rise, and the load before."},
		{ID: "gauge_err", Label: "Gauge good to ±", Noun: "gauge limit", Kind: unit.Pressure, Example: "80 psi",
			Range: calc.FromZero, Quantity: "gauge limit",
			Hint: "How far the gauge may be off: its class in percent of the dial's highest number. Nothing printed: take 3 % of that number (common practice, no source)."},
		{ID: "same_gauge", Label: "Both read on one gauge", Noun: "one gauge or two", Usual: true, Shape: calc.Choice,
			Options: []calc.Option{{ID: "yes", Label: "yes"}, {ID: "no", Label: "no"}},
			Hint:    "What one gauge is off, it is off both times, and most of that cancels. Two gauges may be off in opposite directions."},
		{ID: "limit", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
			Range: calc.Pressures, Quantity: "manual highest", Empty: "not known",
			Hint: "The upper end of the range in the service manual. Never set it above this."},
		{ID: "step", Label: "Smallest step you can read", Noun: "smallest step", Kind: unit.Pressure, Example: "10 psi", Usual: true, More: true,
			Range: calc.FromZero,
			Hint:  "Half or a fifth of the distance between two marks, whatever you honestly can; on a digital gauge the last digit."},
		{ID: "scale", Label: "Dial goes up to", Noun: "dial", Kind: unit.Pressure, More: true,
			Range: calc.Scales, Quantity: "gauge scale", Empty: "not known",
			Hint: "The highest number on the gauge's face; only to say whether the two readings are near enough to share one error."},
		{ID: "weigh_err", Label: "Weighing differs by ±", Noun: "weighing", Kind: unit.Percent, Example: "0 %", Usual: true, More: true,
			Range: calc.Range{Min: "0 %", Max: "50 %"},
			Hint:  "What can differ between the two weighings, such as the hook or the scale's repeatability. The scale's own calibration cancels: leave it out."},
		{ID: "dead_lo", Label: "Arms and tool against the load, at least", Noun: "least dead weight", Kind: unit.Percent, Example: "0 %", Usual: true, More: true, Quantity: "dead share, at least",
			Range: calc.Range{Min: "0 %", Max: "1000 %"},
			Hint:  "What arms and tool weigh, felt at the load, in percent of the load lifted before."},
		{ID: "dead_hi", Label: "Arms and tool against the load, at most", Noun: "most dead weight", Kind: unit.Percent, Example: "30 %", Usual: true, More: true, Quantity: "dead share, at most",
			Range: calc.Range{Min: "0 %", Max: "1000 %"},
			Hint:  "30 % is usual for a plain bucket (common practice, no source); a grapple can pass 50 %."},
	},
	Figures: []calc.Figure{
		{ID: "expected_lo", Label: "Pressure should give, at least", Kind: unit.Percent, Round: calc.ByDoubt, Against: reportedFigures},
		{ID: "expected_hi", Label: "Pressure should give, at most", Kind: unit.Percent, Round: calc.ByDoubt, Against: reportedFigures},
		{ID: "claimed_pct", Label: "Reported", Kind: unit.Percent, Round: calc.ByDoubt, Against: expectedFigures},
		{ID: "needed_lo", Label: "Pressure it would have taken, at least", Kind: unit.Pressure, Against: []string{"limit", "after"}},
		{ID: "expected", Label: "Pressure should give, middle", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "claimed_lo", Label: "Reported, at least", Kind: unit.Percent, Round: calc.ByDoubt, Place: calc.More, Against: expectedFigures},
		{ID: "claimed_hi", Label: "Reported, at most", Kind: unit.Percent, Round: calc.ByDoubt, Place: calc.More, Against: expectedFigures},
		{ID: "unexplained", Label: "Reported less the middle of what pressure gives", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "unexplained_load", Label: "The same as a load", Kind: unit.Load, Round: calc.Two, Place: calc.More},
		{ID: "needed", Label: "Pressure it would have taken with no dead weight", Kind: unit.Pressure, Place: calc.More, Against: []string{"limit"}},
		{ID: "times", Label: "Reported against the most that pressure gives", Kind: unit.Factor, Round: calc.Two, Place: calc.More, Against: []string{"1"}},
		{ID: "dead_needed", Label: "Arms and tool against the load, to explain it", Kind: unit.Factor, Round: calc.Two, Place: calc.More},
		{ID: "dp_pct", Label: "More pressure, of the pressure before", Kind: unit.Percent, Place: calc.More},
		{ID: "slope_reported", Label: "Load per pressure, reported", Kind: unit.LoadSlope, Round: calc.Two, Place: calc.More, Against: []string{"slope_lo", "slope_hi"}},
		{ID: "slope_lo", Label: "Load per pressure to be expected, at least", Kind: unit.LoadSlope, Round: calc.Two, Place: calc.More, Against: []string{"slope_reported"}},
		{ID: "slope_hi", Label: "Load per pressure to be expected, at most", Kind: unit.LoadSlope, Round: calc.Two, Place: calc.More, Against: []string{"slope_reported"}},
		{ID: "reported", Round: calc.Words, Place: calc.Quoted},
		{ID: "share", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted},
	},
	Verdicts: []calc.Verdict{
		{Key: "no-rise", Head: "No pressure rise shown",
			Sentence: "The two pressures differ by no more than the gauge can show, so any gain came from something else."},
		{Key: "no-rise-fits", ID: "no-rise", Head: "No pressure rise shown",
			Sentence: "The two pressures differ by no more than the gauge can show; that could change the lift by {expected_lo} to {expected_hi}, and {reported} is reported, which fits."},
		{Key: "fell", Head: "Pressure went down",
			Sentence: "{after} is under {before}: pressure alone would lift less, so something else changed."},
		{Key: "fell-fits", ID: "fell", Head: "Pressure went down",
			Sentence: "{after} is under {before}: pressure alone should change the lift by {expected_lo} to {expected_hi}, and {reported} is reported, which fits."},
		{Key: "untestable", Head: "Too coarse to judge",
			Sentence: "With ±{gauge_err} on two gauges, {before:n} to {after} could give anything from a loss to {expected_hi} more: this can't be judged."},
		{Key: "untestable-over", ID: "untestable", Head: "Too coarse, yet more than pressure gives",
			Sentence: "With ±{gauge_err} on two gauges, {before:n} to {after} could give anything from a loss to {expected_hi} more, and {reported} is more than even that. Hook height, reach, warm oil and engine speed are the usual other causes."},
		{Key: "fits", Head: "Fits",
			Sentence: "It fits: {before:n} to {after} should give {expected_lo:n} to {expected_hi} more, and {reported} is reported."},
		{Key: "no-gain", Head: "No gain reported",
			Sentence: "{reported} is reported where pressure should give {expected_lo:n} to {expected_hi} more: check that both pulls were at one height and reach."},
		{Key: "less", Head: "Less than expected",
			Sentence: "{before:n} to {after} should give {expected_lo:n} to {expected_hi} more and {reported} is reported: worth checking for a sticking valve, a worn seal, or a different height."},
		{Key: "beyond", Head: "More than pressure explains",
			Sentence: "{before:n} to {after} should give {expected_lo:n} to {expected_hi} more and {reported} is reported; pressure alone would need about {needed_lo} or more, or arms and tool weighing {dead_needed} the load. Hook height, reach, warm oil and engine speed are the usual other causes."},
		{Key: "beyond-just", ID: "beyond", Head: "More than pressure explains",
			Sentence: "{before:n} to {after} should give {expected_lo:n} to {expected_hi} more and {reported} is reported: just more than pressure explains. Hook height, reach, warm oil and engine speed are the usual other causes."},
	},
	Next: []calc.Next{
		{ID: "gain", Text: "What would more pressure lift? In load, and by carrying it nearer"},
		{ID: "reading", Text: "What does the gauge prove? Is it really low?"},
	},
	Read:     readPost,
	Compute:  computeBeforeAfter,
	Simulate: func(in *calc.In) calc.Trial { return pressureGain(in).Draw },
}

// The numbers that must not seem to meet what they don't.
var (
	reportedFigures = []string{"claimed_lo", "claimed_hi", "claimed_pct"}
	expectedFigures = []string{"expected_lo", "expected_hi"}
)

// pressureGain is the gain that the two readings can give, with its doubt.
func pressureGain(in *calc.In) doubt.Gain {
	return doubt.Gain{
		Before: in.SI("before"), After: in.SI("after"),
		Err: in.SI("gauge_err"), Step: in.SI("step"), Shared: in.Choice("same_gauge") == "yes",
		DeadLo: in.SI("dead_lo"), DeadHi: in.SI("dead_hi"),
	}
}

// gains is what the two sides of the comparison come to, as fractions of the
// lift before.
type gains struct {
	pct, lo, hi    float64 // reported, and the interval it stands for
	least, most    float64 // what pressure gives, 95 %
	loads          bool    // reported as loads
	places         int     // of a reported percentage, the decimals it was given to
	before, after  float64 // pressures read (Pa)
	limit, deadMax float64 // manual's limit (Pa, +Inf unknown), most dead weight ÷ lift
}

func computeBeforeAfter(in *calc.In, out *calc.Out) {
	g := pressureGain(in)
	reported := readReported(in, out)
	if badReadings(in, out, g) || reported == nil {
		return
	}
	r := *reported
	r.before, r.after, r.limit, r.deadMax = g.Before, g.After, math.Inf(1), g.DeadHi
	if in.Has("limit") {
		r.limit = in.SI("limit")
	}
	r.least, r.most = g.Interval(coverage)
	if sim := in.Simulation(); sim != nil && r.least < r.most {
		_, u, _, _, _ := sim.Summary(coverage)
		r.least, r.most = out.CheckInterval(unit.Percent, coverage, r.least, r.most, u)
	}
	beforeAfterFigures(in, out, g, r)
	branch := r.branch(g)
	out.Verdict(branch)
	r.lines(in, out, branch)
	r.picture(in, out)
	beforeAfterRests(in, out, g)
	beforeAfterWorking(in, out, r)
	out.Caution("repeat", "limit", "low", "hold", "skin", "leaks", "arm", "technician")
}

const coverage = 0.95 // of an interval where the reader is not asked

// badReadings complains about entries that cannot be reckoned with together.
func badReadings(in *calc.In, out *calc.Out, g doubt.Gain) bool {
	bad := false
	complain := func(field, message string) {
		out.Problem(field, out.Words(message))
		bad = true
	}
	for _, id := range []string{"before", "after"} {
		if in.SI(id) > in.SI("scale") {
			complain(id, "The dial only goes up to {scale}")
		}
	}
	if g.DeadLo > g.DeadHi {
		complain("dead_hi", "Must be at least the other, {dead_lo}")
	}
	if !(g.Before-g.Err-g.Step/2 > 0) {
		complain("gauge_err", "With ±{gauge_err} and steps of {step} the pressure before, {before}, could be nothing at all")
	}
	return bad
}

// short and over say that less or more is reported than pressure gives; numbers
// that are equal up to their last bits are neither.
func (r gains) short() bool { return r.hi < r.least-1e-9 }
func (r gains) over() bool  { return r.lo > r.most+1e-9 }
func (r gains) meet() bool  { return !r.short() && !r.over() }

// branch chooses the branch, in the order that matters.
func (r gains) branch(g doubt.Gain) string {
	exact := g.Shared || g.Err == 0 // what the gauge is off, it is off both times
	change := r.after - r.before
	switch {
	case exact && math.Abs(change) <= g.Step*(1+1e-9) && r.meet():
		return "no-rise-fits"
	case exact && math.Abs(change) <= g.Step*(1+1e-9):
		return "no-rise"
	case change < 0 && r.most <= 0 && r.meet():
		return "fell-fits"
	case change < 0 && r.most <= 0:
		return "fell"
	case r.least <= 0 && r.over():
		return "untestable-over"
	case r.least <= 0:
		return "untestable"
	case r.meet():
		return "fits"
	case r.short() && r.pct <= 0:
		return "no-gain"
	case r.short():
		return "less"
	case r.neededLeast() <= r.after:
		return "beyond-just"
	}
	return "beyond"
}
