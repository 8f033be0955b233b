package checks

import (
	"fmt"
	"math"

	"plainlift/calc/doubt"
	"plainlift/calc/gauge"
)

// limitOf returns what a grade allows, in percent of scale, at a part of it.
func limitOf(id string, at float64) func() float64 { return limitAt(id, 100, 100*at) }

// limitAt returns what a grade allows on a dial, in the unit of the dial.
func limitAt(id string, scale, at float64) func() float64 {
	return func() float64 {
		g, ok := gauge.Lookup(id)
		if !ok {
			return math.NaN()
		}
		const bar = 1e5
		return g.Limit(scale*bar, at*bar) / bar
	}
}

const mm0486 = "US Army subcourse MM0486, p. 55, of the older American standard"

// classesEN837 are the classes, each named by its limit for the whole dial.
const classesEN837 = `
0.1 0.1 0.1 0.1
0.25 0.25 0.25 0.25
0.6 0.6 0.6 0.6
1 1 1 1
1.6 1.6 1.6 1.6
2.5 2.5 2.5 2.5
4 4 4 4`

// gradesASME are the grades: percent of span at the foot, in the middle half
// and at the top.
const gradesASME = `
4A 0.1 0.1 0.1
3A 0.25 0.25 0.25
2A 0.5 0.5 0.5
1A 1 1 1
A 2 1 2
B 3 2 3
C 4 3 4
D 5 5 5`

// zones are places on the dial, close to where one gives way to the next.
var zones = []column{{"lower quarter", 0.2499}, {"middle half", 0.25}, {"upper quarter", 0.7501}}

var classes = join(
	exactly(tabled(Check{Table: "Classes by zone of the dial, EN 837-1", Source: "EN 837-1:1996, Table 11", Status: Read, Unit: "% of scale"}, classesEN837, zones,
		func(id string, c column) (string, func() float64) {
			return fmt.Sprintf("Class %s, %s", id, c.head), limitOf(id, c.value)
		})),
	exactly(tabled(Check{Table: "Grades by zone of the dial, ASME B40.100", Source: "ASME B40.100, Table 1", Status: Memory, Unit: "% of scale"}, gradesASME, zones,
		func(id string, c column) (string, func() float64) {
			return fmt.Sprintf("Grade %s, %s", id, c.head), limitOf(id, c.value)
		})),
	exactly([]Check{
		{What: "Grade B in the middle half", Source: mm0486, Status: Read, Unit: "% of scale", Printed: "2", Got: limitOf("B", 0.75)},
		{What: "Grade B outside it", Source: mm0486, Status: Read, Unit: "% of scale", Printed: "3", Got: limitOf("B", 0.9)},
		{What: "Grade A outside the middle half", Source: mm0486, Status: Read, Unit: "% of scale", Printed: "2", Got: limitOf("A", 0.1)},
	}),
)

// exactly asks for the very number that is printed.
func exactly(rows []Check) []Check {
	for i := range rows {
		rows[i].Tol = 1e-9
	}
	return rows
}

const maker = "a maker's operating instructions, of EN 837-1"

var limits = []Check{
	{What: "Class 1.6 on 0 to 10 bar", Source: maker, Status: SecondHand, Unit: "bar", Printed: "0.16", Tol: 1e-9, Got: limitAt("1.6", 10, 6)},
	{What: "Class 1.6 on 0 to 250 bar", Source: maker, Status: SecondHand, Unit: "bar", Printed: "4", Tol: 1e-9, Got: limitAt("1.6", 250, 180)},
	{What: "Its standard uncertainty", Source: "4/√3", Status: Computed, Unit: "bar", Printed: "2.309401", Got: func() float64 { return doubt.Rect(limitAt("1.6", 250, 180)()) }},
	{What: "A gauge body 1 K off", Source: maker, Status: SecondHand, Unit: "% of scale", Printed: "0.04", Tol: 1e-9, Got: func() float64 { return gauge.Temperature(100, gauge.Reference+1) }},
	{What: "A gauge body 40 K warm, 0 to 250 bar", Source: "0.04 % of scale for each kelvin, by hand", Status: Computed, Unit: "bar", Printed: "4.0", Tol: 1e-9, Got: func() float64 { return gauge.Temperature(250, 273.15+60) }},
	{What: "A gauge body 40 K cold, 0 to 250 bar", Source: "0.04 % of scale for each kelvin, by hand", Status: Computed, Unit: "bar", Printed: "4.0", Tol: 1e-9, Got: func() float64 { return gauge.Temperature(250, 273.15-20) }},
	{What: "Temperature from which that is counted", Source: maker, Status: SecondHand, Unit: "°C", Printed: "20", Tol: 1e-9, Got: func() float64 { return gauge.Reference - 273.15 }},
	{What: "Nothing printed on the gauge", Status: CommonPractice, Unit: "% of scale", Printed: "3", Tol: 1e-9, Got: limitOf(gauge.NotMarked, 0.6)},
	{What: "The same, near the top of the dial", Status: CommonPractice, Unit: "% of scale", Printed: "3", Tol: 1e-9, Got: limitOf(gauge.NotMarked, 0.9)},
}
