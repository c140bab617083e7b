package pour

import "fmt"

func cureCodes() []CodeInfo {
	return []CodeInfo{
		{"packed-damp", Note, false, "bars are packed before they are forecast to be dry by the plan's own criterion"},
		{"label-over-mass", Caution, false, "a bar is forecast to weigh less when it is packed than its label says"},
	}
}

// placeCure is where a warning of the cure stands.
const placeCure = "cure"

// inspectCure looks at what the plan wants of its bars when they are packed. A plan that says nothing of it is not judged.
func (s *Sheet) inspectCure() {
	c, p, show := &s.Cure, &s.Plan.Cure, s.Plan.Show
	if p.PackDays > 0 && p.PackDays < c.ReadyDay.Mid.V {
		s.warn(warning("packed-damp", placeCure, fmt.Sprintf("on day %s after the cut a bar still loses %s a week; dry by your criterion it is about day %s (%s to %s)",
			show.Number(c.PackDay.V, 0), show.Percent(c.PackLossPercent.V, 2), show.Number(c.ReadyDay.Mid.V, 0), show.Number(c.ReadyDay.Low.V, 0), show.Number(c.ReadyDay.High.V, 0)),
			"pack later, or weigh the same bars weekly and go by them; a closed wrap keeps the damp in"))
	}
	if s.overMass() {
		s.warn(warning("label-over-mass", placeCure, fmt.Sprintf("a bar is forecast to weigh %s when packed (%s to %s); the label says %s",
			show.Weight(c.PackG.Mid.V), show.Weight(c.PackG.Low.V), show.Weight(c.PackG.High.V), show.Weight(p.LabelG)),
			"cut thicker bars, put less on the label, or weigh every bar; local rules say how far one may be under"))
	}
}

// overMass reports whether a bar is forecast to weigh less when it is packed than its label says.
func (s *Sheet) overMass() bool {
	of := s.Plan.Cure.LabelG
	return of > 0 && of > s.Cure.PackG.Mid.V+s.Plan.Show.ScaleStepG/2
}
