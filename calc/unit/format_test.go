package unit

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		x          float64
		places     int
		us, metric string
	}{
		{2655, 0, "2,655", "2655"},
		{26550, 0, "26,550", "26\u2009550"},
		{999, 0, "999", "999"},
		{1234567.891, 2, "1,234,567.89", "1\u2009234\u2009567.89"},
		{18.3, 1, "18.3", "18.3"},
		{-12.5, 1, "\u221212.5", "\u221212.5"},
		{-12345, 0, "\u221212,345", "\u221212\u2009345"},
		// Negative places round to tens and hundreds.
		{2655, -1, "2,660", "2660"},
		{2645, -1, "2,650", "2650"},
		{2644.9, -1, "2,640", "2640"},
		{2655, -2, "2,700", "2700"},
		{2655, -3, "3,000", "3000"},
		{2655, -4, "0", "0"},
		{5000, -4, "10,000", "10\u2009000"},
		{99.6, -1, "100", "100"},
		// Halves, away from zero.
		{0.5, 0, "1", "1"}, {1.5, 0, "2", "2"}, {2.5, 0, "3", "3"}, {-2.5, 0, "\u22123", "\u22123"},
		{0.125, 2, "0.13", "0.13"}, {1.005, 2, "1.01", "1.01"}, {2.675, 2, "2.68", "2.68"}, {1.0049999, 2, "1.00", "1.00"},
		{0.49999999, 0, "0", "0"}, {9.995, 2, "10.00", "10.00"}, {999.5, 0, "1,000", "1000"}, {9999.5, 0, "10,000", "10\u2009000"},
		// No minus zero.
		{-0.0004, 2, "0.00", "0.00"}, {math.Copysign(0, -1), 0, "0", "0"}, {math.Copysign(0, -1), 1, "0.0", "0.0"}, {-4, -1, "0", "0"},
		{-0.005, 2, "\u22120.01", "\u22120.01"},
		// Small, large, padded.
		{0, 3, "0.000", "0.000"}, {0.00012, 5, "0.00012", "0.00012"}, {0.00012, 3, "0.000", "0.000"}, {0.0996, 2, "0.10", "0.10"}, {1e-9, 2, "0.00", "0.00"},
		{3, 2, "3.00", "3.00"}, {10, 1, "10.0", "10.0"}, {1e15, 0, "1,000,000,000,000,000", "1\u2009000\u2009000\u2009000\u2009000\u2009000"},
		{math.NaN(), 2, "—", "—"}, {math.Inf(1), 2, "∞", "∞"}, {math.Inf(-1), 0, "\u2212∞", "\u2212∞"},
	} {
		if got := Decimals(c.x, c.places, US); got != c.us {
			t.Errorf("Decimals(%v, %d, US) = %q, want %q", c.x, c.places, got, c.us)
		}
		if got := Decimals(c.x, c.places, Metric); got != c.metric {
			t.Errorf("Decimals(%v, %d, Metric) = %q, want %q", c.x, c.places, got, c.metric)
		}
	}
	for _, places := range []int{math.MinInt, -1000, 1000, math.MaxInt} {
		for _, x := range []float64{0, 1, -math.MaxFloat64, math.SmallestNonzeroFloat64} {
			if got := Decimals(x, places, US); len(got) > 1000 {
				t.Errorf("Decimals(%v, %d) is %d bytes long", x, places, len(got))
			}
		}
	}
}

func TestPlaces(t *testing.T) {
	for _, c := range []struct {
		half float64
		want int
		text string // half at that place
	}{
		{76.2, 0, "76"}, {7.62, 1, "7.6"}, {0.0762, 3, "0.076"}, {762, -1, "760"}, {7620, -2, "7,600"},
		{99.4, 0, "99"}, {99.6, -1, "100"}, {9.96, 0, "10"}, {0.0996, 2, "0.10"}, {995, -2, "1,000"}, {994.9, -1, "990"},
		{1, 1, "1.0"}, {10, 0, "10"}, {100, -1, "100"}, {-76.2, 0, "\u221276"},
		{0, 0, "0"}, {math.Inf(1), 0, "∞"}, {math.NaN(), 0, "—"},
	} {
		got := PlaceTwo(c.half)
		if got != c.want {
			t.Errorf("PlaceTwo(%v) = %d, want %d", c.half, got, c.want)
		}
		if text := Decimals(c.half, got, US); text != c.text {
			t.Errorf("%v at %d places is %q, want %q", c.half, got, text, c.text)
		}
	}
	for _, c := range []struct {
		x       float64
		n, want int
	}{
		{1507.789, 4, 0}, {72.21, 4, 2}, {0.04789, 4, 5}, {99999, 4, -2}, {9999.4, 4, 0}, {9999.6, 4, -1}, {-5, 1, 0}, {5, 0, 0}, {5, -3, 0}, {0, 4, 0},
	} {
		if got := PlaceSig(c.x, c.n); got != c.want {
			t.Errorf("PlaceSig(%v, %d) = %d, want %d", c.x, c.n, got, c.want)
		}
	}
}

// What Decimals writes, Parse reads, to half a unit of the last place.
func TestDecimalsParse(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		x := (random.Float64() - 0.5) * math.Pow(10, float64(random.IntN(12)-4))
		places := random.IntN(9) - 3
		half := 0.5 * math.Pow(10, -float64(places))
		for _, s := range both {
			text := Decimals(x, places, s)
			if s == Metric && strings.Count(text, ",") > 0 {
				t.Fatalf("metric %q has a comma", text)
			}
			v, err := Parse(text, Number, Unit{}, s)
			if err != nil || math.Abs(v.SI-x) > half*(1+1e-9) {
				t.Fatalf("Decimals(%v, %d) = %q, read as %v, %v", x, places, text, v.SI, err)
			}
		}
	}
}

func TestEdit(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		from string // entered
		unit string // shown in
		want string
	}{
		{Pressure, "2610 psi", "bar", "179.953"}, // 2610 / 14.5037737730209 = 179.95316...
		{Pressure, "180 bar", "psi", "2610.68"},  // 180 · 14.5037737730209 = 2610.679...
		{Pressure, "2610 psi", "psi", "2610"},
		{Pressure, "200 bar", "MPa", "20"},
		{Length, "1 1/2 in", "mm", "38.1"},
		{Length, "100 in", "mm", "2540"},
		{Thickness, "0.010 in", "thou", "10"},
		{Thickness, "0.010 in", "mm", "0.254"},
		{Temperature, "20 °C", "°F", "68"},
		{Temperature, "32 °F", "°C", "0"},
		{Temperature, "0 °F", "°C", "-17.7778"},
		{Temperature, "-40 °C", "°F", "-40"},
		{Pressure, "-1 psi", "psi", "-1"},
		{Pressure, "0 psi", "bar", "0"},
		{Pressure, "123456789 Pa", "Pa", "123457000"},
		{Pressure, "1e17 Pa", "Pa", "1e17"},
		{Percent, "40", "%", "40"},
		{PressureRate, "40 psi per 0.010 in", "bar per 0.1 mm", "1.08579"}, // 40·6894.757/0.000254/1e9 = 1.0857886...
		{LoadSlope, "60 lb per 100 psi", "kg per 10 bar", "39.4728"},       // 60·6.4516e-6/9.80665e-6 = 39.47280...
	} {
		v, err := Parse(c.from, c.kind, Unit{}, US)
		if err != nil {
			t.Fatal(err)
		}
		if got := mustUnit(t, c.kind, c.unit).Edit(v.SI); got != c.want {
			t.Errorf("%s in %s is %q, want %q", c.from, c.unit, got, c.want)
		}
	}
	pa := mustUnit(t, Pressure, "Pa")
	for si, want := range map[float64]string{math.Inf(1): "", math.Inf(-1): "", math.Copysign(0, -1): "0", math.MaxFloat64: "1.79769e308", 999999.5: "1000000"} {
		if got := pa.Edit(si); got != want {
			t.Errorf("Edit(%v) = %q, want %q", si, got, want)
		}
	}
	if got := pa.Edit(math.NaN()); got != "" {
		t.Errorf("Edit(NaN) = %q", got)
	}
}
