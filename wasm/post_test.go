package main

import (
	"testing"

	"plainlift/calc/worksheets"
)

// The pieces put together are the text, and those between picks belong to none.
func TestPostMessage(t *testing.T) {
	const text = "É: went from 2300 to 2550 psi <b>and</b> lifts 25 % more"
	var got map[string]any
	d := &desk{book: worksheets.All, post: func(m map[string]any) { got = m }, job: new(job)}
	d.take(map[string]any{"op": "post", "worksheet": "before-after", "system": "us", "text": text})
	whole := ""
	marked := map[int]string{}
	for _, p := range got["pieces"].([]any) {
		piece := p.(map[string]any)
		whole += piece["text"].(string)
		if i := piece["pick"].(int); i >= 0 {
			marked[i] = piece["text"].(string)
		}
	}
	if whole != text || len(marked) != len(got["picks"].([]any)) || len(marked) < 3 || d.job == nil {
		t.Errorf("%q, marked %v, job %v", whole, marked, d.job)
	}
	got = nil
	d.take(map[string]any{"op": "post", "worksheet": "shim", "system": "us", "text": text}) // reads no posts
	if got != nil {
		t.Errorf("%v", got)
	}
}
