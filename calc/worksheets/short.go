package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/lift"
	"plainlift/calc/unit"
)

var shortJudgement = judgement{it: "reading", pLow: "p_low", pWithin: "p_within", pHigh: "p_high", from: []string{"scale", "accuracy"}}

// assumedReach is how far ahead of the pivot the load is taken to hang where
// nobody says: 100 in. Invented for the example.
const assumedReach = 100 * 0.0254 // m

const settled = 0.95 // what counts as shown, where the reader is not asked

// short is the home page: seven numbers, one answer. The gauge's accuracy is one
// rectangular term, so every chance is exact arithmetic.
var short = &calc.Worksheet{
	ID:    "short",
	Title: "Is my relief pressure low?",
	Menu:  "Is it low?",
	Reply: calc.Reply{
		About: "About a gauge that shows {reading}, on a dial up to {scale} and good to ±{accuracy} of it:",
		How:   "What the gauge shows, give or take {accuracy} of {scale}, is {lo:n} to {hi}.",
		After: "This says nothing against anybody's work, only what such a gauge can show. The machine's own manual decides.",
	},
	Fields: []calc.Field{
		{ID: "reading", Label: "Gauge shows", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi",
			Range: calc.Pressures, Quantity: "pressure now",
			Hint: "With the oil warm, at rated engine speed, at the port this relief protects, the cylinder held at the end of its stroke for seconds."},
		dialField,
		{ID: "accuracy", Label: "Gauge good to ± (% of dial)", Noun: "gauge accuracy", Kind: unit.Percent, Example: "2 %",
			Range: calc.Range{Min: "0 %", Max: "20 %"}, Quantity: "gauge accuracy",
			Hint: "Printed on the dial as a class or grade. Nothing printed: take 3 % (common practice, no source)."},
		lowField, highField,
		{ID: "lift", Label: "Lift capacity", Noun: "lift capacity", Kind: unit.Load, Example: "1,580 lb",
			Range: calc.Loads, Quantity: "lift",
			Hint: "As rated, or as measured: at the height and point you care about. It is taken to hold at the middle of the manual's range, unless you say at which pressure below."},
		{ID: "target", Label: "If it were set to", Noun: "target", Kind: unit.Pressure, Example: "2,735 psi",
			Range: calc.Pressures, Quantity: "target pressure",
			Hint: "The pressure somebody wants to set. Not above the manual's highest."},
		{ID: "at", Label: "Lift holds at", Noun: "pressure of the lift", Kind: unit.Pressure, More: true,
			Range: calc.Pressures, Quantity: "lift pressure", Empty: "the middle of the manual's range",
			Hint: "The pressure at which that lift was rated or measured. Empty: the middle of the manual's range."},
	},
	Figures: append([]calc.Figure{
		{ID: "lo", Label: "True pressure, at least", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"}},
		{ID: "hi", Label: "True pressure, at most", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"}},
		{ID: "p_low", Label: "Chance that it is low", Kind: unit.Percent, Round: calc.Chance, Against: []string{"95 %"}},
		{ID: "p_within", Label: "Chance that it is within the limits", Kind: unit.Percent, Round: calc.Chance, Against: []string{"95 %"}, Place: calc.More},
		{ID: "p_high", Label: "Chance that it is high", Kind: unit.Percent, Round: calc.Chance, Against: []string{"95 %"}, Place: calc.More},
		{ID: "gain", Label: "More lift at the target, at least", Kind: unit.Load, Round: calc.Two},
		{ID: "gain_hi", Label: "More lift at the target, at most", Kind: unit.Load, Round: calc.Two},
		{ID: "closer", Label: "The same by carrying the load nearer", Kind: unit.Length, Round: calc.Two},
		{ID: "gain_pct", Label: "More lift, of the lift now", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "dp_pct", Label: "More pressure", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "lift_now", Label: "Lift at the reading", Kind: unit.Load, Place: calc.More},
		{ID: "shortfall", Label: "Reading under the manual's lowest", Kind: unit.Pressure, Against: []string{"0 psi"}, Place: calc.More},
		{ID: "settle", Label: "Gauge that would settle it (± of dial)", Round: calc.Words, Place: calc.More},
		{ID: "loss", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
		{ID: "loss_hi", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
		{ID: "p_target", Label: "Set to the target: chance of truly over the highest", Kind: unit.Percent, Round: calc.Chance, Against: []string{"5 %"}, Place: calc.More},
		{ID: "lift_at", Label: "Lift taken to hold at", Kind: unit.Pressure, Place: calc.Quoted, Quantity: "lift pressure", From: []string{"reading", "low", "high", "at"}},
		{ID: "grade", Round: calc.Words, Place: calc.Quoted, Quantity: "gauge grade", From: []string{"accuracy"}},
	}, shortJudgement.figures()...),
	Verdicts: append(shortJudgement.verdicts(), calc.Verdict{Key: "no-range", Head: "{lo:n} to {hi}",
		Sentence: "The true pressure is {lo:n} to {hi} if the gauge keeps to its ±{a}; enter the manual's range to judge it."}),
	Aside: &calc.Next{ID: "before-after", Text: "Checking someone's result?"},
	Next: []calc.Next{
		{ID: "reading", Text: "What does the gauge prove? With several readings, its class and its temperature"},
		{ID: "gain", Text: "What would more pressure lift? With the arms and the tool counted"},
		{ID: "before-after", Text: "Before and after: how much is pressure?"},
		{ID: "shim", Text: "How much shim, and where to stop?"},
		{ID: "tip", Text: "What tips first? Before more lift"},
	},
	Banded:  &calc.Banded{Axis: "pressure", Kind: unit.Pressure, Value: "reading", Lo: "lo", Hi: "hi", From: "low", To: "high"},
	Compute: computeShort,
}

func computeShort(in *calc.In, out *calc.Out) {
	j := shortJudgement
	reading, scale := in.SI("reading"), in.SI("scale")
	low, high := limits(in, out)
	if reading > scale {
		out.Problem("reading", "The dial only goes up to {scale}")
		return
	}
	if low > high {
		return
	}
	a := in.SI("accuracy") * scale
	model := func(limit float64) doubt.Sum { return doubt.Sum{Mid: reading, Rects: []float64{limit}} }
	d := model(a).Dist()
	out.SetDoubt("lo", max(0, reading-a), a)
	out.SetDoubt("hi", reading+a, a)
	out.Text("grade", gradeOfScale, gradeWords(gradeOfScale))
	out.None("p_target", noLimit)
	j.judge(in, out, judged{x: reading, a: a, confidence: settled, limit: a, model: model, dist: d}, out.Verdict)

	mid := middle(in)
	out.Set("lift_at", mid)
	now, target, load := reading, in.SI("target"), in.SI("lift")
	floor, more := floorAndHigh(load, mid)
	gain := floor.Gain(now, target)
	out.Set("gain", gain)
	out.Set("gain_hi", more.Gain(now, target))
	out.Set("gain_pct", floor.GainShare(now, target))
	out.Set("dp_pct", target/now-1)
	out.Set("lift_now", floor.Lift(now))
	out.Set("loss", -gain)
	out.Set("loss_hi", -more.Gain(now, target))
	if gain >= 0 {
		out.Set("closer", lift.Closer(assumedReach, gain, floor.Lift(target)))
	} else {
		out.None("closer", "the target lifts less")
	}
	out.Line(liftingSentence(liftingBranch(now, target, high, floor.Lift(now)), "{now}", "{reading}", "{limit}", "{high}", "{loss}", "{loss:n} to {loss_hi}"))

	over := math.NaN()
	if in.Has("high") {
		_, _, over = doubt.Sum{Mid: target, Rects: []float64{a}}.Dist().Within(math.Inf(-1), high)
		out.Set("p_target", over)
	}
	switch {
	case target <= now:
	case !in.Has("high"):
		out.Line(noEnd)
	case target <= high:
		if over > mostOver {
			out.Line("Set to {target} on this gauge, the chance of truly being over {high} is {p_target}: that is too much.")
		}
	}

	j.picture(in, out, reading, reading-a, reading+a, d, "gauge shows {reading}", "±{a}")
	shortRests(in, out)
	out.Budget(unit.Pressure, doubt.Budget{{Name: "the gauge itself", U: doubt.Rect(a), Sens: 1, DOF: math.Inf(1)}}, []string{"±{a}"})
	shortWorking(in, out)
	out.Caution("limit")
	if target > now {
		out.Caution("low")
	}
	if target > now || now > high {
		out.Caution("turn")
	}
	out.Caution("hold", "skin", "leaks", "arm", "warranty", "technician")
}

// middle is the pressure at which the lift is taken to hold.
func middle(in *calc.In) float64 {
	switch {
	case in.Has("at"):
		return in.SI("at")
	case in.Has("low") && in.Has("high"):
		return (in.SI("low") + in.SI("high")) / 2
	case in.Has("low"):
		return in.SI("low")
	case in.Has("high"):
		return in.SI("high")
	}
	return in.SI("reading")
}

func shortRests(in *calc.In, out *calc.Out) {
	out.Rest("The gauge is off by no more than {accuracy} of {scale}, that is ±{a}, anywhere inside that alike; reading it again does not shrink this.")
	switch {
	case in.Has("at"):
		out.Rest("{lift} is lifted at {at}.")
	case in.Has("low") && in.Has("high"):
		out.Rest("{lift} is lifted at the middle of the manual's range.")
	case in.Has("low"):
		out.Rest("{lift} is lifted at the manual's {low}.")
	case in.Has("high"):
		out.Rest("{lift} is lifted at the manual's {high}.")
	default:
		out.Rest("Lift is taken as measured at {reading}.")
	}
	out.Rest("Arms and tool, felt at the load, are between nothing and 30 % of that lift (common practice, no source); a grapple can be more.")
	out.Rest("The load hangs 100 in (2.54 m) ahead of the pivot, for the distance that does the same.")
}

func shortWorking(in *calc.In, out *calc.Out) {
	out.Step("a = accuracy × dial", "{accuracy} × {scale} = {a}", "A stated limit, nothing more known: rectangular (JCGM 100:2008, 4.3.7)")
	out.Step("true pressure = reading ± a", "{reading} ± {a} = {lo:n} to {hi}", "The same")
	if in.Has("low") {
		out.Step("chance of low = (lowest − least) ÷ 2a, from 0 to 1", "({low} − {lo}) ÷ (2 × {a}) → {p_low}", "JCGM 106:2012, clause 7")
	}
	out.Step("more lift = lift ÷ pressure it holds at × (target − reading)", "{gain}; with arms and tool of 30 %: {gain_hi}", "Force is pressure × area; virtual work at one height")
	out.Step("nearer = reach × more lift ÷ lift at the target", "{closer}", "Moments about the pivot")
}
