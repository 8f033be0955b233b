package site

import (
	"fmt"
	"sort"
	"strings"
	"sync"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// answered is one answer in both systems of units, and the simulation that
// checks it, if there is one.
type answered struct {
	w          *calc.Worksheet
	us, metric *calc.Answer
	sim        *doubt.Simulation
}

// figure quotes a figure, or the head of the verdict.
func (a *answered) figure(id string) (quoted, error) {
	us, metric := a.us.Figure(id), a.metric.Figure(id)
	switch {
	case us == nil:
		return quoted{}, fmt.Errorf("%s has no figure %q", a.w.ID, id)
	case us.Value == "":
		return quoted{}, fmt.Errorf("figure %q does not exist for these numbers: %s", id, us.Text)
	}
	return quoted{us.Text, metric.Text}, nil
}

// field quotes what stands in a field; an empty one is what its being empty means.
func (a *answered) field(id string) (quoted, error) {
	f := fieldOf(a.w, id)
	if f == nil {
		return quoted{}, fmt.Errorf("%s has no field %q", a.w.ID, id)
	}
	for i, u := range a.us.Used {
		if u.ID == id {
			return quoted{u.Text, a.metric.Used[i].Text}, nil
		}
	}
	for _, s := range a.us.Fields {
		if s.ID == id && s.Bears {
			return quoted{f.Empty, f.Empty}, nil
		}
	}
	return quoted{}, fmt.Errorf("field %q does not bear on this answer", id)
}

func fieldOf(w *calc.Worksheet, id string) *calc.Field {
	for i := range w.Fields {
		if w.Fields[i].ID == id {
			return &w.Fields[i]
		}
	}
	return nil
}

// answers keeps what was worked out, so that a simulation runs once for each
// worksheet and set of entries, however often it is quoted or the site rebuilt.
var answers = struct {
	sync.Mutex
	known map[answerKey]func() (*answered, error)
}{known: map[answerKey]func() (*answered, error){}}

type answerKey struct {
	w       *calc.Worksheet
	changed string
}

// answer answers a worksheet's example with some fields changed.
func answer(book calc.Book, id string, changed map[string]string) (*answered, error) {
	w := book.Lookup(id)
	if w == nil {
		return nil, fmt.Errorf("no worksheet %q", id)
	}
	var parts []string
	for field, text := range changed {
		if fieldOf(w, field) == nil {
			return nil, fmt.Errorf("%s has no field %q", id, field)
		}
		parts = append(parts, field+"="+text)
	}
	sort.Strings(parts)
	key := answerKey{w, strings.Join(parts, "\n")}
	answers.Lock()
	work, ok := answers.known[key]
	if !ok {
		work = sync.OnceValues(func() (*answered, error) { return workOut(book, w, changed) })
		answers.known[key] = work
	}
	answers.Unlock()
	return work()
}

// workOut evaluates in both systems of units, every entry as the reader's own.
// The metric pass takes the entries with their units, which mean the same in
// either system; the text itself may not.
func workOut(book calc.Book, w *calc.Worksheet, changed map[string]string) (*answered, error) {
	typed := calc.Entries{}
	for _, f := range book.Evaluate(w.ID, nil, unit.US).Fields {
		text, ok := changed[f.ID]
		if !ok {
			text = fieldOf(w, f.ID).Example
		}
		if !ok && text == "" {
			text = f.Canonical // the first of the choices, or empty
		}
		typed[f.ID] = calc.Entry{Text: text, Own: true}
	}
	us := book.Evaluate(w.ID, typed, unit.US)
	if !us.OK() {
		p := us.Problems[0]
		return nil, fmt.Errorf("field %q: %s", p.Field, p.Message)
	}
	canonical := calc.Entries{}
	for _, f := range us.Fields {
		canonical[f.ID] = calc.Entry{Text: f.Canonical, Own: true}
	}
	sim := book.Simulation(w.ID, typed, unit.US)
	if sim != nil {
		sim.Run(calc.Trials)
		us = book.EvaluateWith(w.ID, typed, unit.US, sim)
	}
	return &answered{w, us, book.EvaluateWith(w.ID, canonical, unit.Metric, sim), sim}, nil
}
