package calc

import "math"

// Slides reports whether any field has a slider.
func (w *Worksheet) Slides() bool {
	for i := range w.Fields {
		if w.Fields[i].Slide != nil {
			return true
		}
	}
	return false
}

// slides says how the sliders stand.
func (o *Out) slides() {
	for i := range o.w.Fields {
		f := &o.w.Fields[i]
		if v := o.in.get(f.ID); f.Slide != nil && v.set && v.bears {
			o.answer.Fields[i].Slide = o.slide(f, v)
		}
	}
}

// slide divides the way between the ends into some two hundred steps of a round
// size. It returns nil if there is no way to go.
func (o *Out) slide(f *Field, v *value) *SlideState {
	u := f.Kind.Shown(o.in.sys)
	from, to := u.FromSI(o.si(f.Slide.From)), u.FromSI(o.si(f.Slide.To))
	step := math.Pow(10, math.Ceil(math.Log10((to-from)/200)))
	for _, part := range [...]float64{5, 2} {
		if (to-from)*part <= 200*step {
			step /= part
			break
		}
	}
	s := &SlideState{Min: math.Ceil(from/step) * step, Max: math.Floor(to/step) * step, Step: step, Unit: u.Name, Text: v.shown}
	if !(s.Min < s.Max) { // also when an end is not a number
		return nil
	}
	s.Value = min(max(math.Round(u.FromSI(v.a[0].SI)/step)*step, s.Min), s.Max)
	for _, x := range [...]*float64{&s.Min, &s.Max, &s.Value, &s.Step} {
		*x = math.Round(*x*1e9) / 1e9 // what the multiplication left
	}
	return s
}

// si returns the SI value of a field or figure, NaN where there is none.
func (o *Out) si(id string) float64 {
	if o.w.figure(id) != nil {
		if f, ok := o.figures[id]; ok {
			return f.si
		}
		return math.NaN()
	}
	return o.in.SI(id)
}
