//go:build browser

package browser

import (
	"maps"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

const (
	markup = `<img src=x onerror="document.title='hit'"><script>document.title='hit'</script>`
	rtl    = "\u202e" // shows what follows from right to left
)

// badInput is what somebody types into one field, and where it must be said
// that this cannot be used.
type badInput struct {
	name, worksheet, field, text string
	at                           string // the field with the message, if not field
}

var badInputs = []badInput{
	{name: "empty", worksheet: "short", field: "reading", text: ""},
	{name: "spaces", worksheet: "short", field: "reading", text: "   "},
	{name: "words", worksheet: "short", field: "reading", text: "about twenty-six hundred"},
	{name: "wrong unit", worksheet: "short", field: "reading", text: "2,600 lb"},
	{name: "negative", worksheet: "short", field: "reading", text: "-2,600"},
	{name: "zero", worksheet: "short", field: "reading", text: "0"},
	{name: "too large for a number", worksheet: "short", field: "reading", text: "1e400"},
	{name: "not a number", worksheet: "short", field: "reading", text: "NaN"},
	{name: "infinite", worksheet: "short", field: "lift", text: "Infinity"},
	{name: "too many points", worksheet: "short", field: "reading", text: "1,234.5.6"},
	{name: "beyond the dial", worksheet: "short", field: "reading", text: "4,100"},
	{name: "low above high", worksheet: "short", field: "low", text: "2,900", at: "high"},
	{name: "percent over 20", worksheet: "short", field: "accuracy", text: "200"},
	{name: "markup", worksheet: "short", field: "target", text: markup},
	{name: "from right to left", worksheet: "short", field: "scale", text: rtl + "0004 isp"},
	{name: "braces", worksheet: "short", field: "reading", text: "{reading} ${1} {{.}}"},
	{name: "long", worksheet: "short", field: "reading", text: strings.Repeat("26", 50_000)},
	{name: "500 readings", worksheet: "reading", field: "readings", text: strings.TrimSuffix(strings.Repeat("2,600; ", 500), "; ")},
	{name: "markup among readings", worksheet: "reading", field: "readings", text: "2,600; " + markup + "; 2,610"},
	{name: "one side of a pair", worksheet: "shim", field: "trials", text: "0.010 in"},
	{name: "half a shim", worksheet: "shim", field: "kit", text: "0.010 in : 1.5"},
	{name: "no percentage", worksheet: "before-after", field: "claimed", text: "thirty"},
	{name: "no load", worksheet: "gain", field: "lift", text: "0 lb"},
}

// complaints puts together what the core says of a field.
func complaints(field string, problems []calc.Problem) string {
	var all []string
	for _, q := range problems {
		if q.Field == field {
			all = append(all, q.Message)
		}
	}
	return strings.Join(all, " ")
}

// said is everything that stands below a field as an error and can be seen.
func (p *page) said(field string) string {
	p.Helper()
	return strings.Join(strings.Fields(js[string](p, `[...document.querySelectorAll(%s)].filter((n) => n.checkVisibility()).map((n) => n.textContent.trim()).join(" ")`,
		quoted("#field-"+field+" .error"))), " ")
}

// uninjured fails if markup that was typed became part of the page.
func (p *page) uninjured(scripts int) {
	p.Helper()
	if n := js[int](p, `document.scripts.length`); n != scripts {
		p.Errorf("%d scripts, there were %d", n, scripts)
	}
	if js[bool](p, `document.title === "hit" || !!document.querySelector("img, iframe, object, embed")`) {
		p.Error("typed markup is in the page")
	}
}

// Whatever cannot be used is said at its field, in words of its own; what was
// typed stays, the figures are marked as not current, and a good value recovers.
func TestBadInput(t *testing.T) {
	sheets := map[string][]badInput{}
	for _, b := range badInputs {
		sheets[b.worksheet] = append(sheets[b.worksheet], b)
	}
	for worksheet, inputs := range sheets {
		t.Run(worksheet, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(worksheet))
			scripts := js[int](p, `document.scripts.length`)
			for _, b := range inputs {
				p.takesBad(b)
				p.uninjured(scripts)
			}
		})
	}
}

func (p *page) takesBad(b badInput) {
	p.Helper()
	at := b.at
	if at == "" {
		at = b.field
	}
	name := `[name="` + b.field + `"]`
	good := p.value(name)
	p.enter(b.field, "0") // so that the good value counts as typed, even if it is none
	p.enter(b.field, good)
	before, sentence := p.figures(), p.text("#sentence")

	p.enter(b.field, b.text)
	want := worksheets.All.Evaluate(b.worksheet, calc.Entries{b.field: {Text: b.text, Own: true}}, unit.US)
	message := complaints(at, want.Problems)
	if message == "" {
		p.Fatalf("%s: the core does not complain of %s: %v", b.name, at, want.Problems)
	}
	if got := p.said(at); got != strings.Join(strings.Fields(message), " ") {
		p.Errorf("%s: below %s stands %q, want %q", b.name, at, got, message)
	}
	input := `[name="` + at + `"]`
	if !strings.Contains(" "+p.attribute(input, "aria-describedby")+" ", " error-"+at+" ") {
		p.Errorf("%s: the message is not tied to its input", b.name)
	}
	if p.attribute(input, "aria-invalid") != "true" {
		p.Errorf("%s: the input does not say that it is wrong", b.name)
	}
	if got := p.value(name); got != b.text {
		p.Errorf("%s: what was typed became %.60q", b.name, got)
	}
	if p.standing() != "stale" || p.attribute("#answer", "aria-busy") != "false" || !p.seen("#stale-mark") {
		p.Errorf("%s: the figures pass for current\n%s", b.name, p.state())
	}
	if got := p.text("#head"); got != want.Verdict.Head {
		p.Errorf("%s: head %q, want %q", b.name, got, want.Verdict.Head)
	}
	if !maps.Equal(p.figures(), before) {
		p.Errorf("%s: the figures are not the last good ones", b.name)
	}
	if link := p.text("#problems a"); link == "" || p.attribute("#problems a", "href") != "#"+want.Problems[0].Field {
		p.Errorf("%s: the list of problems does not lead to the field", b.name)
	}

	p.enter(b.field, good)
	if p.standing() != "current" || p.seen("#stale-mark") || p.said(at) != "" || p.attribute(input, "aria-invalid") != "false" {
		p.Errorf("%s: a good value does not recover\n%s", b.name, p.state())
	}
	if !maps.Equal(p.figures(), before) || p.text("#sentence") != sentence {
		p.Errorf("%s: the answer to the same numbers is another", b.name)
	}
}

// Marks that nobody sees come along when a text is pasted, and do no harm.
func TestMarksThatNobodySees(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	typed := "\u200e2,655\u200f psi\ufeff"
	p.enter("reading", typed)
	p.matches(worksheets.All.Evaluate("short", calc.Entries{"reading": {Text: typed, Own: true}}, unit.US))
	if got := p.value("#reading"); got != typed {
		t.Errorf("what was typed became %q", got)
	}
}

// A number that can be read two ways asks, and either button answers.
func TestTwoReadingsAsk(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.choose("#system", "metric")
	p.settle()
	for i, choice := range []string{"1234 kg", "1.234 kg"} {
		p.enter("lift", "1,234")
		buttons := js[[]string](p, `[...document.querySelectorAll("#error-lift button")].map((b) => b.textContent)`)
		if len(buttons) != 2 || buttons[i] != choice {
			t.Fatalf("choices %q\n%s", buttons, p.state())
		}
		if p.standing() != "stale" || p.value("#lift") != "1,234" {
			t.Errorf("not asking, or not as typed\n%s", p.state())
		}
		p.click("#error-lift button:nth-of-type(" + string(rune('1'+i)) + ")")
		p.settle()
		p.until(`document.getElementById("answer").dataset.state === "current"`)
		want := worksheets.All.Evaluate("short", calc.Entries{"lift": {Text: choice, Own: true}}, unit.Metric)
		p.matches(want)
		if p.said("lift") != "" {
			t.Errorf("still asking: %q", p.said("lift"))
		}
	}
}

// A link may hold anything at all.
func TestHostileLinks(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, seenScript)
	for name, pairs := range map[string][]calc.Pair{
		"markup":         {{Key: "v", Value: "1"}, {Key: "reading", Value: markup}, {Key: "scale", Value: "4000 psi"}, {Key: markup, Value: markup}},
		"100 kB":         {{Key: "v", Value: "1"}, {Key: "reading", Value: strings.Repeat("9", 100_000)}, {Key: "scale", Value: "4000 psi"}},
		"100 kB of keys": {{Key: strings.Repeat("k", 50_000), Value: strings.Repeat("v", 50_000)}, {Key: "reading", Value: "no"}},
		"right to left":  {{Key: "reading", Value: rtl + "isp 0062"}},
	} {
		p.visit("safety/")
		p.visit("#" + fragment(pairs))
		p.settle()
		scripts := js[int](p, `document.scripts.length`)
		want := worksheets.All.Evaluate("short", calc.FromLink(pairs), unit.US)
		if got := p.said("reading"); got == "" || got != complaints("reading", want.Problems) {
			t.Errorf("%s: below the field stands %q, want %v", name, got, want.Problems)
		}
		for _, pair := range pairs {
			if pair.Key == "reading" && p.value("#reading") != pair.Value {
				t.Errorf("%s: the field holds %.60q", name, p.value("#reading"))
			}
		}
		if p.standing() != "stale" {
			t.Errorf("%s: stands %s", name, p.standing())
		}
		p.uninjured(scripts)
		p.enter("reading", "2,600")
		if p.standing() != "current" {
			t.Errorf("%s: a good value does not recover\n%s", name, p.state())
		}
	}
}

// A text of many megabytes, dropped into a field by mistake, is refused, and does
// not get into the address.
func TestMegabytesInAField(t *testing.T) {
	t.Parallel()
	p := open(t, desk, "")
	p.ready()
	js[bool](p, `(() => {
		const input = document.getElementById("reading");
		input.value = "2600 psi ".repeat(2e6);
		input.dispatchEvent(new Event("input", { bubbles: true }));
		return true;
	})()`)
	p.until(`document.getElementById("error-reading").textContent.includes("too long")`)
	p.until(`location.hash.length > 1000`)
	if n := js[int](p, `location.hash.length`); n > 50_000 {
		t.Errorf("the address has %d characters", n)
	}
}
