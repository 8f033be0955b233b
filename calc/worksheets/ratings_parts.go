package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/strength"
)

// part is a kind of part that can be judged.
type part struct {
	id, name string
	needs    []string // fields without which it can't be judged
	also     []string // further fields that bear on it
	factor   string   // its factor, where it is worked out from its measures, not marked
}

// parts are all of them, in the order in which they are shown. The hose is the
// hose with its fittings: either mark is enough to judge it by.
var parts = []part{
	{id: "pump", name: "pump", needs: []string{"pump"}},
	{id: "valve", name: "control valve", needs: []string{"valve"}},
	{id: "hose", name: "hose with fittings", also: []string{"hose", "fitting"}},
	{id: "tube", name: "tube", needs: []string{"tube"}},
	{id: "cylinder", name: "cylinder", needs: []string{"cylinder"}},
	{id: "filter", name: "filter", needs: []string{"filter"}},
	{id: "other", name: "other part", needs: []string{"other"}},
	{id: "wall", name: "tube's wall", needs: []string{"tube_od", "tube_wall", "tube_strength"}, factor: "factor"},
	{id: "rod", name: "cylinder's rod", needs: []string{"bore", "rod", "tube_outside", "closed", "stroke"}, also: []string{"gland"}, factor: "buckle_factor"},
	{id: "pin", name: "cylinder's pin", needs: []string{"pin_d", "pin_strength", "bore"}, also: []string{"pin_width"}, factor: "pin_factor"},
}

// rodSteel is what is taken of the steel of cylinders: Young's modulus as
// handbooks have it, 200 to 210 GPa, and the yield of plain mild steel, Pa. Both
// on the low side; from memory.
var rodSteel = struct{ e, yield float64 }{200e9, 250e6}

// poisson is Poisson's ratio of steel, as in the example that Clavarino's equation
// is checked against.
const poisson = 0.27

// rated is a part with what it is good for, Pa.
type rated struct {
	*part
	weakID, called string // as the weakest: the fitting may be what limits the hose
	allow          float64
	own            bool // all that it rests on is the reader's
}

// judgeParts works out every part for which enough is entered, and complains
// about measures that do not go together; ok is false then. A part of which some
// measures are the reader's and some the example's is no part; partly tells of it.
func judgeParts(in *calc.In, out *calc.Out) (list []*rated, partly, ok bool) {
	ok = true
	for i := range parts {
		p := &parts[i]
		j := &rated{part: p, weakID: p.id, called: p.name, own: true}
		set, owned, missing, theirs := 0, 0, "", ""
		for _, id := range p.needs {
			switch {
			case !in.Has(id):
				missing = id
			case in.Own(id):
				set++
				owned++
			default:
				set++
				theirs = id
			}
		}
		for _, id := range append(p.needs, p.also...) {
			j.own = j.own && (in.Own(id) || !in.Has(id))
		}
		switch {
		case p.id == "hose":
			j.allow = hoseAllows(in, j)
			if math.IsInf(j.allow, 1) {
				continue
			}
		case missing != "":
			if p.factor != "" {
				out.Unused(p.factor)
			}
			// The bore alone belongs to the rod or the pin; it asks for neither.
			if set > 1 || set == 1 && !in.Has("bore") {
				out.Note(missing, -1, "Needed too, to judge the "+p.name+".")
			}
			continue
		case owned > 0 && theirs != "":
			partly = true
			out.Unused(p.factor)
			if owned > 1 || !in.Own("bore") {
				out.Note(theirs, -1, "Still the example's: enter yours, to judge the "+p.name+".")
			}
			continue
		case p.factor == "":
			j.allow = in.SI(p.id)
		default:
			j.allow = worked[p.id](in, out)
			ok = ok && j.allow > 0
		}
		list = append(list, j)
	}
	return list, partly, ok
}

// hoseAllows is the lower of the marks of hose and fittings (SAE J517, clause 1;
// read), +Inf where neither is entered.
func hoseAllows(in *calc.In, j *rated) float64 {
	allow := math.Inf(1)
	if in.Has("hose") {
		allow, j.called = in.SI("hose"), "hose"
	}
	if in.Has("fitting") && in.SI("fitting") < allow {
		allow, j.weakID, j.called = in.SI("fitting"), "fitting", "hose fitting"
	}
	return allow
}

// worked are the parts that are worked out, each giving the pressure it is good
// for, Pa, and setting its figures; 0 where the measures do not go together.
var worked = map[string]func(*calc.In, *calc.Out) float64{"wall": wallAllows, "rod": rodAllows, "pin": pinAllows}

func wallAllows(in *calc.In, out *calc.Out) float64 {
	od, wall, stress := in.SI("tube_od"), in.SI("tube_wall"), in.SI("tube_strength")/in.SI("factor")
	bore := od - 2*wall
	if !(bore > 0) {
		out.Problem("tube_wall", "Two walls must be less than the outside diameter, {tube_od}")
		return 0
	}
	allow := strength.WallPressure(stress, bore, od)
	out.Set("allowed_stress", stress)
	out.Set("thin", stress/strength.ThinHoop(1, bore, wall))
	out.Set("mises", strength.VonMises(allow, bore, od))
	out.Set("least_wall", strength.ClavarinoWall(in.SI("target"), stress, poisson, bore))
	return allow
}

func rodAllows(in *calc.In, out *calc.Out) float64 {
	bore, rod, barrel := in.SI("bore"), in.SI("rod"), in.SI("tube_outside")
	closed, stroke, gland := in.SI("closed"), in.SI("stroke"), 2*rod
	if in.Has("gland") {
		gland = in.SI("gland")
	}
	switch {
	case !(rod < bore):
		out.Problem("rod", "The rod must be thinner than the bore, {bore}")
	case !(barrel > bore):
		out.Problem("tube_outside", "The barrel must be wider outside than its bore, {bore}")
	case !(stroke < closed):
		out.Problem("stroke", "The stroke must be less than the length closed, {closed}")
	case !(gland < closed):
		out.Problem("closed", "Closed it must be longer than what shows of the rod")
	default:
		rodLength, barrelLength := stroke+gland, closed-gland
		i := strength.Ring(0, rod)
		euler := strength.Stepped(rodSteel.e, i, rodLength, strength.Ring(bore, barrel), barrelLength)
		bears := strength.Short(euler, min(strength.Area(0, rod), strength.Area(bore, barrel)), rodSteel.yield)
		out.Set("rod_length", rodLength)
		out.Set("barrel_length", barrelLength)
		out.Set("critical", bears)
		out.Set("acts_like", strength.EulerLength(rodSteel.e, i, bears))
		out.Set("plain", strength.Euler(rodSteel.e, i, closed+stroke))
		return bears / in.SI("buckle_factor") / strength.Area(0, bore)
	}
	return 0
}

func pinAllows(in *calc.In, out *calc.Out) float64 {
	d, yield, factor, push := in.SI("pin_d"), in.SI("pin_strength"), in.SI("pin_factor"), strength.Area(0, in.SI("bore"))
	shear := strength.DoubleShear(push, d) // for each pascal in the cylinder
	out.Set("shear", shear*in.SI("target"))
	allow := strength.ShearYield(yield) / factor / shear
	if in.Has("pin_width") {
		bearing := strength.Bearing(push, d, in.SI("pin_width"))
		out.Set("bearing", bearing*in.SI("target"))
		allow = min(allow, yield/factor/bearing)
	}
	return allow
}

// lowest returns the part that is good for the least, nil where there is none;
// among the reader's own only, if so asked.
func lowest(list []*rated, own bool) *rated {
	var least *rated
	for _, j := range list {
		if (j.own || !own) && (least == nil || j.allow < least.allow) {
			least = j
		}
	}
	return least
}

// among reports whether a part is judged.
func among(list []*rated, id string) bool {
	for _, j := range list {
		if j.id == id {
			return true
		}
	}
	return false
}
