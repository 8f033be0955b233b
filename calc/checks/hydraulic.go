package checks

import (
	"math"

	"plainlift/calc/hydraulic"
)

const (
	espPump   = "Esposito, Fluid Power with Applications, Ex. 5-1"
	espRelief = "Esposito, Fluid Power with Applications, Ex. 8-2"
	espUnload = "Esposito, Fluid Power with Applications, Ex. 8-3"
	espPiston = "Esposito, Fluid Power with Applications, Ex. 9-2"
	espHeat   = "Esposito, Fluid Power with Applications, Ex. 11-2"

	kilo   = 0.45359237 // kg, a pound
	cubic  = inch * inch * inch
	gallon = 231 * cubic
	horses = 550 * 12 * inch * lbf
	degree = 5.0 / 9
	btu    = 1055.05585262
)

// gearPump is the textbook's, of which so much arrives.
func gearPump(part float64) hydraulic.Pump {
	return hydraulic.Pump{Displacement: math.Pi / 4 * 5 * cubic, Turns: 1800.0 / 60, Efficiency: part}
}

// piston is the textbook's cylinder of 1.5 in with a rod of 0.5 in.
var piston = hydraulic.Cylinder{Bore: 1.5 * inch, Rod: 0.5 * inch, Stroke: 10 * inch, Count: 1}

// heated is how much hotter its oil is after 1000 psi, °F.
func heated() float64 {
	return hydraulic.PassRise(1000*psi, 7.42*kilo/gallon, 0.42*btu/kilo/degree) / degree
}

// power is that of a pressure (psi) and a flow (gpm), hp.
func power(pressure, flow float64) func() float64 {
	return func() float64 { return hydraulic.Power(pressure*psi, flow*gallon/60) / horses }
}

var pumps = []Check{
	{What: "Gear pump, 3 and 2 in by 1 in, 1800 rpm: flow without slip", Source: espPump, Status: Computed, Unit: "gpm", Printed: "30.59993", Got: func() float64 { return gearPump(1).Flow() / gallon * 60 }},
	{What: "The same delivering 28 gpm: volumetric efficiency", Source: espPump, Status: Read, Unit: "%", Printed: "91.5", Got: func() float64 { return 100 * gearPump(1).Seen(28*gallon/60) }},
	{What: "1 in³ a turn at 2500 rpm", Source: "231 in³ to the gallon, " + espPump, Status: Computed, Unit: "gpm", Printed: "10.822511", Got: func() float64 {
		return hydraulic.Pump{Displacement: cubic, Turns: 2500.0 / 60, Efficiency: 1}.Flow() / gallon * 60
	}},
	{What: "Power lost over a relief, 1000 psi and 20 gpm", Source: espRelief, Status: Read, Unit: "hp", Printed: "11.7", Got: power(1000, 20)},
	{What: "The same, with the exact 1714.2857", Source: espRelief + ", inputs", Status: Computed, Unit: "hp", Printed: "11.666667", Got: power(1000, 20)},
	{What: "Power lost unloaded, 25 psi and 20 gpm", Source: espUnload, Status: Read, Unit: "hp", Printed: "0.29", Got: power(25, 20)},
	{What: "2500 psi and 12 gpm", Source: "exact constants", Status: Computed, Unit: "hp", Printed: "17.5", Tol: 1e-9, Got: power(2500, 12)},
	{What: "100 bar and 60 L/min", Source: "definition of bar and litre", Status: Computed, Unit: "kW", Printed: "10", Tol: 1e-9, Got: func() float64 { return hydraulic.Power(100e5, 0.060/60) / 1000 }},
	{What: "Oil's rise over a relief of 1000 psi", Source: espHeat, Status: Read, Unit: "°F", Printed: "7.94", Got: heated},
	{What: "The same, with exact constants", Source: espHeat + ", inputs", Status: Computed, Unit: "°F", Printed: "7.93786", Got: heated},
}

var pistons = []Check{
	{What: "Pressure under 2000 lb on a bore of 1.5 in", Source: espPiston, Status: Read, Unit: "psi", Printed: "1132", Got: func() float64 { return 2000 * lbf / piston.CapArea() / psi }},
	{What: "The same, more digits", Source: espPiston + ", inputs", Status: Computed, Unit: "psi", Printed: "1131.7685", Got: func() float64 { return 2000 * lbf / piston.CapArea() / psi }},
	{What: "What a return loss of 50 psi on its rod side costs at the piston", Source: espPiston, Status: Read, Unit: "psi", Printed: "44.444", Got: func() float64 { return 50 * piston.RodArea() / piston.CapArea() }},
	{What: "Unloading setting, 1.5 times the losses of line and return", Source: espPiston, Status: Read, Unit: "psi", Printed: "217", Got: func() float64 { return 1.5 * (100 + 50*piston.RodArea()/piston.CapArea()) }},
}
