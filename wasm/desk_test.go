package main

import (
	"math/rand/v2"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// book has a worksheet whose answer is the entry, checked by a simulation, and
// panics for some.
var book = calc.Book{{
	ID:       "echo",
	Fields:   []calc.Field{{ID: "x", Label: "X", Example: "1"}},
	Figures:  []calc.Figure{{ID: "y", Label: "Y"}},
	Verdicts: []calc.Verdict{{Key: "fine", Head: "{y}", Sentence: "It is {y}."}},
	Compute: func(in *calc.In, out *calc.Out) {
		x := in.SI("x")
		if x == 13 {
			panic("thirteen")
		}
		out.Set("y", x)
		out.Verdict("fine")
		if s := in.Simulation(); s != nil {
			out.Notice(unit.Decimals(float64(s.Trials()), 0, in.System()) + " trials")
		}
	},
	Simulate: func(in *calc.In) calc.Trial {
		x := in.SI("x")
		return func(*rand.Rand) float64 {
			if x == 14 {
				panic("fourteen")
			}
			return x
		}
	},
}, {
	ID:       "plain",
	Verdicts: []calc.Verdict{{Key: "fine", Head: "fine", Sentence: "Fine."}},
	Compute:  func(in *calc.In, out *calc.Out) { out.Verdict("fine") },
}}

// newDesk has a clock that goes on by a millisecond whenever it is read.
func newDesk(t *testing.T) (*desk, *[]map[string]any) {
	posted := new([]map[string]any)
	clock := 0.0
	return &desk{
		book: book,
		now:  func() float64 { clock++; return clock },
		post: func(m map[string]any) { *posted = append(*posted, decoded(t, m).(map[string]any)) },
	}, posted
}

func ask(seq float64, worksheet, x string) map[string]any {
	return map[string]any{"seq": seq, "op": "evaluate", "worksheet": worksheet, "system": "us",
		"link": []any{}, "fields": []any{[]any{"x", x, "", "", true}}}
}

func last(posted *[]map[string]any) map[string]any { return (*posted)[len(*posted)-1] }

func TestAnswerThenCheck(t *testing.T) {
	d, posted := newDesk(t)
	d.take(ask(1, "echo", "5"))
	if m := last(posted); m["type"] != "answer" || m["seq"] != 1.0 || m["check"] != "running" {
		t.Fatalf("first: %v", m)
	}
	slices := 1
	for d.slice() {
		slices++
		if len(*posted) != 1 {
			t.Fatalf("posted before the simulation was complete: %v", last(posted))
		}
	}
	m := last(posted)
	if len(*posted) != 2 || m["seq"] != 1.0 || m["check"] != "done" {
		t.Fatalf("second of %d: %v", len(*posted), m)
	}
	notices := m["answer"].(map[string]any)["notices"].([]any)
	if len(notices) != 1 || notices[0] != "1,000,000 trials" {
		t.Errorf("checked with %v", notices)
	}
	// With this clock a slice ends after six looks, which are five batches.
	if want := calc.Trials / (5 * batch); slices != want {
		t.Errorf("%d slices, want %d", slices, want)
	}
	if d.slice() || len(*posted) != 2 {
		t.Error("it went on after the end")
	}
}

func TestNewerQuestionEndsCheck(t *testing.T) {
	d, posted := newDesk(t)
	d.take(ask(1, "echo", "5"))
	d.slice()
	d.take(ask(2, "echo", "6"))
	for d.slice() {
	}
	if m := last(posted); len(*posted) != 3 || m["seq"] != 2.0 || m["check"] != "done" {
		t.Errorf("%d messages, last %v", len(*posted), m)
	}
	d.take(ask(3, "echo", "5"))
	d.take(ask(4, "plain", ""))
	if m := last(posted); m["check"] != "none" || d.slice() {
		t.Errorf("a question without a check left one running: %v", m)
	}
}

func TestProblemNeedsNoCheck(t *testing.T) {
	d, posted := newDesk(t)
	d.take(ask(1, "echo", "five"))
	if m := last(posted); m["check"] != "none" || len(m["answer"].(map[string]any)["problems"].([]any)) != 1 || d.slice() {
		t.Errorf("%v", m)
	}
}

func TestConvert(t *testing.T) {
	d, posted := newDesk(t)
	m := ask(1, "echo", "5")
	m["op"], m["to"] = "convert", "metric"
	d.take(m)
	fields, _ := last(posted)["fields"].([]any)
	if last(posted)["type"] != "converted" || last(posted)["seq"] != 1.0 || len(fields) != 1 || fields[0].(map[string]any)["number"] != "5" {
		t.Errorf("%v", last(posted))
	}
}

func TestPanicIsTold(t *testing.T) {
	for _, test := range []struct {
		name string
		m    map[string]any
		says string
	}{
		{"in the answer", ask(2, "echo", "13"), "thirteen"},
		{"in the simulation", ask(2, "echo", "14"), "fourteen"},
		{"no such worksheet", ask(2, "nobody", ""), "no such worksheet"},
		{"no message at all", map[string]any{"seq": 2.0}, "does not understand"},
	} {
		d, posted := newDesk(t)
		d.take(ask(1, "echo", "5"))
		d.take(test.m)
		for d.slice() {
		}
		told := false
		for _, m := range *posted {
			says, _ := m["message"].(string)
			told = told || m["type"] == "failed" && m["seq"] == 2.0 && strings.Contains(says, test.says)
		}
		if !told {
			t.Errorf("%s: the page is not told", test.name)
		}
		d.take(ask(3, "echo", "5"))
		if m := last(posted); m["type"] != "answer" || m["seq"] != 3.0 {
			t.Errorf("%s: then %v", test.name, m)
		}
	}
}

// The page's example is practised so many times, and nobody hears of it.
func TestPractice(t *testing.T) {
	d, posted := newDesk(t)
	d.book, d.page, d.eager = worksheets.All, "loader", 3
	turns := 1
	for d.slice() {
		turns++
	}
	if turns != 3 || len(*posted) != 0 || d.slice() {
		t.Errorf("%d turns, %v", turns, *posted)
	}
	for _, page := range []string{"", "short"} {
		if d.page, d.eager = page, 3; d.slice() {
			t.Errorf("it practises %q, which has no slider", page)
		}
	}
}
