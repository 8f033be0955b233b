package site

import (
	"strconv"
	"strings"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// field is a declared field with what stands in it, as the template draws it.
type field struct {
	calc.Field
	calc.FieldState
	ID    string
	Empty string
	Whole string // List, Pairs: all rows as one text
	notes []calc.Note
}

func newField(f *calc.Field, s *calc.FieldState, notes []calc.Note) field {
	return field{Field: *f, FieldState: *s, ID: f.ID, Empty: f.Empty, Whole: whole(s.Rows), notes: notes}
}

// Note is what the answer remarks beside the field.
func (f field) Note() string { return f.note(-1) }

// note is what it remarks under a row; −1 is the whole field.
func (f field) note(row int) string {
	var texts []string
	for _, n := range f.notes {
		if n.Field == f.ID && n.Row == row {
			texts = append(texts, n.Text)
		}
	}
	return strings.Join(texts, " ")
}

// whole is all rows as one text; numbers without a unit are in the first row's,
// which is what the choosers say.
func whole(rows []calc.RowState) string {
	one := func(number, unit, column string) string {
		if unit == column {
			return number
		}
		return number + " " + unit
	}
	var texts []string
	for _, r := range rows {
		text := one(r.A, r.UnitA, rows[0].UnitA)
		if r.B != "" {
			text += " : " + one(r.B, r.UnitB, rows[0].UnitB)
		}
		texts = append(texts, text)
	}
	return strings.Join(texts, "; ")
}

// Example reports whether what stands in the field is the example's.
func (f field) Example() bool { return f.FieldState.Example }

// Optional reports whether the field may be left empty.
func (f field) Optional() bool { return f.Field.Empty != "" }

// Class names the shape in the page.
func (f field) Class() string {
	switch f.Shape {
	case calc.List:
		return "list"
	case calc.Pairs:
		return "pairs"
	case calc.Choice:
		return "choice"
	}
	return "single"
}

// Number is what stands in the input.
func (f field) Number() string { return f.FieldState.Number }

// DescribedBy ties hint, error and note to the input.
func (f field) DescribedBy() string {
	ids := "error-" + f.ID + " note-" + f.ID
	if f.Hint != "" {
		return "hint-" + f.ID + " " + ids
	}
	return ids
}

// unitControl is the unit chooser of a column of numbers.
type unitControl struct {
	Control, Label, Here string
	Units                []string
}

func newUnitControl(id, label, here string, k unit.Kind) unitControl {
	u := unitControl{Control: id, Label: label, Here: here}
	for _, x := range k.Units() {
		u.Units = append(u.Units, x.Name)
	}
	if here == "" {
		u.Here = k.Shown(unit.US).Name
	}
	return u
}

// UnitControl is the chooser of the field's own numbers.
func (f field) UnitControl() unitControl {
	label := f.Label
	if f.Row != "" {
		label = f.Row
	}
	return newUnitControl("unit-"+f.ID, label, f.FieldState.Unit, f.Kind)
}

// UnitToControl is the chooser of the second numbers of pairs.
func (f field) UnitToControl() unitControl {
	here := ""
	if len(f.FieldState.Rows) > 0 {
		here = f.FieldState.Rows[0].UnitB
	}
	return newUnitControl("unit-to-"+f.ID, f.RowTo, here, f.With)
}

// Rows are the filled rows and one blank for the next.
func (f field) Rows() []calc.RowState {
	return append(append([]calc.RowState{}, f.FieldState.Rows...), calc.RowState{})
}

// row is one row of a list or of pairs.
type row struct {
	calc.RowState
	Field  field
	LabelA string
	LabelB string
	Says   string
}

// newRow draws row i, or without arguments the blank that the script copies.
func newRow(f field, args ...any) row {
	r := row{Field: f, LabelA: f.Row, LabelB: f.RowTo}
	if len(args) == 2 {
		n := " " + strconv.Itoa(args[0].(int)+1)
		r.LabelA, r.LabelB = r.LabelA+n, r.LabelB+n
		r.RowState = args[1].(calc.RowState)
		r.Says = f.note(args[0].(int))
	}
	return r
}
