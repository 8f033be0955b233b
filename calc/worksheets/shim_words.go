package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/relief"
)

// say adds what stands beside the verdict: whether it is low at all, whose rate
// is used, why it stops short.
func (v *valve) say(in *calc.In, out *calc.Out, mv move) {
	asItIs := "The pressure to expect and the chance are for what is in now."
	switch mv.verdict {
	case "yours-limit":
		v.sayMissing(in, out)
		if !in.Own("now") || !in.Own("target") || !in.Own("gauge_err") {
			out.Add("It also needs your own {missing}.")
		}
	case "yours":
		v.sayMissing(in, out)
	case "stop-now", "stop-now-screw", "stop-target", "stuck":
		out.Line(asItIs)
	case "there", "there-past", "there-line", "there-past-line":
		if v.over(mv.at) > mostOver {
			out.Add("That is too much: don't add, check it on a better gauge.")
		}
		v.sayOverride(in, out)
	default:
		v.sayLow(in, out)
		v.sayOverride(in, out)
		if mv.why == "" {
			v.sayShort(out, mv)
		} else if mv.at == v.fitted {
			if mv.next > 0 && v.against(mv.next) == byChance {
				out.Add("That much would leave the chance of truly being over {limit} at {p_next}, which is too much.")
			}
			out.Line(asItIs)
		} else {
			out.Line("The pressure to expect and the chance are for {smallest} more.")
		}
		if v.screw {
			out.Line("An eighth of a turn counts as {eighth}: enter the turns so far as the total added, then what the gauge shows.")
		}
	}
}

// sayMissing names the fields, the limit apart, that are still the example's.
func (v *valve) sayMissing(in *calc.In, out *calc.Out) {
	var nouns []string
	for _, id := range yours {
		if id != "limit" && !in.Own(id) {
			nouns = append(nouns, in.Noun(id))
		}
	}
	out.Text("missing", "", calc.And(nouns))
}

// sayLow says first that there may be nothing to correct.
func (v *valve) sayLow(in *calc.In, out *calc.Out) {
	if !in.Has("low") {
		return
	}
	if !in.Own("low") {
		out.Line("The lowest of {low} belongs to the example: enter your manual's, or clear it. Is yours low at all?")
		return
	}
	m, sigma := v.line.At(v.fitted)
	under := relief.PUnder(m, sigma, v.gauge, v.low)
	switch within := 1 - under - relief.POver(m, sigma, v.gauge, v.limit); {
	case under >= settled:
		return
	case within >= settled:
		out.Add("But it is shown to be in the manual's range already: there is nothing to correct.")
		return
	case under >= probable:
		out.Line("It is probably low ({p_low}), but the gauge can't show it: there may be nothing to correct.")
	default:
		out.Line("The gauge can't show that it is low: there may be nothing to correct.")
	}
	if v.limit-v.low < 2*settled*v.gauge {
		out.Line("No reading on this gauge could show “in range”: ±{gauge_err} against a range {width} wide.")
	}
}

// sayOverride says that the reader's own readings beat the rule.
func (v *valve) sayOverride(in *calc.In, out *calc.Out) {
	if !v.line.PriorDropped {
		return
	}
	rule := "the usual {rate_lo:n} to {rate_hi}"
	switch {
	case in.Choice("material") != noSpring:
		rule = "the {rate_rule} of the spring"
	case in.Own("rate_lo") || in.Own("rate_hi"):
		rule = "{rate_lo:n} to {rate_hi}"
	}
	out.Line("Your own readings give {rate}, not " + rule + "; they are used.")
}

// sayShort says why the most stops short of the target.
func (v *valve) sayShort(out *calc.Out, mv move) {
	const rounding = 1e-9
	m, _ := v.line.At(mv.at)
	if m >= v.target*(1-rounding) {
		return
	}
	if !(mv.next > 0) {
		out.Add("That stops short of {target}, with all the shims listed.")
		return
	}
	switch v.against(mv.next) {
	case byChance:
		out.Add("It stops short of {target} on purpose: {next_total} would leave a chance of {p_next}.")
	case bySeen:
		out.Add("It stops short of {target} on purpose: with {next_total} it has read over {limit}.")
	default:
		out.Add("It stops short of {target}: {next_total} would pass it.")
	}
}

// notes stand beside the fields, and a field that is not used says nothing.
func (v *valve) notes(in *calc.In, out *calc.Out, mv move) {
	thinner := false
	for i, t := range v.trials {
		switch {
		case i == 0:
			out.Note("trials", i, thicknessText(in, t.T)+" more than at the first reading")
		case t.T > v.trials[i-1].T:
			out.Note("trials", i, thicknessText(in, t.T-v.trials[i-1].T)+" more than the row above")
		default:
			out.Note("trials", i, "Not thicker than the row above: enter the total added, not the last shim alone")
			thinner = true
		}
	}
	if thinner {
		out.Line("A row of the readings is not thicker than the one above it. Each is taken as the total in the valve then.")
	}
	if mv.plan.First != nil && mv.plan.Fitted == nil && v.fitted > 0 {
		out.Note("kit", -1, "What is in now, {fitted}, can't be made of these: list those that are in as well")
	}
	if v.screw && v.pieces > 0 {
		out.Unused("kit")
	}
	if v.target < v.low {
		out.Note("target", -1, "Under the manual's lowest, {low}")
	}
}
