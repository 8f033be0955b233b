//go:build browser

package browser

import (
	"encoding/base64"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// busy notes every stretch that the page's thread was blocked for 50 ms or more.
const busy = `window.blocked = []; new PerformanceObserver((list) => list.getEntries().forEach((e) => blocked.push(Math.round(e.duration)))).observe({ type: "longtask" });`

// pasteRows puts rows into the text and has them answered.
func (p *page) pasteRows(text string) {
	p.Helper()
	js[bool](p, `(document.getElementById("text").value = %s, true)`, quoted(text))
	p.click("#read")
}

// dropRows drops a file of these bytes, made by a script.
func (p *page) dropRows(name, bytes string) {
	p.Helper()
	js[bool](p, `(() => { const all = new DataTransfer(); all.items.add(new File([%s], %s));
		document.getElementById("drop").dispatchEvent(new DragEvent("drop", { dataTransfer: all, bubbles: true, cancelable: true })); return true; })()`, bytes, quoted(name))
}

// manyRead waits until all rows are answered and gives the table's cells.
func (p *page) manyRead(rows int) [][]string {
	p.Helper()
	p.until(`document.querySelectorAll("#rows tr").length === %d && document.getElementById("many").getAttribute("aria-busy") === "false"`, rows)
	return js[[][]string](p, `[...document.querySelectorAll("#rows tr")].map((r) => [...r.cells].map((c) => c.textContent))`)
}

// refused waits for what is wrong, in words.
func (p *page) refused(says string) {
	p.Helper()
	p.until(`!document.getElementById("wrong").hidden && document.getElementById("wrong").textContent.includes(%s)`, quoted(says))
}

// Three rows are pasted, one of them wrong; the rows can be sorted, and each
// leads to its own page with its numbers.
func TestManyPasted(t *testing.T) {
	for _, s := range []screen{phone, desk} {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := open(t, s, "many/")
			p.pasteRows("machine\treadings\tscale (psi)\tgrade\tlow\thigh\n<b>red</b>\t2,735\t4000\tA\t2680\t2790\nblue\t26x0\t4000\tA\t2680\t2790\ngreen\t2,500\t4000\tA\t2680\t2790\n")
			rows := p.manyRead(3)
			want := worksheets.All.Evaluate("reading", own("readings", "2500", "grade", "A", "scale", "4000", "low", "2680", "high", "2790"), unit.US)
			if rows[0][1] != "<b>red</b>" || rows[2][2] != want.Verdict.Head || rows[2][4] != want.Figure("mean").Text || !strings.Contains(rows[1][2], "not a number") {
				t.Errorf("%q", rows)
			}
			if got := p.text("#said"); got != "3 of 3 rows are done. 1 has an error." {
				t.Errorf("it says %q", got)
			}
			if !strings.Contains(p.text("#usual"), "Smallest step you can read") || p.seen("#missing") {
				t.Errorf("usual %q", p.text("#usual"))
			}
			names := func() string {
				return js[string](p, `[...document.querySelectorAll("#rows tr")].map((r) => r.cells[1].textContent).join(" ")`)
			}
			p.click("#heading th:nth-of-type(5) button") // the mean
			p.until(`document.querySelector("#heading th:nth-of-type(5)").getAttribute("aria-sort") === "ascending" && document.getElementById("said").textContent.startsWith("Sorted")`)
			p.manyRead(3)
			if got := names(); got != "green <b>red</b> blue" {
				t.Errorf("ascending: %s", got)
			}
			p.click("#heading th:nth-of-type(5) button")
			p.until(`document.querySelector("#heading [aria-sort=descending]") && document.getElementById("said").textContent.includes("downwards")`)
			p.manyRead(3)
			if got := names(); got != "<b>red</b> green blue" {
				t.Errorf("descending: %s", got)
			}
			if wide := js[int](p, `document.documentElement.scrollWidth`); wide > int(s.width) {
				t.Errorf("%d px wide", wide)
			}
			if n := js[int](p, `document.querySelectorAll("#many-picture svg text").length`); n < 4 {
				t.Errorf("%d texts in the picture", n)
			}
			js[bool](p, `(document.querySelector("#rows tr:nth-child(2) a").click(), true)`)
			p.until(`location.pathname.endsWith("/reading/") && document.getElementById("head").textContent === %s`, quoted(want.Verdict.Head))
		})
	}
}

// A file that leaves the gauge out asks for it once; with semicolons its commas
// are decimal commas.
func TestManyMetric(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "many/")
	p.choose("#system", "metric")
	p.dropRows("a.csv", `"\ufeffMaschine;reading (bar);scale;low;high\r\nA;182,5;280;184,8;192,4\r\nB;188,125;280;184,8;192,4\r\n"`)
	rows := p.manyRead(2)
	if wrong := rows[0][2]; !strings.Contains(wrong, "“Class or grade printed on the dial” is not given") {
		t.Errorf("without a grade: %q", wrong)
	}
	p.choose("#once-grade", "1.6")
	p.until(`document.getElementById("said").textContent === "2 of 2 rows are done."`)
	rows = p.manyRead(2)
	for i, reading := range []string{"182.5", "188.125"} {
		want := worksheets.All.Evaluate("reading", own("readings", reading, "grade", "1.6", "scale", "280", "low", "184.8", "high", "192.4"), unit.Metric)
		if rows[i][2] != want.Verdict.Head || rows[i][3] != want.Figure("mean").Text {
			t.Errorf("row %d: %q, want %q", i, rows[i], want.Verdict.Head)
		}
	}
	if got := p.text("#taken"); !strings.Contains(got, "decimal comma") || !strings.Contains(got, "“reading (bar)” is taken as readings") {
		t.Errorf("taken: %q", got)
	}
	p.choose("#system", "us")
	p.until(`[...document.querySelectorAll("#rows td")].some((c) => c.textContent.endsWith(" psi"))`)
}

// A paste that the box would take long to show is taken as it is, and is there
// to be answered again.
func TestManyPastedLong(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "many/")
	p.ready()
	js[bool](p, `(() => { const data = new DataTransfer();
		data.setData("text", "machine,readings,scale,grade,low,high\n" + "a,2600,4000,Grade B,2680,2790\n".repeat(3000));
		document.getElementById("text").dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true })); return true; })()`)
	const all = `document.getElementById("said").textContent === "3,000 of 3,000 rows are done." && document.getElementById("many").getAttribute("aria-busy") === "false"`
	p.until(all)
	if got := p.text("#taken"); !strings.Contains(got, "does not show so much") {
		t.Errorf("it says %q", got)
	}
	js[bool](p, `(document.getElementById("said").textContent = "", true)`)
	p.click("#read")
	p.until(all)
}

// Ten thousand rows leave the page free, can be stopped half way, and go out as
// another program reads them, each as Evaluate has it.
func TestManyRows(t *testing.T) {
	p := tab(t, desk, takeFiles, busy)
	p.visit("many/")
	var text strings.Builder
	text.WriteString("machine,readings,scale,grade,low,high\n")
	reading := func(i int) string { return fmt.Sprintf("%d; %d", 2500+i*7%300, 2500+i*7%300+i%5*10) }
	const n = 10_000
	for i := range n {
		fmt.Fprintf(&text, "\"=m, %d\",%s,4000,B,2680,2790\n", i, reading(i))
	}
	p.ready()
	js[bool](p, `(window.rows = %s, blocked.length = 0, true)`, quoted(text.String()))
	p.dropRows("many.csv", "rows")
	p.until(`document.getElementById("progress").value > 0.1`)
	p.click("#stop")
	p.until(`document.getElementById("said").textContent.startsWith("Stopped: ")`)
	if !p.seen("#results") {
		t.Error("what was answered is not shown")
	}
	js[bool](p, `(blocked.length = 0, true)`)
	p.click("#run")
	for tenth := 1; tenth < 10; tenth++ { // a busy machine is given time for each part
		p.until(`document.getElementById("progress").value > %d / 10 || document.getElementById("progress").hidden`, tenth)
	}
	p.until(`document.getElementById("said").textContent === "10,000 of 10,000 rows are done."`)
	p.until(`document.getElementById("seen").textContent === "100 of 10,000 rows"`)
	p.click("#further")
	p.until(`document.getElementById("seen").textContent === "200 of 10,000 rows"`)
	p.manyRead(200)
	p.click("#save")
	p.until(`saved.length === 1`)
	stretches := js[[]int](p, `blocked`)
	t.Logf("the page was blocked for %v ms", stretches)
	if len(stretches) > 0 && slices.Max(stretches) > 250 { // on a machine that does much else
		t.Errorf("blocked for %v ms", stretches)
	}
	if progress := js[int](p, `watched.heard.filter((m) => m.type === "many-progress").length`); progress < 3 || progress > n/10 {
		t.Errorf("%d messages of progress", progress)
	}

	file := js[[]struct{ Name, Data string }](p, `saved`)[0]
	data, err := base64.StdEncoding.DecodeString(file.Data)
	if err != nil || !strings.HasPrefix(file.Name, "plainlift-reading-2") {
		t.Fatalf("%s: %v", file.Name, err)
	}
	rest, marked := strings.CutPrefix(string(data), "\uFEFF")
	rows, err := csv.NewReader(strings.NewReader(rest)).ReadAll()
	if err != nil || !marked || len(rows) != n+1 {
		t.Fatalf("%d rows, byte-order mark %v: %v", len(rows), marked, err)
	}
	at := func(name string) int { return slices.Index(rows[0], name) }
	for i := 0; i < n; i += 997 {
		row := rows[i+1]
		want := worksheets.All.Evaluate("reading", own("readings", reading(i), "scale", "4000", "grade", "B", "low", "2680", "high", "2790", "oil", "", "rpm", ""), unit.US)
		if row[0] != fmt.Sprintf("'=m, %d", i) || row[1] != reading(i) || row[at("answer")] != want.Verdict.Head || row[at("verdict")] != want.Verdict.ID || row[at("error")] != "" {
			t.Errorf("row %d: %q", i, row)
		}
		if link := p.URL + folder + "reading/#" + fragment(want.Link); row[at("link")] != link {
			t.Errorf("row %d: link %s, want %s", i, row[at("link")], link)
		}
		for _, figure := range []struct {
			column, id string
			kind       unit.Kind
		}{{"mean (psi)", "mean", unit.Pressure}, {"lo (psi)", "lo", unit.Pressure}, {"p_below (%)", "p_below", unit.Percent}} {
			got, err := strconv.ParseFloat(row[at(figure.column)], 64)
			si, _ := strconv.ParseFloat(want.Figure(figure.id).Value, 64)
			if exact := figure.kind.Shown(unit.US).FromSI(si); err != nil || math.Abs(got-exact) > 1e-9*math.Abs(exact) {
				t.Errorf("row %d, %s: %v, want %v (%v)", i, figure.id, got, exact, err)
			}
		}
	}
}

// What is no table is refused in words, and the next file is taken.
func TestManyRefuses(t *testing.T) {
	t.Parallel()
	p := open(t, phone, "many/")
	p.dropRows("a.png", `Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13)`)
	p.refused("This is no table of text")
	p.dropRows("big.csv", `new Uint8Array(25e6).fill(65)`)
	p.refused("25 MB; up to 20 MB")
	p.pasteRows("   ")
	p.refused("There is nothing in it")
	p.pasteRows("readings,scale\n")
	p.refused("Only the line that names the columns")
	p.pasteRows("readings (kg),scale\n1,2\n")
	p.refused("its unit must be psi, bar")
	p.pasteRows("machine,owner\n1,2\n")
	p.refused("No column has a name")
	p.pasteRows("readings,scale,grade\n2600,4000,B\n")
	p.manyRead(1)
	if p.seen("#wrong") {
		t.Errorf("still wrong: %s", p.text("#wrong"))
	}
}

// The example file of every worksheet is taken for that worksheet and answered.
func TestManyExample(t *testing.T) {
	p := tab(t, phone, takeFiles)
	p.visit("many/")
	for i, w := range worksheets.All {
		p.choose("#worksheet", w.ID)
		p.click("#example")
		p.until(`saved.length === %d`, i+1)
		p.dropRows("e.csv", fmt.Sprintf(`Uint8Array.from(atob(saved[%d].Data), (c) => c.charCodeAt(0))`, i))
		p.until(`document.getElementById("said").textContent === "2 of 2 rows are done." && document.querySelectorAll("#rows tr").length === 2`)
		if got := p.value("#worksheet"); got != w.ID {
			t.Errorf("%s: taken for %s", w.ID, got)
		}
		p.pasteRows(" ") // clears what is said
		p.refused("nothing")
	}
}

// A calculator that never arrives is said in words.
func TestManyWithoutCalculator(t *testing.T) {
	t.Parallel()
	p := tab(t, phone)
	p.expect("plainlift.wasm")
	p.expect("404")
	p.expect("request failed")
	p.instead("assets/plainlift.wasm", text("text/plain", "nothing"))
	p.visit("many/")
	p.pasteRows("readings,scale,grade\n2600,4000,B\n")
	p.refused("The calculator did not arrive")
}
