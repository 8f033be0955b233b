package post

import "plainlift/calc/unit"

// A relief valve in a tractor opens between these; outside the wider ones it is
// no relief, between the two pairs it is asked. In psi. (Common practice, no source.)
const (
	leastRelief, leastLikely = 500, 1000
	mostLikely, mostRelief   = 5000, 5800
)

// roles says of each item what the words around make it.
func (p *post) roles() {
	for i := range p.items {
		p.context(i)
		if a, b := &p.items[max(0, i-1)], &p.items[i]; a.structure && b.structure && a.role == before && b.role == after {
			b.left, b.close, a.right, a.next = a.left, a.close, b.right, b.next // one statement
		}
	}
	for i := range p.items {
		it := &p.items[i]
		if it.drop {
			continue
		}
		if it.kind == bare {
			p.settleBare(i)
		}
		switch it.kind {
		case unit.Pressure:
			p.pressure(it)
		case unit.Load:
			p.load(it)
		case unit.Percent, other:
			p.percent(it)
		case unit.Thickness:
			p.thickness(it)
		default:
			it.drop = true
		}
	}
}

// counts reports whether the item parts the words around its neighbours.
func (it *item) counts() bool { return it.kind != other && it.kind != unit.Thickness && !it.words }

// context finds what the words in front of the i-th item and behind it say, and
// which end of the change they make it. Between two items the first word that
// begins a new part of the sentence, "and" or a comma, is where they part.
func (p *post) context(i int) {
	it := &p.items[i]
	sentence := p.tokens[it.from].sentence
	from, to := max(0, it.from-window), min(len(p.tokens), it.to+window)
	for p.tokens[from].sentence != sentence {
		from++
	}
	for to > it.to && p.tokens[to-1].sentence != sentence {
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
			if p.tokens[j].word == ")" { // "2450 psi (before),"
				return j + 1, j + 1
			}
		}
	}
	for j := from; j < to; j++ {
		if p.tokens[j].says&part != 0 {
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
	for j > from && p.tokens[j].says&about != 0 {
		j--
	}
	nearest, clause, weak := cue(0), true, cue(0)
	if j >= from && !it.structure {
		switch w, prev := p.tokens[j].word, p.at(j-1).word; {
		case w == "from", w == "to" && (prev == "compared" || prev == "prior"):
			nearest = before
		case w == "to" && prev != "used" && prev != "close" && prev != "next" && prev != "equal" && prev != "spec":
			nearest = after
		}
		it.adjacent = p.tokens[j].word
	}
	for k := it.from - 1; k >= from; k-- {
		says := p.tokens[k].says
		if k >= it.from-4 {
			it.close |= says
		}
		if says&part != 0 && p.tokens[k].word != ":" && k < it.from-1 {
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
	for k := it.to; k < it.to+3 && p.at(k).kind == 'w' && p.at(k).says&part == 0 && p.at(k).sentence == p.tokens[it.from].sentence; k++ {
		it.next |= p.tokens[k].says
	}
	parted := false
	first, away := cue(0), 0
	for k := it.to; k < to; k++ {
		says := p.tokens[k].says
		if first == 0 && says&(before|after) != 0 && p.tokens[k].word != "used" {
			first, away = says&(before|after), k-it.to
		}
		parted = parted || says&part != 0
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
		it.role, it.firm = first, true
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

// settleBare gives a number without a unit the one that the words suggest.
func (p *post) settleBare(i int) {
	it := &p.items[i]
	says := p.sentences[p.tokens[it.from].sentence]
	if it.fraction && it.x < 0.3 && says&shim != 0 {
		it.kind, it.unit = unit.Thickness, "in"
		return
	}
	lifts := it.left&lifting != 0 && it.left&pressing == 0 || says&(lifting|pressing) == lifting
	kind := unit.Pressure
	if lifts {
		kind = unit.Load
	}
	if with := p.sameSentence(i, kind); with != nil && it.role != 0 {
		it.kind, it.unit = with.kind, with.unit
		if with.why == askUnit {
			it.why = askUnit
		}
		return
	}
	raised := it.close&change != 0 && (it.adjacent == "up" || it.adjacent == "by" || it.adjacent == "another")
	switch {
	case lifts && it.role != 0 && it.x >= 100 && it.x <= 10000:
		it.kind, it.unit, it.why = unit.Load, "lb", askUnit
		if p.metric && !p.imperial {
			it.unit = "kg"
		}
	case raised && it.close&lifting == 0 && it.x >= 20 && it.x < leastLikely:
		it.kind, it.unit = unit.Pressure, "psi"
	case (it.role != 0 || it.close&pressing != 0 && it.left&(book|target|others) == 0) && it.x >= leastLikely && it.x <= mostLikely:
		it.kind, it.unit, it.why = unit.Pressure, "psi", askUnit
	case it.role != 0 && p.metric && says&pressing != 0 && it.x >= 70 && it.x <= 345:
		it.kind, it.unit, it.why = unit.Pressure, "bar", askUnit
	}
	if it.x >= 1950 && it.x <= 2035 && says&pressing == 0 && !it.structure {
		it.drop = true // a year
	}
}

// pressure tells a reading from a rise, and both from what is neither.
func (p *post) pressure(it *item) {
	size := it.size()
	it.foreign = it.left&others != 0
	if size < leastLikely && (it.close&up != 0 || it.next&(more|up) != 0) && it.adjacent != "to" && it.adjacent != "from" && it.adjacent != "at" {
		it.rise = true
		it.drop = size < 20 || it.close&(down|under|less) != 0 || it.left&each != 0 || it.right&each != 0 || it.left&(target|others) != 0
		return
	}
	it.drop = size < leastRelief || size > mostRelief || // tyres, engine oil, air
		it.left&(book|target) != 0 && it.left&under == 0 ||
		it.right&book != 0 && it.right&under == 0 || it.next&target != 0 && it.next&iffy == 0 ||
		p.ofGauge(it)
	if size < leastLikely || size > mostLikely {
		it.ask(askUnusual)
	}
}

// ofGauge reports whether the pressure is how far a gauge goes.
func (p *post) ofGauge(it *item) bool {
	for j := it.to; j < it.to+4; j++ {
		t := p.at(j)
		if t.says&gauge != 0 {
			return true
		}
		if t.kind != 'w' || t.says&about != 0 {
			break
		}
		switch t.word {
		case "on", "my", "by", "with", "at", "per", "when", "is", "was":
			j = it.to + 4
		}
	}
	if it.left&gauge == 0 {
		return false
	}
	for j := it.from - 1; j >= it.from-5 && j >= 0; j-- {
		switch p.tokens[j].word {
		case "goes", "tops", "maxes", "scale":
			return true
		}
	}
	return false
}

// load tells a load lifted from a gain, and both from what a machine weighs.
func (p *post) load(it *item) {
	says := p.sentences[p.tokens[it.from].sentence]
	around := it.left | it.right
	it.foreign = it.left&others != 0
	if (it.left|it.next)&ballast != 0 || it.left&book != 0 && around&rated == 0 || it.left&target != 0 || it.left&machine != 0 && it.adjacent == "is" || around&each != 0 && around&lifting == 0 {
		it.drop = true
		return
	}
	pounds := it.unit == "lb" && it.x >= leastLikely && it.x <= mostLikely && !p.inPsi(it)
	if pounds && says&pressing != 0 && says&lifting == 0 { // "set at 2400 pounds"
		it.kind, it.unit = unit.Pressure, "psi"
		it.ask(askPounds)
		p.pressure(it)
		return
	}
	loses := it.next&less != 0
	gains := loses || it.next&more != 0 || p.gains(it.from)
	switch {
	case gains && it.adjacent != "to" && it.adjacent != "from" && !it.structure:
		it.field = "gained"
		if loses {
			it.x, it.high = -it.x, -it.high
		}
		if says&lifting == 0 && it.close&more == 0 {
			it.ask(askPlain)
		}
	case around&rated&^lifting != 0 && it.role == 0:
		it.field = "lift_before"
		it.ask(askRated)
	case (it.left|it.right)&unable != 0 && (it.left|it.right)&more == 0 && p.at(it.from-1).says&under == 0:
		it.role, it.firm = after, false // it could not, and now it may
		it.ask(askPlain)
	case says&lifting == 0 && !it.structure && !it.firm:
		it.drop = true
	}
}

// inPsi reports whether psi stands in the item's sentence, so that its pounds are no pressure.
func (p *post) inPsi(it *item) bool {
	for j := max(0, it.from-window); j < it.to+window; j++ {
		if t := p.at(j); t.word == "psi" && t.sentence == p.tokens[it.from].sentence {
			return true
		}
	}
	return false
}

// gains reports whether the words before token i say that a load was gained.
func (p *post) gains(i int) bool {
	for j := i - 1; j >= 0 && j >= i-4 && p.tokens[j].sentence == p.at(i).sentence; j-- {
		if t := p.tokens[j]; t.says&more != 0 && t.word != "more" && t.word != "up" {
			return true
		}
	}
	return false
}

// percent takes a gain: a percentage, or a factor of 1 to 10 on what it lifted.
func (p *post) percent(it *item) {
	says := p.sentences[p.tokens[it.from].sentence]
	if it.unit == "x" {
		switch p.at(it.to).word {
		case "what", "as", "the", "more", "its":
			it.drop = !(it.x > 1 && it.x <= 10)
		default:
			it.drop = true
		}
		it.kind, it.unit, it.words = unit.Percent, "%", true
		it.x = 100 * (it.x - 1)
		it.high = 100 * (it.high - 1)
	}
	grows := it.words || (it.close|it.next)&(more|better) != 0
	shrinks := (it.close|it.next)&less != 0
	lifts := says&lifting != 0
	switch ofPressure := (it.left|it.right)&pressing != 0 && (it.left|it.right)&lifting == 0; {
	case it.drop || it.kind != unit.Percent || it.x <= 0 || (it.left|it.next)&(aside|target) != 0 || says&iffy != 0 || it.left&(book|others) != 0,
		!grows && !shrinks && !lifts && !ofPressure:
		it.drop = true
		return
	case ofPressure:
		it.ask(askOfPressure)
		return
	case !lifts, !grows && !shrinks, p.asked(it):
		it.ask(askPlain)
	}
	it.field = "claimed"
	if shrinks && !grows {
		it.x, it.high = -it.x, -it.high
	}
}

// asked reports whether the item's sentence is a question.
func (p *post) asked(it *item) bool {
	for j := it.to; j < it.to+window && p.at(j).sentence == p.tokens[it.from].sentence; j++ {
		if p.tokens[j].word == "?" {
			return true
		}
	}
	return false
}

// thickness takes what is put behind a spring, all of it where it says how many.
func (p *post) thickness(it *item) {
	shims := p.sentences[p.tokens[it.from].sentence]&shim != 0
	if it.drop = it.size() > 0.25 || it.x <= 0 || !shims && it.unit != "thou"; it.drop {
		return
	}
	j := it.from - 1
	for p.at(j).word == "x" || p.at(j).word == "of" || p.at(j).word == "the" {
		j--
	}
	n := numerals[p.at(j).word]
	if t := p.at(j); t.kind == 'n' && t.end == t.at+1 {
		n = float64(p.text[t.at] - '0')
	}
	if n > 1 && n < 10 {
		it.x, it.high = n*it.x, n*it.high
		it.from, it.at = j, p.tokens[j].at
	}
	if it.unit == "thou" {
		it.x, it.high, it.unit = it.x/1000, it.high/1000, "in"
	}
}
