//go:build browser

package browser

import (
	_ "embed"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

//go:embed testdata/kept.js
var keptScript string

// kept is what the database holds, read past the page's own scripts.
type kept struct {
	Machines []struct {
		ID, Name, Notes string
		Values          []struct{ Quantity, Text, Shown string }
		Rev             int
	}
	Records []struct {
		ID, Machine, Worksheet, Date, Hours, By, Oil, Rpm, Notes, Head, Sentence string
		Link                                                                     [][2]string
		Figures                                                                  []struct{ Label, Text string }
		Rev                                                                      int
	}
}

func (p *page) kept() kept {
	p.Helper()
	var k kept
	if err := json.Unmarshal([]byte(js[string](p, `kept.all().then(JSON.stringify)`)), &k); err != nil {
		p.Fatal(err)
	}
	return k
}

// beginKeeping opens the part that keeps an answer, and waits until it knows
// what is kept.
func (p *page) beginKeeping() {
	p.Helper()
	if !js[bool](p, `document.getElementById("keep-part").open`) {
		p.click("#keep-part > summary")
	}
	p.until(`document.getElementById("keep-date").value !== "" && !document.getElementById("keep-save").disabled`)
}

// keep saves what stands on the page as a record of the machine of that name,
// which is made if need be.
func (p *page) keep(machine, date, notes string) {
	p.Helper()
	p.beginKeeping()
	if known := js[string](p, `[...document.getElementById("keep-machine").options].find((o) => o.text === %s)?.value ?? ""`, quoted(machine)); known != "" {
		p.choose("#keep-machine", known)
	} else {
		p.typeInto("#keep-name", machine)
	}
	js[bool](p, `!!(document.getElementById("keep-date").value = %s)`, quoted(date))
	if notes != "" {
		js[bool](p, `!!(document.getElementById("keep-notes").value = %s)`, quoted(notes))
	}
	p.click("#keep-save")
	p.until(`document.getElementById("keep-said").textContent.startsWith("Saved:")`)
}

// machines opens the page of what is kept and waits until it is painted.
func (p *page) machines() {
	p.Helper()
	p.visit("machines/")
	p.painted()
}

func (p *page) painted() {
	p.Helper()
	p.until(`!document.documentElement.dataset.wait`)
}

// saysOfKept waits until the page of what is kept says something with that in it.
func (p *page) saysOfKept(part string) {
	p.Helper()
	p.until(`document.getElementById("said").textContent.includes(%s) && document.getElementById("machines").ariaBusy === "false"`, quoted(part))
}

// decide waits for the question with that in its head and answers it.
func (p *page) decide(head, choice string) {
	p.Helper()
	p.until(`document.getElementById("ask").open && document.getElementById("ask-head").textContent.includes(%s)`, quoted(head))
	p.click(`#ask-choices button[value="` + choice + `"]`)
}

// A saved answer is there after a reload, opens the page it came from with the
// same numbers, and can be replaced only after a question.
func TestKeep(t *testing.T) {
	for _, s := range []screen{phone, desk} {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := tab(t, s, keptScript)
			p.machines()
			if !p.seen("#begin") || !p.seen(`[data-sheet="short"]`) || p.seen(".machine") {
				t.Error("without a machine it does not say how to begin")
			}
			p.visit("")
			p.enter("reading", "2,600 psi")
			p.enter("low", "2,680 psi")
			notes := "<img src=x onerror=alert(1)>\nsecond, \"line\""
			p.keep("Blue <b>loader</b>", "2026-11-02", notes)
			if got := p.text("#keep-said"); !strings.Contains(got, "2 Nov 2026") || !strings.Contains(got, "The browser ") {
				t.Errorf("it says %q", got)
			}
			p.click("#keep-link")
			p.until(`location.pathname.endsWith("/machines/")`)
			p.painted()
			p.do(chromedp.Reload())
			p.painted()
			p.uninjured(js[int](p, `document.scripts.length`))
			k := p.kept()
			if len(k.Machines) != 1 || len(k.Records) != 1 || k.Records[0].Machine != k.Machines[0].ID || k.Records[0].Notes != notes {
				t.Fatalf("kept: %+v", k)
			}
			if v := k.Machines[0].Values; len(v) != 1 || v[0].Quantity != "manual lowest" || v[0].Text != "2680 psi" {
				t.Errorf("the machine's numbers: %v", v)
			}
			want := worksheets.All.Evaluate("short", own("reading", "2,600 psi", "low", "2,680 psi"), unit.US)
			r := k.Records[0]
			if r.Head != want.Verdict.Head || r.Sentence != want.Verdict.Sentence || r.Date != "2026-11-02" || len(r.Figures) == 0 {
				t.Errorf("the record: %+v", r)
			}
			if got := p.text(".job .written"); got != strings.ReplaceAll(notes, "\n", " ") || p.text(".machine h2") != "Blue <b>loader</b>" {
				t.Errorf("notes %q of %q", got, p.text(".machine h2"))
			}
			if wide := js[int](p, `document.documentElement.scrollWidth`); wide > int(s.width) {
				t.Errorf("%d px wide", wide)
			}

			p.click(".job [data-open]")
			p.until(`document.documentElement.dataset.view === "link" && document.getElementById("answer").dataset.state === "current" && !document.documentElement.dataset.wait`)
			p.settle()
			p.matches(want)
			p.click("#change")
			p.enter("reading", "2,620 psi")
			p.beginKeeping()
			if got := p.text("#keep-replace"); !p.seen("#keep-replace") || got != "Replace the record of 2 Nov 2026" {
				t.Errorf("no way to replace it: %q", got)
			}
			p.click("#keep-replace")
			p.decide("Replace", "")
			p.until(`document.getElementById("keep-said").textContent === "Not replaced."`)
			if got := p.kept().Records; len(got) != 1 || got[0].Rev != 1 {
				t.Errorf("replaced without a yes: %+v", got)
			}
			p.click("#keep-replace")
			p.decide("Replace", "yes")
			p.until(`document.getElementById("keep-said").textContent.startsWith("Saved:")`)
			if got := p.kept().Records; len(got) != 1 || got[0].Rev != 2 || got[0].Notes != notes || !slices.Contains(got[0].Link, [2]string{"reading", "2620 psi"}) {
				t.Errorf("after it was replaced: %+v", got)
			}
			p.do(chromedp.Reload()) // and a reload still knows which record it is
			p.beginKeeping()
			if !p.seen("#keep-replace") {
				t.Error("after a reload it can't be replaced any more")
			}
			js[bool](p, `(location.hash = "#reading=2500+psi", true)`)
			p.until(`document.getElementById("keep-replace").hidden && document.querySelector('[name="reading"]').value === "2,500"`)
		})
	}
}

// The example's numbers are nobody's record.
func TestKeepNotTheExample(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, keptScript)
	p.visit("")
	p.ready()
	p.click("#keep-part > summary")
	p.until(`document.getElementById("keep-said").textContent.startsWith("These are the example's")`)
	if !js[bool](p, `document.getElementById("keep-save").disabled`) {
		t.Error("the example can be saved")
	}
	p.enter("reading", "2,600")
	p.until(`!document.getElementById("keep-save").disabled && document.getElementById("keep-said").textContent === ""`)
	p.click("#keep-save")
	p.until(`document.getElementById("keep-said").textContent === "Give the machine a name first." && document.activeElement.id === "keep-name"`)
	p.enter("reading", "2,x")
	p.until(`document.getElementById("keep-save").disabled`)
}

// What would change with the machine is shown; what differs is not taken unless
// it is ticked. The machine's numbers are offered where they fit, and fill nothing.
func TestKeepNumbersOfAMachine(t *testing.T) {
	t.Parallel()
	p := tab(t, desk, keptScript)
	p.visit("")
	p.enter("reading", "2,600")
	p.enter("low", "2,700 psi")
	p.keep("Blue loader", "2026-11-02", "")
	p.visit("reading/")
	p.ready()
	p.enter("low", "2,680 psi")
	p.enter("scale", "5,000 psi")
	p.beginKeeping()
	p.choose("#keep-machine", p.kept().Machines[0].ID)
	ticks := func() []string {
		return js[[]string](p, `[...document.querySelectorAll("#keep-ticks li")].map((n) => (n.querySelector("input").checked ? "+ " : "- ") + n.textContent.trim())`)
	}
	want := []string{"+ Dial goes up to: 5,000 psi", "- Manual: lowest relief pressure: has 2,700 psi; replace with 2,680 psi"}
	got := ticks()
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("ticks %q, want %q", got, want)
	}
	js[bool](p, `(document.getElementById("keep-save").click(), document.getElementById("keep-save").click(), true)`) // twice in a hurry
	p.until(`document.getElementById("keep-said").textContent.startsWith("Saved:")`)
	k := p.kept()
	if len(k.Records) != 2 {
		t.Errorf("%d records", len(k.Records))
	}
	p.click("#keep-offer")
	p.until(`document.getElementById("keep-said").textContent.startsWith("The numbers of “Blue loader” are offered")`)
	if v := k.Machines[0].Values; k.Machines[0].Rev != 2 || len(v) != 2 || v[0].Text != "2700 psi" || v[1].Text != "5000 psi" {
		t.Errorf("the machine: %+v", k.Machines)
	}
	p.machines()
	p.click(`[data-act="work"]`)
	p.saysOfKept("offers the numbers of “Blue loader”")
	p.visit("flow/")
	p.ready()
	if got := p.offered(); !slices.Equal(got, []string{"Manual: lowest relief pressure: use 2,700 psi from “Blue loader”"}) {
		t.Errorf("offered: %q", got)
	}
}

// By the keyboard alone an answer is kept and a record deleted.
func TestKeepByKeyboard(t *testing.T) {
	t.Parallel()
	p := tab(t, desk, keptScript)
	p.visit("")
	p.enter("reading", "2,600")
	p.beginKeeping()
	p.typeInto("#keep-name", "Blue loader")
	p.press(kb.Enter)
	p.until(`document.getElementById("keep-said").textContent.startsWith("Saved:")`)
	p.machines()
	js[bool](p, `(document.querySelector("[data-act=delete-record]").focus(), true)`)
	p.press(kb.Enter)
	p.until(`document.getElementById("ask").open && document.activeElement.value === "yes"`)
	p.press(kb.Escape)
	p.saysOfKept("Nothing was deleted.")
	p.until(`document.activeElement.dataset.act === "delete-record"`)
	p.press(kb.Enter)
	p.until(`document.getElementById("ask").open && document.activeElement.value === "yes"`)
	p.press(kb.Enter)
	p.saysOfKept("Deleted: the record of")
	if k := p.kept(); len(k.Records) != 0 || len(k.Machines) != 1 {
		t.Errorf("kept: %+v", k)
	}
}
