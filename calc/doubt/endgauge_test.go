package doubt

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The calibration of an end gauge, JCGM 100:2008, H.1 (inputs and printed
// results read, further digits computed). All lengths in nm.
//
//	l = l_s + d − l_s·(δα·θ + α_s·δθ)
func TestEndGauge(t *testing.T) {
	const (
		ls    = 50_000_623.0
		d     = 215.0
		theta = -0.1    // °C from 20
		alpha = 11.5e-6 // per °C
	)
	comparison := Budget{
		{Name: "repeats", U: 13 / math.Sqrt(5), Sens: 1, DOF: 24},
		{Name: "random", U: 10 / T(0.95, 5), Sens: 1, DOF: 5},
		{Name: "systematic", U: 20.0 / 3, Sens: 1, DOF: 8},
	}
	length := Budget{
		{Name: "standard", U: 75.0 / 3, Sens: 1, DOF: 18},
		{Name: "comparison", U: comparison.U(), Sens: 1, DOF: comparison.DOF()},
		{Name: "expansion difference", U: Rect(1e-6), Sens: -ls * theta, DOF: 50},
		{Name: "temperature difference", U: Rect(0.05), Sens: -ls * alpha, DOF: 2},
		{Name: "expansion", U: Rect(2e-6), Sens: 0, DOF: inf},
		{Name: "temperature", U: 0.41, Sens: 0, DOF: inf},
	}
	part := func(i int) float64 { return math.Abs(length[i].Sens * length[i].U) }
	k := T(0.99, math.Floor(length.DOF()))
	run(t, []check{
		{"repeats", comparison[0].U, 5.8, 0.05, "H.1, read"},
		{"random", comparison[1].U, 3.9, 0.05, "H.1, read"},
		{"random, digits", comparison[1].U, 3.890170, 5e-7, "computed"},
		{"systematic", comparison[2].U, 6.7, 0.05, "H.1, read"},
		{"u(d)", comparison.U(), 9.7, 0.05, "H.1, read"},
		{"u(d), digits", comparison.U(), 9.663222, 5e-7, "computed"},
		{"dof(d)", comparison.DOF(), 25.6, 0.05, "H.1.6, read"},
		{"dof(d), digits", comparison.DOF(), 25.621306, 5e-7, "computed"},
		{"δα", part(2), 2.9, 0.05, "H.1, read"},
		{"δα, digits", part(2), 2.886787, 5e-7, "computed"},
		{"δθ", part(3), 16.6, 0.05, "H.1, read"},
		{"δθ, digits", part(3), 16.599027, 5e-7, "computed"},
		{"u²", length.U() * length.U(), 1002, 0.5, "H.1.4, read"},
		{"u²", length.U() * length.U(), 1002.239, 5e-4, "computed"},
		{"u", length.U(), 32, 0.5, "H.1.4, read"},
		{"u, digits", length.U(), 31.658160, 5e-7, "computed"},
		{"dof", length.DOF(), 16.7, 0.05, "H.1.6, read"},
		{"dof, digits", length.DOF(), 16.741149, 5e-7, "computed"},
		{"t99", k, 2.92, 0.005, "H.1.6, read"},
		{"t99, digits", k, 2.920782, 5e-7, "computed"},
		{"U99", k * length.U(), 93, 0.6, "H.1.6, read (from rounded 2.92 × 32)"},
		{"U99, digits", k * length.U(), 92.4666, 5e-5, "computed"},
	})

	// Drawing the whole model brings in the products of small terms, which the
	// law of propagation leaves out: H.1.7 adds 11.7 and 1.7 nm for 34 nm.
	sim := NewSimulation(func(r *rand.Rand) float64 {
		rect := func(a float64) float64 { return a * (2*r.Float64() - 1) }
		standard := ls + 25*r.NormFloat64()
		cycle := 0.5 * math.Sin(2*math.Pi*r.Float64()) // arcsine, ±0.5 °C
		temperature := theta + 0.2*r.NormFloat64() + cycle
		return standard + d + 9.663222*r.NormFloat64() -
			standard*(rect(1e-6)*temperature+(alpha+rect(2e-6))*rect(0.05))
	})
	sim.Run(1_000_000)
	mean, u, _, _, _ := sim.Summary(0.99)
	run(t, []check{
		{"l", mean, 50_000_838, 0.17, "H.1.7, read; five standard errors"},
		{"u with products", u, 33.801189, 0.13, "computed; five standard errors"},
		{"u with products", u, 34, 0.5, "H.1.7, read"},
	})
}
