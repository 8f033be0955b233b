// Package checks lists what the formulas are held against: published standards,
// worked examples, certified data, general-purpose libraries. The same rows are
// the test of this package and the tables of the site's page about them, so
// that neither can say what the other does not.
//
// It is no part of what the browser runs.
//
// To add a check, add a row to its topic's file. A row says what is compared, the
// value as its source prints it, the source, how well that source is known, and
// a function that works the value out with the project's public functions.
package checks

import "math"

// Status is how well the source of a check is known.
type Status int

// The statuses, in the order in which they are shown.
const (
	Read           Status = iota + 1 // read in the document named
	SecondHand                       // quoted by another document
	Library                          // what a general-purpose library gives
	Computed                         // worked out to many digits, apart from this project's code
	Memory                           // from memory, the document not opened
	CommonPractice                   // what the trade does, without a source
)

// Statuses are all of them.
var Statuses = []Status{Read, SecondHand, Library, Computed, Memory, CommonPractice}

// String returns the status in words.
func (s Status) String() string {
	switch s {
	case Read:
		return "read"
	case SecondHand:
		return "quoted by another document"
	case Library:
		return "a general-purpose library"
	case Computed:
		return "worked independently to 20 digits"
	case Memory:
		return "from memory"
	case CommonPractice:
		return "common practice, no source"
	}
	return ""
}

// Check is one value held against its source.
type Check struct {
	What   string // in plain words: "Expanded uncertainty of the end gauge, 99 %"
	Source string // "JCGM 100:2008 (GUM), H.1.6"; empty for common practice
	Status Status
	Unit   string // of the numbers; empty for a plain number

	// Printed is the value as its source prints it: "2.58", "23e-8", or a range,
	// "40 to 50". The project's value agrees within half a unit of the last digit,
	// or within Tol where that is given. A value that a library works out has
	// Want and Tol instead.
	Printed   string
	Want, Tol float64

	Table string         // the printed table that this is from, shown as one row; may be empty
	Got   func() float64 // the project's value
}

// Topic is the checks of one part of the project.
type Topic struct {
	Name   string
	Checks []Check
}

// Topics are all checks, in the order in which they are shown.
var Topics = []Topic{
	topic("Units", units),
	topic("Measurement doubt", uncertainties, endGauge, coverage, differences, sums),
	topic("Conformity", conformity),
	topic("Simulation", examples, trials),
	topic("Gauges", classes, limits),
	topic("Lines", lines, bothUncertain),
	topic("Springs and relief valves", springs, moduli, valves),
	topic("Lift", lifts, gains),
	topic("Loader arms", arcs),
	topic("Strength", walls, columns, pins),
	topic("Pumps and cylinders", pumps, pistons),
	topic("Balance", balances),
}

// topic puts the lists of a topic together.
func topic(name string, lists ...[]Check) Topic {
	t := Topic{Name: name}
	for _, list := range lists {
		t.Checks = append(t.Checks, list...)
	}
	return t
}

// Agrees reports whether a value is what the source says. It is false for NaN
// and for a row that makes no sense.
func (c *Check) Agrees(x float64) bool {
	from, to := c.Span()
	return from <= x && x <= to
}

// Span returns the values between which all agree.
func (c *Check) Span() (from, to float64) {
	p := c.published()
	return p.from - p.tol, p.to + p.tol
}

// Off returns how far a value is from the middle of what agrees, as a part of
// what is allowed: past 1 it no longer agrees.
func (c *Check) Off(x float64) float64 {
	from, to := c.Span()
	return math.Abs(x-(from+to)/2) / ((to - from) / 2)
}
