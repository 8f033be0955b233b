package unit

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// The marks used in shown numbers.
const (
	minus     = "\u2212" // true minus
	thinSpace = "\u2009" // between groups of three digits, metric
)

// Decimals returns x as a reader of the system sees it, with that many decimal
// places; −1 rounds to tens, and so on. US groups digits with commas, "2,655";
// metric with thin spaces from five digits, "26 550". Both have a decimal point.
//
// A half rounds away from zero, as people do by hand, and it is the shortest
// decimal standing for x that is rounded: 1.005 gives "1.01". There is no minus
// zero. NaN is "—" and an infinite x is "∞".
func Decimals(x float64, places int, s System) string {
	if math.IsNaN(x) {
		return "—"
	}
	places = max(-400, min(places, 400)) // beyond any float64
	text := "∞"
	if !math.IsInf(x, 0) {
		d := decimalOf(x)
		d.round(places)
		whole, decimals, _ := strings.Cut(d.fixed(places), ".")
		if s == US {
			text = group(whole, ",", 4)
		} else {
			text = group(whole, thinSpace, 5)
		}
		if decimals != "" {
			text += "." + decimals
		}
		if d.digits == "" { // rounded to zero
			return text
		}
	}
	if x < 0 {
		return minus + text
	}
	return text
}

// PlaceTwo returns the decimal places at which the half-width of an interval
// shows two significant digits, once rounded: 76.2 gives 0, 0.0762 gives 3, 762
// gives −1, and 99.6, which becomes 100, gives −1 too.
func PlaceTwo(half float64) int { return PlaceSig(half, 2) }

// PlaceSig returns the decimal places at which x shows n significant digits,
// once rounded; 0 when x is zero or not finite, or n is under 1.
func PlaceSig(x float64, n int) int {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) || n < 1 {
		return 0
	}
	d := decimalOf(x)
	d.round(n - d.point)
	return n - d.point
}

// Edit returns the SI value as the text of an editable field in this unit: up
// to six significant digits, no trailing zeros, no grouping, a plain minus. A
// value that is not finite gives "".
func (u Unit) Edit(si float64) string {
	const most = 6 // significant digits
	x := u.FromSI(si)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	d := decimalOf(x)
	d.round(most - d.point)
	rounded, _ := strconv.ParseFloat("0."+d.digits+"0e"+strconv.Itoa(d.point), 64)
	return shortest(math.Copysign(rounded, x) + 0) // + 0 turns −0 into 0
}

// decimal is 0.digits × 10^point without its sign; no digits means zero.
type decimal struct {
	digits string
	point  int
}

// decimalOf returns the shortest decimal that stands for |x|; x must be finite.
func decimalOf(x float64) decimal {
	if x == 0 {
		return decimal{}
	}
	var room [32]byte // d.ddde±dd
	text := strconv.AppendFloat(room[:0], math.Abs(x), 'e', -1, 64)
	e := bytes.IndexByte(text, 'e')
	n, _ := strconv.Atoi(string(text[e+1:]))
	if e > 1 {
		text[1] = text[0] // over the point
		return decimal{digits: string(text[1:e]), point: n + 1}
	}
	return decimal{digits: string(text[:e]), point: n + 1}
}

// round rounds to the decimal places, a half away from zero.
func (d *decimal) round(places int) {
	keep := d.point + places
	switch {
	case keep >= len(d.digits):
		return
	case keep < 0:
		*d = decimal{}
		return
	}
	up := d.digits[keep] >= '5'
	kept := []byte(d.digits[:keep])
	if up {
		i := keep - 1
		for ; i >= 0 && kept[i] == '9'; i-- {
			kept[i] = '0'
		}
		if i >= 0 {
			kept[i]++
		} else {
			kept = append([]byte{'1'}, kept...)
			d.point++
		}
	}
	d.digits = strings.TrimRight(string(kept), "0")
	if d.digits == "" {
		d.point = 0
	}
}

// fixed writes a rounded decimal with that many places, without grouping.
func (d *decimal) fixed(places int) string {
	whole, decimals := "0", ""
	switch {
	case d.point >= len(d.digits):
		if d.digits != "" {
			whole = d.digits + strings.Repeat("0", d.point-len(d.digits))
		}
	case d.point > 0:
		whole, decimals = d.digits[:d.point], d.digits[d.point:]
	default:
		decimals = strings.Repeat("0", -d.point) + d.digits
	}
	if places <= 0 {
		return whole
	}
	return whole + "." + decimals + strings.Repeat("0", max(0, places-len(decimals)))
}

// group puts the mark between groups of three digits when there are at least
// that many digits.
func group(whole, mark string, least int) string {
	if len(whole) < least {
		return whole
	}
	var b strings.Builder
	for i := range len(whole) {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteString(mark)
		}
		b.WriteByte(whole[i])
	}
	return b.String()
}

// Least returns how many decimals of this unit the trade writes at least: shims
// measured in inches are written in thousandths, 0.020 in. (Common practice, no
// source.)
func (k Kind) Least(u Unit) int {
	if k == Thickness && u == inches {
		return 3
	}
	return 0
}

// Finest returns the decimal places of this unit beyond which a worked-out
// number says nothing: nobody reads a dial to a hundredth of a bar. (Common
// practice, no source.) A number too small for that still shows two significant
// digits.
func (k Kind) Finest(u Unit) int {
	const enough = 9
	if k == Thickness {
		return enough
	}
	switch u.Name {
	case "psi", "lb", "kg":
		return 0
	case "bar", "mm", "%", "°":
		return 1
	case "in", "MPa":
		return 2
	}
	return enough
}
