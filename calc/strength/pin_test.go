package strength

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

func TestPin(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name      string
		got, want float64
		rel       float64
		source    string
	}{
		{"40 kN on 25 mm, double shear", DoubleShear(40e3, 25*mm), 40.74366543152521 * mpa, 1e-13, "F/(2A): computed"},
		{"40 kN on 25 mm, eye of 40 mm", Bearing(40e3, 25*mm, 40*mm), 40 * mpa, 1e-13, "F/(d·b): computed"},
		// Pure shear τ: von Mises' stress from its definition is √3·τ.
		{"shear yield of 300 MPa", ShearYield(300 * mpa), 173.2050807569 * mpa, 1e-12, "1/√3: computed"},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, test.rel) {
			t.Errorf("%s: got %.12g, want %.12g; %s", test.name, test.got, test.want, test.source)
		}
	}
	for name, got := range map[string]float64{
		"no pin":       DoubleShear(1, 0),
		"bearing, pin": Bearing(1, 0, 1),
		"bearing, eye": Bearing(1, 1, 0),
		"no yield":     ShearYield(0),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %v, want NaN", name, got)
		}
	}
}
