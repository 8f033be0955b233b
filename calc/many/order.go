package many

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"plainlift/calc"
)

// Columns of the results that are not the file's: a kept column is its number in
// the file, a figure FirstFigure plus its number.
const (
	ByFile      = -1 // as in the file
	ByVerdict   = -2
	ByError     = -3
	FirstFigure = 1_000_000
)

// Order returns the numbers of the answered rows in the order of a column:
// figures by value, verdicts in their declared order, words by the alphabet
// with numbers by size. Rows with an error, and then rows without the value,
// come last either way.
func (b *Batch) Order(by int, down bool) []int {
	words := false
	if figures := b.Worksheet.Answers(); by >= FirstFigure && by-FirstFigure < len(figures) {
		words = figures[by-FirstFigure].Round == calc.Words
	}
	s := &sorting{at: make([]int, len(b.Results)), number: make([]float64, len(b.Results)), text: make([]string, len(b.Results)), down: down}
	for i := range b.Results {
		s.at[i] = i
		s.number[i], s.text[i] = b.key(&b.Results[i], by, words)
	}
	sort.Sort(s)
	return s.at
}

// key is what a row is sorted by: numbers before words, Inf when there is
// neither, NaN for an error. A figure of words has no number.
func (b *Batch) key(r *Result, by int, words bool) (number float64, text string) {
	switch {
	case by == ByFile:
		return float64(r.Row), ""
	case by == ByError:
		if r.Error == "" {
			return math.Inf(1), ""
		}
		return 0, r.Error
	case r.Error != "":
		return math.NaN(), ""
	case by == ByVerdict:
		return float64(r.Branch), ""
	case by >= FirstFigure:
		if i := by - FirstFigure; i < len(r.Figures) {
			if f := r.Figures[i]; f.SI == f.SI {
				return f.SI, ""
			} else if words {
				return math.MaxFloat64, f.Text
			}
		}
	case by >= 0 && by < len(b.Columns):
		cell := strings.TrimSpace(b.File.Rows[r.Row].Cells[by])
		if x, err := strconv.ParseFloat(cell, 64); err == nil && x == x {
			return x, ""
		} else if cell != "" {
			return math.MaxFloat64, strings.ToLower(cell)
		}
	}
	return math.Inf(1), ""
}

type sorting struct {
	at     []int // rows, in their order
	number []float64
	text   []string
	down   bool
}

func (s *sorting) Len() int      { return len(s.at) }
func (s *sorting) Swap(i, j int) { s.at[i], s.at[j] = s.at[j], s.at[i] }
func (s *sorting) Less(i, j int) bool {
	a, b := s.at[i], s.at[j]
	x, y := s.number[a], s.number[b]
	if p, q := last(x), last(y); p != q {
		return p < q
	} else if p > 0 {
		return a < b
	}
	switch {
	case x != y:
		return x < y != s.down
	case s.text[a] != s.text[b]:
		return s.text[a] < s.text[b] != s.down
	}
	return a < b
}

// last is 0 for a row that has something to be sorted by, then those without,
// then errors.
func last(x float64) int {
	switch {
	case math.IsNaN(x):
		return 2
	case math.IsInf(x, 1):
		return 1
	}
	return 0
}
