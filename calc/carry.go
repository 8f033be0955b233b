package calc

// onward writes the links to other worksheets, with the values that travel: a
// field takes the value of the figure or field that declares the same quantity,
// and the example's mark travels with it.
func (b Book) onward(o *Out) {
	for _, n := range o.w.Next {
		to := b.Lookup(n.ID)
		if to == nil {
			panic("calc: a way on to a worksheet that is not in the book: " + n.ID)
		}
		var pairs []Pair
		var example []string
		for i := range to.Fields {
			f := &to.Fields[i]
			text, own, known := o.carried(f)
			if !known {
				continue
			}
			pairs = append(pairs, Pair{f.ID, text})
			if !own {
				example = append(example, f.ID)
			}
		}
		o.answer.Next = append(o.answer.Next, Onward{n.ID, n.Text, link(pairs, example)})
	}
}

// carried returns what this answer knows of a field's quantity, as link text,
// and whether it is the reader's own. A field that bears on the answer only under
// some choice is not carried: what it means hangs on that choice. One that the
// reader emptied stays empty where it may. A list takes one number as its first
// row, a choice takes words that are one of its options.
func (o *Out) carried(to *Field) (text string, own, known bool) {
	if to.Quantity == "" || to.Shape == Pairs {
		return "", false, false
	}
	for i := range o.w.Fields {
		f := &o.w.Fields[i]
		v := o.in.get(f.ID)
		number := f.Shape == Single && to.Shape != Choice
		if f.Quantity != to.Quantity || !number || f.Only != nil || !v.bears {
			continue
		}
		if v.set || v.own && to.Empty != "" {
			return f.canonical(v), v.own, true
		}
	}
	for i := range o.w.Figures {
		g := &o.w.Figures[i]
		f := o.figures[g.ID]
		switch {
		case g.Quantity != to.Quantity:
		case to.Shape == Choice && to.option(f.value) != nil:
			return f.value, o.own(g), true
		case to.Shape != Choice && !f.words:
			u := to.Kind.Shown(o.in.sys)
			return withUnit(u.Edit(f.si), u.Name), o.own(g), true
		}
	}
	return "", false, false
}

// own reports whether all that a figure comes from is the reader's.
func (o *Out) own(g *Figure) bool {
	from := g.From
	if len(from) == 0 {
		for i := range o.w.Fields {
			from = append(from, o.w.Fields[i].ID)
		}
	}
	for _, id := range from {
		f, v := o.w.field(id), o.in.get(id)
		if v.set && v.bears && !v.own && !f.Usual {
			return false
		}
	}
	return true
}
