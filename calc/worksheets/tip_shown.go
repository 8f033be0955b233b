package worksheets

import (
	"math"
	"slices"
	"strings"

	"plainlift/calc"
	"plainlift/calc/balance"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// lines are the sentences under the verdict.
func (t *tipping) lines(out *calc.Out) {
	if t.branch == "tipping" || strings.HasPrefix(t.branch, "backwards") {
		return
	}
	switch {
	case t.branch == "light-empty" || t.branch == "light" || t.branch == "axle-now":
	case t.plan <= 0:
		out.Line("Even with no load less than the {keep} to keep is on the rear axle: it needs ballast before it lifts anything.")
	case t.plan < min(t.lift, t.safe) && t.branch != "front-axle":
		out.Line("Plan for no more than {plan}: that is all the front axle may carry.")
	case t.plan < t.lift && t.plan == t.safe:
		out.Line("Plan for no more than {plan}: that leaves {keep} of the weight on the rear axle.")
	case t.branch == "hydraulics" && !(t.kept() >= tippingSure):
		out.Line("Only just: with what weights, lengths and lift are good to, less than {keep} may be left. {safe_load} is the load that leaves it.")
	}
	needed := t.BallastForShare(t.keep, t.lift)
	switch {
	case math.IsInf(needed, 1):
		out.Line("No ballast at that place keeps {keep} on the rear axle at {lift}.")
	case needed > t.Ballast:
		out.Line("{ballast_needed} of ballast in all, {ballast_x} behind the rear axle, would keep {keep} there at {lift}" + t.tooMuch(needed, "; a load nearer the front axle needs less"))
	}
	if t.RearAxle(t.lift) < ruleRear*(t.Front+t.Rear) && t.Hill == 0 {
		out.Line("Several operator's manuals ask for 45 % of the unladen weight on the rear axle, {rule_rear} here: that takes {rule_ballast} of ballast in all" + t.tooMuch(t.BallastForAxle(ruleRear*(t.Front+t.Rear), t.lift), ""))
	}
	if t.FrontAxle(0) < ruleFront*(t.Front+t.Rear) {
		out.Line("With no load the front axle carries only {front_empty}; the manuals' rule asks for 20 % of the unladen weight, {rule_front}, to steer and brake by.")
	}
	if len(t.ends) < 3 {
		out.Line("Whether the front axle bears its share is not judged: enter its rating.")
	}
}

// tooMuch ends a sentence on ballast: with what so much of it does to the front
// axle once the load is off, else as given.
func (t *tipping) tooMuch(ballast float64, end string) string {
	with := t.Machine
	with.Ballast = ballast
	switch front := with.FrontAxle(0); {
	case front <= 0:
		end = ", but with the load off that lifts the front wheels: carry less, or nearer, instead"
	case front < ruleFront*(t.Front+t.Rear):
		end = ", but with the load off that leaves less on the front axle than the manuals' 20 %: carry less, or nearer, instead"
	}
	return end + "."
}

func (t *tipping) rests(out *calc.Out) {
	if t.Hill == 0 {
		out.Rest("Level, firm ground, everything at rest: nothing brakes, turns, bounces or hits a hole. The weight to keep on the rear axle is there for that.")
	} else {
		out.Rest("A slope of {hill} straight up or down, taken as exact, and everything at rest: nothing brakes, turns, bounces or hits a hole. The axle loads are those square to the ground. The manuals' rule is for level ground.")
		out.Rest("The ballast's centre is as high as the tractor's.")
	}
	out.Rest("The axle loads are those with arms and tool out where the load is; {front} and {rear} are taken as the unladen weight in the manuals' rule.")
	out.Rest("{lift} is the most that the pressure lifts with the load that far out. Prying or curling at the ground can pull harder than that, and lift the rear wheels all the same.")
	out.Rest("The manuals' rule, 45 % of the unladen weight on the rear axle and 20 % on the front, is second-hand: several operator's manuals have it. {keep} of the whole weight is common practice, no source, unless you chose it.")
	out.Rest("Wheel loaders are rated at half of their tipping load with a bucket (ISO 14397-1, as an operator's manual quotes it): here {half_tip}.")
	var budget doubt.Budget
	var limits []string
	for k, x := range t.Spread(t.within, (*balance.Machine).TipLoad) {
		k := balance.Measure(k)
		switch {
		case x == 0:
			continue
		case k.IsWeight():
			limits = append(limits, "±{weigh_err}")
		default:
			limits = append(limits, "±{tape}")
		}
		budget = append(budget, doubt.Source{Name: k.String(), U: doubt.Rect(math.Abs(x)), Sens: 1, DOF: math.Inf(1)})
	}
	out.Set("largest", 0)
	if u := budget.U(); !(u > 0) || math.IsInf(u, 1) || math.IsInf(t.ends[1].load, 0) {
		return
	}
	shares := budget.Shares()
	i := slices.Index(shares, slices.Max(shares))
	out.Set("largest", shares[i])
	out.Rest("Of the doubt in what lifts the rear wheels, {largest} is the " + budget[i].Name + ".")
	out.Budget(unit.Load, budget, limits)
}

func (t *tipping) working(out *calc.Out) {
	const front = "Moments about the front wheels' contact with the ground (textbook statics)"
	out.Step("tractor's centre behind the front axle = rear × wheelbase ÷ (front + rear)", "{rear} × {wheelbase} ÷ ({front} + {rear}) = {centre_x}", front)
	if t.Hill == 0 {
		out.Step("arm of the ballast = wheelbase + its distance", "{wheelbase} + {ballast_x} = {arm_ballast}", "Geometry")
	} else {
		out.Step("arm on the slope = distance × cos − height × sin of the slope, the load's with a plus", "tractor {arm_centre}, ballast {arm_ballast}, load {arm_load}", "Geometry; the slope is positive nose downhill")
	}
	const weights = "({front} + {rear}) × {arm_centre} + {ballast} × {arm_ballast}"
	out.Step("rear wheels lift at = (tractor × its arm + ballast × its arm) ÷ arm of the load", "("+weights+") ÷ {arm_load} = {tip_load}",
		front+"; tipping load as AS ISO 14397.1:2021, 3.2, defines it (read)")
	if t.RearAxle(t.lift) >= 0 {
		out.Step("rear axle = (tractor × its arm + ballast × its arm − load × its arm) ÷ wheelbase", "("+weights+" − {lift} × {arm_load}) ÷ {wheelbase} = {rear_left}", front)
		across := " − "
		if t.Hill != 0 {
			across = " × cos of the slope − "
		}
		out.Step("front axle = all there is"+across+"rear axle", "({total} + {lift})"+across+"{rear_left} = {front_load}", "Nothing is lost")
	}
	out.Step("safe load: rear axle = share to keep × (all there is + load), solved for the load", "with {keep}: {safe_load}", "The same line; the share is common practice, no source")
	out.Step("ballast: the same, solved for the ballast at its place", "with {keep} at {lift}: {ballast_needed}", "The same")
	if len(t.ends) > 2 {
		out.Step("front axle's limit: front axle = its rating, solved for the load", "with {front_rating}: {axle_limit}", "The same")
	}
	out.Step("manuals' rule: rear axle at least 45 % of front + rear, the ballast for it at full lift", "0.45 × ({front} + {rear}) = {rule_rear}; ballast {rule_ballast}",
		"Several operator's manuals (second-hand)")
	out.Step("chance that what comes first truly does", "{limit}: {p_first}", "Every measure anywhere within its ±, one without regard to the other (JCGM 100:2008, 4.3.7; JCGM 101:2008)")
}
