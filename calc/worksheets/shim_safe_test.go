package worksheets

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// known is what belief needs, in psi and thousandths of an inch.
type known struct {
	now, repeat, s0, u0 float64
	trials              [][2]float64
}

// belief works the line out by its normal equations, apart from the worksheet:
// precision matrix of (α, s) from the readings and the prior on s. It returns the
// height of the line at t and its standard deviation.
func (k known) belief(t float64) (m, sigma float64) {
	points := append([][2]float64{{0, k.now}}, k.trials...)
	var n, st, stt, sp, stp float64
	for _, p := range points {
		n, st, stt, sp, stp = n+1, st+p[0], stt+p[0]*p[0], sp+p[1]-k.now, stp+p[0]*(p[1]-k.now)
	}
	w := 1 / (k.repeat * k.repeat)
	prior, mean := 1/(k.u0*k.u0), k.s0
	if det := n*stt - st*st; det > 0 {
		ls, lsU := (n*stp-st*sp)/det, k.repeat/math.Sqrt(det/n)
		if math.Abs(ls-k.s0) > 2*math.Hypot(lsU, k.u0) {
			prior, mean = 0, 0
		}
	}
	a, b, c := w*n, w*st, w*stt+prior
	x, y := w*sp, w*stp+prior*mean
	det := a*c - b*b
	alpha, s := (c*x-b*y)/det, (a*y-b*x)/det
	return k.now + alpha + s*t, math.Sqrt((c - 2*b*t + a*t*t) / det)
}

// over averages the normal chance over the gauge's limit by quadrature.
func over(m, sigma, a, limit float64) float64 {
	if a == 0 {
		return distuv.UnitNormal.CDF((m - limit) / sigma)
	}
	panels := math.Ceil(2*a/sigma) + 1
	if panels > 400 { // the scatter hardly matters
		return max(0, min(1, (m+a-limit)/(2*a)))
	}
	var sum float64
	for i := range int(panels) {
		from := -a + 2*a*float64(i)/panels
		sum += quad.Fixed(func(e float64) float64 { return distuv.UnitNormal.CDF((m + e - limit) / sigma) },
			from, from+2*a/panels, 8, quad.Legendre{}, 0)
	}
	return sum / (2 * a)
}

// pick draws one of some texts' numbers, now and then an end of the range.
func pick(r *rand.Rand, least, most float64) float64 {
	switch r.IntN(12) {
	case 0:
		return least
	case 1:
		return most
	}
	return least + (most-least)*r.Float64()
}

// draw makes up a case around a limit, kits absurd ones among them.
func draw(r *rand.Rand) (known, calc.Entries, map[string]float64) {
	limit := pick(r, 200, 5800)
	x := map[string]float64{
		"limit": limit, "target": limit * pick(r, 0.8, 1.01), "now": limit * pick(r, 0.7, 1.005),
		"gauge_err": limit * pick(r, 0, 0.06), "repeat": pick(r, 0.1, 30),
		"rate_lo": pick(r, 0.01, 60),
	}
	x["rate_hi"] = x["rate_lo"] + pick(r, 0.1, 60)
	if r.IntN(3) == 0 {
		x["gauge_err"] = pick(r, 0, 20)
	}
	k := known{now: x["now"], repeat: x["repeat"], s0: (x["rate_lo"] + x["rate_hi"]) / 20, u0: (x["rate_hi"] - x["rate_lo"]) / math.Sqrt(12) / 10}
	e := calc.Entries{"low": {Own: true}}
	for id, v := range x {
		text := fmt.Sprint(v, " psi")
		if strings.HasPrefix(id, "rate") {
			text += " per 0.010 in"
		}
		e[id] = calc.Entry{Text: text, Own: true}
	}
	var kit, trials []string
	for range r.IntN(7) {
		thick := float64(1+r.IntN(50)) * []float64{0.1, 1, 5, 39.37}[r.IntN(4)]
		kit = append(kit, fmt.Sprintf("%v thou : %d", thick, r.IntN(8)))
	}
	if r.IntN(100) == 0 {
		kit = nil
		for i := range 40 {
			kit = append(kit, fmt.Sprintf("%v thou : 100", 0.1+0.7713*float64(i)))
		}
	}
	real := k.s0 * pick(r, 0.2, 1.6)
	total := 0.0
	for range max(0, r.IntN(7)-3) {
		total += float64(1+r.IntN(20)) * pick(r, 0.1, 1)
		p := max(1, x["now"]+real*total+x["repeat"]*r.NormFloat64())
		k.trials = append(k.trials, [2]float64{total, p})
		trials = append(trials, fmt.Sprintf("%v thou : %v psi", total, p))
	}
	e["kit"] = calc.Entry{Text: strings.Join(kit, "; "), Own: true}
	e["trials"] = calc.Entry{Text: strings.Join(trials, "; "), Own: true}
	if r.IntN(4) == 0 {
		e["pitch"] = calc.Entry{Text: fmt.Sprint(pick(r, 0.05, 3), " mm"), Own: true}
		if r.IntN(2) == 0 {
			e["kit"] = calc.Entry{Own: true}
		}
	}
	return k, e, x
}

// No input gives a stack, a step or turns that pass the target, or that leave
// more than 5 % of truly being over the limit, worked out apart.
func TestShimNeverTooMuch(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(2, 7))
	seen := map[string]int{}
	for i := range 3000 {
		k, e, x := draw(r)
		sys := unit.System(i % 2)
		a := All.Evaluate("shim", e, sys)
		if !a.OK() {
			seen["problem"]++
			continue
		}
		seen[a.Verdict.ID]++
		fitted := value(a, "fitted") / inchM * 1000
		var totals []float64
		add := func(total float64) {
			if !math.IsNaN(total) {
				totals = append(totals, total)
			}
		}
		add(value(a, "stack_total") / inchM * 1000)
		add(fitted + value(a, "first")/inchM*1000)
		add(fitted + value(a, "add")/inchM*1000)
		if p := e["pitch"].Text; p != "" && a.Verdict.ID == "screw" {
			var pitch float64
			fmt.Sscan(p, &pitch)
			add(value(a, "screw_turns") * pitch / 0.0254)
			add(fitted + pitch/8/0.0254)
		}
		if steps := a.Verdict.ID == "go" || a.Verdict.ID == "screw"; steps != (len(totals) > 0) || !steps && strings.Contains(a.Verdict.Head, "Next") {
			t.Fatalf("%s with %v: %v", a.Verdict.Head, totals, e)
		}
		for _, total := range totals {
			m, sigma := k.belief(total)
			p := over(m, sigma, x["gauge_err"], x["limit"])
			if p > 0.05+2e-6 || m > x["target"]+1e-6*x["target"] || x["target"] > x["limit"] || x["now"] > x["limit"] {
				t.Fatalf("total %v thou: %v psi, chance %v, %s\n%v", total, m, p, a.Verdict.Sentence, e)
			}
		}
		checkShown(t, a, x)
	}
	for _, id := range []string{"stop", "stuck", "there", "no-kit", "small", "go", "screw"} {
		if seen[id] < 20 {
			t.Errorf("only %d of %s: %v", seen[id], id, seen)
		}
	}
}

// checkShown looks at what a reader sees.
func checkShown(t *testing.T, a *calc.Answer, x map[string]float64) {
	t.Helper()
	if n := len([]rune(a.Verdict.Head)); n == 0 || n > 45 {
		t.Fatalf("a head of %d: %s", n, a.Verdict.Head)
	}
	text := a.Verdict.Sentence + strings.Join(a.Lines, " ") + strings.Join(a.Rests, " ")
	for _, s := range a.Working {
		text += s.Numbers
	}
	for _, bad := range []string{"NaN", "{", "—", "∞", "not part of", "does not work out"} {
		if strings.Contains(text, bad) {
			t.Fatalf("%q in %s\n%v\n%v", bad, a.Verdict.Sentence, a.Lines, a.Working)
		}
	}
	if strings.Contains(a.Picture, "NaN") || len(a.Picture) > 16<<10 {
		t.Fatalf("a picture of %d bytes: %s", len(a.Picture), a.Picture)
	}
	if strings.Contains(a.Verdict.Sentence, "already: add nothing") && value(a, "p_now") <= mostOver {
		t.Fatalf("%s", a.Verdict.Sentence)
	}
	p := value(a, "p_over")
	shown := strings.TrimSuffix(a.Figure("p_over").Text, " %")
	if p > mostOver && (shown == "5" || shown == "under 1") || p < mostOver && shown == "5" && p < mostOver*(1-1e-8) {
		t.Fatalf("a chance of %v is shown as %s", p, shown)
	}
	if a.Verdict.ID != "go" && a.Verdict.ID != "screw" {
		return
	}
	if p > mostOver || value(a, "expected") > x["target"]*psiPa*(1+1e-12) {
		t.Fatalf("p_over %v, expected %v, target %v", p, value(a, "expected"), x["target"]*psiPa)
	}
	if got, want := value(a, "add"), value(a, "stack_total")-value(a, "fitted"); a.Verdict.ID == "go" &&
		(!scalar.EqualWithinAbs(got, want, 1e-9) || value(a, "first") > got+1e-9 || value(a, "first") <= 0) {
		t.Fatalf("add %v, stack_total − fitted %v, first %v", got, want, value(a, "first"))
	}
}

// With any of the four numbers still the example's there is no stack, whatever
// the rest.
func TestShimNeedsOwnNumbers(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(3, 1))
	for range 300 {
		_, e, _ := draw(r)
		for _, id := range yours {
			kept := e[id]
			for _, given := range []bool{false, true} { // left out, or marked as the example's
				if delete(e, id); given {
					e[id] = calc.Entry{Text: kept.Text}
				}
				a := All.Evaluate("shim", e, unit.US)
				if !a.OK() {
					continue
				}
				if a.Verdict.ID != "yours" && a.Verdict.ID != "stop" || id == "limit" && a.Verdict.ID != "yours" {
					t.Fatalf("without an own %s: %+v", id, a.Verdict)
				}
				for _, f := range []string{"first", "add", "stack", "stack_total", "screw_turns", "thickness"} {
					if a.Figure(f).Value != "" {
						t.Fatalf("without an own %s: %s is %s", id, f, a.Figure(f).Text)
					}
				}
			}
			e[id] = kept
		}
	}
}
