package calc

import "strings"

// Keys of a link that are no field's. A link opens for ever, so these never
// change their meaning.
const (
	keyVersion = "v"       // first: which edition of the formulas made the link
	keyExample = "example" // IDs of fields that are still the example's, comma between
	keyEnd     = "end"     // last: takes the punctuation that forums add or swallow
)

// LinkVersion is the edition of the formulas. It goes up when a correction
// changes a figure.
const LinkVersion = "1"

// FromLink reads the keys and values of a link as entries. A field named in
// keyExample keeps its mark: passing an answer on does not turn the example's
// numbers into somebody's own.
func FromLink(pairs []Pair) Entries {
	entries := Entries{}
	example := ""
	for _, p := range pairs {
		switch p.Key {
		case keyVersion, keyEnd:
		case keyExample:
			example = p.Value
		default:
			if _, twice := entries[p.Key]; !twice {
				entries[p.Key] = Entry{Text: p.Value, Own: true}
			}
		}
	}
	for _, id := range strings.Split(example, ",") {
		if e, ok := entries[id]; ok {
			e.Own = false
			entries[id] = e
		}
	}
	return entries
}

// link writes the keys and values of a link from (id, text) pairs.
func link(fields []Pair, example []string) []Pair {
	pairs := append([]Pair{{keyVersion, LinkVersion}}, fields...)
	if len(example) > 0 {
		pairs = append(pairs, Pair{keyExample, strings.Join(example, ",")})
	}
	return append(pairs, Pair{keyEnd, "1"})
}

// canonical is an entry as a link writes it: a decimal point, no grouping, the
// unit always there, so that it means the same in either system of units.
func (f *Field) canonical(v *value) string {
	if !v.set {
		return ""
	}
	if f.Shape == Choice {
		return v.choice
	}
	var parts []string
	for i, x := range v.a {
		s := x.Canonical()
		if f.Shape == Pairs {
			s += " : " + v.b[i].Canonical()
		}
		parts = append(parts, s)
	}
	return strings.Join(parts, "; ")
}
