package calc

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// trial is a worksheet with a field of every shape and a figure of every
// rounding, for the tests of the engine. Its numbers are invented.
var trial = &Worksheet{
	ID: "trial", Title: "Does the engine hold?",
	Fields: []Field{
		{ID: "p", Label: "Gauge shows", Noun: "reading", Kind: unit.Pressure, Example: "2,610 psi", Range: Pressures, Quantity: "pressure now"},
		{ID: "how", Label: "Way", Noun: "way", Shape: Choice, Options: []Option{{"plain", "as it is"}, {"share", "with a share"}}},
		{ID: "share", Label: "Share", Noun: "share", Kind: unit.Percent, Example: "2 %", Range: Percents,
			Only: &Only{Field: "how", In: []string{"share"}}, Quantity: "share"},
		{ID: "list", Label: "Readings", Noun: "readings", Kind: unit.Pressure, Shape: List, Example: "2,600; 2,620 psi", Range: Pressures, MaxLen: 5},
		{ID: "pairs", Label: "Trials", Noun: "trials", Kind: unit.Thickness, With: unit.Pressure, Shape: Pairs, Empty: "none",
			Range: Thickness, RangeTo: Pressures},
		{ID: "limit", Label: "Manual: highest", Noun: "highest pressure", Kind: unit.Pressure, Example: "2,790 psi", Range: Pressures, Empty: "not known"},
		{ID: "conf", Label: "Confidence", Noun: "confidence", Kind: unit.Percent, Example: "95 %", Range: Confidence, Usual: true},
		{ID: "temp", Label: "Temperature", Noun: "temperature", Kind: unit.Temperature, Example: "68 °F", Range: Range{Min: "-40 °C", Max: "120 °C"}, Usual: true, Signed: true},
		{ID: "many", Label: "Some more", Noun: "some more", Kind: unit.Pressure, Shape: List, Empty: "none", Range: Pressures},
	},
	Figures: []Figure{
		{ID: "double", Label: "Twice", Kind: unit.Pressure, Quantity: "pressure twice", From: []string{"p"}},
		{ID: "near", Label: "Near the limit", Kind: unit.Pressure, Round: ByDoubt, Against: []string{"limit"}},
		{ID: "part", Label: "Part", Kind: unit.Percent, Round: Chance, Against: []string{"conf"}},
		{ID: "word", Label: "Word", Round: Words, Quantity: "way", From: []string{"how"}},
		{ID: "inverse", Label: "One over the list's spread", Kind: unit.Number, Round: Two},
	},
	Verdicts: []Verdict{
		{Key: "fine", Head: "Twice is {double}", Sentence: "It is {double:n} over {p}, limit {limit}."},
		{Key: "dear", ID: "fine", Head: "Much", Sentence: "{p} is much."},
	},
	Next: []Next{{ID: "onto", Text: "On"}},
	Compute: func(in *In, out *Out) {
		p := in.SI("p")
		if l := in.List("list"); l[0] > 3*p {
			out.RowProblem("list", 0, "More than three times {p}")
			return
		}
		out.Set("double", 2*p)
		out.SetDoubt("near", p, 0.03*p)
		out.Set("part", in.SI("conf"))
		out.Text("word", in.Choice("how"), "the way")
		l := in.List("list")
		out.Set("inverse", 1/(l[len(l)-1]-l[0]))
		if p > 300e5 {
			out.Verdict("dear")
		} else {
			out.Verdict("fine")
		}
		out.Line("{list} and {pairs}")
		out.Caution("limit", "limit")
	},
	Simulate: func(in *In) Trial {
		p := in.SI("p")
		return func(r *rand.Rand) float64 { return p * r.Float64() }
	},
}

// onto takes what trial knows.
var onto = &Worksheet{
	ID: "onto",
	Fields: []Field{
		{ID: "now", Label: "Now", Noun: "reading", Kind: unit.Pressure, Example: "2,000 psi", Range: Pressures, Quantity: "pressure now"},
		{ID: "rows", Label: "Rows", Noun: "readings", Kind: unit.Pressure, Shape: List, Example: "2,000 psi", Range: Pressures, Quantity: "pressure twice"},
		{ID: "way", Label: "Way", Noun: "way", Shape: Choice, Options: []Option{{"plain", "plain"}}, Quantity: "way"},
		{ID: "share", Label: "Share", Noun: "share", Kind: unit.Percent, Example: "3 %", Range: Percents, Quantity: "share"},
		{ID: "other", Label: "Other", Noun: "other", Kind: unit.Load, Example: "1 lb", Range: Loads},
	},
	Verdicts: []Verdict{{Key: "ok", Head: "Ok", Sentence: "Ok {now}."}},
	Compute:  func(in *In, out *Out) { out.Verdict("ok") },
}

var book = Book{trial, onto}

// own is entries that are the reader's, from id, text pairs.
func own(pairs ...string) Entries {
	e := Entries{}
	for i := 0; i < len(pairs); i += 2 {
		e[pairs[i]] = Entry{Text: pairs[i+1], Own: true}
	}
	return e
}

func TestLookup(t *testing.T) {
	if book.Lookup("trial") != trial || book.Lookup("none") != nil {
		t.Error("Lookup finds the wrong worksheet")
	}
	if book.Evaluate("none", nil, unit.US) != nil || book.Convert("none", nil, unit.US, unit.Metric) != nil ||
		book.Simulation("none", nil, unit.US) != nil {
		t.Error("a worksheet that is not there gives an answer")
	}
}

func TestExampleAnswer(t *testing.T) {
	a := book.Evaluate("trial", nil, unit.US)
	want := Said{"fine", "Twice is 5,220 psi", "With the example's numbers: it is 5,220 over 2,610 psi, limit 2,790 psi."}
	if !a.OK() || a.Verdict != want {
		t.Errorf("verdict %+v, problems %v", a.Verdict, a.Problems)
	}
	if a.Lines[0] != "2,600; 2,620 psi and none" {
		t.Errorf("line %q", a.Lines[0])
	}
	if len(a.Cautions) != 1 {
		t.Errorf("%d cautions, want each once", len(a.Cautions))
	}
	if f := a.Figure("verdict"); f == nil || f.Value != "fine" || f.Text != a.Verdict.Head {
		t.Errorf("verdict figure %+v", f)
	}
	if a.Figure("none") != nil {
		t.Error("a figure that is not there is found")
	}
}

// TestSharedID holds two branches to one permanent id.
func TestSharedID(t *testing.T) {
	a := book.Evaluate("trial", own("p", "301 bar"), unit.Metric)
	if a.Verdict.ID != "fine" || a.Verdict.Head != "Much" {
		t.Errorf("verdict %+v", a.Verdict)
	}
}

func TestFigureThatDoesNotExist(t *testing.T) {
	a := book.Evaluate("trial", own("list", "2600; 2600"), unit.US)
	f := a.Figure("inverse")
	if f.Value != "" || !strings.Contains(f.Text, "does not work out") {
		t.Errorf("1/0 gives %+v", f)
	}
}

func TestPrefix(t *testing.T) {
	full := []string{"p", "2610 psi", "how", "plain", "list", "2600; 2620", "limit", "2790"}
	tests := []struct {
		name    string
		entries Entries
		want    string
	}{
		{"untouched", nil, "With the example's numbers: it is"},
		{"a usual value changed", own("conf", "90"), "With the example's reading, way, readings and highest pressure: it is"},
		{"one left", own(full[:6]...), "With the example's highest pressure: it is"},
		{"two left", own(full[:4]...), "With the example's readings and highest pressure: it is"},
		{"none left", own(full...), "It is"},
		{"emptied, not left", own(append(full[:6:6], "limit", "")...), "It is"},
		{"out of play", own(append(full[:8:8], "share", "1")...), "It is"},
		{"in play", own(append(full[:8:8], "how", "share")...), "With the example's share: it is"},
	}
	for _, test := range tests {
		a := book.Evaluate("trial", test.entries, unit.US)
		if !strings.HasPrefix(a.Verdict.Sentence, test.want) {
			t.Errorf("%s: %q, want it to begin %q", test.name, a.Verdict.Sentence, test.want)
		}
	}
}

// TestExampleMarks: the same text counts as the reader's once it is own.
func TestExampleMarks(t *testing.T) {
	a := book.Evaluate("trial", Entries{"p": {Text: "2,610 psi"}, "limit": {Text: "2790", Own: true}}, unit.US)
	marks := map[string]bool{}
	for _, f := range a.Fields {
		marks[f.ID] = f.Example
	}
	if !marks["p"] || marks["limit"] || marks["conf"] || marks["share"] || marks["pairs"] {
		t.Errorf("example marks %v", marks)
	}
	if got := strings.Join(a.Examples, " "); got != "p how list" {
		t.Errorf("still the example's: %s", got)
	}
}

func TestProblemLeavesNoFigures(t *testing.T) {
	a := book.Evaluate("trial", own("p", "abc", "limit", "-5"), unit.US)
	if len(a.Problems) != 2 || len(a.Figures) != 0 || a.Picture != "" || a.Verdict.Head != "Check “Gauge shows”" {
		t.Errorf("%+v", a)
	}
	if !strings.HasPrefix(a.Verdict.Sentence, "“Gauge shows” needs fixing") {
		t.Errorf("sentence %q", a.Verdict.Sentence)
	}
}

// TestProblemQuotes: what Compute complains of names the entry, not its braces.
func TestProblemQuotes(t *testing.T) {
	a := book.Evaluate("trial", own("p", "100 psi", "list", "400 psi"), unit.US)
	want := Problem{Field: "list", Row: 0, Message: "More than three times 100 psi"}
	if len(a.Problems) != 1 || a.Problems[0].Message != want.Message || a.Problems[0].Row != want.Row {
		t.Errorf("%+v", a.Problems)
	}
}

func TestUnknownKeys(t *testing.T) {
	// Braces come from the reader here and must not be taken for a quote.
	a := book.Evaluate("trial", own("{nothing}", "1", "zz", "2"), unit.US)
	if !a.OK() || len(a.Notices) != 1 || !strings.Contains(a.Notices[0], "“zz”, “{nothing}”") {
		t.Errorf("%v %v", a.Notices, a.Problems)
	}
	many := Entries{}
	for _, k := range strings.Fields("a1 b1 c1 d1 e1 f1 g1") {
		many[k] = Entry{}
	}
	if n := book.Evaluate("trial", many, unit.US).Notices; len(n) != 1 || !strings.Contains(n[0], "“e1”, 2 more") {
		t.Errorf("%v", n)
	}
}

func TestWrongDeclarationsPanic(t *testing.T) {
	tests := map[string]func(in *In, out *Out){
		"reads what is not declared":    func(in *In, out *Out) { in.SI("nothing") },
		"sets what is not declared":     func(in *In, out *Out) { out.Set("nothing", 1) },
		"leaves a figure out":           func(in *In, out *Out) { out.Verdict("v") },
		"chooses no verdict":            func(in *In, out *Out) { out.Set("f", 1) },
		"chooses an undeclared verdict": func(in *In, out *Out) { out.Verdict("w") },
		"quotes what is not declared":   func(in *In, out *Out) { out.Set("f", 1); out.Verdict("v"); out.Line("{x}") },
		"does not close a brace":        func(in *In, out *Out) { out.Set("f", 1); out.Verdict("v"); out.Line("{f") },
		"quotes a figure too early":     func(in *In, out *Out) { out.Words("{f}") },
		"complains about no field":      func(in *In, out *Out) { out.Problem("f", "no") },
		"cautions about nothing":        func(in *In, out *Out) { out.Caution("nothing") },
		"names no field":                func(in *In, out *Out) { in.Noun("f") },
	}
	for name, compute := range tests {
		w := &Worksheet{ID: "w", Figures: []Figure{{ID: "f"}}, Verdicts: []Verdict{{Key: "v"}}, Compute: compute}
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("a worksheet that %s goes unnoticed", name)
				}
			}()
			Book{w}.Evaluate("w", nil, unit.US)
		}()
	}
	w := &Worksheet{ID: "w", Verdicts: []Verdict{{Key: "v"}}, Next: []Next{{ID: "gone"}}, Compute: func(in *In, out *Out) { out.Verdict("v") }}
	defer func() {
		if recover() == nil {
			t.Error("a way on to nowhere goes unnoticed")
		}
	}()
	Book{w}.Evaluate("w", nil, unit.US)
}

func TestIn(t *testing.T) {
	in, _ := trial.read(own("pairs", "0.01 in : 2,655 psi", "limit", ""), unit.Metric)
	if got := in.Pairs("pairs"); len(got) != 1 || got[0].A != 0.01*0.0254 {
		t.Errorf("pairs %v", got)
	}
	if !math.IsNaN(in.SI("limit")) || in.Has("limit") || !in.Own("limit") || in.Own("p") {
		t.Error("an emptied field is not the reader's, or not empty")
	}
	if in.Noun("p") != "reading" || in.System() != unit.Metric || in.Simulation() != nil || in.Choice("how") != "plain" {
		t.Error("In misreports its worksheet")
	}
	if got := in.Shown(unit.Pressure, 2e7); got != 200 {
		t.Errorf("20 MPa shown as %v bar", got)
	}
}

func TestBudget(t *testing.T) {
	var a Answer
	in, _ := trial.read(nil, unit.US)
	out := &Out{w: trial, in: in, answer: &a}
	stated := math.Inf(1)
	out.Budget(unit.Number, doubt.Budget{
		{Name: "wide", U: 10, Sens: 1, DOF: stated}, {Name: "narrow", U: 0.9, Sens: 1, DOF: stated}, {Name: "none", Sens: 1, DOF: stated},
	}, []string{"±17", "±1.6", "±0"})
	var shares []string
	for _, r := range a.Budget {
		shares = append(shares, r.Text)
	}
	if got := strings.Join(shares, ", "); got != "over 99 %, under 1 %, 0 %" {
		t.Error(got)
	}
}
