package strength

import "math"

// Area returns the area of a ring, m²: π/4·(D² − d²). hole is d (m, from 0; 0 for
// a solid bar), outside D (m, above d).
func Area(hole, outside float64) float64 {
	if !(hole >= 0 && outside > hole) {
		return math.NaN()
	}
	return math.Pi / 4 * (outside*outside - hole*hole)
}

// Ring returns the second moment of area of a ring about a diameter, m⁴:
//
//	I = π/64·(D⁴ − d⁴)
//
// Arguments as for Area.
func Ring(hole, outside float64) float64 {
	return Area(hole, outside) * (outside*outside + hole*hole) / 16
}

// Euler returns the load that buckles a slender even bar pinned at both ends, N:
//
//	P = π²·E·I/L²
//
// e is Young's modulus (Pa), i the least second moment of area (m⁴), l the
// length between the pins (m), all above 0. The bar is straight, its load
// central; it holds while P ÷ area stays well under the yield (see Short).
//
// Source: Euler's column, in every text on strength of materials (from memory).
func Euler(e, i, l float64) float64 {
	if !(e > 0 && i > 0 && l > 0) {
		return math.NaN()
	}
	return math.Pi * math.Pi * e * i / (l * l)
}

// EulerLength returns the length at which a pinned bar buckles under a force, m:
//
//	L = π·√(E·I/P)
//
// the inverse of Euler. With P = stress × area it is the length under which
// Euler's load would pass that stress; with the load of another column, how long
// a plain bar that column is as good as.
//
// Source: the limit length in the open companion of a strength-of-materials text
// (FOSSEE book 3776, Ex. 11.2; inputs and formula read).
func EulerLength(e, i, force float64) float64 {
	if !(e > 0 && i > 0 && force > 0) {
		return math.NaN()
	}
	return math.Pi * math.Sqrt(e*i/force)
}

// Stepped returns the load that buckles a slender column of two sections, end to
// end, pinned at both far ends, N: the least P above 0 with
//
//	k₁·cot(k₁·L₁) + k₂·cot(k₂·L₂) = 0,  k = √(P/(E·I))
//
// which says that deflection and slope agree at the step. e is Young's modulus
// (Pa); i1, i2 are the second moments of area (m⁴), all above 0; l1, l2 the
// lengths (m, from 0, not both 0). Neither section buckles alone in it, so both
// angles lie under π, where each term falls steadily as P grows: there is one
// root, and halving finds it to the last digits.
//
// Source: Euler's equation for each section (textbook statics; from memory). The
// tests hold it against finite elements and against bounds.
func Stepped(e, i1, l1, i2, l2 float64) float64 {
	if !(e > 0 && i1 > 0 && i2 > 0 && l1 >= 0 && l2 >= 0) || math.IsInf(l1+l2, 0) {
		return math.NaN()
	}
	switch {
	case l2 == 0:
		return Euler(e, i1, l1)
	case l1 == 0:
		return Euler(e, i2, l2)
	}
	r1, r2 := math.Sqrt(i1), math.Sqrt(i2)
	// In q = √(P/E): k = q/√I.
	lo, hi := 0.0, math.Pi*min(r1/l1, r2/l2)
	for range 60 {
		q := (lo + hi) / 2
		if 1/(r1*math.Tan(q*l1/r1))+1/(r2*math.Tan(q*l2/r2)) > 0 {
			lo = q
		} else {
			hi = q
		}
	}
	return e * lo * lo
}

// Short returns what a column bears whose Euler load is euler, N: the same while
// it stays under half the yield, and past that by Johnson's parabola
//
//	P = A·σ·(1 − A·σ/(4·P_E))
//
// which starts there with the same slope and ends at A·σ. area is A of the
// section that is stressed most (m²), yield σ (Pa); all above 0.
//
// Source: Johnson's column formula, in texts on machine design (from memory).
func Short(euler, area, yield float64) float64 {
	if !(euler > 0 && area > 0 && yield > 0) {
		return math.NaN()
	}
	if squash := area * yield; euler > squash/2 {
		return squash * (1 - squash/(4*euler))
	}
	return euler
}
