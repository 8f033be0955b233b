//go:build browser

package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"plainlift/calc/worksheets"
)

// focused names what the next key goes to, and how that can be seen.
type focused struct {
	Name       string
	Top        float64 // in the page
	Seen, Ring bool    // not covered by anything; with the ring around it
}

const focusedScript = `((n) => {
	const box = n.getClientRects()[0];
	const style = getComputedStyle(n);
	return {
		Name: n.tagName + "#" + n.id + "." + n.className + " " + (n.getAttribute("aria-label") ?? n.textContent.trim().slice(0, 30)),
		Top: box.top + scrollY, Seen: n.contains(document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2)),
		Ring: n.matches(":focus-visible") && style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
	};
})(document.activeElement)`

// Tab goes through every control, in the order that the eye does, and the eye
// can follow it.
func TestTab(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(w.ID))
			p.ready()
			p.enter(w.Fields[0].ID, p.value(`[name="`+w.Fields[0].ID+`"]`)+" ")
			p.checked()
			js[bool](p, `(document.querySelectorAll("#fields details.more").forEach((d) => (d.open = true)), document.activeElement.blur(), scrollTo(0, 0), true)`)
			p.until(`!document.querySelector("#fields button:disabled")`) // what is opened for the first time gets its script
			// Everything that can be reached at all, in the order of the page.
			js[bool](p, `(window.reach = [...document.querySelectorAll("a[href], button, input, select, textarea, summary")]
				.filter((n) => n.checkVisibility({ visibilityProperty: true }) && n.tabIndex >= 0 && !n.disabled), true)`)
			n := js[int](p, `reach.length`)
			if n < 25 {
				t.Fatalf("%d controls", n)
			}
			p.click("header.site") // the start of the page
			js[bool](p, `(document.activeElement.blur(), getSelection().removeAllRanges(), document.body.tabIndex = -1, document.body.focus(), document.body.removeAttribute("tabindex"), true)`)
			last := focused{}
			for i := range n {
				p.press(kb.Tab)
				if js[bool](p, `document.activeElement.matches(".table")`) { // one that scrolls sideways
					p.press(kb.Tab)
				}
				if !js[bool](p, `document.activeElement === reach[%d]`, i) {
					t.Fatalf("Tab %d is at %+v, want %s", i, js[focused](p, focusedScript), js[string](p, `reach[%d].outerHTML.slice(0, 120)`, i))
				}
				f := js[focused](p, focusedScript)
				if !f.Seen || !f.Ring {
					t.Errorf("one cannot see where Tab %d is: %+v", i, f)
				}
				if i > 1 && f.Top < last.Top-60 {
					t.Errorf("Tab goes up from %+v to %+v", last, f)
				}
				last = f
			}
		})
	}
}

// The skip link, and the links from the list of problems, lead where they say
// and leave the numbers in the address.
func TestLinksInsideThePage(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "shim/")
	p.enter("now", "2,500")
	p.until(`location.hash.includes("now=2500")`)
	js[bool](p, `(document.activeElement.blur(), document.body.tabIndex = -1, document.body.focus(), document.body.removeAttribute("tabindex"), true)`)
	p.press(kb.Tab)
	if !p.seen(".skip") || js[string](p, `document.activeElement.className`) != "skip" {
		t.Fatalf("the first Tab is at %+v", js[focused](p, focusedScript))
	}
	p.press(kb.Enter)
	if got := js[string](p, `document.activeElement.id`); got != "main" {
		t.Errorf("the skip link leads to %q", got)
	}
	if got := js[string](p, `location.hash`); !strings.Contains(got, "now=2500") {
		t.Errorf("the skip link left the address at %q", got)
	}

	for field, bad := range map[string]string{"target": "lots", "pitch": "fine", "trials": "0.010 in", "kit": "thin"} {
		good := p.value(`[name="` + field + `"]`)
		p.enter(field, bad)
		js[bool](p, `(document.querySelectorAll("details").forEach((d) => (d.open = false)), scrollTo(0, 0), true)`)
		js[bool](p, `(document.querySelector("#problems a").focus(), true)`)
		p.press(kb.Enter)
		f := js[focused](p, focusedScript)
		if got := js[string](p, `document.activeElement.closest("[data-field]")?.dataset.field ?? ""`); got != field || !f.Seen {
			t.Errorf("the problem with %s leads to %+v", field, f)
		}
		if got := js[string](p, `location.hash`); !strings.Contains(got, "now=2500") {
			t.Errorf("the problem with %s left the address at %q", field, got)
		}
		p.enter(field, good)
	}
}

// Escape, and a tap beside it, close the list of pages.
func TestMenuCloses(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "safety/")
	p.until(`document.getElementById("offline").textContent !== "Not yet saved for use without a signal."`) // the scripts run
	p.click(".menu summary")
	p.press(kb.Escape)
	p.until(`!document.querySelector(".menu").open && document.activeElement.matches(".menu summary")`)
	p.click(".menu summary")
	p.until(`document.querySelector(".menu").open`)
	p.click("#offline")
	p.until(`!document.querySelector(".menu").open`)
}
