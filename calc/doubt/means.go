package doubt

import "math"

// Repeats is what is left of a series of readings once its mean is taken: how
// many they are and their standard deviation, 0 for one reading.
type Repeats struct {
	N int
	S float64
}

// Difference returns the standard uncertainty that the scatter of two series
// leaves in the difference of their means, and its degrees of freedom. With n, s
// of each series it is either, whichever covers more at 95 %, of
//
//	u² = s_p²·(1/n₁ + 1/n₂),  s_p² = Σ(n−1)s²/Σ(n−1),  ν = n₁ + n₂ − 2
//	u² = s₁²/n₁ + s₂²/n₂,     ν by Welch and Satterthwaite
//
// The first pools both series: one gauge and one valve scatter alike, and a
// single reading scatters as the other series does. The second takes each by
// itself, for a valve that scatters less once it is clean. u is 0 and ν +Inf
// where nothing scatters or there is nothing to tell from. A series of no reading
// or of negative S gives NaN.
//
// Sources: JCGM 100:2008, 4.2.4 (pooled, from memory; used so in H.1.3.2, read)
// and G.4.1, eq. (G.2b). That the wider is taken is ours.
func Difference(a, b Repeats) (u, dof float64) {
	if a.N < 1 || b.N < 1 || !(a.S >= 0) || !(b.S >= 0) {
		return math.NaN(), math.NaN()
	}
	n1, n2 := float64(a.N), float64(b.N)
	nu1, nu2 := n1-1, n2-1
	squares := nu1*a.S*a.S + nu2*b.S*b.S
	if squares == 0 {
		return 0, math.Inf(1)
	}
	u, dof = math.Sqrt(squares/(nu1+nu2)*(1/n1+1/n2)), nu1+nu2
	apart := Budget{
		{U: a.S / math.Sqrt(n1), Sens: 1, DOF: nu1},
		{U: b.S / math.Sqrt(n2), Sens: 1, DOF: nu2},
	}
	if v := apart.DOF(); apart.U()*T(0.95, v) > u*T(0.95, dof) { // false for NaN
		return apart.U(), v
	}
	return u, dof
}
