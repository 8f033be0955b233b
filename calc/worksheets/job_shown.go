package worksheets

import (
	"math"
	"slices"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/unit"
)

// remarks are the lines under the verdict.
func (j *adjusted) remarks(in *calc.In, out *calc.Out, way string) {
	most, change := slices.Max(j.left.readings), j.left.mean-j.found.mean
	for _, t := range j.trials {
		if t.B > j.high {
			out.Line("With a total of {over_shim} it read {over_trial}, over the manual's {high}: nothing should be lifted or held there.")
			break
		}
	}
	switch {
	case !j.oneGauge && way == "no-change":
		out.Line("Two gauges may be off in opposite directions: read both times on one, and most of that drops out. If it was one, say so at “All read on one gauge”.")
	case most > j.high:
	case way == "rose":
		out.Line("{lift_size} more pressure lifts {lift_size} more at least; it won't raise faster.")
	case way == "fell":
		out.Line("{lift_size} less pressure lifts {lift_size} less at least.")
	}
	if way == "rose" && in.Has("low") && !in.Has("high") {
		out.Line(noEnd)
	}
	if j.oneGauge && math.Abs(change) > in.SI("scale")/10 {
		out.Line(farApart)
	}
	switch {
	case j.rate > 0:
		out.Line("By the trials the shim is worth {rate}.")
	case j.rate <= 0:
		out.Line("In the trials the pressure did not follow the shim: a leak, the pump or another relief may be setting it.")
	}
	differ := func(id, what string) {
		a, b := in.SI(id+"_found"), in.SI(id+"_left")
		if math.Abs(a-b) > 1e-9*b {
			out.Line(what + " {" + id + "_found} as found and {" + id + "_left} as left: part of the change may come from that (common practice, no source).")
		}
	}
	differ("oil", "The oil was at")
	differ("rpm", "The engine ran at")
	if n, m := len(j.found.readings), len(j.left.readings); n == 1 && m == 1 {
		out.Notice("One reading each says nothing of how readings scatter, so none is counted. Take four or more, as found and as left.")
	} else if n < manyReadings || m < manyReadings {
		out.Notice("With {n_found} as found and {n_left} as left the scatter is hardly known. Take four or more each time.")
	}
}

// notes stand beside the fields.
func (j *adjusted) notes(in *calc.In, out *calc.Out) {
	const wide = "They differ by far more than the step you can read. Did oil, engine speed or hold change between them?"
	if j.found.wide() {
		out.Note("found", -1, wide)
	}
	if j.left.wide() {
		out.Note("left", -1, wide)
	}
	for i, p := range j.left.readings {
		if p > j.high {
			out.Note("left", i, "Over the manual's {high}")
		}
	}
	before, above := 0.0, "as found"
	for i, t := range j.trials {
		text := thicknessText(in, math.Abs(t.A-before))
		switch {
		case t.A > before:
			text += " more than " + above
		case t.A == before:
			text = "No shim changed since " + above + ": only what else was done shows here"
		case i == 0:
			text += " less than as found"
		default:
			text += " less than the row above: right where shim came out. Enter the total, not the last shim alone"
		}
		if t.B > j.high {
			text += ". Over the manual's {high}"
		}
		out.Note("trials", i, text)
		before, above = t.A, "the row above"
	}
	if n := len(j.trials); n > 0 && j.left.step > 0 && math.Abs(j.trials[n-1].B-j.left.mean) > manySteps*2*j.left.step {
		out.Note("left", -1, "The last trial read {last}: was that shim left in?")
	}
	for _, id := range []string{"oil_found", "oil_left"} {
		if in.SI(id) < coldOil {
			out.Note(id, -1, coldReads)
		}
	}
}

// picture draws the readings in their order from the top, each with what it may
// be off, against the manual's range. On one gauge that is what differs from
// reading to reading; what the gauge is off moves all of them alike and has a row
// of its own.
func (j *adjusted) picture(in *calc.In, out *calc.Out, lo, hi float64) {
	p := func(si float64) float64 { return in.Shown(unit.Pressure, si) }
	const gap, crowded = 33, 12 // height of a row; trials from which on they have no words
	c := &chart.Chart{
		ID: "picture", Title: out.Words("As found, each trial and as left, against the manual's range"),
		Desc: out.Words("As found {found_mean}, as left {left_mean}; the true pressure as left is between {lo} and {hi}. The manual's range: " + rangeText(in) + "."),
		X:    chart.Axis{Label: "pressure, " + unit.Pressure.Shown(in.System()).Name},
		Y:    chart.Axis{Hide: true},
	}
	low := math.Inf(-1)
	if in.Has("low") {
		low = p(in.SI("low"))
	}
	if in.Has("low") || in.Has("high") {
		c.Marks = append(c.Marks, &chart.Band{On: chart.X, From: low, To: p(j.high), Label: out.Words("manual:\n" + rangeText(in))})
	}
	if in.Has("high") {
		c.Marks = append(c.Marks, &chart.Band{On: chart.X, From: p(j.high), To: math.Inf(1), Hatch: true})
	}
	row := 0.0
	bar := func(at, lo, hi float64, label string, mark, accent bool) {
		row--
		c.Marks = append(c.Marks, &chart.Span{From: p(lo), To: p(hi), Row: row, Label: out.Words(label), Accent: accent})
		if mark {
			c.Marks = append(c.Marks, &chart.Point{X: p(at), Y: row, Accent: accent})
		}
	}
	around := func(t taken, label string) {
		limit := t.grade
		if j.oneGauge {
			limit = 0
		}
		from, to := t.model(limit).Dist().Interval(settled)
		bar(t.mean, from, to, label, true, false)
	}
	around(j.found, "as found {found_mean}")
	for i, t := range j.trials {
		label := "with " + thicknessText(in, t.A) + ": " + in.Text(unit.Pressure, t.B)
		if len(j.trials) > crowded && i < len(j.trials)-1 {
			label = ""
		}
		around(taken{readings: []float64{t.B}, mean: t.B, step: j.left.step, grade: gradeLimit(in, t.B)}, label)
	}
	around(j.left, "as left {left_mean}")
	if j.oneGauge {
		bar(0, lo, hi, "true pressure now: {lo:n} to {hi}", false, true)
	}
	c.Y.Min, c.Y.Max = row-0.4, 0.2 // the first row leaves room for the range's words
	c.Height = 70 + gap*min(-row, crowded+3)
	out.Picture(c)
}

func (j *adjusted) rests(in *calc.In, out *calc.Out) {
	if j.oneGauge {
		out.Rest("One gauge read it all: what it is off, by no more than ±{a_found} where it stood as found, is the same every time and drops out of the change. It stays in how the pressure is judged as left.")
	} else {
		out.Rest("Two gauges read it, each off by no more than its class or grade allows, ±{a_found} as found and ±{a} as left, one without regard to the other.")
	}
	out.Rest("A change counts as shown when the range of 95 % leaves no room for none, and the means are further apart than one step.")
	if j.unseen() {
		out.Rest("So few readings show no scatter, and none is counted. A change must then be more than four steps and more than 1 % to count: this page's choice.")
	}
	out.Rest("All was read in one way: oil as warm, engine as fast, the cylinder held at the end of its stroke for seconds, at a port that this relief protects.")
	out.Rest("The lift is taken to follow the pressure in percent; the weight of arms and tool makes it more.")
	b := j.budget()
	shares := b.Shares()
	if largest := slices.Max(shares); largest > 0 {
		out.Rest("Of the doubt in the change, {main_share} is " + b[slices.Index(shares, largest)].Name + ".")
		out.Budget(unit.Pressure, b, []string{j.offText(), "±{half_step} each time", "{n_found} and {n_left} readings"})
	} else {
		out.Rest("Nothing entered leaves any doubt in the change. No gauge is that good.")
	}
}

// offText is what the gauge leaves in the change, in words.
func (j *adjusted) offText() string {
	if j.oneGauge {
		return "±{a_apart}, the rest drops out"
	}
	return "±{a_found} and ±{a}"
}

func (j *adjusted) working(in *calc.In, out *calc.Out) {
	out.Step("mean = sum of readings ÷ how many", "as found {found_mean} of {n_found}, as left {left_mean} of {n_left}", "JCGM 100:2008, 4.2")
	out.Step("change = as left − as found; in percent, ÷ as found", "{change}, {change_pct}", "Arithmetic")
	out.Step("gauge: one is off alike every time, as far as its limits are alike; two are off apart", j.offText(),
		"JCGM 100:2008, F.1.2.3 (from memory). "+gradeSource(in))
	out.Step("step = ± smallest step ÷ 2, each time its own", "±{half_step}", "Rectangular, u = step/√12 (JCGM 100:2008, H.6.3.1)")
	out.Step("scatter: u = s√(1/n₁ + 1/n₂), s of both series together, or √(s₁²/n₁ + s₂²/n₂), whichever leaves more doubt",
		"s = {s_found} and {s_left}: u = {u_scatter}, degrees of freedom {dof}",
		"JCGM 100:2008, 4.2.4 (from memory), H.1.3.2, G.4.1; that the wider is taken is ours")
	out.Step("range = where the sum of these lies, equal chances left out on either side", "95 %: {change_lo:n} to {change_hi}; chance that it rose: {p_rise}",
		"JCGM 101:2008, 6.4.9 for the scatter; the sum worked out as a distribution")
	chances := "95 %: {lo:n} to {hi}"
	if in.Has("low") {
		chances += "; under {low}: {p_below}"
	}
	if in.Has("low") || in.Has("high") {
		chances += "; inside: {p_within}"
	}
	if in.Has("high") {
		chances += "; over {high}: {p_above}"
	}
	out.Step("as left = mean, with ± gauge, ± step ÷ 2 and its own scatter", chances, "JCGM 101:2008, 6.4.9; JCGM 106:2012, clause 7")
	if !math.IsNaN(j.rate) {
		out.Step("worth of a shim = Σ(t − t̄)(p − p̄) ÷ Σ(t − t̄)², the mean as found and the trials", "{rate}", "Least squares (JCGM 100:2008, H.3)")
	}
	out.Step("lift = lift as found × as left ÷ as found, at least", "{lift_pct}", "Force is pressure × area; virtual work at one height")
}
