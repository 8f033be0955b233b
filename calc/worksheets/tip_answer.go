package worksheets

import (
	"math"
	"strconv"

	"plainlift/calc"
	"plainlift/calc/balance"
)

// The operator's manuals' rule, as parts of the unladen weight (second-hand).
const (
	ruleRear  = 0.45
	ruleFront = 0.20
)

// tippingSure is the chance from which on one thing is said to come before
// another.
const tippingSure = 0.95

// ending is one way in which lifting can come to its end.
type ending struct {
	id, name, words string  // words are what happens, for sentences
	load            float64 // with which it does, N
}

// tipping is a machine as entered, with what the answer hangs on.
type tipping struct {
	balance.Machine
	within        balance.Limits
	lift, liftErr float64
	keep          float64
	rating        float64  // of the front axle, NaN where it is not known
	ends          []ending // the hydraulics, the balance and, where it is rated, the front axle
	first         *ending  // what comes first by the numbers
	next          *ending  // what is likeliest to come before it after all
	chance        float64  // that the first does come first, at least
	safe          float64  // load that leaves the share to keep, N
	plan          float64  // load that does so with the front axle within its rating, N
	branch        string   // the verdict's
}

func computeTip(in *calc.In, out *calc.Out) {
	t := &tipping{
		Machine: balance.Machine{
			Front: in.SI("front"), Rear: in.SI("rear"), Wheelbase: in.SI("wheelbase"), Reach: in.SI("axle_reach"),
			Ballast: in.SI("ballast"), BallastX: in.SI("ballast_x"), Hill: in.SI("hill"),
		},
		within: balance.Limits{Weight: in.SI("weigh_err"), Length: in.SI("tape")},
		lift:   in.SI("lift"), liftErr: in.SI("lift_err") * in.SI("lift"),
		keep: in.SI("keep"), rating: in.SI("front_rating"),
	}
	if !t.heights(in, out) {
		return
	}
	t.order()
	t.judge()
	t.figures(out)
	out.Verdict(t.branch)
	t.lines(out)
	t.sideView(in, out)
	t.seesaw(in, out)
	t.rests(out)
	t.working(out)
	out.Caution("low", "raised", "sideways", "axles", "belt", "limit", "arm", "technician")
}

// heights reads what bears on a slope alone, and must be there on one.
func (t *tipping) heights(in *calc.In, out *calc.Out) (ok bool) {
	ok = true
	for _, id := range []string{"centre_h", "load_h"} {
		switch {
		case t.Hill == 0:
			out.Unused(id)
		case !in.Has(id):
			out.Problem(id, "Needed on a slope: a height above the ground, such as 34 in or 860 mm")
			ok = false
		}
	}
	if ok && t.Hill != 0 {
		t.CentreH, t.LoadH = in.SI("centre_h"), in.SI("load_h")
	}
	return ok
}

// order finds what comes first, and how sure that is.
func (t *tipping) order() {
	t.ends = []ending{
		{"hydraulics", "the hydraulics", "the relief opens at {lift}", t.lift},
		{"balance", "the balance", "the rear wheels lift at {tip_load}", t.TipLoad()},
	}
	t.safe = t.SafeLoad(t.keep)
	t.plan = t.safe
	down := t.sure(t.liftErr, func(m *balance.Machine, more float64) float64 { return m.RearAxle(t.lift + more) })
	sooner := [3][3]float64{0: {1: down}, 1: {0: 1 - down}} // chance that one comes before the other
	if !math.IsNaN(t.rating) {
		limit := t.AxleLimit(t.rating)
		t.ends = append(t.ends, ending{"front-axle", "the front axle", "the front axle is at its rating with {axle_limit}", limit})
		t.plan = min(t.plan, limit)
		within := t.sure(t.liftErr, func(m *balance.Machine, more float64) float64 { return t.rating - m.FrontAxle(t.lift+more) })
		full := t.sure(0, func(m *balance.Machine, _ float64) float64 {
			if x := m.AxleLimit(t.rating); !math.IsInf(x, 1) {
				return m.RearAxle(x)
			}
			return -t.rating // on such a slope neither comes
		})
		sooner[0][2], sooner[2] = within, [3]float64{1 - within, full}
		sooner[1][2] = 1 - full
	}
	first, likeliest := 0, -1.0
	for i := range t.ends {
		if t.ends[i].load < t.ends[first].load {
			first = i
		}
	}
	t.first, t.chance = &t.ends[first], 1
	for i := range t.ends {
		if p := 1 - sooner[first][i]; i != first {
			t.chance -= p
			if p > likeliest {
				likeliest, t.next = p, &t.ends[i]
			}
		}
	}
	t.chance = max(t.chance, 0)
}

// sure returns the chance that something is truly above 0, with what weights and
// lengths are good to and, besides, more load up to ±load (N). All of it is
// asked in a way that is straight, or nearly, in every measure.
func (t *tipping) sure(load float64, above0 func(m *balance.Machine, more float64) float64) float64 {
	spread := t.Spread(t.within, func(m *balance.Machine) float64 { return above0(m, 0) })
	own := math.Abs(above0(&t.Machine, load)-above0(&t.Machine, -load)) / 2
	return 1 - spread.Sum(above0(&t.Machine, 0), own).Dist().CDF(0)
}

// kept is the chance that the share to keep is truly left at full lift.
func (t *tipping) kept() float64 {
	return t.sure(t.liftErr, func(m *balance.Machine, more float64) float64 {
		load := t.lift + more
		return m.RearAxle(load) - t.keep*(m.Total()+load)*math.Cos(m.Hill)
	})
}

// judge chooses the branch.
func (t *tipping) judge() {
	switch {
	case t.Hold() <= 0:
		t.branch = "tipping"
	case t.FrontAxle(0) <= 0:
		t.branch = "backwards"
	case t.RearAxle(t.lift) > 0 && t.FrontAxle(t.lift) <= 0: // a load behind the front wheels, on a slope
		t.branch = "backwards-load"
	case t.first.load <= 0: // the front axle's, as nothing else is left
		t.branch = "axle-now"
	case !(t.chance >= tippingSure):
		t.branch = "close"
	case t.first.id != "hydraulics":
		t.branch = t.first.id
	case t.safe <= 0:
		t.branch = "light-empty"
	case t.safe < t.lift:
		t.branch = "light"
	default:
		t.branch = "hydraulics"
	}
}

// figures sets all of them.
func (t *tipping) figures(out *calc.Out) {
	// worked sets a figure that the machine gives, with the half-width that rounds it.
	worked := func(id string, of func(*balance.Machine) float64, never string) {
		x := of(&t.Machine)
		half := t.Spread(t.within, of).HalfWidth()
		switch {
		case math.IsInf(x, 0):
			out.None(id, never)
		case x < 0: // the number stays for a program; nobody may read it as a load
			out.Text(id, number(x), "no load at all")
		case half < math.Abs(x):
			out.SetDoubt(id, x, half)
		default:
			out.Set(id, x)
		}
	}
	const noLoad = "no load tips it forward on this slope"
	worked("tip_load", (*balance.Machine).TipLoad, noLoad)
	worked("half_tip", func(m *balance.Machine) float64 { return m.TipLoad() / 2 }, noLoad)
	worked("safe_load", func(m *balance.Machine) float64 { return m.SafeLoad(t.keep) }, noLoad)
	worked("axle_limit", func(m *balance.Machine) float64 { return m.AxleLimit(t.rating) }, "no load on this slope")
	worked("plan", func(m *balance.Machine) float64 {
		if len(t.ends) > 2 {
			return min(m.SafeLoad(t.keep), m.AxleLimit(t.rating))
		}
		return m.SafeLoad(t.keep)
	}, noLoad)
	if len(t.ends) < 3 {
		out.None("axle_limit", "its rating is not entered")
	}
	t.tipRange(out)

	worked("rear_left", func(m *balance.Machine) float64 { return m.RearAxle(t.lift) }, "")
	worked("front_load", func(m *balance.Machine) float64 { return m.FrontAxle(t.lift) }, "")
	worked("front_empty", func(m *balance.Machine) float64 { return m.FrontAxle(0) }, "")
	out.Set("rear_share", t.RearShare(t.lift))
	rear, front, none, all := number(t.RearAxle(t.lift)), number(t.FrontAxle(t.lift)), "none left", "all of it"
	switch {
	case t.RearAxle(t.lift) < 0:
		out.Text("rear_left", rear, none)
		out.Text("front_load", front, all)
		out.None("rear_share", "none")
	case t.FrontAxle(t.lift) < 0:
		out.Text("rear_left", rear, all)
		out.Text("front_load", front, none)
		out.None("rear_share", "all of it")
	}

	unladen := t.Front + t.Rear
	out.Set("rule_rear", ruleRear*unladen)
	out.Set("rule_front", ruleFront*unladen)
	share := func(m *balance.Machine) float64 { return m.BallastForShare(t.keep, t.lift) }
	rule := func(m *balance.Machine) float64 {
		level := *m
		level.Hill = 0
		return level.BallastForAxle(ruleRear*unladen, t.lift)
	}
	for id, ballast := range map[string]func(*balance.Machine) float64{"ballast_needed": share, "rule_ballast": rule} {
		worked(id, ballast, "no weight at that place is enough")
		if ballast(&t.Machine) == 0 {
			out.Text(id, "0", "none needed")
		}
	}

	out.Set("total", t.Total())
	arms, level := t.Arms(), t.Machine
	level.Hill = 0
	out.Set("centre_x", level.Arms().Centre)
	out.Set("arm_centre", arms.Centre)
	out.Set("arm_ballast", arms.Ballast)
	out.Set("arm_load", arms.Load)

	out.Set("p_first", t.chance)
	out.Text("limit", t.first.id, t.first.name)
	switch t.branch {
	case "backwards", "backwards-load":
		out.Text("limit", "balance", "it goes over backwards")
	case "close":
		out.Text("limit", t.first.id, "too close to call; by the numbers "+t.first.name)
	}
	out.Text("first_words", "", out.Words(t.first.words))
	out.Text("next_words", "", out.Words(t.next.words))
}

// tipRange sets between which loads the rear wheels truly lift.
func (t *tipping) tipRange(out *calc.Out) {
	x, spread := t.TipLoad(), t.Spread(t.within, (*balance.Machine).TipLoad)
	if half := spread.HalfWidth(); !(half < x/3) { // so much that it is no longer straight, or no number at all
		out.None("tip_lo", "too much in doubt to say")
		out.None("tip_hi", "too much in doubt to say")
	} else {
		lo, hi := spread.Sum(x, 0).Dist().Interval(0.95)
		out.SetDoubt("tip_lo", lo, half)
		out.SetDoubt("tip_hi", hi, half)
	}
}

// number is a value as a program reads it.
func number(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
