package worksheets

import (
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// What is read of a post goes into the fields as it is, and is answered.
func TestReadPost(t *testing.T) {
	for _, c := range []struct {
		post string
		want map[string]string
	}{
		{"Shimmed the loader on my tractor from 2300 to 2550 psi. It picks up 25 % more now.", map[string]string{"before": "2300 psi", "after": "2550 psi", "claimed": "25 %"}},
		{"Was 165 bar, now 180 bar, and it lifts 700 kg where it lifted 600 kg before.", map[string]string{"before": "165 bar", "after": "180 bar", "lift_before": "600 kg", "lift_after": "700 kg"}},
	} {
		entries := calc.Entries{}
		for _, p := range readPost(c.post, unit.US) {
			if p.Field == "" {
				continue
			}
			if beforeAfter.Read == nil || p.Start < 0 || p.End > len(c.post) || !strings.ContainsAny(c.post[p.Start:p.End], "0123456789") {
				t.Errorf("%q: a pick at %d to %d", c.post, p.Start, p.End)
			}
			entries[p.Field] = calc.Entry{Text: p.Value, Own: true}
		}
		for id, text := range c.want {
			if entries[id].Text != text {
				t.Errorf("%q: %s is %q, want %q", c.post, id, entries[id].Text, text)
			}
		}
		if a := All.Evaluate("before-after", entries, unit.US); !a.OK() {
			t.Errorf("%q: %v", c.post, a.Problems)
		}
	}
	// Every field that a pick can go to is there, of the kind that it has.
	for id, kind := range map[string]unit.Kind{
		"before": unit.Pressure, "after": unit.Pressure, "claimed": unit.Percent,
		"lift_before": unit.Load, "lift_after": unit.Load, "gained": unit.Load,
	} {
		found := false
		for _, f := range beforeAfter.Fields {
			found = found || f.ID == id && f.Kind == kind
		}
		if !found {
			t.Errorf("no field %s of that kind", id)
		}
	}
}
