package calc

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"plainlift/calc/unit"
)

// Entry is what stands in one field.
type Entry struct {
	Text   string
	Unit   string // what a number without a unit is in; "" is the shown unit
	UnitTo string // the same for the second number of pairs
	Own    bool   // the reader's: typed, carried, in the link, or confirmed
}

// Entries are the fields that differ from an untouched page, by ID. A field
// left out holds its example. Keys that are no field are links' own (see
// link.go) or are named in a notice.
type Entries map[string]Entry

// Measured is one pair of a Pairs field in SI.
type Measured struct{ A, B float64 }

const (
	longestText = 20_000 // characters of one field; more is refused unread
	mostRows    = 200
)

// value is an entry once read.
type value struct {
	text   string // as typed
	own    bool
	set    bool // not empty
	bad    bool // could not be read whole
	bears  bool
	choice string
	a, b   []unit.Value // b: the second numbers of pairs

	canonical string     // as a link writes it; "" when empty or bad
	shown     string     // as sentences quote it
	rows      []RowState // as the field's own controls show it; none for a choice
}

func (f *Field) parse(e Entry, sys unit.System) (value, []Problem) {
	v := value{text: e.Text, own: e.Own}
	text := strings.TrimSpace(e.Text)
	complain := func(row int, err error) Problem {
		p := Problem{Field: f.ID, Row: row, Message: err.Error()}
		var ue *unit.Error
		if errors.As(err, &ue) {
			p.Choices = ue.Choices
		}
		return p
	}
	if len(text) > longestText {
		return v, []Problem{complain(-1, fmt.Errorf("That is too long to read: up to %d characters", longestText))}
	}
	if text == "" {
		if f.Empty == "" {
			return v, []Problem{complain(-1, errors.New(f.wanted(sys)))}
		}
		return v, nil
	}
	v.set = true
	ua, ub := f.unitFor(f.Kind, e.Unit, sys), f.unitFor(f.With, e.UnitTo, sys)
	switch f.Shape {
	case Choice:
		if f.option(text) != nil {
			v.choice = text
			return v, nil
		}
		return v, []Problem{complain(-1, fmt.Errorf("“%s” is not one of the choices: %s", clip(text), f.choices()))}
	case Single:
		x, err := unit.Parse(text, f.Kind, ua, sys)
		if err == nil {
			err = f.Range.holds(x, f.Kind, sys)
		}
		if err != nil {
			return v, []Problem{complain(-1, err)}
		}
		v.a = []unit.Value{x}
		return v, nil
	}
	items := unit.SplitList(text)
	if most := f.rows(); len(items) > most {
		return v, []Problem{complain(-1, fmt.Errorf("That is %d rows; up to %d can be used", len(items), most))}
	}
	var problems []Problem
	for i, item := range items {
		var to string
		if f.Shape == Pairs {
			var ok bool
			if item, to, ok = unit.SplitPair(item); !ok {
				problems = append(problems, complain(i, fmt.Errorf("Two numbers with a colon between, such as %s", f.pairLike(sys))))
				continue
			}
		}
		x, err := unit.Parse(item, f.Kind, ua, sys)
		if err == nil {
			err = f.Range.holds(x, f.Kind, sys)
		}
		if err != nil {
			problems = append(problems, complain(i, err))
			continue
		}
		v.a = append(v.a, x)
		if f.Shape != Pairs {
			continue
		}
		y, err := unit.Parse(to, f.With, ub, sys)
		if err == nil {
			err = f.RangeTo.holds(y, f.With, sys)
		}
		if err != nil {
			problems = append(problems, complain(i, err))
		}
		v.b = append(v.b, y)
	}
	if len(items) == 0 { // nothing but separators
		v.set = false
		if f.Empty == "" {
			problems = append(problems, complain(-1, errors.New(f.wanted(sys))))
		}
	}
	return v, problems
}

// choices lists what a link or a table may say.
func (f *Field) choices() string {
	var ids []string
	for _, o := range f.Options {
		ids = append(ids, o.ID)
	}
	return strings.Join(ids, ", ")
}

func (f *Field) rows() int {
	if f.MaxLen > 0 {
		return f.MaxLen
	}
	return mostRows
}

func (f *Field) unitFor(k unit.Kind, name string, sys unit.System) unit.Unit {
	if u, ok := k.Lookup(name); ok && name != "" {
		return u
	}
	return k.Shown(sys)
}

// wanted says what an empty field should hold.
func (f *Field) wanted(sys unit.System) string {
	if f.Shape == Choice {
		return "Choose one"
	}
	return "Enter a value, such as " + f.like(sys)
}

// like is the example in the reader's units.
func (f *Field) like(sys unit.System) string {
	v, problems := f.parse(Entry{Text: f.example()}, unit.US)
	if len(problems) > 0 || !v.set {
		return "a number with its unit"
	}
	return f.text(&v, sys)
}

func (f *Field) pairLike(sys unit.System) string {
	a, b := f.Kind.Shown(sys), f.With.Shown(sys)
	return strings.TrimSpace("10 "+a.Name) + " : " + strings.TrimSpace("20 "+b.Name)
}

// holds complains about a number outside the range, naming the range in the
// number's own unit.
func (r Range) holds(x unit.Value, k unit.Kind, sys unit.System) error {
	lo, hi := r.bound(r.Min, k, math.Inf(-1)), r.bound(r.Max, k, math.Inf(1))
	if x.SI > lo && x.SI <= hi || x.SI == lo && !r.Above {
		return nil
	}
	min := "from " + r.show(r.Min, k, x.Unit, sys, math.Ceil)
	if r.Above {
		min = "above " + r.show(r.Min, k, x.Unit, sys, math.Ceil)
	}
	switch max := r.show(r.Max, k, x.Unit, sys, math.Floor); {
	case r.Max == "":
		return errors.New("Must be " + min)
	case r.Min == "":
		return errors.New("Must be up to " + max)
	case r.Above:
		return errors.New("Must be " + min + " and up to " + max)
	default:
		return errors.New("Must be " + min + " to " + max)
	}
}

func (r Range) bound(text string, k unit.Kind, none float64) float64 {
	if text == "" {
		return none
	}
	v, err := unit.Parse(text, k, k.Shown(unit.US), unit.US)
	if err != nil {
		panic("calc: range bound " + text + ": " + err.Error())
	}
	return v.SI
}

// show gives a bound in a unit with four significant digits, cut inwards so that
// the number shown is itself inside: a lower bound up, an upper bound down.
func (r Range) show(text string, k unit.Kind, u unit.Unit, sys unit.System, inwards func(float64) float64) string {
	x := u.FromSI(r.bound(text, k, 0))
	p := unit.PlaceSig(x, 4)
	scale := math.Pow(10, float64(p))
	cut := x * scale
	if whole := math.Round(cut); math.Abs(cut-whole) > 1e-9 { // else only the conversion's rounding
		cut = inwards(cut)
	} else {
		cut = whole
	}
	cut /= scale
	if p > 0 {
		if s := strconv.FormatFloat(cut, 'f', -1, 64); !strings.Contains(s, ".") {
			p = 0
		} else {
			p = len(s) - strings.IndexByte(s, '.') - 1
		}
	}
	return withUnit(unit.Decimals(cut, max(p, 0), sys), u.Name)
}

func clip(s string) string {
	r := []rune(s)
	if len(r) > 30 {
		return string(r[:30]) + "…"
	}
	return s
}
