//go:build browser

package browser

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"slices"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"plainlift/calc/worksheets"
)

var (
	sheetMark = regexp.MustCompile(`/Type\s*/Page\b[^s]`)
	streamOf  = regexp.MustCompile(`(?s)stream\r?\n(.*?)\nendstream`)
	textShown = regexp.MustCompile(`\bT[jJ]\b`)
)

// printed counts the sheets of a PDF, and in each stream that writes text how
// often it does, the most first.
func printed(pdf []byte) (sheets int, writes []int) {
	sheets = len(sheetMark.FindAll(pdf, -1))
	for _, m := range streamOf.FindAllSubmatch(pdf, -1) {
		r, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			continue // not packed: not a page's own
		}
		content, err := io.ReadAll(r)
		if n := len(textShown.FindAll(content, -1)); err == nil && n > 0 {
			writes = append(writes, n)
		}
	}
	slices.SortFunc(writes, func(a, b int) int { return b - a })
	return sheets, writes
}

// onOneSheet fails unless the page prints on one sheet, in either size, with
// everything that is folded away on the screen and no type that is too small.
func (p *page) onOneSheet(when string) {
	p.Helper()
	for name, paper := range map[string]chromedp.PaperSize{"Letter": chromedp.PaperLetter, "A4": chromedp.PaperA4} {
		pdf, err := chromedp.Run(p.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper)))
		if err != nil {
			p.Fatal(err)
		}
		sheets, writes := printed(pdf)
		if sheets != 1 {
			p.Errorf("%s, %s: %d sheets", when, name, sheets)
		}
		if len(writes) < sheets || writes[0] < 100 {
			p.Errorf("%s, %s: text is written %v times", when, name, writes)
		}
		if folded := js[[]string](p, `window.folded`); len(folded) > 0 {
			p.Errorf("%s, %s: folded away on paper: %q", when, name, folded)
		}
	}
}

// A worksheet prints on one sheet: its example, a reader's numbers with the code
// of their link, and the same in metric.
func TestPrint(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(w.ID))
			p.ready()
			js[bool](p, `document.querySelectorAll("main details").forEach((d) => d.open = false) ?? true`)
			// Added after the page's own, so it sees what that one did.
			js[bool](p, `addEventListener("beforeprint", () => window.folded = [...document.querySelectorAll("#answer details:not([open], .keep)")].map((d) => d.textContent.slice(0, 40))) ?? true`)
			p.onOneSheet("the example")
			if js[bool](p, `!!document.querySelector("main details[open]")`) {
				t.Error("what was folded away is open after printing")
			}
			for _, c := range cases() {
				if c.worksheet == w.ID {
					for _, typed := range c.typed {
						p.enter(typed[0], typed[1])
					}
					break
				}
			}
			coded := func() {
				p.checked()
				p.until(`document.querySelector("#paper-code svg path")`)
			}
			if p.seen("#keep-example") {
				p.click("#keep-example")
			}
			coded()
			p.onOneSheet("typed")
			p.choose("#system", "metric")
			coded()
			p.onOneSheet("typed, in metric")
		})
	}
}

// Nothing on paper is in smaller type than 8 points, which are 32/3 pixels.
func TestPrintedType(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(w.ID))
			p.ready()
			command(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
			js[bool](p, `dispatchEvent(new Event("beforeprint"))`)
			small := js[[]string](p, `[...document.querySelectorAll("body *:not(svg *, script, style)")].filter((n) => n.checkVisibility() && [...n.childNodes].some((c) => c.nodeType === 3 && c.textContent.trim()) && parseFloat(getComputedStyle(n).fontSize) < 10.6)
				.map((n) => getComputedStyle(n).fontSize + ": " + n.outerHTML.slice(0, 80))`)
			if len(small) > 0 {
				t.Errorf("too small on paper: %q", small)
			}
		})
	}
}

// What is on the paper: the answer, the numbers it rests on, and never an old
// answer without saying so.
func TestPrintedParts(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	paper := func() {
		command(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	}
	paper()
	for _, part := range []string{"h1", "#head", "#kind", "#sentence", ".figures", "#picture svg", "#used b", "#rests", "#cautions", "#working", "footer"} {
		js[bool](p, `dispatchEvent(new Event("beforeprint"))`)
		if !p.seen(part) {
			t.Errorf("%s is not printed", part)
		}
	}
	for _, part := range []string{"#copy", "#change", "#fields", ".menu", "#system", "#next"} {
		if p.seen(part) {
			t.Errorf("%s is of no use on paper", part)
		}
	}
	if got := p.text("#kind"); got != "Worked example" {
		t.Errorf("the untouched page is printed as %q", got)
	}
	command(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
	p.enter("reading", "26x0")
	paper()
	if !p.seen("#stale-mark") || p.text("#stale-mark") != "Not current: from before the last change." {
		t.Error("an old answer is printed as if it were current")
	}
}
