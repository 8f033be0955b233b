package post

import "plainlift/calc/unit"

// mostForOne is how many values are asked about for one field.
const mostForOne = 6

// settle weighs the items against one another: which are the two ends of the
// change, and of which there is more than one.
func (p *post) settle() {
	p.ratedLoad()
	p.ends(unit.Pressure, "before", "after")
	p.ends(unit.Load, "lift_before", "lift_after")
	p.rises()
	for _, field := range []string{"gained", "claimed"} {
		p.one(field)
	}
	p.ofPressure()
}

// with returns the items with the field, "" for those that have none, that are not dropped.
func (p *post) with(field string) []*item {
	var all []*item
	for i := range p.items {
		if it := &p.items[i]; it.field == field && !it.drop {
			all = append(all, it)
		}
	}
	return all
}

// only returns the one item with the field, nil when there are none or several.
func (p *post) only(field string) *item {
	if all := p.with(field); len(all) == 1 {
		return all[0]
	}
	return nil
}

// open returns the items of the kind that may stand at one end of the change:
// those of other machines only if there is nothing else.
func (p *post) open(kind unit.Kind) []*item {
	var mine, foreign []*item
	for _, it := range p.with("") {
		switch {
		case it.kind != kind || it.rise:
		case it.foreign:
			it.ask(askPlain)
			foreign = append(foreign, it)
		default:
			mine = append(mine, it)
		}
	}
	if len(mine) == 0 {
		return foreign
	}
	for _, it := range foreign {
		it.drop = true
	}
	return mine
}

// ends gives the items of the kind the field of the state before or after.
func (p *post) ends(kind unit.Kind, first, second string) {
	all := p.open(kind)
	var ends [2]*item // the first before, the first after
	var last *item    // the last with no end yet
	for _, it := range all {
		if says := p.sentenceOf(it); kind == unit.Load && it.role == 0 && says&(before|was|now) == now {
			it.role = after // "bales of 850 lb, and now they go up"
			it.ask(askPlain)
		}
		switch it.role {
		case 0:
			last = it
		default:
			if end := &ends[it.role>>1]; *end == nil { // before is 1, after 2
				*end = it
			}
		}
	}
	if a := ends[1]; ends[0] == nil && len(all) == 2 && last == nil && p.all&down != 0 && all[1].size() < a.size() {
		a.role, ends[0], ends[1] = before, a, all[1] // set to the one, now down to the other
		a.ask(askPlain)
		ends[1].ask(askPlain)
	}
	p.fill(all, ends, last)
	for _, it := range all {
		it.field = second
		if it.role == before {
			it.field = first
		}
		if it.drop {
			it.field = ""
		}
	}
	b, a := p.one(first), p.one(second)
	if b == nil && a != nil && len(p.with(first)) > 0 { // which one before is open, so the one after is too
		a.ask(askPlain)
	}
	if a == nil && b != nil && len(p.with(second)) > 0 {
		b.ask(askPlain)
	}
	switch {
	case b != nil && a != nil && !(a.size() > b.size()) && (p.all&down == 0 || a.size() == b.size()):
		b.ask(askFell)
		a.ask(askFell)
	case b != nil && a == nil && !b.firm && p.risen == 0:
		b.ask(askPlain)
	case a != nil && b == nil && !a.firm && p.risen == 0:
		a.ask(askPlain)
	}
}

// fill gives the items that the words leave open an end by the order of mention;
// last is the last of them.
func (p *post) fill(all []*item, ends [2]*item, last *item) {
	for i, it := range all {
		switch {
		case it.role != 0:
		case ends[0] == nil:
			it.role, ends[0] = before, it
			it.ask(askPlain)
		case it.at < ends[0].at && last.at > ends[0].at: // there is a likelier one behind
			it.drop = true
		case ends[1] == nil || ends[1].why != "" && !ends[1].firm:
			it.role = after
			if ends[1] == nil {
				ends[1] = it
			}
			it.ask(askPlain)
		case i > 0 && all[i-1].sentence == it.sentence:
			it.role = all[i-1].role // "2,300 cold and 2,250 hot": which?
		default:
			it.drop = true
		}
	}
}

// one keeps one item for each value of the field, asks for all when there are
// several values, and returns the item when there is but one.
func (p *post) one(field string) *item {
	var kept []*item
next:
	for _, it := range p.with(field) {
		for k, same := range kept {
			if same.x != it.x || same.high != it.high || same.unit != it.unit {
				continue
			}
			if same.why != "" && it.why == "" { // the one that is sure stays
				same, it, kept[k] = it, same, it
			}
			same.firm, it.drop = same.firm || it.firm, true
			continue next
		}
		if it.drop = len(kept) == mostForOne; !it.drop {
			kept = append(kept, it)
		}
	}
	if len(kept) == 1 {
		return kept[0]
	}
	for _, it := range kept {
		it.ask(askMany)
	}
	return nil
}

// rises makes of a rise the pressure at the end that is not known.
func (p *post) rises() {
	b, a := p.only("before"), p.only("after")
	known := len(p.with("before")) > 0 && len(p.with("after")) > 0
	seen := 0
	for i := range p.items {
		it := &p.items[i]
		if !it.rise || it.drop {
			continue
		}
		seen++
		switch {
		case known || seen > mostForOne:
			it.drop = true
		case b != nil && b.unit == it.unit:
			it.x, it.field = b.x+it.x, "after"
		case a != nil && a.unit == it.unit && a.x > it.x:
			it.x, it.field = a.x-it.x, "before"
		}
		it.high, it.why = it.x, askSum
		if it.field == "" {
			it.why = askRise
		}
	}
}

// ratedLoad drops the lift of a brochure, unless it is the only load that a gain
// can be held against.
func (p *post) ratedLoad() {
	needed := len(p.with("gained")) > 0
	for _, it := range p.with("") {
		needed = needed && (it.kind != unit.Load || it.foreign)
	}
	for _, it := range p.with("lift_before") {
		it.drop = !needed
	}
}

// ofPressure asks about a gain that is just what the pressures rose by, unless
// the words beside it say that it is of the lift.
func (p *post) ofPressure() {
	b, a, gain := p.only("before"), p.only("after"), p.only("claimed")
	if b == nil || a == nil || gain == nil || (gain.close|gain.next)&lifting != 0 {
		return
	}
	const near = 0.75 // percent, by which people round
	if rise := 100 * (a.size()/b.size() - 1); rise > gain.x-near && rise < gain.high+near {
		gain.ask(askOfPressure)
	}
}
