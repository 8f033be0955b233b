package chart

import (
	"math"
	"slices"
	"testing"
)

// Worked by hand from the rule: the finest step of 1, 2 or 5 times a power of
// ten that gives no more than so many numbers.
func TestTicks(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, tt := range []struct {
		lo, hi float64
		most   int
		want   []float64
	}{
		{0, 10, 6, []float64{0, 2, 4, 6, 8, 10}},
		{0, 10, 5, []float64{0, 5, 10}},
		{0, 10, 11, []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}},
		{0, 3200, 7, []float64{0, 500, 1000, 1500, 2000, 2500, 3000}},
		{2530, 2790, 6, []float64{2550, 2600, 2650, 2700, 2750}},
		{0, 0.048, 5, []float64{0, 0.01, 0.02, 0.03, 0.04}},
		{0, 1, 11, []float64{0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1}},
		{-7, 7, 3, []float64{-5, 0, 5}},
		{-0.3, 0.3, 3, []float64{-0.2, 0, 0.2}},
		{1, 9, 1, []float64{5}},
		{-1, 1, 1, []float64{0}},
		{1e13, 1e13 + 40, 5, []float64{1e13, 1e13 + 10, 1e13 + 20, 1e13 + 30, 1e13 + 40}},
		{1e15, 1e15 + 400, 5, []float64{1e15}}, // too near to each other to tell apart safely
		{2.5, 2.5, 4, []float64{2.5}},
		{1e-300, 3e-300, 4, []float64{1e-300}},
		{5, 1, 4, nil},
		{0, 10, 0, nil},
		{nan, 1, 4, nil},
		{0, inf, 4, nil},
		{-1.7e308, 1.7e308, 4, nil}, // the size overflows
	} {
		if got := Ticks(tt.lo, tt.hi, tt.most); !slices.Equal(got, tt.want) {
			t.Errorf("Ticks(%v, %v, %d) = %v, want %v", tt.lo, tt.hi, tt.most, got, tt.want)
		}
	}
	if z := Ticks(-1, 1, 3)[1]; math.Signbit(z) {
		t.Error("zero has a sign")
	}
}

func FuzzTicks(f *testing.F) {
	f.Add(0.0, 10.0, 5)
	f.Add(-1e300, 1e300, 3)
	f.Add(1e15, 1e15+1, 9)
	f.Fuzz(func(t *testing.T, lo, hi float64, most int) {
		most = most % 50
		ticks := Ticks(lo, hi, most)
		if len(ticks) > max(most, 0) {
			t.Fatalf("%d ticks, want at most %d", len(ticks), most)
		}
		slack := 1e-8*(hi-lo) + 1e-12*max(math.Abs(lo), math.Abs(hi))
		for i, v := range ticks {
			if !(v >= lo-slack && v <= hi+slack) {
				t.Fatalf("tick %v outside %v to %v", v, lo, hi)
			}
			if i > 0 && !(v > ticks[i-1]) {
				t.Fatalf("ticks do not rise: %v", ticks)
			}
		}
	})
}

func TestPlainNumber(t *testing.T) {
	for _, tt := range []struct {
		v, step float64
		want    string
	}{
		{2600, 50, "2,600"},
		{1000000, 500000, "1,000,000"},
		{0.01, 0.01, "0.01"},
		{0.3, 0.1, "0.3"},
		{1, 0.5, "1.0"},
		{0, 0.5, "0"},
		{-250, 50, "−250"},
		{-1250.5, 0.5, "−1,250.5"},
		{2e9, 1e9, "2e+09"},
		{3e-7, 1e-7, "3e−07"},
		{2.5, 0, "2.5"},
	} {
		if got := plainNumber(tt.v, tt.step); got != tt.want {
			t.Errorf("plainNumber(%v, %v) = %q, want %q", tt.v, tt.step, got, tt.want)
		}
	}
}

func TestBounds(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	none := extent{inf, -inf}
	for _, tt := range []struct {
		name  string
		axis  Axis
		marks extent
		want  extent
	}{
		{"declared", Axis{Min: 2, Max: 5}, extent{0, 100}, extent{2, 5}},
		{"fitted, 5 % more at each end", Axis{}, extent{2600, 2700}, extent{2595, 2705}},
		{"fitted from zero", Axis{}, extent{0, 100}, extent{0, 105}},
		{"fitted up to zero", Axis{}, extent{-100, 0}, extent{-105, 0}},
		{"nothing to fit", Axis{}, none, extent{0, 1}},
		{"one number", Axis{}, extent{50, 50}, extent{45, 55}},
		{"wrong way round", Axis{Min: 5, Max: 2}, extent{0, 10}, extent{0, 10.5}},
		{"not a number", Axis{Min: nan, Max: 2}, extent{0, 10}, extent{0, 10.5}},
		{"no end", Axis{Min: 0, Max: inf}, extent{0, 10}, extent{0, 10.5}},
		{"too large", Axis{Min: -1e300, Max: 1e300}, none, extent{-1e15, 1e15}},
	} {
		got := tt.axis.bounds(tt.marks)
		if math.Abs(got.min-tt.want.min) > 1e-9 || math.Abs(got.max-tt.want.max) > 1e-9 {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
	for _, a := range []Axis{{Min: 1e300, Max: 2e300}, {Min: 1, Max: 1 + 1e-15}, {Min: 0, Max: 5e-324}} {
		if got := a.bounds(none); !(got.size() > 0) {
			t.Errorf("%v to %v: shown range %v has no size", a.Min, a.Max, got)
		}
	}
}
