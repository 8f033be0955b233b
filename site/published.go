package site

import (
	"encoding/xml"
	"errors"
	"fmt"
	"net/url"
	"path"
	"strings"
	"sync"
)

// Address reads where a site will stand, "https://example.org/plainlift/", and
// returns it with the slash at its end.
func Address(text string) (string, error) {
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Hostname() == "" || u.User != nil || strings.ContainsAny(text, "?# \t") || path.Ext(u.Path) == ".html" {
		return "", fmt.Errorf("%q is not the address of a site: it starts with https:// or http://, names a host, ends with a folder and has no ? or #, like https://example.org/plainlift/", text)
	}
	return strings.TrimSuffix(u.String(), "/") + "/", nil
}

// publish adds what only a site has whose address is known: a map of its pages
// for search engines, and a picture of each for whoever mentions it.
func publish(out map[string][]byte, address string, pages []*page) error {
	type entry struct {
		Loc string `xml:"loc"`
	}
	var list []entry
	errs := make([]error, len(pages))
	pictures := make([][]byte, len(pages))
	var wait sync.WaitGroup
	for i, p := range pages {
		list = append(list, entry{p.Canonical})
		wait.Go(func() { pictures[i], errs[i] = preview(p.Title) })
	}
	wait.Wait()
	for i, p := range pages {
		out[strings.TrimPrefix(p.Preview, address)] = pictures[i]
	}
	text, err := xml.MarshalIndent(struct {
		XMLName xml.Name `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 urlset"`
		URL     []entry  `xml:"url"`
	}{URL: list}, "", " ")
	out["sitemap.xml"] = []byte(xml.Header + string(text) + "\n")
	// Heeded at the top of a host only; elsewhere it does no harm.
	out["robots.txt"] = []byte("User-agent: *\nAllow: /\nSitemap: " + address + "sitemap.xml\n")
	return errors.Join(append(errs, err)...)
}
