package session

import (
	"slices"

	"pourbench/pour"
)

// Warnings returns what stands against the plan on the bench, the worst first. What needs the clock or the colours is that of the plan
// before while it is looked for again, so that nothing flickers; what stands on the lye is always that of the plan itself.
func (s *Session) Warnings() []pour.Warning {
	if s.sheet.Mingling.Known {
		return s.sheet.Warnings
	}
	all := append(slices.Clone(s.sheet.Warnings), without(s.later, s.sheet.Warnings)...)
	slices.SortStableFunc(all, func(a, b pour.Warning) int { return rank(a.Severity) - rank(b.Severity) })
	return all
}

func rank(s pour.Severity) int {
	return slices.Index([]pour.Severity{pour.Stop, pour.Caution, pour.Note}, s)
}

// without leaves out the warnings that are among others, however they word their reason.
func without(list, others []pour.Warning) []pour.Warning {
	return slices.DeleteFunc(slices.Clone(list), func(w pour.Warning) bool {
		return slices.ContainsFunc(others, func(o pour.Warning) bool { return o.Code == w.Code && o.Where == w.Where })
	})
}
