package worksheets

import (
	"math"
	"testing"

	"plainlift/calc/unit"
)

// published is one figure that somebody printed, and the entries that lead to it.
type published struct {
	changes, id string
	kind        unit.Kind
	unit        string
	want, tol   float64
}

func (c published) check(t *testing.T, worksheet string) {
	t.Helper()
	a := All.Evaluate(worksheet, owned(changed(c.changes)...), unit.US)
	if !a.OK() {
		t.Errorf("%s: %v", c.changes, a.Problems)
		return
	}
	u, _ := c.kind.Lookup(c.unit)
	if got := u.FromSI(value(a, c.id)); !(math.Abs(got-c.want) <= c.tol) {
		t.Errorf("%s: %s = %v %s, want %v", c.changes, c.id, got, c.unit, c.want)
	}
}
