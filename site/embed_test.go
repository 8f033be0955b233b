package site

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"plainlift/calc"
)

// kept is what a script needs to reach for to read what is kept on the device.
var kept = regexp.MustCompile(`\b(?:local|session)Storage\b|\bindexedDB\b|\bcaches\b|\bserviceWorker\b|\bcookie\b`)

// keepers are those of the scripts that read what is kept.
func keepers(a *assets, scripts []string) []string {
	var found []string
	for _, name := range scripts {
		if kept.Match(a.files[name]) {
			found = append(found, name)
		}
	}
	return found
}

// all is a script, what it imports, and the parts that its page fetches when they
// are opened, with what those import.
func all(a *assets, script, page string) []string {
	scripts := append([]string{script}, a.imports(script)...)
	for _, m := range regexp.MustCompile(`data-script="([^"]+)"`).FindAllStringSubmatch(page, -1) {
		scripts = append(append(scripts, m[1]), a.imports(m[1])...)
	}
	slices.Sort(scripts)
	return slices.Compact(scripts)
}

// A page in somebody else's frame loads no script that reads what the full pages
// keep, but the one of the units, and names none.
func TestEmbedReadsNothingKept(t *testing.T) {
	files, err := Render(tinySite, tinyBook(), nil, "")
	if err != nil {
		t.Fatal(err)
	}
	a, err := readAssets(nil)
	if err != nil {
		t.Fatal(err)
	}
	framed, full := string(files["embed/tiny/index.html"]), string(files["tiny/index.html"])
	if got := keepers(a, all(a, embedScript, framed)); !slices.Equal(got, []string{"units.js"}) {
		t.Errorf("scripts of a frame that read what is kept: %v", got)
	}
	if units := string(a.files["units.js"]); strings.Count(units, `"plainlift.`) != 1 || !strings.Contains(units, `"plainlift.system"`) || strings.Contains(units, "sessionStorage") {
		t.Error("the script of the units reads more than the units")
	}
	inline := strings.ReplaceAll(framed, `localStorage.getItem("plainlift.system")`, "")
	if found := kept.FindAllString(inline, -1); len(found) > 0 {
		t.Errorf("the frame's page itself reads %v", found)
	}
	// A script that is asked for late is among those that were looked at.
	for _, name := range all(a, embedScript, framed) {
		calls := strings.Count(string(a.files[name]), "import(")
		if want := map[string]int{"worksheet.js": 1}[name]; calls != want {
			t.Errorf("%s imports %d scripts late, not %d", name, calls, want)
		}
	}
	// The full page does read it: the test would see it.
	if got := keepers(a, all(a, sheetScript, full)); !slices.Contains(got, "known.js") || !slices.Contains(got, "store.js") || !slices.Contains(got, "offline.js") {
		t.Errorf("scripts of the full page that read what is kept: %v", got)
	}
	if !strings.Contains(full, "plainlift.known") {
		t.Error("the full page's head keeps no room for offers")
	}
}

func TestEmbedPage(t *testing.T) {
	files, err := Render(tinySite, tinyBook(), nil, "")
	if err != nil {
		t.Fatal(err)
	}
	page := string(files["embed/tiny/index.html"])
	for _, want := range []string{
		`<meta name="robots" content="noindex">`, `<base target="_blank">`, `rel="noopener"`,
		`<a id="full" href="../../tiny/"`, `<h1>Is &lt;this&gt; &amp; that?</h1>`, `id="p" name="p"`, `id="cautions"`, `id="system"`,
		`Plainlift informs; your machine's own manual decides.`, `href="../../other/#`, `data-root="../../"`, `embed.js"`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the frame's page lacks %s", want)
		}
	}
	for _, never := range []string{`class="site"><a`, "<nav", `class="guide"`, `id="offers"`, `id="offline"`, `id="pass"`, "manifest", `href="../other`, `href="#`} {
		if strings.Contains(strings.NewReplacer(`<a href="#" data-t="label">`, "", `<link rel="expect" href="#live"`, "").Replace(page), never) {
			t.Errorf("the frame's page has %s", never)
		}
	}
	if full := string(files["tiny/index.html"]); strings.Contains(full, "noindex") || !strings.Contains(full, `data-embed="../embed/tiny/"`) {
		t.Error("the full page is hidden from search, or does not know its frame")
	}
	if strings.Contains(string(files["sw.js"]), "embed/") {
		t.Error("pages for frames are kept for use without a signal, where no page that frames them is")
	}
}

var tinySite = fstest.MapFS{
	"index.md": {Data: []byte("---\ntitle: Home\ndescription: d\n---\n\nText.\n")},
	"tiny.md":  {Data: []byte("---\nworksheet: tiny\ndescription: what\n---\n\nGuide.\n")},
	"other.md": {Data: []byte("---\nworksheet: other\ndescription: which\n---\n\nGuide.\n")},
}

// tinyBook is the tiny worksheet with another to go on to.
func tinyBook() calc.Book {
	first := *tiny[0]
	first.Next = []calc.Next{{ID: "other", Text: "On"}}
	other := *tiny[0]
	other.ID = "other"
	return calc.Book{&first, &other}
}
