package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/hydraulic"
)

// finding is what is known of one of the two complaints.
type finding int

const (
	notAsked finding = iota // what it takes is not entered
	open                    // it could be either
	yes
	no
)

// race is a measured time against what the pump can do.
type race struct {
	volume, flow        float64 // m³ and m³/s
	seconds, err        float64 // measured and its ±
	should, least, most float64 // what the flow makes of the volume, and between what
	from                float64 // slow from here on
}

func computeFlow(in *calc.In, out *calc.Out) {
	c, ok := readCylinder(in, out)
	if !ok {
		return
	}
	pump := hydraulic.Pump{Displacement: in.SI("displacement"), Turns: in.SI("rpm") * in.SI("ratio"), Efficiency: in.SI("eta_v")}
	r := race{volume: c.OutVolume(), flow: pump.Flow(), seconds: in.SI("time"), err: in.SI("time_err")}
	if in.Has("rated_flow") {
		for _, id := range []string{"displacement", "rpm", "ratio", "eta_v"} {
			out.Unused(id)
		}
		r.flow = in.SI("rated_flow")
	}
	if r.err >= r.seconds {
		out.Problem("time_err", "Must be less than the time itself, {time}")
		return
	}
	r.should = hydraulic.Time(r.volume, r.flow)
	r.least, r.most = r.should/(1+in.SI("flow_err")), r.should/(1-in.SI("flow_err"))
	r.from = r.should * (1 + in.SI("slow_at"))

	out.Set("flow", r.flow)
	out.Set("raise_volume", r.volume)
	out.Set("raise_time", r.should)
	out.Set("slow_from", r.from)
	seen := hydraulic.Time(r.volume, r.seconds) // volume over time, NaN without one
	setOr(out, "flow_seen", seen, "needs a measured time")
	eta := pump.Seen(seen)
	why := "needs a measured time"
	if in.Has("rated_flow") {
		eta, why = math.NaN(), "a rated flow was entered"
	} else if eta > 1 {
		out.Note("time", -1, "That is faster than the pump's full displacement can do: check the time, the cylinders or the pump.")
	}
	setOr(out, "eta_seen", eta, why)
	setOr(out, "pump_turns", pump.Displacement*pump.Turns, "not used")
	heating(in, out, r.flow)

	slow, weak := r.slow(in, out), weakness(in, out)
	out.Verdict(slowAndWeak[slow][weak])
	r.lines(in, out, slow, weak)
	r.picture(in, out)
	r.working(in, out)
	out.Rest("Slow is judged with every doubt at its worst: time ± {time_err}, flow ± {flow_err}. Weak is said only from 95 % on.")
	out.Rest("The time is for an empty tool. Under load a worn pump slips more, so time it loaded too: if that takes much longer, the pump is suspect.")
	out.Rest("The heat is taken to stay in the oil that the tank holds. The valve, where it is made, is far hotter.")
	out.Caution("hold", "limit", "skin", "leaks", "arm", "technician")
}

// slowAndWeak is the verdict for what is found of slow, then of weak.
var slowAndWeak = [4][4]string{
	notAsked: {notAsked: "unclear", open: "unclear", yes: "weak-only", no: "not-weak"},
	open:     {notAsked: "unclear", open: "unclear", yes: "weak-only", no: "not-weak"},
	yes:      {notAsked: "slow-only", open: "slow-only", yes: "both", no: "slow"},
	no:       {notAsked: "not-slow", open: "not-slow", yes: "weak", no: "neither"},
}

// slow says whether the time is longer than the pump explains.
func (r race) slow(in *calc.In, out *calc.Out) finding {
	f, words := open, "whether it is slow can't be told: it takes {time} where the pump should take {raise_time}, and slow starts at {slow_from}, give or take what is not known"
	late := 1 + in.SI("slow_at")
	switch {
	case math.IsNaN(r.seconds):
		f, words = notAsked, "without a raise time nobody can say whether it is slow: the pump should take {raise_time}"
	case r.seconds-r.err > r.most*late:
		f, words = yes, "it is slow: it takes {time} where the pump should take {raise_time}"
	case r.seconds+r.err < r.least*late:
		f, words = no, "it is not slow: it takes {time} and the pump should take {raise_time}"
	}
	out.Text("speed_words", "", upper(out.Words(words)))
	return f
}

// upper makes the first letter large.
func upper(s string) string { return string(s[0]-'a'+'A') + s[1:] }

// weakness says whether the pressure is truly under the manual's.
func weakness(in *calc.In, out *calc.Out) finding {
	const sure = 0.95
	p, low, a := in.SI("pressure"), in.SI("low"), in.SI("gauge_err")
	chance := math.Max(0, math.Min(1, (low-p+a)/(2*a))) // JCGM 106, 7: the part of p ± a under low
	if a == 0 {
		chance = 0
		if p < low {
			chance = 1
		}
	}
	if !in.Has("low") {
		chance = math.NaN()
	}
	setOr(out, "p_weak", chance, "needs the manual's lowest")
	setOr(out, "shortfall", low-p, "needs the manual's lowest")
	f, words := open, "weak is possible but not shown: the chance that the true pressure is under the manual's {low} is {p_weak}"
	switch {
	case !in.Has("low"):
		f, words = notAsked, "without the manual's lowest pressure nobody can say whether it is weak"
	case chance >= sure:
		f, words = yes, "it is weak: {pressure} is {shortfall} under the manual's {low}, and the chance that it truly is under is {p_weak}"
	case chance <= 1-sure:
		f, words = no, "it is not weak: the chance that the true pressure is under the manual's {low} is {p_weak}"
	}
	out.Text("weak_words", "", out.Words(words))
	return f
}

// heating sets what holding over the relief does.
func heating(in *calc.In, out *calc.Out, flow float64) {
	p, density, heat := in.SI("pressure"), in.SI("density"), in.SI("heat")
	power := hydraulic.Power(p, flow)
	rate := hydraulic.TankRate(power, density, heat, in.SI("tank"))
	out.Set("power", power)
	out.Set("engine_share", power/in.SI("engine"))
	out.Set("pass_rise", hydraulic.PassRise(p, density, heat))
	out.Set("tank_rate", rate)
	out.Set("hold", in.SI("rise")/rate)
	if power > in.SI("engine") {
		out.Note("engine", -1, "The oil would take {power}, more than the engine has: it would stall, or a number is off.")
	}
}

func (r race) lines(in *calc.In, out *calc.Out, slow, weak finding) {
	out.Line("Pressure does not change speed: set higher, it would still take about {raise_time}.")
	switch {
	case slow == yes && weak != yes:
		out.Line("Look at the pump and what it draws: filter, suction line, engine speed, a lever that does not open all the way, slip past the pistons. A shim won't help.")
	case slow == no && weak == yes:
		out.Line("The pump does its part. First check the gauge, the oil's temperature and the port; then the relief.")
	case slow == yes && weak == yes:
		out.Line("Both at once often have one cause: a worn pump or a leak gives neither flow nor pressure. A shim would hide it, not mend it.")
	}
	out.Line("Held over the relief, {power} turn into heat, at least {engine_share} of the engine: all the oil in the tank gets {rise} hotter in {hold}, the valve much sooner.")
}

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
		&chart.Band{On: chart.X, From: r.least, To: r.most},
	)
	out.Picture(c)
}

func (r race) working(in *calc.In, out *calc.Out) {
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
	if in.Has("low") {
		out.Step("chance of truly low = (lowest − reading + a) ÷ 2a, from 0 to 1", "({low} − {pressure} + {gauge_err}) ÷ (2 × {gauge_err}) → {p_weak}", "JCGM 106:2012, clause 7; a stated limit is rectangular (JCGM 100:2008, 4.3.7)")
	}
	out.Step("power in the oil = pressure × flow", "{pressure} × {flow} = {power}", "Esposito, Fluid Power with Applications, Ex. 8-2; the pump's losses come on top")
	out.Step("once through the relief = pressure ÷ (density × heat capacity)", "{pressure} ÷ ({density} × {heat}) = {pass_rise}", "Esposito, Fluid Power with Applications, Ex. 11-2")
	out.Step("the tank = power ÷ (density × heat capacity × oil in the tank)", "{power} ÷ ({density} × {heat} × {tank}) = {tank_rate}", "Conservation of energy, nothing given off")
}
