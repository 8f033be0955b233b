package unit_test

import (
	"fmt"

	"plainlift/calc/unit"
)

func ExampleParse() {
	for _, typed := range []string{"2,610", "185 bar", "16,3 MPa"} {
		v, err := unit.Parse(typed, unit.Pressure, unit.Unit{}, unit.US)
		fmt.Printf("%s: %.0f Pa, %v\n", v.Canonical(), v.SI, err)
	}
	// Output:
	// 2610 psi: 17995317 Pa, <nil>
	// 185 bar: 18500000 Pa, <nil>
	// 16.3 MPa: 16300000 Pa, <nil>
}

func ExampleParse_ambiguous() {
	_, err := unit.Parse("1,234", unit.Pressure, unit.Unit{}, unit.Metric)
	fmt.Println(err)
	// Output: "1,234" can be read two ways: choose 1234 bar or 1.234 bar.
}

func ExampleParse_wrongUnit() {
	_, err := unit.Parse("2,600 lb", unit.Pressure, unit.Unit{}, unit.US)
	fmt.Println(err)
	// Output: "2,600 lb" has "lb", which is not a pressure; use psi, bar, MPa, kPa or kgf/cm².
}

func ExampleDecimals() {
	fmt.Println(unit.Decimals(2655.4, 0, unit.US))
	fmt.Println(unit.Decimals(-0.0004, 2, unit.US))
	fmt.Println(unit.Decimals(183.08, 1, unit.Metric))
	// Output:
	// 2,655
	// 0.00
	// 183.1
}

func ExamplePlaceTwo() {
	half := 76.2
	place := unit.PlaceTwo(half)
	fmt.Println(unit.Decimals(2610-half, place, unit.US), "to", unit.Decimals(2610+half, place, unit.US), "psi")
	// Output: 2,534 to 2,686 psi
}

func ExampleUnit_Edit() {
	fmt.Println(unit.Pressure.Shown(unit.Metric).Edit(17995317))
	// Output: 179.953
}

func ExampleSplitList() {
	for _, item := range unit.SplitList("0.010 in : 2,655 psi; 0.020 in : 2,701 psi") {
		thickness, reading, _ := unit.SplitPair(item)
		fmt.Println(thickness, "gave", reading)
	}
	// Output:
	// 0.010 in gave 2,655 psi
	// 0.020 in gave 2,701 psi
}
