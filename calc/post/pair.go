package post

import "plainlift/calc/unit"

// window is how many words around a number are looked at.
const window = 24

// pairs joins neighbours: "from 2450 to 2700 psi" are the two ends of a change,
// "2500-2600 psi" may be a range, and what one of them lacks in unit or in
// digits it has from the other.
func (p *post) pairs() {
	kept := p.items[:0]
	for i := 0; i < len(p.items); i++ {
		kept = append(kept, p.items[i])
		if i+1 == len(p.items) {
			break
		}
		a, b := &kept[len(kept)-1], &p.items[i+1]
		how := p.joint(a, b)
		if how == "" {
			continue
		}
		i++
		share(a, b)
		switch {
		case how == "±" || a.kind != b.kind || a.x == 0: // the doubt of a; no pair; a scale from 0
			b.drop = how == "±" || a.x == 0
			a.drop = a.x == 0
		case a.kind == unit.Thickness || a.kind == other:
		case how == "change" && a.kind != unit.Percent:
			a.structure, b.structure = true, true
			a.role, b.role = before, after
			a.firm, b.firm = true, true
		case a.kind == unit.Percent || p.spread(a, b):
			a.high, a.to, a.end, a.why = b.x, b.to, b.end, askMiddle
			continue
		default:
			a.structure, b.structure = true, true
			a.role, b.role = before, after
			a.why, b.why = askPlain, askPlain
		}
		kept = append(kept, *b)
	}
	p.items = kept
}

// joint says how a and the next item hang together: "change", "range" (which may
// yet be a change), "±", or "" when they do not.
func (p *post) joint(a, b *item) string {
	if a.sentence != b.sentence || b.from-a.to > 3 || b.from == a.to {
		return ""
	}
	between := ""
	for _, t := range p.tokens[a.to:b.from] {
		if t.says&about == 0 {
			between += t.word
		}
	}
	last, across := p.at(a.from-1).word, among(between, " to til till ")
	switch {
	case among(between, " -> --> => → > » upto backto became wentto wentupto turnedinto "),
		across && (last == "from" || p.at(a.from-2).word == "from" || p.says(a.from-window/2, a.from, a.sentence)&change != 0):
		return "change"
	case across, among(between, " - – — / or "), between == "and" && last == "between":
		return "range"
	case among(between, " ± +/- +- plusorminus "):
		return "±"
	}
	return ""
}

// spread reports whether "2500 to 2600" is one value that varies: the words
// around say already which end of the change it is, or that it is no reading.
// A wide one that only stands after the change is rather the change itself.
func (p *post) spread(a, b *item) bool {
	const narrow = 1.05
	s := a.sentence
	left := p.says(a.from-window/2, a.from, s)
	if left&before != 0 && left&after != 0 { // "before/after: 2,400/2,650 psi"
		return false
	}
	around := left | p.says(b.to, b.to+window/4, s)
	return around&(before|was|book|target) != 0 || p.at(a.from-1).word == "between" ||
		around&(after|now) != 0 && b.x <= narrow*a.x
}

// says collects what the tokens from up to to say, within the sentence.
func (p *post) says(from, to, sentence int) cue {
	var all cue
	for _, t := range p.tokens[max(from, 0):max(0, from, min(to, len(p.tokens)))] {
		if t.sentence == sentence {
			all |= t.says
		}
	}
	return all
}

// share gives each of two joined numbers the unit and the digits that only the
// other has: "from 2450 to 2700 psi", "from 2300 to 25-ish", "2.4 to 2.7k".
func share(a, b *item) {
	switch {
	case a.kind == bare && b.kind != other:
		a.measured(b.unit)
	case b.kind == bare && a.kind != other:
		b.measured(a.unit)
	}
	if a.kind == unit.Pressure || a.kind == bare {
		complete(a, b)
		complete(b, a)
	}
}

// complete reads 25 beside 2300 as 2500.
func complete(a, b *item) {
	if !(a.x >= 1 && a.x < 100 && b.size() >= 1000) {
		return
	}
	x := 100 * a.x
	if !near(x, b.x) {
		x = 1000 * a.x
	}
	if near(x, b.x) {
		a.x, a.high, a.why = x, x, askShort
	}
}

// near reports whether two numbers can be the two ends of one change.
func near(a, b float64) bool { return a > 0.6*b && b > 0.6*a }

// sameSentence returns the first item of the kind near the i-th in its sentence.
func (p *post) sameSentence(i int, kind unit.Kind) *item {
	for step := 1; step >= -1; step -= 2 {
		for j := i + step; j >= 0 && j < len(p.items) && j != i+4*step; j += step {
			it := &p.items[j]
			if it.sentence != p.items[i].sentence {
				break
			}
			if it.kind == kind && near(it.x, p.items[i].x) {
				return it
			}
		}
	}
	return nil
}
