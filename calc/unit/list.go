package unit

import (
	"strings"
	"unicode"
)

// SplitList returns the items of a list written with semicolons, new lines, or
// a comma and a space between them, trimmed, without blank ones. A comma with
// no space after it belongs to a number: "2,600; 2,620" has two items.
func SplitList(text string) []string {
	var items []string
	add := func(item string) {
		item = strings.TrimRightFunc(item, func(r rune) bool { return r == ',' || unicode.IsSpace(r) })
		if item = strings.TrimSpace(item); item != "" {
			items = append(items, item)
		}
	}
	for part := range strings.FieldsFuncSeq(clean(text), endsItem) {
		start, afterComma := 0, false
		for i, r := range part {
			if afterComma && unicode.IsSpace(r) {
				add(part[start:i])
				start = i
			}
			afterComma = r == ','
		}
		add(part[start:])
	}
	return items
}

// endsItem reports whether r stands between items whatever follows it.
func endsItem(r rune) bool {
	switch r {
	case ';', '\n', '\r', '\u2028', '\u2029':
		return true
	}
	return false
}

// SplitPair returns the two sides of the colon, trimmed; ok is false unless
// there is exactly one colon. A side may be empty.
func SplitPair(item string) (a, b string, ok bool) {
	a, b, ok = strings.Cut(clean(item), ":")
	if !ok || strings.Contains(b, ":") {
		return "", "", false
	}
	return strings.TrimSpace(a), strings.TrimSpace(b), true
}
