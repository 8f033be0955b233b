package doubt

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// check is one value held against a source. Status: read (in the document
// named), computed (worked elsewhere to 20 digits), memory.
type check struct {
	name      string
	got, want float64
	tol       float64 // absolute; half of the last printed digit, or rounding
	source    string
}

func run(t *testing.T, checks []check) {
	t.Helper()
	for _, c := range checks {
		if !scalar.EqualWithinAbs(c.got, c.want, c.tol) {
			t.Errorf("%s: got %.10g, want %.10g ± %g (%s)", c.name, c.got, c.want, c.tol, c.source)
		}
	}
}

var inf = math.Inf(1)

// temperatures are the readings of JCGM 100:2008, 4.4.3, Table 1 (read), °C.
var temperatures = []float64{
	96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
	100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
}

func TestStandardUncertainty(t *testing.T) {
	mean, s := StdDev(temperatures)
	specified := Rect(14e-6*0.928571 + 2e-6*1) // V: 14e-6 of reading, 2e-6 of range
	volt := Budget{
		{Name: "repeats", U: 12e-6, Sens: 1, DOF: inf},
		{Name: "specification", U: specified, Sens: 1, DOF: inf},
	}
	run(t, []check{
		{"240 µg at three", 240 / T(1-2*NormalCDF(-3), inf), 80, 1e-9, "JCGM 100 4.3.3, read"},
		{"129 µΩ at 99 %", 129 / T(0.99, inf), 50, 0.5, "JCGM 100 4.3.4, read"},
		{"divisor 90 %", T(0.90, inf), 1.64, 0.0051, "JCGM 100 4.3.4, read (printed cut, not rounded)"},
		{"divisor 95 %", T(0.95, inf), 1.96, 0.005, "JCGM 100 4.3.4, read"},
		{"divisor 99 %", T(0.99, inf), 2.58, 0.005, "JCGM 100 4.3.4, read"},
		{"fifty-fifty limits", 1 / NormalQuantile(0.75), 1.48, 0.005, "JCGM 100 4.3.5, read"},
		{"fifty-fifty 0.04 mm", 0.04 / NormalQuantile(0.75), 0.06, 0.005, "JCGM 100 4.3.5, read"},
		{"expansion of copper", Rect(0.40e-6), 0.23e-6, 0.005e-6, "JCGM 100 4.3.7 ex. 1, read"},
		{"expansion of copper, u²", math.Pow(Rect(0.40e-6), 2), 53.3e-15, 0.05e-15, "JCGM 100 4.3.7 ex. 1, read"},
		{"expansion of copper, digits", Rect(0.40e-6), 0.230940e-6, 5e-13, "4.3.7 ex. 1, computed"},
		{"voltmeter", specified, 8.7e-6, 0.05e-6, "JCGM 100 4.3.7 ex. 2, read"},
		{"voltmeter, digits", specified, 8.66025e-6, 5e-12, "4.3.7 ex. 2, computed"},
		{"asymmetric", Asymmetric(0.12e-6, 0.40e-6), 0.15e-6, 0.005e-6, "JCGM 100 4.3.8, read"},
		{"asymmetric, digits", Asymmetric(0.12e-6, 0.40e-6), 0.150111e-6, 5e-13, "4.3.8, computed"},
		{"mean of 20", mean, 100.145, 1e-9, "JCGM 100 4.4.3, read"},
		{"s of 20", s, 1.489, 0.0005, "JCGM 100 4.4.3, read"},
		{"s of 20, digits", s, 1.48884448306, 1e-10, "4.4.3, computed"},
		{"s of the mean", s / math.Sqrt(20), 0.333, 0.0005, "JCGM 100 4.4.3, read"},
		{"96 to 104, rectangle", Rect(4), 2.3, 0.05, "JCGM 100 4.4.5, read"},
		{"96 to 104, rectangle, digits", Rect(4), 2.309401, 5e-7, "4.4.5, computed"},
		{"96 to 104, triangle", Triangle(4), 1.6, 0.05, "JCGM 100 4.4.6, read"},
		{"96 to 104, triangle, digits", Triangle(4), 1.632993, 5e-7, "4.4.6, computed"},
		{"display step", math.Pow(Step(1), 2), 1.0 / 12, 1e-15, "JCGM 100 H.6.3.1, read"},
		{"voltmeter combined", volt.U(), 15e-6, 0.5e-6, "JCGM 100 5.1.5, read"},
		{"voltmeter combined, u²", volt.U() * volt.U(), 219e-12, 0.5e-12, "JCGM 100 5.1.5, read"},
		{"voltmeter combined, digits", volt.U(), 14.7986e-6, 5e-11, "5.1.5, computed"},
		{"class 1.6, 0 to 250 bar", Rect(4), 2.309401, 5e-7, "EN 837-1 class, computed"},
	})
}

// A trapezoid is two rectangles (4.3.9): u² = a²(1 + β²)/6, a triangle at β = 0.
func TestTrapezoid(t *testing.T) {
	for _, beta := range []float64{0, 0.3, 0.8, 1} {
		const a = 5.0
		wide, narrow := a*(1+beta)/2, a*(1-beta)/2
		run(t, []check{
			{"trapezoid", math.Hypot(Rect(wide), Rect(narrow)), a * math.Sqrt((1+beta*beta)/6), 1e-12, "JCGM 100 4.3.9, read"},
		})
	}
	run(t, []check{{"triangle", Triangle(5), math.Hypot(Rect(2.5), Rect(2.5)), 1e-12, "JCGM 100 4.3.9, read"}})
}

func TestWelchSatterthwaite(t *testing.T) {
	b := Budget{ // relative, in percent
		{Name: "x1", U: 0.25, Sens: 1, DOF: 9},
		{Name: "x2", U: 0.57, Sens: 1, DOF: 4},
		{Name: "x3", U: 0.82, Sens: 1, DOF: 14},
	}
	k := T(0.95, math.Floor(b.DOF()+0.01)) // the guide works from 1.03, which gives 19.04
	run(t, []check{
		{"u", b.U(), 1.03, 0.005, "JCGM 100 G.4.1, read"},
		{"u, digits", b.U(), 1.029466, 5e-7, "G.4.1, computed"},
		{"dof", b.DOF(), 19.0, 0.05, "JCGM 100 G.4.1, read"},
		{"dof, digits", b.DOF(), 18.99874, 5e-6, "G.4.1, computed"},
		{"k", k, 2.09, 0.005, "JCGM 100 G.4.1, read"},
		{"k, digits", k, 2.093024, 5e-7, "G.4.1, computed"},
		{"U", k * b.U(), 2.2, 0.05, "JCGM 100 G.4.1, read"},
	})
}

func TestBudgetEdges(t *testing.T) {
	if b := (Budget{}); b.U() != 0 || !math.IsInf(b.DOF(), 1) || len(b.Shares()) != 0 {
		t.Error("an empty budget should have no doubt")
	}
	still := Budget{{U: 0, Sens: 1, DOF: 3}, {U: 5, Sens: 0, DOF: 0}}
	if still.U() != 0 || !math.IsInf(still.DOF(), 1) {
		t.Errorf("no contribution: u %g, dof %g", still.U(), still.DOF())
	}
	for _, s := range still.Shares() {
		if s != 0 {
			t.Errorf("share %g of nothing", s)
		}
	}
	if d := (Budget{{U: 1, Sens: 1}}).DOF(); !math.IsNaN(d) {
		t.Errorf("dof of a source with none: %g, want NaN", d)
	}
	if d := (Budget{{U: 1, Sens: 2, DOF: inf}, {U: 1e-9, Sens: 1, DOF: inf}}).DOF(); !math.IsInf(d, 1) {
		t.Errorf("all infinite: dof %g", d)
	}
	if d := (Budget{{U: 3, Sens: -2, DOF: 7}}).DOF(); !scalar.EqualWithinAbs(d, 7, 1e-12) {
		t.Errorf("one source keeps its dof: %g", d)
	}
	for name, u := range map[string]float64{
		"Rect": Rect(-1), "Step": Step(-1), "Triangle": Triangle(-1), "Asymmetric": Asymmetric(1, -1),
	} {
		if !math.IsNaN(u) {
			t.Errorf("%s of a negative width: %g, want NaN", name, u)
		}
	}
}

func TestSharesSumToOneAndBetterGaugeShrinksU(t *testing.T) {
	before := inf
	for _, class := range []float64{4, 2.5, 1.6, 1, 0.6, 0.25, 0.1} { // EN 837-1
		b := Budget{
			{Name: "gauge", U: Rect(class / 100 * 27.6e6), Sens: 1, DOF: inf},
			{Name: "step", U: Step(69e3), Sens: 1, DOF: inf},
			{Name: "repeats", U: 30e3, Sens: -1, DOF: 3},
		}
		sum := 0.0
		for _, s := range b.Shares() {
			sum += s
		}
		if !scalar.EqualWithinAbs(sum, 1, 1e-14) {
			t.Errorf("class %g: shares sum to %g", class, sum)
		}
		if u := b.U(); u >= before {
			t.Errorf("class %g: u %g, not under %g", class, u, before)
		} else {
			before = u
		}
		if d := b.DOF(); d < 3 {
			t.Errorf("class %g: dof %g under the smallest", class, d)
		}
	}
}

func TestStdDevEdges(t *testing.T) {
	if mean, s := StdDev(nil); !math.IsNaN(mean) || !math.IsNaN(s) {
		t.Error("no readings should give NaN")
	}
	if mean, s := StdDev([]float64{7}); mean != 7 || !math.IsNaN(s) {
		t.Errorf("one reading: %g, %g", mean, s)
	}
	const psi = 6894.757293168361
	for _, n := range []int{2, 3, 7, 11} { // sums of these do not divide back exactly
		x := make([]float64, n)
		for i := range x {
			x[i] = 2613 * psi
		}
		if mean, s := StdDev(x); mean != x[0] || s != 0 {
			t.Errorf("%d equal readings: mean off by %g, s %g", n, mean-x[0], s)
		}
	}
}
