package worksheets

import (
	"math"

	"plainlift/calc"
	"plainlift/calc/relief"
)

// valve is what the fields of shim say of a relief valve, in SI.
type valve struct {
	now, target, low, limit float64 // low is NaN where it is not known
	gauge, repeat           float64
	trials                  []relief.Trial
	kit                     relief.Kit
	pieces                  int     // how many shims the kit has
	pitch                   float64 // NaN without a screw
	screw                   bool    // it is set by its screw, not by shims
	rule                    relief.Prior
	ruleLow                 float64 // the least that the rule expects of a shim, Pa/m

	line   relief.Line
	fitted float64 // the total thickness in now, m
	seen   float64 // the least total above fitted that read over the limit, +Inf if none did
}

// readValve reads the fields. It returns nil after a complaint.
func readValve(in *calc.In, out *calc.Out) *valve {
	v := &valve{now: in.SI("now"), target: in.SI("target"), low: in.SI("low"), limit: in.SI("limit"),
		gauge: in.SI("gauge_err"), repeat: in.SI("repeat"), pitch: in.SI("pitch"), seen: math.Inf(1)}
	fine := true
	complain := func(field, message string) {
		out.Problem(field, message)
		fine = false
	}
	if v.low > v.limit {
		complain("low", "Must not be above the highest, {limit}; leave it empty if you don't have it")
	}
	v.readRule(in, complain)

	var pieces []relief.Piece
	for _, row := range in.Pairs("kit") {
		pieces = append(pieces, relief.Piece{Thickness: row.A, Count: int(row.B)})
		v.pieces += int(row.B)
	}
	v.kit = relief.NewKit(pieces)
	v.screw = in.Has("pitch") && (v.pieces == 0 || !in.Own("kit"))

	for i, row := range in.Pairs("trials") {
		v.trials = append(v.trials, relief.Trial{T: row.A, P: row.B})
		v.fitted = row.A
		if v.singles(i) {
			out.RowProblem("trials", i, "No thicker than the row above and yet it reads higher: enter the total added, not the last shim alone")
			fine = false
		}
	}
	if !fine {
		return nil
	}
	for _, t := range v.trials {
		if t.P > v.limit && t.T > v.fitted {
			v.seen = min(v.seen, t.T)
		}
	}
	v.line = relief.Fit(v.now, v.trials, v.repeat, v.rule)
	return v
}

// singles reports whether row i of the trials looks like the last shim alone
// where the total belongs: no thicker than the row above, and higher by more
// than two readings scatter (2·√2 of their standard deviation).
func (v *valve) singles(i int) bool {
	if i == 0 {
		return false
	}
	a, b := v.trials[i-1], v.trials[i]
	rise := b.P - a.P
	return b.T <= a.T && rise > 0 && rise-v.rule.Mean*(b.T-a.T) > 2*math.Sqrt2*v.repeat
}

// springShare is the limit to which a rate worked out from the spring is taken
// to hold. Ours: wire and coil count by the fourth and the third power.
const springShare = 0.15

// readRule works out what a shim is worth before any trial.
func (v *valve) readRule(in *calc.In, complain func(field, message string)) {
	if in.Choice("material") == noSpring {
		lo, hi := in.SI("rate_lo"), in.SI("rate_hi")
		if lo > hi {
			complain("rate_hi", "Must not be under the lowest, {rate_lo}")
		}
		v.rule, v.ruleLow = relief.Between(lo, hi), lo
		return
	}
	whole := true
	for _, id := range []string{"wire", "coil", "turns", "seat"} {
		if !in.Has(id) {
			complain(id, "Needed with the spring's wire; or choose “not measured” there")
			whole = false
		}
	}
	if !whole {
		return
	}
	g := relief.ShearModulus(in.Choice("material"), in.SI("wire"))
	switch {
	case math.IsNaN(g):
		complain("wire", "Thicker than this wire is made; check it, or choose another wire")
	case !(in.SI("coil") > in.SI("wire")):
		complain("coil", "Must be more than the wire's {wire}")
	default:
		k := relief.SpringRate(g, in.SI("wire"), in.SI("coil"), in.SI("turns"))
		rate := relief.ShimRate(k, relief.SeatArea(in.SI("seat")))
		v.rule, v.ruleLow = relief.Within(rate, springShare), rate*(1-springShare)
	}
}

// over returns the chance that with a total thickness in the true pressure is
// over the limit.
func (v *valve) over(t float64) float64 {
	m, sigma := v.line.At(t)
	return relief.POver(m, sigma, v.gauge, v.limit)
}

// Why a total thickness may not be in.
const (
	byChance = "chance" // its chance of truly being over the limit passes mostOver
	bySeen   = "seen"   // as much has already read over the limit
	byTarget = "target" // it passes the target
)

// against returns what stands against a total thickness, "" if nothing does.
func (v *valve) against(t float64) string {
	m, _ := v.line.At(t)
	const rounding = 1e-9
	switch {
	case !(v.over(t) <= mostOver):
		return byChance
	case t >= v.seen:
		return bySeen
	case !(m <= v.target*(1+rounding)):
		return byTarget
	}
	return ""
}

// safe returns the largest total thickness that nothing stands against, NaN if
// there is none.
func (v *valve) safe() float64 {
	return min(v.line.Safe(v.fitted, v.target, v.limit, v.gauge, mostOver), v.seen)
}
