package main

import (
	"context"
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/chromedp/chromedp"

	"plainlift/build/host"
)

// firstAnswer types as soon as the page listens, and tells when what was typed
// is answered, in ms from the start of the navigation.
const firstAnswer = `(async () => {
	const answer = document.getElementById("answer");
	const field = document.querySelector("[name=reading]");
	let typed = 0;
	while (answer.getAttribute("aria-busy") !== "true") {
		field.value = "2500";
		field.dispatchEvent(new Event("input", { bubbles: true }));
		typed = performance.now();
		await new Promise((done) => setTimeout(done, 5));
	}
	await new Promise((done) => new MutationObserver(() => answer.getAttribute("aria-busy") === "false" && done())
		.observe(answer, { attributes: true }));
	const answered = performance.now();
	const long = await new Promise((done) => {
		const o = new PerformanceObserver((l) => done(l.getEntries()));
		o.observe({ type: "longtask", buffered: true });
		setTimeout(() => done([]), 200);
	});
	return {
		paint: performance.getEntriesByName("first-contentful-paint")[0].startTime,
		typed, answered,
		blocked: long.reduce((sum, e) => sum + Math.max(0, e.duration - 50), 0),
	};
})()`

type opening struct{ Paint, Typed, Answered, Blocked float64 }

// keystrokes types numbers one after the other, or moves the slider where the
// page has one, and returns the ms from each to its painted answer. It begins
// when somebody would: after a look at the page, in which the worker practises.
const keystrokes = `(async () => {
	const answer = document.getElementById("answer");
	const slider = document.querySelector("input[type=range]");
	const field = slider ?? document.querySelector("[name=reading], [name=before], [name=now]");
	const times = [];
	await new Promise((done) => setTimeout(done, 6000));
	for (let i = 0; i < 60; i++) {
		await new Promise((done) => setTimeout(done, 120));
		const start = performance.now();
		field.value = String((slider ? 20 : 2450) + i);
		field.dispatchEvent(new Event("input", { bubbles: true }));
		await new Promise((done) => {
			const o = new MutationObserver(() => answer.getAttribute("aria-busy") === "false" && (o.disconnect(), done()));
			o.observe(answer, { attributes: true });
		});
		document.getElementById("copy").getBoundingClientRect(); // the layout is part of it
		times.push(performance.now() - start);
	}
	return times;
})()`

// pageTimes measures the written site in a headless browser.
func pageTimes(dir, tmp string) ([]line, error) {
	files := host.Handler(dir, 11)
	quick := httptest.NewServer(files)
	defer quick.Close()
	if err := pack(dir, quick.URL); err != nil {
		return nil, err
	}
	slow := httptest.NewServer(&slowLink{next: files})
	defer slow.Close()
	browser, stop, err := start(filepath.Join(tmp, "profile"))
	if err != nil {
		return nil, err
	}
	defer stop()

	var lines []line
	defer slowRenderers()()
	for _, visit := range []struct {
		name                    string
		paint, answer, blocking float64
	}{{"first visit", 1.0, 4.0, 50}, {"from the browser's cache", 0, 1.0, 50}} {
		o, err := in[opening](browser, slow.URL+"/", firstAnswer)
		if err != nil {
			return lines, err
		}
		lines = append(lines,
			line{visit.name + ": first paint, with a true example", o.Paint / 1000, "s", visit.paint},
			line{visit.name + ": first answer to typed values", o.Answered / 1000, "s", visit.answer},
			line{visit.name + ": page thread blocked", o.Blocked, "ms", visit.blocking})
	}
	for _, page := range []string{"", "before-after/", "shim/", "loader/"} {
		times, err := in[[]float64](browser, quick.URL+"/"+page, keystrokes)
		if err != nil {
			return lines, err
		}
		slices.Sort(times)
		lines = append(lines,
			line{fmt.Sprintf("/%s keystroke to answer and picture, median", page), times[len(times)/2], "ms", 30},
			line{fmt.Sprintf("/%s keystroke to answer and picture, 95 %%", page), times[len(times)*95/100], "ms", 60})
	}
	return lines, nil
}

// pack makes the host compress its files before anything is timed.
func pack(dir, url string) error {
	return fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(name, ".") {
			return err
		}
		path := "/" + strings.TrimSuffix(name, "index.html")
		r, _ := http.NewRequest(http.MethodGet, url+path, nil)
		r.Header.Set("Accept-Encoding", "br")
		answer, err := http.DefaultClient.Do(r)
		if err != nil {
			return err
		}
		answer.Body.Close()
		if answer.StatusCode != http.StatusOK {
			return fmt.Errorf("%s: %s", path, answer.Status)
		}
		return nil
	})
}

// start starts a headless browser.
func start(profile string) (context.Context, func(), error) {
	allocator, stop := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.UserDataDir(profile),
		chromedp.DisableGPU,
		chromedp.Flag("no-sandbox", true), // it may run as root
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
	)...)
	ctx, cancel := chromedp.NewContext(allocator)
	if err := chromedp.Do(ctx); err != nil {
		stop()
		return nil, nil, fmt.Errorf("no browser to measure with: %w", err)
	}
	return ctx, func() { cancel(); stop() }, nil
}

// in opens a page in a new tab the size of a phone and returns a script's value.
func in[T any](browser context.Context, url, script string) (T, error) {
	tab, cancel := chromedp.NewContext(browser)
	defer cancel()
	ctx, stop := context.WithTimeout(tab, 2*time.Minute)
	defer stop()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(390, 844), chromedp.Navigate(url)); err != nil {
		var none T
		return none, fmt.Errorf("%s: %w", url, err)
	}
	return chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
}
