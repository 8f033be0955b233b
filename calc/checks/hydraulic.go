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
	{What: "psi times gpm in one horsepower, the book's rounded figure", Source: espRelief, Status: Read, Printed: "1714", Got: func() float64 { return 1 / power(1, 1)() }},
	{What: "The same, exactly 396000/231", Source: "the definitions of horsepower, foot, inch and gallon", Status: Computed, Printed: "1714.285714285714", Got: func() float64 { return 1 / power(1, 1)() }},
	{What: "bar times L/min in one kilowatt", Source: "the definitions of bar, litre and watt", Status: Computed, Printed: "600", Tol: 1e-9, Got: func() float64 { return 1000 / hydraulic.Power(1e5, 0.001/60) }},
	{What: "Power lost over a relief, 1000 psi and 20 gpm", Source: espRelief, Status: Read, Unit: "hp", Printed: "11.7", Got: power(1000, 20)},
	{What: "The same, with the exact 1714.2857", Source: espRelief + ", inputs", Status: Computed, Unit: "hp", Printed: "11.666667", Got: power(1000, 20)},
	{What: "Power lost unloaded, 25 psi and 20 gpm", Source: espUnload, Status: Read, Unit: "hp", Printed: "0.29", Got: power(25, 20)},
	{What: "2500 psi and 12 gpm", Source: "exact constants", Status: Computed, Unit: "hp", Printed: "17.5", Tol: 1e-9, Got: power(2500, 12)},
	{What: "100 bar and 60 L/min", Source: "definition of bar and litre", Status: Computed, Unit: "kW", Printed: "10", Tol: 1e-9, Got: func() float64 { return hydraulic.Power(100e5, 0.060/60) / 1000 }},
	{What: "Oil's rise over a relief of 1000 psi", Source: espHeat, Status: Read, Unit: "°F", Printed: "7.94", Got: heated},
	{What: "The same, with exact constants", Source: espHeat + ", inputs", Status: Computed, Unit: "°F", Printed: "7.93786", Got: heated},
	{What: "10 gal of that oil, 10 gpm over that relief: each gallon passes once a minute", Source: espHeat + ", inputs", Status: Computed, Unit: "°F/min", Printed: "7.93786", Got: func() float64 {
		return hydraulic.TankRate(hydraulic.Power(1000*psi, 10*gallon/60), 7.42*kilo/gallon, 0.42*btu/kilo/degree, 10*gallon) / degree * 60
	}},
}

var pistons = []Check{
	{What: "Pressure under 2000 lb on a bore of 1.5 in", Source: espPiston, Status: Read, Unit: "psi", Printed: "1132", Got: func() float64 { return 2000 * lbf / piston.CapArea() / psi }},
	{What: "The same, more digits", Source: espPiston + ", inputs", Status: Computed, Unit: "psi", Printed: "1131.7685", Got: func() float64 { return 2000 * lbf / piston.CapArea() / psi }},
	{What: "Relief setting with a margin of 1.5 on that", Source: espPiston, Status: Read, Unit: "psi", Printed: "1698", Got: func() float64 { return 1.5 * 2000 * lbf / piston.CapArea() / psi }},
	{What: "Push of that piston, the other way round", Source: espPiston + ", inputs", Status: Computed, Unit: "lb", Printed: "2000", Tol: 1e-4, Got: func() float64 { return piston.Push(1131.7685*psi, 0) / lbf }},
	{What: "What a return loss of 50 psi on its rod side costs at the piston", Source: espPiston, Status: Read, Unit: "psi", Printed: "44.444", Got: func() float64 { return 50 * piston.RodArea() / piston.CapArea() }},
	{What: "Unloading setting, 1.5 times the losses of line and return", Source: espPiston, Status: Read, Unit: "psi", Printed: "217", Got: func() float64 { return 1.5 * (100 + 50*piston.RodArea()/piston.CapArea()) }},
	{What: "Rod side of that piston with its outlet blocked, 1000 psi on the cap", Source: "1000·1.5²/(1.5² − 0.5²), as a fraction", Status: Computed, Unit: "psi", Printed: "1125", Tol: 1e-9, Got: func() float64 { return piston.Blocked(1000) }},
	{What: "Pull of that piston at 1000 psi", Source: "500·π, from the areas", Status: Computed, Unit: "lb", Printed: "1570.79632679", Got: func() float64 { return piston.Pull(1000*psi, 0) / lbf }},
	{What: "Piston of 1 in² at 1 gpm", Source: "231/60, as a fraction", Status: Computed, Unit: "in/s", Printed: "3.85", Tol: 1e-12, Got: func() float64 { return hydraulic.Speed(gallon/60, inch*inch) / inch }},
	{What: "A gallon at 2 gpm", Source: byHand, Status: Computed, Unit: "s", Printed: "30", Tol: 1e-10, Got: func() float64 { return hydraulic.Time(gallon, 2*gallon/60) }},
}
