package relief

import (
	"math"

	"plainlift/calc/doubt"
)

// Trial is a reading with shim fitted: T is the total thickness added since the
// reading "now" (m), P what the gauge shows (Pa).
type Trial struct{ T, P float64 }

// Prior is what is believed of the rate before any trial: a normal distribution
// (Pa/m). An SD of 0 means certain.
type Prior struct{ Mean, SD float64 }

// Between returns the prior of a rate said to lie between two values (Pa/m):
// their mean, and (hi − lo)/√12.
func Between(lo, hi float64) Prior {
	return Prior{Mean: (lo + hi) / 2, SD: doubt.Rect(math.Abs(hi-lo) / 2)}
}

// Within returns the prior of a rate worked out from the spring (Pa/m), good to
// ± share of it: ±15 % makes u = 8.7 %.
func Within(rate, share float64) Prior {
	return Prior{Mean: rate, SD: doubt.Rect(math.Abs(rate) * share)}
}

// Line is the pressure against the thickness added, p = Datum + Rate·t, as
// believed after the trials.
type Line struct {
	Rate, RateU   float64 // s, Pa/m
	Datum, DatumU float64 // α, the pressure with nothing added, Pa
	Cov           float64 // covariance of Datum and Rate, Pa²/m
	RateLS        float64 // s of the readings alone, Pa/m; NaN if they say nothing of it
	RateLSU       float64 // its standard uncertainty, +Inf if they say nothing of it
	PriorDropped  bool    // the readings contradict the prior, which is left out

	meanT, meanP, meanPU float64 // the readings' mean and its standard uncertainty
	maxT, repeat         float64
}

// Fit returns what the readings and the prior together say of the valve.
//
// The model is p = α + s·t. now is the reading with nothing added (Pa); it and
// each trial are data of standard deviation repeat (Pa, above 0), with a flat
// prior on α and a normal one of mean s₀ and standard deviation u₀ on s. With
// readings at t̄, p̄ the posterior is normal, and the height of the line at t̄ and
// its slope are independent:
//
//	s_LS = Σ(t−t̄)(p−p̄)/Σ(t−t̄)²       u_LS = repeat/√Σ(t−t̄)²
//	1/u_s² = 1/u₀² + 1/u_LS²          s = s₀ + (u_s/u_LS)²·(s_LS − s₀)
//	α = p̄ − s·t̄                       u_α² = repeat²/n + t̄²·u_s²
//	cov(α, s) = −t̄·u_s²
//
// The evidence beats the rule: when |s_LS − s₀| > 2·√(u_LS² + u₀²) the prior on
// s is dropped and s = s_LS, u_s = u_LS. Without trials the line is now + s₀·t.
//
// The gauge's own error is common to all readings and not in here: POver and
// HalfWidth add it. The result is NaN for repeat not above 0 or a negative SD.
//
// Source: the usual Bayesian linear model with known variance.
func Fit(now float64, trials []Trial, repeat float64, prior Prior) Line {
	if !(repeat > 0) || !(prior.SD >= 0) {
		nan := math.NaN()
		return Line{Rate: nan, RateU: nan, Datum: nan, DatumU: nan, Cov: nan, RateLS: nan, RateLSU: nan,
			meanT: nan, meanP: nan, meanPU: nan, maxT: nan, repeat: nan}
	}
	n := float64(1 + len(trials))
	l := Line{RateLS: math.NaN(), RateLSU: math.Inf(1), meanPU: repeat / math.Sqrt(n), repeat: repeat}
	var t, above float64
	for _, trial := range trials {
		t += trial.T
		above += trial.P - now
		l.maxT = max(l.maxT, trial.T)
	}
	l.meanT, l.meanP = t/n, now+above/n
	stt, stp := l.meanT*l.meanT, l.meanT*(l.meanP-now) // now, at t = 0
	for _, trial := range trials {
		dt := trial.T - l.meanT
		stt += dt * dt
		stp += dt * (trial.P - l.meanP)
	}
	if stt > 0 {
		l.RateLS = stp / stt
		l.RateLSU = repeat / math.Sqrt(stt)
	}

	l.Rate, l.RateU = prior.Mean, prior.SD
	if stt > 0 {
		both := math.Hypot(prior.SD, l.RateLSU)
		l.PriorDropped = math.Abs(l.RateLS-prior.Mean) > 2*both
		if l.PriorDropped || math.IsInf(prior.SD, 1) {
			l.Rate, l.RateU = l.RateLS, l.RateLSU
		} else {
			weight := (prior.SD / both) * (prior.SD / both) // (u_s/u_LS)²
			l.Rate += weight * (l.RateLS - prior.Mean)
			l.RateU = prior.SD / both * l.RateLSU
		}
	}
	l.Datum = l.meanP - l.Rate*l.meanT
	l.DatumU = math.Hypot(l.meanPU, l.meanT*l.RateU)
	l.Cov = -l.meanT * l.RateU * l.RateU
	return l
}

// At returns the height of the line at thickness t (m) and its standard
// deviation, both Pa, with no new reading's scatter and without the gauge's own
// error:
//
//	m = p̄ + s·(t − t̄)       σ² = repeat²/n + (t − t̄)²·u_s²
func (l Line) At(t float64) (m, sigma float64) {
	d := t - l.meanT
	if d == 0 { // whatever the rate, were it unknown
		return l.meanP, l.meanPU
	}
	return l.meanP + l.Rate*d, math.Hypot(l.meanPU, d*l.RateU)
}

// Thickness returns the total thickness at which the line reaches a pressure
// (Pa), m; it is negative for a pressure under the line's start. It is NaN when
// the rate is not above 0: then no shim gets there.
func (l Line) Thickness(target float64) float64 {
	if !(l.Rate > 0) {
		return math.NaN()
	}
	return l.meanT + (target-l.meanP)/l.Rate
}

// Safe returns the largest total thickness, from what is fitted on (m), at
// which the expected pressure is at most target and the chance of truly being
// over limit at most chance. gauge is the limit ±a of the gauge (Pa, from 0);
// chance is a probability under one half. It is NaN when even what is fitted
// fails, and when the rate is not above 0.
func (l Line) Safe(fitted, target, limit, gauge, chance float64) float64 {
	over := func(t float64) bool {
		m, sigma := l.At(t)
		return !(POver(m, sigma, gauge, limit) <= chance)
	}
	hi := l.Thickness(target)
	if !(hi >= fitted) || over(fitted) {
		return math.NaN()
	}
	if !over(hi) {
		return hi
	}
	// From the fitted shims on the chance rises with t until it passes chance.
	lo := fitted
	for range 60 {
		mid := lo + (hi-lo)/2
		if over(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return lo
}

// Stuck reports whether shim goes in and the pressure does not follow:
//
//	s_LS − 2·u_LS ≤ 0  although  rateLo·t ≥ 4·repeat
//
// rateLo is the least rate to be expected (Pa/m) and t the most thickness of any
// trial. A leak, the pump or another relief may be setting the pressure then.
func (l Line) Stuck(rateLo float64) bool {
	const rounding = 1 - 1e-9 // 40 psi of four times 10 psi is enough
	return l.RateLS-2*l.RateLSU <= 0 && rateLo*l.maxT >= 4*l.repeat*rounding
}
