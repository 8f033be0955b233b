package calc

// lasting are the quantities that stay with a machine and its gauge from one job
// to the next. The others are of the moment: what the gauge shows now, what is
// aimed at, how warm the oil is.
var lasting = [...]string{
	"manual lowest", "manual highest",
	"gauge scale", "gauge grade", "gauge accuracy", "gauge limit",
	"lift", "lift pressure", "pivot to load", "dead weight", "dead share", "load slope",
	"cylinder bore", "cylinder rod", "cylinder count", "cylinder stroke", "cylinder closed",
	"pump flow", "efficiency",
}

// lasts reports whether a quantity stays with the machine.
func lasts(quantity string) bool {
	for _, q := range lasting {
		if q == quantity {
			return true
		}
	}
	return false
}
