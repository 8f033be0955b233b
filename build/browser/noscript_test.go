//go:build browser

package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"

	"plainlift/calc"
	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

const saysNoScripts = "This is a worked example. If you followed a link, its numbers need scripts; they are not shown here."

// Without scripts every page shows its worked example with true figures, and
// says that it is one, most of all to somebody who followed a link.
func TestWithoutScripts(t *testing.T) {
	for _, w := range worksheets.All {
		for _, link := range []string{"", "#v=1&reading=2000+psi&now=2000+psi&before=2000+psi&end=1"} {
			t.Run(w.ID+link, func(t *testing.T) {
				t.Parallel()
				p := tab(t, phone)
				p.expect("request failed") // of the scripts
				command(p, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
				p.visit(pageOf(w.ID) + link)
				if p.count("assets/worker.js") > 0 || p.attribute("html", "data-view") != "example" {
					t.Fatal("scripts are on")
				}
				want := worksheets.All.Checked(w.ID, nil, unit.US)
				p.matches(want)
				for _, f := range want.Figures {
					if f.Place == calc.Key && f.ID != "verdict" && !p.seen("#fig-"+f.ID) {
						t.Errorf("figure %s cannot be seen", f.ID)
					}
				}
				for _, part := range []string{"#head", "#sentence", "#picture svg", "#cautions"} {
					if !p.seen(part) {
						t.Errorf("%s cannot be seen", part)
					}
				}
				if got := p.text("#answer .notice"); !p.seen("#answer .notice") || got != saysNoScripts {
					t.Errorf("the note says %q", got)
				}
				if p.seen("#waiting") || p.seen("#stale-mark") {
					t.Error("something is promised that will not come")
				}
				if p.text("#kind") != "Worked example" || !p.seen("#kind") || !strings.HasPrefix(p.text("#sentence"), "With the example's") {
					t.Errorf("the example passes for an answer: %q, %q", p.text("#kind"), p.text("#sentence"))
				}
				if !p.seen("#bar small") {
					t.Error("the head does not say that its numbers are an example's")
				}
				for _, dead := range []string{"#copy", "#system", ".add", ".remove", ".chip", "#keep-example", ".slide", "#pass", "#fractions", "#offers"} {
					if p.seen(dead) {
						t.Errorf("%s is offered, but does nothing without scripts", dead)
					}
				}
				// What folds, unfolds.
				p.click("#answer details.more:not(.pass, .keep) > summary")
				if !p.seen("#answer details.more:not(.pass, .keep) dl") {
					t.Error("what is folded away cannot be opened")
				}
			})
		}
	}
}
