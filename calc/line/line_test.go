package line

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/stat"

	"plainlift/calc/checks/points"
)

func TestNorris(t *testing.T) {
	t.Parallel()
	l, err := Ordinary(points.Norris.X, points.Norris.Y)
	if err != nil {
		t.Fatal(err)
	}
	var syy float64
	for _, y := range points.Norris.Y {
		syy += (y - l.meanY) * (y - l.meanY)
	}
	// NIST StRD, certified to 15 digits; 12 are asked of all of them.
	for _, test := range []struct {
		name      string
		got, want float64
	}{
		{"intercept", l.Intercept, -0.262323073774029},
		{"its standard deviation", l.InterceptU, 0.232818234301152},
		{"slope", l.Slope, 1.00211681802045},
		{"its standard deviation", l.SlopeU, 0.429796848199937e-3},
		{"residual standard deviation", l.S, 0.884796396144373},
		{"residual sum of squares", l.SSE, 26.6173985294224},
		{"regression sum of squares", syy - l.SSE, 4255954.13232369},
		{"R²", 1 - l.SSE/syy, 0.999993745883712},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, 1e-12) {
			t.Errorf("%s: got %.15g, certified %.15g", test.name, test.got, test.want)
		}
	}
	if l.DOF != 34 {
		t.Errorf("degrees of freedom: got %d, want 34", l.DOF)
	}
}

func TestThermometer(t *testing.T) {
	t.Parallel()
	l, err := Ordinary(points.Thermometer.X, points.Thermometer.Y)
	if err != nil {
		t.Fatal(err)
	}
	at30, u30 := l.At(10)
	r := l.Cov / (l.InterceptU * l.SlopeU)
	// Printed: JCGM 100:2008, H.3 (read), half a unit of the last digit printed.
	// Computed: the same data refitted to many digits apart from this project.
	for _, test := range []struct {
		name               string
		got, printed, half float64
		computed           float64
	}{
		{"y1", l.Intercept, -0.1712, 0.00005, -0.17120379013135},
		{"s(y1)", l.InterceptU, 0.0029, 0.00005, 0.00287759783515995},
		{"y2", l.Slope, 0.00218, 0.000005, 0.00218269773988728},
		{"s(y2)", l.SlopeU, 0.00067, 0.000005, 0.000667938773227832},
		{"r(y1, y2)", r, -0.930, 0.0005, -0.930429603093446},
		{"s", l.S, 0.0035, 0.00005, 0.00349756396350528},
		{"SSE", l.SSE, 0.00011, 0.000005, 0.000110096583109297},
		{"b(30 °C)", at30, -0.1494, 0.00005, -0.149376812732477},
		{"u(b(30 °C))", u30, 0.0041, 0.00005, 0.00413859575285495},
	} {
		if math.Abs(test.got-test.printed) > test.half {
			t.Errorf("%s: got %v, printed %v", test.name, test.got, test.printed)
		}
		if !scalar.EqualWithinRel(test.got, test.computed, 1e-11) {
			t.Errorf("%s: got %.15g, computed %.15g", test.name, test.got, test.computed)
		}
	}
	// The formula of H.3 for u(b(t)), which uses the correlation.
	by := math.Sqrt(l.InterceptU*l.InterceptU + 100*l.SlopeU*l.SlopeU + 2*10*l.InterceptU*l.SlopeU*r)
	if !scalar.EqualWithinRel(u30, by, 1e-12) {
		t.Errorf("u(b(30 °C)): got %v, with the correlation %v", u30, by)
	}
}

// Pearson's data of 1901 without weights: computed apart from this project.
func TestPearsonWithoutWeights(t *testing.T) {
	t.Parallel()
	l, err := Ordinary(points.Pearson.X, points.Pearson.Y)
	if err != nil {
		t.Fatal(err)
	}
	if !scalar.EqualWithinRel(l.Intercept, 5.76118519043904, 1e-13) || !scalar.EqualWithinRel(l.Slope, -0.539577274984041, 1e-13) {
		t.Errorf("got %.15g, %.15g", l.Intercept, l.Slope)
	}
}

// Against a general-purpose library, and a far origin does no harm.
func TestAgainstLibrary(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		n := 3 + rnd.IntN(20)
		x, y, far := make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range x {
			x[i] = rnd.Float64()
			y[i] = 3 - 2*x[i] + 0.1*rnd.NormFloat64()
			far[i] = x[i] + 1024
		}
		l, err := Ordinary(x, y)
		if err != nil {
			t.Fatal(err)
		}
		a, b := stat.LinearRegression(x, y, nil, false)
		if !scalar.EqualWithinAbsOrRel(l.Intercept, a, 1e-10, 1e-10) || !scalar.EqualWithinAbsOrRel(l.Slope, b, 1e-10, 1e-10) {
			t.Fatalf("got %v + %v x, library %v + %v x", l.Intercept, l.Slope, a, b)
		}
		m, err := Ordinary(far, y)
		if err != nil {
			t.Fatal(err)
		}
		y1, u1 := l.At(0.5)
		y2, u2 := m.At(1024.5)
		if !scalar.EqualWithinRel(l.Slope, m.Slope, 1e-9) || !scalar.EqualWithinRel(y1, y2, 1e-9) || !scalar.EqualWithinRel(u1, u2, 1e-9) {
			t.Fatalf("moving the origin changed the line: %+v, %+v", l, m)
		}
		_, u := l.New(0.5)
		if !scalar.EqualWithinRel(u*u, u1*u1+l.S*l.S, 1e-12) {
			t.Fatalf("new reading: got %v", u)
		}
	}
}

// The stated uncertainties are those of repeated experiments.
func TestUncertaintiesBySimulation(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(7, 8))
	x := []float64{1, 2, 4, 7, 8}
	const runs = 20000
	slopes, tops, us, utops := make([]float64, runs), make([]float64, runs), 0.0, 0.0
	y := make([]float64, len(x))
	for i := range runs {
		for j := range x {
			y[j] = 5 + 3*x[j] + rnd.NormFloat64()
		}
		l, err := Ordinary(x, y)
		if err != nil {
			t.Fatal(err)
		}
		top, u := l.At(12)
		slopes[i], tops[i] = l.Slope, top
		us += l.SlopeU * l.SlopeU / runs
		utops += u * u / runs
	}
	// Four standard deviations of a variance from 20,000 runs, and of the mean u².
	if got, want := us, stat.Variance(slopes, nil); !scalar.EqualWithinRel(got, want, 0.05) {
		t.Errorf("mean u² of the slope %v, variance of the slopes %v", got, want)
	}
	if got, want := utops, stat.Variance(tops, nil); !scalar.EqualWithinRel(got, want, 0.05) {
		t.Errorf("mean u² at 12 %v, variance %v", got, want)
	}
}

func TestTwoPoints(t *testing.T) {
	t.Parallel()
	l, err := Ordinary([]float64{1, 3}, []float64{5, 1})
	if err != nil || l.Slope != -2 || l.Intercept != 7 || l.DOF != 0 {
		t.Fatalf("got %+v, %v", l, err)
	}
	for _, u := range []float64{l.S, l.SlopeU, l.InterceptU, l.Cov} {
		if !math.IsNaN(u) {
			t.Errorf("an exact line claims a doubt of %v", u)
		}
	}
}

func TestErrors(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name string
		x, y []float64
		want error
	}{
		{"lengths", []float64{1, 2}, []float64{1}, ErrLengths},
		{"none", nil, nil, ErrFew},
		{"one", []float64{1}, []float64{1}, ErrFew},
		{"one x", []float64{2, 2, 2}, []float64{1, 2, 3}, ErrVertical},
		{"one x that is no binary fraction", []float64{0.1, 0.1, 0.1}, []float64{1, 2, 3}, ErrVertical},
		{"NaN", []float64{1, math.NaN()}, []float64{1, 2}, ErrFinite},
		{"infinite", []float64{1, 2}, []float64{1, math.Inf(1)}, ErrFinite},
		{"too large", []float64{1e200, -1e200}, []float64{1, 2}, ErrFinite},
	} {
		if _, err := Ordinary(test.x, test.y); !errors.Is(err, test.want) {
			t.Errorf("%s: got %v, want %v", test.name, err, test.want)
		}
	}
}
