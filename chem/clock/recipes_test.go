package clock

import (
	"math"

	"pourbench/chem"
)

// The oils of trace model 4.3, given there beside its golden values; rounded values from memory, for comparison only: what is
// worked out from these recipes is our own model's, regression.
type testOil struct {
	sap     float64
	profile chem.Profile
}

func testOils() map[string]testOil {
	return map[string]testOil{
		"olive":     {190, chem.Profile{chem.C16: .13, chem.C16x1: .01, chem.C18: .03, chem.C18x1: .71, chem.C18x2: .10, chem.C18x3: .01}},
		"sunflower": {190, chem.Profile{chem.C16: .04, chem.C18: .04, chem.C18x1: .83, chem.C18x2: .08}},
		"coconut": {257, chem.Profile{
			chem.C8: .08, chem.C10: .06, chem.C12: .48, chem.C14: .19, chem.C16: .09, chem.C18: .03,
			chem.C18x1: .06, chem.C18x2: .02,
		}},
		"palm":   {200, chem.Profile{chem.C14: .01, chem.C16: .44, chem.C18: .045, chem.C18x1: .39, chem.C18x2: .10}},
		"castor": {180, chem.Profile{chem.Ricinoleic: .90, chem.C18x1: .04, chem.C18x2: .04, chem.C16: .01, chem.C18: .01}},
		// The next two are not given in 4.3: common textbook compositions, from memory.
		"shea":  {180, chem.Profile{chem.C16: .05, chem.C18: .41, chem.C18x1: .46, chem.C18x2: .06}},
		"lard":  {197, chem.Profile{chem.C14: .015, chem.C16: .26, chem.C16x1: .03, chem.C18: .14, chem.C18x1: .44, chem.C18x2: .10}},
		"cocoa": {194, chem.Profile{chem.C16: .26, chem.C18: .345, chem.C18x1: .345, chem.C18x2: .03}},
	}
}

// oils mixes test oils in parts of the whole, each oil's profile normalised first.
func oils(parts map[string]float64) (sap float64, p chem.Profile) {
	for name, part := range parts {
		oil := testOils()[name]
		sum := 0.0
		for _, w := range oil.profile {
			sum += w
		}
		sap += part * oil.sap
		for a, w := range oil.profile {
			p[a] += part * w / sum
		}
	}
	return sap, p
}

func balanced() map[string]float64 {
	return map[string]float64{"olive": .40, "coconut": .30, "palm": .25, "castor": .05}
}

func slow() map[string]float64 {
	return map[string]float64{"sunflower": .45, "olive": .30, "coconut": .20, "castor": .05}
}

func fast() map[string]float64 {
	return map[string]float64{"palm": .40, "coconut": .35, "shea": .25}
}

// batter is 1 kg of oils in a room of 22 °C, superfat 5 %, lye 33 %, as all scenarios of 4.3 are, split after the last burst.
func batter(parts map[string]float64, startC float64, bursts ...Burst) Batter {
	sap, p := oils(parts)
	b := Batter{
		OilG: 1000, Profile: p, Profiled: 1, SapKOHMgG: sap, Superfat: .05, Concentration: .33,
		StartC: startC, RoomC: 22, Bursts: bursts,
	}
	for _, u := range bursts {
		b.SplitMin = math.Max(b.SplitMin, u.AtMin+u.S/60)
	}
	return b
}

func scent(factor, loadPercent, at float64) Scent {
	return Scent{ID: "s", Name: "scent", LnFactor: math.Log(factor), SD: .35, RefLoadPercent: 3, LoadPercent: loadPercent, AtMin: at}
}

func pulsed() []Burst { return []Burst{{0, 20}, {.5, 20}, {1, 20}} }
