package post

import "plainlift/calc/unit"

// A relief valve in a tractor opens between these; outside the wider ones it is
// no relief, between the two pairs it is asked. In psi. (Common practice, no source.)
const (
	leastRelief, leastLikely = 500, 1000
	mostLikely, mostRelief   = 5000, 5800
)

// What a tractor lifts, in lb. (Common practice, no source.)
const leastLoad, mostLoad = 50, 11000

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
		if p.sentenceOf(it)&iffy != 0 || p.asked(it) {
			it.ask(askPlain)
		}
		if prev := &p.items[max(0, i-1)]; it.structure && it.role == after && prev.structure && prev.drop != it.drop {
			prev.ask(askPlain) // from a number that is no reading, or to one
			it.ask(askPlain)
		}
	}
}

// settleBare gives a number without a unit the one that the words suggest.
func (p *post) settleBare(i int) {
	it := &p.items[i]
	says := p.sentenceOf(it)
	if it.fraction && it.x < 0.3 && says&shim != 0 {
		it.measured("in")
		return
	}
	lifts := it.left&lifting != 0 && it.left&pressing == 0 || says&(lifting|pressing) == lifting
	kind := unit.Pressure
	if lifts {
		kind = unit.Load
	}
	if with := p.sameSentence(i, kind); with != nil && it.role != 0 {
		it.measured(with.unit)
		if with.why == askUnit {
			it.why = askUnit
		}
		return
	}
	if it.x >= 1950 && it.x <= 2035 && says&pressing == 0 && !it.structure {
		return // a year
	}
	raised := it.close&change != 0 && (it.adjacent == "up" || it.adjacent == "by" || it.adjacent == "another")
	switch {
	case lifts && it.role != 0 && it.x >= 100 && it.x <= 10000:
		it.measured("lb")
		it.why = askUnit
		if p.metric && !p.imperial {
			it.measured("kg")
		}
	case raised && it.close&lifting == 0 && it.x >= 20 && it.x < leastLikely:
		it.measured("psi")
	case (it.role != 0 || it.close&pressing != 0 && it.left&(book|target|others) == 0) && it.x >= leastLikely && it.x <= mostLikely:
		it.measured("psi")
		it.why = askUnit
	case it.role != 0 && p.metric && says&pressing != 0 && it.x >= 70 && it.x <= 345:
		it.measured("bar")
		it.why = askUnit
	}
}

// pressure tells a reading from a rise, and both from what is neither.
func (p *post) pressure(it *item) {
	size := it.size()
	it.foreign = it.left&others != 0
	if size < leastLikely && (it.close&up != 0 || it.next&(more|up) != 0) && it.adjacent != "to" && it.adjacent != "from" && it.adjacent != "at" {
		it.rise = true
		it.drop = size < 20 || it.close&(down|under|less) != 0 || it.left&each != 0 || it.right&each != 0 || it.left&(target|others) != 0
		if !it.drop {
			p.risen++
		}
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
		switch p.at(j).word {
		case "goes", "tops", "maxes", "scale":
			return true
		}
	}
	return false
}

// load tells a load lifted from a gain, and both from what a machine weighs.
func (p *post) load(it *item) {
	says := p.sentenceOf(it)
	around := it.left | it.right
	it.foreign = it.left&others != 0
	if (it.left|it.next)&ballast != 0 || it.left&book != 0 && around&rated == 0 || it.left&target != 0 || it.left&machine != 0 && it.adjacent == "is" || p.at(it.to).says&vehicle != 0 || around&each != 0 && around&lifting == 0 {
		it.drop = true
		return
	}
	pounds := it.unit == "lb" && it.x >= leastLikely && it.x <= mostLikely && !p.inPsi(it)
	if pounds && says&pressing != 0 && says&lifting == 0 { // "set at 2400 pounds"
		it.measured("psi")
		it.ask(askPounds)
		p.pressure(it)
		return
	}
	loses := it.next&less != 0
	another := p.at(it.from-1).word == "another"
	gains := loses || another || it.next&more != 0 || p.gains(it.from)
	switch {
	case gains && it.adjacent != "to" && it.adjacent != "from" && !it.structure:
		it.field = "gained"
		if loses {
			it.x, it.high = -it.x, -it.high
		}
		if another || says&lifting == 0 && it.close&more == 0 {
			it.ask(askPlain)
		}
	case around&rated&^lifting != 0 && it.role == 0:
		it.field = "lift_before"
		it.ask(askRated)
	case (it.left|it.rest)&unable != 0 && (it.left|it.right)&more == 0 && p.at(it.from-1).says&under == 0:
		it.role, it.firm = after, false // it could not, and now it may
		it.ask(askPlain)
	case says&lifting == 0 && !it.structure && !it.firm, it.size() < leastLoad, it.size() > mostLoad:
		it.drop = true
	}
}

// inPsi reports whether psi stands in the item's sentence, so that its pounds are no pressure.
func (p *post) inPsi(it *item) bool {
	for j := max(0, it.from-window); j < it.to+window; j++ {
		if t := p.at(j); t.word == "psi" && t.sentence == it.sentence {
			return true
		}
	}
	return false
}

// gains reports whether the words before token i say that a load was gained.
func (p *post) gains(i int) bool {
	for j := i - 1; j >= 0 && j >= i-4 && p.at(j).sentence == p.at(i).sentence; j-- {
		if t := p.at(j); t.says&more != 0 && t.word != "more" && t.word != "up" {
			return true
		}
	}
	return false
}

// percent takes a gain: a percentage, or a factor of 1 to 10 on what it lifted.
func (p *post) percent(it *item) {
	says := p.sentenceOf(it)
	if it.unit == "x" {
		it.drop = !(among(p.at(it.to).word, " what as the more its ") && it.x > 1 && it.x <= 10)
		it.measured("%")
		it.words = true
		it.x = 100 * (it.x - 1)
		it.high = 100 * (it.high - 1)
	}
	grows := it.words || (it.close|it.next)&(more|better) != 0
	shrinks := (it.close|it.next)&less != 0
	lifts := says&lifting != 0
	switch ofPressure := (it.left|it.right)&pressing != 0 && (it.left|it.right)&lifting == 0; {
	case it.drop || it.kind != unit.Percent || !it.words && among(p.at(it.to).word, " of full scale ") || it.x <= 0 || (it.left|it.next)&(aside|target) != 0 || says&iffy != 0 || it.left&(book|others) != 0,
		!grows && !shrinks && !lifts && !ofPressure:
		it.drop = true
		return
	case ofPressure:
		it.ask(askOfPressure)
		return
	case !lifts, !grows && !shrinks, it.left&unable != 0:
		it.ask(askPlain)
	}
	it.field = "claimed"
	if shrinks && !grows {
		it.x, it.high = -it.x, -it.high
	}
}

// asked reports whether the item's sentence is a question.
func (p *post) asked(it *item) bool {
	for j := it.to; j < it.to+window && p.at(j).sentence == it.sentence; j++ {
		if p.at(j).word == "?" {
			return true
		}
	}
	return false
}

// thickness takes what is put behind a spring, all of it where it says how many.
func (p *post) thickness(it *item) {
	shims := p.sentenceOf(it)&shim != 0
	if it.drop = it.size() > 0.25 || it.x <= 0 || !shims && it.unit != "thou"; it.drop {
		return
	}
	j := it.from - 1
	for p.at(j).word == "x" || p.at(j).word == "of" || p.at(j).word == "the" {
		j--
	}
	n := p.at(j).value
	if t := p.at(j); t.kind == 'n' && t.end == t.at+1 {
		n = float64(p.text[t.at] - '0')
	}
	if n > 1 && n < 10 {
		it.x, it.high = n*it.x, n*it.high
		it.from, it.at = j, p.at(j).at
	}
	if it.unit == "thou" {
		it.x, it.high = it.x/1000, it.high/1000
		it.measured("in")
	}
}
