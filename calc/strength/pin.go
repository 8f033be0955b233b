package strength

import "math"

// DoubleShear returns the mean shear stress of a pin that is cut through at two
// places, Pa: F/(2A), A = π·d²/4. force is what the pin carries (N), pin its
// diameter d (m, above 0). Bending is left out, as for a pin that fits closely.
//
// Source: statics; textbooks on machine design (from memory).
func DoubleShear(force, pin float64) float64 { return force / (2 * Area(0, pin)) }

// Bearing returns the mean pressure of a pin on the eye around it, Pa: F/(d·b).
// force is what it carries (N), pin the diameter d and width the length b that
// bears (m, above 0).
//
// Source: as for DoubleShear.
func Bearing(force, pin, width float64) float64 {
	if !(pin > 0 && width > 0) {
		return math.NaN()
	}
	return force / (pin * width)
}

// ShearYield returns the shear stress at which a steel of a given yield strength
// (Pa, above 0) yields, Pa: σ/√3, by von Mises.
func ShearYield(yield float64) float64 {
	if !(yield > 0) {
		return math.NaN()
	}
	return yield / math.Sqrt(3)
}
