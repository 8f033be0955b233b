package hydraulic_test

import (
	"fmt"

	"plainlift/calc/hydraulic"
)

// Esposito, Fluid Power with Applications, Ex. 8-2: a relief valve that passes
// 20 gpm at 1,000 psi loses 11.7 hp.
func ExamplePower() {
	const psi, gpm, hp = 6894.757293168361, 6.30901964e-05, 745.699871582270
	fmt.Printf("%.1f hp\n", hydraulic.Power(1000*psi, 20*gpm)/hp)
	// Output: 11.7 hp
}

// Esposito, Fluid Power with Applications, Ex. 9-2: a piston of 1.5 in under
// 2,000 lbf carries 1,132 psi.
func ExampleCylinder_CapArea() {
	const inch, lbf, psi = 0.0254, 4.4482216152605, 6894.757293168361
	c := hydraulic.Cylinder{Bore: 1.5 * inch, Rod: 0.5 * inch, Count: 1}
	fmt.Printf("%.0f psi\n", 2000*lbf/c.CapArea()/psi)
	// Output: 1132 psi
}
