//go:build browser

package browser

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// siteDir is the written site, browserCtx the one browser of all tests.
var (
	siteDir    string
	browserCtx context.Context
)

func TestMain(m *testing.M) {
	flag.Parse()
	code, err := run(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		code = 1
	}
	os.Exit(code)
}

func run(m *testing.M) (int, error) {
	tmp, err := os.MkdirTemp("", "plainlift-browser-")
	if err != nil {
		return 1, err
	}
	defer os.RemoveAll(tmp)
	siteDir = filepath.Join(tmp, "site")
	build := exec.Command("go", "run", "./build", "-o", siteDir)
	build.Dir = filepath.Join("..", "..")
	if said, err := build.CombinedOutput(); err != nil {
		return 1, fmt.Errorf("the site does not build: %w\n%s", err, said)
	}
	var stop func()
	if browserCtx, stop, err = startBrowser(filepath.Join(tmp, "profile")); err != nil {
		return 1, err
	}
	defer stop()
	return m.Run(), nil
}

// startBrowser starts a browser without a window that has nothing to say to
// anyone but the page's host.
func startBrowser(profile string) (context.Context, func(), error) {
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.UserDataDir(profile),
		chromedp.DisableGPU,
		chromedp.Flag("no-sandbox", true), // it may run as root
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"),
	)
	allocator, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, cancel := chromedp.NewContext(allocator)
	if err := chromedp.Do(ctx); err != nil {
		stop()
		return nil, nil, fmt.Errorf("no browser to test with: %w", err)
	}
	return ctx, func() {
		ending, done := context.WithTimeout(ctx, 10*time.Second)
		defer done()
		chromedp.Cancel(ending)
		cancel()
		stop()
	}, nil
}
