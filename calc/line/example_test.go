package line_test

import (
	"fmt"

	"plainlift/calc/line"
)

// Calibration line of a thermometer, JCGM 100:2008, H.3 (read): correction
// against temperature from 20 °C, and the correction at 30 °C.
func ExampleOrdinary() {
	x := []float64{1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511}
	b := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	l, err := line.Ordinary(x, b)
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
