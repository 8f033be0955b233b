package many

import (
	"encoding/xml"
	"fmt"
	"slices"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

const few = "machine,readings,scale,grade,low,high\n" +
	"beta,2735,4000,A,2680,2790\n" + // in the middle
	"10,2500,4000,A,2680,2790\n" + // low
	"alpha,x,4000,A,2680,2790\n" + // an error
	"9,2900,4000,A,2680,2790\n" + // high
	"Gamma,2600,4000,A,,\n" // no range

func TestOrder(t *testing.T) {
	b := answered(t, few, "reading", unit.US)
	figure := func(id string) int {
		for i, g := range b.Worksheet.Answers() {
			if g.ID == id {
				return FirstFigure + i
			}
		}
		return -9
	}
	for _, test := range []struct {
		name string
		by   int
		down bool
		want []int
	}{
		{"as in the file", ByFile, false, []int{0, 1, 2, 3, 4}},
		{"backwards", ByFile, true, []int{4, 3, 2, 1, 0}},
		{"names: numbers by size, then words in any case", 0, false, []int{3, 1, 0, 4, 2}},
		{"names, down", 0, true, []int{4, 0, 1, 3, 2}},
		{"mean", figure("mean"), false, []int{1, 4, 0, 3, 2}},
		{"mean, down", figure("mean"), true, []int{3, 0, 4, 1, 2}},
		{"a chance that one has not", figure("p_below"), true, []int{1, 0, 3, 4, 2}},
		{"verdict as declared", ByVerdict, false, []int{1, 3, 0, 4, 2}},
		{"errors", ByError, false, []int{2, 0, 1, 3, 4}},
	} {
		if got := b.Order(test.by, test.down); !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.name, got, test.want)
		}
	}
	if got, want := fmt.Sprint(b.Counts()), "[{low 1} {high 1} {within 1} {not-low 0} {not-high 0} {undecided 0} {no-range 1}]"; got != want {
		t.Errorf("counts %s, want %s", got, want)
	}
}

func wellFormed(t *testing.T, svg string) {
	t.Helper()
	if err := xml.Unmarshal([]byte(svg), new(struct{ XMLName xml.Name })); err != nil {
		t.Error(err)
	}
}

func TestPictureByName(t *testing.T) {
	b := answered(t, strings.Replace(few, "beta", `"<b>&"`, 1), "reading", unit.US)
	svg, says := b.Picture()
	wellFormed(t, svg)
	for _, name := range []string{"&lt;b&gt;&amp;", "Gamma", "pressure, psi"} {
		if !strings.Contains(svg, name) {
			t.Errorf("%s is not in the picture", name)
		}
	}
	if strings.Contains(svg, "alpha") || says != "" || strings.Contains(svg, "NaN") {
		t.Errorf("an error is drawn, or %q", says)
	}
	if svg, _ := answered(t, "now,target\n2610,2735\n", "gain", unit.US).Picture(); svg != "" {
		t.Error("a picture of what has no bands")
	}
}

// Many rows make a small picture that says what it leaves out.
func TestPictureOfMany(t *testing.T) {
	for _, n := range []int{41, 1000, 10_000} {
		var text strings.Builder
		text.WriteString("machine,readings,scale,grade,low,high\n")
		for i := range n {
			low, high := "2680", "2790"
			if i < 7 {
				low = ""
			}
			fmt.Fprintf(&text, "m%d,%d,4000,A,%s,%s\n", i, 2600+(i*37)%300, low, high)
		}
		b := answered(t, text.String(), "reading", unit.US)
		svg, says := b.Picture()
		wellFormed(t, svg)
		if len(svg) > 15_000 || strings.Contains(svg, "NaN") {
			t.Errorf("%d rows: %d bytes", n, len(svg))
		}
		inside := 0
		for i := range b.Results {
			if r := &b.Results[i]; i >= 7 && r.value >= r.from && r.value <= r.to {
				inside++
			}
		}
		grouped := strings.Contains(says, "in groups of")
		if !strings.Contains(says, "7 rows without both ends") || grouped != (n > groups) ||
			!strings.Contains(says, ", "+unit.Decimals(float64(inside), 0, unit.US)+" in it") {
			t.Errorf("%d rows, %d inside: %q", n, inside, says)
		}
	}
}

// The file that goes out has what came in, and full numbers in shown units.
func TestCells(t *testing.T) {
	b := answered(t, few, "reading", unit.US)
	heading := b.Heading()
	at := func(name string) int { return slices.Index(heading, name) }
	if at("lo (psi)") < 6 || at("p_below (%)") < 0 || at("settle") < 0 || heading[len(heading)-1] != "answer" || heading[0] != "machine" {
		t.Errorf("%q", heading)
	}
	cells := b.Cells(&b.Results[0])
	if len(cells) != len(heading) || cells[0] != "beta" || cells[1] != "2735" || cells[at("mean (psi)")] != "2735" || cells[at("verdict")] != "within" {
		t.Errorf("%q", cells)
	}
	if cells := b.Cells(&b.Results[2]); cells[0] != "alpha" || cells[at("verdict")] != "" || len(cells) != len(heading) {
		t.Errorf("an error: %q", cells)
	}
}
