// Package browser tests the written site in a real browser, as a reader meets
// it: served by a plain host from a folder, on a phone and on a desk.
//
//	go test -tags browser ./build/browser
//
// It needs Chromium or Chrome. Each test has a page, storage and a server of
// its own, and fails if its page complained of anything that the test did not
// expect.
package browser
