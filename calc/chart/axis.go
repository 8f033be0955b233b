package chart

import (
	"math"
	"strconv"
	"strings"
)

// Ticks returns the round numbers from lo to hi, at most most of them, in
// steps of 1, 2 or 5 times a power of ten: the finest such step that fits.
// It returns nil unless lo <= hi, both are finite and most is at least 1.
func Ticks(lo, hi float64, most int) []float64 {
	size := hi - lo
	if !(size >= 0) || math.IsInf(size, 0) || most < 1 {
		return nil
	}
	// Below this size neighbouring numbers cannot be told apart, or divided.
	if size <= 1e-12*max(math.Abs(lo), math.Abs(hi)) || size < 1e-280 {
		return []float64{lo}
	}
	const slack = 1e-9 // of a step: lets 0.3 count as a multiple of 0.1
	for e := int(math.Floor(math.Log10(size / float64(most)))); ; e++ {
		for _, m := range []float64{1, 2, 5} {
			first := math.Ceil(multiple(lo, m, e) - slack)
			last := math.Floor(multiple(hi, m, e) + slack)
			if last-first+1 > float64(most) {
				continue
			}
			var ticks []float64
			for i := first; i <= last; i++ {
				ticks = append(ticks, times(i*m, e))
			}
			return ticks
		}
	}
}

// times returns v·10^e. It divides for a negative e, as 3/10 is nearer to 0.3 than 3·0.1 is.
func times(v float64, e int) float64 {
	if e < 0 {
		return v/math.Pow10(-e) + 0 // + 0 turns −0 into 0
	}
	return v*math.Pow10(e) + 0
}

// multiple returns how many times m·10^e goes into v.
func multiple(v, m float64, e int) float64 { return times(v, -e) / m }

// extent is a range of numbers along one axis; empty while min > max.
type extent struct{ min, max float64 }

func (e extent) size() float64 { return e.max - e.min }

// largest is the greatest magnitude that an axis shows.
const largest = 1e15

// include stretches the extent over v, if v can be shown.
func (e *extent) include(v float64) {
	if math.Abs(v) <= largest { // false for NaN
		e.min, e.max = min(e.min, v), max(e.max, v)
	}
}

// widen grows the extent to size about its middle.
func (e *extent) widen(size float64) {
	by := (size - e.size()) / 2
	e.min, e.max = e.min-by, e.max+by
}

// bounds returns the range that the axis shows, fitting it to the marks where
// the declaration gives none. Its size is never zero.
func (a Axis) bounds(marks extent) extent {
	e := extent{a.Min, a.Max}
	if !(a.Min < a.Max) || math.IsInf(a.Min, 0) || math.IsInf(a.Max, 0) {
		e = marks
		if e.min > e.max {
			return extent{0, 1}
		}
		pad := 0.05 * e.size()
		if e.min != 0 {
			e.min -= pad
		}
		if e.max != 0 {
			e.max += pad
		}
	}
	e.min, e.max = max(e.min, -largest), min(e.max, largest)
	if e.min > e.max { // a declared range beyond the largest number
		e.min, e.max = e.max, e.min
	}
	most := max(math.Abs(e.min), math.Abs(e.max))
	if least := max(1e-9*most, 1e-12); e.size() < least {
		e.widen(max(0.2*most, 2*least))
	}
	return e
}

// texts returns what to write at each tick.
func (a Axis) texts(ticks []float64) []string {
	texts := make([]string, len(ticks))
	step := 0.0
	if len(ticks) > 1 {
		step = ticks[1] - ticks[0]
	}
	for i, v := range ticks {
		if a.Names != nil {
			texts[i] = oneLine(a.Names[i], width/3-margin-2)
		} else if a.Format != nil {
			texts[i] = oneLine(a.Format(v), width/3-margin-2)
		} else {
			texts[i] = plainNumber(v, step)
		}
	}
	return texts
}

// fitTicks returns as many ticks as have room for their numbers side by side.
func (a Axis) fitTicks(s scale) ([]float64, []string) {
	for most := 8; most > 1; most-- {
		ticks := Ticks(s.min, s.max, most)
		texts := a.texts(ticks)
		end, fits := math.Inf(-1), true
		for i, t := range texts {
			w := textWidth(t)
			mid := tickMiddle(s.at(ticks[i]), w)
			fits = fits && mid-w/2 > end
			end = mid + w/2 + 10
		}
		if fits {
			return ticks, texts
		}
	}
	ticks := Ticks(s.min, s.max, 1)
	return ticks, a.texts(ticks)
}

// tickMiddle keeps a number w wide, wanted at x, inside the drawing.
func tickMiddle(x, w float64) float64 {
	return min(max(x, 3+w/2), width-3-w/2)
}

// plainNumber writes v with the decimals that a step needs (0: those of v) and
// commas between thousands; with an exponent when it would be long.
func plainNumber(v, step float64) string {
	if v == 0 {
		return "0"
	}
	if a := math.Abs(v); a >= 1e9 || step > 0 && step < 1e-5 || step == 0 && a < 1e-4 {
		return strings.ReplaceAll(strconv.FormatFloat(v, 'g', 6, 64), "-", "−")
	}
	places := -1
	if step > 0 {
		places = max(0, int(-math.Floor(math.Log10(step)+1e-9)))
	} else {
		v = math.Round(v*1e4) / 1e4
	}
	s := strconv.FormatFloat(math.Abs(v), 'f', places, 64)
	for i := strings.IndexByte(s+".", '.') - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	if v < 0 {
		s = "−" + s
	}
	return s
}
