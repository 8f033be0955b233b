//go:build browser

package browser

import (
	_ "embed"
	"net/http"
	"strconv"
	"strings"
	"testing"
	"time"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

//go:embed testdata/dies.js
var diesScript string

//go:embed testdata/sayings.js
var sayingsScript string

// What the page says of the calculator when it fails.
const (
	saysAgain   = "The calculator stopped; what you typed is safe, and it is starting again."
	saysStopped = "It stopped twice on these numbers; what you typed is safe. Change one, or reload."
	saysLoad    = "The calculator could not be loaded; what you typed is safe. Check the connection, then change a number or reload."
)

// dying serves a worker that fails at 2,599 in that way.
func dying(how string) http.HandlerFunc {
	script := text("text/javascript", strings.Replace(diesScript, "HOW;", how, 1))
	return func(w http.ResponseWriter, r *http.Request) {
		if r.URL.RawQuery != "" {
			siteHost().ServeHTTP(w, r)
			return
		}
		script(w, r)
	}
}

// answers fails unless the page answers to this reading on the home page.
func (p *page) answers(text string) {
	p.Helper()
	p.until(`document.getElementById("answer").dataset.state === "current"`)
	p.settle()
	p.matches(worksheets.All.Evaluate("short", calc.Entries{"reading": {Text: text, Own: true}}, unit.US))
	if got := p.value("#reading"); got != text {
		p.Errorf("the field holds %q, typed was %q", got, text)
	}
}

// saying is how the page stood when it said something.
type saying struct {
	Head, Sentence, State, Busy string
	Stale                       bool
	Figures                     int
}

// says waits for the page to say that the calculator failed, in those words and
// nowhere as if the figures were current. What was typed must still be there.
func (p *page) says(sentence, typed string) {
	p.Helper()
	p.until(`sayings.some((s) => s.Sentence === %s)`, quoted(sentence))
	got := js[saying](p, `sayings.find((s) => s.Sentence === %s)`, quoted(sentence))
	want := saying{"Not calculated", sentence, "failed", strconv.FormatBool(sentence == saysAgain), true, got.Figures}
	if got != want || got.Figures == 0 {
		p.Errorf("the page stood as %+v, want %+v", got, want)
	}
	if got := p.value("#reading"); got != typed {
		p.Errorf("the field holds %q, typed was %q", got, typed)
	}
	js[bool](p, `(sayings.splice(0, sayings.findIndex((s) => s.Sentence === %s) + 1), true)`, quoted(sentence))
}

// A calculator that fails on one set of numbers is started again and asked
// again; after the second time the page gives up on those numbers, and only on
// those.
func TestFailsOnTheseNumbers(t *testing.T) {
	for name, how := range map[string]string{
		"a fault that it reports": `postMessage({ type: "failed", seq: e.data.seq, message: "index out of range" })`,
		"an error of the script":  `throw new Error("index out of range")`,
		"the program's end":       `postMessage({ type: "error", message: "the calculator ended" })`,
		"silence":                 ``,
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, sayingsScript)
			p.instead("assets/worker.js", dying("e.stopImmediatePropagation();"+how))
			p.visit("")
			p.enter("reading", "2,601")
			p.answers("2,601")
			began := time.Now()
			p.typeInto("#reading", "2,599")
			p.says(saysAgain, "2,599")
			p.says(saysStopped, "2,599")
			if took := time.Since(began); name == "silence" && took < 9*time.Second {
				t.Errorf("gave up after %v; an answer may take 5 s, twice", took)
			}
			p.enter("reading", "2,655")
			p.answers("2,655")
		})
	}
}

// A worker that is ended in the middle of its work is missed after 5 s, and the
// next one answers.
func TestWorkerKilled(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, sayingsScript)
	p.visit("")
	p.enter("reading", "2,601")
	began := time.Now()
	js[bool](p, `(() => {
		const input = document.getElementById("reading");
		input.value = "2,655";
		input.dispatchEvent(new Event("input", { bubbles: true }));
		watched.workers[0].terminate();
		return true;
	})()`)
	if p.standing() != "working" || p.attribute("#answer", "aria-busy") != "true" {
		t.Errorf("not at work\n%s", p.state())
	}
	p.says(saysAgain, "2,655")
	if took := time.Since(began); took < 4900*time.Millisecond || took > 12*time.Second {
		t.Errorf("missed after %v", took)
	}
	p.answers("2,655")
	if js[int](p, `watched.opened`) != 2 || js[int](p, `watched.workers.length`) != 1 {
		t.Errorf("not one worker\n%s", p.state())
	}
}

// A fault while nothing is asked is nothing to the reader.
func TestWorkerFailsWhileIdle(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, sayingsScript)
	p.visit("")
	p.enter("reading", "2,601")
	before := js[int](p, `sayings.length`)
	js[bool](p, `(watched.workers[0].postMessage({ seq: 1, op: "nonsense" }), true)`)
	p.until(`watched.heard.some((m) => m.type === "failed")`)
	p.answers("2,601")
	if n := js[int](p, `sayings.length`); n != before {
		t.Errorf("the page said something\n%s", p.state())
	}
	p.enter("reading", "2,655")
	p.answers("2,655")
}

// If a file of the calculator does not arrive, the page says so as soon as
// somebody wants an answer, and the next change tries again.
func TestCalculatorDoesNotLoad(t *testing.T) {
	for file, answer := range map[string]http.HandlerFunc{
		"plainlift.wasm": http.NotFound,
		"worker.js":      http.NotFound,
		"wasm_exec.js":   http.NotFound,
	} {
		t.Run(file, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, sayingsScript)
			p.expect("404")
			p.instead("assets/"+file, answer)
			p.visit("")
			p.typeInto("#reading", "2,601")
			p.says(saysLoad, "2,601")
			p.typeInto("#reading", "2,602") // tries again, in vain
			p.says(saysLoad, "2,602")
			p.instead("assets/"+file, nil)
			p.typeInto("#reading", "2,655")
			p.answers("2,655")
		})
	}
}

// The reader of a link sees no figure of the example when nothing can be worked
// out, but the same words.
func TestCalculatorDoesNotLoadForALink(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, seenScript)
	p.expect("404")
	p.instead("assets/plainlift.wasm", http.NotFound)
	c := cases()[0]
	p.visit(c.link())
	p.until(`document.getElementById("answer").dataset.state === "failed"`)
	if p.text("#sentence") != saysLoad || !p.seen("#sentence") || p.seen("#waiting") {
		t.Errorf("the page does not say so\n%s", p.state())
	}
	for id, f := range p.figures() {
		if f.Value != "" {
			t.Errorf("figure %s shows %q", id, f.Text)
		}
	}
	p.neverSaw(exampleOnly(c.worksheet, &calc.Answer{}))
}

// A server may name the wrong type for the calculator.
func TestCalculatorOfAnotherType(t *testing.T) {
	t.Parallel()
	for _, kind := range []string{"application/octet-stream", "text/html; charset=utf-8"} {
		p := tab(t, phone)
		p.instead("assets/plainlift.wasm", func(w http.ResponseWriter, r *http.Request) {
			r.Header.Del("Accept-Encoding")
			r.Header.Del("If-None-Match")
			siteHost().ServeHTTP(&retyped{w, kind}, r)
		})
		p.visit("")
		p.typeInto("#reading", "2,655")
		p.answers("2,655")
	}
}

// retyped changes the type that is sent.
type retyped struct {
	http.ResponseWriter
	kind string
}

func (t *retyped) WriteHeader(status int) {
	t.Header().Set("Content-Type", t.kind)
	t.ResponseWriter.WriteHeader(status)
}

// While the calculator is on its way one may go on typing; only the last text
// is asked about. One that never comes is given up.
func TestCalculatorIsSlow(t *testing.T) {
	t.Parallel()
	arrive := make(chan bool)
	late := func(w http.ResponseWriter, r *http.Request) {
		select {
		case <-arrive:
			siteHost().ServeHTTP(w, r)
		case <-r.Context().Done():
		}
	}
	p := tab(t, phone)
	p.instead("assets/plainlift.wasm", late)
	p.visit("")
	for _, typed := range []string{"2", "26", "265", "2,655"} {
		p.typeInto("#reading", typed)
		if p.standing() != "working" || p.attribute("#answer", "aria-busy") != "true" {
			t.Errorf("not at work\n%s", p.state())
		}
	}
	close(arrive)
	p.answers("2,655")
	if n := js[int](p, `watched.asked.filter((a) => a.seq).length`); n != 1 {
		t.Errorf("%d questions asked, one would do", n)
	}

	never := tab(t, phone, sayingsScript, `{
		const real = window.setTimeout; // 90 s are too long for a test
		window.setTimeout = (act, ms, ...more) => real(act, ms === 90_000 ? 1_000 : ms, ...more);
	}`)
	never.instead("assets/plainlift.wasm", func(w http.ResponseWriter, r *http.Request) { <-r.Context().Done() })
	never.visit("")
	never.typeInto("#reading", "2,655")
	never.says(saysLoad, "2,655")
}
