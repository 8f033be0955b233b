package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// buildTimes builds the site from nothing and again after one edit of a guide.
func buildTimes(dir, tmp string) ([]line, error) {
	tool := filepath.Join(tmp, "build")
	if out, err := exec.Command("go", "build", "-o", tool, "./build").CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w\n%s", err, out)
	}
	timed := func(name string, args ...string) (float64, error) {
		start := time.Now()
		cmd := exec.Command(name, args...)
		cmd.Env = append(os.Environ(), "GOCACHE="+filepath.Join(tmp, "cache"))
		out, err := cmd.CombinedOutput()
		if err != nil {
			err = fmt.Errorf("%s: %w\n%s", name, err, out)
		}
		return time.Since(start).Seconds(), err
	}
	cold, err := timed("go", "run", "./build", "-o", dir)
	if err != nil {
		return nil, err
	}
	if err := os.RemoveAll(dir); err != nil {
		return nil, err
	}
	nothing, err := timed(tool, "-o", dir)
	if err != nil {
		return nil, err
	}
	again, err := timed(tool, "-o", dir, "-pages")
	return []line{
		{"whole site, the Go compiler's cache empty too", cold, "s", 0},
		{"whole site from nothing", nothing, "s", 15},
		{"whole site after one edit of a guide", again, "s", 1},
	}, err
}

// numpyTrials is a million trials of the before-after model with a sort, as
// somebody would write them.
const numpyTrials = `
import time, numpy as np
def once():
    r = np.random.default_rng(101); n = 1_000_000; t = time.perf_counter()
    e = r.uniform(-80, 80, n)
    p1 = 2450 + e + r.uniform(-5, 5, n); p2 = 2700 + e + r.uniform(-5, 5, n)
    g = (1 + r.uniform(0, .3, n)) * (p2 / p1 - 1)
    g.sort(); g[25000], g[500000], g[975000], g.mean(), g.std()
    return time.perf_counter() - t
print(min(once() for _ in range(5)))`

var perOp = regexp.MustCompile(`BenchmarkGainMillionTrials(?:-\d+)?\s+\d+\s+([\d.]+) ns/op`)

// coreTimes compares a million trials as WebAssembly under Node with NumPy.
func coreTimes(string, string) ([]line, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	trials := func(env ...string) (float64, error) {
		cmd := exec.Command("go", "test", "-run", "^$", "-bench", "GainMillionTrials$", "-count", "3", "./calc/doubt")
		cmd.Env = append(os.Environ(), env...)
		out, err := cmd.CombinedOutput()
		best := 0.0
		for _, m := range perOp.FindAllStringSubmatch(string(out), -1) {
			if ns, _ := strconv.ParseFloat(m[1], 64); best == 0 || ns < best {
				best = ns
			}
		}
		if best == 0 {
			return 0, fmt.Errorf("no benchmark of trials: %v\n%s", err, out)
		}
		return best / 1e9, nil
	}
	native, err := trials()
	if err != nil {
		return nil, err
	}
	wasm, err := trials("GOOS=js", "GOARCH=wasm", "PATH="+filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm")+":"+os.Getenv("PATH"))
	if err != nil {
		return nil, err
	}
	lines := []line{
		{"10⁶ trials of before-after, native", native * 1000, "ms", 0},
		{"10⁶ trials of before-after, WebAssembly", wasm * 1000, "ms", 0},
	}
	for _, python := range []string{"/usr/bin/python3", "python3"} {
		if out, err := exec.Command(python, "-c", numpyTrials).Output(); err == nil {
			numpy, _ := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
			return append(lines,
				line{"10⁶ trials of before-after, NumPy", numpy * 1000, "ms", 0},
				line{"trials, WebAssembly ÷ NumPy", wasm / numpy, "", 2}), nil
		}
	}
	return lines, fmt.Errorf("NumPy is missing: on Debian, apt-get install python3-numpy")
}
