package chart

import (
	"slices"
	"strings"
	"testing"
)

func TestTextWidth(t *testing.T) {
	for _, tt := range []struct {
		s    string
		want float64 // in ems
	}{
		{"", 0},
		{"2,610 psi", 9 * 0.56},
		{"95 %", 3*0.56 + 0.84},
		{"−5", 0.84 + 0.56},
		{"EN", 2 * 0.68},
		{"é", 0.56},
		{"圧力", 2},
	} {
		if got := textWidth(tt.s); !near(got, tt.want*fontSize) {
			t.Errorf("textWidth(%q) = %v, want %v", tt.s, got, tt.want*fontSize)
		}
	}
}

func TestWrap(t *testing.T) {
	room := textWidth("ten places")
	for _, tt := range []struct {
		in   string
		want []string
	}{
		{"", nil},
		{" \n ", nil},
		{"short", []string{"short"}},
		{"ten places", []string{"ten places"}},
		{"one two three", []string{"one two", "three"}},
		{"a\nb", []string{"a", "b"}},
		{"a\n\nb", []string{"a", "b"}},
		{"  many   spaces ", []string{"many", "spaces"}},
		{"unbreakableword x", []string{"unbreaka…", "x"}},
	} {
		got := wrap(tt.in, room)
		if !slices.Equal(got, tt.want) {
			t.Errorf("wrap(%q) = %q, want %q", tt.in, got, tt.want)
		}
		for _, line := range got {
			if textWidth(line) > room {
				t.Errorf("%q is wider than its room", line)
			}
		}
	}
}

func TestOneLine(t *testing.T) {
	if got := oneLine(" two\nlines ", 200); got != "two lines" {
		t.Errorf("got %q", got)
	}
	if got := oneLine(strings.Repeat("é", 50), 60); textWidth(got) > 60 || !strings.HasSuffix(got, "é…") {
		t.Errorf("got %q", got)
	}
	if got := cut("anything", 0); got != "…" {
		t.Errorf("no room at all: got %q", got)
	}
}
