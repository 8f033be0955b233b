// Package post picks out of the text of a forum post what bears on a claim of
// before and after: pressures, loads, a gain in percent, shims.
//
// The rules are plain: numbers and their units are found, the words around them
// say what they are, and what the words leave open is asked. A number is sure
// only when its unit and its place stand in the post; a book figure, a gauge's
// range, somebody's advice or a tyre pressure is not picked at all. Words of the
// trade in English only. (All of it common practice, no source.)
//
// The way of a text: tokens.go cuts it into words and numbers, lexicon.go knows
// the words that matter, quantity.go makes quantities of numbers and units,
// pair.go joins those that stand for one value or for the two ends of a change,
// context.go reads the words around each, role.go says from them what it is,
// settle.go weighs them against one another, and ask.go words the questions. Each
// looks only a few words around, so that the time grows with the length of the
// text and no faster.
package post

import "plainlift/calc/unit"

// Pick is one thing found in a post.
type Pick struct {
	Start, End int       // where it stands: bytes Start to End of the text
	Kind       unit.Kind // Pressure, Load, Percent or Thickness
	Rise       bool      // a pressure by which it was raised, not one that a gauge showed
	Field      string    // the field of before-after that would take Value; "" for none
	Value      string    // as links write it: "2450 psi", "30 %"
	Shown      string    // the same as the reader's system shows it: "2,450 psi"
	Sure       bool      // the post says so; otherwise Ask
	Ask        string    // the question that would settle it; "" when sure
}

// longest is how much of a text is read, in bytes.
const longest = 100_000

// Read returns what it finds in the text, in the order in which it stands there.
// The system only sets how Shown and the questions write numbers.
//
// Lines that quote an earlier post, beginning with ">" or between [quote] and
// [/quote], are left out, unless nothing is found in the rest: then they are
// read, and everything found in them is asked. Of a text over 100,000 bytes the
// start is read. Several picks for one field are never sure: it asks which.
func Read(text string, s unit.System) []Pick {
	text = text[:min(len(text), longest)]
	picks := read(text, s, false)
	if len(picks) == 0 {
		picks = read(text, s, true)
	}
	return picks
}

// read reads either the lines that quote or the others.
func read(text string, s unit.System, quoted bool) []Pick {
	p := &post{text: text, quoted: quoted}
	p.tokenize()
	p.quantities()
	p.pairs()
	p.roles()
	p.settle()
	return p.picks(s)
}

// post is a text while it is being read.
type post struct {
	text      string
	quoted    bool
	tokens    []token
	sentences []cue // all that the words of each sentence say
	all       cue   // all that the words of the post say
	items     []item
	risen     int  // how many rises in pressure it tells of
	metric    bool // bar or kilograms stand in it
	imperial  bool // psi or pounds do
}
