package strength_test

import (
	"fmt"

	"plainlift/calc/strength"
)

// Lamé's cylinder, bore 50 and outside 60 mm, 20 MPa inside (computed).
func ExampleHoop() {
	fmt.Printf("%.3f MPa at the bore\n", strength.Hoop(20e6, 0.050, 0.060, 0.050)/1e6)
	fmt.Printf("%.3f MPa outside\n", strength.Hoop(20e6, 0.050, 0.060, 0.060)/1e6)
	// Output:
	// 110.909 MPa at the bore
	// 90.909 MPa outside
}

// Bhandari, Design of Machine Elements, Ex. 22.4 (read): 250 mm, 15 MPa, ultimate
// strength 340 MPa, factor 5, Poisson's ratio 0.27; the answer printed is 30 mm.
func ExampleClavarinoWall() {
	fmt.Printf("%.3f mm\n", strength.ClavarinoWall(15e6, 340e6/5, 0.27, 0.250)*1000)
	// Output:
	// 29.623 mm
}

// A rod of 30 mm, 1 m between its pins, 206 GPa (computed).
func ExampleEuler() {
	fmt.Printf("%.2f N\n", strength.Euler(206e9, strength.Ring(0, 0.030), 1))
	// Output:
	// 80839.18 N
}

// A pin of 25 mm that carries 40 kN in double shear (computed).
func ExampleDoubleShear() {
	fmt.Printf("%.6f MPa\n", strength.DoubleShear(40e3, 0.025)/1e6)
	// Output:
	// 40.743665 MPa
}
