package checks

import (
	"math"

	"plainlift/calc/unit"
)

// The definitions of the units were read in two general-purpose unit libraries;
// the decimals that follow from them were worked out as fractions.
const (
	definition = "the definition, as two unit libraries have it"
	follows    = "follows exactly from the definitions of inch, pound, standard gravity and bar"
	sp811      = "NIST SP 811, appendix B.8"
)

// typed returns the SI value of a text, read as a page reads it.
func typed(text string, k unit.Kind) func() float64 { return typedIn(text, k, "") }

// typedIn returns the value of a text in a unit, "" for SI.
func typedIn(text string, k unit.Kind, name string) func() float64 {
	return func() float64 {
		v, err := unit.Parse(text, k, unit.Unit{}, unit.US)
		if err != nil {
			return math.NaN()
		}
		if name == "" {
			return v.SI
		}
		u, ok := k.Lookup(name)
		if !ok {
			return math.NaN()
		}
		return u.FromSI(v.SI)
	}
}

var units = []Check{
	{What: "1 in", Source: definition, Status: Library, Unit: "m", Printed: "0.0254", Tol: 1e-15, Got: typed("1 in", unit.Length)},
	{What: "1 ft", Source: definition, Status: Library, Unit: "m", Printed: "0.3048", Tol: 1e-15, Got: typed("1 ft", unit.Length)},
	{What: "1 thou", Source: follows, Status: Computed, Unit: "m", Printed: "25.4e-6", Tol: 1e-18, Got: typed("1 thou", unit.Thickness)},
	{What: "1 kg as a load", Source: "the definition of standard gravity, as two unit libraries have it", Status: Library, Unit: "N", Printed: "9.80665", Tol: 1e-14, Got: typed("1 kg", unit.Load)},
	{What: "1 lb as a load", Source: follows, Status: Computed, Unit: "N", Printed: "4.4482216152605", Got: typed("1 lb", unit.Load)},
	{What: "1 lb as a load", Source: sp811, Status: Memory, Unit: "N", Printed: "4.448222", Got: typed("1 lb", unit.Load)},
	{What: "1 lb", Source: definition, Status: Library, Unit: "kg", Printed: "0.45359237", Tol: 1e-15, Got: typedIn("1 lb", unit.Load, "kg")},
	{What: "1 kg", Source: follows, Status: Computed, Unit: "lb", Printed: "2.20462262184877581", Got: typedIn("1 kg", unit.Load, "lb")},
	{What: "1 bar", Source: definition, Status: Library, Unit: "Pa", Printed: "100000", Tol: 1e-9, Got: typed("1 bar", unit.Pressure)},
	{What: "1 psi", Source: follows, Status: Computed, Unit: "Pa", Printed: "6894.75729316836", Got: typed("1 psi", unit.Pressure)},
	{What: "1 psi", Source: sp811, Status: Memory, Unit: "Pa", Printed: "6.894757e3", Got: typed("1 psi", unit.Pressure)},
	{What: "1 bar", Source: follows, Status: Computed, Unit: "psi", Printed: "14.5037737730209", Got: typedIn("1 bar", unit.Pressure, "psi")},
	{What: "1 MPa", Source: follows, Status: Computed, Unit: "psi", Printed: "145.037737730209", Got: typedIn("1 MPa", unit.Pressure, "psi")},
	{What: "1 kPa", Source: "the prefixes of the SI", Status: Memory, Unit: "Pa", Printed: "1000", Tol: 1e-10, Got: typed("1 kPa", unit.Pressure)},
	{What: "1 kN", Source: "the prefixes of the SI", Status: Memory, Unit: "N", Printed: "1000", Tol: 1e-10, Got: typed("1 kN", unit.Load)},
	{What: "1 cm", Source: "the prefixes of the SI", Status: Memory, Unit: "m", Printed: "0.01", Tol: 1e-15, Got: typed("1 cm", unit.Length)},
	{What: "1 mm", Source: "the prefixes of the SI", Status: Memory, Unit: "m", Printed: "0.001", Tol: 1e-16, Got: typed("1 mm", unit.Thickness)},
	{What: "1 kgf/cm²", Source: definition, Status: Library, Unit: "Pa", Printed: "98066.5", Tol: 1e-9, Got: typed("1 kgf/cm2", unit.Pressure)},
	{What: "1 kgf/cm²", Source: follows, Status: Computed, Unit: "psi", Printed: "14.2233433071196", Got: typedIn("1 kgf/cm2", unit.Pressure, "psi")},
	{What: "1 kgf/cm²", Source: sp811, Status: Memory, Unit: "Pa", Printed: "9.80665e4", Got: typed("1 kgf/cm2", unit.Pressure)},
	{What: "120 °F", Source: "the definition t/°F = 9/5·t/°C + 32", Status: Computed, Unit: "°C", Printed: "48.8888889", Got: typedIn("120 degF", unit.Temperature, "°C")},
	{What: "50 °C", Source: "the definition t/°F = 9/5·t/°C + 32", Status: Computed, Unit: "°F", Printed: "122", Tol: 1e-9, Got: typedIn("50 degC", unit.Temperature, "°F")},
	{What: "A difference of 1.8 °F", Source: "the definition K = 9/5 °R", Status: Computed, Unit: "K", Printed: "1", Tol: 1e-12, Got: func() float64 {
		return typed("70 degF", unit.Temperature)() - typed("68.2 degF", unit.Temperature)()
	}},
	{What: "1 bar per 0.1 mm", Source: follows, Status: Computed, Unit: "psi per 0.010 in", Printed: "36.8395853834731", Got: typedIn("1 bar per 0.1 mm", unit.PressureRate, "psi per 0.010 in")},
	{What: "1 bar per mm", Source: follows, Status: Computed, Unit: "psi per in", Printed: "368.395853834731", Got: typedIn("1 bar per mm", unit.PressureRate, "psi per in")},
	{What: "1 psi per thou", Source: follows, Status: Computed, Unit: "Pa/m", Printed: "271447137.526313", Got: typed("1 psi per thou", unit.PressureRate)},
	{What: "1 lb per 100 psi", Source: follows, Status: Computed, Unit: "kg per 10 bar", Printed: "0.657880111964840", Got: typedIn("1 lb per 100 psi", unit.LoadSlope, "kg per 10 bar")},
}
