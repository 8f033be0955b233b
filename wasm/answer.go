package main

import "plainlift/calc"

var places = map[calc.Place]string{calc.Key: "key", calc.More: "more", calc.Quoted: "quoted"}

// answer is an Answer under the names of its fields, the first letter small. A
// list without items is an empty list. It is written at once, without a map of
// each part: a keystroke waits for it.
func answer(a *calc.Answer) written {
	var w writer
	w.begin('{')
	w.text("worksheet", a.Worksheet)
	w.name("verdict")
	w.begin('{')
	w.text("id", a.Verdict.ID)
	w.text("head", a.Verdict.Head)
	w.text("sentence", a.Verdict.Sentence)
	w.end('}')
	w.texts("lines", a.Lines)
	list(&w, "figures", a.Figures, func(s *calc.Shown) {
		w.text("id", s.ID)
		w.text("label", s.Label)
		w.text("value", s.Value)
		w.text("text", s.Text)
		w.text("place", places[s.Place])
	})
	w.text("picture", a.Picture)
	w.texts("rests", a.Rests)
	list(&w, "budget", a.Budget, func(b *calc.BudgetRow) {
		w.text("name", b.Name)
		w.text("limit", b.Limit)
		w.text("u", b.U)
		w.number("share", b.Share)
		w.text("text", b.Text)
	})
	list(&w, "working", a.Working, func(s *calc.Step) {
		w.text("formula", s.Formula)
		w.text("numbers", s.Numbers)
		w.text("source", s.Source)
	})
	w.texts("cautions", a.Cautions)
	list(&w, "next", a.Next, func(n *calc.Onward) {
		w.text("id", n.ID)
		w.text("text", n.Text)
		w.pairs("link", n.Link)
	})
	w.texts("reply", a.Reply)
	list(&w, "known", a.Known, func(k *calc.Known) {
		w.text("quantity", k.Quantity)
		w.text("label", k.Label)
		w.text("text", k.Text)
		w.text("shown", k.Shown)
		w.flag("lasts", k.Lasts)
	})
	list(&w, "used", a.Used, func(u *calc.Used) {
		w.text("id", u.ID)
		w.text("label", u.Label)
		w.text("text", u.Text)
		w.flag("example", u.Example)
	})
	w.texts("examples", a.Examples)
	w.texts("borrowed", a.Borrowed)
	w.name("fields")
	w.begin('[')
	for i := range a.Fields {
		w.field(&a.Fields[i])
	}
	w.end(']')
	list(&w, "problems", a.Problems, func(p *calc.Problem) {
		w.text("field", p.Field)
		w.number("row", float64(p.Row))
		w.text("message", p.Message)
		w.texts("choices", p.Choices)
	})
	list(&w, "notes", a.Notes, func(n *calc.Note) {
		w.text("field", n.Field)
		w.number("row", float64(n.Row))
		w.text("text", n.Text)
	})
	w.texts("notices", a.Notices)
	w.pairs("link", a.Link)
	w.text("check", a.Check)
	w.end('}')
	return w.written()
}

func (w *writer) field(f *calc.FieldState) {
	w.begin('{')
	w.name("slide")
	if s := f.Slide; s == nil {
		w.raw("null")
	} else {
		w.begin('{')
		w.number("min", s.Min)
		w.number("max", s.Max)
		w.number("step", s.Step)
		w.number("value", s.Value)
		w.text("unit", s.Unit)
		w.text("text", s.Text)
		w.end('}')
	}
	w.text("id", f.ID)
	w.text("number", f.Number)
	w.text("unit", f.Unit)
	w.text("canonical", f.Canonical)
	w.flag("own", f.Own)
	w.flag("example", f.Example)
	w.flag("bears", f.Bears)
	list(w, "rows", f.Rows, func(r *calc.RowState) {
		w.text("a", r.A)
		w.text("unitA", r.UnitA)
		w.text("b", r.B)
		w.text("unitB", r.UnitB)
	})
	w.end('}')
}

func (w *writer) pairs(name string, pairs []calc.Pair) {
	w.name(name)
	w.begin('[')
	for i := range pairs {
		w.begin('[')
		w.item(pairs[i].Key)
		w.item(pairs[i].Value)
		w.end(']')
	}
	w.end(']')
}
