package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/unit"
)

// ratings says which part of the machine is good for the least pressure: by what
// is marked on it, or by what its metal bears. It judges what is entered and
// nothing else, and the manual's limit goes before every part.
var ratings = &calc.Worksheet{
	ID:    "ratings",
	Title: "What gives first?",
	Menu:  "What gives first",
	Reply: calc.Reply{
		About: "On what gives first at {target}:",
		How:   "Each part's mark is held against the pressure; a tube's wall, a rod and a pin are worked out from their measures.",
		After: "A strong part is no reason to pass the manual's limit.",
	},
	Fields:   ratingsFields,
	Figures:  ratingsFigures,
	Verdicts: ratingsVerdicts,
	Next: []calc.Next{
		{ID: "gain", Text: "What would more pressure lift?"},
		{ID: "shim", Text: "How much shim, and where to stop?"},
	},
	Compute: computeRatings,
}

// Groups of the form.
const (
	wallGroup = "The wall of a steel tube"
	rodGroup  = "The cylinder's rod: does it buckle?"
	pinGroup  = "The cylinder's pin"
)

// noMark says in a field of marks that it is empty.
const noMark = "no mark"

var ratingsFields = []calc.Field{
	{ID: "pressure", Label: "Gauge shows now", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi",
		Range: calc.Pressures, Quantity: "pressure now",
		Hint: "The relief pressure as read: oil warm, rated engine speed, the cylinder held at the end of its stroke for seconds."},
	{ID: "target", Label: "If it were set to", Noun: "target", Kind: unit.Pressure, Example: "2,735 psi",
		Range: calc.Pressures, Quantity: "target pressure",
		Hint: "The pressure somebody wants to set. Not above the manual's highest."},
	{ID: "limit", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
		Range: calc.Pressures, Quantity: "manual highest", Empty: "not known",
		Hint: "The upper end of the range in the service manual. It goes before every mark: strong parts are no reason to pass it."},
	{ID: "pump", Label: "Pump: marked", Noun: "pump", Kind: unit.Pressure, Example: "3,000 psi",
		Range: calc.Pressures, Empty: noMark,
		Hint: "On the pump's plate or in its maker's sheet: the highest pressure it may run at all the time, not the peak."},
	{ID: "valve", Label: "Control valve: marked", Noun: "control valve", Kind: unit.Pressure, Example: "3,000 psi",
		Range: calc.Pressures, Empty: noMark,
		Hint: "On the plate or cast into the body, or in the maker's sheet for the number on it."},
	{ID: "hose", Label: "Hose: marked", Noun: "hose", Kind: unit.Pressure, Example: "3,250 psi",
		Range: calc.Pressures, Empty: noMark,
		Hint: "Printed along it: the working pressure, WP. Enter the lowest of all hoses that the pump feeds; suction and return hoses don't see this pressure."},
	{ID: "fitting", Label: "Hose fittings: marked", Noun: "hose fittings", Kind: unit.Pressure, Example: "4,000 psi",
		Range: calc.Pressures, Empty: noMark,
		Hint: "In the maker's sheet for the mark on the shell, mostly not on the fitting itself. A hose with its fittings is good for the lower of the two."},
	{ID: "tube", Label: "Steel tube: marked", Noun: "tube", Kind: unit.Pressure,
		Range: calc.Pressures, Empty: noMark,
		Hint: "Few are marked. Without a mark its wall can be worked out below."},
	{ID: "cylinder", Label: "Cylinder: marked", Noun: "cylinder", Kind: unit.Pressure, Example: "3,000 psi",
		Range: calc.Pressures, Empty: noMark,
		Hint: "Stamped on the barrel or on a sticker, or in the maker's sheet. Enter the lowest of all cylinders in the circuit."},
	{ID: "filter", Label: "Filter in the pressure line: marked", Noun: "filter", Kind: unit.Pressure,
		Range: calc.Pressures, Empty: noMark,
		Hint: "Only one between the pump and the valve. A suction or return filter has a far lower mark and sees none of this pressure: leave it out."},
	{ID: "other", Label: "Anything else: marked", Noun: "other part", Kind: unit.Pressure,
		Range: calc.Pressures, Empty: noMark,
		Hint: "A coupler, a diverter, a grapple's valve: the lowest mark among what else is in the circuit."},

	{ID: "tube_od", Label: "Tube: outside diameter", Noun: "tube's outside diameter", Kind: unit.Length, Example: "0.5 in", Group: wallGroup,
		Range: calc.Lengths, Empty: notMeasured,
		Hint: "Measured with a caliper on a straight, clean piece. A cylinder's barrel can be judged the same way."},
	{ID: "tube_wall", Label: "Tube: wall", Noun: "tube's wall", Kind: unit.Thickness, Example: "0.065 in", Group: wallGroup,
		Range: calc.Thickness, Empty: notMeasured,
		Hint: "From its paper, or half of the outside less the inside at a cut end."},
	{ID: "tube_strength", Label: "Tube: tensile strength", Noun: "tube's strength", Kind: unit.Stress, Example: "45,000 psi", Group: wallGroup,
		Range: calc.Range{Min: "10 MPa", Max: "2500 MPa"}, Empty: "not known",
		Hint: "From the tube's own paper. Without it the wall can't be judged; this page supplies none."},
	{ID: "factor", Label: "Tube: factor", Noun: "tube's factor", Kind: unit.Number, Example: "4", Group: wallGroup, Usual: true,
		Range: calc.Range{Min: "1", Max: "20"},
		Hint:  "4 to 1 is the usual for steel tube (SAE J1065, read)."},

	{ID: "bore", Label: "Cylinder: bore", Noun: "bore", Kind: unit.Length, Example: "1.75 in", Group: rodGroup,
		Range: calc.Lengths, Empty: notMeasured, Quantity: "cylinder bore",
		Hint: "Inside diameter of the barrel, from the parts list or a caliper."},
	{ID: "rod", Label: "Cylinder: rod diameter", Noun: "rod", Kind: unit.Length, Example: "1 in", Group: rodGroup,
		Range: calc.Lengths, Empty: notMeasured, Quantity: "cylinder rod",
		Hint: "Measured with a caliper on the bright part."},
	{ID: "tube_outside", Label: "Barrel: outside diameter", Noun: "barrel's outside diameter", Kind: unit.Length, Example: "2.25 in", Group: rodGroup,
		Range: calc.Lengths, Empty: notMeasured,
		Hint: "Measured with a caliper where there is no weld or port."},
	{ID: "closed", Label: "Pin to pin, closed", Noun: "closed length", Kind: unit.Length, Example: "32.9 in", Group: rodGroup,
		Range: calc.Lengths, Empty: notMeasured, Quantity: "cylinder closed",
		Hint: "Centre to centre, the rod all the way in."},
	{ID: "stroke", Label: "Stroke", Noun: "stroke", Kind: unit.Length, Example: "20.5 in", Group: rodGroup,
		Range: calc.Lengths, Empty: notMeasured, Quantity: "cylinder stroke",
		Hint: "Pin to pin pushed out less pin to pin closed."},
	{ID: "gland", Label: "Rod still showing, closed", Noun: "rod showing when closed", Kind: unit.Length, Example: "1.5 in", Group: rodGroup,
		Range: calc.Lengths, Empty: notMeasured,
		Hint: "From the end of the barrel to the centre of the rod's pin, the rod all the way in. Empty: twice the rod's diameter is taken."},
	{ID: "buckle_factor", Label: "Factor on buckling", Noun: "buckling factor", Kind: unit.Number, Example: "1.5", Group: rodGroup, Usual: true,
		Range: calc.Range{Min: "1", Max: "20"},
		Hint:  "From the cylinder's maker. 1.5 is ours, no source; makers ask for more where they count a plain rod over the whole length."},

	{ID: "pin_d", Label: "Pin diameter", Noun: "pin", Kind: unit.Length, Example: "1 in", Group: pinGroup,
		Range: calc.Lengths, Empty: notMeasured,
		Hint: "The thinnest of the pins at either end. The bore above is needed too."},
	{ID: "pin_width", Label: "Pin: width of the eye on it", Noun: "eye's width", Kind: unit.Length, Example: "1.5 in", Group: pinGroup,
		Range: calc.Lengths, Empty: notMeasured,
		Hint: "How much of the pin the cylinder's eye bears on. Empty: only shear is judged."},
	{ID: "pin_strength", Label: "Pin: yield strength", Noun: "pin's yield strength", Kind: unit.Stress, Example: "60,000 psi", Group: pinGroup,
		Range: calc.Range{Min: "10 MPa", Max: "2500 MPa"}, Empty: "not known",
		Hint: "Yield, not tensile, from the pin's own paper. In shear a steel yields at 0.58 of it."},
	{ID: "pin_factor", Label: "Pin: factor", Noun: "pin's factor", Kind: unit.Number, Example: "3", Group: pinGroup, Usual: true,
		Range: calc.Range{Min: "1", Max: "20"},
		Hint:  "From the maker. 3 is ours, no source: a pin is also bent and hit, and it wears."},

	{ID: "spike", Label: "Spikes: times the pressure", Noun: "spikes", Kind: unit.Number, Example: "1", Usual: true, More: true,
		Range: calc.Range{Min: "1", Max: "4"},
		Hint:  "1 counts none: a working-pressure mark already leaves room for ordinary surges. For ramming, or rough ground with a load up, try 1.25 (common practice, no source)."},
}
