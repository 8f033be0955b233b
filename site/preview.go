package site

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"slices"
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// The size that sites showing links ask for, and what stays free at its edges.
const (
	previewWide, previewHigh = 1200, 630
	previewMargin            = 84
)

// preview is the picture of a page, as PNG, shown where somebody mentions it: its
// question on our paper. It holds no number, since what a link carries is not
// known where it is made.
func preview(title string) ([]byte, error) {
	c := blankPreview()
	c = &canvas{&image.RGBA{Pix: slices.Clone(c.Pix), Stride: c.Stride, Rect: c.Rect}, c.scale}
	face, lines := fitted(title)
	defer face.Close()
	high := face.Metrics().Height
	y := fixed.I(previewHigh-130)/2 - high.Mul(fixed.I(len(lines)))/2 + face.Metrics().Ascent
	for _, line := range lines {
		c.text(face, fixed.Point26_6{X: fixed.I(previewMargin), Y: y}, line)
		y += high
	}
	return c.few()
}

// blankPreview is the same of every page, drawn once.
var blankPreview = sync.OnceValue(func() *canvas {
	c := newCanvas(previewWide, previewHigh, 1)
	for i := 21; i < previewWide; i += 42 {
		draw.Draw(c.RGBA, image.Rect(i, 0, i+2, previewHigh), image.NewUniform(ruling), image.Point{}, draw.Src)
		draw.Draw(c.RGBA, image.Rect(0, i, previewWide, i+2), image.NewUniform(ruling), image.Point{}, draw.Src)
	}
	draw.Draw(c.RGBA, image.Rect(0, 0, 24, previewHigh), image.NewUniform(accent), image.Point{}, draw.Src)
	// The mark of the icon, four times as large.
	c.line(ink, 12, previewWide-220, previewHigh-60, previewWide-84, previewHigh-158)
	c.line(accent, 12, previewWide-150, previewHigh-110, previewWide-150, previewHigh-182)
	name := typeface(regular(), 48)
	defer name.Close()
	c.text(name, fixed.P(previewMargin, previewHigh-64), "Plainlift")
	return c
})

func (c *canvas) text(face font.Face, at fixed.Point26_6, text string) {
	d := font.Drawer{Dst: c.RGBA, Src: image.NewUniform(ink), Face: face, Dot: at}
	d.DrawString(text)
}

// fitted breaks a title into lines in the largest type in which it takes no more
// than three.
func fitted(title string) (font.Face, []string) {
	for size := 112.0; ; size -= 8 {
		face := typeface(bold(), size)
		lines := wrapped(face, title)
		if len(lines) <= 3 || size < 56 {
			return face, lines
		}
		face.Close()
	}
}

func wrapped(face font.Face, text string) []string {
	var lines []string
	for _, word := range strings.Fields(text) {
		if n := len(lines) - 1; n >= 0 && font.MeasureString(face, lines[n]+" "+word) <= fixed.I(previewWide-2*previewMargin) {
			lines[n] += " " + word
		} else {
			lines = append(lines, word)
		}
	}
	return lines
}

// The outlines of the type, read once.
var (
	bold    = sync.OnceValue(func() *opentype.Font { return outlines(gobold.TTF) })
	regular = sync.OnceValue(func() *opentype.Font { return outlines(goregular.TTF) })
)

func outlines(ttf []byte) *opentype.Font {
	f, err := opentype.Parse(ttf)
	if err != nil {
		panic("site: the type of previews cannot be read")
	}
	return f
}

// typeface returns a face of a size in pixels.
func typeface(f *opentype.Font, size float64) font.Face {
	face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: size, DPI: 72})
	if err != nil {
		panic("site: the type of previews has no faces")
	}
	return face
}

// few writes the canvas with the colours that our four and their blends make.
func (c *canvas) few() ([]byte, error) {
	p := image.NewPaletted(c.Bounds(), blends)
	known := map[[3]uint8]uint8{}
	last, index := [3]uint8{}, uint8(0)
	for i := range p.Pix {
		if rgb := [3]uint8(c.Pix[4*i:]); i == 0 || rgb != last { // mostly the same as before
			var ok bool
			if index, ok = known[rgb]; !ok {
				index = uint8(blends.Index(color.RGBA{rgb[0], rgb[1], rgb[2], 0xff}))
				known[rgb] = index
			}
			last = rgb
		}
		p.Pix[i] = index
	}
	var b bytes.Buffer
	err := png.Encode(&b, p)
	return b.Bytes(), err
}

// blends go from paper and ruling to ink and accent in steps that no eye sees: 16
// colours, so that two points of the picture take one byte.
var blends = func() color.Palette {
	all := color.Palette{paper, ruling, ink, accent}
	for _, part := range []uint8{1, 2, 3, 4} {
		for _, pair := range [][2]color.RGBA{{paper, ink}, {paper, accent}, {ruling, ink}} {
			mix := func(a, b uint8) uint8 { return uint8((int(a)*(5-int(part)) + int(b)*int(part)) / 5) }
			a, b := pair[0], pair[1]
			all = append(all, color.RGBA{mix(a.R, b.R), mix(a.G, b.G), mix(a.B, b.B), 0xff})
		}
	}
	return all
}()
