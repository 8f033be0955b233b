package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/unit"
)

// liftTest reads the pulls of a crane scale at several pressures as a line.
var liftTest = &calc.Worksheet{
	ID:    "lift-test",
	Title: "What did the scale show?",
	Menu:  "Scale test",
	Reply: calc.Reply{
		About: "I drew the line through the pulls {tests}:",
		How:   "The line rises {slope}; the dead weight read off it is {dead}, with a standard uncertainty of {dead_u}.",
		After: "Thanks for testing with a scale. One more pull at a much lower pressure would say more than any opinion.",
	},
	Fields: []calc.Field{
		{ID: "tests", Label: "Pulls, one row each", Noun: "pulls", Shape: calc.Pairs, Kind: unit.Pressure, With: unit.Load, Row: "Gauge shows", RowTo: "Scale shows",
			Example: "2,450 psi : 1,390 lb; 2,700 psi : 1,565 lb", MaxLen: 50, Range: calc.Pressures, RangeTo: calc.Loads,
			Hint: "At one height and one point of the tool, lever held, the highest that both show while nothing moves. Two pulls are enough for a line, three to test it."},
		{ID: "limit", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
			Range: calc.Pressures, Quantity: "manual highest", Empty: "not known",
			Hint: "The upper end of the range in the service manual. Never pull above this."},
		{ID: "pressure_u", Label: "Pressure scatters by", Noun: "scatter of the pressure", Kind: unit.Pressure, Example: "10 psi", Usual: true, More: true,
			Range: calc.FromZero, Hint: "Standard deviation when the same pull is read again; what the gauge is off at all of them alike does not belong here."},
		{ID: "load_u", Label: "Load scatters by", Noun: "scatter of the load", Kind: unit.Load, Example: "10 lb", Usual: true, More: true,
			Range: weights, Hint: "Standard deviation when the same pull is weighed again: the hook, the chain's angle, the scale's repeatability."},
		{ID: "gauge_err", Label: "Gauge off by up to ±, everywhere alike", Noun: "gauge limit", Kind: unit.Pressure, Example: "0 psi", Usual: true, More: true,
			Range: calc.FromZero, Hint: "It shifts all pulls alike, so it moves the dead weight and not the line's slope. 0 leaves it out."},
		{ID: "heights", Label: "Height of each pull", Noun: "heights", Shape: calc.List, Kind: unit.Length, Row: "Height", Empty: "not noted", More: true,
			MaxLen: 50, Range: fromPins, Hint: "In the order of the pulls: a few inches change the lift more than a few percent of pressure."},
	},
	Figures: []calc.Figure{
		{ID: "gain_pct", Label: "More load, from lowest to highest pressure", Kind: unit.Percent, Round: calc.ByDoubt},
		{ID: "dp_pct", Label: "More pressure, from lowest to highest", Kind: unit.Percent, Round: calc.ByDoubt},
		{ID: "slope", Label: "Load for more pressure", Kind: unit.LoadSlope, Round: calc.ByDoubt, Quantity: "load slope", From: []string{"tests"}},
		{ID: "dead", Label: "Dead weight, read off the line", Kind: unit.Load, Round: calc.ByDoubt},
		{ID: "slope_u", Label: "Its standard uncertainty", Kind: unit.LoadSlope, Round: calc.Two, Place: calc.More},
		{ID: "dead_u", Label: "Standard uncertainty of the dead weight", Kind: unit.Load, Round: calc.Two, Place: calc.More},
		{ID: "chi2", Label: "How far off the line, χ²", Kind: unit.Number, Round: calc.Two, Place: calc.More},
		{ID: "chi2_p", Label: "Chance of that by luck", Kind: unit.Percent, Round: calc.Chance, Place: calc.More, Against: []string{"5 %"}},
		{ID: "gain_u", Label: "Standard uncertainty of more load", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "dead_most", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
		{ID: "dead_least", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
		{ID: "above", Kind: unit.Load, Round: calc.Two, Place: calc.Quoted},
		{ID: "spread", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "spread_needed", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
		{ID: "offset", Kind: unit.Pressure, Round: calc.Two, Place: calc.Quoted},
		{ID: "pulls", Kind: unit.Count, Place: calc.Quoted},
		{ID: "pulls_needed", Kind: unit.Count, Place: calc.Quoted},
		{ID: "apart", Kind: unit.Length, Place: calc.Quoted},
		{ID: "lift_last", Kind: unit.Load, Place: calc.Quoted, Quantity: "lift", From: []string{"tests"}},
		{ID: "at_last", Kind: unit.Pressure, Place: calc.Quoted, Quantity: "lift pressure", From: []string{"tests"}},
		{ID: "dead_shown", Kind: unit.Load, Place: calc.Quoted, Quantity: "dead weight", From: []string{"tests"}},
		{ID: "dead_share", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted},
		{ID: "share_least", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted, Quantity: "dead share, at least", From: []string{"tests"}},
		{ID: "share_most", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted, Quantity: "dead share, at most", From: []string{"tests"}},
	},
	Verdicts: []calc.Verdict{
		{Key: "falls", Head: "More pressure lifted no more",
			Sentence: "Along these pulls more pressure did not lift more: something else changed between them, so they show nothing of pressure."},
		{Key: "not-a-line", Head: "Not on one line",
			Sentence: "The pulls lie further off one line than their scatter explains (chance {chi2_p}): something else changed between them, such as height, reach or oil, so no conclusion holds."},
		{Key: "dead-weight", Head: "Dead weight about {dead}",
			Sentence: "{dp_pct} more pressure lifted {gain_pct} more; the line shows that about {dead} of the push, most likely {dead_least:n} to {dead_most}, goes into arms and tool, felt at the load."},
		{Key: "odd", ID: "dead-weight", Head: "Flatter than can be",
			Sentence: "{dp_pct} more pressure lifted {gain_pct} more; by this line {above} would still be lifted with no pressure at all, which no loader does: look at height, reach and the gauge's zero."},
		{Key: "proportional", Head: "Fits “in proportion”",
			Sentence: "{dp_pct} more pressure lifted {gain_pct} more, which fits lift in proportion to pressure; a dead weight of up to {dead_most} fits as well, and this test can't tell them apart."},
	},
	Next: []calc.Next{
		{ID: "before-after", Text: "Before and after: how much is pressure?"},
		{ID: "gain", Text: "What would more pressure lift? With this line"},
	},
	Compute: computeLiftTest,
}
