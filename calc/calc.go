// Package calc is what a worksheet is and how one is answered.
//
// # For authors of worksheets
//
// A worksheet is one declaration: its fields, its figures, the sentences of its
// verdicts and a Compute function. Everything else reads that declaration: the
// page, the worker, the share link, the guides, the tests. A field or figure is
// named by its ID, which is also the name in the page and the key in a link, so
// an ID is for ever.
//
// Compute reads SI values from In and puts SI values into Out. It writes no
// units and no rounding: each Figure says how it is rounded, and a sentence
// quotes a figure or a field by its ID in braces:
//
//	"Low by {shortfall}"
//
// {id} is the number with its unit, {id:n} the number alone. Quoting an ID that
// is not declared, or setting a figure that is not, panics with constant text;
// the contract test over all worksheets finds that before a reader can.
//
// What a reader typed never panics: every complaint is a Problem that names its
// field.
package calc

import (
	"plainlift/calc/unit"
)

// Book is the list of worksheets in page order.
type Book []*Worksheet

// Lookup returns the worksheet with that ID, or nil.
func (b Book) Lookup(id string) *Worksheet {
	for _, w := range b {
		if w.ID == id {
			return w
		}
	}
	return nil
}

// Worksheet is one page that calculates.
type Worksheet struct {
	ID       string // permanent: the page's folder and part of every link
	Title    string // the page's heading, a question a reader would ask
	Menu     string // the title in two or three words
	Fields   []Field
	Figures  []Figure // beside "verdict", which every worksheet has
	Verdicts []Verdict
	Reply    Reply
	// Read picks out of somebody's text what this worksheet asks for; nil where
	// there is nothing to read.
	Read    func(text string, sys unit.System) []Pick
	Compare []Compared // what two records of one machine give it; nil where it compares nothing
	Aside   *Next      // a way on for a reader who came with another question, shown under the title
	Next    []Next
	Banded  *Banded // what is drawn of many rows; nil where nothing is
	Compute func(in *In, out *Out)
	// Simulate returns the model of one trial for the check of the closed form
	// (JCGM 101 clause 8); nil where nothing needs one. It is called only after
	// Compute found no problem.
	Simulate func(in *In) Trial
}

// Field is something the reader enters.
type Field struct {
	ID    string
	Label string // in the trade's words, beside the input
	Noun  string // the same inside a sentence: "the example's {noun}"
	Hint  string // one or two sentences behind "?"
	Kind  unit.Kind
	Shape Shape

	With   unit.Kind // Pairs: the kind after the colon
	Row    string    // List: label of one row; Pairs: label of its first number
	RowTo  string    // Pairs: label of the second number
	MaxLen int       // List, Pairs: most rows; 0 means 200
	Chips  []string  // texts that one tap enters

	Options []Option // Choice

	Example string // as an American reader would type it; "" when empty in the example
	Usual   bool   // the example is a usual value anyone may keep, not the example tractor's own
	Empty   string // not "": may be left empty, and this says what that means

	Range   Range
	RangeTo Range  // Pairs: of the second number
	Signed  bool   // may be below zero: the page offers a sign, which keypads lack
	Tape    bool   // a length measured with a tape: the page offers its fractions, which keypads lack
	Only    *Only  // bears on the answer only then
	Slide   *Slide // may be moved along with a slider under the picture

	Quantity string // what it is a value of, for carrying to another worksheet
	Group    string // the folded part of the form it stands in, "The cylinders"; "" stands open above them
	More     bool   // in the part "More that bears on it"
}

// Shape is how many numbers a field holds.
type Shape int

const (
	Single Shape = iota // one number
	List                // numbers
	Pairs               // number : number
	Choice              // one of Options
)

// Option is one choice.
type Option struct{ ID, Label string }

// Range is what a field accepts, as text with units. Min or Max may be "".
type Range struct {
	Min, Max string
	Above    bool // Min itself is not accepted
}

// Ranges that several worksheets share.
var (
	Pressures  = Range{Min: "0 bar", Max: "400 bar", Above: true}
	FromZero   = Range{Min: "0 bar", Max: "400 bar"}
	Scales     = Range{Min: "0 bar", Max: "1000 bar", Above: true}
	Zeros      = Range{Min: "-400 bar", Max: "400 bar"}
	Loads      = Range{Min: "0 kN", Max: "50 kN", Above: true}
	Lengths    = Range{Min: "0 m", Max: "10 m", Above: true}
	Thickness  = Range{Min: "0 mm", Max: "50 mm", Above: true}
	Confidence = Range{Min: "50 %", Max: "99.9 %"}
	Percents   = Range{Min: "0 %", Max: "100 %"}
)

// Only says on which choice of another field a field depends.
type Only struct {
	Field string
	In    []string
}

// Slide names the fields or figures that are the two ends of a slider.
type Slide struct{ From, To string }

// Figure is something the worksheet works out.
type Figure struct {
	ID       string
	Label    string
	Kind     unit.Kind
	Round    Round
	Place    Place
	Against  []string // fields or figures that the shown number must not meet or cross unless it does
	Quantity string   // what it is a value of, for carrying
	From     []string // the fields it comes from; empty means all
}

// Round is how a figure is rounded for reading.
type Round int

const (
	Four    Round = iota // four significant digits
	Two                  // two significant digits: gains, and what follows from them
	ByDoubt              // by its half-width (Out.SetDoubt): two significant digits of that
	Chance               // whole percent, "under 1 %", "over 99 %"
	Words                // text set by Out.Text
)

// Place is where a figure stands.
type Place int

const (
	Key    Place = iota // among the key figures
	More                // behind "more"
	Quoted              // only inside sentences
)

// Verdict is one branch of the answer. Several branches may share an ID.
type Verdict struct {
	Key      string // names the branch for Out.Verdict
	ID       string // what the page's verdict figure holds; the Key when ""
	Head     string // at most 45 characters once filled in
	Sentence string
}

// Figure is what the page's verdict figure holds in this branch.
func (v *Verdict) Figure() string {
	if v.ID == "" {
		return v.Key
	}
	return v.ID
}

// Pick is a value found in a text, bytes Start to End, with the field that would
// take it ("" when it is only marked) and, unless the text says so surely, the
// question that would settle it.
type Pick struct {
	Start, End          int
	Field, Value, Shown string
	Sure                bool
	Ask                 string
}

// Reply is what stands around the verdict where somebody passes it on in words:
// what it is about, how it comes out in one line, and a kind word. Each may quote
// {id} of what exists in every branch.
type Reply struct{ About, How, After string }

// Compared is a quantity of which a worksheet compares two values: the fields that
// take the earlier and the later one, and the choice that says they came from two
// gauges, which holds unless both records name the same one.
type Compared struct {
	Quantity, Before, After string
	Apart                   Pair
}

// Banded names what a row's place in its band is made of, for the picture of many
// rows: figures or fields, all of one kind.
type Banded struct {
	Axis     string // "pressure"
	Kind     unit.Kind
	Value    string // what is judged
	Lo, Hi   string // between which it truly is
	From, To string // the band; either may be empty
}

// Next is a way on to another worksheet.
type Next struct{ ID, Text string }

// field returns the declared field, or nil.
func (w *Worksheet) field(id string) *Field {
	for i := range w.Fields {
		if w.Fields[i].ID == id {
			return &w.Fields[i]
		}
	}
	return nil
}

// figure returns the declared figure, or nil.
func (w *Worksheet) figure(id string) *Figure {
	for i := range w.Figures {
		if w.Figures[i].ID == id {
			return &w.Figures[i]
		}
	}
	return nil
}

// example returns the text that stands in a field nobody has touched.
func (f *Field) example() string {
	if f.Shape == Choice && f.Example == "" && len(f.Options) > 0 {
		return f.Options[0].ID
	}
	return f.Example
}

// option returns the choice with that ID, or nil.
func (f *Field) option(id string) *Option {
	for i := range f.Options {
		if f.Options[i].ID == id {
			return &f.Options[i]
		}
	}
	return nil
}

// noun returns the field's name inside a sentence.
func (f *Field) noun() string {
	if f.Noun != "" {
		return f.Noun
	}
	return f.Label
}
