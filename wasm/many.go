package main

import (
	"plainlift/calc"
	"plainlift/calc/many"
	"plainlift/calc/unit"
)

// rows is a table that the desk answers row by row.
type rows struct {
	file    *many.File
	plan    *many.Plan
	batch   *many.Batch
	running bool
	seq     any
	told    float64 // when the page last heard how far it is, ms

	order []int // answered rows, in the order of a column
	by    int
	down  bool
}

const noTable = "The file must be taken again first."

const (
	rowsTime = 25  // ms between two looks at what the page asks meanwhile
	tellTime = 150 // ms between two messages of how far it is
)

// many answers what the page of tables asks:
//
//	many-file {text, worksheet, system}     takes a file; worksheet "" lets it choose
//	many-plan {worksheet, system}           takes its columns for another worksheet
//	many-run {fields, link}                 begins to answer; what each field holds in every row
//	many-stop
//	many-rows {by, down, from, count}       answered rows in the order of a column
//	many-out {from, count}                  the same as a file has them
//	many-example {worksheet}                a file that would be right
func (d *desk) many(op string, m map[string]any) {
	r := &d.rows
	id, _ := m["worksheet"].(string)
	sys, _ := system(m["system"])
	whole := func(key string) int {
		x, _ := m[key].(float64)
		return int(x)
	}
	reply := map[string]any{"type": op, "seq": m["seq"]}
	switch op {
	case "many-file":
		text, _ := m["text"].(string)
		file, err := many.Read(text)
		if err != nil {
			reply["error"] = err.Error()
			break
		}
		*r = rows{file: file}
		if better := file.Guess(d.book, id); better != "" {
			id = better
		}
		d.planned(reply, id, sys)
	case "many-plan":
		d.planned(reply, id, sys)
	case "many-run":
		shared, ok := entries(m["link"], m["fields"])
		if r.plan == nil || !ok || len(r.plan.Wrong) > 0 {
			reply["error"] = noTable
			break
		}
		r.batch, r.running, r.seq, r.told, r.order = r.plan.Start(shared, sys), true, m["seq"], d.now(), nil
		return // its reply comes with the end
	case "many-stop":
		if r.running {
			r.running = false
			d.tell("many-run", true)
		}
		return
	case "many-rows":
		down, _ := m["down"].(bool)
		r.sorted(whole("by"), down)
		d.shownRows(reply, whole("from"), whole("count"))
	case "many-out":
		d.fileRows(reply, whole("from"), whole("count"))
	case "many-example":
		if w := d.book.Lookup(id); w != nil {
			reply["rows"] = each(many.Example(d.book, w), func(cells []string) any {
				return each(cells, func(cell string) any { return cell })
			})
		}
	}
	d.post(reply)
}

// planned says how the file's columns are understood.
func (d *desk) planned(reply map[string]any, id string, sys unit.System) {
	r := &d.rows
	w := d.book.Lookup(id)
	if r.file == nil || w == nil {
		reply["error"] = noTable
		return
	}
	r.plan = r.file.Plan(d.book, w, sys)
	r.batch, r.running = nil, false
	texts := func(list []string) []any { return each(list, func(s string) any { return s }) }
	reply["worksheet"], reply["total"] = id, len(r.file.Rows)
	reply["wrong"], reply["taken"], reply["usual"] = texts(r.plan.Wrong), texts(r.plan.Taken), texts(r.plan.Usual)
	reply["missing"] = each(r.plan.Missing, func(f many.Missing) any {
		var options []any
		for _, o := range f.Options {
			options = append(options, map[string]any{"id": o.ID, "label": o.Label})
		}
		return map[string]any{"id": f.ID, "label": f.Label, "needed": f.Needed, "example": f.Example, "hint": f.Hint, "options": options}
	})
}

// someRows answers rows for a while and reports whether there are more.
func (d *desk) someRows() (more bool) {
	r := &d.rows
	if !r.running {
		return false
	}
	defer d.rescue(r.seq)
	for end := d.now() + rowsTime; d.now() < end; {
		if !r.batch.Next() {
			r.running = false
			d.tell("many-run", false)
			return false
		}
	}
	if d.now() > r.told+tellTime {
		d.tell("many-progress", false)
	}
	return true
}

// tell says how far it is; at the end, with the picture.
func (d *desk) tell(kind string, stopped bool) {
	r := &d.rows
	r.told = d.now()
	m := map[string]any{"type": kind, "seq": r.seq, "done": len(r.batch.Results), "total": r.batch.Total(), "wrong": r.batch.Wrong, "stopped": stopped}
	if kind == "many-run" {
		m["picture"], m["says"] = r.batch.Picture()
		m["counts"] = each(r.batch.Counts(), func(c many.Count) any { return map[string]any{"verdict": c.Verdict, "count": c.Rows} })
	}
	d.post(m)
}

// sorted puts what is answered in the order of a column, once.
func (r *rows) sorted(by int, down bool) {
	if r.batch != nil && (r.order == nil || r.by != by || r.down != down || len(r.order) != len(r.batch.Results)) {
		r.order, r.by, r.down = r.batch.Order(by, down), by, down
	}
}

// part are the rows of the order that the page wants now.
func (r *rows) part(from, count int) []int {
	from = min(max(from, 0), len(r.order))
	return r.order[from:min(from+max(count, 0), len(r.order))]
}

// shownRows is a part of the rows as the page shows them: kept columns, head, what is
// wrong if anything is with any, key figures as read.
func (d *desk) shownRows(reply map[string]any, from, count int) {
	r := &d.rows
	reply["rows"] = []any{}
	if r.batch == nil {
		return
	}
	var heading []any
	name := func(by int, text string) { heading = append(heading, map[string]any{"by": by, "text": text}) }
	name(many.ByFile, "Line")
	for i, c := range r.plan.Columns {
		if c.Field == nil {
			name(i, c.Name)
		}
	}
	name(many.ByVerdict, "Answer")
	wrong := r.batch.Wrong > 0
	if wrong {
		name(many.ByError, "What is wrong")
	}
	figures := r.plan.Worksheet.Answers()
	for i, g := range figures {
		if g.Place == calc.Key {
			name(many.FirstFigure+i, g.Label)
		}
	}
	reply["heading"], reply["done"] = heading, len(r.order)
	reply["rows"] = each(r.part(from, count), func(at int) any {
		one := &r.batch.Results[at]
		row := r.file.Rows[one.Row]
		cells := []any{row.Line}
		for i, c := range r.plan.Columns {
			if c.Field == nil {
				cells = append(cells, cell(row.Cells, i))
			}
		}
		texts := r.batch.Texts(one)
		cells = append(cells, one.Head)
		if wrong {
			cells = append(cells, one.Error)
		}
		for i, g := range figures {
			if g.Place == calc.Key {
				cells = append(cells, cell(texts, i))
			}
		}
		return map[string]any{"cells": cells, "error": one.Error, "link": linked(one.Link)}
	})
}

// fileRows is a part of the rows as a file has them: the given columns as they
// were, figures as full numbers, verdict, head, link and error.
func (d *desk) fileRows(reply map[string]any, from, count int) {
	r := &d.rows
	reply["rows"] = []any{}
	if r.batch == nil {
		return
	}
	reply["heading"] = each(r.batch.Heading(), func(s string) any { return s })
	r.sorted(many.ByFile, false)
	reply["rows"] = each(r.part(from, count), func(at int) any {
		one := &r.batch.Results[at]
		return map[string]any{"cells": each(r.batch.Cells(one), func(s string) any { return s }), "link": linked(one.Link), "error": one.Error}
	})
}

func cell(cells []string, i int) string {
	if i < len(cells) {
		return cells[i]
	}
	return ""
}

func linked(pairs []calc.Pair) any {
	return each(pairs, func(p calc.Pair) any { return []any{p.Key, p.Value} })
}
