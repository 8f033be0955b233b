package hydraulic

import "math"

// Pump is a pump of fixed displacement as it is driven.
type Pump struct {
	Displacement float64 // what a turn moves (m³, above 0)
	Turns        float64 // of the pump (1/s, above 0)
	Efficiency   float64 // volumetric: what arrives of that (fraction, above 0, to 1)
}

// Flow returns what the pump delivers, m³/s:
//
//	Q = D·n·η
//
// Source: Esposito, Fluid Power with Applications, Ex. 5-1 (read).
func (p Pump) Flow() float64 {
	if !(p.Displacement > 0) || !(p.Turns > 0) || !(p.Efficiency > 0 && p.Efficiency <= 1) {
		return math.NaN()
	}
	return p.Displacement * p.Turns * p.Efficiency
}

// Seen returns the volumetric efficiency that a measured flow (m³/s) stands for:
//
//	η = Q/(D·n)
//
// It does not use the Efficiency of p, and is above 1 when one of the three is
// wrong.
//
// Source: Esposito, Fluid Power with Applications, Ex. 5-1 (read).
func (p Pump) Seen(flow float64) float64 {
	p.Efficiency = 1
	return flow / p.Flow()
}

// Power returns the power in a flow under pressure, W:
//
//	P = p·Q
//
// p is in Pa, flow in m³/s. In psi and gpm it is p·Q/1714 horsepower, in bar and
// L/min p·Q/600 kW. What turns the pump gives more: the pump's own losses come
// on top. Over a relief valve all of it becomes heat.
//
// Source: Esposito, Fluid Power with Applications, Ex. 8-2 and 8-3 (read).
func Power(p, flow float64) float64 { return p * flow }

// PassRise returns how much hotter oil is after it fell through a pressure
// without doing work, K:
//
//	ΔT = Δp/(ρ·c)
//
// drop is Δp (Pa), density ρ (kg/m³, above 0), heat the heat capacity c
// (J/(kg·K), above 0). All the heat is taken to stay in the oil.
//
// Source: Esposito, Fluid Power with Applications, Ex. 11-2 (read).
func PassRise(drop, density, heat float64) float64 {
	if !(density > 0) || !(heat > 0) {
		return math.NaN()
	}
	return drop / (density * heat)
}

// TankRate returns how fast all the oil together becomes hotter, K/s, when a
// power turns into heat in it:
//
//	P/(ρ·c·V)
//
// power is P (W), density ρ (kg/m³), heat c (J/(kg·K)), volume V the oil in the
// tank (m³), the last three above 0. It is for oil that mixes well and gives
// nothing off to the air: what really happens is slower in the tank, and much
// hotter in the valve.
//
// Source: conservation of energy.
func TankRate(power, density, heat, volume float64) float64 {
	if !(density > 0) || !(heat > 0) || !(volume > 0) {
		return math.NaN()
	}
	return power / (density * heat * volume)
}
