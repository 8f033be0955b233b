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
	weigh                    // what something weighs
	fickle                   // means something else beside certain words
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
	{lifting, "lift lifts lifted lifting pick picks picked picking hoist hoists hoisted raise raises raised carry carries carried bale bales pallet pallets load loads loaded bucket loader handle handles handled capacity log rock hook forks pull pulls pulled scale"},
	{more, "more gain gained gains increase increased increases extra additional added up higher heavier"},
	{better, "better stronger improvement improved boost over above"},
	{less, "less weaker worse lost"},
	{pressing, "pressure pressures relief psi gauge gage dial reading readings reads read hydraulic hydraulics setting settings port"},
	{gauge, "gauge gage guage gauges dial"},
	{each, "each per every"},
	{vehicle, "tractor machine truck trailer skid"},
	{machine, "tractor machine truck trailer i grapple fork forks skid itself bucket loader"},
	{weigh, "weigh weighs weighed weight"},
	{ballast, "ballast weights wheel blade tire tires tyre tyres liquid torque axle counterweight fluid"},
	{others, "other neighbor's neighbour's brother's buddy's dad's friend's neighbor neighbour his hers theirs their someone somebody anyone friend buddy brother dad"},
	{aside, "cost costs price paid cheaper sure certain time throttle slope grade duty accuracy accurate interest error charge tread humidity positive off financing discount gauge gage agree correct"},
	{about, "about around roughly approximately approx maybe nearly almost like a an the only just some say exactly right steady solid another extra ~ ≈ ("},
	{part, "instead used and then but so while with , ; : ( ) / – — | \n"},
	{warm, "warm warmed warming warms warm-up run running minutes minute min hour hours sitting idle idling heated heating working cold"},
	{rated, "rated rating brochure spec specs capacity book"},
	{iffy, "if unless suppose"},
}

// corrections are what words do not say, or say besides, next to certain others.
var corrections = [...]struct {
	words, beside string
	at            int  // where that other word stands: 1 is the next one
	unless        bool // the correction is made unless it stands there
	loses, gains  cue
}{
	{words: "used", beside: " to ", at: 1, unless: true, loses: every},
	{words: "old new", beside: " : setting settings pressure pressures reading readings relief psi ", at: 1, unless: true, loses: every},
	{words: "i'd", beside: " guess say call bet estimate ", at: 1, loses: every},
	{words: "going", beside: " to ", at: 1, unless: true, loses: target},
	{words: "would", beside: " be go like set try need ", at: 1, unless: true, loses: every},
	{words: "could", beside: " only barely just never ", at: 1, loses: every},
	{words: "first", beside: " shim shims washer turn one ", at: 1, loses: every},
	{words: "if", beside: " anything ", at: 1, loses: every},
	{words: "if", beside: " even ", at: -1, loses: every},
	{words: "washer washers", beside: " pressure ", at: -1, loses: every, gains: book}, // what a pressure washer gives
	{words: "up", beside: " pick picks picked picking warm warmed warming warms ", at: -1, loses: every},
	{words: "up", beside: " at to ", at: 1, unless: true, loses: now},
	{words: "other", beside: " day night ", at: 1, loses: every},
	{words: "other", beside: " each ", at: -1, loses: every},
	{words: "don't dont not", beside: " go set run exceed turn ", at: 1, unless: true, loses: target},
	{words: "then", beside: " back since ", at: -1, loses: every},
	{words: "raise raises raised", beside: " pressure relief psi setting ", at: 1, loses: lifting},
	{words: "raise raises raised", beside: " pressure relief psi setting ", at: 2, loses: lifting},
}

const every = ^cue(0)

// correct makes the corrections, and those that several words together call for:
// what weighs is a machine, what comes before or after is only warming up.
func (p *post) correct() {
	for i := range p.tokens {
		t := p.at(i)
		if t.says&fickle != 0 {
			for k := range corrections {
				c := &corrections[k]
				if strings.Contains(c.words, t.word) && among(t.word, " "+c.words+" ") && among(p.at(i+c.at).word, c.beside) != c.unless {
					t.says = t.says&^c.loses | c.gains
				}
			}
		}
		switch {
		case t.says&weigh != 0 && p.says(i-2, i+4, t.sentence)&machine != 0:
			t.says |= ballast
		case t.says&(before|after) != 0 && among(t.word, " before after ") && p.says(i+1, i+5, t.sentence)&warm != 0:
			t.says = 0
		}
	}
}

// among reports whether the word is in the list, whose words all stand between spaces.
func among(word, list string) bool {
	return word != "" && strings.Contains(list, " "+word+" ")
}
