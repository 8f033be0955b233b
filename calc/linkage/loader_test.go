package linkage

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

const (
	inch  = 0.0254
	pound = 4.4482216152605 // N
	psi   = 6894.757293168361
)

// demo is the example of the site: invented.
var demo = Loader{
	PivotH: 54 * inch, BaseH: 32 * inch, PivotBase: -24 * inch, Boom: 80 * inch, PivotRod: 34 * inch, RodTip: 47.25 * inch,
	Bore: 1.75 * inch, Rod: 1 * inch, Count: 2, Closed: 32.9 * inch, Stroke: 20.5 * inch, Efficiency: 0.95,
	BoomW: 260 * pound, BoomCG: 38 * inch, ToolW: 290 * pound, ToolCG: 10 * inch,
}

// Source of the values: worked to 50 digits from coordinates, meeting circles
// and a cross product, without an angle in it.
func TestExample(t *testing.T) {
	k := demo.Arc()
	low, high := k.Range()
	at, bottom, top := k.At(60*inch), k.At(low), k.At(high)
	levelled := demo
	levelled.Level = true
	lk := levelled.Arc()
	la, ltop := lk.At(60*inch), lk.At(high)
	p := 2610 * psi
	for _, c := range []struct {
		name            string
		got, unit, want float64
	}{
		{"base pin, level", k.Pins(0).Base.X, inch, -9.591663046625},
		{"lowest", low, inch, 7.965819401269},
		{"highest", high, inch, 95.96691228095},
		{"cylinder at 60 in", at.Length, inch, 46.70299217115},
		{"arm at 60 in", at.Arm, inch, 16.7973311353973},
		{"lift at 60 in", at.Lift(p, 0), pound, 2061.659775376},
		{"dead at 60 in", at.Dead(0), pound, 449.8523852658828},
		{"slope at 60 in, per 100 psi", at.Slope() * 100 * psi, pound, 96.2265195648093},
		{"gain at 60 in", at.Lift(2735*psi, 0) - at.Lift(p, 0), pound, 120.283149456},
		{"lift at the lowest", bottom.Lift(p, 0), pound, 3690.132848889},
		{"lift at the highest", top.Lift(p, 0), pound, 1491.064754884},
		{"gain at the highest", top.Lift(2735*psi, 0) - top.Lift(p, 0), pound, 93.2540146919766},
		{"level, lift at 60 in", la.Lift(p, 0), pound, 2098.012160642},
		{"level, dead at 60 in", la.Dead(0), pound, 413.5},
		{"level, lift at the highest", ltop.Lift(p, 0), pound, 1533.643826768},
		{"oil for a raise, in³", demo.RaiseVolume(), inch * inch * inch, 98.6165568919},
	} {
		if got := c.got / c.unit; !scalar.EqualWithinRel(got, c.want, 1e-11) {
			t.Errorf("%s: %.13g, want %.13g", c.name, got, c.want)
		}
	}
}

// Back pressure takes from the lift what it pushes on the ring round the rod.
func TestBackPressure(t *testing.T) {
	k := demo.Arc()
	at := k.At(60 * inch)
	ring := 1 - 1/(1.75*1.75) // of the piston
	lost := at.Lift(18e6, 0) - at.Lift(18e6, 1e6)
	if want := at.Slope() * 1e6 * ring; !scalar.EqualWithinRel(lost, want, 1e-9) {
		t.Errorf("a million pascal takes %g N, want %g", lost, want)
	}
	if got := -at.Lift(0, 1e6); !scalar.EqualWithinRel(got, at.Dead(1e6), 1e-12) {
		t.Errorf("dead %g, lift at no pressure %g", at.Dead(1e6), -got)
	}
}

// Of the example's measurements the highest point hangs on pivot to base pin,
// of which only 9.6 in is level: the tape's quarter inch is about 3 in there.
func TestExampleHangsOnPivotToBase(t *testing.T) {
	s := demo.Spread(Limits{Tape: inch / 4})
	top := s.Top()
	if m := Hangs(top); m != PivotBase {
		t.Errorf("hangs on %v", m)
	}
	if by := math.Abs(top[PivotBase].Sens) / 4; !scalar.EqualWithinAbs(by, 3, 0.1) {
		t.Errorf("a quarter inch moves the highest point by %.3f in", by)
	}
	for _, c := range []struct{ side, want float64 }{{-23.75, 98.99711562939563}, {-24.25, 93.02597060605789}} { // worked to 50 digits
		l := demo
		l.PivotBase = c.side * inch
		k := l.Arc()
		if _, high := k.Range(); !scalar.EqualWithinRel(high/inch, c.want, 1e-12) {
			t.Errorf("pivot to base pin %g in: highest %.13g, want %.13g", c.side, high/inch, c.want)
		}
	}
}

func TestMeasuresHaveWordsAndValues(t *testing.T) {
	seen := map[string]bool{}
	l := demo
	for m := PivotH; m <= Rod; m++ {
		if m.String() == "" || seen[m.String()] {
			t.Errorf("measure %d: %q", m, m)
		}
		seen[m.String()] = true
		if (l.value(m) == nil) != (m == Pressure) {
			t.Errorf("%v has no value", m)
		}
	}
	*l.value(RodTip) = 1
	if l.RodTip != 1 {
		t.Error("not the value itself")
	}
}
