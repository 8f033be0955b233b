package unit

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// Whatever is typed: no panic, and either a short message or a finite value
// whose canonical text gives the same value in both systems.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"2,610 psi", "1 1/2 in", "¼", "12,5 mm", "2 612 psi", "1,234.5.6", "1e400", "0x1A", "45 °C", "40 psi per 0.010 in", `4' 2 1/2"`, "4 ft 2 in", "4'2", "-0' 6"} {
		f.Add(text, 2)
		f.Add(text, int(Length))
	}
	f.Fuzz(func(t *testing.T, text string, kind int) {
		k := Kind(uint(kind) % uint(len(kinds)))
		for _, s := range both {
			v, err := Parse(text, k, Unit{}, s)
			if err != nil {
				e, ok := err.(*Error)
				if !ok || e.Message == "" || len(e.Message) > 400 || !utf8.ValidString(e.Message) || strings.ContainsAny(e.Message, "\n\r\x00") {
					t.Fatalf("Parse(%q): bad error %#v", text, err)
				}
				for _, choice := range e.Choices {
					if _, err := Parse(choice, k, Unit{}, s); err != nil {
						t.Fatalf("Parse(%q) offers %q, which fails: %v", text, choice, err)
					}
				}
				continue
			}
			if math.IsInf(v.SI, 0) || math.IsNaN(v.SI) {
				t.Fatalf("Parse(%q) = %v", text, v.SI)
			}
			for _, again := range both {
				w, err := Parse(v.Canonical(), k, Unit{}, again)
				if err != nil || w.SI != v.SI || w.Canonical() != v.Canonical() {
					t.Fatalf("Parse(%q) = %q, which reads as %v, %v; want %v", text, v.Canonical(), w.SI, err, v.SI)
				}
			}
		}
	})
}

// Whatever is pasted: items are trimmed and not blank, hold no separator, and
// writing them with semicolons gives the same items again.
func FuzzSplitList(f *testing.F) {
	for _, text := range []string{"2,600; 2,620", "2,600, 2,620", "a\nb\r\nc", ", ;,", "0.010 in : 2,655 psi; 0.020 in : 2,701 psi"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		items := SplitList(text)
		for _, item := range items {
			if item == "" || strings.TrimSpace(item) != item || strings.ContainsAny(item, ";\n\r") || strings.Contains(item, ", ") {
				t.Fatalf("SplitList(%q) has the item %q", text, item)
			}
			SplitPair(item)
		}
		if again := SplitList(strings.Join(items, "; ")); !slices.Equal(again, items) {
			t.Fatalf("SplitList(%q) = %q, then %q", text, items, again)
		}
	})
}
