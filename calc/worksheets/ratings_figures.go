package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/unit"
)

// ratingsFigures are the weakest part's, then each part's, then the rest.
var ratingsFigures = append(append(ratingsKeys, partFigures()...), ratingsRest...)

var ratingsKeys = []calc.Figure{
	{ID: "weakest", Label: "Weakest part entered", Round: calc.Words},
	{ID: "allow_weakest", Label: "It is good for", Kind: unit.Pressure, Against: []string{"pressure", "target", "limit", "peak"}},
	{ID: "margin_now", Label: "To spare now", Kind: unit.Percent, Round: calc.Two, Against: nothingSpare},
	{ID: "margin_target", Label: "To spare at the target", Kind: unit.Percent, Round: calc.Two, Against: nothingSpare},
}

// partFigures are, of each part, what it is good for and what is to spare.
func partFigures() []calc.Figure {
	list := make([]calc.Figure, 0, 3*len(parts))
	for i := range parts {
		p := &parts[i]
		spare := calc.Figure{ID: "now_" + p.id, Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted, Against: nothingSpare}
		list = append(list, calc.Figure{ID: "allow_" + p.id, Label: "Good for: " + p.name, Kind: unit.Pressure, Place: calc.More, Against: allPressures}, spare)
		spare.ID = "target_" + p.id
		list = append(list, spare)
	}
	return list
}

// What no rounding may cross: the pressures, and nothing to spare.
var allPressures, nothingSpare = []string{"pressure", "target", "limit"}, []string{"0 %"}

var ratingsRest = []calc.Figure{
	{ID: "critical", Label: "Load that buckles the rod", Kind: unit.Force, Place: calc.More},
	{ID: "push", Label: "Push of one cylinder at the target", Kind: unit.Force, Place: calc.More},
	{ID: "spare", Kind: unit.Percent, Round: calc.Two, Place: calc.Quoted, Against: nothingSpare},
	{ID: "peak", Kind: unit.Pressure, Place: calc.Quoted},
	{ID: "highest", Kind: unit.Pressure, Place: calc.Quoted},
	{ID: "judged", Round: calc.Words, Place: calc.Quoted},
	{ID: "not_judged", Round: calc.Words, Place: calc.Quoted},
	{ID: "thin", Kind: unit.Pressure, Place: calc.Quoted},
	{ID: "mises", Kind: unit.Stress, Place: calc.Quoted},
	{ID: "allowed_stress", Kind: unit.Stress, Place: calc.Quoted},
	{ID: "least_wall", Kind: unit.Thickness, Place: calc.Quoted},
	{ID: "rod_length", Kind: unit.Length, Place: calc.Quoted},
	{ID: "barrel_length", Kind: unit.Length, Place: calc.Quoted},
	{ID: "acts_like", Kind: unit.Length, Place: calc.Quoted},
	{ID: "plain", Kind: unit.Force, Place: calc.Quoted},
	{ID: "shear", Kind: unit.Stress, Place: calc.Quoted},
	{ID: "bearing", Kind: unit.Stress, Place: calc.Quoted},
}

var ratingsVerdicts = []calc.Verdict{
	{Key: "over-limit-now", Head: "Already above the limit",
		Sentence: "{pressure} already reads above the manual's {limit}; bring it down first, whatever the parts are marked."},
	{Key: "over-limit", Head: "Above the manual's limit",
		Sentence: "{target} is above the manual's {limit}: don't set it there, however strong the parts are."},
	{Key: "none", Head: "No part entered",
		Sentence: "Nothing is judged yet: enter the working pressure marked on each part that you can read."},
	{Key: "over-now", Head: "Past its mark now: {weakest}",
		Sentence: "The {weakest} is marked {allow_weakest} and the gauge shows {pressure}: have the pressure lowered, by a technician, before it works on."},
	{Key: "over-now-worked", ID: "over-now", Head: "Too much now: {weakest}",
		Sentence: "The {weakest} works out good for {allow_weakest} with the factor asked for, and the gauge shows {pressure}: raise nothing, and ask the maker or a technician before it works on."},
	{Key: "over-target", Head: "Target past its mark: {weakest}",
		Sentence: "The {weakest} is marked {allow_weakest}: don't set it to {target}."},
	{Key: "over-target-worked", ID: "over-target", Head: "Target too high: {weakest}",
		Sentence: "The {weakest} works out good for {allow_weakest} with the factor asked for: don't set it to {target}."},
	{Key: "yours", Head: "Enter your own parts",
		Sentence: "This says nothing of your machine yet: enter what its own parts are marked, and clear those that it does not have or that carry no mark."},
	{Key: "no-limit", Head: "What does the manual allow?",
		Sentence: "At {highest} nothing entered here is past what it is good for, but that is no limit to set by: enter the manual's highest pressure."},
	{Key: "spike", ID: "spike-only", Head: "Steady yes, spikes no: {weakest}",
		Sentence: "Steady, {highest} passes nothing entered here; with spikes of {spike} times that, {peak}, it passes the {allow_weakest} that the {weakest} is good for."},
	{Key: "holds", Head: "Weakest: {weakest}",
		Sentence: "At {highest} nothing entered here is past what it is good for; the {weakest} comes first, at {allow_weakest}, with {spare} to spare. That is no reason to pass the manual's {limit}."},
}
