package hydraulic

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// Units, worked from the definitions of inch, pound, standard gravity and the
// gallon of 231 in³ (computed).
const (
	inch    = 0.0254
	lbf     = 4.4482216152605
	psi     = lbf / inch / inch
	cubicIn = inch * inch * inch
	gallon  = 231 * cubicIn
	gpm     = gallon / 60
	hp      = 550 * 12 * inch * lbf
	bar     = 1e5
	litre   = 1e-3
	degF    = 5. / 9
	btu     = 1055.05585262
	pound   = 0.45359237
)

// cylinder is one of these dimensions in inches.
func cylinder(bore, rod, stroke float64) Cylinder {
	return Cylinder{Bore: bore * inch, Rod: rod * inch, Stroke: stroke * inch, Count: 1}
}

func TestPublished(t *testing.T) {
	t.Parallel()
	ex92 := cylinder(1.5, 0.5, 10)
	gear := cylinder(3, 2, 1) // the ring between the diameters of a gear pump, as wide as its gears
	turning := Pump{Displacement: math.Pi / 4 * 5 * cubicIn, Turns: 1800. / 60, Efficiency: 1}
	// The textbook's own oil: 7.42 lb/gal, 0.42 Btu/lb °F.
	density, heat := 7.42*pound/gallon, 0.42*btu/pound/degF
	for _, test := range []struct {
		name      string
		got, want float64
		tol       float64 // relative
		source    string
	}{
		{"load pressure, psi", 2000 * lbf / ex92.CapArea() / psi, 1132, 0.5 / 1132, "[ESP] Ex. 9-2: read"},
		{"the same", 2000 * lbf / ex92.CapArea() / psi, 1131.7685, 5e-8, "[ESP] Ex. 9-2: computed"},
		{"push at it, lbf", ex92.Push(1131.7685*psi, 0) / lbf, 2000, 5e-8, "[ESP] Ex. 9-2 the other way round"},
		{"piston's share of a return loss, psi", 50 * ex92.RodArea() / ex92.CapArea(), 44.444, 0.0005 / 44.444, "[ESP] Ex. 9-2: read"},
		{"that pressure just holds the return's, lbf", 1 + ex92.Push(50*psi*8/9, 50*psi)/lbf, 1, 1e-12, "[ESP] Ex. 9-2: computed, 50·(1.5² − 0.5²)/1.5² = 400/9"},
		{"unloading setting, psi", 1.5 * (100 + 50*ex92.RodArea()/ex92.CapArea()), 217, 0.5 / 217, "[ESP] Ex. 9-2: read"},
		{"blocked, psi", ex92.Blocked(1000*psi) / psi, 1125, 1e-13, "computed: 1000·1.5²/(1.5² − 0.5²)"},
		{"blocked, rod of 1/√2 of the bore", cylinder(2, math.Sqrt2, 1).Blocked(1000), 2000, 1e-13, "computed: half the area"},
		{"gear pump's volume, in³", gear.InVolume() / cubicIn, 3.926991, 2e-7, "[ESP] Ex. 5-1: computed"},
		{"gear pump's flow, gpm", turning.Flow() / gpm, 30.599928, 2e-8, "[ESP] Ex. 5-1: computed"},
		{"gear pump's efficiency", turning.Seen(28 * gpm), 0.91503482, 1e-8, "[ESP] Ex. 5-1: computed"},
		{"the same", turning.Seen(28 * gpm), 0.915, 0.0005, "[ESP] Ex. 5-1: read"},
		{"1 in³ at 2500 rpm, gpm", Pump{cubicIn, 2500. / 60, 1}.Flow() / gpm, 10.822511, 5e-8, "231 read in [ESP]; computed"},
		{"psi × gpm ÷ hp", psi * gpm / hp * 1714.285714285714, 1, 1e-14, "computed: 396000/231"},
		{"relief loss, hp", Power(1000*psi, 20*gpm) / hp, 11.7, 0.05 / 11.7, "[ESP] Ex. 8-2: read"},
		{"relief loss, hp", Power(1000*psi, 20*gpm) / hp, 11.666667, 5e-8, "[ESP] Ex. 8-2: exact constants"},
		{"unloading loss, hp", Power(25*psi, 20*gpm) / hp, 0.29, 0.005 / 0.29, "[ESP] Ex. 8-3: read"},
		{"2500 psi × 12 gpm, hp", Power(2500*psi, 12*gpm) / hp, 17.5, 1e-13, "computed, exact"},
		{"100 bar × 60 L/min, W", Power(100*bar, 60*litre/60), 10000, 1e-14, "definition"},
		{"oil over a relief, °F", PassRise(1000*psi, density, heat) / degF, 7.94, 0.005 / 7.94, "[ESP] Ex. 11-2: read"},
		{"oil over a relief, °F", PassRise(1000*psi, density, heat) / degF, 7.937861, 1e-6, "[ESP] Ex. 11-2: exact constants"},
		{"a kilowatt in a kilogram of water, K/s", TankRate(1000, 1000, 4186.8, litre), 1 / 4.1868, 1e-14, "definition of the steam-table calorie, from memory"},
		{"speed, in/s", Speed(231./60*cubicIn, 1*inch*inch) / inch, 3.85, 1e-13, "arithmetic: 1 gpm on 1 in²"},
		{"time, s", Time(231*cubicIn, 2*gpm), 30, 1e-13, "arithmetic: a gallon at 2 gpm"},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, test.tol) {
			t.Errorf("%s: got %.10g, want %v; %s", test.name, test.got, test.want, test.source)
		}
	}
}

// What goes in comes out: the work of the push is pressure times the oil put in,
// less the back pressure times the oil driven out, and the power that of the flow.
func TestEnergy(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 2))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	for range 1000 {
		c := Cylinder{Bore: between(0.02, 0.3), Stroke: between(0.1, 2), Count: float64(1 + r.IntN(4))}
		c.Rod = c.Bore * between(0, 0.95)
		p, back, flow := between(1e6, 3e7), between(0, 2e6), between(1e-4, 2e-3)
		if got, want := c.Push(p, back)*c.Stroke, p*c.OutVolume()-back*c.InVolume(); !scalar.EqualWithinRel(got, want, 1e-11) {
			t.Fatalf("work out: got %v, want %v", got, want)
		}
		if got, want := c.Pull(p, back)*c.Stroke, p*c.InVolume()-back*c.OutVolume(); !scalar.EqualWithinAbsOrRel(got, want, 1e-6, 1e-9) {
			t.Fatalf("work in: got %v, want %v", got, want)
		}
		if got, want := c.Push(p, 0)*Speed(flow, c.CapArea()), Power(p, flow); !scalar.EqualWithinRel(got, want, 1e-12) {
			t.Fatalf("power: got %v, want %v", got, want)
		}
		if got, want := Speed(flow, c.RodArea())*Time(c.InVolume(), flow), c.Stroke; !scalar.EqualWithinRel(got, want, 1e-12) {
			t.Fatalf("stroke: got %v, want %v", got, want)
		}
		// The rod fills what the two areas differ by.
		if got, want := c.CapArea()-c.RodArea(), c.Count*math.Pi/4*c.Rod*c.Rod; !scalar.EqualWithinAbsOrRel(got, want, 1e-15, 1e-9) {
			t.Fatalf("rod: got %v, want %v", got, want)
		}
		if got := c.Push(p, c.Blocked(p)); math.Abs(got) > 1e-9*c.Push(p, 0) {
			t.Fatalf("blocked: %v is left", got)
		}
		// The heat of a flow over a relief is its power, whichever way it is reckoned.
		if got, want := PassRise(p, 870, 1900)*flow, TankRate(Power(p, flow), 870, 1900, 1); !scalar.EqualWithinRel(got, want, 1e-12) {
			t.Fatalf("heat: got %v, want %v", got, want)
		}
		// Two cylinders are one of twice the area.
		two := c
		two.Count *= 2
		if got, want := two.Push(p, back), 2*c.Push(p, back); !scalar.EqualWithinRel(got, want, 1e-12) {
			t.Fatalf("two: got %v, want %v", got, want)
		}
	}
}

func TestOutsideTheDomain(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name string
		got  float64
	}{
		{"rod as thick as the bore", Cylinder{1, 1, 1, 1}.RodArea()},
		{"rod thicker than the bore", Cylinder{1, 2, 1, 1}.Push(1, 0)},
		{"no bore", Cylinder{0, 0, 1, 1}.CapArea()},
		{"no cylinder", Cylinder{1, 0, 1, 0}.CapArea()},
		{"rod below 0", Cylinder{1, -1, 1, 1}.Pull(1, 0)},
		{"stroke below 0", Cylinder{1, 0, -1, 1}.OutVolume()},
		{"a bore that is no number", Cylinder{math.NaN(), 0, 1, 1}.Blocked(1)},
		{"no area", Speed(1, 0)},
		{"no flow", Time(1, 0)},
		{"no displacement", Pump{0, 1, 1}.Flow()},
		{"standing pump", Pump{1, 0, 1}.Flow()},
		{"standing pump, seen", Pump{1, 0, 1}.Seen(1)},
		{"more than all arrives", Pump{1, 1, 1.01}.Flow()},
		{"nothing arrives", Pump{1, 1, 0}.Flow()},
		{"no density", PassRise(1, 0, 1)},
		{"no heat capacity", PassRise(1, 1, 0)},
		{"no oil", TankRate(1, 1, 1, 0)},
		{"oil without density", TankRate(1, 0, 1, 1)},
	} {
		if !math.IsNaN(test.got) {
			t.Errorf("%s: got %v, want NaN", test.name, test.got)
		}
	}
}
