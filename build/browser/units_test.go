//go:build browser

package browser

import (
	"maps"
	"slices"
	"strconv"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// controls are the texts of everything in the fields: inputs, signs, choosers.
func (p *page) controls() []string {
	p.Helper()
	return js[[]string](p, `[...document.querySelectorAll("#fields [data-field]")].flatMap((f) =>
		[...f.querySelectorAll("input, select")].map((i) => f.dataset.field + " " + i.className + " " + i.value))`)
}

// addressed waits until the address holds the answer's link.
func (p *page) addressed(want []calc.Pair) {
	p.Helper()
	p.until(`location.hash.includes("end=1")`)
	js[bool](p, `new Promise((done) => setTimeout(done, 450, true))`) // what is due is written
	got := js[[]calc.Pair](p, `[...new URLSearchParams(location.hash.slice(1))].map(([Key, Value]) => ({ Key, Value }))`)
	if !slices.Equal(got, want) {
		p.Errorf("the address holds %v, want %v", got, want)
	}
}

// system switches the units of the site.
func (p *page) system(name string) {
	p.Helper()
	p.choose("#system", name)
	p.until(`document.getElementById("answer").getAttribute("aria-busy") === "false"`)
	p.checked()
}

// values are the SI values of all figures that are numbers.
func values(figures map[string]shown) map[string]string {
	v := map[string]string{}
	for id, f := range figures {
		if _, err := strconv.ParseFloat(f.Value, 64); err == nil {
			v[id] = f.Value
		}
	}
	return v
}

// To metric and back, every figure keeps its value, the link its text and the
// fields what was typed.
func TestUnitsThereAndBack(t *testing.T) {
	for i, c := range cases() {
		t.Run(c.worksheet+strconv.Itoa(i), func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(c.worksheet))
			for _, typed := range c.typed {
				p.enter(typed[0], typed[1])
			}
			p.checked()
			us := worksheets.All.Checked(c.worksheet, c.own(), unit.US)
			p.addressed(us.Link)
			figures, controls := p.figures(), p.controls()

			p.system("metric")
			p.matches(worksheets.All.Checked(c.worksheet, calc.FromLink(us.Link), unit.Metric))
			p.addressed(us.Link)
			if len(values(figures)) < 3 || !maps.Equal(values(p.figures()), values(figures)) {
				t.Errorf("values in US %v, in metric %v", values(figures), values(p.figures()))
			}
			if slices.Equal(p.controls(), controls) {
				t.Error("the fields do not follow the units")
			}

			p.system("us")
			p.matches(us)
			p.addressed(us.Link)
			if !maps.Equal(p.figures(), figures) {
				t.Errorf("figures were %v, are %v", figures, p.figures())
			}
			if got := p.controls(); !slices.Equal(got, controls) {
				t.Errorf("the fields held %q, hold %q", controls, got)
			}
		})
	}
}

// A text that cannot be read stays through the switch; one typed in metric is
// what counts from then on.
func TestUnitsWhileTyping(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.enter("reading", "26x0")
	p.enter("lift", "640 kg")
	p.system("metric")
	if got := p.value("#reading"); got != "26x0" || p.standing() != "stale" {
		t.Errorf("the half-typed reading became %q, the answer is %s", got, p.standing())
	}
	if p.value("#unit-reading") != "psi" || p.value("#lift") != "640" || p.value("#unit-lift") != "kg" {
		t.Errorf("not as it should stand\n%s", p.state())
	}
	p.enter("reading", "181 bar")
	own := calc.Entries{"reading": {Text: "181 bar", Own: true}, "lift": {Text: "640 kg", Own: true}}
	p.matches(worksheets.All.Evaluate("short", own, unit.Metric))
	p.system("us")
	p.matches(worksheets.All.Evaluate("short", own, unit.US))
	if got := p.value("#unit-reading"); got != "psi" {
		t.Errorf("the reading is still in %s", got)
	}
	if got := p.value("#lift"); got != "640 kg" {
		t.Errorf("the lift capacity was typed as 640 kg, and stands as %q", got)
	}
	p.enter("reading", "2,655")
	own["reading"] = calc.Entry{Text: "2,655", Own: true}
	p.matches(worksheets.All.Evaluate("short", own, unit.US))
}

// Two switches before the calculator answers are as good as none.
func TestUnitsSwitchedInHaste(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "")
	p.enter("reading", "2,655 psi")
	controls := p.controls()
	js[bool](p, `(() => {
		const select = document.getElementById("system");
		for (const to of ["metric", "us", "metric", "us"]) {
			select.value = to;
			select.dispatchEvent(new Event("change", { bubbles: true }));
		}
		return true;
	})()`)
	p.settle()
	p.matches(worksheets.All.Evaluate("short", calc.Entries{"reading": {Text: "2,655 psi", Own: true}}, unit.US))
	if got := p.controls(); !slices.Equal(got, controls) {
		t.Errorf("the fields held %q, hold %q", controls, got)
	}
}

// The choice is remembered for every page, and no US number is seen first.
func TestUnitsRemembered(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, seenScript)
	p.visit("")
	p.system("metric")
	p.matches(worksheets.All.Checked("short", nil, unit.Metric))
	for _, w := range worksheets.All {
		p.visit("safety/")
		p.visit(pageOf(w.ID))
		p.until(`!document.documentElement.dataset.wait`)
		p.checked()
		if got := p.value("#system"); got != "metric" {
			t.Errorf("%s: the units are %s", w.ID, got)
		}
		metric := worksheets.All.Checked(w.ID, nil, unit.Metric)
		p.matches(metric)
		p.neverSaw(exampleOnly(w.ID, metric))
		if p.attribute("html", "data-view") != "example" || js[string](p, `location.hash`) != "" {
			t.Errorf("%s: the example in metric passes for the reader's own\n%s", w.ID, p.state())
		}
	}
}

// Where the browser refuses to remember, the switch works all the same.
func TestUnitsWithoutStorage(t *testing.T) {
	t.Parallel()
	p := tab(t, phone, `Object.defineProperty(window, "localStorage", { get() { throw new DOMException("refused", "SecurityError"); } });`)
	p.visit("")
	p.system("metric")
	p.matches(worksheets.All.Checked("short", nil, unit.Metric))
}

// Numbers in prose follow the switch, on pages with and without a worksheet.
func TestUnitsInProse(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "taking-a-reading/")
	texts := func() []string {
		return js[[]string](p, `[...document.querySelectorAll("[data-metric]")].map((n) => n.textContent)`)
	}
	found := 0
	for _, address := range append([]string{"method/", "safety/", "checks/", "taking-a-reading/"}, pageOf("short"), pageOf("reading"), pageOf("gain"), pageOf("before-after"), pageOf("shim")) {
		p.visit(address)
		us, metric := texts(), js[[]string](p, `[...document.querySelectorAll("[data-metric]")].map((n) => n.dataset.metric)`)
		found += len(us)
		p.choose("#system", "metric")
		if got := texts(); !slices.Equal(got, metric) {
			t.Errorf("%s in metric: %q, want %q", address, got, metric)
		}
		p.choose("#system", "us")
		if got := texts(); !slices.Equal(got, us) {
			t.Errorf("%s back in US: %q, want %q", address, got, us)
		}
	}
	if found < 10 {
		t.Errorf("%d numbers in all the prose", found)
	}
}
