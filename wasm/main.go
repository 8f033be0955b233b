//go:build js && wasm

// Command wasm is the calculator as it runs in the page's Web Worker: messages
// come in, answers go out, and nothing here touches a page.
package main

import (
	"time"

	"github.com/hack-pad/safejs"

	"plainlift/calc/worksheets"
)

func main() {
	global := safejs.Global()
	post := func(m map[string]any) {
		if _, err := global.Call("postMessage", m); err != nil {
			panic(err)
		}
	}
	start := time.Now()
	now := func() float64 { return time.Since(start).Seconds() * 1000 }
	d := &desk{book: worksheets.All, now: now, post: post}
	// A simulation waits here until a message wants one. One is enough: there is
	// only ever the newest.
	wake := make(chan struct{}, 1)
	receive, err := safejs.FuncOf(func(_ safejs.Value, args []safejs.Value) any {
		d.take(received(args[0]))
		select {
		case wake <- struct{}{}:
		default:
		}
		return nil
	})
	if err != nil {
		panic(err)
	}
	if err := global.Set("onmessage", receive); err != nil {
		panic(err)
	}
	post(map[string]any{"type": "ready"})
	for range wake {
		for d.slice() {
			// Hands the thread back, so that a message that has arrived is taken
			// before the next slice.
			time.Sleep(time.Nanosecond)
		}
	}
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
