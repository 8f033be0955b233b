package doubt

import "math"

// Sum is a value with several independent causes of doubt, for its
// distribution rather than its standard uncertainty alone. All in one unit.
type Sum struct {
	Mid   float64   // the value
	Rects []float64 // half-widths of limits within which all is equally likely; 0 adds nothing
	Scale float64   // of a t term: s/√n for a mean of repeats; 0 for none
	DOF   float64   // of the t term: n − 1; +Inf makes it normal; unused when Scale is 0
}

// negligible is the width relative to the widest at which a term is left out;
// it changes no probability by more than about as much.
const negligible = 1e-9

// Dist is the distribution of a Sum. It is symmetric about the value.
type Dist struct {
	mid   float64
	base  base
	table table // when base does not hold every term
	reach float64
}

// Dist works out the distribution of Mid + Σ (anywhere within ±Rects) +
// Scale·t, for repeats as JCGM 101 assigns it.
//
// Limits alone are exact, and so is one limit with repeats. Each further limit
// is averaged over on a table whose error in probability is below 10⁻⁴. With
// every width 0 it is the value itself: a step. Everything read from the
// distribution is NaN when a width is negative or not finite, the value is not
// finite, or there is a t term whose DOF is not above 0.
//
// Source: JCGM 101:2008, 6.4.9 (repeats).
func (s Sum) Dist() *Dist {
	if !s.valid() {
		return &Dist{mid: math.NaN()}
	}
	s = s.rounded()
	if d := s.known(); d != nil {
		return d
	}
	d := &Dist{mid: s.Mid}
	r := newRects(s.Rects...)
	floor := negligible * s.Scale
	if len(r) > 0 {
		floor = max(floor, negligible*r[0])
	}
	for len(r) > 0 && r[len(r)-1] < floor {
		r = r[:len(r)-1]
	}
	d.reach = r.reach()
	rest := r[len(r):]
	if s.Scale > 0 && s.Scale >= floor {
		d.base.scale, d.base.t = s.Scale, newStudent(s.DOF)
		k := min(len(r), 1)
		d.base.rects, rest = r[:k], r[k:]
	} else {
		d.base.rects, rest = r.closed()
	}
	if len(rest) > 0 {
		d.table = newTable(&d.base, rest, d.reach)
	}
	s.keep(d)
	return d
}

func (s Sum) valid() bool {
	finite := s.Mid - s.Mid + s.Scale - s.Scale
	for _, a := range s.Rects {
		if !(a >= 0) {
			return false
		}
		finite += a - a
	}
	return finite == 0 && s.Scale >= 0 && (s.Scale == 0 || s.DOF > 0)
}

// CDF returns the probability of at most x.
func (d *Dist) CDF(x float64) float64 {
	y := x - d.mid
	switch {
	case math.IsNaN(y):
		return math.NaN()
	case math.IsInf(y, 0):
		return max(0, math.Copysign(1, y))
	case y < 0:
		return 1 - d.upper(-y)
	}
	return d.upper(y)
}

// upper is the CDF at y ≥ 0 over the value.
func (d *Dist) upper(y float64) float64 {
	if d.table.holds(y) {
		f, _ := d.table.at(y)
		return f
	}
	return d.base.cdf(y)
}

// Density returns the probability density at x, per unit of x. Where every
// width is 0 it is +Inf at the value and 0 elsewhere.
func (d *Dist) Density(x float64) float64 {
	y := math.Abs(x - d.mid)
	switch {
	case math.IsNaN(y):
		return math.NaN()
	case math.IsInf(y, 0):
		return 0
	case d.table.holds(y):
		_, density := d.table.at(y)
		return density
	}
	return d.base.density(y)
}

// Quantile returns the x that the quantity stays at or under with probability
// p; NaN for p outside 0 to 1.
func (d *Dist) Quantile(p float64) float64 {
	if p < 0.5 {
		return d.mid - d.halfWidth(1-2*p)
	}
	return d.mid + d.halfWidth(2*p-1)
}

// Interval returns the coverage interval for probability p that leaves the
// same chance on either side. It is NaN for p outside 0 to 1.
func (d *Dist) Interval(p float64) (lo, hi float64) {
	h := d.halfWidth(p)
	return d.mid - h, d.mid + h
}

// halfWidth returns the y with P(−y ≤ x − mid ≤ y) = p.
func (d *Dist) halfWidth(p float64) float64 {
	switch {
	case !(p >= 0 && p <= 1):
		return math.NaN()
	case p == 0:
		return 0
	}
	if d.base.scale == 0 && len(d.base.rects) <= 1 && d.table == nil {
		return p * d.reach // one limit alone, or none
	}
	most := d.reach
	if d.base.scale > 0 {
		most += d.base.scale * d.base.t.coverage(p)
	}
	if p == 1 {
		return most
	}
	return solve(d.upper, (1+p)/2, 0, most)
}

// base is the part of a Sum that has a closed form: limits alone, or a t term
// with at most one limit.
type base struct {
	rects rects
	scale float64
	t     student
}

// flat is the half-width of a limit, relative to the scale or to the distance
// from the middle, under which the t term hardly bends across it.
const flat = 1e-4

// cdf returns P(sum ≤ y) for y ≥ 0. With a limit ±a and a t term it is the mean of the
// t term's over the limit,
//
//	½ + (σ/2a)·(K((y + a)/σ) − K((y − a)/σ))
//
// with K the integral of P(t ≤ z) − ½.
func (b *base) cdf(y float64) float64 {
	if b.scale == 0 {
		return b.rects.cdf(y)
	}
	if len(b.rects) == 0 || b.rects[0] < flat*max(b.scale, y) {
		return b.t.cdf(y / b.scale)
	}
	a := b.rects[0]
	k := b.t.integral((y+a)/b.scale) - b.t.integral((y-a)/b.scale)
	return min(1, 0.5+b.scale/(2*a)*k) // rounding may leave it a hair above
}

// density returns the derivative of cdf.
func (b *base) density(y float64) float64 {
	if b.scale == 0 {
		return b.rects.density(y)
	}
	if len(b.rects) == 0 || b.rects[0] < flat*max(b.scale, y) {
		return b.t.density(y/b.scale) / b.scale
	}
	a := b.rects[0]
	return (b.t.cdf((y+a)/b.scale) - b.t.cdf((y-a)/b.scale)) / (2 * a)
}
