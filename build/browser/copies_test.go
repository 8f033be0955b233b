//go:build browser

package browser

import (
	"encoding/base64"
	"reflect"
	"strings"
	"testing"
)

// oddNotes has what a table could stumble over.
const oddNotes = "=1+1, \"quoted\"; a, comma\n'=apostrophe\n@home\t-3 °C – ü"

// download presses a button and returns the file that it gives.
func (p *page) download(act string) string {
	p.Helper()
	n := js[int](p, `saved.length`)
	p.click(`[data-act="` + act + `"]`)
	p.until(`saved.length === %d`, n+1)
	p.saysOfKept("The copy is with your downloads")
	data, err := base64.StdEncoding.DecodeString(js[string](p, `saved.at(-1).Data`))
	if err != nil {
		p.Fatal(err)
	}
	return string(data)
}

// takeIn chooses a file, as a reader does.
func (p *page) takeIn(text, name string) {
	p.Helper()
	js[bool](p, `kept.choose(%s, %s)`, quoted(text), quoted(name))
}

// What was downloaded, in either form, brings back what was deleted.
func TestCopyAndBack(t *testing.T) {
	for _, form := range []string{"json", "csv"} {
		t.Run(form, func(t *testing.T) {
			t.Parallel()
			p := stocked(t, phone)
			for _, notes := range []string{oddNotes, "'tis", "''", "=1+1", "+1", "-x", "@x", "\"", " padded "} {
				js[bool](p, `kept.put("records", {...%s, id: "k" + Math.random().toString(36).slice(2).padEnd(10, "0"), notes: %s, known: [{quantity: "lift", label: "Lift", text: "1600 lb", shown: "1,600 lb"}], figures: [{label: "a", text: "1"}]})`, someRecord, quoted(notes))
			}
			js[bool](p, `kept.put("machines", {...%s, id: "kmachine2", name: "=Red, loader", notes: "none", values: [{quantity: "lift", label: "Lift", text: "1600 lb", shown: "1,600 lb"}]})`, someMachine)
			p.machines()
			before := p.kept()
			file := p.download(form)
			if form == "csv" && (!strings.HasPrefix(file, "\uFEFFmachine,date,") || strings.Count(file, "'=Red") != 1 || !strings.Contains(file, p.URL+folder+"#v=1&reading=2600+psi")) {
				t.Errorf("the table: %.500s", file)
			}
			p.click(`[data-act="everything"]`)
			p.decide("Delete everything?", "yes")
			p.saysOfKept("Deleted: everything")
			p.takeIn(file, "copy."+form)
			p.saysOfKept("Taken in: 12 added.")
			if after := p.kept(); !reflect.DeepEqual(before, after) {
				t.Errorf("before: %+v\nafter:  %+v", before, after)
			}
			p.takeIn(file, "copy."+form)
			p.saysOfKept("Taken in: 12 the same already.")
		})
	}
}

// A file that differs is asked about, each or all at once; what is called off
// changes nothing.
func TestCopyThatDiffers(t *testing.T) {
	t.Parallel()
	p := stocked(t, desk)
	js[bool](p, `kept.put("records", {...%s, id: "krecord02", notes: "second"})`, someRecord)
	p.machines()
	file := strings.NewReplacer("from before", "from the file", `"second"`, `"second of the file"`).Replace(p.download("json"))
	notes := func(want ...string) {
		t.Helper()
		got := map[string]bool{}
		k := p.kept()
		for _, r := range k.Records {
			got[r.Notes] = true
		}
		for _, w := range want {
			if !got[w] || len(k.Records) != len(want) {
				t.Errorf("kept %v, want %v", got, want)
			}
		}
	}
	p.takeIn(file, "copy.json")
	p.decide("1 of 2 that differ", "file")
	p.decide("2 of 2 that differ", "")
	p.saysOfKept("Nothing was taken in")
	notes("from before", "second")

	p.takeIn(file, "copy.json")
	p.decide("1 of 2 that differ", "file")
	p.decide("2 of 2 that differ", "mine")
	p.saysOfKept("Taken in: 1 replaced, 1 left as they were here, 1 the same already.")
	notes("from the file", "second")

	p.takeIn(strings.ReplaceAll(file, "from the file", "again another"), "copy.json")
	p.until(`document.getElementById("ask").open`)
	p.click("#ask-all")
	p.decide("1 of 2 that differ", "both")
	p.saysOfKept("Taken in: 2 added, 1 the same already.")
	notes("from the file", "second", "again another", "second of the file")

	// A machine kept twice has the file's new records with it.
	p.takeIn(strings.NewReplacer("Blue loader", "Blue one", "krecord02", "krecord99").Replace(file), "copy.json")
	p.decide("One differs", "both")
	p.saysOfKept("Taken in: 2 added, 1 the same already.")
	k := p.kept()
	if len(k.Machines) != 2 {
		t.Fatalf("machines: %+v", k.Machines)
	}
	for _, r := range k.Records {
		for _, m := range k.Machines {
			if m.ID == r.Machine && (m.Name == "Blue one (second)") != (r.ID == "krecord99") {
				t.Errorf("record %s (%s) belongs to %s", r.ID, r.Notes, m.Name)
			}
		}
	}
}

// What is no copy of ours is refused in words, and nothing changes.
func TestCopyRefused(t *testing.T) {
	t.Parallel()
	p := stocked(t, phone)
	whole := func(machine, record string) string {
		return js[string](p, `JSON.stringify({format: "plainlift-records", version: 1, made: "", machines: [{...%s, id: "kmachine7", %s}], records: [{...%s, id: "krecord77", %s}]})`, someMachine, machine, someRecord, record)
	}
	for _, c := range []struct{ name, text, says string }{
		{"cut short", `{"format": "plainlift-records", "vers`, "can't be read as JSON"},
		{"other JSON", `{"format": "something"}`, "no file of records"},
		{"a list", `[1, 2]`, "no file of records"},
		{"a later form", `{"format": "plainlift-records", "version": 2}`, "newer than this page"},
		{"no form", `{"format": "plainlift-records"}`, "does not say of which form"},
		{"more than we know", `{"format": "plainlift-records", "version": 1, "machines": [], "records": [], "photos": []}`, "“photos”"},
		{"a field more", whole("", `weather: "dry"`), "has “weather”, which this version does not know"},
		{"a bad date", whole("", `date: "2026-02-30"`), "a date that is none"},
		{"a bad kind", whole("name: 7", ""), "“name”"},
		{"prototype", strings.Replace(whole("", ""), `"machine":`, `"__proto__":{"x":1},"machine":`, 1), "“__proto__”"},
		{"no list", `{"format": "plainlift-records", "version": 1, "machines": []}`, "no list of records"},
		{"nothing", ``, "nothing in it"},
		{"another table", "a,b\r\n1,2\r\n", "no column “machine”"},
		{"binary", "PK\x03\x04\x00\x00", "no text"},
		{"a table cut short", "machine,date,hours,by,oil temperature,engine speed,notes,page,head,sentence,key figures,link,machine notes,machine numbers,machine id,record id,machine data,record data\r\nBlue,2026-11-02,,,,,,,,,,,,,kmachine7,,{\"values\":[,\r\n", "was changed or cut short"},
	} {
		p.takeIn(c.text, "copy.json")
		p.saysOfKept(c.says)
		if k := p.kept(); len(k.Machines) != 1 || len(k.Records) != 1 {
			t.Fatalf("%s: kept %+v", c.name, k)
		}
		js[bool](p, `(document.getElementById("said").textContent = "", true)`)
	}
	// Too large: by its size alone, before it is read.
	js[bool](p, `(Blob.prototype.text = () => { throw new Error("it was read"); }, kept.choose(new Uint8Array(50_000_000), "copy.json"))`)
	p.saysOfKept("This file has 50 MB")
	if k := p.kept(); len(k.Machines) != 1 || len(k.Records) != 1 {
		t.Errorf("kept %+v", k)
	}
}
