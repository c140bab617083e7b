package pour

import (
	"pourbench/chem"
	"pourbench/chem/clock"
)

// crudePercent is the free acid above which an oil as sold is no refined one: Codex CXS 210 (memory) allows refined oils an acid value of
// 0.6 and cold-pressed ones 4 mg KOH per g, 0.3 and 2 % as oleic acid. Its shelf figure is then a middle of lots that differ much.
const crudePercent = 1

// crudeOfBlendPercent is how much free acid unrefined oils must bring to the whole blend before their own lot makes the clock unsure
// (assumed): 1 % moves medium to 0.83 to 0.87 of its time (reference: trace model, section 4.3), less of it hardly shows in the band.
const crudeOfBlendPercent = 1

// leastFreeAcid is what oils that state none are said to hold: the clock takes 0 for not known.
const leastFreeAcid = 1e-9

// freeAcid is the free fatty acid of the batch's oils, a fraction of their mass, each oil's by its mass: what its shelf says (pine tar is
// an acid, but only a third of it), all of a free acid and [clock.DefaultFFA] of another oil where nothing is stated. crude says
// whether unrefined oils bring so much of it that the maker's own lot decides.
func (t *timer) freeAcid() (ffa float64, crude bool) {
	all, sum, unrefined := 0.0, 0.0, 0.0
	for _, o := range t.batch.Oils {
		g := max(0, o.G)
		all += g
		oil, _ := t.shelf.Oil(o.ID)
		acid := g * clock.DefaultFFA
		switch stated := oil.FreeAcidPercent; {
		case stated.Known:
			acid = g * stated.V / 100
			if stated.V > crudePercent && oil.Fat.Kind == chem.Triglyceride {
				unrefined += acid
			}
		case oil.Fat.Kind == chem.FreeAcid:
			acid = g
		}
		sum += acid
	}
	if all <= 0 {
		return 0, false
	}
	return max(sum/all, leastFreeAcid), unrefined/all*100 >= crudeOfBlendPercent
}
