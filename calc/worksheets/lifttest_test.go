package worksheets

import (
	"math"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// scaleBranches bring up every branch.
var scaleBranches = []struct{ changes, id, head, says string }{
	{"", "proportional", "Fits “in proportion”", "10.2 % more pressure lifted 12.6 % more, which fits lift in proportion to pressure; a dead weight of up to 680 lb fits as well"},
	{"tests=1500 psi : 730 lb; 2100 psi : 1150 lb; 2700 psi : 1570 lb", "dead-weight", "Dead weight about 320 lb", "most likely 260 to 380 lb, goes into arms and tool"},
	{"tests=1500 psi : 1200 lb; 2700 psi : 1500 lb", "dead-weight", "Flatter than can be", "no loader does"},
	{"tests=2000 psi : 1000 lb; 2300 psi : 1400 lb; 2700 psi : 1450 lb", "not-a-line", "Not on one line", "chance under 1 %"},
	{"tests=2450 psi : 1390 lb; 2700 psi : 1300 lb", "falls", "More pressure lifted no more", "show nothing of pressure"},
	{"tests=2450 psi : 1390 lb; 2900 psi : 1700 lb", "dead-weight", "Dead weight about 300 lb", ""},
	{"heights=60 in; 66 in", "proportional", "Fits “in proportion”", "up to 6 in apart in height, so they can't be compared"},
	{"limit=|gauge_err=80 psi", "proportional", "Fits “in proportion”", ""},
	{"tests=2450 psi : 1390 lb; 2700 psi : 1530 lb", "proportional", "Fits “in proportion”", ""},
}

func pullAt(changes string) *calc.Answer {
	return All.Evaluate("lift-test", owned(changed(changes)...), unit.US)
}

func TestScaleBranches(t *testing.T) {
	for _, b := range scaleBranches {
		a := pullAt(b.changes)
		if !a.OK() || a.Verdict.ID != b.id || a.Verdict.Head != b.head || !strings.Contains(a.Verdict.Sentence, b.says) {
			t.Errorf("%s: %s, %q, %q %v", b.changes, a.Verdict.ID, a.Verdict.Head, a.Verdict.Sentence, a.Problems)
		}
	}
	over := pullAt("tests=2450 psi : 1390 lb; 2900 psi : 1700 lb")
	if !strings.Contains(strings.Join(over.Lines, " "), "above the manual's 2,790 psi") {
		t.Errorf("a pull above the limit: %q", over.Lines)
	}
}

// Two points: the line through both, and their doubt carried by hand. With σ² =
// u²(load) + slope²·u²(pressure), u(slope) = √2·σ/Δp and u²(dead weight) = σ²/2 +
// mean² ·u²(slope). Worked apart from this code.
func TestScaleTwoPoints(t *testing.T) {
	const lb, psi = 4.4482216152605, 6894.757293168361
	a := pullAt("gauge_err=80 psi")
	sigma := math.Sqrt(10*10 + 0.7*0.7*10*10)
	slopeU := math.Sqrt2 * sigma / 250
	deadU := math.Sqrt(sigma*sigma/2 + 2575*2575*slopeU*slopeU + math.Pow(0.7*80, 2)/3)
	for id, want := range map[string]float64{
		"slope": 0.7 * lb / psi, "slope_u": slopeU * lb / psi, "dead": 325 * lb, "dead_u": deadU * lb,
		"gain_pct": 1565./1390 - 1, "dp_pct": 2700./2450 - 1,
	} {
		if got := value(a, id); math.Abs(got/want-1) > 1e-9 {
			t.Errorf("%s = %v, want %v", id, got, want)
		}
	}
}

// Three points on a line give it back, and no χ²; one off it gives the χ² of its
// distance.
func TestScaleThreePoints(t *testing.T) {
	exact := pullAt("tests=2000 psi : 1000 lb; 2300 psi : 1210 lb; 2600 psi : 1420 lb")
	if c, p := value(exact, "chi2"), value(exact, "chi2_p"); c > 1e-9 || math.Abs(p-1) > 1e-4 {
		t.Errorf("χ² %v, chance %v", c, p)
	}
	// The middle one 30 lb high, loads alone uncertain: residuals −10, 20, −10 lb; χ² = 600/100 = 6, one degree of freedom.
	off := pullAt("tests=2000 psi : 1000 lb; 2300 psi : 1240 lb; 2600 psi : 1420 lb|pressure_u=0 psi")
	if c := value(off, "chi2"); math.Abs(c-6) > 1e-9 {
		t.Errorf("χ² = %v, want 6", c)
	}
	if p := value(off, "chi2_p"); math.Abs(p-0.0143) > 5e-5 { // 1 − erf(√3), from memory of its printed table: 0.01431
		t.Errorf("chance %v, want 0.0143", p)
	}
}

// What the line shows travels only when it is shown.
func TestScaleTravels(t *testing.T) {
	link := func(changes, to string) string {
		for _, n := range pullAt(changes).Next {
			if n.ID == to {
				s := ""
				for _, p := range n.Link {
					s += p.Key + "=" + p.Value + ";"
				}
				return s
			}
		}
		return ""
	}
	if apart := link(scaleBranches[1].changes+"|heights=60 in; 60 in; 66 in", "gain"); strings.Contains(apart, "dead=") {
		t.Errorf("carried from pulls at different heights: %s", apart)
	}
	weak, strong := link("", "gain"), link(scaleBranches[1].changes, "gain")
	if strings.Contains(weak, "dead=") || !strings.Contains(weak, "lift=1565 lb") || !strings.Contains(weak, "at=2700 psi") {
		t.Errorf("carried: %s", weak)
	}
	// u(dead weight) of the three: σ² = 149, 31.02 lb; (320 ∓ 62.04)/730, by hand.
	if !strings.Contains(strong, "dead=320 lb") || !strings.Contains(link(scaleBranches[1].changes, "before-after"), "dead_lo=35.33") || !strings.Contains(link(scaleBranches[1].changes, "before-after"), "dead_hi=52.33") {
		t.Errorf("carried: %s", strong)
	}
}

// The order in which pulls were taken changes nothing that is said of them.
func TestScaleOrder(t *testing.T) {
	up, down := pullAt(""), pullAt("tests=2700 psi : 1565 lb; 2450 psi : 1390 lb")
	for _, id := range []string{"gain_pct", "dp_pct", "dead", "spread_needed"} {
		if a, b := value(up, id), value(down, id); math.Abs(a/b-1) > 1e-9 {
			t.Errorf("%s: rising %v, falling %v", id, a, b)
		}
	}
	again := pullAt("tests=2450 psi : 1390 lb; 2700 psi : 1565 lb; 2450 psi : 1395 lb")
	if got := value(again, "dp_pct"); math.Abs(got-(2700./2450-1)) > 1e-12 {
		t.Errorf("a repeat of the first: %v more pressure", got)
	}
}

// What a gauge is off everywhere alike neither spread nor repeats take away.
// With σ² = u²(load) + slope²·u²(pressure) the spread that makes 2·√(u²(line)·(250/spread)²
// + u²(gauge)) the dead weight of 325 lb, apart from this code.
func TestScaleGaugeStays(t *testing.T) {
	const psi = 6894.757293168361
	line := math.Sqrt(149./2 + 2575.*2575*2*149/250/250)
	gauge := 0.7 * 200 / math.Sqrt(3)
	a := pullAt("gauge_err=200 psi")
	if got, want := value(a, "spread_needed")/psi, 250*2*line/math.Sqrt(325*325-4*gauge*gauge); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("spread needed %v psi, want %v", got, want)
	}
	hidden := pullAt("gauge_err=450 psi")
	if said := strings.Join(hidden.Lines, " "); !strings.Contains(said, "only a better gauge") {
		t.Errorf("hidden by the gauge: %q", said)
	}
	// 2,200 psi cannot spread to 7,300 downwards.
	wide := pullAt("tests=500 psi : 200 lb; 2700 psi : 1180 lb|load_u=30 lb")
	if said := strings.Join(wide.Lines, " "); strings.Contains(said, "spread over") {
		t.Errorf("spread out of what can be: %q", said)
	}
}

func TestScaleComplains(t *testing.T) {
	for changes, want := range map[string]string{
		"tests=2450 psi : 1390 lb":                       "tests: Enter two pulls or more",
		"tests=2450 psi : 1390 lb; 2450 psi : 1400 lb":   "tests: All pulls are at one pressure",
		"heights=60 in":                                  "heights: Enter one height for each pull",
		"load_u=0 lb|pressure_u=0 psi":                   "load_u: Pressure and load can't both",
		"tests=2450 psi; 2700 psi : 1565 lb":             "tests: Two numbers with a colon",
		"tests=2450 lb : 1390 lb; 2700 psi : 1565 lb":    "tests: ",
		"tests=2450 psi : 0 lb; 2700 psi : 1565 lb":      "tests: ",
		"tests=0.01 psi : 1 lb; 9000 psi : 9,000,000 lb": "tests: ",
	} {
		a := pullAt(changes)
		if a.OK() || !strings.HasPrefix(a.Problems[0].Field+": "+a.Problems[0].Message, want) {
			t.Errorf("%s: %v, want %q", changes, a.Problems, want)
		}
	}
}
