package site

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"golang.org/x/image/vector"
)

// The colours of the notebook, as style.css has them.
var (
	paper  = color.RGBA{0xfa, 0xf6, 0xec, 0xff}
	ruling = color.RGBA{0xe4, 0xdc, 0xc8, 0xff}
	ink    = color.RGBA{0x1f, 0x2a, 0x33, 0xff}
	accent = color.RGBA{0x9c, 0x34, 0x14, 0xff}
)

// icon draws icon.svg, which is 32 wide, as a PNG so many pixels wide, for
// devices that take no SVG.
func icon(size int) ([]byte, error) {
	c := newCanvas(size, size, float32(size)/32)
	for i := float32(4); i < 32; i += 8 {
		c.line(ruling, 1, i, 0, i, 32)
		c.line(ruling, 1, 0, i, 32, i)
	}
	c.line(ink, 3, 5, 26, 27, 10)
	c.line(accent, 3, 16, 18, 16, 9)
	return c.png()
}

// canvas is a sheet of paper to draw on, in units of its own.
type canvas struct {
	*image.RGBA
	scale float32
}

func newCanvas(width, height int, scale float32) *canvas {
	c := &canvas{image.NewRGBA(image.Rect(0, 0, width, height)), scale}
	draw.Draw(c.RGBA, c.Bounds(), image.NewUniform(paper), image.Point{}, draw.Src)
	return c
}

// line draws a straight line of a thickness.
func (c *canvas) line(ink color.Color, thick, x1, y1, x2, y2 float32) {
	dx, dy := x2-x1, y2-y1
	length := float32(math.Hypot(float64(dx), float64(dy)))
	nx, ny := -dy/length*thick/2, dx/length*thick/2
	r := vector.NewRasterizer(c.Bounds().Dx(), c.Bounds().Dy())
	at := func(x, y float32) (float32, float32) { return x * c.scale, y * c.scale }
	r.MoveTo(at(x1+nx, y1+ny))
	r.LineTo(at(x2+nx, y2+ny))
	r.LineTo(at(x2-nx, y2-ny))
	r.LineTo(at(x1-nx, y1-ny))
	r.ClosePath()
	r.Draw(c.RGBA, c.Bounds(), image.NewUniform(ink), image.Point{})
}

func (c *canvas) png() ([]byte, error) {
	var b bytes.Buffer
	err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, c.RGBA)
	return b.Bytes(), err
}
