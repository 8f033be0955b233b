package checks

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"plainlift/calc/doubt"
)

// tableG2 is JCGM 100:2008, Table G.2 (read): t for two-sided fractions of
// 68.27, 90, 95, 95.45, 99 and 99.73 %. At 35 and 90 % it prints 1.70, a
// misprint that is left out here and has a row of its own.
const tableG2 = `
1 1.84 6.31 12.71 13.97 63.66 235.80
2 1.32 2.92 4.30 4.53 9.92 19.21
3 1.20 2.35 3.18 3.31 5.84 9.22
4 1.14 2.13 2.78 2.87 4.60 6.62
5 1.11 2.02 2.57 2.65 4.03 5.51
6 1.09 1.94 2.45 2.52 3.71 4.90
7 1.08 1.89 2.36 2.43 3.50 4.53
8 1.07 1.86 2.31 2.37 3.36 4.28
9 1.06 1.83 2.26 2.32 3.25 4.09
10 1.05 1.81 2.23 2.28 3.17 3.96
11 1.05 1.80 2.20 2.25 3.11 3.85
12 1.04 1.78 2.18 2.23 3.05 3.76
13 1.04 1.77 2.16 2.21 3.01 3.69
14 1.04 1.76 2.14 2.20 2.98 3.64
15 1.03 1.75 2.13 2.18 2.95 3.59
16 1.03 1.75 2.12 2.17 2.92 3.54
17 1.03 1.74 2.11 2.16 2.90 3.51
18 1.03 1.73 2.10 2.15 2.88 3.48
19 1.03 1.73 2.09 2.14 2.86 3.45
20 1.03 1.72 2.09 2.13 2.85 3.42
25 1.02 1.71 2.06 2.11 2.79 3.33
30 1.02 1.70 2.04 2.09 2.75 3.27
35 1.01 - 2.03 2.07 2.72 3.23
40 1.01 1.68 2.02 2.06 2.70 3.20
45 1.01 1.68 2.01 2.06 2.69 3.18
50 1.01 1.68 2.01 2.05 2.68 3.16
100 1.005 1.660 1.984 2.025 2.626 3.077
inf 1.000 1.645 1.960 2.000 2.576 3.000`

// fractionsG2 are its columns. 68.27, 95.45 and 99.73 % are one, two and three
// standard deviations of the normal distribution.
var fractionsG2 = []column{
	{"68.27 %", math.Erf(1 / math.Sqrt2)}, {"90 %", 0.90}, {"95 %", 0.95},
	{"95.45 %", math.Erf(math.Sqrt2)}, {"99 %", 0.99}, {"99.73 %", math.Erf(3 / math.Sqrt2)},
}

// tDigits is t to nine digits for two-sided fractions of 90, 95, 98 and 99 %.
const tDigits = `
1 6.31375151 12.7062047 31.820516 63.6567412
2 2.91998558 4.30265273 6.96455673 9.9248432
3 2.35336343 3.18244631 4.54070286 5.84090931
4 2.13184679 2.77644511 3.74694739 4.60409487
5 2.01504837 2.57058184 3.36493000 4.03214298
6 1.94318028 2.44691185 3.1426684 3.70742802
7 1.89457861 2.36462425 2.99795157 3.4994833
8 1.85954804 2.30600414 2.89645945 3.35538733
9 1.83311293 2.26215716 2.82143793 3.24983554
10 1.81246112 2.22813885 2.76376946 3.16927267
12 1.78228756 2.17881283 2.68099799 3.05453959
15 1.75305036 2.13144955 2.6024803 2.94671288
20 1.72471824 2.08596345 2.527977 2.84533971
30 1.69726089 2.04227246 2.45726154 2.74999565
60 1.67064886 2.00029782 2.39011947 2.66028303
120 1.6576509 1.97993041 2.35782461 2.61742115`

var fractionsDigits = []column{{"90 %", 0.90}, {"95 %", 0.95}, {"98 %", 0.98}, {"99 %", 0.99}}

// normalDigits is the standard normal distribution.
const normalDigits = `
0.25 0.598706325682924
0.5 0.691462461274013
1 0.841344746068543
1.28 0.899727432045558
1.5 0.933192798731142
2 0.977249868051821
2.5 0.993790334674224
3 0.99865010196837
4 0.999968328758167
6 0.999999999013412`

// column is a column of a printed table: its heading, and the number there.
type column struct {
	head  string
	value float64
}

// studentRows are the rows of a printed table of t.
func studentRows(name, source string, status Status, text string, columns []column) []Check {
	return tabled(Check{Table: name, Source: source, Status: status}, text, columns,
		func(row string, c column) (string, func() float64) {
			dof := count(row)
			return fmt.Sprintf("t, %s, %s degrees of freedom", c.head, row), func() float64 { return doubt.T(c.value, dof) }
		})
}

// normalRows are those of a table of the normal distribution.
func normalRows(name string, text string) []Check {
	return tabled(Check{Table: name, Source: "series with 25 digits or more", Status: Computed}, text, []column{{}},
		func(row string, _ column) (string, func() float64) {
			z := count(row)
			return "Chance of at most " + row, func() float64 { return doubt.NormalCDF(z) }
		})
}

func k(p float64) func() float64 { return func() float64 { return doubt.T(p, inf) } }

var coverage = join(
	studentRows("Student's t, Table G.2", gum("Table G.2"), Read, tableG2, fractionsG2),
	[]Check{
		{What: "t, 90 %, 35 degrees of freedom, where Table G.2 prints 1.70: a misprint", Source: "incomplete beta function with 25 digits", Status: Computed, Printed: "1.68957245778",
			Got: func() float64 { return doubt.T(0.90, 35) }},
	},
	studentRows("Student's t to nine digits", "incomplete beta function with 25 digits", Computed, tDigits, fractionsDigits),
	normalRows("Normal distribution to fifteen digits", normalDigits),
	[]Check{
		{What: "t, 95 %, 16.741149 degrees of freedom", Source: "incomplete beta function with 25 digits", Status: Computed, Printed: "2.112303328452", Got: func() float64 { return doubt.T(0.95, 16.741149) }},
		{What: "t, 99 %, 2.5 degrees of freedom", Source: "incomplete beta function with 25 digits", Status: Computed, Printed: "7.163728138949", Got: func() float64 { return doubt.T(0.99, 2.5) }},
		{What: "t, 95 %, 2500 degrees of freedom", Source: "incomplete beta function with 25 digits", Status: Computed, Printed: "1.960913345", Got: func() float64 { return doubt.T(0.95, 2500) }},
		{What: "t, 99.9 %, 1.5 degrees of freedom: what it covers", Source: "gonum, distuv.StudentsT", Status: Library, Printed: "0.999", Tol: 1e-9, Got: func() float64 {
			lib, t := distuv.StudentsT{Sigma: 1, Nu: 1.5}, doubt.T(0.999, 1.5)
			return lib.CDF(t) - lib.CDF(-t)
		}},
		{What: "k for 68.27 %", Source: gum("Table G.1"), Status: Read, Printed: "1", Tol: 1e-4, Got: k(0.6827)},
		{What: "k for 90 %", Source: gum("Table G.1"), Status: Read, Printed: "1.645", Got: k(0.90)},
		{What: "k for 95 %", Source: gum("Table G.1"), Status: Read, Printed: "1.960", Got: k(0.95)},
		{What: "k for 99 %", Source: gum("Table G.1"), Status: Read, Printed: "2.576", Got: k(0.99)},
		{What: "Coverage of 1.732 standard deviations, the edge of a limit", Source: gum("G.5.2, note"), Status: Read, Unit: "%", Printed: "91.673", Got: func() float64 { return 100 * (2*doubt.NormalCDF(1.732) - 1) }},
		{What: "Coverage of √3 standard deviations", Source: "error function with 25 digits", Status: Computed, Unit: "%", Printed: "91.67354833", Got: func() float64 { return 100 * (2*doubt.NormalCDF(math.Sqrt(3)) - 1) }},
		{What: "Normal area from 0 to 1.8 (printed tables differ in the last digit)", Source: "two printed tables", Status: Read, Printed: "0.4641", Tol: 1e-4, Got: func() float64 { return doubt.NormalCDF(1.8) - 0.5 }},
		{What: "Chance of at most 1.5 standard deviations", Source: "printed tables of the normal distribution", Status: SecondHand, Printed: "0.9332", Got: func() float64 { return doubt.NormalCDF(1.5) }},
		{What: "Chance of at most 2 standard deviations", Source: "printed tables of the normal distribution", Status: SecondHand, Printed: "0.9772", Got: func() float64 { return doubt.NormalCDF(2) }},
		{What: "Chance of over 6 standard deviations", Source: "series with 25 digits or more", Status: Computed, Printed: "9.86587645e-10", Got: func() float64 { return doubt.NormalCDF(-6) }},
		{What: "z for 97.5 %", Source: "series with 25 digits or more", Status: Computed, Printed: "1.959963984540054", Got: func() float64 { return doubt.NormalQuantile(0.975) }},
	},
)
