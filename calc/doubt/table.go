package doubt

import "math"

// table holds a symmetric distribution at points from its middle outwards,
// joined by cubics that fit value and slope.
type table []point

// point is one row: cdf and density at y over the middle, and the integral of
// cdf − ½ from the middle to y.
type point struct{ y, cdf, density, integral float64 }

// points is how many rows a table has.
const points = 200

// outside is the chance of a t term beyond the table, both ends together.
const outside = 2e-5

// newTable adds the limits in rest to the base. Adding a limit ±a takes the
// mean over it,
//
//	F(y) = (1/2a)·∫ F_before from y − a to y + a
//
// reach is the sum of all limits.
func newTable(b *base, rest rects, reach float64) table {
	// What bends lies about the edge of the widest limit, over a width like
	// the next: the rows crowd there.
	edge, width := 0.0, max(rest[0], b.scale)
	if len(b.rects) > 0 {
		edge = b.rects[0]
	}
	last := reach
	if b.scale > 0 {
		last += b.scale * b.t.coverage(1-outside)
	}
	from, to := -math.Asinh(edge/width), math.Asinh((last-edge)/width)
	t := make(table, points)
	for i := range t {
		y := edge + width*math.Sinh(from+(to-from)*float64(i)/(points-1))
		if i == 0 {
			y = 0
		}
		t[i] = point{y: y, cdf: b.cdf(y), density: b.density(y)}
	}
	next := make(table, points)
	for _, a := range rest {
		t.limit()
		t.integrate()
		for i, p := range t {
			above, below := t.sum(p.y+a), t.sum(p.y-a)
			f1, _ := t.at(p.y + a)
			f0, _ := t.at(p.y - a)
			next[i] = point{y: p.y, cdf: min(1, 0.5+(above-below)/(2*a)), density: (f1 - f0) / (2 * a)}
		}
		t, next = next, t
	}
	t.limit()
	return t
}

// limit holds each density to three times the rise on either side, so that no
// cubic ever falls.
//
// Source: F. N. Fritsch and R. E. Carlson, 1980, from memory.
func (t table) limit() {
	for i := 1; i < len(t); i++ {
		p, q := &t[i-1], &t[i]
		most := max(0, 3*(q.cdf-p.cdf)/(q.y-p.y))
		p.density, q.density = min(p.density, most), min(q.density, most)
	}
}

// integrate fills in the integrals, exact for the cubics.
func (t table) integrate() {
	for i := 1; i < len(t); i++ {
		p, q := t[i-1], t[i]
		h := q.y - p.y
		t[i].integral = p.integral + h*((p.cdf+q.cdf-1)/2+h*(p.density-q.density)/12)
	}
}

// holds reports whether y is within the table.
func (t table) holds(y float64) bool {
	return len(t) > 0 && y <= t[len(t)-1].y
}

// find returns the row at or before y ≥ 0 that another row follows.
func (t table) find(y float64) int {
	i, j := 0, len(t)-1
	for j-i > 1 {
		if m := (i + j) / 2; t[m].y <= y {
			i = m
		} else {
			j = m
		}
	}
	return i
}

// at returns cdf and density at y, of either sign. Past the last row the cdf
// stays as it is there.
func (t table) at(y float64) (cdf, density float64) {
	if y < 0 {
		cdf, density = t.at(-y)
		return 1 - cdf, density
	}
	if !t.holds(y) {
		return t[len(t)-1].cdf, 0
	}
	i := t.find(y)
	p, q := t[i], t[i+1]
	h := q.y - p.y
	u := (y - p.y) / h
	v := 1 - u
	cdf = v*v*(p.cdf*(1+2*u)+p.density*h*u) + u*u*(q.cdf*(1+2*v)-q.density*h*v)
	density = p.density*v*(1-3*u) + q.density*u*(1-3*v) + 6*u*v*(q.cdf-p.cdf)/h
	return cdf, density
}

// sum returns the integral of cdf − ½ from the middle to y, of either sign.
func (t table) sum(y float64) float64 {
	y = math.Abs(y) // the integrand is odd
	last := t[len(t)-1]
	if y > last.y {
		return last.integral + (last.cdf-0.5)*(y-last.y)
	}
	i := t.find(y)
	p, q := t[i], t[i+1]
	h := q.y - p.y
	u := (y - p.y) / h
	// The cubic through (p.cdf, slope m0) and (q.cdf, slope m1), integrated.
	m0, m1, rise := p.density*h, q.density*h, q.cdf-p.cdf
	c2, c3 := 3*rise-2*m0-m1, m0+m1-2*rise
	return p.integral + h*u*(p.cdf-0.5+u*(m0/2+u*(c2/3+u*c3/4)))
}
