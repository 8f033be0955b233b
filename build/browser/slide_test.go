//go:build browser

package browser

import (
	"math"
	"net/http"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"plainlift/calc"
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

// drag moves the slider with a finger or the mouse, from where it stands to some
// fractions of its length, and says what the field held on the way.
func (p *page) drag(s screen, fractions ...float64) (held []float64) {
	p.Helper()
	js[bool](p, `(document.querySelector("%s").scrollIntoView({ block: "center", behavior: "instant" }), true)`, slider)
	from := js[[]float64](p, `(() => {
		const n = document.querySelector("%s");
		const b = n.getBoundingClientRect();
		return [b.x, b.y + b.height / 2, b.width, (n.value - n.min) / (n.max - n.min)];
	})()`, slider)
	const knob = 16 // px: its middle keeps half of that from either end
	x := func(fraction float64) float64 { return from[0] + knob/2 + fraction*(from[2]-knob) }
	put := func(touch input.DispatchTouchEventType, mouse input.DispatchMouseEventType, x float64) {
		p.Helper()
		if s.touch {
			p.finger(touch, x, from[1])
			return
		}
		command(p, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: mouse, X: x, Y: from[1], Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1})
	}
	put(input.DispatchTouchEventTypeTouchStart, input.DispatchMouseEventTypeMousePressed, x(from[3]))
	for _, f := range fractions {
		last := p.value(slider)
		put(input.DispatchTouchEventTypeTouchMove, input.DispatchMouseEventTypeMouseMoved, x(f))
		p.until(`document.querySelector("%s").value !== "%s"`, slider, last) // a touch is told with the next frame
		p.settle()
		held = append(held, js[float64](p, `+document.getElementById("height").value`))
	}
	put(input.DispatchTouchEventTypeTouchEnd, input.DispatchMouseEventTypeMouseReleased, x(fractions[len(fractions)-1]))
	p.settle()
	return held
}

// While it is dragged all of the page follows, and the slider stays under the
// finger.
func TestSlideDragged(t *testing.T) {
	for _, s := range []screen{phone, desk} {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := open(t, s, "loader/")
			p.ready()
			where := func() float64 {
				return js[float64](p, `document.querySelector("%s").getBoundingClientRect().top`, slider)
			}
			held := p.drag(s, 0.5)
			at := where()
			shifts := js[int](p, `watched.shifts.length`)
			held = append(held, p.drag(s, 0.65, 0.7, 0.75, 0.8, 0.85)...)
			for i := 1; i < len(held); i++ {
				if held[i] <= held[i-1] {
					t.Errorf("dragged to the right, the field held %v", held)
					break
				}
			}
			p.moved(p.value("#height"), unit.US)
			if h := held[len(held)-1]; h < 78 || h > 87 { // of 8 to 95.5 in
				t.Errorf("dragged to 85 %% of the way, it stands at %v in", h)
			}
			if now := where(); math.Abs(now-at) > 1 {
				t.Errorf("the slider went from %v to %v px", at, now)
			}
			if n := js[int](p, `watched.shifts.length`); n != shifts {
				t.Errorf("layout shifts: %s", js[string](p, `JSON.stringify(watched.shifts)`))
			}
		})
	}
}

// However fast it is moved, the last place is what is answered.
func TestSlideInHaste(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "loader/")
	p.ready()
	n := js[int](p, `(() => {
		const slide = document.querySelector("%s");
		const before = watched.asked.length;
		for (let h = 20; h <= 90; h += 0.5) {
			slide.value = h;
			slide.dispatchEvent(new Event("input", { bubbles: true }));
		}
		return watched.asked.length - before;
	})()`, slider)
	if n != 1 {
		t.Errorf("%d questions at once", n)
	}
	p.moved("90", unit.US)
}

// Over a link's numbers it moves too: the page then says that they are no longer
// the link's alone, and the form does not open above it.
func TestSlideOverALink(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "loader/#height=60+in&pressure=2500+psi&example=pressure")
	p.settle()
	if got := p.text("#kind"); got != "From a link" {
		t.Errorf("it is called %q", got)
	}
	js[bool](p, `(document.querySelector("%s").focus(), true)`, slider)
	p.press(kb.ArrowRight)
	p.settle()
	entries := own("height", "60.5 in")
	entries["pressure"] = calc.Entry{Text: "2500 psi"}
	want := worksheets.All.Evaluate("loader", entries, unit.US)
	p.matches(want)
	p.addressed(want.Link)
	if got := p.text("#kind"); got != "From a link, and changed here" || p.seen("#fields") {
		t.Errorf("it is called %q", got)
	}
}

// A link that cannot be answered leaves nothing of the example at the slider.
func TestSlideOfABadLink(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "loader/#height=150+in")
	p.settle()
	if got := p.text(".slide output") + p.attribute(slider, "aria-valuetext"); p.standing() != "stale" || got != "–not known" {
		t.Errorf("the slider says %q", got)
	}
	js[bool](p, `(document.querySelector("%s").focus(), true)`, slider)
	p.press(kb.End)
	p.moved("95.5", unit.US)
}

// Moved before the calculator has arrived, it is answered when that has.
func TestSlideWhileTheCalculatorIsSlow(t *testing.T) {
	t.Parallel()
	p := tab(t, phone)
	arrive := make(chan bool)
	p.instead("assets/plainlift.wasm", func(w http.ResponseWriter, r *http.Request) {
		select {
		case <-arrive:
			siteHost().ServeHTTP(w, r)
		case <-r.Context().Done():
		}
	})
	p.visit("loader/")
	js[bool](p, `(document.querySelector("%s").focus(), true)`, slider)
	p.press(kb.ArrowRight)
	if p.value("#height") != "60.5" || p.standing() != "working" {
		t.Errorf("not at work\n%s", p.state())
	}
	close(arrive)
	p.moved("60.5", unit.US)
}
