package post

import (
	"strings"

	"plainlift/calc/unit"
)

// bare is the kind of a number without a unit, which the words around it may
// still make something; other is that of a quantity of no use here.
const (
	bare  = unit.Number
	other = unit.Count
)

// mostItems is how many quantities are kept; no post has so many.
const mostItems = 4000

// item is a quantity found in the text.
type item struct {
	at, end   int // its bytes
	from, to  int // its tokens, from up to but without to
	sentence  int
	kind      unit.Kind
	x, high   float64 // in its unit; high over x when it is a range
	unit      string  // as unit.Unit names it
	factor    float64 // about, to psi, lb or inches
	fraction  bool    // written with a point or a fraction
	words     bool    // "a third more", which needs no word besides
	left      cue     // what the words in front say, back to where their part of the sentence begins
	close     cue     // the four nearest in front
	right     cue     // those behind, to where their part ends
	next      cue     // the three nearest behind
	rest      cue     // all those behind
	role      cue     // before, after or neither
	firm      bool    // the role is beyond doubt
	structure bool    // one end of "from … to …"
	weak      cue     // what hints at the role
	adjacent  string  // the word just in front, past "about"
	rise      bool
	field     string
	why       string // how the question begins, "" when sure
	foreign   bool   // of somebody else's machine, or another one
	drop      bool
}

// quantities finds the numbers and what they are numbers of.
func (p *post) quantities() {
	for i := 0; i < len(p.tokens); {
		it := item{from: i, to: i + 1, sentence: p.at(i).sentence, kind: bare, factor: 1}
		if !p.phrase(&it) && !(p.numeral(&it) && p.measure(&it)) {
			i = it.to
			continue
		}
		if len(p.items) == mostItems {
			return
		}
		it.at, it.end = p.at(it.from).at, p.at(it.to-1).end
		p.items = append(p.items, it)
		i = it.to
	}
}

// numeral reads a number in digits or in words where the item begins.
func (p *post) numeral(it *item) bool {
	i, t := it.from, p.at(it.from)
	switch t.kind {
	case 'n':
		run := p.text[t.at:t.end]
		if next := p.at(i + 1); len(run) <= 3 && !strings.ContainsAny(run, ".,/") && next.kind == 'n' && run[0] != '0' {
			more := p.text[next.at:next.end]
			switch {
			case len(more) >= 3 && more[1] == '/' || len(more) >= 4 && more[2] == '/': // "1 1/2"
				run, it.to = run+" "+more, i+2
			case len(more) == 3 && next.at == t.end+1 && !strings.ContainsAny(more, ".,/"): // "2 450"
				run, it.to = run+more, i+2
			}
		}
		v, err := unit.Parse(run, bare, unit.Unit{}, unit.US)
		if err != nil {
			return false
		}
		it.x, it.fraction = v.SI, strings.ContainsAny(run, "./")
	case 'w':
		if it.x, it.to = p.spelled(i); it.to == i {
			it.to++
			return false
		}
	default:
		return false
	}
	switch next := p.at(it.to); { // "2.5k", "25 hundred"
	case among(next.word, " k thousand ") && it.x < 100:
		it.x, it.to = it.x*1000, it.to+1
		if x, to := p.spelled(it.to); p.at(to).word == "hundred" {
			it.x, it.to = it.x+100*x, to+1
		}
	case next.word == "hundred":
		it.x, it.to = it.x*100, it.to+1
	}
	it.high = it.x
	return true
}

// spelled reads a number word or two at token i, up to ninety nine, and returns
// where they end; at i when there are none.
func (p *post) spelled(i int) (x float64, to int) {
	t, next := p.at(i), i+1
	if t.word == "a" && among(p.at(next).word, " hundred thousand ") {
		return 1, next
	}
	if t.value == 0 {
		return 0, i
	}
	if p.at(next).word == "-" && p.at(next).glued {
		next++
	}
	if y := p.at(next).value; t.value >= 20 && y > 0 && y < 10 {
		return t.value + y, next + 1
	}
	return t.value, i + 1
}

// measure reads the unit behind a number, and says whether that makes it a
// quantity at all.
func (p *post) measure(it *item) bool {
	t, next := p.at(it.to), p.at(it.to+1)
	switch {
	case t.word == "ish", t.word == "+" && t.glued:
		it.to++
	case t.word == "-" && t.glued && next.word == "ish":
		it.to += 2
	case t.word == "-" && t.glued && next.glued && next.unit != nil: // "10-thou"
		it.to++
	}
	t, next = p.at(it.to), p.at(it.to+1)
	u := t.unit
	if t.word == "in" && next.kind == 'w' && next.says&shim == 0 && !it.fraction || t.word == "#" && !t.glued && next.glued {
		u = nil // the word in, number four
	}
	switch {
	case u == nil: // a number word alone counts things; letters stuck to digits are a name
		return !(p.at(it.from).kind == 'w' && it.x < 100 || t.kind == 'w' && t.glued && t.at == p.at(it.to-1).end)
	case t.says&shim != 0 && it.fraction && it.x < 0.3: // ".020 shim"
		it.measured("in")
		return true
	}
	it.to++
	if n := p.at(it.to); n.word == "." && n.sentence == p.at(it.to+1).sentence {
		it.to++ // "lbs."
	}
	it.measured(u.name)
	switch u.name {
	case "ksi":
		it.x, it.high = it.x*1000, it.x*1000
		it.measured("psi")
	case "psi", "lb", "kg":
		p.groupPoint(it)
	}
	if it.kind == unit.Load {
		p.compound(it)
	}
	p.imperial = p.imperial || among(it.unit, " psi lb ")
	p.metric = p.metric || among(it.unit, " bar kg ")
	return true
}

// groupPoint reads "2.450 psi", with the point between thousands, as it is meant.
func (p *post) groupPoint(it *item) {
	t := p.at(it.from)
	if run := p.text[t.at:t.end]; t.kind == 'n' && len(run) == 5 && run[1] == '.' && it.x < 10 && run[0] != '0' {
		it.x *= 1000
		it.high, it.why = it.x, askThousands
	}
}

// compound reads what follows pounds or kilograms: for each square inch it is a
// pressure, by a foot a torque, for each of anything else a slope.
func (p *post) compound(it *item) {
	by, of := p.at(it.to).word, p.at(it.to+1)
	switch {
	case among(by, " / per ") && among(of.word, " sq square "):
		it.measured("psi")
		it.to += 3
	case among(by, " / per ") && among(of.word, " in inch "):
		it.measured("psi")
		it.to += 2
	case by == "/" && of.word == "cm" && it.unit == "kg":
		it.measured("kgf/cm²")
		it.to += 2
	case among(by, " / per ft foot feet "), by == "for" && of.says&each != 0, by == "-" && among(of.word, " ft foot in "):
		it.measured("-")
		return
	default:
		return
	}
	if w := p.at(it.to); w.glued && among(w.word, " ² 2 ") {
		it.to++
	}
	it.to = min(it.to, len(p.tokens))
}

// phrase reads a gain that words alone give: "a third more", "half again",
// "doubled", which are shares of what it lifted.
func (p *post) phrase(it *item) bool {
	i := it.from
	t, next, last := p.at(i), p.at(i+1), p.at(i-1)
	switch {
	case t.share == 0:
		return false
	case t.share >= 100: // doubled
		it.words = next.says&lifting != 0 || last.says&lifting != 0 || p.at(i-2).says&lifting != 0 ||
			among(next.word, " the its as what my it ") && p.at(i+2).says&(shim|pressing) == 0
	case t.kind == 'w' && !among(last.word, " a one two three ") && t.word != "half":
		return false
	default:
		it.words = among(next.word, " more again ") || next.says&better != 0
		if it.words {
			it.to = i + 2
		}
		if t.kind == 'w' && among(last.word, " a one two three ") {
			it.from--
		}
		by := it.from - 1
		if p.at(by).says&about != 0 {
			by--
		}
		it.words = it.words || p.at(by).word == "by" && !among(next.word, " a of turn turns ")
	}
	if !it.words {
		it.from = i
		return false
	}
	it.measured("%")
	it.x, it.high = t.share, t.share
	return true
}
