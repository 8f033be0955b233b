package checks

import (
	"math"
	"strconv"
	"strings"
)

// finest is how closely the digits of a value are asked for, relative to it:
// the last few of a float64 are rounding.
const finest = 1e-12

// published is what a source says, in numbers.
type published struct {
	from, to float64 // the same, unless a range
	tol      float64 // how far outside them still agrees
	exponent int     // of ten, as printed
	scaled   bool    // printed with one
}

func (c *Check) published() published {
	if c.Printed == "" {
		return published{from: c.Want, to: c.Want, tol: c.Tol}
	}
	lo, hi, isRange := strings.Cut(c.Printed, " to ")
	p := read(lo)
	if isRange {
		p.to = read(hi).to
	}
	if c.Tol > 0 {
		p.tol = c.Tol
	}
	return p
}

// read returns what one printed number says. One that is not understood agrees
// with nothing.
func read(s string) published {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		x = math.NaN()
	}
	mantissa, exponent, scaled := strings.Cut(s, "e")
	e, _ := strconv.Atoi(exponent)
	_, decimals, _ := strings.Cut(mantissa, ".")
	// The hair more lets a tie agree that only rounding has moved.
	half := 0.5 * math.Pow10(e-len(decimals)) * (1 + 1e-9)
	return published{x, x, max(half, finest*math.Abs(x)), e, scaled}
}

// Published returns what the source says as text.
func (c *Check) Published() string {
	if c.Printed == "" {
		return c.Digits(c.Want)
	}
	lo, hi, isRange := strings.Cut(c.Printed, " to ")
	if isRange {
		return shown(lo) + " to " + shown(hi)
	}
	return shown(lo)
}

// Digits returns a value as text, with one digit more than the source, or a
// float64, can say anything about.
func (c *Check) Digits(x float64) string {
	p := c.published()
	// Twice the tolerance is one unit of the last digit that counts.
	last := int(math.Floor(math.Log10(max(2*p.tol, finest*math.Abs(x))) + 1e-6))
	text := strconv.FormatFloat(x/math.Pow10(p.exponent), 'f', max(0, p.exponent-last+1), 64)
	if p.scaled {
		text += "e" + strconv.Itoa(p.exponent)
	}
	return shown(text)
}

// Allowed returns how far from what is published still agrees, as text: half a
// unit of the last digit, most often.
func (c *Check) Allowed() string {
	tol := strconv.FormatFloat(c.published().tol, 'g', 2, 64)
	return shown(strings.Replace(tol, "e-0", "e-", 1))
}

var superscripts = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴",
	"5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

// shown writes a number for reading: a true minus, and the power of ten raised.
func shown(s string) string {
	mantissa, exponent, scaled := strings.Cut(s, "e")
	mantissa = strings.ReplaceAll(mantissa, "-", "−")
	if !scaled {
		return mantissa
	}
	return mantissa + "·10" + superscripts.Replace(exponent)
}
