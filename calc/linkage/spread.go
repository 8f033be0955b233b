package linkage

import (
	"math"

	"plainlift/calc/doubt"
)

// Limits are the ± within which the true values lie, all equally likely.
type Limits struct {
	Tape       float64 // of every length and height that a tape takes, each on its own (m)
	Efficiency float64 // of the efficiency
	Weight     float64 // of the weights of boom and tool, each on its own, as a fraction
	Pressure   float64 // of the pressure at the piston (Pa)
}

// moved are the measures that a Spread moves, in the order of its budgets.
// Bore and rod are made sizes, and the height is where the reader asks.
const moved = ToolW + 1

// Spread is a loader with each of its measures moved a little both ways.
type Spread struct {
	arc      Arc
	pressure float64 // ± (Pa)
	half     [moved]float64
	step     [moved]float64
	arcs     [moved][2]Arc
}

// Spread returns the loader with its measures moved, worked out once for all
// heights and pressures.
func (l Loader) Spread(within Limits) *Spread {
	s := &Spread{arc: l.Arc(), pressure: within.Pressure}
	for m := range moved {
		v := *l.value(m)
		switch m {
		case Efficiency:
			s.half[m] = within.Efficiency
		case BoomW, ToolW:
			s.half[m] = within.Weight * v
		default:
			s.half[m] = within.Tape
		}
		// By its standard uncertainty; a little, only for the coefficient, where there is none.
		s.step[m] = doubt.Rect(s.half[m])
		if s.step[m] == 0 {
			s.step[m] = 1e-6 * max(1, math.Abs(v))
		}
		for i, by := range [2]float64{-s.step[m], s.step[m]} {
			other := l
			*other.value(m) += by
			s.arcs[m][i] = other.Arc()
		}
	}
	return s
}

// SpreadPose is a Spread with the bucket pin at one height.
type SpreadPose struct {
	Pose
	spread *Spread
	poses  [moved][2]Pose
}

// At returns the loader and its moved likes with the bucket pin at height h (m).
func (s *Spread) At(h float64) *SpreadPose {
	at := &SpreadPose{Pose: s.arc.At(h), spread: s}
	for m := range moved {
		for i := range at.poses[m] {
			at.poses[m][i] = s.arcs[m][i].At(h)
		}
	}
	return at
}

// Budget returns the doubt of Lift(p, back), N: one source for each measure, in
// the order of the Measures, then Pressure. The sensitivity coefficients are
// half the difference between the lift with a measure a standard uncertainty
// larger and smaller; where one of the two loaders cannot be, the difference to
// the other; NaN where neither can.
//
// Source: JCGM 100:2008, 5.1.3, note 2 (from memory).
func (at *SpreadPose) Budget(p, back float64) doubt.Budget {
	b := at.spread.budget(at.Lift(p, back), func(m Measure, i int) float64 { return at.poses[m][i].Lift(p, back) })
	return append(b, doubt.Source{Name: Pressure.String(), U: doubt.Rect(at.spread.pressure), Sens: at.Slope(), DOF: math.Inf(1)})
}

// Top returns the doubt of the greatest height of the bucket pin, m: one source
// for each measure, in the order of the Measures. Hangs tells which
// measurement that hangs on.
func (s *Spread) Top() doubt.Budget {
	_, top := s.arc.Range()
	return s.budget(top, func(m Measure, i int) float64 {
		_, top := s.arcs[m][i].Range()
		return top
	})
}

// budget puts together what the moved measures do to a value.
func (s *Spread) budget(value float64, other func(m Measure, i int) float64) doubt.Budget {
	b := make(doubt.Budget, moved, moved+1)
	for m := range moved {
		b[m] = doubt.Source{Name: m.String(), U: doubt.Rect(s.half[m]), Sens: slope(value, other(m, 0), other(m, 1), s.step[m]), DOF: math.Inf(1)}
	}
	return b
}

// Hangs returns the measure of a tape that brings the most doubt into a budget.
func Hangs(b doubt.Budget) Measure {
	hangs, most := PivotH, 0.0
	for m := range LoadX + 1 {
		switch u := math.Abs(b[m].Sens * b[m].U); {
		case math.IsNaN(u):
			return m
		case u > most:
			hangs, most = m, u
		}
	}
	return hangs
}

// slope returns the central difference over ±step, one-sided where a side is NaN.
func slope(value, less, more, step float64) float64 {
	switch {
	case math.IsNaN(less):
		return (more - value) / step
	case math.IsNaN(more):
		return (value - less) / step
	}
	return (more - less) / (2 * step)
}

// HalfWidth returns the ± of Lift(p, back) that holds 95 % of what the doubt
// allows, N: 1.96 standard uncertainties, as many terms together come close to
// a normal distribution, but no more than all limits at once.
func (at *SpreadPose) HalfWidth(p, back float64) float64 {
	s := at.spread
	value := at.Lift(p, back)
	u, most := doubt.Rect(s.pressure)*at.Slope(), s.pressure*math.Abs(at.Slope())
	u *= u
	for m := range moved {
		c := slope(value, at.poses[m][0].Lift(p, back), at.poses[m][1].Lift(p, back), s.step[m])
		most += math.Abs(c) * s.half[m]
		c *= s.half[m]
		u += c * c / 3 // half²/3 is u²
	}
	return min(normal95*math.Sqrt(u), most)
}

// normal95 is the coverage factor for 95 % of a normal distribution.
const normal95 = 1.959963984540054
