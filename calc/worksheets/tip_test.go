package worksheets

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc/unit"
)

// Every branch by the invented example's numbers and some close to them, each
// worked by hand: with 600 lb of ballast it tips at (2150·68 + 600·98)/50 = 4,100.
var tipBranches = []struct{ changes, id, head, says string }{
	{"lift=1580 lb", "hydraulics", "The relief opens first, at 1,580 lb", "the relief opens at 1,580 lb, before anything tips: 30.5 % of the weight is then still on the rear axle, and 25 % is to be kept."},
	{"lift=1900 lb", "hydraulics", "The relief opens first, at 1,900 lb", "/ Only just: with what weights, lengths and lift are good to, less than 25 % may be left."},
	{"ballast=0 lb", "light", "Enough behind to 1,193 lb, not 1,580 lb", "is left on the rear axle, less than the 25 % to keep: 1,193 lb is the most that leaves it. / 320 lb of ballast in all, 30 in behind the rear axle, would keep 25 % there at 1,580 lb"},
	{"ballast=0 lb|rear=900 lb", "balance", "Rear wheels lift at 1,224 lb", "the rear wheels lift at 1,224 lb, before the relief opens at 1,580 lb: more pressure lifts nothing more. / Plan for no more than 241 lb"},
	{"ballast=0 lb|rear=900 lb|front=3000 lb|lift=500 lb", "light", "Too light behind with any load", "it needs ballast before it lifts anything"},
	{"ballast=0 lb|rear=900 lb|front=3000 lb", "balance", "Rear wheels lift at 1,224 lb", "/ Even with no load less than the 25 % to keep is on the rear axle"},
	{"ballast=0 lb|rear=1160 lb", "close", "Too close to call", "too close to call: the rear wheels lift at 1,578 lb and the relief opens at 1,580 lb"},
	{"front_rating=3000 lb", "front-axle", "Front axle is full at 873 lb", "the front axle is at its rating with a load of 873 lb, before the relief opens at 1,580 lb: more pressure only overloads it."},
	{"front_rating=4228 lb", "close", "Too close to call", "the relief opens at 1,580 lb and the front axle is at its rating with 1,58"},
	{"front_rating=1400 lb", "front-axle", "Front axle over its rating with no load", "with no load the front axle carries 1,485 lb already, and is rated for 1,400 lb."},
	{"front_rating=6000 lb", "hydraulics", "The relief opens first, at 1,580 lb", "before anything tips"},
	{"ballast=4000 lb", "backwards", "It goes over backwards with no load", "with 4,000 lb of ballast 30 in behind the rear axle the front wheels lift"},
	{"ballast=2500 lb", "hydraulics", "The relief opens first, at 1,580 lb", "/ With no load the front axle carries only 6"},
	{"hill=25 °|centre_h=100 in|load_h=40 in", "tipping", "It tips forward with no load", "falls ahead of the front wheels"},
	{"hill=10 °|centre_h=34 in|load_h=40 in", "light", "Enough behind to 1,3", "is left on the rear axle, less than the 25 % to keep"},
	// A load over the rear axle, 300 in up on 25°: (2150·68 + 600·98)·cos + 4500·34·sin against 1580·(50·cos − 300·sin).
	{"hill=-25 °|centre_h=34 in|load_h=300 in", "backwards", "It goes over backwards with the load", "1,580 lb held 300 in up takes all the weight off the front wheels"},
	// The ballast for the share lifts the front wheels, or leaves them too little, once the load is off:
	// 1750 − ballast·30/68 on the front axle.
	{"lift=4000 lb|ballast=1000 lb", "light", "Enough behind to 2,401 lb, not 4,000 lb", "2,322 lb of ballast in all, 30 in behind the rear axle, would keep 25 % there at 4,000 lb, but with the load off that leaves less on the front axle than the manuals' 20 %"},
	{"keep=75 %", "light", "Too light behind with any load", "but with the load off that lifts the front wheels"},
	{"hill=-25 °|centre_h=30 in|load_h=110 in", "hydraulics", "The relief opens first, at 1,580 lb", "before anything tips"},
}

func TestTipBranches(t *testing.T) {
	for _, b := range tipBranches {
		a := answer(t, "tip", unit.US, changed(b.changes)...)
		said := strings.Join(append([]string{a.Verdict.Sentence}, a.Lines...), " / ")
		if a.Verdict.ID != b.id || !strings.HasPrefix(a.Verdict.Head, b.head) || !strings.Contains(said, b.says) {
			t.Errorf("%s: %s, %q, %q", b.changes, a.Verdict.ID, a.Verdict.Head, said)
		}
	}
}

// Figures by hand, from moments about the front wheels in pounds and inches.
func TestTipFigures(t *testing.T) {
	const hold = 2150*68 + 600*98.0
	for _, c := range []struct {
		changes, figure string
		want            float64 // lb
	}{
		{"lift=1580 lb", "tip_load", hold / 50},
		{"lift=1580 lb", "safe_load", (hold/68 - 0.25*4500) / (50.0/68 + 0.25)},
		{"lift=1580 lb", "rear_left", (hold - 1580*50) / 68},
		{"lift=1580 lb", "front_load", 6080 - (hold-1580*50)/68},
		{"lift=1580 lb", "ballast_needed", (0.25*5480*68 - 2150*68 + 1580*50) / 81.0},
		{"lift=1580 lb", "rule_rear", 0.45 * 3900},
		{"lift=1580 lb", "rule_ballast", (0.45*3900*68 - 2150*68 + 1580*50) / 98.0},
		{"lift=1580 lb", "half_tip", hold / 100},
		{"lift=1580 lb", "front_empty", 4500 - hold/68},
		{"lift=1580 lb", "rule_front", 780},
		{"front_rating=3000 lb", "axle_limit", (3000 - 4500 + hold/68) / (1 + 50.0/68)},
		{"lift=300 lb", "ballast_needed", 0},
		{"lift=300 lb", "rule_ballast", 0},
		// Past what tips it the formulas go on, for a program to read.
		{"lift=5000 lb", "rear_left", (hold - 5000*50) / 68},
		{"lift=5000 lb", "front_load", 9500 - (hold-5000*50)/68},
		// By the tilted picture: sin and cos of 10° from a table.
		{"hill=10 °|centre_h=34 in|load_h=40 in", "tip_load", (hold*0.984807753 - 4500*34*0.173648178) / (50*0.984807753 + 40*0.173648178)},
		{"hill=10 °|centre_h=34 in|load_h=40 in", "front_empty", 4500*0.984807753 - (hold*0.984807753-4500*34*0.173648178)/68},
		{"hill=10 °|centre_h=34 in|load_h=40 in", "rule_ballast", (0.45*3900*68 - 2150*68 + 1580*50) / 98.0}, // on level ground
	} {
		a := answer(t, "tip", unit.US, changed(c.changes)...)
		if got := value(a, c.figure) / lbN; !scalar.EqualWithinAbsOrRel(got, c.want, 1e-9, 2e-8) {
			t.Errorf("%s: %s = %v lb, want %v", c.changes, c.figure, got, c.want)
		}
	}
	// The invented example with nothing in doubt: the chance is certain.
	a := answer(t, "tip", unit.US, "weigh_err", "0 %", "tape", "0 in", "lift_err", "0 %")
	if value(a, "p_first") != 1 || value(a, "tip_lo") != value(a, "tip_hi") || len(a.Budget) > 0 {
		t.Errorf("nothing in doubt, but %s, %s to %s, %v", a.Figure("p_first").Text, a.Figure("tip_lo").Text, a.Figure("tip_hi").Text, a.Budget)
	}
}

// The guide says where most of the example's doubt comes from.
func TestTipLargestDoubt(t *testing.T) {
	a := All.Evaluate("tip", nil, unit.US)
	most := a.Budget[0]
	for _, b := range a.Budget {
		if b.Share > most.Share {
			most = b
		}
	}
	if most.Name != "load ahead of the front axle" || !scalar.EqualWithinAbs(value(a, "largest"), most.Share, 1e-12) {
		t.Errorf("%+v, %s", most, a.Figure("largest").Text)
	}
}

// What was asked for comes out when the answer is entered.
func TestTipPutBack(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	kept := 0
	for range 200 {
		pairs := []string{"keep", "30 %"}
		for _, f := range []struct {
			id, unit string
			lo, hi   float64
		}{
			{"front", "kg", 400, 1500}, {"rear", "kg", 400, 1500}, {"wheelbase", "mm", 1300, 2200}, {"axle_reach", "mm", 600, 1800},
			{"ballast", "kg", 0, 500}, {"ballast_x", "mm", 0, 1000}, {"lift", "kg", 200, 1200},
			{"hill", "°", -8, 15}, {"centre_h", "mm", 500, 900}, {"load_h", "mm", 400, 2000},
		} {
			pairs = append(pairs, f.id, fmt.Sprintf("%.12g %s", between(f.lo, f.hi), f.unit))
		}
		a := answer(t, "tip", unit.Metric, pairs...)
		load, total := value(a, "rear_left")+value(a, "front_load"), 0.0
		for _, f := range a.Used {
			if f.ID == "front" || f.ID == "rear" || f.ID == "ballast" || f.ID == "lift" {
				total += newtons(entry(pairs, f.ID))
			}
		}
		hill, _ := unit.Parse(entry(pairs, "hill"), unit.Angle, unit.Unit{}, unit.Metric)
		if !scalar.EqualWithinRel(load, total*math.Cos(hill.SI), 1e-12) {
			t.Errorf("%v: the axles carry %v of %v", pairs, load, total)
		}
		if b := value(a, "ballast_needed"); b > 0 && b < 1e5 {
			with := answer(t, "tip", unit.Metric, append(pairs, "ballast", fmt.Sprintf("%.14g N", b))...)
			share := value(with, "rear_left") / (value(with, "rear_left") + value(with, "front_load"))
			if kept++; !scalar.EqualWithinRel(share, 0.30, 1e-9) || !scalar.EqualWithinRel(value(with, "safe_load"), newtons(entry(pairs, "lift")), 1e-9) {
				t.Errorf("%v with %v N of ballast: %v is left", pairs, b, share)
			}
		}
	}
	if kept < 50 {
		t.Errorf("ballast was needed %d times only", kept)
	}
}

// entry is what stands in a field.
func entry(pairs []string, id string) string {
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i] == id {
			return pairs[i+1]
		}
	}
	return ""
}

// newtons is a load as it was typed.
func newtons(text string) float64 {
	v, _ := unit.Parse(text, unit.Load, unit.Unit{}, unit.Metric)
	return v.SI
}

// The chance is that of drawing every measure from its limits.
func TestTipChance(t *testing.T) {
	const trials = 200_000
	a := answer(t, "tip", unit.US, "ballast", "0 lb", "rear", "1180 lb")
	r := rand.New(rand.NewPCG(11, 12))
	off := func(x, by float64) float64 { return x + by*(2*r.Float64()-1) }
	first := 0
	for range trials {
		if off(1580, 79) < off(1180, 23.6)*off(68, 1)/off(50, 1) {
			first++
		}
	}
	if got, want := value(a, "p_first"), float64(first)/trials; a.Verdict.ID != "close" || math.Abs(got-want) > 0.005 {
		t.Errorf("%s, chance %v, drawn %v", a.Verdict.ID, got, want)
	}
}

// On a slope the heights must be there; on level ground they bear on nothing.
func TestTipHeights(t *testing.T) {
	a := All.Evaluate("tip", owned("hill", "5 °", "load_h", "40 in"), unit.US)
	if len(a.Problems) != 1 || a.Problems[0].Field != "centre_h" {
		t.Errorf("one height missing: %v", a.Problems)
	}
	if a = All.Evaluate("tip", owned("hill", "-5 °"), unit.US); len(a.Problems) != 2 {
		t.Errorf("both heights missing: %v", a.Problems)
	}
	level, heights := answer(t, "tip", unit.US), answer(t, "tip", unit.US, "centre_h", "40 in", "load_h", "90 in")
	same(t, "heights on level ground", level, heights)
	for _, p := range heights.Link {
		if strings.HasSuffix(p.Key, "_h") {
			t.Errorf("the link carries %s", p.Key)
		}
	}
}

// A lift travels here from the pages that know it, and on from here.
func TestTipLiftTravels(t *testing.T) {
	for from, typed := range map[string][]string{"gain": {"lift", "1700 lb"}, "loader": nil} {
		a := answer(t, from, unit.US, typed...)
		found := false
		for _, n := range a.Next {
			found = found || n.ID == "tip" && strings.Contains(fmt.Sprint(n.Link), "{lift ")
		}
		if !found {
			t.Errorf("no lift travels from %s: %v", from, a.Next)
		}
	}
	for _, from := range []string{"gain", "short"} {
		a := answer(t, "tip", unit.US, "lift", "1700 lb")
		found := false
		for _, n := range a.Next {
			found = found || n.ID == from && strings.Contains(fmt.Sprint(n.Link), "{lift 1700 lb}")
		}
		if !found {
			t.Errorf("no lift travels to %s: %v", from, a.Next)
		}
	}
}

// The cautions that keep people alive stand on every answer.
func TestTipCautions(t *testing.T) {
	for _, b := range tipBranches {
		said := strings.Join(answer(t, "tip", unit.US, changed(b.changes)...).Cautions, " ")
		for _, want := range []string{"goes over sideways first", "raised load", "low, with the ballast on", "seat belt", "ballast may hang"} {
			if !strings.Contains(said, want) {
				t.Errorf("%s: no caution says %q", b.changes, want)
			}
		}
	}
}

// More pressure is never offered where it lifts nothing.
func TestTipSaysThatPressureIsNoHelp(t *testing.T) {
	a := answer(t, "tip", unit.US, "lift", "6000 lb")
	if a.Verdict.ID != "balance" || !strings.Contains(a.Verdict.Sentence, "more pressure lifts nothing more") || a.Figure("limit").Value != "balance" {
		t.Errorf("%+v", a.Verdict)
	}
	tipped := answer(t, "tip", unit.US, "hill", "25 °", "centre_h", "100 in", "load_h", "40 in")
	if got := tipped.Figure("tip_load").Text; got != "no load at all" || value(tipped, "tip_load") >= 0 {
		t.Errorf("tips with %q", got)
	}
	for id, want := range map[string]string{"rear_left": "none left", "rear_share": "none"} {
		if got := a.Figure(id).Text; got != want {
			t.Errorf("%s: %q", id, got)
		}
	}
}
