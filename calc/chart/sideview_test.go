package chart

import (
	"math"
	"strings"
	"testing"
)

// corners of the path of a class, in drawing units.
func pathOf(t *testing.T, svg, class string) []point {
	t.Helper()
	_, rest, ok := strings.Cut(svg, `<path class="`+class+`" d="M`)
	if !ok {
		t.Fatalf("no path of class %s in %s", class, svg)
	}
	d, _, _ := strings.Cut(rest, `"`)
	var ps []point
	for _, pair := range strings.Split(d, "L") {
		x, y, _ := strings.Cut(pair, " ")
		ps = append(ps, point{number(t, x), number(t, y)})
	}
	return ps
}

// The head points where the arrow goes and is as long in every drawing, but
// never longer than half a short arrow.
func TestArrowHead(t *testing.T) {
	for _, c := range []struct {
		x, y, toX, toY float64
		tip            point
		long           float64
	}{
		{50, 50, 90, 50, point{90, 50}, 9},
		{50, 50, 50, 10, point{50, 90}, 9}, // y grows upwards in the chart
		{50, 50, 46, 50, point{46, 50}, 2},
	} {
		d := &drawing{frame: box{0, 0, 100, 100}}
		d.x, d.y = scale{extent{0, 100}, 0, 100}, scale{extent{0, 100}, 100, 0}
		(&Arrow{X: c.x, Y: c.y, ToX: c.toX, ToY: c.toY, Label: "force"}).draw(d)
		head := pathOf(t, d.lines.String(), "solid")
		if len(head) != 4 || head[0] != head[3] || head[0] != c.tip {
			t.Errorf("%v: the head is %v", c, head)
			continue
		}
		back := point{(head[1].x + head[2].x) / 2, (head[1].y + head[2].y) / 2}
		if got := math.Hypot(back.x-c.tip.x, back.y-c.tip.y); math.Abs(got-c.long) > 0.11 {
			t.Errorf("%v: the head is %v long", c, got)
		}
		if len(d.labels) != 1 || d.labels[0].text != "force" {
			t.Errorf("%v: labels %v", c, d.labels)
		}
	}
	for _, none := range []*Arrow{{X: 5, Y: 5, ToX: 5, ToY: 5}, {X: math.NaN()}, {ToY: math.Inf(1), ToX: math.NaN()}} {
		d := frame()
		none.draw(d)
		if d.lines.Len()+len(d.labels) > 0 {
			t.Errorf("%v is drawn", *none)
		}
	}
}

// A circle is round where the scales are equal, and as large as it says.
func TestCircleIsRound(t *testing.T) {
	c := Chart{EqualScale: true, X: Axis{Max: 140}, Y: Axis{Max: 120}, Marks: []Mark{
		&Circle{X: 60, Y: 50, R: 20, Solid: true}, &Curve{Points: []XY{{40, 50}, {80, 50}}},
	}}
	svg := c.SVG()
	ring, across := pathOf(t, svg, "hollow"), pathOf(t, svg, "line")
	mid := point{(across[0].x + across[1].x) / 2, across[0].y}
	for _, p := range ring {
		if r := math.Hypot(p.x-mid.x, p.y-mid.y); math.Abs(r-(across[1].x-across[0].x)/2) > 0.15 {
			t.Errorf("a corner is %v from the middle, want %v", r, (across[1].x-across[0].x)/2)
		}
	}
	for _, none := range []*Circle{{R: 0}, {R: -1}, {R: math.NaN()}, {X: math.NaN(), R: 1}} {
		d := frame()
		none.draw(d)
		if d.lines.Len()+d.fills.Len()+len(d.labels) > 0 {
			t.Errorf("%v is drawn", *none)
		}
	}
}
