package main

import (
	"strings"

	"plainlift/calc"
	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// desk takes the page's messages and posts the answers. It is used from one
// goroutine at a time.
type desk struct {
	book calc.Book
	now  func() float64 // ms
	post func(map[string]any)
	job  *job // the newest simulation, nil when there is none to run
	rows rows // of a table

	page  string // the worksheet that the page will ask about, "" for any
	eager int    // how many answers to it are still to be practised
}

// job is a simulation under way and the message it belongs to.
type job struct {
	request
	sim *doubt.Simulation // made by the first slice: it takes as long as an answer
}

const (
	// A newer message waits for one slice at most, so a slice stays well under
	// the time a reader could notice.
	sliceTime = 6 // ms
	// Trials between two looks at the clock: about 0.1 ms on a desktop machine.
	batch = 1000
)

// take answers one message. A newer question ends the simulation of an older
// one. Whatever panics is told to the page and the desk goes on.
func (d *desk) take(m map[string]any) {
	seq := m["seq"]
	defer d.rescue(seq)
	if op, _ := m["op"].(string); strings.HasPrefix(op, "many-") {
		d.many(op, m)
		return
	}
	if text, ok := m["text"].(string); ok {
		d.beside(m, text)
		return
	}
	r, err := readRequest(m)
	if err != nil {
		d.post(failedMessage(seq, err.Error()))
		return
	}
	if r.op == "convert" {
		fields := d.book.Convert(r.worksheet, r.entries, r.system, r.to)
		d.post(convertedMessage(r.seq, fields))
		return
	}
	d.job = nil
	a := d.book.Evaluate(r.worksheet, r.entries, r.system)
	if a == nil {
		d.post(failedMessage(seq, "no such worksheet: "+r.worksheet))
		return
	}
	if !a.OK() || d.book.Lookup(r.worksheet).Simulate == nil {
		d.post(answerMessage(r.seq, "none", a))
		return
	}
	d.post(answerMessage(r.seq, "running", a))
	d.job = &job{request: r}
}

// beside answers what is asked of a text, beside the questions of the fields.
func (d *desk) beside(m map[string]any, text string) {
	switch m["op"] {
	case "code":
		svg, _ := code(text) // too long: none
		d.post(map[string]any{"type": "code", "svg": svg})
		return
	case "table":
		d.post(tableMessage(text))
		return
	}
	id, _ := m["worksheet"].(string)
	sys, _ := system(m["system"])
	if w := d.book.Lookup(id); w != nil && w.Read != nil && m["op"] == "post" {
		d.post(postMessage(text, w.Read(text, sys)))
	}
}

// slice runs a part of the newest simulation and posts the checked answer when
// it is complete. It reports whether there is more to run.
func (d *desk) slice() (more bool) {
	j := d.job
	if j == nil {
		return d.practise()
	}
	defer d.rescue(j.seq)
	if j.sim == nil {
		j.sim = d.book.Simulation(j.worksheet, j.entries, j.system)
	}
	for end := d.now() + sliceTime; d.now() < end; {
		j.sim.Run(min(batch, calc.Trials-j.sim.Trials()))
		if j.sim.Trials() == calc.Trials {
			d.job = nil
			d.post(answerMessage(j.seq, "done", d.book.EvaluateWith(j.worksheet, j.entries, j.system, j.sim)))
			return false
		}
	}
	return true
}

// practice is how many answers a browser takes to compile the code that they run
// in earnest: until then each takes twice as long. Typing bears that; a slider
// would not be smooth.
const practice = 120

// practise works the example of a page with a slider out once more, for nobody,
// and reports whether there is more to practise.
func (d *desk) practise() (more bool) {
	if w := d.book.Lookup(d.page); d.eager == 0 || w == nil || !w.Slides() {
		return false
	}
	d.eager--
	var text strings.Builder
	encode(&text, answerMessage(0, "none", d.book.Evaluate(d.page, nil, unit.US)))
	return d.eager > 0
}

// rescue turns a panic into a message. Deferred.
func (d *desk) rescue(seq any) {
	if p := recover(); p != nil {
		d.job, d.rows.running = nil, false
		d.post(failedMessage(seq, said(p)))
	}
}

// said is what a panic says: constant text where it is the project's own.
func said(p any) string {
	switch p := p.(type) {
	case string:
		return p
	case error:
		return p.Error()
	}
	return "an unknown fault"
}
