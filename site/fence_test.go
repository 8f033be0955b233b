package site

import (
	"strings"
	"testing"
)

// tableOf is a guide whose fenced block starts on line 6.
func tableOf(info string, lines ...string) string {
	return "Before.\n\n```" + info + "\n" + strings.Join(lines, "\n") + "\n```\n\nAfter.\n"
}

func TestComputedTable(t *testing.T) {
	got := parsed(t, tableOf("table twice-over",
		"caption: Two < three", "set extra: 1,580 lb", "", "vary gauge: 1,000 psi | 100 bar", "show: double, share"))
	want := `<p>Before.</p>
<div class="table"><table class="computed">
<caption>Two &lt; three</caption>
<thead>
<tr><th scope="col">Gauge shows</th><th scope="col">Twice &amp; more</th><th scope="col">Share</th></tr>
</thead>
<tbody>
<tr><th scope="row"><span class="quoted" data-metric="68.9 bar">1,000 psi</span></th><td><span class="quoted" data-metric="137.9 bar">2,000 psi</span></td><td><span class="quoted">5 %</span></td></tr>
<tr><th scope="row"><span class="quoted" data-metric="100 bar">1,450 psi</span></th><td><span class="quoted" data-metric="200 bar">2,901 psi</span></td><td><span class="quoted">5 %</span></td></tr>
</tbody>
</table></div>
<p>After.</p>
`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestTableVariesChoicesPairsAndEmpty(t *testing.T) {
	for _, c := range []struct{ vary, want string }{
		{"vary mode: plain | odd", "R &amp; D &lt;odd&gt;"},
		{"vary extra: | 5 lb", "not known"},
		{"vary marks: 0.015 in : 2,655 psi; 0.025 in : 2,701 psi", "0.015 in : 2,655 psi; 0.025 in : 2,701 psi"},
	} {
		if got := parsed(t, tableOf("table twice-over", c.vary, "show: verdict, double")); !strings.Contains(got, c.want+"</span></th>") {
			t.Errorf("%s: no row headed %s in\n%s", c.vary, c.want, got)
		}
	}
}

func TestTableErrors(t *testing.T) {
	const vary, show = "vary gauge: 1,000 psi | 2,000 psi", "show: double"
	for _, c := range []struct {
		info  string
		lines []string
		want  string
	}{
		{"table", []string{vary, show}, `6: a table names one worksheet, not ""`},
		{"table thrice", []string{vary, show}, `6: a table names one worksheet, not "thrice"`},
		{"table twice-over now", []string{vary, show}, `6: a table names one worksheet, not "twice-over now"`},
		{"table twice-over", []string{vary}, "6: a table needs a line vary"},
		{"table twice-over", []string{show}, "6: a table needs a line vary"},
		{"table twice-over", []string{vary, show, "colour: red"}, `9: not understood in a table: "colour: red"`},
		{"table twice-over", []string{vary, show, "set"}, `9: not understood in a table: "set"`},
		{"table twice-over", []string{vary, show, show}, "9: not understood in a table"},
		{"table twice-over", []string{"set speed: 2", vary, show}, `7: twice-over has no field "speed"`},
		{"table twice-over", []string{"vary speed: 2", vary, show}, `7: twice-over has no field "speed"`},
		{"table twice-over", []string{vary, "vary extra: 1 lb", show}, "8: a table varies one field"},
		{"table twice-over", []string{vary, "set gauge: 1 psi", show}, `8: "gauge" stands twice`},
		{"table twice-over", []string{"set gauge: 1 psi", vary, show}, `8: "gauge" stands twice`},
		{"table twice-over", []string{"vary gauge: 1,000 psi | two", show}, `7: with gauge "two": field "gauge": `},
		{"table twice-over", []string{"set mode: even", vary, show}, `8: with gauge "1,000 psi": field "mode": `},
		{"table twice-over", []string{vary, "show: double, triple"}, `8: with gauge "1,000 psi": twice-over has no figure "triple"`},
		{"table twice-over", []string{vary, "show: left"}, `8: with gauge "1,000 psi": figure "left" does not exist for these numbers: needs extra`},
		{"table twice-over", []string{"vary hidden: 3", show}, `7: field "hidden" does not bear on this answer`},
	} {
		got := refused(t, front+tableOf(c.info, c.lines...))
		if want := "content/x.md:" + c.want; !strings.HasPrefix(got, want) {
			t.Errorf("%s %q: error %q, want %q", c.info, c.lines, got, want)
		}
	}
}
