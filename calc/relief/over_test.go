package relief

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"plainlift/calc/doubt"
)

func TestPOver(t *testing.T) {
	t.Parallel()
	const conformity = "JCGM 106:2012 (read), unrounded computed"
	for _, test := range []struct {
		name      string
		got, want float64
		tol       float64
		source    string
	}{
		{"7.3 example 1, conforms", 1 - POver(-5.47, 0.05, 0, -5.40), 0.919243341, 1e-9, conformity},
		{"7.4, conforms", 1 - POver(13.6, 1.8, 0, 16.3) - PUnder(13.6, 1.8, 0, 12.5), 0.662629786, 1e-9, conformity},
		{"8.3.2.3, false acceptance at 2u", POver(98, 1, 0, 100), 0.0227501, 1e-7, conformity},
		{"8.3.1.2, at the limit", POver(100, 1, 0, 100), 0.5, 1e-15, "JCGM 106:2012 (read)"},
		{"at the limit with a gauge", POver(100, 1, 7, 100), 0.5, 1e-15, "symmetry"},
		{"2,610 ± 77 under 2,680, limit alone", PUnder(2610, 0, 77, 2680), 147. / 154, 1e-15, "arithmetic"},
		{"2,610 ± 80 under 2,680, limit alone", PUnder(2610, 0, 80, 2680), 0.9375, 1e-15, "arithmetic"},
		{"2,760 ± 80 over 2,790, limit alone", POver(2760, 0, 80, 2790), 0.3125, 1e-15, "arithmetic"},
		{"the same, scatter 10", POver(2760, 10, 80, 2790), 0.3125, 1e-8, "the rectangle's ends are 5 σ and more away"},
		{"nothing unknown, over", POver(1.0001, 0, 0, 1), 1, 0, "definition"},
		{"nothing unknown, at", POver(1, 0, 0, 1), 0, 0, "definition"},
		{"nothing unknown, under", PUnder(0.9999, 0, 0, 1), 1, 0, "definition"},
		{"limit alone, all over", POver(10, 0, 2, 7), 1, 0, "definition"},
		{"limit alone, none over", POver(10, 0, 2, 13), 0, 0, "definition"},
		{"far over", POver(1e9, 1, 1, 0), 1, 0, "limit"},
		{"far under", POver(-1e9, 1, 1, 0), 0, 0, "limit"},
		{"no limit", POver(1, 1, 1, math.Inf(1)), 0, 0, "limit"},
	} {
		if !scalar.EqualWithinAbs(test.got, test.want, test.tol) {
			t.Errorf("%s: got %.12g, want %.12g; %s", test.name, test.got, test.want, test.source)
		}
	}
	nan := math.NaN()
	for _, got := range []float64{POver(nan, 1, 1, 1), POver(1, -1, 1, 1), POver(1, 1, -1, 1), POver(1, 1, 1, nan), POver(1, nan, 1, 1)} {
		if !math.IsNaN(got) {
			t.Errorf("outside the domain: got %v, want NaN", got)
		}
	}
}

// Against the average of gonum's normal over the rectangle by quadrature, from a
// gauge far better than the scatter to one far worse.
func TestPOverByQuadrature(t *testing.T) {
	t.Parallel()
	for _, a := range []float64{1e-9, 1e-6, 0.99e-4, 1.01e-4, 1e-3, 0.1, 1, 5, 80} {
		for _, above := range []float64{-90, -80, -9, -3, -1, -0.1, 0, 0.5, 2, 4, 79, 81} {
			// Panels of at most 1 σ, so that the quadrature resolves the step.
			panels := int(math.Ceil(2 * a))
			var want float64
			for i := range panels {
				from, to := -a+2*a*float64(i)/float64(panels), -a+2*a*float64(i+1)/float64(panels)
				want += quad.Fixed(func(e float64) float64 { return distuv.UnitNormal.CDF(above + e) }, from, to, 20, quad.Legendre{}, 0)
			}
			want /= 2 * a
			if got := POver(above, 1, a, 0); !scalar.EqualWithinAbs(got, want, 1e-11) {
				t.Errorf("a %v σ, %v σ above: got %.15g, quadrature %.15g", a, above, got, want)
			}
			if got := PUnder(-above, 1, a, 0); !scalar.EqualWithinAbs(got, want, 1e-11) {
				t.Errorf("under, a %v σ, %v σ: got %.15g, quadrature %.15g", a, above, got, want)
			}
		}
	}
}

// Against samples of gonum's distributions, and against the general sum.
func TestPOverBySampling(t *testing.T) {
	t.Parallel()
	const trials = 200000
	for _, test := range []struct{ m, sigma, a, limit float64 }{
		{2735, 10, 80, 2790}, {2760, 25, 80, 2790}, {2722, 8, 20, 2740}, {2700, 60, 30, 2790},
	} {
		src := rand.NewPCG(9, 10)
		normal := distuv.Normal{Mu: test.m, Sigma: test.sigma, Src: src}
		flat := distuv.Uniform{Min: -test.a, Max: test.a, Src: src}
		over := 0
		for range trials {
			if normal.Rand()-flat.Rand() > test.limit {
				over++
			}
		}
		p := float64(over) / trials
		// Four standard deviations of the count.
		if got := POver(test.m, test.sigma, test.a, test.limit); math.Abs(got-p) > 4*math.Sqrt(p*(1-p)/trials) {
			t.Errorf("%+v: got %v, sampled %v", test, got, p)
		}
		d := doubt.Sum{Mid: test.m, Rects: []float64{test.a}, Scale: test.sigma, DOF: math.Inf(1)}.Dist()
		if got, want := POver(test.m, test.sigma, test.a, test.limit), 1-d.CDF(test.limit); !scalar.EqualWithinAbs(got, want, 1e-11) {
			t.Errorf("%+v: got %v, as a sum %v", test, got, want)
		}
	}
}

func TestHalfWidth(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name     string
		sigma, a float64
		coverage float64
		want     float64
		tol      float64
		source   string
	}{
		{"normal, 95 %", 1, 0, 0.95, 1.959963985, 1e-9, "JCGM 100:2008, Table G.1, 1.960 (read); digits computed"},
		{"normal, √3 σ", 1, 0, 0.9167354833, math.Sqrt(3), 1e-8, "JCGM 100:2008, G.5.2 note, 91.673 % (read); digits computed"},
		{"gauge alone", 0, 80, 0.95, 76, 1e-9, "95 % of a rectangle"},
		{"nothing unknown", 0, 0, 0.95, 0, 0, "definition"},
	} {
		if got := HalfWidth(test.sigma, test.a, test.coverage); !scalar.EqualWithinAbs(got, test.want, test.tol) {
			t.Errorf("%s: got %v, want %v; %s", test.name, got, test.want, test.source)
		}
	}
	// It is the interval whose tails POver finds.
	for _, sigma := range []float64{0.01, 1, 10, 200} {
		for _, coverage := range []float64{0.5, 0.95, 0.999} {
			w := HalfWidth(sigma, 80, coverage)
			if got := 1 - 2*POver(0, sigma, 80, w); !scalar.EqualWithinAbs(got, coverage, 1e-9) {
				t.Errorf("σ %v: ±%v holds %v, want %v", sigma, w, got, coverage)
			}
		}
	}
	if got := HalfWidth(-1, 1, 0.95); !math.IsNaN(got) {
		t.Errorf("σ below 0: got %v, want NaN", got)
	}
}
