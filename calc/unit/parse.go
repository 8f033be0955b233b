package unit

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Value is a number with its unit as somebody entered it.
type Value struct {
	SI        float64 // in the SI unit of the kind
	Number    string  // the number typed, with a point and no grouping: "2610", "0.5"
	Unit      Unit    // the unit that Number is in
	UnitTyped bool    // the unit stood in the text, and was not taken from the field
}

// Canonical returns the value as links write it: "2610 psi", "0.5 in", "2 %".
// [Parse] gives the identical SI value from it in either system.
func (v Value) Canonical() string {
	if v.Unit.Name == "" {
		return v.Number
	}
	return v.Number + " " + v.Unit.Name
}

// Error says in plain English what is wrong with a typed text and what would be
// right. It stands beside the field.
type Error struct {
	Message string
	Choices []string // canonical texts to choose from, when the text can be read two ways
}

// Error returns the message.
func (e *Error) Error() string { return e.Message }

// longest is the longest text taken for a number with its unit, in bytes.
const longest = 200

// Parse reads a number and an optional unit of the kind: "2,610 psi", "185 bar",
// "1 1/2 in", "¼", "12,5 mm", "2 612". Without a unit it is in def; the zero def
// stands for the unit shown in the system. A [Count] must be whole.
//
// Decimal comma and point both work. "1,234" is 1234 in US; in metric it may be
// either, and the error offers both as Choices. Any error is an [*Error].
func Parse(text string, k Kind, def Unit, s System) (Value, error) {
	typed := clean(text)
	if typed == "" {
		return Value{}, &Error{Message: "Enter a number"}
	}
	fail := func(problem string) (Value, error) {
		return Value{}, &Error{Message: quote(typed) + " " + problem + "; type a number such as " + kinds[k].sample[s] + "."}
	}
	if len(typed) > longest {
		return fail("is too long")
	}
	r, problem := scan(plainText(typed))
	if problem != "" {
		return fail(problem)
	}

	u, unitTyped := def, r.rest != ""
	if unitTyped {
		var known bool
		if u, known = k.Lookup(r.rest); !known {
			if x, ok := feetAndInches(k, r); ok {
				return value(x, inches, true), nil
			}
			if !unitLike(r.rest) {
				return fail("is not a number")
			}
			return Value{}, &Error{Message: quote(typed) + " has " + quote(r.rest) + ", " + k.wants(s)}
		}
	} else if u.Factor == 0 {
		u = k.Shown(s)
	}

	v := value(r.x, u, unitTyped)
	if math.IsInf(v.SI, 0) {
		return fail("is too large")
	}
	if k == Count {
		if r.x != math.Trunc(r.x) {
			return fail("is not a whole number")
		}
	} else if s == Metric && !math.IsNaN(r.comma) {
		a, b := v.Canonical(), value(r.comma, u, unitTyped).Canonical()
		return Value{}, &Error{
			Message: quote(typed) + " can be read two ways: choose " + a + " or " + b + ".",
			Choices: []string{a, b},
		}
	}
	return v, nil
}

// feetAndInches reads what follows a whole number of feet, "' 2 1/2\"" or "ft 2
// in" with or without a mark behind the inches, and returns all of it in inches.
// Twelve inches or more beside feet are a slip.
func feetAndInches(k Kind, r reading) (x float64, ok bool) {
	at := strings.IndexAny(r.rest, digits)
	if k != Length || at < 0 || r.x != math.Trunc(r.x) || !math.IsNaN(r.comma) {
		return 0, false
	}
	mark, known := k.Lookup(strings.TrimRight(r.rest[:at], " -"))
	beside, problem := scan(r.rest[at:])
	if !known || mark != feet || problem != "" || !(beside.x < 12) || !math.IsNaN(beside.comma) {
		return 0, false
	}
	if beside.rest != "" {
		if mark, _ = k.Lookup(beside.rest); mark != inches {
			return 0, false
		}
	}
	return math.Copysign(12*math.Abs(r.x)+beside.x, r.x), true
}

// value builds the Value of x in the unit. The SI value is worked out from the
// number that Number stands for, so that a link gives it back to the last bit.
func value(x float64, u Unit, unitTyped bool) Value {
	if x == 0 {
		x = 0 // no minus zero
	}
	return Value{SI: u.ToSI(x), Number: shortest(x), Unit: u, UnitTyped: unitTyped}
}

// shortest returns the shortest text that parses back to x; without an exponent
// unless x is far from anything a tape or a gauge shows.
func shortest(x float64) string {
	if a := math.Abs(x); a != 0 && (a < 1e-9 || a >= 1e15) {
		return strings.Replace(strconv.FormatFloat(x, 'e', -1, 64), "e+", "e", 1)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// wants ends the message about a wrong unit by saying what would be right.
func (k Kind) wants(s System) string {
	if k.plain() {
		return "but no unit belongs here; type a number such as " + kinds[k].sample[s] + "."
	}
	return "which is not " + kinds[k].noun + "; use " + k.Names() + "."
}

// unitLike reports whether what follows a number was meant as a unit, rather
// than being more of a number gone wrong: a unit of any kind, or letters alone.
func unitLike(rest string) bool {
	if Known(rest) {
		return true
	}
	first := []rune(rest)[0]
	return (unicode.IsLetter(first) || first == '°' || first == '%') && !strings.ContainsAny(rest, digits)
}

// clean takes out the marks that nobody sees (direction marks, byte order mark,
// zero-width space), which come along when text is pasted, and trims.
func clean(text string) string {
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case r >= '\u200E' && r <= '\u200F', r >= '\u202A' && r <= '\u202E',
			r >= '\u2066' && r <= '\u2069', r == '\uFEFF', r == '\u200B':
			return -1
		}
		return r
	}, text))
}

// plainForms writes signs, spaces and fractions that stand for a plain one as
// that: true minus, fraction slash, the fixed and narrow spaces used between
// groups of digits, and the fractions of a tape measure.
var plainForms = strings.NewReplacer(
	"\u2212", "-", "\u2044", "/",
	"\u00A0", " ", "\u202F", " ", "\u2009", " ", "\u2007", " ", "\u200A", " ",
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3",
)

func plainText(typed string) string {
	for i := range len(typed) {
		if typed[i] >= utf8.RuneSelf {
			return strings.TrimSpace(plainForms.Replace(typed))
		}
	}
	return strings.TrimSpace(typed) // plain already, as nearly always
}

// quote echoes what was typed, on one line and at most 30 characters of it.
func quote(typed string) string {
	const most = 30
	shown := make([]rune, 0, most+1)
	for _, r := range typed {
		if len(shown) == most {
			shown = append(shown, '…')
			break
		}
		if unicode.IsControl(r) || unicode.IsSpace(r) {
			r = ' '
		}
		shown = append(shown, r)
	}
	return `"` + string(shown) + `"`
}
