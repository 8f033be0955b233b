package site

import (
	"html"
	"strings"
	"testing"
	"testing/fstest"

	"plainlift/calc"
	"plainlift/calc/chart"
	"plainlift/calc/unit"
)

// tiny is a book of one worksheet, with everything in it that could be taken for
// markup.
var tiny = calc.Book{{
	ID: "tiny", Title: "Is <this> & that?", Menu: "<tiny>",
	Fields: []calc.Field{
		{ID: "p", Label: "A <b>", Noun: "a", Hint: "so & so", Kind: unit.Pressure, Example: "100 psi"},
		{ID: "many", Label: "Many", Noun: "many", Hint: "x", Shape: calc.Pairs, Kind: unit.Thickness, With: unit.Count, Row: "One", RowTo: "Two", Example: "0.010 in : 2", More: true},
	},
	Figures:  []calc.Figure{{ID: "twice", Label: "Twice <x>", Kind: unit.Pressure}, {ID: "late", Label: "Late", Place: calc.More}},
	Verdicts: []calc.Verdict{{Key: "ok", Head: "<head>", Sentence: "It is {twice}."}},
	Compute: func(in *calc.In, out *calc.Out) {
		out.Set("twice", 2*in.SI("p"))
		out.None("late", "<not yet>")
		out.Verdict("ok")
		out.Picture(&chart.Chart{ID: "picture", Title: "<svg>"})
	},
}}

func TestWorksheetPage(t *testing.T) {
	compiled := map[string][]byte{"plainlift.wasm": []byte("1")}
	files, err := Render(fstest.MapFS{
		"index.md": {Data: []byte("---\ntitle: Home\ndescription: d\n---\n\nText.\n")},
		"tiny.md":  {Data: []byte("---\nworksheet: tiny\ndescription: what & why\n---\n\n## More\n\n{tiny.twice}\n")},
	}, tiny, compiled, "")
	if err != nil {
		t.Fatal(err)
	}
	assets, err := readAssets(compiled)
	if err != nil {
		t.Fatal(err)
	}
	page := string(files["tiny/index.html"])
	for _, want := range []string{
		`<title>Is &lt;this&gt; &amp; that? · Plainlift</title>`,
		`<output id="fig-twice" aria-live="off"><data value="1.37895145863`,
		`>200 psi</data>`,
		`<data value="">&lt;not yet&gt;</data>`,
		`With the example&#39;s numbers: it is 200 psi.`,
		`<input id="p" name="p" type="text" inputmode="decimal"`,
		`value="0.010 : 2"`,
		`aria-describedby="hint-p error-p note-p"`,
		`href="../` + assets.folder + `style.css"`,
		`<option selected>psi</option>`,
		`&lt;head&gt;`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
	for _, never := range []string{"<this>", "<head>\"", "A <b>", "<not yet>", "<x>", "<tiny>"} {
		if strings.Contains(page, never) {
			t.Errorf("the page has the markup %s", never)
		}
	}
	if home := string(files["index.html"]); !strings.Contains(home, `href="`+assets.folder+`style.css"`) || !strings.Contains(home, html.EscapeString("<tiny>")) {
		t.Error("the home page's links are not relative to it, or its menu is not complete")
	}
	for _, name := range []string{"style.css", "page.js", "worker.js", "plainlift.wasm"} {
		if len(files[assets.folder+name]) == 0 {
			t.Errorf("%s is not written", name)
		}
	}
}

func TestContentErrors(t *testing.T) {
	page := func(front string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("---\n" + front + "\n---\n\nx\n")}
	}
	tests := []struct {
		name    string
		content fstest.MapFS
		says    string
	}{
		{"a worksheet without a page", fstest.MapFS{"index.md": page("title: Home\ndescription: d")}, `no page names the worksheet "tiny"`},
		{"an unknown worksheet", fstest.MapFS{"index.md": page("worksheet: other\ndescription: d"), "tiny.md": page("worksheet: tiny\ndescription: d")}, `"other"`},
		{"a page without a title", fstest.MapFS{"index.md": page("description: d"), "tiny.md": page("worksheet: tiny\ndescription: d")}, "title"},
	}
	for _, test := range tests {
		if _, err := Render(test.content, tiny, nil, ""); err == nil || !strings.Contains(err.Error(), test.says) || !strings.HasPrefix(err.Error(), "content") {
			t.Errorf("%s: %v", test.name, err)
		}
	}
}

// The folder's name follows from what is in it, and from nothing else.
func TestAssetsVersion(t *testing.T) {
	of := func(files ...string) string {
		all := map[string][]byte{}
		for i := 0; i < len(files); i += 2 {
			all[files[i]] = []byte(files[i+1])
		}
		return version(all)
	}
	same := of("a.js", "1", "b.js", "2")
	if again := of("b.js", "2", "a.js", "1"); again != same || len(same) != 12 {
		t.Errorf("the same files are %q and %q", same, again)
	}
	for _, other := range []string{of("a.js", "1"), of("a.js", "1", "b.js", "3"), of("a.js", "1b.js", "b.js", "2"), of("a.js", "1", "c.js", "2")} {
		if other == same {
			t.Error("other files have the same version")
		}
	}
}

func TestPageOfItsOwnKind(t *testing.T) {
	_, err := Render(fstest.MapFS{
		"index.md": {Data: []byte("---\nworksheet: tiny\ndescription: d\n---\n")},
		"own.md":   {Data: []byte("---\ntitle: Own\ndescription: d\npage: no-such\n---\n")},
	}, tiny, nil, "")
	if err == nil || !strings.Contains(err.Error(), "content/own.md") || !strings.Contains(err.Error(), "no-such.js") {
		t.Errorf("a page of a kind that is none: %v", err)
	}
}
