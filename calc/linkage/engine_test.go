package linkage

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/jakecoffman/cp/v2"
)

// rig is a loader built of bodies and joints in a general-purpose rigid-body
// engine, which knows nothing of the formulas here: it integrates Newton's laws
// and solves the joints by impulses.
type rig struct {
	space  *cp.Space
	boom   *cp.Body
	light  []*cp.Body // held against gravity: the model leaves their weight out
	barrel *cp.Body
	ram    *cp.Body
	pins   Pins
}

const gravity = 9.80665

// newRig builds l with its pins where they stand at one height, and a load (kg).
func newRig(l Loader, pins Pins, load float64) *rig {
	s := cp.NewSpace()
	s.Iterations = 400 // of its impulses
	if l.Level {
		s.Iterations = 4000 // the parallel links take longer to settle
	}
	s.SetGravity(cp.Vector{Y: -gravity})
	r := &rig{space: s, pins: pins}

	along := func(from, to Point, part float64) cp.Vector {
		return cp.Vector{X: from.X + (to.X-from.X)*part, Y: from.Y + (to.Y-from.Y)*part}
	}
	r.boom = r.body(l.BoomW/gravity, 2, along(pins.Pivot, pins.Bucket, l.BoomCG/l.Boom), 0)
	r.pin(s.StaticBody, r.boom, at(pins.Pivot))

	carrier := r.boom
	if l.Level {
		// A second link, as long as the boom and parallel to it, holds the tool level.
		up := at(pins.Bucket).Sub(at(pins.Pivot)).Normalize().Perp().Mult(0.6)
		link := r.weightless(20, 2, along(pins.Pivot, pins.Bucket, 0.5).Add(up), 0)
		carrier = r.weightless(20, 1, at(pins.Bucket).Add(up.Mult(0.5)), 0)
		r.pin(s.StaticBody, link, at(pins.Pivot).Add(up))
		r.pin(link, carrier, at(pins.Bucket).Add(up))
		r.pin(r.boom, carrier, at(pins.Bucket))
	}
	tool := r.body(l.ToolW/gravity, 1, at(pins.Bucket).Add(cp.Vector{X: l.ToolCG}), 0)
	r.weld(carrier, tool)
	cargo := r.body(load, 1, at(pins.Bucket).Add(cp.Vector{X: l.LoadX}), 0)
	r.weld(carrier, cargo)

	// The cylinder: a barrel on the base pin and a ram on the rod pin, one sliding
	// in the other along the line between the pins and not turning in it.
	lie := math.Atan2(pins.Rod.Y-pins.Base.Y, pins.Rod.X-pins.Base.X)
	length := math.Hypot(pins.Rod.Y-pins.Base.Y, pins.Rod.X-pins.Base.X)
	r.barrel = r.weightless(20, 1, along(pins.Base, pins.Rod, 0.3), lie)
	r.ram = r.weightless(20, 1, along(pins.Base, pins.Rod, 0.7), lie)
	r.pin(s.StaticBody, r.barrel, at(pins.Base))
	r.pin(r.boom, r.ram, at(pins.Rod))
	s.AddConstraint(cp.NewGrooveJoint(r.barrel, r.ram, cp.Vector{X: -length}, cp.Vector{X: 2 * length}, cp.Vector{}))
	s.AddConstraint(cp.NewGearJoint(r.barrel, r.ram, 0, 1))
	return r
}

func at(p Point) cp.Vector { return cp.Vector{X: p.X, Y: p.Y} }

// body adds a body of a mass (kg) whose length (m) gives it its moment of inertia.
func (r *rig) body(mass, length float64, centre cp.Vector, angle float64) *cp.Body {
	mass = max(mass, 1e-3)
	b := r.space.AddBody(cp.NewBody(mass, mass*length*length/12))
	b.SetPosition(centre)
	b.SetAngle(angle)
	return b
}

func (r *rig) weightless(mass, length float64, centre cp.Vector, angle float64) *cp.Body {
	b := r.body(mass, length, centre, angle)
	r.light = append(r.light, b)
	return b
}

func (r *rig) pin(a, b *cp.Body, where cp.Vector) {
	r.space.AddConstraint(cp.NewPivotJoint(a, b, where))
}

// weld joins two bodies rigidly.
func (r *rig) weld(a, b *cp.Body) {
	r.pin(a, b, b.Position())
	r.space.AddConstraint(cp.NewGearJoint(a, b, b.Angle()-a.Angle(), 1))
}

// rises lets the rig go with the cylinder pushing both its pins apart with a
// force (N), and reports which way the boom starts.
func (r *rig) rises(force float64) bool {
	axis := at(r.pins.Rod).Sub(at(r.pins.Base)).Normalize()
	for range 4 {
		for _, b := range r.light {
			b.ApplyForceAtWorldPoint(cp.Vector{Y: b.Mass() * gravity}, b.Position())
		}
		r.barrel.ApplyForceAtWorldPoint(axis.Mult(-force), at(r.pins.Base))
		r.ram.ApplyForceAtWorldPoint(axis.Mult(force), at(r.pins.Rod))
		r.space.Step(1e-4)
	}
	return r.boom.AngularVelocity() > 0
}

// balanced finds by halving the load (N) at which the engine's boom turns
// neither way.
func balanced(l Loader, pins Pins, force float64) float64 {
	none, much := 0.0, 5000.0 // kg
	for range 20 {            // to 5 g
		mid := (none + much) / 2
		if newRig(l, pins, mid).rises(force) {
			none = mid
		} else {
			much = mid
		}
	}
	return (none + much) / 2 * gravity
}

// What a rigid-body engine balances is the lift, for loaders of every kind: base
// pin ahead of and behind the pivot, rod pin above and below the boom's line,
// tool kept level or not, low and high.
func TestEngineBalancesTheLift(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	worst, where := 0.0, ""
	for kind := range 16 {
		for range 2 {
			var l Loader
			for {
				l = sound(r, 1)[0]
				if l.PivotBase > 0 == (kind&1 > 0) && l.RodAbove == (kind&2 > 0) && l.Level == (kind&4 > 0) {
					break
				}
			}
			k := l.Arc()
			low, high := k.Range()
			part := between(r, 0.02, 0.25)
			if kind&8 > 0 {
				part = 1 - part
			}
			pose := k.At(low + part*(high-low))
			load := between(r, 2000, 30000)
			p := (load + pose.Dead(0)) / pose.Slope() // any pressure would do; this one lifts something

			force := l.Count * p * math.Pi / 4 * l.Bore * l.Bore * l.Efficiency
			got := balanced(l, k.Pins(pose.Angle), force)
			want := pose.Lift(p, 0)
			off := math.Abs(got/want - 1)
			name := fmt.Sprintf("base ahead %t, rod above %t, level %t, boom at %.0f°", l.PivotBase > 0, l.RodAbove, l.Level, pose.Angle*180/math.Pi)
			t.Logf("%s: lift %.1f N, engine %.1f N, %.2e apart", name, want, got, off)
			if off > 1e-4 {
				t.Errorf("%s: lift %.1f N, engine %.1f N\n%+v", name, want, got, l)
			}
			if off > worst {
				worst, where = off, name
			}
		}
	}
	t.Logf("worst of 32: %.2g apart (%s)", worst, where)
}

// The example as it stands, levelled with its load far out, and turned into other
// kinds, for the numbers that the table of outside checks has as this engine's.
func TestEngineOnTheExample(t *testing.T) {
	out := demo
	out.LoadX = 20 * inch
	levelled := out
	levelled.Level = true
	ahead := out
	ahead.PivotBase, ahead.RodAbove, ahead.Closed = 30*inch, true, 30*inch
	for _, c := range []struct {
		name   string
		l      Loader
		height float64 // in
	}{
		{"example", demo, 60}, {"example", demo, 90}, {"load 20 in out", out, 20}, {"levelled", levelled, 60}, {"levelled", levelled, 90}, {"base pin ahead, rod pin above", ahead, 90},
	} {
		k := c.l.Arc()
		pose := k.At(c.height * inch)
		low, high := k.Range()
		p := 2610 * psi
		area := math.Pi / 4 * c.l.Bore * c.l.Bore
		got := balanced(c.l, k.Pins(pose.Angle), c.l.Count*p*area*c.l.Efficiency)
		want := pose.Lift(p, 0)
		t.Logf("%s at %g in of %.1f to %.1f: lift %.3f lb, engine %.3f lb, %.1e apart", c.name, c.height, low/inch, high/inch, want/pound, got/pound, math.Abs(got/want-1))
		if math.Abs(got/want-1) > 1e-4 || !possible(c.l) {
			t.Errorf("%s at %g in: lift %.3f lb, engine %.3f lb", c.name, c.height, want/pound, got/pound)
		}
	}
}
