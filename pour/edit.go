package pour

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"pourbench/pour/strict"
)

// Edit makes a new plan from a plan. It never changes its argument, and refuses, with the reason, what cannot be.
type Edit func(Plan) (Plan, error)

// Both makes one edit after the other.
func Both(a, b Edit) Edit {
	return func(p Plan) (Plan, error) {
		p, err := a(p)
		if err != nil {
			return p, err
		}
		return b(p)
	}
}

// ErrRefused is wrapped by every refusal of [Apply].
var ErrRefused = errors.New("refused")

// ErrHeld is wrapped by every refusal for which parts that are held are the reason, and ends it.
var ErrHeld = errors.New("let one go first")

// Apply makes the edit and checks the plan it gives: an edit that leaves a fault is refused with the first one.
func Apply(p Plan, s Shelf, e Edit) (Plan, error) {
	next, err := e(p.Clone())
	if err != nil {
		return p, fmt.Errorf("%w: %w", ErrRefused, err)
	}
	if faults := next.Check(s); len(faults) > 0 {
		return p, fmt.Errorf("%w: %w", ErrRefused, faults[0])
	}
	return next.Clone(), nil // so that what is empty is nil and equal plans are equal
}

// SetName renames the plan.
func SetName(name string) Edit {
	return func(p Plan) (Plan, error) { p.Name = name; return p, nil }
}

// SetTemplate marks a plan as one that begins new plans, or as one of its own.
func SetTemplate(is bool) Edit {
	return func(p Plan) (Plan, error) { p.Template = is; return p, nil }
}

// FromTemplate is a new plan that a template begins: all of it but the mark and the hour it was poured at.
func FromTemplate(p Plan) Plan {
	p = p.Clone()
	p.Template, p.PourAt = false, time.Time{}
	return p
}

// SetNotes replaces the maker's notes.
func SetNotes(notes string) Edit {
	return func(p Plan) (Plan, error) { p.Notes = notes; return p, nil }
}

// UseMould takes the size and cut of a mould on the shelf and keeps the plan's loss.
func UseMould(m MouldEntry) Edit {
	return func(p Plan) (Plan, error) {
		loss := p.Mould.LossPercent
		p.Mould = m.Mould
		p.Mould.LossPercent = loss
		return p, nil
	}
}

// SetTechnique chooses a technique by its id; passes, turns and height go back to the technique's own.
func SetTechnique(id string) Edit {
	return func(p Plan) (Plan, error) {
		s := p.Swirl
		p.Swirl = Swirl{Technique: id, Seed: s.Seed, First: s.First, Last: s.Last, PotBetween: s.PotBetween}
		return p, nil
	}
}

// Reseed chooses another of the faces the technique can pour.
func Reseed(seed int64) Edit {
	return func(p Plan) (Plan, error) { p.Swirl.Seed = seed; return p, nil }
}

// SetPasses sets the number of pours, strokes or drops; 0 is the technique's own.
func SetPasses(n int) Edit {
	return func(p Plan) (Plan, error) { p.Swirl.Passes = n; return p, nil }
}

// editBatch wraps an edit of one batch, which must be there.
func editBatch(n BatchName, edit func(*Plan, *Batch) error) Edit {
	return func(p Plan) (Plan, error) {
		b := p.Batch(n)
		if b == nil {
			return p, fmt.Errorf("change the %s: this plan has none; add an icing first", n)
		}
		return p, edit(&p, b)
	}
}

// SetBursts replaces the stick-blender bursts of a batch.
func SetBursts(n BatchName, bursts []Burst) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		b.Blend = append([]Burst(nil), bursts...)
		return nil
	})
}

// UsualIcingG is what an icing begins with on each bar, g (common practice, no source).
const UsualIcingG = 30

// AddIcing adds an icing that leans on the base: its oils, its temperatures, one white jug, [UsualIcingG] on each bar.
func AddIcing() Edit {
	return func(p Plan) (Plan, error) {
		if p.Icing != nil {
			return p, errors.New("add an icing: the plan has one")
		}
		b := p.Base.Clone()
		b.Size, b.PerBarG, b.LossPercent = SizeBar, UsualIcingG, 8
		b.Jugs = []Jug{{Name: "icing", SharePercent: 100}}
		b.Scents, b.Extras = nil, nil
		b.StartAtMin = 25
		p.Icing = &b
		return p, nil
	}
}

// RemoveIcing takes the icing out of the plan.
func RemoveIcing() Edit {
	return func(p Plan) (Plan, error) {
		if p.Icing == nil {
			return p, errors.New("remove the icing: the plan has none")
		}
		p.Icing = nil
		return p, nil
	}
}

// balance sets part i to v and lets the others that are not held give way in proportion, so that the total stays 100; it refuses what
// would leave another total.
func balance(parts []*float64, held []bool, i int, v float64, what string) error {
	if err := partOf100(v, what); err != nil {
		return err
	}
	fixed, count := v, 0
	for k := range parts {
		switch {
		case k == i:
		case held[k]:
			fixed += *parts[k]
		default:
			count++
		}
	}
	if fixed > 100+sumTolerance {
		return fmt.Errorf("set %s to %s %%: held ones leave %s %%; %w", what, strict.Short(v), strict.Short(round3(100-(fixed-v))), ErrHeld)
	}
	if count == 0 {
		switch {
		case math.Abs(fixed-100) <= sumTolerance:
		case len(parts) == 1:
			return fmt.Errorf("set %s to %s %%: it is alone, nothing can give way; add another first", what, strict.Short(v))
		default:
			return fmt.Errorf("set %s to %s %%: every other one is held; %w", what, strict.Short(v), ErrHeld)
		}
		*parts[i] = 100 - (fixed - v) // within the tolerance of v, and the whole stays a hundred
		return nil
	}
	*parts[i] = v
	held = slices.Clone(held)
	held[i] = true
	giveWay(parts, held)
	return nil
}

// partOf100 refuses what is no part of a hundred.
func partOf100(v float64, what string) error {
	if math.IsNaN(v) || v < 0 || v > 100 {
		return fmt.Errorf("set %s to %s %%: write a number from 0 to 100", what, strict.Short(v))
	}
	return nil
}

// giveWay lets the parts that are not held take what the held ones leave of a hundred, in proportion; when they are all 0 they share it
// equally. Where the held ones leave less than nothing they become 0, and where all are held nothing changes.
func giveWay(parts []*float64, held []bool) {
	left, free, count := 100.0, 0.0, 0
	for k := range parts {
		if held[k] {
			left -= *parts[k]
		} else {
			free += *parts[k]
			count++
		}
	}
	left = max(left, 0)
	for k := range parts {
		switch {
		case held[k]:
		case free > 0:
			*parts[k] = left * (*parts[k] / free) // in this order it is never more than is left, not even by the last bit
		default:
			*parts[k] = left / float64(count)
		}
	}
}

func round3(v float64) float64 { return math.Round(v*1000) / 1000 }

func inRange[T any](list []T, i int, what string) error {
	if i < 0 || i >= len(list) {
		return fmt.Errorf("change %s %d: there are %d", what, i+1, len(list))
	}
	return nil
}
