//go:build browser

package browser

import (
	"testing"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

const somePost = "Shimmed mine, went from 2300 to 2550 psi.\n<img src=x onerror=alert(1)> It picks up 25 % more now!"

// readPost pastes a post and waits for what is read of it.
func (p *page) readPost(text string) {
	p.Helper()
	p.click("#post > summary")
	p.until(`!document.getElementById("read-post").disabled`)
	p.typeInto("#post-text", text)
	p.click("#read-post")
	p.until(`document.getElementById("post-said").textContent !== ""`)
}

// A post is marked, its numbers wait for the reader, and what is ticked is answered.
func TestPost(t *testing.T) {
	for _, s := range []screen{phone, desk} {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := open(t, s, "before-after/")
			p.ready()
			scripts := js[int](p, `document.scripts.length`)
			p.readPost(somePost)
			if got := js[string](p, `document.getElementById("post-marked").textContent`); got != somePost {
				t.Errorf("the text is %q", got)
			}
			p.uninjured(scripts)
			if n := js[int](p, `document.querySelectorAll("#post-marked mark").length`); n < 3 {
				t.Errorf("%d marks", n)
			}
			if p.value("#before") != "2,450" {
				t.Errorf("taken before it was asked for: %s", p.value("#before"))
			}
			js[bool](p, `([...document.querySelectorAll("#post-picks input")].forEach((b) => b.checked || b.click()), true)`)
			p.click("#use-post")
			p.settle()
			p.matches(worksheets.All.Evaluate("before-after", own("before", "2300 psi", "after", "2550 psi", "claimed", "25 %"), unit.US))
			if wide := js[int](p, `document.documentElement.scrollWidth`); wide > int(s.width) {
				t.Errorf("%d px wide", wide)
			}
		})
	}
}

// A post that says nothing says so, and so does one that nobody can tell.
func TestPostOfNothing(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "before-after/")
	p.ready()
	p.readPost("Nice tractor! Where did you get the seat?")
	if got := p.text("#post-said"); got != "Nothing here says what a pressure or a load was before and after." {
		t.Errorf("it says %q", got)
	}
	if p.seen("#use-post") {
		t.Error("something to use")
	}
	if p.count("before-after/") == 0 || js[bool](p, `!!document.querySelector("#post-marked mark")`) {
		t.Error("something is marked")
	}
}
