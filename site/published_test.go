package site

import (
	"strings"
	"testing"
)

func TestAddress(t *testing.T) {
	for text, want := range map[string]string{
		"https://example.org":                "https://example.org/",
		"https://example.org/":               "https://example.org/",
		"https://example.org/plainlift":      "https://example.org/plainlift/",
		"http://localhost:8080/a/b/":         "http://localhost:8080/a/b/",
		"":                                   "",
		"example.org":                        "",
		"//example.org/":                     "",
		"ftp://example.org/":                 "",
		"https:///plainlift/":                "",
		"https://:80/":                       "",
		"https://example.org/?page=1":        "",
		"https://example.org/?":              "",
		"https://example.org/#top":           "",
		"https://me@example.org/":            "",
		"https://example.org/a b/":           "",
		"https://example.org/%zz/":           "",
		"https://example.org/a/index.html":   "",
		"https://example.org/a/index.html?b": "",
	} {
		got, err := Address(text)
		if got != want || (err == nil) != (want != "") {
			t.Errorf("%q is %q, %v", text, got, err)
		}
		if err != nil && !strings.Contains(err.Error(), "https://example.org/plainlift/") {
			t.Errorf("%q: the error does not say what would be right: %v", text, err)
		}
	}
}

// A title is whole, stays on the picture, and a longer one is in smaller type.
func TestPreviewTitle(t *testing.T) {
	before := 0.0
	for _, title := range []string{"Before and after: how much is pressure, and how much something else that was changed?", "Is my relief pressure low?"} {
		face, lines := fitted(title)
		size := float64(face.Metrics().Height) / 64
		if strings.Join(lines, " ") != title || len(lines) > 3 || size < before || size < 60 {
			t.Errorf("%q in lines %q, %g high after %g", title, lines, size, before)
		}
		for _, line := range lines {
			if over := wrapped(face, line); len(over) > 1 {
				t.Errorf("%q does not fit", line)
			}
		}
		before = size
		face.Close()
	}
}
