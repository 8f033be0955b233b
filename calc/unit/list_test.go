package unit

import (
	"slices"
	"testing"
)

func TestSplitList(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"a; b", []string{"a", "b"}},
		{"2,600; 2,620", []string{"2,600", "2,620"}},
		{"2,600, 2,620", []string{"2,600", "2,620"}},
		{"2600, 2620,2610", []string{"2600", "2620,2610"}},
		{"2,600,\u00A02,620", []string{"2,600", "2,620"}},
		{"2600\n2620\r\n2610\r\n", []string{"2600", "2620", "2610"}},
		{"2600,\n2620,\n", []string{"2600", "2620"}},
		{"2600,;2620", []string{"2600", "2620"}},
		{"12,5 mm; 13,5 mm", []string{"12,5 mm", "13,5 mm"}},
		{"12,5, 13,5", []string{"12,5", "13,5"}},
		{"2 600; 2 620 psi", []string{"2 600", "2 620 psi"}},
		{",125 in, ,25 in", []string{",125 in", ",25 in"}},
		{"0.010 in : 2,655 psi; 0.020 in : 2,701 psi", []string{"0.010 in : 2,655 psi", "0.020 in : 2,701 psi"}},
		{"; ;\n ,  , ;", nil},
		{"", nil},
		{" \u200B;\uFEFF", nil},
		{"one", []string{"one"}},
		{"\u202A2600\u202C; 2620", []string{"2600", "2620"}},
		{"2600\u20282620\u20292610", []string{"2600", "2620", "2610"}},
	} {
		if got := SplitList(c.text); !slices.Equal(got, c.want) {
			t.Errorf("SplitList(%q) = %q, want %q", c.text, got, c.want)
		}
	}
}

func TestSplitPair(t *testing.T) {
	for _, c := range []struct {
		item, a, b string
		ok         bool
	}{
		{"0.010 in : 2,655 psi", "0.010 in", "2,655 psi", true},
		{"0.005:2", "0.005", "2", true},
		{" 0.005 : ", "0.005", "", true},
		{":2", "", "2", true},
		{"0.005", "", "", false},
		{"1:2:3", "", "", false},
		{"", "", "", false},
	} {
		a, b, ok := SplitPair(c.item)
		if a != c.a || b != c.b || ok != c.ok {
			t.Errorf("SplitPair(%q) = %q, %q, %v; want %q, %q, %v", c.item, a, b, ok, c.a, c.b, c.ok)
		}
	}
}
