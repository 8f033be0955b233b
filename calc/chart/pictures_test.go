package chart

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "rewrite testdata/*.svg")

// pictures are the charts that the worksheets draw, with the numbers of the
// invented demo scenario.
func pictures() []Chart {
	return []Chart{short(), reading(), gain(), beforeAfter(), shim(), sideView()}
}

// short: one rectangular term, 2 % of 4,000 psi, about 2,610 psi.
func short() Chart {
	return Chart{
		ID: "short", Title: "Probably low, not shown", Height: 200,
		Desc: "The gauge reads 2,610 psi. The true pressure may be anywhere from 2,530 to 2,690 psi; the manual's range is 2,680 to 2,790 psi.",
		X:    Axis{Label: "pressure, psi"},
		Y:    Axis{Min: -1, Max: 2, Hide: true},
		Marks: []Mark{
			&Point{X: 2610, Y: 0, Label: "gauge shows 2,610", Accent: true},
			&Band{On: X, From: 2680, To: 2790, Label: "manual:\n2,680 to 2,790"},
			&Area{Strips: []Strip{{2530, 0, 1}, {2690, 0, 1}}, Label: "true pressure: equally likely", Accent: true},
			&Span{From: 2530, To: 2690, Row: -0.35, Label: "±80", Accent: true},
		},
	}
}

// reading: the same gauge limit with a step of 10 psi and the scatter of four
// readings; drawn as a rectangle smoothed by the rest.
func reading() Chart {
	const mean, a, s = 2610.0, 80.0, 8.0
	var strips []Strip
	for i := range 81 {
		x := mean + float64(i-40)*3
		h := 0.5 * (math.Erf((x-mean+a)/(s*math.Sqrt2)) - math.Erf((x-mean-a)/(s*math.Sqrt2)))
		strips = append(strips, Strip{x, 0, h})
	}
	return Chart{
		ID: "reading", Title: "Probably low, not shown", Height: 200, Heading: true,
		Desc: "The mean reading is 2,610 psi, 95 % range 2,534 to 2,686 psi; the manual's range is 2,680 to 2,790 psi.",
		X:    Axis{Label: "pressure, psi"},
		Y:    Axis{Min: -1, Max: 2, Hide: true},
		Marks: []Mark{
			&Point{X: mean, Y: 0, Label: "mean 2,610", Accent: true},
			&Band{On: X, From: 2680, To: 2790, Label: "manual:\n2,680 to 2,790"},
			&Area{Strips: strips, Accent: true},
			&Span{From: 2534, To: 2686, Row: -0.35, Label: "95 %: 2,534 to 2,686", Accent: true},
		},
	}
}

// gain: 1,580 lb at 2,735 psi, from zero, dead weight none to 30 % of the lift.
func gain() Chart {
	const lift, at = 1580.0, 2735.0
	lifts := func(p, dead float64) float64 { return lift*(1+dead)*p/at - lift*dead }
	var wedge []Strip
	for p := 0.0; p <= 3200; p += 100 {
		wedge = append(wedge, Strip{p, lifts(p, 0.3), lifts(p, 0)})
	}
	return Chart{
		ID: "gain", Title: "+72 to 94 lb", Height: 240,
		Desc: "Lift against pressure, both from zero: 1,508 lb at 2,610 psi, 1,580 lb at 2,735 psi.",
		X:    Axis{Label: "pressure, psi", Max: 3200},
		Y:    Axis{Label: "lift, lb", Max: 2000},
		Marks: []Mark{
			&Point{X: 2610, Y: lifts(2610, 0), Label: "now 1,508", Shape: Ring},
			&Point{X: 2735, Y: lift, Label: "target 1,580", Accent: true},
			&Band{On: X, From: 2790, To: math.Inf(1), Hatch: true, Label: "over the\nmanual's limit"},
			&Area{Strips: wedge, Label: "if arms and tool\nweigh up to 30 %"},
			&Curve{Points: []XY{{0, 0}, {3200, lifts(3200, 0)}}},
		},
	}
}

// beforeAfter: 2,450 to 2,700 psi is 10 to 13 %; 30 % is reported.
func beforeAfter() Chart {
	return Chart{
		ID: "before-after", Title: "More than pressure explains", Height: 160,
		Desc: "Pressure should give 10 to 13 % more lift; 30 % is reported.",
		X:    Axis{Label: "more lift, %", Max: 35},
		Y:    Axis{Max: 3, Hide: true},
		Marks: []Mark{
			&Span{From: 10, To: 13, Row: 2, Label: "pressure should give 10 to 13 %"},
			&Span{From: 30, To: 30, Row: 0.7, Label: "reported 30 %", Accent: true},
			&Point{X: 30, Y: 0.7, Shape: Diamond, Accent: true},
		},
	}
}

// shim: 40 to 50 psi per 0.010 in, one trial, the limit of 2,790 psi.
func shim() Chart {
	var belief []Strip
	var centre []XY
	for i := range 25 {
		t := float64(i) * 0.002
		m := 2612 + 4400*t
		u := 2 * math.Hypot(8, 260*(t-0.005))
		belief = append(belief, Strip{t, m - u, m + u})
		centre = append(centre, XY{t, m})
	}
	return Chart{
		ID: "shim", Title: "Next: fit 0.005 in", Height: 240,
		Desc: "Pressure against shim added. The stack of 0.025 in gives about 2,722 psi, under the target of 2,735 and the limit of 2,790.",
		X:    Axis{Label: "shim added, in"},
		Y:    Axis{Label: "pressure, psi", Min: 2550, Max: 2850},
		Marks: []Mark{
			&Band{On: Y, From: 2790, To: math.Inf(1), Hatch: true, Label: "over the manual's limit, 2,790"},
			&Rule{On: Y, At: 2735, Label: "target 2,735", Stroke: Dashed},
			&Point{X: 0.025, Y: 2722, Label: "0.025 in, about 2,722", Shape: Diamond, Accent: true},
			&Point{X: 0, Y: 2610, Label: "now", Shape: Ring},
			&Point{X: 0.010, Y: 2655, Label: "trial 2,655", Shape: Ring},
			&Area{Strips: belief, Label: "95 %"},
			&Curve{Points: centre},
		},
	}
}

// sideView: lengths drawn to scale.
func sideView() Chart {
	return Chart{
		ID: "side", Title: "The loader from the side", EqualScale: true,
		Desc: "Boom 80 in long from a pivot 54 in up, its pin at 60 in; cylinder from 32 in up.",
		X:    Axis{Label: "ahead of the pivot, in", Min: -40, Max: 100},
		Y:    Axis{Label: "height, in", Max: 120},
		Marks: []Mark{
			&Curve{Points: []XY{{0, 54}, {79.8, 60}}, Label: "boom"},
			&Curve{Points: []XY{{-9.6, 32}, {33.5, 50}}, Label: "cylinder", Stroke: Dashed, Accent: true},
			&Point{X: 0, Y: 54, Label: "pivot", Shape: Ring},
			&Point{X: 79.8, Y: 60, Label: "bucket pin", Shape: Ring},
			&Point{X: -9.6, Y: 32, Label: "base", Shape: Ring},
			&Point{X: 33.5, Y: 50, Shape: Ring},
			&Circle{X: 20, Y: 14, R: 14, Label: "wheel", Solid: true},
			&Arrow{X: 79.8, Y: 60, ToX: 79.8, ToY: 20, Label: "1,508 lb", Accent: true},
			&Arrow{X: 20, Y: 28, ToX: 20, ToY: 34},
		},
	}
}

func TestPictures(t *testing.T) {
	for _, c := range pictures() {
		got := c.SVG()
		if again := c.SVG(); got != again {
			t.Errorf("%s: two calls gave different bytes", c.ID)
		}
		if len(got) > 8192 {
			t.Errorf("%s: %d bytes, want at most 8192", c.ID, len(got))
		}
		file := filepath.Join("testdata", c.ID+".svg")
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs from %s; look at it, then run with -update\n%s", c.ID, file, got)
		}
	}
}
