package worksheets

import (
	"math"
	"strings"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/doubt"
	"plainlift/calc/gauge"
	"plainlift/calc/unit"
)

// judgement is how a reading with its doubt is judged against the manual's
// range, for the two worksheets that do so. The worksheet's fields low, high
// and scale are the range and the gauge; its figures a, lo, hi, shortfall and
// settle are what the sentences quote.
type judgement struct {
	it                   string // the figure or field that is judged: "reading", "mean"
	shows                string // "it reads", in the sentence's words
	pLow, pWithin, pHigh string // figures
}

// figures are those that only the sentences use.
func (judgement) figures() []calc.Figure {
	return []calc.Figure{
		{ID: "a", Kind: unit.Pressure, Place: calc.Quoted, Quantity: "gauge limit", From: []string{"scale"}},
		{ID: "excess", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "width", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "range_words", Round: calc.Words, Place: calc.Quoted},
		{ID: "fits_words", Round: calc.Words, Place: calc.Quoted},
		{ID: "others_words", Round: calc.Words, Place: calc.Quoted},
	}
}

// verdicts are the branches, with the worksheet's own names put in.
func (j judgement) verdicts() []calc.Verdict {
	vs := []calc.Verdict{
		{Key: "low", Head: "Low by {shortfall}",
			Sentence: "Low: the gauge shows {shortfall} under the manual's {low}; allowing for its ±{a}, the chance that the true pressure is under is {P_LOW}."},
		{Key: "high", Head: "High by {excess}",
			Sentence: "High: the gauge shows {excess} over the manual's {high}; allowing for its ±{a}, the chance that it truly is over is {P_HIGH}. Bring it down before anything else."},
		{Key: "within", Head: "In range",
			Sentence: "In range: the chance that the true pressure is {range_words} is {P_WITHIN}; nothing to correct."},
		{Key: "probably-low", ID: "undecided", Head: "Probably low, not shown",
			Sentence: "Probably low, but this gauge can't show it: it reads {shortfall} under {low} and is good to ±{a}; the chance of truly low is {P_LOW}."},
		{Key: "probably-low-above", ID: "undecided", Head: "Probably low, not shown",
			Sentence: "Probably low, but this gauge can't show it: it reads {IT} against the manual's {low} and is good to ±{a}; the chance of truly low is {P_LOW}."},
		{Key: "probably-within", ID: "undecided", Head: "Probably in range, not shown",
			Sentence: "Probably in range, but this gauge can't show it: the chance is {P_WITHIN}{others_words}."},
		{Key: "probably-high", ID: "undecided", Head: "Probably high, not shown",
			Sentence: "Probably high, but this gauge can't show it: it reads {excess} over {high} and is good to ±{a}; the chance is {P_HIGH}. Don't raise it."},
		{Key: "probably-high-under", ID: "undecided", Head: "Probably high, not shown",
			Sentence: "Probably high, but this gauge can't show it: it reads {IT} against the manual's {high} and is good to ±{a}; the chance is {P_HIGH}. Don't raise it."},
		{Key: "unclear", ID: "undecided", Head: "Can't tell with this gauge",
			Sentence: "Can't tell: a gauge good to ±{a} showing {IT} fits {fits_words}."},
	}
	names := strings.NewReplacer("{IT}", "{"+j.it+"}", "{P_LOW}", "{"+j.pLow+"}", "{P_WITHIN}", "{"+j.pWithin+"}", "{P_HIGH}", "{"+j.pHigh+"}")
	for i := range vs {
		vs[i].Sentence = names.Replace(vs[i].Sentence)
	}
	return vs
}

const (
	noLimit  = "no limit entered"
	probable = 2.0 / 3 // from here on the words say "probably"
)

// limits returns the manual's range in Pa, ∓Inf where it is empty, and complains
// about one that is upside down.
func limits(in *calc.In, out *calc.Out) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if in.Has("low") {
		low = in.SI("low")
	}
	if in.Has("high") {
		high = in.SI("high")
	}
	if low > high {
		out.Problem("high", "Must be above the lowest, {low}")
	}
	return low, high
}

// judge sets the chances, the decision and what would settle it. x is the value
// judged, d its distribution, a the gauge's own limit, and with gives the
// distribution that a gauge of another limit of error would have given.
func (j judgement) judge(in *calc.In, out *calc.Out, x, a, confidence float64, d *doubt.Dist, with func(a float64) *doubt.Dist) {
	low, high := limits(in, out)
	below, within, above := d.Within(low, high)
	out.Set("a", a)
	j.chances(in, out, below, within, above)
	j.distances(in, out, x)
	j.words(in, out, below, within, above)

	decided := func(p ...float64) bool { return max(p[0], p[1], p[2]) >= confidence }
	settle := "none"
	for _, g := range gauge.Of(gauge.EN837) {
		if b, w, h := with(g.Limit(in.SI("scale"), x)).Within(low, high); decided(b, w, h) {
			settle = g.ID
			break
		}
	}
	out.Text("settle", settle, settle)
	if settle != "none" {
		out.Text("settle", settle, settle+" % (EN class "+settle+")")
	}

	switch {
	case !in.Has("low") && !in.Has("high"):
		out.None("settle", noLimit)
		out.Verdict("no-range")
		return
	case above >= confidence:
		out.Verdict("high")
	case below >= confidence:
		out.Verdict("low")
	case within >= confidence:
		out.Verdict("within")
	case below >= probable && x < low:
		out.Verdict("probably-low")
	case below >= probable:
		out.Verdict("probably-low-above")
	case within >= probable:
		out.Verdict("probably-within")
	case above >= probable && x > high:
		out.Verdict("probably-high")
	case above >= probable:
		out.Verdict("probably-high-under")
	default:
		out.Verdict("unclear")
	}
	if decided(below, within, above) {
		return
	}
	if settle == "none" {
		out.Line("No gauge class would settle this one: the reading is too near the limit.")
	} else {
		out.Line("If it read the same, a gauge good to ±" + settle + " % of the same scale would settle it.")
	}
	if high-low < 2*confidence*a {
		out.Line("No reading on this gauge could show “in range”: ±{a} against a range {width} wide.")
	}
}

func (j judgement) chances(in *calc.In, out *calc.Out, below, within, above float64) {
	set := func(id string, p float64, exists bool) {
		if exists {
			out.Set(id, p)
		} else {
			out.None(id, noLimit)
		}
	}
	set(j.pLow, below, in.Has("low"))
	set(j.pHigh, above, in.Has("high"))
	set(j.pWithin, within, in.Has("low") || in.Has("high"))
}

func (j judgement) distances(in *calc.In, out *calc.Out, x float64) {
	set := func(id string, si float64) {
		if math.IsNaN(si) {
			out.None(id, noLimit)
		} else {
			out.Set(id, si)
		}
	}
	set("shortfall", in.SI("low")-x)
	set("excess", x-in.SI("high"))
	set("width", in.SI("high")-in.SI("low"))
}

// words sets the parts of sentences that depend on which limits there are and
// which chances are worth naming.
func (j judgement) words(in *calc.In, out *calc.Out, below, within, above float64) {
	hasLow, hasHigh := in.Has("low"), in.Has("high")
	say := func(id, text string) { out.Text(id, "", out.Words(text)) }
	switch {
	case hasLow && hasHigh:
		say("range_words", "between {low} and {high}")
	case hasLow:
		say("range_words", "at or above {low}")
	default:
		say("range_words", "at or below {high}")
	}
	var fits, others []string
	name := func(list *[]string, p float64, exists bool, text string) {
		if exists && p >= 0.01 {
			*list = append(*list, text)
		}
	}
	name(&fits, below, hasLow, "low ({"+j.pLow+"})")
	name(&fits, within, hasLow || hasHigh, "in range ({"+j.pWithin+"})")
	name(&fits, above, hasHigh, "high ({"+j.pHigh+"})")
	name(&others, below, hasLow, "{"+j.pLow+"} for low")
	name(&others, above, hasHigh, "{"+j.pHigh+"} for high")
	say("fits_words", and(fits))
	if say("others_words", ""); len(others) > 0 {
		say("others_words", ", with "+and(others))
	}
}

// and joins phrases: "a, b and c".
func and(s []string) string {
	if len(s) < 2 {
		return strings.Join(s, "")
	}
	return strings.Join(s[:len(s)-1], ", ") + " and " + s[len(s)-1]
}

// picture draws the manual's range and the distribution of the true pressure
// to scale. name labels the mark at x, span the interval from lo to hi.
func (j judgement) picture(in *calc.In, out *calc.Out, x, lo, hi float64, d *doubt.Dist, name, span string) {
	p := func(si float64) float64 { return in.Shown(unit.Pressure, si) }
	from, to := d.Quantile(0.0005), d.Quantile(0.9995)
	c := &chart.Chart{
		ID: "picture", Title: out.Words("The reading against the manual's range"), Height: 200,
		Desc: out.Words("The gauge shows {" + j.it + "}; the true pressure is between {lo} and {hi}. The manual's range: " + rangeText(in) + "."),
		X:    chart.Axis{Label: "pressure, " + unit.Pressure.Shown(in.System()).Name},
		Y:    chart.Axis{Min: -1, Max: 2, Hide: true},
		Marks: []chart.Mark{
			chart.Point{X: p(x), Y: 0, Label: out.Words(name), Accent: true},
		},
	}
	if in.Has("low") || in.Has("high") {
		low, high := math.Inf(-1), math.Inf(1)
		if in.Has("low") {
			low = p(in.SI("low"))
		}
		if in.Has("high") {
			high = p(in.SI("high"))
		}
		c.Marks = append(c.Marks, chart.Band{On: chart.X, From: low, To: high, Label: out.Words("manual:\n" + rangeText(in))})
	}
	if from < to {
		c.Marks = append(c.Marks, chart.Area{Strips: density(d, from, to, p), Label: "true pressure", Accent: true})
	}
	c.Marks = append(c.Marks, chart.Span{From: p(lo), To: p(hi), Row: -0.4, Label: out.Words(span), Accent: true})
	out.Picture(c)
}

func rangeText(in *calc.In) string {
	switch {
	case in.Has("low") && in.Has("high"):
		return "{low:n} to {high}"
	case in.Has("low"):
		return "from {low}"
	case in.Has("high"):
		return "up to {high}"
	}
	return "not entered"
}

// density samples the distribution, its peak at 1.
func density(d *doubt.Dist, from, to float64, shown func(float64) float64) []chart.Strip {
	const n = 101
	var strips []chart.Strip
	peak := 0.0
	for i := range n {
		x := from + (to-from)*float64(i)/(n-1)
		y := d.Density(x)
		peak = max(peak, y)
		strips = append(strips, chart.Strip{X: shown(x), Low: 0, High: y})
	}
	for i := range strips {
		strips[i].High /= peak
	}
	return strips
}
