package doubt

import "math"

// Within returns the probabilities that the true value is under low, from low
// to high, and over high; they sum to 1. An absent limit is −Inf or +Inf. They
// are NaN when low is above high.
//
// Source: JCGM 106:2012, 7.4: p_c = F(high) − F(low).
func (d *Dist) Within(low, high float64) (below, within, above float64) {
	if !(low <= high) {
		return math.NaN(), math.NaN(), math.NaN()
	}
	below, above = d.CDF(low), 1-d.CDF(high)
	if low == d.mid && d.point() {
		below = 0 // known to be at the limit, which conforms
	}
	return below, max(0, 1-below-above), above
}

// point reports whether all of the probability is at one value.
func (d *Dist) point() bool { return d.reach == 0 && d.base.scale == 0 }

// GuardBand returns the width r·U that a decision keeps from a limit, with U
// the expanded uncertainty (the older ISO 14253-1 takes r = 1). r = 1 holds the chance of a false acceptance at
// the edge to 2.3 % for a normal distribution and U = 2u; r = 0 is simple
// acceptance, up to 50 %.
//
// Source: JCGM 106:2012, 8.3.2.3.
func GuardBand(expanded, r float64) float64 { return r * expanded }

// AcceptanceLimits returns the limits for a measured value that keep the guard
// band inside low and high. Either may be infinite. They are NaN when nothing
// is left between them.
//
// Source: JCGM 106:2012, 8.3.2, clause from memory.
func AcceptanceLimits(low, high, guard float64) (from, to float64) {
	from, to = low+guard, high-guard
	if !(from <= to) {
		return math.NaN(), math.NaN()
	}
	return from, to
}

// MeasurementCapability returns C_m = T/(4u), for a band of the given width T
// and the standard uncertainty u in the same unit. It is +Inf at u = 0.
//
// Source: JCGM 106:2012, 7.6.
func MeasurementCapability(width, u float64) float64 { return width / (4 * u) }
