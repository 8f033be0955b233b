package unit

import "math"

// The definitions from which every factor follows exactly, in SI.
// Source: the inch (0.0254 m), the pound (0.45359237 kg), standard gravity
// (9.80665 m/s²), the bar (1e5 Pa) and the technical atmosphere (1 kgf/cm²)
// were read in two general-purpose unit libraries; NIST SP 811 appendix B.8
// prints the same (from memory). Go works constants out exactly and rounds once.
const (
	gravity  = 9.80665              // m/s², standard
	inch     = 0.0254               // m
	foot     = 12 * inch            // m
	poundf   = 0.45359237 * gravity // N: the pound as a force, lbf
	kilof    = gravity              // N: the kilogram as a force, kgf
	psi      = poundf / inch / inch // Pa
	bar      = 1e5                  // Pa
	zeroC    = 273.15               // K at 0 °C
	zeroF    = 459.67 * 5 / 9       // K at 0 °F
	tenThou  = 0.010 * inch         // m: the step in which shims are reckoned
	tenthMil = 0.1 / 1000           // m: a tenth of a millimetre
	cubicIn  = inch * inch * inch   // m³: the cubic inch
	gallon   = 231 * cubicIn        // m³: the US gallon
	footLb   = foot * poundf        // J: the foot pound
	btuPerLb = 2326.0               // J/kg: the British thermal unit (of the steam tables) for each pound, exact, from memory
)

// kindRow is what the package knows of one kind.
type kindRow struct {
	noun    string    // "a pressure", for messages; not for bare numbers
	units   []Unit    // those of the chooser first
	offered int       // how many are in the chooser
	shown   [2]int    // index of the shown unit, by System
	sample  [2]string // something right to type, by System
}

// kinds is the one table of kinds and units. The aliases are as key gives them.
var kinds = [...]kindRow{
	Number: {
		units: []Unit{{Factor: 1, Divisor: 1}}, offered: 1,
		sample: [2]string{"5", "5"},
	},
	Percent: {
		noun: "a percentage",
		units: []Unit{
			{Name: "%", Factor: 1, Divisor: 100, aliases: "percent pct"},
		}, offered: 1,
		sample: [2]string{"2 %", "2 %"},
	},
	Pressure: {
		noun: "a pressure",
		units: []Unit{
			{Name: "psi", Factor: psi, Divisor: 1, aliases: "psig lb/in2 lbs/in2 lbf/in2 lb/sqin lbs/sqin"},
			{Name: "bar", Factor: bar, Divisor: 1, aliases: "bars barg"},
			{Name: "MPa", Factor: 1e6, Divisor: 1},
			{Name: "kPa", Factor: 1e3, Divisor: 1},
			{Name: "kgf/cm²", Factor: kilof * 1e4, Divisor: 1, aliases: "kg/cm2"},
			{Name: "Pa", Factor: 1, Divisor: 1},
		}, offered: 5, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"2600 psi", "180 bar"},
	},
	Length: {
		noun:  "a length",
		units: []Unit{inches, millimetres, centimetres, metres, feet, thou}, offered: 5,
		shown:  [2]int{US: 0, Metric: 1},
		sample: [2]string{"12 in", "300 mm"},
	},
	Thickness: {
		noun:  "a thickness",
		units: []Unit{inches, thou, millimetres, centimetres, metres, feet}, offered: 3,
		shown:  [2]int{US: 0, Metric: 2},
		sample: [2]string{"0.010 in", "0.25 mm"},
	},
	Load: {
		noun:  "a load",
		units: []Unit{pounds, kilograms, newtons, kilonewtons}, offered: 4,
		shown:  [2]int{US: 0, Metric: 1},
		sample: [2]string{"1500 lb", "700 kg"},
	},
	Temperature: {
		noun: "a temperature",
		units: []Unit{
			{Name: "°F", Factor: 5, Divisor: 9, Offset: zeroF, aliases: "f degf degreesf fahrenheit ℉"},
			{Name: "°C", Factor: 1, Divisor: 1, Offset: zeroC, aliases: "c degc degreesc celsius ℃"},
			{Name: "K", Factor: 1, Divisor: 1, aliases: "kelvin"},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"68 °F", "20 °C"},
	},
	PressureRate: {
		noun: "a pressure for a thickness",
		units: []Unit{
			{Name: "psi per 0.010 in", Factor: psi / tenThou, Divisor: 1, aliases: `psi/0.01in psi/.010in psi/.01in psi/0.010" psi/10thou`},
			{Name: "bar per 0.1 mm", Factor: bar / tenthMil, Divisor: 1, aliases: "bar/.1mm bar/0.10mm"},
			{Name: "psi per thou", Factor: psi / (inch / 1000), Divisor: 1, aliases: `psi/0.001in psi/.001in psi/0.001"`},
			{Name: "psi per in", Factor: psi / inch, Divisor: 1, aliases: `psi/inch psi/"`},
			{Name: "bar per mm", Factor: bar * 1000, Divisor: 1},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"45 psi per 0.010 in", "1.2 bar per 0.1 mm"},
	},
	LoadSlope: {
		noun: "a load for a pressure",
		units: []Unit{
			{Name: "lb per 100 psi", Factor: poundf / (100 * psi), Divisor: 1, aliases: "lbs/100psi lbf/100psi"},
			{Name: "kg per 10 bar", Factor: kilof / (10 * bar), Divisor: 1, aliases: "kgf/10bar"},
			{Name: "lb per psi", Factor: poundf / psi, Divisor: 1, aliases: "lbs/psi lbf/psi"},
			{Name: "kg per bar", Factor: kilof / bar, Divisor: 1, aliases: "kgf/bar"},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"60 lb per 100 psi", "40 kg per 10 bar"},
	},
	Factor: {
		units: []Unit{
			{Name: "times", Factor: 1, Divisor: 1, aliases: "x ×"},
		}, offered: 1,
		sample: [2]string{"2", "2"},
	},
	Count: {
		units: []Unit{{Factor: 1, Divisor: 1}}, offered: 1,
		sample: [2]string{"2", "2"},
	},
	Force: {
		noun:  "a force",
		units: []Unit{pounds, kilonewtons, newtons, kilograms}, offered: 4,
		shown:  [2]int{US: 0, Metric: 1},
		sample: [2]string{"6000 lb", "27 kN"},
	},
	Stress: {
		noun: "a stress",
		units: []Unit{
			{Name: "psi", Factor: psi, Divisor: 1, aliases: "lb/in2 lbf/in2"},
			{Name: "MPa", Factor: 1e6, Divisor: 1, aliases: "n/mm2"},
			{Name: "ksi", Factor: psi * 1000, Divisor: 1},
			{Name: "GPa", Factor: 1e9, Divisor: 1},
		}, offered: 3, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"55000 psi", "380 MPa"},
	},
	Volume: {
		noun:  "a volume",
		units: []Unit{cubicInches, litres, cubicCentimetres, gallons}, offered: 4,
		shown:  [2]int{US: 0, Metric: 1},
		sample: [2]string{"98 in³", "1.6 L"},
	},
	Capacity: {
		noun:  "a volume",
		units: []Unit{gallons, litres, cubicInches, cubicCentimetres}, offered: 2,
		shown:  [2]int{US: 0, Metric: 1},
		sample: [2]string{"8 gal", "30 L"},
	},
	Displacement: {
		noun: "a volume for each turn",
		units: []Unit{
			{Name: "in³/rev", Factor: cubicIn, Divisor: 1, aliases: "in3 cuin/rev ci/rev in3/turn"},
			{Name: "cm³/rev", Factor: 1, Divisor: 1e6, aliases: "cm3 cc cc/rev cm3/turn ml/rev"},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"1 in³/rev", "16 cm³/rev"},
	},
	Flow: {
		noun: "a flow",
		units: []Unit{
			{Name: "gpm", Factor: gallon, Divisor: 60, aliases: "gal/min gallons/min gallons/minute usgpm"},
			{Name: "L/min", Factor: 1, Divisor: 60 * 1000, aliases: "lpm l/minute litres/minute liters/minute litre/min liter/min"},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"9 gpm", "34 L/min"},
	},
	Rotation: {
		noun: "a speed of turning",
		units: []Unit{
			{Name: "rpm", Factor: 1, Divisor: 60, aliases: "rev/min r/min 1/min turns/minute"},
		}, offered: 1,
		sample: [2]string{"2500 rpm", "2500 rpm"},
	},
	Speed: {
		noun: "a speed",
		units: []Unit{
			{Name: "in/s", Factor: inch, Divisor: 1, aliases: "in/sec inch/s inches/s inches/second"},
			{Name: "mm/s", Factor: 1, Divisor: 1000, aliases: "mm/sec"},
			{Name: "ft/min", Factor: foot, Divisor: 60, aliases: "fpm"},
			{Name: "m/s", Factor: 1, Divisor: 1},
		}, offered: 4, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"5 in/s", "120 mm/s"},
	},
	Power: {
		noun: "a power",
		units: []Unit{
			{Name: "hp", Factor: 550 * footLb, Divisor: 1, aliases: "bhp horsepower"},
			{Name: "kW", Factor: 1000, Divisor: 1},
			{Name: "W", Factor: 1, Divisor: 1},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"45 hp", "34 kW"},
	},
	Time: {
		noun: "a time",
		units: []Unit{
			{Name: "s", Factor: 1, Divisor: 1, aliases: "sec secs second seconds"},
			{Name: "min", Factor: 60, Divisor: 1, aliases: "mins minute minutes"},
		}, offered: 2,
		sample: [2]string{"4 s", "4 s"},
	},
	Density: {
		noun: "a density",
		units: []Unit{
			{Name: "lb/gal", Factor: 0.45359237 / gallon, Divisor: 1, aliases: "lb/usgal lbs/gal"},
			{Name: "kg/m³", Factor: 1, Divisor: 1},
			{Name: "kg/L", Factor: 1000, Divisor: 1, aliases: "g/cm3 g/ml"},
		}, offered: 3, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"7.3 lb/gal", "870 kg/m³"},
	},
	HeatCapacity: {
		noun: "a heat capacity",
		units: []Unit{
			{Name: "Btu/lb °F", Factor: btuPerLb * 9, Divisor: 5, aliases: "btu/lbf btu/lb/f btu/lb/°f btu/(lb°f) btu/lb·°f btu/lbdegf"},
			{Name: "kJ/kg K", Factor: 1000, Divisor: 1, aliases: "kj/kg/k kj/(kgk) kj/kg·k j/gk"},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"0.45 Btu/lb °F", "1.9 kJ/kg K"},
	},
	TemperatureRise: {
		noun: "a difference of temperature",
		units: []Unit{
			{Name: "°F", Factor: 5, Divisor: 9, aliases: "f degf degreesf fahrenheit ℉"},
			{Name: "°C", Factor: 1, Divisor: 1, aliases: "c k degc degreesc celsius kelvin ℃"},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"36 °F", "20 °C"},
	},
	TemperatureRate: {
		noun: "a temperature for a time",
		units: []Unit{
			{Name: "°F/min", Factor: 5, Divisor: 9 * 60, aliases: "f/min degf/min"},
			{Name: "°C/min", Factor: 1, Divisor: 60, aliases: "c/min degc/min k/min"},
		}, offered: 2, shown: [2]int{US: 0, Metric: 1},
		sample: [2]string{"5 °F/min", "3 °C/min"},
	},
	Angle: {
		noun: "an angle",
		units: []Unit{
			{Name: "°", Factor: math.Pi, Divisor: 180, aliases: "deg degree degrees"},
		}, offered: 1,
		sample: [2]string{"5°", "5°"},
	},
}

// The units of load serve forces too, and those of volume tanks, in a different order.
var (
	pounds      = Unit{Name: "lb", Factor: poundf, Divisor: 1, aliases: "lbs lbf pound pounds"}
	kilograms   = Unit{Name: "kg", Factor: kilof, Divisor: 1, aliases: "kgs kgf kilogram kilograms"}
	newtons     = Unit{Name: "N", Factor: 1, Divisor: 1, aliases: "newton newtons"}
	kilonewtons = Unit{Name: "kN", Factor: 1e3, Divisor: 1}

	cubicInches      = Unit{Name: "in³", Factor: cubicIn, Divisor: 1, aliases: "cuin ci cubicinches"}
	cubicCentimetres = Unit{Name: "cm³", Factor: 1, Divisor: 1e6, aliases: "cc ml"}
	litres           = Unit{Name: "L", Factor: 1, Divisor: 1000, aliases: "litre litres liter liters"}
	gallons          = Unit{Name: "gal", Factor: gallon, Divisor: 1, aliases: "gallon gallons usgal"}
)

// The units of length serve two kinds, in a different order.
var (
	inches      = Unit{Name: "in", Factor: inch, Divisor: 1, aliases: `inch inches " ''`}
	thou        = Unit{Name: "thou", Factor: inch, Divisor: 1000}
	feet        = Unit{Name: "ft", Factor: foot, Divisor: 1, aliases: "foot feet '"}
	millimetres = Unit{Name: "mm", Factor: 1, Divisor: 1000, aliases: "millimetre millimetres millimeter millimeters"}
	centimetres = Unit{Name: "cm", Factor: 1, Divisor: 100, aliases: "centimetre centimetres centimeter centimeters"}
	metres      = Unit{Name: "m", Factor: 1, Divisor: 1, aliases: "metre metres meter meters"}
)
