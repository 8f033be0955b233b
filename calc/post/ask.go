package post

import (
	"strings"

	"plainlift/calc/unit"
)

// How a question begins, up to the value that it asks about.
const (
	askPlain      = "Is "
	askShort      = "It is written short: is "
	askThousands  = "The point may part thousands: is "
	askMiddle     = "A range is given: is its middle, "
	askUnit       = "No unit is given: is "
	askPounds     = "The pounds seem to be psi: is "
	askMany       = "More than one number may be it: is "
	askFell       = "It did not go up: is "
	askUnusual    = "That is unusual for a relief valve: is "
	askRated      = "It seems to be the rated lift: is "
	askSum        = "From the rise and the other reading: is "
	askQuoted     = "It stands in a quotation: is "
	askOfPressure = "Is it of the pressure or of the lift? "
	askRise       = "Raised from what? Enter the pressure before; add "
)

// fields says what the value of each field is.
var fields = [...]struct{ id, is string }{
	{"before", "the pressure before the change"},
	{"after", "the pressure after the change"},
	{"claimed", "the gain in lift"},
	{"lift_before", "the load lifted before the change"},
	{"lift_after", "the load lifted after the change"},
	{"gained", "the load gained"},
}

// ask makes the item one to be asked about; the first reason stays.
func (it *item) ask(why string) {
	if it.why == "" || it.why == askPlain {
		it.why = why
	}
}

// picks returns what is left of the items.
func (p *post) picks(s unit.System) []Pick {
	var picks []Pick
	for i := range p.items {
		it := &p.items[i]
		if it.drop {
			continue
		}
		k := Pick{Start: it.at, End: it.end, Kind: it.kind, Rise: it.rise, Field: it.field}
		x := (it.x + it.high) / 2
		number := unit.Unit{Factor: 1, Divisor: 1}.Edit(x)
		k.Value = number + " " + it.unit
		_, decimals, _ := strings.Cut(number, ".")
		u, _ := it.kind.Lookup(it.unit)
		k.Shown = unit.Decimals(x, max(len(decimals), it.kind.Least(u)), s) + " " + it.unit
		if p.quoted && it.field != "" {
			it.why = askQuoted
		}
		k.Sure, k.Ask = it.why == "", it.question(k.Shown)
		picks = append(picks, k)
	}
	return picks
}

// question words the question; "" when there is none.
func (it *item) question(shown string) string {
	switch it.why {
	case "":
		return ""
	case askRise:
		return askRise + shown + " for the one after."
	case askOfPressure:
		return askPlain + shown + " more lift, or more pressure?"
	case askMiddle:
		shown += ","
	}
	text := it.why + shown
	for i := range fields {
		if fields[i].id == it.field {
			text += " " + fields[i].is
		}
	}
	return text + "?"
}
