package main

import (
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"time"
)

const (
	linkRate  = 1.6e6 / 8 // bytes/s
	linkDelay = 150 * time.Millisecond
	slowdown  = 4
)

// slowLink delays every answer and lets all of them together have one slow
// link's rate.
type slowLink struct {
	next http.Handler
	mu   sync.Mutex
	free time.Time // when the link has sent what it was given
}

func (l *slowLink) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	time.Sleep(linkDelay)
	l.next.ServeHTTP(&slowWriter{w, l}, r)
}

type slowWriter struct {
	http.ResponseWriter
	link *slowLink
}

func (w *slowWriter) Write(b []byte) (int, error) {
	const piece = 4096
	sent := 0
	for sent < len(b) {
		part := b[sent:min(sent+piece, len(b))]
		w.link.wait(len(part))
		n, err := w.ResponseWriter.Write(part)
		sent += n
		if err != nil {
			return sent, err
		}
		if f, ok := w.ResponseWriter.(http.Flusher); ok {
			f.Flush()
		}
	}
	return sent, nil
}

// wait takes the link for n bytes and returns when they would have arrived.
func (l *slowLink) wait(n int) {
	l.mu.Lock()
	if now := time.Now(); l.free.Before(now) {
		l.free = now
	}
	l.free = l.free.Add(time.Duration(float64(n) / linkRate * float64(time.Second)))
	until := l.free
	l.mu.Unlock()
	time.Sleep(time.Until(until))
}

// slowRenderers stops the browser's renderers for all but one part in slowdown
// of the time, until the returned function is called.
func slowRenderers() (stop func()) {
	const period = 8 * time.Millisecond
	done, ended := make(chan bool), make(chan bool)
	go func() {
		defer close(ended)
		var pids []int
		for i := 0; ; i++ {
			if i%25 == 0 {
				pids = renderers()
			}
			signal(pids, syscall.SIGSTOP)
			time.Sleep(period * (slowdown - 1) / slowdown)
			signal(pids, syscall.SIGCONT)
			select {
			case <-done:
				return
			case <-time.After(period / slowdown):
			}
		}
	}()
	return func() { close(done); <-ended }
}

func signal(pids []int, s syscall.Signal) {
	for _, pid := range pids {
		syscall.Kill(pid, s) // one that has ended needs none
	}
}

// renderers are the renderer processes below this one.
func renderers() []int {
	parent := map[int]int{}
	var found []int
	dirs, _ := filepath.Glob("/proc/[0-9]*")
	for _, dir := range dirs {
		pid, _ := strconv.Atoi(filepath.Base(dir))
		stat, err := os.ReadFile(dir + "/stat")
		if err != nil {
			continue
		}
		fields := strings.Fields(string(stat[strings.LastIndexByte(string(stat), ')')+1:]))
		parent[pid], _ = strconv.Atoi(fields[1])
		if line, _ := os.ReadFile(dir + "/cmdline"); strings.Contains(string(line), "--type=renderer") {
			found = append(found, pid)
		}
	}
	var ours []int
	for _, pid := range found {
		for p := pid; p > 1; p = parent[p] {
			if p == os.Getpid() {
				ours = append(ours, pid)
				break
			}
		}
	}
	return ours
}
