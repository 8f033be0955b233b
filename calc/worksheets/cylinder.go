package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/hydraulic"
	"plainlift/calc/unit"
)

// The fields of a cylinder that several worksheets have.
var (
	boreField = calc.Field{ID: "bore", Label: "Bore", Noun: "bore", Kind: unit.Length, Range: diameters, Quantity: "cylinder bore",
		Hint: "The inside diameter of the tube, from the parts book or the cylinder's mark. Outside it measures more."}
	rodField = calc.Field{ID: "rod", Label: "Rod", Noun: "rod's diameter", Kind: unit.Length, Range: diameters, Quantity: "cylinder rod",
		Hint: "The diameter of the bright rod, measured across it."}
	countField = calc.Field{ID: "count", Label: "Cylinders side by side", Noun: "number of cylinders", Kind: unit.Count,
		Range: calc.Range{Min: "1", Max: "8"}, Quantity: "cylinder count", Hint: "Those that move together, fed by the same lines."}
	strokeField = calc.Field{ID: "stroke", Label: "Stroke", Noun: "stroke", Kind: unit.Length, Range: calc.Lengths, Tape: true, Quantity: "cylinder stroke",
		Hint: "How far the rod travels from all the way in to all the way out."}
)

// with is a shared field with its example on this worksheet.
func with(f calc.Field, example string) calc.Field {
	f.Example = example
	return f
}

// cylinder says what any cylinder on a circuit pushes and pulls, how fast, and
// what another pressure does to that.
var cylinder = &calc.Worksheet{
	ID:    "cylinder",
	Title: "What does a cylinder push and pull?",
	Menu:  "Any cylinder",
	Reply: calc.Reply{
		About: "For a cylinder of {bore} bore with a rod of {rod}:",
		How:   "Pressure times the area it acts on, with {efficiency} of that getting past friction.",
		After: "The weakest part's mark and the manual's limit come before any wish for more.",
	},
	Fields: []calc.Field{
		with(boreField, "3.5 in"),
		with(rodField, "1.75 in"),
		{ID: "pressure", Label: "Gauge shows", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi",
			Range: calc.Pressures, Quantity: "pressure now",
			Hint: "The pressure that reaches this cylinder at stall: the relief that governs its port, read there. A port can have a relief of its own."},
		{ID: "compare", Label: "If it were set to", Noun: "other pressure", Kind: unit.Pressure, Example: "2,735 psi",
			Range: calc.Pressures, Quantity: "target pressure", Hint: "Another pressure to compare with. Not above the manual's highest."},
		{ID: "limit", Label: "Manual: highest relief pressure", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi",
			Range: calc.Pressures, Quantity: "manual highest", Empty: "not known",
			Hint: "The lower of the tractor's limit and the implement's. Never set it above this."},
		{ID: "flow", Label: "Flow to it", Noun: "flow", Kind: unit.Flow, Example: "7.1 gpm", Range: flows, Quantity: "pump flow", Empty: "not known",
			Hint: "What the pump delivers at this engine speed. Without it there are no speeds and times."},
		with(strokeField, "22 in"),
		with(countField, "1"),
		{ID: "back", Label: "Pressure on the other side", Noun: "back pressure", Kind: unit.Pressure, Example: "0 psi", Usual: true, More: true,
			Range: calc.FromZero, Hint: "What the oil on its way back to the tank still holds against the piston while it moves. At stall nothing flows: 0."},
		{ID: "efficiency", Label: "Gets past friction", Noun: "efficiency", Kind: unit.Percent, Example: "95 %", Usual: true, More: true,
			Range: calc.Range{Min: "50 %", Max: "100 %"}, Quantity: "efficiency",
			Hint: "The part of the force that the seals leave: 90 to 98 % (common practice, no source)."},
	},
	Figures: []calc.Figure{
		{ID: "push", Label: "Pushes", Kind: unit.Force},
		{ID: "pull", Label: "Pulls", Kind: unit.Force},
		{ID: "push_gain", Label: "Pushes more at the other pressure", Kind: unit.Force, Round: calc.Two},
		{ID: "pull_gain", Label: "Pulls more at the other pressure", Kind: unit.Force, Round: calc.Two},
		{ID: "time_out", Label: "Time all the way out", Kind: unit.Time, Round: calc.Two},
		{ID: "time_in", Label: "Time all the way in", Kind: unit.Time, Round: calc.Two},
		{ID: "push_pct", Label: "More push, of the push now", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "pull_pct", Label: "More pull, of the pull now", Kind: unit.Percent, Round: calc.Two, Place: calc.More},
		{ID: "speed_out", Label: "Speed going out", Kind: unit.Speed, Round: calc.Two, Place: calc.More},
		{ID: "speed_in", Label: "Speed going in", Kind: unit.Speed, Round: calc.Two, Place: calc.More},
		{ID: "volume_out", Label: "Oil to push it all the way out", Kind: unit.Volume, Place: calc.More},
		{ID: "volume_in", Label: "Oil to pull it all the way in", Kind: unit.Volume, Place: calc.More},
		{ID: "push_slope", Label: "Push for each step of pressure", Kind: unit.LoadSlope, Round: calc.Two, Place: calc.More},
		{ID: "pull_slope", Label: "Pull for each step of pressure", Kind: unit.LoadSlope, Round: calc.Two, Place: calc.More},
		{ID: "blocked", Label: "Rod side, if oil can't leave there", Kind: unit.Pressure, Place: calc.More},
		{ID: "push_then", Kind: unit.Force, Place: calc.Quoted},
		{ID: "pull_then", Kind: unit.Force, Place: calc.Quoted},
		{ID: "push_loss", Kind: unit.Force, Round: calc.Two, Place: calc.Quoted},
		{ID: "pull_loss", Kind: unit.Force, Round: calc.Two, Place: calc.Quoted},
	},
	Verdicts: []calc.Verdict{
		{Key: "over-limit-now", Head: "Already above the limit",
			Sentence: "{pressure} already reads above the manual's {limit}; bring it down first. By arithmetic it pushes {push} and pulls {pull}."},
		{Key: "over-limit", Head: "Above the manual's limit",
			Sentence: "{compare} is above the manual's {limit}: don't set it there. At {pressure} it pushes {push} and pulls {pull}."},
		{Key: "none", Head: "The other side holds it",
			Sentence: "With {back} on the other side {pressure} does not move it both ways: it pushes {push} and pulls {pull}."},
		{Key: "equal", Head: "Pushes {push}, pulls {pull}",
			Sentence: "At {pressure} it pushes {push} and pulls {pull}; the two pressures are the same, so nothing changes."},
		{Key: "lower", Head: "Pushes {push}, pulls {pull}",
			Sentence: "At {pressure} it pushes {push} and pulls {pull}; at {compare} it pushes {push_loss} and pulls {pull_loss} less, and is no slower."},
		{Key: "more", Head: "Pushes {push}, pulls {pull}",
			Sentence: "At {pressure} it pushes {push} and pulls {pull}; at {compare} it pushes {push_gain} more ({push_pct}) and pulls {pull_gain} more, and is no faster."},
	},
	Next: []calc.Next{
		{ID: "ratings", Text: "What gives first? With this cylinder"},
		{ID: "flow", Text: "Slow or weak? What the pump delivers"},
		{ID: "gain", Text: "What would more pressure lift?"},
		{ID: "short", Text: "Is my relief pressure low at all?"},
	},
	Compute: computeCylinder,
}

// flows is what a field of flow accepts.
var flows = calc.Range{Min: "0 L/min", Max: "1000 L/min", Above: true}

// readCylinder takes a cylinder from its fields and complains about one that
// cannot be.
func readCylinder(in *calc.In, out *calc.Out) (c hydraulic.Cylinder, ok bool) {
	c = hydraulic.Cylinder{Bore: in.SI("bore"), Rod: in.SI("rod"), Stroke: in.SI("stroke"), Count: in.SI("count")}
	if c.Rod >= c.Bore {
		out.Problem("rod", "The rod must be thinner than the bore, {bore}")
		return c, false
	}
	return c, true
}

func computeCylinder(in *calc.In, out *calc.Out) {
	c, ok := readCylinder(in, out)
	if !ok {
		return
	}
	now, then, back, part := in.SI("pressure"), in.SI("compare"), in.SI("back"), in.SI("efficiency")
	limit := math.Inf(1)
	if in.Has("limit") {
		limit = in.SI("limit")
	}
	// What the other side holds is no force the other way: the lever decides that.
	at := func(p float64) (push, pull float64) {
		return part * max(c.Push(p, back), 0), part * max(c.Pull(p, back), 0)
	}
	push, pull := at(now)
	pushThen, pullThen := at(then)
	pushGain, pullGain := pushThen-push, pullThen-pull
	for id, si := range map[string]float64{
		"push": push, "pull": pull, "push_gain": pushGain, "pull_gain": pullGain, "push_loss": -pushGain, "pull_loss": -pullGain,
		"push_then": pushThen, "pull_then": pullThen, "push_slope": part * c.CapArea(), "pull_slope": part * c.RodArea(),
		"volume_out": c.OutVolume(), "volume_in": c.InVolume(), "blocked": c.Blocked(now),
	} {
		out.Set(id, si)
	}
	setOr(out, "push_pct", positive(pushGain, push), "it pushes nothing now")
	setOr(out, "pull_pct", positive(pullGain, pull), "it pulls nothing now")
	flow := in.SI("flow")
	for id, si := range map[string]float64{
		"time_out": hydraulic.Time(c.OutVolume(), flow), "time_in": hydraulic.Time(c.InVolume(), flow),
		"speed_out": hydraulic.Speed(flow, c.CapArea()), "speed_in": hydraulic.Speed(flow, c.RodArea()),
	} {
		setOr(out, id, si, "needs the flow")
	}

	branch := liftingBranch(now, then, limit, min(push, pull))
	out.Verdict(branch)
	switch {
	case push == 0 || pull == 0: // then a flow does not come about
	case in.Has("flow"):
		out.Line("With {flow} it takes {time_out} out and {time_in} in, at either pressure: speed is flow, not pressure.")
	default:
		out.Line("Pressure does not change how fast it moves; enter the flow to see that.")
	}
	out.Line("If oil can't leave the rod side, by a blocked line or a coupling that is not quite in, {pressure} on the piston makes {blocked} there.")
	if branch == "more" && !in.Has("limit") {
		out.Line(noEnd)
	}
	cylinderPicture(in, out, []force{{"push now {push}", push, false}, {"push then {push_then}", pushThen, true}, {"pull now {pull}", pull, false}, {"pull then {pull_then}", pullThen, true}}, then <= limit)
	cylinderWorking(in, out, back)
	out.Rest("The force at stall, or moving slowly, with {efficiency} of it getting past friction, which takes the same part both ways.")
	out.Rest("The pull is less than the push because the rod takes room on that side.")
	if back > 0 {
		out.Rest("With {back} on the other side, one percent more pressure gives more than one percent more force; with nothing there it gives just that.")
	}
	out.Rest("The rod side of a blocked cylinder is reckoned with a rod that carries nothing: that is the most. A load that it pushes, and friction, take from it.")
	out.Caution("limit", "coupling")
	if branch == "over-limit-now" {
		out.Caution("turn")
	}
	out.Caution("hold", "skin", "leaks", "arm", "technician")
}

// force is a bar of the picture; what must not be set is not drawn.
type force struct {
	label string
	si    float64
	then  bool
}

func cylinderPicture(in *calc.In, out *calc.Out, forces []force, drawThen bool) {
	u := unit.Force.Shown(in.System())
	c := &chart.Chart{
		ID: "picture", Title: "Push and pull, from zero", Height: 200,
		Desc: out.Words("Forces from zero, to one scale: it pushes {push} and pulls {pull} at {pressure}."),
		X:    chart.Axis{Label: "force, " + u.Name}, Y: chart.Axis{Hide: true, Min: 0, Max: float64(len(forces)) + 0.7},
	}
	most := 0.0
	for i, f := range forces {
		if f.then && !drawThen {
			continue
		}
		most = max(most, f.si)
		c.Marks = append(c.Marks, &chart.Span{From: 0, To: u.FromSI(f.si), Row: float64(len(forces) - i), Label: out.Words(f.label), Accent: f.then})
	}
	c.X.Max = u.FromSI(1.08 * most)
	out.Picture(c)
}

func cylinderWorking(in *calc.In, out *calc.Out, back float64) {
	const pascal = "Equilibrium of the piston (Esposito, Fluid Power with Applications, Ex. 9-2)"
	less, more := "", ""
	if back > 0 {
		less, more = " − {back} × π·(({bore})² − ({rod})²)/4", " − {back} × π·({bore})²/4"
	}
	out.Step("push = cylinders × (pressure × π·bore²/4 − other side × π·(bore² − rod²)/4) × what gets past friction", "{count} × ({pressure} × π·({bore})²/4"+less+") × {efficiency} = {push}", pascal)
	out.Step("pull = cylinders × (pressure × π·(bore² − rod²)/4 − other side × π·bore²/4) × what gets past friction", "{count} × ({pressure} × π·(({bore})² − ({rod})²)/4"+more+") × {efficiency} = {pull}", pascal)
	out.Step("oil = cylinders × area × stroke", "out {volume_out}, in {volume_in}", "Geometry")
	if in.Has("flow") {
		out.Step("time = oil ÷ flow", "{volume_out} ÷ {flow} = {time_out}; {volume_in} ÷ {flow} = {time_in}", "Oil is hardly squeezed: 1 to 2 % at working pressure (from memory)")
	}
	out.Step("rod side, blocked = pressure × bore² ÷ (bore² − rod²)", "{pressure} × ({bore})² ÷ (({bore})² − ({rod})²) = {blocked}", pascal)
}
