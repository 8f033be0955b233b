// Package worksheets is the book of worksheets: one declaration a file. To add
// one, write its file and its line in All.
package worksheets

import "plainlift/calc"

// All is every worksheet in page order.
var All = calc.Book{
	short,
	reading,
	gain,
	beforeAfter,
	liftTest,
	shim,
	job,
	loader,
	tip,
	flow,
	cylinder,
	ratings,
}
