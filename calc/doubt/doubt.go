// Package doubt works out how well a figure is known, as the guides of the
// Joint Committee for Guides in Metrology do: JCGM 100:2008 (the law of
// propagation), JCGM 101:2008 (propagation of distributions) and JCGM 106:2012
// (conformity).
//
//	budget.go      standard uncertainties, their combination, degrees of freedom
//	student.go     normal and Student's t
//	means.go       the difference of two means
//	sum.go         the distribution of a value with several limits and repeats
//	conformity.go  probabilities of being under, inside and over a band
//	ratio.go       the gain between two pressures read on one gauge or two
//	simulate.go    both by drawing trials, which checks the formulas
//
// Quantities carry whatever unit the caller uses, the same throughout one
// call. Probabilities are fractions. A closed form returns NaN outside its
// domain.
//
// Equation numbers are from memory, and so are clauses where the text says so;
// the tests name the clause of each check value.
package doubt
