package gauge_test

import (
	"fmt"

	"plainlift/calc/gauge"
)

// A class 1.6 gauge of 0 to 250 bar, its body at 60 °C: the warmth can cost as
// much as the class (a maker's operating instructions quoting EN 837-1,
// second-hand).
func Example() {
	const bar = 1e5
	class, _ := gauge.Lookup("1.6")
	fmt.Printf("class ±%.1f bar\n", class.Limit(250*bar, 180*bar)/bar)
	fmt.Printf("warmth ±%.1f bar\n", gauge.Temperature(250*bar, 333.15)/bar)
	// Output:
	// class ±4.0 bar
	// warmth ±4.0 bar
}
