package doubt

import (
	"math"
	"math/rand/v2"
)

// Gain is the relative gain in lift that a rise in pressure gives, with both
// pressures read from a gauge:
//
//	gain = (1 + d)·(p₂/p₁ − 1),  p = reading + E + e
//
// E lies anywhere within ±Err and is one and the same for both readings when
// Shared, else each has its own; each e lies within ±Step/2, d from DeadLo to
// DeadHi. All else is independent.
type Gain struct {
	Before, After  float64 // readings, one unit of pressure
	Err            float64 // limit of the gauge's error, that unit, not negative
	Step           float64 // smallest step read, that unit, not negative
	Shared         bool    // both read on one gauge
	DeadLo, DeadHi float64 // d: dead weight as a fraction of the lift before, above −1
}

// CDF returns the probability of a gain of at most g. It is NaN when p₁ could
// be zero or negative, or a field is outside what Gain says.
//
// For a given d the gain is at most g exactly when p₂ − q·p₁ ≤ 0 with
// q = 1 + g/(1 + d): a sum of limits, so its probability is a closed form.
// That is averaged over d by Gauss–Legendre on the part where it is neither
// 0 nor 1. No term is taken as small. Right to 10⁻⁴.
func (g Gain) CDF(gain float64) float64 {
	least, most := g.ratios()
	switch {
	case math.IsNaN(least) || math.IsNaN(gain):
		return math.NaN()
	case math.IsInf(gain, 0):
		return max(0, math.Copysign(1, gain))
	}
	lo, hi := 1+g.DeadLo, 1+g.DeadHi
	if lo == hi || gain == 0 {
		return g.given(1 + gain/lo)
	}
	// q meets the least and the greatest ratio at these 1 + d.
	atLeast, atMost := gain/(least-1), gain/(most-1)
	if !(atLeast > 0) {
		atLeast = math.Inf(1)
	}
	if !(atMost > 0) {
		atMost = math.Inf(1)
	}
	sure, from, to := 0.0, 0.0, 0.0
	if gain > 0 { // certain while 1 + d is small enough
		from, to = clamp(atMost, lo, hi), clamp(atLeast, lo, hi)
		sure = from - lo
	} else { // certain once 1 + d is large enough
		from, to = clamp(atLeast, lo, hi), clamp(atMost, lo, hi)
		sure = hi - to
	}
	const panels = 4
	h := (to - from) / panels
	sum := 0.0
	for i := range panels {
		mid := from + (float64(i)+0.5)*h
		for _, n := range gauss {
			sum += n.weight * h * (g.given(1+gain/(mid+n.at*h)) + g.given(1+gain/(mid-n.at*h)))
		}
	}
	return (sure + sum) / (hi - lo)
}

// given returns P(p₂ ≤ q·p₁) = P(E₂ + e₂ − q·(E₁ + e₁) ≤ q·before − after).
func (g Gain) given(q float64) float64 {
	half := g.Step / 2
	var r rects
	if g.Shared {
		r = newRects(math.Abs(1-q)*g.Err, half, math.Abs(q)*half)
	} else {
		r = newRects(g.Err, math.Abs(q)*g.Err, half, math.Abs(q)*half)
	}
	r, _ = r.closed() // what it leaves out moves no chance by 10⁻⁵
	return r.cdf(q*g.Before - g.After)
}

// gauss holds the four-point Gauss–Legendre rule on −½ to ½, one side of it
// (memory; a test integrates the polynomials it must be exact for).
var gauss = [2]struct{ at, weight float64 }{
	{0.16999052179242813, 0.32607257743127307},
	{0.43056815579702629, 0.17392742256872693},
}

// ratios returns the least and greatest p₂/p₁, NaN when the model fails.
func (g Gain) ratios() (least, most float64) {
	half := g.Step / 2
	finite := g.Before - g.Before + g.After - g.After + g.DeadHi - g.DeadHi
	if !(finite == 0 && g.Err >= 0 && g.Step >= 0 && g.DeadLo > -1 && g.DeadLo <= g.DeadHi &&
		g.Before-g.Err-half > 0) {
		return math.NaN(), math.NaN()
	}
	ratio := func(e2, e1 float64) float64 { return (g.After + e2) / (g.Before + e1) }
	if !g.Shared {
		return min(ratio(-g.Err-half, g.Err+half), ratio(-g.Err-half, -g.Err-half)),
			max(ratio(g.Err+half, -g.Err-half), ratio(g.Err+half, g.Err+half))
	}
	least, most = math.Inf(1), math.Inf(-1)
	for _, e := range []float64{-g.Err, g.Err} {
		for _, s := range []float64{-half, half} {
			least = min(least, ratio(e-half, e+s))
			most = max(most, ratio(e+half, e+s))
		}
	}
	return least, most
}

// Quantile returns the gain that the true gain stays at or under with
// probability p. It is NaN for p outside 0 to 1, and where CDF is.
func (g Gain) Quantile(p float64) float64 {
	least, most := g.ratios()
	if math.IsNaN(least) || !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	lo := min((1+g.DeadLo)*(least-1), (1+g.DeadHi)*(least-1))
	hi := max((1+g.DeadLo)*(most-1), (1+g.DeadHi)*(most-1))
	switch p {
	case 0:
		return lo
	case 1:
		return hi
	}
	return solve(g.CDF, p, lo, hi)
}

// Median returns the gain that the true gain is as likely over as under.
func (g Gain) Median() float64 { return g.Quantile(0.5) }

// Interval returns the coverage interval for probability p that leaves the
// same chance on either side.
func (g Gain) Interval(p float64) (lo, hi float64) {
	return g.Quantile((1 - p) / 2), g.Quantile((1 + p) / 2)
}

// Draw returns the gain of one trial of the model.
func (g Gain) Draw(r *rand.Rand) float64 {
	e1 := g.Err * (2*r.Float64() - 1)
	e2 := e1
	if !g.Shared {
		e2 = g.Err * (2*r.Float64() - 1)
	}
	p1 := g.Before + e1 + g.Step*(r.Float64()-0.5)
	p2 := g.After + e2 + g.Step*(r.Float64()-0.5)
	d := g.DeadLo + (g.DeadHi-g.DeadLo)*r.Float64()
	return (1 + d) * (p2/p1 - 1)
}

func clamp(x, lo, hi float64) float64 { return max(lo, min(x, hi)) }
