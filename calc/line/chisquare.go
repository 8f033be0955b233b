package line

import "math"

// ChiSquareTail returns the chance that χ² with dof degrees of freedom is x or
// more, by sums that end:
//
//	even: Q = exp(−x/2)·Σ (x/2)ʲ/j!                       j = 0, 1 … dof/2 − 1
//	odd:  Q = erfc(√(x/2)) + exp(−x/2)·Σ (x/2)ʲ/Γ(j+1)     j = 1/2, 3/2 … dof/2 − 1
//
// All terms have one sign, so nothing cancels. It is NaN for x below 0 and for
// dof below 1, and 0 from x = 1490 on, where exp(−x/2) is.
//
// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.4 and
// 26.4.5 (from memory).
func ChiSquareTail(x float64, dof int) float64 {
	if !(x >= 0) || dof < 1 {
		return math.NaN()
	}
	h := x / 2
	term := math.Exp(-h)
	if term == 0 {
		return 0
	}
	sum, j := 0.0, 0.0
	if dof%2 == 1 { // 26.4.4
		sum, j = math.Erfc(math.Sqrt(h)), 0.5
		term *= 2 * math.Sqrt(h/math.Pi) // Γ(3/2) = √π/2
	}
	for ; j < float64(dof)/2; j++ { // 26.4.5
		sum += term
		term *= h / (j + 1)
	}
	return sum
}
