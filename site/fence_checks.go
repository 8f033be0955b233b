package site

import (
	"fmt"
	"html/template"
	"strconv"
	"strings"

	"plainlift/calc/checks"
)

// checks writes what the formulas are held against, worked out anew: all of it,
// each topic folded away, or one topic by its name.
//
//	```checks Lines
//	```
func (g *guide) checks(f fence) template.HTML {
	if len(f.lines) > 0 {
		g.fault(f.lines[0].at, "nothing stands in a checks block")
		return ""
	}
	name := strings.Join(f.words, " ")
	if name == "" {
		return allChecks(checks.Topics)
	}
	var names []string
	for _, t := range checks.Topics {
		if t.Name == name {
			rows := compared(t)
			return template.HTML("<p>" + agreement(rows) + "</p>\n" + checkTable(rows))
		}
		names = append(names, t.Name)
	}
	g.fault(f.at, "no checks on %q; there are %s", name, strings.Join(names, ", "))
	return ""
}

// comparison is one check, or a printed table of them, with what came out.
type comparison struct {
	checks.Check         // of a table, the value that is furthest off
	got          float64 // the project's value for it
	values, fail int     // how many there are, and how many do not agree
}

// compared works out a topic's checks. The values of a printed table become one
// row, where the first of them stands.
func compared(t checks.Topic) []comparison {
	var rows []comparison
	at := map[string]int{}
	for _, c := range t.Checks {
		got := c.Got()
		one := comparison{Check: c, got: got, values: 1}
		if !c.Agrees(got) {
			one.fail = 1
		}
		i, more := at[c.Table]
		if c.Table == "" || !more {
			at[c.Table] = len(rows)
			rows = append(rows, one)
			continue
		}
		row := &rows[i]
		one.values, one.fail = row.values+1, row.fail+one.fail
		if !(c.Off(got) <= row.Off(row.got)) { // so that NaN is furthest of all
			*row = one
		} else {
			row.values, row.fail = one.values, one.fail
		}
	}
	return rows
}

// allChecks counts the checks by how well their sources are known, then has
// each topic.
func allChecks(topics []checks.Topic) template.HTML {
	known := map[checks.Status]int{}
	var all []comparison
	var folded strings.Builder
	for _, t := range topics {
		rows := compared(t)
		all = append(all, rows...)
		for _, r := range rows {
			known[r.Status] += r.values
		}
		folded.WriteString("<details><summary>" + template.HTMLEscapeString(t.Name) + ": " + agreement(rows) + "</summary>\n" +
			checkTable(rows) + "</details>\n")
	}
	var b strings.Builder
	b.WriteString("<p>" + agreement(all) + "</p>\n" + `<div class="table"><table class="computed">` + "\n<thead>\n<tr>" +
		headCell("How well the source is known") + headCell("Values") + "</tr>\n</thead>\n<tbody>\n")
	for _, s := range checks.Statuses {
		b.WriteString(`<tr><th scope="row">` + s.String() + "</th><td>" + strconv.Itoa(known[s]) + "</td></tr>\n")
	}
	b.WriteString("</tbody>\n</table></div>\n" + folded.String())
	return template.HTML(b.String())
}

// agreement says how many values there are and whether they agree.
func agreement(rows []comparison) string {
	values, fail := 0, 0
	for _, r := range rows {
		values += r.values
		fail += r.fail
	}
	switch {
	case fail > 0:
		return fmt.Sprintf("%d values, <strong>not agreeing: %d</strong>", values, fail)
	case values == 1:
		return "1 value, agrees"
	}
	return fmt.Sprintf("%d values, all agree", values)
}

func checkTable(rows []comparison) string {
	var b strings.Builder
	b.WriteString(`<div class="table"><table class="computed">` + "\n<thead>\n<tr>" +
		headCell("What, and its source") + headCell("Published") + headCell("Here") + headCell("Agrees within") + "</tr>\n</thead>\n<tbody>\n")
	for _, r := range rows {
		b.WriteString(`<tr><th scope="row">` + r.html() + "</td></tr>\n")
	}
	b.WriteString("</tbody>\n</table></div>\n")
	return b.String()
}

// html is the row from the first cell's text to the last's.
func (r *comparison) html() string {
	what := template.HTMLEscapeString(r.What)
	if r.Table != "" {
		what = template.HTMLEscapeString(r.Table) + ": " + agreement([]comparison{*r}) + ". Furthest off: " + what
	}
	source := r.Status.String()
	if r.Source != "" {
		source = r.Source + "; " + source
	}
	within := template.HTMLEscapeString(r.Allowed())
	if r.fail > 0 {
		within = "<strong>no</strong>: " + within
	}
	unit := ""
	if r.Unit != "" {
		unit = " " + template.HTMLEscapeString(r.Unit)
	}
	return what + "<br><small>" + template.HTMLEscapeString(source) + "</small></th><td>" +
		r.Published() + unit + "</td><td>" + r.Digits(r.got) + "</td><td>" + within
}
