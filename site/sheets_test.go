package site

import (
	"strings"
	"testing"
	"testing/fstest"

	"plainlift/calc"
	"plainlift/calc/unit"
)

// The page of what is kept leads to every worksheet, and knows which compare two
// values and which field takes which quantity. Its script has a page to start.
func TestMachinesPage(t *testing.T) {
	w := *tiny[0]
	w.Compare = []calc.Compared{{Quantity: "pressure now", Before: "p", After: "q", Apart: calc.Pair{Key: "c", Value: "B"}}}
	w.Fields = append([]calc.Field{
		{ID: "q", Label: "Q", Kind: unit.Pressure, Example: "1 psi", Empty: "not known", Quantity: "manual highest"},
		{ID: "c", Label: "C", Shape: calc.Choice, Options: []calc.Option{{ID: "B", Label: "b"}}, Quantity: "gauge grade"},
	}, w.Fields...)
	w.Compute = func(in *calc.In, out *calc.Out) {
		in.SI("q")
		in.Choice("c")
		tiny[0].Compute(in, out)
	}
	files, err := Render(fstest.MapFS{
		"index.md":    {Data: []byte("---\nworksheet: tiny\ndescription: d\n---\n")},
		"machines.md": {Data: []byte("---\ntitle: Mine\ndescription: d\npage: machines\n---\n\nText.\n")},
	}, calc.Book{&w}, nil, "")
	if err != nil {
		t.Fatal(err)
	}
	page := string(files["machines/index.html"])
	for _, want := range []string{
		`<a href="../" data-sheet="tiny" data-compares="{&#34;pairs&#34;:[{&#34;Quantity&#34;:&#34;pressure now&#34;,&#34;Before&#34;:&#34;p&#34;,&#34;After&#34;:&#34;q&#34;,&#34;Apart&#34;:{&#34;Key&#34;:&#34;c&#34;,&#34;Value&#34;:&#34;B&#34;}}],&#34;fields&#34;:[{&#34;id&#34;:&#34;q&#34;,&#34;quantity&#34;:&#34;manual highest&#34;,&#34;options&#34;:[],&#34;optional&#34;:true},{&#34;id&#34;:&#34;c&#34;,&#34;quantity&#34;:&#34;gauge grade&#34;,&#34;options&#34;:[&#34;B&#34;],&#34;optional&#34;:false}]}">`,
		`machines.js"></script>`, `<template id="machine">`, `<dialog id="ask"`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
}
