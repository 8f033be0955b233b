package worksheets

import (
	"math"
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
	{"time=5.6 s", "slow", "Slow; weak is not shown", "weak is possible but not shown: the chance that the true pressure is under the manual's 2,680 psi is 94 %"},
	{"time=4.5 s|pressure=2500 psi", "weak", "Weak; slow is not shown", "Whether it is slow can't be told"},
	{"", "undecided", "Not slow; weak is not shown", "94 %"},
	{"time=|pressure=2800 psi", "undecided", "Not weak; slow is not shown", "Without a raise time nobody can say whether it is slow: the pump should take 3.6 s"},
	{"time=4.5 s", "undecided", "Can't tell yet", "weak is possible"},
	{"low=", "undecided", "Not slow; weak is not shown", "without the manual's lowest pressure nobody can say whether it is weak"},
	{"gauge_err=0 psi", "weak", "Weak, not slow", "over 99 %"},
	{"gauge_err=0 psi|pressure=2680 psi", "neither", "Neither slow nor weak", "under 1 %"},
	{"rated_flow=7.1 gpm", "undecided", "Not slow; weak is not shown", "the pump should take 3.6 s"},
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
	for _, c := range []struct {
		changes, id string
		kind        unit.Kind
		unit        string
		want, tol   float64
	}{
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
		a := All.Evaluate("flow", owned(changed(c.changes)...), unit.US)
		if !a.OK() {
			t.Errorf("%s: %v", c.changes, a.Problems)
			continue
		}
		u, _ := c.kind.Lookup(c.unit)
		if got := u.FromSI(value(a, c.id)); math.Abs(got-c.want) > c.tol {
			t.Errorf("%s: %s = %v %s, want %v", c.changes, c.id, got, c.unit, c.want)
		}
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
	if !hasNote(fast, "time", "faster than the pump's full displacement") {
		t.Errorf("a time that no pump could do: %v", fast.Notes)
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
