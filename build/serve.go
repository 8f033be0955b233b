package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"plainlift/build/host"
)

// quick is the brotli quality of the served files: no wait after an edit.
const quick = 5

// serve writes the site into dir, serves it, and writes it again after every
// change of its sources, until it is interrupted.
func serve(dir, addr, address string) error {
	listener, err := net.Listen("tcp", addr)
	if errors.Is(err, syscall.EADDRINUSE) {
		return fmt.Errorf("build: %s is taken by another program; stop it, or serve elsewhere: go run ./build serve -addr 127.0.0.1:8081 (-addr 127.0.0.1:0 finds a free port)", addr)
	}
	if err != nil {
		return fmt.Errorf("build: cannot serve at %s: %w", addr, err)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	b, err := newBuilder(dir, address)
	if err != nil {
		return err
	}
	defer b.close()
	seen := look(".")
	b.build(everything)
	fmt.Printf("http://%s/\n", listener.Addr())

	server := &http.Server{Handler: host.Handler(dir, quick)}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	tick := time.NewTicker(500 * time.Millisecond)
	defer tick.Stop()
	for {
		select {
		case err := <-failed:
			return err
		case <-ctx.Done():
			return server.Close()
		case <-tick.C:
			now := look(".")
			if what := seen.changed(now); what != nothing {
				b.build(what)
			}
			seen = now
		}
	}
}

// builder builds by running this very program again, compiled anew once a Go
// file has changed: the running one holds the old code and templates.
type builder struct {
	dir, tmp string
	address  string // where the site will stand, if that is known
	program  string
	owing    change // what failed to build and must be built the next time
}

func newBuilder(dir, address string) (*builder, error) {
	program, err := os.Executable()
	if err != nil {
		return nil, err
	}
	tmp, err := os.MkdirTemp("", "plainlift-")
	return &builder{dir: dir, address: address, tmp: tmp, program: program}, err
}

func (b *builder) close() { os.RemoveAll(b.tmp) }

// build builds what a change calls for and says how it went. After an error the
// last good site stays.
func (b *builder) build(what change) {
	start := time.Now()
	what = max(what, b.owing)
	if err := b.run(what); err != nil {
		b.owing = what
		fmt.Fprintf(os.Stderr, "%v\nNot built; what was built before is still served.\n", err)
		return
	}
	b.owing = nothing
	fmt.Printf("built in %.1f s\n", time.Since(start).Seconds())
}

func (b *builder) run(what change) error {
	if what >= program {
		file := filepath.Join(b.tmp, "build")
		// Without debugging data it links in half the time.
		if _, err := goTool(".", false, "build", "-ldflags=-s -w", "-o", file, "./build"); err != nil {
			return err
		}
		b.program = file
	}
	args := []string{"-o", b.dir, "-url", b.address}
	if what <= program {
		args = append(args, "-pages")
	}
	out, err := exec.Command(b.program, args...).CombinedOutput()
	if err != nil && len(out) > 0 {
		return errors.New(strings.TrimSpace(string(out)))
	}
	return err
}
