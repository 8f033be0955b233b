package checks

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"plainlift/calc/checks/points"
	"plainlift/calc/line"
)

// york returns a figure of York's line through Pearson's points; NaN without one.
func york(figure func(line.Stated) float64) func() float64 {
	return func() float64 {
		s := points.Pearson
		l, err := line.York(s.X, s.Y, s.UX, s.UY)
		if err != nil {
			return math.NaN()
		}
		return figure(l)
	}
}

// tail returns the chance of χ² or more.
func tail(chi2 float64, dof int) func() float64 {
	return func() float64 { return line.ChiSquareTail(chi2, dof) }
}

const (
	neri     = "Neri and others 1989"
	murray   = "Murray 1994"
	york2004 = "York and others 2004, Table I"
	unified  = "York and others 2004, equations; worked with 25-digit arithmetic"
	series   = "series of the incomplete gamma function with 25-digit arithmetic"
	tables   = "printed tables of chi-square"
)

var bothUncertain = []Check{
	{What: "Pearson's points, York's weights: intercept", Source: neri, Status: SecondHand, Printed: "5.47991022", Got: york(func(l line.Stated) float64 { return l.Intercept })},
	{What: "Slope", Source: neri, Status: SecondHand, Printed: "-0.480533407", Got: york(func(l line.Stated) float64 { return l.Slope })},
	{What: "χ² for each degree of freedom", Source: murray, Status: SecondHand, Printed: "1.4833", Got: york(func(l line.Stated) float64 { return l.Chi2 / float64(l.DOF) })},
	{What: "Standard uncertainty of the intercept, as printed", Source: york2004, Status: Memory, Printed: "0.2950", Got: york(func(l line.Stated) float64 { return l.InterceptU })},
	{What: "Standard uncertainty of the slope, as printed", Source: york2004, Status: Memory, Printed: "0.0580", Got: york(func(l line.Stated) float64 { return l.SlopeU })},
	{What: "Standard uncertainty of the intercept", Source: unified, Status: Computed, Printed: "0.294970735493", Got: york(func(l line.Stated) float64 { return l.InterceptU })},
	{What: "Standard uncertainty of the slope", Source: unified, Status: Computed, Printed: "0.057985009001", Got: york(func(l line.Stated) float64 { return l.SlopeU })},
	{What: "Covariance of the two", Source: unified, Status: Computed, Printed: "-0.0164725446581", Got: york(func(l line.Stated) float64 { return l.Cov })},
	{What: "χ²", Source: unified, Status: Computed, Printed: "11.8663531940614", Got: york(func(l line.Stated) float64 { return l.Chi2 })},
	{What: "Chance of χ² = 5.991 or more, 2 degrees of freedom", Source: tables, Status: Memory, Printed: "0.05", Tol: 2e-5, Got: tail(5.991, 2)},
	{What: "Chance of χ² = 18.307 or more, 10 degrees of freedom", Source: tables, Status: Memory, Printed: "0.05", Tol: 1e-5, Got: tail(18.307, 10)},
	{What: "Chance of χ² = 6.6348966 or more, 1 degree of freedom", Source: series, Status: Computed, Printed: "0.01", Tol: 1e-9, Got: tail(6.6348966, 1)},
	{What: "Chance of χ² = 43.7729718 or more, 30 degrees of freedom", Source: series, Status: Computed, Printed: "0.05", Tol: 1e-9, Got: tail(43.7729718, 30)},
	{What: "Chance of χ² = 11.866 or more, 8 degrees of freedom", Source: "gonum, mathext.GammaIncRegComp", Status: Library, Want: mathext.GammaIncRegComp(4, 11.866/2), Tol: 1e-14, Got: tail(11.866, 8)},
}
