package checks

import (
	"math"

	"plainlift/calc/strength"
)

const (
	mpa       = 1e6
	bigSteel  = 206e9 // Pa, of the rod and the column below
	tubes     = "Esposito, Fluid Power with Applications, Ex. 10-3"
	clavarino = "Bhandari, Design of Machine Elements, Ex. 22.4"
	limit     = "FOSSEE book 3776, Ex. 11.2"
	shooting  = "y″ = −P·y/(E·I) from end to end by power series, no sines"
)

// designWall is the wall of Bhandari's cylinder, mm.
func designWall() float64 {
	return strength.ClavarinoWall(15*mpa, 340*mpa/5, 0.27, 0.250) * 1000
}

// limitLength is that of a flat bar, 60 by 100 mm, of steel that bears 250 MPa; mm.
func limitLength() float64 {
	const area, second = 0.060 * 0.100, 0.100 * 0.060 * 0.060 * 0.060 / 12
	return strength.EulerLength(200e9, second, 250*mpa*area) * 1000
}

// extended is a cylinder pushed out: a rod of 1 in, 22.5 in long, in a barrel of
// 1.75 by 2.25 in, 30.9 in long; N.
func extended() float64 {
	return strength.Stepped(bigSteel, strength.Ring(0, inch), 22.5*inch, strength.Ring(1.75*inch, 2.25*inch), 30.9*inch)
}

// halves is √(P/(E·I))·L of a column of two equal lengths L, whose stiffnesses
// are in a ratio.
func halves(ratio float64) float64 { return math.Sqrt(strength.Stepped(1, 1, 1, ratio, 1)) }

var walls = []Check{
	{What: "Thick cylinder, bore 50, outside 60 mm, 20 MPa: hoop stress at the bore", Source: "Lamé's closed form", Status: Computed, Unit: "MPa", Printed: "110.909091", Got: func() float64 { return strength.Hoop(20*mpa, 0.050, 0.060, 0.050) / mpa }},
	{What: "The same outside", Source: "Lamé's closed form", Status: Computed, Unit: "MPa", Printed: "90.909091", Got: func() float64 { return strength.Hoop(20*mpa, 0.050, 0.060, 0.060) / mpa }},
	{What: "Its axial stress, ends closed", Source: "Lamé's closed form", Status: Computed, Unit: "MPa", Printed: "45.454545", Got: func() float64 { return strength.Axial(20*mpa, 0.050, 0.060) / mpa }},
	{What: "Its von Mises stress at the bore", Source: "√3·720/11", Status: Computed, Unit: "MPa", Printed: "113.3705983136", Got: func() float64 { return strength.VonMises(20*mpa, 0.050, 0.060) / mpa }},
	{What: "The same as if the wall were thin", Source: "p·d/(2t)", Status: Computed, Unit: "MPa", Printed: "100", Tol: 1e-9, Got: func() float64 { return strength.ThinHoop(20*mpa, 0.050, 0.005) / mpa }},
	{What: "Pressure at which the bore of that cylinder has 110.909 MPa", Source: "Lamé's closed form", Status: Computed, Unit: "MPa", Printed: "20", Tol: 1e-6, Got: func() float64 { return strength.WallPressure(110.909091*mpa, 0.050, 0.060) / mpa }},
	{What: "Working pressure of a tube, 1.250 by 1.060 in, 55 000 psi, factor 8, as if thin", Source: tubes, Status: Read, Unit: "psi", Printed: "1232", Got: func() float64 { return 55_000 / 8 / strength.ThinHoop(1, 1.060, 0.095) }},
	{What: "Wall of a cylinder by Clavarino, 250 mm, 15 MPa (a later digit of the printed 29.623169 is off by one)", Source: clavarino, Status: Read, Unit: "mm", Printed: "29.623", Got: designWall},
	{What: "The same, more digits", Source: clavarino + ", inputs", Status: Computed, Unit: "mm", Printed: "29.623170389325", Got: designWall},
}

var columns = []Check{
	{What: "Buckling load of a rod, 30 mm, 1 m between the pins, 206 GPa", Source: "Euler's closed form", Status: Computed, Unit: "N", Printed: "80839.18", Got: func() float64 { return strength.Euler(bigSteel, strength.Ring(0, 0.030), 1) }},
	{What: "Length from which a flat bar, 60 by 100 mm, buckles before it reaches 250 MPa", Source: limit, Status: Read, Unit: "mm", Printed: "1539", Got: limitLength},
	{What: "The same, more digits", Source: limit + ", inputs", Status: Computed, Unit: "mm", Printed: "1539.0598", Got: limitLength},
	{What: "Stepped column, both sections alike: √(P/EI) × half its length", Source: "π/2, Euler's closed form", Status: Computed, Printed: "1.5707963268", Got: func() float64 { return halves(1) }},
	{What: "Stepped column, one half rigid: the same", Source: "least root of tan x = −x", Status: Computed, Printed: "2.0287578381", Got: func() float64 { return halves(1e13) }},
	{What: "Stepped column, a cylinder of 1.75 in pushed out to 53.4 in", Source: shooting, Status: Computed, Unit: "N", Printed: "46031.84751185", Got: extended},
	{What: "A short bar, its Euler stress at the yield: part of the yield that it bears by Johnson", Source: "Johnson's parabola, in texts on machine design", Status: Memory, Printed: "0.75", Tol: 1e-12, Got: func() float64 { return strength.Short(1, 1, 1) }},
}

var pins = []Check{
	{What: "Pin of 25 mm that carries 40 kN in double shear", Source: "F/(2A)", Status: Computed, Unit: "MPa", Printed: "40.743665", Got: func() float64 { return strength.DoubleShear(40e3, 0.025) / mpa }},
	{What: "The same pin in an eye 40 mm wide: bearing pressure", Source: "F/(d·b)", Status: Computed, Unit: "MPa", Printed: "40", Tol: 1e-9, Got: func() float64 { return strength.Bearing(40e3, 0.025, 0.040) / mpa }},
	{What: "Yield in shear of a steel that yields at 300 MPa", Source: "300/√3", Status: Computed, Unit: "MPa", Printed: "173.2050807569", Got: func() float64 { return strength.ShearYield(300*mpa) / mpa }},
}
