package checks

import "plainlift/calc/doubt"

// Student's extra hours of sleep under two drugs, as statistics programs carry
// them.
var (
	sleepFirst  = []float64{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0}
	sleepSecond = []float64{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4}
)

const (
	sleepSource = "Student's sleep data, Welch's test in a statistics program's manual"
	carsSource  = "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3"
)

// sleepApart is the difference of the two means with its scatter.
func sleepApart() doubt.Sum {
	m1, s1 := doubt.StdDev(sleepFirst)
	m2, s2 := doubt.StdDev(sleepSecond)
	u, dof := doubt.Difference(doubt.Repeats{N: len(sleepFirst), S: s1}, doubt.Repeats{N: len(sleepSecond), S: s2})
	return doubt.Sum{Mid: m1 - m2, Scale: u, DOF: dof}
}

// cars are the miles to the gallon of 249 cars of one country and 79 of another.
func cars() (u, dof float64) {
	return doubt.Difference(doubt.Repeats{N: 249, S: 6.414700}, doubt.Repeats{N: 79, S: 6.107710})
}

// differences are differences of two means.
var differences = []Check{
	{What: "Difference of two means of ten, lower end, 95 %", Source: sleepSource, Status: Memory, Unit: "h", Printed: "-3.3654832",
		Got: func() float64 { lo, _ := sleepApart().Dist().Interval(0.95); return lo }},
	{What: "The same, upper end", Source: sleepSource, Status: Memory, Unit: "h", Printed: "0.2054832",
		Got: func() float64 { _, hi := sleepApart().Dist().Interval(0.95); return hi }},
	{What: "Its degrees of freedom", Source: sleepSource, Status: Memory, Printed: "17.776", Got: func() float64 { return sleepApart().DOF }},
	{What: "Difference of the means of 249 and 79, standard uncertainty, pooled", Source: carsSource, Status: Memory, Printed: "0.8190135",
		Got: func() float64 { u, _ := cars(); return u }},
	{What: "Its degrees of freedom", Source: carsSource, Status: Memory, Printed: "326", Got: func() float64 { _, dof := cars(); return dof }},
}
