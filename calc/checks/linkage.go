package checks

import (
	"math"

	"plainlift/calc/linkage"
)

const (
	levers    = "Esposito, Fluid Power with Applications, Ex. 6-5"
	beer      = "Beer and Johnston, Statics, hydraulic lift table by virtual work"
	rigid     = "cp, a rigid-body engine: bodies on pins, let go"
	fromPoint = "from coordinates, without an angle, to 50 digits"
)

// perPascal is a loader without weight whose one cylinder pushes a newton for
// each pascal.
func perPascal(l linkage.Loader) linkage.Loader {
	l.Bore, l.Count, l.Efficiency = math.Sqrt(4/math.Pi), 1, 1
	return l
}

// level returns what a 1000 lb load on a level lever takes of a cylinder that
// stands square to it, lbf: boom is pivot to load; rod, pivot to cylinder; gap,
// cylinder to load; all in inch.
func level(boom, rod, gap float64) func() float64 {
	return func() float64 {
		foot := (rod*rod + boom*boom - gap*gap) / (2 * boom) // the cylinder ahead of the pivot
		down := math.Copysign(30, foot)
		k := perPascal(linkage.Loader{
			PivotH: 50, BaseH: 50 - down, PivotBase: math.Copysign(math.Hypot(foot, down), foot),
			Boom: boom, PivotRod: rod, RodTip: gap,
		}).Arc()
		at := k.At(50)
		return 1000 / at.Slope()
	}
}

// liftTable is one of the two linkages of a lift table at 60°.
func liftTable() linkage.Pose {
	k := perPascal(linkage.Loader{
		PivotH: 1, BaseH: 1, PivotBase: 3.2, Boom: 1.4, PivotRod: 0.7, RodTip: 0.7, Level: true,
	}).Arc()
	return k.At(1 + 1.4*math.Sin(math.Pi/3))
}

// crate is the force of its cylinder under half of 1000 kg, kN.
func crate() float64 {
	at := liftTable()
	return 500 * 9.81 / at.Slope() / 1000
}

// arm is a loader made up for this site.
var arm = linkage.Loader{
	PivotH: 54 * inch, BaseH: 32 * inch, PivotBase: -24 * inch, Boom: 80 * inch, PivotRod: 34 * inch, RodTip: 47.25 * inch,
	Bore: 1.75 * inch, Rod: inch, Count: 2, Closed: 32.9 * inch, Stroke: 20.5 * inch, Efficiency: 0.95,
	BoomW: 260 * lbf, BoomCG: 38 * inch, ToolW: 290 * lbf, ToolCG: 10 * inch,
}

// armLifts returns what the arm, changed, lifts at 2,610 psi with its bucket
// pin at a height in inch, lbf.
func armLifts(height float64, change func(l *linkage.Loader)) func() float64 {
	return func() float64 {
		l := arm
		change(&l)
		k := l.Arc()
		at := k.At(height * inch)
		return at.Lift(2610*psi, 0) / lbf
	}
}

func asItIs(*linkage.Loader)     {}
func farOut(l *linkage.Loader)   { l.LoadX = 20 * inch }
func levelled(l *linkage.Loader) { l.LoadX, l.Level = 20*inch, true }
func ahead(l *linkage.Loader) {
	l.LoadX, l.PivotBase, l.RodAbove, l.Closed = 20*inch, 30*inch, true, 30*inch
}

// armTop returns the greatest height of the arm's bucket pin for a distance from
// pivot to base pin, both in inch.
func armTop(pivotBase float64) func() float64 {
	return func() float64 {
		l := arm
		l.PivotBase = -pivotBase * inch
		k := l.Arc()
		_, top := k.Range()
		return top / inch
	}
}

var arcs = []Check{
	{What: "Cylinder under a lever of the first class, 1000 lb on arms of 10 and 10 in", Source: levers, Status: Read, Unit: "lbf", Printed: "1000", Tol: 1e-6, Got: level(10, 10, 20)},
	{What: "The same, second class", Source: levers, Status: Read, Unit: "lbf", Printed: "500", Tol: 1e-6, Got: level(10, 20, 10)},
	{What: "The same, third class", Source: levers, Status: Read, Unit: "lbf", Printed: "2000", Tol: 1e-6, Got: level(20, 10, 10)},
	{What: "Lift table with a 1000 kg crate at 60°: each cylinder (the book rounds its length first)", Source: beer, Status: Memory, Unit: "kN", Printed: "5.15", Tol: 0.01, Got: crate},
	{What: "The same, more digits", Source: beer + ", inputs from memory", Status: Computed, Unit: "kN", Printed: "5.1571795", Got: crate},
	{What: "The cylinder's length there", Source: beer + ", inputs from memory", Status: Computed, Unit: "m", Printed: "2.913760457", Got: func() float64 {
		at := liftTable()
		return at.Length
	}},
	{What: "A loader's arm, by joints and gravity alone: lift at 60 in", Source: rigid, Status: Library, Unit: "lbf", Want: 2061.656, Tol: 0.2, Got: armLifts(60, asItIs)},
	{What: "The same, at 90 in", Source: rigid, Status: Library, Unit: "lbf", Want: 1582.824, Tol: 0.2, Got: armLifts(90, asItIs)},
	{What: "The same, load 20 in ahead of the pin, at 20 in", Source: rigid, Status: Library, Unit: "lbf", Want: 2430.370, Tol: 0.2, Got: armLifts(20, farOut)},
	{What: "The same, kept level by a second pair of links, at 90 in: as if the load sat on the pin", Source: rigid, Status: Library, Unit: "lbf", Want: 1623.423, Tol: 0.2, Got: armLifts(90, levelled)},
	{What: "The same, base pin ahead of the pivot and rod pin above the line, at 90 in", Source: rigid, Status: Library, Unit: "lbf", Want: 2684.309, Tol: 0.2, Got: armLifts(90, ahead)},
	{What: "That loader's arm, more digits: lift at 60 in", Source: fromPoint, Status: Computed, Unit: "lbf", Printed: "2061.6597753756", Got: armLifts(60, asItIs)},
	{What: "The same: its greatest height", Source: fromPoint, Status: Computed, Unit: "in", Printed: "95.966912280948", Got: armTop(24)},
	{What: "The same, pivot to base pin a quarter inch shorter: 3 in higher", Source: fromPoint, Status: Computed, Unit: "in", Printed: "98.997115629396", Got: armTop(23.75)},
}
