package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/unit"
)

// tip says what lets go first with a load in front: the relief valve, the rear
// wheels or the front axle, and how much load leaves enough on the rear wheels.
var tip = &calc.Worksheet{
	ID:    "tip",
	Title: "What tips first?",
	Menu:  "What tips first",
	Reply: calc.Reply{
		About: "For a tractor with {front} on the front axle, {rear} on the rear and {ballast} of ballast, the load {axle_reach} ahead of the front axle:",
		How:   "Moments about the front wheels: what holds the rear down against what the load lifts there.",
		After: "Ballast on, load low, and on a slope straight up or down only.",
	},
	Fields:   tipFields,
	Figures:  tipFigures,
	Verdicts: tipVerdicts,
	Next: []calc.Next{
		{ID: "gain", Text: "What would more pressure lift?"},
		{ID: "loader", Text: "What does the loader lift, and where?"},
		{ID: "short", Text: "Is my relief pressure low at all?"},
	},
	Compute: computeTip,
}

// axleLoads is what a field of an axle load accepts.
var axleLoads = calc.Range{Min: "0 kN", Max: "200 kN", Above: true}

// onSlope is the group of the form for ground that is not level.
const onSlope = "On a slope"

var tipFields = []calc.Field{
	{ID: "front", Label: "On the front axle", Noun: "front axle load", Kind: unit.Load, Example: "1,750 lb",
		Range: axleLoads,
		Hint:  "Weighed on level ground with arms and tool as far out as they will be, without ballast and load. A vehicle scale with only the front wheels on it shows it."},
	{ID: "rear", Label: "On the rear axle", Noun: "rear axle load", Kind: unit.Load, Example: "2,150 lb",
		Range: axleLoads,
		Hint:  "The same with only the rear wheels on the scale. Count what always stays on, such as filled tyres; leave out what you enter as ballast."},
	{ID: "wheelbase", Label: "Wheelbase", Noun: "wheelbase", Kind: unit.Length, Example: "68 in", Tape: true,
		Range: calc.Range{Min: "0.5 m", Max: "10 m"},
		Hint:  "From the middle of the front axle to the middle of the rear axle, along the ground."},
	{ID: "axle_reach", Label: "Load ahead of the front axle", Noun: "load's distance", Kind: unit.Length, Example: "50 in", Tape: true,
		Range: calc.Lengths,
		Hint:  "Level, from the middle of the front axle to the load's centre, with the arms where they reach out farthest: about level. Not from the loader's pivot."},
	{ID: "lift", Label: "Lift capacity", Noun: "lift capacity", Kind: unit.Load, Example: "1,580 lb",
		Range: calc.Loads, Quantity: "lift",
		Hint: "The most that the pressure lifts in the part of the arc you use. Low down it is often more than the rating at full height."},
	{ID: "ballast", Label: "Ballast", Noun: "ballast", Kind: unit.Load, Example: "600 lb",
		Range: calc.Range{Min: "0 kN", Max: "100 kN"},
		Hint:  "What hangs or stands behind: a box, an implement, wheel weights. 0 for none."},
	{ID: "ballast_x", Label: "Ballast behind the rear axle", Noun: "ballast's distance", Kind: unit.Length, Example: "30 in", Tape: true,
		Range: calc.Range{Min: "0 m", Max: "10 m"},
		Hint:  "From the middle of the rear axle to the ballast's centre. 0 for weights or liquid in the rear wheels."},
	{ID: "keep", Label: "Weight to keep on rear axle", Noun: "share to keep", Kind: unit.Percent, Example: "25 %", Usual: true,
		Range: calc.Range{Min: "0 %", Max: "80 %"},
		Hint:  "Of the whole weight with the load. 25 % is common practice, no source; several operator's manuals ask for 45 % of the unladen weight instead, which stands beside the answer. Your own manual decides."},
	{ID: "front_rating", Label: "Front axle: rating", Noun: "front axle rating", Kind: unit.Load,
		Range: axleLoads, Empty: "not known",
		Hint: "The most the front axle may carry, from the operator's manual or the axle's plate. This page supplies none."},

	{ID: "hill", Label: "Slope, nose downhill", Noun: "slope", Kind: unit.Angle, Example: "0°", Usual: true, Signed: true, Group: onSlope,
		Range: calc.Range{Min: "-25°", Max: "25°"},
		Hint:  "In degrees, as a phone laid on the ground or the frame shows it; a rise of 10 in 100 is about 6°. Below zero: nose uphill. Only up and down the slope, never across it."},
	{ID: "centre_h", Label: "Height of the tractor's centre", Noun: "centre's height", Kind: unit.Length, Group: onSlope, Tape: true,
		Range: calc.Lengths, Empty: "not measured",
		Hint: "Of the centre of weight of tractor and ballast above the ground. Hard to measure: nose downhill, a height that is surely too high is on the safe side."},
	{ID: "load_h", Label: "Height of the load", Noun: "load's height", Kind: unit.Length, Group: onSlope, Tape: true,
		Range: calc.Lengths, Empty: "not measured",
		Hint: "Of the load's centre above the ground, where you would carry or lift it. The higher, the sooner it tips nose downhill."},

	{ID: "weigh_err", Label: "Weights good to ±", Noun: "doubt of the weights", Kind: unit.Percent, Example: "2 %", Usual: true, More: true,
		Range: calc.Range{Min: "0 %", Max: "30 %"},
		Hint:  "Of each axle load and of the ballast. More where a weight is guessed or from a brochure."},
	{ID: "tape", Label: "Lengths good to ±", Noun: "doubt of the lengths", Kind: unit.Length, Example: "1 in", Usual: true, More: true,
		Range: calc.Range{Min: "0 mm", Max: "500 mm"},
		Hint:  "Where the load's centre is can seldom be said closer than an inch."},
	{ID: "lift_err", Label: "Lift capacity good to ±", Noun: "doubt of the lift", Kind: unit.Percent, Example: "5 %", Usual: true, More: true,
		Range: calc.Range{Min: "0 %", Max: "50 %"},
		Hint:  "A gauge good to ±3 % and friction that nobody knows make about 5 % (ours)."},
}

var tipFigures = []calc.Figure{
	{ID: "tip_load", Label: "Rear wheels lift at", Kind: unit.Load, Round: calc.ByDoubt, Against: []string{"lift"}},
	{ID: "safe_load", Label: "Load that keeps the share on the rear axle", Kind: unit.Load, Round: calc.ByDoubt, Against: []string{"lift", "0 lb"}},
	{ID: "limit", Label: "What comes first", Round: calc.Words},
	{ID: "rear_left", Label: "On the rear axle at full lift", Kind: unit.Load, Round: calc.ByDoubt, Against: []string{"rule_rear", "0 lb"}},
	{ID: "rule_rear", Label: "Rear axle by the manuals' rule, at least", Kind: unit.Load},
	{ID: "front_load", Label: "On the front axle at full lift", Kind: unit.Load, Round: calc.ByDoubt, Against: []string{"front_rating"}},
	{ID: "ballast_needed", Label: "Ballast needed there for the share, in all", Kind: unit.Load, Round: calc.ByDoubt, Against: []string{"ballast"}},
	{ID: "rule_ballast", Label: "Ballast by the manuals' rule, in all", Kind: unit.Load, Round: calc.ByDoubt, Against: []string{"ballast"}},

	{ID: "tip_lo", Label: "Rear wheels lift at, at the least (95 %)", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.More},
	{ID: "tip_hi", Label: "Rear wheels lift at, at the most (95 %)", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.More},
	{ID: "p_first", Label: "Chance that what comes first truly does", Kind: unit.Percent, Round: calc.Chance, Place: calc.More, Against: []string{"95 %"}},
	{ID: "axle_limit", Label: "Front axle reaches its rating at", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.More, Against: []string{"lift", "0 lb"}},
	{ID: "rear_share", Label: "On the rear axle at full lift, of the whole weight", Kind: unit.Percent, Place: calc.More, Against: []string{"keep"}},
	{ID: "half_tip", Label: "Half of what lifts the rear wheels", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.More},
	{ID: "front_empty", Label: "On the front axle with no load", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.More, Against: []string{"rule_front", "front_rating", "0 lb"}},
	{ID: "rule_front", Label: "Front axle by the manuals' rule, at least", Kind: unit.Load, Place: calc.More},

	{ID: "plan", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.Quoted, Against: []string{"lift"}},
	{ID: "total", Kind: unit.Load, Place: calc.Quoted},
	{ID: "centre_x", Kind: unit.Length, Place: calc.Quoted},
	{ID: "arm_centre", Kind: unit.Length, Place: calc.Quoted},
	{ID: "arm_ballast", Kind: unit.Length, Place: calc.Quoted},
	{ID: "arm_load", Kind: unit.Length, Place: calc.Quoted},
	{ID: "first_words", Round: calc.Words, Place: calc.Quoted},
	{ID: "next_words", Round: calc.Words, Place: calc.Quoted},
	{ID: "largest", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted},
}

var tipVerdicts = []calc.Verdict{
	{Key: "tipping", Head: "It tips forward with no load",
		Sentence: "On this slope the weight of tractor and ballast falls ahead of the front wheels: it tips forward with no load at all."},
	{Key: "backwards", Head: "It goes over backwards with no load",
		Sentence: "With {ballast} of ballast {ballast_x} behind the rear axle the front wheels lift as soon as the load is off: less ballast, or nearer the axle."},
	{Key: "backwards-load", ID: "backwards", Head: "It goes over backwards with the load",
		Sentence: "On this slope {lift} held {load_h} up takes all the weight off the front wheels: it goes over backwards."},
	{Key: "axle-now", ID: "front-axle", Head: "Front axle over its rating with no load",
		Sentence: "With no load the front axle carries {front_empty} already, and is rated for {front_rating}."},
	{Key: "close", Head: "Too close to call",
		Sentence: "It is too close to call: {first_words} and {next_words}, and with what weights, lengths and lift are good to, either may come first."},
	{Key: "balance", Head: "Rear wheels lift at {tip_load}",
		Sentence: "The rear wheels lift at {tip_load}, before the relief opens at {lift}: more pressure lifts nothing more."},
	{Key: "front-axle", Head: "Front axle is full at {axle_limit}",
		Sentence: "The front axle is at its rating with a load of {axle_limit}, before {next_words}: more pressure only overloads it."},
	{Key: "light", Head: "Enough behind to {safe_load}, not {lift}",
		Sentence: "The relief opens first, at {lift}, but then only {rear_share} of the weight is left on the rear axle, less than the {keep} to keep: {safe_load} is the most that leaves it."},
	{Key: "light-empty", ID: "light", Head: "Too light behind with any load",
		Sentence: "The relief opens first, at {lift}, but the {keep} to keep is not on the rear axle even with no load: it needs ballast before it lifts anything."},
	{Key: "hydraulics", Head: "The relief opens first, at {lift}",
		Sentence: "The relief opens at {lift}, before anything tips: {rear_share} of the weight is then still on the rear axle, and {keep} is to be kept."},
}
