package post

import (
	"strings"

	"plainlift/calc/unit"
)

// spellings are the units as people write them, with what is commonly mistyped.
// A unit named "-" makes the number something of no use here.
var spellings = [...]struct{ unit, words string }{
	{"psi", "psi psl pis ps psig pisg psii spi pssi p.s.i"},
	{"ksi", "ksi"},
	{"bar", "bar bars barg"},
	{"MPa", "mpa"},
	{"kPa", "kpa"},
	{"lb", "lb lbs lbd lbf ibs lsb llbs pound pounds punds # ponds"},
	{"kg", "kg kgs kgf kilo kilos kilogram kilograms"},
	{"kN", "kn"},
	{"%", "% percent pct precent"},
	{"thou", "thou thous thousandths mil mils"},
	{"mm", "mm millimetre millimetres millimeter millimeters"},
	{"in", "in inch inches \" ″ ” ''"},
	{"x", "x times ×"},
	{"-", "rpm rpms hp hours hour hrs hr h gpm lpm ft feet foot ' yd yard yards miles mile mph deg degrees degree f c ° volts volt v amps amp gallons gallon gal qt quart quarts " +
		"min minutes minute sec seconds second day days week weeks month months year years yrs kw nm dollars bucks usd series model acre acres cm m kn/m th st nd rd turns turn " +
		"shim shims washer washers posts pages cc w t ton tons tonne tonnes cents people guys times/year $ €"},
}

// units gives each unit its kind, and the factor to psi, lb or inches by
// which the plausible is told from the rest. It need not be exact.
var units = map[string]struct {
	kind   unit.Kind
	factor float64
}{
	"psi": {unit.Pressure, 1}, "bar": {unit.Pressure, 14.5}, "MPa": {unit.Pressure, 145}, "kPa": {unit.Pressure, 0.145}, "kgf/cm²": {unit.Pressure, 14.2},
	"lb": {unit.Load, 1}, "kg": {unit.Load, 2.2}, "kN": {unit.Load, 225},
	"%":    {unit.Percent, 1},
	"thou": {unit.Thickness, 0.001}, "mm": {unit.Thickness, 0.0394}, "in": {unit.Thickness, 1},
	"x": {other, 1}, "-": {other, 1},
}

// size is x in psi, lb or inches, about.
func (it *item) size() float64 {
	if it.unit == "" {
		return it.x
	}
	return it.x * units[it.unit].factor
}

// numerals are the number words; those from 20 on take another behind them.
var numerals = func() map[string]float64 {
	m := make(map[string]float64, 40)
	for i, w := range strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen") {
		m[w] = float64(i)
	}
	for i, w := range strings.Fields("twenty thirty forty fifty sixty seventy eighty ninety") {
		m[w] = float64(10 * (i + 2))
	}
	m["fourty"] = 40
	return m
}()

// shares are the parts by which people say that something grew, in percent.
var shares = map[string]float64{
	"third": 33, "quarter": 25, "fifth": 20, "half": 50, "thirds": 67, "quarters": 75,
	"1/2": 50, "1/3": 33, "1/4": 25, "1/5": 20,
}
