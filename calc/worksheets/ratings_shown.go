package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/unit"
)

// ratingsPicture draws what each part is good for as a bar from zero, and the
// pressures as lines across all of them.
func ratingsPicture(in *calc.In, out *calc.Out, list []*rated, highest float64) {
	shown := unit.Pressure.Shown(in.System())
	spike := in.SI("spike")
	end := spike * highest
	c := &chart.Chart{
		ID: "picture", Title: "What each part is good for, from zero", Height: 90 + 34*float64(len(list)),
		Desc: out.Words("A bar from zero for each part. The gauge shows {pressure}; the target is {target}."),
		X:    chart.Axis{Label: "pressure, " + shown.Name},
		Y:    chart.Axis{Max: float64(len(list)) + 1.5, Hide: true},
		Marks: []chart.Mark{
			&chart.Rule{At: shown.FromSI(in.SI("pressure")), Label: out.Words("now {pressure:n}")},
			&chart.Rule{At: shown.FromSI(in.SI("target")), Label: out.Words("target {target:n}"), Stroke: chart.Dashed, Accent: true},
		},
	}
	if spike > 1 {
		c.Marks = append(c.Marks, &chart.Rule{At: shown.FromSI(end), Label: out.Words("spikes {peak:n}"), Stroke: chart.Dotted})
	}
	if in.Has("limit") {
		limit := in.SI("limit")
		end = max(end, limit)
		c.Marks = append(c.Marks, &chart.Band{From: shown.FromSI(limit), To: math.Inf(1), Hatch: true, Label: "over the\nmanual's limit"})
	}
	longest := 1.25 * end
	for i, j := range list {
		longest = max(longest, 1.1*j.allow)
		row := float64(len(list) - i)
		c.Marks = append(c.Marks,
			&chart.Span{To: shown.FromSI(j.allow), Row: row, Accent: j.allow < highest},
			&chart.Point{X: shown.FromSI(0.4 * end), Y: row + 0.45, Shape: chart.Bare, Label: out.Words(j.called + " {allow_" + j.id + ":n}")})
	}
	c.X.Max = shown.FromSI(min(longest, 1.6*end))
	out.Picture(c)
}

func ratingsRests(in *calc.In, out *calc.Out, list []*rated) {
	out.Rest("Marks are as you entered them; this site knows none. A mark counts for a part that is new and sound.")
	out.Rest("A working-pressure mark already has a factor in it that leaves room for ordinary surges: a hose must burst at no less than four times its mark (SAE J517, from memory). So the pressure is held against the mark as it is, and spikes only where you ask for them; that room is not there to be set into.")
	if among(list, "hose") {
		switch {
		case !in.Has("fitting"):
			out.Rest("The hose's fittings are taken to be as good as the hose. It is good for the lower of the two (SAE J517, clause 1; read).")
		case !in.Has("hose"):
			out.Rest("The hose is taken to be as good as its fittings. It is good for the lower of the two (SAE J517, clause 1; read).")
		default:
			out.Rest("A hose with its fittings is good for the lower of their marks (SAE J517, clause 1; read).")
		}
	}
	if among(list, "wall") {
		out.Rest("The tube is round, straight and even, without rust, dents or threads.")
	}
	if among(list, "rod") {
		out.Rest("The rod is pushed all the way out with the whole push of its cylinder, straight, centred, pinned at both ends. It is a column of two sections, {rod_length} of rod and {barrel_length} of barrel; the step is at the end of the barrel, and what the rod overlaps inside it is not counted. Steel of 200 GPa (29,000,000 psi) that yields at 250 MPa (36,000 psi), both on the low side; from memory.")
	}
	if among(list, "pin") {
		out.Rest("The pin carries the whole push of one cylinder, cut at two places, close in its eyes, so that it is not bent.")
	}
	out.Rest("What the gauge may be off is not in it: on a gauge that reads low, every part is nearer to its mark than shown.")
	out.Rest("The makers chose arms, welds and brackets for the manual's highest pressure. Nothing here can judge them.")
}

func ratingsWorking(in *calc.In, out *calc.Out, list []*rated) {
	for _, j := range list {
		source := "As marked"
		if j.factor != "" {
			source = "Worked out below"
		}
		out.Step(j.called+": to spare = good for ÷ pressure − 1", "{allow_"+j.id+"}: {now_"+j.id+"} at {pressure}, {target_"+j.id+"} at {target}", source)
	}
	if len(list) == 0 {
		out.Step("to spare = good for ÷ pressure − 1", "nothing is entered", "As marked")
	}
	if in.SI("spike") > 1 {
		out.Step("spike = times × the higher pressure", "{spike} × {highest} = {peak}", "Arithmetic; the factor is common practice, no source")
	}
	if among(list, "wall") {
		out.Step("p = σ·(D² − d²)/(D² + d²), σ = strength ÷ factor", "σ = {tube_strength} ÷ {factor} = {allowed_stress}; {tube_od} outside, {tube_wall} of wall: {allow_wall}",
			"Lamé's hoop stress at the bore (textbooks, from memory); 4 to 1 for steel tube by SAE J1065, 1.1 (read)")
		out.Step("as if thin: p = 2·t·σ/d; by von Mises √3·p·D²/(D² − d²)", "thin {thin}; at {allow_wall} von Mises' stress is {mises}",
			"For comparison. Esposito, Fluid Power with Applications, ch. 10 (read); follows from Lamé")
		if in.SI("tube_strength")/in.SI("factor") > (1+poisson)*in.SI("target") {
			out.Step("wall by the largest strain, Clavarino, ν = 0.27", "{target} needs {least_wall}; there is {tube_wall}",
				"For comparison. Bhandari, Design of Machine Elements, Ex. 22.4 (read)")
		}
	}
	if among(list, "rod") {
		out.Step("least P with k₁·cot(k₁·L₁) + k₂·cot(k₂·L₂) = 0, k = √(P/(E·I))",
			"rod {rod}, {rod_length} long; barrel {bore} to {tube_outside}, {barrel_length} long: P = {critical}",
			"Euler's column in two sections (textbook statics, from memory), right to every digit shown; over half the yield by Johnson's parabola (from memory)")
		out.Step("good for = P ÷ factor ÷ area of the bore", "{critical} ÷ {buckle_factor} ÷ area of {bore} = {allow_rod}; the push at {target} is {push}", "Force is pressure × area")
		out.Step("a plain rod over the whole length: π²·E·I/L²", "{plain}, far too severe; with the barrel it is as good as a plain rod of {acts_like}", "Euler (from memory); not used")
	}
	if among(list, "pin") {
		out.Step("τ = F/(2·π/4·d²) against yield ÷ √3 ÷ factor", "{shear} at {target} in {pin_d}, against {pin_strength} ÷ √3 ÷ {pin_factor}: {allow_pin}",
			"Double shear (textbook statics, from memory); shear yield by von Mises")
		if in.Has("pin_width") {
			out.Step("bearing: F/(d·b) against yield ÷ factor", "{bearing} at {target} on {pin_width}; the lower of the two counts", "Textbook statics (from memory)")
		}
	}
}
