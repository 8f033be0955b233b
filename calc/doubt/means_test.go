package doubt

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/stat/distuv"
)

// sleep is the extra sleep of ten patients under two drugs, in hours: Student,
// Biometrika 6 (1908), as general-purpose statistics programs carry it (memory).
var sleep = [2][]float64{
	{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0},
	{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4},
}

// repeats is a series as Difference takes it.
func repeats(x []float64) (mean float64, r Repeats) {
	mean, s := StdDev(x)
	if len(x) < 2 {
		s = 0
	}
	return mean, Repeats{N: len(x), S: s}
}

func TestDifferencePublished(t *testing.T) {
	m1, a := repeats(sleep[0])
	m2, b := repeats(sleep[1])
	u, dof := Difference(a, b)
	h := T(0.95, dof) * u
	// Miles to the gallon of 249 and 79 cars (NIST/SEMATECH e-Handbook, 1.3.5.3,
	// memory); the uneven numbers make the pooled one the wider.
	carU, carDOF := Difference(Repeats{249, 6.414700}, Repeats{79, 6.107710})
	run(t, []check{
		{"sleep: lower end", m1 - m2 - h, -3.3654832, 1e-6, "Welch's interval for Student's data in a statistics program's manual, memory"},
		{"sleep: upper end", m1 - m2 + h, 0.2054832, 1e-6, "the same"},
		{"sleep: degrees of freedom", dof, 17.776, 5e-4, "the same"},
		{"cars: u of the difference, pooled", carU, 0.8190135, 5e-7, "NIST/SEMATECH e-Handbook, 1.3.5.3, memory"},
		{"cars: degrees of freedom", carDOF, 326, 0, "the same"},
	})
}

func TestDifferenceDomain(t *testing.T) {
	for _, r := range [][2]Repeats{{{0, 1}, {2, 1}}, {{2, 1}, {0, 0}}, {{2, -1}, {2, 1}}, {{2, math.NaN()}, {2, 1}}, {{2, 1}, {2, math.NaN()}}} {
		if u, dof := Difference(r[0], r[1]); !math.IsNaN(u) || !math.IsNaN(dof) {
			t.Errorf("%v: %v, %v", r, u, dof)
		}
	}
	for _, r := range [][2]Repeats{{{1, 0}, {1, 0}}, {{4, 0}, {4, 0}}, {{4, 0}, {1, 0}}} {
		if u, dof := Difference(r[0], r[1]); u != 0 || !math.IsInf(dof, 1) {
			t.Errorf("%v: %v, %v, though nothing scatters", r, u, dof)
		}
	}
	// One reading borrows the scatter of the others.
	if u, dof := Difference(Repeats{1, 0}, Repeats{4, 10}); dof != 3 || !scalar.EqualWithinRel(u, 10*math.Sqrt(1.25), 1e-12) {
		t.Errorf("one reading against four: %v, %v", u, dof)
	}
	if u, dof := Difference(Repeats{2, 40}, Repeats{10, 5}); !(dof < 1.1) || !scalar.EqualWithinRel(u, math.Hypot(40/math.Sqrt2, 5/math.Sqrt(10)), 1e-12) {
		t.Errorf("two wild readings against ten tame ones: %v, %v", u, dof)
	}
}

// Whatever two series scatter like, the true difference lies within 95 % about
// that often, and hardly less; and it is the same whichever comes first.
func TestDifferenceCovers(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for _, c := range []struct {
		n1, n2 int
		s1, s2 float64
	}{{4, 4, 1, 1}, {2, 6, 1, 1}, {3, 8, 5, 1}, {8, 3, 5, 1}, {2, 2, 1, 1}, {1, 5, 1, 1}, {4, 4, 6, 1}} {
		const trials = 10000
		inside := 0
		for range trials {
			draw := func(n int, s float64) []float64 {
				x := make([]float64, n)
				for i := range x {
					x[i] = s * r.NormFloat64()
				}
				return x
			}
			m1, a := repeats(draw(c.n1, c.s1))
			m2, b := repeats(draw(c.n2, c.s2))
			u, dof := Difference(a, b)
			if v, w := Difference(b, a); !scalar.EqualWithinRel(u, v, 1e-12) || !scalar.EqualWithinRel(dof, w, 1e-12) {
				t.Fatalf("%v, %v: %v, %v; turned round %v, %v", a, b, u, dof, v, w)
			}
			lib := distuv.StudentsT{Sigma: 1, Nu: dof}
			if math.Abs(m1-m2) <= lib.Quantile(0.975)*u {
				inside++
			}
		}
		if share := float64(inside) / trials; share < 0.93 {
			t.Errorf("%+v: covers %.3f", c, share)
		} else {
			t.Logf("%+v: covers %.3f", c, share)
		}
	}
}
