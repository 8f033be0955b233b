package linkage

const (
	inch  = 0.0254
	pound = 4.4482216152605 // N
	psi   = 6894.757293168361
)

// demo is the example of the site: invented, and so a check of nothing but
// that figures do not move unseen.
var demo = Loader{
	PivotH: 54 * inch, BaseH: 32 * inch, PivotBase: -24 * inch, Boom: 80 * inch, PivotRod: 34 * inch, RodTip: 47.25 * inch,
	Bore: 1.75 * inch, Rod: 1 * inch, Count: 2, Closed: 32.9 * inch, Stroke: 20.5 * inch, Efficiency: 0.95,
	BoomW: 260 * pound, BoomCG: 38 * inch, ToolW: 290 * pound, ToolCG: 10 * inch,
}
