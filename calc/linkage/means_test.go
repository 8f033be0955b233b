package linkage

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// Each of the other means, done, lifts as much as the pressure would have.
func TestMeansLiftAsMuch(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	closer, lower, lighter := 0, 0, 0
	for _, l := range sound(r, 2000) {
		k := l.Arc()
		low, high := k.Range()
		h := between(r, low, high)
		p, back := between(r, 8e6, 25e6), between(r, 0, 5e5)
		at := k.At(h)
		gain := at.Slope() * between(r, 1e5, 2e6)
		want := at.Lift(p, back) + gain
		if want <= gain {
			continue
		}
		m := k.Means(p, back, h, gain)
		if l.Level != math.IsNaN(m.Closer) {
			t.Fatalf("%+v: closer %g", l, m.Closer)
		}
		check := func(name string, other Loader, h float64) {
			k := other.Arc()
			at := k.At(h)
			if got := at.Lift(p, back); !scalar.EqualWithinAbsOrRel(got, want, 1e-6, 1e-9) {
				t.Fatalf("%+v: %s lifts %g, want %g (%+v)", l, name, got, want, m)
			}
		}
		if !math.IsNaN(m.Closer) {
			closer++
			other := l
			other.LoadX -= m.Closer
			check("closer", other, h)
		}
		if !math.IsNaN(m.Lighter) {
			lighter++
			other := l
			other.ToolW -= m.Lighter
			check("lighter", other, h)
		}
		under := low
		if !math.IsNaN(m.Lower) {
			lower++
			check("lower", l, h-m.Lower)
			under = h - m.Lower
		}
		for i := range 200 { // no nearer height does
			at := k.At(h + (under-h)*float64(i)/200)
			if at.Lift(p, back) > want*(1+1e-9) {
				t.Fatalf("%+v: %g lifts %g, over %g, but lower is %g from %g", l, at.Height, at.Lift(p, back), want, m.Lower, h)
			}
		}
	}
	if closer < 200 || lower < 200 || lighter < 200 {
		t.Errorf("found %d, %d, %d", closer, lower, lighter)
	}
}

func TestMeansThatDoNotExist(t *testing.T) {
	k := demo.Arc()
	low, _ := k.Range()
	for name, m := range map[string]Means{
		"no gain":           k.Means(18e6, 0, 1.5, 0),
		"a loss":            k.Means(18e6, 0, 1.5, -500),
		"unknown":           k.Means(18e6, 0, 1.5, math.NaN()),
		"lifts nothing yet": k.Means(1e6, 0, 1.5, 500),
	} {
		if !math.IsNaN(m.Closer) || !math.IsNaN(m.Lower) || !math.IsNaN(m.Lighter) {
			t.Errorf("%s: %+v", name, m)
		}
	}
	if m := k.Means(18e6, 0, low, 500); !math.IsNaN(m.Lower) || math.IsNaN(m.Closer) {
		t.Errorf("at the lowest: %+v", m)
	}
	if m := k.Means(18e6, 0, 1.5, 2*demo.ToolW); !math.IsNaN(m.Lighter) {
		t.Errorf("lighter by more than the tool weighs: %g", m.Lighter)
	}
}
