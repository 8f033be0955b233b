package calc

import (
	"math"
	"strings"

	"plainlift/calc/unit"
)

// withUnit puts a unit behind a number: "2,610 psi", "5 %", "1.9 times", "8°".
func withUnit(number, name string) string {
	if name == "" || name == "°" {
		return number + name
	}
	return number + " " + name
}

// text is a field's entry as sentences quote it: as typed where the unit is the
// one shown, else converted to four significant digits at most.
func (f *Field) text(v *value, sys unit.System) string {
	if !v.set {
		return f.Empty
	}
	if f.Shape == Choice {
		if o := f.option(v.choice); o != nil {
			return o.Label
		}
		return v.choice
	}
	name := f.Kind.Shown(sys).Name
	if f.Shape == Single {
		return withUnit(quoteNumber(v.a[0], f.Kind, sys), name)
	}
	var parts []string
	for i, x := range v.a {
		s := quoteNumber(x, f.Kind, sys)
		if f.Shape == Pairs {
			s = withUnit(s, name) + " : " + withUnit(quoteNumber(v.b[i], f.With, sys), f.With.Shown(sys).Name)
		}
		parts = append(parts, s)
	}
	if f.Shape == Pairs {
		return strings.Join(parts, "; ")
	}
	return withUnit(strings.Join(parts, "; "), name)
}

// entryNumber is the number of one entry in the shown unit, for its field.
func entryNumber(x unit.Value, k unit.Kind, sys unit.System) string {
	return numberIn(x, k, sys, func(n float64) int { return unit.PlaceSig(n, 4) })
}

// quoteNumber is the same for a sentence: no finer than anybody reads.
func quoteNumber(x unit.Value, k unit.Kind, sys unit.System) string {
	return numberIn(x, k, sys, func(n float64) int { return four(n, k, k.Shown(sys)) })
}

func numberIn(x unit.Value, k unit.Kind, sys unit.System, places func(float64) int) string {
	u := k.Shown(sys)
	if x.Unit.Name == u.Name {
		return grouped(x.Number, k.Least(u), sys)
	}
	n := u.FromSI(x.SI)
	return trimmed(unit.Decimals(n, places(n), sys), k.Least(u))
}

// four returns the decimal places for four significant digits, but no more than
// the unit is read to.
func four(x float64, k unit.Kind, u unit.Unit) int {
	return min(unit.PlaceSig(x, 4), max(k.Finest(u), unit.PlaceSig(x, 2)))
}

// grouped is a typed number with the thousands marked and at least so many
// decimals, where it is a plain decimal.
func grouped(number string, least int, sys unit.System) string {
	x, places, ok := plainDecimal(number)
	if !ok {
		return number
	}
	return unit.Decimals(x, max(places, least), sys)
}

func plainDecimal(s string) (x float64, places int, ok bool) {
	v, err := unit.Parse(s, unit.Number, unit.Number.Shown(unit.US), unit.US)
	if err != nil || strings.ContainsAny(s, "eE/ ") || len(s) > 15 {
		return 0, 0, false
	}
	if i := strings.IndexByte(s, '.'); i >= 0 {
		places = len(s) - i - 1
	}
	return v.SI, places, true
}

// number is a figure's value rounded for reading, without its unit. against
// are SI values that the text must not meet or cross.
func (g *Figure) number(si, half float64, against []float64, sys unit.System) string {
	u := g.Kind.Shown(sys)
	x := u.FromSI(si)
	if g.Round == Chance {
		return chance(x, against, u, sys)
	}
	write := func(places int) string { return unit.Decimals(x, clear(x, places, against, u), sys) }
	switch {
	case g.Round == Two:
		return write(unit.PlaceSig(x, 2))
	case g.Round == ByDoubt && half > 0 && !math.IsInf(half, 0):
		return write(unit.PlaceTwo(math.Abs(u.FromSI(half) - u.FromSI(0))))
	}
	return trimmed(write(four(x, g.Kind, u)), g.Kind.Least(u))
}

// trimmed is a decimal without the zeros at its end, but for so many decimals.
func trimmed(s string, least int) string {
	for dot := strings.IndexByte(s, '.'); dot >= 0 && len(s)-dot-1 > least && s[len(s)-1] == '0'; {
		s = s[:len(s)-1]
	}
	return strings.TrimSuffix(s, ".")
}

// clear adds digits until the rounded number stands on the same side of every
// limit as the number itself.
func clear(x float64, places int, against []float64, u unit.Unit) int {
	for range 4 {
		if !crosses(x, places, against, u) {
			break
		}
		places++
	}
	return places
}

func crosses(x float64, places int, against []float64, u unit.Unit) bool {
	scale := math.Pow(10, float64(places))
	shown := math.Round(x*scale) / scale
	for _, si := range against {
		l := u.FromSI(si)
		if math.IsNaN(l) || math.Abs(x-l) <= 1e-9*math.Abs(l) {
			continue
		}
		if x < l && shown >= l || x > l && shown <= l {
			return true
		}
	}
	return false
}

// chance is a probability in whole percent; the ends are never called certain.
// A limit above 99 % asks for more: "99.4" falls short of 99.9.
func chance(percent float64, against []float64, u unit.Unit, sys unit.System) string {
	most := 99.0
	for _, si := range against {
		switch l := u.FromSI(si); {
		case l > most && percent > l:
			most = l
		case percent > 99 && percent <= l && l < 100:
			return unit.Decimals(percent, clear(percent, 0, append(against, u.ToSI(100)), u), sys)
		}
	}
	switch {
	case percent < 1:
		return "under 1"
	case percent > most:
		return "over " + trimmed(unit.Decimals(most, 4, sys), 0)
	}
	return unit.Decimals(percent, clear(percent, 0, against, u), sys)
}
