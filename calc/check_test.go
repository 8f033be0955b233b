package calc

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// checked is a worksheet whose trials are rectangular from 0 to 1.04 MPa and whose
// closed form says that a 95 % interval ends at lo and hi (MPa).
func checked(lo, hi float64) Book {
	return Book{{ID: "w",
		Figures:  []Figure{{ID: "lo", Kind: unit.Pressure}, {ID: "hi", Kind: unit.Pressure}},
		Verdicts: []Verdict{{Key: "v", Head: "{lo} {hi}"}},
		Compute: func(in *In, out *Out) {
			l, h := out.CheckInterval(unit.Pressure, 0.95, lo*1e6, hi*1e6, doubt.Rect(0.52e6))
			out.Set("lo", l)
			out.Set("hi", h)
			out.Verdict("v")
		},
		Simulate: func(in *In) Trial { return func(r *rand.Rand) float64 { return 1.04e6 * r.Float64() } },
	}}
}

func TestCheckInterval(t *testing.T) {
	// u = 0.3002 MPa, 3.002 bar: the tolerance is 0.05 bar (JCGM 101:2008, 7.9.2).
	tests := []struct {
		name   string
		lo, hi float64
		says   string
		trials bool // the simulated interval is shown
	}{
		{"agrees", 0.026, 1.014, "; the closed form agrees.", false},
		{"within the tolerance", 0.029, 1.011, "; the closed form agrees.", false},
		{"differs", 0.04, 1.0, " and are shown; the closed form, 0.4 to 10.0 bar, differs by more than rounding.", true},
	}
	for _, test := range tests {
		a := checked(test.lo, test.hi).Checked("w", nil, unit.Metric)
		if want := "1\u2009000\u2009000 simulated trials give 0.3 to 10.1 bar" + test.says; a.Check != want {
			t.Errorf("%s: %q, want %q", test.name, a.Check, want)
		}
		shown, _ := strconv.ParseFloat(a.Figure("lo").Value, 64)
		want := test.lo * 1e6
		if test.trials {
			want = 0.026e6
		}
		if math.Abs(shown-want) > 500 { // three standard deviations of the trials' end
			t.Errorf("%s: shows %v Pa, want %v", test.name, shown, want)
		}
	}
	if a := checked(0, 1).Evaluate("w", nil, unit.US); a.Check != "" {
		t.Errorf("before a simulation ran: %q", a.Check)
	}
}

// TestCheckLongTails: an end far out in a tail, where even a million trials lie
// thin, still agrees when the trials are as many beyond it as should be.
func TestCheckLongTails(t *testing.T) {
	s := doubt.Sum{Scale: 1e5, DOF: 1}
	d := s.Dist()
	b := Book{{ID: "w", Verdicts: []Verdict{{Key: "v"}},
		Compute: func(in *In, out *Out) {
			lo, hi := d.Interval(0.999)
			out.CheckInterval(unit.Pressure, 0.999, lo, hi, 1e5)
			out.Verdict("v")
		},
		Simulate: func(in *In) Trial { return s.Draw }}}
	if a := b.Checked("w", nil, unit.US); !strings.HasSuffix(a.Check, "agrees as closely as so many trials can tell.") {
		t.Error(a.Check)
	}
}

// TestCheckWithoutDoubt: no width at all is agreement, not a disagreement over
// nothing.
func TestCheckWithoutDoubt(t *testing.T) {
	b := Book{{ID: "w", Verdicts: []Verdict{{Key: "v"}},
		Compute: func(in *In, out *Out) {
			out.CheckInterval(unit.Pressure, 0.95, 1e5, 1e5, 0)
			out.Verdict("v")
		},
		Simulate: func(in *In) Trial { return func(*rand.Rand) float64 { return 1e5 } }}}
	if a := b.Checked("w", nil, unit.US); !strings.HasSuffix(a.Check, "the closed form agrees.") {
		t.Error(a.Check)
	}
}

func TestSimulationOnlyForAnswers(t *testing.T) {
	if book.Simulation("trial", own("p", "x"), unit.US) != nil {
		t.Error("a simulation of an entry that cannot be read")
	}
	if book.Simulation("trial", own("p", "100 psi", "list", "400 psi"), unit.US) != nil {
		t.Error("a simulation where Compute complains")
	}
	if book.Simulation("onto", nil, unit.US) != nil {
		t.Error("a simulation where there is none")
	}
	if book.Simulation("trial", nil, unit.US) == nil {
		t.Error("no simulation")
	}
	if a := book.Checked("onto", nil, unit.US); a.Check != "" {
		t.Error(a.Check)
	}
}
