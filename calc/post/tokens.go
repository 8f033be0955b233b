package post

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// token is a word, a number or a mark.
type token struct {
	at, end  int
	kind     byte   // 'w' a word, 'n' a number, 'x' a number that is part of a name, 'p' a mark
	word     string // in lower case
	glued    bool   // no space before it
	sentence int
	sense
}

// tokenize cuts the text into tokens and sentences.
func (p *post) tokenize() {
	words := vocabulary()
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
			p.line(at, line, words)
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
func (p *post) line(base int, line string, words map[string]sense) {
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
		t.at, t.end, t.sense, t.sentence = base+i, base+end, words[t.word], len(p.sentences)
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
	return among(p.at(n-2).word, " lb lbs in approx ca hr hrs vs ") && rest != "" && (rest[0] >= 'a' && rest[0] <= 'z' || digit(rest, 0))
}

// outside stands for a token before or behind the text.
var outside = token{sentence: -1}

// at returns the token at i, an empty one outside the text.
func (p *post) at(i int) *token {
	if i < 0 || i >= len(p.tokens) {
		return &outside
	}
	return &p.tokens[i]
}

// sentenceOf returns what the words of the item's sentence say.
func (p *post) sentenceOf(it *item) cue { return p.sentences[it.sentence] }

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
		if among(s[end+1:below], " 2 3 4 5 8 16 32 64 ") && (below == len(s) || s[below] != '/') {
			return below
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
