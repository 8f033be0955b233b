//go:build browser

package browser

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"plainlift/calc/unit"
	"plainlift/calc/worksheets"
)

const copyScript = `window.wantsCopy = true;`

const saidSaved = "Saved on this device: every page works without a signal."

// cutOff makes the host unreachable.
func (s *server) cutOff() {
	s.CloseClientConnections()
	s.Listener.Close()
}

// After one visit every page opens and computes although the host is gone. It
// runs alone: among all the other pages that tests open, a browser may leave a
// service worker waiting for longer than a test has patience.
func TestOffline(t *testing.T) {
	p := tab(t, phone, copyScript)
	p.visit("")
	p.until(`document.getElementById("offline").textContent === %s`, quoted(saidSaved))
	p.cutOff()
	for _, w := range worksheets.All {
		p.visit(pageOf(w.ID))
		p.checked()
		p.matches(worksheets.All.Checked(w.ID, nil, unit.US))
	}
	for _, c := range typedCases[:2] {
		p.visit("safety/")
		p.visit(c.link())
		p.checked()
		p.matches(worksheets.All.Checked(c.worksheet, c.own(), unit.US))
	}
	p.visit("many/")
	p.until(`document.getElementById("offline").textContent === %s`, quoted(saidSaved))
	p.visit("checks/")
	if got := p.text("#offline"); got == "" {
		t.Error("the page does not say how it stands")
	}
	p.until(`document.getElementById("offline").textContent === %s`, quoted(saidSaved))
	if p.text("h1") != "How sure are these numbers?" {
		t.Errorf("the page is %q", p.text("h1"))
	}
}

// later makes the host answer as one with a newer build does: its pages say so,
// and what they load lies in another folder.
func (p *page) later() {
	p.Helper()
	old := js[string](p, `document.querySelector("link[rel=stylesheet]").href.match(/assets\/([0-9a-f]{12})\//)[1]`)
	const fresh = "0123456789ab"
	p.server.mu.Lock()
	defer p.server.mu.Unlock()
	p.site = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		r.URL.Path = strings.Replace(r.URL.Path, fresh, old, 1)
		r.Header.Del("Accept-Encoding")
		r.Header.Del("If-None-Match")
		now := httptest.NewRecorder()
		siteHost().ServeHTTP(now, r)
		body := strings.ReplaceAll(now.Body.String(), old, fresh)
		body = strings.Replace(body, `const VERSION = "`, `const VERSION = "later`, 1)
		body = strings.Replace(body, "<h1>", "<h1>Later: ", 1)
		w.Header().Set("Content-Type", now.Header().Get("Content-Type"))
		w.WriteHeader(now.Code)
		w.Write([]byte(body))
	})
}

// A newer build is seen at once where there is a network, an open page keeps
// what it has, and of two builds only the newer is kept. Alone, as above.
func TestOfflineUpdate(t *testing.T) {
	p := tab(t, phone, copyScript)
	p.visit("")
	p.until(`document.getElementById("offline").textContent === %s`, quoted(saidSaved))
	p.later()
	p.enter("reading", "2,655") // the open page goes on with its own calculator
	p.visit("gain/")
	if got := p.text("h1"); !strings.HasPrefix(got, "Later: ") {
		t.Errorf("with a network the page is %q", got)
	}
	p.checked()
	p.matches(worksheets.All.Checked("gain", nil, unit.US))
	js[bool](p, `navigator.serviceWorker.ready.then((r) => r.update()).then(() => true)`)
	p.until(`navigator.serviceWorker.ready.then((r) => r.waiting)`)
	// Once no page of the site has been open for a moment the newer one takes over.
	const newer = `caches.keys().then((keys) => keys.length === 1 && keys[0].includes(" later"))`
	for end := time.Now().Add(patience); !js[bool](p, newer); {
		if time.Now().After(end) {
			t.Fatal("the older copy stays")
		}
		p.do(chromedp.Navigate("about:blank"))
		time.Sleep(300 * time.Millisecond)
		p.visit("")
		p.ready()
	}
	p.cutOff()
	for _, w := range worksheets.All[:3] {
		p.visit(pageOf(w.ID))
		p.checked()
		if got := p.text("h1"); !strings.HasPrefix(got, "Later: ") {
			t.Errorf("without a network the page is %q", got)
		}
		p.matches(worksheets.All.Checked(w.ID, nil, unit.US))
	}
}

// Where the copy cannot be kept the page says so and works all the same.
func TestOfflineRefused(t *testing.T) {
	for name, script := range map[string]string{
		"no service worker": `Object.defineProperty(Navigator.prototype, "serviceWorker", { value: undefined });`,
		"refused":           `navigator.serviceWorker.register = () => Promise.reject(new DOMException("refused", "SecurityError"));`,
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := tab(t, phone, copyScript, script)
			p.visit("")
			p.until(`document.getElementById("offline").textContent === "This browser does not save the site, so it needs a signal."`)
			p.enter("reading", "2,655")
			p.answers("2,655")
		})
	}
	t.Run("a file is missing", func(t *testing.T) {
		t.Parallel()
		p := tab(t, phone, copyScript)
		p.expect("404")
		p.instead("method/", http.NotFound)
		p.visit("")
		p.until(`document.getElementById("offline").textContent === "This browser does not save the site, so it needs a signal."`)
	})
}

// An address that is none shows a page whose links lead on, from any depth.
func TestNotFound(t *testing.T) {
	t.Parallel()
	for _, address := range []string{"nothing", "shim/nothing", "far/too/deep/nothing.html"} {
		p := tab(t, phone)
		p.expect("404")
		p.visit(address)
		p.until(`document.querySelector("h1")?.textContent === "There is no page here" && getComputedStyle(document.body).maxWidth !== "none"`)
		p.click(`main a[href="shim/"]`)
		p.until(`document.querySelector("h1")?.textContent === "How much shim, and where to stop?"`)
	}
}
