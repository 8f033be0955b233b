package chart

import "math"

// point is a place in the drawing; y grows downwards.
type point struct{ x, y float64 }

// scale maps the numbers of one axis to the drawing.
type scale struct {
	extent
	low, high float64 // where min and max lie
}

func (s *scale) at(v float64) float64 {
	return s.low + (v-s.min)/s.size()*(s.high-s.low)
}

// obstacle is a line that words had better not cover, and how much that matters.
type obstacle struct {
	line   []point
	around box
	weight float64
}

// drawing collects the parts of one picture.
type drawing struct {
	id          string
	description string
	height      float64
	frame       box // the plot
	x, y        scale

	paper, fills, lines, markers, words pen

	labels    []*label
	taken     []box // words already placed
	hatched   []box
	obstacles []obstacle
}

// far is the distance beyond which a point is pulled in along its direction,
// so that coordinates stay short while lines leave the plot at the same place.
const far = 1e5

// at returns where the numbers x and y lie. It reports false if they are not
// finite; such a point is left out.
func (d *drawing) at(x, y float64) (point, bool) {
	mid := point{(d.frame.left + d.frame.right) / 2, (d.frame.top + d.frame.bottom) / 2}
	dx, dy := d.x.at(x)-mid.x, d.y.at(y)-mid.y
	if out := max(math.Abs(dx), math.Abs(dy)); out > far {
		dx, dy = dx/out*far, dy/out*far
	}
	p := point{mid.x + dx, mid.y + dy}
	return p, !math.IsNaN(p.x + p.y)
}

// inside reports whether p lies in the plot or on its edge.
func (d *drawing) inside(p point) bool {
	const edge = 0.05
	return p.x >= d.frame.left-edge && p.x <= d.frame.right+edge &&
		p.y >= d.frame.top-edge && p.y <= d.frame.bottom+edge
}

// avoid asks the words placed later to keep off a line.
func (d *drawing) avoid(weight float64, line []point) {
	const near = 0.5 // gives an upright or level line a box that can be overlapped
	a := box{far, far, -far, -far}
	for _, p := range line {
		a = box{min(a.left, p.x-near), min(a.top, p.y-near), max(a.right, p.x+near), max(a.bottom, p.y+near)}
	}
	d.obstacles = append(d.obstacles, obstacle{line, a, weight})
}

// grid rules the graph paper: fine lines, and stronger ones at the ticks. A
// direction without numbers is ruled as finely as the other.
func (d *drawing) grid(xTicks, yTicks []float64, hideX, hideY bool) {
	f := d.frame
	xs, ys := d.x.finer(xTicks), d.y.finer(yTicks)
	if hideX {
		xs = every(square(ys, hideY), f.left, f.right)
	}
	if hideY {
		ys = every(square(xs, hideX), f.top, f.bottom)
	}
	var xStrong, yStrong []float64
	if !hideX {
		xStrong = d.x.all(xTicks)
		d.path(&d.lines, class("line thin", false), 0, []point{{f.left, f.bottom}, {f.right, f.bottom}})
	}
	if !hideY {
		yStrong = d.y.all(yTicks)
		d.path(&d.lines, class("line thin", false), 0, []point{{f.left, f.top}, {f.left, f.bottom}})
	}
	d.rule("grid", xs, ys)
	d.rule("grid strong", xStrong, yStrong)
}

// rule draws lines across the plot.
func (d *drawing) rule(name string, xs, ys []float64) {
	d.paper.put("<path" + class(name, false) + ` d="`)
	for _, x := range xs {
		d.paper.put("M~ ~V~", x, d.frame.top, d.frame.bottom)
	}
	for _, y := range ys {
		d.paper.put("M~ ~H~", d.frame.left, y, d.frame.right)
	}
	d.paper.put(`"/>`)
}

// square returns the distance that makes squares with the lines of the other direction.
func square(others []float64, hidden bool) float64 {
	if hidden || len(others) < 2 {
		return 9
	}
	return math.Abs(others[1] - others[0])
}

// every returns the places from high down to low, step apart.
func every(step, low, high float64) []float64 {
	var at []float64
	for v := high; v >= low; v -= step {
		at = append(at, v)
	}
	return at
}

// finer returns where the fine lines lie: five to a tick, or four where five
// would be no round number; none if they would be less than 5 apart.
func (s *scale) finer(ticks []float64) []float64 {
	if len(ticks) < 2 {
		return nil
	}
	parts := 5.0
	if n := ticks[1] - ticks[0]; len(Ticks(0, n, 6)) < 6 {
		parts = 4
	}
	step := (ticks[1] - ticks[0]) / parts
	if math.Abs(s.at(step)-s.at(0)) < 5 {
		return nil
	}
	var at []float64
	for i := math.Ceil((s.min - ticks[0]) / step); ticks[0]+i*step <= s.max; i++ {
		at = append(at, ticks[0]+i*step)
	}
	return s.all(at)
}

// all returns where the numbers lie.
func (s *scale) all(numbers []float64) []float64 {
	at := make([]float64, len(numbers))
	for i, v := range numbers {
		at[i] = s.at(v)
	}
	return at
}

// path draws a line through points, unless it is only one. Points that fall on
// their neighbour once rounded are left out.
func (d *drawing) path(on *pen, look string, weight float64, line []point) {
	if len(line) < 2 {
		return
	}
	on.put("<path" + look + ` d="`)
	command, last := "M", point{}
	for _, p := range line {
		p = point{round(p.x), round(p.y)}
		if command == "M" || p != last {
			on.put(command+"~ ~", p.x, p.y)
		}
		command, last = "L", p
	}
	on.put(`"/>`)
	if weight > 0 {
		d.avoid(weight, line)
	}
}
