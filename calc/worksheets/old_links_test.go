package worksheets

import (
	"flag"
	"fmt"
	"math"
	"net/url"
	"os"
	"strconv"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

var newLinks = flag.Bool("links", false, "add today's links of the worksheets to testdata/links.txt")

const linksFile = "testdata/links.txt"

// linkLine is a link as people keep it, and the figures that it gave.
func linkLine(w *calc.Worksheet, a *calc.Answer) string {
	var b strings.Builder
	b.WriteString(w.ID + " #")
	for i, p := range a.Link {
		if i > 0 {
			b.WriteByte('&')
		}
		b.WriteString(url.QueryEscape(p.Key) + "=" + url.QueryEscape(p.Value))
	}
	for _, f := range a.Figures {
		if f.Value != "" {
			b.WriteString(" " + f.ID + "=" + f.Value)
		}
	}
	return b.String()
}

// Links that were passed on open for ever, to the same figures: no line of the
// file is ever changed or removed. When a correction changes a figure, LinkVersion
// is raised, the older link says so, and its line gets the corrected figure.
func TestOldLinks(t *testing.T) {
	if *newLinks {
		var b strings.Builder
		for _, w := range All {
			fmt.Fprintln(&b, linkLine(w, All.Evaluate(w.ID, nil, unit.US)))
			for i, entries := range branches(w.ID) {
				if a := All.Evaluate(w.ID, entries, unit.System(i%2)); i < 4 && a.OK() {
					fmt.Fprintln(&b, linkLine(w, a))
				}
			}
		}
		f, err := os.OpenFile(linksFile, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		if _, err := f.WriteString(b.String()); err != nil {
			t.Fatal(err)
		}
	}
	text, err := os.ReadFile(linksFile)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	if len(lines) < 2*len(All) {
		t.Fatalf("%d links for %d worksheets", len(lines), len(All))
	}
	for n, line := range lines {
		parts := strings.Fields(line)
		var pairs []calc.Pair
		for part := range strings.SplitSeq(strings.TrimPrefix(parts[1], "#"), "&") {
			key, value, _ := strings.Cut(part, "=")
			value, err := url.QueryUnescape(value)
			if err != nil {
				t.Fatal(err)
			}
			pairs = append(pairs, calc.Pair{Key: key, Value: value})
		}
		for _, sys := range []unit.System{unit.US, unit.Metric} { // the reader's choice of units changes no figure
			a := All.Evaluate(parts[0], calc.FromLink(pairs), sys)
			if a == nil || !a.OK() {
				t.Errorf("%s:%d: no answer any more", linksFile, n+1)
				continue
			}
			for _, figure := range parts[2:] {
				id, want, _ := strings.Cut(figure, "=")
				got := a.Figure(id)
				if got == nil || !sameFigure(got.Value, want) {
					t.Errorf("%s:%d: %s of %s is %v, was %s", linksFile, n+1, id, parts[0], got, want)
				}
			}
			if len(line) > 0 && len(parts[1]) > 2000 {
				t.Errorf("%s:%d: a link of %d characters", linksFile, n+1, len(parts[1]))
			}
		}
	}
}

// sameFigure compares two values, numbers up to the last bits that machines differ in.
func sameFigure(got, want string) bool {
	x, err := strconv.ParseFloat(got, 64)
	y, err2 := strconv.ParseFloat(want, 64)
	if err != nil || err2 != nil {
		return got == want
	}
	return math.Abs(x-y) <= 1e-9*math.Max(math.Abs(y), 1e-9)
}
