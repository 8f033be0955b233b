package doubt

import "math"

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
// with probability p, to 10⁻⁶ from p = 10⁻¹⁰. It is ∓Inf at p = 0 and 1, and
// NaN outside.
func NormalQuantile(p float64) float64 {
	if !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	return math.Sqrt2 * math.Erfinv(2*p-1)
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
func (t student) cdf(z float64) float64 {
	if z > 0 {
		return 1 - t.tail(z)
	}
	return t.tail(-z)
}

// tail returns P(t > z) for z ≥ 0,
//
//	½·I_x(ν/2, ½) = ½ − ½·I_{1−x}(½, ν/2),  x = ν/(ν + z²)
//
// with I the regularized incomplete beta function, by the form whose continued
// fraction converges fast.
//
// Source: Abramowitz and Stegun, 26.5.27 and 26.5.8, from memory; checked
// against tables and gonum.
func (t student) tail(z float64) float64 {
	if math.IsInf(t.dof, 1) {
		return math.Erfc(z/math.Sqrt2) / 2
	}
	if math.IsInf(z, 1) {
		return 0
	}
	half := t.dof / 2
	x := 1 / (1 + z*z/t.dof)
	front := z * t.density(z) // xᵃ·(1−x)ᵇ/B(a, b), for both forms
	if x < (half+1)/(half+2.5) {
		return front / t.dof * betaFraction(half, 0.5, x)
	}
	return 0.5 - front*betaFraction(0.5, half, z*z/(t.dof+z*z))
}

// betaFraction returns the continued fraction 1/(1 + d₁/(1 + d₂/(1 + …))) of
// I_x(a, b)·a·B(a, b)/(xᵃ·(1−x)ᵇ), worked from the front by Lentz's method.
func betaFraction(a, b, x float64) float64 {
	value, c, d := 1.0, 1.0, 0.0
	for i := 1; i < 5000; i++ {
		m := float64(i / 2)
		step := -(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1)) // d₁, d₃ …
		if i%2 == 0 {
			step = m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m)) // d₂, d₄ …
		}
		d = 1 / (1 + step*d)
		c = 1 + step/c
		value *= c * d
		if math.Abs(c*d-1) < 1e-15 {
			break
		}
	}
	return 1 / value
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
	// The logarithm of the tail bends little, however far out.
	rarity := func(k float64) float64 { return -math.Log(t.tail(k)) }
	target := -math.Log((1 - p) / 2)
	low, high := 0.0, 1.0
	for rarity(high) < target && high < 1e150 {
		low, high = high, 2*high
	}
	return solve(rarity, target, low, high)
}
