package chart

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

func near(a, b float64) bool { return scalar.EqualWithinAbsOrRel(a, b, 1e-9, 1e-9) }

// plot returns a drawing whose numbers 0 to 100 and 0 to 10 fill a known frame.
func frame() *drawing {
	d := &drawing{id: "t", frame: box{10, 20, 210, 120}, height: 140}
	d.x = scale{extent{0, 100}, 10, 210}
	d.y = scale{extent{0, 10}, 120, 20}
	return d
}

func TestCrosses(t *testing.T) {
	b := box{0, 0, 10, 10}
	for _, tt := range []struct {
		name string
		p, q point
		want bool
	}{
		{"through", point{-5, 5}, point{15, 5}, true},
		{"within", point{2, 2}, point{3, 3}, true},
		{"one end within", point{5, 5}, point{50, 50}, true},
		{"across a corner", point{-1, 3}, point{3, -1}, true},
		{"past a corner", point{-3, 1}, point{1, -3}, false},
		{"in line, but short", point{-9, 5}, point{-1, 5}, false},
		{"beside, upright", point{11, -5}, point{11, 15}, false},
		{"on the edge", point{10, -5}, point{10, 15}, true},
		{"no length, within", point{5, 5}, point{5, 5}, true},
		{"no length, outside", point{5, 11}, point{5, 11}, false},
	} {
		if got := b.crosses(tt.p, tt.q); got != tt.want {
			t.Errorf("%s: %v", tt.name, got)
		}
		if got := b.crosses(tt.q, tt.p); got != tt.want {
			t.Errorf("%s, backwards: %v", tt.name, got)
		}
	}
}

func TestAt(t *testing.T) {
	d := frame()
	for _, tt := range []struct {
		x, y float64
		want point
		ok   bool
	}{
		{0, 0, point{10, 120}, true},
		{100, 10, point{210, 20}, true},
		{25, 5, point{60, 70}, true},
		{-50, 20, point{-90, -80}, true},
		{math.NaN(), 0, point{}, false},
		{0, math.NaN(), point{}, false},
		{math.Inf(1), 0, point{}, false},
		{1, math.Inf(-1), point{}, false},
	} {
		got, ok := d.at(tt.x, tt.y)
		if ok != tt.ok || ok && !(near(got.x, tt.want.x) && near(got.y, tt.want.y)) {
			t.Errorf("at(%v, %v) = %v, %v", tt.x, tt.y, got, ok)
		}
	}
	// Far out the direction from the middle of the plot stays: here 2 to 1.
	p, ok := d.at(1e12, 5+5e10)
	if !ok || math.Abs(p.x) > 1.01*far || !scalar.EqualWithinRel((p.x-110)/(70-p.y), 4, 1e-6) {
		t.Errorf("far out: %v, %v", p, ok)
	}
}

func TestNearest(t *testing.T) {
	for _, tt := range [][6]float64{
		// low, high, low2, high2, then the nearest two
		{0, 2, 5, 9, 2, 5},
		{5, 9, 0, 2, 5, 2},
		{0, 6, 4, 9, 5, 5},
		{0, 9, 4, 4, 4, 4},
	} {
		if a, b := nearest(tt[0], tt[1], tt[2], tt[3]); a != tt[4] || b != tt[5] {
			t.Errorf("nearest of %v to %v and %v to %v: %v, %v", tt[0], tt[1], tt[2], tt[3], a, b)
		}
	}
}

func TestFiner(t *testing.T) {
	for _, tt := range []struct {
		name  string
		ticks []float64
		want  int // lines from 0 to 100, both included
	}{
		{"steps of 50 in five", []float64{0, 50, 100}, 11},
		{"steps of 20 in four", []float64{0, 20, 40, 60, 80, 100}, 21},
		{"too fine to see", []float64{0, 10, 20}, 0},
		{"one tick", []float64{0}, 0},
	} {
		if got := frame().x.finer(tt.ticks); len(got) != tt.want {
			t.Errorf("%s: %d lines, want %d: %v", tt.name, len(got), tt.want, got)
		}
	}
}

func TestPath(t *testing.T) {
	for _, tt := range []struct {
		line []point
		want string
	}{
		{[]point{{0, 0}, {0.01, 0.02}, {1.26, 2}, {-0.04, 3}, {-0.04, 3}}, `<path class="x" d="M0 0L1.3 2L0 3"/>`},
		{[]point{{1, 2}}, ""},
		{nil, ""},
	} {
		d := frame()
		d.path(&d.lines, ` class="x"`, lineWeight, tt.line)
		if got := d.lines.String(); got != tt.want || (tt.want == "") != (len(d.obstacles) == 0) {
			t.Errorf("%v: %q, want %q; %d obstacles", tt.line, got, tt.want, len(d.obstacles))
		}
	}
}

// A gap in a curve starts a new line; one point alone draws none.
func TestCurveGap(t *testing.T) {
	d := frame()
	nan := math.NaN()
	(&Curve{Points: []XY{{0, 0}, {10, 1}, {nan, 2}, {20, 2}, {math.Inf(1), 0}, {30, 3}, {40, 4}}}).draw(d)
	if got, want := d.lines.String(), `<path class="line" d="M10 120L30 110"/><path class="line" d="M70 90L90 80"/>`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// The marks lie where the numbers say.
func TestMarksToScale(t *testing.T) {
	for _, tt := range []struct {
		name string
		mark Mark
		want []string
	}{
		{"band", &Band{From: 25, To: 50}, []string{`<path class="wash" d="M60 20L110 20L110 120L60 120"/>`, "M60 20L60 120", "M110 20L110 120"}},
		{"band, given backwards", &Band{From: 50, To: 25}, []string{`d="M60 20L110 20L110 120L60 120"`}},
		{"band to the edge", &Band{On: Y, From: 7.5, To: math.Inf(1), Hatch: true}, []string{`<path fill="url(#t-hatch)" d="M10 20L210 20L210 45L10 45"/>`, "M10 45L210 45"}},
		{"rule", &Rule{On: Y, At: 5, Stroke: Dashed, Accent: true}, []string{`<path class="line accent" stroke-dasharray="6 4" d="M10 70L210 70"/>`}},
		{"span", &Span{From: 50, To: 25, Row: 5}, []string{`d="M60 70L110 70"`, `d="M60 64L60 76"`, `d="M110 64L110 76"`}},
		{"span without width", &Span{From: 25, To: 25, Row: 5}, []string{`d="M60 70"`, `d="M60 64L60 76"`}},
		{"span beyond both edges", &Span{From: -25, To: 125, Row: 5}, []string{`d="M10 70L210 70"`}},
		{"dot", &Point{X: 25, Y: 5}, []string{`<path class="solid" d="M60 70m-4 0a4`}},
		{"diamond", &Point{X: 25, Y: 5, Shape: Diamond}, []string{`d="M60 70m0-6l6 6-6 6-6-6z"`}},
		{"area", &Area{Strips: []Strip{{25, 0, 5}, {50, 0, 5}}}, []string{`d="M60 70L110 70L110 120L60 120L60 70"`}},
	} {
		d := frame()
		tt.mark.draw(d)
		got := d.fills.String() + d.lines.String() + d.markers.String()
		for _, w := range tt.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: no %s in %s", tt.name, w, got)
			}
		}
	}
}

// One unit is as long upwards as sideways, whatever the ranges.
func TestEqualScale(t *testing.T) {
	for _, r := range [][2]float64{{100, 100}, {140, 120}, {1000, 1}, {1, 1000}, {30, 80}} {
		c := Chart{EqualScale: true, X: Axis{Max: r[0]}, Y: Axis{Max: r[1]}, Marks: []Mark{
			&Point{X: r[0] / 2, Y: r[1] / 2, Shape: Ring}, &Point{X: r[0]/2 + r[1]/4, Y: r[1] * 3 / 4, Shape: Ring}}}
		if r[0]/2+r[1]/4 > r[0] {
			c.X.Max, c.Marks = r[0], []Mark{&Point{X: r[0] / 2, Y: r[1] / 2, Shape: Ring}, &Point{X: r[0] * 3 / 4, Y: r[1]/2 + r[0]/4, Shape: Ring}}
		}
		var at []float64
		for _, part := range strings.Split(c.SVG(), `<path class="hollow" d="M`)[1:] {
			x, y, _ := strings.Cut(part[:strings.IndexByte(part, 'm')], " ")
			at = append(at, number(t, x), number(t, y))
		}
		if len(at) != 4 {
			t.Fatalf("%v: circles at %v, want two", r, at)
		}
		if dx, dy := at[2]-at[0], at[1]-at[3]; math.Abs(dx-dy) > 0.21 {
			t.Errorf("%v: %v sideways, %v up", r, dx, dy)
		}
	}
}

// An earlier mark chooses its place first, and fills lie under points.
func TestOrder(t *testing.T) {
	a, b := &Point{X: 1, Y: 1, Label: "first"}, &Point{X: 1, Y: 1, Label: "second"}
	x := func(marks ...Mark) string {
		svg := (&Chart{Marks: marks}).SVG()
		head, _, _ := strings.Cut(svg, ">first<")
		return head[strings.LastIndex(head, "<text"):]
	}
	if x(a) != x(a, b) || x(a) == x(b, a) {
		t.Errorf("alone %s, first %s, second %s", x(a), x(a, b), x(b, a))
	}
	band := &Band{From: 0, To: 2}
	parts := (&Chart{Marks: []Mark{a, band}}).SVG()
	order := []int{strings.Index(parts, `"grid"`), strings.Index(parts, `"wash"`), strings.Index(parts, `"solid"`), strings.Index(parts, ">first<")}
	if !slices.IsSorted(order) || order[0] < 0 {
		t.Errorf("grid, band, point, words at %v", order)
	}
}

// A label that had to go beside its band is tied to it by a line; one that
// lies over the band is not.
func TestLeader(t *testing.T) {
	for _, tt := range []struct {
		from float64
		want bool
	}{{95, true}, {20, false}} {
		d := frame()
		d.taken = []box{{100, 20, 210, 120}} // no room near the right edge
		if !tt.want {
			d.taken = nil
		}
		(&Band{From: tt.from, To: math.Inf(1), Hatch: true, Label: "limit"}).draw(d)
		before := d.lines.Len()
		d.place(d.labels[0])
		if got := d.lines.Len() > before; got != tt.want {
			t.Errorf("from %v: leader %v, want %v", tt.from, got, tt.want)
		}
		if d.words.Len() == 0 {
			t.Errorf("from %v: no words", tt.from)
		}
	}
}
