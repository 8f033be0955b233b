package worksheets

import (
	"math"
	"slices"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/gauge"
	"plainlift/calc/unit"
)

// readingParts sets what the sentences and the working quote.
func readingParts(in *calc.In, out *calc.Out, t taken, b doubt.Budget) {
	scale := in.SI("scale")
	out.Set("n", float64(len(t.readings)))
	out.Set("scatter", t.scatter)
	out.Set("spread", slices.Max(t.readings)-slices.Min(t.readings))
	out.Set("place", t.raw/scale)
	out.Set("a_grade", t.grade)
	out.Set("a_share", t.grade/scale)
	out.Set("a_temp", t.warmth)
	out.Set("half_step", t.step)
	out.Set("main_share", slices.Max(b.Shares()))
}

const (
	manyReadings = 4      // from here on the scatter is fairly known: its own doubt is then 42 % (JCGM 100:2008, Table E.1)
	coldOil      = 313.15 // K, 40 °C. Common practice, no source.
	manySteps    = 4      // readings that differ by more than so many steps differ by more than reading them does
)

const coldReads = "Cold oil reads higher: warm it to 40 °C (104 °F) or more and read again (common practice, no source)."

// readingRemarks are what a practised eye would say of these readings.
func readingRemarks(in *calc.In, out *calc.Out, t taken) {
	switch n := len(t.readings); {
	case n == 1:
		out.Notice("One reading says nothing of how readings scatter, so none is counted. Take four or more.")
	case n < manyReadings && t.scatter == 0:
		out.Notice("{n} readings, all alike, hardly show how readings scatter. Take four or more.")
	case n < manyReadings:
		out.Notice("With {n} readings the scatter is hardly known yet, and the range is wide to allow for that. Take four or more.")
	}
	scale := in.SI("scale")
	if t.wide() {
		out.Note("readings", -1, "They differ by {spread}, far more than the step you can read. Did oil, engine speed or hold change between them?")
	}
	if inMiddle := (gauge.Grade{Middle: 1}).Limit(1, t.raw/scale) == 1; !inMiddle {
		out.Note("scale", -1, "The readings stand at {place} of the dial. A gauge is best used in its middle half, and some grades allow more error outside it.")
	}
	switch zero := in.SI("zero"); {
	case zero > 0:
		out.Note("zero", -1, "It rests above zero: every reading counts {off_zero} less than it shows. The other pages don't ask: take it off what you read for them too.")
	case zero < 0:
		out.Note("zero", -1, "It rests below zero: every reading counts {off_zero} more than it shows. The other pages don't ask: add it to what you read for them too.")
	}
	if math.Abs(in.SI("zero")) > t.grade*(1+1e-9) {
		out.Note("zero", -1, "The pointer rests further off zero than ±{a_grade}, all that its class or grade allows. Don't count on that mark: choose “nothing printed”, or take another gauge.")
	}
	if t.warmth > t.grade/2 {
		out.Note("temp", -1, "Away from 20 °C (68 °F) this gauge may drift by ±{a_temp}, on top of its class or grade. Keep it off the hot engine and read it again.")
	}
	if in.Has("oil") && in.SI("oil") < coldOil {
		out.Note("oil", -1, coldReads)
	}
}

// wide reports whether the readings differ by more than reading them does.
func (t taken) wide() bool {
	return t.step > 0 && slices.Max(t.readings)-slices.Min(t.readings) > manySteps*2*t.step
}

func readingRests(in *calc.In, out *calc.Out, t taken, b doubt.Budget) {
	shares := b.Shares()
	main, largest := 0, 0.0
	for i, s := range shares {
		if s > largest {
			main, largest = i, s
		}
	}
	switch {
	case largest == 0:
		out.Rest("Nothing entered leaves any doubt. No gauge is that good.")
	case main == byScatter:
		out.Rest("The scatter of the readings is {main_share} of the doubt: more readings help.")
	case main == byWarmth:
		out.Rest("The gauge's temperature is {main_share} of the doubt: bring it nearer to 20 °C (68 °F). Repeating the reading will not help.")
	case main == byStep:
		out.Rest("The step you can read is {main_share} of the doubt: a dial with finer marks helps, repeating the reading will not.")
	case len(t.readings) > 1 && len(t.readings) < manyReadings && t.scatter > 0:
		out.Rest("The gauge itself is {main_share} of the doubt, and repeating the reading will not shrink that part.")
	default:
		out.Rest("The gauge itself is {main_share} of the doubt: repeating the reading will not help.")
	}
	out.Rest("The gauge is off by no more than ±{a_grade} where the pointer stands, anywhere inside that alike, and by the same in every reading.")
	out.Rest("How oil temperature and engine speed change the pressure itself is not in these figures.")
	if in.Has("oil") {
		out.Rest("Read with the oil at {oil}.")
	}
	if in.Has("rpm") {
		out.Rest("Read at {rpm} rpm.")
	}
	var used doubt.Budget
	var stated []string
	for i, words := range []string{"±{a_grade}", "±{half_step}", "±{a_temp}", "{n} readings"} {
		if shares[i] > 0 {
			used, stated = append(used, b[i]), append(stated, words)
		}
	}
	out.Budget(unit.Pressure, used, stated)
}

func readingWorking(in *calc.In, out *calc.Out, t taken) {
	many := "{n} readings"
	if len(t.readings) == 1 {
		many = "1 reading"
	}
	off := " − {off_zero}"
	if in.SI("zero") < 0 {
		off = " + {off_zero}"
	}
	out.Step("mean = sum of readings ÷ how many − pointer at rest", many+": {raw}"+off+" = {mean}", "JCGM 100:2008, 4.2")
	out.Step("gauge = share × dial or reading", gradeNumbers(in), gradeSource(in))
	out.Step("step = ± smallest step ÷ 2", "±{half_step}", "Rectangular, u = step/√12 (JCGM 100:2008, H.6.3.1)")
	out.Step("temperature = 0.04 % per °C × dial × distance from 20 °C (68 °F)", "at {temp}: ±{a_temp}",
		"EN 837-1, as quoted in a maker's operating instructions (second-hand)")
	if t.scatter > 0 {
		out.Step("scatter: s of one reading, s/√n of the mean, n − 1 degrees of freedom", "s = {scatter}, n = {n}", "JCGM 100:2008, 4.2")
	} else {
		out.Step("scatter: s of one reading, s/√n of the mean", "none seen, n = {n}", "JCGM 100:2008, 4.2")
	}
	out.Step("u² = gauge²/3 + step²/3 + temperature²/3 + s²/n", "u = {u}", "JCGM 100:2008, 4.3.7 and 5.1, eq. (10)")
	out.Step("ν = u⁴ ÷ Σ uᵢ⁴/νᵢ; k from Student's t; U = k·u", "ν: {dof}; {confidence}: k = {k}, U = {U}",
		"JCGM 100:2008, G.4.1, eq. (G.2b), and Table G.2. Where one stated limit outweighs the rest, k·u can pass that limit; the range below cannot.")
	out.Step("range = where the sum of all four lies, equal chances left out on either side", "{confidence}: {lo:n} to {hi}",
		"JCGM 101:2008, 6.4.9 for the scatter; the sum worked out as a distribution")
	switch {
	case in.Has("low") && in.Has("high"):
		out.Step("chances = the parts of that distribution", "under {low}: {p_below}; inside: {p_within}; over {high}: {p_above}", "JCGM 106:2012, clause 7")
	case in.Has("low"):
		out.Step("chances = the parts of that distribution", "under {low}: {p_below}; not under: {p_within}", "JCGM 106:2012, clause 7")
	case in.Has("high"):
		out.Step("chances = the parts of that distribution", "not over {high}: {p_within}; over: {p_above}", "JCGM 106:2012, clause 7")
	}
}

// gradeNumbers puts the numbers into the gauge's limit.
func gradeNumbers(in *calc.In) string {
	if in.Choice("grade") == gradeOfReading {
		return "{percent} × {raw} = ±{a_grade}"
	}
	return "{a_share} × {scale} = ±{a_grade}"
}

// gradeSource says where the gauge's limit comes from.
func gradeSource(in *calc.In) string {
	const stated = "; a stated limit, nothing more known: rectangular (JCGM 100:2008, 4.3.7)"
	g, known := gauge.Lookup(in.Choice("grade"))
	switch {
	case !known:
		return "As entered" + stated
	case g.Standard == gauge.EN837:
		return "EN 837-1:1996, Table 11" + stated
	case g.Standard == gauge.ASME:
		return "ASME B40.100, Table 1 (from memory)" + stated
	}
	return "Common practice, no source" + stated
}
