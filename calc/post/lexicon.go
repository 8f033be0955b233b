package post

import "strings"

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
	vehicle                  // what a weight with no more words is the weight of
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
	{unable, "not never don't dont couldn't wouldn't can't cannot won't didn't couldnt wouldnt cant wont didnt unable"},
	{change, "went go goes going raised raise raising turned turning cranked bumped brought took taking jumped climbed rose moved increased adjusted set upped changed came gone dialed dialled got shimmed"},
	{up, "up by another increase increased bumped upped gained added raised extra higher rise bump jumped climbed rose"},
	{down, "down lowered lower dropped drop backed reduced decreased fell loosened"},
	{target, "i'd you'd he'd i'll should could might try want wants plan planning planned thinking recommend recommended suggest if aim aiming goal target shooting max maximum limit exceed exceeding don't dont not need needs hoping wish gonna going would unless"},
	{book, "book manual spec specs specification calls supposed rated rating specified oem recommends hose hoses burst brochure"},
	{under, "under below short over above low shy"},
	{lifting, "lift lifts lifted lifting pick picks picked picking hoist hoists hoisted raise raises raised carry carries carried bale bales pallet pallets load loads loaded bucket loader handle handles handled capacity log rock forks pull pulls pulled scale"},
	{more, "more gain gained gains increase increased increases extra additional added up higher heavier"},
	{better, "better stronger improvement improved boost over above"},
	{less, "less weaker worse lost"},
	{pressing, "pressure pressures relief psi gauge gage dial reading readings reads read hydraulic hydraulics setting settings port"},
	{gauge, "gauge gage guage gauges dial"},
	{each, "each per every"},
	{vehicle, "tractor machine truck trailer skid"},
	{machine, "tractor machine truck trailer i grapple fork forks skid itself bucket loader"},
	{ballast, "ballast weights wheel blade tire tires tyre tyres liquid torque axle counterweight fluid"},
	{others, "other neighbor's neighbour's brother's buddy's dad's friend's neighbor neighbour his hers theirs their someone somebody anyone friend buddy brother dad"},
	{aside, "cost costs price paid cheaper sure certain time throttle slope grade duty accuracy accurate interest error charge tread humidity positive off financing discount scale gauge gage agree correct"},
	{about, "about around roughly approximately approx maybe nearly almost like a an the only just some say exactly right steady solid another extra ~ ≈ ("},
	{part, "instead used and then but so while with , ; : ( ) / – — | \n"},
	{warm, "warm warmed warming warms warm-up run running minutes minute min hour hours sitting idle idling heated heating working cold"},
	{rated, "rated rating brochure spec specs capacity book"},
	{iffy, "if unless suppose"},
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
			if strings.HasPrefix(p.at(i-1).word, "pick") || p.at(i-1).says&warm != 0 {
				t.says = 0
			}
		case "other":
			if next.word == "day" || next.word == "night" || p.at(i-1).word == "each" {
				t.says = 0
			}
		case "don't", "dont", "not":
			switch next.word {
			case "go", "set", "run", "exceed", "turn":
			default:
				t.says &^= target
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
