package relief_test

import (
	"fmt"

	"plainlift/calc/relief"
)

const (
	inch = 0.0254
	lbf  = 4.4482216152605
	psi  = 6894.757293168361
)

// Esposito, Fluid Power with Applications, Ex. 8-1 (read): seat 0.75 in², spring
// 2500 lb/in shortened 0.20 in, poppet 0.10 in off its seat at full flow. What a
// shim adds follows from it (computed).
func ExampleShimRate() {
	const k, seat = 2500 * lbf / inch, 0.75 * inch * inch
	fmt.Printf("cracks at %.0f psi\n", relief.CrackingPressure(k, 0.20*inch, seat)/psi)
	fmt.Printf("full flow at %.0f psi\n", relief.FullFlow(k, 0.20*inch, 0.10*inch, seat)/psi)
	fmt.Printf("0.010 in of shim adds %.2f psi\n", relief.ShimRate(k, seat)*0.010*inch/psi)
	// Output:
	// cracks at 667 psi
	// full flow at 1000 psi
	// 0.010 in of shim adds 33.33 psi
}

// Bhandari, Design of Machine Elements, Ex. 10.1 (inputs read): wire 7 mm, mean
// diameter 42 mm, 8 active coils, G 81 370 MPa (rate computed).
func ExampleSpringRate() {
	fmt.Printf("%.2f N/mm\n", relief.SpringRate(81370e6, 7e-3, 42e-3, 8)/1000)
	// Output:
	// 41.20 N/mm
}

// JCGM 106:2012, 7.3, example 1 (read): y −5.47, u 0.05, upper limit −5.40;
// it conforms with probability 0.92.
func ExamplePOver() {
	fmt.Printf("%.2f\n", 1-relief.POver(-5.47, 0.05, 0, -5.40))
	// Output:
	// 0.92
}
