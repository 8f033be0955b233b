package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/doubt"
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
	for needs, id := range map[string]string{"time": "time_err", "pressure": "gauge_err", "low": "gauge_err", "tank": "rise"} {
		if !in.Has(needs) {
			out.Unused(id)
		}
	}
	if r.err >= r.seconds { // never so without a time
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
	out.Set("lower_time", hydraulic.Time(c.InVolume(), r.flow))
	seen := hydraulic.Time(r.volume, r.seconds) // volume over time, NaN without one
	setOr(out, "flow_seen", seen, "needs a measured time")
	eta := pump.Seen(seen)
	why := "needs a measured time"
	if in.Has("rated_flow") {
		eta, why = math.NaN(), "a rated flow was entered"
	}
	if eta > 1 || r.seconds+r.err < r.least { // the first alone may be only what is not known
		out.Note("time", -1, "That is faster than the pump can do: check the time, the stroke, the cylinders and the pump.")
	}
	setOr(out, "eta_seen", eta, why)
	setOr(out, "pump_turns", pump.Displacement*pump.Turns, "not used")
	held := heating(in, out, r.flow)

	slow, weak := r.slow(in, out), weakness(in, out)
	out.Verdict(slowAndWeak[slow][weak])
	r.lines(in, out, slow, weak, held)
	r.picture(in, out)
	if in.Has("pressure") && in.Has("low") {
		readingPicture(in, out)
	}
	r.working(in, out, held)
	if in.Has("time") {
		out.Rest("Slow is judged with every doubt at its worst: time ± {time_err}, flow ± {flow_err}.")
	}
	if in.Has("pressure") && in.Has("low") {
		out.Rest("Weak is said from a chance of 95 % on, the gauge off by anything up to ±{gauge_err} alike, and not weak up to 5 %.")
	}
	out.Rest("The time is for an empty tool. Under load a worn pump slips more, so time it loaded too: if that takes much longer, the pump is suspect.")
	if held == "low" {
		out.Rest("Without a reading the power and the heat are those at the manual's lowest pressure.")
	}
	if held != "" {
		out.Rest("The heat is taken to stay in the oil that the tank holds. The valve, where it is made, is far hotter.")
	}
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
	f, head, words := open, "slow is not shown", "Whether it is slow can't be told: it takes {time} where the pump should take {raise_time}, and slow starts at {slow_from}, give or take what is not known"
	late := 1 + in.SI("slow_at")
	switch {
	case math.IsNaN(r.seconds):
		f, head, words = notAsked, "time it to see if slow", "To see whether it is slow, time it: the pump should take {raise_time}"
	case r.seconds+r.err < r.least:
		head, words = "check the time", "Whether it is slow can't be told: {time} is less than the pump can do it in, so one of the numbers is off"
	case r.seconds-r.err > r.most*late:
		f, words = yes, "It is slow: it takes {time} where the pump should take {raise_time}"
	case r.seconds+r.err < r.least*late:
		f, words = no, "It is not slow: it takes {time} and the pump should take {raise_time}"
	}
	out.Text("speed_head", "", head)
	out.Text("speed_words", "", out.Words(words))
	return f
}

// weakness says whether the pressure is truly under the manual's: the part of
// what the reading can mean that lies there.
func weakness(in *calc.In, out *calc.Out) finding {
	const sure, hair = 0.95, 1e-9 // a chance that only rounding moved off the limit meets it
	const chanceIs = "the chance that the true pressure is under the manual's {low} is {p_weak}"
	p, low := in.SI("pressure"), in.SI("low")
	f, head, words := notAsked, "weak needs the manual's lowest", "to see whether it is weak, enter the manual's lowest pressure"
	if !in.Has("pressure") {
		head, words = "weak needs a reading", "to see whether it is weak, read the relief pressure"
	}
	out.None("p_weak", "needs a reading and the manual's lowest")
	out.None("shortfall", "needs a reading and the manual's lowest")
	if in.Has("pressure") && in.Has("low") {
		d := doubt.Sum{Mid: p, Rects: []float64{in.SI("gauge_err")}}.Dist()
		chance, _, _ := d.Within(low, math.Inf(1))
		out.Set("p_weak", chance)
		out.Set("shortfall", low-p)
		switch {
		case chance >= sure-hair:
			f, words = yes, "it is weak: {pressure} is {shortfall} under the manual's {low}, and the chance that it truly is under is {p_weak}"
		case chance <= 1-sure+hair:
			f, words = no, "it is not weak: "+chanceIs
		case chance >= probable:
			f, head, words = open, "probably weak, not shown", "it is probably weak, but this gauge can't show it: "+chanceIs
		default:
			f, head, words = open, "weak is not shown", "whether it is weak this gauge can't show: "+chanceIs
		}
	}
	out.Text("weak_head", "", head)
	out.Text("weak_words", "", out.Words(words))
	return f
}

// heating sets what holding over the relief does, and returns the name of the
// pressure that it reckons with: the reading, else the manual's lowest, else "".
func heating(in *calc.In, out *calc.Out, flow float64) string {
	held := "pressure"
	if !in.Has(held) {
		held = "low"
	}
	p, density, heat := in.SI(held), in.SI("density"), in.SI("heat")
	power := hydraulic.Power(p, flow)
	rate := hydraulic.TankRate(power, density, heat, in.SI("tank"))
	const needsTank = "needs a pressure and the oil in the tank"
	setOr(out, "power", power, "needs a pressure")
	setOr(out, "engine_share", power/in.SI("engine"), "needs a pressure and the engine's power")
	setOr(out, "pass_rise", hydraulic.PassRise(p, density, heat), "needs a pressure")
	setOr(out, "tank_rate", rate, needsTank)
	setOr(out, "hold", in.SI("rise")/rate, needsTank)
	if power > in.SI("engine") {
		out.Note("engine", -1, "The oil would take {power}, more than the engine has: it would stall, or a number is off.")
	}
	if !in.Has(held) {
		return ""
	}
	return held
}

func (r race) lines(in *calc.In, out *calc.Out, slow, weak finding, held string) {
	takes := "about {raise_time}"
	if in.Has("time") {
		takes = "the same {time}"
	}
	out.Line("Pressure does not change speed: set higher, it would still take " + takes + ".")
	switch {
	case slow == yes && weak != yes:
		out.Line("Look at the pump and what it draws: filter, suction line, engine speed, a lever that does not open all the way, slip past the pistons. (Common practice, no source.) A shim won't help.")
	case slow == no && weak == yes:
		out.Line("The pump does its part. First check the gauge, the oil's temperature and the port; then the relief.")
	case slow == yes && weak == yes:
		out.Line("Both at once often have one cause: a worn pump or a leak gives neither flow nor pressure. (Common practice, no source.) A shim would hide it, not mend it.")
	}
	if held == "" {
		return
	}
	heats := "Held over the relief, {power} turn into heat"
	if in.Has("engine") {
		heats += ", at least {engine_share} of the engine"
	}
	if in.Has("tank") {
		heats += ": all the oil in the tank gets {rise} hotter in {hold}, the valve much sooner"
	}
	out.Line(heats + ".")
}
