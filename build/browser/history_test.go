//go:build browser

package browser

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// own is one entry of the reader's.
func own(pairs ...string) calc.Entries {
	entries := calc.Entries{}
	for i := 0; i < len(pairs); i += 2 {
		entries[pairs[i]] = calc.Entry{Text: pairs[i+1], Own: true}
	}
	return entries
}

// back goes back in the tab's history, or forward. The page may be gone before it
// can say that it heard.
func (p *page) back()    { _, _ = try[bool](p, `history.back() ?? true`) }
func (p *page) forward() { _, _ = try[bool](p, `history.forward() ?? true`) }

// What is typed stands in the address, in one entry of the history, and comes
// back when the page is loaded again.
func TestAddressHoldsWhatIsTyped(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	entries := js[int](p, `history.length`)
	for _, text := range []string{"2,6", "2,65", "2,655"} {
		p.enter("reading", text)
	}
	p.enter("lift", "640 kg")
	want := worksheets.All.Evaluate("short", own("reading", "2,655", "lift", "640 kg"), unit.US)
	p.addressed(want.Link)
	if n := js[int](p, `history.length`); n != entries {
		t.Errorf("typing made %d new entries of the history", n-entries)
	}
	p.do(chromedp.Reload())
	p.settle()
	p.matches(want)
	if !p.seen("#fields") || p.value("#reading") != "2,655" || p.value("#lift") != "640" || p.value("#unit-lift") != "kg" {
		t.Errorf("not as it was typed\n%s", p.state())
	}
}

// discarded makes the browser throw a page away when it is left, as a phone
// short of memory does; otherwise the browser keeps it whole.
const discarded = `navigator.locks.request("held", () => new Promise(() => {}));`

// Following a link to another worksheet and coming back leaves everything as it
// was, also when it is followed right after the last key.
func TestThereAndBack(t *testing.T) {
	for name, script := range map[string]string{"kept": "", "discarded": discarded} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, script)
			p.visit("")
			p.ready()
			for _, text := range []string{"2,655", "2,600"} {
				p.enter("reading", text)
				js[bool](p, `(document.querySelector("#next a").click(), true)`)
				want := worksheets.All.Evaluate("short", own("reading", text), unit.US)
				next := want.Next[0]
				arrived := func(worksheet string) {
					p.Helper()
					p.until(`document.querySelector("[data-worksheet]")?.dataset.worksheet === %s && document.readyState === "complete"`, quoted(worksheet))
					p.checked()
				}
				arrived(next.ID)
				p.matches(worksheets.All.Checked(next.ID, calc.FromLink(next.Link), unit.US))
				p.back()
				arrived("short")
				if p.value("#reading") != text || !p.seen("#fields") || p.text("#kind") != "Your numbers" {
					t.Errorf("back from %s, not as it was typed\n%s", next.ID, p.state())
				}
				p.matches(want)
			}
		})
	}
}

// Every way on carries the numbers that the other worksheet knows.
func TestWaysOn(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.enter("reading", "2,655")
	want := worksheets.All.Evaluate("short", own("reading", "2,655"), unit.US)
	for i, next := range want.Next {
		p.click("#next > li:nth-of-type(" + strconv.Itoa(i+1) + ") a")
		p.until(`document.querySelector("[data-worksheet]")?.dataset.worksheet === %s && document.readyState === "complete"`, quoted(next.ID))
		p.checked()
		p.matches(worksheets.All.Checked(next.ID, calc.FromLink(next.Link), unit.US))
		p.back()
		p.until(`document.querySelector("[data-worksheet]")?.dataset.worksheet === "short" && document.readyState === "complete"`)
	}
}

// A new fragment is a new answer, in the same page and through back and forward,
// however hastily.
func TestFragmentChanges(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "#reading=2500+psi")
	p.settle()
	first := worksheets.All.Evaluate("short", own("reading", "2500 psi"), unit.US)
	second := worksheets.All.Evaluate("short", own("reading", "2550 psi", "lift", "700 kg"), unit.US)
	p.matches(first)
	p.addressed(first.Link)
	js[bool](p, `!!(location.hash = "#reading=2550+psi&lift=700+kg")`)
	p.until(`document.getElementById("head").textContent === %s && location.hash.includes("v=1")`, quoted(second.Verdict.Head))
	p.settle()
	p.matches(second)
	p.addressed(second.Link)
	shows := func(a *calc.Answer) {
		p.Helper()
		p.until(`document.getElementById("sentence").textContent === %s`, quoted(a.Verdict.Sentence))
		p.settle()
		p.matches(a)
		p.addressed(a.Link)
	}
	p.back()
	shows(first)
	p.forward()
	shows(second)
	p.back()
	p.until(`location.hash.includes("reading=2500")`)
	p.forward()
	shows(second)
	p.back()
	shows(first)
}

// Back from a link that was opened over the untouched page leads to the
// untouched page.
func TestBackToTheExample(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.ready()
	js[bool](p, `!!(location.hash = "#reading=2550+psi")`)
	p.until(`document.documentElement.dataset.view === "link"`)
	p.settle()
	p.matches(worksheets.All.Evaluate("short", own("reading", "2550 psi"), unit.US))
	p.back()
	p.until(`document.documentElement.dataset.view === "example" && document.readyState === "complete"`)
	p.settle()
	p.matches(worksheets.All.Checked("short", nil, unit.US))
	p.owns("short", nil)
}

// Anchors inside the page move the eye; the numbers in the address stay.
func TestAnchorsKeepTheNumbers(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.enter("reading", "2,655")
	want := worksheets.All.Evaluate("short", own("reading", "2,655"), unit.US)
	p.addressed(want.Link)
	hash := js[string](p, `location.hash`)
	n := js[int](p, `[...document.querySelectorAll("a[href^='#']")].filter((a) => !a.getAttribute("href").includes("=")).map((a) => a.click()).length`)
	if got := js[string](p, `location.hash`); n == 0 || got != hash {
		t.Errorf("%d anchors later the address holds %q", n, got)
	}
	p.matches(want)
	// An anchor that somebody adds is no link.
	js[bool](p, `!!(location.hash = "#main")`)
	p.enter("reading", "2,650")
	p.matches(worksheets.All.Evaluate("short", own("reading", "2,650"), unit.US))
}

// What happens to links in forums, and to keys that nobody knows.
func TestLinksAsTheyArrive(t *testing.T) {
	t.Parallel()
	p := tab(t, phone)
	whole := fragment(worksheets.All.Evaluate("short", own("reading", "2,655"), unit.US).Link)
	for _, arrives := range []string{whole, whole + ".", whole + ")", whole + ").", whole + "…", whole + `"`, whole + "*", whole + ">", strings.TrimSuffix(whole, "1"), strings.TrimSuffix(whole, "&end=1")} {
		p.visit("safety/")
		p.visit("#" + arrives)
		p.settle()
		p.matches(worksheets.All.Evaluate("short", own("reading", "2,655"), unit.US))
		if p.seen("#notices li") {
			t.Errorf("%s…: %q", arrives[len(arrives)-8:], p.text("#notices"))
		}
	}
	for _, odd := range [][]calc.Pair{
		{{Key: "reading", Value: "2655 psi"}, {Key: "colour", Value: "red"}},
		{{Key: "reading", Value: "2655 psi"}, {Key: "reading", Value: "2000 psi"}}, // the first counts
		{{Key: "example", Value: "lift"}, {Key: "reading", Value: "2655 psi"}, {Key: "lift", Value: "700 kg"}, {Key: "example", Value: "reading"}},
		{{Key: "reading", Value: "2655 psi"}, {Key: "wheels", Value: ""}, {Key: "Reading", Value: "1 psi"}},
	} {
		p.visit("safety/")
		p.visit("#" + fragment(odd))
		p.settle()
		want := worksheets.All.Evaluate("short", calc.FromLink(odd), unit.US)
		p.matches(want)
		if p.seen("#notices li") != (len(want.Notices) > 0) {
			t.Errorf("%v: notices %q", odd, p.text("#notices"))
		}
		if got := p.marked(); !slices.Equal(got, want.Examples) {
			t.Errorf("%v: marked as the example's: %q, want %q", odd, got, want.Examples)
		}
	}
}

// What a link says of the other fields stays when one is typed in, and when the
// units are switched.
func TestLinkTypedOver(t *testing.T) {
	systems := map[string]unit.System{"us": unit.US, "metric": unit.Metric}
	for first, then := range map[string][]string{"us": {"metric", "us"}, "metric": {"us", "metric"}} {
		t.Run(first, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, `localStorage.setItem("plainlift.system", "`+first+`");`)
			link := []calc.Pair{{Key: "reading", Value: "2655 psi"}, {Key: "lift", Value: "700 kg"}, {Key: "at", Value: "180 bar"},
				{Key: "colour", Value: "red"}, {Key: "example", Value: "at"}}
			entries := calc.FromLink(link)
			says := func(system string) {
				p.Helper()
				want := worksheets.All.Evaluate("short", entries, systems[system])
				p.matches(want)
				p.addressed(want.Link)
				if got := p.marked(); !slices.Equal(got, want.Examples) {
					t.Errorf("marked as the example's: %q, want %q", got, want.Examples)
				}
				if got := p.text("#notices"); got != want.Notices[0] {
					t.Errorf("notices %q, want %q", got, want.Notices)
				}
			}
			p.visit("#" + fragment(link))
			p.settle()
			says(first)
			p.click("#change")
			p.enter("target", "186 bar")
			entries["target"] = calc.Entry{Text: "186 bar", Own: true}
			says(first)
			for _, system := range then {
				p.system(system)
				says(system)
			}
		})
	}
}
