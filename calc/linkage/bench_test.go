package linkage

import "testing"

func BenchmarkBudget(b *testing.B) {
	s := demo.Spread(usual)
	for b.Loop() {
		s.At(60*inch).Budget(2610*psi, 0)
	}
}

// All that a move of the height's slider asks for: a curve of 50 heights at two
// pressures with the band of each, the budgets, and the other means.
func BenchmarkWorksheet(b *testing.B) {
	for b.Loop() {
		k := demo.Arc()
		low, high := k.Range()
		s := demo.Spread(usual)
		for i := range 50 {
			at := s.At(low + (high-low)*float64(i)/49)
			at.HalfWidth(2610*psi, 0)
			at.HalfWidth(2735*psi, 0)
		}
		at := s.At(60 * inch)
		at.Budget(2610*psi, 0)
		s.Top()
		k.Means(2610*psi, 0, 60*inch, 500)
	}
}
