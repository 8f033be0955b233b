package post

import (
	"os"
	"slices"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

// wanted is one post of testdata/posts.txt.
type wanted struct {
	name, text string
	picks      []string
}

// readPosts reads testdata/posts.txt, whose head says how it is written.
func readPosts(t testing.TB) []wanted {
	file, err := os.ReadFile("testdata/posts.txt")
	if err != nil {
		t.Fatal(err)
	}
	var all []wanted
	for _, part := range strings.Split("\n"+string(file), "\n== ")[1:] {
		name, rest, _ := strings.Cut(part, "\n")
		text, picks, ok := strings.Cut(rest, "\n--\n")
		if !ok {
			t.Fatalf("%s: no line -- after the text", name)
		}
		w := wanted{name: name, text: text}
		for line := range strings.Lines(picks) {
			if line = strings.TrimSpace(line); line != "" && line != "none" {
				w.picks = append(w.picks, line)
			}
		}
		all = append(all, w)
	}
	return all
}

// line writes a pick as posts.txt does.
func line(p Pick) string {
	name := p.Field
	if name == "" {
		name = map[unit.Kind]string{unit.Thickness: "thickness", unit.Percent: "percent", unit.Pressure: "rise"}[p.Kind]
	}
	sure := " asks"
	if p.Sure {
		sure = " sure"
	}
	return name + " " + p.Shown + sure
}

func TestPosts(t *testing.T) {
	posts := readPosts(t)
	for _, w := range posts {
		var got []string
		for _, p := range Read(w.text, unit.Metric) {
			got = append(got, line(p))
		}
		slices.Sort(got)
		slices.Sort(w.picks)
		if !slices.Equal(got, w.picks) {
			t.Errorf("%s:\n  got  %q\n  want %q", w.name, got, w.picks)
		}
	}
	t.Log(len(posts), "posts")
}
