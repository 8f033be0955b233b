package worksheets

import (
	"plainlift/calc"
	"plainlift/calc/post"
	"plainlift/calc/unit"
)

// readPost finds in a post what a claim is made of.
func readPost(text string, sys unit.System) []calc.Pick {
	var picks []calc.Pick
	for _, p := range post.Read(text, sys) {
		picks = append(picks, calc.Pick{Start: p.Start, End: p.End, Field: p.Field, Value: p.Value, Shown: p.Shown, Sure: p.Sure, Ask: p.Ask})
	}
	return picks
}
