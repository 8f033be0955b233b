package worksheets

import (
	"math"
	"strconv"
	"strings"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/relief"
	"plainlift/calc/unit"
)

func computeShim(in *calc.In, out *calc.Out) {
	v := readValve(in, out)
	if v == nil {
		return
	}
	mv := v.decide(in)
	for _, g := range shimFigures {
		why := mv.why
		if why == "" {
			why = "not part of this answer"
		}
		out.None(g.ID, why)
	}
	v.setLine(in, out, mv)
	v.setSteps(in, out, mv)
	v.setTurns(out, mv)
	out.Verdict(mv.verdict)
	v.say(in, out, mv)
	v.notes(in, out, mv)
	v.picture(in, out, mv)
	v.rests(in, out)
	v.budget(out, mv)
	v.working(in, out, mv)
	out.Caution("limit", "travel", "turn", "arm", "skin", "leaks", "hold", "repeat", "low", "warranty", "technician")
}

// setLine sets the figures of the line and of the doubt.
func (v *valve) setLine(in *calc.In, out *calc.Out, mv move) {
	const wide = 2 // standard uncertainties, for rounding
	l := v.line
	out.SetDoubt("rate", l.Rate, wide*l.RateU)
	out.Set("rate_u", l.RateU)
	out.Set("rate_rule", v.rule.Mean)
	out.Set("rate_ls", l.RateLS)
	out.Set("fitted", v.fitted)
	out.Text("counting", "", "")
	if v.fitted > 0 {
		out.Text("counting", "", ", counting what is in,")
	}
	if len(v.trials) > 0 {
		last := v.trials[len(v.trials)-1]
		most := last
		for _, t := range v.trials {
			if t.T > most.T {
				most = t
			}
		}
		out.Set("last", last.P)
		out.Set("tried", most.T)
		out.Set("rise", most.P-v.now)
		out.Set("rise_expected", v.rule.Mean*most.T)
	}
	m, sigma := l.At(v.fitted)
	out.SetDoubt("now_fitted", m, wide*sigma)
	out.Set("p_now", v.over(v.fitted))
	if in.Has("low") {
		out.Set("p_low", relief.PUnder(m, sigma, v.gauge, v.low))
		out.Set("width", v.limit-v.low)
	}
	switch {
	case math.IsNaN(mv.at):
		return
	case mv.high > 0:
		v.setReads(out, mv)
	case !mv.reachable():
	case l.Thickness(v.target) < 0:
		out.None("thickness", "none: it read past the target with nothing added")
	default:
		out.Set("thickness", l.Thickness(v.target))
	}
	m, sigma = l.At(mv.at)
	half := relief.HalfWidth(sigma, v.gauge, 0.95)
	if mv.why == "" {
		m = min(m, v.target) // which it passes by rounding at most
	}
	out.SetDoubt("expected", m, half)
	out.SetDoubt("expected_lo", m-half, half)
	out.SetDoubt("expected_hi", m+half, half)
	out.Set("p_over", v.over(mv.at))
	if m > v.target {
		out.Set("over_target", m-v.target)
	}
	if mv.next > 0 {
		out.Set("p_next", v.over(mv.next))
	}
}

// setReads says what reads over the limit, as it was typed where it was.
func (v *valve) setReads(out *calc.Out, mv move) {
	text := "{now_fitted}"
	switch {
	case mv.high == v.now:
		text = "{now}"
	case len(v.trials) > 0 && mv.high == v.trials[len(v.trials)-1].P:
		text = "{last}"
	}
	out.Text("reads", strconv.FormatFloat(mv.high, 'g', -1, 64), out.Words(text))
}

// setSteps sets the figures of the shims to fit.
func (v *valve) setSteps(in *calc.In, out *calc.Out, mv move) {
	thick := func(id string, t float64) {
		out.Text(id, strconv.FormatFloat(t, 'g', -1, 64), thicknessText(in, t))
	}
	first, most := mv.plan.First, mv.plan.Most
	if first != nil {
		thick("smallest", first.Add)
	}
	if mv.next > 0 {
		thick("next_total", mv.next)
	}
	if most == nil {
		return
	}
	out.Set("first", first.Add)
	out.Set("first_total", first.Total)
	out.Text("ins", "", piecesText(in, first.In))
	out.Text("outs", "", piecesText(in, first.Out))
	out.Set("add", most.Add)
	out.Set("stack_total", most.Total)
	text := piecesText(in, most.Stack)
	if v.fitted > 0 && mv.plan.Fitted == nil {
		text = thicknessText(in, v.fitted) + " in now + " + text
	}
	value := text
	if len(most.Out) > 0 {
		text += " (takes out " + piecesText(in, most.Out) + ")"
	}
	out.Text("stack", value, text)
}

// setTurns sets the figures of a screw.
func (v *valve) setTurns(out *calc.Out, mv move) {
	turns := func(id string, n float64) {
		out.Text(id, strconv.FormatFloat(n, 'g', -1, 64), turnsText(n))
	}
	if math.IsNaN(v.pitch) {
		out.None("screw_turns", "needs the screw's thread pitch")
		return
	}
	out.Set("eighth", v.pitch/8)
	if !v.screw {
		if mv.why == "" {
			turns("screw_turns", relief.Turns(v.safe(), v.pitch))
		}
		return
	}
	turns("smallest", 1./8)
	if mv.why != "" {
		return
	}
	for _, id := range []string{"first", "add", "stack", "stack_total"} {
		out.None(id, "set by its screw")
	}
	turns("screw_turns", mv.turns)
	turns("next_total", mv.turns+1./8)
}

// budget gives the sources of doubt in the pressure to expect.
func (v *valve) budget(out *calc.Out, mv move) {
	if math.IsNaN(mv.at) {
		return
	}
	_, sigma := v.line.At(mv.at)
	scatter := v.repeat / math.Sqrt(float64(1+len(v.trials)))
	rate := math.Sqrt(max(0, sigma*sigma-scatter*scatter))
	out.Budget(unit.Pressure, doubt.Budget{
		{Name: "the gauge itself", U: doubt.Rect(v.gauge), Sens: 1, DOF: math.Inf(1)},
		{Name: "the scatter of the readings", U: scatter, Sens: 1, DOF: math.Inf(1)},
		{Name: "what a shim adds", U: rate, Sens: 1, DOF: math.Inf(1)},
	}, []string{"±{gauge_err}", "{repeat}, one reading", "{rate_u}"})
}

// thicknessText is a thickness as the figures show it.
func thicknessText(in *calc.In, t float64) string { return in.Text(unit.Thickness, t) }

// piecesText names shims, the thickest first: "0.020 in + 2 × 0.005 in".
func piecesText(in *calc.In, pieces []relief.Piece) string {
	var parts []string
	for _, p := range pieces {
		s := thicknessText(in, p.Thickness)
		if p.Count > 1 {
			s = strconv.Itoa(p.Count) + " × " + s
		}
		parts = append(parts, s)
	}
	return strings.Join(parts, " + ")
}

// turnsText writes eighths of a turn: "3/8 turn", "1 1/2 turns".
func turnsText(n float64) string {
	whole, rest := math.Modf(n)
	part := [...]string{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"}[int(math.Round(rest*8))&7]
	name := " turn"
	if n > 1 {
		name = " turns"
	}
	switch {
	case whole == 0 && part != "":
		return part + name
	case part == "":
		return strconv.FormatFloat(whole, 'f', 0, 64) + name
	}
	return strconv.FormatFloat(whole, 'f', 0, 64) + " " + part + name
}
