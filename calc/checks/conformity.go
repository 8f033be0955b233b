package checks

import "plainlift/calc/doubt"

// decision names a clause of the guide to conformity assessment.
func decision(clause string) string { return "JCGM 106:2012, " + clause }

// within returns the chance that a quantity measured as y, with the normal
// standard uncertainty u, is from low to high.
func within(y, u, low, high float64) float64 {
	_, p, _ := doubt.Sum{Mid: y, Scale: u, DOF: inf}.Dist().Within(low, high)
	return p
}

func z(p float64) func() float64 { return func() float64 { return doubt.NormalQuantile(p) } }

// guarded is the upper acceptance limit under a limit of 250, with U = 4 and
// u = 2.
func guarded() float64 {
	_, to := doubt.AcceptanceLimits(-inf, 250, doubt.GuardBand(4, 1))
	return to
}

// rejected is the reading from which a value is over 100 with a given chance,
// its standard uncertainty being 2 % of it.
func rejected(p float64) float64 { return 100 / (1 - 0.02*doubt.NormalQuantile(p)) }

var conformity = []Check{
	{What: "z for a one-sided 80 %", Source: decision("Table 1"), Status: Read, Printed: "0.84", Got: z(0.80)},
	{What: "z for a one-sided 90 %", Source: decision("Table 1"), Status: Read, Printed: "1.28", Got: z(0.90)},
	{What: "z for a one-sided 95 %", Source: decision("Table 1"), Status: Read, Printed: "1.64", Got: z(0.95)},
	{What: "z for a one-sided 99 %", Source: decision("Table 1"), Status: Read, Printed: "2.33", Got: z(0.99)},
	{What: "z for a one-sided 99.9 %", Source: decision("Table 1"), Status: Read, Printed: "3.09", Got: z(0.999)},
	{What: "z for 80 %, more digits", Source: decision("Table 1, inputs"), Status: Computed, Printed: "0.841621", Got: z(0.80)},
	{What: "z for 90 %, more digits", Source: decision("Table 1, inputs"), Status: Computed, Printed: "1.281552", Got: z(0.90)},
	{What: "z for 95 %, more digits", Source: decision("Table 1, inputs"), Status: Computed, Printed: "1.644854", Got: z(0.95)},
	{What: "z for 99 %, more digits", Source: decision("Table 1, inputs"), Status: Computed, Printed: "2.326348", Got: z(0.99)},
	{What: "z for 99.9 %, more digits", Source: decision("Table 1, inputs"), Status: Computed, Printed: "3.090232", Got: z(0.999)},
	{What: "Chance of being under −5.40, measured −5.47 with u 0.05", Source: decision("7.3, example 1"), Status: Read, Printed: "0.92", Got: func() float64 { return within(-5.47, 0.05, -inf, -5.40) }},
	{What: "The same, more digits", Source: decision("7.3, example 1, inputs"), Status: Computed, Printed: "0.919243341", Got: func() float64 { return within(-5.47, 0.05, -inf, -5.40) }},
	{What: "Chance of being from 12.5 to 16.3, measured 13.6 with u 1.8", Source: decision("7.4"), Status: Read, Printed: "0.66", Got: func() float64 { return within(13.6, 1.8, 12.5, 16.3) }},
	{What: "The same, more digits", Source: decision("7.4, inputs"), Status: Computed, Printed: "0.662629786", Got: func() float64 { return within(13.6, 1.8, 12.5, 16.3) }},
	{What: "Capability index at a band of four standard uncertainties", Source: decision("7.6, C = T/(4u)"), Status: Read, Printed: "1", Tol: 1e-12, Got: func() float64 { return doubt.MeasurementCapability(1, 0.25) }},
	{What: "Capability index where U is a third of the permissible error", Source: decision("8.2.3"), Status: Read, Printed: "3", Tol: 1e-12, Got: func() float64 { return doubt.MeasurementCapability(2*0.9, 0.3/2) }},
	{What: "Least conformity within 0.45 to 0.55 of the band, at index 1", Source: decision("7.7.5"), Status: Read, Printed: "0.95", Got: func() float64 { return within(0.45, 0.25, 0, 1) }},
	{What: "The same, more digits", Source: decision("7.7.5, inputs"), Status: Computed, Printed: "0.950166", Got: func() float64 { return within(0.45, 0.25, 0, 1) }},
	{What: "Conformity at the middle of the band, at index 1", Source: decision("7.7.5, inputs"), Status: Computed, Printed: "0.954500", Got: func() float64 { return within(0.5, 0.25, 0, 1) }},
	{What: "Simple acceptance: chance of being wrong at the limit", Source: decision("8.3.1.2"), Status: Read, Unit: "%", Printed: "50", Tol: 1e-9, Got: func() float64 { return 100 * (1 - within(250, 2, -inf, 250)) }},
	{What: "Guard band of U: chance of a false acceptance at its edge", Source: decision("8.3.2.3"), Status: Read, Unit: "%", Printed: "2.3", Got: func() float64 { return 100 * (1 - within(guarded(), 2, -inf, 250)) }},
	{What: "The same, more digits", Source: decision("8.3.2.3, inputs"), Status: Computed, Unit: "%", Printed: "2.27501", Got: func() float64 { return 100 * (1 - within(guarded(), 2, -inf, 250)) }},
	{What: "Guard band of U = 4: limit less acceptance limit", Source: "ILAC-G8:09/2019, 4.1", Status: Read, Printed: "4", Tol: 1e-12, Got: func() float64 { return 250 - guarded() }},
	{What: "The same at a lower limit: acceptance limit less limit", Source: "ILAC-G8:09/2019, 4.1", Status: Read, Printed: "4", Tol: 1e-12, Got: func() float64 {
		from, _ := doubt.AcceptanceLimits(200, inf, doubt.GuardBand(4, 1))
		return from - 200
	}},
	{What: "Part of U that keeps false acceptance to 5 % (printed rounded up)", Source: "ILAC-G8:09/2019, Table 1, for ISO 14253-1:2017", Status: Memory, Printed: "0.83", Tol: 0.01, Got: func() float64 { return doubt.NormalQuantile(0.95) / 2 }},
	{What: "The same, more digits", Source: "half of z for 95 %", Status: Computed, Printed: "0.822427", Got: func() float64 { return doubt.NormalQuantile(0.95) / 2 }},
	{What: "Reading that shows with 99.9 % that 100 is passed", Source: decision("8.3.3, example 1"), Status: Read, Printed: "107", Got: func() float64 { return rejected(0.999) }},
	{What: "The same, more digits", Source: decision("8.3.3, example 1, inputs"), Status: Computed, Printed: "106.58761", Got: func() float64 { return rejected(0.999) }},
	{What: "Chance of being over 100 at that reading", Source: decision("8.3.3, example 1"), Status: Read, Unit: "%", Printed: "99.9", Tol: 1e-4, Got: func() float64 { y := 106.58761; return 100 * within(y, 0.02*y, 100, inf) }},
	{What: "Coverage of one standard deviation", Source: decision("Annex A"), Status: Read, Unit: "%", Printed: "68.3", Got: func() float64 { return 100 * within(0, 1, -1, 1) }},
	{What: "Coverage of two (95.45 rounded up)", Source: decision("Annex A"), Status: Read, Unit: "%", Printed: "95.5", Tol: 0.051, Got: func() float64 { return 100 * within(0, 1, -2, 2) }},
	{What: "Coverage of three", Source: decision("Annex A"), Status: Read, Unit: "%", Printed: "99.7", Got: func() float64 { return 100 * within(0, 1, -3, 3) }},
	{What: "Coverage of one, more digits", Source: "error function with 25 digits", Status: Computed, Unit: "%", Printed: "68.2689492", Got: func() float64 { return 100 * within(0, 1, -1, 1) }},
	{What: "Coverage of two, more digits", Source: "error function with 25 digits", Status: Computed, Unit: "%", Printed: "95.4499736", Got: func() float64 { return 100 * within(0, 1, -2, 2) }},
	{What: "Coverage of three, more digits", Source: "error function with 25 digits", Status: Computed, Unit: "%", Printed: "99.7300204", Got: func() float64 { return 100 * within(0, 1, -3, 3) }},
}
