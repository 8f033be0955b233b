//go:build browser

package browser

import (
	"context"
	_ "embed"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	devpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

//go:embed testdata/watch.js
var watchScript string

// patience is how long a page may take for anything. The tests never wait that
// long unless something is wrong.
const patience = 20 * time.Second

// screen is what a reader holds or sits at.
type screen struct {
	name          string
	width, height int64
	touch         bool
}

var (
	phone = screen{"phone", 390, 844, true}
	desk  = screen{"desk", 1280, 800, false}
)

// page is one tab of the browser with a server of its own.
type page struct {
	*testing.T
	*server
	ctx context.Context

	mu         sync.Mutex
	complaints []string // what the browser or the page complained of
	expected   []string // parts of complaints that the test provokes
}

// tab opens an empty tab. At the end of the test it must have nothing to
// complain of.
func tab(t *testing.T, s screen, scripts ...string) *page {
	t.Helper()
	ctx, cancel := chromedp.NewContext(browserCtx, chromedp.WithNewBrowserContext())
	t.Cleanup(cancel)
	return newTab(t, s, serve(t), ctx, scripts)
}

// another opens a second tab beside the first, of the same reader: the same
// server and the same storage.
func (p *page) another(s screen, scripts ...string) *page {
	p.Helper()
	ctx, cancel := chromedp.NewContext(p.ctx)
	p.Cleanup(cancel)
	return newTab(p.T, s, p.server, ctx, scripts)
}

func newTab(t *testing.T, s screen, on *server, ctx context.Context, scripts []string) *page {
	t.Helper()
	p := &page{T: t, server: on, ctx: ctx}
	if err := chromedp.Listen(p.ctx, p.hear); err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.EmulateViewport(s.width, s.height, func(m *emulation.SetDeviceMetricsOverrideParams, touch *emulation.SetTouchEmulationEnabledParams) {
		m.Mobile, touch.Enabled = s.touch, s.touch
	}))
	command(p, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
	for _, script := range append([]string{watchScript}, scripts...) {
		command(p, devpage.AddScriptToEvaluateOnNewDocument, devpage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
	}
	t.Cleanup(p.judge)
	return p
}

// open opens a page of the site in a new tab.
func open(t *testing.T, s screen, address string) *page {
	t.Helper()
	p := tab(t, s)
	p.visit(address)
	return p
}

// visit loads a page of the site.
func (p *page) visit(address string) {
	p.Helper()
	p.do(chromedp.Navigate(p.at(address)))
}

func (p *page) do(steps ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		p.Fatalf("%v\n%s", err, p.state())
	}
}

// command sends one command of the browser's protocol.
func command[P, R any](p *page, c cdp.Command[P, R], params P) R {
	p.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	r, err := chromedp.Call(ctx, c, params)
	if err != nil {
		p.Fatalf("%s: %v", c.Method, err)
	}
	return r
}

// js runs a script in the page and returns its value.
func js[T any](p *page, script string, args ...any) T {
	p.Helper()
	v, err := try[T](p, script, args...)
	if err != nil {
		p.Fatalf("%v\n%s", err, p.state())
	}
	return v
}

func try[T any](p *page, script string, args ...any) (T, error) {
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	return chromedp.Run(ctx, chromedp.Evaluate[T](fmt.Sprintf(script, args...), chromedp.EvalAwaitPromise))
}

// until waits until a condition of the page holds, and says how the page stands
// if it never does.
func (p *page) until(condition string, args ...any) {
	p.Helper()
	condition = fmt.Sprintf(condition, args...)
	for end := time.Now().Add(patience); ; time.Sleep(10 * time.Millisecond) {
		if ok, err := try[bool](p, "(async () => !!(await (%s)))()", condition); ok {
			return
		} else if time.Now().After(end) {
			p.Fatalf("never: %s (%v)\n%s", condition, err, p.state())
		}
	}
}

// settle waits until the figures belong to what is in the fields.
func (p *page) settle() {
	p.Helper()
	p.until(`document.getElementById("answer").getAttribute("aria-busy") === "false"`)
}

// checked waits for the simulation too, where there is one.
func (p *page) checked() {
	p.Helper()
	p.settle()
	p.until(`document.getElementById("answer").dataset.check !== "running"`)
}

// ready waits until the calculator can be asked.
func (p *page) ready() {
	p.Helper()
	p.until(`watched.heard.some((m) => m.type === "ready")`)
}

// hear notes complaints and requests to other hosts.
func (p *page) hear(event any) {
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		p.complain("exception: " + e.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		if kind := string(e.Type); kind == "error" || kind == "warning" || kind == "assert" {
			var said []string
			for _, a := range e.Args {
				said = append(said, string(a.Value)+a.Description)
			}
			p.complain("console " + kind + ": " + strings.Join(said, " "))
		}
	case *log.EventEntryAdded:
		if level := string(e.Entry.Level); level == "error" || level == "warning" {
			p.complain("browser " + level + ": " + e.Entry.Text + " " + e.Entry.URL)
		}
	case *network.EventRequestWillBeSent:
		if u := e.Request.URL; !strings.HasPrefix(u, p.URL) && !strings.HasPrefix(u, "data:") && !strings.HasPrefix(u, "blob:") {
			p.complain("request to elsewhere: " + u)
		}
	case *network.EventLoadingFailed:
		if !e.Canceled {
			p.complain("request failed: " + e.ErrorText)
		}
	case *devpage.EventJavascriptDialogOpening:
		p.complain("dialog: " + e.Message)
	}
}

func (p *page) complain(text string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.complaints = append(p.complaints, text)
}

// expect lets the page complain of what holds that text.
func (p *page) expect(part string) { p.expected = append(p.expected, part) }

// judge fails the test for complaints that it did not expect.
func (p *page) judge() {
	p.mu.Lock()
	complaints := p.complaints
	p.mu.Unlock()
	p.server.mu.Lock()
	for _, bad := range p.bad {
		complaints = append(complaints, "answered "+bad)
	}
	p.server.mu.Unlock()
next:
	for _, c := range complaints {
		for _, part := range p.expected {
			if strings.Contains(c, part) {
				continue next
			}
		}
		p.Errorf("the page complained: %s", c)
	}
}

// state tells how the page stands, for a test that fails.
func (p *page) state() string {
	text, err := try[string](p, `(() => {
		const t = (id) => document.getElementById(id)?.textContent.replace(/\s+/g, " ").trim();
		const a = document.getElementById("answer");
		const fields = [...document.querySelectorAll("[data-field]")].map((f) => "  " + f.dataset.field + " = " +
			[...f.querySelectorAll("input, select")].map((i) => i.value).join(" | ") + " " + (f.querySelector(".error[id]")?.textContent ?? ""));
		return [location.href.slice(0, 300), "root " + JSON.stringify(document.documentElement.dataset),
			a && "answer busy " + a.getAttribute("aria-busy") + " " + JSON.stringify(a.dataset),
			"head: " + t("head"), "sentence: " + t("sentence"), "problems: " + t("problems"), ...fields,
			"workers " + watched.workers.length + " of " + watched.opened + ", asked " + watched.asked.length,
			"heard " + JSON.stringify(watched.heard.slice(-6))].join("\n");
	})()`)
	if err != nil {
		text = "no state: " + err.Error()
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	return text + "\ncomplaints: " + strings.Join(p.complaints, "\n")
}
