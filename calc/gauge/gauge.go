// Package gauge gives the limits of error that the standards allow a dial
// pressure gauge.
//
// A limit is a permissible error either side of the reading, nothing more being
// known inside it: treat it as rectangular (JCGM 100:2008, 4.3.7) unless a
// calibration says otherwise.
//
// Pressures are in pascal, temperatures in kelvin. A dial is taken to begin at
// zero, so that its span is its full scale.
package gauge

import "math"

// Standard is where a grade is defined.
type Standard string

// The standards whose marks are found on dials.
const (
	EN837    Standard = "EN 837-1"
	ASME     Standard = "ASME B40.100"
	Unmarked Standard = "" // no mark: not a standard's figure
)

// Grade is a class or grade as printed on a dial. Outer and Middle are the
// permissible error as a fraction of span: Middle from 25 % to 75 % of the scale
// inclusive, Outer elsewhere.
type Grade struct {
	ID            string // the mark itself
	Standard      Standard
	Outer, Middle float64
}

// NotMarked is the ID for a gauge with nothing printed on it. It serves as well
// for one that was dropped or run past its scale.
const NotMarked = "not-marked"

// Grades is every mark known here, from the least to the most accurate within
// each standard.
//
// Sources: EN 837-1:1996, Table 11 (read); ASME B40.100, Table 1 (from memory,
// high confidence); 3 % for a gauge without a mark is common practice, no
// source.
var Grades = []Grade{
	{ID: "4", Standard: EN837, Outer: 0.04, Middle: 0.04},
	{ID: "2.5", Standard: EN837, Outer: 0.025, Middle: 0.025},
	{ID: "1.6", Standard: EN837, Outer: 0.016, Middle: 0.016},
	{ID: "1", Standard: EN837, Outer: 0.01, Middle: 0.01},
	{ID: "0.6", Standard: EN837, Outer: 0.006, Middle: 0.006},
	{ID: "0.25", Standard: EN837, Outer: 0.0025, Middle: 0.0025},
	{ID: "0.1", Standard: EN837, Outer: 0.001, Middle: 0.001},

	{ID: "D", Standard: ASME, Outer: 0.05, Middle: 0.05},
	{ID: "C", Standard: ASME, Outer: 0.04, Middle: 0.03},
	{ID: "B", Standard: ASME, Outer: 0.03, Middle: 0.02},
	{ID: "A", Standard: ASME, Outer: 0.02, Middle: 0.01},
	{ID: "1A", Standard: ASME, Outer: 0.01, Middle: 0.01},
	{ID: "2A", Standard: ASME, Outer: 0.005, Middle: 0.005},
	{ID: "3A", Standard: ASME, Outer: 0.0025, Middle: 0.0025},
	{ID: "4A", Standard: ASME, Outer: 0.001, Middle: 0.001},

	{ID: NotMarked, Standard: Unmarked, Outer: 0.03, Middle: 0.03},
}

// Of returns the grades of one standard, the least accurate first.
func Of(s Standard) []Grade {
	var of []Grade
	for _, g := range Grades {
		if g.Standard == s {
			of = append(of, g)
		}
	}
	return of
}

// Lookup returns the grade with that mark, and whether there is one.
func Lookup(id string) (Grade, bool) {
	for _, g := range Grades {
		if g.ID == id {
			return g, true
		}
	}
	return Grade{}, false
}

// edge is how far, as a fraction of the scale, a reading may miss the end of
// the middle half and still count as on it: room for the rounding of a unit
// conversion, far below what a dial shows.
const edge = 1e-9

// Limit returns the permissible error of a reading, ± Pa:
//
//	Middle·scale  for 0.25·scale ≤ at ≤ 0.75·scale
//	Outer·scale   elsewhere
//
// scale is the full scale (Pa, above 0) and at is what the pointer shows (Pa),
// uncorrected for a pointer that rests off zero: the error belongs to the place
// on the dial. The result is NaN for a scale that is not above 0 and for a
// reading that is NaN.
//
// Source: ASME B40.100, Table 1, lower quarter, middle half and upper quarter
// (from memory, high confidence); EN 837-1:1996, Table 11 (read) has one figure
// for the whole dial.
func (g Grade) Limit(scale, at float64) float64 {
	if !(scale > 0) || math.IsNaN(at) {
		return math.NaN()
	}
	if at < (0.25-edge)*scale || at > (0.75+edge)*scale {
		return g.Outer * scale
	}
	return g.Middle * scale
}

// Temperature of calibration (K) and what a Bourdon tube drifts per kelvin
// away from it, as a fraction of full scale.
const (
	Reference = 293.15
	drift     = 0.0004
)

// Temperature returns the limit of the error from a gauge body that is not at
// 20 °C, ± Pa:
//
//	0.04 %/K · scale · |T − 293.15 K|
//
// scale is the full scale (Pa, above 0), temp the temperature of the gauge body
// (K, from 0). It holds for a Bourdon tube and comes on top of the grade. The
// result is NaN outside those ranges.
//
// Source: EN 837-1, as quoted in a maker's operating instructions (second-hand).
func Temperature(scale, temp float64) float64 {
	if !(scale > 0) || !(temp >= 0) {
		return math.NaN()
	}
	return drift * scale * math.Abs(temp-Reference)
}
