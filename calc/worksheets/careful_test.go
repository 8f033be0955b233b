package worksheets

import (
	"strings"
	"testing"

	"plainlift/calc/unit"
)

// More pressure never stands alone where no upper limit is known.
func TestNoEndIsSaid(t *testing.T) {
	for _, c := range []struct {
		worksheet, changes string
		want               bool
	}{
		{"short", "high=|target=2900 psi", true},
		{"short", "low=|high=|target=2900 psi", true},
		{"short", "low=", false},
		{"short", "high=|target=2500 psi", false},
		{"gain", "limit=|target=2900 psi", true},
		{"gain", "target=2700 psi", false},
	} {
		a := answer(t, c.worksheet, unit.US, changed(c.changes)...)
		if got := strings.Contains(strings.Join(a.Lines, "\n"), noEnd); got != c.want {
			t.Errorf("%s %s: %q", c.worksheet, c.changes, a.Lines)
		}
	}
}

// No load is carried nearer than the pivot: where the pressure now lifts none,
// no distance does the same.
func TestNoDistanceWithoutLift(t *testing.T) {
	a := answer(t, "gain", unit.US, changed("now=300 psi|target=2800 psi|dead=500 lb")...)
	if f := a.Figure("closer"); f.Value != "" || strings.Contains(strings.Join(a.Lines, "\n"), "nearer") {
		t.Errorf("closer is %s of 100 in: %q", f.Text, a.Lines)
	}
	if f := a.Figure("gain_pct_hi"); f.Text != takesAll {
		t.Errorf("the dead weight is known, yet: %s", f.Text)
	}
}

// The thickness for the target is not named without its chance when no shims
// are listed, and only when it matters.
func TestNoKitNamesTheChance(t *testing.T) {
	const says = "which is too much"
	for changes, want := range map[string]bool{"kit=": true, "kit=|gauge_err=20 psi": false, "kit=0.010 in : 1|trials=0.010 in : 2655 psi": true} {
		if a := askShim(strings.Split(changes, "|")...); a.Verdict.ID != "no-kit" || strings.Contains(a.Verdict.Sentence, says) != want {
			t.Errorf("%s: %s", changes, a.Verdict.Sentence)
		}
	}
}

// The working puts in the numbers that give its result: the report itself, not
// the interval that the weighing leaves it.
func TestWorkingOfDeadNeeded(t *testing.T) {
	a := answer(t, "before-after", unit.US, changed("lift_before=1000 lb|lift_after=1300 lb|weigh_err=2 %")...)
	last := a.Working[len(a.Working)-1].Numbers
	if last != "30 % ÷ 10.2 % − 1 → 1.9 times" {
		t.Error(last)
	}
}

func TestOneReadingIsOne(t *testing.T) {
	a := answer(t, "reading", unit.US, changed("readings=2600 psi")...)
	if got := a.Working[0].Numbers; !strings.HasPrefix(got, "1 reading: ") {
		t.Error(got)
	}
}

// A lift that holds at a pressure of its own is not taken to hold in the middle of
// the manual's range, and which it was goes along with it.
func TestLiftHoldsWhereItWasTaken(t *testing.T) {
	for _, test := range []struct {
		at, lift, sends string
	}{
		{"", "1,508 lb", "2735 psi"},
		{"2610 psi", "1,580 lb", "2610 psi"},
		{"2450 psi", "1,683 lb", "2450 psi"}, // 1580·2610/2450
	} {
		a := ask(t, "short", "reading", "2610 psi", "scale", "4000 psi", "accuracy", "2 %", "low", "2680 psi", "high", "2790 psi",
			"lift", "1580 lb", "target", "2735 psi", "at", test.at)
		if got := a.Figure("lift_now").Text; got != test.lift {
			t.Errorf("at %q it lifts %s now, want %s", test.at, got, test.lift)
		}
		for _, n := range a.Next {
			for _, p := range n.Link {
				if n.ID == "gain" && p.Key == "at" && p.Value == test.sends {
					test.sends = ""
				}
			}
		}
		if test.sends != "" {
			t.Errorf("at %q: gain is not told %s", test.at, test.sends)
		}
	}
}

// What the gauge may be off is not left out where the target is near the limit.
func TestGainNearTheLimit(t *testing.T) {
	for _, test := range []struct{ target, says string }{
		{"2735 psi", "Set to 2,735 psi, a gauge that reads more than 55 psi low has it truly over the manual's 2,790 psi."},
		{"2790 psi", "Set to 2,790 psi, a gauge that reads low at all has it truly over the manual's 2,790 psi."},
		{"2789.96 psi", "reads more than 0.04 psi low"},
	} {
		if all := texts(ask(t, "gain", "target", test.target)); !strings.Contains(all, test.says) {
			t.Errorf("target %s: want %q in\n%s", test.target, test.says, all)
		}
	}
	for _, pairs := range [][]string{{"target", "2500 psi"}, {"limit", "4000 psi"}, {"now", "2800 psi"}} {
		if all := texts(ask(t, "gain", pairs...)); strings.Contains(all, "has it truly over") {
			t.Errorf("%v: %s", pairs, all)
		}
	}
}

// Whoever reports a round figure is not contradicted by its rounding.
func TestRoundedReport(t *testing.T) {
	const says = "is a rounded figure, it may fit."
	for claimed, may := range map[string]bool{"10 %": true, "10.0 %": true, "10.04 %": false, "13.5 %": false, "14 %": false, "9 %": false, "12 %": false, "13.45 %": false} {
		a := ask(t, "before-after", "claimed", claimed)
		if got := strings.Contains(texts(a), says); got != may {
			t.Errorf("%s: %s, said %v, want %v", claimed, a.Verdict.Head, got, may)
		}
	}
}

// A true pressure is not under nothing, however wide the doubt.
func TestNoPressureUnderNothing(t *testing.T) {
	if lo := value(ask(t, "reading", "readings", "40 psi; 45 psi"), "lo"); lo != 0 {
		t.Errorf("two readings near nothing: at least %v", lo)
	}
	if lo := value(ask(t, "job", "left", "40 psi; 45 psi"), "lo"); lo != 0 {
		t.Errorf("as left near nothing: at least %v", lo)
	}
}
