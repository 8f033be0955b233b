package strength

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/mat"
)

const steel = 206e9

func TestColumnPublished(t *testing.T) {
	t.Parallel()
	bar := 100 * mm * math.Pow(60*mm, 3) / 12 // bends the thin way
	for _, test := range []struct {
		name      string
		got, want float64
		rel       float64
		source    string
	}{
		{"Euler load, 30 mm rod, 1 m, 206 GPa", Euler(206e9, Ring(0, 30*mm), 1), 80_839.18, 1e-7, "closed form: computed"},
		{"limit length, 60 by 100 mm, 200 GPa, 250 MPa", EulerLength(200e9, bar, 250*mpa*60*mm*100*mm), 1539.0598 * mm, 4e-8, "FOSSEE book 3776, Ex. 11.2: read inputs and formula, digits computed"},
		{"the same as printed", EulerLength(200e9, bar, 250*mpa*60*mm*100*mm), 1539 * mm, 0.5 / 1539, "FOSSEE book 3776, Ex. 11.2: read"},
		{"a cylinder pushed out, by a power series without sines", Stepped(206e9, Ring(0, inch), 22.5*inch, Ring(1.75*inch, 2.25*inch), 30.9*inch), 46_031.84751185247, 1e-13, "computed"},
		{"second moment of 40 mm with a hole of 30", Ring(30*mm, 40*mm), 85_902.924 * math.Pow(mm, 4), 1e-7, "π/64·(40⁴ − 30⁴): computed"},
		{"area of 40 mm with a hole of 30", Area(30*mm, 40*mm), 549.77871 * mm * mm, 1e-8, "π/4·(40² − 30²): computed"},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, test.rel) {
			t.Errorf("%s: got %.12g, want %.12g; %s", test.name, test.got, test.want, test.source)
		}
	}
}

// section is a length of a column with its bending stiffness.
type section struct{ ei, l float64 }

// finite returns the critical load of a column pinned at both ends, by finite
// elements: cubic beams with the geometric stiffness of an axial load, n to each
// section. It shares nothing with the closed form but the theory of slender
// beams; being conforming it errs upwards, by a part in n⁴.
func finite(sections []section, n int) float64 {
	nodes := len(sections)*n + 1
	size := 2 * nodes // a deflection and a slope at each node
	stiff, geometric := mat.NewSymDense(size, nil), mat.NewSymDense(size, nil)
	for s, sec := range sections {
		h := sec.l / float64(n)
		k, g := sec.ei/(h*h*h), 1/(30*h)
		ke := [4][4]float64{{12, 6 * h, -12, 6 * h}, {0, 4 * h * h, -6 * h, 2 * h * h}, {0, 0, 12, -6 * h}, {0, 0, 0, 4 * h * h}}
		ge := [4][4]float64{{36, 3 * h, -36, 3 * h}, {0, 4 * h * h, -3 * h, -h * h}, {0, 0, 36, -3 * h}, {0, 0, 0, 4 * h * h}}
		for e := range n {
			at := 2 * (s*n + e)
			for i := range 4 {
				for j := i; j < 4; j++ {
					stiff.SetSym(at+i, at+j, stiff.At(at+i, at+j)+k*ke[i][j])
					geometric.SetSym(at+i, at+j, geometric.At(at+i, at+j)+g*ge[i][j])
				}
			}
		}
	}
	// The ends do not move: their deflections go.
	var free []int
	for i := range size {
		if i != 0 && i != size-2 {
			free = append(free, i)
		}
	}
	k, g := mat.NewSymDense(len(free), nil), mat.NewSymDense(len(free), nil)
	for i, from := range free {
		for j := i; j < len(free); j++ {
			k.SetSym(i, j, stiff.At(from, free[j]))
			g.SetSym(i, j, geometric.At(from, free[j]))
		}
	}
	// K·x = P·G·x with K = LLᵀ: the largest eigenvalue of L⁻¹·G·L⁻ᵀ is 1/P.
	var chol mat.Cholesky
	if !chol.Factorize(k) {
		return math.NaN()
	}
	var l mat.TriDense
	chol.LTo(&l)
	var half, whole mat.Dense
	half.Solve(&l, g)
	whole.Solve(&l, half.T())
	sym := mat.NewSymDense(len(free), nil)
	for i := range free {
		for j := i; j < len(free); j++ {
			sym.SetSym(i, j, (whole.At(i, j)+whole.At(j, i))/2)
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(sym, false) {
		return math.NaN()
	}
	values := eigen.Values(nil)
	return 1 / values[len(values)-1]
}

// The finite elements themselves against Timoshenko and Gere, Theory of Elastic
// Stability, the table of P = m·E·I₂/l² for a pinned bar whose middle part a has
// I₂ and whose ends have I₁ (from memory, medium): they are what the stepped column
// is held against.
func TestFiniteElements(t *testing.T) {
	t.Parallel()
	for _, test := range []struct{ ratio, middle, m float64 }{
		{0.2, 0.2, 2.80}, {0.2, 0.4, 4.22}, {0.2, 0.6, 6.69}, {0.2, 0.8, 9.33},
		{0.4, 0.2, 5.09}, {0.4, 0.4, 6.68}, {0.6, 0.6, 9.24}, {0.8, 0.8, 9.84},
	} {
		end := section{test.ratio, (1 - test.middle) / 2}
		got := finite([]section{end, {1, test.middle}, end}, 8)
		if !scalar.EqualWithinAbs(got, test.m, 0.006) {
			t.Errorf("I₁/I₂ %v, a/l %v: m = %.4f, table %v", test.ratio, test.middle, got, test.m)
		}
	}
	if got := finite([]section{{1, 0.3}, {1, 0.7}}, 8); !scalar.EqualWithinRel(got, math.Pi*math.Pi, 2e-5) {
		t.Errorf("an even bar: %v, want π²", got)
	}
}

// The stepped column against the finite elements, whatever the sections.
func TestSteppedAgainstFiniteElements(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(3, 3))
	for i := range 60 {
		i1, i2 := math.Pow(10, -8+3*r.Float64()), math.Pow(10, -8+3*r.Float64())
		l1, l2 := 0.02+r.Float64(), 0.02+r.Float64()
		if i == 0 { // a loader cylinder: rod of 1 in, barrel of 1.75 by 2.25 in
			i1, l1, i2, l2 = Ring(0, inch), 22.5*inch, Ring(1.75*inch, 2.25*inch), 30.9*inch
		}
		got, want := Stepped(steel, i1, l1, i2, l2), finite([]section{{steel * i1, l1}, {steel * i2, l2}}, 20)
		if !scalar.EqualWithinRel(got, want, 1e-5) {
			t.Errorf("%v m of %v and %v m of %v: %v N, finite elements %v N", l1, i1, l2, i2, got, want)
		}
		if got > want*(1+1e-7) {
			t.Errorf("%v N is over the finite elements' %v N, which err upwards", got, want)
		}
	}
}

// What is known of the stepped column without solving it.
func TestSteppedLimits(t *testing.T) {
	t.Parallel()
	const i, l = 3e-8, 1.3
	plain := Euler(steel, i, l)
	for _, part := range []float64{1e-6, 0.1, 0.25, 0.5, 0.9, 1 - 1e-6} {
		// Equal sections are a plain bar, wherever the step is.
		if got := Stepped(steel, i, part*l, i, (1-part)*l); !scalar.EqualWithinRel(got, plain, 1e-12) {
			t.Errorf("equal sections, step at %v: %v, want %v", part, got, plain)
		}
		// A rigid section leaves tan(k·L₁) = −k·L₂ (statics: at the step the bar
		// points at the far pin). The root is found here on its own.
		l1, l2 := part*l, (1-part)*l
		lo, hi := math.Pi/2/l1, math.Pi/l1
		for range 200 {
			if k := (lo + hi) / 2; math.Sin(k*l1)+k*l2*math.Cos(k*l1) > 0 {
				lo = k
			} else {
				hi = k
			}
		}
		want := steel * i * lo * lo
		if got := Stepped(steel, i, l1, 1e12*i, l2); !scalar.EqualWithinRel(got, want, 1e-6) {
			t.Errorf("rigid beyond %v: %v, want %v", part, got, want)
		}
	}
	// k·L = 2.0287578 solves tan x = −x (Abramowitz and Stegun, table 4.19; from memory).
	if got, want := Stepped(steel, i, 0.5, 1e14*i, 0.5), steel*i*math.Pow(2.0287578381/0.5, 2); !scalar.EqualWithinRel(got, want, 1e-9) {
		t.Errorf("halves, one rigid: %v, want %v", got, want)
	}
	// A section of no length is not there.
	if got := Stepped(steel, i, l, 5*i, 0); !scalar.EqualWithinRel(got, plain, 1e-12) {
		t.Errorf("no second section: %v, want %v", got, plain)
	}
	if got := Stepped(steel, 5*i, 0, i, l); !scalar.EqualWithinRel(got, plain, 1e-12) {
		t.Errorf("no first section: %v, want %v", got, plain)
	}
}

// Bounds that hold for every column: Rayleigh's quotient of a half sine from
// above (with the section's moment, M = P·y, the sharper form), Dunkerley's and
// Southwell's sum from below, the weaker section over the whole length, and more
// length or less stiffness is never stronger.
func TestSteppedBounds(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(4, 4))
	for range 500 {
		i1, i2 := math.Pow(10, -9+4*r.Float64()), math.Pow(10, -9+4*r.Float64())
		l1, l2 := 0.01+2*r.Float64(), 0.01+2*r.Float64()
		l := l1 + l2
		p := Stepped(steel, i1, l1, i2, l2)
		within := func(what string, lo, hi float64) {
			t.Helper()
			if !(lo <= p*(1+1e-9)) || !(p <= hi*(1+1e-9)) {
				t.Errorf("%v m of %v, %v m of %v: %v N is not between %v and %v (%s)", l1, i1, l2, i2, p, lo, hi, what)
			}
		}
		within("plain bars", Euler(steel, min(i1, i2), l), Euler(steel, max(i1, i2), l))
		within("each section alone", 0, min(Euler(steel, i1, l1), Euler(steel, i2, l2)))
		// ∫y'² ÷ ∫y²/(EI) with y = sin(πx/l).
		s1 := l1/2 - l/(4*math.Pi)*math.Sin(2*math.Pi*l1/l)
		s2 := l/2 - s1
		within("Rayleigh", 0, math.Pi*math.Pi/(2*l)/(s1/(steel*i1)+s2/(steel*i2)))
		one, two := Stepped(steel, i1, l1, 1e12*i1, l2), Stepped(steel, 1e12*i2, l1, i2, l2)
		within("Dunkerley", 1/(1/one+1/two), min(one, two))
		within("symmetry", Stepped(steel, i2, l2, i1, l1), Stepped(steel, i2, l2, i1, l1))
		within("a longer bar", Stepped(steel, i1, l1*1.1, i2, l2), math.Inf(1))
		within("a stiffer bar", 0, Stepped(steel, i1, l1, i2*1.1, l2))
	}
}

// Johnson's parabola meets Euler's curve at half the yield, with one slope, and
// ends at the yield.
func TestShort(t *testing.T) {
	t.Parallel()
	const area, yield = 1e-4, 250 * mpa
	if got := Short(1e12, area, yield); !scalar.EqualWithinRel(got, area*yield, 1e-6) {
		t.Errorf("a stub bears %v, want %v", got, area*yield)
	}
	half := area * yield / 2
	if got := Short(half, area, yield); !scalar.EqualWithinRel(got, half, 1e-12) {
		t.Errorf("at half the yield: %v, want %v", got, half)
	}
	const h = 1e-6
	if slope := (Short(half*(1+h), area, yield) - half) / (half * h); !scalar.EqualWithinRel(slope, 1, 1e-5) {
		t.Errorf("slope at half the yield: %v, want 1", slope)
	}
	for _, load := range []float64{1, 0.1 * half, 0.99 * half} {
		if got := Short(load, area, yield); got != load {
			t.Errorf("a slender bar of %v bears %v", load, got)
		}
	}
	// σ = 3/4 of the yield at an Euler stress equal to it: 1 − 1/4.
	if got := Short(area*yield, area, yield); !scalar.EqualWithinRel(got, 0.75*area*yield, 1e-12) {
		t.Errorf("Euler at the yield: %v", got)
	}
}

func TestColumnDomain(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for name, got := range map[string]float64{
		"no E":              Euler(0, 1, 1),
		"no length":         Euler(1, 1, 0),
		"no I":              EulerLength(1, 0, 1),
		"no force":          EulerLength(1, 1, 0),
		"hole over outside": Ring(2, 1),
		"hole below 0":      Area(-1, 1),
		"neither section":   Stepped(1, 1, 0, 1, 0),
		"length below 0":    Stepped(1, 1, -1, 1, 1),
		"second below 0":    Stepped(1, 1, 1, 1, -1),
		"I of 0":            Stepped(1, 0, 1, 1, 1),
		"second I of 0":     Stepped(1, 1, 1, 0, 1),
		"E NaN":             Stepped(nan, 1, 1, 1, 1),
		"endless":           Stepped(1, 1, math.Inf(1), 1, 1),
		"load 0":            Short(0, 1, 1),
		"area 0":            Short(1, 0, 1),
		"yield 0":           Short(1, 1, 0),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %v, want NaN", name, got)
		}
	}
}
