package many

import (
	"slices"
	"strings"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// Plan is how a file's rows are answered.
type Plan struct {
	File      *File
	Worksheet *calc.Worksheet
	Columns   []Column
	Wrong     []string // what in the heading must be put right; with any, no row is answered
	Taken     []string // which columns were taken for which field, where it is not plain
	Missing   []Missing
	Usual     []string // usual values that are taken for what the file leaves out
	comma     bool     // a comma in a number is the decimal mark
	book      calc.Book
}

// Missing is a field that the file leaves out, to be given once for all rows.
type Missing struct {
	*calc.Field
	Needed  bool   // every row needs it
	Example string // the example's value, to show what is meant
}

// Plan takes the columns for fields of a worksheet.
func (f *File) Plan(book calc.Book, w *calc.Worksheet, sys unit.System) *Plan {
	p := &Plan{File: f, Worksheet: w, Columns: columns(w, f.Heading), book: book}
	seen := map[string]string{}
	for _, c := range p.Columns {
		if c.Wrong != "" {
			p.Wrong = append(p.Wrong, c.Wrong)
		}
		if c.Field == nil {
			continue
		}
		if other, twice := seen[c.Field.ID]; twice {
			p.Wrong = append(p.Wrong, "Columns “"+other+"” and “"+c.Name+"” are both taken as “"+c.Field.Label+"”; keep one, or name the other differently.")
		}
		seen[c.Field.ID] = c.Name
		if !c.exact {
			p.Taken = append(p.Taken, "“"+c.Name+"” is taken as "+c.Field.ID+", “"+c.Field.Label+"”.")
		}
	}
	if len(seen) == 0 {
		var ids []string
		for i := range w.Fields {
			ids = append(ids, w.Fields[i].ID)
		}
		p.Wrong = append(p.Wrong, "No column has a name that “"+w.Title+"” knows. It knows: "+strings.Join(ids, ", ")+".")
	}
	p.missing(seen, sys)
	if p.comma = p.commas(); p.comma {
		p.Taken = append(p.Taken, "A comma in a number is taken as the decimal comma.")
	}
	return p
}

// missing sorts the fields that have no column.
func (p *Plan) missing(seen map[string]string, sys unit.System) {
	example := map[string]string{}
	for _, u := range p.book.Evaluate(p.Worksheet.ID, nil, sys).Used {
		example[u.ID] = u.Text
	}
	for i := range p.Worksheet.Fields {
		f := &p.Worksheet.Fields[i]
		text := example[f.ID]
		switch _, there := seen[f.ID]; {
		case there, !p.bears(f):
		case f.Usual:
			if text != "" {
				p.Usual = append(p.Usual, f.Label+" "+text)
			}
		case f.Empty == "":
			if text == "" {
				text = f.Example
			}
			p.Missing = append(p.Missing, Missing{f, f.Only == nil, text})
		case !f.More:
			p.Missing = append(p.Missing, Missing{f, false, text})
		}
	}
}

// bears reports whether any row may need a field: one that hangs on a choice does
// only where that choice is made.
func (p *Plan) bears(f *calc.Field) bool {
	if f.Only == nil {
		return true
	}
	for i, c := range p.Columns {
		if c.Field == nil || c.Field.ID != f.Only.Field {
			continue
		}
		for _, r := range p.File.Rows {
			if r.Error == "" && slices.Contains(f.Only.In, option(c.Field, strings.TrimSpace(r.Cells[i]))) {
				return true
			}
		}
		return false
	}
	return true
}

// commas reports whether the numbers in the file's columns show that a comma is
// the decimal mark: some can be read no other way, and none has a point.
func (p *Plan) commas() bool {
	found := false
	for i, c := range p.Columns {
		if c.Field == nil || c.Field.Shape == calc.Choice {
			continue
		}
		for _, r := range p.File.Rows {
			if r.Error != "" {
				continue
			}
			for number := range numbers(r.Cells[i]) {
				before, after, comma := strings.Cut(number, ",")
				switch {
				case strings.Contains(number, "."), strings.Contains(after, ","):
					return false
				case comma && (len(after) != 3 || before == "" || before[0] == '0' || len(before) > 3) && after != "":
					found = true
				}
			}
		}
	}
	return found
}

// numbers gives the runs of digits, points and commas that begin with a digit.
func numbers(cell string) func(yield func(string) bool) {
	return func(yield func(string) bool) {
		for i := 0; i < len(cell); i++ {
			if cell[i] < '0' || cell[i] > '9' {
				continue
			}
			j := i
			for j < len(cell) && strings.IndexByte("0123456789.,", cell[j]) >= 0 {
				j++
			}
			if !yield(strings.TrimRight(cell[i:j], ".,")) {
				return
			}
			i = j
		}
	}
}

// pointed writes a decimal comma between digits as a point.
func pointed(cell string) string {
	if strings.IndexByte(cell, ',') < 0 {
		return cell
	}
	b := []byte(cell)
	digit := func(i int) bool { return i >= 0 && i < len(b) && b[i] >= '0' && b[i] <= '9' }
	for i := range b {
		if b[i] == ',' && digit(i-1) && digit(i+1) {
			b[i] = '.'
		}
	}
	return string(b)
}
