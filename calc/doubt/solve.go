package doubt

import "math"

// solve returns the x from lo to hi where the rising function f reaches p. It
// narrows the bracket by false position, an end that stays twice counting
// for half, and halves the bracket when three steps have not.
func solve(f func(float64) float64, p, lo, hi float64) float64 {
	const near = 1e-13
	below, above := f(lo)-p, f(hi)-p
	if below >= 0 {
		return lo
	}
	if above <= 0 {
		return hi
	}
	moved := 0 // +1 when the last step moved lo, −1 when it moved hi
	width := hi - lo
	for i := 1; hi-lo > near*max(math.Abs(lo), math.Abs(hi)); i++ {
		x := lo + (hi-lo)*below/(below-above)
		if i%4 == 0 {
			if hi-lo > width/8 {
				x = lo + (hi-lo)/2
			}
			width = hi - lo
		}
		if !(x > lo && x < hi) {
			x = lo + (hi-lo)/2
		}
		v := f(x) - p
		switch {
		case math.Abs(v) < near:
			return x
		case v < 0:
			lo, below = x, v
			if moved > 0 {
				above /= 2
			}
			moved = 1
		default:
			hi, above = x, v
			if moved < 0 {
				below /= 2
			}
			moved = -1
		}
	}
	return lo + (hi-lo)/2
}
