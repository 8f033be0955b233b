package line

import (
	"errors"
	"math"
)

// Why a line with stated uncertainties could not be fitted.
var (
	ErrUncertainty = errors.New("line: a point without uncertainty, or with a negative one")
	ErrSettle      = errors.New("line: the points determine no line")
)

// Stated is y = Intercept + Slope·x through points whose uncertainties were
// stated beforehand. How far the points are from the line does not change what
// is said of its doubt; Chi2 tells whether they are as near as was stated.
type Stated struct {
	Intercept, Slope   float64
	InterceptU, SlopeU float64 // standard uncertainties
	Cov                float64 // covariance of Intercept and Slope
	Chi2               float64 // Σ(distance ÷ its standard uncertainty)², 0 for two points
	DOF                int     // points − 2

	meanX, meanU float64 // where the line is known best, and its standard uncertainty there
}

// York returns the line through points that are uncertain in both directions,
// the one with the least
//
//	χ² = Σ Wᵢ·(yᵢ − intercept − slope·xᵢ)²,  Wᵢ = 1/(u²(yᵢ) + slope²·u²(xᵢ))
//
// ux and uy are the standard uncertainties of each x and y, independent of each
// other, not negative, at least one of each point's two above 0. The
// uncertainties of the line are those of the points carried through, taken at
// the adjusted points and not scaled by χ². A convention that takes them at the
// observed points differs, by 1 % in Pearson's data.
//
// With all ux = 0 it is weighted least squares. With two points it passes
// through both. It returns ErrLengths, ErrFew, ErrVertical, ErrFinite,
// ErrUncertainty, or ErrSettle when the points lie so that no slope is the best
// one, or none is found.
//
// Source: D. York, N. M. Evensen, M. López Martínez, J. De Basabe Delgado,
// "Unified equations for the slope, intercept, and standard errors of the best
// straight line", Am. J. Phys. 72 (2004) 367, eq. (13) (from memory), with its
// correlations zero; in uncertainties instead of weights, so that one of the two
// may be 0.
func York(x, y, ux, uy []float64) (Stated, error) {
	if len(x) != len(ux) || len(x) != len(uy) {
		return Stated{}, ErrLengths
	}
	first, err := Ordinary(x, y)
	if err != nil {
		return Stated{}, err
	}
	for i := range ux {
		if !(ux[i] >= 0 && uy[i] >= 0 && ux[i]+uy[i] > 0) {
			return Stated{}, ErrUncertainty
		}
	}
	p := measured{x, y, ux, uy}
	const most = 500 // steps; a test with a gauge and a scale takes under ten
	slope := first.Slope
	for range most {
		l, next := p.step(slope)
		if math.IsNaN(next) || math.IsInf(next, 0) || math.IsInf(l.SlopeU, 0) || !(l.SlopeU > 0) {
			return Stated{}, ErrFinite
		}
		if d := math.Abs(next - slope); d <= 1e-12*l.SlopeU || d <= 1e-14*math.Abs(slope) {
			if !p.least(l) {
				return Stated{}, ErrSettle
			}
			if math.IsNaN(l.Cov*0 + l.InterceptU*0) { // one of them overflows
				return Stated{}, ErrFinite
			}
			if l.DOF = len(x) - 2; l.DOF == 0 {
				l.Chi2 = 0 // but for rounding
			}
			return l, nil
		}
		slope = next
	}
	return Stated{}, ErrSettle
}

// measured are the points to which a line is fitted.
type measured struct{ x, y, ux, uy []float64 }

// weight returns W of a point for a slope.
func (p measured) weight(i int, slope float64) float64 {
	return 1 / (p.uy[i]*p.uy[i] + slope*slope*p.ux[i]*p.ux[i])
}

// means returns the weighted means of x and y and the sum of the weights.
func (p measured) means(slope float64) (x, y, sum float64) {
	for i := range p.x {
		w := p.weight(i, slope)
		sum += w
		x += w * p.x[i]
		y += w * p.y[i]
	}
	return x / sum, y / sum, sum
}

// step returns the line of a slope with its doubt, and a better slope.
func (p measured) step(slope float64) (l Stated, next float64) {
	meanX, meanY, sum := p.means(slope)
	var up, down, meanBeta float64
	beta := make([]float64, len(p.x))
	for i := range p.x {
		w := p.weight(i, slope)
		u, v := p.x[i]-meanX, p.y[i]-meanY
		beta[i] = w * (u*p.uy[i]*p.uy[i] + slope*v*p.ux[i]*p.ux[i]) // (13), the adjusted x from its mean
		up += w * beta[i] * v
		down += w * beta[i] * u
		meanBeta += w * beta[i] / sum
	}
	var spread float64
	for i := range p.x {
		w := p.weight(i, slope)
		spread += w * square(beta[i]-meanBeta)
		l.Chi2 += w * square((p.y[i]-meanY)-slope*(p.x[i]-meanX))
	}
	l.Slope = slope
	l.Intercept = meanY - slope*meanX
	l.SlopeU = 1 / math.Sqrt(spread)
	l.meanX, l.meanU = meanX+meanBeta, 1/math.Sqrt(sum)
	_, l.InterceptU = l.At(0)
	l.Cov = -l.meanX * l.SlopeU * l.SlopeU
	return l, up / down
}

// least reports whether no line of nearly the same slope has a smaller χ²: the
// step also comes to rest on a line that is the worst of its kind.
func (p measured) least(l Stated) bool {
	for _, off := range []float64{-0.01, 0.01} {
		if at, _ := p.step(l.Slope + off*l.SlopeU); at.Chi2 < l.Chi2*(1-1e-9) {
			return false
		}
	}
	return true
}

// At returns the line's y at x and the standard uncertainty of that point of
// the line:
//
//	u²(x) = 1/ΣW + (x − x̄)²·u²(slope)
//
// with x̄ the weighted mean of the adjusted points.
//
// Source: as for York, eq. (13) with the covariance worked in.
func (l Stated) At(x float64) (y, u float64) {
	return l.Intercept + l.Slope*x, math.Hypot(l.meanU, (x-l.meanX)*l.SlopeU)
}

// P returns the chance of so large a Chi2, or a larger one, when the points are
// as uncertain as was stated; NaN for two points, which always fit.
func (l Stated) P() float64 { return ChiSquareTail(l.Chi2, l.DOF) }

func square(x float64) float64 { return x * x }
