package worksheets

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// jobBranches are entries, as changes with "|" between, and what is said of them.
// The numbers are invented.
var jobBranches = []struct{ changes, id, head, says string }{
	{"grade=B", "rose-undecided", "Rose by 100 psi, probably in range",
		"it rose by 100 psi (84 to 116 psi, 95 %), from 2,610 to 2,710 psi. As left: probably in range, but this gauge can't show it"},
	{"found=2850 psi; 2840 psi; 2850 psi; 2860 psi|trials=0 in : 2850 psi; -0.010 in : 2800 psi; -0.020 in : 2745 psi|left=2735 psi; 2730 psi; 2740 psi; 2735 psi|grade=span|percent=0.5 %|scale=5000 psi|oil_found=50 degC|oil_left=55 degC|rpm_found=2400 rpm|rpm_left=2400 rpm",
		"fell-in-range", "Fell by 115 psi, in range", "t fell by 115 psi (101 to 129 psi, 95 %), from 2,850 to 2,735 psi. As left: in range"},
	{"same_gauge=no", "no-change", "No change shown", "the change is −30 to 230 psi (95 %), so none is shown. As left: probably in range"},
	{"left=2800 psi; 2810 psi; 2800 psi; 2810 psi", "over", "Over the limit: bring it down", "s left it reads 2,805 psi, over the manual's 2,790 psi, and the chance that it truly is over is 59 %"},
	{"left=2735 psi; 2730 psi; 2740 psi; 2735 psi|grade=2A", "rose-in-range", "Rose by 125 psi, in range", "As left: in range: the chance that the true pressure is between"},
	{"left=2640 psi; 2650 psi; 2640 psi; 2650 psi|grade=2A", "rose-low", "Rose by 35 psi, still low", "As left: low: the gauge shows 35 psi under the manual's 2,680 psi"},
	{"left=2640 psi; 2650 psi; 2640 psi; 2650 psi", "rose-undecided", "Rose by 35 psi, probably still low", "As left: probably low, but this gauge can't show it"},
	{"left=2690 psi; 2700 psi; 2690 psi; 2700 psi", "rose-undecided", "Rose by 85 psi", "As left: can't tell: a gauge good to ±80 psi showing 2,695 psi fits low (41 %) and in range (59 %)."},
	{"left=2735 psi; 2730 psi; 2740 psi; 2735 psi", "rose-maybe-over", "Rose by 125 psi, maybe now over the limit", "It may now be over the manual's 2,790 psi: the chance is 16 %, which is too much. Add nothing;"},
	{"low=|high=", "rose", "Rose by 100 psi", "from 2,610 to 2,710 psi. Enter the manual's range to judge where that is."},
	// With one limit only nobody knows of the other.
	{"high=|left=3900 psi; 3890 psi; 3900 psi; 3910 psi", "rose-not-low", "Rose by 1,290 psi, not low", "enter the manual's highest to see whether it is too high."},
	{"high=|found=3900 psi; 3890 psi; 3900 psi; 3910 psi|left=2900 psi; 2910 psi; 2900 psi; 2910 psi", "fell-not-low", "Fell by 995 psi, not low", ""},
	{"high=|found=2900 psi; 2890 psi; 2900 psi; 2910 psi", "fell-undecided", "Fell by 190 psi, probably not low", ""},
	{"low=|found=2900 psi; 2890 psi; 2900 psi; 2910 psi", "fell-not-high", "Fell by 190 psi, not high", "enter the manual's lowest to see whether it is low."},
	// Over the limit comes first, whatever it did.
	{"found=2800 psi; 2810 psi|left=2800 psi; 2810 psi|trials=", "over", "Over the limit: bring it down", "bring it down before anything else."},
	{"left=2780 psi; 2770 psi; 2800 psi; 2780 psi|grade=1A", "over", "Over the limit: bring it down", "s left it has read 2,800 psi, over the manual's 2,790 psi"},
	{"found=2790 psi|left=2791 psi|step=0 psi|grade=4A", "over", "Over the limit: bring it down", ""},
	// Within what the readings can show.
	{"left=2620 psi; 2610 psi; 2610 psi; 2620 psi", "no-change", "No change shown", "t read 2,610 as found and 2,615 psi as left: with what such readings may be off, the change is −10 to 20 psi (95 %), so none is shown. As left: probably low"},
	{"found=2610 psi|left=2620 psi|trials=", "no-change", "No change shown", "no further apart than the smallest step you can read"},
	{"found=2610 psi|left=2600 psi|trials=", "no-change", "No change shown", "no further apart than the smallest step you can read"},
	{"found=2735 psi; 2740 psi|left=2740 psi; 2735 psi|trials=", "no-change", "No change shown", "That leaves a chance of"},
	{"found=2735 psi; 2740 psi|left=2740 psi; 2735 psi|trials=|low=|high=", "no-change", "No change shown", "so none is shown."},
	// So few readings that no scatter is seen.
	{"found=2610 psi|left=2650 psi|trials=", "no-change", "No change shown", "a difference this small may be scatter alone"},
	{"found=2610 psi; 2610 psi|left=2630 psi|trials=|step=1 psi", "no-change", "No change shown", "a difference this small may be scatter alone"},
	{"found=2610 psi|left=2651 psi|trials=", "rose-undecided", "Rose by 41 psi, probably still low", "t rose by 41 psi (33 to 49 psi, 95 %, scatter not counted), from 2,610 to 2,651 psi."},
	{"found=2610 psi; 2610 psi; 2610 psi; 2610 psi|left=2630 psi; 2630 psi; 2630 psi; 2630 psi|trials=", "rose-undecided", "Rose by 20 psi, probably still low", "95 %)"},
	// The other way.
	{"found=2850 psi; 2840 psi; 2850 psi; 2860 psi|trials=|left=2735 psi; 2730 psi; 2740 psi; 2735 psi|grade=2A", "fell-in-range", "Fell by 115 psi, in range", "t fell by 115 psi (101 to 129 psi, 95 %), from 2,850 to 2,735 psi. As left: in range"},
	{"found=2850 psi; 2840 psi; 2850 psi; 2860 psi|trials=", "fell-undecided", "Fell by 140 psi, probably in range", ""},
	{"left=2500 psi; 2510 psi; 2500 psi; 2510 psi|trials=", "fell-low", "Fell by 105 psi, now low", "As left: low: the gauge shows 175 psi under"},
	{"found=2700 psi; 2710 psi; 2700 psi; 2710 psi|left=2640 psi; 2650 psi; 2640 psi; 2650 psi|trials=", "fell-undecided", "Fell by 60 psi, probably now low", ""},
	{"found=2850 psi; 2840 psi; 2850 psi; 2860 psi|left=2690 psi; 2700 psi; 2690 psi; 2700 psi|trials=", "fell-undecided", "Fell by 155 psi", ""},
	{"found=2900 psi; 2890 psi; 2900 psi; 2910 psi|left=2780 psi; 2770 psi; 2780 psi; 2770 psi|trials=", "fell-maybe-over", "Fell by 125 psi, maybe still over the limit", "It may still be over the manual's 2,790 psi: the chance is 41 %"},
	{"found=2900 psi; 2890 psi; 2900 psi; 2910 psi|trials=|low=|high=", "fell", "Fell by 190 psi", ""},
}

func TestJobBranches(t *testing.T) {
	for _, b := range jobBranches {
		v := answer(t, "job", unit.US, changed(b.changes)...).Verdict
		if v.ID != b.id || v.Head != b.head || !strings.Contains(v.Sentence, b.says) {
			t.Errorf("%s:\ngot  %s · %s · %s\nwant %s · %s · … %s", b.changes, v.ID, v.Head, v.Sentence, b.id, b.head, b.says)
		}
	}
}

func TestJobRemarks(t *testing.T) {
	for _, test := range []struct{ changes, says, not string }{
		{"grade=B", "3.8 % more pressure lifts 3.8 % more at least; it won't raise faster.", "over the manual's"},
		{"grade=B", "By the trials the shim is worth 45 psi per 0.010 in.", "Two gauges"},
		{"trials=", "", "By the trials"},
		{"trials=0.010 in : 2,600 psi", "the pressure did not follow the shim", "By the trials"},
		{"trials=0.010 in : 2,660 psi; 0.030 in : 2,800 psi; 0.020 in : 2,700 psi", "With a total of 0.030 in it read 2,800 psi, over the manual's 2,790 psi", ""},
		{"trials=0.010 in : 2,660 psi; 0.030 in : 2,800 psi; 0.020 in : 2,700 psi", "trials: 0.020 in more than the row above. Over the manual's 2,790 psi", ""},
		{"trials=0.010 in : 2,660 psi; 0.030 in : 2,800 psi; 0.020 in : 2,700 psi", "trials: 0.010 in less than the row above: right where shim came out.", ""},
		{"trials=0 in : 2,640 psi; 0.010 in : 2,690 psi", "trials: No shim changed since as found: only what else was done shows here", ""},
		{"trials=0 in : 2,640 psi", "", "y the trials"},
		{"found=2,850; 2,860 psi|trials=-0.010 in : 2,800 psi; -0.020 in : 2,750 psi", "By the trials the shim is worth 52 psi per 0.010 in.", "No shim changed"},
		{"found=2,850; 2,860 psi|trials=-0.010 in : 2,800 psi; -0.020 in : 2,750 psi", "trials: 0.010 in less than as found", ""},
		{"left=2,780; 2,770; 2,800; 2,780 psi", "left: Over the manual's 2,790 psi", "lifts"},
		{"left=2,800; 2,810; 2,800; 2,810 psi", "It rose by 195 psi", "lifts"},
		{"trials=0.010 in : 2,660 psi", "left: The last trial read 2,660 psi: was that shim left in?", ""},
		{"grade=B", "", "was that shim left in?"},
		{"same_gauge=no", "read both times on one, and most of that drops out.", "lifts"},
		{"same_gauge=no", "99 % is what the gauge is off", "One gauge read it all"},
		{"high=", noEnd, ""},
		{"low=|high=", "", noEnd},
		{"found=2800 psi; 2810 psi|left=2800 psi; 2810 psi|trials=", "No change from as found is shown.", "rose"},
		{"low=", "As left: not high: the chance that the true pressure is at or below 2,790 psi is 98 %; enter the manual's lowest", noEnd},
		{"found=2,200; 2,210 psi", farApart, ""},
		{"found=2,200; 2,210 psi|same_gauge=no", "", farApart},
		{"found=2,600; 2,700; 2,610; 2,620 psi", "found: They differ by far more than the step", ""},
		{"found=2610 psi|left=2710 psi", "One reading each says nothing of how readings scatter", ""},
		{"found=2610 psi", "With 1 as found and 4 as left the scatter is hardly known.", ""},
		{"grade=B", "", "Take four or more"},
		{"oil_found=120 °F|oil_left=50 °C", "The oil was at 120 °F as found and 122 °F as left: part of the change may come from that (common practice, no source).", "Cold oil"},
		{"oil_found=120 °F|oil_left=120 °F", "", "part of the change"},
		{"oil_found=120 °F", "", "part of the change"},
		{"oil_left=20 °C", "oil_left: Cold oil reads higher", ""},
		{"rpm_found=2,400|rpm_left=2,500", "The engine ran at 2,400 rpm as found and 2,500 rpm as left: part of the change may come from that", ""},
		{"found=2610 psi|left=2710 psi|step=0 psi", "Nothing entered leaves any doubt in the change.", ""},
	} {
		a := answer(t, "job", unit.US, changed(test.changes)...)
		all := a.Verdict.Sentence + "\n" + texts(a)
		if !strings.Contains(all, test.says) || test.not != "" && strings.Contains(all, test.not) {
			t.Errorf("%s: want %q and not %q in\n%s", test.changes, test.says, test.not, all)
		}
	}
}

func TestJobProblems(t *testing.T) {
	for _, test := range []struct {
		changes, field string
		row            int
	}{
		{"found=2600 psi; 4100 psi", "found", 1},
		{"left=4100 psi; 2700 psi", "left", 0},
		{"trials=0.010 in : 4100 psi", "trials", 0},
		{"low=2800 psi", "high", -1},
		{"found=", "found", -1},
		{"left=", "left", -1},
		{"grade=of-reading|percent=30 %", "percent", -1},
	} {
		a := All.Evaluate("job", owned(changed(test.changes)...), unit.US)
		if len(a.Problems) != 1 || a.Problems[0].Field != test.field || a.Problems[0].Row != test.row {
			t.Errorf("%s: %+v", test.changes, a.Problems)
		}
	}
}

// jobPsi is a figure in psi.
func jobPsi(a *calc.Answer, id string) float64 { return value(a, id) / psiPa }

// The change against arithmetic that stands beside it.
func TestJobFigures(t *testing.T) {
	t975 := map[int]float64{3: 3.182446, 6: 2.446912} // JCGM 100:2008, Table G.2 (read), with more digits
	triangle := 10 * (1 - math.Sqrt(0.05))            // 95 % of the sum of two ±5
	for _, test := range []struct {
		changes, figure string
		want, tol       float64
		by              string
	}{
		{"grade=B", "change", 100, 1e-6, "2,710 − 2,610"},
		{"grade=B", "change_pct", 100 / 2610.0 * 1 / psiPa, 1e-9, "of the pressure as found"},
		{"step=0 psi", "change_hi", 100 + t975[6]*math.Sqrt(200/3.0)*math.Sqrt(2/4.0), 1e-4, "t of six degrees: two series of four with s² = 200/3"},
		{"step=0 psi|found=2610 psi", "change_hi", 100 + t975[3]*math.Sqrt(200/3.0)*math.Sqrt(1+1/4.0), 1e-4, "one reading scatters as the four do"},
		{"found=2610 psi|left=2710 psi", "change_lo", 100 - triangle, 1e-4, "a triangle of ±10"},
		{"found=2610 psi|left=2710 psi|same_gauge=no|step=0 psi", "change_lo", 100 - 160*(1-math.Sqrt(0.05)), 1e-4, "a triangle of ±160: two gauges good to ±80"},
		{"found=2000 psi|left=2200 psi|step=0 psi|grade=of-reading|percent=3 %", "change_hi", 200 + 0.95*0.03*200, 1e-4, "a share of the reading is that share of the change, too"},
		{"found=900 psi|left=1100 psi|step=0 psi", "change_hi", 200 + 0.95*40, 1e-4, "grade B: ±120 under a quarter of the dial, ±80 above (from memory); 40 is left"},
		{"grade=B", "rate", 45 / (0.010 * 0.0254), 1e-3, "least squares through 0, 2,610; 10, 2,660; 20, 2,700 thou, psi"},
		{"grade=B", "fitted", 0.020 * 0.0254 / psiPa, 1e-12, "the last row"},
	} {
		a := answer(t, "job", unit.US, changed(test.changes)...)
		if got := jobPsi(a, test.figure); !scalar.EqualWithinAbs(got, test.want, test.tol) {
			t.Errorf("%s: %s = %v, want %v (%s)", test.changes, test.figure, got, test.want, test.by)
		}
	}
}

// As left is judged as the page of readings judges the same readings.
func TestJobJudgesAsReadingDoes(t *testing.T) {
	for _, changes := range []string{"", "2,735; 2,730; 2,740 psi", "2,640 psi", "2,600; 2,610; 2,590; 2,600 psi", "2,779; 2,781 psi"} {
		if changes == "" {
			changes = "2,710; 2,700; 2,710; 2,720 psi"
		}
		here, there := answer(t, "job", unit.US, "left", changes), answer(t, "reading", unit.US, "readings", changes)
		for _, id := range []string{"p_below", "p_within", "p_above", "lo", "hi"} {
			if value(here, id) != value(there, id) {
				t.Errorf("%s: %s is %v here, %v there", changes, id, value(here, id), value(there, id))
			}
		}
		_, judged, _ := strings.Cut(there.Verdict.Sentence, ": ")
		if i := strings.Index(judged, "it reads"); i < 0 && !strings.Contains(here.Verdict.Sentence, judged) && value(here, "p_above") <= mostOver {
			t.Errorf("%s: %q, not in %q", changes, judged, here.Verdict.Sentence)
		}
	}
}

// A job of random readings.
type randomJob struct {
	found, left []string
	gauge       string
	same        string
}

func newJob(r *rand.Rand) randomJob {
	list := func(at float64) []string {
		x := make([]string, 1+r.IntN(6))
		for i := range x {
			x[i] = strconv.Itoa(int(at+15*r.NormFloat64())) + " psi"
		}
		return x
	}
	grades := []string{"1.6", "B", "2A", "not-marked"}
	return randomJob{list(2400 + 400*r.Float64()), list(2400 + 400*r.Float64()), grades[r.IntN(len(grades))], []string{"yes", "no"}[r.IntN(2)]}
}

func (j randomJob) answer(t *testing.T) *calc.Answer {
	return answer(t, "job", unit.US, "found", strings.Join(j.found, "; "), "left", strings.Join(j.left, "; "),
		"grade", j.gauge, "same_gauge", j.same, "trials", "")
}

// What the verdict says is what the figures say, and: turned round the change
// turns its sign; a common error drops out; with the same readings both times
// there is none; more readings leave no more doubt.
func TestJobProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	seen := map[string]int{}
	for range 400 {
		j := newJob(r)
		a := j.answer(t)
		what := fmt.Sprint(j)
		seen[a.Verdict.ID]++
		lo, hi, change := value(a, "change_lo"), value(a, "change_hi"), value(a, "change")
		rise := value(a, "p_rise")
		few := math.IsNaN(rise) // no scatter to be seen
		way, _, _ := strings.Cut(a.Verdict.ID, "-")
		var ok bool
		switch way {
		case "over":
			ok = jobPsi(a, "left_most") > 2790.5
		case "no":
			ok = lo <= 0 && hi >= 0 || math.Abs(change) <= 10*psiPa*(1+1e-6) || few && math.Abs(change) <= 40*psiPa*(1+1e-6)
		case "rose":
			ok = lo > 0 && (rise >= 0.975-1e-9 || few && change > 40*psiPa)
		case "fell":
			ok = hi < 0 && (rise <= 0.025+1e-9 || few && change < -40*psiPa)
		}
		if !ok || way != "over" && jobPsi(a, "left_most") > 2790.5 {
			t.Errorf("%s: %s with %v from %v to %v", what, a.Verdict.ID, change, lo, hi)
		}
		if risk := value(a, "p_above") > mostOver; risk && way != "over" && !strings.Contains(a.Verdict.Sentence, "too much") {
			t.Errorf("%s: %s, and nothing said of it", what, a.Verdict.Sentence)
		}
		back := randomJob{j.left, j.found, j.gauge, j.same}.answer(t)
		for id, of := range map[string]string{"change": "change", "change_lo": "change_hi", "change_hi": "change_lo"} {
			if !scalar.EqualWithinAbs(value(back, id), -value(a, of), 1e-6*psiPa) {
				t.Errorf("%s: turned round %s is %v, not −(%v)", what, id, value(back, id), value(a, of))
			}
		}
		if !few && !scalar.EqualWithinAbs(value(back, "p_rise"), 1-rise, 1e-9) {
			t.Errorf("%s: p_rise %v and, turned round, %v", what, rise, value(back, "p_rise"))
		}
		none := randomJob{j.found, j.found, j.gauge, j.same}.answer(t)
		if id := none.Verdict.ID; id != "no-change" && id != "over" {
			t.Errorf("%s: the same readings both times give %s", what, id)
		}
		one := randomJob{j.found, j.left, "4A", "yes"}.answer(t)
		if same := (randomJob{j.found, j.left, "not-marked", "yes"}).answer(t); !scalar.EqualWithinAbs(value(same, "change_lo"), value(one, "change_lo"), 1e-6*psiPa) {
			t.Errorf("%s: on one gauge the change hangs on how good it is", what)
		}
		twice := randomJob{append(j.found, j.found...), append(j.left, j.left...), j.gauge, j.same}.answer(t)
		if wide := value(twice, "change_hi") - value(twice, "change_lo"); len(j.found) > 1 && len(j.left) > 1 && wide > (hi-lo)*(1+1e-9) {
			t.Errorf("%s: twice the readings widen the doubt from %v to %v", what, hi-lo, wide)
		}
	}
	for _, id := range []string{"over", "no-change", "rose-undecided", "rose-maybe-over", "fell-undecided", "fell-low"} {
		if seen[id] == 0 {
			t.Errorf("no job of random readings gave %s: %v", id, seen)
		}
	}
}

// The range against trials of the model as its words have it: the gauge's error
// one and the same both times or one for each, a step for each, normal scatter
// about means known by t (JCGM 101:2008, 6.4.9).
func TestJobAgainstTrials(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 24))
	student := func(dof int) float64 { // a normal over the root of its own estimate's χ²/ν
		sum := 0.0
		for range dof {
			z := r.NormFloat64()
			sum += z * z
		}
		return r.NormFloat64() / math.Sqrt(sum/float64(dof))
	}
	within := func(a float64) float64 { return a * (2*r.Float64() - 1) }
	for _, same := range []string{"yes", "no"} {
		a := ask(t, "job", "same_gauge", same)
		if !strings.Contains(a.Check, "the closed form agrees") {
			t.Errorf("%s: %s", same, a.Check)
		}
		trials := make([]float64, 200_000)
		for i := range trials {
			off := within(80)
			found := 2610 - off - within(5)
			if same == "no" {
				off = within(80)
			}
			trials[i] = 2710 - off - within(5) - found + math.Sqrt(200/3.0)*math.Sqrt(1/4.0+1/4.0)*student(6)
		}
		lo, _, hi := central(trials)
		if !scalar.EqualWithinAbs(jobPsi(a, "change_lo"), lo, 0.01*(hi-lo)) || !scalar.EqualWithinAbs(jobPsi(a, "change_hi"), hi, 0.01*(hi-lo)) {
			t.Errorf("%s: %v to %v, trials give %v to %v", same, jobPsi(a, "change_lo"), jobPsi(a, "change_hi"), lo, hi)
		}
	}
}

// What was left goes on as the pressure now, with the gauge and the range.
func TestJobCarries(t *testing.T) {
	for _, grade := range []string{"1.6", gradeOfScale, gradeOfReading} {
		a := ask(t, "job", "found", "2500 psi", "left", "2600 psi; 2610 psi", "scale", "3000 psi", "grade", grade, "percent", "3 %", "low", "2550 psi", "high", "2650 psi", "trials", "")
		for _, n := range a.Next {
			b := All.Evaluate(n.ID, calc.FromLink(n.Link), unit.US)
			want := map[string][2]any{"gain": {"now", 2605.0}, "shim": {"now", 2605.0}, "reading": {"mean", 2605.0}, "before-after": {"before", 2605.0}}[n.ID]
			id := want[0].(string)
			got := math.NaN()
			if f := b.Figure(id); f != nil {
				got = jobPsi(b, id)
			} else {
				for _, f := range b.Fields {
					if v, err := unit.Parse(f.Canonical, unit.Pressure, unit.Unit{}, unit.US); f.ID == id && err == nil {
						got = v.SI / psiPa
					}
				}
			}
			if !scalar.EqualWithinAbs(got, want[1].(float64), 0.01) {
				t.Errorf("%s: %s of %s arrives as %v", grade, id, n.ID, got)
			}
			if n.ID == "reading" && !scalar.EqualWithinRel(value(b, "a"), value(a, "a"), 1e-6) {
				t.Errorf("%s: ±%v psi arrives as ±%v", grade, jobPsi(a, "a"), jobPsi(b, "a"))
			}
		}
	}
}
