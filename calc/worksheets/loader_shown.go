package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/linkage"
	"plainlift/calc/unit"
)

// entered draws what was measured although it makes no loader, as far as it goes.
func (l *raised) entered(in *calc.In, out *calc.Out) {
	if math.IsNaN(l.arc.Angle(l.height)) {
		l.height = l.PivotH
	}
	out.Entered(l.sideView(in, out, "What was entered, to scale: it makes no loader"))
}

// sideView draws pins, arms, cylinder, tool and load where they are.
func (l *raised) sideView(in *calc.In, out *calc.Out, title string) *chart.Chart {
	u := func(si float64) float64 { return in.Shown(unit.Length, si) }
	at := func(p linkage.Point) chart.XY { return chart.XY{X: u(p.X), Y: u(p.Y)} }
	pins := l.arc.Pins(l.arc.Angle(l.height))
	pivot, base, rod, tip := at(pins.Pivot), at(pins.Base), at(pins.Rod), at(pins.Bucket)

	// The axes hold the whole arc, so that only the loader moves with the slider.
	least := min(base.X, 0) - u(0.3)
	most := u(l.Boom + max(l.LoadX, 2*l.ToolCG, 0.2) + 0.15)
	top := l.high
	if !(top > l.height) {
		top = l.height
	}
	c := &chart.Chart{
		ID: "side", Title: title, EqualScale: true,
		X: chart.Axis{Label: "ahead of the pivot, " + unit.Length.Shown(in.System()).Name, Min: least, Max: most},
		Y: chart.Axis{Label: "height, " + unit.Length.Shown(in.System()).Name, Max: max(u(top+0.25), pivot.Y+u(0.2))},
	}
	toe := tip.X + u(max(2*l.ToolCG, 0.2))
	c.Marks = []chart.Mark{
		&chart.Curve{Points: []chart.XY{pivot, rod, tip, pivot}},
		&chart.Curve{Points: []chart.XY{base, rod}, Accent: true, Stroke: chart.Dashed},
		&chart.Curve{Points: []chart.XY{{X: tip.X, Y: tip.Y + u(0.15)}, {X: tip.X, Y: tip.Y - u(0.1)}, {X: toe, Y: tip.Y - u(0.1)}}},
		&chart.Point{X: pivot.X, Y: pivot.Y, Label: "pivot", Shape: chart.Ring},
		&chart.Point{X: base.X, Y: base.Y, Label: "base pin", Shape: chart.Ring, Accent: true},
		&chart.Point{X: rod.X, Y: rod.Y, Label: "rod pin", Shape: chart.Ring, Accent: true},
		&chart.Point{X: tip.X, Y: tip.Y, Shape: chart.Ring},
	}
	c.Desc = "Pivot, base pin, rod pin and bucket pin as entered."
	if l.at != nil {
		load := tip.X + u(l.LoadX)
		c.Marks = append(c.Marks, &chart.Arrow{X: load, Y: tip.Y, ToX: load, ToY: max(tip.Y-u(0.5), 0), Label: out.Words("{lift}"), Accent: true}, l.path(u))
		c.Desc = out.Words("The bucket pin {height} up and {reach} level from the pivot; arms {angle} over level, cylinder {length} long; {lift} hang there.")
	}
	return c
}

// path is the way of the bucket pin.
func (l *raised) path(u func(float64) float64) *chart.Curve {
	const n = 24
	way := make([]chart.XY, n+1)
	from, to := l.arc.Angle(l.low), l.arc.Angle(l.high)
	for i := range way {
		p := l.arc.Pins(from + (to-from)*float64(i)/n).Bucket
		way[i] = chart.XY{X: u(p.X), Y: u(p.Y)}
	}
	return &chart.Curve{Points: way, Stroke: chart.Dotted}
}

// curves draws lift against height at both pressures.
func (l *raised) curves(in *calc.In, out *calc.Out) {
	const n = 26
	h := func(si float64) float64 { return in.Shown(unit.Length, si) }
	w := func(si float64) float64 { return in.Shown(unit.Load, si) }
	most := 0.0
	now, then, band := make([]chart.XY, n+1), make([]chart.XY, n+1), make([]chart.Strip, n+1)
	for i := range n + 1 {
		height := l.low + (l.high-l.low)*float64(i)/n
		at := l.spread.At(height)
		lift, half := at.Lift(l.now, l.back), at.HalfWidth(l.now, l.back)
		x := h(height)
		most = max(most, lift+half, at.Lift(l.then, l.back))
		now[i], then[i] = chart.XY{X: x, Y: w(max(lift, 0))}, chart.XY{X: x, Y: w(max(at.Lift(l.then, l.back), 0))}
		band[i] = chart.Strip{X: x, Low: w(max(lift-half, 0)), High: w(max(lift+half, 0))}
	}
	c := &chart.Chart{
		ID: "curve", Title: "Lift against height, at both pressures", Height: 260,
		Desc: out.Words("Lift against the height of the bucket pin: {lift_low} at the bottom, {lift} at {height}, {lift_top} at the top, at {pressure}."),
		X:    chart.Axis{Label: "height of the bucket pin, " + unit.Length.Shown(in.System()).Name},
		Y:    chart.Axis{Label: "lift, " + unit.Load.Shown(in.System()).Name},
	}
	for _, p := range in.Pairs("points") {
		most = max(most, p.B)
	}
	if most > 0 {
		c.Y.Max = w(1.05 * most)
	}
	c.Marks = []chart.Mark{&chart.Point{X: h(l.height), Y: w(max(l.lift, 0)), Label: out.Words("{lift}"), Shape: chart.Ring}}
	for _, p := range in.Pairs("points") {
		c.Marks = append(c.Marks, &chart.Point{X: h(p.A), Y: w(p.B), Shape: chart.Cross})
	}
	c.Marks = append(c.Marks,
		&chart.Curve{Points: now, Label: out.Words("at {pressure}")},
		&chart.Rule{On: chart.X, At: h(l.height), Stroke: chart.Dotted},
		&chart.Area{Strips: band, Label: "doubt"},
	)
	if l.then <= l.limit { // what must not be set is not drawn
		c.Marks = append(c.Marks, &chart.Curve{Points: then, Label: out.Words("at {compare}"), Stroke: chart.Dashed, Accent: true})
	}
	out.Picture(c)
}

// points holds what was entered of a plate or a test against the model.
func (l *raised) points(in *calc.In, out *calc.Out) {
	at := l.now
	if in.Has("points_at") {
		at = in.SI("points_at")
	}
	n, inside := 0, 0
	pushes, loads := 0.0, 0.0 // of the least-squares efficiency
	for i, p := range in.Pairs("points") {
		if !(p.A >= l.low && p.A <= l.high) {
			out.Note("points", i, "Out of reach: the bucket pin goes from {h_min} to {h_max}.")
			continue
		}
		pose := l.spread.At(p.A)
		model, half := pose.Lift(at, l.back), pose.HalfWidth(at, l.back)
		n++
		if math.Abs(p.B-model) <= half {
			inside++
		}
		push := model + l.weights(pose)
		pushes += push * push
		loads += push * (p.B + l.weights(pose))
		text := "The model gives " + in.Text(unit.Load, model)
		switch by := model - p.B; {
		case by > 0:
			text += ", " + in.Text(unit.Load, by) + " more than this"
		case by < 0:
			text += ", " + in.Text(unit.Load, -by) + " less than this"
		}
		out.Note("points", i, text+".")
	}
	out.Set("points_n", float64(n))
	out.Set("points_in", float64(inside))
	best := l.Efficiency * loads / pushes
	setOr(out, "fits_best", best, "no points")
	if n == 0 {
		return
	}
	fits := "with {fits_best} getting past friction it would fit them best."
	if best > 1 || best <= 0 {
		fits = "no friction explains them, so look at the measurements, the pressure and where the load sat."
	}
	out.Line("Of {points_n} entered, {points_in} lie within the doubt of the model; " + fits)
}

// weights is what arms and tool take of the push, felt at the load.
func (l *raised) weights(at *linkage.SpreadPose) float64 { return at.Dead(0) }
