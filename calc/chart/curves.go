package chart

// XY is one point of a curve.
type XY struct{ X, Y float64 }

// Curve is a line through points. A point that is not finite leaves a gap.
type Curve struct {
	Points []XY
	Label  string
	Stroke Stroke
	Accent bool
}

func (c *Curve) extent(x, y *extent) {
	for _, p := range c.Points {
		x.include(p.X)
		y.include(p.Y)
	}
}

func (c *Curve) draw(d *drawing) {
	look := class("line", c.Accent) + string(c.Stroke)
	var run, seen []point
	for _, v := range c.Points {
		p, ok := d.at(v.X, v.Y)
		if !ok {
			d.path(&d.lines, look, lineWeight, run)
			run = nil
			continue
		}
		run = append(run, p)
		if d.inside(p) {
			seen = append(seen, p)
		}
	}
	d.path(&d.lines, look, lineWeight, run)
	if n := len(seen); n > 1 {
		l := &label{text: c.Label, accent: c.Accent, target: dot(seen[n/2])}
		for _, i := range [3]int{n - 1, n / 2, 0} {
			l.around(seen[i])
		}
		d.name(l)
	}
}

// Strip is one upright slice of an area.
type Strip struct{ X, Low, High float64 }

// Area is the surface between a lower and an upper curve, with its outline: a
// density over its base line, or a belief about a curve. Slices that are not
// finite are left out.
type Area struct {
	Strips []Strip
	Label  string
	Accent bool
}

func (a *Area) extent(x, y *extent) {
	for _, s := range a.Strips {
		x.include(s.X)
		y.include(s.Low)
		y.include(s.High)
	}
}

func (a *Area) draw(d *drawing) {
	n := 0
	ring := make([]point, 2*len(a.Strips)) // the upper side from the front, the lower from the back
	tallest := box{}
	for _, s := range a.Strips {
		p, ok := d.at(s.X, s.High)
		q, ok2 := d.at(s.X, s.Low)
		if !ok || !ok2 {
			continue
		}
		ring[n], ring[len(ring)-1-n] = p, q
		n++
		// The label goes where the visible part is tallest.
		b := box{p.x, max(min(p.y, q.y), d.frame.top), p.x, min(max(p.y, q.y), d.frame.bottom)}
		if b.height() > tallest.height() && d.inside(point{b.left, b.top}) {
			tallest = b
		}
	}
	if n < 2 {
		return
	}
	ring = append(append(ring[:n], ring[len(ring)-n:]...), ring[0])
	d.path(&d.fills, class("wash outlined", a.Accent), edgeWeight, ring)
	if tallest.height() > 0 {
		at := point{tallest.left, (tallest.top + tallest.bottom) / 2}
		l := &label{text: a.Label, accent: a.Accent, target: dot(at)}
		l.spots = []spot{{at.x, at.y, 0, 0}, {at.x, tallest.top, 0, -1}}
		l.around(at)
		d.name(l)
	}
}
