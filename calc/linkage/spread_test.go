package linkage

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc/doubt"
)

var usual = Limits{Tape: inch / 4, Efficiency: 0.04, Weight: 0.05, Pressure: 80 * psi}

// The budget's doubt is what a simulation scatters: every measure drawn anywhere
// within its limits (JCGM 101), the whole geometry worked anew.
func TestBudgetIsWhatASimulationScatters(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	around := func(x, a float64) float64 { return x + a*(2*r.Float64()-1) }
	levelled := demo
	levelled.Level, levelled.LoadX = true, 0.4
	for name, l := range map[string]Loader{"example": demo, "level": levelled} {
		s := l.Spread(usual)
		for _, h := range []float64{0.3, 1.5, 2.2} {
			const n = 100_000
			p, back := 18e6, 2e5
			lifts, tops := make([]float64, n), make([]float64, n)
			for i := range n {
				other := l
				for m := PivotH; m <= LoadX; m++ {
					*other.value(m) = around(*l.value(m), usual.Tape)
				}
				other.Efficiency = around(l.Efficiency, usual.Efficiency)
				other.BoomW, other.ToolW = around(l.BoomW, usual.Weight*l.BoomW), around(l.ToolW, usual.Weight*l.ToolW)
				k := other.Arc()
				at := k.At(h)
				lifts[i] = at.Lift(around(p, usual.Pressure), back)
				_, tops[i] = k.Range()
			}
			at := s.At(h)
			_, scatter := doubt.StdDev(lifts)
			if u := at.Budget(p, back).U(); !scalar.EqualWithinRel(u, scatter, 0.015) {
				t.Errorf("%s at %g m: u %.2f N, scatter %.2f N", name, h, u, scatter)
			}
			half, inside := at.HalfWidth(p, back), 0
			for _, lift := range lifts {
				if math.Abs(lift-at.Lift(p, back)) <= half {
					inside++
				}
			}
			if share := float64(inside) / n; !scalar.EqualWithinAbs(share, 0.95, 0.012) {
				t.Errorf("%s at %g m: ± %.1f N holds %.3f", name, h, half, share)
			}
			_, scatter = doubt.StdDev(tops)
			if u := s.Top().U(); !scalar.EqualWithinRel(u, scatter, 0.03) {
				t.Errorf("%s: u of the highest %.4f m, scatter %.4f m", name, u, scatter)
			}
		}
	}
}

// Where the derivative is plain, the coefficient is it.
func TestSensitivities(t *testing.T) {
	l := demo
	l.LoadX = 0.3
	for _, within := range []Limits{usual, {}} {
		at := l.Spread(within).At(1.5)
		p, back := 18e6, 2e5
		b := at.Budget(p, back)
		lift, x := at.Lift(p, back), at.LoadArm
		for m, want := range map[Measure]float64{
			Pressure:   at.Slope(),
			Efficiency: (lift + at.Dead(0)) / l.Efficiency,
			LoadX:      -lift / x,
			ToolCG:     -l.ToolW / x,
			BoomCG:     -l.BoomW * math.Cos(at.Angle) / x,
			BoomW:      -l.BoomCG * math.Cos(at.Angle) / x,
			ToolW:      -(l.Boom*math.Cos(at.Angle) + l.ToolCG) / x,
			Closed:     0,
			Stroke:     0,
		} {
			if got := b[m]; !scalar.EqualWithinAbsOrRel(got.Sens, want, 1e-6, 1e-4) || got.Name != m.String() {
				t.Errorf("%v: %q, %g, want %g", m, got.Name, got.Sens, want)
			}
		}
		if want := doubt.Rect(within.Weight * l.ToolW); b[ToolW].U != want {
			t.Errorf("u of the tool's weight %g N, want %g", b[ToolW].U, want)
		}
		if within == (Limits{}) && (b.U() != 0 || at.HalfWidth(p, back) != 0) {
			t.Errorf("no limits, but u %g, ± %g", b.U(), at.HalfWidth(p, back))
		}
	}
}

// One limit alone: never wider than that limit.
func TestHalfWidthStaysInTheLimits(t *testing.T) {
	at := demo.Spread(Limits{Pressure: 1e6}).At(1.5)
	if got, want := at.HalfWidth(18e6, 0), 1e6*at.Slope(); !scalar.EqualWithinRel(got, want, 1e-12) {
		t.Errorf("± %g, limit %g", got, want)
	}
}

// Where one of the moved loaders cannot be, the other tells.
func TestOneSidedNearTheImpossible(t *testing.T) {
	l := demo
	l.PivotBase = -22.02 * inch // the base pin nearly plumb under the pivot: less is impossible
	at := l.Spread(usual).At(1.5)
	b := at.Budget(18e6, 0)
	if s := b[PivotBase].Sens; math.IsNaN(s) || s == 0 {
		t.Errorf("coefficient %g", s)
	}
	if w := at.HalfWidth(18e6, 0); !(w > 0) {
		t.Errorf("± %g", w)
	}
	if c := slope(1, math.NaN(), math.NaN(), 1); !math.IsNaN(c) {
		t.Errorf("neither side: %g", c)
	}
	unknown := doubt.Budget{}
	for m := range moved {
		unknown = append(unknown, doubt.Source{U: 1, Sens: 1 - float64(m)/100})
	}
	unknown[RodTip].Sens = math.NaN()
	if m := Hangs(unknown); m != RodTip {
		t.Errorf("hangs on %v", m)
	}
}
