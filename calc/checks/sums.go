package checks

import "plainlift/calc/doubt"

const quadrature = "numerical integration with 25 digits"

// half returns the half-width of the interval that holds 95 % of a sum.
func half(s doubt.Sum) func() float64 {
	return func() float64 {
		lo, hi := s.Dist().Interval(0.95)
		return (hi - lo) / 2
	}
}

// atMost returns the chance that a sum is at most x, in percent.
func atMost(s doubt.Sum, x float64) func() float64 {
	return func() float64 { return 100 * s.Dist().CDF(x) }
}

// Sums as a reading has them: gauge limit, step, temperature and repeats.
var (
	gaugeAndRepeats = doubt.Sum{Rects: []float64{80}, Scale: 5, DOF: 3}
	threeLimits     = doubt.Sum{Rects: []float64{80, 5, 6.9}}
	wholeReading    = doubt.Sum{Mid: 2610, Rects: []float64{80, 5, 24}, Scale: 5, DOF: 3}
)

// A claim of 2,450 psi before and 2,700 after, on a gauge good to ±80 psi.
var (
	oneGauge  = doubt.Gain{Before: 2450, After: 2700, Err: 80, Shared: true}
	twoGauges = doubt.Gain{Before: 2450, After: 2700, Err: 80}
	withDead  = doubt.Gain{Before: 2450, After: 2700, Err: 80, Shared: true, DeadHi: 0.3}
	withStep  = doubt.Gain{Before: 2450, After: 2700, Err: 80, Shared: true, DeadHi: 0.3, Step: 10}
	allApart  = doubt.Gain{Before: 2450, After: 2700, Err: 80, DeadHi: 0.3, Step: 10}
)

// gained returns the gain, in percent, that the true one stays under with
// probability p.
func gained(g doubt.Gain, p float64) func() float64 {
	return func() float64 { return 100 * g.Quantile(p) }
}

// density returns the probability density of a sum at x, in percent for each
// unit.
func density(s doubt.Sum, x float64) func() float64 {
	return func() float64 { return 100 * s.Dist().Density(x) }
}

// sums are distributions of sums and of the gain between two readings.
var sums = []Check{
	{What: "±80 and the mean of four readings good to 5: half-width, 95 %", Source: quadrature, Status: Computed, Printed: "77.842973206", Got: half(gaugeAndRepeats)},
	{What: "The same: chance of at most 70", Source: quadrature, Status: Computed, Unit: "%", Printed: "93.4489172551", Got: atMost(gaugeAndRepeats, 70)},
	{What: "±80, ±5 and ±6.9: half-width, 95 %", Source: "the exact sum of three limits, with 30 digits", Status: Computed, Printed: "76.793516876731", Got: half(threeLimits)},
	{What: "The same: chance of at most −70", Source: "the exact sum of three limits, with 30 digits", Status: Computed, Unit: "%", Printed: "6.25517738526", Got: atMost(threeLimits, -70)},
	{What: "The same: density at 78", Source: "the exact sum of three limits, with 30 digits", Status: Computed, Unit: "% per unit", Printed: "0.403057065217", Got: density(threeLimits, 78)},
	{What: "±80 and repeats: density at 78", Source: "t with three degrees of freedom, in closed form", Status: Computed, Unit: "% per unit", Printed: "0.401248502523", Got: density(gaugeAndRepeats, 78)},
	{What: "2,610 with ±80, ±5, ±24 and repeats: half-width, 95 %", Source: quadrature, Status: Computed, Printed: "86.30703", Tol: 0.02, Got: half(wholeReading)},
	{What: "The same: chance of at most 2,680", Source: quadrature, Status: Computed, Unit: "%", Printed: "92.02140", Tol: 0.01, Got: atMost(wholeReading, 2680)},
	{What: "The same: density at 2,680", Source: quadrature, Status: Computed, Unit: "% per unit", Printed: "0.439370", Tol: 1e-4, Got: density(wholeReading, 2680)},
	{What: "Gain, one gauge for both, lower end, 95 %", Source: "closed form by hand", Status: Computed, Unit: "%", Printed: "9.897070467", Got: gained(oneGauge, 0.025)},
	{What: "The same, median", Source: "closed form by hand", Status: Computed, Unit: "%", Printed: "10.204081633", Got: gained(oneGauge, 0.5)},
	{What: "The same, upper end, 95 %", Source: "closed form by hand", Status: Computed, Unit: "%", Printed: "10.530749789", Got: gained(oneGauge, 0.975)},
	{What: "Gain, a gauge for each, lower end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "5.00639", Tol: 5e-4, Got: gained(twoGauges, 0.025)},
	{What: "The same, upper end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "15.67598", Tol: 5e-4, Got: gained(twoGauges, 0.975)},
	{What: "Gain, one gauge, dead weight of 0 to 30 %, lower end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "10.19049", Tol: 5e-4, Got: gained(withDead, 0.025)},
	{What: "The same, median", Source: quadrature, Status: Computed, Unit: "%", Printed: "11.73469", Tol: 5e-4, Got: gained(withDead, 0.5)},
	{What: "The same, upper end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "13.33565", Tol: 5e-4, Got: gained(withDead, 0.975)},
	{What: "Gain, one gauge, that dead weight, read to 10 psi, lower end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "10.136502", Tol: 1e-3, Got: gained(withStep, 0.025)},
	{What: "The same, upper end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "13.410743", Tol: 1e-3, Got: gained(withStep, 0.975)},
	{What: "The same, least that there can be", Source: byHand, Status: Computed, Unit: "%", Printed: "9.467455621", Got: gained(withStep, 0)},
	{What: "The same, most that there can be", Source: byHand, Status: Computed, Unit: "%", Printed: "14.291754757", Got: gained(withStep, 1)},
	{What: "A gauge for each, least that there can be", Source: byHand, Status: Computed, Unit: "%", Printed: "3.155818540", Got: gained(allApart, 0)},
	{What: "A gauge for each, most that there can be", Source: byHand, Status: Computed, Unit: "%", Printed: "23.086680761", Got: gained(allApart, 1)},
}
