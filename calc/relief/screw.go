package relief

import "math"

// Turns returns how many turns of an adjusting screw a thickness of shim stands
// for, rounded down to an eighth of a turn:
//
//	⌊8·t/pitch⌋/8
//
// t is the thickness (m, from 0), pitch the advance of the screw in one turn (m,
// above 0), which for the usual single thread is the pitch of the thread.
func Turns(t, pitch float64) float64 {
	if !(t >= 0) || !(pitch > 0) {
		return math.NaN()
	}
	const rounding = 1e-9 // a whole eighth counts as reached
	return math.Floor(8*t/pitch+rounding) / 8
}
