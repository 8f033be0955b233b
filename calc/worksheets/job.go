package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/unit"
)

var jobJudgement = judgement{it: "left_mean", pLow: "p_below", pWithin: "p_within", pHigh: "p_above",
	from: []string{"scale", "grade", "percent", "left"}}

var (
	shimmed = calc.Range{Min: "-50 mm", Max: "50 mm"}
	oils    = calc.Range{Min: "-40 °C", Max: "150 °C"}
	speeds  = calc.Range{Min: "1 rpm", Max: "10000 rpm"}
)

const notNoted = "not noted"

// job is the record of an adjustment: the readings as found, after each shim and
// as left, what changed between them, and whether it is now in range. Its link is
// the record itself.
var job = &calc.Worksheet{
	ID:      "job",
	Title:   "What did the adjustment change?",
	Menu:    "What a job changed",
	Compare: []calc.Compared{{Quantity: "pressure now", Before: "found", After: "left", Apart: calc.Pair{Key: "same_gauge", Value: "no"}}},
	Reply: calc.Reply{
		About: "The job on record: found at {found_mean}, left at {left_mean}.",
		How:   "As left less as found is {change}; with what the readings may be off, {change_lo:n} to {change_hi} ({sure}).",
		After: "The readings are kept as they stood, so that the next person can check them. The machine's own manual decides.",
	},
	Fields: []calc.Field{
		{ID: "found", Label: "As found, gauge showed", Noun: "readings as found", Row: "As found", Kind: unit.Pressure, Shape: calc.List,
			Example: "2,600; 2,620; 2,610; 2,610 psi", Range: calc.Pressures, Quantity: "pressure now",
			Hint: "Every reading before anything was touched: oil warm, rated engine speed, the same port, the pressure let down in between. Four or more show how they scatter."},
		{ID: "trials", Label: "Shim trials", Noun: "shim trials", Shape: calc.Pairs, Kind: unit.Thickness, With: unit.Pressure,
			Row: "Shim in now, total added", RowTo: "Gauge then showed", MaxLen: 30,
			Example: "0.010 in : 2,660 psi; 0.020 in : 2,700 psi", Empty: "none",
			Range: shimmed, RangeTo: calc.Pressures,
			Hint: "One row for each, in order: the total added since the readings as found, not the last shim alone; 0 after cleaning only, a minus for shim taken out. The last row is what was left in. Empty for a screw."},
		{ID: "left", Label: "As left, gauge shows", Noun: "readings as left", Row: "As left", Kind: unit.Pressure, Shape: calc.List,
			Example: "2,710; 2,700; 2,710; 2,720 psi", Range: calc.Pressures,
			Hint: "Read it again when the job is done, as often and in the same way as found."},
		{ID: "same_gauge", Label: "All read on one gauge", Noun: "one gauge or two", Usual: true, Shape: calc.Choice,
			Options: []calc.Option{{ID: "yes", Label: "yes"}, {ID: "no", Label: "no"}},
			Hint:    "What one gauge is off, it is off every time, and it drops out of the change. With two, enter the dial and the class of the coarser."},
		lowField, highField, dialField, gradeField, percentField, stepField,
		{ID: "oil_found", Label: "Oil temperature as found", Noun: "oil as found", Kind: unit.Temperature, Empty: notNoted, More: true, Range: oils,
			Hint: "Not reckoned with; it stands on the record beside the readings."},
		{ID: "oil_left", Label: "Oil temperature as left", Noun: "oil as left", Kind: unit.Temperature, Empty: notNoted, More: true, Range: oils,
			Quantity: "oil temperature", Hint: "Best the same as found: cold oil reads higher (common practice, no source)."},
		{ID: "rpm_found", Label: "Engine speed as found", Noun: "engine speed as found", Kind: unit.Rotation, Empty: notNoted, More: true, Range: speeds,
			Hint: "Not reckoned with; it stands on the record beside the readings."},
		{ID: "rpm_left", Label: "Engine speed as left", Noun: "engine speed as left", Kind: unit.Rotation, Empty: notNoted, More: true, Range: speeds,
			Quantity: "engine speed", Hint: "Best the same as found, at what the manual says for this test."},
	},
	Figures: append([]calc.Figure{
		{ID: "found_mean", Label: "As found, mean", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"}},
		{ID: "left_mean", Label: "As left, mean", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"},
			Quantity: "pressure now", From: []string{"left"}},
		{ID: "change", Label: "Change", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}},
		{ID: "change_lo", Label: "Change, at least (95 %)", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}},
		{ID: "change_hi", Label: "Change, at most (95 %)", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}},
		{ID: "p_rise", Label: "Chance that it truly rose", Kind: unit.Percent, Round: calc.Chance, Against: []string{"2.5 %", "97.5 %"}},
		{ID: "lift_pct", Label: "Change of lift, at least", Kind: unit.Percent, Round: calc.Two},
		{ID: "p_within", Label: "Chance that it is within the limits as left", Kind: unit.Percent, Round: calc.Chance, Against: []string{"95 %"}},
		{ID: "p_below", Label: "Chance that it is low as left", Kind: unit.Percent, Round: calc.Chance, Against: []string{"95 %"}, Place: calc.More},
		{ID: "p_above", Label: "Chance that it is high as left", Kind: unit.Percent, Round: calc.Chance, Against: []string{"5 %", "95 %"}, Place: calc.More},
		{ID: "lo", Label: "True pressure as left, at least", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"}, Place: calc.More},
		{ID: "hi", Label: "True pressure as left, at most", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"low", "high"}, Place: calc.More},
		{ID: "settle", Label: "Gauge that would settle it (± of dial)", Round: calc.Words, Place: calc.More},
		{ID: "shortfall", Label: "As left, under the manual's lowest", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}, Place: calc.More},
		{ID: "change_pct", Label: "Change, of the pressure as found", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "fitted", Label: "Shim left in, total added", Kind: unit.Thickness, Place: calc.More},
		{ID: "rate", Label: "What a shim is worth, by the trials", Kind: unit.PressureRate, Round: calc.Two, Place: calc.More},

		{ID: "size", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}, Place: calc.Quoted},
		{ID: "size_lo", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}, Place: calc.Quoted},
		{ID: "size_hi", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"0 psi"}, Place: calc.Quoted},
		{ID: "sure", Round: calc.Words, Place: calc.Quoted},
		{ID: "lift_size", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted},
		{ID: "left_most", Kind: unit.Pressure, Against: []string{"high"}, Place: calc.Quoted},
		{ID: "last", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "over_trial", Kind: unit.Pressure, Against: []string{"high"}, Place: calc.Quoted},
		{ID: "over_shim", Kind: unit.Thickness, Place: calc.Quoted},
		{ID: "n_found", Kind: unit.Count, Place: calc.Quoted},
		{ID: "n_left", Kind: unit.Count, Place: calc.Quoted},
		{ID: "s_found", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
		{ID: "s_left", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
		{ID: "u_scatter", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
		{ID: "dof", Kind: unit.Number, Round: calc.Two, Place: calc.Quoted},
		{ID: "half_step", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "a_found", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "a_apart", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "main_share", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted},
		gradeMark,
		{ID: "accuracy", Kind: unit.Percent, Place: calc.Quoted, Quantity: "gauge accuracy", From: jobJudgement.from},
	}, jobJudgement.figures()...),
	Verdicts: jobVerdicts(),
	Next: []calc.Next{
		{ID: "gain", Text: "What would more pressure lift?"},
		{ID: "shim", Text: "How much shim, and where to stop?"},
		{ID: "reading", Text: "What does the gauge prove? With its warmth, and a pointer that rests off zero"},
		{ID: "before-after", Text: "Before and after: how much of a reported gain is pressure?"},
	},
	Compute:  computeJob,
	Simulate: func(in *calc.In) calc.Trial { return takeJob(in).change().Draw },
}

// jobVerdicts are the branches: over the limit comes first, then no change, then
// each way that it can have gone with how it stands as left. A pressure that rose
// and is low is so still; one that fell and is low is so now.
func jobVerdicts() []calc.Verdict {
	vs := []calc.Verdict{
		{Key: "over", Head: "Over the limit: bring it down",
			Sentence: "As left it reads {left_mean}, over the manual's {high}, and the chance that it truly is over is {p_above}: bring it down before anything else."},
		{Key: "over-once", ID: "over", Head: "Over the limit: bring it down",
			Sentence: "As left it has read {left_most}, over the manual's {high}, and the chance that it truly is over is {p_above}: bring it down before anything else."},
		{Key: "no-change", Head: "No change shown",
			Sentence: "It read {found_mean:n} as found and {left_mean} as left: with what such readings may be off, the change is {change_lo:n} to {change_hi} ({sure}), so none is shown."},
		{Key: "no-change-step", ID: "no-change", Head: "No change shown",
			Sentence: "It read {found_mean:n} as found and {left_mean} as left, no further apart than the smallest step you can read, so no change is shown."},
		{Key: "no-change-few", ID: "no-change", Head: "No change shown",
			Sentence: "It read {found_mean:n} as found and {left_mean} as left. So few readings don't show how readings scatter, and a difference this small may be scatter alone, so no change is shown."},
	}
	for _, way := range []struct{ went, head, low, over string }{{"rose", "Rose", "still", "now"}, {"fell", "Fell", "now", "still"}} {
		for _, end := range []struct{ key, id, head string }{
			{"within", "-in-range", ", in range"},
			{"probably-within", "-undecided", ", probably in range"},
			{"not-low", "-not-low", ", not low"},
			{"not-high", "-not-high", ", not high"},
			{"probably-not-low", "-undecided", ", probably not low"},
			{"low", "-low", ", " + way.low + " low"},
			{"probably-low", "-undecided", ", probably " + way.low + " low"},
			{"unclear", "-undecided", ""},
			{"risk", "-maybe-over", ", maybe " + way.over + " over the limit"},
			{"no-range", "", ""},
		} {
			sentence := movedSentence(way.went)
			switch end.key {
			case "risk":
				sentence += " It may " + way.over + " be over the manual's {high}: the chance is {p_above}, which is too much. Add nothing; check it on a better gauge, or bring it down."
			case "no-range":
				sentence += " Enter the manual's range to judge where that is."
			default:
				sentence += " As left: " + jobJudgement.sentence(end.key)
			}
			vs = append(vs, calc.Verdict{Key: way.went + " " + end.key, ID: way.went + end.id, Head: way.head + " by {size}" + end.head, Sentence: sentence})
		}
	}
	return vs
}

// movedSentence says how far the pressure went.
func movedSentence(went string) string {
	return "It " + went + " by {size} ({size_lo:n} to {size_hi}, {sure}), from {found_mean:n} to {left_mean}."
}
