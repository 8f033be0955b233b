package doubt

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// What is remembered gives the same probabilities elsewhere as what is worked out
// anew, and a copy that is moved leaves the other where it lies.
func TestRememberedDist(t *testing.T) {
	s := Sum{Mid: 100, Rects: []float64{3, 1, 0.5}, Scale: 2 / 3.0, DOF: 3}
	first := s.Dist()
	s.Mid, s.Scale = -7, s.Scale*(1+1e-15)
	moved := s.Dist()
	if &first.table[0] != &moved.table[0] {
		t.Error("worked out again")
	}
	clear(shapes.known)
	anew := s.Dist()
	if &anew.table[0] == &moved.table[0] {
		t.Error("not worked out anew")
	}
	for y := -6.0; y <= 6; y += 0.25 {
		a, b, c := first.CDF(100+y), moved.CDF(-7+y), anew.CDF(-7+y)
		if b != c || !scalar.EqualWithinAbs(a, b, 1e-12) {
			t.Errorf("at %v: %v, moved %v, anew %v", y, a, b, c)
		}
	}
	for i := range 2 * kept {
		Sum{Rects: []float64{3, 1}, Scale: 1 + float64(i), DOF: 3}.Dist()
	}
	if n := len(shapes.known); n > kept {
		t.Errorf("%d kept", n)
	}
	if d := (Sum{Rects: []float64{1, 1}, Scale: math.Inf(1)}).Dist(); !math.IsNaN(d.CDF(0)) {
		t.Error("no distribution at all has a chance")
	}
}
