package worksheets

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"plainlift/calc"
	"plainlift/calc/unit"
)

var update = flag.Bool("update", false, "rewrite testdata/answers")

var idForm = regexp.MustCompile(`^[a-zA-Z][a-zA-Z0-9_]*$`)

// every visits each worksheet as a subtest.
func every(t *testing.T, visit func(t *testing.T, w *calc.Worksheet)) {
	for _, w := range All {
		t.Run(w.ID, func(t *testing.T) { visit(t, w) })
	}
}

// The declarations say all that pages and links need, and no id twice.
func TestDeclarations(t *testing.T) {
	kinds := map[string]unit.Kind{}
	worksheets := map[string]bool{}
	every(t, func(t *testing.T, w *calc.Worksheet) {
		if worksheets[w.ID] || w.Title == "" || w.Menu == "" {
			t.Error("an id used twice, or no title or menu text")
		}
		worksheets[w.ID] = true
		if w.Reply.About == "" || w.Reply.How == "" || w.Reply.After == "" {
			t.Error("nothing to pass on in words")
		}
		seen := map[string]bool{"v": true, "example": true, "end": true, "verdict": true} // the links' own and the page's
		name := func(id string) {
			if seen[id] || !idForm.MatchString(id) {
				t.Errorf("id %q is used twice, reserved or badly formed", id)
			}
			seen[id] = true
		}
		quantity := func(q string, k unit.Kind) {
			if had, ok := kinds[q]; ok && had != k {
				t.Errorf("quantity %q is of two kinds", q)
			}
			kinds[q] = k
		}
		for _, c := range w.Compare {
			for _, id := range []string{c.Before, c.After} {
				if !slices.ContainsFunc(w.Fields, func(f calc.Field) bool { return f.ID == id && f.Shape <= calc.List }) {
					t.Errorf("no field %q to compare the %s", id, c.Quantity)
				}
			}
			if !slices.ContainsFunc(w.Fields, func(f calc.Field) bool {
				return f.ID == c.Apart.Key && slices.ContainsFunc(f.Options, func(o calc.Option) bool { return o.ID == c.Apart.Value })
			}) {
				t.Errorf("no choice %q to say that two gauges read the %s", c.Apart, c.Quantity)
			}
		}
		for i, f := range w.Fields {
			if f.Slide == nil {
				continue
			}
			if s := All.Evaluate(w.ID, nil, unit.US).Fields[i].Slide; f.Shape != calc.Single || s == nil || s.Min >= s.Max {
				t.Errorf("%s: its slider has no way to go in the example", f.ID)
			}
		}
		choices := map[string][]string{}
		ends := func(id string, k unit.Kind, r calc.Range) {
			last := math.Inf(-1)
			for _, text := range []string{r.Min, r.Max} {
				if text == "" {
					continue
				}
				v, err := unit.Parse(text, k, unit.Unit{}, unit.US)
				if err != nil || v.SI <= last || !v.UnitTyped && k.Shown(unit.US).Name != "" {
					t.Errorf("field %s: %q is no end of a range: %v", id, text, err)
				}
				last = v.SI
			}
		}
		for _, f := range w.Fields {
			name(f.ID)
			ends(f.ID, f.Kind, f.Range)
			ends(f.ID, f.With, f.RangeTo)
			if f.Label == "" || f.Hint == "" || f.Noun == "" {
				t.Errorf("field %s has no label, hint or noun", f.ID)
			}
			if f.Example == "" && f.Empty == "" && f.Shape != calc.Choice {
				t.Errorf("field %s is empty in the example, and nothing says what that means", f.ID)
			}
			if f.Shape == calc.Pairs && (f.Row == "" || f.RowTo == "") || f.Shape == calc.List && f.Row == "" {
				t.Errorf("field %s has rows without labels", f.ID)
			}
			if f.Quantity != "" {
				quantity(f.Quantity, f.Kind)
			}
			for _, o := range f.Options {
				choices[f.ID] = append(choices[f.ID], o.ID)
			}
			if f.Only != nil {
				for _, c := range f.Only.In {
					if !contains(choices[f.Only.Field], c) {
						t.Errorf("field %s depends on %s=%s, which is not declared before it", f.ID, f.Only.Field, c)
					}
				}
			}
		}
		for _, g := range w.Figures {
			name(g.ID)
			if g.Label == "" && g.Place != calc.Quoted {
				t.Errorf("figure %s has no label", g.ID)
			}
			if g.Quantity != "" {
				quantity(g.Quantity, g.Kind)
			}
		}
		for _, n := range w.Next {
			if All.Lookup(n.ID) == nil || n.Text == "" {
				t.Errorf("the way on to %q leads nowhere", n.ID)
			}
		}
	})
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// sound complains about an answer that no page may show.
func sound(t *testing.T, w *calc.Worksheet, entries calc.Entries, a *calc.Answer) {
	t.Helper()
	fail := func(format string, args ...any) {
		t.Helper()
		t.Errorf("%v: "+format, append([]any{entries}, args...)...)
	}
	for _, p := range a.Problems {
		found := false
		for _, f := range w.Fields {
			found = found || f.ID == p.Field
		}
		if !found || p.Message == "" {
			fail("a problem without a field or a message: %+v", p)
		}
	}
	if !a.OK() {
		if len(a.Figures) > 0 || a.Picture != "" && !strings.Contains(a.Picture, ">What was entered") {
			fail("figures beside a problem")
		}
		return
	}
	if n := utf8.RuneCountInString(a.Verdict.Head); n == 0 || n > 45 {
		fail("head of %d characters: %q", n, a.Verdict.Head)
	}
	texts := append([]string{a.Verdict.Head, a.Verdict.Sentence, a.Picture}, a.Lines...)
	texts = append(append(append(texts, a.Rests...), a.Notices...), a.Reply...)
	for _, s := range a.Working {
		texts = append(texts, s.Numbers)
	}
	for _, f := range a.Figures {
		texts = append(texts, f.Text)
		x, err := strconv.ParseFloat(f.Value, 64)
		if err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) && f.ID != "dof" {
			fail("figure %s is %s", f.ID, f.Value)
		}
		if f.Text == "" && f.Place != calc.Quoted {
			fail("figure %s says nothing", f.ID)
		}
	}
	declared := map[string]calc.Figure{}
	for _, g := range w.Figures {
		declared[g.ID] = g
	}
	said := a.Verdict.Head + "\n" + a.Verdict.Sentence + "\n" + strings.Join(append(a.Lines, a.Reply...), "\n")
	own := "" // words of the branches themselves
	for _, v := range w.Verdicts {
		own += v.Sentence
	}
	for _, f := range a.Figures {
		if g := declared[f.ID]; f.Value == "" && g.Round != calc.Words && strings.Contains(said, f.Text) && !strings.Contains(own, f.Text) {
			fail("a sentence quotes %s, which does not exist: %q", f.ID, said)
		}
		for _, limit := range declared[f.ID].Against {
			keepsClear(t, entries, a, f, limit, declared)
		}
	}
	for _, text := range texts {
		if strings.ContainsAny(strings.ReplaceAll(text, "paint-order", ""), "{") && !strings.HasPrefix(text, "<svg") || strings.Contains(text, "NaN") || strings.Contains(text, "∞") {
			fail("a text that was not filled in: %q", text)
		}
	}
	var shares float64
	for _, b := range a.Budget {
		shares += b.Share
	}
	if len(a.Budget) > 0 && shares != 0 && math.Abs(shares-1) > 1e-9 {
		fail("the shares sum to %v", shares)
	}
	if len(a.Cautions) == 0 || len(a.Rests) == 0 || len(a.Working) == 0 || a.Picture == "" {
		fail("an answer without cautions, assumptions, working or picture")
	}
}

// keepsClear complains about a shown number that meets or crosses a limit which
// the number itself does not.
func keepsClear(t *testing.T, entries calc.Entries, a *calc.Answer, f calc.Shown, limit string, figures map[string]calc.Figure) {
	t.Helper()
	kind := figures[f.ID].Kind
	parse := func(text string) float64 {
		if text == "" {
			return math.NaN()
		}
		v, err := unit.Parse(text, kind, unit.Unit{}, unit.US)
		if err != nil {
			return math.NaN() // words, as "under 1 %"
		}
		return v.SI
	}
	number := func(text string) float64 {
		x, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return math.NaN()
		}
		return x
	}
	l := math.NaN()
	for _, s := range a.Fields {
		if s.ID == limit {
			l = parse(s.Canonical)
		}
	}
	switch g := a.Figure(limit); {
	case g != nil:
		l = number(g.Value)
	case strings.ContainsAny(limit[:1], "0123456789"):
		l = parse(limit)
	}
	// A number that stands nearer to its limit than six digits tell may meet it.
	x, shown := number(f.Value), parse(f.Text)
	if apart := math.Abs(x - l); apart > 1e-6*max(math.Abs(l), math.Abs(x)) && (x < l && shown >= l*(1+1e-12) || x > l && shown <= l*(1-1e-12)) {
		t.Errorf("%v: %s is %v and shown as %s, across %s, %v", entries, f.ID, x, f.Text, limit, l)
	}
}

// candidates are texts to try in a field: its ends, between them, and past them.
func candidates(f *calc.Field, r *rand.Rand) []string {
	number := func(k unit.Kind, rg calc.Range) string {
		ends := func(s string, none float64) float64 {
			if v, err := unit.Parse(s, k, k.Shown(unit.US), unit.US); err == nil {
				return v.SI
			}
			return none
		}
		lo, hi := ends(rg.Min, 0), ends(rg.Max, 10)
		x := lo + (hi-lo)*math.Pow(r.Float64(), 3)
		switch r.IntN(8) {
		case 0:
			x = lo
		case 1:
			x = hi
		case 2:
			x = lo + (hi-lo)*1e-9
		case 3:
			x = hi * 1.01
		}
		u := k.Shown(unit.US)
		return unitText(strconv.FormatFloat(u.FromSI(x), 'g', 6, 64), u.Name)
	}
	var texts []string
	switch f.Shape {
	case calc.Choice:
		for _, o := range f.Options {
			texts = append(texts, o.ID)
		}
		return texts
	case calc.Single:
		for range 4 {
			texts = append(texts, number(f.Kind, f.Range))
		}
	default:
		for _, n := range []int{1, 2, 3, 12} {
			var items []string
			for range n {
				item := number(f.Kind, f.Range)
				if f.Shape == calc.Pairs {
					item += " : " + number(f.With, f.RangeTo)
				}
				items = append(items, item)
			}
			texts = append(texts, strings.Join(items, "; "))
		}
	}
	return append(texts, "", f.Example)
}

func unitText(number, name string) string { return strings.TrimSpace(number + " " + name) }

// near scatters a typed number about the example, so that answers of every
// branch come up.
func near(f *calc.Field, r *rand.Rand) string {
	u := f.Kind.Shown(unit.US)
	v, err := unit.Parse(f.Example, f.Kind, u, unit.US)
	if f.Shape != calc.Single || err != nil {
		return f.Example
	}
	spread := []float64{0.002, 0.02, 0.1, 1}[r.IntN(4)]
	return unitText(strconv.FormatFloat(v.Unit.FromSI(v.SI)*(1+spread*(2*r.Float64()-1)), 'f', 3, 64), v.Unit.Name)
}

// Whatever stands in the fields, there is a sound answer or a problem that names
// its field, and every branch of the verdict comes up.
func TestEveryBranchIsSound(t *testing.T) {
	every(t, func(t *testing.T, w *calc.Worksheet) {
		r := rand.New(rand.NewPCG(1, 2))
		said := map[string]bool{}
		patterns := map[string]*regexp.Regexp{}
		for _, v := range w.Verdicts {
			patterns[v.Key] = pattern(v.Sentence)
		}
		note := func(a *calc.Answer) {
			for key, p := range patterns {
				if !said[key] && a.OK() && p.MatchString(a.Verdict.Sentence) {
					said[key] = true
				}
			}
		}
		try := func(entries calc.Entries) {
			sys := unit.System(r.IntN(2))
			a := All.Evaluate(w.ID, entries, sys)
			sound(t, w, entries, a)
			note(a)
		}
		for i := range w.Fields {
			f := &w.Fields[i]
			for _, text := range candidates(f, r) {
				try(calc.Entries{f.ID: {Text: text, Own: true}})
			}
		}
		for range 500 {
			entries := calc.Entries{}
			for i := range w.Fields {
				f := &w.Fields[i]
				texts := candidates(f, r)
				text := texts[r.IntN(len(texts))]
				if r.IntN(3) > 0 {
					text = near(f, r)
				}
				entries[f.ID] = calc.Entry{Text: text, Own: r.IntN(12) > 0}
			}
			try(entries)
		}
		for _, entries := range branches(w.ID) {
			try(entries)
		}
		for key := range patterns {
			if !said[key] {
				t.Errorf("nothing brings up the branch %q", key)
			}
		}
	})
}

// pattern matches a sentence with anything in its braces, after any prefix.
func pattern(sentence string) *regexp.Regexp {
	var b strings.Builder
	b.WriteString("(?i)")
	for {
		before, rest, ok := strings.Cut(sentence, "{")
		b.WriteString(regexp.QuoteMeta(before))
		if !ok {
			return regexp.MustCompile(b.String())
		}
		b.WriteString(".*")
		_, sentence, _ = strings.Cut(rest, "}")
	}
}

// branches are entries for the branches of a worksheet, those that chance does
// not find among them.
func branches(worksheet string) []calc.Entries {
	var list []calc.Entries
	switch worksheet {
	case "reading":
		for _, b := range readingBranches {
			list = append(list, owned(changed(b.changes)...))
		}
	case "short":
		list = append(list, owned("low", "", "high", ""), owned("reading", "2840 psi"), owned("reading", "2800 psi"), owned("reading", "2700 psi"),
			owned("reading", "2900 psi"), owned("accuracy", "1.5 %"), owned("reading", "2735 psi"), owned("reading", "2735 psi", "accuracy", "1 %"),
			owned("target", "2610 psi"), owned("target", "2500 psi"), owned("target", "2900 psi"), owned("high", ""), owned("high", "", "reading", "2720 psi"), owned("low", "", "reading", "2800 psi"))
	case "gain":
		list = append(list, owned("target", "2610 psi"), owned("target", "2500 psi"), owned("target", "2500 psi", "dead", "200 lb"), owned("dead", "200 lb"),
			owned("target", "2900 psi"), owned("target", "2900 psi", "dead", "200 lb"), owned("now", "2800 psi"), owned("lift", "55 lb", "dead", "50 kN"))
	case "cylinder":
		list = append(list, owned("compare", "2610 psi"), owned("compare", "2500 psi"), owned("compare", "2800 psi"), owned("pressure", "2800 psi"),
			owned("back", "2500 psi"), owned("flow", ""), owned("limit", ""))
	case "flow":
		for _, b := range flowBranches {
			list = append(list, owned(changed(b.changes)...))
		}
	case "job":
		for _, b := range jobBranches {
			list = append(list, owned(changed(b.changes)...))
		}
	case "lift-test":
		for _, b := range scaleBranches {
			list = append(list, owned(changed(b.changes)...))
		}
	case "loader":
		list = append(list, owned("compare", "2800 psi"), owned("compare", "2610 psi"), owned("compare", "2500 psi"), owned("pressure", "2800 psi"),
			owned("level", "yes"), owned("height", "8 in"), owned("pressure", "400 psi"), owned("limit", ""),
			owned("points", "20 in : 2,900 lb; 60 in : 2,000 lb; 120 in : 900 lb", "points_at", "2735 psi"))
	case "before-after":
		list = append(list, owned("before", "2700 psi", "after", "2450 psi", "claimed", "-10 %"), owned("claimed", "13.23 %", "gauge_err", "0 psi", "step", "0 psi"),
			owned("after", "2455 psi"), owned("after", "2455 psi", "claimed", "0.2 %"), owned("after", "2500 psi", "same_gauge", "no"), owned("claimed", "12 %"), owned("claimed", "5 %"), owned("claimed", "0 %"))
	case "ratings":
		for _, b := range ratingsBranches {
			list = append(list, b.entries)
		}
	case "tip":
		for _, b := range tipBranches {
			list = append(list, owned(changed(b.changes)...))
		}
	case "shim":
		for _, b := range shimBranches {
			list = append(list, mine(strings.Split(b.changes, "|")...))
		}
	}
	return list
}

// Rubbish in any field is a complaint, never a panic.
func TestRubbish(t *testing.T) {
	rubbish := []string{"abc", "{lo}", "1e400", "NaN", "-1", "0", "<b>1</b>", ";;;:", "1:2:3", "1 : ; : 2", "2,600 lb", "1,234.5.6",
		"\u202e2600", strings.Repeat("9", 5000), strings.Repeat("1;", 9000), "½", "−0", "\x00"}
	every(t, func(t *testing.T, w *calc.Worksheet) {
		for _, f := range w.Fields {
			for _, text := range rubbish {
				entries := calc.Entries{f.ID: {Text: text, Own: true}}
				for _, sys := range []unit.System{unit.US, unit.Metric} {
					a := All.Evaluate(w.ID, entries, sys)
					for _, p := range a.Problems {
						if p.Message == "" {
							t.Errorf("%s=%q: a problem that says nothing", f.ID, text)
						}
					}
					All.Convert(w.ID, entries, sys, 1-sys)
				}
			}
		}
	})
}

// A link gives the same figures in either system of units, and so does the same
// number typed in either.
func TestLinksAndUnits(t *testing.T) {
	every(t, func(t *testing.T, w *calc.Worksheet) {
		r := rand.New(rand.NewPCG(3, 4))
		for range 80 {
			entries := calc.Entries{}
			for i := range w.Fields {
				entries[w.Fields[i].ID] = calc.Entry{Text: near(&w.Fields[i], r), Own: r.IntN(5) > 0}
			}
			us := All.Evaluate(w.ID, entries, unit.US)
			if !us.OK() {
				continue
			}
			again := calc.FromLink(us.Link)
			metric := calc.Entries{}
			for _, s := range All.Convert(w.ID, entries, unit.US, unit.Metric) {
				e := entries[s.ID]
				if s.Canonical != "" {
					e.Text = s.Canonical
				}
				metric[s.ID] = e
			}
			for what, a := range map[string]*calc.Answer{
				"the link":            All.Evaluate(w.ID, again, unit.US),
				"the link, in metric": All.Evaluate(w.ID, again, unit.Metric),
				"the switch":          All.Evaluate(w.ID, metric, unit.Metric),
			} {
				same(t, what, us, a)
			}
			if len(us.Examples) != len(All.Evaluate(w.ID, again, unit.US).Examples) {
				t.Errorf("the link loses the example's mark: %v", us.Link)
			}
		}
	})
}

// same compares two answers by their SI values.
func same(t *testing.T, what string, want, got *calc.Answer) {
	t.Helper()
	if len(want.Figures) != len(got.Figures) {
		t.Errorf("%s: %d figures, want %d (%v)", what, len(got.Figures), len(want.Figures), got.Problems)
		return
	}
	for i, f := range want.Figures {
		g := got.Figures[i]
		x, err1 := strconv.ParseFloat(f.Value, 64)
		y, err2 := strconv.ParseFloat(g.Value, 64)
		if err1 != nil || err2 != nil {
			if f.Value != g.Value {
				t.Errorf("%s: %s is %q, want %q", what, f.ID, g.Value, f.Value)
			}
		} else if math.Abs(x-y) > 1e-9*math.Max(math.Abs(x), 1e-6) {
			t.Errorf("%s: %s is %v, want %v", what, f.ID, y, x)
		}
	}
}

// What travels to another worksheet can be read there and keeps its mark.
func TestWaysOn(t *testing.T) {
	every(t, func(t *testing.T, w *calc.Worksheet) {
		a := All.Evaluate(w.ID, nil, unit.US)
		if len(a.Next) == 0 {
			t.Error("no way on")
		}
		for _, n := range a.Next {
			b := All.Evaluate(n.ID, calc.FromLink(n.Link), unit.Metric)
			if !b.OK() || len(b.Notices) > 0 && strings.Contains(b.Notices[0], "does not know") {
				t.Errorf("%s: %v %v", n.ID, b.Problems, b.Notices)
			}
			for _, f := range b.Fields {
				if declared := All.Lookup(n.ID); !f.Example && f.Bears && f.Canonical != "" && !usual(declared, f.ID) {
					t.Errorf("%s: %s came from the example and lost its mark", n.ID, f.ID)
				}
			}
		}
	})
}

func usual(w *calc.Worksheet, id string) bool {
	for _, f := range w.Fields {
		if f.ID == id {
			return f.Usual
		}
	}
	return false
}

// The golden answers show what a change of code or words does to each page. The
// same text must come out natively and as WebAssembly.
func TestAnswers(t *testing.T) {
	for _, w := range All {
		t.Run(w.ID, func(t *testing.T) {
			file, text := "testdata/answers/"+w.ID+".txt", goldenText(w)
			if *update {
				if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			got, lines := strings.Split(text, "\n"), strings.Split(string(want), "\n")
			for i := range max(len(got), len(lines)) {
				if i >= len(got) || i >= len(lines) || got[i] != lines[i] {
					t.Fatalf("%s:%d: differs; look, then run with -update\ngot  %q\nwant %q", file, i+1, at(got, i), at(lines, i))
				}
			}
		})
	}
}

// goldenText is what a worksheet says to its example, in both systems, and on
// each of its branches.
func goldenText(w *calc.Worksheet) string {
	var b strings.Builder
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		a := All.Checked(w.ID, nil, sys)
		fmt.Fprintf(&b, "== %s\n%s\n%s\n", []string{"US", "metric"}[sys], a.Verdict.Head, a.Verdict.Sentence)
		for _, l := range a.Lines {
			fmt.Fprintln(&b, "-", l)
		}
		for _, f := range a.Figures {
			fmt.Fprintf(&b, "%s = %s\n", f.ID, f.Text)
		}
		for _, s := range a.Working {
			fmt.Fprintf(&b, "%s | %s | %s\n", s.Formula, s.Numbers, s.Source)
		}
		fmt.Fprintln(&b, a.Check)
		fmt.Fprintln(&b, strings.Join(a.Reply, "\n"))
	}
	fmt.Fprintf(&b, "== branches\n")
	for _, entries := range branches(w.ID) {
		a := All.Evaluate(w.ID, entries, unit.US)
		fmt.Fprintf(&b, "%s: %s · %s\n", a.Verdict.ID, a.Verdict.Head, strings.Join(append([]string{a.Verdict.Sentence}, a.Lines...), " / "))
	}
	return b.String()
}

func at(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return ""
}
