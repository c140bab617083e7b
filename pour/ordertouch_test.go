package pour_test

import (
	"math"
	"testing"

	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/script"
)

// Where a technique shuffles what is poured, an order's price is that of the boundary measured on its faces: the same that the pairs tell of
// once it is poured. Elsewhere the acts say who touches whom.
func TestOrdersAreRankedByWhatTouchesOnTheFaces(t *testing.T) {
	for technique, measured := range map[script.Technique]bool{script.Drop: true, script.Spooned: true, script.Layers: false} {
		p, shelf := shelved(t)
		p.Icing, p.Swirl = nil, pour.Swirl{Technique: string(technique), Seed: 1}
		look := mingle(p, shelf, colour.NewJudge()).Mingling
		own, total, worst, apart := look.Orders[0], 0.0, 0.0, 0.0
		for _, pair := range look.Pairs {
			total += pair.Score * pair.ContactPercent / 100
			if pair.ContactPercent >= 5 {
				worst = max(worst, pair.Score)
			}
			apart = max(apart, math.Abs(own.Contact[pair.A][pair.B]*100-pair.ContactPercent))
		}
		if same := apart < 1e-9; same != measured {
			t.Errorf("%s: the order's contact and the faces' are %.3f points apart", technique, apart)
		}
		if measured {
			equal(t, string(technique)+", mud in all", own.Total, total, 1e-9)
			equal(t, string(technique)+", worst mud", own.Worst, worst, 1e-9)
		}
		for _, o := range look.Orders {
			if o.Kind == pour.OrderByColour && (o.Worst > own.Worst+1e-9 || math.Abs(o.Worst-own.Worst) < 1e-9 && o.Total > own.Total+1e-9) {
				t.Errorf("%s: by colour %.3f and %.3f is muddier than %.3f and %.3f", technique, o.Worst, o.Total, own.Worst, own.Total)
			}
		}
	}
}
