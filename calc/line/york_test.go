package line

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/stat"

	"plainlift/calc/checks/points"
)

// all returns n numbers that are u.
func all(n int, u float64) []float64 {
	s := make([]float64, n)
	floats.AddConst(u, s)
	return s
}

func york(t *testing.T, s points.Set) Stated {
	t.Helper()
	l, err := York(s.X, s.Y, s.UX, s.UY)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// close complains about numbers that differ by more than tol of themselves.
func close(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !scalar.EqualWithinAbsOrRel(got, want, 1e-300, tol) {
		t.Errorf("%s: got %.15g, want %.15g", what, got, want)
	}
}

func TestPearsonWithYorksWeights(t *testing.T) {
	t.Parallel()
	l := york(t, points.Pearson)
	for _, row := range []struct {
		what           string
		got, want, tol float64
	}{
		// Neri et al., J. Phys. E 22 (1989) 215 and, for χ², Murray 1994, both as
		// public test suites quote them.
		{"intercept", l.Intercept, 5.47991022, 1e-9},
		{"slope", l.Slope, -0.480533407, 1e-9},
		{"χ²/(n−2)", l.Chi2 / float64(l.DOF), 1.4833, 2e-5},
		// The equations of York et al. 2004 with 25 digits, apart from this project.
		{"intercept", l.Intercept, 5.47991022403287, 1e-12},
		{"slope", l.Slope, -0.480533407446202, 1e-12},
		{"u(intercept)", l.InterceptU, 0.294970735493109, 1e-10},
		{"u(slope)", l.SlopeU, 0.0579850090007744, 1e-10},
		{"cov", l.Cov, -0.0164725446581158, 1e-10},
		{"χ²", l.Chi2, 11.8663531940614, 1e-12},
		// York et al. 2004 print these (from memory).
		{"u(intercept)", l.InterceptU, 0.2950, 2e-4},
		{"u(slope)", l.SlopeU, 0.0580, 3e-4},
		// Kalantar 1992 takes them at the observed points (quoted): 1 % apart.
		{"u(intercept) by the other convention", l.InterceptU / 0.29193, 1.0104, 2e-4},
		{"u(slope) by the other convention", l.SlopeU / 0.057617, 1.0064, 2e-4},
	} {
		close(t, row.what, row.got, row.want, row.tol)
	}
	if y, u := l.At(0); y != l.Intercept || u != l.InterceptU {
		t.Errorf("at 0: %v, %v", y, u)
	}
	_, u := l.At(3)
	close(t, "u at 3", u*u, l.InterceptU*l.InterceptU+9*l.SlopeU*l.SlopeU+6*l.Cov, 1e-12)
}

// Both axes alike is the line of least distance: Pearson's own of 1901, y =
// 5.784 − 0.5456 x (from memory), here as computed apart from this project.
func TestPearsonOrthogonal(t *testing.T) {
	t.Parallel()
	s := points.Pearson
	s.UX, s.UY = all(len(s.X), 0.3), all(len(s.X), 0.3)
	l := york(t, s)
	close(t, "intercept", l.Intercept, 5.78404377453008, 1e-11)
	close(t, "slope", l.Slope, -0.545561197520965, 1e-11)
}

// Exact x and alike y are ordinary least squares. With the certified residual
// standard deviation for u(y) the certified standard deviations follow, and χ² is
// the degrees of freedom. Norris is fitted as it is; NoInt1, certified through the
// origin, with each point mirrored. No other set of NIST's has errors in both.
func TestYorkAgainstNIST(t *testing.T) {
	t.Parallel()
	s := points.Norris
	s.UX, s.UY = all(len(s.X), 0), all(len(s.X), 0.884796396144373)
	l := york(t, s)
	close(t, "Norris, intercept", l.Intercept, -0.262323073774029, 1e-11)
	close(t, "Norris, its standard deviation", l.InterceptU, 0.232818234301152, 1e-12)
	close(t, "Norris, slope", l.Slope, 1.00211681802045, 1e-13)
	close(t, "Norris, its standard deviation", l.SlopeU, 0.429796848199937e-3, 1e-12)
	close(t, "Norris, χ²", l.Chi2, 34, 1e-11)

	s = points.NoInt1.Mirrored()
	s.UX, s.UY = all(len(s.X), 0), all(len(s.X), 3.56753034006338)
	l = york(t, s)
	close(t, "NoInt1, slope", l.Slope, 2.07438016528926, 1e-13)
	close(t, "NoInt1, its standard deviation", l.SlopeU*math.Sqrt2, 0.165289256198347e-1, 1e-12)
	close(t, "NoInt1, χ²", l.Chi2, 2*10, 1e-11) // each point twice, 10 degrees of freedom
}

// cloud is points about a line, uncertain in both directions.
func cloud(r *rand.Rand, n int) points.Set {
	s := points.Set{X: make([]float64, n), Y: make([]float64, n), UX: make([]float64, n), UY: make([]float64, n)}
	a, b := 4*r.NormFloat64(), 1+r.Float64()
	for i := range n {
		x := 10 * (float64(i) + r.Float64()) / float64(n)
		s.UX[i], s.UY[i] = 0.05+0.3*r.Float64(), 0.05+0.3*r.Float64()
		s.X[i] = x + s.UX[i]*r.NormFloat64()
		s.Y[i] = a + b*x + s.UY[i]*r.NormFloat64()
	}
	return s
}

// Exact x with weighted y, against a general-purpose library.
func TestYorkAgainstWeightedLeastSquares(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(9, 10))
	for range 100 {
		s := cloud(r, 3+r.IntN(10))
		s.UX = all(len(s.X), 0)
		w := make([]float64, len(s.X))
		for i, u := range s.UY {
			w[i] = 1 / (u * u)
		}
		a, b := stat.LinearRegression(s.X, s.Y, w, false)
		l := york(t, s)
		close(t, "slope", l.Slope, b, 1e-10)
		close(t, "intercept", l.Intercept, a, 1e-9)
		sum := floats.Sum(w)
		close(t, "u(slope)", l.SlopeU, 1/math.Sqrt(sum*stat.MomentAbout(2, s.X, stat.Mean(s.X, w), w)), 1e-10)
		// What hardly differs from exact hardly differs.
		s.UX = all(len(s.X), 1e-9)
		close(t, "nearly exact", york(t, s).Slope, b, 1e-10)
	}
}

// The same χ², least by trying: over all directions of the line, with none of
// York's equations. For a direction the intercept is a weighted mean.
func TestYorkAgainstBruteForce(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(11, 12))
	sets := []points.Set{points.Pearson}
	for range 50 {
		sets = append(sets, cloud(r, 3+r.IntN(8)))
	}
	for _, s := range sets {
		var intercept float64
		chi2 := func(angle float64) float64 {
			b := math.Tan(angle)
			rest, w := make([]float64, len(s.X)), make([]float64, len(s.X))
			for i := range rest {
				rest[i] = s.Y[i] - b*s.X[i]
				w[i] = 1 / (s.UY[i]*s.UY[i] + b*b*s.UX[i]*s.UX[i])
			}
			intercept = stat.Mean(rest, w)
			return floats.Sum(w) * stat.MomentAbout(2, rest, intercept, w)
		}
		const tries = 2000
		best, least := 0.0, math.Inf(1)
		for i := range tries {
			angle := math.Pi * ((float64(i)+0.5)/tries - 0.5)
			if c := chi2(angle); c < least {
				best, least = angle, c
			}
		}
		lo, hi := best-math.Pi/tries, best+math.Pi/tries
		for range 60 { // a third of the interval goes each time
			p, q := (2*lo+hi)/3, (lo+2*hi)/3
			if chi2(p) < chi2(q) {
				hi = q
			} else {
				lo = p
			}
		}
		least = chi2((lo + hi) / 2)
		l := york(t, s)
		close(t, "χ²", l.Chi2, least, 1e-9)
		// At a minimum half of the digits are lost.
		if b := math.Tan((lo + hi) / 2); math.Abs(l.Slope-b) > 1e-5*l.SlopeU || math.Abs(l.Intercept-intercept) > 1e-5*l.InterceptU {
			t.Errorf("got %v + %v x, by trying %v + %v x", l.Intercept, l.Slope, intercept, b)
		}
	}
}

// Exchanging the axes turns the line over, and no unit of either axis matters.
func TestYorkSymmetries(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(13, 14))
	for range 100 {
		s := cloud(r, 2+r.IntN(10))
		l := york(t, s)
		over := york(t, points.Set{X: s.Y, Y: s.X, UX: s.UY, UY: s.UX})
		close(t, "slope", over.Slope, 1/l.Slope, 1e-9)
		close(t, "intercept", over.Intercept, -l.Intercept/l.Slope, 1e-8)
		close(t, "u(slope)", over.SlopeU, l.SlopeU/(l.Slope*l.Slope), 1e-8)
		if !scalar.EqualWithinAbsOrRel(over.Chi2, l.Chi2, 1e-9, 1e-9) {
			t.Errorf("χ² %v, the other way round %v", l.Chi2, over.Chi2)
		}

		const kx, ky, moved = 6894.757, 1e-3, 300.0
		scaled := points.Set{}
		for i := range s.X {
			scaled.X = append(scaled.X, kx*(s.X[i]+moved))
			scaled.Y = append(scaled.Y, ky*s.Y[i])
			scaled.UX = append(scaled.UX, kx*s.UX[i])
			scaled.UY = append(scaled.UY, ky*s.UY[i])
		}
		m := york(t, scaled)
		close(t, "slope, scaled", m.Slope, l.Slope*ky/kx, 1e-9)
		close(t, "u(slope), scaled", m.SlopeU, l.SlopeU*ky/kx, 1e-8)
		y, u := l.At(5)
		ym, um := m.At(kx * (5 + moved))
		close(t, "line, scaled", ym, ky*y, 1e-9)
		close(t, "its u, scaled", um, ky*u, 1e-8)
	}
}

// The stated uncertainties are those of repeated experiments.
func TestYorkBySimulation(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(15, 16))
	const runs, ux, uy = 20000, 0.05, 0.1
	true0 := []float64{1, 2, 4, 7, 8}
	n := len(true0)
	x, y := make([]float64, n), make([]float64, n)
	slopes, zeros := make([]float64, runs), make([]float64, runs)
	var slopeU, zeroU, cov, chi2, small float64
	for i := range runs {
		for j, v := range true0 {
			x[j], y[j] = v+ux*r.NormFloat64(), 5+3*v+uy*r.NormFloat64()
		}
		l := york(t, points.Set{X: x, Y: y, UX: all(n, ux), UY: all(n, uy)})
		slopes[i], zeros[i] = l.Slope, l.Intercept
		slopeU += l.SlopeU * l.SlopeU / runs
		zeroU += l.InterceptU * l.InterceptU / runs
		cov += l.Cov / runs
		chi2 += l.Chi2 / runs
		if l.P() < 0.05 {
			small += 1.0 / runs
		}
	}
	// A variance from 20,000 runs is good to 1 %; five of that.
	close(t, "u²(slope)", slopeU, stat.Variance(slopes, nil), 0.05)
	close(t, "u²(intercept)", zeroU, stat.Variance(zeros, nil), 0.05)
	close(t, "covariance", cov, stat.Covariance(zeros, slopes, nil), 0.05)
	close(t, "mean χ²", chi2, float64(n-2), 0.05)
	close(t, "part of the tests that call a line no line", small, 0.05, 0.15)
}

// Two points: the line through both, and its doubt carried through by hand.
func TestYorkTwoPoints(t *testing.T) {
	t.Parallel()
	s := points.Set{X: []float64{2450, 2700}, Y: []float64{1390, 1565}, UX: all(2, 10), UY: all(2, 10)}
	l := york(t, s)
	close(t, "slope", l.Slope, 0.7, 1e-14)
	close(t, "intercept", l.Intercept, -325, 1e-12)
	// slope = (y₂ − y₁)/(x₂ − x₁): each x and each y moves it by u/250, an x times
	// the slope. intercept = (y₁x₂ − y₂x₁)/(x₂ − x₁).
	point := math.Hypot(10, 0.7*10)
	close(t, "u(slope)", l.SlopeU, point*math.Sqrt2/250, 1e-12)
	close(t, "u(intercept)", l.InterceptU, point*math.Hypot(2700, 2450)/250, 1e-12)
	if l.Chi2 != 0 || l.DOF != 0 || !math.IsNaN(l.P()) {
		t.Errorf("two points are judged: χ² %v, %v", l.Chi2, l.P())
	}
}

func TestYorkErrors(t *testing.T) {
	t.Parallel()
	ones := []float64{1, 1, 1}
	for _, test := range []struct {
		name         string
		x, y, ux, uy []float64
		want         error
	}{
		{"lengths of u(x)", ones, ones, ones[:2], ones, ErrLengths},
		{"lengths of u(y)", ones, ones, ones, ones[:2], ErrLengths},
		{"lengths", ones, ones[:2], ones, ones, ErrLengths},
		{"one", ones[:1], ones[:1], ones[:1], ones[:1], ErrFew},
		{"one x", ones, []float64{1, 2, 3}, ones, ones, ErrVertical},
		{"NaN", []float64{1, 2, math.NaN()}, ones, ones, ones, ErrFinite},
		{"exact point", []float64{1, 2, 3}, ones, []float64{0, 1, 1}, []float64{0, 1, 1}, ErrUncertainty},
		{"negative", []float64{1, 2, 3}, ones, []float64{-1, 1, 1}, ones, ErrUncertainty},
		{"u NaN", []float64{1, 2, 3}, ones, ones, []float64{1, math.NaN(), 1}, ErrUncertainty},
		{"u infinite", []float64{1, 2, 3}, ones, ones, all(3, math.Inf(1)), ErrFinite},
		{"u too small", []float64{1, 2, 3}, []float64{1, 3, 2}, all(3, 1e-200), all(3, 1e-200), ErrFinite},
		// Taller than wide: the best line is upright, and the level one the worst.
		{"upright", []float64{1, 1, 2, 2}, []float64{0, 9, 0, 9}, all(4, 1), all(4, 1), ErrSettle},
	} {
		if _, err := York(test.x, test.y, test.ux, test.uy); !errors.Is(err, test.want) {
			t.Errorf("%s: got %v, want %v", test.name, err, test.want)
		}
	}
}

// Whatever the points, there is a finite line with a finite doubt or an error.
func FuzzYork(f *testing.F) {
	f.Add(uint64(1), 5, 1.0, 1.0)
	f.Add(uint64(2), 2, 0.0, 1e-3)
	f.Add(uint64(3), 40, 1e3, 1e-9)
	f.Add(uint64(4), 4, 1e-150, 1e150)
	f.Fuzz(func(t *testing.T, seed uint64, n int, ux, uy float64) {
		n = 1 + int(uint(n)%50)
		r := rand.New(rand.NewPCG(seed, 1))
		x, y := make([]float64, n), make([]float64, n)
		for i := range n {
			x[i], y[i] = math.Round(10*r.NormFloat64()), r.NormFloat64()*uy
		}
		l, err := York(x, y, all(n, ux), all(n, uy))
		if err != nil {
			return
		}
		for _, v := range []float64{l.Intercept, l.Slope, l.InterceptU, l.SlopeU, l.Cov} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%v %v %v %v: %+v", x, y, ux, uy, l)
			}
		}
	})
}
