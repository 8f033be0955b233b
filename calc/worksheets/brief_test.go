package worksheets

import (
	"fmt"
	"strconv"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// machine is one of many: no two have the same numbers.
func machine(i int, id string) calc.Entries {
	own := func(text string) calc.Entry { return calc.Entry{Text: text, Own: true} }
	n := strconv.Itoa(2400 + i%500)
	if id == "short" {
		return calc.Entries{"reading": own(n), "scale": own("4000"), "accuracy": own("2"), "low": own("2680"), "high": own("2790"), "lift": own("1580"), "target": own("2735")}
	}
	return calc.Entries{"readings": own(n + "; " + strconv.Itoa(2405+i%490)), "scale": own("4000"), "grade": own("B"), "low": own("2680"), "high": own("2790")}
}

func BenchmarkRow(b *testing.B) {
	for _, id := range []string{"short", "reading"} {
		b.Run(id+"/whole", func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				All.Evaluate(id, machine(i, id), unit.US)
			}
		})
		b.Run(id+"/brief", func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				All.Brief(id, machine(i, id), unit.US)
			}
		})
	}
}

// A row's answer is the page's answer cut down: the same head, figures, link and problems.
func TestBrief(t *testing.T) {
	for _, w := range All {
		for _, entries := range []calc.Entries{nil, machine(7, w.ID), {w.Fields[0].ID: {Text: "what?", Own: true}}, {w.Fields[0].ID: {Text: "1", Own: true}}} {
			for _, sys := range []unit.System{unit.US, unit.Metric} {
				a, b := All.Evaluate(w.ID, entries, sys), All.Brief(w.ID, entries, sys)
				if fmt.Sprint(a.Link, a.Problems) != fmt.Sprint(b.Link, b.Problems) {
					t.Errorf("%s: %v %v, want %v %v", w.ID, b.Link, b.Problems, a.Link, a.Problems)
				}
				if !a.OK() {
					continue
				}
				if b.Verdict.ID != a.Verdict.ID || b.Verdict.Head != a.Verdict.Head || w.Verdicts[b.Branch].Figure() != a.Verdict.ID {
					t.Errorf("%s: %v, want %v", w.ID, b.Verdict, a.Verdict)
				}
				texts := b.Shown()
				for _, f := range a.Figures {
					if f.Place == calc.Quoted || f.ID == "verdict" {
						continue
					}
					if texts[0] != f.Text || b.Figures[0].SI == b.Figures[0].SI && strconv.FormatFloat(b.Figures[0].SI, 'g', -1, 64) != f.Value {
						t.Errorf("%s, %s: %q %v, want %q %s", w.ID, f.ID, texts[0], b.Figures[0].SI, f.Text, f.Value)
					}
					texts, b.Figures = texts[1:], b.Figures[1:]
				}
				if len(texts) > 0 {
					t.Errorf("%s: %d figures more", w.ID, len(texts))
				}
			}
		}
	}
	if All.Brief("nobody", nil, unit.US) != nil {
		t.Error("an answer to no worksheet")
	}
}
