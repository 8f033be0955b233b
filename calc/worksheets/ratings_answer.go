package worksheets

import (
	"strconv"
	"strings"

	"plainlift/calc"
	"plainlift/calc/strength"
)

func computeRatings(in *calc.In, out *calc.Out) {
	for i := range ratingsFigures {
		out.None(ratingsFigures[i].ID, "not entered")
	}
	list, partly, ok := judgeParts(in, out)
	if !ok {
		return
	}
	now, target := in.SI("pressure"), in.SI("target")
	highest := max(now, target)
	out.Set("highest", highest)
	out.Set("peak", in.SI("spike")*highest)
	if in.Has("bore") {
		out.Set("push", strength.Area(0, in.SI("bore"))*target)
	}
	for _, j := range list {
		out.Set("allow_"+j.id, j.allow)
		out.Set("now_"+j.id, j.allow/now-1)
		out.Set("target_"+j.id, j.allow/target-1)
	}
	key, least := ratingsBranch(in, list, partly, now, target)
	switch {
	case least != nil:
		out.Text("weakest", least.weakID, least.called)
		out.Set("allow_weakest", least.allow)
		out.Set("margin_now", least.allow/now-1)
		out.Set("margin_target", least.allow/target-1)
		out.Set("spare", least.allow/highest-1)
	case len(list) > 0:
		for _, id := range []string{"weakest", "allow_weakest", "margin_now", "margin_target"} {
			out.None(id, "after you enter your own parts")
		}
	}
	out.Verdict(key)
	ratingsLines(in, out, list, key, least, highest)
	ratingsPicture(in, out, list, highest)
	ratingsRests(in, out, list)
	ratingsWorking(in, out, list)
	if in.Has("filter") && in.SI("filter") < 35e5 {
		out.Note("filter", -1, "A mark as low as this is of a suction or return filter, which sees none of this pressure: leave it out.")
	}
	out.Caution("limit", "skin", "leaks", "age", "arm", "technician", "warranty")
}

// ratingsBranch chooses the verdict, and the part it speaks of. The manual's limit
// goes before every part. Once anything is the reader's own, the example's parts
// and pressures neither condemn nor clear a machine.
func ratingsBranch(in *calc.In, list []*rated, partly bool, now, target float64) (string, *rated) {
	touched, whole := partly, !partly // whole: nothing of the example's is left
	see := func(id string) {
		if in.Has(id) {
			touched = touched || in.Own(id)
			whole = whole && in.Own(id)
		}
	}
	for _, id := range []string{"pressure", "target", "limit"} {
		see(id)
	}
	for _, j := range list {
		for _, id := range append(j.needs, j.also...) {
			see(id)
		}
	}
	mixed := touched && !whole
	least := lowest(list, mixed)
	past := func(pressure string) bool {
		return least != nil && least.allow < in.SI(pressure) && (!mixed || in.Own(pressure))
	}
	suffix := ""
	if least != nil && least.factor != "" {
		suffix = "-worked"
	}
	switch {
	case in.Has("limit") && now > in.SI("limit"):
		return "over-limit-now", least
	case in.Has("limit") && target > in.SI("limit"):
		return "over-limit", least
	case len(list) == 0:
		return "none", nil
	case past("pressure"):
		return "over-now" + suffix, least
	case past("target"):
		return "over-target" + suffix, least
	case mixed:
		return "yours", nil
	case !in.Has("limit"):
		return "no-limit", least
	case least.allow < in.SI("spike")*max(now, target):
		return "spike", least
	}
	return "holds", least
}

// ratingsLines says what is judged and what is not, and what goes with a branch.
func ratingsLines(in *calc.In, out *calc.Out, list []*rated, key string, least *rated, highest float64) {
	var names, others []string
	for i := range parts {
		if p := &parts[i]; among(list, p.id) {
			names = append(names, p.name)
		} else {
			others = append(others, p.name)
		}
	}
	out.Text("judged", strconv.Itoa(len(list)), calc.And(names))
	out.Text("not_judged", "", calc.And(append(others, "welds", "brackets", "seals")))
	more := in.SI("target") == highest && in.SI("pressure") < highest
	switch {
	case key == "spike":
		if more && least.allow < in.SI("spike")*in.SI("pressure") {
			out.Line("With such spikes it does so at {pressure} already.")
		}
		out.Line("Smoother driving takes spikes away; no setting does.")
	case strings.HasPrefix(key, "over-limit") && least != nil && least.allow < highest:
		out.Line("It is also more than the {weakest} is good for, {allow_weakest}.")
	}
	if key == "holds" && least.allow < 1.03*highest {
		out.Line("So little to spare may be less than the gauge is off: read it on a better one.")
	}
	if len(list) > 0 {
		out.Line("Judged: {judged}. Not judged: {not_judged}.")
	}
	if !in.Has("limit") && more && key != "no-limit" {
		out.Line(noEnd)
	}
}
