package linkage

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

func TestCheckFindsWhatCannotBe(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(l *Loader)
		want   Problem // Limit in inches
	}{
		{"no boom", func(l *Loader) { l.Boom = 0 }, Problem{Boom, NotAbove0, 0}},
		{"no count would be no push; no bore", func(l *Loader) { l.Bore = math.NaN() }, Problem{Bore, NotAbove0, 0}},
		{"negative stroke", func(l *Loader) { l.Stroke = -1 }, Problem{Stroke, NotAbove0, 0}},
		{"base pin at the pivot", func(l *Loader) { l.PivotBase = 0 }, Problem{PivotBase, NotAbove0, 0}},
		{"rod as thick as the bore", func(l *Loader) { l.Rod = l.Bore }, Problem{Rod, RodInBore, 1.75}},
		{"base pin nearer than it is low", func(l *Loader) { l.PivotBase = -21 * inch }, Problem{PivotBase, BaseTooNear, 22}},
		{"ahead, the same", func(l *Loader) { l.PivotBase = 21 * inch }, Problem{PivotBase, BaseTooNear, 22}},
		{"rod pin too near both", func(l *Loader) { l.RodTip = 45.9 * inch }, Problem{RodTip, SidesTooShort, 46}},
		{"rod pin too far from the bucket pin", func(l *Loader) { l.RodTip = 115 * inch }, Problem{RodTip, SidesTooLong, 114}},
		{"rod pin too far from the pivot", func(l *Loader) { l.PivotRod = 128 * inch }, Problem{PivotRod, SidesTooLong, 127.25}},
		{"more stroke than barrel", func(l *Loader) { l.Stroke = 33 * inch }, Problem{Stroke, StrokeTooLong, 32.9}},
		{"shorter than the pins come", func(l *Loader) { l.Closed, l.Stroke = 9.9*inch, 9*inch }, Problem{Closed, ClosedTooShort, 10}},
		{"longer than the pins part", func(l *Loader) { l.Closed = 58 * inch }, Problem{Closed, NeverReaches, 58}},
		{"past dead centre", func(l *Loader) { l.Stroke = 25.5 * inch }, Problem{Stroke, DeadCentre, 25.1}},
		{"boom straight down", func(l *Loader) { l.Closed, l.Stroke = 10.5*inch, 10*inch }, Problem{Closed, TooSteepLow, 11.5654656067}},
		{"boom straight up", func(l *Loader) { l.PivotBase = 24 * inch; l.Closed = 35 * inch }, Problem{Stroke, TooSteepHigh, math.NaN()}},
		{"boom always up", func(l *Loader) { l.PivotBase = 24 * inch; l.Closed = 57 * inch; l.Stroke = inch / 2 }, Problem{Closed, TooSteepHigh, math.NaN()}},
		{"load behind the pivot at the top", func(l *Loader) { l.LoadX = -70 * inch }, Problem{LoadX, BehindPivot, math.NaN()}},
		{"bucket pin under the ground", func(l *Loader) { l.PivotH, l.BaseH = 45*inch, 23*inch }, Problem{Closed, UnderGround, 0}},
	} {
		l := demo
		c.change(&l)
		got, ok := l.Check()
		if ok || got.Measure != c.want.Measure || got.Fault != c.want.Fault {
			t.Errorf("%s: %v fault %d, ok %t", c.name, got.Measure, got.Fault, ok)
		}
		if !math.IsNaN(c.want.Limit) && !scalar.EqualWithinAbs(got.Limit/inch, c.want.Limit, 1e-9) {
			t.Errorf("%s: limit %g in, want %g", c.name, got.Limit/inch, c.want.Limit)
		}
		if got.Doubtful() != (c.want.Fault == UnderGround) {
			t.Errorf("%s: doubtful %t", c.name, got.Doubtful())
		}
	}
	if p, ok := demo.Check(); !ok {
		t.Errorf("the example: %v fault %d", p.Measure, p.Fault)
	}
	flat := demo // rod pin on the boom's line: the sides fail to close by rounding alone
	flat.Boom, flat.PivotRod, flat.RodTip = 2.4000000000000004, 0.9, 1.5
	if !possible(flat) {
		t.Error("a flat triangle does not pass")
	}
}

// What a problem says would be right ends that problem.
func TestLimitsEndTheProblem(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	seen := map[Fault]int{}
	for range 20000 {
		l := random(r)
		p, ok := l.Check()
		if ok || p.Fault == NotAbove0 || p.Doubtful() || math.IsNaN(p.Limit) {
			continue
		}
		seen[p.Fault]++
		by, now := 1e-6, math.Abs(*l.value(p.Measure))
		if p.Measure == LoadX {
			now = l.LoadX
		}
		switch p.Fault {
		case RodInBore, SidesTooLong, StrokeTooLong, NeverReaches, DeadCentre, TooSteepHigh:
			by = -by // at most
		}
		if (now-p.Limit)*by > 0 {
			t.Fatalf("%+v: %v fault %d at %g, which is right by the limit %g", l, p.Measure, p.Fault, now, p.Limit)
		}
		limit := p.Limit + by
		if limit <= 0 {
			continue // nothing but another measure can mend that
		}
		fixed := l
		*fixed.value(p.Measure) = math.Copysign(limit, *l.value(p.Measure))
		if p.Measure == LoadX {
			fixed.LoadX = limit
		}
		if again, ok := fixed.Check(); !ok && again.Fault == p.Fault && again.Measure == p.Measure {
			t.Fatalf("%+v: %v fault %d at %g, still at %g", l, p.Measure, p.Fault, *l.value(p.Measure), limit)
		}
	}
	for _, f := range []Fault{BaseTooNear, ClosedTooShort, NeverReaches, DeadCentre, TooSteepLow, TooSteepHigh} {
		if seen[f] < 20 {
			t.Errorf("fault %d seen %d times only", f, seen[f])
		}
	}
	t.Log(seen)
}

// A loader that passes works everywhere in its arc, and a longer cylinder raises it.
func TestPassedLoadersWork(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for _, l := range sound(r, 3000) {
		k := l.Arc()
		low, high := k.Range()
		if !(low < high) {
			t.Fatalf("%+v: from %g to %g", l, low, high)
		}
		last := 0.0
		for i := range 20 {
			at := k.At(low + (high-low)*(float64(i)+0.5)/20)
			if !(at.Arm > 0 && at.LoadArm > 0 && at.Slope() > 0 && at.Length > last) {
				t.Fatalf("%+v: %+v", l, at)
			}
			last = at.Length
		}
		lowest, highest := k.At(low), k.At(high)
		if !scalar.EqualWithinAbs(lowest.Length, l.Closed, 1e-7) || !scalar.EqualWithinAbs(highest.Length, l.Closed+l.Stroke, 1e-7) {
			t.Fatalf("%+v: lengths %g and %g at the ends", l, lowest.Length, highest.Length)
		}
	}
}

// Nothing panics, and what cannot be is NaN.
func TestImpossibleIsNaN(t *testing.T) {
	short := demo
	short.PivotBase = -20 * inch
	k := short.Arc()
	low, high := k.Range()
	at := k.At(60 * inch)
	for _, x := range []float64{low, high, at.Lift(1e7, 0), at.Slope(), at.Dead(0), at.Arm} {
		if !math.IsNaN(x) {
			t.Errorf("base pin out of reach: %g", x)
		}
	}
	if pins := k.Pins(0); pins.Base != (Point{X: 0, Y: short.BaseH}) {
		t.Errorf("drawn at %+v", pins.Base)
	}
	apart := demo
	apart.RodTip = 40 * inch
	k = apart.Arc()
	if pins := k.Pins(0); pins.Rod != (Point{X: apart.PivotRod, Y: apart.PivotH}) {
		t.Errorf("drawn at %+v", pins.Rod)
	}
	k = demo.Arc()
	for _, h := range []float64{-30 * inch, 140 * inch, math.NaN()} {
		if at := k.At(h); !math.IsNaN(at.Lift(1e7, 0)) {
			t.Errorf("height %g out of the boom's reach lifts %g", h, at.Lift(1e7, 0))
		}
	}
	behind := demo
	behind.LoadX = -90 * inch
	k = behind.Arc()
	if at := k.At(60 * inch); !math.IsNaN(at.Lift(1e7, 0)) {
		t.Errorf("a load behind the pivot: %g", at.Lift(1e7, 0))
	}
	var none Loader
	none.Check()
	none.Spread(Limits{}).At(0).Budget(0, 0)
}

// A lever of the first class, its cylinder pulling down behind the pivot from
// above, is an arc like another: angles are counted round the circle.
func TestFirstClassLeverPasses(t *testing.T) {
	l := lever(10, 10, 20, 30)
	l.Rod = l.Bore / 2
	k := l.Arc()
	from, to := k.At(l.PivotH-2), k.At(l.PivotH-1)
	l.Closed, l.Stroke = from.Length, to.Length-from.Length
	if p, ok := l.Check(); !ok {
		t.Errorf("%v fault %d", p.Measure, p.Fault)
	}
}
