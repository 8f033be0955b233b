package checks

import "plainlift/calc/lift"

const (
	moments = "equal moments about the pivot, as fractions"
	byHand  = "arithmetic, as fractions"
)

// loader is an arm worked by hand from moments: a cylinder of 12 in² pulls 11 in
// from the pivot, the load hangs 100 in out, and 400 lbf of arm sits at 55 in,
// which is 220 lbf at the load. At 2,610 psi it lifts 3225.2 lbf. In psi and lbf.
var loader = lift.Rating{Load: 3225.2, Dead: 220, At: 2610}

const (
	now, target = 2610.0, 2735.0
	deadNow     = 220 / 3225.2
)

var lifts = []Check{
	{What: "Loader arm: load at 2,735 psi", Source: moments, Status: Computed, Unit: "lbf", Printed: "3390.2", Tol: 1e-9, Got: func() float64 { return loader.Lift(target) }},
	{What: "Loader arm: what 100 psi lifts", Source: moments, Status: Computed, Unit: "lbf", Printed: "132", Tol: 1e-9, Got: func() float64 { return 100 * loader.Slope() }},
	{What: "Loader arm: gain from 2,610 to 2,735 psi", Source: moments, Status: Computed, Unit: "lbf", Printed: "165", Tol: 1e-9, Got: func() float64 { return loader.Gain(now, target) }},
	{What: "The same, of the lift now", Source: moments, Status: Computed, Unit: "%", Printed: "5.1159618008", Got: func() float64 { return 100 * loader.GainShare(now, target) }},
	{What: "How much nearer the load does as much", Source: moments, Status: Computed, Unit: "in", Printed: "4.8669695003", Got: func() float64 { return lift.Closer(100, loader.Gain(now, target), loader.Lift(target)) }},
	{What: "Lift at full relief from lift reported at 90 % of it", Source: "the rule of OECD Code 2, reported ÷ 0.9", Status: Memory, Printed: "1.111111111111", Got: func() float64 { return lift.Rating{Load: 1, At: 0.9}.Lift(1) }},
}

var gains = []Check{
	{What: "What 250 psi more lift on a small loader, here one of 1,580 lb at 2,735 psi", Status: CommonPractice, Unit: "lb", Printed: "150", Tol: 10, Got: func() float64 { return lift.Rating{Load: 1580, At: 2735}.Gain(2450, 2700) }},
	{What: "What two percent more pressure adds to the lift, as the rule goes: about as much", Status: CommonPractice, Unit: "%", Printed: "2", Tol: 0.1, Got: func() float64 { return 100 * lift.Share(2500, 2550, 0) }},
	{What: "The same, with a dead weight of 30 % of the lift", Source: byHand, Status: Computed, Unit: "%", Printed: "2.6", Tol: 1e-10, Got: func() float64 { return 100 * lift.Share(2500, 2550, 0.30) }},
	{What: "The loader arm's gain, from its dead weight as a part of the lift", Source: moments, Status: Computed, Unit: "%", Printed: "5.1159618008", Got: func() float64 { return 100 * lift.Share(now, target, deadNow) }},
	{What: "Pressure at which the loader arm lifts 30 % more than at 2,610 psi", Source: moments, Status: Computed, Unit: "psi", Printed: "3343", Tol: 1e-9, Got: func() float64 { return lift.Needed(now, 0.30, deadNow) }},
	{What: "Dead weight, in lifts, with which 2,450 to 2,700 psi gives 30 %", Source: byHand, Status: Computed, Printed: "1.94", Tol: 1e-12, Got: func() float64 { return lift.DeadNeeded(2450, 2700, 0.30) }},
	{What: "The gain with that dead weight", Source: byHand, Status: Computed, Unit: "%", Printed: "30", Tol: 1e-10, Got: func() float64 { return 100 * lift.Share(2450, 2700, 1.94) }},
}
