//go:build browser

package browser

import (
	_ "embed"
	"fmt"
	"html"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

//go:embed testdata/framed.js
var framedScript string

//go:embed testdata/frames.html
var framesPage string

const (
	sandbox = "allow-scripts allow-same-origin allow-popups allow-popups-to-escape-sandbox" // as content/embed.md has it
	noStore = `for (const s of ["localStorage", "sessionStorage"]) Object.defineProperty(window, s, { get() { throw new DOMException("refused", "SecurityError"); } });`
)

// frame opens somebody else's page, on a host of its own, with that worksheet in
// a frame. A script may run in the frame before its own, and shared is whether the
// site's host lets any page load its files.
func frame(t *testing.T, s screen, worksheet, link, attributes, before string, shared bool) *page {
	t.Helper()
	p := tab(t, s)
	place := "embed/" + worksheet + "/"
	written, err := os.ReadFile(filepath.Join(siteDir, filepath.FromSlash(place), "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	p.instead(place, text("text/html; charset=utf-8", strings.Replace(string(written), "<head>", "<head><script>"+before+framedScript+"</script>", 1)))
	if shared {
		site := p.site
		p.site = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			w.Header().Set("Access-Control-Allow-Origin", "*")
			site.ServeHTTP(w, r)
		})
	}
	around := httptest.NewServer(text("text/html; charset=utf-8", strings.Replace(framesPage, "FRAME",
		fmt.Sprintf(`<iframe src="%s" title="A worksheet" width="100%%" height="700" %s></iframe>`, html.EscapeString(p.at(place)+link), attributes), 1)))
	t.Cleanup(around.Close)
	p.expect("request to elsewhere: " + around.URL)
	p.expect("favicon")
	p.do(chromedp.Navigate(around.URL + "/"))
	return p
}

// inside runs a script in the frame.
func inside[T any](p *page, script string, args ...any) T {
	p.Helper()
	return js[T](p, "ask(%s)", quoted(fmt.Sprintf(script, args...)))
}

func (p *page) untilInside(condition string, args ...any) {
	p.Helper()
	p.until("ask(%s)", quoted("!!("+fmt.Sprintf(condition, args...)+")"))
}

// answersInside fails unless the frame shows that answer.
func (p *page) answersInside(want *calc.Answer) {
	p.Helper()
	p.untilInside(`document.getElementById("answer").getAttribute("aria-busy") === "false" && document.getElementById("head").textContent === %s`, quoted(want.Verdict.Head))
	if got := inside[string](p, `document.getElementById("sentence").textContent`); got != want.Verdict.Sentence {
		p.Errorf("the frame says %q, want %q", got, want.Verdict.Sentence)
	}
	for _, f := range want.Figures {
		if f.Place != calc.Key || f.ID == "verdict" {
			continue
		}
		if got := inside[string](p, `document.querySelector("#fig-%s data").textContent`, f.ID); got != f.Text {
			p.Errorf("figure %s is %q, want %q", f.ID, got, f.Text)
		}
	}
	if got := inside[bool](p, `document.getElementById("kept-out").hidden`); !got {
		p.Error("it calculates and says that it cannot")
	}
}

// typeInside puts a text into a field of the frame.
func (p *page) typeInside(field, text string) {
	p.Helper()
	inside[bool](p, `(() => { const i = document.getElementById(%s); i.value = %s; return i.dispatchEvent(new Event("input", { bubbles: true })); })()`, quoted(field), quoted(text))
}

// In somebody else's page a worksheet calculates, whatever that page lets it
// keep, and the way to the full page carries the numbers.
func TestFrame(t *testing.T) {
	for _, c := range []struct {
		name, attributes, before string
		shared                   bool
	}{
		{"plain", "", "", false},
		{"sandbox of the guide", `sandbox="` + sandbox + `"`, "", false},
		{"storage refused", "", noStore, false},
		{"no origin of its own", `sandbox="allow-scripts allow-popups allow-popups-to-escape-sandbox"`, "", true},
		{"no pop-ups", `sandbox="allow-scripts"`, "", true},
	} {
		for _, s := range []screen{phone, desk} {
			t.Run(c.name+" "+s.name, func(t *testing.T) {
				t.Parallel()
				p := frame(t, s, "gain", "#v=1&now=2500+psi&end=1", c.attributes, c.before, c.shared)
				entries := own("now", "2500 psi")
				p.answersInside(worksheets.All.Evaluate("gain", entries, unit.US))
				p.typeInside("target", "2,700")
				entries["target"] = calc.Entry{Text: "2,700", Own: true}
				want := worksheets.All.Evaluate("gain", entries, unit.US)
				p.answersInside(want)
				full := p.at("gain/") + "#" + fragment(want.Link)
				for _, id := range []string{"full", "paper-link"} {
					if got := inside[string](p, `(({ href, textContent }) => href ?? textContent)(document.getElementById(%s))`, quoted(id)); got != full {
						t.Errorf("%s leads to %s, want %s", id, got, full)
					}
				}
				if got := inside[int](p, `document.querySelectorAll("#next a, a[href^='http']").length`); got < 2 {
					t.Errorf("%d links", got)
				}
				if bad := inside[[]string](p, `[...document.querySelectorAll("#next a")].map((a) => a.href).filter((h) => !h.startsWith(%s) || h.includes("/embed/"))`, quoted(p.at(""))); len(bad) > 0 {
					t.Errorf("links to other than full pages: %v", bad)
				}
				if inside[bool](p, `document.documentElement.scrollWidth > innerWidth`) {
					t.Error("wider than its frame")
				}
			})
		}
	}
}

// A click on the way to the full page opens it in a tab of its own; an anchor stays
// inside.
func TestFrameLinks(t *testing.T) {
	t.Parallel()
	p := frame(t, desk, "gain", "#v=1&now=2500+psi&end=1", `sandbox="`+sandbox+`"`, "", false)
	p.answersInside(worksheets.All.Evaluate("gain", own("now", "2500 psi"), unit.US))
	click := func(selector string) {
		at := inside[[]float64](p, `(() => { const n = document.querySelector(%s); n.scrollIntoView({ block: "center" }); const b = n.getClientRects()[0]; return [b.x + b.width / 2, b.y + b.height / 2]; })()`, quoted(selector))
		box := js[[]float64](p, `(() => { const f = document.querySelector("iframe"); const b = f.getBoundingClientRect(); return [b.x + f.clientLeft, b.y + f.clientTop]; })()`)
		p.do(chromedp.MouseClickXY(at[0]+box[0], at[1]+box[1]))
	}
	p.typeInside("target", "2,x")
	p.untilInside(`document.querySelector("#problems a")`)
	click("#problems a")
	p.untilInside(`document.activeElement.id === "target"`)
	p.typeInside("target", "2,700")
	p.untilInside(`document.getElementById("answer").dataset.state === "current"`)
	if n := p.count("gain/"); n != 0 {
		t.Errorf("the full page was opened %d times before the click", n)
	}
	click("#full")
	for i := 0; p.count("gain/") == 0; i++ {
		if i > 1000 {
			t.Fatal("the full page was not opened")
		}
		p.until("new Promise((done) => setTimeout(() => done(true), 10))")
	}
	if js[string](p, `document.title`) != "A page of somebody else" || !strings.HasPrefix(inside[string](p, `location.href`), p.at("embed/gain/")) {
		t.Error("the page around it, or the frame, was left")
	}
}

// Where a frame keeps the scripts out it says so, and shows no wrong figure for a link.
func TestFrameThatKeepsScriptsOut(t *testing.T) {
	t.Parallel()
	p := frame(t, phone, "gain", "#v=1&now=2500+psi&end=1", `sandbox="allow-scripts"`, "", false)
	for _, part := range []string{"CORS", "ERR_FAILED", "request failed"} {
		p.expect(part)
	}
	p.untilInside(`!document.getElementById("kept-out").hidden`)
	if got := inside[string](p, `document.getElementById("full").href`); got != p.at("gain/#v=1&now=2500+psi&end=1") {
		t.Errorf("the way out leads to %s", got)
	}
	for _, id := range []string{"head", "waiting"} {
		if inside[bool](p, `document.getElementById(%s).checkVisibility({ visibilityProperty: true })`, quoted(id)) {
			t.Errorf("%s is shown", id)
		}
	}
}

// What the full page gives to put into a page is that frame, with the numbers.
func TestFrameToCopy(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, copiedScript)
	p.visit("")
	p.enter("reading", "2,500")
	p.click("#pass > summary")
	p.until(`document.getElementById("frame").value !== ""`)
	want := worksheets.All.Evaluate("short", own("reading", "2,500"), unit.US)
	p.click("#copy-frame")
	p.until(`document.getElementById("passed").textContent === "The lines for your page are copied."`)
	got := js[string](p, `clip.at(-1)`)
	src := html.EscapeString(p.at("embed/short/") + "#" + fragment(want.Link))
	if line := fmt.Sprintf(`<iframe src="%s" title="Is my relief pressure low?" width="100%%" height="900" loading="lazy" allow="clipboard-write"></iframe>`, src); got != line || p.value("#frame") != line {
		t.Errorf("copied\n%s\nwant\n%s", got, line)
	}
	js[bool](p, `(navigator.clipboard.writeText = async () => { throw new Error("no"); }, true)`)
	p.click("#copy-frame")
	p.until(`document.getElementById("passed").textContent.startsWith("The browser refused; the lines")`)
	if !js[bool](p, `(() => { const f = document.getElementById("frame"); return document.activeElement === f && f.selectionEnd - f.selectionStart === f.value.length; })()`) {
		t.Error("the lines are not selected")
	}
}
