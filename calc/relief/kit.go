package relief

import (
	"math"
	"slices"
)

// Piece is shims of one thickness (m).
type Piece struct {
	Thickness float64
	Count     int
}

// Kit is the shims that there are, those in the valve included.
type Kit struct{ shims []shim }

// mostAlike is how many shims of one thickness a kit may count.
const mostAlike = 1000

// NewKit returns the kit of these shims. Thicknesses are taken to the nanometre
// and may repeat. Pieces that are no shim, thinner than a nanometre, thicker
// than a metre or fewer than one, are left out.
func NewKit(pieces []Piece) Kit {
	var k Kit
	for _, p := range pieces {
		if !(p.Thickness >= 1e-9) || p.Thickness > 1 || p.Count < 1 {
			continue
		}
		s := shim{nanometres(p.Thickness), min(p.Count, mostAlike)}
		k.shims = among(k.shims, s)
	}
	for i := range k.shims {
		k.shims[i].count = min(k.shims[i].count, mostAlike)
	}
	return k
}

// Step is a change to the shims in the valve.
type Step struct {
	Total, Add float64 // the thickness then, and how much more it is than what is fitted (m)
	Stack      []Piece // all that is in the valve then, so far as it is the kit's
	In, Out    []Piece // what goes in and what comes out
}

// Plan is what a kit allows. A step is nil where there is none.
type Plan struct {
	Fitted []Piece // what is fitted, taken as the fewest shims; nil when the kit cannot make it
	First  *Step   // the next step: the thinnest shim left, or less; nil when the kit is used up
	Most   *Step   // the largest step that is safe; nil when even First is not
	Next   *Step   // the smallest step over Most, or First when nothing is safe; nil when the kit ends
}

// Plan returns what the kit allows when a total thickness is fitted already and
// none over safe may be, both in metre from the reading "now"; a safe that is
// NaN allows nothing.
//
// Only the total that is fitted is known, so it is taken as the stack of fewest
// shims. A larger total keeps that stack and adds the fewest shims that are left
// to it, or where they cannot make it, changes to the fewest shims of the whole
// kit and says what comes out. A fitted total that the kit cannot make is taken
// as other shims, which stay.
//
// First is the thinnest shim left when that is within Most; otherwise the
// smallest change there is.
func (k Kit) Plan(fitted, safe float64) Plan {
	v := k.valve(fitted, safe)
	plan := Plan{Fitted: pieces(v.stack)}
	first, most := v.over(v.fitted), v.atMost(v.safe)
	if left := v.rest.shims; len(left) > 0 {
		if thin := v.fitted + left[len(left)-1].nm; thin <= most {
			first = thin
		}
	}
	if most > v.fitted {
		plan.Most = v.step(most)
	}
	plan.First, plan.Next = v.step(first), v.step(v.over(most))
	return plan
}

// valve is a valve with some of a kit in it. All heights are in nm.
type valve struct {
	fitted, safe int64
	stack        []shim // what is fitted, if it is the kit's
	whole, rest  totals // what the whole kit makes, and what the shims left over make
	changes      bool   // what is fitted is the kit's and may come out
}

func (k Kit) valve(fitted, safe float64) valve {
	var v valve
	if fitted > 0 {
		v.fitted = nanometres(fitted)
	}
	v.safe = v.fitted
	// Nothing is over the whole kit on top of what is fitted.
	if top := v.fitted + sum(k.shims); safe >= metres(top) {
		v.safe = top
	} else if safe > metres(v.fitted) {
		v.safe = nanometres(safe)
	}
	height := v.safe
	if len(k.shims) > 0 {
		height += k.shims[0].nm // holds the next total over safe
	}
	v.whole = newTotals(k.shims, height)
	v.changes = v.whole.has(v.fitted)
	v.stack = v.whole.stack(v.fitted)
	v.rest = newTotals(without(k.shims, v.stack), height-v.fitted)
	return v
}

// atMost returns the largest height that can be made up to nm, which is not
// under what is fitted.
func (v valve) atMost(nm int64) int64 {
	most := v.fitted + v.rest.atMost(nm-v.fitted)
	if v.changes {
		most = max(most, v.whole.atMost(nm))
	}
	return most
}

// over returns the smallest height that can be made over nm, 0 if there is none.
func (v valve) over(nm int64) int64 {
	next, ok := v.rest.over(nm - v.fitted)
	next += v.fitted
	if !ok {
		next = 0
	}
	if other, also := v.whole.over(nm); v.changes && also && (!ok || other < next) {
		next = other
	}
	return next
}

// step returns the step from what is fitted to a height that can be made, nil
// for 0.
func (v valve) step(nm int64) *Step {
	if nm == 0 {
		return nil
	}
	s := &Step{Total: metres(nm), Add: metres(nm - v.fitted)}
	if v.rest.has(nm - v.fitted) {
		in := v.rest.stack(nm - v.fitted)
		s.In, s.Stack = pieces(in), pieces(together(v.stack, in))
		return s
	}
	stack := v.whole.stack(nm)
	s.In, s.Out, s.Stack = pieces(without(stack, v.stack)), pieces(without(v.stack, stack)), pieces(stack)
	return s
}

// together returns two sets of shims as one, the thickest first.
func together(a, b []shim) []shim {
	all := slices.Clone(a)
	for _, s := range b {
		all = among(all, s)
	}
	return all
}

// among puts one more thickness among shims, the thickest first, in the same
// storage.
func among(shims []shim, s shim) []shim {
	at := 0
	for at < len(shims) && shims[at].nm > s.nm {
		at++
	}
	if at < len(shims) && shims[at].nm == s.nm {
		shims[at].count += s.count
		return shims
	}
	return slices.Insert(shims, at, s)
}

// pieces returns shims as they are handed out.
func pieces(shims []shim) []Piece {
	var out []Piece
	for _, s := range shims {
		out = append(out, Piece{metres(s.nm), s.count})
	}
	return out
}

func nanometres(m float64) int64 { return int64(math.Round(m * 1e9)) }

func metres(nm int64) float64 { return float64(nm) / 1e9 }
