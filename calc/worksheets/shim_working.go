package worksheets

import (
	"math"

	"plainlift/calc"
)

const bayes = "The Bayesian linear model of a straight line with known scatter; the switch to the readings alone is ours"

// rests says what the answer stands on.
func (v *valve) rests(in *calc.In, out *calc.Out) {
	out.Rest("The gauge is off by no more than ±{gauge_err}, the same way in every reading: no shim and no further reading shrinks that.")
	switch {
	case in.Choice("material") != noSpring:
		out.Rest("A shim adds {rate_rule}, ±15 %, from the spring as measured and a valve that its spring alone holds shut.")
	case in.Own("rate_lo") || in.Own("rate_hi"):
		out.Rest("A shim adds {rate_lo:n} to {rate_hi}, as entered, until your own readings say better.")
	default:
		out.Rest("A shim adds {rate_lo:n} to {rate_hi} (common practice, no source), until your own readings say better.")
	}
	out.Rest("Each shim adds in proportion to its thickness, and a reading repeats with a standard deviation of {repeat}.")
	out.Rest("The gauge was read while the oil went over this relief: rated engine speed, warm oil, the cylinder held at the end of its stroke for seconds, at a port that this relief protects. Another port may have a relief of its own.")
	out.Rest("A shim moves the pressure at which the valve cracks; the pressure at full flow, which people read, moves slightly less. Readings at full flow need no correction.")
	out.Rest("The chance of truly being over the limit is kept to 5 % at most: this page's choice, on the side of the machine.")
	if v.fitted > 0 && v.pieces > 0 && !v.screw {
		out.Rest("What is in now is taken as the fewest of the shims listed that make {fitted}.")
	}
}

// working shows the formulas with the numbers put in.
func (v *valve) working(in *calc.In, out *calc.Out, mv move) {
	if in.Choice("material") != noSpring {
		out.Step("s₀ = k ÷ seat area, k = G·d⁴ ÷ (8·D³·N); u₀ = 15 % ÷ √3", "wire {wire}, coil {coil}, {turns} active, seat {seat}: {rate_rule}",
			"k: Bhandari, Design of Machine Elements, ch. 10 (read through its open companion); p·A = k·x: Esposito, Fluid Power with Applications, Ex. 8-1 (read); the 15 % is ours")
	} else {
		out.Step("s₀ = (least + most) ÷ 2; u₀ = (most − least) ÷ √12", "{rate_lo:n} to {rate_hi}: {rate_rule}",
			"A stated range (JCGM 100:2008, 4.3.7), taken as a normal belief; the usual range is common practice, no source")
	}
	if len(v.trials) > 0 {
		out.Step("s_LS = Σ(t − t̄)(p − p̄) ÷ Σ(t − t̄)², the reading now and the trials alone", "{rate_ls}", "Least squares")
	}
	out.Step("p = α + s·t, with s₀ ± u₀ and each reading good to its scatter", "s = {rate}, u = {rate_u}; {now_fitted} with {fitted} of shim", bayes)
	if math.IsNaN(mv.at) {
		return
	}
	if mv.reachable() {
		out.Step("thickness in all = (target − α) ÷ s", "to {target}: {thickness}", "The same line")
	}
	out.Step("chance of truly over = σ ÷ 2a × [G((m + a − L) ÷ σ) − G((m − a − L) ÷ σ)], G(x) = x·Φ(x) + φ(x)",
		"m = {expected}, a = {gauge_err}, L = {limit}: {p_over}",
		"The line's normal doubt σ averaged over the gauge's limit; probability of conformity as JCGM 106:2012, clause 7 (read)")
	if mv.why == "" {
		out.Step("the most = the largest total with m at most the target and that chance at most 5 %", v.mostText(), "The 5 % is ours")
	}
}

func (v *valve) mostText() string {
	if v.screw {
		return "{screw_turns} of the screw, rounded down to 1/8"
	}
	return "{stack}; in all {stack_total}"
}
