package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/linkage"
	"plainlift/calc/unit"
)

// Ranges of a loader's fields that no other worksheet has.
var (
	diameters = calc.Range{Min: "0 mm", Max: "500 mm", Above: true}
	aheads    = calc.Range{Min: "-3 m", Max: "3 m"}
	fromPins  = calc.Range{Min: "0 m", Max: "10 m"}
	weights   = calc.Range{Min: "0 kN", Max: "50 kN"}
)

const (
	inTheArms      = "The arms: pin centre to pin centre"
	inTheCylinders = "The cylinders"
	inTheWeights   = "Weights"
	inThePoints    = "Points from a rating plate or a test"
	inTheDoubt     = "How sure the measurements are"
)

// loader says what a pressure lifts through the whole arc of a loader, from what
// a tape measures on it.
var loader = &calc.Worksheet{
	ID:    "loader",
	Title: "What does the loader lift, and where?",
	Menu:  "Through the arc",
	Reply: calc.Reply{
		About: "For a loader measured with a tape, the bucket pin at {height}:",
		How:   "The cylinders push {force} on a lever arm of {arm}; less arms and tool, that holds the load {reach} out.",
		After: "Height and reach change it, so name them with the number. See that the rear wheels stay down before asking for pressure.",
	},
	Fields: []calc.Field{
		{ID: "height", Label: "Height of the bucket pin", Noun: "height", Kind: unit.Length, Example: "60 in", Tape: true,
			Range: fromPins, Slide: &calc.Slide{From: "h_min", To: "h_max"},
			Hint: "From level ground to the centre of the pin that the bucket or fork frame hangs on. Move it with the slider under the picture."},
		{ID: "pressure", Label: "Gauge shows", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi",
			Range: calc.Pressures, Quantity: "pressure now",
			Hint: "With the oil warm, at rated engine speed, the cylinders held at the end of their stroke for seconds."},
		{ID: "compare", Label: "If it were set to", Noun: "other pressure", Kind: unit.Pressure, Example: "2,735 psi",
			Range: calc.Pressures, Quantity: "target pressure",
			Hint: "Another pressure to compare with, such as the middle of the manual's range. Not above the manual's highest."},
		{ID: "limit", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
			Range: calc.Pressures, Quantity: "manual highest", Empty: "not known",
			Hint: "The upper end of the range in the service manual. Never set it above this."},
		{ID: "level", Label: "Linkage keeps the tool level", Noun: "kind of linkage", Shape: calc.Choice, Example: "no",
			Options: []calc.Option{{ID: "yes", Label: "yes"}, {ID: "no", Label: "no"}},
			Hint:    "Yes where a second pair of links keeps forks level on the way up without touching the lever. The lift is then the same wherever the load sits on the forks."},
		{ID: "load_x", Label: "Load ahead of the pin", Noun: "place of the load", Kind: unit.Length, Example: "0 in", Signed: true, Tape: true,
			Range: aheads, Only: &calc.Only{Field: "level", In: []string{"no"}},
			Hint: "Level, from the bucket pin to where the load's weight acts, with the tool rolled flat at this height. 0 is at the pin, as many ratings are."},

		{ID: "pivot_h", Label: "Height of the pivot", Noun: "height of the pivot", Kind: unit.Length, Example: "54 in", Group: inTheArms, Tape: true, Range: calc.Lengths,
			Hint: "From level ground to the pin on which the arms turn."},
		{ID: "base_h", Label: "Height of the cylinder's base pin", Noun: "height of the base pin", Kind: unit.Length, Example: "32 in", Group: inTheArms, Tape: true, Range: fromPins,
			Hint: "From level ground to the lower pin of the lift cylinder."},
		{ID: "pivot_base", Label: "Pivot to base pin", Noun: "distance of pivot and base pin", Kind: unit.Length, Example: "24 in", Group: inTheArms, Tape: true, Range: calc.Lengths,
			Hint: "Straight from centre to centre. Measure it twice: the top of the arc often hangs on it."},
		{ID: "base_side", Label: "The base pin is", Noun: "side of the base pin", Group: inTheArms, Shape: calc.Choice, Example: "behind",
			Options: []calc.Option{{ID: "behind", Label: "behind the pivot"}, {ID: "ahead", Label: "ahead of the pivot"}},
			Hint:    "Ahead is towards the bucket."},
		{ID: "boom", Label: "Pivot to bucket pin", Noun: "distance of pivot and bucket pin", Kind: unit.Length, Example: "80 in", Group: inTheArms, Tape: true, Range: calc.Lengths,
			Hint: "Straight from centre to centre, whatever the bend in the arm."},
		{ID: "pivot_rod", Label: "Pivot to rod pin", Noun: "distance of pivot and rod pin", Kind: unit.Length, Example: "34 in", Group: inTheArms, Tape: true, Range: calc.Lengths,
			Hint: "The rod pin joins the lift cylinder's rod to the arm."},
		{ID: "rod_tip", Label: "Rod pin to bucket pin", Noun: "distance of rod pin and bucket pin", Kind: unit.Length, Example: "47.25 in", Group: inTheArms, Tape: true, Range: calc.Lengths,
			Hint: "With the two above it says how far the rod pin lies off the straight line."},
		{ID: "rod_side", Label: "The rod pin is", Noun: "side of the rod pin", Group: inTheArms, Shape: calc.Choice, Example: "below",
			Options: []calc.Option{{ID: "below", Label: "below that line"}, {ID: "above", Label: "above that line"}},
			Hint:    "The straight line from the pivot to the bucket pin: hold a string along it."},

		{ID: "bore", Label: "Bore", Noun: "bore", Kind: unit.Length, Example: "1.75 in", Group: inTheCylinders, Range: diameters, Quantity: "cylinder bore",
			Hint: "The inside diameter of the lift cylinders, from the parts book or the cylinder's mark."},
		{ID: "rod", Label: "Rod", Noun: "rod's diameter", Kind: unit.Length, Example: "1 in", Group: inTheCylinders, Range: diameters, Quantity: "cylinder rod",
			Hint: "The diameter of the bright rod. It only matters with back pressure."},
		{ID: "count", Label: "Lift cylinders", Noun: "number of cylinders", Kind: unit.Count, Example: "2", Group: inTheCylinders,
			Range: calc.Range{Min: "1", Max: "4"}, Quantity: "cylinder count", Hint: "Side by side, mostly two."},
		{ID: "closed", Label: "Closed, pin to pin", Noun: "closed length", Kind: unit.Length, Example: "32.9 in", Group: inTheCylinders, Tape: true,
			Range: calc.Lengths, Quantity: "cylinder closed", Hint: "From centre to centre with the arms all the way down."},
		{ID: "stroke", Label: "Stroke", Noun: "stroke", Kind: unit.Length, Example: "20.5 in", Group: inTheCylinders, Tape: true,
			Range: calc.Lengths, Quantity: "cylinder stroke", Hint: "The bright rod to be seen with the arms all the way up, less what shows when they are down."},
		{ID: "back", Label: "Pressure on the rod side", Noun: "back pressure", Kind: unit.Pressure, Example: "0 psi", Usual: true, Group: inTheCylinders,
			Range: calc.FromZero, Hint: "What the oil on its way out still holds against the piston. At stall nothing flows: 0."},
		{ID: "efficiency", Label: "Gets past friction", Noun: "efficiency", Kind: unit.Percent, Example: "95 %", Usual: true, Group: inTheCylinders,
			Range: calc.Range{Min: "50 %", Max: "100 %"}, Quantity: "efficiency",
			Hint: "The part of the push that seals and pins leave: 90 to 98 % (common practice, no source)."},

		{ID: "boom_w", Label: "Arms, weight", Noun: "weight of the arms", Kind: unit.Load, Example: "260 lb", Group: inTheWeights, Range: weights,
			Hint: "Both arms with what is on them, without the tool."},
		{ID: "boom_cg", Label: "Their centre from the pivot", Noun: "centre of the arms", Kind: unit.Length, Example: "38 in", Group: inTheWeights, Tape: true, Range: fromPins,
			Hint: "Along the straight line to the bucket pin: a little under half way where the arms taper."},
		{ID: "tool_w", Label: "Tool, weight", Noun: "weight of the tool", Kind: unit.Load, Example: "290 lb", Group: inTheWeights, Range: weights,
			Hint: "Bucket, forks or grapple with its frame."},
		{ID: "tool_cg", Label: "Its centre ahead of the pin", Noun: "centre of the tool", Kind: unit.Length, Example: "10 in", Group: inTheWeights, Signed: true, Tape: true,
			Range: aheads, Only: &calc.Only{Field: "level", In: []string{"no"}},
			Hint: "Level, from the bucket pin to where the empty tool would balance."},

		{ID: "points", Label: "Points", Noun: "points", Shape: calc.Pairs, Kind: unit.Length, With: unit.Load, Row: "Height of the pin", RowTo: "Lifts", Group: inThePoints,
			MaxLen: 40, Empty: "none", Range: fromPins, RangeTo: calc.Loads,
			Hint: "What a plate, a book or a crane scale says the loader lifts at a height, at the place of the load above. They are drawn beside the curve."},
		{ID: "points_at", Label: "They hold at pressure", Noun: "pressure of the points", Kind: unit.Pressure, Group: inThePoints, Range: calc.Pressures, Empty: "what the gauge shows",
			Hint: "For a rating mostly the manual's relief pressure; for a test what the gauge showed."},

		{ID: "tape", Label: "Each length good to ±", Noun: "tape", Kind: unit.Length, Example: "1/4 in", Usual: true, Group: inTheDoubt, Tape: true,
			Range: calc.Range{Min: "0 mm", Max: "200 mm"}, Hint: "Pin centres are hard to see: a quarter inch is honest."},
		{ID: "efficiency_err", Label: "Efficiency good to ±", Noun: "doubt of the efficiency", Kind: unit.Percent, Example: "4 %", Usual: true, Group: inTheDoubt,
			Range: calc.Range{Min: "0 %", Max: "30 %"}, Hint: "Percent of the push: 4 takes 95 % as anything from 91 to 99 %."},
		{ID: "weight_err", Label: "Each weight good to ±", Noun: "doubt of the weights", Kind: unit.Percent, Example: "5 %", Usual: true, Group: inTheDoubt,
			Range: calc.Range{Min: "0 %", Max: "100 %"}, Hint: "In percent of the weight."},
		{ID: "pressure_err", Label: "Gauge good to ±", Noun: "gauge limit", Kind: unit.Pressure, Example: "0 psi", Usual: true, Group: inTheDoubt,
			Range: calc.FromZero, Quantity: "gauge limit",
			Hint: "How far the gauge may be off. It shifts both pressures alike, so it hardly touches the gain."},
	},
	Figures: []calc.Figure{
		{ID: "lift", Label: "Lifts at this height", Kind: unit.Load, Round: calc.ByDoubt},
		{ID: "gain", Label: "More lift at the other pressure", Kind: unit.Load, Round: calc.Two},
		{ID: "gain_pct", Label: "That is, of the lift now", Kind: unit.Percent, Round: calc.Two},
		{ID: "closer", Label: "The same by carrying it nearer", Kind: unit.Length, Round: calc.Two},
		{ID: "lower", Label: "The same by holding it lower", Kind: unit.Length, Round: calc.Two},
		{ID: "lighter", Label: "The same by a lighter tool", Kind: unit.Load, Round: calc.Two},
		{ID: "lift_low", Label: "Lifts at the bottom", Kind: unit.Load, Round: calc.ByDoubt},
		{ID: "lift_top", Label: "Lifts at the top", Kind: unit.Load, Round: calc.ByDoubt},
		{ID: "lift_u", Label: "Standard uncertainty of the lift", Kind: unit.Load, Round: calc.Two, Place: calc.More},
		{ID: "dead", Label: "Arms and tool, felt at the load", Kind: unit.Load, Place: calc.More, Quantity: "dead weight"},
		{ID: "slope", Label: "Load for more pressure", Kind: unit.LoadSlope, Place: calc.More, Quantity: "load slope"},
		{ID: "gain_top", Label: "More lift at the top", Kind: unit.Load, Round: calc.Two, Place: calc.More},
		{ID: "h_min", Label: "Lowest the pin goes", Kind: unit.Length, Place: calc.More},
		{ID: "h_max", Label: "Highest the pin goes", Kind: unit.Length, Round: calc.ByDoubt, Place: calc.More},
		{ID: "arm", Label: "Cylinder's lever arm about the pivot", Kind: unit.Length, Place: calc.More},
		{ID: "reach", Label: "Pivot to load, level", Kind: unit.Length, Place: calc.More, Quantity: "pivot to load"},
		{ID: "raise_volume", Label: "Oil to raise it all the way", Kind: unit.Volume, Place: calc.More},

		{ID: "lift_lo", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.Quoted},
		{ID: "lift_hi", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.Quoted},
		{ID: "further", Kind: unit.Length, Round: calc.Two, Place: calc.Quoted},
		{ID: "loss", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
		{ID: "lift_compare", Kind: unit.Load, Round: calc.ByDoubt, Place: calc.Quoted, Quantity: "lift"},
		{ID: "compare_at", Kind: unit.Pressure, Place: calc.Quoted, Quantity: "lift pressure", From: []string{"compare"}},
		{ID: "dead_pct", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted},
		{ID: "share_least", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted, Quantity: "dead share, at least"},
		{ID: "share_most", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted, Quantity: "dead share, at most"},
		{ID: "force", Kind: unit.Force, Place: calc.Quoted},
		{ID: "x_boom", Kind: unit.Length, Place: calc.Quoted},
		{ID: "x_tool", Kind: unit.Length, Place: calc.Quoted},
		{ID: "length", Kind: unit.Length, Place: calc.Quoted},
		{ID: "angle", Kind: unit.Angle, Place: calc.Quoted},
		{ID: "top_move", Kind: unit.Length, Round: calc.Two, Place: calc.Quoted},
		{ID: "hangs", Round: calc.Words, Place: calc.Quoted},
		{ID: "top_hangs", Round: calc.Words, Place: calc.Quoted},
		{ID: "hangs_share", Kind: unit.Percent, Round: calc.Chance, Place: calc.Quoted},
		{ID: "points_in", Kind: unit.Count, Place: calc.Quoted},
		{ID: "points_n", Kind: unit.Count, Place: calc.Quoted},
		{ID: "fits_best", Kind: unit.Percent, Place: calc.Quoted},
	},
	Verdicts: []calc.Verdict{
		{Key: "over-limit-now", Head: "Already above the limit",
			Sentence: "{pressure} already reads above the manual's {limit}; bring it down first. By arithmetic it lifts about {lift} with the pin at {height}."},
		{Key: "over-limit", Head: "Above the manual's limit",
			Sentence: "{compare} is above the manual's {limit}: don't set it there. At {pressure} it lifts about {lift} with the pin at {height}."},
		{Key: "none", Head: "Lifts nothing at {height}",
			Sentence: "With the pin at {height} the arms and the tool use all of {pressure}, so no load is lifted there."},
		{Key: "equal", Head: "About {lift} at {height}",
			Sentence: "With the pin at {height} it lifts about {lift}, most likely {lift_lo:n} to {lift_hi}; the two pressures are the same, so there is nothing to gain."},
		{Key: "lower", Head: "{lift}, then {loss} less",
			Sentence: "With the pin at {height} it lifts about {lift} at {pressure}, most likely {lift_lo:n} to {lift_hi}, and {loss} less at {compare}."},
		{Key: "more", Head: "{lift}, then {gain} more",
			Sentence: "With the pin at {height} it lifts about {lift} at {pressure}, most likely {lift_lo:n} to {lift_hi}, and {gain} more ({gain_pct}) at {compare}."},
	},
	Next: []calc.Next{
		{ID: "gain", Text: "What would more pressure lift? With this height's lift and dead weight"},
		{ID: "before-after", Text: "Before and after: how much is pressure? With this dead weight"},
		{ID: "tip", Text: "What tips first? With the lift at the pressure it is compared with"},
		{ID: "flow", Text: "Slow or weak? With these cylinders"},
		{ID: "short", Text: "Is my relief pressure low?"},
	},
	Compute: computeLoader,
}

// loaderFields are the fields that hold what the linkage calls its measures.
var loaderFields = map[linkage.Measure]string{
	linkage.PivotH: "pivot_h", linkage.BaseH: "base_h", linkage.PivotBase: "pivot_base", linkage.Boom: "boom",
	linkage.PivotRod: "pivot_rod", linkage.RodTip: "rod_tip", linkage.Closed: "closed", linkage.Stroke: "stroke",
	linkage.BoomCG: "boom_cg", linkage.ToolCG: "tool_cg", linkage.LoadX: "load_x", linkage.Efficiency: "efficiency",
	linkage.BoomW: "boom_w", linkage.ToolW: "tool_w", linkage.Pressure: "pressure_err", linkage.Bore: "bore", linkage.Rod: "rod",
}

// faults say what is wrong with a measurement and what would fit the others;
// {} is the limit.
var faults = map[linkage.Fault]string{
	linkage.NotAbove0:      "Must be above 0",
	linkage.RodInBore:      "The rod must be thinner than the bore, {}",
	linkage.BaseTooNear:    "Check it against the two heights: the pins are {} apart in height alone, so it must be more",
	linkage.SidesTooShort:  "Check it against pivot to bucket pin and pivot to rod pin: with those it is {} or more",
	linkage.SidesTooLong:   "Check it against the other two sides of the arm: with those it is {} or less",
	linkage.StrokeTooLong:  "A cylinder's stroke is shorter than its closed length, {}",
	linkage.ClosedTooShort: "Check it against pivot to base pin and pivot to rod pin: with those the cylinder is never shorter than {}",
	linkage.NeverReaches:   "Check it against pivot to base pin and pivot to rod pin: with those the pins are never further apart than {}",
	linkage.DeadCentre:     "The cylinder would come into one line with the pivot before its end: with the other measurements the stroke is under {}",
	linkage.TooSteepLow:    "The arms would hang straight down: with the other measurements it is more than {}",
	linkage.TooSteepHigh:   "The arms would stand straight up: with the other measurements it is less than {}",
	linkage.BehindPivot:    "The load would hang over the pivot or behind it: with the other measurements it is more than {}",
}
