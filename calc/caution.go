package calc

// Cautions that more than one worksheet shows, by name.
var cautions = map[string]string{
	"skin":       "Oil under pressure goes through skin. If that happens, see a surgeon at once, even when the mark is small.",
	"leaks":      "Never feel for a leak with a hand; use cardboard, with the engine off and the pressure let down.",
	"arm":        "Lower a raised arm or block it before anyone works near it or opens a line.",
	"turn":       "Watch the gauge while turning a cap or a screw: a little goes far.",
	"hold":       "Hold over relief for seconds only: all the pump's power turns into heat there.",
	"limit":      "Stay under the service manual's upper limit. The machine's own manual decides; this page only informs.",
	"low":        "Carry the load low, with the ballast on: more lift makes it easier to tip.",
	"raised":     "Never drive or turn with a raised load. Braking, a hole or a bump throws weight forward that is in no figure here. (Common practice, no source.)",
	"sideways":   "The front axle pivots: across a slope, or with one wheel in a hole, a tractor goes over sideways first. This page does not work that out.",
	"axles":      "Axles, tyres and wheels have ratings of their own, and the manual says how much ballast may hang where: stay within both.",
	"belt":       "Roll bar up and seat belt on. (Common practice, no source.)",
	"age":        "A mark is for a part that is new and sound: hoses age, tubes rust, pins wear. Replace what is cracked, chafed, bent or weeping, whatever its mark.",
	"warranty":   "A changed relief setting can end a warranty, and local rules may forbid it.",
	"technician": "If anything is doubtful, have a licensed technician do it.",
	"coupling":   "See that every coupling is home before you load a cylinder, and never part one under load: oil shut in on the rod side stands above the relief pressure.",
	"travel":     "Too much shim can leave the spring no travel; then nothing limits the pressure. (Common practice, no source.)",
	"load":       "Nobody under or near a load on a hook, or in line with a chain under pull.",
	"repeat":     "A relief valve does not open at exactly the same pressure twice, and warm oil reads lower than cold; neither is in these figures.",
}

func caution(name string) string {
	text, ok := cautions[name]
	if !ok {
		panic("calc: no such caution: " + name)
	}
	return text
}
