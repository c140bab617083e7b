package pour

import (
	"pourbench/chem"
	"pourbench/chem/clock"
)

// crudePercent is the free acid above which an oil as sold is no refined one: Codex CXS 210 (memory) allows refined oils an acid value of
// 0.6 and cold-pressed ones 4 mg KOH per g, 0.3 and 2 % as oleic acid. Its shelf figure is then a middle of lots that differ much.
const crudePercent = 1

// leastFreeAcid is what oils that state none are said to hold: the clock takes 0 for not known.
const leastFreeAcid = 1e-9

// freeAcid is the free fatty acid of the batch's oils, a fraction of their mass, each oil's by its mass: what its shelf says,
// [clock.DefaultFFA] where nothing is stated, all of it for a free acid. crude says whether unrefined oils bring more of it
// than refined oils alone would hold, so that the maker's own lot decides.
func (t *timer) freeAcid() (ffa float64, crude bool) {
	all, sum, unrefined := 0.0, 0.0, 0.0
	for _, o := range t.batch.Oils {
		g := max(0, o.G)
		all += g
		oil, _ := t.shelf.Oil(o.ID)
		switch part := oil.FreeAcidPercent; {
		case oil.Fat.Kind == chem.FreeAcid:
			sum += g
		case !part.Known:
			sum += g * clock.DefaultFFA
		default:
			sum += g * part.V / 100
			if part.V > crudePercent {
				unrefined += g * part.V / 100
			}
		}
	}
	if all <= 0 {
		return 0, false
	}
	return max(sum/all, leastFreeAcid), unrefined/all > clock.DefaultFFA
}
