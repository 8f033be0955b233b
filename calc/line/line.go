// Package line fits straight lines to measured points and says how well the
// lines are known.
//
// It works in whatever units the points are in. A fit that the numbers do not
// allow is an error, never a panic.
package line

import (
	"errors"
	"math"
)

// Why a line could not be fitted.
var (
	ErrLengths  = errors.New("line: not as many x as y")
	ErrFew      = errors.New("line: fewer than two points")
	ErrVertical = errors.New("line: all points at one x")
	ErrFinite   = errors.New("line: a point is not finite, or too large")
)

// Line is y = Intercept + Slope·x, as fitted.
type Line struct {
	Intercept, Slope   float64
	InterceptU, SlopeU float64 // standard uncertainties, NaN for two points
	Cov                float64 // covariance of Intercept and Slope, NaN for two points
	S                  float64 // residual standard deviation, NaN for two points
	SSE                float64 // sum of squared residuals
	DOF                int     // points − 2

	n, meanX, meanY, sxx float64
}

// Ordinary returns the least-squares line through points whose x is exact and
// whose y scatter alike:
//
//	slope     = Σ(x−x̄)(y−ȳ)/Σ(x−x̄)²       u = s/√Σ(x−x̄)²
//	intercept = ȳ − slope·x̄              u = s·√(1/n + x̄²/Σ(x−x̄)²)
//	s² = SSE/(n−2),  cov(intercept, slope) = −x̄·s²/Σ(x−x̄)²
//
// With two points the line is exact and says nothing of its own doubt: the
// uncertainties are NaN. It returns ErrLengths, ErrFew, ErrVertical or
// ErrFinite.
//
// Source: JCGM 100:2008, H.3, here centred on the means for accuracy.
func Ordinary(x, y []float64) (Line, error) {
	if len(x) != len(y) {
		return Line{}, ErrLengths
	}
	if len(x) < 2 {
		return Line{}, ErrFew
	}
	l := Line{n: float64(len(x)), DOF: len(x) - 2}
	l.meanX, l.meanY = mean(x), mean(y)
	var sxy float64
	for i := range x {
		dx := x[i] - l.meanX
		l.sxx += dx * dx
		sxy += dx * (y[i] - l.meanY)
	}
	if v := l.sxx + sxy; math.IsNaN(v) || math.IsInf(v, 0) {
		return Line{}, ErrFinite
	}
	if l.sxx == 0 {
		return Line{}, ErrVertical
	}
	l.Slope = sxy / l.sxx
	l.Intercept = l.meanY - l.Slope*l.meanX
	for i := range x {
		r := (y[i] - l.meanY) - l.Slope*(x[i]-l.meanX)
		l.SSE += r * r
	}
	l.S = math.NaN()
	if l.DOF > 0 {
		l.S = math.Sqrt(l.SSE / float64(l.DOF))
	}
	l.SlopeU = l.S / math.Sqrt(l.sxx)
	l.InterceptU = l.uAt(0)
	l.Cov = -l.meanX * l.SlopeU * l.SlopeU
	return l, nil
}

// At returns the line's y at x and the standard uncertainty of that point of
// the line:
//
//	u(x) = s·√(1/n + (x−x̄)²/Σ(x−x̄)²)
//
// Source: JCGM 100:2008, H.3, with the covariance worked in.
func (l Line) At(x float64) (y, u float64) {
	return l.meanY + l.Slope*(x-l.meanX), l.uAt(x)
}

// New returns what one further reading at x should show and its standard
// uncertainty, that of the line and the scatter s of a reading together.
func (l Line) New(x float64) (y, u float64) {
	y, u = l.At(x)
	return y, math.Hypot(u, l.S)
}

// uAt returns the standard uncertainty of the line at x.
func (l Line) uAt(x float64) float64 {
	return math.Hypot(l.S/math.Sqrt(l.n), (x-l.meanX)*l.SlopeU)
}

// mean returns the mean of v, corrected by the mean of what is left over.
func mean(v []float64) float64 {
	var sum, rest float64
	for _, a := range v {
		sum += a
	}
	m := sum / float64(len(v))
	for _, a := range v {
		rest += a - m
	}
	return m + rest/float64(len(v))
}
