package balance

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc/doubt"
)

// The tipping load's derivatives by hand, at the example: (2150·68 + 600·98)/50.
func TestSpread(t *testing.T) {
	t.Parallel()
	m := demo()
	moved := m.Spread(Limits{Weight: 0.02, Length: inch}, (*Machine).TipLoad)
	for k, want := range map[Measure]float64{
		Front:     0,
		Rear:      43 * 68 / 50.0,
		Ballast:   12 * 98 / 50.0,
		Wheelbase: (2150 + 600) / 50.0,
		Reach:     -(205000/49.0 - 205000/51.0) / 2,
		BallastX:  600 / 50.0,
		CentreH:   0,
		LoadH:     0,
	} {
		if got := moved[k] / pound; !scalar.EqualWithinAbsOrRel(got, want, 1e-9, 1e-9) {
			t.Errorf("%s: %v lb, want %v", k, got, want)
		}
	}
	if none := m.Spread(Limits{}, (*Machine).TipLoad); none != (Moved{}) {
		t.Errorf("no limits, and yet %v", none)
	}
	m.Hill, m.CentreH, m.LoadH = 0.1, 0.8, 1
	moved = m.Spread(Limits{Length: inch}, (*Machine).TipLoad)
	sin, cos := math.Sincos(0.1)
	if got, want := moved[CentreH], -inch*sin*m.Total()/(m.Reach*cos+m.LoadH*sin); !scalar.EqualWithinRel(got, want, 1e-9) {
		t.Errorf("height of the centre: %v, want %v", got, want)
	}
	// A tape no better than the reach itself.
	short := demo()
	short.Reach = inch / 2
	if x := short.Spread(Limits{Length: inch}, (*Machine).TipLoad)[Reach]; !(x < 0) || math.IsInf(x, 0) {
		t.Errorf("reach: %v", x)
	}
	// What moves both alike cancels.
	if same := moved.Less(moved); same != (Moved{}) {
		t.Errorf("a result less itself is in doubt by %v", same)
	}
}

// The straight line through the limits against a simulation that draws every
// measure and works the whole machine out (JCGM 101:2008, clause 7).
func TestSpreadAgainstSimulation(t *testing.T) {
	t.Parallel()
	limits := Limits{Weight: 0.02, Length: inch}
	hill := demo()
	hill.Hill, hill.CentreH, hill.LoadH = 8*degree, 34*inch, 30*inch
	for name, m := range map[string]Machine{"level": demo(), "nose down": hill} {
		for what, result := range map[string]func(*Machine) float64{
			"tipping load": (*Machine).TipLoad,
			"safe load":    func(m *Machine) float64 { return m.SafeLoad(0.25) },
			"axle limit":   func(m *Machine) float64 { return m.AxleLimit(5000 * pound) },
			"rear axle":    func(m *Machine) float64 { return m.RearAxle(1580 * pound) },
		} {
			lo, hi := m.Spread(limits, result).Sum(result(&m), 0).Dist().Interval(0.95)
			sim := doubt.NewSimulation(func(r *rand.Rand) float64 {
				other := m
				for k := range measures {
					half := limits.Length
					if k.IsWeight() {
						half = limits.Weight * *m.value(k)
					}
					*other.value(k) += half * (2*r.Float64() - 1)
				}
				return result(&other)
			})
			sim.Run(60_000)
			_, u, slo, shi, _ := sim.Summary(0.95)
			// The bend of reach in the quotient and 60 000 trials: 5 % of u.
			if math.Abs(lo-slo) > 0.05*u || math.Abs(hi-shi) > 0.05*u {
				t.Errorf("%s, %s: %.1f to %.1f lb, simulated %.1f to %.1f (u %.1f)", name, what, lo/pound, hi/pound, slo/pound, shi/pound, u/pound)
			}
		}
	}
}

// One limit alone is within its 1.96 u only by passing its end: the end holds.
// Three alike: 1.96·√3·a/√3.
func TestHalfWidth(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		moved Moved
		want  float64
	}{
		{Moved{}, 0},
		{Moved{Rear: -5}, 5},
		{Moved{Front: 5, Reach: -5, LoadH: 5}, 1.959963984540054 * 5},
	} {
		if got := c.moved.HalfWidth(); !scalar.EqualWithinAbsOrRel(got, c.want, 1e-15, 1e-14) {
			t.Errorf("%v: %v, want %v", c.moved, got, c.want)
		}
	}
}

func TestMeasures(t *testing.T) {
	t.Parallel()
	var m Machine
	seen := map[*float64]bool{}
	for k := range measures {
		if k.String() == "" || seen[m.value(k)] {
			t.Errorf("measure %d has no name or no place of its own", k)
		}
		seen[m.value(k)] = true
	}
	// A limit of the result's own is one more rectangle.
	if s := (Moved{Rear: -3}).Sum(10, 2); s.Mid != 10 || s.Rects[0] != 2 || s.Rects[1+int(Rear)] != 3 {
		t.Errorf("%+v", s)
	}
}
