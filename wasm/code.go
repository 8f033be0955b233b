package main

import (
	"errors"
	"strconv"
	"strings"

	"rsc.io/qr/coding"
)

var errLong = errors.New("too long for a code")

// code returns a QR code of a text as SVG, with the quiet zone of four modules
// that ISO/IEC 18004 asks for, at the lowest level of error correction: paper
// that hangs in a shop is read from near, and fewer modules are larger ones.
func code(text string) (string, error) {
	enc := coding.String(text)
	for v := coding.Version(coding.MinVersion); v <= coding.MaxVersion; v++ {
		if enc.Bits(v) > v.DataBytes(coding.L)*8 {
			continue
		}
		plan, err := coding.NewPlan(v, coding.L, 0)
		if err != nil {
			return "", err
		}
		c, err := plan.Encode(enc)
		if err != nil {
			return "", err
		}
		return drawn(c), nil
	}
	return "", errLong
}

// drawn is a code as one path of squares.
func drawn(c *coding.Code) string {
	const quiet = 4
	var b strings.Builder
	size := strconv.Itoa(c.Size + 2*quiet)
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" class="code" viewBox="0 0 ` + size + " " + size + `" shape-rendering="crispEdges" role="img"><title>Code of the link</title><desc>It leads a phone's camera to this answer.</desc><rect width="` + size + `" height="` + size + `" fill="#fff"/><path d="`)
	for y := range c.Size {
		for x := 0; x < c.Size; x++ {
			from := x
			for c.Black(x, y) {
				x++
			}
			if x > from {
				b.WriteString("M" + strconv.Itoa(from+quiet) + " " + strconv.Itoa(y+quiet) + "h" + strconv.Itoa(x-from) + "v1h-" + strconv.Itoa(x-from) + "z")
			}
		}
	}
	b.WriteString(`"/></svg>`)
	return b.String()
}
