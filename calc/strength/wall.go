// Package strength is what the metal of a hydraulic machine bears: the wall of a
// tube or a cylinder under pressure, a rod that pushes without buckling, a pin in
// shear. It says nothing of how strong a part has to be beyond the load: factors
// are the caller's.
//
// All in SI: pressures and stresses in pascal, forces in newton, lengths in
// metre. Anything outside its domain gives NaN.
package strength

import "math"

// Hoop returns the stress around a thick cylinder at the diameter at, Pa:
//
//	σ = p·d²/(D² − d²)·(1 + D²/at²)
//
// p is the pressure inside (Pa), none outside; bore is d and outside D (m, 0 < d <
// D), at lies from bore to outside. It is largest at the bore. Elastic, far from
// the ends.
//
// Source: Lamé's solution, in every text on strength of materials (from memory;
// the tests balance it against the pressure).
func Hoop(p, bore, outside, at float64) float64 {
	if !(at >= bore && at <= outside) {
		return math.NaN()
	}
	return Axial(p, bore, outside) * (1 + outside*outside/(at*at))
}

// Axial returns the stress along a thick cylinder with closed ends, Pa:
//
//	σ = p·d²/(D² − d²)
//
// Arguments and source as for Hoop.
func Axial(p, bore, outside float64) float64 {
	if !(bore > 0 && outside > bore) {
		return math.NaN()
	}
	return p * bore * bore / (outside*outside - bore*bore)
}

// VonMises returns the equivalent stress at the bore of a thick cylinder with
// closed ends, Pa:
//
//	σ = √3·p·D²/(D² − d²)
//
// It follows from Hoop, Axial and the radial stress −p at the bore. Arguments as
// for Hoop.
func VonMises(p, bore, outside float64) float64 {
	return math.Sqrt(3) * (Axial(p, bore, outside) + p)
}

// WallPressure returns the pressure at which the hoop stress at the bore reaches
// a stress, Pa:
//
//	p = σ·(D² − d²)/(D² + d²)
//
// stress is σ (Pa, above 0); the rest as for Hoop, whose inverse this is. By the
// largest stress against a fourth of the tensile strength it rates steel tubes.
func WallPressure(stress, bore, outside float64) float64 {
	if !(stress > 0) {
		return math.NaN()
	}
	return stress / Hoop(1, bore, outside, bore)
}

// ThinHoop returns the stress around a thin-walled tube, Pa:
//
//	σ = p·d/(2t)
//
// bore is d and wall t (m, above 0). It is the mean over the wall, and so less
// than the stress at the bore: by a tenth where the wall is a tenth of the bore.
//
// Source: Esposito, Fluid Power with Applications, ch. 10 (read).
func ThinHoop(p, bore, wall float64) float64 {
	if !(bore > 0 && wall > 0) {
		return math.NaN()
	}
	return p * bore / (2 * wall)
}

// ClavarinoWall returns the wall that a ductile cylinder with closed ends needs
// by the largest strain, m:
//
//	t = d/2·(√[(σ + (1 − 2ν)·p)/(σ − (1 + ν)·p)] − 1)
//
// p is the pressure inside (Pa, above 0), stress the stress allowed σ (Pa), nu
// Poisson's ratio ν (0 to 0.5), bore is d (m, above 0). NaN where no wall is
// thick enough: σ ≤ (1 + ν)·p.
//
// Source: Clavarino's equation in Bhandari, Design of Machine Elements, Ex. 22.4
// (read through its open companion of worked examples).
func ClavarinoWall(p, stress, nu, bore float64) float64 {
	left := stress - (1+nu)*p
	if !(p > 0 && left > 0 && nu >= 0 && nu <= 0.5 && bore > 0) {
		return math.NaN()
	}
	return bore / 2 * (math.Sqrt((stress+(1-2*nu)*p)/left) - 1)
}
