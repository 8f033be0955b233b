package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/unit"
)

// picture draws both times from zero, with where slow begins.
func (r race) picture(in *calc.In, out *calc.Out) {
	c := &chart.Chart{
		ID: "picture", Title: "The time to raise it, from zero", Height: 170,
		Desc: out.Words("The pump should take {raise_time}; slow starts at {slow_from}."),
		X:    chart.Axis{Label: "time, s"}, Y: chart.Axis{Hide: true, Min: 0, Max: 2.8},
		Marks: []chart.Mark{&chart.Span{From: 0, To: r.should, Row: 2, Label: out.Words("the pump should take {raise_time}")}},
	}
	most := max(r.from, r.most)
	if in.Has("time") {
		most = max(most, r.seconds+r.err)
		c.Desc += out.Words(" It takes {time}.")
		c.Marks = append(c.Marks, &chart.Span{From: 0, To: r.seconds, Row: 1, Label: out.Words("it takes {time}"), Accent: true})
	}
	c.X.Max = 1.15 * most
	c.Marks = append(c.Marks,
		&chart.Band{On: chart.X, From: r.from, To: math.Inf(1), Hatch: true, Label: "slow"},
		&chart.Band{On: chart.X, From: r.least, To: r.most, Label: out.Words("±{flow_err}")},
	)
	out.Picture(c)
}

// readingPicture draws what the reading can mean against the manual's lowest.
func readingPicture(in *calc.In, out *calc.Out) {
	p := func(si float64) float64 { return in.Shown(unit.Pressure, si) }
	now, low, a := in.SI("pressure"), in.SI("low"), in.SI("gauge_err")
	room := 0.4 * max(a, math.Abs(low-now), 0.005*low)
	out.Picture(&chart.Chart{
		ID: "picture-reading", Title: "The reading against the manual's lowest", Height: 120,
		Desc: out.Words("The gauge shows {pressure} and is good to ±{gauge_err}; the manual's lowest is {low}."),
		X:    chart.Axis{Label: "pressure, " + unit.Pressure.Shown(in.System()).Name, Min: p(min(now-a, low) - room), Max: p(max(now+a, low) + 2*room)},
		Y:    chart.Axis{Hide: true, Min: 0, Max: 2},
		Marks: []chart.Mark{
			&chart.Span{From: p(now - a), To: p(now + a), Row: 0.8, Label: out.Words("true pressure"), Accent: true},
			&chart.Point{X: p(now), Y: 0.8, Label: out.Words("reads {pressure}"), Accent: true},
			&chart.Band{On: chart.X, From: p(low), To: math.Inf(1), Label: out.Words("manual:\nfrom {low}")},
		},
	})
}

func (r race) working(in *calc.In, out *calc.Out, held string) {
	const gearPump = "Esposito, Fluid Power with Applications, Ex. 5-1"
	if !in.Has("rated_flow") {
		out.Step("flow = displacement × turns of the pump × what arrives", "{displacement} × {rpm} × {ratio} × {eta_v} = {flow}", gearPump)
	}
	out.Step("oil = cylinders × π·bore²/4 × stroke", "{count} × π·({bore})²/4 × {stroke} = {raise_volume}", "Geometry")
	out.Step("time = oil ÷ flow", "{raise_volume} ÷ {flow} = {raise_time}; slow from {slow_from}", "The same")
	if in.Has("time") {
		out.Step("flow that the time shows = oil ÷ time", "{raise_volume} ÷ {time} = {flow_seen}", "The same")
		if !in.Has("rated_flow") {
			out.Step("what arrives = that ÷ (displacement × turns of the pump)", "{flow_seen} ÷ {pump_turns} = {eta_seen}", gearPump)
		}
	}
	if in.Has("pressure") && in.Has("low") {
		numbers := "({low} − {pressure} + {gauge_err}) ÷ (2 × {gauge_err}) → {p_weak}"
		if in.SI("gauge_err") == 0 {
			numbers = "{pressure} against {low}, the gauge taken as exact: {p_weak}"
		}
		out.Step("chance of truly low = (lowest − reading + a) ÷ 2a, from 0 to 1", numbers, "JCGM 106:2012, clause 7; a stated limit is rectangular (JCGM 100:2008, 4.3.7)")
	}
	if held == "" {
		return
	}
	p := "{" + held + "}"
	out.Step("power in the oil = pressure × flow", p+" × {flow} = {power}", "Esposito, Fluid Power with Applications, Ex. 8-2; the pump's losses come on top")
	out.Step("once through the relief = pressure ÷ (density × heat capacity)", p+" ÷ ({density} × {heat}) = {pass_rise}", "Esposito, Fluid Power with Applications, Ex. 11-2")
	if in.Has("tank") {
		out.Step("the tank = power ÷ (density × heat capacity × oil in the tank)", "{power} ÷ ({density} × {heat} × {tank}) = {tank_rate}", "Conservation of energy, nothing given off")
	}
}
