package worksheets

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/relief"
	"plainlift/calc/unit"
)

// picture draws pressure against the thickness added: the readings, the line
// with what is believed of it, the target and the limit.
func (v *valve) picture(in *calc.In, out *calc.Out, mv move) {
	p := func(si float64) float64 { return in.Shown(unit.Pressure, si) }
	t := func(si float64) float64 { return in.Shown(unit.Thickness, si) }
	limit := "over the manual's limit, {limit:n}"
	if !in.Own("limit") {
		limit = "over the example's limit, {limit:n}"
	}
	c := &chart.Chart{
		ID: "picture", Title: "Pressure against the shim added", Height: 240,
		Desc: out.Words(v.pictureText(mv)),
		X:    chart.Axis{Label: "shim added, " + unit.Thickness.Shown(in.System()).Name, Max: t(v.widest(mv))},
		Y:    chart.Axis{Label: "pressure, " + unit.Pressure.Shown(in.System()).Name},
		Marks: []chart.Mark{
			&chart.Band{On: chart.Y, From: p(v.limit), To: math.Inf(1), Hatch: true, Label: out.Words(limit)},
			&chart.Rule{On: chart.Y, At: p(v.target), Label: out.Words("target {target:n}"), Stroke: chart.Dashed},
		},
	}
	least, most := min(v.now, v.target), max(v.now, v.limit, v.target)
	if mv.why == "" {
		m, _ := v.line.At(mv.at)
		label := "{stack_total}, about {expected:n}"
		if v.screw {
			label = "{screw_turns}, about {expected:n}"
		}
		c.Marks = append(c.Marks, &chart.Point{X: t(mv.at), Y: p(m), Label: out.Words(label), Shape: chart.Diamond, Accent: true})
	}
	c.Marks = append(c.Marks, &chart.Point{X: 0, Y: p(v.now), Label: out.Words("now {now:n}"), Shape: chart.Ring})
	for i, trial := range v.trials {
		label := ""
		if i == len(v.trials)-1 {
			label = out.Words("last {last:n}")
		}
		c.Marks = append(c.Marks, &chart.Point{X: t(trial.T), Y: p(trial.P), Label: label, Shape: chart.Ring})
		least, most = min(least, trial.P), max(most, trial.P)
	}
	// Room above the limit, and under all there is.
	room := 0.12 * (most - least)
	c.Y.Min, c.Y.Max = p(least-room), p(most+1.5*room)

	belief, centre := v.belief(t, p, v.widest(mv))
	c.Marks = append(c.Marks, &chart.Area{Strips: belief, Label: "95 % by the readings"}, &chart.Curve{Points: centre})
	out.Picture(c)
}

// belief samples the line with its 95 % band; the gauge's own error, which
// moves all of it up or down together, is not in it.
func (v *valve) belief(t, p func(float64) float64, widest float64) (band []chart.Strip, centre []chart.XY) {
	wide := relief.HalfWidth(1, 0, 0.95)
	for _, x := range floats.Span(make([]float64, 25), 0, widest) {
		m, sigma := v.line.At(x)
		half := wide * sigma
		band = append(band, chart.Strip{X: t(x), Low: p(m - half), High: p(m + half)})
		centre = append(centre, chart.XY{X: t(x), Y: p(m)})
	}
	return band, centre
}

// widest is the thickness up to which the picture goes: past all that matters,
// and to where the line meets the limit when that is not far.
func (v *valve) widest(mv move) float64 {
	const least, far = 0.25e-3, 6 // m; times the rest
	x := max(least, v.fitted)
	for _, t := range v.trials {
		x = max(x, t.T)
	}
	if mv.at > 0 {
		x = max(x, mv.at)
	}
	meets := v.line.Thickness(v.limit)
	if meets > x {
		x = min(meets, far*x)
	}
	return 1.1 * x
}

func (v *valve) pictureText(mv move) string {
	text := "It reads {now} before any shim. "
	if len(v.trials) > 0 {
		text += "With {fitted} in, the line through the readings is at {now_fitted}. "
	}
	text += "A shim adds {rate}. The target is {target}, the upper limit {limit}. The band holds the line with 95 %; the gauge's own ±{gauge_err} moves all of it."
	switch {
	case mv.why == "" && v.screw:
		text += " {screw_turns} of the screw in all gives about {expected}."
	case mv.why == "":
		text += " The most these numbers allow is {stack_total}, about {expected}."
	}
	return text
}
