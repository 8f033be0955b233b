package doubt

import (
	"math"
	"testing"
)

func TestSolve(t *testing.T) {
	for _, row := range []struct {
		name      string
		f         func(float64) float64
		p, lo, hi float64
		want, tol float64
	}{
		{"line", func(x float64) float64 { return x / 4 }, 0.5, 0, 4, 2, 1e-12},
		{"normal", NormalCDF, 0.975, -40, 40, 1.959963984540054, 1e-11},
		{"flat, then steep", func(x float64) float64 { return max(0, 1e6*(x-1)) }, 0.5, 0, 1e3, 1.0000005, 1e-12},
		{"step", func(x float64) float64 { return math.Floor(x) }, 0.5, 0, 1.75, 1, 1e-12},
		{"under the low end", NormalCDF, 0.1, 0, 3, 0, 0},
		{"over the high end", NormalCDF, 0.999, 0, 3, 3, 0},
		{"about zero", func(x float64) float64 { return 0.5 + math.Cbrt(x) }, 0.5, -1, 2, 0, 1e-12},
	} {
		calls := 0
		got := solve(func(x float64) float64 { calls++; return row.f(x) }, row.p, row.lo, row.hi)
		run(t, []check{{row.name, got, row.want, row.tol, "inverse"}})
		if calls > 250 {
			t.Errorf("%s took %d calls", row.name, calls)
		}
	}
}
