package chart

// Dimension says along which axis a number is meant.
type Dimension int

const (
	X Dimension = iota
	Y
)

// of returns the extent along this dimension.
func (n Dimension) of(x, y *extent) *extent {
	if n == Y {
		return y
	}
	return x
}

func (d *drawing) scale(n Dimension) *scale {
	if n == Y {
		return &d.y
	}
	return &d.x
}

// Stroke is how a line is drawn: Solid, Dashed or Dotted. Its value is the
// attribute that does it.
type Stroke string

const (
	Solid  Stroke = ""
	Dashed Stroke = ` stroke-dasharray="6 4"`
	Dotted Stroke = ` stroke-dasharray="1.5 3.5"`
)

// Shape is the look of a point.
type Shape int

const (
	Dot Shape = iota
	Ring
	Diamond
	Cross
	Bare // the label alone
)

// shapes gives the class of each shape and its path, from the middle.
var shapes = [...][2]string{
	Dot:     {"solid", "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0z"},
	Ring:    {"hollow", "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0z"},
	Diamond: {"solid", "m0-6l6 6-6 6-6-6z"},
	Cross:   {"line", "m-4-4l8 8m-8 0l8-8"},
}
