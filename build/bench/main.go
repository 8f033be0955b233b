// Command bench measures the site against its budgets and prints a table: how
// fast a page answers on a slow phone and link, how fast the core simulates
// against NumPy, and how long the site takes to build.
//
//	go run ./build/bench
//
// The link is slowed by the server: 1.6 Mbit/s, 150 ms to every answer. The
// processor is slowed by stopping the browser's renderers, page and workers
// alike, for three quarters of the time. Timings are noisy: compare within one
// run.
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// line is one row of the report.
type line struct {
	what     string
	measured float64
	unit     string
	budget   float64 // 0: none
}

func (l line) String() string {
	s := fmt.Sprintf("%-58s %9.3g %-4s", l.what, l.measured, l.unit)
	switch {
	case l.budget == 0:
	case l.measured <= l.budget:
		s += fmt.Sprintf("  within %.3g", l.budget)
	default:
		s += fmt.Sprintf("  OVER %.3g by %.3g", l.budget, l.measured-l.budget)
	}
	return s
}

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run() error {
	tmp, err := os.MkdirTemp("", "plainlift-bench-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(tmp)
	dir := filepath.Join(tmp, "site")
	for _, measure := range []func(dir, tmp string) ([]line, error){buildTimes, pageTimes, coreTimes} {
		lines, err := measure(dir, tmp)
		for _, l := range lines {
			fmt.Println(l)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
