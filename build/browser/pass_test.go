//go:build browser

package browser

import (
	"bytes"
	"encoding/base64"
	"image/png"
	"strings"
	"testing"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// takeFiles makes the page hand over what it would save, with its name.
const takeFiles = `window.saved = [];
	URL.createObjectURL = ((make) => (blob) => { window.lastBlob = blob; return make.call(URL, blob); })(URL.createObjectURL);
	HTMLAnchorElement.prototype.click = function () {
		if (!this.download) return;
		const name = this.download;
		const reader = new FileReader();
		reader.onload = () => saved.push({ Name: name, Data: reader.result.split(",")[1] });
		reader.readAsDataURL(window.lastBlob);
	};`

// copied makes the page hand over what it would put on the clipboard.
const copiedScript = `window.clip = []; navigator.clipboard.writeText = async (t) => { clip.push(t); };`

// The words are the answer's own, with the link, in each way of writing.
func TestWordsToPass(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, copiedScript)
			p.visit(pageOf(w.ID))
			p.ready()
			p.click("#pass > summary")
			p.until(`document.getElementById("words").value !== ""`)
			p.checked()
			want := worksheets.All.Checked(w.ID, nil, unit.US)
			plain := p.value("#words")
			for _, part := range append([]string{want.Verdict.Head}, want.Reply...) {
				if !strings.Contains(plain, part) {
					t.Errorf("the words lack %q:\n%s", part, plain)
				}
			}
			link := p.URL + folder + pageOf(w.ID) + "#" + fragment(want.Link)
			if !strings.HasSuffix(plain, "The numbers and the working: "+link) {
				t.Errorf("the words end %q, want the link %s", plain[max(0, len(plain)-200):], link)
			}
			p.choose("#way", "bbcode")
			if got := p.value("#words"); !strings.HasPrefix(got, "[b]"+want.Verdict.Head+"[/b]\n\n") || !strings.HasSuffix(got, "[url="+link+"]The numbers and the working[/url]") {
				t.Errorf("BBCode: %q", got)
			}
			p.choose("#way", "markdown")
			if got := p.value("#words"); !strings.HasPrefix(got, "**") || !strings.HasSuffix(got, "[The numbers and the working]("+link+")") {
				t.Errorf("Markdown: %q", got)
			}
			p.click("#copy-words")
			p.until(`document.getElementById("passed").textContent === "The words are copied."`)
			if got := js[string](p, `clip.at(-1)`); got != p.value("#words") {
				t.Errorf("copied: %q", got)
			}
		})
	}
}

// What is passed on follows what is typed, and nothing is while it is wrong.
func TestWordsFollow(t *testing.T) {
	t.Parallel()
	p := open(t, desk, "")
	p.enter("reading", "2,500")
	p.click("#pass > summary")
	want := worksheets.All.Evaluate("short", own("reading", "2,500"), unit.US)
	p.until(`document.getElementById("words").value.includes(%s)`, quoted(want.Reply[0]))
	p.enter("reading", "2,x")
	if p.value("#words") != "" || !js[bool](p, `document.getElementById("save-png").disabled`) {
		t.Errorf("something to pass on from a wrong number: %q", p.value("#words"))
	}
	p.enter("reading", "2,655")
	want = worksheets.All.Evaluate("short", own("reading", "2,655"), unit.US)
	p.until(`document.getElementById("words").value.includes(%s)`, quoted(want.Reply[0]))
}

// A clipboard that refuses leaves the words selected.
func TestWordsRefused(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, `navigator.clipboard.writeText = () => Promise.reject(new DOMException("refused", "NotAllowedError"));`)
	p.visit("")
	p.enter("reading", "2,655")
	p.click("#pass > summary")
	p.until(`!document.getElementById("copy-words").disabled`)
	p.click("#copy-words")
	p.until(`document.getElementById("passed").textContent.includes("selected")`)
	if !js[bool](p, `(() => { const w = document.getElementById("words"); return w.selectionEnd - w.selectionStart === w.value.length && w.value.length > 100; })()`) {
		t.Error("the words are not selected")
	}
}

// The picture is 1200 by 630, drawn on, and holds the words.
func TestPictureToPass(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, takeFiles)
			p.visit(pageOf(w.ID))
			p.ready()
			p.click("#pass > summary")
			p.until(`document.getElementById("words").value !== ""`)
			p.click("#save-png")
			p.until(`saved.length === 1`)
			p.click("#save-svg")
			p.until(`saved.length === 2`)
			files := js[[]struct{ Name, Data string }](p, `saved`)
			data := func(i int) []byte {
				b, err := base64.StdEncoding.DecodeString(files[i].Data)
				if err != nil {
					t.Fatal(err)
				}
				return b
			}
			img, err := png.Decode(bytes.NewReader(data(0)))
			if err != nil || files[0].Name != "plainlift-"+w.ID+".png" {
				t.Fatalf("%s: %v", files[0].Name, err)
			}
			if b := img.Bounds(); b.Dx() != 1200 || b.Dy() != 630 {
				t.Errorf("%v", b)
			}
			dark := map[bool]int{} // pixels of ink in the left half and in the right
			for y := 0; y < 500; y += 2 {
				for x := 0; x < 1200; x += 2 {
					if r, g, b, _ := img.At(x, y).RGBA(); r+g+b < 0x18000 {
						dark[x > 600]++
					}
				}
			}
			if dark[false] < 500 || dark[true] < 100 {
				t.Errorf("ink in the words %d, in the plot %d", dark[false], dark[true])
			}
			svg := string(data(1))
			if !strings.HasPrefix(svg, "<svg ") || !strings.Contains(svg, "<title>") || strings.Contains(svg, "<script") {
				t.Errorf("%.200s", svg)
			}
		})
	}
}

// The printed page has the date, the link and a code, and room to write.
func TestPaper(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "gain/")
	p.enter("now", "2,600")
	p.until(`document.querySelector("#paper-code svg path")?.getAttribute("d").length > 1000`)
	want := worksheets.All.Evaluate("gain", own("now", "2,600"), unit.US)
	if got := p.text("#paper-link"); got != p.URL+folder+"gain/#"+fragment(want.Link) {
		t.Errorf("the link is %q", got)
	}
	if p.seen(".paper") {
		t.Error("it is on the screen")
	}
	js[bool](p, `(dispatchEvent(new Event("beforeprint")), true)`)
	if p.text("#paper-date") == "" {
		t.Error("no date")
	}
	p.enter("now", "2,601") // the old code must not stand beside the new numbers
	if js[int](p, `document.querySelectorAll("#paper-code svg").length`) != 0 {
		t.Error("the code of the numbers before is still there")
	}
}
