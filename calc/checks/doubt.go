package checks

import (
	"math"

	"plainlift/calc/doubt"
)

// gum names a clause of the guide to the expression of uncertainty.
func gum(clause string) string { return "JCGM 100:2008 (GUM), " + clause }

var inf = math.Inf(1)

// temperatures are the readings of JCGM 100:2008, 4.4.3, Table 1 (read), °C.
var temperatures = []float64{
	96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
	100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
}

func temperatureS() float64 {
	_, s := doubt.StdDev(temperatures)
	return s
}

// voltmeter is the specification of 4.3.7, example 2, V: so much of the reading
// and so much of the range.
func voltmeter() float64 { return doubt.Rect(14e-6*0.928571 + 2e-6*1) }

func voltage() doubt.Budget {
	return doubt.Budget{
		{Name: "repeats", U: 12e-6, Sens: 1, DOF: inf},
		{Name: "specification", U: voltmeter(), Sens: 1, DOF: inf},
	}
}

// relative is the example of G.4.1, in percent.
func relative() doubt.Budget {
	return doubt.Budget{
		{Name: "x1", U: 0.25, Sens: 1, DOF: 9},
		{Name: "x2", U: 0.57, Sens: 1, DOF: 4},
		{Name: "x3", U: 0.82, Sens: 1, DOF: 14},
	}
}

// relativeK is the coverage factor there, for the 19.0 that the guide prints.
func relativeK() float64 { return doubt.T(0.95, math.Round(relative().DOF())) }

func square(x float64) float64 { return x * x }

// uncertainties are single standard uncertainties and their combination.
var uncertainties = []Check{
	{What: "Standard uncertainty of 240 µg at three standard deviations", Source: gum("4.3.3"), Status: Read, Unit: "µg", Printed: "80", Tol: 1e-6,
		Got: func() float64 { return 240 / doubt.T(1-2*doubt.NormalCDF(-3), inf) }},
	{What: "Standard uncertainty of ±129 µΩ at 99 %", Source: gum("4.3.4"), Status: Read, Unit: "µΩ", Printed: "50",
		Got: func() float64 { return 129 / doubt.T(0.99, inf) }},
	{What: "Divisor for 90 %", Source: gum("4.3.4"), Status: Read, Printed: "1.64", Got: func() float64 { return doubt.T(0.90, inf) }},
	{What: "Divisor for 95 %", Source: gum("4.3.4"), Status: Read, Printed: "1.96", Got: func() float64 { return doubt.T(0.95, inf) }},
	{What: "Divisor for 99 %", Source: gum("4.3.4"), Status: Read, Printed: "2.58", Got: func() float64 { return doubt.T(0.99, inf) }},
	{What: "Multiple of a fifty-fifty limit", Source: gum("4.3.5"), Status: Read, Printed: "1.48", Got: func() float64 { return 1 / doubt.NormalQuantile(0.75) }},
	{What: "Standard uncertainty of fifty-fifty limits of ±0.04 mm", Source: gum("4.3.5"), Status: Read, Unit: "mm", Printed: "0.06",
		Got: func() float64 { return 0.04 / doubt.NormalQuantile(0.75) }},
	{What: "Limits of ±0.40·10⁻⁶ per °C", Source: gum("4.3.7, example 1"), Status: Read, Unit: "/°C", Printed: "0.23e-6", Got: func() float64 { return doubt.Rect(0.40e-6) }},
	{What: "The same, squared", Source: gum("4.3.7, example 1"), Status: Read, Unit: "/°C²", Printed: "53.3e-15", Got: func() float64 { return square(doubt.Rect(0.40e-6)) }},
	{What: "The same, more digits", Source: gum("4.3.7, example 1, inputs"), Status: Computed, Unit: "/°C", Printed: "0.230940e-6", Got: func() float64 { return doubt.Rect(0.40e-6) }},
	{What: "A voltmeter good to so much of the reading and so much of the range", Source: gum("4.3.7, example 2"), Status: Read, Unit: "µV", Printed: "8.7", Got: func() float64 { return 1e6 * voltmeter() }},
	{What: "The same, more digits", Source: gum("4.3.7, example 2, inputs"), Status: Computed, Unit: "µV", Printed: "8.66025", Got: func() float64 { return 1e6 * voltmeter() }},
	{What: "Limits that are not alike, 0.12·10⁻⁶ under and 0.40·10⁻⁶ over", Source: gum("4.3.8"), Status: Read, Unit: "/°C", Printed: "0.15e-6", Got: func() float64 { return doubt.Asymmetric(0.12e-6, 0.40e-6) }},
	{What: "The same, more digits", Source: gum("4.3.8, inputs"), Status: Computed, Unit: "/°C", Printed: "0.150111e-6", Got: func() float64 { return doubt.Asymmetric(0.12e-6, 0.40e-6) }},
	{What: "A trapezoid ±5 with a top 0.3 as wide: two limits together", Source: gum("4.3.9, u² = a²(1 + β²)/6"), Status: Read, Want: 5 * math.Sqrt((1+0.09)/6), Tol: 1e-12,
		Got: func() float64 { return math.Hypot(doubt.Rect(3.25), doubt.Rect(1.75)) }},
	{What: "A triangle ±5", Source: gum("4.3.9, u² = a²/6"), Status: Read, Want: 5 / math.Sqrt(6), Tol: 1e-12, Got: func() float64 { return doubt.Triangle(5) }},
	{What: "Mean of 20 temperatures", Source: gum("4.4.3"), Status: Read, Unit: "°C", Printed: "100.145", Tol: 1e-9,
		Got: func() float64 { mean, _ := doubt.StdDev(temperatures); return mean }},
	{What: "Their standard deviation", Source: gum("4.4.3"), Status: Read, Unit: "°C", Printed: "1.489", Got: temperatureS},
	{What: "The same, more digits", Source: gum("4.4.3, readings"), Status: Computed, Unit: "°C", Printed: "1.48884448306", Got: temperatureS},
	{What: "Standard uncertainty of their mean", Source: gum("4.4.3"), Status: Read, Unit: "°C", Printed: "0.333", Got: func() float64 { return temperatureS() / math.Sqrt(20) }},
	{What: "Anywhere from 96 to 104 °C, all alike", Source: gum("4.4.5"), Status: Read, Unit: "°C", Printed: "2.3", Got: func() float64 { return doubt.Rect(4) }},
	{What: "The same, more digits", Source: gum("4.4.5, inputs"), Status: Computed, Unit: "°C", Printed: "2.309401", Got: func() float64 { return doubt.Rect(4) }},
	{What: "From 96 to 104 °C, the middle likelier", Source: gum("4.4.6"), Status: Read, Unit: "°C", Printed: "1.6", Got: func() float64 { return doubt.Triangle(4) }},
	{What: "The same, more digits", Source: gum("4.4.6, inputs"), Status: Computed, Unit: "°C", Printed: "1.632993", Got: func() float64 { return doubt.Triangle(4) }},
	{What: "Squared standard uncertainty of a display step of 1", Source: gum("H.6.3.1, δ²/12"), Status: Read, Want: 1.0 / 12, Tol: 1e-14, Got: func() float64 { return square(doubt.Step(1)) }},
	{What: "Repeats and voltmeter together", Source: gum("5.1.5"), Status: Read, Unit: "µV", Printed: "15", Got: func() float64 { return 1e6 * voltage().U() }},
	{What: "The same, squared", Source: gum("5.1.5"), Status: Read, Unit: "V²", Printed: "219e-12", Got: func() float64 { return square(voltage().U()) }},
	{What: "The same, more digits", Source: gum("5.1.5, inputs"), Status: Computed, Unit: "µV", Printed: "14.7986", Got: func() float64 { return 1e6 * voltage().U() }},
	{What: "Three sources together", Source: gum("G.4.1, example"), Status: Read, Unit: "%", Printed: "1.03", Got: func() float64 { return relative().U() }},
	{What: "The same, more digits", Source: gum("G.4.1, inputs"), Status: Computed, Unit: "%", Printed: "1.029466", Got: func() float64 { return relative().U() }},
	{What: "Their effective degrees of freedom", Source: gum("G.4.1, example"), Status: Read, Printed: "19.0", Got: func() float64 { return relative().DOF() }},
	{What: "The same, more digits", Source: gum("G.4.1, inputs"), Status: Computed, Printed: "18.99874", Got: func() float64 { return relative().DOF() }},
	{What: "Their coverage factor at 95 %", Source: gum("G.4.1, example"), Status: Read, Printed: "2.09", Got: relativeK},
	{What: "The same, more digits", Source: gum("G.4.1, inputs"), Status: Computed, Printed: "2.093024", Got: relativeK},
	{What: "Their expanded uncertainty at 95 %", Source: gum("G.4.1, example"), Status: Read, Unit: "%", Printed: "2.2", Got: func() float64 { return relativeK() * relative().U() }},
}
