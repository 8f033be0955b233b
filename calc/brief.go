package calc

import (
	"math"

	"plainlift/calc/unit"
)

// Brief is the answer for one of many rows: the verdict's head, the figures and
// the link, without what only a page of its own shows.
type Brief struct {
	Verdict  Said          // its Sentence is ""
	Branch   int           // which of the declared verdicts
	Figures  []BriefFigure // those that are shown, declared order, without the verdict
	Link     []Pair
	Problems []Problem // with any, there are no figures

	in *In
	o  *Out
}

// BriefFigure is a figure's SI value, and the text of one that is made of words:
// NaN and why where a number does not exist.
type BriefFigure struct {
	SI   float64
	Text string
}

// Brief answers a worksheet from closed forms, in a quarter of the time that
// Evaluate takes. It returns nil for a worksheet that is not in the book.
func (b Book) Brief(id string, entries Entries, sys unit.System) *Brief {
	w := b.Lookup(id)
	if w == nil {
		return nil
	}
	in, a := w.read(entries, sys)
	brief := &Brief{in: in}
	if a.OK() {
		brief.o = &Out{w: w, in: in, answer: a, figures: map[string]*shownFigure{}, brief: true}
		w.run(brief.o)
	}
	brief.Link = w.link(in)
	if brief.Problems = a.Problems; !a.OK() {
		return brief
	}
	o := brief.o
	o.done = true
	v := o.verdict
	for w.Verdicts[brief.Branch].Key != v.Key {
		brief.Branch++
	}
	brief.Verdict = Said{ID: v.Figure(), Head: o.fill(v.Head)}
	for _, g := range w.Answers() {
		f := o.figures[g.ID]
		brief.Figures = append(brief.Figures, BriefFigure{f.si, f.text})
	}
	return brief
}

// Answers are the figures that a page shows, declared order, without those that
// only sentences quote.
func (w *Worksheet) Answers() []*Figure {
	list := make([]*Figure, 0, len(w.Figures))
	for i := range w.Figures {
		if g := &w.Figures[i]; g.Place != Quoted {
			list = append(list, g)
		}
	}
	return list
}

// Shown is the text of each of the figures, as the worksheet's page shows it.
func (b *Brief) Shown() []string {
	var texts []string
	for _, g := range b.in.w.Answers() {
		texts = append(texts, withUnit(b.o.words(g, b.o.figures[g.ID])))
	}
	return texts
}

// SI is the value of a figure or of a field with one number, NaN where there is none.
func (b *Brief) SI(id string) float64 {
	if b.o == nil {
		return math.NaN()
	}
	return b.o.si(id)
}
