package main

import (
	"strings"
	"testing"

	"plainlift/calc/worksheets"
)

const someRows = "machine,readings,scale,grade,low,high\nred,2500,4000,B,2680,2790\nblue,x,4000,B,2680,2790\ngreen,2735,4000,A,2680,2790\n"

// manyDesk has the real worksheets and a way to ask.
func manyDesk(t *testing.T) (*desk, func(op string, more ...any) map[string]any) {
	d, posted := newDesk(t)
	d.book = worksheets.All
	seq := 0.0
	return d, func(op string, more ...any) map[string]any {
		seq++
		m := map[string]any{"seq": seq, "op": op, "system": "us", "worksheet": "reading", "link": []any{}, "fields": []any{}}
		for i := 0; i < len(more); i += 2 {
			m[more[i].(string)] = more[i+1]
		}
		before := len(*posted)
		d.take(m)
		for d.someRows() {
		}
		if len(*posted) == before {
			return nil
		}
		return last(posted)
	}
}

func TestMany(t *testing.T) {
	d, ask := manyDesk(t)
	d.job = new(job)
	m := ask("many-file", "text", someRows, "worksheet", "short")
	if m["type"] != "many-file" || m["worksheet"] != "reading" || m["total"] != 3.0 || len(m["wrong"].([]any)) > 0 || len(m["missing"].([]any)) > 0 {
		t.Fatalf("%v", m)
	}
	m = ask("many-run")
	if m["type"] != "many-run" || m["seq"] != 2.0 || m["done"] != 3.0 || m["wrong"] != 1.0 || m["stopped"] != false || !strings.HasPrefix(m["picture"].(string), "<svg") {
		t.Fatalf("%v", m)
	}
	m = ask("many-rows", "by", -2.0, "down", false, "from", 0.0, "count", 2.0)
	rows := m["rows"].([]any)
	first := rows[0].(map[string]any)["cells"].([]any)
	if len(rows) != 2 || m["done"] != 3.0 || first[0] != 2.0 || first[1] != "red" || first[2] != "Low by 180 psi" || len(first) != len(m["heading"].([]any)) {
		t.Errorf("%v", m)
	}
	m = ask("many-out", "from", 1.0, "count", 500.0)
	rows = m["rows"].([]any)
	if bad := rows[0].(map[string]any); len(rows) != 2 || bad["cells"].([]any)[1] != "x" || !strings.Contains(bad["error"].(string), "not a number") {
		t.Errorf("%v", m)
	}
	if m = ask("many-rows", "from", 1e9, "count", -3.0); len(m["rows"].([]any)) != 0 {
		t.Errorf("%v", m)
	}
	if m = ask("many-example"); len(m["rows"].([]any)) != 3 {
		t.Errorf("%v", m)
	}
	if d.job == nil {
		t.Error("a simulation was ended")
	}
}

// What the file leaves out is asked for, and once given answers every row.
func TestManyMissing(t *testing.T) {
	_, ask := manyDesk(t)
	m := ask("many-file", "text", "reading (bar);scale\n182,5;400\n183,25;400\n")
	missing := m["missing"].([]any)
	if f := missing[0].(map[string]any); f["id"] != "grade" || f["needed"] != true || len(f["options"].([]any)) < 5 {
		t.Fatalf("%v", missing)
	}
	if m = ask("many-run"); m["wrong"] != 2.0 {
		t.Errorf("%v", m)
	}
	field := func(id, text string) any { return []any{id, text, "", "", true} }
	m = ask("many-run", "system", "metric", "fields", []any{field("grade", "1.6"), field("low", ""), field("high", "192 bar")})
	if m["wrong"] != 0.0 {
		t.Errorf("%v", ask("many-rows", "by", -1.0, "from", 0.0, "count", 9.0))
	}
}

// A run goes on in slices between which the page is told and may stop it.
func TestManyStops(t *testing.T) {
	d, posted := newDesk(t)
	d.book = worksheets.All
	text := "readings,scale,grade\n" + strings.Repeat("2600,4000,B\n", 2000)
	d.take(map[string]any{"seq": 1.0, "op": "many-file", "text": text, "system": "us", "worksheet": "reading"})
	d.take(map[string]any{"seq": 2.0, "op": "many-run", "system": "us", "link": []any{}, "fields": []any{}})
	for range 10 {
		if !d.someRows() {
			t.Fatal("over too soon")
		}
	}
	if m := last(posted); m["type"] != "many-progress" || m["seq"] != 2.0 || m["total"] != 2000.0 {
		t.Errorf("%v", m)
	}
	d.take(map[string]any{"op": "many-stop"})
	m := last(posted)
	if m["type"] != "many-run" || m["seq"] != 2.0 || m["stopped"] != true || m["done"].(float64) < 100 || m["done"].(float64) > 1000 {
		t.Errorf("%v", m)
	}
	if d.someRows() {
		t.Error("it goes on")
	}
	n := len(*posted)
	if d.take(map[string]any{"op": "many-stop"}); len(*posted) != n {
		t.Error("stopped twice")
	}
}

// Whatever is asked out of turn is answered in words.
func TestManyOutOfTurn(t *testing.T) {
	_, ask := manyDesk(t)
	for _, op := range []string{"many-run", "many-plan"} {
		if m := ask(op); m["error"] != noTable {
			t.Errorf("%s: %v", op, m)
		}
	}
	for _, op := range []string{"many-rows", "many-out"} {
		if m := ask(op, "from", 0.0, "count", 5.0); len(m["rows"].([]any)) != 0 {
			t.Errorf("%s: %v", op, m)
		}
	}
	if m := ask("many-file", "text", "\x89PNG\x00"); !strings.Contains(m["error"].(string), "no text") {
		t.Errorf("%v", m)
	}
	if m := ask("many-file", "text", "readings (kg),scale\n1,2\n"); len(m["wrong"].([]any)) != 1 {
		t.Errorf("%v", m)
	}
	if m := ask("many-run"); m["error"] != noTable {
		t.Errorf("a wrong heading is answered: %v", m)
	}
}
