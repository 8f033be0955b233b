//go:build browser

package browser

import (
	"slices"
	"testing"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// offered are the offers as they can be read.
func (p *page) offered() []string {
	p.Helper()
	return js[[]string](p, `[...document.querySelectorAll("#offered li")].map((n) => n.textContent.trim())`)
}

// What was typed on one worksheet is offered on the next, and taken only when
// asked for.
func TestOffers(t *testing.T) {
	for _, s := range []screen{phone, desk} {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := open(t, s, "")
			p.enter("reading", "2,655 psi")
			p.enter("lift", "700 kg")
			p.visit("gain/")
			p.ready()
			want := []string{
				"Lift capacity: use 1,543 lb from “Is my relief pressure low?”",
				"Gauge shows: use 2,655 psi from “Is my relief pressure low?”",
			}
			if got := p.offered(); !slices.Equal(got, want) {
				t.Errorf("offered: %q, want %q", got, want)
			}
			if shift := js[float64](p, `watched.shifts.reduce((sum, s) => sum + s.value, 0)`); shift > 0 {
				t.Errorf("layout shift %v", shift)
			}
			if p.value("#now") != "2,610" {
				t.Errorf("taken unasked: %s", p.value("#now"))
			}
			p.click("#offers > summary")
			p.click(`[data-offer="now"]`)
			p.settle()
			p.matches(worksheets.All.Evaluate("gain", own("now", "2655 psi"), unit.US))
			if p.value("#now") != "2,655" || p.value("#unit-now") != "psi" {
				t.Errorf("the field holds %s %s", p.value("#now"), p.value("#unit-now"))
			}
			p.enter("lift", "1,600 lb") // typed: no longer open to an offer
			if p.seen("#offers") {
				t.Errorf("still offered: %q", p.offered())
			}

			p.visit("before-after/")
			p.ready()
			if got := p.offered(); !slices.Contains(got, "Gauge showed before: use 2,655 psi from “What would more pressure lift?”") {
				t.Errorf("offered: %q", got)
			}
			p.click("#offers > summary")
			p.click("#take-offers")
			p.settle()
			if p.value("#before") != "2,655" || p.seen("#offers") {
				t.Errorf("not all taken: %q, before %s", p.offered(), p.value("#before"))
			}
			p.visit("shim/")
			p.click("#offers > summary")
			p.click("#forget-offers")
			p.visit("shim/")
			p.ready()
			if p.seen("#offers") || len(p.offered()) > 0 {
				t.Errorf("offered after being forgotten: %q", p.offered())
			}
		})
	}
}

// The example's numbers are never offered, and a link's are not written over.
func TestOffersAreTheReaders(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.ready()
	p.enter("accuracy", "1")
	p.visit("gain/")
	p.ready()
	if p.seen("#offers") {
		t.Errorf("offered: %q", p.offered())
	}
	p.visit("")
	p.enter("reading", "2,655")
	p.visit("safety/")
	p.visit("gain/#now=2500+psi")
	p.settle()
	if p.value("#now") != "2,500" || slices.ContainsFunc(p.offered(), func(s string) bool { return s[:5] == "Gauge" }) {
		t.Errorf("a link's number is offered another: %q", p.offered())
	}
}

// What somebody else's link brought is not offered as the reader's, until they
// work on with it.
func TestOffersNothingOfALink(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "#reading=2655+psi&high=2900+psi")
	p.settle()
	p.visit("gain/")
	p.ready()
	if p.seen("#offers") {
		t.Errorf("offered: %q", p.offered())
	}
	p.visit("#reading=2655+psi&high=2900+psi")
	p.settle()
	p.click("#change")
	p.enter("reading", "2,650")
	p.visit("gain/")
	p.ready()
	if got := p.offered(); !slices.Contains(got, "Gauge shows: use 2,650 psi from “Is my relief pressure low?”") {
		t.Errorf("offered: %q", got)
	}
}

// Without storage nothing is offered and nothing fails.
func TestOffersWithoutStorage(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, `Object.defineProperty(window, "sessionStorage", { get() { throw new DOMException("refused", "SecurityError"); } });`)
	p.visit("")
	p.enter("reading", "2,655")
	p.visit("gain/")
	p.enter("now", "2,600")
	p.matches(worksheets.All.Evaluate("gain", own("now", "2,600"), unit.US))
	if p.seen("#offers") {
		t.Error("something is offered")
	}
}

// What somebody else put into the storage does no harm.
func TestOffersFromRubbish(t *testing.T) {
	for name, text := range map[string]string{
		"not JSON": "{", "null": "null", "a list": "[1]", "a number": "7", "numbers": `{"pressure now":7,"lift":null}`,
		"markup": `{"pressure now":{"text":"<img src=x onerror=alert(1)>","shown":"<img src=x onerror=alert(1)>","id":"x","title":"<b>"}}`,
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, `sessionStorage.setItem("plainlift.known", `+quoted(text)+`);`)
			p.visit("gain/")
			scripts := js[int](p, `document.scripts.length`)
			p.enter("target", "2,700")
			if s := p.standing(); s != "current" {
				t.Errorf("the answer is %s", s)
			}
			p.uninjured(scripts)
		})
	}
}
