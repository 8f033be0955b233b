//go:build browser

package browser

import (
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// marked are the fields that the page marks as the example's.
func (p *page) marked() []string {
	p.Helper()
	return js[[]string](p, `[...document.querySelectorAll("[data-field]")].filter((f) => !f.hidden && f.querySelector(".mark").matches("[data-example] *")).map((f) => f.dataset.field)`)
}

// owns fails unless the page says of every number whose it is, as the answer does.
func (p *page) owns(worksheet string, entries calc.Entries) *calc.Answer {
	p.Helper()
	want := worksheets.All.Evaluate(worksheet, entries, unit.US)
	if got := p.marked(); !slices.Equal(got, want.Examples) {
		p.Errorf("marked as the example's: %v, want %v", got, want.Examples)
	}
	untouched := p.attribute("html", "data-view") == "example"
	if got := p.seen("#borrowed"); got != (len(want.Examples) > 0 && !untouched) {
		p.Errorf("“still the example's” is shown: %v, with %v", got, want.Examples)
	}
	if got := p.seen("#bar small"); got != (len(want.Examples) > 0) {
		p.Errorf("“example numbers” at the head is shown: %v, with %v", got, want.Examples)
	}
	if !untouched && len(want.Examples) > 0 {
		if got := p.text("#borrowed-names"); got != strings.Join(want.Borrowed, ", ") {
			p.Errorf("still the example's: %q, want %v", got, want.Borrowed)
		}
	}
	if got := p.text("#sentence"); got != want.Verdict.Sentence || want.OK() && strings.HasPrefix(got, "With the example's ") != (len(want.Examples) > 0) {
		p.Errorf("the sentence is %q with %v", got, want.Examples)
	}
	return want
}

// examplesOwn confirms the examples of a worksheet.
func examplesOwn(worksheet string, except ...string) calc.Entries {
	entries := calc.Entries{}
	for _, s := range worksheets.All.Evaluate(worksheet, nil, unit.US).Fields {
		if s.Example && !slices.Contains(except, s.ID) {
			entries[s.ID] = calc.Entry{Text: s.Canonical, Own: true}
		}
	}
	return entries
}

// The untouched page says everywhere that its numbers are an example; each
// number typed loses its mark.
func TestExampleMarks(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(w.ID))
			example := p.owns(w.ID, nil)
			if len(example.Examples) < 2 || p.text("#kind") != "Worked example" {
				t.Errorf("examples %v, said to be %q", example.Examples, p.text("#kind"))
			}
			own := calc.Entries{}
			for _, id := range example.Examples[:min(3, len(example.Examples))] {
				text := p.value(`[name="` + id + `"]`)
				if js[bool](p, `document.querySelector('[name=%s]').matches("select")`, id) {
					continue
				}
				p.enter(id, text+" ") // the same number, but now it is the reader's
				own[id] = calc.Entry{Text: text, Own: true}
				p.owns(w.ID, own)
			}
			if p.text("#kind") != "Your numbers" {
				t.Errorf("said to be %q", p.text("#kind"))
			}
		})
	}
}

// "Use mine: clear them" leaves only what is the reader's.
func TestClearTheExample(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.enter("reading", "2,655")
	p.click("#clear-example")
	p.settle()
	own := calc.Entries{"reading": {Text: "2,655", Own: true}}
	typed := [][2]string{{"scale", "5,000"}, {"accuracy", "1.6"}, {"low", "2,700"}, {"high", "2,800"}, {"lift", "1,600"}, {"target", "2,750"}}
	for _, f := range typed {
		own[f[0]] = calc.Entry{Own: true}
		if got := p.value("#" + f[0]); got != "" {
			t.Errorf("%s still holds %q", f[0], got)
		}
	}
	if got := js[string](p, `document.activeElement.id`); got != "scale" {
		t.Errorf("the next key goes to %q", got)
	}
	if p.standing() != "stale" || p.seen("#borrowed") || len(p.marked()) > 0 {
		t.Errorf("not cleared\n%s", p.state())
	}
	for _, f := range typed {
		p.enter(f[0], f[1])
		own[f[0]] = calc.Entry{Text: f[1], Own: true}
	}
	p.matches(p.owns("short", own))
}

// "These are mine" keeps every number and takes the marks away.
func TestKeepTheExample(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(w.ID))
			first := w.Fields[0].ID
			p.enter(first, p.value(`[name="`+first+`"]`)+" ")
			before := p.controls()
			p.click("#keep-example")
			p.checked()
			if got := p.controls(); !slices.Equal(got, before) {
				t.Errorf("the fields held %q, hold %q", before, got)
			}
			own := examplesOwn(w.ID)
			p.matches(worksheets.All.Checked(w.ID, own, unit.US))
			p.addressed(p.owns(w.ID, own).Link)
		})
	}
}

// Nobody is told a stack of shims that is bounded by the example's numbers.
func TestNoStackFromTheExample(t *testing.T) {
	t.Parallel()
	bounds := []string{"now", "target", "limit", "gauge_err"}
	noStack := func(p *page, when string) {
		p.Helper()
		f := p.figures()
		for _, id := range []string{"stack", "stack_total", "add", "first"} {
			if f[id].Value != "" {
				p.Errorf("%s: %s is %q", when, id, f[id].Text)
			}
		}
	}
	for _, missing := range bounds {
		t.Run("without "+missing, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, "shim/")
			noStack(p, "untouched")
			own := calc.Entries{}
			for _, id := range bounds {
				if id != missing {
					text := p.value("#" + id)
					p.enter(id, text+" ")
					own[id] = calc.Entry{Text: text, Own: true}
					noStack(p, "with "+id)
				}
			}
			p.matches(p.owns("shim", own))
			if missing == "now" || missing == "limit" { // by typing, or by saying so
				text := p.value("#" + missing)
				p.enter(missing, text+" ")
				own[missing] = calc.Entry{Text: text, Own: true}
			} else {
				p.click("#keep-example")
				p.settle()
				own = examplesOwn("shim")
			}
			p.matches(p.owns("shim", own))
			if got := p.figures()["stack"]; got.Value == "" {
				t.Errorf("still no stack: %q", got.Text)
			}
		})
	}
}

// A link that is passed on says which of its numbers are only the example's,
// and whoever opens it sees that.
func TestLinkKeepsTheMarks(t *testing.T) { // not beside other tests: there is one clipboard
	p := open(t, phone, "")
	command(p, browser.SetPermission, browser.SetPermissionParams{
		Permission:       &browser.PermissionDescriptor{Name: "clipboard-read"},
		Setting:          browser.PermissionSettingGranted,
		BrowserContextID: chromedp.FromContext(p.ctx).BrowserContextID,
	})
	p.enter("reading", "2,655")
	p.enter("low", "2,690")
	p.click("#copy")
	p.until(`document.getElementById("copied").textContent !== ""`)
	if got := p.text("#copied"); got != "Copied." {
		t.Fatalf("the page says %q", got)
	}
	link := js[string](p, `navigator.clipboard.readText()`)
	if link != js[string](p, `location.href`) || !strings.Contains(link, "example=scale%2Caccuracy%2Chigh%2Clift%2Ctarget") {
		t.Errorf("the link is %s", link)
	}
	p.visit("safety/")
	p.visit(strings.TrimPrefix(link, p.at("")))
	p.settle()
	own := calc.Entries{"reading": {Text: "2,655", Own: true}, "low": {Text: "2,690", Own: true}}
	want := worksheets.All.Evaluate("short", own, unit.US)
	p.matches(want)
	if got := js[[]string](p, `[...document.querySelectorAll("#used .example span")].map((n) => n.textContent)`); len(got) != len(want.Examples) {
		t.Errorf("marked among the numbers used: %q, want %v", got, want.Examples)
	}
	p.addressed(want.Link)
	p.click("#change")
	p.matches(p.owns("short", own))
	// Before anybody typed there is nothing to pass on but the page.
	p.visit("safety/")
	p.visit("")
	p.click("#copy")
	p.until(`document.getElementById("copied").textContent === "Copied."`)
	if got := js[string](p, `navigator.clipboard.readText()`); got != p.at("") {
		t.Errorf("the link to the untouched page is %s", got)
	}
}
