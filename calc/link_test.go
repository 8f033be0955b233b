package calc

import (
	"reflect"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

// text is a link as a reader sees it, for comparing.
func text(pairs []Pair) string {
	var parts []string
	for _, p := range pairs {
		parts = append(parts, p.Key+"="+p.Value)
	}
	return strings.Join(parts, "&")
}

func TestLinkWritten(t *testing.T) {
	// What the reader typed in metric, with decimal comma, is written with a point.
	e := own("p", "185,5", "list", "180; 181 bar", "pairs", "0,25 mm : 182")
	a := book.Evaluate("trial", e, unit.Metric)
	want := "v=1&p=185.5 bar&how=plain&list=180 bar; 181 bar&pairs=0.25 mm : 182 bar&limit=2790 psi&conf=95 %&temp=68 °F&many=" +
		"&example=how,limit,conf,temp&end=1"
	if got := text(a.Link); got != want {
		t.Errorf("%v\n%s, want\n%s", a.Problems, got, want)
	}
}

// TestLinkKeepsBadText: what could not be read goes on as it was typed.
func TestLinkKeepsBadText(t *testing.T) {
	a := book.Evaluate("trial", own("p", " 26oo psi "), unit.US)
	if a.OK() || !strings.Contains(text(a.Link), "&p=26oo psi&") {
		t.Errorf("%s", text(a.Link))
	}
}

func TestFromLink(t *testing.T) {
	got := FromLink([]Pair{{"v", "1"}, {"p", "2600 psi"}, {"limit", "2790 psi"}, {"p", "1 psi"}, {"new", "x"},
		{"example", "limit,gone,conf"}, {"end", "1)."}})
	want := Entries{
		"p":     {Text: "2600 psi", Own: true},
		"limit": {Text: "2790 psi"},
		"new":   {Text: "x", Own: true},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v", got)
	}
}

// TestLinkRoundTrip: a link gives the same figures to the last bit in either
// system, and the link of that answer is the same again.
func TestLinkRoundTrip(t *testing.T) {
	for _, e := range []Entries{
		nil,
		own("p", "2,655", "list", "185 bar; 2,601.5", "pairs", "1/32 in : 180 bar; 20 thou : 2,700", "limit", ""),
		own("how", "share", "share", "12.5"),
		{"p": {Text: "185", Unit: "bar", Own: true}, "list": {Text: "2600", Own: false}},
	} {
		a := book.Evaluate("trial", e, unit.US)
		if !a.OK() {
			t.Fatalf("%v", a.Problems)
		}
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			b := book.Evaluate("trial", FromLink(a.Link), sys)
			if !reflect.DeepEqual(a.Link, b.Link) || !reflect.DeepEqual(a.Examples, b.Examples) {
				t.Errorf("%s\nbecomes\n%s", text(a.Link), text(b.Link))
			}
			for i, f := range a.Figures {
				if g := b.Figures[i]; f.Value != g.Value {
					t.Errorf("%s: %s becomes %s", f.ID, f.Value, g.Value)
				}
			}
		}
	}
}

// TestExampleMarkTravels: a link with the example's numbers does not make them
// anybody's, even once the example has changed.
func TestExampleMarkTravels(t *testing.T) {
	entries := FromLink([]Pair{{"p", "2500 psi"}, {"limit", "2700 psi"}, {"example", "limit"}})
	a := book.Evaluate("trial", entries, unit.US)
	if !strings.HasPrefix(a.Verdict.Sentence, "With the example's way, readings and highest pressure: ") {
		t.Errorf("%q", a.Verdict.Sentence)
	}
	if !strings.Contains(a.Verdict.Sentence, "limit 2,700 psi") {
		t.Errorf("the link's number is lost: %q", a.Verdict.Sentence)
	}
	for _, s := range append(a.Fields, book.Convert("trial", entries, unit.US, unit.Metric)...) {
		if s.Own != (s.ID == "p") {
			t.Errorf("%s is the reader's: %v", s.ID, s.Own)
		}
	}
}

func TestCarried(t *testing.T) {
	tests := []struct {
		name string
		e    Entries
		want string
	}{
		// A single field and a figure of its own, the figure into a list, words
		// into a choice; the share hangs on a choice and stays behind, and the
		// example's own entry does.
		{"example", nil, "v=1&rows=5220 psi&way=plain&example=rows,way&end=1"},
		{"own", own("p", "185 bar"), "v=1&now=185 bar&rows=5366.4 psi&way=plain&example=way&end=1"},
		{"no such choice there", own("how", "share", "share", "5"), "v=1&rows=5220 psi&example=rows&end=1"},
	}
	for _, test := range tests {
		a := book.Evaluate("trial", test.e, unit.US)
		if len(a.Next) != 1 || a.Next[0].ID != "onto" {
			t.Fatalf("%s: %v", test.name, a.Problems)
		}
		if got := text(a.Next[0].Link); got != test.want {
			t.Errorf("%s: %s, want %s", test.name, got, test.want)
		}
		b := book.Evaluate("onto", FromLink(a.Next[0].Link), unit.Metric)
		if !b.OK() {
			t.Errorf("%s: arrives with %v", test.name, b.Problems)
		}
	}
}

// TestCarriedEmpty: what the reader emptied arrives empty where that means
// something, and not as the other page's example.
func TestCarriedEmpty(t *testing.T) {
	limit := Field{ID: "limit", Label: "Limit", Kind: unit.Pressure, Example: "2790 psi", Empty: "not known", Quantity: "limit"}
	needed := limit
	needed.ID, needed.Empty = "needed", ""
	says := []Verdict{{Key: "v", Head: "h", Sentence: "Up to {limit}."}}
	compute := func(in *In, out *Out) { out.Verdict("v") }
	b := Book{
		{ID: "from", Fields: []Field{limit}, Verdicts: says, Next: []Next{{ID: "to"}}, Compute: compute},
		{ID: "to", Fields: []Field{limit, needed}, Verdicts: says, Compute: compute},
	}
	for _, test := range []struct {
		e    Entries
		want string
	}{
		{own("limit", ""), "v=1&limit=&end=1"},
		{Entries{"limit": {Text: ""}}, "v=1&end=1"},
		{own("limit", "5"), "v=1&limit=5 psi&needed=5 psi&end=1"},
	} {
		if got := text(b.Evaluate("from", test.e, unit.US).Next[0].Link); got != test.want {
			t.Errorf("%+v: %s, want %s", test.e, got, test.want)
		}
	}
}

// TestUnused: a field that another wins over is left out of everything.
func TestUnused(t *testing.T) {
	w := &Worksheet{ID: "w",
		Fields: []Field{
			{ID: "a", Label: "A", Kind: unit.Number, Example: "1"},
			{ID: "b", Label: "B", Kind: unit.Number, Empty: "none"},
		},
		Verdicts: []Verdict{{Key: "v", Head: "h", Sentence: "S."}},
		Compute: func(in *In, out *Out) {
			if in.Has("b") {
				out.Unused("a")
			}
			out.Verdict("v")
		}}
	if a := (Book{w}).Evaluate("w", nil, unit.US); a.Verdict.Sentence != "With the example's numbers: s." {
		t.Error(a.Verdict.Sentence)
	}
	a := (Book{w}).Evaluate("w", own("b", "2"), unit.US)
	if a.Verdict.Sentence != "S." || text(a.Link) != "v=1&b=2&end=1" || len(a.Used) != 1 {
		t.Errorf("%+v", a)
	}
}
