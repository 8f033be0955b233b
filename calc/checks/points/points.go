// Package points has the published points to which lines are fitted, for the
// tests of the lines and for the table of checks alike.
package points

import "math"

// Set is points that somebody published.
type Set struct {
	X, Y   []float64
	UX, UY []float64 // standard uncertainties, where they are part of the set
}

// Norris is NIST StRD, linear regression, Norris (read in two public test suites
// that quote it).
var Norris = Set{
	X: []float64{
		0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4,
		0.6, 775.5, 666.9, 338, 447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3,
		0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
	},
	Y: []float64{
		0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
		0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3,
		0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
	},
}

// NoInt1 is NIST StRD, linear regression, NoInt1 (read in a public test suite
// that quotes it). Its certified line goes through the origin.
var NoInt1 = Set{
	X: []float64{60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70},
	Y: []float64{130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140},
}

// Thermometer is the calibration of JCGM 100:2008, H.3, Table H.6 (read in a
// public transcription): temperature from 20 °C, °C, and correction, °C.
var Thermometer = Set{
	X: []float64{1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511},
	Y: []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160},
}

// Pearson is Pearson's data of 1901 with the weights that York gave them in 1966
// (quoted by public test suites); a weight is 1/u².
var Pearson = Set{
	X:  []float64{0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4},
	Y:  []float64{5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5},
	UX: fromWeights(1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1),
	UY: fromWeights(1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500),
}

func fromWeights(w ...float64) []float64 {
	u := make([]float64, len(w))
	for i := range w {
		u[i] = 1 / math.Sqrt(w[i])
	}
	return u
}

// Mirrored returns the set with each point given again on its other side of the
// origin: the line through both goes through the origin, and is the one that is
// held there through the set alone.
func (s Set) Mirrored() Set {
	return Set{X: mirrored(s.X), Y: mirrored(s.Y)}
}

func mirrored(x []float64) []float64 {
	all := append([]float64{}, x...)
	for _, v := range x {
		all = append(all, -v)
	}
	return all
}
