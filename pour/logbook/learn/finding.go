package learn

import (
	"cmp"
	"math"
	"slices"

	"pourbench/chem/clock"
	"pourbench/pour"
)

// Finding is what a scent has turned out to be in her hands.
type Finding struct {
	ID, Name    string
	LoadPercent float64 // the factors hold at this load of oils
	Prior       float64 // speed factor believed before any log
	Factor      float64 // speed factor now, the median
	Low, High   float64 // ends of its 80 % band
	Pours       int     // how many of her pours it rests on
	Behaviour   string  // the word of pour that is nearest
}

// z80 is the 0.90 quantile of the normal distribution: an 80 % band lies this many sd either way.
const z80 = 1.2815515655446004

func (p *pupil) findings(logs []Log) []Finding {
	var out []Finding
	done := map[string]bool{}
	for _, l := range logs {
		for _, s := range l.Jug.Scents {
			i, ok := p.belief.place[traitKey{clock.ScentTrait, s.ID}]
			if !ok || done[s.ID] {
				continue
			}
			done[s.ID] = true
			ln, sd := s.LnFactor+p.belief.mean[i], math.Sqrt(max(0, p.belief.cov[i][i]))
			out = append(out, Finding{
				ID: s.ID, Name: s.Name, LoadPercent: s.RefLoadPercent, Prior: math.Exp(s.LnFactor), Factor: math.Exp(ln),
				Low: math.Exp(ln - z80*sd), High: math.Exp(ln + z80*sd),
				Pours: len(p.bearing[traitKey{clock.ScentTrait, s.ID}]), Behaviour: behaviourNear(ln),
			})
		}
	}
	slices.SortStableFunc(out, func(a, b Finding) int { return cmp.Or(b.Pours-a.Pours, cmp.Compare(a.Name, b.Name)) })
	return out
}

// behaviourNear is the word for a scent's behaviour whose usual speed factor is nearest to one, by its logarithm.
func behaviourNear(lnFactor float64) string {
	best, word := math.Inf(1), pour.BehaviourUnknown
	for _, w := range []string{pour.BehaviourSlows, pour.BehaviourNone, pour.BehaviourFast, pour.BehaviourStrong, pour.BehaviourSeizes} {
		usual, _, ok := clock.ScentPrior(w)
		if off := math.Abs(usual - lnFactor); ok && off < best {
			best, word = off, w
		}
	}
	return word
}
