package doubt

import (
	"math"
	"sort"
)

// rects is the sum of independent rectangular quantities with mean 0, by their
// half-widths, widest first, none of them 0. With none it is exactly 0.
type rects []float64

// tooNarrow is the product of widths relative to the widest below which the
// closed form would lose more digits to cancellation than leaving a width out.
const tooNarrow = 1e-9

// mostClosed is the most terms the closed form takes: it has 2ⁿ corners.
const mostClosed = 5

// newRects sorts the half-widths that are not 0, widest first.
func newRects(halfWidths ...float64) rects {
	r := make(rects, 0, len(halfWidths))
	for _, a := range halfWidths {
		if a > 0 {
			r = append(r, a)
		}
	}
	sort.Sort(sort.Reverse(sort.Float64Slice(r))) // slices.Sort would be a copy of the sort for every type
	return r
}

// closed splits off the widest terms, those that the closed form can take.
func (r rects) closed() (wide, rest rects) {
	product := 1.0
	for i, a := range r {
		product *= a / r[0]
		if i == mostClosed || product < tooNarrow {
			return r[:i], r[i:]
		}
	}
	return r, nil
}

// cdf returns P(sum ≤ y),
//
//	Σ ± (y ± a₁ ± … ± a_n)₊ⁿ / (n!·2ⁿ·a₁…a_n)
//
// over all choices of signs, the first sign being their product. It is n
// integrations of the step at 0, each a difference of two shifted copies.
func (r rects) cdf(y float64) float64 {
	if y > 0 && len(r) > 0 {
		return 1 - r.cdf(-y) // fewer corners are left of −y: less cancels
	}
	return r.corners(y, r.reach(), len(r)) / r.volume(len(r))
}

// density returns the density at y; of no terms at all it is +Inf at 0.
func (r rects) density(y float64) float64 {
	if len(r) == 0 {
		if y == 0 {
			return math.Inf(1)
		}
		return 0
	}
	return r.corners(-math.Abs(y), r.reach(), len(r)-1) / r.volume(len(r)-1)
}

// corners returns Σ ± (y ± a₁ ± … ± a_n)₊^power; reach is Σa.
func (r rects) corners(y, reach float64, power int) float64 {
	if y+reach < 0 {
		return 0
	}
	if len(r) == 0 {
		x := 1.0
		for range power {
			x *= y
		}
		return x
	}
	a, rest := r[0], r[1:]
	reach -= a
	return rest.corners(y+a, reach, power) - rest.corners(y-a, reach, power)
}

// volume returns power!·2ⁿ·a₁…a_n.
func (r rects) volume(power int) float64 {
	v := 1.0
	for _, a := range r {
		v *= 2 * a
	}
	for i := 2; i <= power; i++ {
		v *= float64(i)
	}
	return v
}

// reach returns the greatest value the sum can take.
func (r rects) reach() float64 {
	sum := 0.0
	for _, a := range r {
		sum += a
	}
	return sum
}
