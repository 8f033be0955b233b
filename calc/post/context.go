package post

import "plainlift/calc/unit"

// counts reports whether the item parts the words around its neighbours.
func (it *item) counts() bool { return it.kind != other && it.kind != unit.Thickness && !it.words }

// context finds what the words in front of the i-th item and behind it say, and
// which end of the change they make it. Between two items the first word that
// begins a new part of the sentence, "and" or a comma, is where they part.
func (p *post) context(i int) {
	it := &p.items[i]
	sentence := it.sentence
	from, to := max(0, it.from-window), min(len(p.tokens), it.to+window)
	for p.at(from).sentence != sentence {
		from++
	}
	for to > it.to && p.at(to-1).sentence != sentence {
		to--
	}
	for j := i - 1; j >= 0 && p.items[j].to > from; j-- {
		if p.items[j].counts() {
			_, from = p.parting(&p.items[j], it.from)
			break
		}
	}
	for j := i + 1; j < len(p.items) && p.items[j].from < to; j++ {
		if p.items[j].counts() {
			to, _ = p.parting(it, p.items[j].from)
			break
		}
	}
	p.lookLeft(it, from)
	p.lookRight(it, to)
}

// parting returns where, before token to, the words that belong to the item end
// and those that belong to the next begin.
func (p *post) parting(it *item, to int) (end, begin int) {
	from := it.to
	if p.at(from).word == "(" {
		for j := from + 1; j < min(to, from+6); j++ {
			if p.at(j).word == ")" { // "2450 psi (before),"
				return j + 1, j + 1
			}
		}
	}
	for j := from; j < to; j++ {
		if p.at(j).says&part != 0 {
			return j, j
		}
	}
	switch p.at(from).word {
	case "before", "after", "beforehand", "afterwards", "originally", "stock":
		if from+1 < to {
			from++
		}
	}
	if it.kind == unit.Percent { // "30 % more lift at"
		from = min(from+3, to)
	}
	return from, from
}

// lookLeft reads the words in front of the item, the nearest first.
func (p *post) lookLeft(it *item, from int) {
	j := it.from - 1
	for j > from && p.at(j).says&about != 0 {
		j--
	}
	nearest, clause, weak := cue(0), true, cue(0)
	if j >= from && !it.structure {
		switch w, prev := p.at(j).word, p.at(j-1).word; {
		case w == "from", w == "to" && (prev == "compared" || prev == "prior"):
			nearest = before
		case w == "to" && prev != "used" && prev != "close" && prev != "next" && prev != "equal" && prev != "spec":
			nearest = after
		}
		it.adjacent = p.at(j).word
	}
	for k := it.from - 1; k >= from; k-- {
		says := p.at(k).says
		if k >= it.from-4 {
			it.close |= says
		}
		if says&part != 0 && p.at(k).word != ":" && k < it.from-1 {
			clause = false
		}
		if clause {
			it.left |= says
		}
		if nearest == 0 {
			nearest = says & (before | after)
		}
		if says&shim != 0 && it.kind != unit.Thickness {
			weak |= shim
		}
		weak |= says & (was | now | without)
	}
	if it.structure {
		return
	}
	it.role, it.firm = nearest, nearest != 0
	it.weak = weak
}

// lookRight reads the words behind the item, and settles which end it is.
func (p *post) lookRight(it *item, to int) {
	for k := it.to; k < it.to+3 && p.at(k).kind == 'w' && p.at(k).says&part == 0 && p.at(k).sentence == it.sentence; k++ {
		it.next |= p.at(k).says
	}
	parted := false
	first, away, firm := cue(0), 0, false
	for k := it.to; k < to; k++ {
		says := p.at(k).says
		if first == 0 && says&(before|after) != 0 && p.at(k).word != "used" {
			first, away, firm = says&(before|after), k-it.to, !parted
		}
		it.rest |= says
		parted = parted || says&part != 0 && p.at(k).word != "with"
		if parted {
			continue
		}
		it.right |= says
		it.weak |= says & (was | now)
		if says&shim != 0 {
			it.weak |= shim
		}
	}
	if it.structure {
		return
	}
	if first != 0 && (it.role == 0 || away <= 2 && it.role != first) {
		it.role, it.firm = first, firm || away <= 2
	}
	if it.role != 0 {
		return
	}
	switch w := it.weak; {
	case w&shim != 0 && w&without != 0:
		it.role = before
	case w&shim != 0, w&now != 0 && w&was == 0:
		it.role = after
	case w&was != 0 && w&now == 0:
		it.role = before
	}
}
