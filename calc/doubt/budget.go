package doubt

import "math"

// Source is one cause of doubt in a budget.
type Source struct {
	Name string
	U    float64 // standard uncertainty, in the unit of the input, not negative
	Sens float64 // sensitivity coefficient: change of the result per change of the input
	DOF  float64 // degrees of freedom, above 0; +Inf for stated limits
}

// Budget is the independent causes of doubt in one result. A cause that
// several inputs share is one Source, with the sum of their sensitivities.
type Budget []Source

// U returns the combined standard uncertainty in the unit of the result,
//
//	u² = Σ (c·u_i)²
//
// with c the sensitivity coefficients. It is exact for a linear model.
//
// Source: JCGM 100:2008, 5.1, eq. (10).
func (b Budget) U() float64 {
	u := 0.0
	for _, s := range b {
		u = math.Hypot(u, s.Sens*s.U) // (10)
	}
	return u
}

// Shares returns the part of u² that each source brings, in the order of the
// budget. They sum to 1; all are 0 when u is.
func (b Budget) Shares() []float64 {
	shares := make([]float64, len(b))
	u := b.U()
	if u == 0 {
		return shares
	}
	for i, s := range b {
		r := s.Sens * s.U / u
		shares[i] = r * r
	}
	return shares
}

// DOF returns the effective degrees of freedom (Welch–Satterthwaite), not
// truncated,
//
//	ν_eff = u⁴ / Σ (c·u_i)⁴/ν_i
//
// It is +Inf when every source that contributes has infinite degrees of
// freedom, or none contributes. It is NaN when one that does has none.
//
// Source: JCGM 100:2008, G.4.1, eq. (G.2b).
func (b Budget) DOF() float64 {
	sum := 0.0
	for i, share := range b.Shares() {
		if share == 0 {
			continue
		}
		if !(b[i].DOF > 0) {
			return math.NaN()
		}
		sum += share * share / b[i].DOF
	}
	return 1 / sum // (G.2b), both sides divided by u⁴
}

// Rect returns the standard uncertainty of a quantity that lies anywhere
// within ±a with equal chance, a/√3.
//
// Source: JCGM 100:2008, 4.3.7, eq. (7).
func Rect(a float64) float64 { return nonNegative(a) / math.Sqrt(3) }

// Step returns the standard uncertainty that reading to the nearest step
// leaves, step/√12.
//
// Source: JCGM 100:2008, H.6.3.1.
func Step(step float64) float64 { return nonNegative(step) / math.Sqrt(12) }

// Triangle returns the standard uncertainty of a quantity within ±a that is
// likelier near the middle (triangular), a/√6.
//
// Source: JCGM 100:2008, 4.3.9, eq. (9b).
func Triangle(a float64) float64 { return nonNegative(a) / math.Sqrt(6) }

// Asymmetric returns the standard uncertainty of a quantity known to lie from
// below under the estimate to above over it, (below + above)/√12.
//
// Source: JCGM 100:2008, 4.3.8, eq. (8).
func Asymmetric(below, above float64) float64 {
	return (nonNegative(below) + nonNegative(above)) / math.Sqrt(12)
}

// nonNegative returns a, or NaN when a is negative.
func nonNegative(a float64) float64 {
	if a < 0 {
		return math.NaN()
	}
	return a
}

// StdDev returns the mean of the readings and their experimental standard
// deviation
//
//	s² = Σ (x − mean)² / (n − 1)
//
// s is NaN for fewer than two readings, and exactly 0 when all are equal. The
// standard uncertainty of the mean is s/√n, with n − 1 degrees of freedom.
//
// Source: JCGM 100:2008, 4.2, eq. (3), (4); clause from memory, example 4.4.3.
func StdDev(x []float64) (mean, s float64) {
	n := float64(len(x))
	if n == 0 {
		return math.NaN(), math.NaN()
	}
	// Working from the first reading keeps equal readings exactly equal.
	shift := 0.0
	for _, v := range x {
		shift += (v - x[0]) / n
	}
	if n == 1 {
		return x[0], math.NaN()
	}
	squares := 0.0
	for _, v := range x {
		d := v - x[0] - shift
		squares += d * d
	}
	return x[0] + shift, math.Sqrt(squares / (n - 1)) // (3), (4)
}
