package many

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

func shortest(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func equalLinks(a, b []calc.Pair) bool { return slices.Equal(a, b) }

func TestColumn(t *testing.T) {
	for _, test := range []struct{ sheet, name, field, unit string }{
		{"reading", "readings", "readings", ""},
		{"reading", "READINGS", "readings", ""},
		{"reading", "readings (psi)", "readings", "psi"},
		{"reading", "readings [bar]", "readings", "bar"},
		{"reading", "readings, bar", "readings", "bar"},
		{"reading", "readings kgf/cm2", "readings", "kgf/cm2"},
		{"reading", "reading", "readings", ""},
		{"reading", "Reading (psi)", "readings", "psi"},
		{"reading", "Gauge shows", "readings", ""},
		{"reading", "gauge shows psi", "readings", "psi"},
		{"reading", "Manual: lowest relief pressure", "low", ""},
		{"reading", "Manual: lowest relief presure (bar)", "low", "bar"},
		{"short", "Gauge good to ± (% of dial)", "accuracy", ""},
		{"reading", "Class", "grade", ""},
		{"reading", "Manual lowest bar", "low", "bar"},
		{"reading", "manual (psi)", "", ""}, // two begin so
		{"reading", "gauge", "", ""},
		{"tip", "load", "", ""}, // not how far ahead it is
		{"tip", "year", "", ""}, // nearly "rear"
		{"reading", "machine", "", ""},
		{"reading", "serial", "", ""},
		{"reading", "scale number", "", ""},
		{"reading", "low side", "", ""},
		{"reading", "gear (left)", "", ""},
		{"reading", "", "", ""},
		{"reading", "(psi)", "", ""},
		{"lift-test", "tests (psi : lb)", "tests", "psi"},
	} {
		c := columns(book.Lookup(test.sheet), []string{test.name})[0]
		id := ""
		if c.Field != nil {
			id = c.Field.ID
		}
		if id != test.field || c.Unit != test.unit || c.Wrong != "" {
			t.Errorf("%s, %q: %q in %q %s, want %q in %q", test.sheet, test.name, id, c.Unit, c.Wrong, test.field, test.unit)
		}
	}
}

// The first words of a label take no column for a field that has its own, and
// none when two columns begin so.
func TestColumnsBegun(t *testing.T) {
	for heading, want := range map[string]string{
		"Class,Manual lowest,Dial goes": "grade low scale",
		"Class,grade":                   "- grade",
		"Manual,Manual lowest":          "- low",
		"Class,class":                   "- -",
	} {
		var got []string
		for _, c := range columns(book.Lookup("reading"), strings.Split(heading, ",")) {
			id := "-"
			if c.Field != nil {
				id = c.Field.ID
			}
			got = append(got, id)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: %q, want %q", heading, got, want)
		}
	}
}

func TestWrongHeading(t *testing.T) {
	for heading, says := range map[string]string{
		"readings (kg),scale":     "“readings (kg)”: its unit must be psi, bar, MPa, kPa or kgf/cm²",
		"readings kg,scale":       "“readings kg”: its unit must be",
		"readings (today),scale":  "its unit must be",
		"readings,scale,scale":    "“scale” and “scale” are both taken",
		"readings,Gauge shows":    "“readings” and “Gauge shows” are both taken",
		"machine,owner":           "It knows: readings, scale, grade",
		"readings,grade (psi)":    "no unit belongs there",
		"readings,scale,rpm (lb)": "no unit belongs there",
	} {
		f, err := Read(heading + strings.Repeat("\n1,2,3", 2) + "\n")
		if err != nil {
			t.Fatal(err)
		}
		p := f.Plan(book, book.Lookup("reading"), unit.US)
		if !strings.Contains(strings.Join(p.Wrong, " "), says) {
			t.Errorf("%s: %q, want %q", heading, p.Wrong, says)
		}
	}
}

func TestGuess(t *testing.T) {
	for _, test := range []struct{ heading, now, want string }{
		{"machine,readings,scale,low,high", "reading", "reading"},
		{"machine,reading,scale,low,high", "reading", "reading"},
		{"machine,reading,scale,low,high", "short", "short"},
		{"machine,reading,scale,accuracy,low,high,lift,target", "reading", "short"},
		{"front,rear,wheelbase", "reading", "tip"},
		{"machine,owner", "reading", ""},
	} {
		f, err := Read(test.heading + "\n1\n")
		if err != nil {
			t.Fatal(err)
		}
		if got := f.Guess(book, test.now); got != test.want {
			t.Errorf("%s: %q, want %q", test.heading, got, test.want)
		}
	}
}

// A field that hangs on a choice is asked for only where a row makes that choice.
func TestMissing(t *testing.T) {
	for cell, asked := range map[string]bool{"B": false, "span": true, "percent of full scale": true} {
		f, _ := Read("readings,scale,grade\n2600,4000," + cell + "\n")
		p := f.Plan(book, book.Lookup("reading"), unit.US)
		ids := map[string]bool{}
		for _, m := range p.Missing {
			ids[m.ID] = true
		}
		if ids["percent"] != asked || !ids["low"] || ids["step"] || ids["oil"] || !strings.Contains(strings.Join(p.Usual, ";"), "Smallest step you can read 10 psi") {
			t.Errorf("%s: %v, usual %q", cell, ids, p.Usual)
		}
	}
}

// Whatever a file holds: words for what is wrong, or an answer for each row, and
// nothing panics on the way out.
func FuzzFile(f *testing.F) {
	for _, text := range []string{"machine,readings (psi),scale,grade\nA,2610;2620,4000,B\n", "reading;scale\n1,5;2\n\"", "tests\tGauge shows\n1:2\t3", "low,low (bar)\n1,2"} {
		f.Add(text, 1)
	}
	f.Fuzz(func(t *testing.T, text string, sheet int) {
		file, err := Read(text)
		if err != nil || len(file.Rows) > 50 {
			return
		}
		w := book[uint(sheet)%uint(len(book))]
		file.Guess(book, w.ID)
		p := file.Plan(book, w, unit.Metric)
		if len(p.Wrong) > 0 {
			return
		}
		b := p.Start(calc.Entries{}, unit.Metric)
		for b.Next() {
		}
		for by := -3; by < len(b.Columns); by++ {
			if len(b.Order(by, by%2 == 0)) != len(file.Rows) {
				t.Fatal("rows are lost in sorting")
			}
		}
		b.Picture()
		for i := range b.Results {
			r := &b.Results[i]
			if r.Error == "The calculator cannot work this row out" {
				t.Fatalf("panics: %q", text)
			}
			if (r.Error == "") != (r.Head != "") || len(b.Cells(r)) != len(b.Heading()) && len(file.Rows[i].Cells) <= len(file.Heading) {
				t.Fatalf("row %d: %q %q", i, r.Error, r.Head)
			}
		}
	})
}
