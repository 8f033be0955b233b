//go:build browser

package browser

import (
	"math"
	"strconv"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// shown is a figure as the page has it.
type shown struct{ Value, Text string }

func (p *page) figures() map[string]shown {
	p.Helper()
	return js[map[string]shown](p, `Object.fromEntries([...document.querySelectorAll("output[id^=fig-] > data")].map((d) =>
		[d.parentNode.id.slice(4), { Value: d.value, Text: d.textContent }]))`)
}

// sameValue compares two SI numbers, or two words. The mathematical functions
// of the browser and of this machine may differ in the last bits.
func sameValue(got, want string) bool {
	g, err1 := strconv.ParseFloat(got, 64)
	w, err2 := strconv.ParseFloat(want, 64)
	if err1 != nil || err2 != nil {
		return got == want
	}
	return g == w || math.Abs(g-w) <= 1e-9*math.Max(math.Abs(w), 1e-6)
}

// matches compares everything that the page shows of an answer with what this
// machine works out itself.
func (p *page) matches(want *calc.Answer) {
	p.Helper()
	if !want.OK() {
		p.Fatalf("the case has a problem of its own: %v", want.Problems)
	}
	if s := p.standing(); s != "current" {
		p.Fatalf("the answer is %s\n%s", s, p.state())
	}
	got := p.figures()
	known := map[string]bool{}
	for _, f := range want.Figures {
		if f.Place == calc.Quoted {
			continue
		}
		known[f.ID] = true
		if g, ok := got[f.ID]; !ok {
			p.Errorf("figure %s is not on the page", f.ID)
		} else if !sameValue(g.Value, f.Value) || g.Text != f.Text {
			p.Errorf("figure %s: page %q %q, here %q %q", f.ID, g.Value, g.Text, f.Value, f.Text)
		}
	}
	for id := range got {
		if !known[id] {
			p.Errorf("figure %s is on the page but not in the answer", id)
		}
	}
	for selector, text := range map[string]string{"#head": want.Verdict.Head, "#sentence": want.Verdict.Sentence, "#check": want.Check} {
		if got := p.text(selector); got != text {
			p.Errorf("%s: page %q, here %q", selector, got, text)
		}
	}
	for list, texts := range map[string][]string{"lines": want.Lines, "rests": want.Rests, "cautions": want.Cautions, "notices": want.Notices} {
		got := js[[]string](p, `[...document.querySelectorAll("#%s > li")].map((n) => n.textContent)`, list)
		if len(got) != len(texts) {
			p.Errorf("%s: page %q, here %q", list, got, texts)
			continue
		}
		for i := range got {
			if got[i] != texts[i] {
				p.Errorf("%s: page %q, here %q", list, got[i], texts[i])
			}
		}
	}
	for list, n := range map[string]int{"working": len(want.Working), "budget": len(want.Budget), "next": len(want.Next)} {
		if got := js[int](p, `document.querySelectorAll("#%s > li").length`, list); got != n {
			p.Errorf("%s: %d items on the page, %d here", list, got, n)
		}
	}
	if want.Picture != "" && !js[bool](p, `document.querySelector("#picture svg title")?.textContent.length > 0`) {
		p.Error("no picture, or one without a title")
	}
}

// typedCase is what a reader types on one worksheet.
type typedCase struct {
	worksheet string
	typed     [][2]string // field, text; in this order
}

// own are the entries of a case as the page must understand them.
func (c typedCase) own() calc.Entries {
	entries := calc.Entries{}
	for _, t := range c.typed {
		entries[t[0]] = calc.Entry{Text: t[1], Own: true}
	}
	return entries
}

// link is the case as a link that somebody writes by hand.
func (c typedCase) link() string {
	var pairs []calc.Pair
	for _, t := range c.typed {
		pairs = append(pairs, calc.Pair{Key: t[0], Value: t[1]})
	}
	return pageOf(c.worksheet) + "#" + fragment(pairs)
}

// pageOf is where a worksheet stands below the site's folder.
func pageOf(worksheet string) string {
	if worksheet == "short" {
		return ""
	}
	return worksheet + "/"
}

// The numbers of these cases are invented; what they should give is worked out
// natively by the same core, which has its own checks.
var typedCases = []typedCase{
	{"short", [][2]string{{"reading", "2,655"}, {"scale", "5,000 psi"}, {"accuracy", "1.6"}, {"low", "18.2 MPa"}, {"high", "2,750"}, {"lift", "640 kg"}, {"target", "2,700"}}},
	{"short", [][2]string{{"reading", "2,500"}}},
	{"short", [][2]string{{"low", ""}, {"high", ""}, {"reading", "180 bar"}}},
	{"short", [][2]string{{"target", "3,000"}, {"high", "2,800"}}},
	{"reading", [][2]string{{"readings", "2,505 psi; 2,520 psi; 2,495 psi"}, {"zero", "15 psi"}, {"step", "5 psi"}, {"temp", "35 degC"}}},
	{"gain", [][2]string{{"lift", "1,100 lb"}, {"now", "2,300"}, {"target", "2,450"}, {"dead", "250 lb"}}},
	{"before-after", [][2]string{{"before", "2,300"}, {"after", "2,500"}, {"claimed", "12 %"}, {"gauge_err", "3 bar"}}},
	{"shim", [][2]string{{"now", "2,500"}, {"target", "2,650"}, {"limit", "2,800"}, {"gauge_err", "40"}, {"trials", "0.010 in : 2,548 psi; 0.020 in : 2,590 psi"}}},
	{"job", [][2]string{{"found", "2,500 psi; 2,490 psi; 172 bar"}, {"trials", "10 thou : 2,560 psi; 0.020 in : 2,605 psi"}, {"left", "2,600 psi; 2,610 psi; 2,600 psi"}, {"scale", "3,000"}, {"low", "2,590"}, {"oil_left", "60 degC"}}},
	{"loader", [][2]string{{"height", "70"}, {"pressure", "2,500"}, {"pivot_base", "24 1/4"}, {"points", "60 in : 2,000 lb; 30 in : 2,600 lb"}}},
	{"lift-test", [][2]string{{"tests", "1,500 psi : 730 lb; 145 bar : 1,150 lb; 2,700 psi : 715 kg"}, {"heights", "60 in; 60 in; 63 in"}}},
	{"flow", [][2]string{{"time", "5.5"}, {"pressure", "170 bar"}, {"rated_flow", "26 L/min"}, {"bore", "45 mm"}}},
	{"cylinder", [][2]string{{"bore", "2 1/2"}, {"rod", "30 mm"}, {"compare", "2,700"}, {"back", "100"}, {"flow", ""}}},
	{"tip", [][2]string{{"front", "800 kg"}, {"rear", "2,000"}, {"axle_reach", "1,3 m"}, {"ballast", "250"}, {"front_rating", "5,500"}, {"hill", "6"}, {"centre_h", "33 1/2 in"}, {"load_h", "30"}}},
	{"ratings", [][2]string{{"pressure", "2,500"}, {"target", "175 bar"}, {"limit", "2,600"}, {"pump", "2,550"}, {"hose", ""}, {"spike", "1.2"}}},
}

// cases are those of the worksheets that the site has.
func cases() []typedCase {
	var list []typedCase
	for _, c := range typedCases {
		if worksheets.All.Lookup(c.worksheet) != nil {
			list = append(list, c)
		}
	}
	return list
}

func TestEveryWorksheetHasATypedCase(t *testing.T) {
	for _, w := range worksheets.All {
		found := false
		for _, c := range typedCases {
			found = found || c.worksheet == w.ID
		}
		if !found {
			t.Errorf("no typed case for worksheet %s", w.ID)
		}
	}
}

// The untouched page shows what this machine works out, simulation included.
func TestExample(t *testing.T) {
	for _, w := range worksheets.All {
		t.Run(w.ID, func(t *testing.T) {
			t.Parallel()
			p := open(t, desk, pageOf(w.ID))
			p.matches(worksheets.All.Checked(w.ID, nil, unit.US))
		})
	}
}

func TestTypingChangesTheFigures(t *testing.T) {
	for i, c := range cases() {
		t.Run(c.worksheet+strconv.Itoa(i), func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(c.worksheet))
			for _, typed := range c.typed {
				p.enter(typed[0], typed[1])
			}
			p.checked()
			p.matches(worksheets.All.Checked(c.worksheet, c.own(), unit.US))
			for _, typed := range c.typed {
				if got := p.value(`[name="` + typed[0] + `"]`); got != typed[1] {
					t.Errorf("%s holds %q, typed was %q", typed[0], got, typed[1])
				}
			}
		})
	}
}

// A number without a unit is in what the chooser says; the chooser converts
// nothing, and a typed unit moves it.
func TestUnitChooser(t *testing.T) {
	p := open(t, phone, "")
	p.enter("reading", "180")
	p.choose("#unit-reading", "bar")
	p.settle()
	p.matches(worksheets.All.Evaluate("short", calc.Entries{"reading": {Text: "180", Unit: "bar", Own: true}}, unit.US))
	if got := p.value("#reading"); got != "180" {
		t.Errorf("the chooser changed what was typed: %q", got)
	}
	p.enter("reading", "17.9 MPa")
	if got := p.value("#unit-reading"); got != "MPa" {
		t.Errorf("a typed unit left the chooser at %q", got)
	}
	p.enter("reading", "18")
	p.matches(worksheets.All.Evaluate("short", calc.Entries{"reading": {Text: "18", Unit: "MPa", Own: true}}, unit.US))
}
