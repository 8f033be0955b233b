package linkage

import "math"

// Means is what would lift as much more as a pressure does. NaN is for what
// does not exist.
type Means struct {
	Closer  float64 // how much nearer the pivot the load would have to sit (m)
	Lower   float64 // how much lower the bucket pin would have to be held (m)
	Lighter float64 // how much lighter the tool would have to be (N)
}

// Means returns what would lift gain (N, above 0) more at height h (m), with
// pressures p and back left as they are (Pa):
//
//	closer = x_L·gain/(L + gain)
//	lighter = gain·x_L/x_tool
//
// and lower from the nearest height under h, down to the lowest there is, that
// lifts L + gain. With a parallel linkage no place on the tool is better than
// another, and closer is NaN. So is lighter when the tool weighs less than
// that. A load may have to sit behind the bucket pin: closer is then more than
// LoadX.
func (k *Arc) Means(p, back, h, gain float64) Means {
	none := math.NaN()
	m := Means{Closer: none, Lower: none, Lighter: none}
	at := k.At(h)
	want := at.Lift(p, back) + gain
	if !(gain > 0 && want > gain) {
		return m
	}
	tool := at.LoadArm
	if !k.Level {
		m.Closer = at.LoadArm * gain / want
		tool += k.ToolCG - k.LoadX
	}
	if w := gain * at.LoadArm / tool; w > 0 && w <= k.ToolW {
		m.Lighter = w
	}
	m.Lower = h - k.lower(p, back, h, want)
	return m
}

// steps are how many heights are looked at between h and the lowest.
const steps = 64

// lower returns the nearest height under h that lifts want; NaN if none does.
func (k *Arc) lower(p, back, h, want float64) float64 {
	low, _ := k.Range()
	enough := func(h float64) bool {
		at := k.At(h)
		return at.Lift(p, back) >= want
	}
	over := h
	for i := range steps {
		under := h + (low-h)*float64(i+1)/steps
		if enough(under) {
			for range 40 { // halves a step to far under a micrometre
				mid := (over + under) / 2
				if enough(mid) {
					under = mid
				} else {
					over = mid
				}
			}
			return under
		}
		over = under
	}
	return math.NaN()
}
