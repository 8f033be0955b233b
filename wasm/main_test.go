//go:build js && wasm

package main

import (
	"reflect"
	"testing"

	"github.com/hack-pad/safejs"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// evaluated is what a piece of JavaScript gives.
func evaluated(t testing.TB, code string) safejs.Value {
	t.Helper()
	v, err := safejs.Global().Call("eval", "("+code+")")
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestReceived(t *testing.T) {
	got := received(evaluated(t, `{data: {seq: 7, op: "evaluate", worksheet: "short", system: "metric",
		link: [], fields: [["reading", "18", "MPa", "", true], ["kit", "1 : 2", "mm", "", false]], other: {}}}`))
	want := question("to", nil)
	for _, key := range []string{"text", "by", "down", "from", "count"} {
		want[key] = nil
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	for _, odd := range []string{`{}`, `{data: null}`, `{data: 3}`, `{data: {seq: {}, op: null, fields: ["\ud800"]}}`} {
		if _, err := readRequest(received(evaluated(t, odd))); err == nil {
			t.Errorf("%s was understood", odd)
		}
	}
}

// What the page gets has the shape and the texts of the answer.
func TestAnswerInJavaScript(t *testing.T) {
	a := full()
	a.Verdict.Sentence = "±80 psi “quoted”, 1 200 µm"
	v, err := safejs.ValueOf(encoded(answerMessage(7, "done", a)))
	if err != nil {
		t.Fatal(err)
	}
	test := evaluated(t, `(text) => { const m = JSON.parse(text); return m.type === "answer" && m.seq === 7 && m.check === "done"
		&& m.answer.verdict.sentence === "±80 psi “quoted”, 1 200 µm"
		&& m.answer.budget[1].share === 0.5 && m.answer.problems[0].row === 1 && m.answer.fields[0].bears === true
		&& Array.isArray(m.answer.link[1]) && m.answer.link[1][0] === "text"
		&& m.answer.figures.length === 2; }`)
	if fits, err := test.Invoke(v); err != nil {
		t.Error(err)
	} else if yes, _ := fits.Bool(); !yes {
		t.Error("the message is not as the page expects it")
	}
}

// Between two slices the thread is back with JavaScript, however short the slices
// are: only then can a message be taken. A microtask runs as soon as it is.
func TestThreadBackBetweenSlices(t *testing.T) {
	back := 0
	count := must(safejs.FuncOf(func(safejs.Value, []safejs.Value) any {
		back++
		return nil
	}))
	const turns = 20
	seen := make(chan int, turns)
	wake := inTurns(func() bool {
		seen <- back
		must(safejs.Global().Call("queueMicrotask", count))
		return len(seen) < turns
	})
	wake()
	wake() // while it runs does nothing
	for i := range turns {
		if n := <-seen; n != i {
			t.Errorf("before slice %d the thread was back %d times", i, n)
		}
	}
}

// The cost of handing an answer to JavaScript: it comes on top of every
// keystroke.
func BenchmarkAnswerToJavaScript(b *testing.B) {
	a := worksheets.All.Evaluate("loader", nil, unit.US)
	for b.Loop() {
		if _, err := safejs.ValueOf(encoded(answerMessage(1, "none", a))); err != nil {
			b.Fatal(err)
		}
	}
}
