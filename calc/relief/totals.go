package relief

import (
	"cmp"
	"slices"
	"sort"
)

// shim is one thickness of the kit, in whole nanometres so that totals compare
// exactly: 0.0001 in is 2540 of them.
type shim struct {
	nm    int64
	count int
}

// total is a thickness that can be made, and the fewest shims that make it.
type total struct {
	nm     int64
	pieces int
}

// totals is every total up to some height that a set of shims makes.
type totals struct {
	shims []shim    // the thickest first
	from  [][]total // from[i]: by shims[i:], the thinnest total first
}

// mostTotals bounds the work. A kit that makes more of them keeps one in each
// stretch of height ÷ mostTotals, under 0.1 µm in a millimetre, and so may stop
// that much short. Shims of round thicknesses never make as many.
const mostTotals = 10000

// newTotals finds the totals up to height (nm).
func newTotals(shims []shim, height int64) totals {
	t := totals{shims: shims, from: make([][]total, len(shims)+1)}
	t.from[len(shims)] = []total{{}}
	for i := len(shims) - 1; i >= 0; i-- {
		// 1, 2, 4 … shims and the rest of them together make any number.
		reached := t.from[i+1]
		for left, n := shims[i].count, 1; left > 0; n *= 2 {
			n = min(n, left)
			left -= n
			reached = with(reached, total{int64(n) * shims[i].nm, n}, height)
		}
		t.from[i] = reached
	}
	return t
}

// with returns the totals reached without or with one more bundle.
func with(reached []total, bundle total, height int64) []total {
	if bundle.nm > height {
		return reached
	}
	out := make([]total, 0, 2*len(reached))
	i := 0
	for _, r := range reached {
		r.nm += bundle.nm
		r.pieces += bundle.pieces
		for ; i < len(reached) && reached[i].nm <= r.nm; i++ {
			out = append(out, reached[i])
		}
		if r.nm <= height {
			out = append(out, r)
		}
	}
	out = oneEach(out, 1)
	if len(out) > mostTotals {
		out = oneEach(out, height/mostTotals+1)
	}
	return out
}

// oneEach keeps one total in each stretch of that length, the one of fewest
// shims, and in the same storage.
func oneEach(all []total, stretch int64) []total {
	kept := all[:0]
	for _, t := range all {
		if last := len(kept) - 1; last >= 0 && t.nm/stretch == kept[last].nm/stretch {
			if t.pieces < kept[last].pieces {
				kept[last] = t
			}
			continue
		}
		kept = append(kept, t)
	}
	return kept
}

// find returns the fewest shims that make a total from shims[i:].
func (t totals) find(i int, nm int64) (pieces int, ok bool) {
	at, ok := slices.BinarySearchFunc(t.from[i], nm, func(a total, nm int64) int { return cmp.Compare(a.nm, nm) })
	if !ok {
		return 0, false
	}
	return t.from[i][at].pieces, true
}

// has reports whether the shims make a total.
func (t totals) has(nm int64) bool {
	_, ok := t.find(0, nm)
	return ok
}

// atMost returns the largest total up to nm. There is always one: 0.
func (t totals) atMost(nm int64) int64 {
	all := t.from[0]
	return all[sort.Search(len(all), func(i int) bool { return all[i].nm > nm })-1].nm
}

// over returns the smallest total over nm, and whether there is one.
func (t totals) over(nm int64) (int64, bool) {
	all := t.from[0]
	i := sort.Search(len(all), func(i int) bool { return all[i].nm > nm })
	if i == len(all) {
		return 0, false
	}
	return all[i].nm, true
}

// stack returns the stack that makes a total: the fewest shims, and among such
// stacks the one with the thickest shims. It is nil for a total that cannot be
// made, and for 0.
func (t totals) stack(nm int64) []shim {
	if !t.has(nm) {
		return nil
	}
	var stack []shim
	for i, s := range t.shims {
		best, fewest := 0, -1
		for n := int(min(int64(s.count), nm/s.nm)); n >= 0; n-- {
			rest, ok := t.find(i+1, nm-int64(n)*s.nm)
			if ok && (fewest < 0 || n+rest < fewest) {
				best, fewest = n, n+rest
			}
		}
		if best > 0 {
			stack = append(stack, shim{s.nm, best})
			nm -= int64(best) * s.nm
		}
	}
	return stack
}

// without returns shims less those of another set.
func without(shims, less []shim) []shim {
	var left []shim
	for _, s := range shims {
		for _, l := range less {
			if l.nm == s.nm {
				s.count -= l.count
			}
		}
		if s.count > 0 {
			left = append(left, s)
		}
	}
	return left
}

// sum returns the total thickness of some shims, nm.
func sum(shims []shim) int64 {
	var nm int64
	for _, s := range shims {
		nm += int64(s.count) * s.nm
	}
	return nm
}
