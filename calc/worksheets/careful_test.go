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
