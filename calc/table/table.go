// Package table reads a table of text, as a spreadsheet saves or copies one.
//
// It reads comma-separated values as RFC 4180 describes them, the same with
// semicolons where the comma is the decimal mark, and with tabs, as a copied
// range has them. What is wrong with one row is said of that row.
package table

import (
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"
)

// Table is a table of text.
type Table struct {
	Separator string // "," or ";" or a tab; a tab as well where there is only one column
	Rows      []Row  // the heading first; lines without anything are left out
}

// Row is one row. Its cells are as they stood; with an error they may be fewer.
type Row struct {
	Line  int // where it begins, counted from 1
	Cells []string
	Error string // what is wrong with it as a row, in words
}

// Limits of what is read.
const (
	MostRows  = 100_000    // beside the heading
	MostBytes = 20_000_000 // of text
)

var errNothing = errors.New("There is nothing in it. The first line names the columns, each further line is a row.")

// Read takes a text apart. It finds the separator by itself, from the first line.
// Its error says what is wrong with the text as a whole and what would be right.
func Read(text string) (*Table, error) {
	text = strings.TrimPrefix(text, "\uFEFF")
	switch {
	case len(text) > MostBytes:
		return nil, errors.New("This is more than 20 MB of text. Split the file and take the parts one after the other.")
	case strings.ContainsRune(text, 0):
		return nil, errors.New("This is no text. Save the table as CSV (UTF-8) and take that file.")
	case strings.TrimSpace(text) == "":
		return nil, errNothing
	}
	t := &Table{Separator: separator(text)}
	if err := t.read(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)); err != nil {
		return nil, err
	}
	if len(t.Rows) == 0 {
		return nil, errNothing
	}
	return t, nil
}

// separator is the one that parts the first line into most cells; a tab where
// none does.
func separator(text string) string {
	text = strings.TrimLeft(text, "\r\n")
	quoted := false
	count := [...]int{'\t': 0, ',': 0, ';': 0}
	for i := 0; i < len(text); i++ {
		c := text[i]
		switch {
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '\n' || c == '\r':
			i = len(text)
		case int(c) < len(count):
			count[c]++
		}
	}
	best := byte('\t')
	for _, c := range []byte(";,") {
		if count[c] > count[best] {
			best = c
		}
	}
	return string(best)
}

// misquoted is how many rows may have a quotation mark that is never closed:
// each has all the rest of the text looked at once more.
const misquoted = 20

// read takes the rows of a text whose lines end in "\n".
func (t *Table) read(text string) error {
	bad := 0
	for line, from := 1, 0; ; bad++ {
		again, at, err := t.readFrom(text[from:], line)
		if err != nil || at == 0 {
			return err
		}
		if bad == misquoted {
			return errors.New("Line " + strconv.Itoa(again) + " is the " + strconv.Itoa(bad+1) + "th with a quotation mark that is never closed. Where a cell begins with a quotation mark of its own, put the cell in quotation marks and write its own twice.")
		}
		line, from = again+1, from+at
	}
}

// readFrom takes rows up to the first whose quotation mark is never closed: it
// returns that row's line and where the next one begins, or 0 at the end.
func (t *Table) readFrom(text string, line int) (badLine, next int, err error) {
	r := t.reader(text)
	for {
		start := int(r.InputOffset())
		cells, err := r.Read()
		if err == io.EOF {
			return 0, 0, nil
		}
		if len(t.Rows) > MostRows {
			return 0, 0, errors.New("These are more than 100,000 rows. Split the file and take the parts one after the other.")
		}
		var odd *csv.ParseError
		if errors.As(err, &odd) {
			for text[start] == '\n' {
				start++
			}
			end := len(text)
			if i := strings.IndexByte(text[start:], '\n'); i >= 0 {
				end = start + i + 1
			}
			at := line + odd.StartLine - 1
			if odd.Line > odd.StartLine {
				t.Rows = append(t.Rows, Row{Line: at, Error: "A quotation mark begins here and is never closed"})
				return at, end, nil
			}
			// A mark inside a cell, such as that of an inch, stands for itself.
			alone := t.reader(text[start:end])
			alone.LazyQuotes = true
			cells, _ = alone.Read()
			t.add(at, cells)
			continue
		}
		first, _ := r.FieldPos(0)
		t.add(line+first-1, cells)
	}
}

func (t *Table) reader(text string) *csv.Reader {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma = rune(t.Separator[0])
	r.FieldsPerRecord = -1
	return r
}

// add appends a row, unless nothing stands in it. Empty cells at the end are
// dropped as far as the heading does not reach.
func (t *Table) add(line int, cells []string) {
	wide := 0
	if len(t.Rows) > 0 {
		wide = len(t.Rows[0].Cells)
	}
	filled := len(cells)
	for filled > 0 && strings.TrimSpace(cells[filled-1]) == "" {
		filled--
	}
	if filled == 0 {
		return
	}
	row := Row{Line: line, Cells: cells[:min(max(filled, wide), len(cells))]}
	if n := len(row.Cells); wide > 0 && n != wide {
		row.Error = "This line has " + cellCount(n) + " where the first names " + strconv.Itoa(wide)
	}
	t.Rows = append(t.Rows, row)
}

func cellCount(n int) string {
	if n == 1 {
		return "1 cell"
	}
	return strconv.Itoa(n) + " cells"
}
