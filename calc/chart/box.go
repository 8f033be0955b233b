package chart

// box is an upright rectangle in the drawing.
type box struct{ left, top, right, bottom float64 }

func (b box) width() float64  { return b.right - b.left }
func (b box) height() float64 { return b.bottom - b.top }

// overlaps reports whether the two boxes share more than an edge.
func (b box) overlaps(o box) bool {
	return b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom
}

// into returns the box moved as little as brings it inside f; a box that is
// larger sticks out to the right or below.
func (b box) into(f box) box {
	x := max(min(0, f.right-b.right), f.left-b.left)
	y := max(min(0, f.bottom-b.bottom), f.top-b.top)
	return box{b.left + x, b.top + y, b.right + x, b.bottom + y}
}

// crosses reports whether any part of the segment from p to q lies in the box:
// what is left of it after cutting at the four sides.
func (b box) crosses(p, q point) bool {
	if p.x < b.left && q.x < b.left || p.x > b.right && q.x > b.right ||
		p.y < b.top && q.y < b.top || p.y > b.bottom && q.y > b.bottom {
		return false // clearly beside it, as most are
	}
	if b.holds(p) || b.holds(q) {
		return true
	}
	from, to := 0.0, 1.0
	for _, side := range [4][2]float64{
		{p.x - q.x, p.x - b.left}, {q.x - p.x, b.right - p.x},
		{p.y - q.y, p.y - b.top}, {q.y - p.y, b.bottom - p.y},
	} {
		step, room := side[0], side[1]
		switch {
		case step == 0 && room < 0:
			return false
		case step < 0:
			from = max(from, room/step)
		case step > 0:
			to = min(to, room/step)
		}
	}
	return from <= to
}

// holds reports whether p lies in the box or on its edge.
func (b box) holds(p point) bool {
	return p.x >= b.left && p.x <= b.right && p.y >= b.top && p.y <= b.bottom
}

// nearest returns the ends of the shortest line from b to o; they are the same
// where the boxes overlap.
func (b box) nearest(o box) (from, to point) {
	from.x, to.x = nearest(b.left, b.right, o.left, o.right)
	from.y, to.y = nearest(b.top, b.bottom, o.top, o.bottom)
	return from, to
}

// nearest returns the two numbers nearest to each other, one of each interval.
func nearest(low, high, low2, high2 float64) (float64, float64) {
	switch {
	case high < low2:
		return high, low2
	case high2 < low:
		return low, high2
	}
	both := (max(low, low2) + min(high, high2)) / 2
	return both, both
}
