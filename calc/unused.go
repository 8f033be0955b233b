package calc

// Unused says that what stands in a field does not bear on this answer, because
// another field that was filled in wins over it. The link and the list of
// numbers used then leave it out, and nobody is told that it is the example's.
func (o *Out) Unused(field string) { o.in.get(field).bears = false }
