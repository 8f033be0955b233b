package worksheets

import (
	"errors"
	"math"
	"slices"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/doubt"
	"plainlift/calc/line"
	"plainlift/calc/unit"
)

// scaleTest is a test with its line.
type scaleTest struct {
	p, load     []float64 // Pa, N
	pu, lu      float64   // standard uncertainty of one point
	line        line.Stated
	dead, deadU float64
	gaugeU      float64 // the gauge's part of deadU, the same at every pull
	first, last int     // the pulls at the least and at the most pressure
	from, to    float64 // those pressures
}

func computeLiftTest(in *calc.In, out *calc.Out) {
	t, ok := readTest(in, out)
	if !ok {
		return
	}
	t.figures(in, out)
	branch := t.branch()
	out.Verdict(branch)
	if branch == "dead-weight" && heightsApart(in.List("heights")) <= far {
		out.Set("dead_shown", t.dead)
		out.Set("dead_share", t.dead/t.load[t.first])
		out.Set("share_least", (t.dead-shown*t.deadU)/t.load[t.first])
		out.Set("share_most", (t.dead+shown*t.deadU)/t.load[t.first])
	} else {
		out.None("dead_shown", "not shown by this test")
		out.None("dead_share", "not shown by this test")
		out.None("share_least", "not shown by this test")
		out.None("share_most", "not shown by this test")
	}
	t.heights(in, out)
	t.lines(in, out, branch)
	t.picture(in, out)
	t.working(in, out)
	out.Rest("Height, reach, oil and engine speed were the same at every pull, and the load was held, not moving.")
	out.Rest("The scale's own calibration hardly matters: it stretches all loads alike, the dead weight with them, and no percentage.")
	if len(t.p) == 2 {
		out.Rest("Two pulls always lie on a line. A third says whether they belong together.")
	}
	if branch == "dead-weight" {
		out.Rest("A gauge that reads {offset} too high at every pull draws the same line with no dead weight at all: see where its pointer rests.")
	}
	out.Caution("load", "limit", "hold", "skin", "leaks", "arm", "technician")
}

// readTest fits the line, and says what is wrong with points that have none.
func readTest(in *calc.In, out *calc.Out) (t scaleTest, ok bool) {
	t.pu, t.lu = in.SI("pressure_u"), in.SI("load_u")
	for _, m := range in.Pairs("tests") {
		t.p, t.load = append(t.p, m.A), append(t.load, m.B)
	}
	n := len(t.p)
	if h := len(in.List("heights")); in.Has("heights") && h != n {
		out.Problem("heights", "Enter one height for each pull, in the same order, or none")
		return t, false
	}
	if t.pu == 0 && t.lu == 0 {
		out.Problem("load_u", "Pressure and load can't both be free of scatter: enter what a repeat differs by")
		return t, false
	}
	pu, lu := make([]float64, n), make([]float64, n)
	for i := range n {
		pu[i], lu[i] = t.pu, t.lu
	}
	var err error
	t.line, err = line.York(t.p, t.load, pu, lu)
	switch {
	case err == nil:
	case errors.Is(err, line.ErrFew):
		out.Problem("tests", "Enter two pulls or more, at different pressures")
	case errors.Is(err, line.ErrVertical):
		out.Problem("tests", "All pulls are at one pressure: a line needs two")
	default:
		out.Problem("tests", "No line fits these pulls: look for a slip in one of them")
	}
	if err != nil {
		return t, false
	}
	t.from, t.to = slices.Min(t.p), slices.Max(t.p)
	t.first, t.last = slices.Index(t.p, t.from), slices.Index(t.p, t.to)
	t.dead = -t.line.Intercept
	t.gaugeU = math.Abs(t.line.Slope) * doubt.Rect(in.SI("gauge_err"))
	t.deadU = math.Hypot(t.line.InterceptU, t.gaugeU)
	return t, true
}

// shown says how many standard uncertainties count as shown.
const shown = 2

func (t scaleTest) figures(in *calc.In, out *calc.Out) {
	n := len(t.p)
	first, last := t.load[t.first], t.load[t.last]
	ratio, rise := last/first, t.to/t.from
	gainU := ratio * math.Hypot(t.lu/first, t.lu/last)
	out.SetDoubt("gain_pct", ratio-1, shown*gainU)
	out.Set("gain_u", gainU)
	out.SetDoubt("dp_pct", rise-1, shown*rise*math.Hypot(t.pu/t.from, t.pu/t.to))
	out.SetDoubt("slope", t.line.Slope, shown*t.line.SlopeU)
	out.Set("slope_u", t.line.SlopeU)
	out.SetDoubt("dead", t.dead, shown*t.deadU)
	out.Set("dead_u", t.deadU)
	out.Set("dead_most", t.dead+shown*t.deadU)
	out.Set("dead_least", t.dead-shown*t.deadU)
	out.Set("above", -t.dead)
	if n == 2 {
		out.None("chi2", "two pulls always lie on a line")
		out.None("chi2_p", "two pulls always lie on a line")
	} else {
		out.Set("chi2", t.line.Chi2)
		out.Set("chi2_p", t.line.P())
	}
	out.Set("pulls", float64(n))
	out.Set("spread", t.to-t.from)
	by := t.wider()
	out.Set("spread_needed", by*(t.to-t.from))
	out.Set("pulls_needed", math.Ceil(by*by*float64(n)))
	setOr(out, "offset", positive(t.dead, t.line.Slope), "the line does not rise")
	out.Set("at_last", t.to)
	lift, _ := t.line.At(t.to)
	out.Set("lift_last", lift)
}

// wider returns how many times wider the pulls would have to spread to show the
// dead weight. What the gauge is off everywhere alike no spread takes away: NaN
// where that alone hides it.
func (t scaleTest) wider() float64 {
	return shown * t.line.InterceptU / math.Sqrt(t.dead*t.dead-shown*shown*t.gaugeU*t.gaugeU)
}

// branch chooses the branch, in the order that matters.
func (t scaleTest) branch() string {
	const least = 0.05 // of the chance of χ²
	switch {
	case t.line.Slope <= 0:
		return "falls"
	case t.line.P() < least:
		return "not-a-line"
	case t.dead > shown*t.deadU:
		return "dead-weight"
	case t.dead < -shown*t.deadU:
		return "odd"
	}
	return "proportional"
}

// far is how far apart pulls may be in height, with a hair for rounding. Common
// practice, no source.
const far = 0.0254 * (1 + 1e-9)

// heightsApart is how far apart heights are.
func heightsApart(h []float64) float64 {
	if len(h) == 0 {
		return 0
	}
	return slices.Max(h) - slices.Min(h)
}

// heights calls out pulls that were not at one height.
func (t scaleTest) heights(in *calc.In, out *calc.Out) {
	h := in.List("heights")
	if len(h) < 2 {
		out.None("apart", "no heights noted")
		return
	}
	out.Set("apart", heightsApart(h))
	if heightsApart(h) <= far {
		return
	}
	out.Add("But the pulls were up to {apart} apart in height, so they can't be compared: lift changes with height by itself.")
	for i := range h {
		if math.Abs(h[i]-h[0]) > far {
			out.Note("heights", i, "Not at the height of the first pull.")
		}
	}
}

func (t scaleTest) lines(in *calc.In, out *calc.Out, branch string) {
	if in.Has("limit") && t.to > in.SI("limit") {
		out.Line("One of these pulls was above the manual's {limit}. Don't repeat it.")
	}
	if branch != "proportional" {
		return
	}
	by := t.wider()
	switch {
	case t.dead > 0 && math.IsNaN(by):
		out.Line("A gauge off by {gauge_err} everywhere makes that much by itself: no more pulls will tell, only a better gauge.")
	case t.dead > 0 && by > 1 && by < 6 && by*(t.to-t.from) < t.to:
		out.Line("If {dead} is the dead weight, pulls spread over about {spread_needed} of pressure would show it, downwards from here, not above the manual's limit; or about {pulls_needed} pulls like these {pulls}.")
	default:
		out.Line("A wider spread of pressure shows more than many pulls close together: go down, not above the manual's limit.")
	}
}

func (t scaleTest) picture(in *calc.In, out *calc.Out) {
	p := func(si float64) float64 { return in.Shown(unit.Pressure, si) }
	l := func(si float64) float64 { return in.Shown(unit.Load, si) }
	end := 1.12 * t.to
	c := &chart.Chart{
		ID: "picture", Title: "Load against pressure, from zero", Height: 260,
		Desc: out.Words("{pulls} pulls and the line through them: {slope}."),
		X:    chart.Axis{Label: "pressure, " + unit.Pressure.Shown(in.System()).Name, Max: p(end)},
		Y:    chart.Axis{Label: "load, " + unit.Load.Shown(in.System()).Name, Max: l(1.15 * slices.Max(t.load))},
	}
	for i := range t.p {
		c.Marks = append(c.Marks, &chart.Point{X: p(t.p[i]), Y: l(t.load[i]), Shape: chart.Ring})
	}
	if in.Has("limit") {
		c.Marks = append(c.Marks, &chart.Band{On: chart.X, From: p(in.SI("limit")), To: math.Inf(1), Hatch: true, Label: "over the\nmanual's limit"})
	}
	const n = 24
	band := make([]chart.Strip, n+1)
	for i := range band {
		x := end * float64(i) / n
		y, u := t.line.At(x)
		band[i] = chart.Strip{X: p(x), Low: l(max(y-shown*u, 0)), High: l(max(y+shown*u, 0))}
	}
	y0, _ := t.line.At(0)
	y1, _ := t.line.At(end)
	start := chart.XY{X: 0, Y: l(y0)}
	if y0 < 0 && t.line.Slope > 0 { // from where it leaves zero
		start = chart.XY{X: p(-y0 / t.line.Slope), Y: 0}
	}
	middle := (t.from + t.to) / 2
	mean, _ := t.line.At(middle)
	c.Marks = append(c.Marks,
		&chart.Curve{Points: []chart.XY{start, {X: p(end), Y: l(max(y1, 0))}}, Label: "line"},
		&chart.Curve{Points: []chart.XY{{}, {X: p(end), Y: l(mean * end / middle)}}, Label: "in proportion", Stroke: chart.Dashed, Accent: true},
		&chart.Area{Strips: band, Label: "doubt"},
	)
	out.Picture(c)
}

func (t scaleTest) working(in *calc.In, out *calc.Out) {
	const york = "D. York and others, Am. J. Phys. 72 (2004) 367 (from memory), uncertainties as stated; held against Pearson's points"
	out.Step("load = slope × pressure − dead weight, the line with least χ² = Σ (load − line)² ÷ (u²(load) + slope²·u²(pressure))",
		"{pulls} pulls, u = {pressure_u} and {load_u}: slope {slope}, dead weight {dead}", york)
	gauge := ""
	if in.SI("gauge_err") > 0 {
		gauge = ", with slope × {gauge_err} ÷ √3 for the gauge"
	}
	out.Step("doubt of the line, carried from the points", "u(slope) = {slope_u}; u(dead weight) = {dead_u}"+gauge, york)
	if len(t.p) > 2 {
		out.Step("chance of χ² or more with pulls − 2 degrees of freedom", "χ² = {chi2}: {chi2_p}", "Abramowitz and Stegun, 26.4 (from memory)")
	}
	out.Step("more load = at the highest pressure ÷ at the lowest − 1; more pressure the same", "{gain_pct} and {dp_pct}, u of the first {gain_u}", "Arithmetic")
	out.Step("dead weight is shown when it is more than twice its standard uncertainty", "{dead} against 2 × {dead_u}", "A choice, near 95 % (JCGM 100:2008, G.1.2)")
}
