//go:build browser

package browser

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// rows are the texts in the rows of a list, those of pairs with a colon.
func (p *page) rows(field string) []string {
	p.Helper()
	return js[[]string](p, `[...document.querySelectorAll("#field-%s .row")].map((r) => [...r.querySelectorAll("input")].map((i) => i.value).join(":"))`, field)
}

// cell is a row's input: a for the first number, b for the second.
func cell(field string, row int, column string) string {
	return "#field-" + field + " .row:nth-of-type(" + strconv.Itoa(row) + ") ." + column
}

// enterCell types into a row and waits for the answer.
func (p *page) enterCell(field string, row int, column, text string) {
	p.Helper()
	p.typeInto(cell(field, row, column), text)
	p.settle()
}

// holds fails unless rows and named input say the same, and the page answers to
// it.
func (p *page) holds(worksheet, field string, rows []string, whole string) {
	p.Helper()
	if got := p.rows(field); !slices.Equal(got, rows) {
		p.Errorf("rows of %s: %q, want %q", field, got, rows)
	}
	if got := p.value(`[name="` + field + `"]`); got != whole {
		p.Errorf("%s as a list: %q, want %q", field, got, whole)
	}
	p.checked()
	p.matches(worksheets.All.Checked(worksheet, calc.Entries{field: {Text: whole, Own: true}}, unit.US))
}

// Rows and the named input follow each other; the next row opens by itself, and
// those that hear the rows hear their numbers.
func TestRows(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "reading/")
	p.ready()
	// The example's readings make room at the first of the reader's own, which stay.
	p.enterCell("readings", 2, "a", "2,655")
	p.holds("reading", "readings", []string{"", "2,655", "", "", ""}, "2,655")
	p.enterCell("readings", 5, "a", "2,630")
	p.holds("reading", "readings", []string{"", "2,655", "", "", "2,630", ""}, "2,655; 2,630")
	p.enter("readings", "180 bar; 181 bar")
	p.holds("reading", "readings", []string{"180 bar", "181 bar", ""}, "180 bar; 181 bar")
	p.enter("readings", "2,600 psi, 2,620 psi")
	p.holds("reading", "readings", []string{"2,600 psi", "2,620 psi", ""}, "2,600 psi, 2,620 psi")
	// A row left blank is none.
	p.enterCell("readings", 1, "a", "")
	p.holds("reading", "readings", []string{"", "2,620 psi", ""}, "2,620 psi")
	p.click("#field-readings .row:nth-of-type(1) .remove")
	p.settle()
	p.holds("reading", "readings", []string{"2,620 psi", ""}, "2,620 psi")
	p.click("#field-readings .add")
	p.press("2", "6", "2", "5")
	p.settle()
	p.holds("reading", "readings", []string{"2,620 psi", "", "2625", ""}, "2,620 psi; 2625")
	want := []string{"Reading 1", "Reading 2", "Reading 3", "Reading 4"}
	if got := js[[]string](p, `[...document.querySelectorAll("#field-readings .row input")].map((i) => i.getAttribute("aria-label"))`); !slices.Equal(got, want) {
		t.Errorf("the rows are called %q", got)
	}
	for range 4 {
		p.click("#field-readings .row:nth-of-type(1) .remove")
		p.settle()
	}
	if got := p.rows("readings"); !slices.Equal(got, []string{""}) || p.standing() != "stale" {
		t.Errorf("with every row removed there are %q\n%s", got, p.state())
	}
}

// Enter goes to the next number of the list and sends nothing away.
func TestEnterInRows(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "shim/")
	p.ready()
	js[bool](p, `(document.querySelector(%s).focus(), true)`, quoted(cell("trials", 1, "a")))
	p.press("1", "0", " ", "t", "h", "o", "u", kb.Enter, "2", "6", "5", "5", kb.Enter, "2", "0", " ", "t", "h", "o", "u", kb.Enter, "2", "7", "0", "0", kb.Enter)
	p.settle()
	p.holds("shim", "trials", []string{"10 thou:2655", "20 thou:2700", ":"}, "10 thou : 2655; 20 thou : 2700")
	if !js[bool](p, `document.activeElement === document.querySelector(%s)`, quoted(cell("trials", 3, "a"))) {
		t.Errorf("the next key goes to %+v", js[focused](p, focusedScript))
	}
	p.press(kb.Enter)
	js[bool](p, `(document.querySelector("#now").focus(), true)`)
	p.press(kb.Enter)
	if got := js[string](p, `location.search`); got != "" {
		t.Errorf("the form was sent away: %q", got)
	}
}

// A tap on a shim puts it in the next row.
func TestChips(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "shim/")
	p.ready()
	p.enter("kit", "")
	for i, chip := range []string{"5 thou", "20 thou"} {
		p.click(`#field-kit [data-chip="` + chip + `"]`)
		p.settle()
		if !js[bool](p, `document.activeElement === document.querySelector(%s)`, quoted(cell("kit", i+1, "b"))) {
			t.Errorf("after %s the next key goes to %+v", chip, js[focused](p, focusedScript))
		}
		p.press("2")
		p.settle()
	}
	p.holds("shim", "kit", []string{"5 thou:2", "20 thou:2", ":"}, "5 thou : 2; 20 thou : 2")
}

// Each row has its own error, below it; the others stay as they are.
func TestRowErrors(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "reading/")
	p.ready()
	typed := "2,600; 26x0; ; 2,610; 9,000"
	p.enter("readings", typed)
	want := worksheets.All.Evaluate("reading", calc.Entries{"readings": {Text: typed, Own: true}}, unit.US)
	if len(want.Problems) < 2 {
		t.Fatalf("problems %v", want.Problems)
	}
	says := func() []string {
		return js[[]string](p, `[...document.querySelectorAll("#field-readings .row")].map((r) => [...r.querySelectorAll(".row-says.error")].filter((n) => n.checkVisibility()).map((n) => n.textContent).join())`)
	}
	expected := []string{"", "", "", "", ""}
	for _, q := range want.Problems {
		expected[q.Row] = q.Message
	}
	if got := says(); !slices.Equal(got, expected) {
		t.Errorf("below the rows stands %q, want %q", got, expected)
	}
	// The row says itself that it is wrong, and by what.
	if bad := js[[]bool](p, `[...document.querySelectorAll("#field-readings .row .a")].map((i) => i.getAttribute("aria-invalid") === "true" &&
		!!document.getElementById(i.getAttribute("aria-describedby"))?.matches(".row-says:not([hidden])"))`); !slices.Equal(bad, []bool{false, true, false, true, false}) {
		t.Errorf("rows that say they are wrong: %v", bad)
	}
	p.enterCell("readings", 2, "a", "2,620")
	p.enterCell("readings", 4, "a", "2,630")
	p.holds("reading", "readings", []string{"2,600", "2,620", "2,610", "2,630", ""}, "2,600; 2,620; 2,610; 2,630")
	if got := strings.Join(says(), ""); got != "" {
		t.Errorf("still wrong: %q", got)
	}
}

// editing gives one of the browser's own commands for what is selected.
func (p *page) editing(name string) {
	p.Helper()
	command(p, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeRawKeyDown, Commands: []string{name}})
	command(p, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyUp})
}

// paste pastes a text over what an input holds.
func (p *page) paste(selector, text string) {
	p.Helper()
	js[bool](p, `(() => {
		const from = document.createElement("textarea");
		from.id = "from";
		from.value = %s;
		document.body.append(from);
		from.select();
		return true;
	})()`, quoted(text))
	p.editing("copy")
	js[bool](p, `(document.getElementById("from").remove(), document.querySelector(%s).select(), true)`, quoted(selector))
	p.editing("paste")
	p.settle()
}

// Line ends part numbers, wherever they are pasted; an input would drop them.
func TestPaste(t *testing.T) { // not beside other tests: there is one clipboard
	p := open(t, desk, "reading/")
	p.ready()
	list := []string{"2600", "2620", "2610", ""}
	p.paste("#readings", "2600\n2620\n2610\n")
	p.holds("reading", "readings", list, "2600; 2620; 2610")
	p.enter("readings", "1 psi")
	p.paste(cell("readings", 1, "a"), "2600\n2620\n2610")
	p.holds("reading", "readings", list, "2600; 2620; 2610")
	p.paste("#readings", "2,600 psi; 2,620 psi")
	p.holds("reading", "readings", []string{"2,600 psi", "2,620 psi", ""}, "2,600 psi; 2,620 psi")
	p.paste("#low", "2,600\n2,620")
	if got := p.value("#low"); got != "2,600; 2,620" || p.standing() != "stale" {
		t.Errorf("two numbers pasted into one field became %q, %s", got, p.standing())
	}
	p.paste("#low", "2,680 psi")
	if got := p.value("#low"); got != "2,680 psi" || p.standing() != "current" {
		t.Errorf("a number pasted became %q, %s", got, p.standing())
	}
}
