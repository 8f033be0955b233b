package worksheets

import (
	"math"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

// Sources: Esposito, Fluid Power with Applications, Ex. 9-2 (read: 2000 lb on a
// bore of 1.5 in is 1131.77 psi; rod 0.5 in); the rest computed from the areas.
func TestCylinderPublished(t *testing.T) {
	for _, c := range []published{
		{"bore=1.5 in|rod=0.5 in|pressure=1131.7685 psi|efficiency=100 %", "push", unit.Force, "lb", 2000, 1e-3},
		{"bore=1.5 in|rod=0.5 in|pressure=400 psi|back=450 psi|efficiency=100 %", "push", unit.Force, "lb", 0, 1e-6}, // 400·1.5² = 450·(1.5² − 0.5²)
		{"bore=2 in|rod=1 in|pressure=1000 psi|efficiency=100 %", "push", unit.Force, "lb", 1000 * math.Pi, 1e-6},
		{"bore=2 in|rod=1 in|pressure=1000 psi|efficiency=100 %", "pull", unit.Force, "lb", 750 * math.Pi, 1e-6},
		{"bore=2 in|rod=1 in|pressure=1000 psi|efficiency=90 %|count=2", "pull", unit.Force, "lb", 1350 * math.Pi, 1e-6},
		{"bore=2 in|rod=1 in|pressure=1000 psi|compare=1100 psi", "push_pct", unit.Percent, "%", 10, 1e-9},
		{"bore=2 in|rod=1.4142135624 in|pressure=1000 psi", "blocked", unit.Pressure, "psi", 2000, 1e-5},
		{"bore=2 in|rod=1 in|stroke=10 in", "volume_out", unit.Volume, "in³", 10 * math.Pi, 1e-9},
		{"bore=2 in|rod=1 in|stroke=10 in|flow=1 gpm", "time_out", unit.Time, "s", 10 * math.Pi / 231 * 60, 1e-9},
		{"bore=2 in|rod=1 in|stroke=10 in|flow=1 gpm", "speed_in", unit.Speed, "in/s", 231. / 60 / (0.75 * math.Pi), 1e-9},
	} {
		c.check(t, "cylinder")
	}
}

// A side that the other one holds pulls nothing, however little is missing.
func TestCylinderHeld(t *testing.T) {
	for _, c := range []struct{ changes, id, says string }{
		{"back=2500 psi", "none", "pushes 6,718 lb and pulls 0 lb"},
		{"back=5000 psi", "none", "pushes 0 lb and pulls 0 lb"},
		// 3.5 in and 1.75 in: it pulls from ¾ of the pressure on, 1,500 of 2,000 psi.
		{"back=1500 psi|pressure=2001 psi|limit=", "more", "pulls 6"},
		{"back=1500 psi|pressure=2000 psi", "none", "pulls 0 lb"},
		{"back=1500 psi|pressure=2100 psi|compare=1900 psi", "lower", "pulls 690 lb less"},
	} {
		a := answer(t, "cylinder", unit.US, changed(c.changes)...)
		if a.Verdict.ID != c.id || !strings.Contains(a.Verdict.Sentence, c.says) || value(a, "pull") < 0 {
			t.Errorf("%s: %s, %s", c.changes, a.Verdict.ID, a.Verdict.Sentence)
		}
	}
}

// The danger that no gauge on the loader shows stands open, with its figure.
func TestCylinderBlockedIsSaid(t *testing.T) {
	a := answer(t, "cylinder", unit.US, "pressure", "2,610 psi")
	if !strings.Contains(strings.Join(a.Lines, "\n"), "2,610 psi on the piston makes 3,480 psi there") || !strings.Contains(strings.Join(a.Cautions, "\n"), "never part one under load") {
		t.Errorf("%q %q", a.Lines, a.Cautions)
	}
}

func TestCylinderLimit(t *testing.T) {
	over := All.Evaluate("cylinder", owned("compare", "2,900 psi"), unit.US)
	if over.Verdict.ID != "over-limit" || strings.Contains(over.Picture, "then") {
		t.Errorf("%s, drawn %t", over.Verdict.ID, strings.Contains(over.Picture, "then"))
	}
	for _, f := range []string{"rod=3.5 in", "bore=0 in", "count=0", "flow=0 gpm", "pressure=-5 psi"} {
		a := All.Evaluate("cylinder", owned(changed(f)...), unit.US)
		if name, _, _ := strings.Cut(f, "="); len(a.Problems) != 1 || a.Problems[0].Field != name {
			t.Errorf("%s: %v", f, a.Problems)
		}
	}
}
