package table

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"
)

// Each text with what RFC 4180, section 2, or the habits of spreadsheets make of
// it. A row is its cells with a bar between, or "!" and its line for an error.
func TestRead(t *testing.T) {
	for _, test := range []struct {
		name, text, separator string
		want                  []string
	}{
		{"rule 1, lines", "a,b\r\n1,2\r\n", ",", []string{"a|b", "1|2"}},
		{"rule 2, no end of line", "a,b\r\n1,2", ",", []string{"a|b", "1|2"}},
		{"rule 4, spaces are part", "a,b\n 1 , 2", ",", []string{"a|b", " 1 | 2"}},
		{"rule 5, quotation marks", "\"a\",\"b\"\r\n\"1\",2\r\n", ",", []string{"a|b", "1|2"}},
		{"rule 6, separators and lines inside", "a,b\n\"x,\r\ny\",2\n3,4", ",", []string{"a|b", "x,\ny|2", "3|4"}},
		{"rule 7, a quotation mark inside", "a,b\n\"5\"\" hose\",2", ",", []string{"a|b", `5" hose|2`}},
		{"semicolons", "a;b\n1,5;2", ";", []string{"a|b", "1,5|2"}},
		{"tabs", "a\tb\n1,5\t2; 3", "\t", []string{"a|b", "1,5|2; 3"}},
		{"a separator inside quotation marks does not count", "\"a;b;c\",d\n1,2", ",", []string{"a;b;c|d", "1|2"}},
		{"one column", "reading\n182,5\n183;1", "\t", []string{"reading", "182,5", "183;1"}},
		{"byte-order mark", "\uFEFFa,b\n1,2", ",", []string{"a|b", "1|2"}},
		{"a mark of a stray old Mac", "a,b\r1,2\r", ",", []string{"a|b", "1|2"}},
		{"blank lines", "\n\na,b\n\n1,2\n,\n\n", ",", []string{"a|b", "1|2"}},
		{"empty columns at the end", "a,b,,\n1,2,,\n3,4", ",", []string{"a|b", "1|2", "3|4"}},
		{"too few", "a,b,c\n1,2\n3,4,5", ",", []string{"a|b|c", "!2", "3|4|5"}},
		{"too many", "a,b\n1,2,3\n4,5", ",", []string{"a|b", "!2", "4|5"}},
		{"an inch mark", "a,b\n5\" hose,2\n3,4", ",", []string{"a|b", `5" hose|2`, "3|4"}},
		{"never closed", "a,b\n\"1,2\n3,4\n5,6", ",", []string{"a|b", "!2", "3|4", "5|6"}},
		{"never closed before a good one", "a,b\n\"1,2\n3,4\n\"x, y\",6", ",", []string{"a|b", "!2", "3|4", "x, y|6"}},
	} {
		table, err := Read(test.text)
		if err != nil {
			t.Errorf("%s: %v", test.name, err)
			continue
		}
		var got []string
		for _, r := range table.Rows {
			if r.Error != "" {
				got = append(got, "!"+string(rune('0'+r.Line)))
			} else {
				got = append(got, strings.Join(r.Cells, "|"))
			}
		}
		if table.Separator != test.separator || !slices.Equal(got, test.want) {
			t.Errorf("%s: %q %q, want %q", test.name, table.Separator, got, test.want)
		}
	}
}

// Lines are those of the text, whatever stands between.
func TestLines(t *testing.T) {
	table, err := Read("\na,b\n\n\"1\n2\",3\n4,5\n\"6,7\n\n8,9")
	if err != nil {
		t.Fatal(err)
	}
	var lines []int
	for _, r := range table.Rows {
		lines = append(lines, r.Line)
	}
	if want := []int{2, 4, 6, 7, 9}; !slices.Equal(lines, want) {
		t.Errorf("lines %v, want %v", lines, want)
	}
}

func TestReadRefuses(t *testing.T) {
	for name, text := range map[string]string{
		"There is nothing":     "\uFEFF \r\n",
		"is nothing in it":     ",,\n\"\"\n",
		"This is no text":      "\x89PNG\r\n\x1a\n\x00\x00",
		"more than 20 MB":      strings.Repeat("a,b\n", MostBytes/4+1),
		"more than 100,000":    strings.Repeat("a,b\n", MostRows+2),
		"never closed. Where ": "a,b\n" + strings.Repeat("\"x\" y,1\n\"1,2\n", 60),
	} {
		if _, err := Read(text); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if table, err := Read(strings.Repeat("a,b\n", MostRows+1)); err != nil || len(table.Rows) != MostRows+1 {
		t.Errorf("the most there may be: %v", err)
	}
}

// Whatever is dropped on the page: no panic, lines that rise, rows without an
// error as wide as the first; and where the strict reader has no complaint, the
// same cells as it.
func FuzzRead(f *testing.F) {
	for _, text := range []string{"a,b\n1,2", "a;b\r\n\"1;2\";3", "a\tb\n\"", "\uFEFFa,\"b\n\n5\" x,y\n,,\n", "\"a\"\"b\",c\n\"\n\"\"\"\n"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		table, err := Read(text)
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		line := 0
		for i, r := range table.Rows {
			if r.Line <= line {
				t.Fatalf("row %d in line %d after %d", i, r.Line, line)
			}
			line = r.Line
			if r.Error == "" && len(table.Rows[0].Cells) > 0 && len(r.Cells) != len(table.Rows[0].Cells) {
				t.Fatalf("row %d has %d cells, the first %d", i, len(r.Cells), len(table.Rows[0].Cells))
			}
		}
		strict := csv.NewReader(strings.NewReader(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(strings.TrimPrefix(text, "\uFEFF"))))
		strict.Comma = rune(table.Separator[0])
		strict.FieldsPerRecord = -1
		all, err := strict.ReadAll()
		if err != nil {
			return
		}
		all = slices.DeleteFunc(all, func(cells []string) bool { return !slices.ContainsFunc(cells, filled) })
		if len(all) != len(table.Rows) {
			t.Fatalf("%d rows, the strict reader has %d", len(table.Rows), len(all))
		}
		for i, r := range table.Rows {
			for j, cell := range all[i] {
				if j < len(r.Cells) && cell != r.Cells[j] || j >= len(r.Cells) && filled(cell) {
					t.Fatalf("row %d: %q, the strict reader has %q", i, r.Cells, all[i])
				}
			}
		}
	})
}

func filled(cell string) bool { return strings.TrimSpace(cell) != "" }
