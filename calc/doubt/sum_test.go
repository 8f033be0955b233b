package doubt

import (
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/stat/distuv"
)

func TestPublishedSums(t *testing.T) {
	root3 := math.Sqrt(3)
	_, four := Sum{Rects: []float64{root3, root3, root3, root3}}.Dist().Interval(0.95)
	_, uneven := Sum{Rects: []float64{root3, root3, root3, 10 * root3}}.Dist().Interval(0.95)
	_, normal := Sum{Scale: 2, DOF: inf}.Dist().Interval(0.95)
	b := Budget{{U: Rect(root3), Sens: 1, DOF: inf}, {U: Rect(root3), Sens: 1, DOF: inf},
		{U: Rect(root3), Sens: 1, DOF: inf}, {U: Rect(10 * root3), Sens: 1, DOF: inf}}
	run(t, []check{
		{"four normals", normal, 3.92, 0.005, "JCGM 101 9.2.2, Table 2, read"},
		{"four normals, digits", normal, 3.919928, 5e-7, "computed"},
		{"four rectangles", four, 3.879407, 5e-7, "JCGM 101 9.2.3, computed exactly"},
		{"four rectangles, closed", four, 2 * root3 * (2 - math.Pow(0.6, 0.25)), 1e-11, "JCGM 101 9.2.3"},
		{"one ten times wider", uneven, 17.0, 0.05, "JCGM 101 9.2.4, Table 4, read (simulated there)"},
		{"the law of propagation there", T(0.95, b.DOF()) * b.U(), 19.9, 0.05, "JCGM 101 9.2.4, Table 4, read"},
		{"u there", b.U(), 10.148892, 5e-7, "computed"},
		{"end of √3 σ", Sum{Rects: []float64{root3}}.Dist().Quantile(1), root3, 1e-15, "definition"},
	})
}

func TestOneLimitIsExact(t *testing.T) {
	for _, scale := range []float64{1, 6894.757293168361} {
		d := Sum{Mid: 2610 * scale, Rects: []float64{80 * scale}}.Dist()
		run(t, []check{
			{"under 2680 of 2610 ± 80", d.CDF(2680 * scale), 150.0 / 160, 1e-14, "arithmetic"},
			{"low end", d.Quantile(0.025), 2534 * scale, 1e-12 * scale, "arithmetic"},
			{"edge", d.CDF(2690 * scale), 1, 1e-14, "arithmetic"},
			{"height", d.Density(2600*scale) * scale, 1.0 / 160, 1e-16, "arithmetic"},
			{"past the edge", d.Density(2691 * scale), 0, 0, "arithmetic"},
		})
	}
	two := Sum{Rects: []float64{3, 1}}.Dist() // a trapezoid from 2 to 4
	run(t, []check{
		{"trapezoid", two.CDF(3), 1 - 1.0/24, 1e-15, "area of the corner triangle"},
		{"trapezoid, flat", two.CDF(1), 0.5 + 1.0/6, 1e-15, "area"},
		{"trapezoid, density", two.Density(3), 1.0 / 12, 1e-15, "half of the flat top 1/6"},
	})
}

// The normal with one limit, from its own closed form:
// P(over L) = (σ/2a)·[G((m+a−L)/σ) − G((m−a−L)/σ)], G(x) = x·Φ(x) + φ(x).
func TestOneLimitWithNormal(t *testing.T) {
	g := func(x float64) float64 { return x*distuv.UnitNormal.CDF(x) + distuv.UnitNormal.Prob(x) }
	const m, sigma, a = 2735.0, 7.0, 80.0
	d := Sum{Mid: m, Rects: []float64{a}, Scale: sigma, DOF: inf}.Dist()
	for _, limit := range []float64{2640, 2700, 2735, 2790, 2815, 2840} {
		_, _, over := d.Within(math.Inf(-1), limit)
		want := sigma / (2 * a) * (g((m+a-limit)/sigma) - g((m-a-limit)/sigma))
		run(t, []check{{"over", over, want, 1e-12, "integral of the normal by parts"}})
	}
}

// sums are the cases that the table and closed forms are held to.
var sums = []Sum{
	{Rects: []float64{80, 5, 3}, Scale: 4, DOF: 3},
	{Rects: []float64{80, 5, 3}},
	{Rects: []float64{80, 5, 3}, Scale: 4, DOF: 1},
	{Rects: []float64{1, 1, 1}, Scale: 1, DOF: 1},
	{Rects: []float64{1, 1, 1}, Scale: 1, DOF: inf},
	{Rects: []float64{1, 1, 1}, Scale: 0.01, DOF: 2},
	{Rects: []float64{1, 1, 0.5}, Scale: 1e-5, DOF: 1},
	{Rects: []float64{1, 0.01, 0.0001}, Scale: 0.001, DOF: inf},
	{Rects: []float64{1, 0.9, 1e-7}, Scale: 1e-4, DOF: 1},
	{Rects: []float64{1, 1e-7, 0}, Scale: 0.2, DOF: 2.7},
	{Rects: []float64{1, 0.9, 0.5}, Scale: 30, DOF: 1},
	{Rects: []float64{1, 0.9}, Scale: 1e6, DOF: 1e12},
	{Rects: []float64{1, 1e-3, 1e-3}, Scale: 1e-3, DOF: 3},
	{Rects: []float64{5, 5, 5, 5, 5, 5, 5, 5, 5, 5}},
	{Rects: []float64{1, 1e-4, 1e-4, 1e-4, 1e-4, 1e-5}},
	{Rects: []float64{1e6, 1}},
	{Rects: []float64{1e7, 3, 1}, Scale: 1, DOF: 1},
	{Rects: []float64{2}, Scale: 1, DOF: 1},
	{Rects: []float64{0.2}, Scale: 1, DOF: 1},
	{Rects: []float64{2}, Scale: 1e9, DOF: 4},
	{Scale: 3, DOF: 1},
}

// wide is the sum of all widths, the scale on which a distribution is looked at.
func (s Sum) wide() float64 {
	w := s.Scale
	for _, a := range s.Rects {
		w += a
	}
	return w
}

// convolved returns the CDF by brute force: the limits smeared one after the
// other over a fine grid of cells, and the t term of distuv added cell by cell.
func (s Sum) convolved() func(x float64) float64 {
	const cells = 6000
	reach := s.wide() - s.Scale
	h := 2 * reach / cells
	f := make([]float64, cells+1) // CDF at −reach + i·h, a step at 0 to begin with
	for i := range f {
		f[i] = map[bool]float64{true: 1}[i > cells/2]
	}
	f[cells/2] = 0.5
	for _, a := range s.Rects {
		area := make([]float64, cells+1)
		for i := 1; i <= cells; i++ {
			area[i] = area[i-1] + h*(f[i-1]+f[i])/2
		}
		under := func(x float64) float64 { // ∫ f from −reach to x
			u := (x + reach) / h
			switch {
			case u <= 0:
				return 0
			case u >= cells:
				return area[cells] + x - reach
			}
			i := int(u)
			e := (u - float64(i)) * h
			return area[i] + e*(f[i]+(f[i+1]-f[i])*e/(2*h))
		}
		if a > h/100 {
			next := make([]float64, cells+1)
			for i := range next {
				x := -reach + float64(i)*h
				next[i] = (under(x+a) - under(x-a)) / (2 * a)
			}
			f = next
		}
	}
	term := distuv.StudentsT{Sigma: 1, Nu: s.DOF}.CDF
	if s.DOF > 1e6 {
		term = distuv.UnitNormal.CDF
	}
	return func(x float64) float64 {
		if reach == 0 {
			return term(x / s.Scale)
		}
		if s.Scale == 0 {
			u := max(0, min((x+reach)/h, cells-1e-9))
			i := int(u)
			return f[i] + (f[i+1]-f[i])*(u-float64(i))
		}
		sum := 0.0
		for i := range cells {
			if mass := f[i+1] - f[i]; mass > 0 {
				sum += mass * term((x+reach-(float64(i)+0.5)*h)/s.Scale)
			}
		}
		return sum
	}
}

func TestSumAgainstConvolution(t *testing.T) {
	for _, s := range sums {
		d, f, wide := s.Dist(), s.convolved(), s.wide()
		worst := 0.0
		for i := -24; i <= 24; i++ {
			x := wide * 1.3 * (float64(i) + 0.3) / 24
			worst = max(worst, math.Abs(d.CDF(x)-f(x)))
		}
		// Near the edge of the widest limit, where all that bends is.
		edge := 0.0
		for _, a := range s.Rects {
			edge = max(edge, a)
		}
		for i := -12; i <= 12; i++ {
			x := edge + (wide-edge)*1.5*float64(i)/12
			worst = max(worst, math.Abs(d.CDF(x)-f(x)))
		}
		if worst > 3e-4 { // the grid itself is good to 2e-4
			t.Errorf("%v: off by %.1e", s, worst)
		}
	}
}

// Four million trials place the CDF to ±0.00025 (one standard error).
func TestSumAgainstTrials(t *testing.T) {
	const trials, bins = 4_000_000, 40
	for k, s := range []Sum{sums[0], sums[1], sums[3], sums[5], sums[13]} {
		d := s.Dist()
		var edges [bins - 1]float64
		for i := range edges {
			edges[i] = d.Quantile(float64(i+1) / bins)
		}
		source := rand.NewPCG(7, uint64(k))
		r := rand.New(source)
		term := distuv.StudentsT{Sigma: 1, Nu: s.DOF, Src: source}
		if math.IsInf(s.DOF, 1) {
			term.Nu = 1e9
		}
		var count [bins]int
		for range trials {
			x := 0.0
			for _, a := range s.Rects {
				x += a * (2*r.Float64() - 1)
			}
			if s.Scale > 0 {
				x += s.Scale * term.Rand()
			}
			count[sort.SearchFloat64s(edges[:], x)]++
		}
		sum := 0
		for i := range edges {
			sum += count[i]
			got, want := float64(sum)/trials, float64(i+1)/bins
			if math.Abs(got-want) > 0.00125 {
				t.Errorf("%v: %.5f of the trials under the %.3f quantile", s, got, want)
			}
		}
	}
}

func TestSumProperties(t *testing.T) {
	for _, s := range sums {
		d, wide := s.Dist(), s.wide()
		before := 0.0
		for i := -400; i <= 400; i++ {
			x := wide * 2 * float64(i) / 400
			p := d.CDF(x)
			if p < before-1e-12 || p < 0 || p > 1 {
				t.Errorf("%v: CDF at %g is %g after %g", s, x, p, before)
			}
			before = p
			if f := d.Density(x); !(f >= 0) {
				t.Errorf("%v: density at %g is %g", s, x, f)
			}
			if q := d.CDF(-x); !scalar.EqualWithinAbs(p+q, 1, 1e-9) {
				t.Errorf("%v: not symmetric at %g: %g and %g", s, x, p, q)
			}
		}
		for _, p := range []float64{1e-4, 0.01, 0.025, 0.3, 0.5, 0.75, 0.975, 0.9995} {
			x := d.Quantile(p)
			if got := d.CDF(x); !scalar.EqualWithinAbs(got, p, 1e-8) {
				t.Errorf("%v: CDF of the %g quantile is %g", s, p, got)
			}
		}
		lo, hi := d.Interval(0.95)
		if lo != -hi || !scalar.EqualWithinRel(hi, d.Quantile(0.975), 1e-9) {
			t.Errorf("%v: interval %g to %g, quantile %g", s, lo, hi, d.Quantile(0.975))
		}
		// The density, added up, is the probability.
		const n = 4000
		area, h := 0.0, (hi-lo)/n
		for i := range n {
			area += h * d.Density(lo+(float64(i)+0.5)*h)
		}
		if !scalar.EqualWithinAbs(area, 0.95, 5e-4) {
			t.Errorf("%v: density over the 95 %% interval adds up to %g", s, area)
		}
	}
}

// Far out with one degree of freedom the tail is that of the t term alone.
func TestHeavyTails(t *testing.T) {
	s := Sum{Rects: []float64{80, 5, 3}, Scale: 4, DOF: 1}
	d := s.Dist()
	lib := distuv.StudentsT{Sigma: 4, Nu: 1}
	for _, x := range []float64{1e4, 1e5, 3e5, 1e6, 1e9} {
		if got, want := 1-d.CDF(x), lib.CDF(-x); !scalar.EqualWithinRel(got, want, 0.03) {
			t.Errorf("beyond %g: %g, want about %g", x, got, want)
		}
	}
	run(t, []check{
		{"99.9 %", d.Quantile(0.9995) / (4 * T(0.999, 1)), 1, 0.01, "the t term alone"},
		{"all", d.Quantile(1), inf, 0, "limit"},
	})
	if d.Quantile(1) != inf || d.Quantile(0) != -inf {
		t.Error("the t term has no end")
	}
	for _, dof := range []float64{1, 3, inf} { // y/Scale past the largest number
		d := Sum{Rects: []float64{1e-20}, Scale: 1e-20, DOF: dof}.Dist()
		if d.CDF(1e300) != 1 || d.CDF(-1e300) != 0 || d.Density(1e300) != 0 {
			t.Errorf("dof %g, very far out: %g", dof, d.CDF(1e300))
		}
	}
}

func TestPointMass(t *testing.T) {
	for _, s := range []Sum{{Mid: 7}, {Mid: 7, Rects: []float64{0, 0}}, {Mid: 7, DOF: -1}} {
		d := s.Dist()
		lo, hi := d.Interval(0.95)
		if lo != 7 || hi != 7 || d.Quantile(0) != 7 || d.Quantile(0.3) != 7 || d.Quantile(1) != 7 {
			t.Errorf("%v: interval %g to %g", s, lo, hi)
		}
		if d.CDF(6.999) != 0 || d.CDF(7) != 1 || d.CDF(7.001) != 1 {
			t.Errorf("%v: CDF is not a step", s)
		}
		if !math.IsInf(d.Density(7), 1) || d.Density(6) != 0 {
			t.Errorf("%v: density", s)
		}
	}
}

func TestNotASum(t *testing.T) {
	nan := math.NaN()
	for _, s := range []Sum{
		{Mid: nan}, {Mid: inf}, {Rects: []float64{-1}}, {Rects: []float64{nan}}, {Rects: []float64{1, inf}},
		{Scale: -1, DOF: 3}, {Scale: 1}, {Scale: 1, DOF: nan}, {Scale: inf, DOF: 3}, {Scale: nan},
	} {
		d := s.Dist()
		lo, hi := d.Interval(0.95)
		below, within, above := d.Within(-1, 1)
		for _, v := range []float64{d.CDF(0), d.Density(0), d.Quantile(0.5), lo, hi, below, within, above} {
			if !math.IsNaN(v) {
				t.Errorf("%v: got %g, want NaN", s, v)
			}
		}
	}
	d := Sum{Rects: []float64{1}}.Dist()
	for _, v := range []float64{d.CDF(nan), d.Density(nan), d.Quantile(-0.1), d.Quantile(1.1), d.Quantile(nan)} {
		if !math.IsNaN(v) {
			t.Errorf("got %g, want NaN", v)
		}
	}
	if d.CDF(inf) != 1 || d.CDF(-inf) != 0 || d.Density(inf) != 0 {
		t.Error("at infinity")
	}
}
