package unit

import (
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// mustUnit returns the unit of the kind, which must exist.
func mustUnit(t *testing.T, k Kind, name string) Unit {
	t.Helper()
	u, ok := k.Lookup(name)
	if !ok {
		t.Fatalf("no unit %q", name)
	}
	return u
}

// The published and computed sizes of the units. Status "computed": worked to
// 20 digits or more from the five definitions, independently of this project;
// "read": in a general-purpose unit library; "by definition": follows from the
// rows above by moving a decimal point or one multiplication shown in the note.
func TestUnitSizes(t *testing.T) {
	for _, c := range []struct {
		kind   Kind
		unit   string
		want   float64 // SI value of 1 unit
		tol    float64 // relative
		status string
	}{
		{Load, "lbf", 4.4482216152605, 1e-15, "computed, exact"},
		{Load, "lb", 4.448222, 1e-6, "NIST SP 811 B.8, from memory"},
		{Pressure, "psi", 6894.75729316836, 1e-14, "computed"},
		{Pressure, "psi", 6.894757e3, 1e-6, "NIST SP 811 B.8, from memory"},
		{Pressure, "bar", 100000, 0, "read, exact"},
		{Pressure, "bar", 14.5037737730209 * 6894.75729316836, 1e-14, "computed: 1 bar in psi"},
		{Pressure, "MPa", 145.037737730209 * 6894.75729316836, 1e-14, "computed: 1 MPa in psi"},
		{Pressure, "MPa", 1e6, 0, "by definition"},
		{Pressure, "kPa", 1e3, 0, "by definition"},
		{Pressure, "Pa", 1, 0, "by definition"},
		{Pressure, "kgf/cm2", 98066.5, 1e-15, "computed, exact"},
		{Pressure, "kgf/cm2", 14.2233433071196 * 6894.75729316836, 1e-14, "computed: in psi"},
		{Load, "kg", 9.80665, 0, "read, exact: kgf"},
		{Load, "N", 1, 0, "by definition"},
		{Load, "kN", 1e3, 0, "by definition"},
		{Length, "in", 0.0254, 0, "read, exact"},
		{Length, "ft", 0.3048, 1e-15, "read, exact"},
		{Length, "m", 1, 0, "by definition"},
		{Length, "cm", 0.01, 0, "by definition"},
		{Length, "mm", 0.001, 0, "by definition"},
		{Thickness, "thou", 0.0000254, 1e-15, "by definition: 0.001 in"},
		{Percent, "%", 0.01, 0, "by definition"},
		{PressureRate, "psi per 0.010 in", 6894.75729316836 / 0.000254, 1e-14, "computed: psi over 0.010 in"},
		{PressureRate, "psi per in", 6894.75729316836 / 0.0254, 1e-14, "computed: psi over 1 in"},
		{PressureRate, "psi per thou", 6894.75729316836 / 0.0000254, 1e-14, "computed: psi over 0.001 in"},
		{PressureRate, "bar per 0.1 mm", 1e9, 1e-15, "by definition: 1e5 Pa over 1e-4 m"},
		{PressureRate, "bar per mm", 1e8, 0, "by definition"},
		// Pounds over psi is an area: 1 lbf per psi is 1 in² = 6.4516e-4 m².
		{LoadSlope, "lb per psi", 6.4516e-4, 1e-14, "by definition: 1 in²"},
		{LoadSlope, "lb per 100 psi", 6.4516e-6, 1e-14, "by definition: 0.01 in²"},
		{LoadSlope, "kg per bar", 9.80665e-5, 1e-15, "by definition"},
		{LoadSlope, "kg per 10 bar", 9.80665e-6, 1e-15, "by definition"},
		{Factor, "times", 1, 0, "by definition"},
		{Force, "lbf", 4.4482216152605, 1e-15, "computed, exact"},
		{Force, "kN", 1e3, 0, "by definition"},
		{Stress, "ksi", 6894757.29316836, 1e-14, "computed: 1000 psi"},
		{Stress, "N/mm²", 1e6, 0, "by definition"},
		{Volume, "in³", 1.6387064e-05, 1e-14, "computed, exact"},
		{Volume, "cc", 1e-6, 0, "by definition"},
		{Capacity, "gal", 3.785411784e-3, 1e-14, "computed, exact: 231 in³"},
		{Capacity, "L", 1e-3, 0, "by definition"},
		{Displacement, "in³/rev", 1.6387064e-05, 1e-14, "computed, exact"},
		{Displacement, "cc/rev", 1e-6, 0, "by definition"},
		{Flow, "gpm", 6.30901964e-05, 1e-14, "computed, exact"},
		{Flow, "L/min", 1.0 / 60000, 1e-15, "by definition"},
		{Rotation, "rpm", 1.0 / 60, 1e-15, "by definition"},
		{Speed, "in/s", 0.0254, 0, "read, exact inch"},
		{Speed, "ft/min", 0.00508, 1e-14, "by definition: 0.3048 m in 60 s"},
		{Power, "hp", 745.699871582270, 1e-14, "computed: 550 ft·lbf/s"},
		{Power, "kW", 1e3, 0, "by definition"},
		{Time, "min", 60, 0, "by definition"},
		{Density, "lb/gal", 119.826427316897, 1e-13, "computed: 0.45359237 kg in 231 in³"},
		{Density, "kg/L", 1000, 0, "by definition"},
		{HeatCapacity, "Btu/lb °F", 4186.8, 1e-15, "from memory: the steam-table Btu, 2326 J/kg for 1 Btu/lb"},
		{HeatCapacity, "kJ/kg K", 1e3, 0, "by definition"},
		{TemperatureRise, "°F", 5.0 / 9, 1e-15, "t/F = 9/5 t/C + 32"},
		{TemperatureRate, "°F/min", 5.0 / 540, 1e-15, "by definition"},
		{Angle, "°", 0.0174532925199433, 1e-14, "π/180, from memory"},
	} {
		got := mustUnit(t, c.kind, c.unit).ToSI(1)
		if !scalar.EqualWithinAbsOrRel(got, c.want, 0, c.tol) {
			t.Errorf("1 %s = %.17g, want %.17g (%s)", c.unit, got, c.want, c.status)
		}
	}
}

// The definitions must also give the units that follow from them. All rows
// computed to 15 digits from the definitions, independently of this project.
func TestDefinitions(t *testing.T) {
	const gallon = 231 * inch * inch * inch // US gallon
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"cubic inch, m³", inch * inch * inch, 1.6387064e-05},
		{"US gallon, m³", gallon, 3.785411784e-3},
		{"US gallon a minute, m³/s", gallon / 60, 6.30901964e-05},
		{"horsepower, W", 550 * foot * poundf, 745.699871582270},
		{"metric horsepower, W", 75 * kilof, 735.49875},
		{"horsepower in metric horsepower", 550 * foot * poundf / (75 * kilof), 1.013869665424},
		{"foot pound, J", foot * poundf, 1.3558179483314},
		{"inch pound, J", inch * poundf, 0.112984829027617},
		{"cubic foot a second, gal/min", foot * foot * foot / gallon * 60, 448.831168831169},
	} {
		if !scalar.EqualWithinAbsOrRel(c.got, c.want, 0, 5e-14) {
			t.Errorf("%s = %.15g, want %.15g", c.name, c.got, c.want)
		}
	}
}

func TestTemperatures(t *testing.T) {
	f, c := mustUnit(t, Temperature, "°F"), mustUnit(t, Temperature, "°C")
	for _, row := range []struct {
		f, c, tol float64
		source    string
	}{
		{120, 48.8888889, 5e-8, "computed, printed to 9 digits"},
		{122, 50, 1e-12, "computed"},
		{32, 0, 1e-12, "definition, freezing point"},
		{212, 100, 1e-12, "definition, boiling point"},
		{-40, -40, 1e-12, "t/F = 9/5 t/C + 32"},
		{-459.67, -273.15, 1e-12, "absolute zero, offset read in a unit library"},
	} {
		if got := c.FromSI(f.ToSI(row.f)); !scalar.EqualWithinAbs(got, row.c, row.tol) {
			t.Errorf("%v °F = %v °C, want %v (%s)", row.f, got, row.c, row.source)
		}
		if got := f.FromSI(c.ToSI(row.c)); !scalar.EqualWithinAbs(got, row.f, 2*row.tol) {
			t.Errorf("%v °C = %v °F, want %v (%s)", row.c, got, row.f, row.source)
		}
	}
	if got := f.ToSI(1.8) - f.ToSI(0); !scalar.EqualWithinAbs(got, 1, 1e-12) { // computed
		t.Errorf("a difference of 1.8 °F = %v K, want 1", got)
	}
	if got := mustUnit(t, Temperature, "K").ToSI(293.15); got != 293.15 {
		t.Errorf("293.15 K = %v", got)
	}
}

func TestDecimalSubmultiplesAreExact(t *testing.T) {
	for _, c := range []struct {
		kind    Kind
		unit    string
		x, want float64
	}{
		{Percent, "%", 95, 0.95}, {Percent, "%", 35, 0.35}, {Percent, "%", 7, 0.07},
		{Length, "mm", 12.5, 0.0125}, {Length, "cm", 58, 0.58},
	} {
		if got := mustUnit(t, c.kind, c.unit).ToSI(c.x); got != c.want {
			t.Errorf("%v %s = %v, want %v", c.x, c.unit, got, c.want)
		}
	}
}

func TestShownAndChooser(t *testing.T) {
	for _, c := range []struct {
		kind       Kind
		us, metric string
		chooser    int
	}{
		{Number, "", "", 1}, {Count, "", "", 1}, {Factor, "times", "times", 1}, {Percent, "%", "%", 1},
		{Pressure, "psi", "bar", 5}, {Length, "in", "mm", 5}, {Thickness, "in", "mm", 3},
		{Load, "lb", "kg", 4}, {Temperature, "°F", "°C", 2},
		{PressureRate, "psi per 0.010 in", "bar per 0.1 mm", 2},
		{LoadSlope, "lb per 100 psi", "kg per 10 bar", 2},
		{Force, "lb", "kN", 4}, {Stress, "psi", "MPa", 3}, {Volume, "in³", "L", 4}, {Capacity, "gal", "L", 2},
		{Displacement, "in³/rev", "cm³/rev", 2}, {Flow, "gpm", "L/min", 2}, {Rotation, "rpm", "rpm", 1},
		{Speed, "in/s", "mm/s", 4}, {Power, "hp", "kW", 2}, {Time, "s", "s", 2}, {Density, "lb/gal", "kg/m³", 3},
		{HeatCapacity, "Btu/lb °F", "kJ/kg K", 2}, {TemperatureRise, "°F", "°C", 2}, {TemperatureRate, "°F/min", "°C/min", 2},
		{Angle, "°", "°", 1},
	} {
		if got := c.kind.Shown(US).Name; got != c.us {
			t.Errorf("kind %d shown in US: %q, want %q", c.kind, got, c.us)
		}
		if got := c.kind.Shown(Metric).Name; got != c.metric {
			t.Errorf("kind %d shown in metric: %q, want %q", c.kind, got, c.metric)
		}
		units := c.kind.Units()
		if len(units) != c.chooser {
			t.Errorf("kind %d offers %d units, want %d", c.kind, len(units), c.chooser)
		}
		var us, metric bool
		for _, u := range units {
			us, metric = us || u.Name == c.us, metric || u.Name == c.metric
		}
		if !us || !metric {
			t.Errorf("kind %d does not offer both shown units", c.kind)
		}
	}
	Pressure.Units()[0].Name = "changed"
	if Pressure.Shown(US).Name != "psi" {
		t.Error("a caller can change the table")
	}
}

// Every row of the table must be complete, with no spelling that means two units.
func TestTableIsSound(t *testing.T) {
	for k := range kinds {
		k := Kind(k)
		if !k.plain() && kinds[k].noun == "" {
			t.Errorf("kind %d has no noun", k)
		}
		for _, s := range []System{US, Metric} {
			if _, err := Parse(kinds[k].sample[s], k, Unit{}, s); err != nil {
				t.Errorf("kind %d: its own sample fails: %v", k, err)
			}
		}
		seen := map[string]string{}
		for _, u := range kinds[k].units {
			if u.Factor <= 0 || u.Divisor <= 0 {
				t.Errorf("%q has no size", u.Name)
			}
			if got, ok := k.Lookup(u.Name); !ok || got != u {
				t.Errorf("Lookup(%q) = %v, %v", u.Name, got.Name, ok)
			}
			for _, alias := range append(aliasesOf(u), key(u.Name)) {
				if key(alias) != alias {
					t.Errorf("alias %q of %q can never match: its key is %q", alias, u.Name, key(alias))
				}
				if other, ok := seen[alias]; ok {
					t.Errorf("%q stands for both %q and %q", alias, other, u.Name)
				}
				seen[alias] = u.Name
			}
		}
	}
}

func TestLookup(t *testing.T) {
	for _, c := range []struct {
		kind       Kind
		name, want string
	}{
		{Pressure, "PSI", "psi"}, {Pressure, "psig", "psi"}, {Pressure, "lb/in2", "psi"}, {Pressure, "lb/in²", "psi"},
		{Pressure, "lbf/in^2", "psi"}, {Pressure, "lbs per sq in", "psi"}, {Pressure, "psi.", "psi"},
		{Pressure, "Bar", "bar"}, {Pressure, "mPa", "MPa"}, {Pressure, "MPA", "MPa"}, {Pressure, "kpa", "kPa"},
		{Pressure, "kgf/cm2", "kgf/cm²"}, {Pressure, "KGF / CM²", "kgf/cm²"}, {Pressure, "pa", "Pa"},
		{Length, `"`, "in"}, {Length, "″", "in"}, {Length, "”", "in"}, {Length, "''", "in"}, {Length, "in.", "in"},
		{Length, "Inches", "in"}, {Length, "'", "ft"}, {Length, "′", "ft"}, {Length, "feet", "ft"},
		{Length, "thou", "thou"}, {Length, "MM", "mm"}, {Thickness, "thou", "thou"}, {Thickness, "metres", "m"},
		{Load, "lbs", "lb"}, {Load, "lbf", "lb"}, {Load, "kgf", "kg"}, {Load, "KN", "kN"}, {Load, "n", "N"},
		{Temperature, "degC", "°C"}, {Temperature, "deg F", "°F"}, {Temperature, "ºC", "°C"}, {Temperature, "c", "°C"},
		{Temperature, "\u212A", "K"}, // the Kelvin sign
		{Percent, "percent", "%"}, {Percent, "per cent", "%"},
		{PressureRate, "psi/0.010 in", "psi per 0.010 in"}, {PressureRate, "PSI per 10 thou", "psi per 0.010 in"},
		{PressureRate, "bar per 0,1 mm", "bar per 0.1 mm"},
		{LoadSlope, "lbf/100 psi", "lb per 100 psi"}, {LoadSlope, "kg\u00A0per\u00A010\u00A0bar", "kg per 10 bar"},
		{Factor, "×", "times"}, {Factor, "X", "times"}, {Number, "", ""}, {Count, " ", ""},
	} {
		if got, ok := c.kind.Lookup(c.name); !ok || got.Name != c.want {
			t.Errorf("Lookup(%q) = %q, %v; want %q", c.name, got.Name, ok, c.want)
		}
	}
	for _, c := range []struct {
		kind Kind
		name string
	}{
		{Pressure, "lb"}, {Pressure, "psia"}, {Pressure, "mbar"}, {Pressure, ""}, {Pressure, "."}, {Length, "mil"},
		{Load, "psi"}, {Number, "psi"}, {Temperature, "%"}, {PressureRate, "psi"}, {LoadSlope, "lb"},
	} {
		if got, ok := c.kind.Lookup(c.name); ok {
			t.Errorf("kind %d: Lookup(%q) found %q", c.kind, c.name, got.Name)
		}
	}
}

func TestNames(t *testing.T) {
	for k, want := range map[Kind]string{Pressure: "psi, bar, MPa, kPa or kgf/cm²", Time: "s or min", Factor: "times", Count: ""} {
		if got := k.Names(); got != want {
			t.Errorf("%d: %q, want %q", k, got, want)
		}
	}
	if !Known("kgf / cm2") || !Known("rpm") || Known("") || Known("furlong") {
		t.Error("a unit is known that is none, or the other way round")
	}
}
