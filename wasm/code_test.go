package main

import (
	"errors"
	"image"
	"image/color"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
)

var module = regexp.MustCompile(`M(\d+) (\d+)h(\d+)v1h-\d+z`)

// scanned draws a code four pixels a module and reads it with a general-purpose
// reader of codes.
func scanned(t *testing.T, svg string) string {
	t.Helper()
	number := func(s string) int { n, _ := strconv.Atoi(s); return n }
	_, rest, _ := strings.Cut(svg, `viewBox="0 0 `)
	size, _, _ := strings.Cut(rest, " ")
	img := image.NewGray(image.Rect(0, 0, 4*number(size), 4*number(size)))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	for _, m := range module.FindAllStringSubmatch(svg, -1) {
		x, y, n := number(m[1]), number(m[2]), number(m[3])
		for py := 4 * y; py < 4*y+4; py++ {
			for px := 4 * x; px < 4*(x+n); px++ {
				img.SetGray(px, py, color.Gray{})
			}
		}
	}
	bitmap, err := gozxing.NewBinaryBitmapFromImage(img)
	if err != nil {
		t.Fatal(err)
	}
	result, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_PURE_BARCODE: true})
	if err != nil {
		t.Fatal(err)
	}
	return result.GetText()
}

// Whatever link fits, another program reads it back.
func TestCode(t *testing.T) {
	for _, text := range []string{
		"https://example.org/#v=1&reading=2610+psi&end=1",
		"https://example.org/lift/loader/#" + strings.Repeat("height=60+in&", 40),
		"https://example.org/#" + strings.Repeat("x", 2900),
	} {
		svg, err := code(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := scanned(t, svg); got != text {
			t.Errorf("read back as %.60q, want %.60q", got, text)
		}
	}
	if _, err := code(strings.Repeat("x", 3000)); !errors.Is(err, errLong) {
		t.Errorf("3000 characters: %v", err)
	}
}

// A code is a message of its own and leaves a simulation alone.
func TestCodeMessage(t *testing.T) {
	var got map[string]any
	d := &desk{post: func(m map[string]any) { got = m }, job: new(job)}
	d.take(map[string]any{"op": "code", "text": "https://example.org/"})
	if svg, _ := got["svg"].(string); got["type"] != "code" || !strings.HasPrefix(svg, "<svg") || d.job == nil {
		t.Errorf("%v, job %v", got, d.job)
	}
	d.take(map[string]any{"op": "code", "text": strings.Repeat("x", 5000)})
	if got["svg"] != "" {
		t.Errorf("too long: %v", got)
	}
}
