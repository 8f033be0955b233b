package relief

import (
	"math"

	"plainlift/calc/doubt"
)

// What is known of a true pressure has two parts: a normal one of standard
// deviation sigma around m, from the scatter of readings, and the gauge's own
// error, rectangular within ±a and the same in every reading.

// POver returns the chance that the true pressure is over a limit:
//
//	P = (σ/2a)·[G((m+a−L)/σ) − G((m−a−L)/σ)],  G(x) = x·Φ(x) + φ(x)
//
// m is the expected pressure, sigma its standard deviation σ (from 0), a the
// gauge's limit (from 0) and limit is L, all Pa. Φ and φ are the standard normal
// distribution and density. With σ = 0 it is the rectangle's share over the
// limit, with a = 0 the normal's, with both 0 it is 1 over the limit and 0 at or
// under it.
//
// Source: the normal's chance Φ((m+e−L)/σ) averaged over −a < e < a; the
// probability of conformity is JCGM 106:2012, clause 7.
func POver(m, sigma, a, limit float64) float64 {
	if !(sigma >= 0) || !(a >= 0) || math.IsNaN(m) || math.IsNaN(limit) {
		return math.NaN()
	}
	above := m - limit
	if sigma == 0 {
		switch {
		case above > a:
			return 1
		case above <= -a:
			return 0
		}
		return (above + a) / (2 * a)
	}
	x, h := above/sigma, a/sigma
	if h < narrow {
		// The first terms of the average about x; the rest is under 1e-18.
		return doubt.NormalCDF(x) - h*h/6*x*doubt.NormalPDF(x)
	}
	p := (integral(x+h) - integral(x-h)) / (2 * h)
	return min(max(p, 0), 1) // rounding may stray past the ends
}

// narrow is the width of the rectangle, in σ, under which the difference of G
// loses more to rounding than a series leaves out.
const narrow = 1e-4

// PUnder returns the chance that the true pressure is under low (Pa); the rest
// as for POver.
func PUnder(m, sigma, a, low float64) float64 {
	return POver(-m, sigma, a, -low)
}

// integral returns G(x) = x·Φ(x) + φ(x), the integral of Φ up to x.
func integral(x float64) float64 {
	switch {
	case x < -40: // under the smallest number
		return 0
	case x > 40:
		return x
	}
	return x*doubt.NormalCDF(x) + doubt.NormalPDF(x)
}

// HalfWidth returns w such that the true pressure lies within ±w of the
// expected one with the given probability, Pa. sigma and a are as for POver;
// coverage is above 0 and below 1.
func HalfWidth(sigma, a, coverage float64) float64 {
	_, w := doubt.Sum{Rects: []float64{a}, Scale: sigma, DOF: math.Inf(1)}.Dist().Interval(coverage)
	return w
}
