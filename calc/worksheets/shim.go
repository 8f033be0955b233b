package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/relief"
	"plainlift/calc/unit"
)

// mostOver is the chance of truly being over the manual's limit that a stack may
// leave. The choice is ours, on the side of the machine.
const mostOver = 0.05

// noSpring is the choice of material that stands for the usual rate.
const noSpring = "none"

// notMeasured says in a field of the spring that it is empty.
const notMeasured = "not measured"

// shim says what a shim would do, the next step and where to stop. It gives no
// stack until the numbers that bound it are the reader's own, none that passes
// the target and none whose chance of truly being over the limit passes mostOver.
var shim = &calc.Worksheet{
	ID:    "shim",
	Title: "How much shim, and where to stop?",
	Menu:  "How much shim?",
	Reply: calc.Reply{
		About: "On shimming from {now} towards {target}:",
		How:   "What a shim adds is the usual rule until readings say better; how far the gauge may be off, ±{gauge_err}, counts in the chance.",
		After: "One step at a time: fit, read, reckon again, and stop under the manual's limit. If unsure, let a technician do it.",
	},
	Fields: []calc.Field{
		{ID: "now", Label: "Gauge shows now", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi",
			Range: calc.Pressures, Quantity: "pressure now",
			Hint: "Before any shim of this job went in: oil warm, rated engine speed, the cylinder held at the end of its stroke for seconds, at a port that this relief protects."},
		{ID: "target", Label: "Bring it to", Noun: "target", Kind: unit.Pressure, Example: "2,735 psi",
			Range: calc.Pressures, Quantity: "target pressure",
			Hint: "What the gauge should show in the end. Not above the manual's highest; the middle of its range is a good place."},
		lowField,
		{ID: "limit", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
			Range: calc.Pressures, Quantity: "manual highest",
			Hint: "The upper end of the range in your machine's service manual. Without it there is no stack."},
		{ID: "gauge_err", Label: "Gauge good to ±", Noun: "gauge limit", Kind: unit.Pressure, Example: "80 psi",
			Range: calc.FromZero, Quantity: "gauge limit",
			Hint: "As a pressure: 2 % of a dial that goes up to 4,000 psi is 80 psi. Nothing printed on it: take 3 % (common practice, no source)."},
		{ID: "kit", Label: "Shims you have", Noun: "shims", Shape: calc.Pairs, Kind: unit.Thickness, With: unit.Count,
			Row: "Thickness", RowTo: "How many", MaxLen: 40, Chips: []string{"5 thou", "10 thou", "20 thou", "40 thou"},
			Example: "0.005 in : 2; 0.010 in : 2; 0.020 in : 2; 0.040 in : 1", Empty: "none listed",
			Range: calc.Thickness, RangeTo: calc.Range{Min: "0", Max: "100"},
			Hint: "All that may go in, with those that you have already put in for this job. Measure them."},
		{ID: "trials", Label: "Readings after a shim", Noun: "readings after a shim", Shape: calc.Pairs, Kind: unit.Thickness, With: unit.Pressure,
			Row: "Shim in now, total added", RowTo: "Gauge then shows", MaxLen: 30, Empty: "none yet",
			Range: calc.Thickness, RangeTo: calc.Pressures,
			Hint: "One row for each reading: the total added since the first reading, not the last shim alone. The last row is what is in now."},
		{ID: "repeat", Label: "Scatter when you read again", Noun: "scatter", Kind: unit.Pressure, Example: "10 psi",
			Range: calc.Range{Min: "0 bar", Max: "50 bar", Above: true}, More: true,
			Hint: "The standard deviation of a reading. Read four times: half of the highest less the lowest is near enough."},
		{ID: "pitch", Label: "Screw: thread pitch", Noun: "pitch", Kind: unit.Length,
			Range: calc.Range{Min: "0 mm", Max: "10 mm", Above: true}, Empty: "no screw", More: true,
			Hint: "Only for an adjusting screw: how far one turn moves it. 20 threads to the inch is 0.050 in."},
		{ID: "material", Label: "Spring wire (direct-acting valve only)", Noun: "spring wire", Shape: calc.Choice, Options: springWires(),
			Usual: true, More: true,
			Hint: "With the spring measured, what a shim is worth comes from the spring instead of the usual rate. Not for a pilot-operated relief."},
		{ID: "rate_lo", Label: "A shim adds, at least", Noun: "lowest rate", Kind: unit.PressureRate, Example: "40 psi per 0.010 in",
			Range: rates, Usual: true, More: true, Only: &calc.Only{Field: "material", In: []string{noSpring}},
			Hint: "40 to 50 psi per 0.010 in (2.7 to 3.4 bar per 0.25 mm) is common practice, no source. Your valve may differ: your own readings tell."},
		{ID: "rate_hi", Label: "A shim adds, at most", Noun: "highest rate", Kind: unit.PressureRate, Example: "50 psi per 0.010 in",
			Range: rates, Usual: true, More: true, Only: &calc.Only{Field: "material", In: []string{noSpring}},
			Hint: "Your own readings override both when they do not fit."},
		{ID: "wire", Label: "Spring: wire diameter", Noun: "wire diameter", Kind: unit.Length,
			Range: calc.Range{Min: "0.1 mm", Max: "25 mm"}, Empty: notMeasured, More: true, Only: withSpring(),
			Hint: "Measure it well: the fourth power of it counts."},
		{ID: "coil", Label: "Spring: mean coil diameter", Noun: "coil diameter", Kind: unit.Length,
			Range: calc.Range{Min: "1 mm", Max: "200 mm"}, Empty: notMeasured, More: true, Only: withSpring(),
			Hint: "From the middle of the wire to the middle of the wire: the outside less one wire."},
		{ID: "turns", Label: "Spring: active coils", Noun: "active coils", Kind: unit.Number,
			Range: calc.Range{Min: "0.5", Max: "100"}, Empty: notMeasured, More: true, Only: withSpring(),
			Hint: "Those that move: with closed and ground ends, all of them less two."},
		{ID: "seat", Label: "Valve: seat diameter", Noun: "seat diameter", Kind: unit.Length,
			Range: calc.Range{Min: "0.5 mm", Max: "100 mm"}, Empty: notMeasured, More: true, Only: withSpring(),
			Hint: "Of the hole that the poppet or ball closes."},
	},
	Figures:  shimFigures,
	Verdicts: shimVerdicts,
	Next: []calc.Next{
		{ID: "short", Text: "Is my relief pressure low at all?"},
		{ID: "reading", Text: "What does the gauge prove? With several readings, its class and its temperature"},
		{ID: "gain", Text: "What would more pressure lift?"},
		{ID: "before-after", Text: "Before and after: how much is pressure?"},
		{ID: "job", Text: "The job is done: what did the adjustment change?"},
	},
	Compute: computeShim,
}

// rates bounds what a shim may be said to add.
var rates = calc.Range{Min: "0 psi per 0.010 in", Max: "2000 psi per 0.010 in", Above: true}

// springWires are the choices of material, the usual rate first.
func springWires() []calc.Option {
	options := []calc.Option{{ID: noSpring, Label: "not measured: the usual rate"}}
	for _, m := range relief.Materials {
		options = append(options, calc.Option{ID: m.ID, Label: m.Name})
	}
	return options
}

// withSpring makes a field bear only when a wire is chosen.
func withSpring() *calc.Only {
	only := &calc.Only{Field: "material"}
	for _, m := range relief.Materials {
		only.In = append(only.In, m.ID)
	}
	return only
}

var shimFigures = []calc.Figure{
	{ID: "first", Label: "Next step: add", Kind: unit.Thickness},
	{ID: "add", Label: "Most to add to what is in", Kind: unit.Thickness},
	{ID: "stack", Label: "The stack then, all of it", Round: calc.Words},
	{ID: "stack_total", Label: "Most these numbers allow, in all", Kind: unit.Thickness},
	{ID: "expected", Label: "Pressure to expect then", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"target", "limit"}},
	{ID: "expected_lo", Label: "True pressure then, at least (95 %)", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"limit"}},
	{ID: "expected_hi", Label: "True pressure then, at most (95 %)", Kind: unit.Pressure, Round: calc.ByDoubt, Against: []string{"limit"}},
	{ID: "p_over", Label: "Chance of truly over the limit then", Kind: unit.Percent, Round: calc.Chance, Against: []string{"5 %"}},
	{ID: "rate", Label: "What a shim adds", Kind: unit.PressureRate, Round: calc.ByDoubt, Place: calc.More},
	{ID: "rate_u", Label: "Its standard uncertainty", Kind: unit.PressureRate, Round: calc.Two, Place: calc.More},
	{ID: "thickness", Label: "For the target by the line alone, in all", Kind: unit.Thickness, Round: calc.Two, Place: calc.More},
	{ID: "fitted", Label: "In now, total added", Kind: unit.Thickness, Place: calc.More},
	{ID: "screw_turns", Label: "Most the screw may turn in, in all", Round: calc.Words, Place: calc.More},

	{ID: "now_fitted", Kind: unit.Pressure, Round: calc.ByDoubt, Place: calc.Quoted, Against: []string{"target", "limit"}},
	{ID: "last", Kind: unit.Pressure, Place: calc.Quoted, Against: []string{"limit"}},
	{ID: "reads", Round: calc.Words, Place: calc.Quoted},
	{ID: "missing", Round: calc.Words, Place: calc.Quoted},
	{ID: "tried", Kind: unit.Thickness, Place: calc.Quoted},
	{ID: "rise", Kind: unit.Pressure, Place: calc.Quoted},
	{ID: "rise_expected", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
	{ID: "counting", Round: calc.Words, Place: calc.Quoted},
	{ID: "smallest", Round: calc.Words, Place: calc.Quoted},
	{ID: "over_target", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
	{ID: "first_total", Kind: unit.Thickness, Place: calc.Quoted},
	{ID: "ins", Round: calc.Words, Place: calc.Quoted},
	{ID: "outs", Round: calc.Words, Place: calc.Quoted},
	{ID: "next_total", Round: calc.Words, Place: calc.Quoted},
	{ID: "p_next", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted, Against: []string{"5 %"}},
	{ID: "p_now", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted, Against: []string{"5 %"}},
	{ID: "p_low", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted, Against: []string{"95 %"}},
	{ID: "width", Kind: unit.Pressure, Place: calc.Quoted},
	{ID: "eighth", Kind: unit.Thickness, Place: calc.Quoted},
	{ID: "rate_rule", Kind: unit.PressureRate, Place: calc.Quoted},
	{ID: "rate_ls", Kind: unit.PressureRate, Place: calc.Quoted},
}

var shimVerdicts = []calc.Verdict{
	{Key: "yours-limit", ID: "yours", Head: "Enter your manual's limit",
		Sentence: "No stack until the manual's upper limit is your own; the {limit} shown belongs to the example."},
	{Key: "yours", Head: "Enter your own numbers",
		Sentence: "No stack until you enter your own {missing}."},
	{Key: "stop-now", ID: "stop", Head: "Stop: take shim out",
		Sentence: "Stop: {reads} is above the manual's {limit}; take shim out, do not add."},
	{Key: "stop-now-screw", ID: "stop", Head: "Stop: turn the screw out",
		Sentence: "Stop: {reads} is above the manual's {limit}; turn the screw out, not in."},
	{Key: "stop-target", ID: "stop", Head: "Stop: target too high",
		Sentence: "Stop: the target {target} is above the manual's {limit}."},
	{Key: "stuck", Head: "Stop: shim isn't raising it",
		Sentence: "Stop: {tried} of shim should have added about {rise_expected}, and the gauge shows a change of {rise}; a leak, the pump or another relief may be setting this pressure."},
	{Key: "there", Head: "At the target",
		Sentence: "It reads {now_fitted}, at the target; the chance that it is truly over {limit} is {p_over}."},
	{Key: "there-line", ID: "there", Head: "At the target",
		Sentence: "It read {last} last, and all readings together put it at {now_fitted}, at the target; the chance that it is truly over {limit} is {p_over}."},
	{Key: "there-past-line", ID: "there", Head: "Past the target",
		Sentence: "It read {last} last, and all readings together put it at {now_fitted}, past the target {target}: add nothing; the chance that it is truly over {limit} is {p_over}."},
	{Key: "there-past", ID: "there", Head: "Past the target",
		Sentence: "It reads {now_fitted}, past the target {target}: add nothing; the chance that it is truly over {limit} is {p_over}."},
	{Key: "no-kit", Head: "No shims listed",
		Sentence: "About {thickness}{counting} would reach {target}; list the shims you have to see where to stop."},
	{Key: "no-kit-left", ID: "no-kit", Head: "No shims left",
		Sentence: "All the shims listed are in; about {thickness}{counting} would reach {target}. List what else you have to see where to stop."},
	{Key: "small-target", ID: "small", Head: "Already within one shim",
		Sentence: "The thinnest shim, {smallest}, would pass {target} by about {over_target}: leave it, or use a thinner one."},
	{Key: "small-target-change", ID: "small", Head: "Already within one shim",
		Sentence: "The least change these shims allow, {smallest} more, would pass {target} by about {over_target}: leave it, or use a thinner one."},
	{Key: "small-target-screw", ID: "small", Head: "Already within 1/8 turn",
		Sentence: "Another {smallest} would pass {target} by about {over_target}: leave it."},
	{Key: "small-chance", ID: "small", Head: "No shim here is safe",
		Sentence: "Even {smallest} more leaves the chance of truly being over {limit} at {p_over}; a better gauge, a thinner shim or a lower target would help, in that order."},
	{Key: "small-chance-screw", ID: "small", Head: "Not even 1/8 turn is safe",
		Sentence: "Even {smallest} more leaves the chance of truly being over {limit} at {p_over}; a better gauge or a lower target would help, in that order."},
	{Key: "small-chance-any", ID: "small", Head: "No shim here is safe",
		Sentence: "Even {smallest} more leaves the chance of truly being over {limit} at {p_over}, and too much on any gauge: leave it, or use a thinner one."},
	{Key: "small-chance-any-screw", ID: "small", Head: "Not even 1/8 turn is safe",
		Sentence: "Even {smallest} more leaves the chance of truly being over {limit} at {p_over}, and too much on any gauge: leave it."},
	{Key: "small-seen", ID: "small", Head: "No shim here is safe",
		Sentence: "{smallest} more is as much as has already read over {limit}: leave it."},
	{Key: "small-now", ID: "small", Head: "Nothing more is safe",
		Sentence: "As it is, the chance of truly being over {limit} is {p_now} already: add nothing, and read it on a better gauge."},
	{Key: "go", Head: "Next: fit {first}",
		Sentence: "Fit {first}, read, enter it here; the most these numbers allow is a total of {stack_total} ({add} more), about {expected}; the chance of truly being over {limit} is then {p_over}."},
	{Key: "go-change", ID: "go", Head: "Next: change to a total of {first_total}",
		Sentence: "Take out {outs} and fit {ins} ({first} more), read, enter it here; the most these numbers allow is a total of {stack_total} ({add} more), about {expected}; the chance of truly being over {limit} is then {p_over}."},
	{Key: "screw", Head: "Next: 1/8 turn in",
		Sentence: "Turn the screw 1/8 turn in, read, enter it; the most is {screw_turns} in all, about {expected}; the chance of truly being over {limit} is then {p_over}."},
}
