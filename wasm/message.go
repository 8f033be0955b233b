package main

import (
	"errors"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// request is a message from the page.
type request struct {
	seq        float64
	op         string // "evaluate" or "convert"
	worksheet  string
	system, to unit.System // to: only for "convert"
	entries    calc.Entries
}

// requestKeys are the keys of a message from the page.
var requestKeys = []string{"seq", "op", "text", "worksheet", "system", "to", "link", "fields", "by", "down", "from", "count"}

var errMessage = errors.New("a message that the calculator does not understand")

// readRequest reads {seq, op, worksheet, system, to, link, fields}, where link is
// a list of [key, value], as the link that the page was opened with has them, and
// fields a list of [id, text, unit, unitTo, own], which wins over the link.
func readRequest(m map[string]any) (request, error) {
	seq, hasSeq := m["seq"].(float64)
	op, _ := m["op"].(string)
	worksheet, hasWorksheet := m["worksheet"].(string)
	sys, hasSystem := system(m["system"])
	to, hasTo := system(m["to"])
	entries, hasEntries := entries(m["link"], m["fields"])
	known := op == "evaluate" || op == "convert" && hasTo
	if !known || !hasSeq || !hasWorksheet || !hasSystem || !hasEntries {
		return request{}, errMessage
	}
	return request{seq, op, worksheet, sys, to, entries}, nil
}

func system(v any) (unit.System, bool) {
	switch v {
	case "us":
		return unit.US, true
	case "metric":
		return unit.Metric, true
	}
	return unit.US, false
}

func entries(link, fields any) (calc.Entries, bool) {
	opened, isLink := link.([]any)
	typed, isFields := fields.([]any)
	if !isLink || !isFields {
		return nil, false
	}
	var pairs []calc.Pair
	for _, v := range opened {
		t, _, ok := texts(v, 2, 2)
		if !ok {
			return nil, false
		}
		pairs = append(pairs, calc.Pair{Key: t[0], Value: t[1]})
	}
	entries := calc.FromLink(pairs)
	for _, v := range typed {
		t, row, ok := texts(v, 5, 4)
		if !ok {
			return nil, false
		}
		own, ok := row[4].(bool)
		if !ok {
			return nil, false
		}
		entries[t[0]] = calc.Entry{Text: t[1], Unit: t[2], UnitTo: t[3], Own: own}
	}
	return entries, true
}

// texts takes a row of so many items, of which the first are texts.
func texts(v any, items, first int) (t [4]string, row []any, ok bool) {
	row, _ = v.([]any)
	if len(row) != items {
		return t, row, false
	}
	for i := range first {
		if t[i], ok = row[i].(string); !ok {
			return t, row, false
		}
	}
	return t, row, true
}

func failedMessage(seq any, message string) map[string]any {
	return map[string]any{"type": "failed", "seq": seq, "message": message}
}

func convertedMessage(seq float64, fields []calc.FieldState) map[string]any {
	var w writer
	w.begin('[')
	for i := range fields {
		w.field(&fields[i])
	}
	w.end(']')
	return map[string]any{"type": "converted", "seq": seq, "fields": w.written()}
}

func answerMessage(seq float64, check string, a *calc.Answer) map[string]any {
	return map[string]any{"type": "answer", "seq": seq, "check": check, "answer": answer(a)}
}

// postMessage is a text in pieces, each the pick with its number or −1 for what
// lies between, and the picks.
func postMessage(text string, picks []calc.Pick) map[string]any {
	var pieces []any
	from := 0
	piece := func(to, pick int) {
		if to > from {
			pieces = append(pieces, map[string]any{"text": text[from:to], "pick": pick})
		}
		from = max(from, to)
	}
	for i, p := range picks {
		piece(p.Start, -1)
		piece(p.End, i)
	}
	piece(len(text), -1)
	return map[string]any{"type": "post", "pieces": pieces, "picks": each(picks, func(p calc.Pick) any {
		return map[string]any{"field": p.Field, "value": p.Value, "shown": p.Shown, "sure": p.Sure, "ask": p.Ask}
	})}
}

// each turns a list into one that JavaScript takes.
func each[T any](list []T, to func(T) any) []any {
	items := make([]any, len(list))
	for i, x := range list {
		items[i] = to(x)
	}
	return items
}
