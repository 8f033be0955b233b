package relief

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

const mils = 0.001 * inch

// 0.010 in of shim is 40 to 50 psi: common practice, no source.
var usual = Between(40*psi/(10*mils), 50*psi/(10*mils))

func TestPriors(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name      string
		got, want float64
		tol       float64
		source    string
	}{
		{"usual rate", usual.Mean * 10 * mils, 45 * psi, 1e-13, "common practice, no source"},
		{"its u", usual.SD * 10 * mils, 10 * psi / math.Sqrt(12), 1e-13, "JCGM 100:2008, 4.3.7 (read)"},
		{"the other way round", Between(50, 40).SD, Between(40, 50).SD, 0, "the same limits"},
		{"from the spring, ±15 %", Within(100, 0.15).SD, 8.660254, 1e-7, "JCGM 100:2008, 4.3.7 (read): 15/√3"},
	} {
		if !scalar.EqualWithinAbsOrRel(test.got, test.want, 0, test.tol) {
			t.Errorf("%s: got %v, want %v; %s", test.name, test.got, test.want, test.source)
		}
	}
}

func TestFitWithoutTrials(t *testing.T) {
	t.Parallel()
	l := Fit(2610*psi, nil, 10*psi, usual)
	if l.Rate != usual.Mean || l.RateU != usual.SD || l.PriorDropped || !math.IsNaN(l.RateLS) || !math.IsInf(l.RateLSU, 1) {
		t.Errorf("got %+v", l)
	}
	m, sigma := l.At(0)
	if m != 2610*psi || sigma != 10*psi {
		t.Errorf("at 0: got %v ± %v psi, want 2610 ± 10", m/psi, sigma/psi)
	}
	// now + s₀·t, with the doubts of both.
	m, sigma = l.At(20 * mils)
	if !scalar.EqualWithinRel(m, 2700*psi, 1e-13) || !scalar.EqualWithinRel(sigma, math.Sqrt(100+400./12)*psi, 1e-13) {
		t.Errorf("at 0.020 in: got %v ± %v psi", m/psi, sigma/psi)
	}
	if got := l.Thickness(2735 * psi); !scalar.EqualWithinRel(got, 125./4.5*mils, 1e-13) {
		t.Errorf("thickness: got %v mils, want 27.8", got/mils)
	}
	if l.Stuck(40 * psi / (10 * mils)) {
		t.Error("stuck without a trial")
	}
}

// One trial by hand, in psi and mils: now 2610, 2655 at 10; repeat 10; prior
// 4.5, u 1. s_LS = 4.5 + 0; and with 2675: s_LS = 6.5, u_LS = 10/√50 = √2, so the
// weight is 1/(1+2) and s = 4.5 + 2/3; u_s² = 1·2/3.
func TestFitByHand(t *testing.T) {
	t.Parallel()
	l := Fit(2610, []Trial{{10, 2675}}, 10, Prior{4.5, 1})
	for _, test := range []struct {
		name      string
		got, want float64
	}{
		{"s_LS", l.RateLS, 6.5},
		{"u_LS", l.RateLSU, math.Sqrt2},
		{"s", l.Rate, 4.5 + 2./3},
		{"u_s", l.RateU, math.Sqrt(2. / 3)},
		{"α", l.Datum, 2642.5 - 5*(4.5+2./3)},
		{"u_α", l.DatumU, math.Sqrt(50 + 25*2./3)},
		{"cov", l.Cov, -5 * 2. / 3},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, 1e-13) {
			t.Errorf("%s: got %v, want %v", test.name, test.got, test.want)
		}
	}
	if l.PriorDropped { // |6.5 − 4.5| = 2 against 2·√3
		t.Error("the prior was dropped")
	}
}

func scenario(rnd *rand.Rand) (now float64, trials []Trial, repeat float64) {
	repeat = (2 + 20*rnd.Float64()) * psi
	now = 2600 * psi
	rate := usual.Mean + usual.SD*rnd.NormFloat64()
	for range 1 + rnd.IntN(6) {
		at := float64(5*(1+rnd.IntN(12))) * mils
		trials = append(trials, Trial{at, now + rate*at + repeat*rnd.NormFloat64()})
	}
	return now + repeat*rnd.NormFloat64(), trials, repeat
}

// The same posterior by weighted least squares with the prior as one more row,
// solved by gonum's QR and inverse: rows scaled to unit variance, pressures in
// repeats, thickness in mils.
func TestFitAgainstLeastSquares(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(11, 12))
	for range 500 {
		now, trials, repeat := scenario(rnd)
		l := Fit(now, trials, repeat, usual)
		n := 1 + len(trials)
		rows := n + 1
		if l.PriorDropped {
			rows = n
		}
		a, b := mat.NewDense(rows, 2, nil), mat.NewDense(rows, 1, nil)
		for i := range n {
			var tr Trial
			if tr.P = now; i > 0 {
				tr = trials[i-1]
			}
			a.SetRow(i, []float64{1, tr.T / mils})
			b.Set(i, 0, (tr.P-2600*psi)/repeat)
		}
		unit := repeat / mils // Pa/m for one repeat per mil
		if !l.PriorDropped {
			a.SetRow(n, []float64{0, unit / usual.SD})
			b.Set(n, 0, usual.Mean/usual.SD)
		}
		var x, ata, cov mat.Dense
		if err := x.Solve(a, b); err != nil {
			t.Fatal(err)
		}
		ata.Mul(a.T(), a)
		if err := cov.Inverse(&ata); err != nil {
			t.Fatal(err)
		}
		at := 60 * mils * rnd.Float64()
		k := at / mils
		m, sigma := l.At(at)
		for _, test := range []struct {
			name      string
			got, want float64
		}{
			{"α", l.Datum - 2600*psi, x.At(0, 0) * repeat},
			{"s", l.Rate, x.At(1, 0) * unit},
			{"u_α", l.DatumU, math.Sqrt(cov.At(0, 0)) * repeat},
			{"u_s", l.RateU, math.Sqrt(cov.At(1, 1)) * unit},
			{"cov", l.Cov, cov.At(0, 1) * repeat * unit},
			{"m", m - 2600*psi, (x.At(0, 0) + k*x.At(1, 0)) * repeat},
			{"σ", sigma, math.Sqrt(cov.At(0, 0)+2*k*cov.At(0, 1)+k*k*cov.At(1, 1)) * repeat},
		} {
			if !scalar.EqualWithinAbsOrRel(test.got, test.want, 1e-9*psi, 1e-9) {
				t.Fatalf("%s: got %v, want %v; %v", test.name, test.got, test.want, trials)
			}
		}
	}
}

// The posterior by brute force: likelihood times prior on a grid over α and s.
func TestFitAgainstGrid(t *testing.T) {
	t.Parallel()
	trials := []Trial{{10, 2648}, {20, 2709}, {30, 2750}}
	const now, repeat = 2612, 10.0
	prior := Prior{4.5, 0.3}
	l := Fit(now, trials, repeat, prior)
	const steps = 400
	var weight, ma, ms, maa, mss, mas float64
	for i := range steps {
		da := 8 * l.DatumU * (float64(2*i+1)/steps - 1)
		for j := range steps {
			ds := 8 * l.RateU * (float64(2*j+1)/steps - 1)
			alpha, s := l.Datum+da, l.Rate+ds
			q := (now-alpha)*(now-alpha)/(repeat*repeat) + (s-prior.Mean)*(s-prior.Mean)/(prior.SD*prior.SD)
			for _, tr := range trials {
				r := tr.P - alpha - s*tr.T
				q += r * r / (repeat * repeat)
			}
			w := math.Exp(-q / 2)
			weight += w
			ma, ms = ma+w*da, ms+w*ds
			maa, mss, mas = maa+w*da*da, mss+w*ds*ds, mas+w*da*ds
		}
	}
	ma, ms = ma/weight, ms/weight
	for _, test := range []struct {
		name      string
		got, want float64
	}{
		{"α", l.Datum, l.Datum + ma},
		{"s", l.Rate, l.Rate + ms},
		{"u_α", l.DatumU, math.Sqrt(maa/weight - ma*ma)},
		{"u_s", l.RateU, math.Sqrt(mss/weight - ms*ms)},
		{"cov", l.Cov, mas/weight - ma*ms},
	} {
		if !scalar.EqualWithinRel(test.got, test.want, 1e-8) {
			t.Errorf("%s: got %v, on the grid %v", test.name, test.got, test.want)
		}
	}
}

// A valve that truly has the stated doubts is within one standard deviation of
// the line about as often as a normal distribution says.
func TestFitIsCalibrated(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(13, 14))
	var pulls []float64
	for range 20000 {
		rate := 45 + 3*rnd.NormFloat64()
		read := func(at float64) float64 { return 2600 + rate*at + 10*rnd.NormFloat64() }
		l := Fit(read(0), []Trial{{1, read(1)}, {2, read(2)}}, 10, Prior{45, 3})
		if l.PriorDropped {
			continue
		}
		m, sigma := l.At(3)
		pulls = append(pulls, (2600+rate*3-m)/sigma)
	}
	mean, sd := stat.MeanStdDev(pulls, nil)
	// Leaving out the dropped ones narrows it somewhat.
	if math.Abs(mean) > 0.03 || math.Abs(sd-1) > 0.05 {
		t.Errorf("pulls have mean %v and standard deviation %v over %d", mean, sd, len(pulls))
	}
}

func TestTheEvidenceBeatsTheRule(t *testing.T) {
	t.Parallel()
	// s_LS = 8 and u_LS = √2 against 4.5 with u₀ = 1: 3.5 is just over 2·√3; 7.9
	// is just under.
	for _, test := range []struct {
		p       float64
		dropped bool
	}{
		{2610 + 80, true}, {2610 + 79, false}, {2610 + 10, true}, {2610 + 11, false},
	} {
		l := Fit(2610, []Trial{{10, test.p}}, 10, Prior{4.5, 1})
		if l.PriorDropped != test.dropped {
			t.Errorf("reading %v: dropped is %v, want %v", test.p, l.PriorDropped, test.dropped)
		}
		if l.PriorDropped && (l.Rate != l.RateLS || l.RateU != l.RateLSU) {
			t.Errorf("reading %v: dropped, but the rate is %v ± %v", test.p, l.Rate, l.RateU)
		}
	}
	// A certain prior stands until the readings contradict it.
	sure := Fit(2610, []Trial{{10, 2660}}, 10, Prior{4.5, 0})
	if sure.Rate != 4.5 || sure.RateU != 0 {
		t.Errorf("certain prior: got %v ± %v", sure.Rate, sure.RateU)
	}
	// No prior at all is the readings alone.
	none := Fit(2610, []Trial{{10, 2660}}, 10, Prior{0, math.Inf(1)})
	if none.Rate != none.RateLS || none.RateU != none.RateLSU || none.PriorDropped {
		t.Errorf("no prior: got %+v", none)
	}
	// A second reading with nothing added says more of the start, nothing of the rate.
	again := Fit(2610, []Trial{{0, 2620}}, 10, Prior{4.5, 1})
	if again.Rate != 4.5 || again.RateU != 1 || again.Datum != 2615 || !scalar.EqualWithinRel(again.DatumU, 10/math.Sqrt2, 1e-14) {
		t.Errorf("read again: got %+v", again)
	}
}

// Each trial narrows the belief everywhere, so long as the prior stands or
// stays dropped.
func TestEachTrialNarrows(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(15, 16))
	for range 500 {
		now, trials, repeat := scenario(rnd)
		for n := range trials {
			before, after := Fit(now, trials[:n], repeat, usual), Fit(now, trials[:n+1], repeat, usual)
			if before.PriorDropped != after.PriorDropped {
				continue
			}
			for at := 0.0; at <= 60; at += 5 {
				_, s0 := before.At(at * mils)
				_, s1 := after.At(at * mils)
				if !(s1 < s0*(1+1e-12)) {
					t.Fatalf("σ at %v mils went from %v to %v psi with trial %d of %v", at, s0/psi, s1/psi, n+1, trials)
				}
			}
			if after.RateU > before.RateU*(1+1e-12) {
				t.Fatalf("u of the rate went up with trial %d of %v", n+1, trials)
			}
		}
	}
}

// From what is fitted on, the chance of being over rises with t; Safe is where
// it or the target stops.
func TestSafe(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(17, 18))
	var byTarget, byChance, none int
	for range 1000 {
		now, trials, repeat := scenario(rnd)
		l := Fit(now, trials, repeat, usual)
		if !(l.Rate > 0) {
			continue
		}
		var fitted float64
		for _, tr := range trials {
			fitted = max(fitted, tr.T)
		}
		limit, target := (2650+300*rnd.Float64())*psi, (2600+300*rnd.Float64())*psi
		gauge := 80 * psi * rnd.Float64()
		chance := func(t float64) float64 {
			m, sigma := l.At(t)
			return POver(m, sigma, gauge, limit)
		}
		if l.meanP < limit {
			last := 0.0
			for at := fitted; at < fitted+100*mils; at += mils {
				p := chance(at)
				if p < last-1e-12 {
					t.Fatalf("chance falls from %v to %v at %v mils", last, p, at/mils)
				}
				last = p
			}
		}
		safe := l.Safe(fitted, target, limit, gauge, 0.05)
		if math.IsNaN(safe) {
			none++
			if m, _ := l.At(fitted); m <= target && chance(fitted) <= 0.05 {
				t.Fatalf("nothing is safe, yet what is fitted is")
			}
			continue
		}
		m, _ := l.At(safe)
		if safe < fitted || m > target*(1+1e-12) || chance(safe) > 0.05 {
			t.Fatalf("safe %v: m %v of %v, chance %v", safe, m, target, chance(safe))
		}
		switch m, _ := l.At(safe + 1e-9); {
		case m > target:
			byTarget++
		case chance(safe+1e-9) > 0.05:
			byChance++
		default:
			t.Fatalf("a nanometre more than %v is safe as well", safe)
		}
	}
	if byTarget < 50 || byChance < 50 || none < 50 {
		t.Errorf("too few of a kind: %d by target, %d by chance, %d none", byTarget, byChance, none)
	}
}

func TestStuck(t *testing.T) {
	t.Parallel()
	const now, repeat = 2610 * psi, 10 * psi
	rateLo := 40 * psi / (10 * mils)
	for _, test := range []struct {
		name   string
		trials []Trial
		want   bool
	}{
		{"no rise where 40 psi were due", []Trial{{10 * mils, now}}, true},
		{"28 psi, just under 2·√2·10", []Trial{{10 * mils, now + 28*psi}}, true},
		{"29 psi, just over", []Trial{{10 * mils, now + 29*psi}}, false},
		{"45 psi", []Trial{{10 * mils, now + 45*psi}}, false},
		{"no rise, but too thin to tell", []Trial{{9 * mils, now}}, false},
		{"it fell", []Trial{{20 * mils, now - 50*psi}}, true},
		{"rises only at first", []Trial{{10 * mils, now + 20*psi}, {20 * mils, now + 20*psi}, {30 * mils, now + 15*psi}}, true},
		{"rises all the way", []Trial{{10 * mils, now + 40*psi}, {20 * mils, now + 80*psi}, {30 * mils, now + 130*psi}}, false},
	} {
		if got := Fit(now, test.trials, repeat, usual).Stuck(rateLo); got != test.want {
			t.Errorf("%s: got %v, want %v", test.name, got, test.want)
		}
	}
}

func TestLineOutsideTheDomain(t *testing.T) {
	t.Parallel()
	falling := Fit(2610, []Trial{{10, 2500}}, 10, Prior{4.5, 1})
	if got := falling.Thickness(2700); !math.IsNaN(got) {
		t.Errorf("thickness on a falling line: %v", got)
	}
	if got := falling.Safe(0, 2700, 2790, 80, 0.05); !math.IsNaN(got) {
		t.Errorf("safe on a falling line: %v", got)
	}
	for _, l := range []Line{
		Fit(2610, nil, 0, Prior{4.5, 1}), Fit(2610, nil, 10, Prior{4.5, -1}), Fit(math.NaN(), nil, 10, Prior{4.5, 1}),
	} {
		if m, _ := l.At(0); !math.IsNaN(m) {
			t.Errorf("got %v, want NaN", m)
		}
		if got := l.Safe(0, 2700, 2790, 80, 0.05); !math.IsNaN(got) {
			t.Errorf("safe: got %v, want NaN", got)
		}
		if l.Stuck(4) {
			t.Error("stuck")
		}
	}
}
