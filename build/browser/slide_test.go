//go:build browser

package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

const slider = "#slide-height"

// moved checks that field, figures, pictures and link follow the slider.
func (p *page) moved(text string, sys unit.System) {
	p.Helper()
	p.settle()
	if got := p.value("#height"); got != text {
		p.Errorf("the field holds %q, want %q", got, text)
	}
	want := worksheets.All.Evaluate("loader", own("height", text+" "+unit.Length.Shown(sys).Name), sys)
	p.matches(want)
	p.addressed(want.Link)
	for _, state := range want.Fields {
		if s := state.Slide; s != nil {
			if got := js[float64](p, `+document.querySelector("%s").value`, slider); got != s.Value {
				p.Errorf("the slider stands at %v, want %v", got, s.Value)
			}
			if got := p.attribute(slider, "aria-valuetext"); got != s.Text {
				p.Errorf("the slider says %q, want %q", got, s.Text)
			}
		}
	}
	if n := js[int](p, `document.querySelectorAll("#picture svg").length`); n != 2 {
		p.Errorf("%d pictures", n)
	}
}

// The height moves by keyboard, by pointer and by typing, and all of the page
// follows.
func TestSlide(t *testing.T) {
	for _, s := range []screen{phone, desk} {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := open(t, s, "loader/")
			p.ready()
			before := js[string](p, `document.getElementById("picture").innerHTML`)
			js[bool](p, `(document.querySelector("%s").focus(), true)`, slider)
			p.press(kb.ArrowRight, kb.ArrowRight)
			p.moved("61", unit.US)
			if js[string](p, `document.getElementById("picture").innerHTML`) == before {
				t.Error("the pictures have not moved")
			}
			if !js[bool](p, `document.activeElement === document.querySelector("%s")`, slider) {
				t.Error("the slider lost the focus")
			}
			p.press(kb.Home)
			p.moved("8", unit.US)
			p.press(kb.End)
			p.moved("95.5", unit.US)

			at := js[[]float64](p, `(() => {
				const node = document.querySelector("%s");
				node.scrollIntoView({ block: "center", behavior: "instant" });
				const b = node.getBoundingClientRect();
				return [b.x + b.width / 4, b.y + b.height / 2];
			})()`, slider)
			p.do(chromedp.MouseClickXY(at[0], at[1]))
			p.settle()
			p.moved(p.value("#height"), unit.US)
			if h := js[float64](p, `+document.getElementById("height").value`); h < 20 || h > 40 {
				t.Errorf("a click at a quarter of the slider gives %v in", h)
			}

			p.enter("height", "70.4")
			if got := js[string](p, `document.querySelector("%s").value`, slider); got != "70.5" {
				t.Errorf("70.4 in typed, the slider stands at %s", got)
			}
			p.system("metric")
			js[bool](p, `(document.querySelector("%s").focus(), true)`, slider)
			p.press(kb.ArrowRight)
			p.moved("1800", unit.Metric)
		})
	}
}

// A height out of reach leaves the slider where it is, and moving it leads back.
func TestSlideOutOfReach(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "loader/")
	p.enter("height", "150")
	if s := p.standing(); s != "stale" {
		t.Errorf("the answer is %s", s)
	}
	if got := p.text("#picture title"); got != "What was entered, to scale: it makes no loader" {
		t.Errorf("the picture is %q", got)
	}
	js[bool](p, `(document.querySelector("%s").focus(), true)`, slider)
	p.press(kb.ArrowLeft)
	p.moved("59.5", unit.US)
}

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
