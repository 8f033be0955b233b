package unit

import (
	"math"
	"strconv"
	"strings"
)

const digits = "0123456789"

// reading is what scan made of the number at the start of a text.
type reading struct {
	x     float64 // the number; a lone comma before three digits taken as thousands
	comma float64 // the same with that comma as a decimal comma; NaN when there is no doubt
	rest  string  // what follows the number, trimmed
}

// scan reads the number at the start of s, which plainText has prepared. What
// went wrong, if anything, comes back as the middle of a sentence: the typed
// text stands before it.
//
// The forms are: digits with a decimal point or comma; thousands in groups of
// three behind commas, points or single spaces; an exponent; a fraction, alone
// or after a whole number ("1/2", "1 1/2", "1-1/2").
func scan(s string) (r reading, problem string) {
	const notNumber = "is not a number"
	r.comma = math.NaN()
	sign := 1.0
	if s != "" && (s[0] == '-' || s[0] == '+') {
		if s[0] == '-' {
			sign = -1
		}
		s = strings.TrimLeft(s[1:], " ")
	}
	run, s := cut(s, digits+".,")
	if !strings.ContainsAny(run, digits) {
		return r, notNumber
	}
	if num, den, rest, ok := fraction(run + s); ok { // "1/2"
		r.x, r.rest = sign*num/den, rest
		return r, judge(r.x, den)
	}
	run, s, spaced := joinGroups(run, s)
	number, other := strings.Replace(run, ",", ".", 1), ""
	if !spaced {
		if twoReadings(run) {
			return r, "looks like two numbers"
		}
		if number, other = separators(run); number == "" {
			return r, notNumber
		}
	}
	if onlyDigits(number) && s != "" && (s[0] == ' ' || s[0] == '-') { // "1 1/2", "1-1/2"
		if num, den, rest, ok := fraction(strings.TrimLeft(s[1:], " ")); ok {
			whole, _ := strconv.ParseFloat(number, 64)
			r.x, r.rest = sign*(whole+num/den), rest
			return r, judge(r.x, den)
		}
	}
	exp, s := exponent(s)
	x, err := strconv.ParseFloat(number+exp, 64)
	if err != nil {
		return r, "is too large" // the only way these digits can fail
	}
	r.x, r.rest = sign*x, strings.TrimSpace(s)
	if other != "" {
		x, _ = strconv.ParseFloat(other+exp, 64)
		r.comma = sign * x
	}
	return r, ""
}

// judge names what is wrong with a quotient, or nothing.
func judge(x, den float64) string {
	switch {
	case den == 0:
		return "divides by zero"
	case math.IsInf(x, 0) || math.IsNaN(x):
		return "is too large"
	}
	return ""
}

// separators reads a run of digits, points and commas. It returns the number
// with a point and no grouping, "" if it is none; other is the second reading
// of a lone comma before three digits ("1,234"), which may be thousands or a
// decimal comma, and "" when there is no doubt.
func separators(run string) (number, other string) {
	commas, points := strings.Count(run, ","), strings.Count(run, ".")
	switch {
	case commas == 0 && points <= 1:
		return run, ""
	case commas == 0: // "1.234.567"
		return ungroup(run, "."), ""
	case commas == 1 && points == 0:
		before, after, _ := strings.Cut(run, ",")
		decimal := before + "." + after
		if whole := ungroup(run, ","); whole != "" {
			return whole, decimal
		}
		return decimal, ""
	case points == 0: // "1,234,567"
		return ungroup(run, ","), ""
	case points == 1 && strings.LastIndex(run, ",") < strings.Index(run, "."): // "1,234.5"
		return groupsAnd(run, ",", "."), ""
	case commas == 1 && strings.LastIndex(run, ".") < strings.Index(run, ","): // "1.234,5"
		return groupsAnd(run, ".", ","), ""
	}
	return "", ""
}

// twoReadings reports whether the run is two readings typed without a space,
// "2600,2620", which must not pass for one reading with four decimals.
func twoReadings(run string) bool {
	before, after, _ := strings.Cut(run, ",")
	return len(before) >= 4 && len(after) >= 4 && onlyDigits(before) && onlyDigits(after)
}

// groupsAnd reads thousands behind one mark and decimals behind the other.
func groupsAnd(run, group, mark string) string {
	whole, decimals, _ := strings.Cut(run, mark)
	if whole = ungroup(whole, group); whole == "" {
		return ""
	}
	return whole + "." + decimals
}

// ungroup takes the marks out of a whole number in groups of three; "" unless
// it is one: "0,010" has a decimal comma, since no whole number begins with 0.
func ungroup(s, mark string) string {
	first, rest, found := strings.Cut(s, mark)
	if !found || first == "" || len(first) > 3 || first[0] == '0' {
		return ""
	}
	for group := range strings.SplitSeq(rest, mark) {
		if len(group) != 3 {
			return ""
		}
	}
	return strings.ReplaceAll(s, mark, "")
}

// joinGroups joins groups of three digits behind single spaces, "2 612,5", to
// the run that stands before them. A group before "/" is a fraction's numerator.
func joinGroups(run, s string) (joined, rest string, spaced bool) {
	if !onlyDigits(run) || len(run) > 3 || run[0] == '0' {
		return run, s, false
	}
	joined = run
	for strings.HasPrefix(s, " ") {
		group, after := cut(s[1:], digits)
		if len(group) != 3 || strings.HasPrefix(after, "/") {
			break
		}
		joined, s, spaced = joined+group, after, true
		if mark, beyond := cut(s, ".,"); len(mark) == 1 { // the decimals end it
			decimals, beyond := cut(beyond, digits)
			return joined + mark + decimals, beyond, true
		}
	}
	return joined, s, spaced
}

// fraction reads digits, "/", digits at the start of s.
func fraction(s string) (num, den float64, rest string, ok bool) {
	above, s := cut(s, digits)
	if above == "" || !strings.HasPrefix(s, "/") {
		return 0, 0, "", false
	}
	below, s := cut(s[1:], digits)
	if below == "" {
		return 0, 0, "", false
	}
	num, _ = strconv.ParseFloat(above, 64) // digits only: an error means infinity
	den, _ = strconv.ParseFloat(below, 64)
	return num, den, strings.TrimSpace(s), true
}

// exponent takes "e3", "E-3" or "e+3" off the start of s.
func exponent(s string) (exp, rest string) {
	if s == "" || s[0] != 'e' && s[0] != 'E' {
		return "", s
	}
	n := 1
	if n < len(s) && (s[n] == '-' || s[n] == '+') {
		n++
	}
	power, rest := cut(s[n:], digits)
	if power == "" {
		return "", s
	}
	return s[:n] + power, rest
}

// cut splits s after its longest start made of the given bytes.
func cut(s, set string) (start, rest string) {
	n := 0
	for n < len(s) && strings.IndexByte(set, s[n]) >= 0 {
		n++
	}
	return s[:n], s[n:]
}

func onlyDigits(s string) bool {
	_, rest := cut(s, digits)
	return s != "" && rest == ""
}
