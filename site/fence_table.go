package site

import (
	"html/template"
	"maps"
	"strings"

	"plainlift/calc"
)

// computedTable is a table of figures, one row for each value of one field:
//
//	```table gain
//	caption: What each target would lift
//	set low: 2,680 psi
//	vary target: 2,660 psi | 2,735 psi | 2,790 psi
//	show: dp_pct, gain, closer
//	```
type computedTable struct {
	w              *calc.Worksheet
	caption        string
	set            map[string]string
	vary           string
	values         []string
	show           []string
	varyAt, showAt int // offsets, for complaints
}

// table writes a computed table.
func (g *guide) table(f fence) template.HTML {
	w := g.book.Lookup(strings.Join(f.words, " "))
	if w == nil {
		g.fault(f.at, "a table names one worksheet, not %q", strings.Join(f.words, " "))
		return ""
	}
	t := computedTable{w: w, set: map[string]string{}}
	noted := len(g.wrong)
	for _, line := range f.lines {
		g.tableLine(&t, line)
	}
	if len(g.wrong) > noted {
		return ""
	}
	if t.vary == "" || len(t.show) == 0 {
		g.fault(f.at, "a table needs a line vary FIELD: value | value, and a line show: figure, figure")
		return ""
	}
	return g.writeTable(&t)
}

func (g *guide) tableLine(t *computedTable, line fenceLine) {
	key, value, ok := strings.Cut(line.text, ":")
	words := strings.Fields(key)
	value = strings.TrimSpace(value)
	switch {
	case !ok || len(words) == 0:
		g.fault(line.at, "not understood in a table: %q", line.text)
	case len(words) == 2 && (words[0] == "set" || words[0] == "vary"):
		id := words[1]
		_, twice := t.set[id]
		switch {
		case fieldOf(t.w, id) == nil:
			g.fault(line.at, "%s has no field %q", t.w.ID, id)
		case twice || id == t.vary:
			g.fault(line.at, "%q stands twice", id)
		case words[0] == "set":
			t.set[id] = value
		case t.vary != "":
			g.fault(line.at, "a table varies one field")
		default:
			t.vary, t.varyAt = id, line.at
			for v := range strings.SplitSeq(value, "|") {
				t.values = append(t.values, strings.TrimSpace(v))
			}
		}
	case key == "show" && t.show == nil:
		t.showAt = line.at
		for id := range strings.SplitSeq(value, ",") {
			t.show = append(t.show, strings.TrimSpace(id))
		}
	case key == "caption" && t.caption == "":
		t.caption = value
	default:
		g.fault(line.at, "not understood in a table: %q", line.text)
	}
}

// writeTable evaluates every row. A row or column that goes wrong is noted once.
func (g *guide) writeTable(t *computedTable) template.HTML {
	var b strings.Builder
	b.WriteString(`<div class="table"><table class="computed">` + "\n")
	if t.caption != "" {
		b.WriteString("<caption>" + template.HTMLEscapeString(t.caption) + "</caption>\n")
	}
	for i, value := range t.values {
		changed := maps.Clone(t.set)
		changed[t.vary] = value
		a, err := answer(g.book, t.w.ID, changed)
		if err != nil {
			g.fault(t.varyAt, "with %s %q: %v", t.vary, value, err)
			continue
		}
		if i == 0 {
			b.WriteString("<thead>\n<tr>" + headCell(fieldOf(t.w, t.vary).Label))
			for _, id := range t.show {
				label := ""
				if s := a.us.Figure(id); s != nil {
					label = s.Label
				}
				b.WriteString(headCell(label))
			}
			b.WriteString("</tr>\n</thead>\n<tbody>\n")
		}
		row, err := a.field(t.vary)
		if err != nil {
			g.fault(t.varyAt, "%v", err)
		}
		b.WriteString(`<tr><th scope="row">` + string(row.html()) + "</th>")
		for _, id := range t.show {
			cell, err := a.figure(id)
			if err != nil {
				g.fault(t.showAt, "with %s %q: %v", t.vary, value, err)
			}
			b.WriteString("<td>" + string(cell.html()) + "</td>")
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</tbody>\n</table></div>\n")
	return template.HTML(b.String())
}

func headCell(label string) string {
	return `<th scope="col">` + template.HTMLEscapeString(label) + "</th>"
}
