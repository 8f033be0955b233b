package calc

import (
	"strings"
	"testing"

	"plainlift/calc/unit"
)

// sent is the states of number fields as a page would send them back.
func sent(states []FieldState) Entries {
	e := Entries{}
	for _, s := range states {
		var rows []string
		for _, r := range s.Rows {
			row := strings.TrimSpace(r.A + " " + r.UnitA)
			if r.B != "" {
				row += " : " + r.B + " " + r.UnitB
			}
			rows = append(rows, row)
		}
		if len(rows) > 0 {
			e[s.ID] = Entry{Text: strings.Join(rows, "; "), Own: true}
		}
	}
	return e
}

func state(states []FieldState, id string) FieldState {
	for _, s := range states {
		if s.ID == id {
			return s
		}
	}
	return FieldState{}
}

func TestConvert(t *testing.T) {
	e := own("p", "2,610", "pairs", "0.010 in : 2,655 psi; 0.020 in : 2,701", "limit", "", "list", "2600; x", "how", "share", "share", "??")
	states := book.Convert("trial", e, unit.US, unit.Metric)
	if s := state(states, "p"); s.Number != "180" || s.Unit != "bar" || s.Canonical != "2610 psi" {
		t.Errorf("p: %+v", s)
	}
	if s := state(states, "pairs"); len(s.Rows) != 2 || s.Rows[1] != (RowState{"0.508", "mm", "186.2", "bar"}) {
		t.Errorf("pairs: %+v", s.Rows)
	}
	if s := state(states, "temp"); s.Number != "20" || s.Unit != "°C" {
		t.Errorf("temp: %+v", s)
	}
	for _, id := range []string{"limit", "list", "share", "how"} {
		if s := state(states, id); len(s.Rows) != 0 || s.Canonical != "" {
			t.Errorf("%s cannot be converted, and gives %+v", id, s)
		}
	}
}

// TestThereAndBack: what a page keeps of a switch is the typed text beside the
// SI value, so that switching back gives exactly that. Canonical is that text,
// and means the same SI value in either system.
func TestThereAndBack(t *testing.T) {
	for _, typed := range []string{"2,610", "2610.1 psi", "185 bar", "1/3", "18.05 MPa", "0.1", "5801.5"} {
		e := own("p", typed, "list", "0.1")
		us := book.Evaluate("trial", e, unit.US)
		there := state(book.Convert("trial", e, unit.US, unit.Metric), "p")
		metric := book.Evaluate("trial", own("p", there.Canonical, "list", "0.1 psi"), unit.Metric)
		if a, b := us.Figure("double"), metric.Figure("double"); a == nil || b == nil || a.Value != b.Value {
			t.Errorf("%s: %+v becomes %+v", typed, a, b)
		}
		back := state(book.Convert("trial", own("p", there.Canonical), unit.Metric, unit.US), "p")
		if back.Canonical != there.Canonical {
			t.Errorf("%s: %s comes back as %s", typed, there.Canonical, back.Canonical)
		}
	}
}

// TestShownNumbersAreReadable: what the page puts into fields is read back as
// what it was, to the six digits of a converted one.
func TestShownNumbersAreReadable(t *testing.T) {
	e := own("p", "5,123", "list", "1,234; 2600.25", "pairs", "0.010 in : 2,655", "temp", "-3.5 °C")
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		a := book.Evaluate("trial", sent(book.Convert("trial", e, unit.US, sys)), sys)
		if !a.OK() {
			t.Errorf("system %d: %+v", sys, a.Problems)
		}
	}
	a := book.Evaluate("trial", e, unit.US)
	b := book.Evaluate("trial", sent(a.Fields), unit.US)
	for _, id := range []string{"p", "list", "pairs", "temp"} {
		if x, y := state(a.Fields, id), state(b.Fields, id); x.Canonical != y.Canonical {
			t.Errorf("%s: %s is read back as %s", id, x.Canonical, y.Canonical)
		}
	}
	if s := state(a.Fields, "p"); s.Number != "5,123" || s.Unit != "psi" || len(s.Rows) != 1 {
		t.Errorf("%+v", s)
	}
	if s := state(a.Fields, "temp"); s.Number != "−3.5" || s.Unit != "°C" {
		t.Errorf("%+v", s)
	}
	if s := state(a.Fields, "how"); s.Number != "plain" {
		t.Errorf("%+v", s)
	}
}
