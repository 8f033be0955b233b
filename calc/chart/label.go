package chart

import (
	"math"
	"strings"
)

// Weights of what words should keep off.
const (
	hatchWeight  = 3
	lineWeight   = 4
	edgeWeight   = 6
	markerWeight = 30
)

// label is a text waiting for its place.
type label struct {
	text   string
	accent bool
	target box    // what it names; a leader runs there if the label ends up far off
	home   box    // the hatched ground that it may cover freely, if any
	spots  []spot // possible places, best first

	lines         []string
	width, height float64
}

// spot is a possible place for a label: right (1), left (−1) or centred (0) of
// x, and below (1), above (−1) or centred (0) of y.
type spot struct{ x, y, right, below float64 }

// box returns what the label covers at a spot.
func (l *label) box(s spot) box {
	x, y := s.x+s.right*(l.width/2+3), s.y+s.below*(l.height/2+1)
	return box{x - l.width/2, y - l.height/2, x + l.width/2, y + l.height/2}
}

// dot returns the box that is only p.
func dot(p point) box { return box{p.x, p.y, p.x, p.y} }

// around adds the spots around a marked point: right, left, above, below, and
// the four corners.
func (l *label) around(p point) {
	for _, side := range [8][2]float64{{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, -1}, {-1, 1}, {1, 1}} {
		l.spots = append(l.spots, spot{p.x + 3*side[0], p.y + 4*side[1], side[0], side[1]})
	}
}

// name puts down a label to be placed when all marks are drawn. Without text it takes no place.
func (d *drawing) name(l *label) {
	l.lines = wrap(l.text, d.frame.width()-8)
	for _, s := range l.lines {
		l.width = max(l.width, textWidth(s)+4)
	}
	l.height = float64(len(l.lines)) * (lineHeight - 1)
	if len(l.lines) > 0 {
		d.labels = append(d.labels, l)
	}
}

// place writes a label where it covers no other words and as little else as
// can be: at one of its own spots if one is clear enough, otherwise anywhere
// in the plot, with a leader. With no room at all its text joins the description.
func (d *drawing) place(l *label) {
	best, least := box{}, math.Inf(1)
	align, leader := 0.0, false
	consider := func(b box, cost, right float64, distant bool) {
		if cost < least && d.free(b) {
			if cost += d.cover(b, l.home, least-cost); cost < least {
				best, least, align, leader = b, cost, right, distant
			}
		}
	}
	// Words beside a band could be read as naming the ground they stand on.
	ground := l.target.width()*l.target.height() > 0
	for rank, s := range l.spots {
		b := l.box(s)
		moved := b.into(d.frame)
		by := math.Abs(moved.left-b.left) + math.Abs(moved.top-b.top)
		consider(moved, 0.5*float64(rank)+0.2*by, s.right, ground || by > 18)
	}
	if least > lineWeight+3 {
		for y := d.frame.top; y <= d.frame.bottom-l.height; y += 7 {
			for x := d.frame.left; x <= d.frame.right-l.width; x += 10 {
				b := box{x, y, x + l.width, y + l.height}
				p, q := b.nearest(l.target)
				side := 0.0
				if p.x > q.x {
					side = 1
				} else if p.x < q.x {
					side = -1
				}
				cost := 4 + 0.08*(math.Abs(p.x-q.x)+math.Abs(p.y-q.y))
				for _, t := range d.taken {
					if t.crosses(p, q) {
						cost += markerWeight // a leader through other words
					}
				}
				consider(b, cost, side, true)
			}
		}
	}
	if math.IsInf(least, 1) {
		d.description += " " + strings.Join(l.lines, " ") + "."
		return
	}
	d.taken = append(d.taken, best)
	if p, q := best.nearest(l.target); leader && math.Abs(p.x-q.x)+math.Abs(p.y-q.y) > 8 {
		d.path(&d.lines, class("line thin", l.accent), lineWeight, []point{p, q})
	}
	x := (best.left + best.right) / 2
	switch align {
	case 1:
		x = best.left + 2
	case -1:
		x = best.right - 2
	}
	for i, line := range l.lines {
		d.text(line, x, best.top+11.5+float64(i)*(lineHeight-1), align, class("", l.accent))
	}
}

// free reports whether b lies in the plot and on no other words.
func (d *drawing) free(b box) bool {
	const slack = 1e-6 // of rounding
	f := d.frame
	if b.left < f.left-slack || b.right > f.right+slack || b.top < f.top-slack || b.bottom > f.bottom+slack {
		return false // also what is larger than the plot itself
	}
	for _, t := range d.taken {
		if b.overlaps(t) {
			return false
		}
	}
	return true
}

// cover returns the weight of what a label at b would cover, not counting its
// home, or some of it that is enough.
func (d *drawing) cover(b, home box, enough float64) float64 {
	sum := 0.0
	for _, h := range d.hatched {
		if h != home && h.overlaps(b) {
			sum += hatchWeight
		}
	}
	for _, o := range d.obstacles {
		if sum >= enough {
			break
		}
		if o.around.overlaps(b) {
			for i := 1; i < len(o.line); i++ {
				if b.crosses(o.line[i-1], o.line[i]) {
					sum += o.weight
					break
				}
			}
		}
	}
	return sum
}
