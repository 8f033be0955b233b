package checks

import (
	"math"
	"strconv"
	"strings"
)

// tabled turns a printed table into rows of like. Each line of text is the
// heading of a row, then a value for every column, "-" where none is taken.
// one says what a value is, and how the project comes by it.
func tabled(like Check, text string, columns []column, one func(row string, c column) (string, func() float64)) []Check {
	var rows []Check
	for line := range strings.Lines(text) {
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		for i, c := range columns {
			row := like
			row.What, row.Got = one(words[0], c)
			row.Printed = "?" // agrees with nothing, should the line be short
			if i+1 < len(words) {
				row.Printed = words[i+1]
			}
			if row.Printed != "-" {
				rows = append(rows, row)
			}
		}
	}
	return rows
}

// count returns the number that heads a row, NaN if it is none.
func count(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// join puts lists together.
func join(lists ...[]Check) []Check {
	var all []Check
	for _, list := range lists {
		all = append(all, list...)
	}
	return all
}
