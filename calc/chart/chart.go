// Package chart turns a short declaration into an SVG picture, as a string.
//
// A chart is two axes and a list of marks. The caller gives every number in
// the unit that is shown; the package knows nothing of units. It looks like a
// page of a shop notebook: fine graph paper, one ink, one accent, and words
// beside the thing they name instead of a legend. Line styles and hatching
// carry the meaning, so that it reads the same in black and white.
//
//	c := chart.Chart{
//		ID: "gain", Title: "Lift against pressure",
//		X: chart.Axis{Label: "pressure, psi", Max: 3200},
//		Y: chart.Axis{Label: "lift, lb", Max: 2000},
//		Marks: []chart.Mark{
//			&chart.Point{X: 2610, Y: 1508, Label: "now"},
//			&chart.Curve{Points: []chart.XY{{X: 0, Y: 0}, {X: 2790, Y: 1612}}},
//			&chart.Band{On: chart.X, From: 2790, To: math.Inf(1), Hatch: true, Label: "over the limit"},
//		},
//	}
//	svg := c.SVG()
//
// The order of the marks does not decide what covers what: bands and areas lie
// lowest, then lines, then points, then words. It decides who chooses first:
// an earlier mark gets the better place for its label. Words never overlap; a
// label for which no room is left goes into the description instead.
//
// Colours come from the custom properties --ink, --accent, --grid and --paper of
// the page, with fallbacks that make the file look right by itself.
package chart

import "math"

// Chart declares one picture. The zero value of each field is usable.
type Chart struct {
	ID    string // unique in its page: the ids inside the picture derive from it
	Title string // names the picture, for those who hear it
	Desc  string // tells what the picture shows, in a sentence or two
	X, Y  Axis
	Marks []Mark

	// Height is the height of the drawing when it is 360 wide; 0 means 220.
	Height float64

	// Heading draws Title above the plot as well, for a picture that is to be
	// passed on without its page.
	Heading bool

	// EqualScale makes one unit as long upwards as it is sideways, as a side
	// view drawn to scale needs. The height then follows from the two ranges.
	EqualScale bool
}

// Axis declares one direction of the plot.
type Axis struct {
	Label string // quantity and unit, as "pressure, psi"

	// Min and Max are the range shown. Unless Min < Max, the range is fitted
	// to the marks with a small margin, which stops at zero.
	Min, Max float64

	// Names stand at 1, 2, 3 and so on instead of round numbers, one for each thing
	// in a list. They are for Y.
	Names []string

	// Hide leaves out numbers and label, not the direction itself.
	Hide bool

	// Format writes the number at a tick. Without it the number has the
	// decimals that the ticks need and a comma between thousands.
	Format func(float64) string
}

// Mark is one thing drawn in a plot: Band, Area, Curve, Rule, Span, Point, Arrow
// or Circle.
type Mark interface {
	extent(x, y *extent)
	draw(d *drawing)
}

// Sizes of the drawing, in its own units: CSS pixels when it is shown 360 wide.
const (
	width         = 360.0
	defaultHeight = 220.0
	margin        = 8.0  // to the edge of the drawing
	minPlot       = 60.0 // least height of the plot itself
	maxEqual      = 360.0
)

// SVG returns the picture as one svg element. The same chart always gives the
// same bytes; coordinates are rounded to 0.1.
func (c *Chart) SVG() string {
	xr, yr := extent{math.Inf(1), math.Inf(-1)}, extent{math.Inf(1), math.Inf(-1)}
	for _, m := range c.Marks {
		m.extent(&xr, &yr)
	}
	xr, yr = c.X.bounds(xr), c.Y.bounds(yr)
	if flat := xr.size() * minPlot / width; c.EqualScale && yr.size() < flat {
		yr.widen(flat)
	}

	d := &drawing{id: safeID(c.ID), description: c.Desc}
	top := margin
	if c.Heading {
		top = d.heading(c.Title)
	}
	if !c.Y.Hide {
		top += lineHeight / 2
		if c.Y.Label != "" {
			d.text(oneLine(c.Y.Label, width-2*margin), 4, top+3, 1, "")
			top += lineHeight
		}
	}
	below := margin
	if !c.X.Hide {
		below += lineHeight
		if c.X.Label != "" {
			below += lineHeight
		}
	}
	height := c.Height
	if !(height > 0 && height <= 10*width) {
		height = defaultHeight
	}
	height = max(height, top+minPlot+below)

	// The numbers at the left decide how wide the plot is.
	tall := height - top - below
	if c.EqualScale {
		tall = min((width-40)*yr.size()/xr.size(), maxEqual)
	}
	yTicks := Ticks(yr.min, yr.max, int(min(max(tall/26, 3), 8)))
	if c.Y.Names != nil {
		yTicks = nil
		for i := range c.Y.Names {
			yTicks = append(yTicks, float64(i+1))
		}
	}
	left := margin
	var yTexts []string
	if !c.Y.Hide {
		yTexts = c.Y.texts(yTicks)
		for _, s := range yTexts {
			left = max(left, textWidth(s)+margin+2)
		}
		left = min(left, width/3)
	}
	d.frame = box{left, top, width - margin - 4, height - below}
	if c.EqualScale {
		tall = d.frame.width() * yr.size() / xr.size()
		if tall > maxEqual {
			xr.widen(d.frame.width() * yr.size() / maxEqual)
			tall = maxEqual
		}
		d.frame.bottom = top + tall
		height = d.frame.bottom + below
	}
	d.height = height
	d.x = scale{xr, d.frame.left, d.frame.right}
	d.y = scale{yr, d.frame.bottom, d.frame.top}

	xTicks, xTexts := c.X.fitTicks(d.x)
	d.grid(xTicks, yTicks, c.X.Hide, c.Y.Hide)
	name := c.X.Label
	if c.X.Hide {
		xTexts, name = nil, ""
	}
	d.numbers(xTicks, yTicks, xTexts, yTexts, name)
	for _, m := range c.Marks {
		m.draw(d)
	}
	for _, l := range d.labels {
		d.place(l)
	}
	return d.assemble(c.Title)
}
