package post

import (
	"slices"

	"plainlift/calc/unit"
)

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
	if !p.quoted {
		return
	}
	for i := range p.items {
		if it := &p.items[i]; it.field != "" {
			it.why = askQuoted
		}
	}
}

// live returns the items of the kind that may be readings or loads at one end.
func (p *post) live(kind unit.Kind) []*item {
	var all []*item
	for i := range p.items {
		if it := &p.items[i]; it.kind == kind && !it.drop && !it.rise && it.field == "" {
			all = append(all, it)
		}
	}
	return all
}

// ends gives the items of the kind the field of the state before or after.
func (p *post) ends(kind unit.Kind, first, second string) {
	all := p.live(kind)
	mine := slices.DeleteFunc(slices.Clone(all), func(it *item) bool { return it.foreign })
	if len(mine) > 0 && len(mine) < len(all) { // those of other machines only if there is nothing else
		for _, it := range all {
			it.drop = it.foreign
		}
		all = mine
	}
	var ends [2]*item // the first before, the first after
	var last *item    // the last with no end yet
	for _, it := range all {
		if says := p.sentences[p.tokens[it.from].sentence]; kind == unit.Load && it.role == 0 && says&(before|was|now) == now {
			it.role = after // "bales of 850 lb, and now they go up"
			it.ask(askPlain)
		}
		switch it.role {
		case before:
			ends[0] = firstOf(ends[0], it)
		case after:
			ends[1] = firstOf(ends[1], it)
		default:
			last = it
		}
		if it.foreign {
			it.ask(askPlain)
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
	if b == nil && a != nil && p.has(first) { // which one before is open, so the one after is too
		a.ask(askPlain)
	}
	if a == nil && b != nil && p.has(second) {
		b.ask(askPlain)
	}
	switch {
	case b != nil && a != nil && !(a.size() > b.size()) && (p.all&down == 0 || a.size() == b.size()):
		b.ask(askFell)
		a.ask(askFell)
	case b != nil && a == nil && !b.firm && !p.changed():
		b.ask(askPlain)
	case a != nil && b == nil && !a.firm && !p.changed():
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
			ends[1] = firstOf(ends[1], it)
			it.ask(askPlain)
		case i > 0 && p.tokens[all[i-1].from].sentence == p.tokens[it.from].sentence:
			it.role = all[i-1].role // "2,300 cold and 2,250 hot": which?
		default:
			it.drop = true
		}
	}
}

// firstOf returns a, or b when there is no a.
func firstOf(a, b *item) *item {
	if a == nil {
		return b
	}
	return a
}

// changed reports whether a rise is told of, so that what "was" stands before it
// and what is "now" behind.
func (p *post) changed() bool {
	return slices.ContainsFunc(p.items, func(it item) bool { return it.rise && !it.drop })
}

// one keeps one item for each value of the field, asks for all when there are
// several values, and returns the item when there is but one.
func (p *post) one(field string) *item {
	var kept []*item
	for i := range p.items {
		it := &p.items[i]
		if it.field != field || it.drop {
			continue
		}
		same := slices.IndexFunc(kept, func(k *item) bool { return k.x == it.x && k.unit == it.unit && k.high == it.high })
		switch {
		case same >= 0 && kept[same].why != "" && it.why == "":
			kept[same].drop, kept[same] = true, it
		case same >= 0:
			kept[same].firm = kept[same].firm || it.firm
			it.drop = true
		case len(kept) == mostForOne:
			it.drop = true
		default:
			kept = append(kept, it)
		}
	}
	switch len(kept) {
	case 0:
		return nil
	case 1:
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
	seen := 0
	for i := range p.items {
		it := &p.items[i]
		if !it.rise || it.drop {
			continue
		}
		seen++
		switch {
		case p.has("before") && p.has("after") || seen > mostForOne:
			it.drop = true
		case b != nil && b.unit == it.unit && it.x == it.high:
			it.x += b.x
			it.high, it.field, it.why = it.x, "after", askSum
		case a != nil && a.unit == it.unit && it.x == it.high && a.x > it.x:
			it.x = a.x - it.x
			it.high, it.field, it.why = it.x, "before", askSum
		default:
			it.why = askRise
		}
	}
}

// only returns the one item with the field, nil when there are none or several.
func (p *post) only(field string) *item {
	var found *item
	for i := range p.items {
		if it := &p.items[i]; it.field == field && !it.drop {
			if found != nil {
				return nil
			}
			found = it
		}
	}
	return found
}

func (p *post) has(field string) bool {
	return slices.ContainsFunc(p.items, func(it item) bool { return it.field == field && !it.drop && !it.rise })
}

// ratedLoad drops the lift of a brochure, unless it is the only load that a gain
// can be held against.
func (p *post) ratedLoad() {
	needed := p.has("gained") && len(p.live(unit.Load)) == 0
	for i := range p.items {
		if it := &p.items[i]; it.why == askRated {
			it.drop = it.drop || !needed
		}
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
