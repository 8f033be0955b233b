//go:build browser

package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// A tape's fraction goes behind the whole number, and the field keeps the focus.
func TestTape(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "loader/")
	p.ready()
	if p.seen("#fractions") {
		t.Error("fractions without a field")
	}
	p.typeInto("#boom", "79")
	p.click(`[data-fraction="3/4"]`)
	p.settle()
	if p.value("#boom") != "79 3/4" {
		t.Errorf("the field holds %q", p.value("#boom"))
	}
	p.click(`[data-fraction="1/2"]`)
	p.settle()
	if p.value("#boom") != "79 1/2" || !js[bool](p, `document.activeElement === document.getElementById("boom")`) {
		t.Errorf("the field holds %q", p.value("#boom"))
	}
	p.matches(worksheets.All.Evaluate("loader", own("boom", "79 1/2"), unit.US))
	p.typeInto("#pressure", "2,600")
	if p.seen("#fractions") {
		t.Error("fractions of a pressure")
	}
	p.typeInto("#boom", "2010 mm")
	p.settle()
	p.typeInto("#pressure", "2,610")
	p.typeInto("#boom", "2010")
	if p.seen("#fractions") {
		t.Error("fractions of a millimetre")
	}
}

// What stands in the field keeps its whole number, its sign and its unit; where
// it is no length in inches, no fraction of an inch is offered.
func TestTapeTexts(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "loader/")
	p.ready()
	for text, want := range map[string]string{
		"": "1/4", "47": "47 1/4", " 47 ": "47 1/4", "47.5": "47 1/4", "47 3/4": "47 1/4", "47-3/4": "47 1/4", "47¾": "47 1/4",
		"3/8": "1/4", "13/16": "1/4", "½": "1/4", "47 in": "47 1/4 in", "47 1/2\"": "47 1/4 \"", "1,047.5 in": "1,047 1/4 in", "−47": "−47 1/4",
		"47 mm": "", "4 ft": "", "4' 6": "", "tall": "", "1200 mm": "",
	} {
		p.enter("boom", "80")
		p.choose("#unit-boom", "in") // a unit typed before has moved it
		p.typeInto("#boom", text)
		if p.seen("#fractions") != (want != "") {
			t.Errorf("%q: fractions are offered: %v", text, want == "")
		}
		if want == "" {
			continue
		}
		p.click(`[data-fraction="1/4"]`)
		if got := p.value("#boom"); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
		v, err := unit.Parse(want, unit.Length, unit.Unit{}, unit.US)
		if err != nil || !strings.HasSuffix(v.Number, ".25") {
			t.Errorf("%q is read as %v, %v", want, v, err)
		}
	}
}

// A finger's tap enters a fraction without taking the keypad away, covering the
// verdict or moving anything.
func TestTapeTapped(t *testing.T) {
	for _, s := range []screen{{"small phone", 360, 740, true}, phone, desk} {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := open(t, s, "loader/")
			p.ready()
			p.checked()
			js[bool](p, `!!(document.getElementById("head").textContent = "2,320 lb at a height of 60.5 in, 130 lb more")`) // 44 characters
			before := js[float64](p, `document.getElementById("bar").getBoundingClientRect().height`)
			js[bool](p, `(document.getElementById("height").focus(), true)`)
			if after := js[float64](p, `document.getElementById("bar").getBoundingClientRect().height`); after != before {
				t.Errorf("the bar grows from %v to %v px", before, after)
			}
			if covered := js[bool](p, `(() => {
				const text = document.createRange();
				const left = document.getElementById("fractions").getBoundingClientRect().left;
				const nodes = [document.getElementById("head"), document.querySelector("#bar small")];
				return nodes.some((n) => (text.selectNodeContents(n), [...text.getClientRects()].some((r) => r.right > left)));
			})()`); covered {
				t.Error("the fractions cover the verdict")
			}
			at := js[[]float64](p, `(() => { const b = document.querySelector('[data-fraction="3/4"]').getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2, b.width, b.height]; })()`)
			if at[2] < 48 || at[3] < 48 {
				t.Errorf("a fraction is %v by %v px", at[2], at[3])
			}
			if !s.touch {
				return
			}
			p.finger(input.DispatchTouchEventTypeTouchStart, at[0], at[1])
			p.finger(input.DispatchTouchEventTypeTouchEnd, 0, 0)
			p.until(`document.getElementById("height").value === "60 3/4"`)
			p.settle()
			p.matches(worksheets.All.Evaluate("loader", own("height", "60 3/4"), unit.US))
			if !js[bool](p, `document.activeElement.id === "height"`) {
				t.Error("the field lost the focus")
			}
			// In the bar itself the head makes room.
			if shifts := js[string](p, `JSON.stringify(watched.shifts.filter((s) => s.nodes.some((n) => n !== "head" && n !== "SMALL")))`); shifts != "[]" {
				t.Errorf("layout shift: %s", shifts)
			}
			command(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
			if p.seen("#fractions") {
				t.Error("the fractions are printed")
			}
		})
	}
}
