package main

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

func encoded(v any) string {
	var b strings.Builder
	encode(&b, v)
	return b.String()
}

// decoded is a message as the standard library reads it.
func decoded(t *testing.T, v any) (m any) {
	t.Helper()
	if err := json.Unmarshal([]byte(encoded(v)), &m); err != nil {
		t.Fatal(err)
	}
	return m
}

// What is written is what the standard library reads back, for every answer.
func TestEncodeAnswers(t *testing.T) {
	for _, w := range worksheets.All {
		for _, entries := range []calc.Entries{nil, {w.Fields[0].ID: {Text: "\"<\x00\xff\\é\u2028", Own: true}}} {
			a := worksheets.All.Evaluate(w.ID, entries, unit.US)
			m := decoded(t, answerMessage(7, "none", a)).(map[string]any)
			compare(t, w.ID, reflect.ValueOf(*a), m["answer"])
			if m["type"] != "answer" || m["seq"] != 7.0 || m["check"] != "none" {
				t.Errorf("%s: %v", w.ID, m)
			}
		}
	}
}

func TestEncodeValues(t *testing.T) {
	for _, c := range []struct {
		v    any
		want string
	}{
		{nil, "null"}, {true, "true"}, {-3, "-3"}, {0.1, "0.1"}, {1e300, "1e+300"}, {math.NaN(), "null"}, {math.Inf(-1), "null"}, {"", `""`}, {[]any{}, "[]"}, {map[string]any{}, "{}"},
		{[]any{"a", 1, nil}, `["a",1,null]`}, {map[string]any{"k": []any{false}}, `{"k":[false]}`},
		{"a\"b\\c\n\x1f", `"a\"b\\c\u000a\u001f"`}, {"x\xffy\ufffd", "\"x\ufffdy\ufffd\""}, {"2,655 psi ± 80 → ν", `"2,655 psi ± 80 → ν"`},
	} {
		if got := encoded(c.v); got != c.want {
			t.Errorf("%v: %s, want %s", c.v, got, c.want)
		}
	}
}

func FuzzEncode(f *testing.F) {
	f.Add("a\"\\\x00\xff\u2028")
	f.Fuzz(func(t *testing.T, s string) {
		var got string
		if err := json.Unmarshal([]byte(encoded(s)), &got); err != nil {
			t.Fatalf("%q: %v", s, err)
		}
		if want := strings.ToValidUTF8(s, "\ufffd"); len([]rune(got)) < len([]rune(want)) {
			t.Fatalf("%q became %q", s, got)
		}
	})
}
