package linkage

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// bare is a loader that weighs nothing, with one cylinder that pushes one newton
// for each pascal.
func bare(l Loader) Loader {
	l.Bore, l.Count, l.Efficiency = math.Sqrt(4/math.Pi), 1, 1
	return l
}

// lever is one level with its pivot, with a cylinder square to it that comes
// from far below or above.
func lever(boom, pivotRod, rodTip, baseY float64) Loader {
	rod := (pivotRod*pivotRod + boom*boom - rodTip*rodTip) / (2 * boom) // the rod pin ahead of the pivot
	return bare(Loader{
		PivotH: 100, BaseH: 100 + baseY, PivotBase: math.Copysign(math.Hypot(rod, baseY), rod),
		Boom: boom, PivotRod: pivotRod, RodTip: rodTip,
	})
}

// A 1000 lb load on levers with arms of 10 and 10 in, the cylinder square to the
// lever. Source: Esposito, Fluid Power with Applications, Ex. 6-5 (read).
func TestLeverClasses(t *testing.T) {
	for _, c := range []struct {
		name string
		l    Loader
		want float64 // cylinder force, lb
	}{
		{"first class, pivot between", lever(10, 10, 20, 30), 1000},
		{"second class, load between", lever(10, 20, 10, -30), 500},
		{"third class, cylinder between", lever(20, 10, 10, -30), 2000},
	} {
		k := c.l.Arc()
		at := k.At(c.l.PivotH)
		if got := 1000 / at.Slope(); !scalar.EqualWithinAbsOrRel(got, c.want, 1e-9, 1e-12) {
			t.Errorf("%s: %g lb, want %g", c.name, got, c.want)
		}
		k.Closed = at.Length
		if low, _ := k.Range(); !scalar.EqualWithinAbs(low, k.PivotH, 1e-9) {
			t.Errorf("%s: level at length %g, which gives height %g", c.name, at.Length, low)
		}
	}
}

// liftTable is one of the two linkages that carry a platform: a link 2a long, a
// cylinder from its middle to a pin at a distance L level with its foot. The
// platform stays level and carries W/2 for each linkage.
//
// Source: Beer and Johnston, Statics, sample problem on a hydraulic lift table
// in the chapter on virtual work (from memory; 5.15 kN as printed): F = W·(s/L)·cot θ.
func TestLiftTable(t *testing.T) {
	const (
		a, distance = 0.70, 3.20
		w           = 1000 * 9.81 // N
		theta       = math.Pi / 3
	)
	table := bare(Loader{
		PivotH: 1, BaseH: 1, PivotBase: distance, Boom: 2 * a, PivotRod: a, RodTip: a, Level: true,
	})
	k := table.Arc()
	at := k.At(1 + 2*a*math.Sin(theta))
	force := w / 2 / at.Slope()
	for _, c := range []struct {
		name           string
		got, want, tol float64
	}{
		{"angle", at.Angle, theta, 1e-14},
		{"length as printed", at.Length, 2.91, 0.005},
		{"length", at.Length, 2.913760457, 5e-10},
		{"force as printed", force, 5150, 10},
		{"force", force, 5157.1795, 5e-5},
	} {
		if !scalar.EqualWithinAbs(c.got, c.want, c.tol) {
			t.Errorf("%s: %.12g, want %g ± %g", c.name, c.got, c.want, c.tol)
		}
	}
}
