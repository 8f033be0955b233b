package many

import (
	"strings"
	"unicode"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// Column is what a column of the file was taken for.
type Column struct {
	Name         string
	Field        *calc.Field // nil: kept as it is
	Unit, UnitTo string      // of numbers without a unit; "" is the shown unit
	Wrong        string      // what must be put right
	exact        bool        // named by the field's id
}

// columns takes every name of a heading for a field, or keeps the column. The
// first words of a label do only for a field that no other column is for.
func columns(w *calc.Worksheet, heading []string) []Column {
	cs := make([]Column, len(heading))
	taken := map[*calc.Field]int{}
	for i, name := range heading {
		cs[i] = column(w, name, named)
		taken[cs[i].Field]++
	}
	begins := make([]Column, len(heading))
	for i, name := range heading {
		if cs[i].Field == nil {
			begins[i] = column(w, name, begun)
			taken[begins[i].Field]++
		}
	}
	for i, c := range begins {
		if c.Field != nil && taken[c.Field] == 1 {
			cs[i] = c
		}
	}
	return cs
}

// column reads a name such as "reading", "reading (psi)", "reading [bar]",
// "reading psi" or "Gauge shows". What finds the field is told its name alone.
func column(w *calc.Worksheet, name string, find func(*calc.Worksheet, string) (*calc.Field, bool)) Column {
	c := Column{Name: name}
	if c.Field, c.exact = find(w, name); c.Field != nil {
		return c
	}
	base, u := inBrackets(name)
	if u != "" {
		if c.Field, c.exact = find(w, base); c.Field != nil {
			c.setUnit(u)
			return c
		}
	}
	for i := strings.LastIndexByte(name, ' '); i > 0; i = strings.LastIndexByte(name[:i], ' ') {
		rest := strings.TrimSpace(name[i:])
		if !anyUnit(rest) {
			continue // more words than the field's: another column, "scale number"
		}
		if c.Field, c.exact = find(w, strings.TrimRight(name[:i], " ,")); c.Field != nil {
			c.setUnit(rest)
			return c
		}
	}
	if u == "" {
		base = name
	}
	if c.Field = near(w, base); c.Field != nil && u != "" {
		c.setUnit(u)
	}
	return c
}

// inBrackets parts "reading (psi)" and "reading [psi]".
func inBrackets(name string) (base, inside string) {
	for _, pair := range []string{"()", "[]"} {
		if i := strings.LastIndexByte(name, pair[0]); i > 0 && name[len(name)-1] == pair[1] {
			return strings.TrimSpace(name[:i]), strings.TrimSpace(name[i+1 : len(name)-1])
		}
	}
	return name, ""
}

func (c *Column) setUnit(u string) {
	f := c.Field
	if f.Shape == calc.Choice {
		c.Wrong = "Column “" + c.Name + "”: no unit belongs there; name it “" + f.ID + "”."
		return
	}
	a, b := u, ""
	if f.Shape == calc.Pairs {
		var ok bool
		if a, b, ok = unit.SplitPair(u); !ok {
			c.Wrong = "Column “" + c.Name + "” holds two numbers each; name their units as in “" + f.ID + " (" + f.Kind.Shown(unit.US).Name + " : " + f.With.Shown(unit.US).Name + ")”."
			return
		}
		if _, known := f.With.Lookup(b); !known {
			c.Wrong = wrongUnit(c.Name, f.With)
		}
	}
	if _, known := f.Kind.Lookup(a); !known {
		c.Wrong = wrongUnit(c.Name, f.Kind)
	}
	c.Unit, c.UnitTo = a, b
}

// anyUnit reports whether that is a unit of any kind, or two with a colon.
func anyUnit(name string) bool {
	if a, b, ok := unit.SplitPair(name); ok {
		return anyUnit(a) && anyUnit(b)
	}
	return unit.Known(name)
}

func wrongUnit(name string, k unit.Kind) string {
	if list := k.Names(); list != "" {
		return "Column “" + name + "”: its unit must be " + list + "."
	}
	return "Column “" + name + "”: no unit belongs there."
}

// named returns the field whose id, label or noun that is.
func named(w *calc.Worksheet, name string) (f *calc.Field, byID bool) {
	want := letters(name)
	for i := range w.Fields {
		if letters(w.Fields[i].ID) == want {
			return &w.Fields[i], true
		}
	}
	for i := range w.Fields {
		if f := &w.Fields[i]; want != "" && (letters(f.Label) == want || letters(f.Noun) == want) {
			return f, false
		}
	}
	return nil, false
}

// begun returns the one field whose label begins with those words, as "Class"
// begins "Class or grade printed on the dial". One word is enough for a choice,
// where a wrong text is told; a number's label needs two: "Load" may be any load.
func begun(w *calc.Worksheet, name string) (found *calc.Field, byID bool) {
	want := letters(name)
	for i := range w.Fields {
		f := &w.Fields[i]
		for j, r := range f.Label {
			enough := f.Shape == calc.Choice || strings.Contains(f.Label[:j], " ")
			if r != ' ' || !enough || want == "" || letters(f.Label[:j]) != want {
				continue
			}
			if found != nil && found != f {
				return nil, false
			}
			found = f
		}
	}
	return found, false
}

// near returns the one field whose id or label a longer name nearly is: one
// letter off, or two in twelve.
func near(w *calc.Worksheet, name string) (found *calc.Field) {
	want := letters(name)
	most := len(want) / 6
	if most == 0 {
		return nil
	}
	for i := range w.Fields {
		f := &w.Fields[i]
		if off(want, letters(f.ID), min(most, 2)) || off(want, letters(f.Label), min(most, 2)) {
			if found != nil {
				return nil
			}
			found = f
		}
	}
	return found
}

// letters is a name without case, spaces and marks.
func letters(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
}

// off reports whether two names are at most so many letters changed, left out or
// added apart.
func off(a, b string, most int) bool {
	if len(a) < 5 || len(b) < 5 || max(len(a), len(b))-min(len(a), len(b)) > most {
		return false
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := corner
			if a[i] != b[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, corner+1, row[j]+1)
		}
	}
	return row[len(b)] <= most
}
