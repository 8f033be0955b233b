package checks

import (
	"math"
	"math/rand/v2"
	"sync"

	"plainlift/calc/doubt"
)

// jcgm101 names a clause of the guide to the propagation of distributions.
func jcgm101(clause string) string { return "JCGM 101:2008, " + clause }

var root3 = math.Sqrt(3)

// The sums of 9.2, which have closed forms.
var (
	fourNormal = doubt.Sum{Scale: 2, DOF: inf}
	fourLimits = doubt.Sum{Rects: []float64{root3, root3, root3, root3}}
	oneWide    = doubt.Sum{Rects: []float64{root3, root3, root3, 10 * root3}}
)

// widths is a budget of sources with no more than their standard uncertainties.
func widths(u ...float64) doubt.Budget {
	var b doubt.Budget
	for _, x := range u {
		b = append(b, doubt.Source{U: x, Sens: 1, DOF: inf})
	}
	return b
}

// byBudget is U = k·u at 95 % of such a budget.
func byBudget(b doubt.Budget) float64 { return doubt.T(0.95, b.DOF()) * b.U() }

// examples are those of JCGM 101, by the formulas.
var examples = []Check{
	{What: "Four normal quantities: u", Source: jcgm101("9.2.2, Table 2"), Status: Read, Printed: "2.00", Got: func() float64 { return widths(1, 1, 1, 1).U() }},
	{What: "Their half-width, 95 %, by the budget", Source: jcgm101("9.2.2, Table 2"), Status: Read, Printed: "3.92", Got: func() float64 { return byBudget(widths(1, 1, 1, 1)) }},
	{What: "Their half-width, 95 %, by the distribution", Source: jcgm101("9.2.2, inputs"), Status: Computed, Printed: "3.919928", Got: half(fourNormal)},
	{What: "Four equal limits: half-width, 95 %, by the budget", Source: jcgm101("9.2.3, Table 3"), Status: Read, Printed: "3.92", Got: func() float64 {
		return byBudget(widths(doubt.Rect(root3), doubt.Rect(root3), doubt.Rect(root3), doubt.Rect(root3)))
	}},
	{What: "Four equal limits: half-width, 95 %, by the distribution", Source: jcgm101("9.2.3, Table 3, simulated there"), Status: Read, Printed: "3.88 to 3.90", Got: half(fourLimits)},
	{What: "The same, more digits", Source: "2√3·(2 − (3/5)^¼), exact", Status: Computed, Printed: "3.879407", Got: half(fourLimits)},
	{What: "One limit ten times as wide: u", Source: jcgm101("9.2.4, Table 4"), Status: Read, Printed: "10.1", Got: func() float64 { return widths(1, 1, 1, 10).U() }},
	{What: "The same, more digits", Source: "√103", Status: Computed, Printed: "10.148892", Got: func() float64 { return widths(1, 1, 1, 10).U() }},
	{What: "Its half-width, 95 %, by the budget", Source: jcgm101("9.2.4, Table 4"), Status: Read, Printed: "19.9", Got: func() float64 { return byBudget(widths(1, 1, 1, 10)) }},
	{What: "Its half-width, 95 %, by the distribution", Source: jcgm101("9.2.4, Table 4, simulated there"), Status: Read, Printed: "17.0", Got: half(oneWide)},
	{What: "The same, more digits", Source: "the exact sum of four limits, with 30 digits", Status: Computed, Printed: "17.0158", Tol: 1e-3, Got: half(oneWide)},
	{What: "Mass: u of first order", Source: jcgm101("9.3, Table 5"), Status: Read, Unit: "mg", Printed: "0.0539", Got: func() float64 { return widths(0.050, 0.020).U() }},
	{What: "The same, more digits", Source: jcgm101("9.3, inputs"), Status: Computed, Unit: "mg", Printed: "0.0538516", Got: func() float64 { return widths(0.050, 0.020).U() }},
	{What: "Its lower end, 95 %", Source: jcgm101("9.3, Table 5"), Status: Read, Unit: "mg", Printed: "1.1285", Got: func() float64 { return 1.234 - byBudget(widths(0.050, 0.020)) }},
	{What: "Its upper end, 95 %", Source: jcgm101("9.3, Table 5"), Status: Read, Unit: "mg", Printed: "1.3395", Got: func() float64 { return 1.234 + byBudget(widths(0.050, 0.020)) }},
	{What: "When two simulations agree, for u = 0.00035", Source: jcgm101("7.9.2, example 1"), Status: Memory, Printed: "5e-6", Tol: 1e-12, Got: func() float64 { return doubt.Tolerance(0.00035) }},
}

// simulated is the summary of a simulation.
type simulated struct {
	mean, u, lo, hi, median float64
	under                   float64 // the chance of less than 2,680
}

// trialsEach is enough to see a slip, and few enough to run whenever the site is
// built.
const trialsEach = 200_000

// simulate runs that many trials when first asked, and once.
func simulate(coverage float64, draw func(*rand.Rand) float64) func() simulated {
	return sync.OnceValue(func() (s simulated) {
		sim := doubt.NewSimulation(draw)
		sim.Run(trialsEach)
		s.mean, s.u, s.lo, s.hi, s.median = sim.Summary(coverage)
		s.under = sim.Probability(2680)
		return s
	})
}

// uniform draws a quantity within ±a.
func uniform(r *rand.Rand, a float64) float64 { return a * (2*r.Float64() - 1) }

var (
	uDifference = comparison().U()
	gaugeTrials = simulate(0.99, func(r *rand.Rand) float64 {
		ls := standard + 25*r.NormFloat64()
		cycle := 0.5 * math.Sin(2*math.Pi*r.Float64()) // arcsine, ±0.5 °C
		t := theta + 0.2*r.NormFloat64() + cycle
		return ls + difference + uDifference*r.NormFloat64() -
			ls*(uniform(r, 1e-6)*t+(alpha+uniform(r, 2e-6))*uniform(r, 0.05))
	})
	massTrials = simulate(0.95, func(r *rand.Rand) float64 {
		mR, dmR := 100_000+0.050*r.NormFloat64(), 1.234+0.020*r.NormFloat64() // mg
		air := 1.20 + uniform(r, 0.10)                                        // kg/m³
		weight, reference := 8000+uniform(r, 1000), 8000+uniform(r, 50)
		return (mR+dmR)*(1+(air-1.2)*(1/weight-1/reference)) - 100_000
	})
	normalTrials  = simulate(0.95, fourNormal.Draw)
	limitTrials   = simulate(0.95, fourLimits.Draw)
	wideTrials    = simulate(0.95, oneWide.Draw)
	readingTrials = simulate(0.95, wholeReading.Draw)
	gainTrials    = simulate(0.95, func(r *rand.Rand) float64 { return 100 * withStep.Draw(r) })
)

// drawn picks one figure of a summary.
func drawn(s func() simulated, pick func(simulated) float64) func() float64 {
	return func() float64 { return pick(s()) }
}

func mean(s simulated) float64   { return s.mean }
func u(s simulated) float64      { return s.u }
func lo(s simulated) float64     { return s.lo }
func hi(s simulated) float64     { return s.hi }
func median(s simulated) float64 { return s.median }

// trials are by simulation. What agrees allows for its scatter, four standard
// errors or so.
var trials = []Check{
	{What: "Trials of the end gauge: length", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "50000838", Tol: 0.4, Got: drawn(gaugeTrials, mean)},
	{What: "Its standard uncertainty with products of small terms", Source: gum("H.1"), Status: Read, Unit: "nm", Printed: "34", Got: drawn(gaugeTrials, u)},
	{What: "The same, more digits", Source: gum("H.1, inputs"), Status: Computed, Unit: "nm", Printed: "33.801189", Tol: 0.25, Got: drawn(gaugeTrials, u)},
	{What: "Trials of four normal quantities: u", Source: jcgm101("9.2.2, Table 2"), Status: Read, Printed: "2.00", Tol: 0.015, Got: drawn(normalTrials, u)},
	{What: "Their lower end, 95 %", Source: jcgm101("9.2.2, Table 2"), Status: Read, Printed: "-3.92", Tol: 0.05, Got: drawn(normalTrials, lo)},
	{What: "Their upper end, 95 %", Source: jcgm101("9.2.2, Table 2"), Status: Read, Printed: "3.92", Tol: 0.05, Got: drawn(normalTrials, hi)},
	{What: "Trials of four equal limits: u", Source: jcgm101("9.2.3, Table 3"), Status: Read, Printed: "2.00 to 2.01", Tol: 0.01, Got: drawn(limitTrials, u)},
	{What: "Their lower end, 95 %", Source: jcgm101("9.2.3, inputs"), Status: Computed, Printed: "-3.879407", Tol: 0.05, Got: drawn(limitTrials, lo)},
	{What: "Their upper end, 95 %", Source: jcgm101("9.2.3, inputs"), Status: Computed, Printed: "3.879407", Tol: 0.05, Got: drawn(limitTrials, hi)},
	{What: "Trials of one limit ten times as wide: u", Source: jcgm101("9.2.4, Table 4"), Status: Read, Printed: "10.1 to 10.2", Got: drawn(wideTrials, u)},
	{What: "Its lower end, 95 %", Source: jcgm101("9.2.4, Table 4"), Status: Read, Printed: "-17.0", Tol: 0.08, Got: drawn(wideTrials, lo)},
	{What: "Its upper end, 95 %", Source: jcgm101("9.2.4, Table 4"), Status: Read, Printed: "17.0", Tol: 0.08, Got: drawn(wideTrials, hi)},
	{What: "Trials of the mass: mean", Source: jcgm101("9.3, Table 6"), Status: Read, Unit: "mg", Printed: "1.2341", Tol: 7e-4, Got: drawn(massTrials, mean)},
	{What: "Its u (simulated there too)", Source: jcgm101("9.3, Table 6"), Status: Read, Unit: "mg", Printed: "0.0754", Tol: 7e-4, Got: drawn(massTrials, u)},
	{What: "The same, more digits", Source: "moments of the densities, with 25 digits", Status: Computed, Unit: "mg", Printed: "0.0754797", Tol: 6e-4, Got: drawn(massTrials, u)},
	{What: "Its lower end, 95 % (there the shortest interval, whose ends scatter most)", Source: jcgm101("9.3, Table 6"), Status: Read, Unit: "mg", Printed: "1.0834", Tol: 3e-3, Got: drawn(massTrials, lo)},
	{What: "Its upper end, 95 % (the same)", Source: jcgm101("9.3, Table 6"), Status: Read, Unit: "mg", Printed: "1.3825", Tol: 3e-3, Got: drawn(massTrials, hi)},
	{What: "Its lower end, 95 %", Source: quadrature, Status: Computed, Unit: "mg", Printed: "1.084433", Tol: 2e-3, Got: drawn(massTrials, lo)},
	{What: "Its upper end, 95 %", Source: quadrature, Status: Computed, Unit: "mg", Printed: "1.383567", Tol: 2e-3, Got: drawn(massTrials, hi)},
	{What: "Trials of the gain, one gauge, dead weight of 0 to 30 %, read to 10 psi, lower end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "10.1365", Tol: 0.03, Got: drawn(gainTrials, lo)},
	{What: "The same, upper end, 95 %", Source: quadrature, Status: Computed, Unit: "%", Printed: "13.4107", Tol: 0.03, Got: drawn(gainTrials, hi)},
	{What: "Trials of 2,610 with ±80, ±5, ±24 and repeats: lower end, 95 %", Source: quadrature, Status: Computed, Printed: "2523.693", Tol: 0.45, Got: drawn(readingTrials, lo)},
	{What: "The same, upper end, 95 %", Source: quadrature, Status: Computed, Printed: "2696.307", Tol: 0.45, Got: drawn(readingTrials, hi)},
	{What: "The same, median", Source: "the distribution's symmetry", Status: Computed, Printed: "2610", Tol: 0.9, Got: drawn(readingTrials, median)},
	{What: "The same: chance of under 2,680", Source: quadrature, Status: Computed, Unit: "%", Printed: "92.0214", Tol: 0.25, Got: func() float64 { return 100 * readingTrials().under }},
}
