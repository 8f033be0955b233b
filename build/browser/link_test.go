//go:build browser

package browser

import (
	_ "embed"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

//go:embed testdata/seen.js
var seenScript string

// fragment writes a link's keys and values as forms do.
func fragment(pairs []calc.Pair) string {
	var parts []string
	for _, p := range pairs {
		parts = append(parts, url.QueryEscape(p.Key)+"="+url.QueryEscape(p.Value))
	}
	return strings.Join(parts, "&")
}

// exampleOnly are the texts of the untouched page that an answer does not share.
func exampleOnly(worksheet string, answer *calc.Answer) map[string]string {
	example := worksheets.All.Checked(worksheet, nil, unit.US)
	own := map[string]bool{}
	for _, f := range answer.Figures {
		own[f.Text] = true
	}
	own[answer.Verdict.Head], own[answer.Verdict.Sentence] = true, true
	only := map[string]string{}
	note := func(what, text string) {
		if !own[text] && text != "" {
			only[text] = what
		}
	}
	note("head", example.Verdict.Head)
	note("sentence", example.Verdict.Sentence)
	for _, f := range example.Figures {
		if f.ID != "verdict" && f.Place != calc.Quoted {
			note(f.ID, f.Text)
		}
	}
	return only
}

// neverSaw fails if the page ever let a text of the example be seen.
func (p *page) neverSaw(only map[string]string) {
	p.Helper()
	if len(only) < 3 {
		p.Fatalf("too little to tell the answer from the example: %v", only)
	}
	p.until(`seenTexts.size`) // a busy machine may not have drawn a frame yet
	for _, text := range js[[]string](p, `[...seenTexts]`) {
		if what, bad := only[text]; bad {
			p.Errorf("the reader of a link saw the example's %s: %q", what, text)
		}
	}
}

// A link gives the figures that typing gives, and nobody sees the example's
// figures first.
func TestLink(t *testing.T) {
	for i, c := range cases() {
		t.Run(c.worksheet+strconv.Itoa(i), func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, seenScript)
			p.visit(c.link())
			p.checked()
			want := worksheets.All.Checked(c.worksheet, c.own(), unit.US)
			p.matches(want)
			p.neverSaw(exampleOnly(c.worksheet, want))
			if p.attribute("html", "data-view") != "link" || p.seen("#fields") || !p.seen("#used") {
				t.Errorf("not the view of a link\n%s", p.state())
			}
			used := js[[]string](p, `[...document.querySelectorAll("#used > .used b")].map((n) => n.textContent)`)
			if len(used) != len(want.Used) {
				t.Errorf("numbers used: page %q, here %v", used, want.Used)
			}
			// The link that the page makes says the same for ever.
			p.until(`location.hash.includes("v=1")`)
			p.visit("safety/")
			p.visit(pageOf(c.worksheet) + "#" + fragment(want.Link))
			p.checked()
			p.matches(worksheets.All.Checked(c.worksheet, calc.FromLink(want.Link), unit.US))
		})
	}
}

// While the calculator is still on its way, the reader of a link sees that the
// numbers are being worked out, and no figure.
func TestLinkWhileTheCalculatorIsSlow(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, seenScript)
	arrive := make(chan bool)
	p.instead("assets/plainlift.wasm", func(w http.ResponseWriter, r *http.Request) {
		select {
		case <-arrive:
			siteHost().ServeHTTP(w, r)
		case <-r.Context().Done():
		}
	})
	c := cases()[0]
	want := worksheets.All.Checked(c.worksheet, c.own(), unit.US)
	p.visit(c.link())
	p.until(`watched.opened === 1 && document.readyState === "complete"`)
	js[bool](p, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
	if !p.seen("#waiting") || p.text("#waiting") != "Working out the numbers in this link…" {
		t.Errorf("nothing says that the numbers are being worked out")
	}
	if p.attribute("#answer", "aria-busy") != "true" || p.standing() != "working" {
		t.Errorf("not busy\n%s", p.state())
	}
	for _, part := range []string{"#head", "#sentence", ".figures", "#picture svg", "#lines", "#cautions", "#rests", "#next"} {
		if p.seen(part) {
			t.Errorf("%s of the example can be seen", part)
		}
	}
	close(arrive)
	p.settle()
	p.matches(want)
	p.neverSaw(exampleOnly(c.worksheet, want))
}

// A link whose numbers cannot be used shows none at all.
func TestBadLinkShowsNoFigure(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, seenScript)
	p.visit("#v=1&reading=26x0+psi&scale=4000+psi&end=1")
	p.settle()
	if p.standing() != "stale" {
		t.Errorf("stands %s", p.standing())
	}
	for id, f := range p.figures() {
		if f.Value != "" || strings.ContainsAny(f.Text, "0123456789") {
			t.Errorf("figure %s shows %q", id, f.Text)
		}
	}
	if js[int](p, `document.querySelectorAll("#picture svg, #lines > li, #working > li, #next > li").length`) > 0 {
		t.Error("parts of the example's answer are left")
	}
	if got := p.value("#reading"); got != "26x0 psi" {
		t.Errorf("the bad value stands as %q", got)
	}
	if !p.seen("#error-reading") || !p.seen("#reading") {
		t.Error("the field with the bad value and its error are not shown")
	}
	p.neverSaw(exampleOnly("short", &calc.Answer{}))
}
