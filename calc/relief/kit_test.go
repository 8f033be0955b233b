package relief

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"
)

// invented: 0.005 in : 2; 0.010 in : 2; 0.020 in : 2; 0.040 in : 1.
var invented = NewKit([]Piece{{5 * mils, 2}, {10 * mils, 2}, {20 * mils, 2}, {40 * mils, 1}})

// inMils is a stack in whole mils, the thickest first.
func inMils(pieces []Piece) []int {
	var out []int
	for _, p := range pieces {
		for range p.Count {
			out = append(out, int(math.Round(p.Thickness/mils)))
		}
	}
	return out
}

func TestPlan(t *testing.T) {
	t.Parallel()
	small := NewKit([]Piece{{10 * mils, 1}, {15 * mils, 1}})
	for _, test := range []struct {
		name                     string
		kit                      Kit
		fitted, safe             float64
		first, most, next        float64 // totals in mils, 0 for none
		stack, firstIn, in, outs []int   // of Most, but firstIn
	}{
		{"nothing fitted", invented, 0, 27.8, 5, 25, 30, []int{20, 5}, []int{5}, []int{20, 5}, nil},
		{"exactly reached", invented, 0, 30, 5, 30, 35, []int{20, 10}, []int{5}, []int{20, 10}, nil},
		{"thickest among equals", NewKit([]Piece{{10 * mils, 2}, {20 * mils, 3}, {40 * mils, 1}}), 0, 60, 10, 60, 70, []int{40, 20}, []int{10}, []int{40, 20}, nil},
		{"20 fitted, 40 adds the other 20", invented, 20, 44, 25, 40, 45, []int{20, 20}, []int{5}, []int{20}, nil},
		{"15 fitted, 25 adds the other 10", invented, 15, 29, 20, 25, 30, []int{10, 10, 5}, []int{5}, []int{10}, nil},
		{"a change where adding cannot", small, 10, 20, 15, 15, 25, []int{15}, []int{15}, []int{15}, []int{10}},
		{"adding where there is room", small, 10, 25, 25, 25, 0, []int{15, 10}, []int{15}, []int{15}, nil},
		{"nothing safe", invented, 20, 22, 25, 0, 25, nil, []int{5}, nil, nil},
		{"what is fitted fails", invented, 20, math.NaN(), 25, 0, 25, nil, []int{5}, nil, nil},
		{"nothing left", invented, 110, 200, 0, 0, 0, nil, nil, nil, nil},
		{"up to the last", invented, 100, 200, 105, 110, 0, []int{40, 20, 20, 10, 10, 5, 5}, []int{5}, []int{5, 5}, nil},
		{"no kit", NewKit(nil), 0, 30, 0, 0, 0, nil, nil, nil, nil},
		{"other shims fitted", invented, 7, 18, 12, 17, 22, []int{10}, []int{5}, []int{10}, nil},
		{"endless", invented, 0, math.Inf(1), 5, 110, 0, []int{40, 20, 20, 10, 10, 5, 5}, []int{5}, []int{40, 20, 20, 10, 10, 5, 5}, nil},
	} {
		plan := test.kit.Plan(test.fitted*mils, test.safe*mils)
		for _, step := range []struct {
			name string
			got  *Step
			want float64
		}{{"first", plan.First, test.first}, {"most", plan.Most, test.most}, {"next", plan.Next, test.next}} {
			var total float64
			if step.got != nil {
				total = step.got.Total / mils
				if d := step.got.Add/mils - (total - test.fitted); math.Abs(d) > 1e-9 {
					t.Errorf("%s: %s adds %v mils to %v and makes %v", test.name, step.name, step.got.Add/mils, test.fitted, total)
				}
			}
			if math.Abs(total-step.want) > 1e-9 {
				t.Errorf("%s: %s is %v mils, want %v", test.name, step.name, total, step.want)
			}
		}
		if plan.First != nil && !slices.Equal(inMils(plan.First.In), test.firstIn) {
			t.Errorf("%s: first fits %v, want %v", test.name, inMils(plan.First.In), test.firstIn)
		}
		if m := plan.Most; m != nil {
			if !slices.Equal(inMils(m.Stack), test.stack) || !slices.Equal(inMils(m.In), test.in) || !slices.Equal(inMils(m.Out), test.outs) {
				t.Errorf("%s: stack %v, in %v, out %v; want %v, %v, %v", test.name,
					inMils(m.Stack), inMils(m.In), inMils(m.Out), test.stack, test.in, test.outs)
			}
		}
	}
}

// every returns, for each total in nm, all the ways to make it.
func every(shims []shim) map[int64][][]int {
	ways := map[int64][][]int{0: {make([]int, 0)}}
	for _, s := range shims {
		more := map[int64][][]int{}
		for nm, counts := range ways {
			for n := range s.count + 1 {
				at := nm + int64(n)*s.nm
				for _, c := range counts {
					more[at] = append(more[at], append(slices.Clone(c), n))
				}
			}
		}
		ways = more
	}
	return ways
}

// best picks the fewest shims, then the thickest, by comparing all the ways.
func best(ways [][]int) []int {
	return slices.MinFunc(ways, func(a, b []int) int {
		var na, nb int
		for i := range a {
			na, nb = na+a[i], nb+b[i]
		}
		if na != nb {
			return cmp.Compare(na, nb)
		}
		return slices.Compare(b, a)
	})
}

func counts(shims []shim, stack []Piece) []int {
	out := make([]int, len(shims))
	for _, p := range stack {
		i := slices.IndexFunc(shims, func(s shim) bool { return s.nm == nanometres(p.Thickness) })
		if i < 0 {
			return nil
		}
		out[i] += p.Count
	}
	return out
}

// Against trying every stack there is.
func TestPlanByTryingAll(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewPCG(19, 20))
	var changed, kept, foreign int
	for range 1500 {
		var list []Piece
		for range 1 + rnd.IntN(4) {
			thick := float64(1+rnd.IntN(12)) * 2.5 * mils
			if rnd.IntN(4) == 0 {
				thick = float64(1+rnd.IntN(12)) * 0.1 * mm
			}
			list = append(list, Piece{thick, 1 + rnd.IntN(3)})
		}
		kit := NewKit(list)
		all := every(kit.shims)
		fitted := nanometres(float64(rnd.IntN(20)) * 2.5 * mils)
		safe := fitted + int64(rnd.IntN(2000000))
		plan := kit.Plan(metres(fitted), metres(safe))

		// What is fitted, and what is left.
		in, ours := all[fitted]
		left, stack := slices.Clone(kit.shims), make([]int, len(kit.shims))
		if ours {
			stack = best(in)
			for i := range left {
				left[i].count -= stack[i]
			}
		}
		if !ours && plan.Fitted != nil || ours && !slices.Equal(counts(kit.shims, plan.Fitted), stack) {
			t.Fatalf("fitted %v of %v: got %v, want %v", fitted, kit.shims, plan.Fitted, stack)
		}
		more := every(left)
		var most, next int64
		consider := func(nm int64) {
			if nm > fitted && nm <= safe {
				most = max(most, nm)
			}
			if nm > safe && (next == 0 || nm < next) {
				next = nm
			}
		}
		for nm := range more {
			consider(fitted + nm)
		}
		if ours {
			for nm := range all {
				consider(nm)
			}
		}
		total := func(s *Step) int64 {
			if s == nil {
				return 0
			}
			return nanometres(s.Total)
		}
		if total(plan.Most) != most || total(plan.Next) != next {
			t.Fatalf("kit %v, fitted %v, safe %v: got %v and %v, want %v and %v", kit.shims, fitted, safe, total(plan.Most), total(plan.Next), most, next)
		}
		if plan.Most != nil && (plan.First == nil || plan.First.Total > plan.Most.Total || plan.First.Total <= metres(fitted)) {
			t.Fatalf("kit %v, fitted %v: first %+v, most %+v", kit.shims, fitted, plan.First, plan.Most)
		}
		for _, s := range []*Step{plan.First, plan.Most, plan.Next} {
			if s == nil {
				continue
			}
			var want []int
			if ways, ok := more[total(s)-fitted]; ok {
				want = slices.Clone(best(ways))
				for i := range want {
					want[i] += stack[i]
				}
				if len(s.Out) > 0 {
					t.Fatalf("takes %v out for nothing", s.Out)
				}
				kept++
			} else {
				want = best(all[total(s)])
				changed++
			}
			if !ours && fitted > 0 {
				foreign++
			}
			got, gotIn, gotOut := counts(kit.shims, s.Stack), counts(kit.shims, s.In), counts(kit.shims, s.Out)
			if !slices.Equal(got, want) {
				t.Fatalf("kit %v, fitted %v, total %v: got %v, want %v", kit.shims, fitted, total(s), got, want)
			}
			for i, k := range kit.shims {
				if stack[i]+gotIn[i]-gotOut[i] != got[i] || got[i] > k.count || gotIn[i] > 0 && gotOut[i] > 0 {
					t.Fatalf("kit %v: %v and in %v, out %v make %v", kit.shims, stack, gotIn, gotOut, got)
				}
			}
		}
	}
	if changed < 50 || kept < 500 || foreign < 50 {
		t.Errorf("too few of a kind: %d changed, %d kept, %d other shims", changed, kept, foreign)
	}
}

// large is 20 rows of 50, round or not.
func large(round bool) Kit {
	rnd := rand.New(rand.NewPCG(21, 22))
	var list []Piece
	for i := range 20 {
		thick := float64(2*i+1) * mils
		if !round {
			thick = 0.02*mm + rnd.Float64()*mm
		}
		list = append(list, Piece{thick, 50})
	}
	return NewKit(list)
}

// A kit too large to try all of it still gives a stack that is in the kit, sums
// to its total and stops at most 0.1 µm in a millimetre short.
func TestLargeKits(t *testing.T) {
	t.Parallel()
	for _, round := range []bool{true, false} {
		kit := large(round)
		for _, safe := range []float64{0.3 * mm, 1.7 * mm, 40 * mm, 2} {
			start := time.Now()
			plan := kit.Plan(0, safe)
			t.Logf("round %v, safe %v m: %v", round, safe, time.Since(start))
			m := plan.Most
			if m == nil {
				t.Fatalf("round %v, safe %v: nothing", round, safe)
			}
			var nm int64
			for i, n := range counts(kit.shims, m.Stack) {
				if n > kit.shims[i].count {
					t.Errorf("round %v, safe %v: %d of %d", round, safe, n, kit.shims[i].count)
				}
				nm += int64(n) * kit.shims[i].nm
			}
			if metres(nm) != m.Total || m.Total > safe {
				t.Errorf("round %v, safe %v: stack sums to %v, total %v", round, safe, metres(nm), m.Total)
			}
			short := min(safe, metres(sum(kit.shims))) - m.Total
			if round && short >= mils || !round && safe > mm && short > 3e-4*safe {
				t.Errorf("round %v, safe %v: stops %v short", round, safe, short)
			}
		}
	}
}

func TestNewKit(t *testing.T) {
	t.Parallel()
	kit := NewKit([]Piece{
		{5 * mils, 1}, {0.127 * mm, 2}, // the same thickness twice
		{10 * mils, 1}, {0, 5}, {-1, 5}, {math.NaN(), 5}, {math.Inf(1), 5}, {1e-12, 5}, {20 * mils, 0}, {20 * mils, -3},
		{1 * mm, math.MaxInt}, {1 * mm, math.MaxInt},
	})
	want := []shim{{1000000, mostAlike}, {254000, 1}, {127000, 3}}
	if !slices.Equal(kit.shims, want) {
		t.Errorf("got %v, want %v", kit.shims, want)
	}
	// Ten thousandths of an inch add up without rounding.
	if p := NewKit([]Piece{{0.0001 * inch, 1000}}).Plan(0, 0.0823*inch); p.Most == nil || p.Most.Total != 823*2540e-9 {
		t.Errorf("got %+v", p.Most)
	}
	for _, fitted := range []float64{math.NaN(), -1, 0} {
		if p := invented.Plan(fitted, 10*mils); p.Most == nil || math.Abs(p.Most.Total/mils-10) > 1e-9 {
			t.Errorf("fitted %v: got %+v", fitted, p.Most)
		}
	}
}

func BenchmarkPlan(b *testing.B) {
	for _, test := range []struct {
		name string
		kit  Kit
	}{{"invented", invented}, {"large", large(true)}, {"irregular", large(false)}} {
		b.Run(test.name, func(b *testing.B) {
			for b.Loop() {
				test.kit.Plan(20*mils, 70*mils)
			}
		})
	}
}
