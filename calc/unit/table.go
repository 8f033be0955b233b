package unit

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
		noun: "a load",
		units: []Unit{
			{Name: "lb", Factor: poundf, Divisor: 1, aliases: "lbs lbf pound pounds"},
			{Name: "kg", Factor: kilof, Divisor: 1, aliases: "kgs kgf kilogram kilograms"},
			{Name: "N", Factor: 1, Divisor: 1, aliases: "newton newtons"},
			{Name: "kN", Factor: 1e3, Divisor: 1},
		}, offered: 4, shown: [2]int{US: 0, Metric: 1},
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
}

// The units of length serve two kinds, in a different order.
var (
	inches      = Unit{Name: "in", Factor: inch, Divisor: 1, aliases: `inch inches " ''`}
	thou        = Unit{Name: "thou", Factor: inch, Divisor: 1000}
	feet        = Unit{Name: "ft", Factor: foot, Divisor: 1, aliases: "foot feet '"}
	millimetres = Unit{Name: "mm", Factor: 1, Divisor: 1000, aliases: "millimetre millimetres millimeter millimeters"}
	centimetres = Unit{Name: "cm", Factor: 1, Divisor: 100, aliases: "centimetre centimetres centimeter centimeters"}
	metres      = Unit{Name: "m", Factor: 1, Divisor: 1, aliases: "metre metres meter meters"}
)
