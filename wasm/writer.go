package main

import (
	"strconv"
	"strings"
)

// written is JSON that stands ready.
type written string

// writer writes JSON part by part.
type writer struct {
	to     strings.Builder
	follow bool // something stands before, at this depth: a comma comes next
}

func (w *writer) written() written { return written(w.to.String()) }

// begin opens an object or a list.
func (w *writer) begin(bracket byte) {
	w.separate()
	w.to.WriteByte(bracket)
	w.follow = false
}

// end closes it.
func (w *writer) end(bracket byte) {
	w.to.WriteByte(bracket)
	w.follow = true
}

func (w *writer) separate() {
	if w.follow {
		w.to.WriteByte(',')
	}
}

// name begins a member of an object. It is one of our own and needs no escape.
func (w *writer) name(name string) {
	w.separate()
	w.to.WriteByte('"')
	w.to.WriteString(name)
	w.to.WriteString(`":`)
	w.follow = false
}

func (w *writer) raw(json string) {
	w.to.WriteString(json)
	w.follow = true
}

func (w *writer) item(s string) {
	w.separate()
	quote(&w.to, s)
	w.follow = true
}

func (w *writer) text(name, s string) {
	w.name(name)
	w.item(s)
}

func (w *writer) number(name string, x float64) {
	w.name(name)
	encode(&w.to, x)
	w.follow = true
}

func (w *writer) flag(name string, on bool) {
	w.name(name)
	w.raw(strconv.FormatBool(on))
}

func (w *writer) texts(name string, list []string) {
	w.name(name)
	w.begin('[')
	for _, s := range list {
		w.item(s)
	}
	w.end(']')
}

// list writes a list of objects, each with what member writes of it.
func list[T any](w *writer, name string, items []T, members func(*T)) {
	w.name(name)
	w.begin('[')
	for i := range items {
		w.begin('{')
		members(&items[i])
		w.end('}')
	}
	w.end(']')
}
