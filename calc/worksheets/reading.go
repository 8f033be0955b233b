package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/gauge"
	"plainlift/calc/unit"
)

var readingJudgement = judgement{it: "mean", pLow: "p_below", pWithin: "p_within", pHigh: "p_above",
	from: []string{"scale", "grade", "percent", "temp", "readings"}}

// Ways to state a gauge's accuracy that are no class or grade.
const (
	gradeOfScale   = "span"
	gradeOfReading = "of-reading"
)

// gradeOptions are the marks that gauge knows, and the two percentages.
func gradeOptions() []calc.Option {
	percent := func(share float64) string { return unit.Percent.Shown(unit.US).Edit(share) }
	var options []calc.Option
	for _, g := range gauge.Grades {
		label := g.ID
		switch middle, outer := percent(g.Middle), percent(g.Outer); {
		case g.Standard == gauge.EN837:
			label += " (EN 837-1)"
		case g.Standard == gauge.Unmarked:
			label = "nothing printed: " + middle + " % (common practice)"
		case middle == outer:
			label += ": " + middle + " % (ASME)"
		default:
			label += ": " + outer + "-" + middle + "-" + outer + " % (ASME)"
		}
		options = append(options, calc.Option{ID: g.ID, Label: label})
	}
	return append(options, calc.Option{ID: gradeOfScale, Label: "percent of full scale"},
		calc.Option{ID: gradeOfReading, Label: "percent of reading"})
}

// gradeWords is how a choice of gradeField reads.
func gradeWords(id string) string {
	for _, o := range gradeField.Options {
		if o.ID == id {
			return o.Label
		}
	}
	return id
}

// The fields of the gauge and of reading it, for the worksheets that take several
// readings.
var (
	gradeField = calc.Field{ID: "grade", Label: "Class or grade printed on the dial", Noun: "gauge grade", Shape: calc.Choice, Options: gradeOptions(),
		Example: "B", Quantity: "gauge grade",
		Hint: "A number such as 1.6 or a letter such as B, near the edge of the dial. Take “nothing printed” as well for a gauge that was dropped or run past its scale."}
	percentField = calc.Field{ID: "percent", Label: "Gauge good to ±", Noun: "gauge accuracy", Kind: unit.Percent, Example: "2 %",
		Range: calc.Range{Min: "0 %", Max: "20 %"}, Only: &calc.Only{Field: "grade", In: []string{gradeOfScale, gradeOfReading}},
		Quantity: "gauge accuracy", Hint: "What the maker states. Without a word on it, it is of the whole dial."}
	stepField = calc.Field{ID: "step", Label: "Smallest step you can read", Noun: "smallest step", Kind: unit.Pressure, Example: "10 psi", Usual: true, More: true,
		Range: calc.FromZero, Hint: "Half or a fifth of the distance between two marks, whatever you honestly can; on a digital gauge the last digit."}
)

// gradeMark carries the class or grade to the other worksheets, and to what a
// machine keeps.
var gradeMark = calc.Figure{ID: "mark", Round: calc.Words, Place: calc.Quoted, Quantity: "gauge grade", From: []string{"grade", "percent"}}

// setMark sets gradeMark. A percentage of the reading travels as the share of the
// dial that it comes to.
func setMark(in *calc.In, out *calc.Out) {
	mark := in.Choice("grade")
	if mark == gradeOfReading {
		mark = gradeOfScale
	}
	out.Text("mark", mark, gradeWords(mark))
}

// reading puts several readings on one gauge together: what the gauge, its
// scale, its warmth and the scatter leave open about the true pressure.
var reading = &calc.Worksheet{
	ID:    "reading",
	Title: "What does the gauge prove?",
	Menu:  "What it proves",
	Reply: calc.Reply{
		About: "I worked these readings through: {readings}.",
		How:   "The mean is {mean}; the gauge there is good to ±{a_grade}, and with the step and the scatter that makes {lo:n} to {hi}.",
		After: "A better gauge on the same port settles more than any argument.",
	},
	Fields: []calc.Field{
		{ID: "readings", Label: "Gauge shows", Noun: "readings", Row: "Reading", Kind: unit.Pressure, Shape: calc.List,
			Example: "2,600; 2,620; 2,610; 2,610 psi", Range: calc.Pressures, Quantity: "pressure now",
			Hint: "Every reading as it stood: oil warm, rated engine speed, the same port, the pressure let down in between. Four or more show how they scatter."},
		dialField,
		gradeField, percentField,
		lowField, highField,
		{ID: "zero", Label: "Pointer shows, engine off", Noun: "pointer at rest", Kind: unit.Pressure, Example: "0 psi", Usual: true, More: true,
			Range: calc.Zeros, Signed: true,
			Hint: "Pressure let down, gauge held as when reading it: 30 where it rests 30 above the 0 mark, − and 30 where it rests 30 below. Above, it comes off every reading; below, it is added. A stop pin may hide that it rests below."},
		stepField,
		{ID: "temp", Label: "Gauge's own temperature", Noun: "gauge temperature", Kind: unit.Temperature, Example: "68 °F", Usual: true, More: true,
			Range: calc.Range{Min: "-40 °C", Max: "120 °C"}, Signed: true,
			Hint: "Of the gauge's body, not of the oil. Gauges are set at 20 °C (68 °F) and drift away from it."},
		{ID: "confidence", Label: "Call it shown from a chance of", Noun: "confidence", Kind: unit.Percent, Example: "95 %", Usual: true, More: true,
			Range: calc.Confidence, Hint: "Below this chance the verdict is “probably” or “can't tell”. The range from least to most holds this share as well."},
		{ID: "oil", Label: "Oil temperature, for the record", Noun: "oil temperature", Kind: unit.Temperature, Empty: "not noted", More: true,
			Range: calc.Range{Min: "-40 °C", Max: "150 °C"}, Hint: "Not reckoned with; it stands on the record beside the readings."},
		{ID: "rpm", Label: "Engine speed, rpm, for the record", Noun: "engine speed", Kind: unit.Count, Empty: "not noted", More: true,
			Range: calc.Range{Min: "1", Max: "10000"}, Hint: "Not reckoned with; it stands on the record beside the readings."},
	},
	Figures: append([]calc.Figure{
		{ID: "mean", Label: "Mean of the readings", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"},
			Quantity: "pressure now", From: []string{"readings", "zero"}},
		{ID: "lo", Label: "True pressure, at least", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"}},
		{ID: "hi", Label: "True pressure, at most", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"}},
		{ID: "p_below", Label: "Chance that it is low", Kind: unit.Percent, Round: calc.Chance, Against: []string{"confidence"}},
		{ID: "p_within", Label: "Chance that it is within the limits", Kind: unit.Percent, Round: calc.Chance, Against: []string{"confidence"}},
		{ID: "p_above", Label: "Chance that it is high", Kind: unit.Percent, Round: calc.Chance, Against: []string{"confidence"}},
		{ID: "settle", Label: "Gauge that would settle it (± of dial)", Round: calc.Words, Place: calc.More},
		{ID: "shortfall", Label: "Mean under the manual's lowest", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}, Place: calc.More},
		{ID: "shortfall_pct", Label: "The same, of the manual's lowest", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "show_low", Label: "To show low, the mean would have to be under", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"mean"}, Place: calc.More},
		{ID: "show_high", Label: "To show high, the mean would have to be over", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"mean"}, Place: calc.More},
		{ID: "tur", Label: "Manual's range compared with gauge doubt", Kind: unit.Number, Round: calc.Two, Against: []string{"1"}, Place: calc.More},
		{ID: "u", Label: "Standard uncertainty u", Kind: unit.Pressure, Round: calc.Two, Place: calc.More},
		{ID: "dof", Label: "Effective degrees of freedom", Kind: unit.Number, Round: calc.Two, Place: calc.More},
		{ID: "k", Label: "Coverage factor k", Kind: unit.Number, Place: calc.More},
		{ID: "U", Label: "Expanded uncertainty U = k·u", Kind: unit.Pressure, Round: calc.Two, Place: calc.More},
		{ID: "off_zero", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "raw", Kind: unit.Pressure, Round: calc.ByDoubt, Place: calc.Quoted},
		{ID: "n", Kind: unit.Count, Place: calc.Quoted},
		{ID: "scatter", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
		{ID: "spread", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "place", Kind: unit.Percent, Round: calc.Two, Against: []string{"25 %", "75 %"}, Place: calc.Quoted},
		{ID: "a_grade", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "a_share", Kind: unit.Percent, Place: calc.Quoted},
		{ID: "a_temp", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
		{ID: "half_step", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "main_share", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted},
		gradeMark,
		{ID: "accuracy", Kind: unit.Percent, Place: calc.Quoted, Quantity: "gauge accuracy", From: readingJudgement.from},
	}, readingJudgement.figures()...),
	Verdicts: append(readingJudgement.verdicts(), calc.Verdict{Key: "no-range", Head: "{lo:n} to {hi}",
		Sentence: "The true pressure is probably {lo:n} to {hi} ({confidence}); enter the manual's range to judge it."}),
	Next: []calc.Next{
		{ID: "gain", Text: "What would more pressure lift?"},
		{ID: "shim", Text: "How much shim, and where to stop?"},
		{ID: "before-after", Text: "Before and after: how much is pressure?"},
		{ID: "short", Text: "The short answer, from one reading"},
	},
	Banded:  &calc.Banded{Axis: "pressure", Kind: unit.Pressure, Value: "mean", Lo: "lo", Hi: "hi", From: "low", To: "high"},
	Compute: computeReading,
	Simulate: func(in *calc.In) calc.Trial {
		t := takeReadings(in)
		return t.model(t.grade).Draw
	},
}

// taken is the readings and what is known of the gauge, in Pa.
type taken struct {
	readings  []float64
	raw, mean float64 // of the readings, before and after the pointer at rest is taken off
	scatter   float64 // standard deviation of one reading; 0 when there is none to see
	grade     float64 // limit of error of the class or grade, at raw
	step      float64 // limit of reading to the step
	warmth    float64 // limit of the drift with temperature
}

func takeReadings(in *calc.In) taken {
	t := takeSeries(in, "readings")
	scale := in.SI("scale")
	t.mean -= in.SI("zero")
	if t.warmth = gauge.Temperature(scale, in.SI("temp")); t.warmth < 1e-12*scale {
		t.warmth = 0 // 68 °F in kelvin, to the last bit
	}
	return t
}

// takeSeries takes the readings of one field, with the step and the gauge that
// the fields say.
func takeSeries(in *calc.In, id string) taken {
	t := taken{readings: in.List(id), step: in.SI("step") / 2}
	raw, s := doubt.StdDev(t.readings)
	if len(t.readings) > 1 {
		t.scatter = s
	}
	t.raw, t.mean, t.grade = raw, raw, gradeLimit(in, raw)
	return t
}

// gradeLimit is the limit of error of the class or grade chosen, Pa, where the
// pointer shows at.
func gradeLimit(in *calc.In, at float64) float64 {
	switch id := in.Choice("grade"); id {
	case gradeOfScale:
		return in.SI("percent") * in.SI("scale")
	case gradeOfReading:
		return in.SI("percent") * at
	default:
		g, _ := gauge.Lookup(id)
		return g.Limit(in.SI("scale"), at)
	}
}

// model is the true pressure on a gauge of that limit of error. The gauge, its
// scale and its warmth are common to all readings: only the scatter shrinks.
//
// Source: JCGM 101:2008, 6.4.9, for the scatter of n readings.
func (t taken) model(limit float64) doubt.Sum {
	n := float64(len(t.readings))
	return doubt.Sum{Mid: t.mean, Rects: []float64{limit, t.step, t.warmth}, Scale: t.scatter / math.Sqrt(n), DOF: n - 1}
}

// Sources of doubt in the order of the budget.
const (
	bySelf = iota
	byStep
	byWarmth
	byScatter
)

func (t taken) budget() doubt.Budget {
	n := float64(len(t.readings))
	stated := math.Inf(1)
	return doubt.Budget{
		bySelf:    {Name: "the gauge itself", U: doubt.Rect(t.grade), Sens: 1, DOF: stated},
		byStep:    {Name: "the step you can read", U: doubt.Rect(t.step), Sens: 1, DOF: stated},
		byWarmth:  {Name: "the gauge's temperature", U: doubt.Rect(t.warmth), Sens: 1, DOF: stated},
		byScatter: {Name: "the scatter of the readings", U: t.scatter / math.Sqrt(n), Sens: 1, DOF: n - 1},
	}
}

func computeReading(in *calc.In, out *calc.Out) {
	low, high := limits(in, out)
	scale := in.SI("scale")
	for i, p := range in.List("readings") {
		if p > scale {
			out.RowProblem("readings", i, "The dial only goes up to {scale}")
		}
	}
	t := takeReadings(in)
	if math.Abs(in.SI("zero")) > scale {
		out.Problem("zero", "A pointer can't rest that far from zero: the dial only goes up to {scale}")
	} else if t.mean <= 0 {
		out.Problem("zero", "Enter what the pointer shows with the pressure let down, 0 where it rests on zero: this is as much as the readings themselves")
	}
	if low > high || t.mean <= 0 || !(t.raw <= scale) {
		return
	}

	confidence := in.SI("confidence")
	d := t.model(t.grade).Dist()
	b := t.budget()
	u, dof := b.U(), b.DOF()
	k := doubt.T(confidence, dof)
	lo, hi := d.Interval(confidence)
	lo, hi = out.CheckInterval(unit.Pressure, confidence, lo, hi, u)
	half := (hi - lo) / 2
	lo = max(0, lo) // a relief holds no less

	out.SetDoubt("mean", t.mean, half)
	out.SetDoubt("raw", t.raw, half)
	out.Set("off_zero", math.Abs(in.SI("zero")))
	out.SetDoubt("lo", lo, half)
	out.SetDoubt("hi", hi, half)
	out.Set("u", u)
	out.Set("k", k)
	out.Set("U", k*u)
	if math.IsInf(dof, 1) {
		out.Text("dof", "Infinity", "no limit: known from limits, not from scatter")
	} else {
		out.Set("dof", dof)
	}
	ratios(in, out, t.mean, k*u)
	reach := d.Quantile(confidence) - t.mean
	out.SetDoubt("show_low", in.SI("low")-reach, half)
	out.SetDoubt("show_high", in.SI("high")+reach, half)
	if !in.Has("low") {
		out.None("show_low", noLimit)
	}
	if !in.Has("high") {
		out.None("show_high", noLimit)
	}
	readingParts(in, out, t, b)

	a := t.grade + t.warmth
	out.Set("accuracy", a/scale)
	setMark(in, out)
	j := readingJudgement
	j.judge(in, out, judged{x: t.mean, half: half, a: a, confidence: confidence, limit: t.grade, model: t.model, dist: d}, out.Verdict)
	j.picture(in, out, t.mean, lo, hi, d, "mean {mean}", "{confidence}: {lo:n} to {hi}")

	readingRemarks(in, out, t)
	readingRests(in, out, t, b)
	readingWorking(in, out, t)
	out.Caution("limit", "turn", "hold", "skin", "leaks", "arm", "warranty", "technician")
}

// ratios sets the figures that need one limit of the manual or both.
func ratios(in *calc.In, out *calc.Out, mean, expanded float64) {
	low := in.SI("low")
	if in.Has("low") {
		out.Set("shortfall_pct", (low-mean)/low)
	} else {
		out.None("shortfall_pct", noLimit)
	}
	switch {
	case !in.Has("low") || !in.Has("high"):
		out.None("tur", "needs both limits")
	case expanded == 0:
		out.None("tur", "these numbers leave no doubt")
	default:
		out.Set("tur", (in.SI("high")-low)/(2*expanded))
	}
}
