//go:build browser

package browser

import (
	"encoding/base64"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/storage"
)

// record and machine are entries as the page writes them, for putting in by hand.
const (
	someMachine = `{id: "kmachine1", name: "Blue loader", notes: "", values: [], made: "2026-11-01T10:00:00Z", changed: "2026-11-01T10:00:00Z", rev: 1}`
	someRecord  = `{id: "krecord01", machine: "kmachine1", worksheet: "short", title: "Is my relief pressure low?", link: [["v", "1"], ["reading", "2600 psi"], ["end", "1"]],
		date: "2026-11-02", hours: "", by: "", oil: "", rpm: "", notes: "from before", head: "Low", sentence: "Low.", figures: [], known: [],
		made: "2026-11-02T10:00:00Z", changed: "2026-11-02T10:00:00Z", rev: 1}`
)

// stocked opens the page of what is kept with one machine and one record.
func stocked(t *testing.T, s screen, scripts ...string) *page {
	t.Helper()
	p := tab(t, s, append([]string{keptScript, takeFiles}, scripts...)...)
	p.machines()
	js[bool](p, `kept.put("machines", %s)`, someMachine)
	js[bool](p, `kept.put("records", %s)`, someRecord)
	p.machines()
	p.until(`document.querySelectorAll(".job").length === 1`)
	return p
}

// Two tabs: what one does the other shows, and what both edit is asked about.
func TestKeptInTwoTabs(t *testing.T) {
	for _, c := range []struct {
		choice, notes, said string
		records             int
	}{
		{"mine", "from the first", "Saved:", 1},
		{"theirs", "from the second", "Left as the other tab has it.", 1},
		{"both", "from the second", "Saved:", 2},
	} {
		t.Run(c.choice, func(t *testing.T) {
			t.Parallel()
			p := stocked(t, desk)
			q := p.another(desk, keptScript)
			q.machines()
			p.click(`[data-act="edit-record"]`)
			p.typeInto("#record-notes", "from the first")
			q.click(`[data-act="edit-record"]`)
			q.typeInto("#record-notes", "from the second")
			q.click("#edit-form .give button")
			q.saysOfKept("Saved:")
			p.until(`document.querySelector(".job .written").textContent === "from the second"`) // repainted, and what is typed stands
			if p.value("#record-notes") != "from the first" {
				t.Errorf("what was typed is %q", p.value("#record-notes"))
			}
			p.click("#edit-form .give button")
			p.decide("Changed in another tab", c.choice)
			p.saysOfKept(c.said)
			k := p.kept()
			if len(k.Records) != c.records || k.Records[0].Notes != c.notes && k.Records[c.records-1].Notes != c.notes {
				t.Errorf("kept: %+v", k.Records)
			}
			q.until(`document.querySelectorAll(".job").length === %d`, c.records)
		})
	}
	t.Run("deleted there", func(t *testing.T) {
		t.Parallel()
		p := stocked(t, phone)
		q := p.another(phone, keptScript)
		q.machines()
		p.click(`[data-act="edit-record"]`)
		p.typeInto("#record-notes", "still wanted")
		q.click(`[data-act="delete-machine"]`)
		q.decide("Delete “Blue loader”?", "yes")
		q.saysOfKept("Deleted")
		p.until(`document.querySelectorAll(".machine").length === 0`)
		p.click("#edit-form .give button")
		p.decide("Deleted in another tab", "mine")
		p.saysOfKept("Saved:")
		if k := p.kept(); len(k.Records) != 1 || k.Records[0].Notes != "still wanted" || len(k.Machines) != 0 {
			t.Errorf("kept: %+v", k)
		}
		if got := p.text(".machine h2"); got != "Records without a machine" {
			t.Errorf("it stands under %q", got)
		}
	})
}

// What can't be read stands apart and stops nothing; it can be downloaded and deleted.
func TestKeptDamaged(t *testing.T) {
	t.Parallel()
	p := stocked(t, phone)
	js[bool](p, `kept.put("records", {id: "kdamaged1", date: "not a day", notes: "<img src=x onerror=alert(1)>"})`)
	p.machines()
	p.until(`document.getElementById("broken-head").textContent === "One entry can't be read"`)
	if !p.seen(".machine") || !p.seen(".job") {
		t.Error("the good ones are not shown")
	}
	p.click(`[data-act="json"]`)
	p.saysOfKept("What can't be read is not in it")
	p.click(`[data-act="download-broken"]`)
	p.until(`saved.some((f) => f.Name === "plainlift-damaged-entry.json")`)
	if got := js[string](p, `atob(saved.at(-1).Data)`); !strings.Contains(got, "not a day") {
		t.Errorf("downloaded: %s", got)
	}
	p.click(`[data-act="delete-broken"]`)
	p.decide("Delete the damaged entry?", "yes")
	p.saysOfKept("Deleted: the damaged entry.")
	if k := p.kept(); len(k.Records) != 1 || len(k.Machines) != 1 || p.seen("#broken") {
		t.Errorf("kept: %+v", k)
	}
}

// Deleted is deleted: it is no longer in the database, nor among the offers.
func TestKeptDeleted(t *testing.T) {
	t.Parallel()
	p := stocked(t, phone)
	js[bool](p, `kept.put("machines", {...%s, values: [{quantity: "lift", label: "Lift", text: "1600 lb", shown: "1,600 lb"}]})`, someMachine)
	js[bool](p, `kept.put("machines", {...%s, id: "kmachine2", name: "Red loader"})`, someMachine)
	js[bool](p, `kept.put("records", {...%s, id: "krecord02", machine: "kmachine2"})`, someRecord)
	p.machines()
	p.click(`#m-kmachine1 [data-act="work"]`)
	p.saysOfKept("offers the numbers")
	p.click(`#m-kmachine1 [data-act="delete-machine"]`)
	p.until(`document.getElementById("ask-words").textContent.includes("with its one record")`)
	p.decide("Delete “Blue loader”?", "yes")
	p.saysOfKept("Deleted: “Blue loader”")
	if k := p.kept(); len(k.Machines) != 1 || k.Machines[0].Name != "Red loader" || len(k.Records) != 1 || k.Records[0].ID != "krecord02" {
		t.Errorf("kept: %+v", k)
	}
	if got := js[string](p, `sessionStorage.getItem("plainlift.known")`); strings.Contains(got, "1600") {
		t.Errorf("still offered: %s", got)
	}
	p.click(`[data-act="everything"]`)
	p.decide("Delete everything?", "yes")
	p.saysOfKept("Deleted: everything")
	if k := p.kept(); len(k.Machines)+len(k.Records) != 0 || !p.seen("#begin") {
		t.Errorf("kept: %+v", k)
	}
}

// A full device loses nothing that was typed or kept, and offers a file instead.
func TestKeptFull(t *testing.T) {
	for name, script := range map[string]string{
		"at once":           `IDBObjectStore.prototype.put = function () { throw new DOMException("no room", "QuotaExceededError"); };`,
		"at the second one": `IDBObjectStore.prototype.put = ((put) => function (entry) { if (entry.name) throw new DOMException("no room", "QuotaExceededError"); return put.call(this, entry); })(IDBObjectStore.prototype.put);`,
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, keptScript, takeFiles)
			p.visit("")
			p.enter("reading", "2,600")
			p.beginKeeping()
			p.typeInto("#keep-name", "Blue loader")
			p.typeInto("#keep-notes", "long notes")
			js[bool](p, `(() => { %s return true; })()`, script)
			p.click("#keep-save")
			p.until(`document.getElementById("keep-trouble").textContent.includes("no room left")`)
			p.until(`document.getElementById("keep-said").textContent === "Not saved."`)
			if k := p.kept(); len(k.Machines)+len(k.Records) != 0 || p.value("#keep-notes") != "long notes" || p.value("#keep-name") != "Blue loader" {
				t.Errorf("kept %+v, typed %q", k, p.value("#keep-notes"))
			}
			p.click("#keep-file")
			p.until(`saved.length === 1`)
			file := js[string](p, `new TextDecoder().decode(Uint8Array.from(atob(saved[0].Data), (c) => c.charCodeAt(0)))`)
			p.visit("machines/") // where there is room again
			p.painted()
			js[bool](p, `kept.choose(%s, "copy.json")`, quoted(file))
			p.saysOfKept("Taken in: 2 added.")
			if k := p.kept(); len(k.Records) != 1 || k.Records[0].Notes != "long notes" {
				t.Errorf("taken in: %+v", k)
			}
		})
	}
	// The browser's own limit, met by a copy that is too much for it: it is taken in as a whole or not at all.
	t.Run("in truth", func(t *testing.T) {
		t.Parallel()
		p := tab(t, desk, keptScript)
		room := 1e6
		command(p, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: p.URL, QuotaSize: &room})
		p.machines()
		js[bool](p, `kept.put("machines", %s)`, someMachine)
		p.machines()
		js[bool](p, `kept.choose(JSON.stringify({format: "plainlift-records", version: 1, made: "", machines: [], records: Array.from({length: 200}, (_, i) => ({...%s, id: "krecord" + (1000 + i), notes: "x".repeat(19_000)}))}), "copy.json")`, someRecord)
		p.saysOfKept("no room left")
		if k := p.kept(); len(k.Records) != 0 || len(k.Machines) != 1 {
			t.Errorf("%d machines and %d records are kept", len(k.Machines), len(k.Records))
		}
	})
}

// Where the browser refuses the database, the page says so and a file can be had.
func TestKeptRefused(t *testing.T) {
	for name, c := range map[string]struct{ script, says string }{
		"absent":  {`Object.defineProperty(window, "indexedDB", { value: undefined });`, "private window"},
		"throws":  {`Object.defineProperty(window, "indexedDB", { get() { throw new DOMException("refused", "SecurityError"); } });`, "private window"},
		"blocked": {`IDBFactory.prototype.open = () => { const r = {}; setTimeout(() => r.onblocked()); return r; };`, "Close the other tab"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, takeFiles, c.script)
			p.machines()
			p.until(`document.getElementById("trouble").textContent.includes(%s)`, quoted(c.says))
			p.visit("")
			p.enter("reading", "2,600")
			p.click("#keep-part > summary")
			p.until(`document.getElementById("keep-trouble").textContent.includes(%s) && !document.getElementById("keep-file").disabled`, quoted(c.says))
			p.typeInto("#keep-name", "Blue loader")
			p.click("#keep-save")
			p.until(`document.getElementById("keep-said").textContent === "Not saved."`)
			p.click("#keep-file")
			p.until(`saved.length === 1`)
			file, err := base64.StdEncoding.DecodeString(js[string](p, `saved[0].Data`))
			if err != nil || !strings.Contains(string(file), `"2600 psi"`) {
				t.Errorf("the file: %.200s, %v", file, err)
			}
		})
	}
}

// A newer version of the page is let in, and the older one then says what to do.
func TestKeptByANewerPage(t *testing.T) {
	t.Parallel()
	p := stocked(t, desk)
	p.click(`[data-act="edit-record"]`)
	p.typeInto("#record-notes", "typed in the older page")
	q := p.another(desk)
	q.visit("safety/")
	if got := js[string](q, `new Promise((yes) => {
		const request = indexedDB.open("plainlift", 7);
		request.onblocked = () => yes("blocked");
		request.onsuccess = () => (request.result.close(), yes("open"));
	})`); got != "open" {
		t.Errorf("a newer page is %s", got)
	}
	p.click("#edit-form .give button")
	p.until(`document.getElementById("edit-trouble").textContent.includes("newer version")`)
	if p.value("#record-notes") != "typed in the older page" {
		t.Error("what was typed is gone")
	}
}

// Two records of one machine are compared where such are, with the machine's own
// numbers and no example's in their place.
func TestKeptCompared(t *testing.T) {
	t.Parallel()
	p := stocked(t, phone)
	js[bool](p, `kept.put("machines", {...%s, values: [{quantity: "manual highest", label: "Highest", text: "2790 psi", shown: "2,790 psi"}, {quantity: "gauge scale", label: "Dial", text: "5000 psi", shown: "5,000 psi"}]})`, someMachine)
	for i, reading := range []string{"2600", "2710"} {
		js[bool](p, `kept.put("records", {...%s, id: "krecord1%d", date: "2026-11-1%[2]d", known: [{quantity: "pressure now", label: "Gauge shows", text: "%[3]s psi", shown: "%[3]s psi"}]})`, someRecord, i, reading)
	}
	p.machines()
	if got := js[[]string](p, `[...document.querySelectorAll(".compare .before option")].map((o) => o.text)`); fmt.Sprint(got) != "[11 Nov 2026: Low 10 Nov 2026: Low]" {
		t.Errorf("to choose from: %q", got)
	}
	p.click(".compare button")
	p.until(`location.pathname.endsWith("/job/") && !document.documentElement.dataset.wait && document.getElementById("answer").dataset.state === "current"`)
	p.settle()
	for field, want := range map[string]string{"found": "2,600", "left": "2,710", "high": "2,790", "low": "", "scale": "5,000", "trials": "", "same_gauge": "no"} {
		if got := p.value(`[name="` + field + `"]`); got != want && got != want+" psi" {
			t.Errorf("%s holds %q, want %q", field, got, want)
		}
	}
}

// What both records name alike goes along where the machine keeps no number.
func TestKeptComparedAlike(t *testing.T) {
	t.Parallel()
	p := stocked(t, phone)
	for i, reading := range []string{"2600", "2710"} {
		js[bool](p, `kept.put("records", {...%s, id: "krecord1%d", date: "2026-11-1%[2]d", known: [
			{quantity: "pressure now", label: "Gauge shows", text: "%[3]s psi", shown: "%[3]s psi"},
			{quantity: "gauge scale", label: "Dial", text: "6000 psi", shown: "6,000 psi"},
			{quantity: "manual lowest", label: "Lowest", text: "26%[2]d0 psi", shown: "26%[2]d0 psi"},
			{quantity: "gauge grade", label: "Grade", text: "D", shown: "D"}]})`, someRecord, i, reading)
	}
	p.machines()
	p.click(".compare button")
	p.until(`location.pathname.endsWith("/job/") && !document.documentElement.dataset.wait && document.getElementById("answer").dataset.state === "current"`)
	p.settle()
	for field, want := range map[string]string{"found": "2,600", "left": "2,710", "scale": "6,000", "grade": "D", "same_gauge": "yes", "low": "", "high": ""} {
		if got := p.value(`[name="` + field + `"]`); got != want && got != want+" psi" {
			t.Errorf("%s holds %q, want %q", field, got, want)
		}
	}
}
