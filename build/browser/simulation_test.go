//go:build browser

package browser

import (
	"slices"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// The closed form is answered at once and checked by a simulation, which a
// keystroke interrupts.
func TestSimulation(t *testing.T) {
	for _, c := range cases() {
		if worksheets.All.Lookup(c.worksheet).Simulate == nil {
			continue
		}
		t.Run(c.worksheet, func(t *testing.T) {
			t.Parallel()
			p := open(t, phone, pageOf(c.worksheet))
			field, last := c.typed[0][0], c.typed[0][1]
			p.enter(field, last)
			p.checked()
			heard := js[[]string](p, `watched.heard.filter((m) => m.type === "answer").map((m) => m.check)`)
			if len(heard) != 2 || heard[0] != "running" || heard[1] != "done" {
				t.Errorf("heard %v", heard)
			}
			p.matches(worksheets.All.Checked(c.worksheet, calc.Entries{field: {Text: last, Own: true}}, unit.US))

			// Two keystrokes, the second while the first is being simulated.
			ms := js[float64](p, `(async () => {
				const input = document.querySelector(%s);
				const type = (text) => {
					input.value = text;
					input.dispatchEvent(new Event("input", { bubbles: true }));
				};
				const heard = (seq, check) => watched.heard.find((m) => m.seq === seq && m.check === check);
				type(%s);
				const first = watched.asked.at(-1).seq;
				while (!heard(first, "running")) await new Promise((go) => setTimeout(go));
				type(%s);
				const second = watched.asked.at(-1);
				if (second.seq === first) throw new Error("the second keystroke waits");
				while (!heard(second.seq, "running")) await new Promise((go) => setTimeout(go));
				if (heard(first, "done")) throw new Error("the first simulation ran to its end");
				return heard(second.seq, "running").at - second.at;
			})()`, quoted(`[name="`+field+`"]`), quoted(last+" "), quoted(last))
			if ms > 1000 {
				t.Errorf("a keystroke during the simulation was answered after %.0f ms", ms)
			}
			p.checked()
			p.matches(worksheets.All.Checked(c.worksheet, calc.Entries{field: {Text: last, Own: true}}, unit.US))
		})
	}
}

// A fault in the simulation is met like one in the answer, and so is one that
// does not end: once more, then the page gives up on those numbers.
func TestSimulationFails(t *testing.T) {
	for name, how := range map[string]string{"a fault": `deadly = e.data.seq`, "no end": `deadly = e.data.seq; silent = true`} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			testSimulationFails(t, how)
		})
	}
}

func testSimulationFails(t *testing.T, how string) {
	p := tab(t, phone, sayingsScript, `{
		const real = window.setTimeout; // 60 s are too long for a test
		window.setTimeout = (act, ms, ...more) => real(act, ms === 60_000 ? 1_500 : ms, ...more);
	}`)
	p.instead("assets/worker.js", dying(how))
	p.visit("reading/")
	p.typeInto(`[name="low"]`, "2,599")
	p.until(`sayings.some((s) => s.Sentence === %s)`, quoted(saysStopped))
	answer := worksheets.All.Evaluate("reading", calc.Entries{"low": {Text: "2,599", Own: true}}, unit.US).Verdict
	n := js[int](p, `sayings[1].Figures`) // the first is the example, said as the page is read
	want := []saying{
		{answer.Head, answer.Sentence, "current", "false", false, n},
		{"Not calculated", saysAgain, "failed", "true", true, n},
		{answer.Head, answer.Sentence, "current", "false", false, n},
		{"Not calculated", saysStopped, "failed", "false", true, n},
	}
	if got := js[[]saying](p, `sayings.slice(1)`); !slices.Equal(got, want) {
		t.Errorf("the page stood as %+v, want %+v", got, want)
	}
	p.enter("low", "2,680")
	p.checked()
	p.matches(worksheets.All.Checked("reading", calc.Entries{"low": {Text: "2,680", Own: true}}, unit.US))
}
