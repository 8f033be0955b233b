package linkage

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// between returns a number from a to b.
func between(r *rand.Rand, a, b float64) float64 { return a + (b-a)*r.Float64() }

// random returns a loader such as is built, and may be one that cannot be.
func random(r *rand.Rand) Loader {
	l := Loader{
		PivotH: between(r, 0.9, 1.8), BaseH: between(r, 0.3, 1.2), PivotBase: between(r, 0.3, 1.2),
		Boom: between(r, 1.5, 3), PivotRod: between(r, 0.5, 1.6), RodAbove: r.IntN(2) == 0,
		Bore: between(r, 0.03, 0.1), Count: 2, Closed: between(r, 0.5, 1.2), Stroke: between(r, 0.3, 0.8),
		Efficiency: between(r, 0.8, 1), BoomW: between(r, 0, 4000), ToolW: between(r, 0, 4000),
		ToolCG: between(r, -0.2, 0.6), LoadX: between(r, -0.2, 1), Level: r.IntN(2) == 0,
	}
	if r.IntN(2) == 0 {
		l.PivotBase = -l.PivotBase
	}
	l.RodTip = l.Boom - l.PivotRod + between(r, 0, 0.4)
	l.Rod = l.Bore * between(r, 0.4, 0.7)
	l.BoomCG = l.Boom * between(r, 0.3, 0.7)
	return l
}

// sound returns n loaders that can be.
func sound(r *rand.Rand, n int) []Loader {
	var all []Loader
	for len(all) < n {
		if l := random(r); possible(l) {
			all = append(all, l)
		}
	}
	return all
}

func possible(l Loader) bool {
	p, ok := l.Check()
	return ok || p.Doubtful()
}

// The lift by virtual work is the lift by moments: the force along the line from
// base pin to rod pin, crossed with its lever arm about the pivot, against each
// weight at its place.
func TestVirtualWorkIsMoments(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for _, l := range sound(r, 5000) {
		k := l.Arc()
		low, high := k.Range()
		h := between(r, low, high)
		p, back := between(r, 5e6, 25e6), between(r, 0, 1e6)
		at := k.At(h)
		pins := k.Pins(at.Angle)

		dx, dy := pins.Rod.X-pins.Base.X, pins.Rod.Y-pins.Base.Y
		ring := math.Pi / 4 * (l.Bore*l.Bore - l.Rod*l.Rod)
		force := l.Count * l.Efficiency * (p*math.Pi/4*l.Bore*l.Bore - back*ring)
		rx, ry := pins.Rod.X-pins.Pivot.X, pins.Rod.Y-pins.Pivot.Y
		moment := force * (rx*dy - ry*dx) / math.Hypot(dx, dy)
		tool, load := pins.Bucket.X, pins.Bucket.X
		if !l.Level { // with a parallel linkage the links take the tool's tipping, see the engine test
			tool += l.ToolCG
			load += l.LoadX
		}
		want := (moment - l.BoomW*pins.Bucket.X*l.BoomCG/l.Boom - l.ToolW*tool) / load
		if got := at.Lift(p, back); !scalar.EqualWithinAbsOrRel(got, want, 1e-6*moment/load, 1e-9) {
			t.Fatalf("%+v at %g: lift %.10g, by moments %.10g", l, h, got, want)
		}
		if got := math.Hypot(dx, dy); !scalar.EqualWithinAbs(got, at.Length, 1e-9) {
			t.Fatalf("%+v at %g: length %.10g, between pins %.10g", l, h, at.Length, got)
		}
	}
}
