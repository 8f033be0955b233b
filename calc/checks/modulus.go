package checks

import (
	"strings"

	"plainlift/calc/relief"
)

// modulusTable is the shear modulus of spring wire: material and wire
// in thousandths of an inch, at both ends of each band (any, where the wire does
// not matter), and Mpsi. Read in a public copy of a handbook's table.
const modulusTable = `
music/32 12.0
music/33 11.85
music/63 11.85
music/64 11.75
music/125 11.75
music/126 11.6
music/250 11.6
hard-drawn/32 11.7
hard-drawn/33 11.6
hard-drawn/63 11.6
hard-drawn/64 11.5
hard-drawn/125 11.5
hard-drawn/126 11.4
hard-drawn/625 11.4
oil-tempered/any 11.2
chrome-vanadium/any 11.2
chrome-silicon/any 11.2
silicon-manganese/any 10.75
stainless-302/any 10.0
stainless-17-7/any 10.5
stainless-420/any 11.0
stainless-431/any 11.4`

const handbook = "the table of spring wire in machine design handbooks"

var moduli = join(
	exactly(tabled(Check{Table: "Shear modulus of spring wire", Source: handbook, Status: Read, Unit: "Mpsi"}, modulusTable, []column{{}},
		func(row string, _ column) (string, func() float64) {
			id, wire, _ := strings.Cut(row, "/")
			if wire == "any" {
				return materialName(id), modulus(id, 0.5)
			}
			return materialName(id) + " of " + wire + " thou", modulus(id, count(wire)/1000)
		})),
	[]Check{
		{What: "Music wire of 0.080 in, within 3 %", Source: "another handbook's table, for ASTM A228", Status: Read, Unit: "Mpsi", Printed: "12", Tol: 0.36, Got: modulus("music", 0.080)},
		{What: "Hard drawn wire of 0.080 in, within 3 %", Source: "another handbook's table, for ASTM A227", Status: Read, Unit: "Mpsi", Printed: "11.5", Tol: 0.345, Got: modulus("hard-drawn", 0.080)},
		{What: "Oil tempered wire, within 3 %", Source: "another handbook's table, for ASTM A229", Status: Read, Unit: "Mpsi", Printed: "11.5", Tol: 0.345, Got: modulus("oil-tempered", 0.080)},
		{What: "Patented wire of EN 10270-1, as music wire of 2 mm, within 3 %", Source: "EN 13906-1", Status: Memory, Unit: "GPa", Printed: "81.5", Tol: 2.4, Got: func() float64 { return relief.ShearModulus("music", 0.002) / 1e9 }},
	},
)

// materialName is what the trade calls a material.
func materialName(id string) string {
	for _, m := range relief.Materials {
		if m.ID == id {
			return m.Name
		}
	}
	return id
}
