package checks

import (
	"math"
	"slices"
	"testing"
)

// Every row agrees with its source.
func TestChecks(t *testing.T) {
	for _, topic := range Topics {
		t.Run(topic.Name, func(t *testing.T) {
			t.Parallel()
			for i := range topic.Checks {
				c := &topic.Checks[i]
				t.Run(c.What, func(t *testing.T) {
					if got := c.Got(); !c.Agrees(got) {
						t.Errorf("got %.16g, published %s %s; %s (%s)", got, c.Published(), c.Unit, c.Source, c.Status)
					}
				})
			}
		})
	}
}

// Every row says what it is, and could fail.
func TestRowsAreComplete(t *testing.T) {
	t.Parallel()
	for _, topic := range Topics {
		if topic.Name == "" || len(topic.Checks) == 0 {
			t.Errorf("topic %q has no name or no checks", topic.Name)
		}
		for _, c := range topic.Checks {
			name := topic.Name + ": " + c.What
			if c.What == "" || c.Got == nil {
				t.Errorf("%s: nothing is compared", name)
			}
			if !slices.Contains(Statuses, c.Status) {
				t.Errorf("%s: no status", name)
			}
			if (c.Source == "") != (c.Status == CommonPractice) {
				t.Errorf("%s: source %q, %s", name, c.Source, c.Status)
			}
			if (c.Printed == "") != (c.Want != 0) {
				t.Errorf("%s: either Printed or Want", name)
			}
			p := c.published()
			size := max(math.Abs(p.from), math.Abs(p.to))
			if !(p.tol > 0 && p.tol <= size/10) {
				t.Errorf("%s: tolerance %g on %g", name, p.tol, size)
			}
			if p.from > p.to || (p.to-p.from) > size/4 {
				t.Errorf("%s: range %g to %g", name, p.from, p.to)
			}
			// Would it notice a source that says something else?
			moved := 10*p.tol + p.to - p.from
			for _, off := range []float64{-moved, moved} {
				other := c
				other.Printed, other.Want, other.Tol = "", p.from+off, p.tol
				if other.Agrees(c.Got()) {
					t.Errorf("%s: agrees with %g as well", name, other.Want)
				}
			}
		}
	}
}

func TestTopicsAndStatuses(t *testing.T) {
	t.Parallel()
	names, used := map[string]bool{"": true}, map[Status]int{}
	for _, topic := range Topics {
		if names[topic.Name] || len(topic.Checks) == 0 {
			t.Errorf("topic %q is there twice, has no name or no checks", topic.Name)
		}
		names[topic.Name] = true
		for _, c := range topic.Checks {
			used[c.Status]++
		}
	}
	for _, s := range Statuses {
		if s.String() == "" || used[s] == 0 {
			t.Errorf("status %d %q is used %d times", s, s, used[s])
		}
	}
	if Status(0).String() != "" {
		t.Error("no status has words")
	}
}

// The printed tables are whole: GUM Table G.2 has 28 rows of 6, less a misprint.
func TestTablesAreWhole(t *testing.T) {
	t.Parallel()
	rows := map[string]int{}
	for _, topic := range Topics {
		for _, c := range topic.Checks {
			rows[c.Table]++
		}
	}
	for name, want := range map[string]int{
		"Student's t, Table G.2":                   28*6 - 1,
		"Student's t to nine digits":               16 * 4,
		"Normal distribution to fifteen digits":    10,
		"Grades by zone of the dial, ASME B40.100": 8 * 3,
		"Shear modulus of spring wire":             22,
		"Classes by zone of the dial, EN 837-1":    7 * 3,
	} {
		if rows[name] != want {
			t.Errorf("%s: %d values, want %d", name, rows[name], want)
		}
	}
}

func TestAgrees(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		printed  string
		tol      float64
		yes, not []float64
	}{
		{"2.58", 0, []float64{2.58, 2.5751, 2.5849, 2.585}, []float64{2.574, 2.586, -2.58, math.NaN(), math.Inf(1)}},
		{"-3.92", 0, []float64{-3.9249, -3.916}, []float64{3.92, -3.926}},
		{"107", 0, []float64{106.5876, 107.5}, []float64{106.4, 107.6}},
		{"53.3e-15", 0, []float64{53.26e-15, 53.34e-15}, []float64{53.2e-15, 53.3}},
		{"6.894757e3", 0, []float64{6894.7573}, []float64{6894.758}},
		{"93", 0.6, []float64{92.5, 93.6}, []float64{92.3}},
		{"40 to 50", 0, []float64{39.6, 40, 45, 50, 50.4}, []float64{39, 51}},
		{"-3.90 to -3.88", 0, []float64{-3.904, -3.88}, []float64{-3.91, -3.87, 3.89}},
		{"0.5000000000000000000", 0, []float64{0.5, 0.5 + 4e-13}, []float64{0.5 + 6e-13}},
		{"?", 0, nil, []float64{0, 1, math.NaN()}},
	} {
		c := Check{Printed: test.printed, Tol: test.tol}
		for _, x := range test.yes {
			if !c.Agrees(x) {
				t.Errorf("%s ± %g: %v does not agree", test.printed, test.tol, x)
			}
		}
		for _, x := range test.not {
			if c.Agrees(x) {
				t.Errorf("%s ± %g: %v agrees", test.printed, test.tol, x)
			}
		}
	}
	c := Check{Printed: "40 to 50", Tol: 1}
	if off := c.Off(51); math.Abs(off-1) > 1e-12 {
		t.Errorf("the edge is %g of what is allowed", off)
	}
}

func TestWritten(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		c         Check
		x         float64
		published string
		digits    string
	}{
		{Check{Printed: "2.58"}, 2.5758293, "2.58", "2.576"},
		{Check{Printed: "-3.92", Tol: 0.02}, -3.9151, "−3.92", "−3.915"},
		{Check{Printed: "93", Tol: 0.6}, 92.4666, "93", "92.5"},
		{Check{Printed: "53.3e-15"}, 53.3333e-15, "53.3·10⁻¹⁵", "53.33·10⁻¹⁵"},
		{Check{Printed: "6.894757e3"}, 6894.757293, "6.894757·10³", "6.8947573·10³"},
		{Check{Printed: "40 to 50"}, 45, "40 to 50", "45.0"},
		{Check{Printed: "100000", Tol: 20}, 100004, "100000", "100004"},
		{Check{Printed: "9.80665", Tol: 1e-15}, 9.80665, "9.80665", "9.8066500000000"},
		{Check{Want: 2.25, Tol: 1e-3}, 2.2504, "2.2500", "2.2504"},
	} {
		if got := test.c.Published(); got != test.published {
			t.Errorf("published %q, want %q", got, test.published)
		}
		if got := test.c.Digits(test.x); got != test.digits {
			t.Errorf("%v: %q, want %q", test.x, got, test.digits)
		}
	}
}

func TestAllowed(t *testing.T) {
	t.Parallel()
	for printed, want := range map[string]string{
		"2.58": "0.005", "93": "0.5", "0.5000000000000000": "5·10⁻¹³", "53.3e-15": "5·10⁻¹⁷", "40 to 50": "0.5", "6.894757e3": "0.0005",
	} {
		if got := (&Check{Printed: printed}).Allowed(); got != want {
			t.Errorf("%s: %q, want %q", printed, got, want)
		}
	}
}

func TestCount(t *testing.T) {
	t.Parallel()
	if count("2.5") != 2.5 || !math.IsInf(count("inf"), 1) || !math.IsNaN(count("x")) {
		t.Error("the heads of rows are not read as numbers")
	}
}
