package worksheets

import (
	"math"
	"strings"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/gauge"
	"plainlift/calc/unit"
)

// judgement is how a reading with its doubt is judged against the manual's
// range, for the two worksheets that do so. The worksheet's fields low, high
// and scale are the range and the gauge; its figures a, lo, hi, shortfall and
// settle are what the sentences quote.
type judgement struct {
	it                   string   // the figure or field that is judged: "reading", "mean"
	pLow, pWithin, pHigh string   // figures
	from                 []string // the fields that the gauge's limit comes from
}

// judged is one value to judge.
type judged struct {
	x          float64                       // the value, Pa
	half       float64                       // what distances from it are rounded by, Pa; 0 for an exact value
	a          float64                       // how far the gauge may be off, Pa
	confidence float64                       // from which chance on it counts as shown
	limit      float64                       // of the gauge's class or grade, Pa
	model      func(limit float64) doubt.Sum // the value with its doubt on a gauge of that limit
	dist       *doubt.Dist                   // of model(limit)
}

// The fields that both worksheets have.
var (
	dialField = calc.Field{ID: "scale", Label: "Dial goes up to", Noun: "dial", Kind: unit.Pressure, Example: "4,000 psi",
		Range: calc.Scales, Quantity: "gauge scale", Hint: "The highest number on the gauge's face."}
	lowField = calc.Field{ID: "low", Label: "Manual: lowest relief pressure", Noun: "lowest pressure", Kind: unit.Pressure, Example: "2,680 psi",
		Range: calc.Pressures, Quantity: "manual lowest", Empty: "not known",
		Hint: "The lower end of the range in the service manual. Leave it empty if you don't have it."}
	highField = calc.Field{ID: "high", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
		Range: calc.Pressures, Quantity: "manual highest", Empty: "not known",
		Hint: "The upper end of the range in the service manual. Never set it above this."}
)

// figures are those that only the sentences use.
func (j judgement) figures() []calc.Figure {
	return []calc.Figure{
		{ID: "a", Kind: unit.Pressure, Place: calc.Quoted, Quantity: "gauge limit", From: j.from},
		{ID: "excess", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}, Place: calc.Quoted},
		{ID: "width", Kind: unit.Pressure, Place: calc.Quoted},
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
			Sentence: "In range: the chance that the true pressure is between {low:n} and {high} is {P_WITHIN}; nothing to correct."},
		{Key: "not-low", Head: "Not low",
			Sentence: "Not low: the chance that the true pressure is at or above {low} is {P_WITHIN}; enter the manual's highest to see whether it is too high."},
		{Key: "not-high", Head: "Not high",
			Sentence: "Not high: the chance that the true pressure is at or below {high} is {P_WITHIN}; enter the manual's lowest to see whether it is low."},
		{Key: "probably-low", ID: "undecided", Head: "Probably low, not shown",
			Sentence: "Probably low, but this gauge can't show it: it reads {shortfall} under {low} and is good to ±{a}; the chance of truly low is {P_LOW}."},
		{Key: "probably-within", ID: "undecided", Head: "Probably in range, not shown",
			Sentence: "Probably in range, but this gauge can't show it: the chance is {P_WITHIN}{others_words}."},
		{Key: "probably-not-low", ID: "undecided", Head: "Probably not low, not shown",
			Sentence: "Probably not low, but this gauge can't show it: the chance is {P_WITHIN}{others_words}."},
		{Key: "probably-not-high", ID: "undecided", Head: "Probably not high, not shown",
			Sentence: "Probably not high, but this gauge can't show it: the chance is {P_WITHIN}{others_words}. Don't raise it."},
		{Key: "probably-high", ID: "undecided", Head: "Probably high, not shown",
			Sentence: "Probably high, but this gauge can't show it: it reads {excess} over {high} and is good to ±{a}; the chance is {P_HIGH}. Don't raise it."},
		{Key: "unclear", ID: "undecided", Head: "Can't tell with this gauge",
			Sentence: "Can't tell: a gauge good to ±{a} showing {IT} fits {fits_words}."},
	}
	names := strings.NewReplacer("{IT}", "{"+j.it+"}", "{P_LOW}", "{"+j.pLow+"}", "{P_WITHIN}", "{"+j.pWithin+"}", "{P_HIGH}", "{"+j.pHigh+"}")
	for i := range vs {
		vs[i].Sentence = names.Replace(vs[i].Sentence)
	}
	return vs
}

// sentence is that of a decision, to follow other words.
func (j judgement) sentence(key string) string {
	for _, v := range j.verdicts() {
		if v.Key == key {
			return strings.ToLower(v.Sentence[:1]) + v.Sentence[1:]
		}
	}
	panic("worksheets: no such decision: " + key)
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

// judge sets the chances, says the key of its decision, a verdict's or
// "no-range", and adds what would settle it.
func (j judgement) judge(in *calc.In, out *calc.Out, v judged, say func(key string)) {
	low, high := limits(in, out)
	below, within, above := v.dist.Within(low, high)
	out.Set("a", v.a)
	j.chances(in, out, below, within, above)
	j.distances(in, out, v)
	j.words(in, out, below, within, above)
	if !in.Has("low") && !in.Has("high") {
		out.None("settle", noLimit)
		say("no-range")
		return
	}
	settle := v.settle(in.SI("scale"), low, high)
	if settle == "none" {
		out.Text("settle", settle, settle)
	} else {
		out.Text("settle", settle, settle+" % (EN class "+settle+")")
	}
	switch shown := v.shown(v.dist, low, high); {
	case shown == "within":
		say(inside(in))
	case shown != "":
		say(shown)
	case below >= probable:
		say("probably-low")
	case within >= probable:
		say("probably-" + inside(in))
	case above >= probable:
		say("probably-high")
	default:
		say("unclear")
	}
	if v.shown(v.dist, low, high) == "" {
		v.undecided(in, out, settle, low, high)
	}
}

// inside names what a value is that no limit entered stands against: with one
// limit alone it may still be past the other.
func inside(in *calc.In) string {
	switch {
	case !in.Has("high"):
		return "not-low"
	case !in.Has("low"):
		return "not-high"
	}
	return "within"
}

// shown names what a distribution of the value shows, "" when nothing. Half a
// chance is not enough to call a value low or high that is neither.
func (v judged) shown(d *doubt.Dist, low, high float64) string {
	below, within, above := d.Within(low, high)
	switch {
	case above >= v.confidence && v.x > high:
		return "high"
	case below >= v.confidence && v.x < low:
		return "low"
	case within >= v.confidence:
		return "within"
	}
	return ""
}

// settle returns the least accurate EN 837-1 class that would have decided this
// value on a gauge of the same scale, "none" when no class would.
func (v judged) settle(scale, low, high float64) string {
	for _, g := range gauge.Of(gauge.EN837) {
		if v.shown(v.model(g.Limit(scale, v.x)).Dist(), low, high) != "" {
			return g.ID
		}
	}
	return "none"
}

// undecided says what would settle it, and what this gauge could never show.
func (v judged) undecided(in *calc.In, out *calc.Out, settle string, low, high float64) {
	classes := gauge.Of(gauge.EN837)
	finest := classes[len(classes)-1].Limit(in.SI("scale"), v.x)
	alone := doubt.Sum{Mid: v.x, Rects: []float64{finest}}.Dist()
	switch {
	case settle != "none":
		out.Line("If it read the same, a gauge good to ±" + settle + " % of the same scale would settle it.")
	case v.shown(alone, low, high) != "":
		out.Line("No gauge class alone would settle this one: what else is in doubt stands in the way.")
	default:
		out.Line("No gauge class would settle this one: the reading is too near the limit.")
	}
	// The likeliest to show it repeats exactly, in the middle of the range.
	best := v.model(v.limit)
	best.Mid, best.Scale = 0, 0
	if _, most, _ := best.Dist().Within((low-high)/2, (high-low)/2); most < v.confidence {
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

func (j judgement) distances(in *calc.In, out *calc.Out, v judged) {
	set := func(id string, si float64) {
		if math.IsNaN(si) {
			out.None(id, noLimit)
		} else {
			out.SetDoubt(id, si, v.half)
		}
	}
	set("shortfall", in.SI("low")-v.x)
	set("excess", v.x-in.SI("high"))
	set("width", in.SI("high")-in.SI("low"))
}

var unruled = map[string]string{"within": "in range", "not-low": "not low", "not-high": "not high"}

// words sets the parts of sentences that depend on which limits there are and
// which chances are worth naming.
func (j judgement) words(in *calc.In, out *calc.Out, below, within, above float64) {
	hasLow, hasHigh := in.Has("low"), in.Has("high")
	say := func(id, text string) { out.Text(id, "", out.Words(text)) }
	var fits, others []string
	name := func(list *[]string, p float64, exists bool, text string) {
		if exists && p >= 0.01 {
			*list = append(*list, text)
		}
	}
	name(&fits, below, hasLow, "low ({"+j.pLow+"})")
	name(&fits, within, hasLow || hasHigh, unruled[inside(in)]+" ({"+j.pWithin+"})")
	name(&fits, above, hasHigh, "high ({"+j.pHigh+"})")
	name(&others, below, hasLow, "{"+j.pLow+"} for low")
	name(&others, above, hasHigh, "{"+j.pHigh+"} for high")
	say("fits_words", calc.And(fits))
	if say("others_words", ""); len(others) > 0 {
		say("others_words", ", with "+calc.And(others))
	}
}
