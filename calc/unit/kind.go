// Package unit is the edge between what people write and what the formulas
// use. It reads a number with its unit as it was typed, in the ways that US and
// European readers write numbers, and gives float64 in SI; it writes SI values
// back as text. Everything else in the project works in SI alone.
//
// A quantity has a [Kind]; a Kind has [Unit] rows, all in one table (table.go).
// To add a unit or a kind, add a row there.
package unit

import (
	"math"
	"strings"
	"unicode"
)

// System is the reader's choice of what is shown; it never changes what an SI
// value is.
type System int

// The two systems of units that the site shows.
const (
	US System = iota
	Metric
)

// Kind says what sort of quantity a field or a figure holds.
type Kind int

// The kinds, with the SI unit in which the value is held.
const (
	Number          Kind = iota // plain number
	Percent                     // fraction: 2 % is 0.02
	Pressure                    // Pa, above the atmosphere, as a gauge shows it
	Length                      // m
	Thickness                   // m, of shims
	Load                        // N; lb and kg mean the force, lbf and kgf
	Temperature                 // K
	PressureRate                // Pa/m, pressure for each added thickness
	LoadSlope                   // N/Pa, load for each added pressure
	Factor                      // plain number, written with "times"
	Count                       // whole number
	Force                       // N, of a cylinder or a part
	Stress                      // Pa, in a material
	Volume                      // m³, of a cylinder
	Capacity                    // m³, of a tank
	Displacement                // m³, of a pump for each turn
	Flow                        // m³/s
	Rotation                    // turns a second
	Speed                       // m/s
	Power                       // W
	Time                        // s
	Density                     // kg/m³
	HeatCapacity                // J/(kg·K)
	TemperatureRise             // K, a difference
	TemperatureRate             // K/s
	Angle                       // rad
)

// Unit is one way of writing a quantity: SI = x·Factor/Divisor + Offset. The
// divisor is apart so that a decimal submultiple comes out exact: 95 % is 0.95
// to the last bit, which 95·0.01 is not. Units compare with ==.
type Unit struct {
	Name                    string // as shown, and as written in links
	Factor, Divisor, Offset float64
	aliases                 string // other spellings, each as key gives it, spaces between
}

// ToSI returns the SI value of x of this unit.
func (u Unit) ToSI(x float64) float64 { return x*u.Factor/u.Divisor + u.Offset }

// FromSI returns how many of this unit the SI value is. What rounding leaves
// where the offset should cancel (32 °F in °C) is zero.
func (u Unit) FromSI(si float64) float64 {
	above := si - u.Offset
	if math.Abs(above) < 1e-12*u.Offset {
		return 0
	}
	return above * u.Divisor / u.Factor
}

// Units returns the units to offer in a chooser, in that order. [Kind.Lookup]
// also knows a few that are not worth a place there.
func (k Kind) Units() []Unit {
	row := &kinds[k]
	return append([]Unit(nil), row.units[:row.offered]...)
}

// Shown returns the unit in which this kind is shown in the system.
func (k Kind) Shown(s System) Unit {
	row := &kinds[k]
	return row.units[row.shown[s]]
}

// Lookup returns the unit of this kind with that name or one of its other
// spellings, in any case and spacing: "psi", "PSI", "lb/in²", "kgf / cm2".
func (k Kind) Lookup(name string) (Unit, bool) {
	for _, u := range kinds[k].units {
		if u.Name == name { // as links and the page's own choosers write it
			return u, true
		}
	}
	want := key(name)
	for _, u := range kinds[k].units {
		if key(u.Name) == want {
			return u, true
		}
		for alias := range strings.FieldsSeq(u.aliases) {
			if alias == want {
				return u, true
			}
		}
	}
	return Unit{}, false
}

// Known reports whether any kind has a unit of that name.
func Known(name string) bool {
	for k := range kinds {
		if _, ok := Kind(k).Lookup(name); ok && name != "" {
			return true
		}
	}
	return false
}

// Names lists the units to choose from, "psi, bar or MPa"; "" for a bare number.
func (k Kind) Names() string {
	names := ""
	units := k.Units()
	for i, u := range units {
		switch {
		case names == "":
		case i == len(units)-1:
			names += " or "
		default:
			names += ", "
		}
		names += u.Name
	}
	return names
}

// plain reports whether the kind is a bare number, to which no unit belongs.
func (k Kind) plain() bool { return k == Number || k == Factor || k == Count }

// key reduces the spellings of a unit's name to one: lower case, no spaces, "/"
// for "per", plain digits, straight quotes, no full stop at the end.
func key(name string) string {
	lower := strings.Map(func(r rune) rune {
		switch r {
		case '²':
			return '2'
		case '³':
			return '3'
		case 'º': // the ordinal sign is often typed for the degree sign
			return '°'
		case ',':
			return '.'
		case '″', '”', '“':
			return '"'
		case '′', '’', '‘':
			return '\''
		case '^':
			return -1
		}
		if unicode.IsSpace(r) {
			return ' '
		}
		return unicode.ToLower(r)
	}, strings.TrimSpace(name))
	lower = strings.ReplaceAll(lower, " per ", "/")
	return strings.TrimRight(strings.ReplaceAll(lower, " ", ""), ".")
}
