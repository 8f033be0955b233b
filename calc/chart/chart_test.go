package chart

import (
	"encoding/xml"
	"io"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
)

// drawn is what a test reads back from a picture.
type drawn struct {
	height float64
	ids    []string
	refs   []string
	texts  []box
	words  []string
	desc   string
}

// read parses a picture and fails if it is not well-formed or holds a number
// that is not finite.
func read(t *testing.T, svg string) drawn {
	t.Helper()
	var d drawn
	dec := xml.NewDecoder(strings.NewReader(svg))
	var text, desc bool
	for {
		token, err := dec.Token()
		if err == io.EOF {
			return d
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, svg)
		}
		switch token := token.(type) {
		case xml.StartElement:
			attr := map[string]string{}
			for _, a := range token.Attr {
				attr[a.Name.Local] = a.Value
			}
			if id := attr["id"]; id != "" {
				d.ids = append(d.ids, id)
			}
			for _, name := range []string{"d", "x", "y", "cx", "cy", "width", "height", "viewBox"} {
				if strings.ContainsAny(attr[name], "NInfe+") { // NaN, Inf or an exponent
					t.Fatalf("%s=%q:\n%s", name, attr[name], svg)
				}
			}
			d.refs = append(d.refs, strings.Fields(attr["aria-labelledby"])...)
			for _, v := range attr {
				if rest, ok := strings.CutPrefix(v, "url(#"); ok {
					d.refs = append(d.refs, strings.TrimSuffix(rest, ")"))
				}
			}
			desc = token.Name.Local == "desc"
			text = token.Name.Local == "text"
			switch token.Name.Local {
			case "svg":
				d.height = number(t, strings.Fields(attr["viewBox"])[3])
			case "text":
				x, y := number(t, attr["x"]), number(t, attr["y"])
				d.texts = append(d.texts, box{x, y - 10, x, y + 2})
				d.words = append(d.words, attr["text-anchor"])
			}
		case xml.CharData:
			if desc {
				d.desc += string(token)
			}
			if text {
				// Turn the anchor noted above into the box of the words.
				last := len(d.texts) - 1
				b, w := &d.texts[last], textWidth(string(token))
				switch d.words[last] {
				case "middle":
					b.left, b.right = b.left-w/2, b.right+w/2
				case "end":
					b.left -= w
				default:
					b.right += w
				}
				d.words[last] = string(token)
			}
		case xml.EndElement:
			text, desc = false, false
		}
	}
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		t.Fatalf("%q is not a finite number", s)
	}
	return v
}

// inspect checks what holds for every picture.
func inspect(t *testing.T, c Chart) drawn {
	t.Helper()
	svg := c.SVG()
	d := read(t, svg)
	ids := map[string]bool{}
	for _, id := range d.ids {
		if ids[id] || !strings.HasPrefix(id, safeID(c.ID)) {
			t.Errorf("id %q is there twice, or does not derive from %q", id, c.ID)
		}
		ids[id] = true
	}
	for _, r := range d.refs {
		if !ids[r] {
			t.Errorf("nothing has the id %q", r)
		}
	}
	for i, b := range d.texts {
		if b.left < 0 || b.right > width || b.top < 0 || b.bottom > d.height {
			t.Errorf("%q sticks out of the picture: %v\n%s", d.words[i], b, svg)
		}
		for j, o := range d.texts[:i] {
			if b.overlaps(o) {
				t.Errorf("%q and %q overlap\n%s", d.words[i], d.words[j], svg)
			}
		}
	}
	if t.Failed() {
		t.FailNow()
	}
	return d
}

func TestPicturesHold(t *testing.T) {
	for _, c := range pictures() {
		d := inspect(t, c)
		if d.desc != c.Desc {
			t.Errorf("%s: a label found no room: %q", c.ID, d.desc)
		}
	}
}

func TestEscaping(t *testing.T) {
	const nasty = "a<b & \"c\">\x00\x1b\xff\ufffe]]>\n<script>"
	c := Chart{
		ID: `x"<y z`, Title: nasty, Desc: nasty, Heading: true,
		X: Axis{Label: nasty, Format: func(float64) string { return "<&>" }},
		Y: Axis{Label: nasty, Format: func(float64) string { return `"` }},
		Marks: []Mark{
			&Point{X: 1, Y: 1, Label: nasty}, &Span{From: 0, To: 1, Label: nasty},
			&Band{From: 0, To: 1, Label: nasty, Hatch: true}, &Rule{At: 1, Label: nasty},
		},
	}
	d := inspect(t, c)
	if got, want := escape("a<b & \"c\">\x00\n'"), "a&lt;b &amp; &quot;c&quot;&gt; '"; got != want {
		t.Errorf("escape = %q, want %q", got, want)
	}
	if !strings.HasPrefix(d.desc, `a<b & "c">`) {
		t.Errorf("desc reads back as %q", d.desc)
	}
	if strings.Contains(c.SVG(), "<script") {
		t.Error("a label became an element")
	}
	for in, want := range map[string]string{"": "chart", "before-after": "before-after", `a"b c`: "a-b-c"} {
		if got := safeID(in); got != want {
			t.Errorf("safeID(%q) = %q, want %q", in, got, want)
		}
	}
}

// awkward returns charts that are hard to draw.
func awkward() []Chart {
	inf, nan := math.Inf(1), math.NaN()
	long := "a label that is a good deal longer than the plot is wide, and goes on"
	at := func(x, y float64) *Point { return &Point{X: x, Y: y, Label: "reads " + plainNumber(x, 0)} }
	same := []Mark{}
	for range 12 {
		same = append(same, &Point{X: 1, Y: 1, Label: "the same place"})
	}
	return []Chart{
		{ID: "edges", Marks: []Mark{at(0, 0), at(1000, 0), at(0, 1000), at(1000, 1000), at(500, 1000)}},
		{ID: "same", Marks: same},
		{ID: "tiny-gain", X: Axis{Max: 3000}, Y: Axis{Max: 2000}, Marks: []Mark{
			at(2610, 1500), at(2611, 1500.6), &Curve{Points: []XY{{0, 0}, {3000, 1724}}, Label: "lift"}}},
		{ID: "narrow-bands", X: Axis{Label: "bar", Min: 180, Max: 190}, Marks: []Mark{
			&Band{From: 180, To: 180.01, Label: "left edge"}, &Band{From: 185, To: 185, Label: "no width"},
			&Band{From: 189.99, To: 190, Label: "right edge"}, &Band{On: Y, From: 0.5, To: 0.501, Label: "thin"},
			&Band{From: inf, To: 189.5, Hatch: true, Label: "over"}, &Band{From: -inf, To: 180.5, Hatch: true, Label: "under"}}},
		{ID: "long", Title: long + long + long, Heading: true, X: Axis{Label: long + long}, Y: Axis{Label: long + long}, Marks: []Mark{
			&Rule{At: 1, Label: long}, &Rule{On: Y, At: 1, Label: strings.ReplaceAll(long+long, " ", "")}, &Span{To: 2, Label: long}}},
		{ID: "huge", X: Axis{Min: -1e300, Max: 1e300, Label: "x"}, Y: Axis{Label: "y"}, Marks: []Mark{
			at(1e14, 1e15), at(-1e14, -1e15), at(1e200, 0), &Curve{Points: []XY{{-1e308, -1e308}, {1e308, 1e308}}}}},
		{ID: "small", X: Axis{Label: "x"}, Y: Axis{Label: "y"}, Marks: []Mark{at(1e-200, 1e-13), at(3e-200, 2e-13)}},
		{ID: "none"},
		{ID: "nothing-finite", Marks: []Mark{at(nan, 1), at(1, inf), &Rule{At: nan, Label: "no"}, &Rule{At: inf, Label: "no"},
			&Band{From: nan, To: 1, Label: "no"}, &Span{From: nan, To: 2, Label: "no"}, &Span{From: -inf, To: inf, Label: "no"},
			&Curve{Points: []XY{{nan, 0}, {0, inf}, {1, 1}}, Label: "no"}, &Area{Strips: []Strip{{0, nan, 1}, {1, 0, inf}, {2, 0, 0}}, Label: "no"}}},
		{ID: "flat", EqualScale: true, X: Axis{Max: 1000}, Y: Axis{Max: 1}, Marks: []Mark{at(500, 0.5)}},
		{ID: "tall", EqualScale: true, X: Axis{Max: 1}, Y: Axis{Max: 1000}, Marks: []Mark{at(0.5, 500)}},
		{ID: "low", Height: 1, X: Axis{Label: "x"}, Y: Axis{Label: "y"}, Marks: []Mark{at(1, 1), at(2, 2), at(3, 3)}},
		{ID: "bad-height", Height: nan, Marks: []Mark{at(1, 1)}},
		{ID: "wide-numbers", X: Axis{Label: "x", Max: 9e8}, Y: Axis{Label: "y", Max: 9e8}, Marks: []Mark{at(4e8, 4e8)}},
		{ID: "wide-formats", X: Axis{Format: func(float64) string { return long }, Max: 1}, Y: Axis{Format: func(float64) string { return long }, Max: 1}},
		{ID: "beyond", X: Axis{Max: 10}, Y: Axis{Max: 10}, Marks: []Mark{&Curve{Points: []XY{{0, 0}, {1e12, 2e12}}, Label: "steep"},
			at(11, 5), &Span{From: -5, To: 50, Row: 5, Label: "runs on at both ends"}, &Span{From: 20, To: 30, Row: 5, Label: "outside"}}},
	}
}

func TestAwkward(t *testing.T) {
	for _, c := range awkward() {
		t.Run(c.ID, func(t *testing.T) { inspect(t, c) })
	}
}

// A mark that is not finite, or lies outside the plot, draws no words.
func TestLeftOut(t *testing.T) {
	for _, c := range awkward() {
		if c.ID != "nothing-finite" && c.ID != "beyond" {
			continue
		}
		d := inspect(t, c)
		all := strings.Join(d.words, " ") + d.desc
		for _, word := range []string{"no", "reads", "outside"} {
			if strings.Contains(all, word) {
				t.Errorf("%s: %q is shown: %s", c.ID, word, all)
			}
		}
	}
}

// A label without room must not be lost.
func TestNoRoom(t *testing.T) {
	c := Chart{ID: "full", Desc: "Twenty points."}
	for i := range 40 {
		c.Marks = append(c.Marks, &Point{X: 1, Y: 1, Label: "a rather long label, number " + strconv.Itoa(i)})
	}
	d := inspect(t, c)
	all := strings.Join(d.words, " ") + " " + d.desc
	for i := range 40 {
		if n := "number " + strconv.Itoa(i); !strings.Contains(all+" ", n+" ") && !strings.Contains(all, n+".") {
			t.Errorf("label %q is lost", n)
		}
	}
	if d.desc == c.Desc {
		t.Error("forty labels had room; the test shows nothing")
	}
}

// random returns a chart of worksheet-like marks with numbers that may be wild.
func random(r *rand.Rand) Chart {
	magnitude := math.Pow(10, float64(r.IntN(12)-4))
	v := func() float64 {
		switch r.IntN(40) {
		case 0:
			return math.Inf(1)
		case 1:
			return math.NaN()
		case 2:
			return math.Float64frombits(r.Uint64())
		}
		return r.Float64() * magnitude
	}
	label := func() string {
		words := strings.Fields("now target 2,735 over the manual's limit reported about psi expected 95 %")
		s := ""
		for range r.IntN(6) {
			s += words[r.IntN(len(words))] + " "
		}
		return s
	}
	flag := func() bool { return r.IntN(2) == 0 }
	axis := func() Axis {
		a := Axis{Label: label(), Hide: r.IntN(4) == 0}
		if flag() {
			a.Max = v()
		}
		if r.IntN(4) == 0 {
			a.Min = -v()
		}
		return a
	}
	c := Chart{ID: "r", Title: label(), X: axis(), Y: axis(), Height: 400 * r.Float64(), Heading: flag(), EqualScale: r.IntN(4) == 0}
	for range r.IntN(9) {
		var m Mark
		switch r.IntN(8) {
		case 0:
			m = &Band{On: Dimension(r.IntN(2)), From: v(), To: v(), Label: label(), Hatch: flag(), Accent: flag()}
		case 1:
			m = &Rule{On: Dimension(r.IntN(2)), At: v(), Label: label(), Stroke: []Stroke{Solid, Dashed, Dotted}[r.IntN(3)], Accent: flag()}
		case 2:
			m = &Span{From: v(), To: v(), Row: v(), Label: label(), Accent: flag()}
		case 3:
			m = &Point{X: v(), Y: v(), Label: label(), Shape: Shape(r.IntN(5)), Accent: flag()}
		case 4:
			points := make([]XY, r.IntN(200))
			for i := range points {
				points[i] = XY{v(), v()}
			}
			m = &Curve{Points: points, Label: label(), Accent: flag()}
		case 5:
			strips := make([]Strip, r.IntN(200))
			for i := range strips {
				strips[i] = Strip{v(), v(), v()}
			}
			m = &Area{Strips: strips, Label: label(), Accent: flag()}
		case 6:
			m = &Arrow{X: v(), Y: v(), ToX: v(), ToY: v(), Label: label(), Accent: flag()}
		case 7:
			m = &Circle{X: v(), Y: v(), R: v(), Label: label(), Solid: flag(), Accent: flag()}
		}
		c.Marks = append(c.Marks, m)
	}
	return c
}

func TestRandomCharts(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 600 {
		inspect(t, random(r))
	}
}

func FuzzSVG(f *testing.F) {
	f.Add(0.0, 1.0, 2.0, 3.0, "now")
	f.Add(-1e308, 1e308, math.Inf(1), math.NaN(), "<&>\x00")
	f.Fuzz(func(t *testing.T, a, b, c, d float64, s string) {
		if len(s) > 200 {
			s = s[:200]
		}
		inspect(t, Chart{
			ID: s, Title: s, Desc: s, X: Axis{Min: a, Max: b, Label: s}, Y: Axis{Label: s}, Height: c, EqualScale: d > 1,
			Marks: []Mark{
				&Point{X: a, Y: c, Label: s}, &Point{X: b, Y: d, Label: s}, &Band{From: c, To: d, Label: s, Hatch: true},
				&Rule{On: Y, At: d, Label: s}, &Span{From: c, To: b, Row: a, Label: s},
				&Curve{Points: []XY{{a, b}, {c, d}, {b, a}}, Label: s}, &Area{Strips: []Strip{{a, c, d}, {b, d, c}}, Label: s},
				&Arrow{X: a, Y: b, ToX: c, ToY: d, Label: s}, &Circle{X: b, Y: c, R: d, Label: s, Solid: a > 0},
			},
		})
	})
}
