package pour

import (
	"errors"
	"fmt"
	"slices"
)

// AddExtra adds an extra at the given percentage of the oils.
func AddExtra(n BatchName, id string, percent float64) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		b.Extras = append(b.Extras, ExtraPart{Extra: id, PercentOfOils: percent})
		return nil
	})
}

// SetExtra sets an extra's percentage of the oils.
func SetExtra(n BatchName, extra int, percent float64) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if err := inRange(b.Extras, extra, "extra"); err != nil {
			return err
		}
		b.Extras[extra].PercentOfOils = percent
		return nil
	})
}

// RemoveExtra takes an extra out of the batch.
func RemoveExtra(n BatchName, extra int) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if err := inRange(b.Extras, extra, "extra"); err != nil {
			return err
		}
		b.Extras = slices.Delete(b.Extras, extra, extra+1)
		return nil
	})
}

func editScent(n BatchName, scent int, edit func(*Batch, *ScentPart) error) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if err := inRange(b.Scents, scent, "scent"); err != nil {
			return err
		}
		return edit(b, &b.Scents[scent])
	})
}

// AddScent adds a scent to the named jugs, or to every jug when none is named.
func AddScent(n BatchName, id string, percentOfOils float64, into []string) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		b.Scents = append(b.Scents, ScentPart{Scent: id, PercentOfOils: percentOfOils, Into: slices.Clone(into), AtMin: b.SplitAtMin})
		return nil
	})
}

// SetScentLoad sets a scent's load, percent of the batch's oils.
func SetScentLoad(n BatchName, scent int, percentOfOils float64) Edit {
	return editScent(n, scent, func(_ *Batch, s *ScentPart) error { s.PercentOfOils = percentOfOils; return nil })
}

// SetSplitAt sets the minute a batch is split at, after its lye-in. Scents that were to go in from the old minute on and would now come before
// their jug is there wait for the split.
func SetSplitAt(n BatchName, atMin float64) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		for i := range b.Scents {
			if s := &b.Scents[i]; s.AtMin >= b.SplitAtMin {
				s.AtMin = max(s.AtMin, atMin)
			}
		}
		b.SplitAtMin = atMin
		return nil
	})
}

// SetScentAt sets the earliest minute a scent goes in, after its batch's lye-in.
func SetScentAt(n BatchName, scent int, atMin float64) Edit {
	return editScent(n, scent, func(_ *Batch, s *ScentPart) error { s.AtMin = atMin; return nil })
}

// SetScentInto sends a scent into one jug alone.
func SetScentInto(n BatchName, scent int, jug string) Edit {
	return editScent(n, scent, func(_ *Batch, s *ScentPart) error { s.Into = []string{jug}; return nil })
}

// SwapScent puts another scent in a scent's place, with the same load and jugs.
func SwapScent(n BatchName, scent int, id string) Edit {
	return editScent(n, scent, func(_ *Batch, s *ScentPart) error { s.Scent = id; return nil })
}

// ToggleScentJug puts a scent into a jug or takes it out. A scent keeps at least one jug.
func ToggleScentJug(n BatchName, scent int, jug string) Edit {
	return editScent(n, scent, func(b *Batch, s *ScentPart) error {
		names := ids(b.Jugs, func(j Jug) string { return j.Name })
		if !slices.Contains(names, jug) {
			return fmt.Errorf("scent %s: it is no jug of the %s", jug, n)
		}
		into := s.Into
		if len(into) == 0 {
			into = names
		}
		var next []string
		for _, name := range names { // the jugs' own order, so that equal plans stay equal
			if slices.Contains(into, name) != (name == jug) {
				next = append(next, name)
			}
		}
		if len(next) == 0 {
			return errors.New("take the scent out of its last jug: remove the scent instead")
		}
		if len(next) == len(names) {
			next = nil
		}
		s.Into = next
		return nil
	})
}

// RemoveScent takes a scent out of the batch.
func RemoveScent(n BatchName, scent int) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if err := inRange(b.Scents, scent, "scent"); err != nil {
			return err
		}
		b.Scents = slices.Delete(b.Scents, scent, scent+1)
		return nil
	})
}
