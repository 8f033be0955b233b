package post

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"plainlift/calc/unit"
)

// takers are the fields that take a pick. That before-after has them is tested there.
var takers = map[string]unit.Kind{
	"before": unit.Pressure, "after": unit.Pressure, "claimed": unit.Percent,
	"lift_before": unit.Load, "lift_after": unit.Load, "gained": unit.Load,
}

// check holds picks against what a page relies on: spans inside the text, in
// order, apart; values that the suggested field takes in either system; a
// question exactly when it is not sure; no field sure twice.
func check(t *testing.T, text string, picks []Pick) {
	t.Helper()
	end := 0
	sure := map[string]bool{}
	for _, p := range picks {
		if p.Start < end || p.End <= p.Start || p.End > len(text) {
			t.Fatalf("span %d to %d after %d in %d bytes: %q", p.Start, p.End, end, len(text), p.Value)
		}
		end = p.End
		if p.Sure == (p.Ask != "") || !utf8.ValidString(p.Ask) || !utf8.ValidString(p.Value) {
			t.Fatalf("%q: sure %v with the question %q", p.Value, p.Sure, p.Ask)
		}
		for _, s := range []unit.System{unit.US, unit.Metric} {
			if _, err := unit.Parse(p.Value, p.Kind, unit.Unit{}, s); err != nil {
				t.Fatalf("%q: %v", p.Value, err)
			}
		}
		if p.Field == "" {
			continue
		}
		if sure[p.Field] {
			t.Fatalf("%s is sure, and there is another: %q", p.Field, p.Value)
		}
		sure[p.Field] = p.Sure
		if kind, ok := takers[p.Field]; !ok || kind != p.Kind {
			t.Fatalf("no field %q of that kind", p.Field)
		}
	}
}

// Whatever is pasted: no panic, and picks that a page can use.
func FuzzRead(f *testing.F) {
	for _, w := range readPosts(f) {
		f.Add(w.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		check(t, text, Read(text, unit.US))
	})
}

// A text as long as is read, of what is slowest to read, takes some 30 ms. The
// limit is far above that, for a machine that does something else besides, and far
// under what a rule that looks back over the whole text would take.
func TestLong(t *testing.T) {
	const most = 5 * time.Second
	var posts strings.Builder
	for _, w := range readPosts(t) {
		posts.WriteString(w.text + "\n\n")
	}
	for name, piece := range map[string]string{
		"posts": posts.String(), "numbers": "2450 ", "joined": "2450-2700 psi ", "glued": "1", "word": "a", "to": "from 2450 to ",
		"quotes": "[quote]> ", "lines": "> 2450 psi\n", "stops": "2450 psi. ", "shims": ".010 shim ", "bytes": "\xff\x00é", "words": "twenty ", "dots": "..5.,5",
		"spaces": " ", "blank": "\n", "percent": "30% more lift ", "asks": "was 2450 psi? ",
	} {
		text := strings.Repeat(piece, longest/len(piece)+1)[:longest]
		took := time.Hour
		for range 3 { // the machine may be doing something else besides
			start := time.Now()
			picks := Read(text, unit.US)
			took = min(took, time.Since(start))
			check(t, text, picks)
		}
		t.Log(name, took)
		if took > most {
			t.Errorf("%s: %d bytes take %v", name, len(text), took)
		}
	}
}
