package gauge

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

const (
	bar = 1e5
	psi = 6894.757293168361
)

// EN 837-1:1996, Table 11: status read. Written out here in the order of the
// table, apart from the list under test.
func TestClassesOfEN837(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		id      string
		percent float64
	}{
		{"0.1", 0.1}, {"0.25", 0.25}, {"0.6", 0.6}, {"1", 1}, {"1.6", 1.6}, {"2.5", 2.5}, {"4", 4},
	} {
		g, ok := Lookup(test.id)
		if !ok || g.Standard != EN837 {
			t.Errorf("class %s: got %+v, %v", test.id, g, ok)
			continue
		}
		for _, at := range []float64{0, 0.1, 0.25, 0.5, 0.75, 0.9, 1} {
			if got := g.Limit(100*bar, at*100*bar); !scalar.EqualWithinRel(got, test.percent*bar, 1e-14) {
				t.Errorf("class %s at %v of scale: got %v Pa, want %v", test.id, at, got, test.percent*bar)
			}
		}
	}
	if n := len(Of(EN837)); n != 7 {
		t.Errorf("got %d classes, want 7", n)
	}
}

// Percent of span in the lower quarter, middle half and upper quarter.
func TestGradesOfASME(t *testing.T) {
	t.Parallel()
	const now = "ASME B40.100, Table 1: memory (high)"
	for _, test := range []struct {
		id                   string
		lower, middle, upper float64
		source               string
	}{
		{"4A", 0.1, 0.1, 0.1, now},
		{"3A", 0.25, 0.25, 0.25, now},
		{"2A", 0.5, 0.5, 0.5, now},
		{"1A", 1, 1, 1, now},
		{"A", 2, 1, 2, now},
		{"B", 3, 2, 3, now},
		{"C", 4, 3, 4, now},
		{"D", 5, 5, 5, now},
		{"B", 3, 2, 3, "US Army subcourse MM0486 p. 55, of the older A.S.A. standard: read"},
	} {
		g, ok := Lookup(test.id)
		if !ok || g.Standard != ASME {
			t.Errorf("grade %s: got %+v, %v", test.id, g, ok)
			continue
		}
		const scale = 4000 * psi
		for _, part := range []struct{ at, percent float64 }{
			{0, test.lower}, {0.2499, test.lower},
			{0.25, test.middle}, {0.5, test.middle}, {0.75, test.middle},
			{0.7501, test.upper}, {1, test.upper},
		} {
			if got, want := g.Limit(scale, part.at*scale), part.percent/100*scale; !scalar.EqualWithinRel(got, want, 1e-14) {
				t.Errorf("grade %s at %v of scale: got %v Pa, want %v; %s", test.id, part.at, got, want, test.source)
			}
		}
	}
	if n := len(Of(ASME)); n != 8 {
		t.Errorf("got %d grades, want 8", n)
	}
}

// The middle half includes its ends however the pressures were converted.
func TestLimitAtTheEndsOfTheMiddleHalf(t *testing.T) {
	t.Parallel()
	b, _ := Lookup("B")
	for scale := 1.0; scale <= 15000; scale++ {
		for _, unit := range []float64{psi, bar, 1e6, 98066.5} {
			for _, part := range []float64{0.25, 0.75} {
				at := (part * scale) * unit
				if got, want := b.Limit(scale*unit, at), 0.02*scale*unit; !scalar.EqualWithinRel(got, want, 1e-12) {
					t.Fatalf("%v of %v × %v Pa: got %v, want %v", part, scale, unit, got, want)
				}
			}
		}
	}
}

// Worked cases.
func TestLimitAndTemperature(t *testing.T) {
	t.Parallel()
	limit := func(id string, scale, at float64) float64 {
		g, ok := Lookup(id)
		if !ok {
			t.Fatalf("no grade %q", id)
		}
		return g.Limit(scale, at)
	}
	const class = "class 1.6 example in a maker's operating instructions: second-hand"
	for _, test := range []struct {
		name      string
		got, want float64
		tol       float64
		source    string
	}{
		{"0 to 10 bar, class 1.6", limit("1.6", 10*bar, 6*bar), 0.16 * bar, 1e-12, class},
		{"0 to 250 bar, class 1.6", limit("1.6", 250*bar, 180*bar), 4 * bar, 1e-12, class},
		{"its standard uncertainty", limit("1.6", 250*bar, 180*bar) / math.Sqrt(3), 2.309401 * bar, 5e-7, "computed"},
		{"40 K off 20 °C, 0 to 250 bar", Temperature(250*bar, 293.15+40), 4 * bar, 1e-9, "0.04 %/K: second-hand; product computed"},
		{"the same on the cold side", Temperature(250*bar, 293.15-40), 4 * bar, 1e-9, "0.04 %/K: second-hand; product computed"},
		{"at 20 °C", Temperature(250*bar, 293.15), 0, 0, "reference temperature: second-hand"},
		{"nothing printed, 4,000 psi", limit(NotMarked, 4000*psi, 2600*psi), 120 * psi, 1e-12, "common practice, no source"},
		{"grade B, 4,000 psi, 2,610 psi", limit("B", 4000*psi, 2610*psi), 80 * psi, 1e-12, "ASME B40.100, Table 1: memory (high)"},
		{"grade B, 3,000 psi, 2,610 psi", limit("B", 3000*psi, 2610*psi), 90 * psi, 1e-12, "ASME B40.100, Table 1: memory (high)"},
	} {
		if !scalar.EqualWithinAbsOrRel(test.got, test.want, 0, test.tol) {
			t.Errorf("%s: got %v Pa, want %v; %s", test.name, test.got, test.want, test.source)
		}
	}
}

// US Army subcourse MM0486 p. 53, read: error = indicated − true, as a share of
// full scale; true 250 and indicated 260 on a 0 to 500 psig gauge is +10 psi,
// +2 %; indicated 240 is −2 %. Those two just reach the limit of grade B, and of
// no grade that is tighter in the middle.
func TestSignConvention(t *testing.T) {
	t.Parallel()
	const scale, truth = 500 * psi, 250 * psi
	for _, test := range []struct{ indicated, percent float64 }{{260, 2}, {240, -2}} {
		at := test.indicated * psi
		share := (at - truth) / scale
		if !scalar.EqualWithinRel(share, test.percent/100, 1e-12) {
			t.Errorf("indicated %v psi: error %v of scale, want %v %%", test.indicated, share, test.percent)
		}
		for _, g := range Of(ASME) {
			within := math.Abs(share)*scale <= g.Limit(scale, at)*(1+1e-12)
			if want := g.Middle >= 0.02; within != want {
				t.Errorf("indicated %v psi: within grade %s is %v, want %v", test.indicated, g.ID, within, want)
			}
		}
	}
}

func TestGradesList(t *testing.T) {
	t.Parallel()
	seen := map[string]bool{}
	for i, g := range Grades {
		if seen[g.ID] {
			t.Errorf("%q is listed twice", g.ID)
		}
		seen[g.ID] = true
		if g.Middle <= 0 || g.Outer < g.Middle {
			t.Errorf("%q: outer %v, middle %v", g.ID, g.Outer, g.Middle)
		}
		if i == 0 || Grades[i-1].Standard != g.Standard {
			continue
		}
		// A and 1A agree in the middle half.
		if last := Grades[i-1]; g.Middle > last.Middle || g.Outer >= last.Outer {
			t.Errorf("%q is not more accurate than %q before it", g.ID, last.ID)
		}
	}
	if _, ok := Lookup("1.5"); ok {
		t.Error("found a class 1.5")
	}
}

func TestOutsideTheDomain(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	g, _ := Lookup("B")
	for _, test := range []struct {
		name string
		got  float64
	}{
		{"scale 0", g.Limit(0, 1)},
		{"scale below 0", g.Limit(-1, 1)},
		{"scale NaN", g.Limit(nan, 1)},
		{"reading NaN", g.Limit(1, nan)},
		{"temperature below 0 K", Temperature(1, -1)},
		{"temperature NaN", Temperature(1, nan)},
		{"temperature, scale 0", Temperature(0, 300)},
	} {
		if !math.IsNaN(test.got) {
			t.Errorf("%s: got %v, want NaN", test.name, test.got)
		}
	}
}
