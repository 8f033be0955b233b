package main

import (
	"bytes"
	"encoding/xml"
	"image"
	"image/png"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"plainlift/calc/worksheets"
)

const address = "https://example.org/plainlift/"

// heads are what a page's head says by name or property, and its links by what
// they are to the page.
func heads(page *html.Node) map[string]string {
	said := map[string]string{}
	for n := range elements(page) {
		for _, key := range []string{"name", "property", "rel"} {
			if name, ok := attribute(n, key); ok && (n.Data == "meta" || n.Data == "link") {
				value, _ := attribute(n, "content")
				href, _ := attribute(n, "href")
				said[name] = value + href
			}
		}
		if n.Data == "title" && said["title"] == "" && n.FirstChild != nil {
			said["title"] = n.FirstChild.Data
		}
	}
	return said
}

// With its address known, every page says where it stands and what to show where
// somebody mentions it; without, it says nothing of the kind. Every page has a
// description of its own in either case.
func TestPublishedHeads(t *testing.T) {
	for _, at := range []string{"", address} {
		r := siteAt(t, at)
		described := map[string]string{}
		for name, page := range r.pages {
			said := heads(page)
			folder := strings.TrimSuffix(name, "index.html")
			framed := strings.HasPrefix(name, "embed/") && name != "embed/index.html"
			if framed != (said["robots"] == "noindex") {
				t.Errorf("%s: robots are told %q", name, said["robots"])
			}
			if framed {
				id := strings.TrimPrefix(folder, "embed/")
				if folder = id; id == "short/" {
					folder = ""
				}
			} else if before := described[said["description"]]; said["description"] == "" || before != "" {
				t.Errorf("%s: its description is %q, as that of %q", name, said["description"], before)
			} else {
				described[said["description"]] = name
			}
			if at == "" || name == "404.html" {
				for key := range said {
					if strings.HasPrefix(key, "og:") || strings.HasPrefix(key, "twitter:") || key == "canonical" {
						t.Errorf("%s, without an address: %s", name, key)
					}
				}
				continue
			}
			if said["canonical"] != address+folder {
				t.Errorf("%s: its full address is said to be %q", name, said["canonical"])
			}
			if framed {
				continue
			}
			if said["og:url"] != address+folder || said["og:type"] != "website" || said["og:title"]+" · Plainlift" != said["title"] || said["og:description"] != said["description"] || said["twitter:card"] != "summary_large_image" {
				t.Errorf("%s: %v", name, said)
			}
			file, ok := strings.CutPrefix(said["og:image"], address)
			picture, err := png.Decode(bytes.NewReader(r.files[file]))
			if !ok || err != nil {
				t.Errorf("%s: picture %q: %v", name, said["og:image"], err)
				continue
			}
			few, ok := picture.(*image.Paletted)
			if size := picture.Bounds().Size(); size != image.Pt(1200, 630) || !ok || len(r.files[file]) > 30_000 {
				t.Errorf("%s: a picture of %v in %d bytes", name, size, len(r.files[file]))
				continue
			}
			colours := make([]int, len(few.Palette))
			for _, i := range few.Pix {
				colours[i]++
			}
			if colours[2] < 8000 || colours[3] < 10_000 || colours[0] < 500_000 { // ink, accent, paper
				t.Errorf("%s: hardly drawn on: %v", name, colours)
			}
		}
		pictures := 0
		for name := range r.files {
			if strings.HasPrefix(name, "previews/") {
				pictures++
			}
		}
		if want := len(described) - 1; at != "" && pictures != want || at == "" && pictures != 0 {
			t.Errorf("%d pictures at %q", pictures, at)
		}
		if kept := string(r.files["sw.js"]); strings.Contains(kept, "previews/") || strings.Contains(kept, "sitemap") {
			t.Error("what only other machines read is kept for use without a signal")
		}
	}
}

// The map lists every full page once, and nothing else.
func TestSitemap(t *testing.T) {
	r := siteAt(t, address)
	var parsed struct {
		XMLName xml.Name `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 urlset"`
		URL     []struct {
			Loc string `xml:"loc"`
		} `xml:"url"`
	}
	if err := xml.Unmarshal(r.files["sitemap.xml"], &parsed); err != nil {
		t.Fatal(err)
	}
	var got, want []string
	for _, u := range parsed.URL {
		got = append(got, u.Loc)
	}
	for name := range r.pages {
		if name != "404.html" && (!strings.HasPrefix(name, "embed/") || name == "embed/index.html") {
			want = append(want, address+strings.TrimSuffix(name, "index.html"))
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) || len(got) <= len(worksheets.All) {
		t.Errorf("the map lists %v, the pages are %v", got, want)
	}
	if robots := string(r.files["robots.txt"]); !strings.Contains(robots, "\nSitemap: "+address+"sitemap.xml\n") {
		t.Errorf("robots.txt: %q", robots)
	}
	without := realSite(t)
	for _, name := range []string{"sitemap.xml", "robots.txt"} {
		if without.files[name] != nil {
			t.Errorf("%s without an address", name)
		}
	}
}
