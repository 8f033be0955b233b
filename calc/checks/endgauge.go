package checks

import (
	"math"

	"plainlift/calc/doubt"
)

// The calibration of an end gauge, JCGM 100:2008, H.1, in nm and °C:
//
//	l = l_s + d − l_s·(δα·θ + α_s·δθ)
const (
	standard   = 50_000_623.0
	difference = 215.0
	theta      = -0.1 // from 20 °C
	alpha      = 11.5e-6
)

// comparison is what the doubt of the difference d is made of.
func comparison() doubt.Budget {
	return doubt.Budget{
		{Name: "repeats", U: 13 / math.Sqrt(5), Sens: 1, DOF: 24},
		{Name: "random", U: 10 / doubt.T(0.95, 5), Sens: 1, DOF: 5},
		{Name: "systematic", U: 20.0 / 3, Sens: 1, DOF: 8},
	}
}

// length is the whole budget.
func length() doubt.Budget {
	d := comparison()
	return doubt.Budget{
		{Name: "standard", U: 75.0 / 3, Sens: 1, DOF: 18},
		{Name: "comparison", U: d.U(), Sens: 1, DOF: d.DOF()},
		{Name: "difference of expansion", U: doubt.Rect(1e-6), Sens: -standard * theta, DOF: 50},
		{Name: "difference of temperature", U: doubt.Rect(0.05), Sens: -standard * alpha, DOF: 2},
	}
}

// rounded is the budget with inputs rounded as a library's documentation does.
func rounded() doubt.Budget {
	return doubt.Budget{
		{U: 25, Sens: 1, DOF: 18},
		{U: 9.7, Sens: 1, DOF: 25.6},
		{U: 0.58e-6, Sens: -standard * theta, DOF: 50},
		{U: 0.029, Sens: -standard * alpha, DOF: 2},
	}
}

// part returns what one source of a budget brings to the result.
func part(b doubt.Budget, i int) float64 { return math.Abs(b[i].Sens * b[i].U) }

// k99 is the coverage factor at 99 %, with the degrees of freedom cut to a
// whole number as the guide does.
func k99(b doubt.Budget) float64 { return doubt.T(0.99, math.Floor(b.DOF())) }

const roundedInputs = "the documentation of a general-purpose uncertainty library, H.1 with rounded inputs"

var endGauge = []Check{
	{What: "End gauge: repeats", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "5.8", Got: func() float64 { return part(comparison(), 0) }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "5.813777", Got: func() float64 { return part(comparison(), 0) }},
	{What: "End gauge: comparator, random", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "3.9", Got: func() float64 { return part(comparison(), 1) }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "3.890170", Got: func() float64 { return part(comparison(), 1) }},
	{What: "End gauge: comparator, systematic", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "6.7", Got: func() float64 { return part(comparison(), 2) }},
	{What: "End gauge: the difference of lengths", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "9.7", Got: func() float64 { return comparison().U() }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "9.663222", Got: func() float64 { return comparison().U() }},
	{What: "Its degrees of freedom", Source: gum("H.1"), Status: Read, Printed: "25.6", Got: func() float64 { return comparison().DOF() }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Printed: "25.621306", Got: func() float64 { return comparison().DOF() }},
	{What: "End gauge: difference of expansion", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "2.9", Got: func() float64 { return part(length(), 2) }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "2.886787", Got: func() float64 { return part(length(), 2) }},
	{What: "End gauge: difference of temperature", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "16.6", Got: func() float64 { return part(length(), 3) }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "16.599027", Got: func() float64 { return part(length(), 3) }},
	{What: "End gauge: combined, squared", Source: gum("H.1"), Status: Read, Unit: "nm²", Printed: "1002", Got: func() float64 { return square(length().U()) }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm²", Printed: "1002.239", Got: func() float64 { return square(length().U()) }},
	{What: "End gauge: combined standard uncertainty", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "32", Got: func() float64 { return length().U() }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "31.658160", Got: func() float64 { return length().U() }},
	{What: "The same, with inputs rounded first", Source: roundedInputs, Status: Library, Unit: "nm", Printed: "31.71", Got: func() float64 { return rounded().U() }},
	{What: "End gauge: effective degrees of freedom", Source: gum("H.1"), Status: Read, Printed: "16.7", Got: func() float64 { return length().DOF() }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Printed: "16.741149", Got: func() float64 { return length().DOF() }},
	{What: "End gauge: coverage factor, 99 %", Source: gum("H.1"), Status: Read, Printed: "2.92", Got: func() float64 { return k99(length()) }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Printed: "2.920782", Got: func() float64 { return k99(length()) }},
	{What: "Expanded uncertainty of the end gauge, 99 % (the guide multiplies rounded factors)", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "93", Tol: 0.6,
		Got: func() float64 { return k99(length()) * length().U() }},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "92.4666", Got: func() float64 { return k99(length()) * length().U() }},
	{What: "The same, with inputs rounded first", Source: roundedInputs, Status: Library, Unit: "nm", Printed: "92.62", Got: func() float64 { return k99(rounded()) * rounded().U() }},
}
