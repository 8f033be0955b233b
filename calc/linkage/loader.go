// Package linkage says what a pressure lifts on a front loader, from what a tape
// measures on it: where the boom is for a height, how far the cylinders push for
// a turn of it, what that lifts, and what the tape's doubt does to the answer.
//
// The model is planar statics by virtual work: at every height the cylinders'
// force times their travel is the load times its rise, with the boom and the
// tool on top,
//
//	F·dℓ/dθ = L·x_L + W_boom·x_boom + W_tool·x_tool
//
// with θ the angle of the line pivot–bucket pin over level, ℓ the cylinder's
// length between pins and x the level distance from the pivot (the rise for a
// turn). The load is held or just moves; friction is in the efficiency; the
// frame and the tyres stand still. Lengths are in metre between pin centres,
// heights over the ground, forces in newton, pressures in pascal, angles in
// radian. "Ahead" is towards the bucket and positive.
//
//	arc := l.Arc()               // once for a loader
//	at := arc.At(h)              // once for a height
//	at.Lift(p, back)             // for each pressure
//
// Check first: what a loader cannot be gives NaN here, and words there.
package linkage

// Loader is a loader as a tape, its cylinders' sizes and a scale give it.
type Loader struct {
	PivotH    float64 // height of the boom's pivot
	BaseH     float64 // height of the cylinder's base pin
	PivotBase float64 // pivot to base pin; negative when the base pin is behind the pivot
	Boom      float64 // pivot to bucket pin
	PivotRod  float64 // pivot to rod pin
	RodTip    float64 // rod pin to bucket pin
	RodAbove  bool    // the rod pin is above the line pivot–bucket pin

	Bore, Rod  float64 // diameters of the piston and of the rod
	Count      float64 // cylinders side by side
	Closed     float64 // pin to pin, all the way in
	Stroke     float64
	Efficiency float64 // part of the push that gets past friction

	BoomW  float64 // weight of the boom (N)
	BoomCG float64 // its centre from the pivot, along the line to the bucket pin
	ToolW  float64 // weight of bucket or forks (N)
	ToolCG float64 // its centre ahead of the bucket pin, level
	LoadX  float64 // the load ahead of the bucket pin, level
	Level  bool    // a parallel linkage keeps the tool level
}

// Measure names one thing that is measured on a loader.
type Measure int

// The measures. Those up to Stroke shape the arc; those up to LoadX a tape takes.
const (
	PivotH Measure = iota
	BaseH
	PivotBase
	Boom
	PivotRod
	RodTip
	Closed
	Stroke
	BoomCG
	ToolCG
	LoadX
	Efficiency
	BoomW
	ToolW
	Pressure // of the oil; no field of a Loader
	Bore
	Rod
)

var names = [...]string{
	"height of the pivot", "height of the base pin", "pivot to base pin", "pivot to bucket pin", "pivot to rod pin",
	"rod pin to bucket pin", "closed length", "stroke", "centre of the boom", "centre of the tool", "load ahead of the pin",
	"efficiency", "weight of the boom", "weight of the tool", "pressure", "bore", "rod",
}

// String returns the measure in words.
func (m Measure) String() string { return names[m] }

// value returns where l keeps a measure; nil for Pressure.
func (l *Loader) value(m Measure) *float64 {
	return [...]*float64{
		&l.PivotH, &l.BaseH, &l.PivotBase, &l.Boom, &l.PivotRod, &l.RodTip, &l.Closed, &l.Stroke, &l.BoomCG, &l.ToolCG, &l.LoadX,
		&l.Efficiency, &l.BoomW, &l.ToolW, nil, &l.Bore, &l.Rod,
	}[m]
}
