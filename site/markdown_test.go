package site

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

// counted counts how often the test worksheet is worked out.
var counted int

// testBook is a worksheet made up for these tests: it doubles a pressure.
func testBook() calc.Book {
	return calc.Book{{
		ID: "twice-over", Title: "What is twice as much?", Menu: "Twice",
		Fields: []calc.Field{
			{ID: "gauge", Label: "Gauge shows", Kind: unit.Pressure, Example: "2,610 psi", Range: calc.Pressures},
			{ID: "mode", Label: "How", Shape: calc.Choice, Options: []calc.Option{{ID: "plain", Label: "Plain"}, {ID: "odd", Label: "R & D <odd>"}}},
			{ID: "extra", Label: "Extra", Kind: unit.Load, Empty: "not known", Range: calc.Loads},
			{ID: "hidden", Label: "Hidden", Kind: unit.Percent, Example: "2", Range: calc.Percents, Only: &calc.Only{Field: "mode", In: []string{"odd"}}},
			{ID: "marks", Label: "Marks", Kind: unit.Thickness, With: unit.Pressure, Shape: calc.Pairs, Empty: "none", Range: calc.Thickness, RangeTo: calc.Pressures},
		},
		Figures: []calc.Figure{
			{ID: "double", Label: "Twice & more", Kind: unit.Pressure},
			{ID: "share", Label: "Share", Kind: unit.Percent},
			{ID: "left", Label: "Left", Kind: unit.Load},
			{ID: "markup", Label: "Markup", Round: calc.Words},
		},
		Verdicts: []calc.Verdict{{Key: "own", Head: "Doubled to {double}", Sentence: "{gauge} doubled."}, {Key: "example", Head: "Not yours", Sentence: "Enter your own."}},
		Compute: func(in *calc.In, out *calc.Out) {
			counted++
			if in.Has("extra") && in.SI("gauge") < 1e6 {
				out.Problem("gauge", "Too low for that")
			}
			out.Set("double", 2*in.SI("gauge"))
			out.Set("share", 0.05)
			if in.Has("extra") {
				out.Set("left", in.SI("extra"))
			} else {
				out.None("left", "needs extra")
			}
			out.Text("markup", "x", `<b title="x">`)
			if in.Own("gauge") && in.Own("mode") {
				out.Verdict("own")
			} else {
				out.Verdict("example")
			}
		},
	}}
}

const front = "---\ntitle: A page\n---\n" // the Markdown starts on line 4

func parsed(t *testing.T, markdown string) string {
	t.Helper()
	d, err := parseDoc("content/x.md", []byte(front+markdown), testBook())
	if err != nil {
		t.Fatal(err)
	}
	return string(d.HTML)
}

// refused returns the error of a guide, which must have one.
func refused(t *testing.T, src string) string {
	t.Helper()
	_, err := parseDoc("content/x.md", []byte(src), testBook())
	if err == nil {
		t.Fatalf("no error for %q", src)
	}
	return err.Error()
}

func TestFrontMatter(t *testing.T) {
	d, err := parseDoc("content/x.md", []byte("---\ntitle: Why: a guide\ndescription: d\nmenu: m\norder: 3\n---\n\nHello.\n"), testBook())
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]string{"title": "Why: a guide", "description": "d", "menu": "m", "order": "3", "worksheet": ""} {
		if got := d.Front[key]; got != want {
			t.Errorf("%s is %q, want %q", key, got, want)
		}
	}
	if d.HTML != "<p>Hello.</p>\n" {
		t.Errorf("HTML is %q", d.HTML)
	}
}

func TestFrontMatterOfWorksheet(t *testing.T) {
	d, err := parseDoc("content/x.md", []byte("---\r\nworksheet: twice-over\r\n---\r\nHello.\r\n"), testBook())
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Front) != 1 || d.Front["worksheet"] != "twice-over" || d.HTML != "<p>Hello.</p>\n" {
		t.Errorf("front matter is %q, HTML %q", d.Front, d.HTML)
	}
}

func TestFrontMatterErrors(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"", "content/x.md:1: a guide starts with front matter"},
		{"Hello.\n", "content/x.md:1: a guide starts with front matter"},
		{"---\ntitle: A\n", "content/x.md:3: front matter has no closing ---"},
		{"---\ntitle: A\ncolour: red\n---\n", `content/x.md:3: front matter has no key "colour"`},
		{"---\ntitle: A\ntitle: B\n---\n", `content/x.md:3: front matter has "title" twice`},
		{"---\ntitle A\n---\n", `content/x.md:2: front matter wants key: value, not "title A"`},
		{"---\ntitle:\n---\n", `content/x.md:2: front matter wants key: value`},
		{"---\ntitle: A\norder: last\n---\n", `content/x.md:3: order is a whole number, not "last"`},
		{"---\nworksheet: thrice\n---\n", `content/x.md:2: no worksheet "thrice"`},
		{"---\nworksheet: twice-over\ntitle: A\n---\n", "content/x.md:4: the worksheet declares the title"},
		{"---\nworksheet: twice-over\nmenu: A\n---\n", "content/x.md:4: the worksheet declares the menu"},
		{"---\nmenu: A\n---\n", "content/x.md:3: front matter has no title"},
	} {
		if got := refused(t, c.src); !strings.HasPrefix(got, c.want) {
			t.Errorf("%q: error %q, want %q", c.src, got, c.want)
		}
	}
}

func TestMarkdown(t *testing.T) {
	for _, c := range []struct{ markdown, want string }{
		{"## Is it low?\n", `<h2 id="is-it-low">Is it low?</h2>` + "\n"},
		{"[on](../shim/#a=1)\n", `<p><a href="../shim/#a=1">on</a></p>` + "\n"},
		{"1 < 2 & \"3\"\n", "<p>1 &lt; 2 &amp; &quot;3&quot;</p>\n"},
		{"A \\{plain\\} brace, `{code}`.\n", "<p>A {plain} brace, <code>{code}</code>.</p>\n"},
		{"```\n{code} <b>\n```\n", "<pre><code>{code} &lt;b&gt;\n</code></pre>\n"},
		{"| a | b |\n|---|---|\n| 1 | 2 |\n", "<div class=\"table\"><table>\n<thead>\n<tr>\n<th>a</th>\n<th>b</th>\n</tr>\n</thead>\n<tbody>\n<tr>\n<td>1</td>\n<td>2</td>\n</tr>\n</tbody>\n</table></div>\n"},
	} {
		if got := parsed(t, c.markdown); got != c.want {
			t.Errorf("%q gives\n%q, want\n%q", c.markdown, got, c.want)
		}
	}
}

func TestMarkdownErrors(t *testing.T) {
	for _, c := range []struct{ markdown, want string }{
		{"Fine.\n\n# Big\n", "content/x.md:6: headings in a guide start with ##"},
		{"Fine.\n\n<div>x</div>\n", "content/x.md:6: raw HTML is not used"},
		{"Fine,\nthen <b>bold</b>.\n", "content/x.md:5: raw HTML is not used"},
		{"Fine.\n\n```tabel twice-over\n```\n", `content/x.md:6: no block "tabel"`},
	} {
		if got := refused(t, front+c.markdown); !strings.HasPrefix(got, c.want) {
			t.Errorf("%q: error %q, want %q", c.markdown, got, c.want)
		}
	}
}

func TestEveryComplaintIsGiven(t *testing.T) {
	got := refused(t, "---\ncolour: red\n---\n\n{nothing.here}\n\n# Big\n")
	want := []string{"content/x.md:2: ", "content/x.md:3: front matter has no title", "content/x.md:5: ", "content/x.md:7: "}
	lines := strings.Split(got, "\n")
	if len(lines) != len(want) {
		t.Fatalf("errors are %q, want %d of them", lines, len(want))
	}
	for i := range want {
		if !strings.HasPrefix(lines[i], want[i]) {
			t.Errorf("error %d is %q, want it to start %q", i, lines[i], want[i])
		}
	}
}

func TestGuides(t *testing.T) {
	paths, err := filepath.Glob("../content/*.md")
	if err != nil || len(paths) == 0 {
		t.Fatalf("%d guides (%v)", len(paths), err)
	}
	for _, path := range paths {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		d, err := parseDoc("content/"+filepath.Base(path), src, worksheets.All)
		if err != nil {
			t.Error(err)
			continue
		}
		if d.Front["description"] == "" || d.Front["order"] == "" && filepath.Base(path) != "404.md" {
			t.Errorf("%s has no description or no order", path)
		}
	}
}
