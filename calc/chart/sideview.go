package chart

import "math"

// Arrow is a force or a direction, from one place to another. Its head has the
// same size in every drawing, and no more than half the arrow's length.
type Arrow struct {
	X, Y, ToX, ToY float64
	Label          string
	Accent         bool
}

func (a *Arrow) extent(x, y *extent) {
	x.include(a.X)
	x.include(a.ToX)
	y.include(a.Y)
	y.include(a.ToY)
}

func (a *Arrow) draw(d *drawing) {
	from, ok := d.at(a.X, a.Y)
	to, ok2 := d.at(a.ToX, a.ToY)
	dx, dy := to.x-from.x, to.y-from.y
	length := math.Hypot(dx, dy)
	if !ok || !ok2 || length == 0 {
		return
	}
	d.path(&d.lines, class("line", a.Accent), lineWeight, []point{from, to})
	head := min(9, length/2)
	ux, uy := dx/length*head, dy/length*head
	d.path(&d.lines, class("solid", a.Accent), 0, []point{
		{to.x, to.y}, {to.x - ux - uy*0.45, to.y - uy + ux*0.45}, {to.x - ux + uy*0.45, to.y - uy - ux*0.45}, {to.x, to.y},
	})
	l := &label{text: a.Label, accent: a.Accent, target: dot(from)}
	l.around(from)
	l.around(point{(from.x + to.x) / 2, (from.y + to.y) / 2})
	l.around(to)
	if d.inside(from) || d.inside(to) {
		d.name(l)
	}
}

// Circle is a round thing of a true size: a wheel, a weight. With Solid it hides
// what is behind it.
type Circle struct {
	X, Y, R float64 // R along x; with EqualScale it is as far along y
	Label   string
	Solid   bool
	Accent  bool
}

func (c *Circle) extent(x, y *extent) {
	x.include(c.X - c.R)
	x.include(c.X + c.R)
	y.include(c.Y - c.R)
	y.include(c.Y + c.R)
}

// corners is how many a drawn circle has: enough that nobody sees them.
const corners = 40

func (c *Circle) draw(d *drawing) {
	mid, ok := d.at(c.X, c.Y)
	if !ok || !(c.R > 0) {
		return
	}
	ring := make([]point, corners+1)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i%corners) / corners)
		if ring[i], ok = d.at(c.X+c.R*cos, c.Y+c.R*sin); !ok {
			return
		}
	}
	if c.Solid {
		d.path(&d.fills, class("hollow", c.Accent), edgeWeight, ring)
	} else {
		d.path(&d.lines, class("line", c.Accent), lineWeight, ring)
	}
	if d.inside(mid) {
		l := &label{text: c.Label, accent: c.Accent, target: dot(mid), spots: []spot{{mid.x, mid.y, 0, 0}}}
		l.around(mid)
		d.name(l)
	}
}
