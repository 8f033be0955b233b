package post

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// cue is what words say about the numbers near them, one bit for each sense.
type cue uint32

const (
	before   cue = 1 << iota // the state before the change
	after                    // the state after it
	was                      // weaker: what has been
	now                      // weaker: what has come of it
	shim                     // something put behind the spring
	without                  // not there
	unable                   // could not
	change                   // turned, raised: something was altered
	up                       // the direction, or by how much
	down                     // the other direction
	target                   // advice, wish or limit, not a reading
	book                     // the manual's figure
	under                    // compared with something, so that the number is not that
	lifting                  // lifting, or something to lift
	more                     // an increase
	less                     // a decrease
	pressing                 // pressure, or what shows it
	gauge                    // the gauge itself
	each                     // so much for each
	machine                  // a machine
	ballast                  // a weight that is not lifted
	others                   // somebody else's, or a second machine
	aside                    // makes a percentage something else
	about                    // around a number, without a meaning here
	part                     // begins a new part of the sentence
	warm                     // warming up, which is no change
	rated                    // a capacity from a brochure
	iffy                     // makes it a supposition
	better                   // an increase, of percentages only
)

// lexicon gives the words for each sense; a word may stand in several rows.
var lexicon = [...]struct {
	sense cue
	words string
}{
	{before, "before beforehand original originally stock initially initial previously formerly earlier prior untouched baseline used old started starting instead"},
	{after, "after afterwards afterward ended ending final finally new"},
	{was, "was were had made first factory"},
	{now, "now then currently presently up until"},
	{shim, "shim shims shimmed shimming spacer spacers washer washers"},
	{without, "no without zero"},
	{unable, "not never couldn't wouldn't can't cannot won't didn't couldnt wouldnt cant wont didnt unable"},
	{change, "went go goes going raised raise raising turned turning cranked bumped brought took taking jumped climbed rose moved increased adjusted set upped changed came gone dialed dialled got shimmed"},
	{up, "up by another increase increased bumped upped gained added raised extra higher rise bump jumped climbed rose"},
	{down, "down lowered lower dropped drop backed reduced decreased fell loosened"},
	{target, "i'd you'd he'd i'll should could might try want wants plan planning planned thinking recommend recommended suggest if aim aiming goal target shooting max maximum limit exceed exceeding don't dont need needs hoping wish gonna going would unless"},
	{book, "book manual spec specs specification calls supposed rated rating specified oem recommends hose hoses burst brochure"},
	{under, "under below short over above low shy"},
	{lifting, "lift lifts lifted lifting pick picks picked picking hoist hoists hoisted raise raises raised carry carries carried bale bales pallet pallets load loads loaded bucket loader handle handles handled capacity log rock pull pulls pulled scale"},
	{more, "more gain gained gains increase increased increases extra additional added up higher heavier"},
	{better, "better stronger improvement improved boost over above"},
	{less, "less weaker worse lost"},
	{pressing, "pressure pressures relief psi gauge gage dial reading readings reads read hydraulic hydraulics setting settings port"},
	{gauge, "gauge gage guage gauges dial"},
	{each, "each per every"},
	{machine, "tractor machine truck trailer i grapple fork forks skid itself bucket loader"},
	{ballast, "ballast tire tires tyre tyres liquid torque axle counterweight fluid"},
	{others, "other neighbor's neighbour's brother's buddy's dad's friend's neighbor neighbour his hers theirs their someone somebody"},
	{aside, "sure certain time throttle slope grade duty accuracy accurate interest error charge tread humidity positive off financing discount scale gauge gage agree correct"},
	{about, "about around roughly approximately approx maybe nearly almost like a an the only just some say exactly right steady solid another extra ~ ≈ ("},
	{part, "instead used and then but so while with , ; : ( ) / – — | \n"},
	{warm, "warm warmed warming warms warm-up run running minutes minute min hour hours sitting idle idling heated heating working cold"},
	{rated, "rated rating brochure spec specs capacity book"},
	{iffy, "if unless suppose"},
}

// token is a word, a number or a mark.
type token struct {
	at, end  int
	kind     byte   // 'w' a word, 'n' a number, 'x' a number that is part of a name, 'p' a mark
	word     string // in lower case
	glued    bool   // no space before it
	says     cue
	sentence int
}

// tokenize cuts the text into tokens and sentences.
func (p *post) tokenize() {
	senses := make(map[string]cue, 400)
	for _, row := range lexicon {
		for word := range strings.FieldsSeq(row.words) {
			senses[word] |= row.sense
		}
	}
	senses["\n"] = part
	inQuote := false // between [quote] and [/quote]
	for at, line := 0, ""; at < len(p.text); at += len(line) {
		line = p.text[at:]
		if n := strings.IndexByte(line, '\n'); n >= 0 {
			line = line[:n+1]
		}
		quoted := inQuote || strings.HasPrefix(strings.TrimLeft(line, " \t"), ">")
		if i := strings.LastIndex(line, "[/quote]"); i >= 0 {
			inQuote, quoted = false, true
		} else if strings.Contains(line, "[quote") {
			inQuote, quoted = true, true
		}
		switch {
		case quoted == p.quoted && strings.TrimSpace(line) != "":
			p.line(at, line, senses)
		default:
			p.endSentence()
		}
	}
	p.endSentence()
	p.correct()
	for _, t := range p.tokens {
		p.sentences[t.sentence] |= t.says
		p.all |= t.says
	}
}

// endSentence begins a new sentence, unless the last one is empty.
func (p *post) endSentence() {
	if n := len(p.tokens); n > 0 && p.tokens[n-1].sentence == len(p.sentences) {
		p.sentences = append(p.sentences, 0)
	}
}

// line cuts one line into tokens.
func (p *post) line(base int, line string, senses map[string]cue) {
	for i := 0; i < len(line); {
		r, size := utf8.DecodeRuneInString(line[i:])
		end := i + size
		t := token{kind: 'p', glued: i > 0 && !space(line[i-1])}
		switch {
		case r == '\n':
		case unicode.IsSpace(r) || r == '\u200B' || r == '\uFEFF':
			i = end
			continue
		case digit(line, i) || r == '.' && digit(line, i+1) && (i == 0 || !digit(line, i-1)):
			end = number(line, i)
			t.kind = 'n'
			if partOfName(line, i, end) {
				t.kind = 'x'
			}
		case unicode.IsLetter(r):
			if strings.HasPrefix(line[i:], "http") || strings.HasPrefix(line[i:], "www.") { // an address
				for end < len(line) && !space(line[end]) {
					end++
				}
				t.kind = 'x'
				break
			}
			t.kind = 'w'
			end = wordEnd(line, end)
		}
		const longestWord = 24
		if end-i <= longestWord {
			t.word = strings.ReplaceAll(strings.ToLower(line[i:end]), "’", "'")
		}
		t.at, t.end, t.says, t.sentence = base+i, base+end, senses[t.word], len(p.sentences)
		p.tokens = append(p.tokens, t)
		if r == '!' || r == '?' || r == '.' && t.kind == 'p' && (end == len(line) || space(line[end])) && !p.abbreviated(line[end:]) {
			p.endSentence()
		}
		i = end
	}
}

// abbreviated reports whether the full stop just read ends a short form, "lbs.",
// and not the sentence: what follows goes on in lower case.
func (p *post) abbreviated(rest string) bool {
	n := len(p.tokens)
	if n < 2 {
		return false
	}
	rest = strings.TrimLeft(rest, " ")
	switch p.tokens[n-2].word {
	case "lb", "lbs", "in", "approx", "ca", "hr", "hrs", "vs":
		return rest != "" && (rest[0] >= 'a' && rest[0] <= 'z' || digit(rest, 0))
	}
	return false
}

// correct takes away what words do not say beside certain others.
func (p *post) correct() {
	for i := range p.tokens {
		t := &p.tokens[i]
		next, beyond := p.at(i+1), p.at(i+2)
		switch t.word {
		case "used":
			if next.word != "to" {
				t.says = 0
			}
		case "old", "new":
			if next.word != ":" && next.says&pressing == 0 || next.says&gauge != 0 {
				t.says = 0
			}
		case "i'd":
			switch next.word {
			case "guess", "say", "call", "bet", "estimate":
				t.says = 0
			}
		case "going":
			if next.word != "to" || beyond.kind == 'n' {
				t.says &^= target
			}
		case "would":
			switch next.word {
			case "be", "go", "like", "set", "try", "need":
			default:
				t.says = 0
			}
		case "could":
			switch next.word {
			case "only", "barely", "just", "never":
				t.says = 0
			}
		case "first":
			if next.says&shim != 0 || next.word == "turn" || next.word == "one" {
				t.says = 0
			}
		case "if":
			if next.word == "anything" || p.at(i-1).word == "even" {
				t.says = 0
			}
		case "washer", "washers":
			if p.at(i-1).word == "pressure" {
				t.says = book // what a pressure washer gives says nothing about a relief
			}
		case "up":
			if p.at(i-1).says&lifting != 0 && strings.HasPrefix(p.at(i-1).word, "pick") {
				t.says = 0
			}
		case "other":
			if next.word == "day" || next.word == "night" || p.at(i-1).word == "each" {
				t.says = 0
			}
		case "don't", "dont":
			if next.word == "know" || next.word == "think" || next.word == "buy" {
				t.says = 0
			}
		case "weigh", "weighs", "weighed", "weight":
			for j := i - 2; j <= i+3; j++ {
				if p.at(j).says&machine != 0 && p.at(j).sentence == t.sentence {
					t.says |= ballast
				}
			}
		case "then":
			if p.at(i-1).word == "back" || p.at(i-1).word == "since" {
				t.says = 0
			}
		case "raise", "raises", "raised", "raising":
			if next.says&pressing != 0 || beyond.says&pressing != 0 {
				t.says &^= lifting
			}
		}
		if t.word == "before" || t.word == "after" {
			for j := i + 1; j <= i+4; j++ {
				if p.at(j).sentence == t.sentence && p.at(j).says&warm != 0 {
					t.says = 0
				}
			}
		}
	}
}

// at returns the token at i, an empty one outside the text.
func (p *post) at(i int) token {
	if i < 0 || i >= len(p.tokens) {
		return token{sentence: -1}
	}
	return p.tokens[i]
}

func space(b byte) bool { return b == ' ' || b == '\t' || b == '\n' || b == '\r' }

func digit(s string, i int) bool { return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9' }

// number returns where the number that begins at i ends: digits, points and
// commas with digits behind them, or a fraction of the kind a tape has.
func number(s string, i int) int {
	end := i
	for digit(s, end) || end < len(s) && (s[end] == '.' || s[end] == ',') && digit(s, end+1) {
		end++
	}
	if end-i <= 2 && end < len(s) && s[end] == '/' && digit(s, end+1) {
		below := end + 1
		for digit(s, below) {
			below++
		}
		switch s[end+1 : below] {
		case "2", "3", "4", "5", "8", "16", "32", "64":
			if below == len(s) || s[below] != '/' {
				return below
			}
		}
	}
	return end
}

// partOfName reports whether the number at i to end is a model, a price, a date,
// a time, or the like.
func partOfName(s string, i, end int) bool {
	if i > 0 {
		r, size := utf8.DecodeLastRuneInString(s[:i])
		switch {
		case unicode.IsLetter(r), r == '$', r == '€', r == '£', r == '#', r == '_', r == '@':
			return true
		case r == '-' || r == '/' || r == ':':
			if digit(s, i-2) && (r != '-' || s[i] == '0' && digit(s, i+1)) { // 3/14/2019, 10:30, 555-0142
				return r != '/' || end-i < 4 || s[i] == '0' || tail(s[:i-1]) < 3 // but 2,450/2,700
			}
			l, _ := utf8.DecodeLastRuneInString(s[:i-size])
			return r == '-' && unicode.IsLetter(l) // L-3000
		}
	}
	if end < len(s) {
		switch {
		case s[end] == ':' && digit(s, end+1), s[end] == '/' && digit(s, end+1) && end-i < 3:
			return true
		case s[end] == '-' && digit(s, end+1) && s[end+1] == '0' && digit(s, end+2):
			return true
		}
	}
	return false
}

// tail returns how many digits s ends with.
func tail(s string) int {
	n := 0
	for n < 9 && digit(s, len(s)-1-n) {
		n++
	}
	return n
}

// wordEnd returns where a word ends: letters, with apostrophes between them.
func wordEnd(s string, i int) int {
	for i < len(s) {
		r, size := utf8.DecodeRuneInString(s[i:])
		if r == '\'' || r == '’' {
			if l, _ := utf8.DecodeRuneInString(s[i+size:]); !unicode.IsLetter(l) {
				return i
			}
		} else if !unicode.IsLetter(r) {
			return i
		}
		i += size
	}
	return i
}
