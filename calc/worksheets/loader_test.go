package worksheets

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

func loaderAt(pairs ...string) *calc.Answer { return All.Evaluate("loader", owned(pairs...), unit.US) }

// The figures of the example. The numbers were worked out from coordinates to 50
// digits, apart from this code (see calc/linkage); printed here in US units.
func TestLoaderExample(t *testing.T) {
	a := loaderAt()
	for _, c := range []struct {
		id   string
		want float64
		kind unit.Kind
		unit string
		tol  float64
	}{
		{"h_min", 7.966, unit.Length, "in", 0.001},
		{"h_max", 95.967, unit.Length, "in", 0.001},
		{"lift", 2061.7, unit.Load, "lb", 0.05},
		{"lift_low", 3690.1, unit.Load, "lb", 0.05},
		{"lift_top", 1491.1, unit.Load, "lb", 0.05},
		{"dead", 449.9, unit.Load, "lb", 0.05},
		{"slope", 96.23, unit.LoadSlope, "lb per 100 psi", 0.005},
		{"gain", 120.28, unit.Load, "lb", 0.006},
		{"gain_top", 93.25, unit.Load, "lb", 0.006},
		{"gain_pct", 5.83, unit.Percent, "%", 0.006},
		{"arm", 16.797, unit.Length, "in", 0.001},
		{"closer", 4.40, unit.Length, "in", 0.006},
		{"lower", 6.41, unit.Length, "in", 0.006},
		{"lighter", 106.9, unit.Load, "lb", 0.06},
		{"raise_volume", 98.62, unit.Volume, "in³", 0.006}, // 2 × π/4 × 1.75² × 20.5
		{"top_move", 2.985, unit.Length, "in", 0.002},
	} {
		u, _ := c.kind.Lookup(c.unit)
		if got := u.FromSI(value(a, c.id)); math.Abs(got-c.want) > c.tol {
			t.Errorf("%s = %v %s, want %v", c.id, got, c.unit, c.want)
		}
	}
}

// Moments about the pivot, from the figures alone: what the push does is what
// load, arms and tool take.
func TestLoaderBalances(t *testing.T) {
	for _, changes := range [][]string{{}, {"height", "90 in"}, {"load_x", "20 in"}, {"back", "100 psi"}, {"level", "yes"}, {"base_side", "ahead", "closed", "25 in"}} {
		a := loaderAt(changes...)
		if !a.OK() {
			t.Errorf("%v: %v", changes, a.Problems)
			continue
		}
		f := func(id string) float64 { return value(a, id) }
		lb := 4.4482216152605
		if push, taken := f("force")*f("arm"), f("lift")*f("reach")+260*lb*f("x_boom")+290*lb*f("x_tool"); math.Abs(push/taken-1) > 1e-9 {
			t.Errorf("%v: the push does %v N·m, load, arms and tool take %v", changes, push, taken)
		}
	}
}

// Measurements that make no loader are named, with what would fit, and drawn.
func TestLoaderImpossible(t *testing.T) {
	for _, c := range []struct {
		field, text, says string
		changes           []string
	}{
		{"pivot_base", "", "22 in apart in height alone", []string{"pivot_base", "20 in"}},
		{"rod_tip", "", "46 in or more", []string{"rod_tip", "40 in"}},
		{"rod_tip", "", "114 in or less", []string{"rod_tip", "120 in"}},
		{"closed", "", "never further apart than 58 in", []string{"closed", "60 in"}},
		{"closed", "", "never shorter than 10 in", []string{"closed", "9 in", "stroke", "8 in"}},
		{"stroke", "", "stroke is under 25.1 in", []string{"stroke", "26 in"}},
		{"stroke", "", "shorter than its closed length, 32.9 in", []string{"stroke", "33 in"}},
		{"rod", "", "thinner than the bore, 1.75 in", []string{"rod", "1.75 in"}},
		{"height", "", "goes from 7.97 in to 95.97 in", []string{"height", "100 in"}},
		{"height", "", "goes from 7.97 in to 95.97 in", []string{"height", "0 in"}},
		{"load_x", "", "over the pivot or behind", []string{"load_x", "-85 in"}},
	} {
		a := loaderAt(c.changes...)
		if len(a.Problems) != 1 || a.Problems[0].Field != c.field || !strings.Contains(a.Problems[0].Message, c.says) {
			t.Errorf("%v: %v, want %q at %s", c.changes, a.Problems, c.says, c.field)
		}
		if len(a.Figures) > 0 || strings.Count(a.Picture, "<svg") != 1 || !strings.Contains(a.Picture, "What was entered") {
			t.Errorf("%v: figures %v, picture %.80q", c.changes, a.Figures, a.Picture)
		}
	}
}

// Points of a plate are held against the model, each with its residual.
func TestLoaderPoints(t *testing.T) {
	a := loaderAt("points", "60 in : 2,000 lb; 60 in : 2,200 lb; 30 in : 1,500 lb; 130 in : 900 lb")
	says := []string{"The model gives 2,062 lb, 62 lb more than this.", "The model gives 2,062 lb, 138 lb less than this.", "more than this", "Out of reach: the bucket pin goes from 7.97 in to 96.0 in."}
	for i, want := range says {
		got := ""
		for _, n := range a.Notes {
			if n.Field == "points" && n.Row == i {
				got = n.Text
			}
		}
		if !strings.Contains(got, want) {
			t.Errorf("row %d: %q, want %q", i, got, want)
		}
	}
	if !strings.Contains(strings.Join(a.Lines, " "), "Of 3 entered, 2 lie within the doubt") {
		t.Errorf("%q", a.Lines)
	}
	// The model's own lift at another pressure leaves nothing.
	exact := loaderAt("points", "60 in : 2182 lb", "points_at", "2735 psi")
	if got := value(exact, "fits_best"); math.Abs(got-0.95) > 0.0002 {
		t.Errorf("its own points would fit best with %v past friction", got)
	}
}

// What travels on lifts as much on the other page, at both pressures.
func TestLoaderTravels(t *testing.T) {
	for _, changes := range [][]string{{}, {"height", "90 in", "load_x", "15 in"}, {"back", "150 psi"}, {"level", "yes", "pressure", "2500 psi"}} {
		a := loaderAt(changes...)
		for _, n := range a.Next {
			if n.ID != "gain" {
				continue
			}
			b := All.Evaluate("gain", calc.FromLink(n.Link), unit.US)
			if !b.OK() {
				t.Errorf("%v: %v", changes, b.Problems)
				continue
			}
			for here, there := range map[string]string{"lift": "lift_now", "lift_compare": "lift_target", "gain": "gain", "slope": "slope"} {
				if x, y := value(a, here), value(b, there); math.Abs(x/y-1) > 1e-4 { // links carry six digits
					t.Errorf("%v: %s is %v here, %s %v there", changes, here, x, there, y)
				}
			}
		}
	}
}

// A pressure over the manual's limit is refused and not drawn.
func TestLoaderLimit(t *testing.T) {
	over := loaderAt("compare", "2,900 psi")
	if over.Verdict.ID != "over-limit" || strings.Contains(over.Picture, "2,900") {
		t.Errorf("%s, drawn %t", over.Verdict.ID, strings.Contains(over.Picture, "2,900"))
	}
	if at := loaderAt("compare", "2,790 psi"); at.Verdict.ID != "more" || !strings.Contains(at.Picture, "2,790") {
		t.Errorf("at the limit: %s", at.Verdict.ID)
	}
}

func BenchmarkLoader(b *testing.B) {
	for b.Loop() {
		All.Evaluate("loader", nil, unit.US)
	}
}

// A load carried further out by what is said lifts less by just the gain: put
// back as its place.
func TestLoaderFurther(t *testing.T) {
	for _, changes := range [][]string{{}, {"height", "20 in"}, {"back", "200 psi", "count", "1"}} {
		a := loaderAt(changes...)
		out := loaderAt(append(changes, "load_x", strconv.FormatFloat(value(a, "further"), 'g', -1, 64)+" m")...)
		if lost, gain := value(a, "lift")-value(out, "lift"), value(a, "gain"); math.Abs(lost/gain-1) > 1e-9 {
			t.Errorf("%v: %v lost, %v gained", changes, lost, gain)
		}
	}
	heavy := loaderAt("tool_w", "2010 lb") // lifts less than the gain
	if said := strings.Join(heavy.Lines, " "); strings.Contains(said, "further out") {
		t.Errorf("further out: %q", said)
	}
}

// Less than nothing is never shown as a load, nor carried on as one.
func TestLoaderLiftsNothing(t *testing.T) {
	for _, changes := range [][]string{
		{"tool_w", "2000 lb"}, {"tool_w", "2400 lb"}, {"tool_w", "2400 lb", "pressure", "2800 psi"}, {"pressure", "300 psi", "compare", "400 psi"},
	} {
		a := loaderAt(changes...)
		for _, s := range append(a.Lines, a.Verdict.Head, a.Verdict.Sentence, a.Figure("lift_top").Text, a.Figure("lift").Text) {
			if strings.Contains(s, "−") {
				t.Errorf("%v: %q", changes, s)
			}
		}
		for _, n := range a.Next {
			for _, p := range n.Link {
				if p.Key == "lift" && strings.HasPrefix(p.Value, "-") {
					t.Errorf("%v: %s takes a lift of %s", changes, n.ID, p.Value)
				}
			}
		}
	}
	for _, target := range []string{"2735 psi", "2800 psi"} { // where nothing is lifted, more pressure is not held up as the only way
		if said := strings.Join(loaderAt("tool_w", "2600 lb", "compare", target).Lines, " "); strings.Contains(said, "At this height") {
			t.Errorf("%s: %q", target, said)
		}
	}
	if value(loaderAt("tool_w", "2400 lb"), "lift") >= 0 {
		t.Error("the number for a program is gone")
	}
}

// An arc that lifts nearly the same everywhere is not said to hang on height,
// nor points that no friction explains to be fitted by it.
func TestLoaderSaysNoMore(t *testing.T) {
	flat := loaderAt("height", "60 in", "closed", "46 in", "stroke", "1.5 in")
	if said := strings.Join(flat.Lines, " "); !flat.OK() || strings.Contains(said, "height decides") {
		t.Errorf("%v %q", flat.Problems, said)
	}
	more := loaderAt("points", "60 in : 2,900 lb")
	if said := strings.Join(more.Lines, " "); !strings.Contains(said, "no friction explains them") {
		t.Errorf("%q", said)
	}
}

// On a phone the example's numbers are named by the parts of the form they stand in.
func TestLoaderBorrowed(t *testing.T) {
	for _, c := range []struct{ changes, want string }{
		{"height=50 in", "reading, other pressure, highest pressure, kind of linkage, place of the load, arms, cylinders, weights"},
		{"height=50 in|boom=82 in|tool_w=300 lb", "reading, other pressure, highest pressure, kind of linkage, place of the load, height of the pivot, height of the base pin, " +
			"distance of pivot and base pin, side of the base pin, distance of pivot and rod pin, distance of rod pin and bucket pin, side of the rod pin, cylinders, " +
			"weight of the arms, centre of the arms, centre of the tool"},
	} {
		a := All.Evaluate("loader", owned(changed(c.changes)...), unit.US)
		if got := strings.Join(a.Borrowed, ", "); got != c.want {
			t.Errorf("%s: %s", c.changes, got)
		}
	}
}
