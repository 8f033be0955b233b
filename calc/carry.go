package calc

import "strings"

// onward writes the links to other worksheets, with the values that travel: a
// field takes the value of the figure or field that declares the same quantity,
// and the example's mark travels with it. What nobody touched in a field stays
// behind where the other field has an example of its own: numbers of two
// examples do not mix.
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
// and whether it is the reader's own. One that the reader emptied stays empty
// where it may. A list takes one number as its first row, a choice takes words
// that are one of its options.
func (o *Out) carried(to *Field) (text string, own, known bool) {
	if to.Quantity == "" || to.Shape == Pairs {
		return "", false, false
	}
	k := o.known(to.Quantity)
	switch {
	case !k.there, k.words != (to.Shape == Choice), k.entry && !k.own && to.Example != "":
		return "", false, false
	case k.words:
		return k.text, k.own, to.option(k.text) != nil
	}
	return k.text, k.own, k.text != "" || k.own && to.Empty != ""
}

// known is what an answer knows of a quantity.
type known struct {
	label             string // of the field or figure
	text, shown       string // as a link writes it, and as read
	own, words, there bool   // the reader's; the value of a figure of words; something
	entry             bool   // it stands in a field
}

// known looks among the fields first, then among the figures, which say what was
// taken where the reader left a field empty. A field that bears on the answer
// only under some choice does not count: what it means hangs on that choice.
func (o *Out) known(quantity string) known {
	k, asked := o.knows[quantity]
	if !asked {
		k = o.find(quantity)
		o.knows[quantity] = k
	}
	return k
}

func (o *Out) find(quantity string) (empty known) {
	for i := range o.w.Fields {
		f := &o.w.Fields[i]
		v := o.in.get(f.ID)
		if f.Quantity == quantity && f.Shape == Single && f.Only == nil && v.bears && (v.set || v.own) {
			k := known{label: f.Label, own: v.own, there: true, entry: true}
			if !v.set {
				empty = k
				continue
			}
			k.text, k.shown = v.canonical, v.shown
			return k
		}
	}
	for i := range o.w.Figures {
		g := &o.w.Figures[i]
		if f := o.figures[g.ID]; g.Quantity == quantity {
			own := o.own(g)
			if f.words {
				return known{g.Label, f.value, f.text, own, true, f.value != "", false}
			}
			u := g.Kind.Shown(o.in.sys)
			number, name := o.words(g, f)
			return known{g.Label, withUnit(u.Edit(f.si), u.Name), withUnit(number, name), own, false, true, false}
		}
	}
	return empty
}

// offers lists what the reader made their own here, for other worksheets.
func (o *Out) offers() {
	seen := map[string]bool{"": true}
	offer := func(quantity string) {
		if seen[quantity] {
			return
		}
		seen[quantity] = true
		if k := o.known(quantity); k.own && k.text != "" {
			if k.label == "" { // it stands only in sentences
				k.label = strings.ToUpper(quantity[:1]) + quantity[1:]
			}
			o.answer.Known = append(o.answer.Known, Known{quantity, k.label, k.text, k.shown, lasts(quantity)})
		}
	}
	for i := range o.w.Fields {
		offer(o.w.Fields[i].Quantity)
	}
	for i := range o.w.Figures {
		offer(o.w.Figures[i].Quantity)
	}
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
