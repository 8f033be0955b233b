package worksheets

import (
	"math"
	"strings"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/linkage"
	"plainlift/calc/unit"
)

// readLoader takes a loader from its fields.
func readLoader(in *calc.In) linkage.Loader {
	l := linkage.Loader{
		PivotH: in.SI("pivot_h"), BaseH: in.SI("base_h"), PivotBase: in.SI("pivot_base"), Boom: in.SI("boom"),
		PivotRod: in.SI("pivot_rod"), RodTip: in.SI("rod_tip"), RodAbove: in.Choice("rod_side") == "above",
		Bore: in.SI("bore"), Rod: in.SI("rod"), Count: in.SI("count"), Closed: in.SI("closed"), Stroke: in.SI("stroke"),
		Efficiency: in.SI("efficiency"),
		BoomW:      in.SI("boom_w"), BoomCG: in.SI("boom_cg"), ToolW: in.SI("tool_w"), ToolCG: in.SI("tool_cg"), LoadX: in.SI("load_x"),
		Level: in.Choice("level") == "yes",
	}
	if in.Choice("base_side") == "behind" {
		l.PivotBase = -l.PivotBase
	}
	if l.Level { // where on the forks it sits does not matter then
		l.ToolCG, l.LoadX = 0, 0
	}
	return l
}

// raised is a loader at the reader's height and pressures.
type raised struct {
	linkage.Loader
	arc               linkage.Arc
	spread            *linkage.Spread
	at                *linkage.SpreadPose
	low, high         float64 // of the bucket pin (m)
	height            float64
	now, then, back   float64 // pressures (Pa)
	limit             float64 // manual's highest (Pa), +Inf unknown
	lift, half, other float64 // at the two pressures (N), and the ± of the first
	bottom, top       float64 // lift at both ends of the arc (N)
}

func computeLoader(in *calc.In, out *calc.Out) {
	l := raised{
		Loader: readLoader(in), height: in.SI("height"),
		now: in.SI("pressure"), then: in.SI("compare"), back: in.SI("back"), limit: math.Inf(1),
	}
	if in.Has("limit") {
		l.limit = in.SI("limit")
	}
	l.arc = l.Loader.Arc()
	l.low, l.high = l.arc.Range()
	out.Set("h_min", l.low)
	if !l.possible(in, out) {
		l.entered(in, out)
		return
	}
	l.spread = l.Loader.Spread(linkage.Limits{
		Tape: in.SI("tape"), Efficiency: in.SI("efficiency_err"), Weight: in.SI("weight_err"), Pressure: in.SI("pressure_err"),
	})
	l.at = l.spread.At(l.height)
	l.figures(in, out)
	branch := liftingBranch(l.now, l.then, l.limit, l.lift)
	out.Verdict(branch)
	l.lines(in, out, branch)
	l.points(in, out)
	out.Picture(l.sideView(in, out, "The loader from the side, to scale"))
	l.curves(in, out)
	l.rests(in, out)
	l.working(in, out)
	out.Caution("limit", "low", "arm", "hold", "skin", "leaks", "technician")
}

// possible complains about what cannot be, and about a height out of reach.
func (l *raised) possible(in *calc.In, out *calc.Out) bool {
	p, ok := l.Check()
	switch {
	case !ok && p.Doubtful():
		out.Note(loaderFields[p.Measure], -1, "With these lengths the bucket pin goes under the ground: check the heights and this length.")
	case !ok:
		message := faults[p.Fault]
		if math.IsNaN(p.Limit) {
			message = "Check it against the others: together they make no loader"
		}
		out.Problem(loaderFields[p.Measure], strings.ReplaceAll(message, "{}", in.Text(unit.Length, p.Limit)))
		return false
	}
	out.SetDoubt("h_max", l.high, 0)
	if !(l.height >= l.low-1e-9 && l.height <= l.high+1e-9) {
		out.Problem("height", "The bucket pin goes from {h_min} to {h_max}; enter a height between")
		return false
	}
	l.height = min(max(l.height, l.low), l.high)
	if at := l.arc.At(l.height); !(at.LoadArm > 0) {
		out.Problem("load_x", "At this height the load would hang over the pivot or behind it")
		return false
	}
	return true
}

// figures sets the figures.
func (l *raised) figures(in *calc.In, out *calc.Out) {
	l.lift, l.other, l.half = l.at.Lift(l.now, l.back), l.at.Lift(l.then, l.back), l.at.HalfWidth(l.now, l.back)
	gain := l.other - l.lift
	lifts(out, "lift", l.lift, l.half)
	out.SetDoubt("lift_lo", max(l.lift-l.half, 0), l.half)
	out.SetDoubt("lift_hi", l.lift+l.half, l.half)
	lifts(out, "lift_compare", l.other, l.half)
	out.Set("lift_u", l.at.Budget(l.now, l.back).U())
	out.Set("gain", gain)
	out.Set("loss", -gain)
	out.Set("compare_at", l.then)
	dead := l.at.Dead(l.back)
	out.Set("dead", dead)
	setOr(out, "gain_pct", positive(gain, l.lift), takesAll)
	setOr(out, "dead_pct", positive(dead, l.lift), takesAll)
	b := l.at.Budget(0, l.back)
	deadHalf := 1.96 * b[:len(b)-1].U() // at no pressure its own doubt, the last, is not in it
	setOr(out, "share_least", positive(max(dead-deadHalf, 0), l.lift), takesAll)
	setOr(out, "share_most", positive(max(dead+deadHalf, 0), l.lift), takesAll)
	out.Set("slope", l.at.Slope())
	out.Set("arm", l.at.Arm)
	out.Set("reach", l.at.LoadArm)
	out.Set("length", l.at.Length)
	out.Set("angle", l.at.Angle)
	out.Set("raise_volume", l.RaiseVolume())
	area := math.Pi / 4 * l.Count * l.Efficiency
	out.Set("force", area*(l.now*l.Bore*l.Bore-l.back*(l.Bore*l.Bore-l.Rod*l.Rod)))
	level := l.Boom * math.Cos(l.at.Angle)
	out.Set("x_boom", l.BoomCG*math.Cos(l.at.Angle))
	out.Set("x_tool", level+l.ToolCG)

	bottom, top := l.spread.At(l.low), l.spread.At(l.high)
	l.bottom, l.top = bottom.Lift(l.now, l.back), top.Lift(l.now, l.back)
	lifts(out, "lift_low", l.bottom, bottom.HalfWidth(l.now, l.back))
	lifts(out, "lift_top", l.top, top.HalfWidth(l.now, l.back))
	out.Set("gain_top", top.Slope()*(l.then-l.now))
	l.means(out, gain)
	l.hangs(in, out)
}

// lifts sets a lift. What is not above 0 is a number for a program; nobody may
// read it as a load.
func lifts(out *calc.Out, id string, si, half float64) {
	if si > 0 {
		out.SetDoubt(id, si, half)
	} else {
		out.Text(id, number(si), "nothing")
	}
}

// positive returns x/of where of is above 0, else NaN.
func positive(x, of float64) float64 {
	if of > 0 {
		return x / of
	}
	return math.NaN()
}

// means sets what else would give the gain.
func (l *raised) means(out *calc.Out, gain float64) {
	// The load further out by as much as loses the gain: lift × reach stays.
	further := positive(l.at.LoadArm*gain, l.lift-gain)
	setOr(out, "further", further, "no place loses just that much")
	if !(gain > 0 && l.lift > 0) {
		for _, id := range []string{"closer", "lower", "lighter"} {
			out.None(id, "there is no gain to match")
		}
		return
	}
	m := l.arc.Means(l.now, l.back, l.height, gain)
	why := "not with so light a tool"
	setOr(out, "lighter", m.Lighter, why)
	why = "no lower height lifts that much"
	setOr(out, "lower", m.Lower, why)
	why = "does not matter on a level-keeping linkage"
	setOr(out, "closer", m.Closer, why)
}

// hangs sets what the lift and the top of the arc hang on most.
func (l *raised) hangs(in *calc.In, out *calc.Out) {
	b := l.at.Budget(l.now, l.back)
	main, most := 0, 0.0
	shares := b.Shares()
	for i, s := range shares {
		if s > most {
			main, most = i, s
		}
	}
	out.Set("hangs_share", most)
	field := loaderFields[linkage.Measure(main)]
	out.Text("hangs", field, in.Noun(field))
	top := l.spread.Top()
	m := linkage.Hangs(top)
	out.Text("top_hangs", loaderFields[m], in.Noun(loaderFields[m]))
	out.Set("top_move", math.Abs(top[m].Sens)*in.SI("tape"))
	out.SetDoubt("h_max", l.high, 1.96*top.U())
}

// lines say what else would do the same: the point of the page.
func (l *raised) lines(in *calc.In, out *calc.Out, branch string) {
	if branch == "none" {
		if l.other > 0 {
			out.Line("At {compare} it would lift {lift_compare}.")
		}
		return
	}
	if gain := l.other - l.lift; gain > 0 && l.lift > 0 {
		m := l.arc.Means(l.now, l.back, l.height, gain)
		var ways []string
		behind := m.Closer > l.LoadX // where no tool holds a load
		if m.Closer > 0 && !behind {
			ways = append(ways, "the load carried {closer} nearer")
		}
		if m.Lower > 0 {
			ways = append(ways, "the pin held {lower} lower")
		}
		if m.Lighter > 0 {
			ways = append(ways, "a tool {lighter} lighter")
		}
		if len(ways) > 0 {
			out.Line("The same {gain} without touching the pressure: " + strings.Join(ways, ", or ") + ".")
		} else {
			out.Line("At this height neither a lower pin nor a lighter tool gives the same {gain}.")
		}
		if behind && l.lift > 3*gain { // else it would be further than tools are long
			out.Line("A load carried about {further} further out loses about as much as the pressure gains.")
		}
	}
	arc := "From the bottom of the arc to the top it lifts {lift_low}, then {lift_top}"
	const much = 0.1 // of the greater; under it height is no more than what pressure does
	if math.Abs(l.bottom-l.top) > much*max(l.bottom, l.top) {
		arc += ": height decides more than a few percent of pressure"
	}
	out.Line(arc + ".")
	if !in.Has("limit") && l.then > l.now {
		out.Line(noEnd)
	}
}

func (l *raised) rests(in *calc.In, out *calc.Out) {
	b := l.at.Budget(l.now, l.back)
	if b.U() > 0 {
		out.Rest("Of all that was measured the lift hangs most on the {hangs}: {hangs_share} of the doubt.")
	}
	if in.SI("tape") > 0 {
		out.Rest("The top of the arc hangs most on the {top_hangs}: {tape} more or less there moves it by about {top_move}.")
	}
	out.Rest("The load is held, or just moves. Frame and tyres stand still, and nothing else gives way first: low down and far out the rear wheels often lift before the relief opens.")
	if l.Level {
		out.Rest("The linkage keeps the tool level, so the lift is the same wherever on the tool the load sits.")
	} else {
		out.Rest("Tool and arms move as one. Rolling the tool back brings the load nearer, and this lifts more.")
	}
	out.Rest("The gain is surer than the lift in pounds or kilograms: the weights are not in it, only the push, the lever arms and the difference of the two pressures.")
	l.budget(in, out, b)
}

// budget shows the sources that matter, and the others as one.
func (l *raised) budget(in *calc.In, out *calc.Out, b doubt.Budget) {
	const small = 0.02
	shares := b.Shares()
	var shown doubt.Budget
	var limits []string
	rest := 0.0
	for i, s := range b {
		if shares[i] < small {
			rest = math.Hypot(rest, s.Sens*s.U)
			continue
		}
		m := linkage.Measure(i)
		s.Name = in.Noun(loaderFields[m])
		limit := "±{tape}"
		switch m {
		case linkage.Efficiency:
			limit = "±{efficiency_err}"
		case linkage.BoomW, linkage.ToolW:
			limit = "±{weight_err}"
		case linkage.Pressure:
			limit = "±{pressure_err}"
		}
		shown, limits = append(shown, s), append(limits, limit)
	}
	if rest > 0 {
		shown, limits = append(shown, doubt.Source{Name: "all the others", U: rest, Sens: 1, DOF: math.Inf(1)}), append(limits, "each as stated")
	}
	out.Budget(unit.Load, shown, limits)
}

func (l *raised) working(in *calc.In, out *calc.Out) {
	const work = "Virtual work; force and load move a lever about the pivot (method: Meriam and Kraige, Statics, problem 7/27)"
	out.Step("angle of the arm: sin θ = (height − height of the pivot) ÷ pivot to bucket pin", "({height} − {pivot_h}) ÷ {boom}: θ = {angle}", "Trigonometry")
	out.Step("cylinder: ℓ² = a² + r² − 2·a·r·cos φ, with a and r from the pivot to its pins and φ the angle between", "ℓ = {length}", "Law of cosines")
	out.Step("its lever arm = a·r·sin φ ÷ ℓ", "{arm}", "The same, differentiated: dℓ/dθ")
	force := "{pressure}"
	if l.back > 0 {
		force = "({pressure} on the pistons − {back} on the rings round the rods)"
	}
	out.Step("push = cylinders × (pressure × piston area − rod-side pressure × ring area) × what gets past friction", "{count} × "+force+" on {bore} × {efficiency} = {force}", "Pascal's law")
	load := "{reach}"
	out.Step("lift = (push × lever arm − arms × their distance − tool × its distance) ÷ distance of the load, all level from the pivot",
		"({force} × {arm} − {boom_w} × {x_boom} − {tool_w} × {x_tool}) ÷ "+load+" = {lift}", work)
	out.Step("load for more pressure = push for each psi or bar × lever arm ÷ distance of the load", "{slope}: {gain} for {pressure} to {compare}", "The same")
	if l.at.Budget(l.now, l.back).U() > 0 {
		out.Step("doubt: u² = Σ (change of the lift for a standard uncertainty of each measurement)², each rectangular within its ±", "u = {lift_u}; 95 %: {lift_lo:n} to {lift_hi}",
			"JCGM 100:2008, 4.3.7 and 5.1; 1.96·u, but never more than all limits together")
	}
}
