package line

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mathext"
)

// Quantiles worked out with 25 digits apart from this project, printed with nine.
func TestChiSquareTailAtQuantiles(t *testing.T) {
	t.Parallel()
	tails := [4]float64{0.95, 0.05, 0.025, 0.01}
	for _, row := range []struct {
		dof int
		x   [4]float64
	}{
		{1, [4]float64{0.00393214, 3.84145882, 5.02388619, 6.6348966}},
		{2, [4]float64{0.102586589, 5.99146455, 7.37775891, 9.21034037}},
		{3, [4]float64{0.351846318, 7.8147279, 9.3484036, 11.3448667}},
		{4, [4]float64{0.710723021, 9.48772904, 11.1432868, 13.2767041}},
		{5, [4]float64{1.14547623, 11.0704977, 12.832502, 15.0862725}},
		{8, [4]float64{2.73263679, 15.5073131, 17.5345461, 20.090235}},
		{10, [4]float64{3.94029914, 18.3070381, 20.4831774, 23.2092512}},
		{20, [4]float64{10.8508114, 31.4104328, 34.1696069, 37.5662348}},
		{30, [4]float64{18.492661, 43.7729718, 46.9792422, 50.8921813}},
	} {
		for i, x := range row.x {
			if got := ChiSquareTail(x, row.dof); math.Abs(got-tails[i]) > 2e-8 {
				t.Errorf("χ² %v with %d degrees of freedom: %v, want %v", x, row.dof, got, tails[i])
			}
		}
	}
	// 3.841, 5.991 and 18.307 leave 5 %, as printed tables have it (from memory).
	for dof, x := range map[int]float64{1: 3.841, 2: 5.991, 10: 18.307} {
		if got := ChiSquareTail(x, dof); math.Abs(got-0.05) > 2e-5 {
			t.Errorf("χ² %v with %d degrees of freedom: %v", x, dof, got)
		}
	}
}

// Against a general-purpose library's incomplete gamma function.
func TestChiSquareTailAgainstLibrary(t *testing.T) {
	t.Parallel()
	for dof := 1; dof <= 198; dof++ {
		for _, k := range []float64{0, 1e-6, 0.01, 0.3, 0.9, 1, 1.1, 2, 4, 7} {
			x := k * float64(dof)
			close(t, "tail", ChiSquareTail(x, dof), mathext.GammaIncRegComp(float64(dof)/2, x/2), 1e-11)
		}
	}
}

func TestChiSquareTailOutside(t *testing.T) {
	t.Parallel()
	for _, x := range []float64{-1, math.NaN(), math.Inf(-1)} {
		if got := ChiSquareTail(x, 3); !math.IsNaN(got) {
			t.Errorf("χ² %v: %v", x, got)
		}
	}
	if got := ChiSquareTail(1, 0); !math.IsNaN(got) {
		t.Errorf("no degrees of freedom: %v", got)
	}
	for _, x := range []float64{2000, math.Inf(1)} {
		if got := ChiSquareTail(x, 3); got != 0 {
			t.Errorf("χ² %v: %v", x, got)
		}
	}
}
