package relief

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

const (
	inch = 0.0254
	lbf  = 4.4482216152605
	psi  = 6894.757293168361
	mm   = 1e-3
)

func TestSpringAndValve(t *testing.T) {
	t.Parallel()
	const (
		bhandari = "Bhandari, Design of Machine Elements, Ex. 10.1"
		shigley  = "Shigley, Mechanical Engineering Design, Ex. 10-1"
		esposito = "Esposito, Fluid Power with Applications, Ex. 8-1"
	)
	designed := SpringRate(81370e6, 7*mm, 42*mm, 8)
	wire := 0.037 * inch
	music := ShearModulus("music", wire)
	// The valve of Ex. 8-1.
	const (
		k    = 2500 * lbf / inch
		seat = 0.75 * inch * inch
	)
	for _, test := range []struct {
		name      string
		got, want float64
		rel       float64
		source    string
	}{
		{"rate", designed, 41.20298032e3, 1e-9, bhandari + " (inputs read), rate computed"},
		{"deflection at 1250 N", 1250 / designed, 30.33761126 * mm, 1e-9, bhandari + " (inputs read), deflection computed"},
		{"the deflection it was designed for", 1250 / designed, 30 * mm, 0.012, bhandari + ": read; its wire and coils are rounded up"},
		{"music wire of 0.037 in", music, 11.85e6 * psi, 1e-14, "handbook table: read"},
		{"rate, D 0.400 in", SpringRate(music, wire, 0.400*inch, 10.5), 4.131103 * lbf / inch, 2e-7, shigley + ": inputs memory (high), computed"},
		{"rate, D 0.4005 in", SpringRate(music, wire, 0.4005*inch, 10.5), 4.115650 * lbf / inch, 2e-7, shigley + ": inputs memory (high), computed"},
		{"rate as printed", SpringRate(music, wire, 0.400*inch, 10.5), 4.13 * lbf / inch, 0.005 / 4.13, shigley + ": memory (high)"},
		{"cracking", CrackingPressure(k, 0.20*inch, seat), 667 * psi, 0.5 / 667, esposito + ": read"},
		{"cracking", CrackingPressure(k, 0.20*inch, seat), 666.6666666666667 * psi, 1e-13, esposito + ": computed"},
		{"full flow", FullFlow(k, 0.20*inch, 0.10*inch, seat), 1000 * psi, 1e-13, esposito + ": read"},
		{"0.010 in of shim", ShimRate(k, seat) * 0.010 * inch, 33.33 * psi, 0.005 / 33.33, esposito + ": computed from it"},
		{"shim for 100 psi", 100 * psi / ShimRate(k, seat), 0.030 * inch, 1e-13, esposito + ": computed from it"},
		{"the same by moving the spring", CrackingPressure(k, 0.23*inch, seat) - CrackingPressure(k, 0.20*inch, seat), 100 * psi, 1e-12, esposito + ": computed from it"},
		{"seat of 0.75 in²", SeatArea(0.9772050238058398 * inch), seat, 1e-13, "π·d²/4 by hand"},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, test.rel) {
			t.Errorf("%s: got %.12g, want %.12g; %s", test.name, test.got, test.want, test.source)
		}
	}
}

// The handbook table of shear moduli (read in a public copy), psi and inch, at
// both ends of each band.
func TestShearModulusTable(t *testing.T) {
	t.Parallel()
	none := math.NaN()
	for _, test := range []struct {
		id       string
		from, to float64
		want     float64
	}{
		{"hard-drawn", 0.010, 0.032, 11.7e6},
		{"hard-drawn", 0.033, 0.063, 11.6e6},
		{"hard-drawn", 0.064, 0.125, 11.5e6},
		{"hard-drawn", 0.126, 0.625, 11.4e6},
		{"hard-drawn", 0.626, 1, none},
		{"music", 0.004, 0.032, 12.0e6},
		{"music", 0.033, 0.063, 11.85e6},
		{"music", 0.064, 0.125, 11.75e6},
		{"music", 0.126, 0.250, 11.6e6},
		{"music", 0.251, 1, none},
		{"oil-tempered", 0.010, 1, 11.2e6},
		{"chrome-vanadium", 0.010, 1, 11.2e6},
		{"chrome-silicon", 0.010, 1, 11.2e6},
		{"silicon-manganese", 0.010, 1, 10.75e6},
		{"stainless-302", 0.010, 1, 10.0e6},
		{"stainless-17-7", 0.010, 1, 10.5e6},
		{"stainless-420", 0.010, 1, 11.0e6},
		{"stainless-431", 0.010, 1, 11.4e6},
		{"lead", 0.010, 1, none},
	} {
		for _, wire := range []float64{test.from, test.to} {
			got := ShearModulus(test.id, wire*inch)
			if math.IsNaN(got) != math.IsNaN(test.want) || !math.IsNaN(got) && !scalar.EqualWithinRel(got, test.want*psi, 1e-14) {
				t.Errorf("%s of %v in: got %v psi, want %v", test.id, wire, got/psi, test.want)
			}
		}
	}
	// Other tables: ASTM A228 12 Mpsi to 0.100 in (read), A227 and A229 11.5 Mpsi
	// (read), EN 10270-1 81.5 GPa (memory, medium to high). Handbooks differ by
	// about 3 %.
	for _, test := range []struct {
		id   string
		want float64
	}{
		{"music", 12e6 * psi}, {"hard-drawn", 11.5e6 * psi}, {"oil-tempered", 11.5e6 * psi}, {"music", 81.5e9},
	} {
		if got := ShearModulus(test.id, 0.08*inch); !scalar.EqualWithinRel(got, test.want, 0.03) {
			t.Errorf("%s of 0.080 in: got %v Pa, another table has %v", test.id, got, test.want)
		}
	}
	for _, m := range Materials {
		if math.IsNaN(ShearModulus(m.ID, 2*mm)) || m.Name == "" {
			t.Errorf("%q has no modulus or no name", m.ID)
		}
	}
}

func TestSpringOutsideTheDomain(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, test := range []struct {
		name string
		got  float64
	}{
		{"no wire", SpringRate(8e10, 0, 1, 1)},
		{"coil no wider than the wire", SpringRate(8e10, 0.01, 0.01, 1)},
		{"no coils", SpringRate(8e10, 0.001, 0.01, 0)},
		{"modulus NaN", SpringRate(nan, 0.001, 0.01, 5)},
		{"no seat", SeatArea(0)},
		{"shim rate without seat", ShimRate(1, 0)},
		{"shim rate without spring", ShimRate(0, 1)},
		{"cracking, spring stretched", CrackingPressure(1, -1, 1)},
		{"full flow, poppet below its seat", FullFlow(1, 1, -1, 1)},
		{"modulus of no wire", ShearModulus("music", 0)},
		{"modulus of endless wire", ShearModulus("oil-tempered", math.Inf(1))},
		{"turns of no screw", Turns(1, 0)},
		{"turns out", Turns(-1, 1)},
	} {
		if !math.IsNaN(test.got) {
			t.Errorf("%s: got %v, want NaN", test.name, test.got)
		}
	}
}

// Eighths of a turn of a common 1/2-20 thread (0.050 in a turn): arithmetic.
func TestTurns(t *testing.T) {
	t.Parallel()
	for _, test := range []struct{ t, pitch, want float64 }{
		{0, 0.050 * inch, 0},
		{0.0062 * inch, 0.050 * inch, 0},
		{0.00625 * inch, 0.050 * inch, 0.125},
		{0.0250 * inch, 0.050 * inch, 0.5},
		{0.0277 * inch, 0.050 * inch, 0.5},
		{0.0749 * inch, 0.050 * inch, 1.375},
		{0.7 * mm, 1.25 * mm, 0.5},
	} {
		if got := Turns(test.t, test.pitch); got != test.want {
			t.Errorf("%v m at %v m a turn: got %v, want %v", test.t, test.pitch, got, test.want)
		}
	} // Whole eighths, added up one by one, are not lost to rounding.
	for _, pitch := range []float64{0.050 * inch, inch / 18, inch / 24, 1.25 * mm, 1.5 * mm} {
		var t8 float64
		for n := 1; n <= 80; n++ {
			t8 += pitch / 8
			if got, want := Turns(t8, pitch), float64(n)/8; got != want {
				t.Errorf("%d eighths of %v m: got %v turns, want %v", n, pitch, got, want)
			}
		}
	}
}
