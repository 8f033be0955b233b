package chart

import (
	"math"
	"strconv"
	"strings"
)

// style gives the look. Each colour is said twice, for programs that do not
// know custom properties. Marks are drawn in currentColor, so that the class
// accent alone turns one from ink to accent.
const style = `<style>` +
	`.chart{color:#22303c;color:var(--ink,#22303c);font:12px system-ui,sans-serif}` +
	`.chart .accent{color:#a33b1c;color:var(--accent,#a33b1c)}` +
	`.chart text{fill:currentColor;stroke:#fcfaf3;stroke:var(--paper,#fcfaf3);stroke-width:3px;stroke-linejoin:round;paint-order:stroke}` +
	`.chart .head{font-weight:600}` +
	`.chart .paper{fill:#fcfaf3;fill:var(--paper,#fcfaf3)}` +
	`.chart .grid{fill:none;stroke:#cfdcdb;stroke:var(--grid,#cfdcdb);stroke-width:.5}` +
	`.chart .strong{stroke-width:1}` +
	`.chart .line{fill:none;stroke:currentColor;stroke-width:2}` +
	`.chart .thin{stroke-width:1}` +
	`.chart .hatch{stroke-width:1;stroke-opacity:.6}` +
	`.chart .bar{fill:none;stroke:currentColor;stroke-width:6;stroke-opacity:.5}` +
	`.chart .wash{fill:currentColor;fill-opacity:.12}` +
	`.chart .outlined{stroke:currentColor;stroke-width:1}` +
	`.chart .solid{fill:currentColor;stroke:#fcfaf3;stroke:var(--paper,#fcfaf3)}` +
	`.chart .hollow{fill:#fcfaf3;fill:var(--paper,#fcfaf3);stroke:currentColor;stroke-width:2}` +
	`</style>`

// pen writes markup.
type pen struct{ text []byte }

// put writes a pattern in which each ~ stands for the next of the numbers.
func (b *pen) put(pattern string, numbers ...float64) {
	for _, v := range numbers {
		i := strings.IndexByte(pattern, '~')
		b.text = append(b.text, pattern[:i]...)
		b.tenths(math.Round(v * 10))
		pattern = pattern[i+1:]
	}
	b.text = append(b.text, pattern...)
}

// tenths writes a number of tenths as the shortest decimal.
func (b *pen) tenths(n float64) {
	const most = 1e15 // that a whole number is exact to, and more than any picture has
	if !(math.Abs(n) < most) {
		b.text = strconv.AppendFloat(b.text, n/10, 'f', -1, 64)
		return
	}
	whole := int64(n)
	if whole < 0 {
		b.text = append(b.text, '-')
		whole = -whole
	}
	b.text = strconv.AppendInt(b.text, whole/10, 10)
	if last := whole % 10; last > 0 {
		b.text = append(b.text, '.', '0'+byte(last))
	}
}

func (b *pen) Len() int       { return len(b.text) }
func (b *pen) String() string { return string(b.text) }

// round returns v to the nearest 0.1, never −0.
func round(v float64) float64 { return math.Round(v*10)/10 + 0 }

// class returns a class attribute, with the accent if asked.
func class(name string, accent bool) string {
	switch {
	case accent && name == "":
		name = "accent"
	case accent:
		name += " accent"
	case name == "":
		return ""
	}
	return ` class="` + name + `"`
}

// text writes one line of words. They lie to the right (1), to the left (−1) or
// on both sides (0) of x; y is the base line.
func (d *drawing) text(s string, x, y, right float64, class string) {
	anchor := ""
	switch right {
	case 0:
		anchor = ` text-anchor="middle"`
	case -1:
		anchor = ` text-anchor="end"`
	}
	d.words.put("<text"+class+anchor+` x="~" y="~">`, x, y)
	d.words.put(escape(s) + "</text>")
}

// heading writes the title above the plot and returns where it ends.
func (d *drawing) heading(title string) float64 {
	y := margin
	for _, line := range wrap(title, 0.9*(width-2*margin)) {
		d.text(line, margin, y+11, 1, class("head", false))
		y += lineHeight
	}
	return y + 4
}

// numbers writes the numbers at the left of the plot and below it, and below
// these what the latter are.
func (d *drawing) numbers(xTicks, yTicks []float64, xTexts, yTexts []string, name string) {
	for i, s := range yTexts {
		d.text(s, d.frame.left-4, d.y.at(yTicks[i])+4, -1, "")
	}
	y := d.frame.bottom + 17
	for i, s := range xTexts {
		d.text(s, tickMiddle(d.x.at(xTicks[i]), textWidth(s)), y, 0, "")
	}
	if name != "" {
		d.text(oneLine(name, width-2*margin), width/2, y+lineHeight, 0, "")
	}
}

// The parts of the markup around the marks. Each @ stands for the id of the chart.
const (
	opening = `<svg xmlns="http://www.w3.org/2000/svg" class="chart" viewBox="0 0 ~ ~" width="100%" role="img"` +
		` aria-labelledby="@-title @-desc"><title id="@-title">`
	between = `</title><desc id="@-desc">`
	defs    = `</desc>` + style + `<defs><clipPath id="@-plot"><rect x="~" y="~" width="~" height="~"/></clipPath>` +
		`<pattern id="@-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">` +
		`<path class="line hatch" d="M3 0V7"/></pattern></defs><rect class="paper" width="~" height="~"/>`
	inside = `<g clip-path="url(#@-plot)">`
)

// assemble puts the parts together, lowest first.
func (d *drawing) assemble(title string) string {
	f := d.frame
	var b pen
	part := func(s string, numbers ...float64) { b.put(strings.ReplaceAll(s, "@", d.id), numbers...) }
	part(opening, width, d.height)
	b.put(escape(title))
	part(between)
	b.put(escape(strings.TrimSpace(d.description)))
	part(defs, f.left-1, f.top-1, f.width()+2, f.height()+2, width, d.height)
	b.text = append(b.text, d.paper.text...)
	part(inside)
	for _, part := range []*pen{&d.fills, &d.lines} {
		b.text = append(b.text, part.text...)
	}
	b.put("</g>")
	for _, part := range []*pen{&d.markers, &d.words} {
		b.text = append(b.text, part.text...)
	}
	b.put("</svg>")
	return b.String()
}

// escape makes s safe as text and in an attribute, and drops the control
// characters that XML does not allow.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s {
		c := string(r)
		switch {
		case r == '&':
			c = "&amp;"
		case r == '<':
			c = "&lt;"
		case r == '>':
			c = "&gt;"
		case r == '"':
			c = "&quot;"
		case r == '\n' || r == '\t':
			c = " "
		case r < ' ' || r == 0x7F || r == 0xFFFE || r == 0xFFFF:
			c = ""
		}
		b.WriteString(c)
	}
	return b.String()
}

// safeID keeps what may stand in an id without quoting.
func safeID(s string) string {
	id := ""
	for _, r := range s {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' {
			id += string(r)
		} else {
			id += "-"
		}
	}
	if id == "" {
		return "chart"
	}
	return id
}
