//go:build js && wasm

// Command wasm is the calculator as it runs in the page's Web Worker: messages
// come in, answers go out, and nothing here touches a page.
package main

import (
	"runtime/debug"
	"strings"
	"time"

	"github.com/hack-pad/safejs"

	"plainlift/calc/worksheets"
)

// rest is how long nobody must have typed before a simulation begins, or practice,
// in ms. Its slices and its last sort then wait for a pause between keystrokes instead of
// the keystrokes for them.
const rest = 250

// garbage is how much may be left lying before it is swept, in percent of what
// is in use: little is, and sweeping at Go's own 100 takes a fifth of an answer's
// time.
const garbage = 400

func main() {
	debug.SetGCPercent(garbage)
	global := safejs.Global()
	post := func(m map[string]any) {
		var text strings.Builder
		encode(&text, m)
		must(global.Call("postMessage", text.String()))
	}
	start := time.Now()
	now := func() float64 { return time.Since(start).Seconds() * 1000 }
	name, _ := must(global.Get("name")).String()
	d := &desk{book: worksheets.All, now: now, post: post, page: name, eager: practice}
	resting := false
	wake := inTurns(func() bool { return !resting && d.slice() })
	begin := must(safejs.FuncOf(func(safejs.Value, []safejs.Value) any {
		resting = false
		wake()
		return nil
	}))
	rows := inTurns(d.someRows)
	var timer any
	pause := func() {
		resting = true
		must(global.Call("clearTimeout", timer))
		timer = must(global.Call("setTimeout", begin, rest))
	}
	receive := must(safejs.FuncOf(func(_ safejs.Value, args []safejs.Value) any {
		d.take(received(args[0]))
		if d.rows.running {
			rows()
		}
		pause()
		return nil
	}))
	if err := global.Set("onmessage", receive); err != nil {
		panic(err)
	}
	post(map[string]any{"type": "ready"})
	pause()
	select {}
}

// inTurns returns a function that has slice called until it reports that there
// is no more. Between two calls the thread takes whatever message has arrived:
// each call is itself a message, through a channel to this very thread. (A sleep
// would not do: a short one may be over before the thread is handed back, and a
// browser makes a long one of it.)
func inTurns(slice func() (more bool)) (wake func()) {
	channel := must(must(safejs.Global().Get("MessageChannel")).New())
	in, out := must(channel.Get("port1")), must(channel.Get("port2"))
	waiting := false
	wake = func() {
		if !waiting {
			waiting = true
			must(out.Call("postMessage", nil))
		}
	}
	turn := must(safejs.FuncOf(func(safejs.Value, []safejs.Value) any {
		waiting = false
		if slice() {
			wake()
		}
		return nil
	}))
	if err := in.Set("onmessage", turn); err != nil {
		panic(err)
	}
	return wake
}

// must is for what cannot fail in a worker; if it does, the worker ends and the
// page starts another.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// received copies a message out of JavaScript.
func received(event safejs.Value) map[string]any {
	m := map[string]any{}
	data, err := event.Get("data")
	if err != nil {
		return m
	}
	for _, key := range requestKeys {
		if v, err := data.Get(key); err == nil {
			m[key] = plain(v)
		}
	}
	return m
}

// plain is a JavaScript value as Go has it: string, number, boolean or list;
// nil for anything else.
func plain(v safejs.Value) any {
	switch v.Type() {
	case safejs.TypeString:
		s, _ := v.String()
		return s
	case safejs.TypeNumber:
		x, _ := v.Float()
		return x
	case safejs.TypeBoolean:
		b, _ := v.Bool()
		return b
	case safejs.TypeObject:
		n, err := v.Length()
		if err != nil {
			return nil
		}
		list := make([]any, n)
		for i := range list {
			if item, err := v.Index(i); err == nil {
				list[i] = plain(item)
			}
		}
		return list
	}
	return nil
}
