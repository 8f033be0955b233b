package many

import (
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

var book = worksheets.All

// answered takes a file through all of its rows.
func answered(t *testing.T, text, sheet string, sys unit.System, shared ...string) *Batch {
	t.Helper()
	f, err := Read(text)
	if err != nil {
		t.Fatal(err)
	}
	p := f.Plan(book, book.Lookup(sheet), sys)
	if len(p.Wrong) > 0 {
		t.Fatal(p.Wrong)
	}
	entries := calc.Entries{}
	for i := 0; i < len(shared); i += 2 {
		entries[shared[i]] = calc.Entry{Text: shared[i+1], Own: true}
	}
	b := p.Start(entries, sys)
	for b.Next() {
	}
	if len(b.Results) != b.Total() {
		t.Fatalf("%d of %d rows", len(b.Results), b.Total())
	}
	return b
}

func TestReadRefuses(t *testing.T) {
	for says, text := range map[string]string{
		"nothing in it":       "\n\n",
		"Only the line":       "reading,scale\n\n",
		"cannot be read":      "\"reading,scale\n1,2\n",
		"no text":             "\x89PNG\x00",
		"more than 100,000 r": "a\n" + strings.Repeat("1\n", 100_001),
	} {
		if _, err := Read(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", says, err)
		}
	}
}

// Each row is what Evaluate makes of the same entries, to the last bit.
func TestRowsAsEvaluate(t *testing.T) {
	b := answered(t, "machine,readings,scale,grade,low,high\nA,2600; 2620,4000,B,2680,2790\nB,190 bar,5000 psi,1.6,,2790\n", "reading", unit.US)
	for i, own := range []calc.Entries{
		{"readings": {Text: "2600; 2620", Own: true}, "scale": {Text: "4000", Own: true}, "grade": {Text: "B", Own: true}, "low": {Text: "2680", Own: true}, "high": {Text: "2790", Own: true}},
		{"readings": {Text: "190 bar", Own: true}, "scale": {Text: "5000", Own: true}, "grade": {Text: "1.6", Own: true}, "low": {Own: true}, "high": {Text: "2790", Own: true}},
	} {
		own["oil"], own["rpm"] = calc.Entry{Own: true}, calc.Entry{Own: true}
		a := book.Evaluate("reading", own, unit.US)
		r := &b.Results[i]
		if r.Error != "" || r.Head != a.Verdict.Head || r.Verdict != a.Verdict.ID {
			t.Errorf("row %d: %q %q, want %q", i, r.Error, r.Head, a.Verdict.Head)
			continue
		}
		texts := b.Texts(r)
		for j, g := range b.Worksheet.Answers() {
			want := a.Figure(g.ID)
			if texts[j] != want.Text || r.Figures[j].SI == r.Figures[j].SI && shortest(r.Figures[j].SI) != want.Value {
				t.Errorf("row %d, %s: %q %v, want %q %s", i, g.ID, texts[j], r.Figures[j].SI, want.Text, want.Value)
			}
		}
		if !equalLinks(r.Link, a.Link) {
			t.Errorf("row %d: link %v, want %v", i, r.Link, a.Link)
		}
	}
}

// The example's numbers never answer for a row that lacks them.
func TestNobodyIsJudgedByTheExample(t *testing.T) {
	for _, w := range book {
		rows := Example(book, w)
		for drop := 1; drop < len(rows[0]); drop++ {
			f := field(w, rows[0][drop])
			text := ""
			for _, r := range rows {
				cells := append(append([]string{}, r[:drop]...), r[drop+1:]...)
				for i := range cells {
					cells[i] = `"` + cells[i] + `"`
				}
				text += strings.Join(cells, ",") + "\n"
			}
			b := answered(t, text, w.ID, unit.US)
			lacks := f.Empty == "" && !f.Usual
			for _, r := range b.Results {
				if lacks && f.Only == nil && !strings.Contains(r.Error, "“"+f.Label+"” is not given") {
					t.Errorf("%s without %s: %q %q", w.ID, f.ID, r.Error, r.Head)
				}
				for _, p := range r.Link {
					if p.Key == "example" && lacks && strings.Contains(p.Value, f.ID) {
						t.Errorf("%s without %s: the example's is used", w.ID, f.ID)
					}
				}
			}
		}
	}
}

// The example file of every worksheet is answered as it stands.
func TestExampleFiles(t *testing.T) {
	for _, w := range book {
		text := ""
		for _, r := range Example(book, w) {
			text += `"` + strings.Join(r, `","`) + "\"\n"
		}
		f, err := Read(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := f.Guess(book, "reading"); got != w.ID {
			t.Errorf("%s: taken for %s", w.ID, got)
		}
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			b := answered(t, text, w.ID, sys)
			if b.Wrong > 0 || len(b.Plan.Taken) > 0 || b.Results[0].Head == "" {
				t.Errorf("%s: %v %v", w.ID, b.Results[0], b.Plan.Taken)
			}
		}
	}
}

func TestErrorsOfRows(t *testing.T) {
	b := answered(t, "name,readings,scale,grade\nA,2610,4000,B\nB,x,4000,B\nC,2610\nD,,4000,b\nE,9000,4000,Q\n", "reading", unit.US, "low", "2680 psi")
	for i, says := range []string{"", "“Gauge shows”: \"x\" is not a number", "This line has 2 cells", "“Gauge shows” is not given", "“Class or grade printed on the dial”: “Q” is not one"} {
		if got := b.Results[i].Error; (says == "") != (got == "") || !strings.Contains(got, says) {
			t.Errorf("row %d: %q, want %q", i, got, says)
		}
	}
	if b.Wrong != 4 {
		t.Errorf("%d wrong", b.Wrong)
	}
	if got := b.Results[0].Link; !equalLinks(got[5:6], []calc.Pair{{Key: "low", Value: "2680 psi"}}) && !has(got, "low", "2680 psi") {
		t.Errorf("given once for all: %v", got)
	}
}

func TestDecimalCommas(t *testing.T) {
	text := "Maschine;readings (bar);scale [bar];grade;low (bar);high (bar)\nA;182,5; 400;1,6;184,8;192,375\nB;180,25;400;1,6;184,8;192,375\n"
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		b := answered(t, text, "reading", sys)
		if b.Wrong > 0 || !has(b.Results[0].Link, "readings", "182.5 bar") || !has(b.Results[1].Link, "high", "192.375 bar") {
			t.Errorf("%v %v", b.Results[0].Error, b.Results[0].Link)
		}
	}
	// Without a sign of a decimal comma a metric reader is asked, row by row.
	b := answered(t, "readings;scale;grade\n1,825;400;1.6\n182;400;1.6\n", "reading", unit.Metric)
	if !strings.Contains(b.Results[0].Error, "two ways") || b.Results[1].Error != "" {
		t.Errorf("%q, %q", b.Results[0].Error, b.Results[1].Error)
	}
	b = answered(t, "readings\tscale\tgrade\n2,610\t4,000\tB\n", "reading", unit.US)
	if !has(b.Results[0].Link, "readings", "2610 psi") {
		t.Errorf("thousands: %v", b.Results[0].Link)
	}
}

func has(link []calc.Pair, key, value string) bool {
	for _, p := range link {
		if p.Key == key {
			return p.Value == value
		}
	}
	return false
}

// People write what is printed on a gauge in their own way.
func TestOption(t *testing.T) {
	var grade *calc.Field
	for i, f := range book.Lookup("reading").Fields {
		if f.ID == "grade" {
			grade = &book.Lookup("reading").Fields[i]
		}
	}
	for text, want := range map[string]string{
		"B": "B", "b": "B", "Grade B": "B", "grade 2a": "2A", "1.6": "1.6", "1,6": "1.6", "1.0": "1", "Class 2.5": "2.5", "class 4,0": "4",
		"Percent of reading": "of-reading", "not B": "not B", "3": "3", "": "", "class": "class", "NaN": "NaN",
	} {
		if got := option(grade, text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
