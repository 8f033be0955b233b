// Package relief is the pressure at which a spring-loaded relief valve opens:
// what a shim under its spring adds, what readings taken along the way say about
// this very valve, and how likely the true pressure is over a limit.
//
// All in SI: pressures in pascal, lengths in metre, spring rates in newton per
// metre, the rate of a shim in pascal per metre of thickness. Anything outside
// its domain gives NaN.
package relief

import "math"

// SpringRate returns the rate of a helical compression spring of round wire,
// N/m:
//
//	k = G·d⁴/(8·D³·N)
//
// g is the shear modulus (Pa), wire the wire diameter d (m), meanDia the mean
// coil diameter D (m, above wire), active the number of active coils N, which
// need not be whole; all above 0. It holds for close coils and small
// deflections. Handbooks differ by about 3 % in G, and d⁴/D³ makes a small
// error of measurement a large one.
//
// Source: Bhandari, Design of Machine Elements, ch. 10 (read through its open
// companion of worked examples).
func SpringRate(g, wire, meanDia, active float64) float64 {
	if !(g > 0) || !(wire > 0) || !(meanDia > wire) || !(active > 0) {
		return math.NaN()
	}
	d2 := wire * wire
	return g * d2 * d2 / (8 * meanDia * meanDia * meanDia * active)
}

// SeatArea returns the area of a round seat of the given diameter (m, above 0),
// m²: π·d²/4.
func SeatArea(diameter float64) float64 {
	if !(diameter > 0) {
		return math.NaN()
	}
	return math.Pi * diameter * diameter / 4
}

// ShimRate returns how much a direct-acting valve's opening pressure rises with
// the thickness of shim under its spring, Pa/m:
//
//	k/A
//
// rate is the spring rate k (N/m), seatArea the area A that the pressure acts
// on (m²), both above 0. It is exact for the cracking pressure; the full-flow
// pressure that people read rises slightly less. A pilot-operated valve does not
// follow it.
//
// Source: from the balance p·A = k·x, as in Esposito, Fluid Power with
// Applications, Ex. 8-1.
func ShimRate(rate, seatArea float64) float64 {
	if !(rate > 0) || !(seatArea > 0) {
		return math.NaN()
	}
	return rate / seatArea
}

// CrackingPressure returns the pressure at which a direct-acting valve begins
// to open, Pa:
//
//	p = k·x/A
//
// rate is k (N/m), precompression x (m, from 0) is how far the spring is
// shortened with the valve shut, seatArea is A (m²).
//
// Source: Esposito, Fluid Power with Applications, Ex. 8-1 (read).
func CrackingPressure(rate, precompression, seatArea float64) float64 {
	if !(precompression >= 0) {
		return math.NaN()
	}
	return ShimRate(rate, seatArea) * precompression
}

// FullFlow returns the pressure at which a direct-acting valve passes the whole
// flow, Pa:
//
//	p = k·(x + lift)/A
//
// lift is how far the poppet is off its seat then (m, from 0); the rest as for
// CrackingPressure. This is the pressure that is quoted as a valve's setting.
//
// Source: Esposito, Fluid Power with Applications, Ex. 8-1 (read).
func FullFlow(rate, precompression, lift, seatArea float64) float64 {
	if !(lift >= 0) {
		return math.NaN()
	}
	return CrackingPressure(rate, precompression, seatArea) + ShimRate(rate, seatArea)*lift
}
