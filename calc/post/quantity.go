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
	kind      unit.Kind
	x, high   float64 // in its unit; high over x when it is a range
	unit      string  // as unit.Unit names it
	fraction  bool    // written with a point or a fraction
	words     bool    // "a third more", which needs no word besides
	left      cue     // what the words in front say, back to where their part of the sentence begins
	close     cue     // the four nearest in front
	right     cue     // those behind, to where their part ends
	next      cue     // the three nearest behind
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
	names := make(map[string]string, 160)
	for _, row := range spellings {
		for word := range strings.FieldsSeq(row.words) {
			names[word] = row.unit
		}
	}
	for i := 0; i < len(p.tokens); {
		it, ok := p.phrase(i)
		if !ok {
			if it, ok = p.numeral(i); !ok {
				i++
				continue
			}
			if !p.measure(&it, names) {
				i = it.to
				continue
			}
		}
		if len(p.items) == mostItems {
			return
		}
		it.at, it.end = p.tokens[it.from].at, p.tokens[it.to-1].end
		p.items = append(p.items, it)
		i = it.to
	}
}

// numeral reads a number in digits or in words at token i.
func (p *post) numeral(i int) (it item, ok bool) {
	it.from, it.to = i, i+1
	t := p.tokens[i]
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
			return it, false
		}
		it.x, it.fraction = v.SI, strings.ContainsAny(run, "./")
	case 'w':
		var small bool
		if it.x, it.to, small = p.spelled(i); !small {
			return it, false
		}
	default:
		return it, false
	}
	switch next := p.at(it.to); next.word { // "2.5k", "25 hundred"
	case "k", "thousand":
		if it.x < 100 {
			it.x, it.to = it.x*1000, it.to+1
			if x, to, ok := p.spelled(it.to); ok && p.at(to).word == "hundred" {
				it.x, it.to = it.x+100*x, to+1
			}
		}
	case "hundred":
		it.x, it.to = it.x*100, it.to+1
	}
	it.high = it.x
	return it, true
}

// spelled reads a number word or two, up to ninety nine.
func (p *post) spelled(i int) (x float64, to int, ok bool) {
	t := p.at(i)
	x, ok = numerals[t.word]
	to = i + 1
	if t.word == "a" && (p.at(to).word == "hundred" || p.at(to).word == "thousand") {
		return 1, to, true
	}
	if x >= 20 {
		next := to
		if p.at(next).word == "-" && p.at(next).glued {
			next++
		}
		if y := numerals[p.at(next).word]; y > 0 && y < 10 {
			return x + y, next + 1, true
		}
	}
	return x, to, ok
}

// measure reads the unit behind a number, and says whether that makes it a
// quantity at all.
func (p *post) measure(it *item, names map[string]string) bool {
	i := it.to
	if w := p.at(i); w.word == "ish" || w.word == "-" && w.glued && p.at(i+1).word == "ish" {
		for it.to = i + 1; p.tokens[it.to-1].word != "ish"; it.to++ {
		}
	} else if w.word == "+" && w.glued {
		it.to++
	}
	t := p.at(it.to)
	if t.word == "-" && t.glued && names[p.at(it.to+1).word] != "" && p.at(it.to+1).glued { // "10-thou"
		it.to++
		t = p.at(it.to)
	}
	name := names[t.word]
	if t.word == "in" && p.at(it.to+1).kind == 'w' && p.at(it.to+1).says&shim == 0 && !it.fraction ||
		t.word == "#" && !t.glued && p.at(it.to+1).glued {
		name = "" // the word in, and others that are no unit here
	}
	if name == "-" && t.says&shim != 0 && it.fraction && it.x < 0.3 { // ".020 shim"
		it.kind, it.unit = unit.Thickness, "in"
		return true
	}
	if name == "" {
		// A number word alone counts things; letters stuck to digits are a name.
		if p.tokens[it.from].kind == 'w' && it.x < 100 || t.kind == 'w' && t.glued && t.at == p.tokens[it.to-1].end {
			return false
		}
		it.kind = bare
		return true
	}
	it.to++
	if n := p.at(it.to); n.word == "." && n.sentence == p.at(it.to+1).sentence {
		it.to++ // "lbs."
	}
	it.unit = name
	switch name {
	case "ksi":
		it.x, it.high, it.unit = it.x*1000, it.x*1000, "psi"
	case "psi":
		p.groupPoint(it)
	case "lb", "kg":
		p.groupPoint(it)
		p.compound(it)
	}
	it.kind = units[it.unit].kind
	switch it.unit {
	case "psi", "lb":
		p.imperial = true
	case "bar", "kg":
		p.metric = true
	}
	return true
}

// groupPoint reads "2.450 psi", with the point between thousands, as it is meant.
func (p *post) groupPoint(it *item) {
	t := p.tokens[it.from]
	if run := p.text[t.at:t.end]; t.kind == 'n' && len(run) == 5 && run[1] == '.' && it.x < 10 && run[0] != '0' {
		it.x *= 1000
		it.high, it.why = it.x, askThousands
	}
}

// compound reads what follows pounds or kilograms: for each square inch it is a
// pressure, by a foot a torque, for each of anything else a slope.
func (p *post) compound(it *item) {
	i := it.to
	next := p.at(i)
	switch next.word {
	case "/", "per", "for":
		n := p.at(i + 1)
		switch {
		case n.word == "sq" || n.word == "square":
			it.unit, it.to = "psi", i+3
		case n.word == "in" || n.word == "inch" || n.word == "in²":
			it.unit, it.to = "psi", i+2
		case n.word == "cm" && it.unit == "kg":
			it.unit, it.to = "kgf/cm²", i+2
		case n.says&each != 0 || next.word != "for":
			it.unit = "-"
		}
		it.to = min(it.to, len(p.tokens))
		if w := p.at(it.to); it.unit != "-" && it.to > i && w.glued && (w.word == "²" || w.word == "2") {
			it.to++
		}
	case "-", "ft", "foot", "feet":
		if n := p.at(i + 1); next.word != "-" || n.word == "ft" || n.word == "foot" || n.word == "in" {
			it.unit = "-"
		}
	}
}

// phrase reads a gain that words alone give: "a third more", "half again",
// "doubled", which are shares of what it lifted.
func (p *post) phrase(i int) (it item, ok bool) {
	t, next := p.tokens[i], p.at(i+1)
	it = item{from: i, to: i + 2, kind: unit.Percent, unit: "%", words: true}
	bigger := next.word == "more" || next.word == "again" || next.says&better != 0
	switch t.word {
	case "third", "quarter", "fifth", "half", "thirds", "quarters", "1/2", "1/3", "1/4", "1/5":
		it.x = shares[t.word]
		if j := i - 1; t.kind == 'n' {
		} else if j >= 0 && (p.at(j).word == "a" || p.at(j).word == "one" || p.at(j).word == "two" || p.at(j).word == "three") {
			it.from = j
		} else if t.word != "half" {
			return it, false
		}
		ok = bigger
		turn := next.word == "a" || next.word == "of" || strings.HasPrefix(next.word, "turn")
		if by := p.at(it.from - 1); !ok && !turn && (by.word == "by" || by.says&about != 0 && p.at(it.from-2).word == "by") {
			it.to, ok = i+1, true
		}
	case "double", "doubled", "doubles", "twice", "triple", "tripled", "triples":
		it.x, it.to = 100, i+1
		if strings.HasPrefix(t.word, "tri") {
			it.x = 200
		}
		switch next.word {
		case "the", "its", "as", "what", "my", "it":
			ok = p.at(i+2).says&(shim|pressing) == 0
		case "lift", "lifting":
			ok = true
		default:
			ok = p.at(i-1).says&lifting != 0 || p.at(i-2).says&lifting != 0 || p.at(i-1).word == "capacity"
		}
	}
	it.high = it.x
	return it, ok
}
