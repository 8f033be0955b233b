package calc

import (
	"math"
	"math/rand/v2"

	"plainlift/calc/doubt"
	"plainlift/calc/unit"
)

// Trial draws one value of the quantity that a simulation checks.
type Trial func(r *rand.Rand) float64

// In is what Compute reads: every field in SI.
type In struct {
	w      *Worksheet
	sys    unit.System
	values map[string]*value
	sim    *doubt.Simulation
}

func (in *In) get(id string) *value {
	v, ok := in.values[id]
	if !ok {
		panic("calc: Compute reads a field that is not declared: " + id)
	}
	return v
}

// SI returns a single number in SI, NaN when the field is empty.
func (in *In) SI(id string) float64 {
	v := in.get(id)
	if len(v.a) == 0 {
		return math.NaN()
	}
	return v.a[0].SI
}

// Has reports whether a field is filled in.
func (in *In) Has(id string) bool { return in.get(id).set }

// Own reports whether what stands in a field is the reader's, not the example's.
func (in *In) Own(id string) bool { return in.get(id).own }

// Choice returns the id of the chosen option.
func (in *In) Choice(id string) string { return in.get(id).choice }

// List returns the numbers of a list in SI.
func (in *In) List(id string) []float64 {
	v := in.get(id)
	x := make([]float64, len(v.a))
	for i := range v.a {
		x[i] = v.a[i].SI
	}
	return x
}

// Pairs returns the rows of a Pairs field in SI.
func (in *In) Pairs(id string) []Measured {
	v := in.get(id)
	x := make([]Measured, len(v.a))
	for i := range v.a {
		x[i] = Measured{v.a[i].SI, v.b[i].SI}
	}
	return x
}

// System returns the units that the reader is shown.
func (in *In) System() unit.System { return in.sys }

// Shown converts an SI value to the shown unit of its kind, for a picture.
func (in *In) Shown(k unit.Kind, si float64) float64 { return k.Shown(in.sys).FromSI(si) }

// Text writes an SI value as a figure of four significant digits shows it.
func (in *In) Text(k unit.Kind, si float64) string {
	g := Figure{Kind: k}
	return withUnit(g.number(si, 0, nil, in.sys), k.Shown(in.sys).Name)
}

// Simulation returns the finished simulation, or nil before it ran.
func (in *In) Simulation() *doubt.Simulation { return in.sim }

// Noun returns a declared field's label in a sentence, for complaints.
func (in *In) Noun(id string) string {
	f := in.w.field(id)
	if f == nil {
		panic("calc: no such field: " + id)
	}
	return f.noun()
}
