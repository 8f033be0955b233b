package linkage

import "math"

// Fault is what is wrong with a measurement.
type Fault int

// The faults. All but the last make a loader that cannot be.
const (
	NotAbove0      Fault = iota + 1 // a length, size or count that is not above 0
	RodInBore                       // the rod is no thinner than the bore; Limit is the bore
	BaseTooNear                     // pivot to base pin is less than their heights differ; Limit is that
	SidesTooShort                   // pivot–rod pin–bucket pin does not reach; Limit is the least
	SidesTooLong                    // pivot–rod pin–bucket pin does not close; Limit is the most
	StrokeTooLong                   // more stroke than closed length; Limit is that length
	ClosedTooShort                  // shorter than the pins can come; Limit is the least
	NeverReaches                    // longer closed than the pins can part; Limit is the most
	DeadCentre                      // the stroke goes past pivot, base pin and rod pin in one line; Limit is the most
	TooSteepLow                     // the boom would hang straight down or further; Limit is the least closed length
	TooSteepHigh                    // the boom would stand straight up or further; Limit is the most closed length or stroke
	BehindPivot                     // the load would be over the pivot or behind it; Limit is the least LoadX
	UnderGround                     // possible, but doubtful: the bucket pin goes under the ground; Limit is 0
)

// Problem is a measurement that cannot be right together with the others.
type Problem struct {
	Measure Measure // the one to look at first
	Fault   Fault
	Limit   float64 // what it would have to be at least or at most, SI; a magnitude for PivotBase; NaN when no such thing fits
}

// Doubtful reports whether the loader can still be worked out.
func (p Problem) Doubtful() bool { return p.Fault == UnderGround }

// Check returns the first thing that is wrong with a loader; ok when nothing is.
// It says which measurement to check, and what would fit the others.
func (l Loader) Check() (p Problem, ok bool) {
	for m := PivotH; m <= Rod; m++ {
		switch m {
		case ToolCG, LoadX, BoomW, BoomCG, ToolW, Pressure, BaseH:
			continue // may be 0, or of either sign
		}
		if v := *l.value(m); !(math.Abs(v) > 0) || v < 0 && m != PivotBase {
			return Problem{Measure: m, Fault: NotAbove0}, false
		}
	}
	k := l.Arc()
	most := k.side + l.PivotRod
	least := math.Abs(k.side - l.PivotRod)
	low, high := k.reached(l.Closed), k.reached(l.Closed+l.Stroke)
	const up = math.Pi / 2
	reach := l.Boom * math.Min(math.Cos(low), math.Cos(high))
	for _, c := range [...]struct {
		wrong   bool
		problem Problem
	}{
		{l.Rod >= l.Bore, Problem{Rod, RodInBore, l.Bore}},
		{math.IsNaN(k.baseX), Problem{PivotBase, BaseTooNear, math.Abs(l.PivotH - l.BaseH)}},
		{math.IsNaN(k.lean) && l.PivotRod > l.Boom+l.RodTip, Problem{PivotRod, SidesTooLong, l.Boom + l.RodTip}},
		{math.IsNaN(k.lean) && l.RodTip > l.Boom+l.PivotRod, Problem{RodTip, SidesTooLong, l.Boom + l.PivotRod}},
		{math.IsNaN(k.lean), Problem{RodTip, SidesTooShort, l.Boom - l.PivotRod}},
		{l.Stroke >= l.Closed, Problem{Stroke, StrokeTooLong, l.Closed}},
		{l.Closed <= least, Problem{Closed, ClosedTooShort, least}},
		{l.Closed >= most, Problem{Closed, NeverReaches, most}},
		{l.Closed+l.Stroke >= most, Problem{Stroke, DeadCentre, most - l.Closed}},
		{low <= -up, Problem{Closed, TooSteepLow, k.length(-up)}},
		{low >= up, Problem{Closed, TooSteepHigh, k.length(up)}},
		{!(math.Abs(high) < up), Problem{Stroke, TooSteepHigh, k.length(up) - l.Closed}},
		{!l.Level && reach+l.LoadX <= 0, Problem{LoadX, BehindPivot, -reach}},
		{k.Height(low) < 0, Problem{Closed, UnderGround, 0}},
	} {
		if c.wrong {
			return c.problem, false
		}
	}
	return Problem{}, true
}

// length returns the cylinder's length with the boom at the angle theta; NaN
// where lengthening it would not raise the boom.
func (k *Arc) length(theta float64) float64 {
	s, c := math.Sincos(theta + k.turn)
	if !(s > 0) {
		return math.NaN()
	}
	return math.Sqrt(k.side*k.side + k.PivotRod*k.PivotRod - 2*k.side*k.PivotRod*c)
}
