package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/unit"
)

const (
	thePump   = "The pump"
	theRams   = "The lift cylinders"
	theHeat   = "Engine and oil"
	theLimits = "How sure, and what counts as slow"
)

// flow says whether a loader is slow or weak, which are two different things:
// the pump's flow makes it fast, the relief's pressure makes it strong.
var flow = &calc.Worksheet{
	ID:    "flow",
	Title: "Slow or weak?",
	Menu:  "Slow or weak",
	Reply: calc.Reply{
		About: "On slow and weak, which are two things:",
		How:   "The cylinders take {raise_volume}; at {flow} that is {raise_time}.",
		After: "Flow makes a loader fast, pressure makes it strong, and neither mends the other.",
	},
	Fields: []calc.Field{
		{ID: "time", Label: "Time to raise it all the way", Noun: "time", Kind: unit.Time, Example: "3.8 s", Empty: "not measured",
			Range: calc.Range{Min: "0.2 s", Max: "10 min"},
			Hint:  "Empty tool, warm oil, rated engine speed, lever all the way: from the ground to the end of the stroke."},
		{ID: "pressure", Label: "Gauge shows", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi",
			Range: calc.Pressures, Quantity: "pressure now", Empty: "not read",
			Hint: "With the cylinders held at the end of their stroke for seconds, oil warm, engine at rated speed."},
		{ID: "low", Label: "Manual: lowest relief pressure", Noun: "lowest pressure", Kind: unit.Pressure, Example: "2,680 psi",
			Range: calc.Pressures, Quantity: "manual lowest", Empty: "not known", Hint: "The lower end of the range in the service manual."},
		{ID: "gauge_err", Label: "Gauge good to ±", Noun: "gauge limit", Kind: unit.Pressure, Example: "80 psi",
			Range: calc.FromZero, Quantity: "gauge limit",
			Hint: "How far the gauge may be off: its class in percent of the dial's highest number. Nothing printed: take 3 % of that number (common practice, no source)."},

		{ID: "displacement", Label: "Pump moves in a turn", Noun: "displacement", Kind: unit.Displacement, Example: "0.73 in³/rev", Group: thePump,
			Range: calc.Range{Min: "0 cm³/rev", Max: "500 cm³/rev", Above: true}, Hint: "Its displacement, from the parts book or the pump's mark."},
		{ID: "rpm", Label: "Engine turns", Noun: "engine speed", Kind: unit.Rotation, Example: "2,500 rpm", Group: thePump, Quantity: "engine speed",
			Range: calc.Range{Min: "100 rpm", Max: "6000 rpm"}, Hint: "While the time is taken."},
		{ID: "ratio", Label: "Pump turns for one of the engine", Noun: "drive ratio", Kind: unit.Number, Example: "1", Group: thePump,
			Range: calc.Range{Min: "0.1", Max: "10"}, Hint: "1 where the pump sits on the engine's shaft or a gear of the same size."},
		{ID: "eta_v", Label: "Part of that which arrives", Noun: "pump's efficiency", Kind: unit.Percent, Example: "90 %", Usual: true, Group: thePump,
			Range: calc.Range{Min: "30 %", Max: "100 %"}, Hint: "Volumetric efficiency: some oil slips back inside. A sound gear pump 85 to 95 % (common practice, no source)."},
		{ID: "rated_flow", Label: "Or the pump's flow as rated", Noun: "rated flow", Kind: unit.Flow, Group: thePump,
			Range: flows, Empty: "not given", Hint: "At this engine speed. It wins over the four above."},

		with(inGroup(boreField, theRams), "1.75 in"),
		with(inGroup(rodField, theRams), "1 in"),
		with(inGroup(countField, theRams), "2"),
		with(inGroup(strokeField, theRams), "20.5 in"),

		{ID: "engine", Label: "Engine's power", Noun: "engine", Kind: unit.Power, Example: "45 hp", Group: theHeat,
			Range: calc.Range{Min: "0 kW", Max: "500 kW", Above: true}, Empty: "not known", Hint: "As rated."},
		{ID: "tank", Label: "Oil in the tank", Noun: "oil in the tank", Kind: unit.Capacity, Example: "6 gal", Group: theHeat,
			Range: calc.Range{Min: "0 L", Max: "1000 L", Above: true}, Empty: "not known", Hint: "What the circuit draws from, often the rear housing."},
		{ID: "rise", Label: "Oil may get hotter by", Noun: "rise allowed", Kind: unit.TemperatureRise, Example: "36 °F", Usual: true, Group: theHeat,
			Range: calc.Range{Min: "1 °C", Max: "100 °C"}, Hint: "To see how soon all the oil is that much hotter. It is no leave to hold it so long: the valve gets hot long before."},
		{ID: "density", Label: "Oil's density", Noun: "density of the oil", Kind: unit.Density, Example: "870 kg/m³", Usual: true, Group: theHeat,
			Range: calc.Range{Min: "500 kg/m³", Max: "1500 kg/m³"}, Hint: "Mineral hydraulic oils differ little."},
		{ID: "heat", Label: "Oil's heat capacity", Noun: "heat capacity of the oil", Kind: unit.HeatCapacity, Example: "1.9 kJ/kg K", Usual: true, Group: theHeat,
			Range: calc.Range{Min: "1 kJ/kg K", Max: "5 kJ/kg K"}, Hint: "Mineral hydraulic oils differ little."},

		{ID: "time_err", Label: "Time good to ±", Noun: "doubt of the time", Kind: unit.Time, Example: "0.3 s", Usual: true, Group: theLimits,
			Range: calc.Range{Min: "0 s", Max: "60 s"}, Hint: "A hand on a stopwatch, start and stop together."},
		{ID: "flow_err", Label: "Flow good to ±", Noun: "doubt of the flow", Kind: unit.Percent, Example: "8 %", Usual: true, Group: theLimits,
			Range: calc.Range{Min: "0 %", Max: "50 %"}, Hint: "What is not known of displacement, speed and slip together."},
		{ID: "slow_at", Label: "Slow means longer by", Noun: "what counts as slow", Kind: unit.Percent, Example: "25 %", Usual: true, Group: theLimits,
			Range: calc.Range{Min: "1 %", Max: "300 %"}, Hint: "Longer than the pump's flow would take. A quarter is a choice of ours, no source."},
	},
	Figures: []calc.Figure{
		{ID: "raise_time", Label: "The pump should take", Kind: unit.Time, Round: calc.Two, Against: []string{"time"}},
		{ID: "flow", Label: "Pump delivers", Kind: unit.Flow, Round: calc.Two, Quantity: "pump flow", From: []string{"displacement", "rpm", "ratio", "eta_v", "rated_flow"}},
		{ID: "flow_seen", Label: "Flow that the time shows", Kind: unit.Flow, Round: calc.Two},
		{ID: "eta_seen", Label: "Part of the pump's turn that arrives", Kind: unit.Percent, Round: calc.Two, Against: []string{"100 %"}},
		{ID: "p_weak", Label: "Chance that it is truly low", Kind: unit.Percent, Round: calc.Chance, Against: []string{"95 %", "5 %"}},
		{ID: "power", Label: "Power in the oil at relief", Kind: unit.Power, Round: calc.Two},
		{ID: "engine_share", Label: "Of the engine's power, at least", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "pass_rise", Label: "Oil gets hotter each time through the relief", Kind: unit.TemperatureRise, Round: calc.Two, Place: calc.More},
		{ID: "tank_rate", Label: "The whole tank gets hotter by", Kind: unit.TemperatureRate, Round: calc.Two, Place: calc.More},
		{ID: "hold", Label: "Until all of it is hotter by the rise entered", Kind: unit.Time, Round: calc.Two, Place: calc.More},
		{ID: "raise_volume", Label: "Oil to raise it all the way", Kind: unit.Volume, Place: calc.More},
		{ID: "lower_time", Label: "The pump should take, powered down", Kind: unit.Time, Round: calc.Two, Place: calc.More},
		{ID: "slow_from", Label: "Slow from", Kind: unit.Time, Round: calc.Two, Place: calc.More, Against: []string{"time"}},

		{ID: "shortfall", Kind: unit.Pressure, Place: calc.Quoted},
		{ID: "pump_turns", Kind: unit.Flow, Place: calc.Quoted},
		{ID: "speed_words", Round: calc.Words, Place: calc.Quoted},
		{ID: "speed_head", Round: calc.Words, Place: calc.Quoted},
		{ID: "weak_words", Round: calc.Words, Place: calc.Quoted},
		{ID: "weak_head", Round: calc.Words, Place: calc.Quoted},
	},
	Verdicts: []calc.Verdict{
		{Key: "both", Head: "Slow and weak", Sentence: slowWeak},
		{Key: "slow", Head: "Slow, not weak", Sentence: slowWeak},
		{Key: "weak", Head: "Weak, not slow", Sentence: slowWeak},
		{Key: "neither", Head: "Neither slow nor weak", Sentence: slowWeak},
		{Key: "slow-only", ID: "slow", Head: "Slow; {weak_head}", Sentence: slowWeak},
		{Key: "weak-only", ID: "weak", Head: "Weak; {speed_head}", Sentence: slowWeak},
		{Key: "not-slow", ID: "undecided", Head: "Not slow; {weak_head}", Sentence: slowWeak},
		{Key: "not-weak", ID: "undecided", Head: "Not weak; {speed_head}", Sentence: slowWeak},
		{Key: "unclear", ID: "undecided", Head: "Can't tell yet", Sentence: slowWeak},
	},
	Next: []calc.Next{
		{ID: "reading", Text: "What does the gauge prove? Is it really low?"},
		{ID: "gain", Text: "What would more pressure lift?"},
		{ID: "cylinder", Text: "What does a cylinder push and pull?"},
		{ID: "loader", Text: "What does the loader lift, and where?"},
		{ID: "short", Text: "Is my relief pressure low at all?"},
	},
	Compute: computeFlow,
}

const slowWeak = "{speed_words}; {weak_words}."

// inGroup is a shared field in a part of the form.
func inGroup(f calc.Field, group string) calc.Field {
	f.Group = group
	return f
}
