//go:build browser

package browser

import (
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"plainlift/calc/worksheets"
)

// addresses are all pages that were written, and each worksheet opened from a
// link.
func addresses(t *testing.T) []string {
	var list []string
	err := filepath.WalkDir(siteDir, func(file string, d fs.DirEntry, err error) error {
		if err == nil && d.Name() == "index.html" {
			var folder string
			if folder, err = filepath.Rel(siteDir, filepath.Dir(file)); folder == "." {
				folder = ""
			} else {
				folder = filepath.ToSlash(folder) + "/"
			}
			list = append(list, folder)
		}
		return err
	})
	if err != nil || len(list) <= len(worksheets.All) {
		t.Fatalf("pages %v, %v", list, err)
	}
	for _, w := range worksheets.All {
		for _, c := range typedCases {
			if c.worksheet == w.ID {
				list = append(list, c.link())
				break
			}
		}
	}
	return list
}

// Every page, those for frames on one screen, fits its screen, stands still while it loads, names what it shows,
// and gives a thumb enough room. What the browser complains of fails any test.
func TestLayout(t *testing.T) {
	for _, s := range []screen{{"small phone", 360, 740, true}, phone, desk} {
		for _, address := range addresses(t) {
			if strings.HasPrefix(address, "embed/") && address != "embed/" && s.name != phone.name {
				continue // the same form and answer as on the page itself
			}
			t.Run(s.name+" /"+address, func(t *testing.T) {
				t.Parallel()
				p := open(t, s, address)
				p.until(`document.readyState === "complete"`)
				if js[bool](p, `!!document.getElementById("answer")`) {
					p.ready()
					p.checked()
				}
				if wide := js[int](p, `document.documentElement.scrollWidth`); wide > int(s.width) {
					t.Errorf("%d px wide on a screen of %d: %v", wide, s.width, js[[]string](p, `[...document.querySelectorAll("body *")]
						.filter((n) => n.getBoundingClientRect().right > innerWidth + 1).slice(0, 4).map((n) => n.outerHTML.slice(0, 120))`))
				}
				if shift := js[float64](p, `watched.shifts.reduce((sum, s) => sum + s.value, 0)`); shift > 0 {
					t.Errorf("layout shift %v: %s", shift, js[string](p, `JSON.stringify(watched.shifts)`))
				}
				if n := js[int](p, `document.querySelectorAll("h1").length`); n != 1 || js[string](p, `document.title`) == "" {
					t.Errorf("%d headings of the first level, title %q", n, js[string](p, `document.title`))
				}
				if bad := js[[]string](p, `[...document.querySelectorAll("svg")].filter((s) => !s.querySelector("title")?.textContent || !s.querySelector("desc")?.textContent).map((s) => s.outerHTML.slice(0, 80))`); len(bad) > 0 {
					t.Errorf("pictures without a title and a description: %v", bad)
				}
				if small := js[[]string](p, `[...document.querySelectorAll("input, select, button, summary")].filter((n) => n.checkVisibility() && Math.min(n.getBoundingClientRect().height, n.getBoundingClientRect().width) < 43.9)
					.map((n) => Math.round(n.getBoundingClientRect().width) + " x " + Math.round(n.getBoundingClientRect().height) + " px: " + n.outerHTML.slice(0, 90))`); s.touch && len(small) > 0 {
					t.Errorf("too small for a thumb: %v", small)
				}
			})
		}
	}
}

// With letters twice as large a phone holds half as many: the page still fits,
// and no label stands on end.
func TestLayoutOfLargeLetters(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := open(t, screen{"half a phone", 195, 422, true}, pageOf(w.ID))
			p.ready()
			if wide := js[int](p, `document.documentElement.scrollWidth`); wide > 195 {
				t.Errorf("%d px wide on a screen of 195: %v", wide, js[[]string](p, `[...document.querySelectorAll("body *")]
					.filter((n) => n.getBoundingClientRect().right > innerWidth + 1).slice(0, 4).map((n) => n.outerHTML.slice(0, 120))`))
			}
			if thin := js[[]string](p, `[...document.querySelectorAll(".field > label")].filter((n) => n.checkVisibility() && n.getBoundingClientRect().width < 100).map((n) => n.textContent)`); len(thin) > 0 {
				t.Errorf("labels that stand on end: %q", thin)
			}
		})
	}
}

// In metric, remembered from before, the numbers change while the page loads,
// and nothing else moves.
func TestLayoutInMetric(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, `localStorage.setItem("plainlift.system", "metric");`)
			p.visit(pageOf(w.ID))
			p.until(`document.readyState === "complete" && !document.documentElement.dataset.wait`)
			p.checked()
			if shift := js[float64](p, `watched.shifts.reduce((sum, s) => sum + s.value, 0)`); shift > 0 {
				t.Errorf("layout shift %v: %s", shift, js[string](p, `JSON.stringify(watched.shifts)`))
			}
			if wide := js[int](p, `document.documentElement.scrollWidth`); wide > int(phone.width) {
				t.Errorf("%d px wide", wide)
			}
		})
	}
}

// The first screen of the home page on a phone has the question, the fields that
// matter and the answer.
func TestFirstScreen(t *testing.T) {
	p := open(t, phone, "")
	p.until(`document.readyState === "complete"`)
	below := js[[]string](p, `["h1", ".aside", "#head", ...[...document.querySelectorAll("#fields > .field input")].map((i) => "#" + i.id)]
		.filter((s) => document.querySelector(s).getBoundingClientRect().bottom > innerHeight)`)
	if len(below) > 0 {
		t.Errorf("below the first screen: %v", below)
	}
	if bottom := js[float64](p, `document.getElementById("sentence").getBoundingClientRect().bottom`); bottom > 844 {
		t.Errorf("the sentence ends at %v px", bottom)
	}
	if n := js[int](p, `document.querySelectorAll("#fields > .field").length`); n != 7 {
		t.Errorf("%d fields", n)
	}
	// The verdict stays in sight while the last field is typed in.
	p.enter("target", "2,700")
	if top := js[float64](p, `document.getElementById("bar").getBoundingClientRect().top`); top < 0 {
		t.Errorf("the verdict has left the screen: %v px", top)
	}
}
