// Package balance says what a tractor with a load in front of it stands on: what
// is left on the rear wheels, what the front axle carries, and how much load
// tips it forward over the front wheels.
//
// The model is a rigid body on two axles, at rest: moments about the contact of
// the front wheels with the ground, in a side view. A weight W at a distance x
// behind that contact and h above the ground holds the rear wheels down with
//
//	W·(x·cos α − h·sin α)
//
// where α is the slope of the ground, positive nose downhill. Axle loads are
// square to the ground. Tyres and springs do not give, nothing brakes, turns or
// bounces, and nothing is said of tipping sideways. Forces are in newton,
// lengths in metre, the slope in radian.
package balance

import "math"

// Machine is a tractor as an axle scale and a tape give it.
type Machine struct {
	Front, Rear float64 // axle loads on level ground with arms and tool, without ballast and load
	Wheelbase   float64 // above 0
	Reach       float64 // the load ahead of the front axle
	Ballast     float64
	BallastX    float64 // behind the rear axle

	Hill    float64 // slope of the ground, positive nose downhill
	CentreH float64 // height of the centre of tractor and ballast; bears on a slope alone
	LoadH   float64 // height of the load's centre; the same
}

// Total returns the weight without a load, N.
func (m *Machine) Total() float64 { return m.Front + m.Rear + m.Ballast }

// Arms are the distances at which weights act about the front contact, along
// the ground (m).
type Arms struct {
	Centre  float64 // the tractor's own, behind the contact
	Ballast float64 // behind it
	Load    float64 // ahead of it
}

// Arms returns the arms on the slope, m. On level ground that is where the
// weights are:
//
//	centre   rear·wheelbase/(front + rear)
//	ballast  wheelbase + ballast_x
//	load     reach
//
// and on a slope x·cos α − h·sin α of each, with the load's x negative and its
// arm counted the other way.
func (m *Machine) Arms() Arms {
	sin, cos := math.Sincos(m.Hill)
	return Arms{
		Centre:  m.Rear*m.Wheelbase/(m.Front+m.Rear)*cos - m.CentreH*sin,
		Ballast: (m.Wheelbase+m.BallastX)*cos - m.CentreH*sin,
		Load:    m.Reach*cos + m.LoadH*sin,
	}
}

// Hold returns the moment about the front contact that holds the rear wheels
// down without a load, N·m. At or under 0 the machine tips forward by itself.
func (m *Machine) Hold() float64 {
	a := m.Arms()
	return (m.Front+m.Rear)*a.Centre + m.Ballast*a.Ballast
}

// TipLoad returns the load that just lifts the rear wheels, N:
//
//	hold/arm of the load
//
// It is +Inf where the slope puts the load behind the front contact, so that no
// load tips the machine forward. At or under 0 it tips without one.
//
// AS ISO 14397.1:2021, 3.2 (read), calls it tipping load: the least mass that
// brings the loader to its tipping limit.
func (m *Machine) TipLoad() float64 { return most(m.Hold(), m.Arms().Load) }

// RearAxle returns what stands on the rear axle with a load, N:
//
//	(hold − load·arm of the load)/wheelbase
//
// Under 0 the rear wheels have left the ground, and the model ends.
func (m *Machine) RearAxle(load float64) float64 {
	return (m.Hold() - load*m.Arms().Load) / m.Wheelbase
}

// FrontAxle returns what stands on the front axle with a load, N: all of the
// weight across the ground that is not on the rear axle. Under 0 the machine
// goes over backwards.
func (m *Machine) FrontAxle(load float64) float64 {
	return (m.Total()+load)*math.Cos(m.Hill) - m.RearAxle(load)
}

// RearShare returns the part of the axle loads that is on the rear axle with a
// load, as a fraction.
func (m *Machine) RearShare(load float64) float64 {
	return m.RearAxle(load) / ((m.Total() + load) * math.Cos(m.Hill))
}

// SafeLoad returns the load with which the share keep, a fraction, of the axle
// loads is still on the rear axle, N. On level ground:
//
//	(hold/wheelbase − keep·total)/(reach/wheelbase + keep)
//
// It is under 0 where that share is not there without a load, and +Inf where
// it is there with any.
func (m *Machine) SafeLoad(keep float64) float64 {
	keep *= math.Cos(m.Hill)
	return most(m.Hold()/m.Wheelbase-keep*m.Total(), m.Arms().Load/m.Wheelbase+keep)
}

// AxleLimit returns the load with which the front axle carries its rating (N),
// N. On level ground:
//
//	(rating − total + hold/wheelbase)/(1 + reach/wheelbase)
//
// It is under 0 where the axle carries more than that without a load.
func (m *Machine) AxleLimit(rating float64) float64 {
	cos := math.Cos(m.Hill)
	return most(rating-m.Total()*cos+m.Hold()/m.Wheelbase, cos+m.Arms().Load/m.Wheelbase)
}

// BallastForShare returns how much ballast in all, at its place, leaves the
// share keep, a fraction under 1, on the rear axle with a load (N), N. On level
// ground:
//
//	(keep·(front + rear + load)·wheelbase − rear·wheelbase + load·reach)/(wheelbase + ballast_x − keep·wheelbase)
//
// It is 0 where none is needed and +Inf where none at that place is enough. The
// ballast that is on does not bear on it.
func (m *Machine) BallastForShare(keep, load float64) float64 {
	a := m.Arms()
	keep *= math.Cos(m.Hill) * m.Wheelbase
	return least(keep*(m.Front+m.Rear+load)-(m.Front+m.Rear)*a.Centre+load*a.Load, a.Ballast-keep)
}

// BallastForAxle is the same for a load (N) that the rear axle shall carry, N. On
// level ground:
//
//	(axle·wheelbase − rear·wheelbase + load·reach)/(wheelbase + ballast_x)
//
// With axle 0.45 of the unladen weight it is the rule for the least rear
// ballast in several operator's manuals (second-hand).
func (m *Machine) BallastForAxle(axle, load float64) float64 {
	a := m.Arms()
	return least(axle*m.Wheelbase-(m.Front+m.Rear)*a.Centre+load*a.Load, a.Ballast)
}

// most returns the greatest x with has − x·needs ≥ 0. Where nothing is needed
// that is any x, or none at all.
func most(has, needs float64) float64 {
	if needs <= 0 {
		return math.Inf(int(math.Copysign(1, has)))
	}
	return has / needs
}

// least returns the smallest x from 0 with x·gives ≥ lacks.
func least(lacks, gives float64) float64 {
	switch {
	case lacks <= 0:
		return 0
	case gives <= 0:
		return math.Inf(1)
	}
	return lacks / gives
}
