package doubt

import (
	"math"
	"testing"
)

// measured is a value with a normal standard uncertainty.
func measured(y, u float64) *Dist { return Sum{Mid: y, Scale: u, DOF: inf}.Dist() }

func TestJCGM106(t *testing.T) {
	conform := func(y, u, low, high float64) float64 {
		_, within, _ := measured(y, u).Within(low, high)
		return within
	}
	// Table 1: one-sided z for a conformance probability (read; digits computed).
	for _, row := range []struct{ p, printed, z float64 }{
		{0.80, 0.84, 0.841621}, {0.90, 1.28, 1.281552}, {0.95, 1.64, 1.644854}, {0.99, 2.33, 2.326348}, {0.999, 3.09, 3.090232},
	} {
		run(t, []check{
			{"z", NormalQuantile(row.p), row.printed, 0.005, "JCGM 106 Table 1, read"},
			{"z, digits", NormalQuantile(row.p), row.z, 5e-7, "computed"},
			{"p_c at z under the limit", conform(-row.z, 1, -inf, 0), row.p, 1e-6, "JCGM 106 Table 1"},
			{"p_c at z over the limit", conform(row.z, 1, 0, inf), row.p, 1e-6, "JCGM 106 Table 1"},
		})
	}
	below, within, above := measured(13.6, 1.8).Within(12.5, 16.3)
	_, _, risk := measured(-2, 1).Within(-inf, 0)
	_, half, _ := measured(0, 1).Within(-inf, 0)
	// A band 1 wide at C_m = 1: u = 1/4.
	edge, middle := conform(0.45, 0.25, 0, 1), conform(0.5, 0.25, 0, 1)
	run(t, []check{
		{"7.3 example 1", conform(-5.47, 0.05, -inf, -5.40), 0.92, 0.005, "JCGM 106 7.3, read"},
		{"7.3 example 1, digits", conform(-5.47, 0.05, -inf, -5.40), 0.919243341, 5e-10, "computed"},
		{"7.4", within, 0.66, 0.005, "JCGM 106 7.4, read"},
		{"7.4, digits", within, 0.662629786, 5e-10, "computed"},
		{"7.4, under", below, 0.27, 0.005, "JCGM 106 7.4, read"},
		{"7.4, over", 1 - above, 0.93, 0.005, "JCGM 106 7.4, read"},
		{"7.4, sum", below + within + above, 1, 1e-15, "definition"},
		{"C_m", MeasurementCapability(1, 0.25), 1, 1e-15, "JCGM 106 7.6, read"},
		{"7.7.5 at 0.45", edge, 0.950166, 5e-7, "computed"},
		{"7.7.5 at 0.50", middle, 0.954500, 5e-7, "computed"},
		{"8.3.1.2", half, 0.5, 1e-15, "JCGM 106 8.3.1.2, read"},
		{"8.3.2.3", risk, 0.023, 0.0005, "JCGM 106 8.3.2.3, read"},
		{"8.3.2.3, digits", risk, 0.0227501, 5e-8, "computed"},
		{"Annex A, one u", conform(0, 1, -1, 1), 0.682689492, 5e-10, "JCGM 106 Annex A, computed"},
		{"Annex A, two u", conform(0, 1, -2, 2), 0.954499736, 5e-10, "JCGM 106 Annex A, computed"},
		{"Annex A, three u", conform(0, 1, -3, 3), 0.997300204, 5e-10, "JCGM 106 Annex A, computed"},
		{"t 0.95 one-sided, 9 dof", T(0.90, 9), 1.83, 0.005, "JCGM 106 8.3.3, read"},
	})
	// 7.7.5: at least 95 % only between 0.45 and 0.55.
	if conform(0.44, 0.25, 0, 1) >= 0.95 || conform(0.56, 0.25, 0, 1) >= 0.95 || edge < 0.95 {
		t.Error("JCGM 106 7.7.5: 95 % only from 0.45 to 0.55")
	}
}

// Guarded rejection, JCGM 106 8.3.3 example 1: limit 100, u 2 % of the reading,
// reject when 99.9 % sure; printed 107, computed 106.58761.
func TestGuardedRejection(t *testing.T) {
	over := func(v float64) float64 {
		_, _, p := measured(v, 0.02*v).Within(-inf, 100)
		return p
	}
	run(t, []check{
		{"sure at", solve(over, 0.999, 100, 120), 106.58761, 5e-6, "computed"},
		{"printed", solve(over, 0.999, 100, 120), 107, 0.5, "JCGM 106 8.3.3, read"},
	})
}

func TestGuardBand(t *testing.T) {
	const u = 1.8
	from, to := AcceptanceLimits(0, 20, GuardBand(2*u, 1))
	_, _, atTop := measured(to, u).Within(-inf, 20)
	atBottom, _, _ := measured(from, u).Within(0, inf)
	run(t, []check{
		{"from", from, 3.6, 1e-12, "low + U"},
		{"to", to, 16.4, 1e-12, "high − U"},
		{"risk at the top", atTop, 0.0227501, 5e-8, "JCGM 106 8.3.2.3, computed"},
		{"risk at the bottom", atBottom, 0.0227501, 5e-8, "JCGM 106 8.3.2.3, computed"},
	})
	if from, to := AcceptanceLimits(-inf, 20, 3); !math.IsInf(from, -1) || to != 17 {
		t.Errorf("one limit: %g to %g", from, to)
	}
	if from, to := AcceptanceLimits(0, 5, 3); !math.IsNaN(from) || !math.IsNaN(to) {
		t.Errorf("nothing left: %g to %g", from, to)
	}
	// The guard band of U for a rectangular error ±a is narrower than the a that
	// excludes any wrong acceptance: U = 1.96·a/√3 covers it all.
	d := Sum{Mid: 20 - 1.96*Rect(3), Rects: []float64{3}}.Dist()
	if _, _, p := d.Within(0, 20); p != 0 {
		t.Errorf("a limit cannot be passed by more than itself: %g", p)
	}
}

func TestWithinEdges(t *testing.T) {
	point := Sum{Mid: 5}.Dist()
	for _, row := range []struct{ low, high, below, within, above float64 }{
		{5, 6, 0, 1, 0}, {4, 5, 0, 1, 0}, {5, 5, 0, 1, 0}, {6, 7, 1, 0, 0}, {3, 4, 0, 0, 1}, {-inf, inf, 0, 1, 0},
	} {
		b, w, a := point.Within(row.low, row.high)
		if b != row.below || w != row.within || a != row.above {
			t.Errorf("exactly 5 in %g to %g: %g %g %g", row.low, row.high, b, w, a)
		}
	}
	if b, w, a := point.Within(6, 4); !math.IsNaN(b + w + a) {
		t.Error("a band upside down should give NaN")
	}
	// A reading of 2610 ± 80 against 2680 to 2790, both only low.
	d := Sum{Mid: 2610, Rects: []float64{80}}.Dist()
	b, w, a := d.Within(2680, 2790)
	run(t, []check{
		{"low", b, 0.9375, 1e-15, "150/160"}, {"in", w, 0.0625, 1e-15, "10/160"}, {"high", a, 0, 0, "none"},
	})
	if b, w, a := d.Within(2680, inf); b != 0.9375 || w != 0.0625 || a != 0 {
		t.Errorf("one limit: %g %g %g", b, w, a)
	}
	if !math.IsInf(MeasurementCapability(1, 0), 1) {
		t.Error("a perfect gauge should have no end of capability")
	}
}
