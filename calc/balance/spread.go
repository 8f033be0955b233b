package balance

import (
	"math"

	"plainlift/calc/doubt"
)

// Limits are the ± within which the true values lie, all equally likely.
type Limits struct {
	Weight float64 // of each axle load and of the ballast, each on its own, as a fraction
	Length float64 // of each length and height, each on its own (m)
}

// Measure names one thing that is measured on a machine.
type Measure int

// The measures, in the order in which Spread gives them.
const (
	Front Measure = iota
	Rear
	Ballast
	Wheelbase
	Reach
	BallastX
	CentreH
	LoadH
	measures
)

var names = [...]string{
	"weight on the front axle", "weight on the rear axle", "weight of the ballast", "wheelbase", "load ahead of the front axle",
	"ballast behind the rear axle", "height of the centre", "height of the load",
}

// String returns the measure in words.
func (k Measure) String() string { return names[k] }

// IsWeight reports whether a scale gives it, not a tape.
func (k Measure) IsWeight() bool { return k <= Ballast }

// value returns where m keeps a measure.
func (m *Machine) value(k Measure) *float64 {
	return [...]*float64{&m.Front, &m.Rear, &m.Ballast, &m.Wheelbase, &m.Reach, &m.BallastX, &m.CentreH, &m.LoadH}[k]
}

// Moved is how far each measure, from one end of its limits to the other, moves
// a result to either side.
type Moved [measures]float64

// Spread returns what the limits do to a result of the machine: for each
// measure half the difference between the result with it at its upper and at
// its lower limit, all others as they are. No measure goes under 0; NaN comes
// from a result that is not finite.
//
// Source: JCGM 100:2008, 5.1.3, note 2 (from memory), over the limits instead of
// the standard uncertainty.
func (m Machine) Spread(l Limits, result func(*Machine) float64) Moved {
	var moved Moved
	for k := range measures {
		other := m
		at := other.value(k)
		v, half := *at, l.Length
		if k.IsWeight() {
			half = l.Weight * v
		}
		*at = v + half
		up := result(&other)
		*at = max(v-half, v/1e6)
		moved[k] = (up - result(&other)) / 2
	}
	return moved
}

// Less returns the spread of the difference between two results, in which what
// moves both alike cancels.
func (a Moved) Less(b Moved) Moved {
	for k := range a {
		a[k] -= b[k]
	}
	return a
}

// Sum returns the result as a value with a limit for each measure, and one more
// of its own.
func (a Moved) Sum(value, own float64) doubt.Sum {
	s := doubt.Sum{Mid: value, Rects: []float64{own}}
	for _, x := range a {
		s.Rects = append(s.Rects, math.Abs(x))
	}
	return s
}

// HalfWidth returns the ± of the result that holds 95 % of what the limits
// allow: 1.96 standard uncertainties, as many limits together come close to a
// normal distribution, but no more than all limits at once.
func (a Moved) HalfWidth() float64 {
	const normal95 = 1.959963984540054 // coverage factor for 95 % of a normal distribution
	square, most := 0.0, 0.0
	for _, x := range a {
		square += x * x / 3 // half²/3 is u²
		most += math.Abs(x)
	}
	return min(normal95*math.Sqrt(square), most)
}
