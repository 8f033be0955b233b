package chart

import "strings"

// Sizes of words, in the units of the drawing.
const (
	fontSize   = 12.0
	lineHeight = 16.0
)

// textWidth estimates how wide s is written: 0.56 of the font size for a
// character, more for capitals and wide ones, 1 for the scripts set in squares.
func textWidth(s string) float64 {
	w := 0.0
	for _, r := range s {
		switch {
		case r >= 0x1100 && r < 0x2000 || r >= 0x2E80:
			w += 1
		case strings.ContainsRune("−+±=×≈<>%mwMW…", r):
			w += 0.84
		case r >= 'A' && r <= 'Z':
			w += 0.68
		default:
			w += 0.56
		}
	}
	return w * fontSize
}

// wrap breaks s at its new lines, and at spaces where a line would be wider
// than room. A word that is too wide by itself is cut.
func wrap(s string, room float64) []string {
	var lines []string
	for _, part := range strings.Split(s, "\n") {
		line := ""
		for _, word := range strings.Fields(part) {
			switch {
			case line == "":
				line = word
			case textWidth(line+" "+word) <= room:
				line += " " + word
			default:
				lines = append(lines, cut(line, room))
				line = word
			}
		}
		if line != "" {
			lines = append(lines, cut(line, room))
		}
	}
	return lines
}

// cut shortens s until it fits, with an ellipsis.
func cut(s string, room float64) string {
	if textWidth(s) <= room {
		return s
	}
	end := 0
	for i := range s {
		if textWidth(s[:i]+"…") > room {
			break
		}
		end = i
	}
	return s[:end] + "…"
}

// oneLine returns s without line breaks, cut to fit.
func oneLine(s string, room float64) string {
	return cut(strings.Join(strings.Fields(s), " "), room)
}
