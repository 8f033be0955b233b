package many

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"plainlift/calc/chart"
	"plainlift/calc/unit"
)

const (
	byName = 40  // up to so many rows are drawn by name
	groups = 180 // more are drawn in at most so many groups: two pixels each
)

// Picture draws the answered rows against their bands, as SVG; "" where there is
// nothing to compare. says tells what it leaves out or thins out.
func (b *Batch) Picture() (svg, says string) {
	m := b.Worksheet.Banded
	if m == nil {
		return "", ""
	}
	var rows []*Result
	for i := range b.Results {
		if r := &b.Results[i]; r.Error == "" {
			rows = append(rows, r)
		}
	}
	switch {
	case len(rows) == 0:
		return "", ""
	case len(rows) <= byName:
		return b.named(rows), ""
	}
	return b.ranked(rows)
}

// named draws each row by its name, on one axis.
func (b *Batch) named(rows []*Result) string {
	m := b.Worksheet.Banded
	u := m.Kind.Shown(b.sys)
	c := &chart.Chart{ID: "many", Title: "All readings against their bands",
		Desc: "One line a row: the band, the reading and between what the true value lies. A hollow mark: the doubt reaches across an end of the band.",
		X:    chart.Axis{Label: m.Axis + ", " + u.Name}, Y: chart.Axis{Min: 0.3, Max: float64(len(rows)) + 0.7},
		Height: 60 + 19*float64(len(rows))}
	least, most := math.Inf(1), math.Inf(-1)
	for _, r := range rows {
		for _, x := range [...]float64{r.lo, r.hi, r.from, r.to} {
			if !math.IsInf(x, 0) {
				least, most = min(least, u.FromSI(x)), max(most, u.FromSI(x))
			}
		}
	}
	pad := max((most-least)*0.05, math.Abs(most)*1e-6)
	c.X.Min, c.X.Max = least-pad, most+pad
	for i := range rows {
		r := rows[len(rows)-1-i] // the first row on top
		y := float64(i + 1)
		c.Y.Names = append(c.Y.Names, b.Name(r))
		from, to := max(u.FromSI(r.from), c.X.Min), min(u.FromSI(r.to), c.X.Max)
		if !math.IsInf(r.from, 0) || !math.IsInf(r.to, 0) {
			c.Marks = append(c.Marks, &chart.Area{Strips: []chart.Strip{{X: from, Low: y - 0.38, High: y + 0.38}, {X: to, Low: y - 0.38, High: y + 0.38}}})
		}
		out := r.value < r.from || r.value > r.to
		shape := chart.Dot
		if r.lo < r.from && r.from < r.hi || r.lo < r.to && r.to < r.hi {
			shape = chart.Ring
		}
		c.Marks = append(c.Marks, &chart.Span{From: u.FromSI(r.lo), To: u.FromSI(r.hi), Row: y, Accent: out},
			&chart.Point{X: u.FromSI(r.value), Y: y, Shape: shape, Accent: out})
	}
	return c.SVG()
}

// Name is what a row is called: its first kept cell, or its line in the file.
func (b *Batch) Name(r *Result) string {
	for i, c := range b.Columns {
		if name := strings.TrimSpace(b.File.Rows[r.Row].Cells[i]); c.Field == nil && name != "" {
			return name
		}
	}
	return "line " + strconv.Itoa(b.File.Rows[r.Row].Line)
}

// ranked draws rows by their place in their own band, the lowest first: 0 % is its
// lower end, 100 % its upper. Many rows are drawn in groups of neighbours: the
// middle one's place, and how far the doubt of any of them reaches.
func (b *Batch) ranked(rows []*Result) (svg, says string) {
	of := func(n int) string { return unit.Decimals(float64(n), 0, b.sys) }
	p := &places{}
	for _, r := range rows {
		if size := r.to - r.from; size > 0 && !math.IsInf(size, 0) {
			*p = append(*p, [3]float64{(r.value - r.from) / size, (r.lo - r.from) / size, (r.hi - r.from) / size})
		}
	}
	n := len(*p)
	if left := len(rows) - n; left > 0 {
		says = of(left) + " rows without both ends of a band are not in the picture. "
	}
	if n == 0 {
		return "", says
	}
	sort.Sort(p)
	under, over := 0, 0
	for _, x := range *p {
		if x[0] < 0 {
			under++
		} else if x[0] > 1 {
			over++
		}
	}
	desc := of(n) + " readings by their place in their own band, lowest first: " + of(under) + " under it, " + of(n-under-over) + " in it, " + of(over) + " over it."

	size := (n + groups - 1) / groups
	var line []chart.XY
	var doubt []chart.Strip
	for i := 0; i < n; i += size {
		group := (*p)[i:min(i+size, n)]
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, x := range group {
			lo, hi = min(lo, x[1]), max(hi, x[2])
		}
		x := float64(i) + float64(len(group)+1)/2
		line = append(line, chart.XY{X: x, Y: 100 * group[len(group)/2][0]})
		doubt = append(doubt, chart.Strip{X: x, Low: 100 * lo, High: 100 * hi})
	}
	// What lies far off would press the rest flat: the plot shows all but the outermost hundredth.
	low, high := 100*(*p)[n/100][0], 100*(*p)[n-1-n/100][0]
	low, high = min(low, -50)-50, max(high, 150)+50
	if size > 1 {
		says += "The rows are drawn in groups of " + of(size) + ": the line is each group's middle one, the wash how far the doubt of any of them reaches. "
	}
	if (*p)[0][0]*100 < low || (*p)[n-1][0]*100 > high {
		says += "The outermost lie beyond the picture."
	}
	c := &chart.Chart{ID: "many", Title: "All readings by their place in their band", Desc: desc, Height: 260,
		X: chart.Axis{Label: "rows, lowest in their band first", Min: 0, Max: float64(n) + 1},
		Y: chart.Axis{Label: "place in the band, %: 0 lowest, 100 highest", Min: low, Max: high},
		Marks: []chart.Mark{
			&chart.Band{On: chart.Y, From: 0, To: 100, Label: "in range"},
			&chart.Curve{Points: line, Accent: true, Label: "reading"},
			&chart.Area{Strips: doubt, Accent: true},
		}}
	return c.SVG(), strings.TrimSpace(desc + " " + says)
}

// places are value, lowest and highest of each row, sorted by value.
type places [][3]float64

func (p *places) Len() int           { return len(*p) }
func (p *places) Less(i, j int) bool { return (*p)[i][0] < (*p)[j][0] }
func (p *places) Swap(i, j int)      { (*p)[i], (*p)[j] = (*p)[j], (*p)[i] }
