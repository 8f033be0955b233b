package lift_test

import (
	"fmt"

	"plainlift/calc/lift"
)

// Two percent of pressure is about two percent of lift (common practice, no
// source), somewhat more when arms and tool take their part.
func ExampleShare() {
	fmt.Printf("floor %.1f %%\n", 100*lift.Share(100, 102, 0))
	fmt.Printf("arms and tool 30 %% of the lift: %.1f %%\n", 100*lift.Share(100, 102, 0.3))
	// Output:
	// floor 2.0 %
	// arms and tool 30 % of the lift: 2.6 %
}
