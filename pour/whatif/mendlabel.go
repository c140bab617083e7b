package whatif

import (
	"slices"
	"strings"

	"pourbench/pour"
)

// labelWays mends what a label says.
func labelWays(m *mender, w pour.Warning) []ladder {
	switch l := &m.before.Label; w.Code {
	case "label-food":
		return []ladder{{{"write among its cautions to keep it from children", warnOfFood()}}}
	case "label-weight":
		return []ladder{{{"put " + m.plan.Show.Weight(l.Net.Most) + " on the label", pour.SetNumber("cure.label_g", l.Net.Most)}}}
	case "label-prohibited":
		return m.lessAllergen(w)
	case "outside-report":
		return m.reportWays(w)
	}
	return nil
}

// warnOfFood adds to the label's own cautions to keep it from children; that it is no food stands on such a label by itself.
func warnOfFood() pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		p.Label.Cautions = strings.TrimSpace(p.Label.Cautions + " Keep away from children.")
		return p, nil
	}
}

// lessAllergen is less of the scents that bring a substance, or none of the one that brings most.
func (m *mender) lessAllergen(w pour.Warning) []ladder {
	var out []ladder
	for _, a := range m.before.Label.Allergens {
		if !a.Over && !a.Prohibited || !strings.HasPrefix(w.Text, a.Name+" ") {
			continue
		}
		for _, n := range [2]pour.BatchName{pour.Base, pour.Icing} {
			for _, from := range a.From {
				for _, i := range m.scents(n, from.Scent) {
					if !a.Prohibited {
						out = append(out, m.lowerLoad(n, i))
					}
					out = append(out, ladder{{"leave " + from.Scent + " out of the " + string(n), pour.RemoveScent(n, i)}})
				}
			}
		}
	}
	return slices.DeleteFunc(out, func(l ladder) bool { return len(l) == 0 })
}
