package balance_test

import (
	"fmt"

	"plainlift/calc/balance"
)

// A tractor of 4000 kg, 1600 in front and 2400 in the rear, carries 900 kg 1.7 m
// behind its rear axle. In kilograms, as only ratios count.
//
// Source: the rule for ballast in several operator's manuals (second-hand), the
// case worked as fractions.
func Example() {
	m := balance.Machine{Front: 1600, Rear: 2400, Wheelbase: 2.4, Reach: 1.5, Ballast: 900, BallastX: 1.7}
	fmt.Printf("front %.1f, rear %.1f\n", m.FrontAxle(0), m.RearAxle(0))
	fmt.Printf("tips with %.0f in front\n", m.TipLoad())
	// Output:
	// front 962.5, rear 3937.5
	// tips with 6300 in front
}
