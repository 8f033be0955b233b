// Package many answers a worksheet for every row of a table: readings from many
// machines at once.
//
// A File is a table as it was given. A Plan says which of its columns is which
// field of a worksheet, what is missing, and what must be put right. A Batch
// answers row after row and puts the rows in order.
//
// Nobody's machine is answered with the example's numbers: a field that the file
// leaves out is given once for all rows, or may be empty, or has a usual value
// that anyone may keep (calc.Field.Usual); otherwise the rows say that it is missing.
package many

import (
	"errors"
	"strings"

	"plainlift/calc"
	"plainlift/calc/table"
	"plainlift/calc/unit"
)

// File is a table whose first row names its columns.
type File struct {
	Heading []string
	Rows    []table.Row
}

// Read takes a file's text. Its error says in words what is wrong with the whole.
func Read(text string) (*File, error) {
	t, err := table.Read(text)
	switch {
	case err != nil:
		return nil, err
	case t.Rows[0].Error != "":
		return nil, errors.New("The first line, which should name the columns, cannot be read. " + t.Rows[0].Error + ".")
	case len(t.Rows) == 1:
		return nil, errors.New("Only the line that names the columns is there. Each further line is a machine.")
	}
	f := &File{Heading: t.Rows[0].Cells, Rows: t.Rows[1:]}
	for i, name := range f.Heading {
		f.Heading[i] = strings.TrimSpace(name)
	}
	return f, nil
}

// Guess returns the worksheet that knows most of the heading's names. Of several
// it is now, if that is among them, else the one that knows most by their ids,
// else the first in the book; "" when no column is a field of any.
func (f *File) Guess(book calc.Book, now string) string {
	best, most := "", 0
	for _, w := range book {
		score := 0
		for _, c := range columns(w, f.Heading) {
			if c.Field != nil {
				score += 1000
			}
			if c.exact {
				score++
			}
		}
		if w.ID == now && score > 0 {
			score += 999
		}
		if score > most {
			best, most = w.ID, score
		}
	}
	return best
}

// Example returns a file that would be right: the worksheet's example, for two machines.
func Example(book calc.Book, w *calc.Worksheet) [][]string {
	heading, row := []string{"machine"}, []string{"first"}
	for _, p := range book.Evaluate(w.ID, nil, unit.US).Link {
		if field(w, p.Key) != nil {
			heading, row = append(heading, p.Key), append(row, p.Value)
		}
	}
	second := append([]string{"second"}, row[1:]...)
	return [][]string{heading, row, second}
}

func field(w *calc.Worksheet, id string) *calc.Field {
	for i := range w.Fields {
		if w.Fields[i].ID == id {
			return &w.Fields[i]
		}
	}
	return nil
}
