package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/lift"
	"plainlift/calc/unit"
)

// gainPicture draws lift against pressure, both from zero and to true scale, so
// that the gain looks as small as it is.
func gainPicture(in *calc.In, out *calc.Out, floor, high lift.Rating, target, limit float64) {
	p := func(si float64) float64 { return in.Shown(unit.Pressure, si) }
	l := func(si float64) float64 { return in.Shown(unit.Load, si) }
	now := in.SI("now")
	end := max(now, target, in.SI("at"))
	if in.Has("limit") {
		end = max(end, limit)
	}
	end *= 1.15
	c := &chart.Chart{
		ID: "picture", Title: out.Words("Lift against pressure, from zero"), Height: 240,
		Desc: out.Words("Lift against pressure, both from zero: {lift_now} at {now}, {lift_target} at {set_to}."),
		X:    chart.Axis{Label: "pressure, " + unit.Pressure.Shown(in.System()).Name, Max: p(end)},
		Y:    chart.Axis{Label: "lift, " + unit.Load.Shown(in.System()).Name, Max: l(max(floor.Lift(end), 0.1*floor.Load))},
		Marks: []chart.Mark{
			&chart.Point{X: p(target), Y: l(floor.Lift(target)), Label: out.Words("then {lift_target}"), Accent: true},
			&chart.Point{X: p(now), Y: l(floor.Lift(now)), Label: out.Words("now {lift_now}"), Shape: chart.Ring},
		},
	}
	if in.Has("limit") {
		c.Marks = append(c.Marks, &chart.Band{On: chart.X, From: p(limit), To: math.Inf(1), Hatch: true, Label: "over the\nmanual's limit"})
	}
	if high != floor {
		// A straight line needs no more points than its ends and where it leaves zero.
		var wedge []chart.Strip
		from := high.Dead / high.Slope()
		for _, x := range []float64{0, from, end} {
			wedge = append(wedge, chart.Strip{X: p(x), Low: l(max(high.Lift(x), 0)), High: l(floor.Lift(x))})
		}
		c.Marks = append(c.Marks, &chart.Area{Strips: wedge, Label: "if arms and tool\nweigh up to 30 %"})
	}
	c.Marks = append(c.Marks, &chart.Curve{Points: []chart.XY{{X: 0, Y: l(floor.Lift(0))}, {X: p(end), Y: l(floor.Lift(end))}}})
	out.Picture(c)
}

func gainRests(in *calc.In, out *calc.Out) {
	out.Rest("{lift} is lifted at {at}, and both pressures lift at that same height and point.")
	if in.Has("dead") {
		out.Rest("Arms and tool take as much of the pressure as {dead} more load would.")
	} else {
		out.Rest("What arms and tool weigh, felt at the load, is not known: with nothing for it the gain is a floor, with 30 % of the lift it is the most shown (common practice, no source). A grapple can be more.")
	}
	out.Rest("It is the load held at stall: friction is left out, and so is what the gauge may be off. On a gauge that reads low the pressure is truly higher than it shows, so a target near the manual's highest can be over it.")
	out.Rest("Nothing else gives way first. Low down and far out the rear wheels often lift before the relief opens; then more pressure lifts nothing.")
	out.Rest("Pressure does not change speed: that is the pump's flow.")
}

func gainWorking(in *calc.In, out *calc.Out, floor lift.Rating, target float64) {
	const statics = "Force is pressure × area; virtual work at one height (textbook statics)"
	weight, thirty := "{lift} ÷ {at}", "; with arms and tool of 30 %: {gain_hi}"
	if in.Has("dead") {
		weight, thirty = "({lift} + {dead}) ÷ {at}", ""
	}
	if in.Has("rise") {
		out.Step("target = reading + rise", "{now} + {rise} = {set_to}", "Arithmetic")
	}
	out.Step("slope = (lift + arms and tool) ÷ pressure it was rated at", weight+" = {slope}", statics)
	out.Step("lift at a pressure = slope × pressure − arms and tool", "at {now}: {lift_now}; at {set_to}: {lift_target}", "The same")
	out.Step("more lift = slope × (target − reading)", "{slope} × {dp} = {gain}"+thirty, "The same")
	if floor.Lift(in.SI("now")) > 0 {
		out.Step("more lift in percent = more pressure in percent × (1 + arms and tool ÷ lift now)", "{dp_pct} more pressure gives {gain_pct}",
			"The same; with nothing for arms and tool it is the shop's rule that 2 % pressure is about 2 % lift (common practice, no source)")
	}
	if min(floor.Lift(in.SI("now")), floor.Lift(target)) > 0 {
		out.Step("nearer = reach × more lift ÷ lift at the target", "{reach} × {gain} ÷ {lift_target} = {closer}", "Moments about the pivot")
	}
}
