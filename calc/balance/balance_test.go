package balance

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

const (
	kg     = 9.80665
	pound  = 4.4482216152605
	inch   = 0.0254
	degree = math.Pi / 180
)

// manual is the check case of the rule for front and rear ballast that several
// operator's manuals print (second-hand), worked as fractions: unladen 1600 kg in
// front and 2400 kg in the rear, wheelbase 2.4 m, front load 1.5 m ahead of the
// front axle, rear weight 1.0 + 0.7 m behind the rear axle.
func manual(rear float64) Machine {
	return Machine{Front: 1600 * kg, Rear: 2400 * kg, Wheelbase: 2.4, Reach: 1.5, Ballast: rear * kg, BallastX: 1.7}
}

// demo is the site's example: invented, and so a check of the arithmetic alone.
func demo() Machine {
	return Machine{
		Front: 1750 * pound, Rear: 2150 * pound, Wheelbase: 68 * inch, Reach: 50 * inch,
		Ballast: 600 * pound, BallastX: 30 * inch,
	}
}

func TestBalance(t *testing.T) {
	t.Parallel()
	light, heavy, bare, example := manual(900), manual(1200), manual(0), demo()
	// Front and rear changed over, what stands on the front axle beyond 800 kg is
	// what a weight behind the rear axle can take away.
	behind := Machine{Front: 2400 * kg, Rear: (1600 - 800) * kg, Wheelbase: 2.4, Reach: 1.7}
	const inN, inLb = 1 / kg, 1 / pound
	for _, c := range []struct {
		name      string
		got, want float64
		tol       float64
		source    string
	}{
		{"front axle, 900 kg behind", light.FrontAxle(0) * inN, 962.5, 1e-12, "operator's manuals' rule: second-hand, the case computed"},
		{"rear axle, 900 kg behind", light.RearAxle(0) * inN, 3937.5, 1e-12, "the same"},
		{"front axle, 1200 kg behind", heavy.FrontAxle(0) * inN, 750, 1e-12, "the same"},
		{"front weight for 20 % in front", heavy.AxleLimit(0.2*4000*kg) * inN, 30.769231, 2e-8, "the same"},
		{"none needed: under 0", light.AxleLimit(0.2*4000*kg) * inN, -100, 1e-11, "the same"},
		{"most behind without front weight", behind.TipLoad() * inN, 1129.411765, 1e-9, "the same"},
		{"rear ballast for 45 %, front 1500 kg", bare.BallastForAxle(0.45*4000*kg, 1500*kg) * inN, 810 / 4.1, 1e-12, "the rule, worked as fractions"},
		{"rear ballast for 45 %, none needed", bare.BallastForAxle(0.45*4000*kg, 500*kg), 0, 0, "(750 − 5760 + 4320)/4.1 is under 0"},

		{"example: tips at", example.TipLoad() * inLb, 4100, 1e-12, "(2150·68 + 600·98)/50"},
		{"example: safe", example.SafeLoad(0.25) * inLb, (205000.0/68 - 0.25*4500) / (50.0/68 + 0.25), 1e-12, "by hand"},
		{"example: rear axle", example.RearAxle(1580*pound) * inLb, (205000.0 - 1580*50) / 68, 1e-12, "by hand"},
		{"example: front axle", example.FrontAxle(1580*pound) * inLb, 6080 - 126000.0/68, 1e-12, "total less the rear axle's"},
		{"example: share", example.RearShare(1580 * pound), 126000.0 / 68 / 6080, 1e-12, "by hand"},
		{"example: ballast", example.BallastForShare(0.25, 1580*pound) * inLb, 25960.0 / 81, 1e-12, "by hand"},
		{"example: ballast by the rule", example.BallastForAxle(0.45*3900*pound, 1580*pound) * inLb, 52140.0 / 98, 1e-12, "by hand"},
		{"example: no ballast needed", example.BallastForShare(0.25, 100*pound), 0, 0, "by hand: (0.25·4000·68 − 146200 + 5000)/81 is under 0"},

		// A uniform bar on two supports, from memory of any textbook of statics: half on
		// each; a weight as heavy as half of it hung as far out as half its length just lifts the far end.
		{"a bar", (&Machine{Front: 50, Rear: 50, Wheelbase: 2, Reach: 1}).TipLoad(), 100, 1e-15, "100·1 = W·1"},
	} {
		if !scalar.EqualWithinAbsOrRel(c.got, c.want, 1e-12, c.tol) {
			t.Errorf("%s: %.12g, want %.12g (%s)", c.name, c.got, c.want, c.source)
		}
	}
}

// body is a weight at a place: x behind the front contact, y above the ground.
type body struct{ w, x, y float64 }

// bodies are the machine and a load taken apart, the tractor's centre from its
// axle loads.
func bodies(m *Machine, load float64) []body {
	return []body{
		{m.Front + m.Rear, m.Rear * m.Wheelbase / (m.Front + m.Rear), m.CentreH},
		{m.Ballast, m.Wheelbase + m.BallastX, m.CentreH},
		{load, -m.Reach, m.LoadH},
	}
}

// moment is that of weights and axle loads about a point, from cross products
// in upright coordinates, which know nothing of arms. Friction at the front
// contact holds the machine on the slope.
func moment(m *Machine, load, front, rear, px, py float64) (about, along, across float64) {
	sin, cos := math.Sincos(m.Hill)
	// Upright: the slope falls towards −x when α is positive, and so rises behind.
	place := func(x, y float64) (float64, float64) { return x*cos - y*sin, x*sin + y*cos }
	cross := func(x, y, fx, fy float64) {
		about += (x-px)*fy - (y-py)*fx
		along += fx
		across += fy
	}
	weight := 0.0
	for _, b := range bodies(m, load) {
		x, y := place(b.x, b.y)
		cross(x, y, 0, -b.w)
		weight += b.w
	}
	grip := weight * sin // up the slope, along the ground
	x, y := place(0, 0)
	cross(x, y, -front*sin+grip*cos, front*cos+grip*sin)
	x, y = place(m.Wheelbase, 0)
	cross(x, y, -rear*sin, rear*cos)
	return about, along, across
}

func between(r *rand.Rand, a, b float64) float64 { return a + (b-a)*r.Float64() }

// random returns a machine such as is built, on a slope of up to 25° either way.
func random(r *rand.Rand) Machine {
	m := Machine{
		Front: between(r, 2e3, 5e4), Rear: between(r, 2e3, 5e4), Wheelbase: between(r, 1, 3), Reach: between(r, 0.1, 3),
		Ballast: between(r, 0, 2e4), BallastX: between(r, 0, 1.5),
	}
	if r.IntN(3) > 0 {
		m.Hill, m.CentreH, m.LoadH = between(r, -25, 25)*degree, between(r, 0.3, 1.5), between(r, 0.2, 3)
	}
	return m
}

// Nothing is lost: the axles carry all the weight, and moments about any point
// of weights, axle loads and grip come to nothing.
func TestNothingIsLost(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		m := random(r)
		load := between(r, 0, 3e4)
		front, rear := m.FrontAxle(load), m.RearAxle(load)
		size := m.Total() + load
		if all := size * math.Cos(m.Hill); math.Abs(front+rear-all) > 1e-14*(math.Abs(front)+math.Abs(rear)+all) {
			t.Fatalf("%+v: %v and %v are not %v", m, front, rear, all)
		}
		about, along, across := moment(&m, load, front, rear, between(r, -5, 5), between(r, -5, 5))
		for _, x := range []float64{about / 10, along, across} {
			if math.Abs(x) > 1e-12*size {
				t.Fatalf("%+v with %v: left over %v N·m, %v and %v N", m, load, about, along, across)
			}
		}
	}
}

// Each answer put back gives what was asked for.
func TestAnswersPutBack(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(3, 4))
	seen := map[string]int{}
	for range 5000 {
		m := random(r)
		keep, load := between(r, 0, 0.6), between(r, 0, 3e4)
		near := func(what string, got, want float64) {
			t.Helper()
			seen[what]++
			if !scalar.EqualWithinAbsOrRel(got, want, 1e-9*m.Total(), 1e-9) {
				t.Fatalf("%+v: %s: %v, want %v", m, what, got, want)
			}
		}
		if x := m.TipLoad(); !math.IsInf(x, 0) {
			near("rear axle at the tipping load", m.RearAxle(x), 0)
			near("front axle then", m.FrontAxle(x), (m.Total()+x)*math.Cos(m.Hill))
		}
		if x := m.SafeLoad(keep); !math.IsInf(x, 0) && x > 0 {
			near("share at the safe load", m.RearShare(x)*(m.Total()+x), keep*(m.Total()+x))
			if m.Arms().Load > 0 && x > m.TipLoad()*(1+1e-9) {
				t.Fatalf("%+v: safe %v is over what tips it, %v", m, x, m.TipLoad())
			}
		}
		if x := m.AxleLimit(5e4); !math.IsInf(x, 0) {
			near("front axle at its rating", m.FrontAxle(x), 5e4)
		}
		with := m
		if with.Ballast = m.BallastForShare(keep, load); with.Ballast > 0 && !math.IsInf(with.Ballast, 0) {
			near("share with the ballast", with.RearAxle(load), keep*(with.Total()+load)*math.Cos(m.Hill))
		} else if with.Ballast == 0 && with.RearShare(load) < keep-1e-12 {
			t.Fatalf("%+v: no ballast, and only %v of %v is kept", m, with.RearShare(load), keep)
		}
		axle := between(r, 0, 5e4)
		if with.Ballast = m.BallastForAxle(axle, load); with.Ballast > 0 && !math.IsInf(with.Ballast, 0) {
			near("rear axle with the ballast", with.RearAxle(load), axle)
		}
	}
	for _, what := range []string{"rear axle at the tipping load", "share at the safe load", "front axle at its rating", "share with the ballast", "rear axle with the ballast"} {
		if seen[what] < 500 {
			t.Errorf("%s: tried %d times only", what, seen[what])
		}
	}
}

// Nose down a hill a load tips the machine sooner, nose up later, by the angle
// at which the line from the front contact through the common centre is upright.
func TestHill(t *testing.T) {
	t.Parallel()
	m := demo()
	m.CentreH, m.LoadH = 34*inch, 40*inch
	level := m.TipLoad()
	m.Hill = 10 * degree
	if down := m.TipLoad(); down >= level {
		t.Errorf("nose down it tips at %v, level at %v", down, level)
	}
	m.Hill = -m.Hill
	if up := m.TipLoad(); up <= level {
		t.Errorf("nose up it tips at %v, level at %v", up, level)
	}
	// With a load the common centre is X behind and H above the contact; it tips
	// where tan α = X/H.
	r := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		m := random(r)
		m.CentreH, m.LoadH = between(r, 0.3, 1.5), between(r, 0.2, 3)
		load := between(r, 0, 0.9) * Machine{Front: m.Front, Rear: m.Rear, Wheelbase: m.Wheelbase, Reach: m.Reach}.tip()
		var w, x, h float64
		for _, b := range bodies(&m, load) {
			w, x, h = w+b.w, x+b.w*b.x, h+b.w*b.y
		}
		m.Hill = math.Atan2(x, h)
		if got := m.RearAxle(load); math.Abs(got) > 1e-9*w {
			t.Errorf("%+v with %v: %v N left at the angle where it tips", m, load, got)
		}
	}
}

func (m Machine) tip() float64 { return m.TipLoad() }

// What cannot be is infinite, never a wrong number.
func TestEnds(t *testing.T) {
	t.Parallel()
	up := Machine{Front: 1e4, Rear: 1e4, Wheelbase: 2, Reach: 0.2, Hill: -25 * degree, CentreH: 0.5, LoadH: 3}
	if x := up.TipLoad(); !math.IsInf(x, 1) {
		t.Errorf("a load behind the contact tips it forward: %v", x)
	}
	if x := up.SafeLoad(0); !math.IsInf(x, 1) {
		t.Errorf("a load behind the contact is unsafe: %v", x)
	}
	down := Machine{Front: 1e4, Rear: 100, Wheelbase: 1, Reach: 1, Ballast: 0, Hill: 25 * degree, CentreH: 3, LoadH: 1}
	if x := down.TipLoad(); !(x < 0) {
		t.Errorf("it stands, though it tips without a load: %v", x)
	}
	if x := down.BallastForShare(0.25, 0); !math.IsInf(x, 1) {
		t.Errorf("ballast ahead of the contact helps: %v", x)
	}
	if x := down.BallastForAxle(1, 0); !math.IsInf(x, 1) {
		t.Errorf("ballast ahead of the contact helps: %v", x)
	}
	tail := Machine{Front: 1e3, Rear: 1e4, Wheelbase: 1, Reach: 1, Ballast: 2e4, BallastX: 1}
	if x := tail.FrontAxle(0); !(x < 0) {
		t.Errorf("it does not go over backwards: %v", x)
	}
}
