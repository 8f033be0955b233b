package worksheets

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// picture draws the manual's range and the distribution of the true pressure
// to scale. name labels the mark at x, span the interval from lo to hi.
func (j judgement) picture(in *calc.In, out *calc.Out, x, lo, hi float64, d *doubt.Dist, name, span string) {
	if out.Brief() {
		return
	}
	p := func(si float64) float64 { return in.Shown(unit.Pressure, si) }
	// Two repeats leave tails so long that drawn whole they would hide the rest.
	reach := min(d.Quantile(0.9995)-x, 3*(d.Quantile(0.975)-x))
	from, to := x-reach, x+reach
	c := &chart.Chart{
		ID: "picture", Title: out.Words("The reading against the manual's range"), Height: 200,
		Desc: out.Words("The gauge shows {" + j.it + "}; the true pressure is between {lo} and {hi}. The manual's range: " + rangeText(in) + "."),
		X:    chart.Axis{Label: "pressure, " + unit.Pressure.Shown(in.System()).Name},
		Y:    chart.Axis{Min: -1, Max: 2, Hide: true},
		Marks: []chart.Mark{
			&chart.Point{X: p(x), Y: 0, Label: out.Words(name), Accent: true},
		},
	}
	if in.Has("low") || in.Has("high") {
		low, high := math.Inf(-1), math.Inf(1)
		if in.Has("low") {
			low = p(in.SI("low"))
		}
		if in.Has("high") {
			high = p(in.SI("high"))
		}
		c.Marks = append(c.Marks, &chart.Band{On: chart.X, From: low, To: high, Label: out.Words("manual:\n" + rangeText(in))})
	}
	if from < to {
		c.Marks = append(c.Marks, &chart.Area{Strips: density(d, from, to, p), Label: "true pressure", Accent: true})
	}
	c.Marks = append(c.Marks, &chart.Span{From: p(lo), To: p(hi), Row: -0.4, Label: out.Words(span), Accent: true})
	out.Picture(c)
}

func rangeText(in *calc.In) string {
	switch {
	case in.Has("low") && in.Has("high"):
		return "{low:n} to {high}"
	case in.Has("low"):
		return "from {low}"
	case in.Has("high"):
		return "up to {high}"
	}
	return "not entered"
}

// density samples the distribution, its peak at 1.
func density(d *doubt.Dist, from, to float64, shown func(float64) float64) []chart.Strip {
	sweep := floats.Span(make([]float64, 101), from, to)
	heights := make([]float64, len(sweep))
	for i, x := range sweep {
		heights[i] = d.Density(x)
	}
	floats.Scale(1/floats.Max(heights), heights)
	strips := make([]chart.Strip, len(sweep))
	for i, x := range sweep {
		strips[i] = chart.Strip{X: shown(x), High: heights[i]}
	}
	return strips
}
