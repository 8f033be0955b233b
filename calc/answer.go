package calc

// Answer is all that a page shows for one set of entries, in finished words.
type Answer struct {
	Worksheet string
	Verdict   Said
	Lines     []string     // further sentences under the verdict
	Figures   []Shown      // declared order, the verdict first
	Picture   string       // SVG, one or more; with a problem only of what was entered, if anything
	Rests     []string     // what this rests on
	Budget    []BudgetRow  // shares of the doubt, empty where there is none
	Working   []Step       // formulas with the numbers put in
	Cautions  []string     // short, never hidden
	Reply     []string     // the same to pass on in words, by paragraph
	Next      []Onward     // links that carry the values
	Known     []Known      // the reader's own values that other worksheets may ask for
	Used      []Used       // the numbers used
	Examples  []string     // IDs of fields that are still the example's
	Borrowed  []string     // what is still the example's in words: fields, or whole parts of the form
	Fields    []FieldState // every field, declared order
	Problems  []Problem    // what must be fixed; with any, there are no figures
	Notes     []Note       // remarks beside a field that is not wrong
	Notices   []string     // remarks on the whole
	Link      []Pair       // keys and values of the link, in order
	Check     string       // what the simulation showed; "" before it ran
}

// OK reports whether the entries could be answered.
func (a *Answer) OK() bool { return len(a.Problems) == 0 }

// Figure returns the shown figure with that ID, or nil.
func (a *Answer) Figure(id string) *Shown {
	for i := range a.Figures {
		if a.Figures[i].ID == id {
			return &a.Figures[i]
		}
	}
	return nil
}

// Said is the verdict in words.
type Said struct{ ID, Head, Sentence string }

// Shown is a figure in words. Value is the SI number at full precision, or the
// id of a verdict or choice; "" when the figure does not exist for these
// entries, and then Text says why.
type Shown struct {
	ID, Label, Value, Text string
	Place                  Place
}

// BudgetRow is one source of doubt.
type BudgetRow struct {
	Name  string
	Limit string  // what was stated: "± 80 psi"
	U     string  // standard uncertainty
	Share float64 // of u², 0 to 1
	Text  string  // the share in words
}

// Step is one line of working.
type Step struct{ Formula, Numbers, Source string }

// Onward is a link to another worksheet with the values that travel.
type Onward struct {
	ID, Text string
	Link     []Pair
}

// Known is a value of the reader's own, by the quantity that it is one of.
type Known struct {
	Quantity, Label string
	Text, Shown     string // as a link writes it, and as read
	Lasts           bool   // stays with the machine from one job to the next
}

// Pair is a key and its value in a link.
type Pair struct{ Key, Value string }

// Used is an entry as the answer understood it.
type Used struct {
	ID, Label, Text string
	Example         bool
}

// FieldState is what the page shows at a field. Number and Unit are what was
// typed, taken apart; both are "" when it could not be read.
type FieldState struct {
	ID, Number, Unit string
	Canonical        string // as a link writes it: the same in either system
	Own              bool   // the reader's: typed, carried, in the link, or confirmed
	Example          bool   // still the example's
	Bears            bool   // bears on the answer, given the other choices
	Rows             []RowState
	Slide            *SlideState // nil: no slider, or its ends are not known
}

// SlideState is how the slider of a field stands. Min, Max and Value are whole
// steps of the unit.
type SlideState struct {
	Min, Max, Step, Value float64
	Unit, Text            string // the shown unit, and the value as read
}

// RowState is one row of a field: one number, or two of pairs.
type RowState struct{ A, UnitA, B, UnitB string }

// Problem is a complaint about a field. Row counts from 0; −1 is the whole.
// Choices are texts that would be understood, where one text can mean two.
type Problem struct {
	Field   string
	Row     int
	Message string
	Choices []string
}

// Note is a remark beside a field or one of its rows.
type Note struct {
	Field string
	Row   int
	Text  string
}
