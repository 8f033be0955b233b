package site

import (
	"strings"
	"testing"
)

// 2,610 psi is 179.95… bar: 1 psi = 6894.757293168 Pa exactly by definition.
const reading = `<span class="quoted" data-metric="180 bar">2,610 psi</span>`

func TestQuotes(t *testing.T) {
	for _, c := range []struct{ markdown, want string }{
		{"{twice-over:gauge}", reading},
		{"{twice-over.double}", `<span class="quoted" data-metric="359.9 bar">5,220 psi</span>`},
		{"**{twice-over.share}** more", `<strong><span class="quoted">5 %</span></strong> more`},
		{"{twice-over.verdict}", `<span class="quoted" data-metric="Doubled to 359.9 bar">Doubled to 5,220 psi</span>`},
		{`{twice-over.double gauge="100 bar"}`, `<span class="quoted" data-metric="200 bar">2,901 psi</span>`},
		{`{twice-over.double gauge="1,000"}`, `<span class="quoted" data-metric="137.9 bar">2,000 psi</span>`},
		{`{twice-over.left gauge="2,000 psi"  extra="1,580 lb"}`, `<span class="quoted" data-metric="717 kg">1,580 lb</span>`},
		{"{twice-over:extra}", `<span class="quoted">not known</span>`},
		{"{twice-over:mode}", `<span class="quoted">Plain</span>`},
		{`{twice-over:hidden mode="odd"}`, `<span class="quoted">2 %</span>`},
		{`{twice-over:marks marks="0.015 in : 2,655 psi; 0.025 in : 2,701 psi"}`, `<span class="quoted" data-metric="0.381 mm : 183.1 bar; 0.635 mm : 186.2 bar">0.015 in : 2,655 psi; 0.025 in : 2,701 psi</span>`},
		{"[from {twice-over:gauge}](x/)", `<a href="x/">from ` + reading + `</a>`},
	} {
		want := "<p>" + c.want + "</p>\n"
		if got := parsed(t, c.markdown); got != want {
			t.Errorf("%s gives\n%s, want\n%s", c.markdown, got, want)
		}
	}
}

func TestQuoteInTableAndHeading(t *testing.T) {
	got := parsed(t, "## From {twice-over:gauge}\n\n| a |\n|---|\n| {twice-over:gauge} |\n")
	for _, want := range []string{">From " + reading + "</h2>", "<td>" + reading + "</td>"} {
		if !strings.Contains(got, want) {
			t.Errorf("%s is missing %s", got, want)
		}
	}
}

func TestQuotedTextIsNotMarkup(t *testing.T) {
	if got, want := parsed(t, "{twice-over.markup}"), `<p><span class="quoted">&lt;b title=&#34;x&#34;&gt;</span></p>`+"\n"; got != want {
		t.Errorf("a figure gives %s, want %s", got, want)
	}
	if got, want := parsed(t, `{twice-over:mode mode="odd"}`), `<p><span class="quoted">R &amp; D &lt;odd&gt;</span></p>`+"\n"; got != want {
		t.Errorf("a field gives %s, want %s", got, want)
	}
	q := quoted{us: "a", metric: `"><script>`}
	if got, want := string(q.html()), `<span class="quoted" data-metric="&#34;&gt;&lt;script&gt;">a</span>`; got != want {
		t.Errorf("the metric text gives %s, want %s", got, want)
	}
}

func TestQuoteErrors(t *testing.T) {
	for _, c := range []struct{ quote, want string }{
		{"{thrice.double}", `{thrice.double}: no worksheet "thrice"`},
		{"{twice-over.triple}", `{twice-over.triple}: twice-over has no figure "triple"`},
		{"{twice-over:double}", `{twice-over:double}: twice-over has no field "double"`},
		{"{twice-over.left}", `{twice-over.left}: figure "left" does not exist for these numbers: needs extra`},
		{"{twice-over:hidden}", `{twice-over:hidden}: field "hidden" does not bear on this answer`},
		{`{twice-over.double speed="2"}`, `{twice-over.double speed="2"}: twice-over has no field "speed"`},
		{`{twice-over.double gauge="two"}`, `{twice-over.double gauge="two"}: field "gauge": `},
		{`{twice-over.double gauge="0"}`, `{twice-over.double gauge="0"}: field "gauge": Must be above 0 psi`},
		{`{twice-over.double gauge=""}`, `{twice-over.double gauge=""}: field "gauge": Enter a value`},
		{`{twice-over.double mode="<i>"}`, `{twice-over.double mode="<i>"}: field "mode": `},
		{`{twice-over.double gauge="5 bar" extra="1 kg"}`, `{twice-over.double gauge="5 bar" extra="1 kg"}: field "gauge": Too low for that`},
		{`{twice-over.double gauge="1" gauge="2"}`, `{twice-over.double gauge="1" gauge="2"}: "gauge" is changed twice`},
		{"{plain text}", "{plain text}: not understood"},
		{"{}", "{}: not understood"},
		{`{twice-over.double gauge="100 bar}`, "a quote has no } on its line"},
		{"{twice-over.double\ngauge=\"100 bar\"}", "a quote has no } on its line"},
	} {
		got := refused(t, front+"First line,\nsecond with "+c.quote+" in it.\n")
		if want := "content/x.md:5: " + c.want; !strings.HasPrefix(got, want) {
			t.Errorf("%s: error %q, want %q", c.quote, got, want)
		}
	}
}
