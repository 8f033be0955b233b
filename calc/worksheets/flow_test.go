package worksheets

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// flowBranches are all pairs of what can be found of slow and of weak.
var flowBranches = []struct{ changes, id, head, says string }{
	{"time=5.4 s|pressure=2500 psi", "both", "Slow and weak", "It is slow: it takes 5.4 s where the pump should take 3.6 s; it is weak: 2,500 psi is 180 psi under the manual's 2,680 psi"},
	{"time=5.4 s|pressure=2800 psi", "slow", "Slow, not weak", "it is not weak: the chance that the true pressure is under the manual's 2,680 psi is under 1 %"},
	{"pressure=2500 psi", "weak", "Weak, not slow", "It is not slow: it takes 3.8 s and the pump should take 3.6 s"},
	{"pressure=2800 psi", "neither", "Neither slow nor weak", "it is not weak"},
	{"time=5.6 s", "slow", "Slow; probably weak, not shown", "it is probably weak, but this gauge can't show it: the chance that the true pressure is under the manual's 2,680 psi is 94 %"},
	{"time=5.6 s|pressure=2690 psi", "slow", "Slow; weak is not shown", "whether it is weak this gauge can't show: the chance that the true pressure is under the manual's 2,680 psi is 44 %"},
	{"time=4.5 s|pressure=2500 psi", "weak", "Weak; slow is not shown", "Whether it is slow can't be told"},
	{"", "undecided", "Not slow; probably weak, not shown", "94 %"},
	{"time=|pressure=2800 psi", "undecided", "Not weak; time it to see if slow", "To see whether it is slow, time it: the pump should take 3.6 s"},
	{"time=4.5 s", "undecided", "Can't tell yet", "probably weak"},
	{"low=", "undecided", "Not slow; weak needs the manual's lowest", "to see whether it is weak, enter the manual's lowest pressure"},
	{"pressure=", "undecided", "Not slow; weak needs a reading", "to see whether it is weak, read the relief pressure"},
	{"time=|pressure=|low=", "undecided", "Can't tell yet", "time it: the pump should take 3.6 s; to see whether it is weak, read the relief pressure"},
	{"time=|pressure=2500 psi", "weak", "Weak; time it to see if slow", "2,500 psi is 180 psi under"},
	{"gauge_err=0 psi", "weak", "Weak, not slow", "over 99 %"},
	{"gauge_err=0 psi|pressure=2680 psi", "neither", "Neither slow nor weak", "under 1 %"},
	{"time=1.5 s", "undecided", "Can't tell yet", "1.5 s is less than the pump can do it in, so one of the numbers is off"},
	{"time=1.5 s|pressure=2500 psi", "weak", "Weak; check the time", "it is weak"},
	{"rated_flow=7.1 gpm", "undecided", "Not slow; probably weak, not shown", "the pump should take 3.6 s"},
}

func TestFlowBranches(t *testing.T) {
	for _, b := range flowBranches {
		a := All.Evaluate("flow", owned(changed(b.changes)...), unit.US)
		if !a.OK() || a.Verdict.ID != b.id || a.Verdict.Head != b.head || !strings.Contains(strings.ToLower(a.Verdict.Sentence), strings.ToLower(b.says)) {
			t.Errorf("%s: %s, %s, %q %v", b.changes, a.Verdict.ID, a.Verdict.Head, a.Verdict.Sentence, a.Problems)
		}
	}
}

// Printed and computed numbers in the worksheet's own units. Sources: Esposito,
// Fluid Power with Applications, Ex. 5-1, 8-2 and 11-2 (read; exact constants
// where the tolerance is small).
func TestFlowPublished(t *testing.T) {
	for _, c := range []published{
		{"displacement=3.926991 in³/rev|rpm=1800 rpm|eta_v=91.5 %", "flow", unit.Flow, "gpm", 28, 0.005},
		{"displacement=3.926991 in³/rev|rpm=1800 rpm|eta_v=100 %", "flow", unit.Flow, "gpm", 30.599928, 3e-6},
		{"rated_flow=20 gpm|pressure=1000 psi", "power", unit.Power, "hp", 11.666667, 1e-6},
		{"rated_flow=12 gpm|pressure=2500 psi", "power", unit.Power, "hp", 17.5, 1e-9},
		{"rated_flow=12 gpm|pressure=2500 psi|engine=35 hp", "engine_share", unit.Percent, "%", 50, 1e-9},
		{"pressure=1000 psi|density=7.42 lb/gal|heat=0.42 Btu/lb °F", "pass_rise", unit.TemperatureRise, "°F", 7.937861, 1e-5},
		// Two cylinders of 1.75 by 20.5 in take 98.617 in³, a gallon is 231: at 1 gpm 25.615 s.
		{"rated_flow=1 gpm", "raise_time", unit.Time, "s", 25.615, 0.001},
		{"rated_flow=1 gpm|time=25.615 s", "flow_seen", unit.Flow, "gpm", 1, 5e-5},
		// 10 kW in 100 L of water-like oil, 1000 kg/m³ and 4 kJ/kg K: 0.025 K/s.
		{"rated_flow=60 L/min|pressure=100 bar|tank=100 L|density=1000 kg/m³|heat=4 kJ/kg K", "tank_rate", unit.TemperatureRate, "°C/min", 1.5, 1e-9},
		{"rated_flow=60 L/min|pressure=100 bar|tank=100 L|density=1000 kg/m³|heat=4 kJ/kg K|rise=15 °C", "hold", unit.Time, "min", 10, 1e-9},
	} {
		c.check(t, "flow")
	}
}

// No change of pressure changes a time or a speed.
func TestPressureIsNotSpeed(t *testing.T) {
	for worksheet, ids := range map[string][]string{
		"flow":     {"raise_time", "flow", "flow_seen"},
		"cylinder": {"time_out", "time_in", "speed_out", "speed_in"},
	} {
		a := All.Evaluate(worksheet, owned("pressure", "1500 psi"), unit.US)
		b := All.Evaluate(worksheet, owned("pressure", "2700 psi"), unit.US)
		for _, id := range ids {
			if value(a, id) != value(b, id) {
				t.Errorf("%s: %s changes with pressure", worksheet, id)
			}
		}
	}
}

func TestFlowComplains(t *testing.T) {
	for changes, field := range map[string]string{
		"rod=1.75 in": "rod", "time_err=4 s": "time_err", "eta_v=20 %": "eta_v", "rpm=0 rpm": "rpm", "displacement=0 in³/rev": "displacement",
		"time=0 s": "time", "tank=0 gal": "tank", "ratio=0": "ratio", "time=3 psi": "time",
	} {
		a := All.Evaluate("flow", owned(changed(changes)...), unit.US)
		if len(a.Problems) != 1 || a.Problems[0].Field != field {
			t.Errorf("%s: %v", changes, a.Problems)
		}
	}
	fast := All.Evaluate("flow", owned("time", "2 s"), unit.US)
	if !hasNote(fast, "time", "faster than the pump can do") {
		t.Errorf("a time that no pump could do: %v", fast.Notes)
	}
}

// What is not known takes away what needs it, and no more.
func TestFlowUnknown(t *testing.T) {
	for _, c := range []struct {
		changes  string
		gone     string // figures
		says     string
		not      string
		pictures int
	}{
		{"engine=", "engine_share", "11 hp turn into heat: all the oil in the tank gets 36 °F hotter in 93 s", "of the engine", 2},
		{"tank=", "tank_rate hold", "at least 24 % of the engine.", "in the tank gets", 2},
		{"tank=|engine=", "tank_rate hold engine_share", "Held over the relief, 11 hp turn into heat.", "", 2},
		{"pressure=", "p_weak", "Without a reading the power and the heat are those at the manual's lowest", "", 1},
		{"low=", "p_weak", "11 hp", "manual's lowest pressure: ", 1},
		{"pressure=|low=", "p_weak power engine_share pass_rise tank_rate hold", "read the relief pressure", "heat", 1},
		{"time=", "flow_seen eta_seen", "it would still take about 3.6 s", "the same", 2},
		{"rated_flow=7.1 gpm", "eta_seen", "it would still take the same 3.8 s", "", 2},
	} {
		a := answer(t, "flow", unit.US, changed(c.changes)...)
		var gone []string
		for _, f := range a.Figures {
			if f.Value == "" && f.Place != calc.Quoted {
				gone = append(gone, f.ID)
			}
		}
		if len(gone) != len(strings.Fields(c.gone)) {
			t.Errorf("%s: without a value: %v, want %s", c.changes, gone, c.gone)
		}
		for _, id := range strings.Fields(c.gone) {
			if a.Figure(id).Value != "" {
				t.Errorf("%s: %s is %s", c.changes, id, a.Figure(id).Text)
			}
		}
		if all := a.Verdict.Sentence + texts(a); !strings.Contains(all, c.says) || c.not != "" && strings.Contains(all, c.not) {
			t.Errorf("%s: want %q and not %q in\n%s", c.changes, c.says, c.not, all)
		}
		if n := strings.Count(a.Picture, "<svg"); n != c.pictures {
			t.Errorf("%s: %d pictures, want %d", c.changes, n, c.pictures)
		}
	}
}

// The chances meet the convention's limits from the right side.
func TestFlowChances(t *testing.T) {
	for _, c := range []struct{ changes, id, text string }{
		// ±80 psi about a reading: under 2,680 with (2680 − p + 80)/160.
		{"pressure=2608 psi", "weak", "95 %"},
		{"pressure=2608.1 psi", "undecided", "94.9 %"},
		{"pressure=2752 psi", "neither", "5 %"},
		{"pressure=2751.9 psi", "undecided", "5.1 %"},
		{"pressure=2680 psi", "undecided", "50 %"},
	} {
		a := answer(t, "flow", unit.US, changed(c.changes)...)
		if a.Verdict.ID != c.id || a.Figure("p_weak").Text != c.text {
			t.Errorf("%s: %s, %s", c.changes, a.Verdict.ID, a.Figure("p_weak").Text)
		}
	}
	// Slow at the worst of the doubts: 3.608 s, 8 % of flow, 25 %, 0.3 s.
	should := value(answer(t, "flow", unit.US), "raise_time")
	for _, c := range []struct {
		time float64
		id   string
	}{
		{should*1.25/0.92 + 0.3 + 0.001, "slow"}, {should*1.25/0.92 + 0.3 - 0.001, "undecided"},
		{should*1.25/1.08 - 0.3 + 0.001, "undecided"}, {should*1.25/1.08 - 0.3 - 0.001, "neither"},
	} {
		a := answer(t, "flow", unit.US, "pressure", "2800 psi", "time", strconv.FormatFloat(c.time, 'f', 6, 64)+" s")
		if a.Verdict.ID != c.id {
			t.Errorf("%v s: %s, want %s", c.time, a.Verdict.ID, c.id)
		}
	}
}

// What the pump delivers travels, as rated or as worked out.
func TestFlowTravels(t *testing.T) {
	for changes, want := range map[string]string{"": "{flow 7.1", "rated_flow=9 gpm": "{flow 9 gpm}", "displacement=1 in³/rev": "{flow 9.74"} {
		a := answer(t, "flow", unit.US, changed(changes)...)
		for _, n := range a.Next {
			if n.ID == "cylinder" && !strings.Contains(fmt.Sprint(n.Link), want) {
				t.Errorf("%s: %v", changes, n.Link)
			}
		}
	}
}

func hasNote(a *calc.Answer, field, says string) bool {
	for _, n := range a.Notes {
		if n.Field == field && strings.Contains(n.Text, says) {
			return true
		}
	}
	return false
}
