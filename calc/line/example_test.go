package line_test

import (
	"fmt"

	"plainlift/calc/checks/points"
	"plainlift/calc/line"
)

// Calibration line of a thermometer, JCGM 100:2008, H.3 (read): correction
// against temperature from 20 °C, and the correction at 30 °C.
func ExampleOrdinary() {
	l, err := line.Ordinary(points.Thermometer.X, points.Thermometer.Y)
	if err != nil {
		fmt.Println(err)
		return
	}
	at30, u := l.At(10)
	fmt.Printf("%.4f(%.4f) + %.5f(%.5f)·x\n", l.Intercept, l.InterceptU, l.Slope, l.SlopeU)
	fmt.Printf("%.4f(%.4f) at 30 °C\n", at30, u)
	// Output:
	// -0.1712(0.0029) + 0.00218(0.00067)·x
	// -0.1494(0.0041) at 30 °C
}
