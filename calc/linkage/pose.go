package linkage

import "math"

// Pose is a loader with its bucket pin at one height.
type Pose struct {
	Height  float64 // of the bucket pin
	Angle   float64 // of the boom
	Length  float64 // of the cylinder, pin to pin
	Arm     float64 // dℓ/dθ: what the cylinder lengthens for a turn, which is its lever arm about the pivot
	LoadArm float64 // the rise of the load for a turn: its lever arm

	perPa   float64 // load per pascal at the piston (m²)
	perBack float64 // load that a pascal at the rod side costs (m²)
	weights float64 // boom and tool, referred to the load (N)
}

// At returns the loader with its bucket pin at height h (m). With φ the angle at
// the pivot from base pin to rod pin, a and r the sides pivot–base pin and
// pivot–rod pin,
//
//	ℓ² = a² + r² − 2·a·r·cos φ
//	dℓ/dθ = a·r·sin φ/ℓ
//
// Without a parallel linkage the tool turns with the boom, and the load's lever
// arm is its level distance from the pivot, boom·cos θ + LoadX. With one the tool
// rises as the bucket pin does wherever the load sits on it: boom·cos θ. All is
// NaN out of the boom's reach, and what the load decides is NaN where its lever
// arm is not above 0.
//
// Source: law of cosines and virtual work, as in problem 7/27 of Meriam and
// Kraige, Statics (the method read; it prints no numbers).
func (k *Arc) At(h float64) Pose {
	theta := k.Angle(h)
	s, c := math.Sincos(theta + k.turn)
	level := k.Boom * math.Cos(theta)
	at := Pose{Height: h, Angle: theta, LoadArm: level}
	at.Length = math.Sqrt(k.side*k.side + k.PivotRod*k.PivotRod - 2*k.side*k.PivotRod*c)
	at.Arm = k.side * k.PivotRod * s / at.Length
	tool := level
	if !k.Level {
		tool += k.ToolCG
		at.LoadArm += k.LoadX
	}
	leverage := at.Arm / at.LoadArm
	if !(at.LoadArm > 0) {
		leverage = math.NaN()
	}
	at.perPa, at.perBack = k.push*leverage, k.pull*leverage
	at.weights = (k.BoomW*k.BoomCG*math.Cos(theta) + k.ToolW*tool) / at.LoadArm
	return at
}

// Lift returns the load that just moves at a pressure p at the piston and back
// at the rod side (Pa), N. It is negative where the pressure does not even hold
// up the boom and the tool.
//
//	L = [count·(p·A_piston − back·A_ring)·efficiency·dℓ/dθ − W_boom·x_boom − W_tool·x_tool] / x_L
func (at *Pose) Lift(p, back float64) float64 {
	return at.perPa*p - at.Dead(back)
}

// Dead returns what the pressure holds up besides the load, referred to the
// load: boom, tool, and the pressure back at the rod side (Pa), N. It is the
// lift at no pressure, with its sign turned.
func (at *Pose) Dead(back float64) float64 {
	return at.perBack*back + at.weights
}

// Slope returns how much load one pascal lifts, N/Pa.
func (at *Pose) Slope() float64 { return at.perPa }

// RaiseVolume returns the oil that the cylinders take for their whole stroke, m³.
func (l Loader) RaiseVolume() float64 {
	return l.Count * math.Pi / 4 * l.Bore * l.Bore * l.Stroke
}
