package doubt

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Simulation propagates distributions by drawing trials of a model. The seed
// is fixed, so that the same model and number of trials give the same figures,
// however the trials are cut into runs.
//
// Source: JCGM 101:2008, clause 7.
type Simulation struct {
	draw   func(*rand.Rand) float64
	random *rand.Rand
	trials []float64
	first  float64 // the sums are of differences from it, so few digits cancel
	sum    float64
	square float64
}

// NewSimulation returns a simulation with no trials yet. draw returns the
// result of one trial.
func NewSimulation(draw func(*rand.Rand) float64) *Simulation {
	return &Simulation{draw: draw, random: rand.New(rand.NewPCG(101, 2008))}
}

// Run draws n more trials.
func (s *Simulation) Run(n int) {
	if n <= 0 {
		return
	}
	have := len(s.trials)
	s.trials = slices.Grow(s.trials, n)[:have+n]
	fresh := s.trials[have:]
	for i := range fresh {
		fresh[i] = s.draw(s.random)
	}
	if have == 0 {
		s.first = fresh[0]
	}
	for _, x := range fresh {
		d := x - s.first
		s.sum += d
		s.square += d * d
	}
}

// Trials returns how many have been drawn.
func (s *Simulation) Trials() int { return len(s.trials) }

// Summary returns the mean of the trials, their standard deviation u, the
// interval from lo to hi that holds a fraction p of them with as many under as
// over, and the median. All are NaN for fewer than two trials, p outside 0 to
// 1, or when a trial gave NaN. For a t term of two or fewer degrees of freedom
// no u exists, and what stands for it means nothing.
//
// Source: JCGM 101:2008, 7.6 (mean, u) and 7.7 (interval), clause numbers from
// memory.
func (s *Simulation) Summary(p float64) (mean, u, lo, hi, median float64) {
	m := len(s.trials)
	if m < 2 || !(p >= 0 && p <= 1) || math.IsNaN(s.sum) {
		n := math.NaN()
		return n, n, n, n, n
	}
	n := float64(m)
	mean = s.first + s.sum/n
	u = math.Sqrt(max(0, (s.square-s.sum*s.sum/n)/(n-1)))

	q := int(p*n + 0.5) // trials inside
	l, c := max((m-q+1)/2-1, 0), (m-1)/2
	h := min(l+q, m-1)
	// The middle first: the ends are then each sought in one half.
	median = nth(s.trials, c)
	lo = nth(s.trials[:c+1], l)
	hi = nth(s.trials[c:], h-c)
	return mean, u, lo, hi, median
}

// Probability returns the fraction of trials under x, NaN with none.
func (s *Simulation) Probability(x float64) float64 {
	under := 0
	for _, v := range s.trials {
		if v < x {
			under++
		}
	}
	return float64(under) / float64(len(s.trials))
}

// nth puts the n-th smallest (from 0) of x in its place, nothing larger before
// it and nothing smaller after, and returns it. x holds no NaN.
func nth(x []float64, n int) float64 {
	lo, hi := 0, len(x)-1
	for lo < hi {
		// Three taken at fixed places give the value to part by.
		a, b, c := x[lo], x[lo+(hi-lo)/2], x[hi]
		part := max(min(a, b), min(max(a, b), c))
		i, j := lo, hi
		for i <= j {
			for x[i] < part {
				i++
			}
			for x[j] > part {
				j--
			}
			if i <= j {
				x[i], x[j] = x[j], x[i]
				i++
				j--
			}
		}
		switch {
		case n <= j:
			hi = j
		case n >= i:
			lo = i
		default:
			return x[n]
		}
	}
	return x[n]
}

// Tolerance returns how far an interval's ends may differ between two methods
// and still agree: half of the last place when u is written with two
// significant digits. It is NaN for u not above 0.
//
// Source: JCGM 101:2008, 7.9.2.
func Tolerance(u float64) float64 {
	if !(u > 0) || math.IsInf(u, 1) {
		return math.NaN()
	}
	place := math.Floor(math.Log10(u)) - 1
	if math.Round(u/math.Pow(10, place)) >= 100 {
		place++ // 0.0996 is written 0.10
	}
	return math.Pow(10, place) / 2
}

// Draw returns one trial of the sum. The t term is Bailey's polar form, from
// memory; a test holds its trials against the t distribution.
func (s Sum) Draw(r *rand.Rand) float64 {
	x := s.Mid
	for _, a := range s.Rects {
		x += a * (2*r.Float64() - 1)
	}
	switch {
	case s.Scale == 0:
	case s.DOF > normalFrom:
		x += s.Scale * r.NormFloat64()
	default:
		u := 1 - r.Float64() // above 0
		x += s.Scale * math.Sqrt(s.DOF*math.Expm1(-2/s.DOF*math.Log(u))) * math.Cos(2*math.Pi*r.Float64())
	}
	return x
}
