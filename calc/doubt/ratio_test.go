package doubt

import (
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

var gains = []Gain{
	{Before: 2450, After: 2700, Err: 80, Step: 10, Shared: true, DeadHi: 0.3},
	{Before: 2450, After: 2700, Err: 80, Step: 10, DeadHi: 0.3},
	{Before: 2450, After: 2700, Err: 1, Step: 10, DeadHi: 0.3},
	{Before: 2450, After: 2700, Err: 80, Shared: true, DeadLo: 0.1, DeadHi: 0.1},
	{Before: 2450, After: 2300, Err: 80, Step: 10, Shared: true, DeadHi: 0.3}, // fell
	{Before: 2450, After: 2460, Err: 80, Step: 10, DeadHi: 0.5},
	{Before: 2450, After: 2450, Err: 80, Step: 10, Shared: true, DeadHi: 0.3},
	{Before: 2450, After: 2700, Err: 1000, Step: 1, Shared: true, DeadHi: 3},
	{Before: 2450, After: 2700, Err: 1000, Step: 10, DeadLo: -0.5, DeadHi: 3},
	{Before: 2450, After: 2700, Err: 1e-3, Step: 1e-6, DeadHi: 0.3},
}

// The same model drawn: four million trials place the CDF to ±0.00025 (one
// standard error). The trials are the test's own, not Gain.Draw.
func TestGainAgainstTrials(t *testing.T) {
	const trials, bins = 4_000_000, 20
	for k, g := range gains {
		if k > 3 && testing.Short() {
			continue
		}
		var edges [bins - 1]float64
		for i := range edges {
			edges[i] = g.Quantile(float64(i+1) / bins)
		}
		r := rand.New(rand.NewPCG(11, uint64(k)))
		within := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
		n := trials
		if k > 1 {
			n /= 4
		}
		var count [bins]int
		for range n {
			gauge1, gauge2 := within(-g.Err, g.Err), within(-g.Err, g.Err)
			if g.Shared {
				gauge2 = gauge1
			}
			first := g.Before + gauge1 + within(-g.Step/2, g.Step/2)
			second := g.After + gauge2 + within(-g.Step/2, g.Step/2)
			x := (1 + within(g.DeadLo, g.DeadHi)) * (second - first) / first
			count[sort.SearchFloat64s(edges[:], x)]++
		}
		sum := 0
		limit := 5 * 0.5 / math.Sqrt(float64(n))
		for i := range edges {
			sum += count[i]
			got, want := float64(sum)/float64(n), float64(i+1)/bins
			if math.Abs(got-want) > limit {
				t.Errorf("%+v: %.5f of the trials under the %.2f quantile", g, got, want)
			}
		}
	}
}

// With no error of reading the gain is d's own rectangle.
func TestGainOfExactPressures(t *testing.T) {
	g := Gain{Before: 2450, After: 2700, DeadLo: 0, DeadHi: 0.3}
	rise := 250.0 / 2450
	lo, hi := g.Interval(0.95)
	run(t, []check{
		{"median", g.Median(), 1.15 * rise, 1e-12, "arithmetic"},
		{"low end", lo, (1 + 0.3*0.025) * rise, 1e-12, "arithmetic"},
		{"high end", hi, (1 + 0.3*0.975) * rise, 1e-12, "arithmetic"},
		{"least", g.Quantile(0), rise, 1e-12, "arithmetic"},
		{"most", g.Quantile(1), 1.3 * rise, 1e-12, "arithmetic"},
	})
	g.DeadHi = 0 // nothing in doubt: 2 % pressure is 2 % lift
	lo, hi = g.Interval(0.95)
	if !scalar.EqualWithinAbs(lo, rise, 1e-15) || !scalar.EqualWithinAbs(hi, rise, 1e-15) {
		t.Errorf("exact: %g to %g, want %g", lo, hi, rise)
	}
	same := Gain{Before: 2450, After: 2450, DeadHi: 0.3}
	if lo, hi := same.Interval(0.95); lo != 0 || hi != 0 || same.Median() != 0 {
		t.Errorf("no rise: %g to %g", lo, hi)
	}
	if same.CDF(-1e-9) != 0 || same.CDF(1e-9) != 1 {
		t.Error("no rise: the CDF is not a step at 0")
	}
}

// Two independent readings, known dead weight: P(gain ≤ g) is the area of the
// square of errors under a line, here by elementary geometry.
func TestGainGeometry(t *testing.T) {
	g := Gain{Before: 100, After: 110, Err: 10}
	// p₂ ≤ p₁ leaves out all but a corner: E₂ − E₁ ≤ −10 of ±20, half of ½².
	run(t, []check{{"no gain", g.CDF(0), 0.125, 1e-14, "area of a triangle"}})
	// Gain 10 % exactly: E₂ ≤ 1.1·E₁, half of the square.
	run(t, []check{{"as read", g.CDF(0.1), 0.5, 1e-13, "symmetry"}})
	g.Shared = true // (110 + E)/(100 + E) ≤ 1.12 for E ≥ −50/3, always; ≤ 1.10 for E ≥ 0
	run(t, []check{
		{"shared, as read", g.CDF(0.1), 0.5, 1e-13, "half of the errors"},
		{"shared, 10/95", g.CDF(10.0 / 95), 0.75, 1e-12, "errors from −5"},
		{"shared, most", g.Quantile(1), 10.0 / 90, 1e-13, "error −10"},
	})
}

// With the dead weight known, against the limits smeared over a grid; with it
// spread, against the plain mean over many values of it.
func TestGainAgainstConvolution(t *testing.T) {
	g := Gain{Before: 2450, After: 2700, Err: 80, Step: 1, Shared: true}
	least, most := g.ratios()
	for i := range 60 {
		q := least + (most-least)*(float64(i)+0.5)/60
		smeared := Sum{Rects: []float64{(q - 1) * 80, 0.5, q * 0.5}}.convolved()
		run(t, []check{{"known dead weight", g.CDF(q - 1), smeared(q*2450 - 2700), 1e-5, "convolution on a grid"}})
	}
	for _, g := range gains[:9] { // the last is nearly a step in d, too sharp for the mean
		least, most := g.Quantile(0), g.Quantile(1)
		for i := range 40 {
			x := least + (most-least)*float64(i)/39
			const n = 4000
			sum := 0.0
			for k := range n {
				sum += g.given(1+x/(1+g.DeadLo+(g.DeadHi-g.DeadLo)*(float64(k)+0.5)/n)) / n
			}
			run(t, []check{{"spread dead weight", g.CDF(x), sum, 5e-5, "midpoint rule"}})
		}
	}
}

func TestGainProperties(t *testing.T) {
	for _, g := range gains {
		least, most := g.Quantile(0), g.Quantile(1)
		if least != most && (g.CDF(least-1e-9) != 0 || g.CDF(most+1e-9) < 1-1e-9) {
			t.Errorf("%+v: CDF outside its range: %g, %g", g, g.CDF(least-1e-9), g.CDF(most+1e-9))
		}
		before := 0.0
		for i := range 301 {
			x := least + (most-least)*float64(i)/300
			p := g.CDF(x)
			if p < before-1e-9 || p > 1+1e-12 {
				t.Errorf("%+v: CDF at %g is %g after %g", g, x, p, before)
			}
			before = p
		}
		for _, p := range []float64{0.001, 0.025, 0.3, 0.5, 0.9, 0.975} {
			if got := g.CDF(g.Quantile(p)); !scalar.EqualWithinAbs(got, p, 1e-6) {
				t.Errorf("%+v: CDF of the %g quantile is %g", g, p, got)
			}
		}
	}
	// A shared error leaves the ratio far better known (DESIGN: shared causes).
	shared, apart := gains[0], gains[1]
	lo1, hi1 := shared.Interval(0.95)
	lo2, hi2 := apart.Interval(0.95)
	if (hi1-lo1)*3 > hi2-lo2 {
		t.Errorf("one gauge %.4f to %.4f, two %.4f to %.4f", lo1, hi1, lo2, hi2)
	}
	// The law of propagation for the ratio alone, where the errors are small:
	// u² = (r − 1)²·u_E²/p₁² shared, (1 + r²)·u_E²/p₁² apart, r = p₂/p₁.
	for _, both := range []bool{true, false} {
		g := Gain{Before: 2450, After: 2700, Err: 5, Shared: both}
		r := 2700.0 / 2450
		b := Budget{{U: Rect(5), Sens: (1 - r) / 2450, DOF: inf}}
		if !both {
			b = Budget{{U: Rect(5), Sens: -r / 2450, DOF: inf}, {U: Rect(5), Sens: 1.0 / 2450, DOF: inf}}
		}
		sim := NewSimulation(g.Draw)
		sim.Run(400_000)
		_, u, _, _, _ := sim.Summary(0.95)
		if !scalar.EqualWithinRel(u, b.U(), 0.006) {
			t.Errorf("shared %t: u %g by trials, %g by propagation", both, u, b.U())
		}
	}
	// A finer step and a better gauge each narrow it.
	g := gains[1]
	width := func(g Gain) float64 { lo, hi := g.Interval(0.95); return hi - lo }
	finer, better := g, g
	finer.Step, better.Err = 5, 40
	if width(finer) >= width(g) || width(better) >= width(g) {
		t.Error("a finer step or a better gauge should narrow the interval")
	}
}

func TestGainOutsideDomain(t *testing.T) {
	nan := math.NaN()
	for _, g := range []Gain{
		{Before: 0, After: 10}, {Before: 80, After: 90, Err: 80}, {Before: 5, After: 10, Step: 10},
		{Before: 10, After: 11, Err: -1}, {Before: 10, After: 11, Step: -1}, {Before: 10, After: nan},
		{Before: nan, After: 11}, {Before: inf, After: 11}, {Before: 10, After: inf},
		{Before: 10, After: 11, DeadLo: -1}, {Before: 10, After: 11, DeadLo: 0.3}, {Before: 10, After: 11, DeadHi: inf},
		{Before: 10, After: 11, DeadHi: nan}, {Before: 10, After: 11, Err: nan},
	} {
		lo, hi := g.Interval(0.95)
		for _, v := range []float64{g.CDF(0.1), g.Median(), lo, hi} {
			if !math.IsNaN(v) {
				t.Errorf("%+v: got %g, want NaN", g, v)
			}
		}
	}
	for _, v := range []float64{gains[0].Quantile(-1), gains[0].Quantile(2), gains[0].Quantile(nan), gains[0].CDF(nan)} {
		if !math.IsNaN(v) {
			t.Errorf("got %g, want NaN", v)
		}
	}
	if gains[0].CDF(inf) != 1 || gains[0].CDF(-inf) != 0 {
		t.Error("at infinity")
	}
}

func TestGaussRule(t *testing.T) {
	for power := 0; power <= 7; power++ { // exact up to degree 7
		sum := 0.0
		for _, n := range gauss {
			sum += n.weight * (math.Pow(0.5+n.at, float64(power)) + math.Pow(0.5-n.at, float64(power)))
		}
		run(t, []check{{"∫ xⁿ from 0 to 1", sum, 1 / float64(power+1), 1e-15, "1/(n + 1)"}})
	}
}
