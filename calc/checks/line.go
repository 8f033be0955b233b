package checks

import (
	"math"
	"sync"

	"plainlift/calc/checks/points"
	"plainlift/calc/line"
)

// fitted returns a figure of the line through points; NaN without one.
func fitted(s points.Set) func(figure func(line.Line) float64) func() float64 {
	fit := sync.OnceValues(func() (line.Line, error) { return line.Ordinary(s.X, s.Y) })
	return func(figure func(line.Line) float64) func() float64 {
		return func() float64 {
			l, err := fit()
			if err != nil {
				return math.NaN()
			}
			return figure(l)
		}
	}
}

var (
	norris      = fitted(points.Norris)
	thermometer = fitted(points.Thermometer)
	pearson     = fitted(points.Pearson)

	// A line is held to the origin by giving each point again on its other side.
	noint = fitted(points.NoInt1.Mirrored())
)

// explained returns the sum of squares that the line explains, from its slope
// and that slope's uncertainty: b²·Σ(x−x̄)², with u(b) = s/√Σ(x−x̄)².
func explained(l line.Line) float64 { return square(l.Slope * l.S / l.SlopeU) }

func intercept(l line.Line) float64  { return l.Intercept }
func interceptU(l line.Line) float64 { return l.InterceptU }
func slope(l line.Line) float64      { return l.Slope }
func slopeU(l line.Line) float64     { return l.SlopeU }
func scatter(l line.Line) float64    { return l.S }
func sse(l line.Line) float64        { return l.SSE }
func freedom(l line.Line) float64    { return float64(l.DOF) }
func explains(l line.Line) float64   { return explained(l) / (explained(l) + l.SSE) }
func together(l line.Line) float64   { return l.Cov / (l.InterceptU * l.SlopeU) }
func at30(l line.Line) float64       { y, _ := l.At(10); return y }
func new30U(l line.Line) float64     { _, u := l.New(10); return u }
func at30U(l line.Line) float64      { _, u := l.At(10); return u }

const (
	strd       = "NIST StRD, linear regression, certified"
	refitted   = "GUM H.3, readings; fitted with 30-digit arithmetic"
	refitted01 = "Pearson 1901, data; fitted with 25-digit arithmetic"
)

var lines = []Check{
	{What: "Norris: intercept", Source: strd, Status: Read, Printed: "-0.262323073774029", Got: norris(intercept)},
	{What: "Its standard deviation", Source: strd, Status: Read, Printed: "0.232818234301152", Got: norris(interceptU)},
	{What: "Norris: slope", Source: strd, Status: Read, Printed: "1.00211681802045", Got: norris(slope)},
	{What: "Its standard deviation", Source: strd, Status: Read, Printed: "0.429796848199937e-3", Got: norris(slopeU)},
	{What: "Norris: residual standard deviation", Source: strd, Status: Read, Printed: "0.884796396144373", Got: norris(scatter)},
	{What: "Norris: R²", Source: strd, Status: Read, Printed: "0.999993745883712", Got: norris(explains)},
	{What: "Norris: residual sum of squares", Source: strd, Status: Read, Printed: "26.6173985294224", Got: norris(sse)},
	{What: "Norris: regression sum of squares", Source: strd, Status: Read, Printed: "4255954.13232369", Got: norris(explained)},
	{What: "Norris: degrees of freedom", Source: strd, Status: Read, Printed: "34", Tol: 1e-9, Got: norris(freedom)},
	{What: "NoInt1: slope through the origin, each point mirrored", Source: strd, Status: Read, Printed: "2.07438016528926", Got: noint(slope)},
	{What: "Its standard deviation", Source: strd, Status: Read, Printed: "0.165289256198347e-1", Got: noint(func(l line.Line) float64 { return l.SlopeU * math.Sqrt2 })},
	{What: "NoInt1: residual standard deviation", Source: strd, Status: Read, Printed: "3.56753034006338", Got: noint(scatter)},
	{What: "NoInt1: residual sum of squares", Source: strd, Status: Read, Printed: "127.272727272727", Got: noint(func(l line.Line) float64 { return l.SSE / 2 })},
	{What: "NoInt1: R²", Source: strd, Status: Read, Printed: "0.999365492298663", Got: noint(explains)},
	{What: "Thermometer: correction at 20 °C", Source: gum("H.3"), Status: Read, Unit: "°C", Printed: "-0.1712", Got: thermometer(intercept)},
	{What: "Its standard uncertainty", Source: gum("H.3"), Status: Read, Unit: "°C", Printed: "0.0029", Got: thermometer(interceptU)},
	{What: "Thermometer: slope", Source: gum("H.3"), Status: Read, Printed: "0.00218", Got: thermometer(slope)},
	{What: "Its standard uncertainty", Source: gum("H.3"), Status: Read, Printed: "0.00067", Got: thermometer(slopeU)},
	{What: "Correlation of the two", Source: gum("H.3"), Status: Read, Printed: "-0.930", Got: thermometer(together)},
	{What: "Thermometer: residual standard deviation", Source: gum("H.3"), Status: Read, Unit: "°C", Printed: "0.0035", Got: thermometer(scatter)},
	{What: "Thermometer: correction at 30 °C", Source: gum("H.3"), Status: Read, Unit: "°C", Printed: "-0.1494", Got: thermometer(at30)},
	{What: "Its standard uncertainty", Source: gum("H.3"), Status: Read, Unit: "°C", Printed: "0.0041", Got: thermometer(at30U)},
	{What: "Thermometer: correction at 20 °C, more digits", Source: refitted, Status: Computed, Unit: "°C", Printed: "-0.17120379013135", Got: thermometer(intercept)},
	{What: "Its standard uncertainty", Source: refitted, Status: Computed, Unit: "°C", Printed: "0.00287759783516", Got: thermometer(interceptU)},
	{What: "Thermometer: slope, more digits", Source: refitted, Status: Computed, Printed: "0.00218269773988728", Tol: 2e-14, Got: thermometer(slope)},
	{What: "Its standard uncertainty", Source: refitted, Status: Computed, Printed: "0.000667938773227832", Tol: 2e-15, Got: thermometer(slopeU)},
	{What: "Correlation of the two, more digits", Source: refitted, Status: Computed, Printed: "-0.930429603093446", Got: thermometer(together)},
	{What: "Thermometer: residual sum of squares", Source: refitted, Status: Computed, Unit: "°C²", Printed: "0.000110096583109297", Tol: 1e-15, Got: thermometer(sse)},
	{What: "Thermometer: correction at 30 °C, more digits", Source: refitted, Status: Computed, Unit: "°C", Printed: "-0.149376812732477", Got: thermometer(at30)},
	{What: "Its standard uncertainty", Source: refitted, Status: Computed, Unit: "°C", Printed: "0.00413859575285495", Tol: 2e-14, Got: thermometer(at30U)},
	{What: "A further reading at 30 °C: standard uncertainty", Source: refitted, Status: Computed, Unit: "°C", Printed: "0.005418572550438", Tol: 1e-14, Got: thermometer(new30U)},
	{What: "Pearson's points: intercept", Source: refitted01, Status: Computed, Printed: "5.76118519043904", Got: pearson(intercept)},
	{What: "Pearson's points: slope", Source: refitted01, Status: Computed, Printed: "-0.539577274984041", Got: pearson(slope)},
}
