package session

import (
	"slices"

	"pourbench/pour"
	"pourbench/pour/whatif"
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

// Unmended returns a function that looks beside the keyboard for what takes the warnings away. It is nil while the sheet is not worked out in
// full, and once they were looked for.
func (s *Session) Unmended() func() [][]whatif.Mend {
	if !s.sheet.Mingling.Known || s.mends != nil {
		return nil
	}
	sheet, shelf, hand := s.sheet, s.shelf, s.hand
	return func() [][]whatif.Mend { return whatif.Mends(sheet, shelf, hand) }
}

// Mended takes the mends of the warnings for a revision; those of a plan that has changed since are dropped.
func (s *Session) Mended(rev int, mends [][]whatif.Mend) {
	if rev == s.rev {
		s.mends = mends
	}
}

// Mends returns the mends of every warning of [Session.Warnings], in their order; nil: they are not known yet.
func (s *Session) Mends() [][]whatif.Mend { return s.mends }
