package calc

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"plainlift/calc/chart"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// Evaluate answers a worksheet from closed forms. The simulation that checks
// them, where the worksheet has one, comes from Simulation and goes back in
// through EvaluateWith.
func (b Book) Evaluate(id string, entries Entries, sys unit.System) *Answer {
	return b.EvaluateWith(id, entries, sys, nil)
}

// Trials is how many trials a simulation runs (JCGM 101, 7.2.2).
const Trials = 1_000_000

// Checked answers a worksheet and runs its simulation to the end.
func (b Book) Checked(id string, entries Entries, sys unit.System) *Answer {
	a := b.Evaluate(id, entries, sys)
	sim := b.Simulation(id, entries, sys)
	if sim == nil {
		return a
	}
	sim.Run(Trials)
	return b.EvaluateWith(id, entries, sys, sim)
}

// Simulation returns the simulation that checks this answer, not yet run, or
// nil when there is none or the entries have a problem.
func (b Book) Simulation(id string, entries Entries, sys unit.System) *doubt.Simulation {
	w := b.Lookup(id)
	if w == nil || w.Simulate == nil {
		return nil
	}
	in, a := w.read(entries, sys)
	if !a.OK() {
		return nil
	}
	if w.compute(in, a); !a.OK() {
		return nil
	}
	return doubt.NewSimulation(w.Simulate(in))
}

// EvaluateWith answers a worksheet with a finished simulation at hand. It
// returns nil for a worksheet that is not in the book.
func (b Book) EvaluateWith(id string, entries Entries, sys unit.System, sim *doubt.Simulation) *Answer {
	w := b.Lookup(id)
	if w == nil {
		return nil
	}
	in, a := w.read(entries, sys)
	in.sim = sim
	var o *Out
	if a.OK() {
		o = w.compute(in, a)
	}
	w.mark(in, a)
	if a.OK() {
		o.finish()
		o.slides()
		b.onward(o)
		o.offers()
	} else {
		first := w.field(a.Problems[0].Field)
		a.Verdict = Said{"", "Check “" + first.Label + "”",
			"“" + first.Label + "” needs fixing before this answer is yours; the figures below are from before."}
		a.blank()
		if o != nil {
			a.Picture = drawn(o.entered)
		}
	}
	// A reader's own text: it comes last, so that no brace in it is filled in.
	a.Notices = append(w.unknown(entries), a.Notices...)
	return a
}

// read takes every entry apart.
func (w *Worksheet) read(entries Entries, sys unit.System) (*In, *Answer) {
	in := &In{w: w, sys: sys, values: map[string]*value{}}
	a := &Answer{Worksheet: w.ID}
	for i := range w.Fields {
		f := &w.Fields[i]
		e, given := entries[f.ID]
		from := sys
		if !given || !e.Own && e.Text == f.example() {
			e.Text, e.Own, from = f.example(), false, unit.US
			e.Unit, e.UnitTo = "", ""
		}
		v, problems := f.read(e, from, sys)
		v.bears = f.Only == nil
		in.values[f.ID] = &v
		if f.Only != nil {
			for _, c := range f.Only.In {
				v.bears = v.bears || in.get(f.Only.Field).choice == c
			}
		}
		if v.bears {
			a.Problems = append(a.Problems, problems...)
		}
	}
	return in, a
}

// unknown names the keys that are no field of this worksheet.
func (w *Worksheet) unknown(entries Entries) []string {
	var keys []string
	for k := range entries {
		if w.field(k) == nil {
			keys = append(keys, "“"+clip(k)+"”")
		}
	}
	if len(keys) == 0 {
		return nil
	}
	sort.Sort(sort.StringSlice(keys)) // slices.Sort would be a copy of the sort for every type
	if more := len(keys) - 5; more > 0 {
		keys = append(keys[:5], strconv.Itoa(more)+" more")
	}
	return []string{"This link also has " + strings.Join(keys, ", ") + ", which this page does not know; the rest is used."}
}

// compute runs the worksheet and turns a number that did not work out into a
// complaint.
func (w *Worksheet) compute(in *In, a *Answer) *Out {
	o := &Out{w: w, in: in, answer: a, figures: map[string]*shownFigure{}, knows: map[string]known{}}
	w.run(o)
	return o
}

// run has the worksheet write into o.
func (w *Worksheet) run(o *Out) {
	w.Compute(o.in, o)
	if !o.answer.OK() {
		return
	}
	for _, g := range w.Figures {
		f, ok := o.figures[g.ID]
		if !ok {
			panic("calc: Compute leaves a figure out: " + g.ID)
		}
		if !f.words && (math.IsNaN(f.si) || math.IsInf(f.si, 0)) {
			o.None(g.ID, "does not work out for these numbers")
		}
	}
	if o.verdict == nil {
		panic("calc: Compute chooses no verdict")
	}
}

// link writes the link from what bears on the answer.
func (w *Worksheet) link(in *In) []Pair {
	var pairs []Pair
	var example []string
	for i := range w.Fields {
		f := &w.Fields[i]
		v := in.get(f.ID)
		if !v.bears {
			continue
		}
		text := v.canonical
		if v.bad {
			text = strings.TrimSpace(v.text)
		}
		pairs = append(pairs, Pair{f.ID, text})
		if !v.own && v.set {
			example = append(example, f.ID)
		}
	}
	return link(pairs, example)
}

// mark says of every field what stands in it and whose it is, and writes the
// link.
func (w *Worksheet) mark(in *In, a *Answer) {
	for i := range w.Fields {
		f := &w.Fields[i]
		v := in.get(f.ID)
		theirs := in.theirs(f)
		s := FieldState{ID: f.ID, Own: v.own, Example: theirs, Bears: v.bears}
		if !v.bad && v.set {
			s.set(f, v)
			if v.bears {
				a.Used = append(a.Used, Used{f.ID, f.Label, v.shown, theirs})
			}
		}
		a.Fields = append(a.Fields, s)
		if theirs {
			a.Examples = append(a.Examples, f.ID)
		}
	}
	a.Link = w.link(in)
	a.Borrowed = w.borrowed(in)
}

// set gives the entry as the field's own controls show it.
func (s *FieldState) set(f *Field, v *value) {
	s.Canonical = v.canonical
	if f.Shape == Choice {
		s.Number = v.choice
		return
	}
	s.Rows = v.rows
	s.Number, s.Unit = s.Rows[0].A, s.Rows[0].UnitA
}

// Convert gives every readable field as it would be entered in another system
// of units, for the switch between them. A field that cannot be read keeps no
// rows, and the page leaves it alone.
func (b Book) Convert(id string, entries Entries, from, to unit.System) []FieldState {
	w := b.Lookup(id)
	if w == nil {
		return nil
	}
	in, _ := w.read(entries, from)
	var states []FieldState
	for i := range w.Fields {
		f := &w.Fields[i]
		v := in.get(f.ID)
		s := FieldState{ID: f.ID, Own: v.own}
		if f.Shape != Choice && v.set && !v.bad {
			s.Canonical = v.canonical
			for i, x := range v.a {
				row := RowState{A: entryNumber(x, f.Kind, to), UnitA: f.Kind.Shown(to).Name}
				if f.Shape == Pairs {
					row.B, row.UnitB = entryNumber(v.b[i], f.With, to), f.With.Shown(to).Name
				}
				s.Rows = append(s.Rows, row)
			}
			s.Number, s.Unit = s.Rows[0].A, s.Rows[0].UnitA
		}
		states = append(states, s)
	}
	return states
}

// finish puts figures, sentences and pictures into the answer.
func (o *Out) finish() {
	a := o.answer
	v, id := o.verdict, o.verdict.Figure()
	sentence := v.Sentence
	for _, s := range o.extra {
		sentence += " " + s
	}
	o.done = true
	a.Verdict = Said{id, o.fill(v.Head), o.prefix(o.fill(sentence))}
	a.Figures = append(a.Figures, Shown{ID: "verdict", Label: "Verdict", Value: id, Text: a.Verdict.Head})
	for i := range o.w.Figures {
		g := &o.w.Figures[i]
		f := o.figures[g.ID]
		number, name := o.words(g, f)
		s := Shown{ID: g.ID, Label: g.Label, Text: withUnit(number, name), Place: g.Place}
		if f.words {
			s.Value = f.value
		} else {
			s.Value = strconv.FormatFloat(f.si, 'g', -1, 64)
		}
		a.Figures = append(a.Figures, s)
	}
	for _, list := range [][]string{a.Lines, a.Rests, a.Notices} {
		for i := range list {
			list[i] = o.fill(list[i])
		}
	}
	for i := range a.Notes {
		a.Notes[i].Text = o.fill(a.Notes[i].Text)
	}
	for i := range a.Budget {
		a.Budget[i].Limit = o.fill(a.Budget[i].Limit)
	}
	for i := range a.Working {
		a.Working[i].Numbers = o.fill(a.Working[i].Numbers)
	}
	a.Check = o.fill(a.Check)
	a.Reply = append([]string{o.fill(o.w.Reply.About) + " " + a.Verdict.Sentence}, a.Lines...)
	a.Reply = append(a.Reply, "How it comes out: "+o.fill(o.w.Reply.How), o.fill(o.w.Reply.After))
	a.Picture = drawn(o.pictures)
}

func drawn(pictures []*chart.Chart) string {
	svgs := ""
	for _, c := range pictures {
		svgs += c.SVG()
	}
	return svgs
}

// prefix says whose numbers these are while any is the example's.
func (o *Out) prefix(sentence string) string {
	nouns := append([]string(nil), o.answer.Borrowed...)
	if len(nouns) == 0 {
		return sentence
	}
	whole := true
	for i := range o.w.Fields {
		v := o.in.get(o.w.Fields[i].ID)
		whole = whole && !(v.own && v.bears)
	}
	if whole {
		return "With the example's numbers: " + lower(sentence)
	}
	if more := len(nouns) - longPrefix; more > 1 {
		nouns = append(nouns[:longPrefix], strconv.Itoa(more)+" more")
	}
	return "With the example's " + And(nouns) + ": " + lower(sentence)
}

// theirs reports whether a field holds a number of the example's tractor.
func (in *In) theirs(f *Field) bool {
	v := in.get(f.ID)
	return !v.own && !f.Usual && v.set && v.bears
}

// borrowed names what is still the example's: each field, or at once a part of
// the form in which all is.
func (w *Worksheet) borrowed(in *In) (names []string) {
	said := ""
	for i := range w.Fields {
		f := &w.Fields[i]
		switch {
		case !in.theirs(f):
		case !w.wholly(in, f.Group):
			names = append(names, f.noun())
		case f.Group != said:
			said = f.Group
			name, _, _ := strings.Cut(said, ":")
			names = append(names, lower(strings.TrimPrefix(name, "The ")))
		}
	}
	return names
}

// wholly reports whether nothing in a part of the form is the reader's, and at
// least two numbers are the example's.
func (w *Worksheet) wholly(in *In, group string) bool {
	n := 0
	for i := range w.Fields {
		f := &w.Fields[i]
		switch v := in.get(f.ID); {
		case f.Group != group:
		case v.own && v.bears && v.set && !f.Usual:
			return false
		case in.theirs(f):
			n++
		}
	}
	return n > 1 && group != ""
}

// longPrefix is how much of the example's is named before an answer; the
// fields themselves are all marked.
const longPrefix = 6

// And joins names: "a, b and c".
func And(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

// lower makes the first letter small.
func lower(s string) string {
	if s == "" || s[0] >= 0x80 {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// blank removes what a problem makes untrue, and the remarks that would quote it.
func (a *Answer) blank() {
	var notes []Note
	for _, n := range a.Notes {
		if !strings.Contains(n.Text, "{") {
			notes = append(notes, n)
		}
	}
	var notices []string
	for _, n := range a.Notices {
		if !strings.Contains(n, "{") {
			notices = append(notices, n)
		}
	}
	a.Notes, a.Notices = notes, notices
	a.Lines, a.Figures, a.Rests, a.Budget, a.Working, a.Cautions, a.Next, a.Reply = nil, nil, nil, nil, nil, nil, nil, nil
	a.Picture, a.Check = "", ""
}

// CheckInterval compares a closed-form interval that holds a fraction p with the
// simulation, once that ran, by the tolerance of JCGM 101 clause 8: half of the
// last of two significant digits of u. An end that differs by more still agrees
// when chance alone may part that many trials from it, as in the long tails that
// two or three repeats leave. It returns the interval to show: the simulated one
// where the two disagree, and then the answer says so.
func (o *Out) CheckInterval(k unit.Kind, p, lo, hi, u float64) (float64, float64) {
	sim := o.in.sim
	if sim == nil {
		return lo, hi
	}
	_, _, slo, shi, _ := sim.Summary(p)
	shown := k.Shown(o.in.sys)
	say := func(si, half float64) string {
		places := unit.PlaceTwo(math.Abs(shown.FromSI(half) - shown.FromSI(0)))
		return unit.Decimals(shown.FromSI(si), places, o.in.sys)
	}
	trials := unit.Decimals(float64(sim.Trials()), 0, o.in.sys)
	text := trials + " simulated trials give " + say(slo, u) + " to " + withUnit(say(shi, u), shown.Name)
	if d := doubt.Tolerance(u); slo == lo && shi == hi || math.Abs(slo-lo) <= d && math.Abs(shi-hi) <= d {
		o.answer.Check = text + "; the closed form agrees."
		return lo, hi
	}
	tail := (1 - p) / 2
	chance := 4 * math.Sqrt(tail*(1-tail)/float64(sim.Trials())) // four standard deviations of a counted fraction
	if math.Abs(sim.Probability(lo)-tail) <= chance && math.Abs(1-sim.Probability(hi)-tail) <= chance {
		o.answer.Check = text + "; the closed form agrees as closely as so many trials can tell."
		return lo, hi
	}
	o.answer.Check = text + " and are shown; the closed form, " + say(lo, u) + " to " + withUnit(say(hi, u), shown.Name) +
		", differs by more than rounding."
	return slo, shi
}
