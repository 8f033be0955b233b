package calc

import (
	"math"
	"strconv"
	"strings"

	"plainlift/calc/chart"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// Out is what Compute writes. Text may quote {id} of any field or figure; it is
// filled in after Compute returns.
type Out struct {
	w        *Worksheet
	in       *In
	figures  map[string]*shownFigure
	verdict  *Verdict
	extra    []string // sentences added to the verdict's
	answer   *Answer
	pictures []*chart.Chart
	entered  []*chart.Chart
	done     bool             // Compute has returned: no figure changes any more
	knows    map[string]known // by quantity, once asked
	brief    bool             // only the verdict and the figures are wanted
}

type shownFigure struct {
	si, half    float64
	value, text string // Words, or value "" and why
	words       bool
	number      string // as read, once worked out after Compute returned
}

func (o *Out) figure(id string) *shownFigure {
	if o.w.figure(id) == nil {
		panic("calc: Compute sets a figure that is not declared: " + id)
	}
	f := new(shownFigure)
	o.figures[id] = f
	return f
}

// Set gives a figure its SI value.
func (o *Out) Set(id string, si float64) { o.SetDoubt(id, si, 0) }

// SetDoubt gives a figure its SI value and the half-width that rounds it.
func (o *Out) SetDoubt(id string, si, half float64) {
	f := o.figure(id)
	f.si, f.half = si, half
}

// None says that a figure does not exist for these entries, and why.
func (o *Out) None(id, why string) {
	f := o.figure(id)
	f.si, f.words, f.text = math.NaN(), true, why
}

// Text gives a figure of words: the value a program reads and the text.
func (o *Out) Text(id, value, text string) {
	f := o.figure(id)
	f.si, f.words, f.value, f.text = math.NaN(), true, value, text
}

// Verdict chooses the branch.
func (o *Out) Verdict(key string) {
	for i := range o.w.Verdicts {
		if o.w.Verdicts[i].Key == key {
			o.verdict = &o.w.Verdicts[i]
			return
		}
	}
	panic("calc: Compute chooses a verdict that is not declared: " + key)
}

// Brief reports whether only the verdict and the figures are wanted: what takes
// time and is only shown, as a picture, may be left out.
func (o *Out) Brief() bool { return o.brief }

// Add puts another sentence behind the verdict's.
func (o *Out) Add(sentence string) { o.extra = append(o.extra, sentence) }

// Line adds a line under the verdict.
func (o *Out) Line(sentence string) { o.answer.Lines = append(o.answer.Lines, sentence) }

// Rest adds a line to what the answer rests on.
func (o *Out) Rest(sentence string) { o.answer.Rests = append(o.answer.Rests, sentence) }

// Budget shows the sources of doubt with their shares; limits gives, in the
// order of the budget, what was stated of each ("±80 psi") and may quote.
func (o *Out) Budget(k unit.Kind, b doubt.Budget, limits []string) {
	if o.brief {
		return
	}
	shares := b.Shares()
	u := k.Shown(o.in.sys)
	for i, s := range b {
		su := math.Abs(u.FromSI(s.Sens*s.U) - u.FromSI(0))
		o.answer.Budget = append(o.answer.Budget, BudgetRow{
			Name:  s.Name,
			Limit: limits[i],
			U:     withUnit(unit.Decimals(su, max(unit.PlaceSig(su, 2), 0), o.in.sys), u.Name),
			Share: shares[i],
			Text:  withUnit(shareText(shares[i]), "%"),
		})
	}
}

func shareText(share float64) string {
	switch p := share * 100; {
	case p == 0:
		return "0"
	case p < 1:
		return "under 1"
	case p > 99 && p < 100:
		return "over 99"
	default:
		return strconv.FormatFloat(p, 'f', 0, 64)
	}
}

// Step adds a line of working: the formula, the same with the numbers put in,
// and its source.
func (o *Out) Step(formula, numbers, source string) {
	o.answer.Working = append(o.answer.Working, Step{formula, numbers, source})
}

// Caution shows cautions by name, each once.
func (o *Out) Caution(names ...string) {
	if o.brief {
		return
	}
	for _, n := range names {
		text := caution(n)
		seen := false
		for _, c := range o.answer.Cautions {
			seen = seen || c == text
		}
		if !seen {
			o.answer.Cautions = append(o.answer.Cautions, text)
		}
	}
}

// Notice adds a remark on the whole.
func (o *Out) Notice(text string) { o.answer.Notices = append(o.answer.Notices, text) }

// Note adds a remark beside a field; row −1 is the whole field.
func (o *Out) Note(field string, row int, text string) {
	o.answer.Notes = append(o.answer.Notes, Note{field, row, text})
}

// Problem complains about a field; the answer then has no figures. The message
// may quote fields, and figures already set.
func (o *Out) Problem(field, message string) { o.RowProblem(field, -1, message) }

// RowProblem complains about one row of a field, counted from 0.
func (o *Out) RowProblem(field string, row int, message string) {
	if o.w.field(field) == nil {
		panic("calc: Compute complains about a field that is not declared: " + field)
	}
	o.answer.Problems = append(o.answer.Problems, Problem{Field: field, Row: row, Message: o.fill(message)})
}

// Picture adds a picture, in shown units.
func (o *Out) Picture(c *chart.Chart) { o.pictures = append(o.pictures, c) }

// Entered adds a picture of what was entered, for entries with a problem: it is
// shown although there is no answer.
func (o *Out) Entered(c *chart.Chart) { o.entered = append(o.entered, c) }

// Words fills in {id} now, for a picture's labels; every figure it quotes must
// be set already.
func (o *Out) Words(text string) string { return o.fill(text) }

// fill puts fields and figures into a text. "{id}" has its unit, "{id:n}" has
// not.
func (o *Out) fill(text string) string {
	if !strings.Contains(text, "{") {
		return text
	}
	var b strings.Builder
	for {
		i := strings.IndexByte(text, '{')
		if i < 0 {
			b.WriteString(text)
			return b.String()
		}
		j := strings.IndexByte(text[i:], '}')
		if j < 0 {
			panic("calc: unclosed brace in a sentence: " + text)
		}
		id, bare := strings.CutSuffix(text[i+1:i+j], ":n")
		b.WriteString(text[:i])
		b.WriteString(o.quote(id, bare))
		text = text[i+j+1:]
	}
}

// quote is one figure's or field's text.
func (o *Out) quote(id string, bare bool) string {
	if g := o.w.figure(id); g != nil {
		f, ok := o.figures[id]
		if !ok {
			panic("calc: a sentence quotes a figure that is not set: " + id)
		}
		number, name := o.words(g, f)
		if bare {
			return number
		}
		return withUnit(number, name)
	}
	f := o.w.field(id)
	if f == nil {
		panic("calc: a sentence quotes what is not declared: " + id)
	}
	s := o.in.get(id).shown
	if bare {
		s = strings.TrimRight(strings.TrimSuffix(s, f.Kind.Shown(o.in.sys).Name), " ")
	}
	return s
}

// words gives a figure's number as read, and its unit.
func (o *Out) words(g *Figure, f *shownFigure) (number, name string) {
	name = g.Kind.Shown(o.in.sys).Name
	switch {
	case f.words:
		return f.text, ""
	case f.number != "":
		return f.number, name
	}
	var against []float64
	for _, id := range g.Against {
		switch {
		case o.w.figure(id) != nil:
			if l, ok := o.figures[id]; ok {
				against = append(against, l.si)
			}
		case o.w.field(id) != nil:
			against = append(against, o.in.SI(id))
		default:
			against = append(against, Range{}.bound(id, g.Kind, 0))
		}
	}
	number = g.number(f.si, f.half, against, o.in.sys)
	if o.done {
		f.number = number
	}
	return number, name
}
