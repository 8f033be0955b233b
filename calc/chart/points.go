package chart

// Span is an interval along x, drawn as a bar with two ends at the height Row.
type Span struct {
	From, To float64
	Row      float64
	Label    string
	Accent   bool
}

func (s *Span) extent(x, y *extent) {
	x.include(s.From)
	x.include(s.To)
	y.include(s.Row)
}

func (s *Span) draw(d *drawing) {
	p, ok := d.at(min(s.From, s.To), s.Row)
	q, ok2 := d.at(max(s.From, s.To), s.Row)
	y := p.y
	left, right := max(p.x, d.frame.left), min(q.x, d.frame.right)
	if !ok || !ok2 || left > right || !d.inside(point{left, y}) {
		return
	}
	d.path(&d.markers, class("bar", s.Accent), markerWeight, []point{{left, y}, {right, y}})
	// An end outside the plot gets no stroke: the bar runs on.
	for _, x := range [2]float64{p.x, q.x} {
		if x == left || x == right {
			d.path(&d.markers, class("line", s.Accent), markerWeight, []point{{x, y - 6}, {x, y + 6}})
		}
	}
	x := (left + right) / 2
	d.name(&label{text: s.Label, accent: s.Accent, target: box{left, y, right, y}, spots: []spot{
		{x, y - 7, 0, -1}, {right + 3, y, 1, 0}, {left - 3, y, -1, 0}, {x, y + 7, 0, 1},
	}})
}

// Point is one marked place. Outside the plot it is left out.
type Point struct {
	X, Y   float64
	Label  string
	Shape  Shape
	Accent bool
}

func (p *Point) extent(x, y *extent) {
	x.include(p.X)
	y.include(p.Y)
}

func (p *Point) draw(d *drawing) {
	at, ok := d.at(p.X, p.Y)
	if !ok || !d.inside(at) {
		return
	}
	l := &label{text: p.Label, accent: p.Accent, target: dot(at)}
	if p.Shape == Bare {
		l.spots = []spot{{at.x, at.y, 0, 0}}
	} else {
		look := shapes[p.Shape]
		d.markers.put("<path"+class(look[0], p.Accent)+` d="M~ ~`+look[1]+`"/>`, at.x, at.y)
		d.avoid(markerWeight, []point{{at.x - 4, at.y - 4}, {at.x + 4, at.y + 4}})
		d.avoid(markerWeight, []point{{at.x - 4, at.y + 4}, {at.x + 4, at.y - 4}})
	}
	l.around(at)
	d.name(l)
}
