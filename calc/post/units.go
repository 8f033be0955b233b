package post

import (
	"strings"

	"plainlift/calc/unit"
)

// spelling is a unit as people write it.
type spelling struct {
	name   string // as unit.Unit has it; "-" for what is of no use here
	kind   unit.Kind
	factor float64 // to psi, lb or inches, by which the plausible is told from the rest; need not be exact
	words  string  // with what is commonly mistyped
}

var spellings = [...]spelling{
	{"psi", unit.Pressure, 1, "psi psl pis ps psig pisg psii spi pssi"},
	{"ksi", unit.Pressure, 1000, "ksi"},
	{"bar", unit.Pressure, 14.5, "bar bars barg"},
	{"MPa", unit.Pressure, 145, "mpa"},
	{"kPa", unit.Pressure, 0.145, "kpa"},
	{"kgf/cm²", unit.Pressure, 14.2, ""},
	{"lb", unit.Load, 1, "lb lbs lbd lbf ibs lsb llbs pound pounds punds ponds #"},
	{"kg", unit.Load, 2.2, "kg kgs kgf kilo kilos kilogram kilograms"},
	{"kN", unit.Load, 225, "kn"},
	{"%", unit.Percent, 1, "% percent pct precent"},
	{"thou", unit.Thickness, 0.001, "thou thous thousandths mil mils"},
	{"mm", unit.Thickness, 0.0394, "mm millimetre millimetres millimeter millimeters"},
	{"in", unit.Thickness, 1, "in inch inches \" ″ ” ''"},
	{"x", other, 1, "x times ×"},
	{"-", other, 1, "rpm rpms hp hours hour hrs hr h gpm lpm ft feet foot ' yd yard yards miles mile mph deg degrees degree f c ° volts volt v amps amp gallons gallon gal qt quart quarts " +
		"min minutes minute sec seconds second day days week weeks month months year years yrs kw nm dollars bucks usd series model acre acres cm m th st nd rd turns turn " +
		"shim shims washer washers posts pages cc w t ton tons tonne tonnes cents people guys $ €"},
}

// measured gives the item the unit with that name.
func (it *item) measured(name string) {
	for i := range spellings {
		if u := &spellings[i]; u.name == name {
			it.unit, it.kind, it.factor = name, u.kind, u.factor
		}
	}
}

// size is x in psi, lb or inches, about.
func (it *item) size() float64 { return it.x * it.factor }

// sense is what a word means to the rules.
type sense struct {
	says  cue
	unit  *spelling // nil when it is none
	value float64   // of a number word
	share float64   // of a word for a part of what there was, or a multiple, in percent more
}

// The number words in their order, and the words for shares.
const (
	upToNineteen = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen"
	tens         = "twenty thirty forty fifty sixty seventy eighty ninety"
)

var shares = [...]struct {
	percent float64
	words   string
}{
	{20, "fifth 1/5"}, {25, "quarter 1/4"}, {33, "third 1/3"}, {50, "half 1/2"}, {67, "thirds"}, {75, "quarters"},
	{100, "double doubled doubles twice"}, {200, "triple tripled triples"},
}

// vocabulary returns all the words that the rules know.
func vocabulary() map[string]sense {
	all := make(map[string]sense, 800)
	add := func(words string, with func(s *sense)) {
		for _, word := range strings.Fields(words) {
			s := all[word]
			with(&s)
			all[word] = s
		}
	}
	for i := range lexicon {
		add(lexicon[i].words, func(s *sense) { s.says |= lexicon[i].sense })
	}
	for i := range corrections {
		add(corrections[i].words, func(s *sense) { s.says |= fickle })
	}
	for i := range spellings {
		add(spellings[i].words, func(s *sense) { s.unit = &spellings[i] })
	}
	for i := range shares {
		add(shares[i].words, func(s *sense) { s.share = shares[i].percent })
	}
	n := 0.0
	add(upToNineteen, func(s *sense) { s.value, n = n, n+1 })
	add(tens, func(s *sense) { s.value, n = n, n+10 })
	all["\n"] = sense{says: part}
	return all
}
