package calc

import (
	"sync"

	"plainlift/calc/unit"
)

// asked is an entry of a field: made in one system of units and shown in another
// where it is the example, which is written once.
type asked struct {
	field     *Field
	entry     Entry
	from, sys unit.System
}

// heard is what it says, and every complaint about it.
type heard struct {
	value    value
	problems []Problem
}

// memory is what recent entries say: a keystroke changes one of a page's thirty
// fields, and the others need not be taken apart again.
var memory = struct {
	sync.Mutex
	entries map[asked]heard
}{entries: map[asked]heard{}}

// recent is how many entries are kept: more than a page has fields, few enough
// for a worker that answers thousands of rows.
const recent = 500

// read takes an entry apart. It returns every complaint it has.
func (f *Field) read(e Entry, from, sys unit.System) (value, []Problem) {
	q := asked{f, e, from, sys}
	memory.Lock()
	s, known := memory.entries[q]
	memory.Unlock()
	if known {
		return s.value, s.problems
	}
	s.value, s.problems = f.parse(e, from)
	s.value.bad = len(s.problems) > 0
	f.tell(&s.value, sys)
	memory.Lock()
	if len(memory.entries) >= recent {
		memory.entries = map[asked]heard{}
	}
	memory.entries[q] = s
	memory.Unlock()
	return s.value, s.problems
}

// tell writes what a readable entry is elsewhere on the page.
func (f *Field) tell(v *value, sys unit.System) {
	if v.bad {
		return
	}
	v.canonical, v.shown = f.canonical(v), f.text(v, sys)
	if f.Shape == Choice {
		return
	}
	for i, x := range v.a {
		row := RowState{A: grouped(x.Number, f.Kind.Least(x.Unit), sys), UnitA: x.Unit.Name}
		if f.Shape == Pairs {
			row.B, row.UnitB = grouped(v.b[i].Number, f.With.Least(v.b[i].Unit), sys), v.b[i].Unit.Name
		}
		v.rows = append(v.rows, row)
	}
}
