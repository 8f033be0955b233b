package doubt

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// NormalPDF returns the density of the standard normal distribution,
// exp(−z²/2)/√(2π).
func NormalPDF(z float64) float64 {
	return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
}

// NormalCDF returns the chance that a standard normal quantity is at most z.
func NormalCDF(z float64) float64 {
	return math.Erfc(-z/math.Sqrt2) / 2
}

// NormalQuantile returns the z that a standard normal quantity stays under
// with probability p. It is ∓Inf at p = 0 and 1, and NaN outside.
func NormalQuantile(p float64) float64 {
	if !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	return mathext.NormalQuantile(p)
}

// T returns the coverage factor k for two-sided coverage p, the k with
//
//	P(−k ≤ t ≤ k) = p
//
// of Student's t with dof degrees of freedom, which need not be whole and may
// be +Inf (normal). It is 0 at p = 0, +Inf at p = 1, and NaN for p outside 0
// to 1 or dof not above 0. Past 10⁵ degrees of freedom it is the normal one,
// too small by 2·10⁻⁵ at most at 95 %.
//
// Source: JCGM 100:2008, Annex G, Table G.2.
func T(p, dof float64) float64 {
	if !(p >= 0 && p <= 1 && dof > 0) {
		return math.NaN()
	}
	return newStudent(dof).coverage(p)
}

// normalFrom is the degrees of freedom from which t is taken as normal; the
// probabilities differ by less than 1/(4·dof).
const normalFrom = 1e5

// student is Student's t distribution.
type student struct {
	dof  float64
	peak float64 // density at 0
}

func newStudent(dof float64) student {
	if dof > normalFrom {
		return student{math.Inf(1), NormalPDF(0)}
	}
	a, _ := math.Lgamma((dof + 1) / 2)
	b, _ := math.Lgamma(dof / 2)
	return student{dof, math.Exp(a-b) / math.Sqrt(dof*math.Pi)}
}

// density returns the density at z.
func (t student) density(z float64) float64 {
	if math.IsInf(t.dof, 1) {
		return NormalPDF(z)
	}
	return t.peak * math.Exp(-(t.dof+1)/2*math.Log1p(z*z/t.dof))
}

// cdf returns P(t ≤ z).
//
// Source: the t distribution as an incomplete beta function, from memory;
// checked against tables.
func (t student) cdf(z float64) float64 {
	if math.IsInf(t.dof, 1) {
		return NormalCDF(z)
	}
	z2 := z * z
	var tail float64
	if z2 < t.dof {
		tail = (1 - mathext.RegIncBeta(0.5, t.dof/2, z2/(t.dof+z2))) / 2
	} else {
		tail = mathext.RegIncBeta(t.dof/2, 0.5, t.dof/(t.dof+z2)) / 2
	}
	if z < 0 {
		return tail
	}
	return 1 - tail
}

// integral returns ∫ (P(t ≤ x) − ½) dx from 0 to z,
//
//	z·(P(t ≤ z) − ½) − ν·peak·(1 − (1 + z²/ν)^((1−ν)/2))/(ν − 1)
//
// which for the normal distribution is z·(Φ(z) − ½) + φ(z) − φ(0), and for
// ν = 1 is z·arctan(z)/π − ln(1 + z²)/(2π). By parts from the density.
func (t student) integral(z float64) float64 {
	first := z * (t.cdf(z) - 0.5)
	switch {
	case math.IsInf(t.dof, 1):
		return first + NormalPDF(z) - t.peak
	case t.dof == 1:
		return first - t.peak*math.Log1p(z*z)/2
	}
	e := t.dof - 1
	return first + t.dof*t.peak*math.Expm1(-e/2*math.Log1p(z*z/t.dof))/e
}

// coverage returns the k with P(−k ≤ t ≤ k) = p.
func (t student) coverage(p float64) float64 {
	switch {
	case p == 0:
		return 0
	case p == 1:
		return math.Inf(1)
	case math.IsInf(t.dof, 1):
		return math.Sqrt2 * math.Erfinv(p)
	}
	if t.dof > 1000 {
		// The inverse below fails here in the tails. Expansion in 1/ν:
		// Abramowitz and Stegun, 26.7.5, from memory.
		z := math.Sqrt2 * math.Erfinv(p)
		z2 := z * z
		return z * (1 + (z2+1)/(4*t.dof) + ((5*z2+16)*z2+3)/(96*t.dof*t.dof))
	}
	// The smaller tail is inverted, so that no digits are lost.
	if p < 0.5 {
		w := mathext.InvRegIncBeta(0.5, t.dof/2, p)
		return math.Sqrt(t.dof * w / (1 - w))
	}
	w := mathext.InvRegIncBeta(t.dof/2, 0.5, 1-p)
	return math.Sqrt(t.dof * (1 - w) / w)
}
