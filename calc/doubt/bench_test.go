package doubt

import "testing"

func BenchmarkDistLimits(b *testing.B) {
	for b.Loop() {
		Sum{Mid: 1, Rects: []float64{80, 5, 3}}.Dist()
	}
}

func BenchmarkDistRepeats(b *testing.B) {
	for b.Loop() {
		Sum{Mid: 1, Rects: []float64{80, 5, 3}, Scale: 4, DOF: 3}.Dist()
	}
}

// What a keystroke reads: a band, an interval, a curve of 100 points.
func BenchmarkDistRead(b *testing.B) {
	d := Sum{Mid: 1, Rects: []float64{80, 5, 3}, Scale: 4, DOF: 3}.Dist()
	for b.Loop() {
		d.Within(-50, 30)
		lo, hi := d.Interval(0.95)
		for i := range 100 {
			d.Density(lo + (hi-lo)*float64(i)/99)
		}
	}
}

// The same without a table: one limit with repeats.
func BenchmarkDistReadClosed(b *testing.B) {
	d := Sum{Mid: 1, Rects: []float64{80}, Scale: 4, DOF: 3}.Dist()
	for b.Loop() {
		d.Within(-50, 30)
		lo, hi := d.Interval(0.95)
		for i := range 100 {
			d.Density(lo + (hi-lo)*float64(i)/99)
		}
	}
}

func BenchmarkGainInterval(b *testing.B) {
	for b.Loop() {
		gains[0].Interval(0.95)
	}
}

func BenchmarkGainMillionTrials(b *testing.B) {
	for b.Loop() {
		s := NewSimulation(gains[0].Draw)
		s.Run(1_000_000)
		s.Summary(0.95)
	}
}

// As the worker runs it: in slices that a newer keystroke may cancel.
func BenchmarkGainMillionTrialsInSlices(b *testing.B) {
	for b.Loop() {
		s := NewSimulation(gains[0].Draw)
		for range 50 {
			s.Run(20_000)
		}
		s.Summary(0.95)
	}
}

func BenchmarkSumMillionTrials(b *testing.B) {
	for b.Loop() {
		s := NewSimulation(sums[0].Draw)
		s.Run(1_000_000)
		s.Summary(0.95)
	}
}
