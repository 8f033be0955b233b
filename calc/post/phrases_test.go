package post

import (
	"slices"
	"strings"
	"testing"

	"plainlift/calc/unit"
)

// One way of writing a thing in each row, all invented; "" is nothing picked.
func TestPhrases(t *testing.T) {
	for text, want := range map[string]string{
		// Numbers.
		"before the shim 2 450 psi":                          "before 2,450 psi sure",
		"before the shim 2,450.5 psi":                        "before 2,450.5 psi sure",
		"before the shim 24 hundred psi":                     "before 2,400 psi sure",
		"before the shim twenty-five hundred psi":            "before 2,500 psi sure",
		"before the shim two thousand five hundred psi":      "before 2,500 psi sure",
		"before the shim 2k psi":                             "before 2,000 psi sure",
		"before the shim 2.5 ksi":                            "before 2,500 psi sure",
		"before the shim 2450+ psi":                          "before 2,450 psi sure",
		"before the shim 2450ish psi":                        "before 2,450 psi sure",
		"before the shim 2,450,2,700 psi":                    "",
		"went from 2.4 to 2.7k psi":                          "after 2,700 psi sure, before 2,400 psi asks",
		"took it from 24 to 27 hundred psi":                  "after 2,700 psi sure, before 2,400 psi asks",
		"no shims, lifts a hundred percent more":             "claimed 100 % sure",
		"went from 2450 psi up to 2700":                      "after 2,700 psi sure, before 2,450 psi sure",
		"between 2,400 and 2,500 psi before the shims":       "before 2,450 psi asks",
		"was 2,400 psi (plus or minus 20 psi)":               "before 2,400 psi asks",
		"From 2,450 ± 20 psi, ended at 2,690 psi":            "after 2,690 psi sure, before 2,450 psi sure",
		"It went to 1 1/2 or so, reads 2,450 psi originally": "before 2,450 psi sure",
		// Units.
		"before the shim 2450 psig":               "before 2,450 psi sure",
		"before the shim 2,450 lb/in²":            "before 2,450 psi sure",
		"before the shim 2,450 lbs/in2":           "before 2,450 psi sure",
		"before the shim 2450 lbs per sq in":      "before 2,450 psi sure",
		"before the shim 2450 lb per square in":   "before 2,450 psi sure",
		"before the shim 172 kg/cm²":              "before 172 kgf/cm² sure",
		"before the shim 172 kg/cm2":              "before 172 kgf/cm² sure",
		"before the shim 16900 kPa":               "before 16,900 kPa sure",
		"before the shim 16,9 MPa":                "before 16.9 MPa sure",
		"lifted 4.1 kN before":                    "lift_before 4.1 kN sure",
		"lifted 410 kilos before":                 "lift_before 410 kg sure",
		"lifted 900 lbs. before":                  "lift_before 900 lb sure",
		"lifted 900 lbs. Before that nothing.":    "lift_before 900 lb asks",
		"torqued to 45 lb-ft before it lifted":    "",
		"torqued to 45 lb ft before it lifted":    "",
		"lifts 60 lb per 100 psi before":          "",
		"lifts 60 lb for every 100 psi before":    "",
		"pressure was 168 bar, lifted 410 before": "before 168 bar asks, lift_before 410 kg asks",
		"pressure was 168, bar gauge":             "",
		// Shims.
		"a .010 and a .020 shim":  "thickness 0.010 in sure, thickness 0.020 in sure",
		"2 x 0.010 shims":         "thickness 0.020 in sure",
		"two of the 10-thou ones": "thickness 0.020 in sure",
		"a 0.3 mm washer":         "thickness 0.3 mm sure",
		"1/32 washer":             "thickness 0.03125 in sure",
		"a 3/4 in hose, no shim":  "",
		"two shims":               "",
		"0.020 in of play":        "",
		// Gains.
		"lifts 1/3 more":                    "claimed 33 % sure",
		"it lifts two thirds more":          "claimed 67 % sure",
		"lift went up by a quarter":         "claimed 25 % sure",
		"lift went up by half a turn":       "",
		"it lifts half more than it did":    "claimed 50 % sure",
		"lift capacity tripled":             "claimed 200 % sure",
		"it lifts double the weight":        "claimed 100 % sure",
		"doubled the shims to make it lift": "",
		"checked it twice, lifts fine":      "",
		"lifts 1.2x what it did":            "claimed 20 % sure",
		"I lift it 2 times a day":           "",
		"would that lift 10% more?":         "claimed 10 % asks",
		"if it lifts 10% more I am happy":   "",
		"if anything it lifts 10% more":     "claimed 10 % sure",
		"I'd say it lifts 10% more":         "claimed 10 % sure",
		"you should get 10% more lift":      "",
		"a 2% gauge and it lifts":           "",
		"raised the psi 8% more":            "percent 8 % asks",
		"it lifts 10% now":                  "claimed 10 % asks",
		"maybe 5 or 10 percent more lift":   "claimed 7.5 % asks",
		"10% more":                          "claimed 10 % asks",
		"10% and not more, of 40 things":    "",
		// Loads.
		"couldn't lift more than 900 lb before": "lift_before 900 lb sure",
		"it won't lift 900 lb":                  "lift_after 900 lb asks",
		"an extra 200 lb of lift":               "gained 200 lb sure",
		"it lifts 200 lb less":                  "gained \u2212200 lb sure",
		"200 lb more":                           "gained 200 lb asks",
		"the tractor is 3,200 lb and lifts":     "",
		"I weigh 240 lb and it lifts me":        "",
		"rated lift 1,580 lb":                   "",
		"lift went from 900 lb to 1,050 lb":     "lift_after 1,050 lb sure, lift_before 900 lb sure",
		"lifts 900 before and 1,050 lb now":     "lift_after 1,050 lb sure, lift_before 900 lb sure",
		"I wish it lifted 2,000 lb":             "",
		// Pressures that are no reading, or none of the change.
		"tires were at 30 psi before":                                  "",
		"relief was 700 psi before":                                    "before 700 psi asks",
		"relief was 9,000 psi before":                                  "",
		"a 3000 psi pressure washer before":                            "",
		"my gauge tops out at 4,000 psi, before":                       "",
		"hose rated 4,000 psi before":                                  "",
		"it is 2,450 psi, below the book, before":                      "before 2,450 psi asks",
		"2,790 psi per the book":                                       "",
		"after warming up it read 2,450 psi":                           "before 2,450 psi asks",
		"don't set it to 2,900 psi":                                    "",
		"I would go to 2,900 psi":                                      "",
		"it would only make 2,400 psi before":                          "before 2,400 psi sure",
		"the other day it read 2,450 psi before":                       "before 2,450 psi sure",
		"his reads 2,450 psi":                                          "before 2,450 psi asks",
		"relief is 2,450 psi since then":                               "before 2,450 psi asks",
		"bought in 2015, now in 2020":                                  "",
		"old tractor, 2,450 psi":                                       "before 2,450 psi asks",
		"2,450 psi at the first shim":                                  "after 2,450 psi asks",
		"cranked it up 250":                                            "rise 250 psi asks",
		"raised it by 15 bar":                                          "rise 15 bar asks",
		"another 10 psi":                                               "",
		"each shim is 45 psi higher":                                   "",
		"dropped it by another 200 psi":                                "",
		"see https://example.invalid/before-2450psi":                   "",
		"part no. MX2450 psi before":                                   "",
		"model L-2450 psi before":                                      "",
		"paid $2,450 before":                                           "",
		"2450 rpm before":                                              "",
		"at 10:30 before, call 555-0142":                               "",
		"went from 80 psi to 2,450 psi":                                "after 2,450 psi asks",
		"pressure was 168 before, and 183 bar now, by the dial":        "after 183 bar sure, before 168 bar sure",
		"pressure was 168 before. It lifts 470 kg now.":                "before 168 bar asks, lift_after 470 kg asks",
		"used two shims, 2,450 psi":                                    "after 2,450 psi asks",
		"could only get 2,450 psi before":                              "before 2,450 psi sure",
		"2,450 psi before 2,650 psi after":                             "after 2,650 psi sure, before 2,450 psi asks",
		"2 in before, lifted 2450 h before, 900 lb tractor, 5 # 4":     "",
		"it is 2,450 psi. At idle 2,400 psi. Before it was 2,300 psi.": "after 2,400 psi asks, after 2,450 psi asks, before 2,300 psi asks",
		"double lift with 900 lb on the pallet":                        "claimed 100 % sure, lift_before 900 lb asks",
		// Quotations.
		"[quote=x]was 2,450 psi[/quote]\nMine was 2,500 psi, now 2,700 psi": "after 2,700 psi sure, before 2,500 psi sure",
		"[quote]\nwas 2,450 psi, now 2,700 psi\n[/quote]\nNo way.":          "after 2,700 psi asks, before 2,450 psi asks",
		"> turned it up 250 psi": "rise 250 psi asks",
		// What comes along when text is pasted.
		"\uFEFFwas 2,450\u00A0psi,\r\nnow 2,700\u202Fpsi": "after 2,700 psi sure, before 2,450 psi sure",
		"":                                 "",
		"\xff\xfe":                         "",
		"was \xff2,450 psi, now 2,700 psi": "after 2,700 psi sure, before 2,450 psi sure",
	} {
		var got []string
		picks := Read(text, unit.US)
		for _, p := range picks {
			got = append(got, line(p))
		}
		check(t, text, picks)
		slices.Sort(got)
		if all := strings.Join(got, ", "); all != want {
			t.Errorf("%q:\n  got  %s\n  want %s", text, all, want)
		}
	}
}

// What a page shows: the place, the value as links write it, the question.
func TestPick(t *testing.T) {
	for _, c := range []struct {
		text, at, value, shown, ask string
		system                      unit.System
	}{
		{"went from 2300 to 25-ish psi", "25-ish psi", "2500 psi", "2,500 psi", "It is written short: is 2,500 psi the pressure after the change?", unit.US},
		{"went from 2300 to 25-ish psi", "25-ish psi", "2500 psi", "2500 psi", "It is written short: is 2500 psi the pressure after the change?", unit.Metric},
		{"now 2700 psi", "2700 psi", "2700 psi", "2,700 psi", "Is 2,700 psi the pressure after the change?", unit.US},
		{"two .010 shims", "two .010", "0.02 in", "0.020 in", "", unit.US},
		{"2500-2600 psi before", "2500-2600 psi", "2550 psi", "2,550 psi", "A range is given: is its middle, 2,550 psi, the pressure before the change?", unit.US},
		{"lifts a third more", "a third more", "33 %", "33 %", "", unit.US},
		{"lifts 7% less", "7%", "-7 %", "\u22127 %", "", unit.US},
		{"raised the pressure 8%", "8%", "8 %", "8 %", "Is 8 % more lift, or more pressure?", unit.US},
		{"turned it up 250 psi", "250 psi", "250 psi", "250 psi", "Raised from what? Enter the pressure before; add 250 psi for the one after.", unit.US},
		{"> was 2,400 psi before", "2,400 psi", "2400 psi", "2,400 psi", "It stands in a quotation: is 2,400 psi the pressure before the change?", unit.US},
		{"used to lift 900", "900", "900 lb", "900 lb", "No unit is given: is 900 lb the load lifted before the change?", unit.US},
		{"relief set at 2400 pounds before", "2400 pounds", "2400 psi", "2,400 psi", "The pounds seem to be psi: is 2,400 psi the pressure before the change?", unit.US},
	} {
		var found bool
		for _, p := range Read(c.text, c.system) {
			if c.text[p.Start:p.End] == c.at {
				found = true
				if p.Value != c.value || p.Shown != c.shown || p.Ask != c.ask {
					t.Errorf("%q: %q, %q, %q", c.text, p.Value, p.Shown, p.Ask)
				}
			}
		}
		if !found {
			t.Errorf("%q: nothing at %q, but %+v", c.text, c.at, Read(c.text, c.system))
		}
	}
	rise := Read("It was 2,450 psi. I turned it up 250 psi.", unit.US)
	if len(rise) != 2 || !rise[1].Rise || rise[1].Value != "2700 psi" || rise[1].Field != "after" || rise[1].Sure {
		t.Errorf("a rise on a known pressure: %+v", rise)
	}
}
