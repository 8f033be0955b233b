package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/unit"
)

// sideView draws weights and axle loads to one scale of length and one of force,
// on the slope. Where the rear wheels would have lifted it shows the load that
// just lifts them.
func (t *tipping) sideView(in *calc.In, out *calc.Out) {
	load := max(min(t.lift, t.TipLoad()), 0)
	base, machine := t.Wheelbase, t.Front+t.Rear
	front, rear := max(t.FrontAxle(load), 0), max(t.RearAxle(load), 0)
	perNewton := 0.55 * base / max(front, rear, machine, load, t.Ballast)
	thousand := 1000 * unit.Load.Shown(in.System()).ToSI(1)
	wheel := [2]float64{0.2 * base, 0.3 * base} // no size of them is known
	centreH, loadH := t.CentreH, t.LoadH
	if t.Hill == 0 { // then they are not asked for, and bear on nothing
		centreH, loadH = wheel[1], wheel[1]
	}
	sin, cos := math.Sincos(t.Hill)
	// place turns x behind the front contact and y over the ground into a place in
	// the picture, in which the load is at the right.
	place := func(x, y float64) chart.XY {
		return chart.XY{X: in.Shown(unit.Length, y*sin-x*cos), Y: in.Shown(unit.Length, x*sin+y*cos)}
	}

	var marks []chart.Mark
	var beam chart.Curve // what carries one weight to the other
	for i, f := range [...]struct {
		name        string
		force, x, y float64
	}{
		{"ballast ", t.Ballast, base + t.BallastX, centreH},
		{"tractor ", machine, t.Rear * base / machine, centreH},
		{"load ", load, -t.Reach, loadH},
		{"front ", front, 0, 0},
		{"rear ", rear, base, 0},
	} {
		to, long := place(f.x, f.y), f.force*perNewton
		from := place(f.x, -long) // square to the ground
		if i < 3 {
			from = chart.XY{X: to.X, Y: to.Y + in.Shown(unit.Length, long)} // upright
			beam.Points = append(beam.Points, to)
		}
		if f.force > 0 {
			marks = append(marks, &chart.Arrow{X: from.X, Y: from.Y, ToX: to.X, ToY: to.Y, Label: f.name + in.Text(unit.Load, f.force), Accent: i == 2})
		}
	}
	for i, r := range wheel {
		mid := place(float64(i)*base, r)
		marks = append(marks, &chart.Circle{X: mid.X, Y: mid.Y, R: in.Shown(unit.Length, r)})
	}
	beam.Stroke = chart.Dotted
	behind := base + max(t.BallastX, wheel[1]) + 0.35*base
	scale := place(behind, -0.1*base)
	marks = append(marks, &beam,
		&chart.Curve{Points: []chart.XY{place(-t.Reach-0.15*base, 0), place(behind, 0)}},
		&chart.Curve{Points: []chart.XY{scale, {X: scale.X, Y: scale.Y - in.Shown(unit.Length, thousand*perNewton)}}, Label: "scale: " + in.Text(unit.Load, thousand)})

	title := "Weights and axle loads at full lift"
	if load < t.lift {
		title = "Weights and axle loads as the rear wheels lift"
	}
	out.Picture(&chart.Chart{
		ID: "picture", Title: title, EqualScale: true,
		Desc: "Side view to scale, but for the size of the wheels: a load of " + in.Text(unit.Load, load) + ", the tractor and the ballast press down, " +
			in.Text(unit.Load, front) + " on the front axle and " + in.Text(unit.Load, rear) + " on the rear axle hold them up.",
		X: chart.Axis{Label: "ahead of the front axle, " + unit.Length.Shown(in.System()).Name},
		Y: chart.Axis{Hide: true}, Marks: marks,
	})
}

// seesaw draws what is left on the rear axle against the load, both from zero.
func (t *tipping) seesaw(in *calc.In, out *calc.Out) {
	l := func(si float64) float64 { return in.Shown(unit.Load, si) }
	end := 1.15 * t.lift
	for _, e := range []float64{t.TipLoad(), t.safe} {
		if e < 4*t.lift {
			end = max(end, 1.1*e)
		}
	}
	line := func(y func(load float64) float64) []chart.XY {
		return []chart.XY{{X: 0, Y: l(y(0))}, {X: l(end), Y: l(y(end))}}
	}
	keep := func(load float64) float64 { return t.keep * (t.Total() + load) * math.Cos(t.Hill) }
	name := ", " + unit.Load.Shown(in.System()).Name
	c := &chart.Chart{
		ID: "picture-rear", Title: "What is left on the rear axle, against the load", Height: 240,
		Desc: out.Words("The rear axle's load falls in a straight line with the load in front. Rear wheels lift at: {tip_load}. The relief opens at {lift}. Load that keeps {keep}: {safe_load}."),
		X:    chart.Axis{Label: "load in front" + name, Max: l(end)},
		Y:    chart.Axis{Label: "on the rear axle" + name, Max: l(1.1 * max(t.RearAxle(0), keep(end)))},
		Marks: []chart.Mark{
			&chart.Point{X: l(t.lift), Y: l(t.RearAxle(t.lift)), Accent: true},
			&chart.Point{X: l(t.TipLoad()), Label: out.Words("wheels lift\n{tip_load}"), Shape: chart.Ring},
			&chart.Rule{On: chart.X, At: l(t.lift), Stroke: chart.Dotted, Label: out.Words("relief opens\n{lift}"), Accent: true},
			&chart.Curve{Points: line(t.RearAxle), Label: "on the rear axle"},
			&chart.Curve{Points: line(keep), Stroke: chart.Dashed, Label: out.Words("{keep} of the whole")},
		},
	}
	if len(t.ends) > 2 {
		c.Marks = append(c.Marks, &chart.Rule{On: chart.X, At: l(t.ends[2].load), Stroke: chart.Dashed, Label: "front axle\nat its rating"})
	}
	out.Picture(c)
}
