//go:build browser

package browser

import (
	"encoding/json"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// quoted is a text as JavaScript writes it.
func quoted(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err)
	}
	return string(b)
}

// typeInto replaces what stands in an input, as typing after "select all" does.
func (p *page) typeInto(selector, text string) {
	p.Helper()
	js[bool](p, `(() => {
		const input = document.querySelector(%s);
		for (let d = input.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
		input.focus();
		input.select();
		return document.activeElement === input;
	})() || (() => { throw new Error("cannot be focused: " + %[1]s) })()`, quoted(selector))
	if text == "" {
		p.do(chromedp.KeyEvent(kb.Backspace))
		return
	}
	command(p, input.InsertText, input.InsertTextParams{Text: text})
}

// enter types into the named input of a field and waits for the answer.
func (p *page) enter(field, text string) {
	p.Helper()
	p.typeInto(`[name="`+field+`"]`, text)
	p.settle()
}

// choose picks an option of a select.
func (p *page) choose(selector, value string) {
	p.Helper()
	js[bool](p, `(() => {
		const select = document.querySelector(%s);
		select.value = %s;
		if (select.value !== %[2]s) throw new Error("no such option: " + %[2]s);
		select.dispatchEvent(new Event("input", { bubbles: true }));
		select.dispatchEvent(new Event("change", { bubbles: true }));
		return true;
	})()`, quoted(selector), quoted(value))
}

// click presses the mouse on the middle of an element, which must be there to
// be hit.
func (p *page) click(selector string) {
	p.Helper()
	at := js[[]float64](p, `(() => {
		const node = document.querySelector(%s);
		if (!node) throw new Error("not there: " + %[1]s);
		node.scrollIntoView({ block: "center", behavior: "instant" });
		const box = node.getClientRects()[0];
		if (!box) throw new Error("not shown: " + %[1]s);
		const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
		const hit = document.elementFromPoint(x, y);
		if (!node.contains(hit)) throw new Error(%[1]s + " is covered by " + (hit && hit.outerHTML.slice(0, 80)));
		return [x, y];
	})()`, quoted(selector))
	p.do(chromedp.MouseClickXY(at[0], at[1]))
}

// finger puts a finger on the screen, moves it, or takes it away.
func (p *page) finger(does input.DispatchTouchEventType, x, y float64) {
	p.Helper()
	points := []*input.TouchPoint{}
	if does != input.DispatchTouchEventTypeTouchEnd {
		points = append(points, &input.TouchPoint{X: x, Y: y})
	}
	command(p, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: does, TouchPoints: points})
}

// press presses keys one after the other.
func (p *page) press(keys ...string) {
	p.Helper()
	for _, key := range keys {
		p.do(chromedp.KeyEvent(key))
	}
}

// text is the text of an element as a reader sees it: spaces and line ends as
// one space, while a thin space inside a number stays.
func (p *page) text(selector string) string {
	p.Helper()
	return js[string](p, `(document.querySelector(%s)?.textContent ?? "").replace(/[ \t\r\n]+/g, " ").trim()`, quoted(selector))
}

// value is what stands in an input or select.
func (p *page) value(selector string) string {
	p.Helper()
	return js[string](p, `document.querySelector(%s).value`, quoted(selector))
}

// attribute is an attribute's value, "" if it is not there.
func (p *page) attribute(selector, name string) string {
	p.Helper()
	return js[string](p, `document.querySelector(%s)?.getAttribute(%s) ?? ""`, quoted(selector), quoted(name))
}

// seen reports whether an element takes up room and is not hidden.
func (p *page) seen(selector string) bool {
	p.Helper()
	return js[bool](p, `!!document.querySelector(%s)?.checkVisibility({ visibilityProperty: true, opacityProperty: true })`, quoted(selector))
}

// standing is data-state of the answer.
func (p *page) standing() string {
	p.Helper()
	return p.attribute("#answer", "data-state")
}
