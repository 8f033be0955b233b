package unit

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
)

// aliasesOf returns the other spellings of a unit.
func aliasesOf(u Unit) []string { return strings.Fields(u.aliases) }

var both = []System{US, Metric}

// What reads the same in both systems: typed text, canonical text.
func TestParseBothSystems(t *testing.T) {
	for _, c := range []struct {
		kind        Kind
		typed, want string
	}{
		// Units.
		{Pressure, "2610 psi", "2610 psi"}, {Pressure, "2610psi", "2610 psi"}, {Pressure, "2610 PSIG", "2610 psi"},
		{Pressure, "185 bar", "185 bar"}, {Pressure, "16.3 MPa", "16.3 MPa"}, {Pressure, "16,3 mpa", "16.3 MPa"},
		{Pressure, "18500 kPa", "18500 kPa"}, {Pressure, "188 kgf/cm2", "188 kgf/cm²"}, {Pressure, "2610 lb/in2", "2610 psi"},
		{Load, "640 kg", "640 kg"}, {Load, "1580 lbs", "1580 lb"}, {Load, "6.2 kN", "6.2 kN"}, {Load, "6200 N", "6200 N"},
		{Temperature, "45 degC", "45 °C"}, {Temperature, "45 °C", "45 °C"}, {Temperature, "-10 F", "-10 °F"},
		{Temperature, "318.15 K", "318.15 K"},
		{Percent, "40 %", "40 %"}, {Percent, "40%", "40 %"}, {Percent, "40", "40 %"}, {Percent, "12,5 percent", "12.5 %"},
		{Length, `1/4"`, "0.25 in"}, {Length, "1/4″", "0.25 in"}, {Length, "6'", "6 ft"}, {Length, "1.2 m", "1.2 m"}, {Length, "80 cm", "80 cm"},
		{Thickness, "10 thou", "10 thou"}, {Thickness, "0,25 mm", "0.25 mm"}, {Thickness, "0.010 in", "0.01 in"},
		{PressureRate, "45 psi per 0.010 in", "45 psi per 0.010 in"}, {PressureRate, "1,2 bar per 0,1 mm", "1.2 bar per 0.1 mm"},
		{LoadSlope, "60 lb per 100 psi", "60 lb per 100 psi"}, {LoadSlope, "40 kg/10 bar", "40 kg per 10 bar"},
		{Factor, "1.9 times", "1.9 times"}, {Factor, "1.9×", "1.9 times"}, {Factor, "1.9", "1.9 times"}, {Number, "8.5", "8.5"}, {Count, "2", "2"},
		// Fractions.
		{Length, "1/2 in", "0.5 in"}, {Length, "1 1/2 in", "1.5 in"}, {Length, "1-1/2 in", "1.5 in"}, {Length, "¼ in", "0.25 in"},
		{Length, "1¼ in", "1.25 in"}, {Length, "1 ¼ in", "1.25 in"}, {Length, "47 3/8\"", "47.375 in"}, {Length, "32⅞ in", "32.875 in"},
		{Length, "1\u20442 in", "0.5 in"}, {Length, "-1 1/2 in", "-1.5 in"}, {Length, "2 500/1000 in", "2.5 in"}, {Length, "1 1/3 in", "1.3333333333333333 in"},
		{Length, "1,234 1/2 in", "1234.5 in"}, {Length, "½ in", "0.5 in"}, {Length, "⅔ in", "0.6666666666666666 in"},
		// Feet and inches, as a tape is read.
		{Length, `4' 2"`, "50 in"}, {Length, "4'2", "50 in"}, {Length, `4'2"`, "50 in"}, {Length, "4 ft 2 in", "50 in"}, {Length, "4ft2in", "50 in"},
		{Length, "4 ft. 2 in.", "50 in"}, {Length, "4' 2 1/2\"", "50.5 in"}, {Length, "4′ 2½″", "50.5 in"}, {Length, "4'-2 1/2\"", "50.5 in"},
		{Length, "4’ 2”", "50 in"}, {Length, "4' 2''", "50 in"}, {Length, "-1' 6\"", "-18 in"}, {Length, "-0' 6\"", "-6 in"}, {Length, "3 feet 0.25 inches", "36.25 in"},
		{Length, "4' - 2\"", "50 in"}, {Length, "0' 1/4\"", "0.25 in"}, {Length, "6' 11 7/8\"", "83.875 in"}, {Length, "6 foot 2,5 in", "74.5 in"},
		// Decimal comma, and where a comma cannot be thousands.
		{Length, "12,5 mm", "12.5 mm"}, {Length, "1,23 mm", "1.23 mm"}, {Length, "1,2345 mm", "1.2345 mm"}, {Length, "0,125 mm", "0.125 mm"},
		{Length, ",125 in", "0.125 in"}, {Length, ".125 in", "0.125 in"}, {Length, "12345,678 mm", "12345.678 mm"}, {Length, "5. in", "5 in"}, {Length, "5, in", "5 in"},
		{Length, "1.234 mm", "1.234 mm"}, {Length, "001,234 mm", "1.234 mm"},
		// Thousands.
		{Pressure, "1,234,567 Pa", "1234567 Pa"}, {Pressure, "1.234,5 psi", "1234.5 psi"}, {Pressure, "1,234.5 psi", "1234.5 psi"},
		{Pressure, "1.234.567 Pa", "1234567 Pa"}, {Pressure, "1.234.567,8 Pa", "1234567.8 Pa"}, {Pressure, "1,234,567.8 Pa", "1234567.8 Pa"},
		{Pressure, "1.234,567 psi", "1234.567 psi"}, {Pressure, "1,234. psi", "1234 psi"},
		{Pressure, "2 612 psi", "2612 psi"}, {Pressure, "2\u00A0612 psi", "2612 psi"}, {Pressure, "2\u2009612\u00A0psi", "2612 psi"},
		{Pressure, "2\u202F612\u202Fpsi", "2612 psi"}, {Pressure, "2 612,5 psi", "2612.5 psi"}, {Pressure, "2 612.5 psi", "2612.5 psi"},
		{Pressure, "1 234 567 Pa", "1234567 Pa"}, {Pressure, "2 612,125 psi", "2612.125 psi"},
		// Sign and exponent.
		{Pressure, "-5 psi", "-5 psi"}, {Pressure, "\u22125 psi", "-5 psi"}, {Pressure, "− 5 psi", "-5 psi"}, {Pressure, "+5 psi", "5 psi"}, {Pressure, "-0 psi", "0 psi"},
		{Pressure, "1e3 psi", "1000 psi"}, {Pressure, "1E3 psi", "1000 psi"}, {Pressure, "1.5e-3 bar", "0.0015 bar"}, {Pressure, "1e+2 bar", "100 bar"},
		{Pressure, "1e20 Pa", "1e20 Pa"}, {Pressure, "1e-12 Pa", "1e-12 Pa"}, {Pressure, "1e-400 psi", "0 psi"},
		// Marks that nobody sees.
		{Pressure, "\u202A2610\u202C psi", "2610 psi"}, {Pressure, "\uFEFF2610\u200B\u200E psi\u2069", "2610 psi"}, {Pressure, "\t2610 psi\n", "2610 psi"},
	} {
		for _, s := range both {
			v, err := Parse(c.typed, c.kind, Unit{}, s)
			if err != nil {
				t.Errorf("Parse(%q) in system %d: %v", c.typed, s, err)
			} else if got := v.Canonical(); got != c.want {
				t.Errorf("Parse(%q) in system %d = %q, want %q", c.typed, s, got, c.want)
			}
		}
	}
}

func TestParseDefaultUnit(t *testing.T) {
	mpa := mustUnit(t, Pressure, "MPa")
	for _, c := range []struct {
		typed  string
		def    Unit
		system System
		want   string
		typedU bool
	}{
		{"180", Unit{}, US, "180 psi", false},
		{"180", Unit{}, Metric, "180 bar", false},
		{"18", mpa, US, "18 MPa", false},
		{"18", mpa, Metric, "18 MPa", false},
		{"2610 psi", mpa, Metric, "2610 psi", true},
		{"1,234", Unit{}, US, "1234 psi", false},
		{"1,234 MPa", Unit{}, US, "1234 MPa", true},
	} {
		v, err := Parse(c.typed, Pressure, c.def, c.system)
		if err != nil || v.Canonical() != c.want || v.UnitTyped != c.typedU {
			t.Errorf("Parse(%q) = %q, typed unit %v, %v; want %q, %v", c.typed, v.Canonical(), v.UnitTyped, err, c.want, c.typedU)
		}
	}
}

func TestParseSI(t *testing.T) {
	for _, c := range []struct {
		kind  Kind
		typed string
		want  float64 // exact, by the definitions of the units
	}{
		{Pressure, "185 bar", 185e5}, {Length, "1 1/2 in", 0.0381}, {Length, "12,5 mm", 0.0125}, {Pressure, "16.3 MPa", 16.3e6},
		{Load, "640 kg", 640 * 9.80665}, {Load, "1580 lbf", 1580 * 4.4482216152605}, {Percent, "2 %", 0.02}, {Temperature, "45 degC", 318.15},
		{Thickness, "10 thou", 0.000254}, {Thickness, "0.010 in", 0.000254}, {Count, "3", 3}, {Number, "-2.5", -2.5},
	} {
		for _, s := range both {
			v, err := Parse(c.typed, c.kind, Unit{}, s)
			if err != nil || math.Abs(v.SI-c.want) > 1e-15*math.Abs(c.want) {
				t.Errorf("Parse(%q) = %.17g, %v; want %.17g", c.typed, v.SI, err, c.want)
			}
		}
	}
}

func TestParseAmbiguous(t *testing.T) {
	for _, c := range []struct {
		kind       Kind
		typed      string
		us         string
		thou, deci string
	}{
		{Pressure, "1,234", "1234 psi", "1234 bar", "1.234 bar"},
		{Pressure, "1,234 psi", "1234 psi", "1234 psi", "1.234 psi"},
		{Pressure, "−12,500 kPa", "-12500 kPa", "-12500 kPa", "-12.5 kPa"},
		{Number, "1,234", "1234", "1234", "1.234"},
		{Length, "123,456 mm", "123456 mm", "123456 mm", "123.456 mm"},
	} {
		v, err := Parse(c.typed, c.kind, Unit{}, US)
		if err != nil || v.Canonical() != c.us {
			t.Errorf("Parse(%q) in US = %q, %v; want %q", c.typed, v.Canonical(), err, c.us)
		}
		_, err = Parse(c.typed, c.kind, Unit{}, Metric)
		var e *Error
		if !errors.As(err, &e) || len(e.Choices) != 2 || e.Choices[0] != c.thou || e.Choices[1] != c.deci {
			t.Errorf("Parse(%q) in metric: %#v, want the choices %q and %q", c.typed, err, c.thou, c.deci)
			continue
		}
		for _, choice := range e.Choices {
			if v, err := Parse(choice, c.kind, Unit{}, Metric); err != nil || v.Canonical() != choice {
				t.Errorf("choice %q reads as %q, %v", choice, v.Canonical(), err)
			}
		}
	}
	// A count is whole, so its comma is in no doubt.
	if v, err := Parse("1,234", Count, Unit{}, Metric); err != nil || v.SI != 1234 {
		t.Errorf("count 1,234 in metric = %v, %v", v.SI, err)
	}
}

func TestParseMessages(t *testing.T) {
	for _, c := range []struct {
		kind        Kind
		typed, want string
	}{
		{Pressure, "", "Enter a number"},
		{Pressure, " \u00A0\u200B ", "Enter a number"},
		{Pressure, "2,600 lb", `"2,600 lb" has "lb", which is not a pressure; use psi, bar, MPa, kPa or kgf/cm².`},
		{Pressure, "2600 foo", `"2600 foo" has "foo", which is not a pressure; use psi, bar, MPa, kPa or kgf/cm².`},
		{Pressure, "180 mbar", `"180 mbar" has "mbar", which is not a pressure; use psi, bar, MPa, kPa or kgf/cm².`},
		{Thickness, "40 psi", `"40 psi" has "psi", which is not a thickness; use in, thou or mm.`},
		{Temperature, "45 %", `"45 %" has "%", which is not a temperature; use °F or °C.`},
		{Length, `4' 14"`, `"4' 14"" is not a number; type a number such as 12 in.`},
		{Length, "4' 2 mm", `"4' 2 mm" is not a number; type a number such as 12 in.`},
		{Length, "4.5' 2\"", `"4.5' 2"" is not a number; type a number such as 12 in.`},
		{Thickness, "1' 2\"", `"1' 2"" is not a number; type a number such as 0.010 in.`},
		{Temperature, "45°", `"45°" has "°", which is not a temperature; use °F or °C.`},
		{Pressure, "180 000 hPa", `"180 000 hPa" has "hPa", which is not a pressure; use psi, bar, MPa, kPa or kgf/cm².`},
		{Percent, "2 psi", `"2 psi" has "psi", which is not a percentage; use %.`},
		{PressureRate, "40 psi", `"40 psi" has "psi", which is not a pressure for a thickness; use psi per 0.010 in or bar per 0.1 mm.`},
		{Number, "5 psi", `"5 psi" has "psi", but no unit belongs here; type a number such as 5.`},
		{Count, "2.5", `"2.5" is not a whole number; type a number such as 2.`},
		{Pressure, "about 2600", `"about 2600" is not a number; type a number such as 2600 psi.`},
		{Pressure, "psi", `"psi" is not a number; type a number such as 2600 psi.`},
		{Pressure, "1,234.5.6", `"1,234.5.6" is not a number; type a number such as 2600 psi.`},
		{Pressure, "1,23,456", `"1,23,456" is not a number; type a number such as 2600 psi.`},
		{Pressure, "0,010,020", `"0,010,020" is not a number; type a number such as 2600 psi.`},
		{Pressure, "1.23,5", `"1.23,5" is not a number; type a number such as 2600 psi.`},
		{Pressure, "1,234.567,8", `"1,234.567,8" is not a number; type a number such as 2600 psi.`},
		{Pressure, "2 612,5.1", `"2 612,5.1" is not a number; type a number such as 2600 psi.`},
		{Pressure, "2'600", `"2'600" is not a number; type a number such as 2600 psi.`},
		{Pressure, "2600-2620", `"2600-2620" is not a number; type a number such as 2600 psi.`},
		{Pressure, "2600 2620", `"2600 2620" is not a number; type a number such as 2600 psi.`},
		{Pressure, "2600\n2620", `"2600 2620" is not a number; type a number such as 2600 psi.`},
		{Pressure, "0 500 psi", `"0 500 psi" is not a number; type a number such as 2600 psi.`},
		{Pressure, strings.Repeat("1", 201), `"` + strings.Repeat("1", 30) + `…" is too long; type a number such as 2600 psi.`},
		{Pressure, "2600,2620", `"2600,2620" looks like two numbers; type a number such as 2600 psi.`},
		{Pressure, "1e400", `"1e400" is too large; type a number such as 2600 psi.`},
		{Pressure, "5e", `"5e" has "e", which is not a pressure; use psi, bar, MPa, kPa or kgf/cm².`},
		{Pressure, "5 e3", `"5 e3" is not a number; type a number such as 2600 psi.`},
		{Pressure, "1e308 psi", `"1e308 psi" is too large; type a number such as 2600 psi.`},
		{Pressure, "NaN", `"NaN" is not a number; type a number such as 2600 psi.`},
		{Pressure, "Inf", `"Inf" is not a number; type a number such as 2600 psi.`},
		{Pressure, "-Infinity", `"-Infinity" is not a number; type a number such as 2600 psi.`},
		{Pressure, "0x1A", `"0x1A" is not a number; type a number such as 2600 psi.`},
		{Pressure, "1_000", `"1_000" is not a number; type a number such as 2600 psi.`},
		{Pressure, "--5", `"--5" is not a number; type a number such as 2600 psi.`},
		{Pressure, "-", `"-" is not a number; type a number such as 2600 psi.`},
		{Pressure, "+", `"+" is not a number; type a number such as 2600 psi.`},
		{Pressure, ".", `"." is not a number; type a number such as 2600 psi.`},
		{Pressure, ",", `"," is not a number; type a number such as 2600 psi.`},
		{Pressure, "=2600", `"=2600" is not a number; type a number such as 2600 psi.`},
		{Length, "1/0 in", `"1/0 in" divides by zero; type a number such as 12 in.`},
		{Length, "1 0/0 in", `"1 0/0 in" divides by zero; type a number such as 12 in.`},
		{Length, "1/2/3 in", `"1/2/3 in" is not a number; type a number such as 12 in.`},
		{Length, "1/ in", `"1/ in" is not a number; type a number such as 12 in.`},
		{Length, "1.5 1/2 in", `"1.5 1/2 in" is not a number; type a number such as 12 in.`},
		{Length, "1 in 2", `"1 in 2" is not a number; type a number such as 12 in.`},
		{Pressure, "it was somewhere near two thousand six hundred", `"it was somewhere near two thou…" is not a number; type a number such as 2600 psi.`},
		{Pressure, "2\x00\x01\xff", "\"2  \uFFFD\" is not a number; type a number such as 2600 psi."},
	} {
		_, err := Parse(c.typed, c.kind, Unit{}, US)
		var e *Error
		if !errors.As(err, &e) || e.Message != c.want || e.Error() != c.want {
			t.Errorf("Parse(%q):\n got %v\nwant %s", c.typed, err, c.want)
		}
	}
	// The sample follows the system.
	if _, err := Parse("?", Load, Unit{}, Metric); err == nil || !strings.HasSuffix(err.Error(), "such as 700 kg.") {
		t.Errorf("metric sample: %v", err)
	}
}

func TestParseLongInput(t *testing.T) {
	for _, c := range []string{"1", "1,", "1 ", " 234", "½", "x", "\u200B", "\xff", "1/", "-", "é", "''"} {
		text := strings.Repeat(c, 100_000/len(c))
		start := time.Now()
		if _, err := Parse("1"+text, Pressure, Unit{}, US); err == nil && c != "\u200B" {
			t.Errorf("100 kB of %q passes for a number", c)
		} else if err != nil && len(err.Error()) > 250 {
			t.Errorf("100 kB of %q is answered with %d bytes", c, len(err.Error()))
		}
		SplitList(text)
		Pressure.Lookup(text)
		if took := time.Since(start); took > 2*time.Second { // a few milliseconds; quadratic would be minutes
			t.Errorf("100 kB of %q took %v", c, took)
		}
	}
}

// Every unit of every kind, with values of every size: the canonical text gives
// the identical SI value in both systems.
func TestCanonicalRoundTrip(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for k := range kinds {
		k := Kind(k)
		for _, u := range kinds[k].units {
			for range 2000 {
				x := (random.Float64() - 0.5) * math.Pow(10, float64(random.IntN(60)-30))
				if random.IntN(2) == 0 { // as people type: few digits
					x = float64(random.IntN(200000)-100000) / math.Pow(10, float64(random.IntN(5)))
				}
				if k == Count {
					x = math.Trunc(x)
				}
				first, err := Parse(shortest(x)+" "+u.Name, k, Unit{}, US)
				if err != nil {
					t.Fatalf("%v %s: %v", x, u.Name, err)
				}
				if first.SI != u.ToSI(x) {
					t.Fatalf("%v %s = %v, want %v", x, u.Name, first.SI, u.ToSI(x))
				}
				for _, s := range both {
					again, err := Parse(first.Canonical(), k, Unit{}, s)
					if err != nil || again.SI != first.SI || again.Canonical() != first.Canonical() {
						t.Fatalf("%q came back as %v, %v; want %v", first.Canonical(), again.SI, err, first.SI)
					}
				}
			}
		}
	}
}

// FromSI undoes ToSI to rounding, which is all that showing a value needs.
func TestFromSI(t *testing.T) {
	for k := range kinds {
		for _, u := range kinds[k].units {
			for _, x := range []float64{-40, 0, 1, 2610, 1e6} {
				if got := u.FromSI(u.ToSI(x)); math.Abs(got-x) > 1e-12*(500+math.Abs(x)) {
					t.Errorf("%v %s came back as %v", x, u.Name, got)
				}
			}
		}
	}
}
