package chart

// Band is everything between two numbers of one axis. An infinite end reaches
// the edge of the plot.
type Band struct {
	On       Dimension
	From, To float64
	Label    string
	Accent   bool
	Hatch    bool // hatched in ink, for where not to go
}

func (b *Band) extent(x, y *extent) {
	e := b.On.of(x, y)
	e.include(b.From)
	e.include(b.To)
}

func (b *Band) draw(d *drawing) {
	s := d.scale(b.On)
	from, to := max(min(b.From, b.To), s.min), min(max(b.From, b.To), s.max)
	if !(from <= to) { // also when an end is NaN
		return
	}
	a := d.frame
	if b.On == X {
		a.left, a.right = s.at(from), s.at(to)
	} else {
		a.top, a.bottom = s.at(to), s.at(from)
	}
	in := min(10, a.width()/3, a.height()/3) // a leader ends well inside
	l := &label{text: b.Label, accent: b.Accent, target: box{a.left + in, a.top + in, a.right - in, a.bottom - in}}
	look := class("wash", b.Accent)
	if b.Hatch {
		look = ` fill="url(#` + d.id + `-hatch)"`
		l.home = a
		d.hatched = append(d.hatched, a)
	}
	d.path(&d.fills, look, 0, []point{{a.left, a.top}, {a.right, a.top}, {a.right, a.bottom}, {a.left, a.bottom}})
	for _, edge := range [2]float64{b.From, b.To} {
		if edge >= s.min && edge <= s.max {
			d.straight(b.On, s.at(edge), class("line thin", b.Accent))
		}
	}

	x, y := (a.left+a.right)/2, (a.top+a.bottom)/2
	if b.On == X {
		l.spots = []spot{
			{x, a.top, 0, 1}, {x, a.bottom, 0, -1}, {x, y, 0, 0}, {a.right, a.top, 1, 1}, {a.left, a.top, -1, 1},
		}
	} else {
		l.spots = []spot{
			{a.left, y, 1, 0}, {a.right, y, -1, 0}, {x, y, 0, 0},
			{a.left, a.top, 1, -1}, {a.right, a.top, -1, -1}, {a.left, a.bottom, 1, 1}, {a.right, a.bottom, -1, 1},
		}
	}
	d.name(l)
}

// Rule is a straight line across the plot at one number of one axis.
type Rule struct {
	On     Dimension
	At     float64
	Label  string
	Stroke Stroke
	Accent bool
}

func (r *Rule) extent(x, y *extent) { r.On.of(x, y).include(r.At) }

func (r *Rule) draw(d *drawing) {
	s := d.scale(r.On)
	if !(r.At >= s.min && r.At <= s.max) {
		return
	}
	f, at := d.frame, s.at(r.At)
	d.straight(r.On, at, class("line", r.Accent)+string(r.Stroke))
	l := &label{text: r.Label, accent: r.Accent}
	if r.On == X {
		l.target = box{at, f.top, at, f.bottom}
		l.spots = []spot{{at, f.top, 1, 1}, {at, f.top, -1, 1}, {at, f.bottom, 1, -1}, {at, f.bottom, -1, -1}}
	} else {
		l.target = box{f.left, at, f.right, at}
		l.spots = []spot{{f.right, at, -1, -1}, {f.left, at, 1, -1}, {f.right, at, -1, 1}, {f.left, at, 1, 1}}
	}
	d.name(l)
}

// straight draws a line across the whole plot.
func (d *drawing) straight(on Dimension, at float64, look string) {
	p, q := point{at, d.frame.top}, point{at, d.frame.bottom}
	if on == Y {
		p, q = point{d.frame.left, at}, point{d.frame.right, at}
	}
	d.path(&d.lines, look, lineWeight, []point{p, q})
}
