package worksheets

import (
	"math"
	"slices"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// lines are the sentences after the branch's own.
func (r gains) lines(in *calc.In, out *calc.Out, branch string) {
	switch {
	case branch == "no-rise" && r.most > 0:
		out.Add("A difference that small could give {expected_hi} at most.")
	case branch == "beyond":
		out.Line("That is at least {times} what pressure can give.")
	}
	if half := 0.5 * math.Pow(10, float64(-r.places)) / 100; !r.loads && !r.meet() && r.lo-half <= r.most && r.hi+half >= r.least {
		out.Line("If {reported} is a rounded figure, it may fit.")
	}
	switch over := r.neededLeast() > r.limit; {
	case r.after > r.limit:
		out.Add("{after} is above the manual's {limit}; don't go there.")
	case over && branch == "beyond": // which has just named it
		out.Add("{needed_lo} is above the manual's {limit}; don't go there.")
	case over:
		out.Add("The {needed_lo} that {reported} would take is above the manual's {limit}; don't go there.")
	}
	if in.Has("lift_before") && r.before != r.after {
		out.Line("Against the pressure: {slope_reported} reported, {slope_lo:n} to {slope_hi} to be expected.")
	}
	apart := max(r.before, r.after) - min(r.before, r.after)
	if in.Choice("same_gauge") == "yes" && apart > in.SI("scale")/10 {
		out.Line(farApart)
	}
}

// farApart stands beside two readings on one gauge that may not share one error.
const farApart = "The readings are more than a tenth of the dial apart: the gauge may be off differently at each, so the doubt is larger than shown."

// picture draws what pressure should give and what is reported on one scale
// from zero.
func (r gains) picture(in *calc.In, out *calc.Out) {
	p := func(si float64) float64 { return in.Shown(unit.Percent, si) }
	from, to := min(0, r.least, r.lo), max(0, r.most, r.hi)
	room := max(0.15*(to-from), 0.01)
	if from < 0 {
		from -= room
	}
	out.Picture(&chart.Chart{
		ID: "picture", Title: out.Words("What pressure should give, and what is reported"), Height: 160,
		Desc: out.Words("Pressure should change the lift by {expected_lo} to {expected_hi}; {reported} is reported."),
		X:    chart.Axis{Label: "more lift, " + unit.Percent.Shown(in.System()).Name, Min: p(from), Max: p(to + room)},
		Y:    chart.Axis{Max: 3, Hide: true},
		Marks: []chart.Mark{
			&chart.Span{From: p(r.least), To: p(r.most), Row: 2, Label: out.Words("pressure should give\n{expected_lo:n} to {expected_hi}")},
			&chart.Span{From: p(r.lo), To: p(r.hi), Row: 0.7, Label: out.Words("reported {reported}"), Accent: true},
			&chart.Point{X: p(r.pct), Y: 0.7, Shape: chart.Diamond, Accent: true},
			&chart.Rule{On: chart.X, At: 0},
		},
	})
}

func beforeAfterRests(in *calc.In, out *calc.Out, g doubt.Gain) {
	out.Rest("Both pulls were at one height, one reach and one point, and both pressures are those of the relief that governs the lift.")
	out.Rest("Arms and tool, felt at the load, are {dead_lo} to {dead_hi} of the load lifted before; for a plain bucket 0 to 30 % is usual (common practice, no source), a grapple can be more.")
	if g.Shared {
		out.Rest("One gauge, off by no more than ±{gauge_err}, read both: what it is off is the same at both readings, which holds while they are within a tenth of the dial of each other.")
	} else {
		out.Rest("Two gauges read the pressures, each off by no more than ±{gauge_err}, one without regard to the other.")
	}
	b := gainBudget(g)
	if b.U() == 0 {
		out.Set("share", 0)
		out.Rest("Nothing entered leaves a doubt in what pressure should give.")
		return
	}
	shares := b.Shares()
	largest := slices.Index(shares, slices.Max(shares))
	helps := []string{
		"better known, it would narrow what pressure should give.",
		"a better gauge, the same one both times, would narrow what pressure should give.",
		"a dial with finer steps would narrow what pressure should give.",
	}
	out.Set("share", shares[largest])
	out.Rest("Of the doubt in what pressure should give, {share} is " + b[largest].Name + ": " + helps[largest])
	out.Budget(unit.Percent, b, []string{"{dead_lo} to {dead_hi}", "±{gauge_err}", "steps of {step}"})
}

func beforeAfterWorking(in *calc.In, out *calc.Out, r gains) {
	out.Step("more pressure = after ÷ before − 1", "{after} ÷ {before} − 1 = {dp_pct}", "Arithmetic")
	out.Step("more lift = (1 + arms and tool ÷ load before) × more pressure", "{expected_lo:n} to {expected_hi} (95 %), the middle {expected}",
		"Force is pressure × area; virtual work at one height. Stated limits are rectangular (JCGM 100:2008, 4.3.7), carried through as distributions (JCGM 101:2008)")
	switch {
	case in.Has("lift_after"):
		out.Step("reported = load after ÷ load before − 1", "{lift_after} ÷ {lift_before} − 1 = {claimed_pct}", "Arithmetic; the scale's calibration cancels")
	case in.Has("gained"):
		out.Step("reported = load gained ÷ load before", "{gained} ÷ {lift_before} = {claimed_pct}", "Arithmetic")
	}
	out.Step("pressure it would have taken = before × (1 + reported ÷ (1 + arms and tool ÷ load before))",
		"with {dead_hi}: {needed_lo}; with none: {needed}", "The same line the other way round")
	if r.after != r.before {
		out.Step("arms and tool that would explain it = reported ÷ more pressure − 1", "{claimed_pct} ÷ {dp_pct} − 1 → {dead_needed}", "The same")
	}
}
