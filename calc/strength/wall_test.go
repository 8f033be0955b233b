package strength

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

const (
	mm   = 1e-3
	mpa  = 1e6
	inch = 0.0254
	lbf  = 4.4482216152605
	psi  = lbf / inch / inch
)

const (
	esposito = "Esposito, Fluid Power with Applications, Ex. 10-3"
	bhandari = "Bhandari, Design of Machine Elements, Ex. 22.4"
)

func TestWallPublished(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name      string
		got, want float64
		rel       float64
		source    string
	}{
		{"hoop at the bore, 50 to 60 mm, 20 MPa", Hoop(20*mpa, 50*mm, 60*mm, 50*mm), 110.909091 * mpa, 1e-8, "Lamé: computed"},
		{"hoop outside", Hoop(20*mpa, 50*mm, 60*mm, 60*mm), 90.909091 * mpa, 1e-8, "Lamé: computed"},
		{"axial, closed ends", Axial(20*mpa, 50*mm, 60*mm), 45.454545 * mpa, 2e-8, "Lamé: computed"},
		{"thin wall", ThinHoop(20*mpa, 50*mm, 5*mm), 100 * mpa, 1e-13, "p·d/(2t): computed"},
		{"wall by Clavarino, 250 mm, 15 MPa, 340/5 MPa, 0.27", ClavarinoWall(15*mpa, 340.0/5*mpa, 0.27, 250*mm), 29.623170389325 * mm, 1e-12, bhandari + ": inputs read, digits computed"},
		{"the same as printed, to be made 30 mm", ClavarinoWall(15*mpa, 340.0/5*mpa, 0.27, 250*mm), 29.623 * mm, 0.0005 / 29.623, bhandari + ": read; its last digits, 169, differ by one"},
		{"tube 1.250 by 1.060 in, 55 000 psi, factor 8, thin", 55_000 * psi / 8 / ThinHoop(1, 1.060*inch, 0.095*inch), 1232 * psi, 0.5 / 1232, esposito + ": read"},
		{"the same, burst", 55_000 * psi / ThinHoop(1, 1.060*inch, 0.095*inch), 9858.49 * psi, 1e-6, esposito + ": computed"},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, test.rel) {
			t.Errorf("%s: got %.12g, want %.12g; %s", test.name, test.got, test.want, test.source)
		}
	}
}

// The stresses of a thick wall balance the pressure: across a cut along the axis
// the hoop stress carries p·bore, across a cut square to it the axial stress
// carries p on the bore's area. (Statics; the integral by Simpson's rule.)
func TestWallBalances(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		p, bore := 50*mpa*r.Float64(), 0.2*r.Float64()+0.001
		outside := bore * (1.02 + 2*r.Float64())
		const n = 2000
		h := (outside - bore) / 2 / n
		var cut float64
		for i := range n + 1 {
			weight := 2.0 + 2*float64(i%2)
			if i == 0 || i == n {
				weight = 1
			}
			cut += weight * Hoop(p, bore, outside, min(bore+2*h*float64(i), outside)) * h / 3
		}
		if !scalar.EqualWithinRel(2*cut, p*bore, 1e-9) {
			t.Errorf("bore %v outside %v: the hoop carries %v, the pressure pushes %v", bore, outside, 2*cut, p*bore)
		}
		if got, want := Axial(p, bore, outside)*(outside*outside-bore*bore), p*bore*bore; !scalar.EqualWithinRel(got, want, 1e-9) {
			t.Errorf("bore %v outside %v: axial %v, want %v", bore, outside, got, want)
		}
	}
}

// Von Mises' stress from its definition, with the radial stress −p at the bore;
// the inverse; the thin wall as the limit; Clavarino's wall put back in.
func TestWallIdentities(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(2, 2))
	for range 300 {
		p, bore := mpa*(1+40*r.Float64()), 0.01+0.2*r.Float64()
		outside := bore * (1.01 + r.Float64())
		hoop, axial, radial := Hoop(p, bore, outside, bore), Axial(p, bore, outside), -p
		mises := math.Sqrt(((hoop-axial)*(hoop-axial) + (axial-radial)*(axial-radial) + (radial-hoop)*(radial-hoop)) / 2)
		if got := VonMises(p, bore, outside); !scalar.EqualWithinRel(got, mises, 1e-10) {
			t.Errorf("von Mises %v, want %v", got, mises)
		}
		if got := WallPressure(hoop, bore, outside); !scalar.EqualWithinRel(got, p, 1e-10) {
			t.Errorf("the pressure for a hoop stress of %v is %v, want %v", hoop, got, p)
		}
		// A thin wall gives less than the peak of a thick one, and p/2 less at most.
		if thin := ThinHoop(p, bore, (outside-bore)/2); thin >= hoop || hoop-thin > p {
			t.Errorf("thin %v, thick %v", thin, hoop)
		}
		// Clavarino: the strain of the wall at the bore times E is the stress allowed.
		const nu = 0.27
		if wall := ClavarinoWall(p, 100*mpa, nu, bore); !math.IsNaN(wall) {
			od := bore + 2*wall
			got := Hoop(p, bore, od, bore) - nu*(Axial(p, bore, od)-p)
			if !scalar.EqualWithinRel(got, 100*mpa, 1e-9) {
				t.Errorf("Clavarino's wall %v leaves %v of strain times E", wall, got)
			}
		}
	}
	// 1 mm on 1 m: thick and thin are one but for about p/2.
	if thick, thin := Hoop(mpa, 1, 1.002, 1), ThinHoop(mpa, 1, 1*mm); !scalar.EqualWithinRel(thick, thin+mpa/2, 1e-5) {
		t.Errorf("thick %v, thin %v", thick, thin)
	}
}

func TestWallDomain(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for name, got := range map[string]float64{
		"no wall":                     Hoop(mpa, 1, 1, 1),
		"bore over outside":           Axial(mpa, 2, 1),
		"inside the bore":             Hoop(mpa, 1, 2, 0.5),
		"outside the outside":         Hoop(mpa, 1, 2, 2.5),
		"bore NaN":                    VonMises(mpa, nan, 1),
		"bore 0":                      VonMises(mpa, 0, 1),
		"thin, wall 0":                ThinHoop(mpa, 1, 0),
		"no wall, inverse":            WallPressure(mpa, 1, 1),
		"inverse, stress below 0":     WallPressure(-1, 1, 2),
		"more pressure than it bears": ClavarinoWall(100*mpa, 100*mpa, 0.27, 1),
		"just so much":                ClavarinoWall(100, 127, 0.27, 1),
		"pressure 0":                  ClavarinoWall(0, 1, 0.27, 1),
		"ν over a half":               ClavarinoWall(1, 100, 0.6, 1),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %v, want NaN", name, got)
		}
	}
}
