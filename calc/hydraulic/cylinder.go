// Package hydraulic is what oil under pressure does in cylinders, and what a
// pump puts into it: forces, volumes, speeds, power and heat.
//
// All in SI: pressures in pascal above the atmosphere, forces in newton, lengths
// in metre, flows in m³/s, power in watt. Oil is taken not to be squeezed, which
// at working pressures is 1 to 2 % of its volume (from memory). Anything outside
// its domain gives NaN.
package hydraulic

import "math"

// Cylinder is a double-acting cylinder with one rod, or several alike that are
// fed together.
type Cylinder struct {
	Bore   float64 // inside diameter of the tube (m, above 0)
	Rod    float64 // diameter of the rod (m, from 0, under the bore)
	Stroke float64 // (m, from 0)
	Count  float64 // how many (above 0)
}

// ok reports whether such a cylinder can be.
func (c Cylinder) ok() bool {
	return c.Bore > 0 && c.Rod >= 0 && c.Rod < c.Bore && c.Stroke >= 0 && c.Count > 0
}

// CapArea returns the area on which the oil pushes the rods out, m², of all the
// cylinders together:
//
//	A = n·π·bore²/4
//
// Source: geometry; Esposito, Fluid Power with Applications, Ex. 9-2 (read) uses
// it so.
func (c Cylinder) CapArea() float64 {
	if !c.ok() {
		return math.NaN()
	}
	return c.Count * math.Pi * c.Bore * c.Bore / 4
}

// RodArea returns the ring about the rod on which the oil pulls the rods in, m²,
// of all the cylinders together:
//
//	a = n·π·(bore² − rod²)/4
//
// Source: geometry; Esposito, Fluid Power with Applications, Ex. 9-2 (read) uses
// it so.
func (c Cylinder) RodArea() float64 {
	if !c.ok() {
		return math.NaN()
	}
	// The product form keeps its digits when the rod nearly fills the bore.
	return c.Count * math.Pi * (c.Bore - c.Rod) * (c.Bore + c.Rod) / 4
}

// Push returns the force with which the rods are pushed out, N, without
// friction:
//
//	F = p·A − back·a
//
// p is the pressure on the piston, back the pressure left on the rod side (both
// Pa). Below 0 the back pressure wins and the rods go in.
//
// Source: equilibrium of the piston; Esposito, Fluid Power with Applications,
// Ex. 9-2 (read) has the same balance without a load.
func (c Cylinder) Push(p, back float64) float64 { return p*c.CapArea() - back*c.RodArea() }

// Pull returns the force with which the rods are pulled in, N, without friction:
//
//	F = p·a − back·A
//
// p is the pressure on the rod side, back the pressure left on the piston's
// other side (both Pa).
//
// Source: equilibrium of the piston, as Push.
func (c Cylinder) Pull(p, back float64) float64 { return p*c.RodArea() - back*c.CapArea() }

// OutVolume returns the oil that the full stroke out takes, m³: A·stroke.
func (c Cylinder) OutVolume() float64 { return c.CapArea() * c.Stroke }

// InVolume returns the oil that the full stroke in takes, m³: a·stroke. It is
// also the volume between the two diameters of a gear pump's ring, for which
// there is a published example.
func (c Cylinder) InVolume() float64 { return c.RodArea() * c.Stroke }

// Blocked returns the pressure on the rod side when oil can't leave there, Pa:
//
//	p·A/a
//
// p is the pressure on the piston (Pa). It holds for a rod that carries nothing;
// a load that the rod pushes, and friction, take from it. The thicker the rod,
// the higher: a rod of 0.71 of the bore doubles it.
//
// Source: equilibrium of the piston, Push = 0.
func (c Cylinder) Blocked(p float64) float64 { return p * c.CapArea() / c.RodArea() }

// Speed returns how fast a flow moves a piston, m/s: flow ÷ area. flow is in
// m³/s, area in m² and above 0. The pressure is not in it.
func Speed(flow, area float64) float64 {
	if !(area > 0) {
		return math.NaN()
	}
	return flow / area
}

// Time returns how long a flow takes to fill a volume, s: volume ÷ flow. volume
// is in m³, flow in m³/s and above 0.
func Time(volume, flow float64) float64 {
	if !(flow > 0) {
		return math.NaN()
	}
	return volume / flow
}
