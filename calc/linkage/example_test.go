package linkage_test

import (
	"fmt"

	"plainlift/calc/linkage"
)

// A lift table is a loader whose boom is a link and whose tool stays level: half
// of a 1000 kg crate on one of two linkages.
//
// Source: Beer and Johnston, Statics (from memory): 5.15 kN, worked there with a
// rounded length.
func Example() {
	table := linkage.Loader{
		PivotH: 1, BaseH: 1, PivotBase: 3.2, Boom: 1.4, PivotRod: 0.7, RodTip: 0.7,
		Bore: 0.05, Count: 1, Efficiency: 1, Level: true,
	}
	arc := table.Arc()
	at := arc.At(1 + 1.4*0.8660254) // the link at 60°
	area := 0.05 * 0.05 * 3.14159265 / 4
	fmt.Printf("%.2f kN\n", 500*9.81/at.Slope()*area/1000)
	// Output: 5.16 kN
}
