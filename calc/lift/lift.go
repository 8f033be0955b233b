// Package lift says what a pressure does to what a loader lifts at one height
// and one reach.
//
// By virtual work the cylinders' force and everything it holds up balance at
// every height, so at one height the load is a straight line in pressure:
//
//	L(p) = b·p − dead
//
// dead is what the pressure holds up besides the load (arms, tool), referred to
// the point where the load hangs. Friction is left out, and the load is one that
// is held or just moves. Forces are in newton, pressures in pascal, shares are
// fractions. Anything outside its domain gives NaN.
package lift

import "math"

// Rating is a lift that is known at one pressure.
type Rating struct {
	Load float64 // what hung at the point (N)
	Dead float64 // what was held up besides, referred to the same point (N)
	At   float64 // the pressure it was rated or measured at (Pa, above 0)
}

// Slope returns how much load one pascal lifts, N/Pa:
//
//	b = (load + dead)/at
//
// It is NaN when At is not above 0.
//
// Source: virtual work, F·dℓ = L·dy + Σ W·dy at one height; the identity is
// common to textbooks of statics.
func (r Rating) Slope() float64 {
	if !(r.At > 0) {
		return math.NaN()
	}
	return (r.Load + r.Dead) / r.At
}

// Lift returns the load that a pressure p (Pa) lifts, N:
//
//	L(p) = (load + dead)·p/at − dead
//
// It is negative where the pressure does not even hold up the arms and the tool.
func (r Rating) Lift(p float64) float64 {
	if !(r.At > 0) {
		return math.NaN()
	}
	// Load exactly at At, whatever the dead weight.
	return r.Load + r.Slope()*(p-r.At)
}

// Gain returns how much more load the target pressure lifts than the pressure
// now, N, both in pascal: b·(target − now).
func (r Rating) Gain(now, target float64) float64 {
	return r.Slope() * (target - now)
}

// GainShare returns the gain as a fraction of the lift now. It is NaN when the
// arms and the tool take all the pressure there is, that is when the lift now
// is not above 0.
func (r Rating) GainShare(now, target float64) float64 {
	lift := r.Lift(now)
	if !(lift > 0) {
		return math.NaN()
	}
	return r.Gain(now, target) / lift
}

// Share returns the gain in lift, as a fraction of the lift before, that a
// change of pressure gives:
//
//	(1 + d)·(after/before − 1)
//
// before and after are pressures (Pa, before above 0); d is dead weight ÷ lift
// before. At d = 0 it is the floor: so many percent of pressure, so many percent
// of lift.
func Share(before, after, d float64) float64 {
	if !(before > 0) {
		return math.NaN()
	}
	return (1 + d) * (after/before - 1)
}

// Needed returns the pressure that a gain in lift would have taken, Pa:
//
//	before·(1 + gain/(1 + d))
//
// before is a pressure (Pa, above 0), gain a fraction of the lift before, d the
// dead weight ÷ lift before (above −1). It undoes Share.
func Needed(before, gain, d float64) float64 {
	if !(before > 0) || !(d > -1) {
		return math.NaN()
	}
	return before * (1 + gain/(1+d))
}

// DeadNeeded returns the dead weight, as a multiple of the lift before, with
// which a change of pressure would explain a gain:
//
//	gain/(after/before − 1) − 1
//
// It is NaN when the pressure did not change: then nothing explains it.
func DeadNeeded(before, after, gain float64) float64 {
	if !(before > 0) || after == before {
		return math.NaN()
	}
	return gain/(after/before-1) - 1
}

// Closer returns how much nearer the pivot the same load would have to hang to
// be lifted without the gain, m:
//
//	reach·gain/lift
//
// reach is pivot to load, level (m, above 0); gain and lift, the gain and the
// lift at the higher pressure (N, lift above 0). The moment of the load about
// the pivot is what the cylinders hold, and the dead weight stays where it is.
func Closer(reach, gain, lift float64) float64 {
	if !(reach > 0) || !(lift > 0) {
		return math.NaN()
	}
	return reach * gain / lift
}
