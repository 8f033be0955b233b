package site

import (
	"math/rand/v2"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

func TestEntriesCountAsOwn(t *testing.T) {
	// The test worksheet gives its answer only to a reader's own entries.
	if got := parsed(t, `{twice-over.verdict extra="5 lb"}`); !strings.Contains(got, "Doubled") {
		t.Errorf("entries are not the reader's own: %s", got)
	}
	g := &guide{book: testBook()}
	a, err := answer(g.book, "twice-over", nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(a.us.Examples)+len(a.metric.Examples) > 0 {
		t.Errorf("still the example's: %q, %q", a.us.Examples, a.metric.Examples)
	}
}

func TestAnswersAreKept(t *testing.T) {
	g := &guide{book: testBook()}
	simulated := 0
	g.book[0].Simulate = func(*calc.In) calc.Trial {
		simulated++
		return func(r *rand.Rand) float64 { return r.Float64() }
	}
	changed := map[string]string{"gauge": "900 psi", "mode": "odd"}
	first, err := answer(g.book, "twice-over", changed)
	if err != nil {
		t.Fatal(err)
	}
	before := counted
	again, err := answer(g.book, "twice-over", changed)
	if err != nil || again != first || counted != before {
		t.Errorf("worked out %d times more for the same entries (%v)", counted-before, err)
	}
	if simulated != 1 {
		t.Errorf("simulated %d times for one set of entries", simulated)
	}
	if other, err := answer(g.book, "twice-over", map[string]string{"gauge": "901 psi"}); err != nil || other == first {
		t.Errorf("other entries give the same answer (%v)", err)
	}
}

func TestAnswerAgreesWithBook(t *testing.T) {
	g := &guide{book: testBook()}
	a, err := answer(g.book, "twice-over", nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		got *calc.Answer
		sys unit.System
	}{{a.us, unit.US}, {a.metric, unit.Metric}} {
		want := g.book.Checked("twice-over", nil, c.sys).Figure("double").Text
		if got := c.got.Figure("double").Text; got != want {
			t.Errorf("quoted %q, the core says %q", got, want)
		}
	}
}
