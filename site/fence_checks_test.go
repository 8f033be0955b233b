package site

import (
	"math"
	"strings"
	"testing"

	"plainlift/calc/checks"
)

func gives(x float64) func() float64 { return func() float64 { return x } }

// made is a topic made up for these tests: the last value of its table is wrong.
var made = checks.Topic{Name: "Made & up", Checks: []checks.Check{
	{What: "Two < three", Source: "A & B", Status: checks.Read, Unit: "psi", Printed: "2.5", Got: gives(2.512)},
	{What: "a", Source: "C", Status: checks.Memory, Table: "T", Printed: "1.0", Got: gives(1.01)},
	{What: "Rule", Status: checks.CommonPractice, Printed: "40 to 50", Got: gives(45)},
	{What: "b", Source: "C", Status: checks.Memory, Table: "T", Printed: "2.0", Got: gives(2.04)},
	{What: "c", Source: "C", Status: checks.Memory, Table: "T", Printed: "3.0", Got: gives(3.02)},
}}

func TestCheckTable(t *testing.T) {
	got := checkTable(compared(made))
	want := `<tbody>
<tr><th scope="row">Two &lt; three<br><small>A &amp; B; read</small></th><td>2.5 psi</td><td>2.51</td><td>0.05</td></tr>
<tr><th scope="row">T: 3 values, all agree. Furthest off: b<br><small>C; from memory</small></th><td>2.0</td><td>2.04</td><td>0.05</td></tr>
<tr><th scope="row">Rule<br><small>common practice, no source</small></th><td>40 to 50</td><td>45.0</td><td>0.5</td></tr>
</tbody>`
	if !strings.Contains(got, want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// What does not agree is said, not hidden, in the table and above it.
func TestCheckTableOwnsUp(t *testing.T) {
	for _, wrong := range []float64{3.2, math.NaN()} {
		topic := checks.Topic{Name: "Wrong", Checks: append([]checks.Check{}, made.Checks...)}
		topic.Checks[4].Got = gives(wrong)
		got := string(allChecks([]checks.Topic{topic}))
		for _, want := range []string{
			"<p>5 values, <strong>not agreeing: 1</strong></p>",
			"<summary>Wrong: 5 values, <strong>not agreeing: 1</strong></summary>",
			"T: 3 values, <strong>not agreeing: 1</strong>. Furthest off: c<br>",
			"<td><strong>no</strong>: 0.05</td>",
		} {
			if !strings.Contains(got, want) {
				t.Errorf("%v: no %s in\n%s", wrong, want, got)
			}
		}
	}
}

func TestAllChecks(t *testing.T) {
	got := string(allChecks([]checks.Topic{made, {Name: "More", Checks: made.Checks[:1]}}))
	for _, want := range []string{
		"<p>6 values, all agree</p>",
		`<tr><th scope="row">read</th><td>2</td></tr>`,
		`<tr><th scope="row">from memory</th><td>3</td></tr>`,
		`<tr><th scope="row">quoted by another document</th><td>0</td></tr>`,
		"<details><summary>Made &amp; up: 5 values, all agree</summary>",
		"<details><summary>More: 1 value, agrees</summary>",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
}

// The project's own list stands in a guide, whole or by topic.
func TestChecksInAGuide(t *testing.T) {
	whole := parsed(t, "```checks\n```\n")
	for _, topic := range checks.Topics {
		if !strings.Contains(whole, "<summary>"+topic.Name+": ") {
			t.Errorf("no topic %s", topic.Name)
		}
		if one := parsed(t, "```checks "+topic.Name+"\n```\n"); !strings.Contains(one, topic.Checks[0].Published()) {
			t.Errorf("%s without its first check", topic.Name)
		}
	}
	if strings.Contains(whole, "not agreeing") {
		t.Error("a check does not agree")
	}
	for _, c := range []struct{ info, line, want string }{
		{"checks Lift and lines", "", `6: no checks on "Lift and lines"; there are Units, Measurement doubt, `},
		{"checks", "show: all", "7: nothing stands in a checks block"},
	} {
		got := refused(t, front+tableOf(c.info, c.line))
		if want := "content/x.md:" + c.want; !strings.HasPrefix(got, want) {
			t.Errorf("%s: error %q, want %q", c.info, got, want)
		}
	}
}
