package calc

import (
	"math"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

func TestEntryProblems(t *testing.T) {
	tests := []struct {
		field, text string
		sys         unit.System
		row         int
		want        string
	}{
		{"p", "", unit.US, -1, "Enter a value, such as 2,610 psi"},
		{"p", "  ", unit.Metric, -1, "Enter a value, such as 180 bar"},
		{"p", "0", unit.US, -1, "Must be above 0 psi and up to 5,801 psi"},
		{"p", "-3 bar", unit.Metric, -1, "Must be above 0 bar and up to 400 bar"},
		{"p", "400.1 bar", unit.US, -1, "Must be above 0 bar and up to 400 bar"},
		{"p", "12 kg", unit.US, -1, "which is not a pressure"},
		{"p", "1,234", unit.Metric, -1, "can be read two ways"},
		{"p", strings.Repeat("9", 20_001), unit.US, -1, "too long"},
		{"how", "", unit.US, -1, "Choose one"},
		{"how", "sideways", unit.US, -1, "“sideways” is not one of the choices: plain, share"},
		{"conf", "49", unit.US, -1, "Must be from 50 % to 99.9 %"},
		{"conf", "100 %", unit.US, -1, "Must be from 50 % to 99.9 %"},
		{"temp", "-41 °C", unit.US, -1, "Must be from −40 °C to 120 °C"},
		{"temp", "121", unit.Metric, -1, "Must be from −40 °C to 120 °C"},
		{"list", "2600; x; 2620", unit.US, 1, "is not a number"},
		{"list", "1;2;3;4;5;6", unit.US, -1, "That is 6 rows; up to 5 can be used"},
		{"list", ";;", unit.US, -1, "Enter a value, such as 2,600; 2,620 psi"},
		{"many", strings.Repeat("2600;", 500), unit.US, -1, "That is 500 rows; up to 200 can be used"},
		{"pairs", "0.01 in", unit.US, 0, "Two numbers with a colon between, such as 10 in : 20 psi"},
		{"pairs", "0.01 in : 2600; 0.02 in : ", unit.US, 1, "Enter a number"},
		{"pairs", "0.01 in : 2600; 60 mm : 2700", unit.US, 1, "Must be above 0 mm and up to 50 mm"},
		{"pairs", "0.01 in : 9000", unit.US, 0, "Must be above 0 psi and up to 5,801 psi"},
	}
	for _, test := range tests {
		a := book.Evaluate("trial", own(test.field, test.text), test.sys)
		if len(a.Problems) == 0 {
			t.Errorf("%s %.30q: no problem", test.field, test.text)
			continue
		}
		p := a.Problems[0]
		if p.Field != test.field || p.Row != test.row || !strings.Contains(p.Message, test.want) {
			t.Errorf("%s %.30q: %+v, want row %d, %q", test.field, test.text, p, test.row, test.want)
		}
	}
}

func TestEntryChoices(t *testing.T) {
	a := book.Evaluate("trial", own("p", "1,234"), unit.Metric)
	if c := a.Problems[0].Choices; strings.Join(c, "|") != "1234 bar|1.234 bar" {
		t.Errorf("choices %q", c)
	}
	if a := book.Evaluate("trial", own("p", "1,234"), unit.US); !a.OK() {
		t.Errorf("US takes 1,234 as thousands: %v", a.Problems)
	}
}

func TestEveryProblemIsTold(t *testing.T) {
	a := book.Evaluate("trial", own("list", "x; 2600; 9000"), unit.US)
	if len(a.Problems) != 2 || a.Problems[0].Row != 0 || a.Problems[1].Row != 2 {
		t.Errorf("%+v", a.Problems)
	}
}

// TestOutOfPlay: what does not bear on the answer may be unreadable, and then
// has no rows and no part in the link.
func TestOutOfPlay(t *testing.T) {
	a := book.Evaluate("trial", own("share", "abc"), unit.US)
	if !a.OK() {
		t.Fatalf("%v", a.Problems)
	}
	for _, p := range a.Link {
		if p.Key == "share" {
			t.Error("the link holds a field that does not bear on the answer")
		}
	}
	if a := book.Evaluate("trial", own("share", "abc", "how", "share"), unit.US); a.OK() {
		t.Error("once it bears, it must be readable")
	}
}

// TestOnlySeparators: an optional list of nothing but separators is empty.
func TestOnlySeparators(t *testing.T) {
	for _, text := range []string{";", " ; \n ;", ","} {
		if a := book.Evaluate("trial", own("pairs", text), unit.US); !a.OK() || !strings.HasSuffix(a.Lines[0], "and none") {
			t.Errorf("%q: %v %v", text, a.Problems, a.Lines)
		}
	}
}

func TestEntryUnits(t *testing.T) {
	tests := []struct {
		name string
		e    Entry
		sys  unit.System
		want string // the reading as the sentence quotes it
	}{
		{"the shown unit", Entry{Text: "2600"}, unit.US, "2,600 psi"},
		{"the chooser", Entry{Text: "180", Unit: "bar"}, unit.US, "2,611 psi"},
		{"a typed unit wins", Entry{Text: "2600 psi", Unit: "bar"}, unit.US, "2,600 psi"},
		{"a chooser that is none", Entry{Text: "2600", Unit: "parsec"}, unit.US, "2,600 psi"},
		{"metric", Entry{Text: "180"}, unit.Metric, "180 bar"},
		{"as typed where shown", Entry{Text: "180.25"}, unit.Metric, "180.25 bar"},
		{"converted to four digits", Entry{Text: "2610 psi"}, unit.Metric, "180 bar"},
	}
	for _, test := range tests {
		test.e.Own = true
		a := book.Evaluate("trial", Entries{"p": test.e}, test.sys)
		if !a.OK() || !strings.Contains(a.Verdict.Sentence, "over "+test.want+",") {
			t.Errorf("%s: %v %q", test.name, a.Problems, a.Verdict.Sentence)
		}
	}
}

// TestRangeShownInside: a bound is named in the unit that the number is in, and
// cut so that the number shown is itself accepted.
func TestRangeShownInside(t *testing.T) {
	tests := []struct {
		r    Range
		k    unit.Kind
		text string
		sys  unit.System
		want string
	}{
		// 1 bar is 14.5037… psi, 7 bar 101.526… psi, 10 m 393.7007… in.
		{Range{Min: "1 bar", Max: "7 bar"}, unit.Pressure, "9999", unit.US, "Must be from 14.51 psi to 101.5 psi"},
		{Range{Min: "1 bar", Max: "7 bar"}, unit.Pressure, "9999 MPa", unit.US, "Must be from 0.1 MPa to 0.7 MPa"},
		{Range{Min: "-400 bar", Max: "400 bar"}, unit.Pressure, "9999", unit.US, "Must be from −5,801 psi to 5,801 psi"},
		{Range{Min: "-400 bar", Max: "400 bar"}, unit.Pressure, "9999 psi", unit.Metric, "Must be from −5801 psi to 5801 psi"},
		{Range{Min: "1 in"}, unit.Length, "-1", unit.Metric, "Must be from 25.4 mm"},
		{Range{Min: "1 in", Above: true}, unit.Length, "-1", unit.Metric, "Must be above 25.4 mm"},
		{Range{Max: "10 m"}, unit.Length, "9999", unit.US, "Must be up to 393.7 in"},
		{Range{Max: "10 m"}, unit.Length, "9999 ft", unit.Metric, "Must be up to 32.8 ft"},
		{Range{Min: "50 %", Max: "99.9 %"}, unit.Percent, "9999", unit.Metric, "Must be from 50 % to 99.9 %"},
	}
	for _, test := range tests {
		x, err := unit.Parse(test.text, test.k, unit.Unit{}, test.sys)
		if err != nil {
			t.Fatal(err)
		}
		if err := test.r.holds(x, test.k, test.sys); err == nil || err.Error() != test.want {
			t.Errorf("%+v: %v, want %q", test.r, err, test.want)
		}
	}
}

func TestRangeInChosenUnit(t *testing.T) {
	a := book.Evaluate("trial", Entries{"p": {Text: "9000", Unit: "bar", Own: true}}, unit.US)
	if want := "Must be above 0 bar and up to 400 bar"; a.OK() || a.Problems[0].Message != want {
		t.Errorf("%v, want %q", a.Problems, want)
	}
}

// TestRangeInAnyUnit: whatever unit is chosen, the bounds that the complaint
// names are accepted.
func TestRangeInAnyUnit(t *testing.T) {
	for _, test := range []struct {
		r Range
		k unit.Kind
	}{
		{Pressures, unit.Pressure}, {FromZero, unit.Pressure}, {Scales, unit.Pressure}, {Zeros, unit.Pressure},
		{Loads, unit.Load}, {Lengths, unit.Length}, {Thickness, unit.Thickness}, {Confidence, unit.Percent},
		{Range{Min: "-40 °C", Max: "150 °C"}, unit.Temperature},
	} {
		for _, u := range test.k.Units() {
			for _, sys := range []unit.System{unit.US, unit.Metric} {
				for _, bound := range []struct {
					text    string
					inwards func(float64) float64
				}{{test.r.Min, math.Ceil}, {test.r.Max, math.Floor}} {
					text := test.r.show(bound.text, test.k, u, sys, bound.inwards)
					x, err := unit.Parse(text, test.k, unit.Unit{}, sys)
					if err == nil {
						err = test.r.holds(x, test.k, sys)
					}
					if err != nil && !(test.r.Above && bound.text == test.r.Min) {
						t.Errorf("%s of %s: %v", text, bound.text, err)
					}
				}
			}
		}
	}
}

func TestRangeEnds(t *testing.T) {
	for _, test := range []struct {
		text string
		ok   bool
	}{{"0 bar", false}, {"1e-9 bar", true}, {"400 bar", true}, {"400.000001 bar", false}} {
		v, err := unit.Parse(test.text, unit.Pressure, unit.Unit{}, unit.US)
		if err != nil {
			t.Fatal(err)
		}
		if got := Pressures.holds(v, unit.Pressure, unit.US) == nil; got != test.ok {
			t.Errorf("%s accepted: %v", test.text, got)
		}
	}
	if FromZero.holds(unit.Value{}, unit.Pressure, unit.US) != nil {
		t.Error("0 is refused where the range is from 0")
	}
	defer func() {
		if recover() == nil {
			t.Error("a bound that cannot be read goes unnoticed")
		}
	}()
	Range{Max: "much"}.bound("much", unit.Pressure, 0)
}
