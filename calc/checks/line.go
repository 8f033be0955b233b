package checks

import (
	"math"
	"sync"

	"plainlift/calc/line"
)

// NIST StRD, linear regression, Norris and NoInt1 (read in public test suites
// that quote them).
var (
	norrisX = []float64{
		0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4,
		0.6, 775.5, 666.9, 338, 447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3,
		0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
	}
	norrisY = []float64{
		0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
		0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3,
		0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
	}
	nointX = []float64{60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70}
	nointY = []float64{130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140}
)

// Thermometer calibration, JCGM 100:2008, H.3, Table H.6 (read): °C from 20, and
// correction, °C.
var (
	thermometerT = []float64{1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511}
	thermometerB = []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
)

// Pearson's data of 1901, without weights.
var (
	pearsonX = []float64{0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4}
	pearsonY = []float64{5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5}
)

// fitted returns a figure of the line through points; NaN without one.
func fitted(x, y []float64) func(figure func(line.Line) float64) func() float64 {
	fit := sync.OnceValues(func() (line.Line, error) { return line.Ordinary(x, y) })
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
	norris      = fitted(norrisX, norrisY)
	thermometer = fitted(thermometerT, thermometerB)
	pearson     = fitted(pearsonX, pearsonY)

	// A line is held to the origin by giving each point again on its other side.
	noint = fitted(mirrored(nointX), mirrored(nointY))
)

func mirrored(x []float64) []float64 {
	all := append([]float64{}, x...)
	for _, v := range x {
		all = append(all, -v)
	}
	return all
}

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
