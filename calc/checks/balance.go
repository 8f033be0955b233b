package checks

import "plainlift/calc/balance"

const (
	ballastRule = "rule for front and rear ballast in several operator's manuals (quoted); the case worked as fractions"
	frontMoment = "moments about the front wheels, as fractions"
	tippingLoad = "tipping load as AS ISO 14397.1:2021, 3.2, defines it (read); the number from moments"
)

// behind is a tractor of 4000, 1600 of it in front, on a wheelbase of 2.4 with a
// rear weight at 1.0 + 0.7 behind the rear axle and a place for a front weight 1.5
// ahead of the front axle. In kg and m, as only ratios count.
func behind(rear float64) *balance.Machine {
	return &balance.Machine{Front: 1600, Rear: 2400, Wheelbase: 2.4, Reach: 1.5, Ballast: rear, BallastX: 1.7}
}

// turned is the same with front and rear changed over and the 800 that must stay
// on the front axle set aside: what tips it is the most that may hang behind.
var turned = &balance.Machine{Front: 2400, Rear: 1600 - 800, Wheelbase: 2.4, Reach: 1.7}

// hillside is a tractor whose common centre, with a load of 1000, lies as far
// behind the front wheels as it lies high: (2400·2.4 − 1000·1.5)/5000 = 0.852.
var hillside = &balance.Machine{Front: 1600, Rear: 2400, Wheelbase: 2.4, Reach: 1.5, Hill: slope45, CentreH: 0.852, LoadH: 0.852}

const slope45 = 0.785398163397448309616

var balances = []Check{
	{What: "Tractor with 900 behind: front axle", Source: ballastRule, Status: Computed, Unit: "kg", Printed: "962.5", Tol: 1e-9, Got: func() float64 { return behind(900).FrontAxle(0) }},
	{What: "Tractor with 900 behind: rear axle", Source: ballastRule, Status: Computed, Unit: "kg", Printed: "3937.5", Tol: 1e-9, Got: func() float64 { return behind(900).RearAxle(0) }},
	{What: "Tractor with 1200 behind: front axle", Source: ballastRule, Status: Computed, Unit: "kg", Printed: "750", Tol: 1e-9, Got: func() float64 { return behind(1200).FrontAxle(0) }},
	{What: "Tractor with 1200 behind: front weight for 20 % in front", Source: ballastRule, Status: Computed, Unit: "kg", Printed: "30.769231", Got: func() float64 { return behind(1200).AxleLimit(800) }},
	{What: "Tractor with 900 behind: the same; under 0, none is needed", Source: ballastRule, Status: Computed, Unit: "kg", Printed: "-100", Tol: 1e-9, Got: func() float64 { return behind(900).AxleLimit(800) }},
	{What: "Most behind that leaves 20 % in front", Source: ballastRule, Status: Computed, Unit: "kg", Printed: "1129.411765", Got: turned.TipLoad},
	{What: "Rear ballast for 45 % on the rear axle, 1500 in front", Source: ballastRule, Status: Computed, Unit: "kg", Printed: "197.560975610", Got: func() float64 { return behind(0).BallastForAxle(1800, 1500) }},
	{What: "Tipping load with 900 behind", Source: tippingLoad, Status: Computed, Unit: "kg", Printed: "6300", Tol: 1e-9, Got: func() float64 { return behind(900).TipLoad() }},
	{What: "Front axle at that load: all there is", Source: tippingLoad, Status: Computed, Unit: "kg", Printed: "11200", Tol: 1e-9, Got: func() float64 { return behind(900).FrontAxle(6300) }},
	{What: "Load that leaves a quarter on the rear axle", Source: frontMoment, Status: Computed, Unit: "kg", Printed: "3100", Tol: 1e-9, Got: func() float64 { return behind(900).SafeLoad(0.25) }},
	{What: "Ballast that leaves a quarter with that load", Source: frontMoment, Status: Computed, Unit: "kg", Printed: "900", Tol: 1e-9, Got: func() float64 { return behind(0).BallastForShare(0.25, 3100) }},
	{What: "Slope of 45°, common centre as far back as high: load that tips", Source: "a body tips where the upright through its centre passes the edge", Status: Computed, Unit: "kg", Printed: "1000", Tol: 1e-9, Got: hillside.TipLoad},
}
