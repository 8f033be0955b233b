package linkage

import "math"

// Arc is a loader's geometry, worked out once for all heights.
type Arc struct {
	Loader
	side  float64 // pivot to base pin
	baseX float64 // the base pin ahead of the pivot
	lean  float64 // of the line pivot–rod pin over the line pivot–bucket pin (rad)
	turn  float64 // θ + turn is the angle at the pivot from base pin to rod pin

	push, pull float64 // force of all cylinders per pascal at the piston and at the rod side, after friction (m²)
}

// Arc returns the geometry of l. Where one of the two triangles pivot–base pin
// and pivot–rod pin–bucket pin cannot close, what needs it is NaN.
//
// With a the side pivot–base pin, the base pin is √(a² − (PivotH − BaseH)²)
// ahead or behind; the rod pin leans from the boom's line by the angle that the
// law of cosines gives.
func (l Loader) Arc() Arc {
	k := Arc{Loader: l, side: math.Abs(l.PivotBase)}
	drop := l.BaseH - l.PivotH
	k.baseX = math.Copysign(math.Sqrt(closes(k.side*k.side-drop*drop, k.side*k.side)), l.PivotBase)
	k.lean = angle(l.PivotRod, l.Boom, l.RodTip)
	if !l.RodAbove {
		k.lean = -k.lean
	}
	k.turn = k.lean - math.Atan2(drop, k.baseX)
	area := math.Pi / 4 * l.Count * l.Efficiency
	k.push, k.pull = area*l.Bore*l.Bore, area*(l.Bore*l.Bore-l.Rod*l.Rod)
	return k
}

// rounding is how far, relative to its size, a triangle may fail to close by
// rounding alone: one that is flat on purpose.
const rounding = 1e-12

// closes returns x, but 0 where x is under 0 by rounding; NaN further down.
func closes(x, size float64) float64 {
	switch {
	case x >= 0:
		return x
	case x >= -rounding*size:
		return 0
	}
	return math.NaN()
}

// angle returns the angle between sides a and b of a triangle whose third side
// is c; NaN when it cannot close.
func angle(a, b, c float64) float64 {
	// By half angles: tan²(C/2) = (c² − (a − b)²)/((a + b)² − c²).
	size := (a + b) * (a + b)
	up := closes((c-a+b)*(c+a-b), size)
	down := closes((a+b-c)*(a+b+c), size)
	return 2 * math.Atan2(math.Sqrt(up), math.Sqrt(down))
}

// Range returns the heights of the bucket pin with the cylinders all the way in
// and all the way out. Of the two ways to close the triangle pivot–base pin–rod
// pin it takes the one where a longer cylinder raises the boom. It is NaN where
// the cylinder does not reach from pin to pin.
func (k *Arc) Range() (low, high float64) {
	return k.Height(k.reached(k.Closed)), k.Height(k.reached(k.Closed + k.Stroke))
}

// reached returns the angle of the boom with the cylinder at length pin to pin.
func (k *Arc) reached(length float64) float64 {
	return math.Remainder(angle(k.side, k.PivotRod, length)-k.turn, 2*math.Pi)
}

// Height returns the height of the bucket pin with the boom at the angle theta.
func (k *Arc) Height(theta float64) float64 {
	return k.PivotH + k.Boom*math.Sin(theta)
}

// Angle returns the boom's angle with the bucket pin at height h, between −π/2
// and π/2; NaN out of the boom's reach.
func (k *Arc) Angle(h float64) float64 {
	return math.Asin((h - k.PivotH) / k.Boom)
}

// Point is a place seen from the side: X ahead of the pivot, Y over the ground.
type Point struct{ X, Y float64 }

// Pins are the pin centres at one angle of the boom.
type Pins struct{ Pivot, Base, Rod, Bucket Point }

// Pins returns the pin centres with the boom at the angle theta. For a drawing
// of what cannot be: where a triangle does not close, its pin is put plumb with
// the pivot, or on the boom's line.
func (k *Arc) Pins(theta float64) Pins {
	baseX, lean := k.baseX, k.lean
	if math.IsNaN(baseX) {
		baseX = 0
	}
	if math.IsNaN(lean) {
		lean = 0
	}
	from := func(length, angle float64) Point {
		s, c := math.Sincos(angle)
		return Point{X: length * c, Y: k.PivotH + length*s}
	}
	return Pins{
		Pivot:  Point{Y: k.PivotH},
		Base:   Point{X: baseX, Y: k.BaseH},
		Rod:    from(k.PivotRod, theta+lean),
		Bucket: from(k.Boom, theta),
	}
}
