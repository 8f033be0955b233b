package relief

import "math"

// Material is a spring wire. Name is what the trade calls it.
type Material struct {
	ID, Name string
	bands    []band // the thinnest first
}

// band is a shear modulus up to a wire diameter.
type band struct {
	upTo float64 // thousandths of an inch; the table is to whole ones
	mpsi float64
}

const (
	mil  = 25.4e-6           // m, 0.001 in
	mpsi = 6894757293.168361 // Pa
)

// anyWire is the band of a material whose modulus does not depend on the wire.
const anyWire = math.MaxFloat64

// Materials are the spring wires of the handbook table.
//
// Source: the table of spring wire moduli in the usual machine design handbooks
// (read in a public copy).
var Materials = []Material{
	{ID: "music", Name: "music wire", bands: []band{{32, 12}, {63, 11.85}, {125, 11.75}, {250, 11.6}}},
	{ID: "hard-drawn", Name: "hard drawn", bands: []band{{32, 11.7}, {63, 11.6}, {125, 11.5}, {625, 11.4}}},
	{ID: "oil-tempered", Name: "oil tempered", bands: []band{{anyWire, 11.2}}},
	{ID: "chrome-vanadium", Name: "chrome vanadium", bands: []band{{anyWire, 11.2}}},
	{ID: "chrome-silicon", Name: "chrome silicon", bands: []band{{anyWire, 11.2}}},
	{ID: "silicon-manganese", Name: "silicon manganese", bands: []band{{anyWire, 10.75}}},
	{ID: "stainless-302", Name: "stainless 302, 304, 316", bands: []band{{anyWire, 10}}},
	{ID: "stainless-17-7", Name: "stainless 17-7 PH", bands: []band{{anyWire, 10.5}}},
	{ID: "stainless-420", Name: "stainless 420", bands: []band{{anyWire, 11}}},
	{ID: "stainless-431", Name: "stainless 431", bands: []band{{anyWire, 11.4}}},
}

// ShearModulus returns the shear modulus G of a spring wire, Pa. material is
// the ID of one of Materials, wire the wire's diameter (m, above 0), taken to
// the nearest 0.001 in as the table is. It is NaN for a material that is not in
// the table and for wire thicker than the table goes: 0.250 in for music wire,
// 0.625 in for hard drawn.
func ShearModulus(material string, wire float64) float64 {
	if !(wire > 0) || math.IsInf(wire, 1) {
		return math.NaN()
	}
	for _, m := range Materials {
		if m.ID != material {
			continue
		}
		for _, b := range m.bands {
			if math.Round(wire/mil) <= b.upTo {
				return b.mpsi * mpsi
			}
		}
	}
	return math.NaN()
}
