package lift

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

const (
	psi  = 6894.757293168361
	lbf  = 4.4482216152605
	inch = 0.0254
)

func TestLift(t *testing.T) {
	t.Parallel()
	// Esposito, Fluid Power with Applications, Ex. 6-5 (read): a cylinder square
	// to a lever, arms 10 and 10 in, holds 1000 lb with 2000 lb as a class 3
	// lever. On a piston of 1 in² that is 2000 psi, and the lever weighs nothing.
	lever := Rating{Load: 1000 * lbf, At: 2000 * psi}
	// A loader of 1,580 lb at 2,735 psi: the arithmetic by hand.
	loader := Rating{Load: 1580 * lbf, At: 2735 * psi}
	heavy := Rating{Load: 1580 * lbf, Dead: 474 * lbf, At: 2735 * psi} // 30 %
	for _, test := range []struct {
		name      string
		got, want float64
		tol       float64
		source    string
	}{
		{"lever at its pressure", lever.Lift(2000 * psi), 1000 * lbf, 1e-14, "[ESP] Ex. 6-5: read"},
		{"lever at half of it", lever.Lift(1000 * psi), 500 * lbf, 1e-14, "[ESP] Ex. 6-5, in proportion: computed"},
		{"2 % of pressure is about 2 % of lift", lever.GainShare(2000*psi, 2040*psi), 0.02, 1e-12, "common practice, no source"},
		{"gain", loader.Gain(2610*psi, 2735*psi), 1580. * 125 / 2735 * lbf, 1e-12, "arithmetic"},
		{"gain, 30 % dead", heavy.Gain(2610*psi, 2735*psi), 2054. * 125 / 2735 * lbf, 1e-12, "arithmetic"},
		{"lift now, 30 % dead", heavy.Lift(2610 * psi), (2054.*2610/2735 - 474) * lbf, 1e-12, "arithmetic"},
		{"lift without pressure is the dead weight", heavy.Lift(0), -474 * lbf, 1e-12, "definition"},
		{"share, no dead weight", Share(2450*psi, 2700*psi, 0), 250. / 2450, 1e-12, "arithmetic"},
		{"share, 30 %", Share(2450*psi, 2700*psi, 0.3), 1.3 * 250 / 2450, 1e-12, "arithmetic"},
		{"pressure for 30 % more", Needed(2450*psi, 0.3, 0), 3185 * psi, 1e-12, "arithmetic"},
		{"and with 30 % dead", Needed(2450*psi, 0.3, 0.3), 2450 * (1 + 0.3/1.3) * psi, 1e-12, "arithmetic"},
		{"dead weight that would explain it", DeadNeeded(2450*psi, 2700*psi, 0.3), 1.94, 1e-12, "arithmetic: 0.3·2450/250 − 1"},
		{"closer", Closer(100*inch, 125, 2735), 100 * inch * (1 - 2610./2735), 1e-12, "the moment of the load stays the same"},
		{"lift at 90 % of the relief setting", lever.Lift(0.9 * 2000 * psi), 900 * lbf, 1e-12,
			"OECD Code 2 corrects lift to 90 % of the relief setting: memory (high)"},
	} {
		if !scalar.EqualWithinAbsOrRel(test.got, test.want, 0, test.tol) {
			t.Errorf("%s: got %v, want %v; %s", test.name, test.got, test.want, test.source)
		}
	}
}

// A lever with weight of its own, balanced by moments about the pivot, which is
// independent of the straight line: cylinder force p·A at arm c, load at arm x,
// lever weight w at arm g.
func TestLiftAgainstStatics(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(1, 2))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*rnd.Float64() }
	for range 1000 {
		area, c, x := between(1e-3, 1e-2), between(0.1, 0.5), between(1.5, 3)
		w, g := between(0, 4000), between(0.3, 1.5)
		lifted := func(p float64) float64 { return (p*area*c - w*g) / x }
		at, now, target := between(1e7, 2.5e7), between(1e7, 2.5e7), between(1e7, 2.5e7)
		r := Rating{Load: lifted(at), Dead: w * g / x, At: at}
		if got, want := r.Lift(now), lifted(now); !scalar.EqualWithinAbsOrRel(got, want, 1e-6, 1e-11) {
			t.Fatalf("lift: got %v, want %v", got, want)
		}
		if got, want := r.Gain(now, target), lifted(target)-lifted(now); !scalar.EqualWithinAbsOrRel(got, want, 1e-6, 1e-9) {
			t.Fatalf("gain: got %v, want %v", got, want)
		}
		// The load of the higher pressure, moved nearer until the lower one lifts it.
		high, low := max(now, target), min(now, target)
		if load := lifted(high); lifted(low) > 0 {
			nearer := x - (low*area*c-w*g)/load
			if got := Closer(x, r.Gain(low, high), load); !scalar.EqualWithinAbsOrRel(got, nearer, 1e-9, 1e-9) {
				t.Fatalf("closer: got %v, want %v", got, nearer)
			}
		}
	}
}

// gain % = pressure % × (1 + dead/lift now), and Needed and DeadNeeded undo it.
func TestShareAgreesWithRating(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		r := Rating{Load: 1000 + 9000*rnd.Float64(), At: 1e7 + 1e7*rnd.Float64()}
		r.Dead = r.Load * rnd.Float64() * 0.6
		now, target := r.At*(0.8+0.4*rnd.Float64()), r.At*(0.8+0.4*rnd.Float64())
		d := r.Dead / r.Lift(now)
		gain := r.GainShare(now, target)
		if got := Share(now, target, d); !scalar.EqualWithinAbsOrRel(got, gain, 1e-13, 1e-10) {
			t.Fatalf("share: got %v, want %v", got, gain)
		}
		if got := Needed(now, gain, d); !scalar.EqualWithinRel(got, target, 1e-12) {
			t.Fatalf("needed: got %v, want %v", got, target)
		}
		if got := DeadNeeded(now, target, gain); !scalar.EqualWithinAbsOrRel(got, d, 1e-9, 1e-9) {
			t.Fatalf("dead needed: got %v, want %v", got, d)
		}
		// No dead weight gives the floor.
		if floor := target/now - 1; math.Abs(gain) < math.Abs(floor)*(1-1e-9) {
			t.Fatalf("gain %v is under its floor %v", gain, floor)
		}
	}
}

func TestOutsideTheDomain(t *testing.T) {
	t.Parallel()
	heavy := Rating{Load: 100, Dead: 900, At: 1e7}
	for _, test := range []struct {
		name string
		got  float64
	}{
		{"rated at no pressure", Rating{Load: 1}.Lift(1)},
		{"slope at no pressure", Rating{Load: 1}.Slope()},
		{"gain at no pressure", Rating{Load: 1}.Gain(1, 2)},
		{"arms and tool take it all", heavy.GainShare(0.9e7, 1e7)},
		{"share from no pressure", Share(0, 1, 0)},
		{"needed from no pressure", Needed(0, 0.1, 0)},
		{"needed with d of −1", Needed(1, 0.1, -1)},
		{"no change explains nothing", DeadNeeded(1, 1, 0.1)},
		{"closer without reach", Closer(0, 1, 1)},
		{"closer without lift", Closer(1, 1, 0)},
		{"NaN in", heavy.Lift(math.NaN())},
	} {
		if !math.IsNaN(test.got) {
			t.Errorf("%s: got %v, want NaN", test.name, test.got)
		}
	}
}
