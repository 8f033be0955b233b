package checks

import (
	"math"

	"plainlift/calc/relief"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

const (
	inch = 0.0254
	lbf  = 4.4482216152605
	psi  = 6894.757293168361
	thou = inch / 1000
	mpsi = 1e6 * psi
)

// The valve of Esposito's Ex. 8-1.
const (
	valveRate = 2500 * lbf / inch
	valveSeat = 0.75 * inch * inch
)

const (
	bhandari = "Bhandari, Design of Machine Elements, Ex. 10.1"
	shigley  = "Shigley, Mechanical Engineering Design, Ex. 10-1"
	esposito = "Esposito, Fluid Power with Applications, Ex. 8-1"
)

// designed is the rate of Bhandari's spring, N/m.
func designed() float64 { return relief.SpringRate(81_370e6, 0.007, 0.042, 8) }

// music returns the rate of Shigley's spring, lbf/in, for a mean diameter in
// inch.
func music(meanDia float64) func() float64 {
	return func() float64 {
		const wire = 0.037 * inch
		return relief.SpringRate(relief.ShearModulus("music", wire), wire, meanDia*inch, 10.5) / (lbf / inch)
	}
}

func cracking() float64 {
	return relief.CrackingPressure(valveRate, 0.20*inch, valveSeat) / psi
}

// modulus returns the shear modulus of a wire of so many inch, Mpsi.
func modulus(material string, wire float64) func() float64 {
	return func() float64 { return relief.ShearModulus(material, wire*inch) / mpsi }
}

var springs = []Check{
	{What: "Deflection of a spring at 1250 N, which was to be 30 mm (wire and coils are rounded up)", Source: bhandari, Status: Read, Unit: "mm", Printed: "30", Tol: 0.4, Got: func() float64 { return 1250 / designed() * 1000 }},
	{What: "The same, more digits", Source: bhandari + ", inputs", Status: Computed, Unit: "mm", Printed: "30.33761126", Got: func() float64 { return 1250 / designed() * 1000 }},
	{What: "Rate of that spring", Source: bhandari + ", inputs", Status: Computed, Unit: "N/mm", Printed: "41.20298032", Got: func() float64 { return designed() / 1000 }},
	{What: "Rate of a music wire spring", Source: shigley, Status: Memory, Unit: "lbf/in", Printed: "4.13", Got: music(0.400)},
	{What: "The same, more digits", Source: shigley + ", inputs from memory", Status: Computed, Unit: "lbf/in", Printed: "4.131103", Got: music(0.400)},
	{What: "The same, the mean diameter not rounded", Source: shigley + ", inputs from memory", Status: Computed, Unit: "lbf/in", Printed: "4.115650", Got: music(0.4005)},
}

// valves are a relief valve and what shims do to it.
var valves = []Check{
	{What: "Cracking pressure", Source: esposito, Status: Read, Unit: "psi", Printed: "667", Got: cracking},
	{What: "The same, more digits", Source: esposito + ", inputs", Status: Computed, Unit: "psi", Printed: "666.6666666667", Got: cracking},
	{What: "Full-flow pressure", Source: esposito, Status: Read, Unit: "psi", Printed: "1000", Got: func() float64 { return relief.FullFlow(valveRate, 0.20*inch, 0.10*inch, valveSeat) / psi }},
	{What: "What 0.010 in of shim adds to that valve", Source: esposito + ", inputs", Status: Computed, Unit: "psi", Printed: "33.33", Got: func() float64 { return relief.ShimRate(valveRate, valveSeat) * 10 * thou / psi }},
	{What: "Shim that adds 100 psi to that valve", Source: esposito + ", inputs", Status: Computed, Unit: "in", Printed: "0.030", Tol: 1e-12, Got: func() float64 { return 100 * psi / relief.ShimRate(valveRate, valveSeat) / inch }},
	{What: "Seat of 1.5 in: area", Source: "π·1.5²/4", Status: Computed, Unit: "in²", Printed: "1.767145867644", Got: func() float64 { return relief.SeatArea(1.5*inch) / square(inch) }},
	{What: "What 0.010 in of shim adds when nothing is known of the valve", Status: CommonPractice, Unit: "psi", Printed: "40 to 50", Got: usual},
	{What: "Shim readings: rate", Source: normalEquations, Status: Computed, Unit: "psi per 0.010 in", Printed: "45.0714285714", Got: func() float64 { return readings().Rate * 10 * thou / psi }},
	{What: "Its standard uncertainty", Source: normalEquations, Status: Computed, Unit: "psi per 0.010 in", Printed: "2.67261241912", Got: func() float64 { return readings().RateU * 10 * thou / psi }},
	{What: "Shim readings: pressure with none added", Source: normalEquations, Status: Computed, Unit: "psi", Printed: "2610.26190476", Got: func() float64 { return readings().Datum / psi }},
	{What: "Its standard uncertainty", Source: normalEquations, Status: Computed, Unit: "psi", Printed: "6.3620901028", Got: func() float64 { return readings().DatumU / psi }},
	{What: "Covariance of pressure and rate", Source: normalEquations, Status: Computed, Unit: "psi² per 0.010 in", Printed: "-7.14285714286", Got: func() float64 { return readings().Cov * 10 * thou / square(psi) }},
	{What: "Shim readings: pressure with 0.025 in", Source: normalEquations, Status: Computed, Unit: "psi", Printed: "2722.94047619", Got: func() float64 { m, _ := readings().At(25 * thou); return m / psi }},
	{What: "Its standard uncertainty", Source: normalEquations, Status: Computed, Unit: "psi", Printed: "7.02885210435", Got: func() float64 { _, s := readings().At(25 * thou); return s / psi }},
	{What: "Shim readings: thickness for 2,735 psi", Source: normalEquations, Status: Computed, Unit: "in", Printed: "0.027675647121", Got: func() float64 { return readings().Thickness(2735*psi) / inch }},
	{What: "Chance of over 2,790 at 2,700 ± 10, gauge ±80", Source: quadrature, Status: Computed, Unit: "%", Printed: "0.52072169117", Got: over(2700, 10)},
	{What: "Chance of over 2,790 at 2,760 ± 10, gauge ±80", Source: quadrature, Status: Computed, Unit: "%", Printed: "31.25000033413", Got: over(2760, 10)},
	{What: "Chance of over 2,790 at 2,735 ± 25, gauge ±80", Source: quadrature, Status: Computed, Unit: "%", Printed: "16.92680413722", Got: over(2735, 25)},
	{What: "Chance of over 2,790 at 2,760 exactly, gauge ±80", Source: "(80 − 30)/160", Status: Computed, Unit: "%", Printed: "31.25", Tol: 1e-9, Got: over(2760, 0)},
	{What: "Chance of under 2,680 at 2,610 ± 10, gauge ±80", Source: quadrature, Status: Computed, Unit: "%", Printed: "93.22927830883", Got: func() float64 { return 100 * relief.PUnder(2610, 10, 80, 2680) }},
	{What: "Shim readings: thickness that leaves 5 % over 2,790, gauge ±80", Source: normalEquations + "; numerical integration", Status: Computed, Unit: "in", Printed: "0.023799341281", Got: func() float64 {
		return readings().Safe(20*thou, 2735*psi, 2790*psi, 80*psi, 0.05) / inch
	}},
	{What: "Shim rate from a spring, good to ±15 %: standard uncertainty of 100", Source: "15/√3", Status: Computed, Printed: "8.660254", Got: func() float64 { return relief.Within(100, 0.15).SD }},
	{What: "Half-width, 95 %, of ± 10 and a gauge ±80", Source: quadrature, Status: Computed, Printed: "79.97886343", Got: func() float64 { return relief.HalfWidth(10, 80, 0.95) }},
}

const normalEquations = "the normal equations with the rule as a first belief, as fractions"

// readings is a valve that read 2,610 psi, 2,655 with 0.010 in and 2,701 with
// 0.020 in, each good to 10, with the usual rate as a first belief.
func readings() relief.Line {
	const per = psi / (10 * thou)
	return relief.Fit(2610*psi, []relief.Trial{{T: 10 * thou, P: 2655 * psi}, {T: 20 * thou, P: 2701 * psi}},
		10*psi, relief.Between(40*per, 50*per))
}

// usual is the rate that the shim worksheet works with until it is told more,
// in psi per 0.010 in.
func usual() float64 {
	rate := worksheets.All.Evaluate("shim", nil, unit.US).Figure("rate")
	if rate == nil {
		return math.NaN()
	}
	return count(rate.Value) * 10 * thou / psi
}

// over returns the chance, in percent, of truly being over 2,790 when m ± sigma
// is expected and the gauge is good to ±80.
func over(m, sigma float64) func() float64 {
	return func() float64 { return 100 * relief.POver(m, sigma, 80, 2790) }
}
