package shopping

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/lot"
)

// Limit is what keeps a batch from being larger.
type Limit struct {
	Material lot.Material
	Name     string
	Need     lot.Quantity // one step larger
	Free     lot.Quantity
	Rim      bool // no material: the mould is full
}

// Reach is how large a batch can be, and why not one step larger.
type Reach struct {
	To     float64 // in the unit of what sizes the plan
	None   bool    // not even the smallest: To is nothing
	Limits []Limit // empty: nothing limits it before the largest that a plan can say
}

// Largest is the largest pour of a plan that some material allows.
type Largest struct {
	Sizing Sizing
	Reach
	Plan   pour.Plan  // the plan so large; where there is one
	Sheet  pour.Sheet // weighed anew
	Next   Reach      // when there were enough of what limits it
	Unkept []string   // materials no pack of which ever came: nobody knows how much there is, so they limit nothing
}

// Edit makes the plan so large, and changes nothing else of it.
func (l Largest) Edit() pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		if l.None {
			return p, errors.New("make the largest batch: the stock allows none of any size")
		}
		return l.Sizing.put(p, l.Plan), nil
	}
}

// ErrNothingKept is that of a plan nothing of which is in the ledger.
var ErrNothingKept = errors.New("the ledger knows no pack of anything this plan needs; receive what you have first")

// Grow finds the largest pour of a plan that some free material allows, and what limits it. It weighs the plan anew at every size it tries, so that
// rounding on the scales, lye and what goes by bars are true. What it finds fits, and nothing larger does. A material that is not in free was
// never in stock, and counts as enough.
func Grow(p pour.Plan, shelf pour.Shelf, free map[lot.Material]lot.Quantity) (Largest, error) {
	sheet := pour.Weigh(p, shelf)
	if err := unmixable(&sheet); err != nil {
		return Largest{}, fmt.Errorf("find the largest batch: %w", err)
	}
	g := grower{plan: p, shelf: shelf, free: free, sizing: sizingOf(p), fullMM: max(p.Mould.FullMM(), sheet.Base.Size.HeightMM)}
	l := Largest{Sizing: g.sizing}
	known := false
	for _, n := range needs(&sheet, shelf) {
		if _, is := free[n.Material]; is {
			known = true
		} else if n.Material != tap() {
			l.Unkept = append(l.Unkept, n.Name)
		}
	}
	if !known {
		return l, ErrNothingKept
	}
	l.Reach = g.reach(nil)
	if len(l.Limits) > 0 {
		l.Next = g.reach(l.Limits)
	}
	if !l.None {
		l.Plan = g.sizing.at(p, l.To)
		l.Sheet = pour.Weigh(l.Plan, shelf)
		if err := unmixable(&l.Sheet); err != nil {
			return l, fmt.Errorf("find the largest batch: there is enough for %g of %s, but so the plan cannot be: %w", l.To, l.Sizing.Label, err)
		}
	}
	return l, nil
}

// unmixable says why a plan cannot be weighed; nil: it can.
func unmixable(s *pour.Sheet) error {
	for _, w := range s.Warnings {
		if w.Code == "plan-fault" {
			return errors.New(w.Told())
		}
	}
	for _, b := range s.Batches() {
		if b.Refused.Masses != "" {
			return fmt.Errorf("%s: %s", b.Name, b.Refused.Masses)
		}
	}
	return nil
}

// needs is what a sheet wants of each material in all.
func needs(s *pour.Sheet, shelf pour.Shelf) []pour.MaterialNeed {
	var out []pour.MaterialNeed
	for _, n := range s.Needs(shelf) {
		at := slices.IndexFunc(out, func(x pour.MaterialNeed) bool { return x.Material == n.Material })
		if at < 0 {
			n.Name = cmp.Or(n.Name, n.Material.ID)
			out = append(out, n)
			continue
		}
		out[at].Q += n.Q
	}
	return out
}

// grower tries sizes of a plan.
type grower struct {
	plan   pour.Plan
	shelf  pour.Shelf
	free   map[lot.Material]lot.Quantity
	sizing Sizing
	fullMM float64 // the base may stand so high
}

// reach is the largest size there is enough for, leaving out of account what some limits say.
func (g grower) reach(but []Limit) Reach {
	low, high := g.sizing.least, g.sizing.most+1
	if lacks := g.lacks(low, but); len(lacks) > 0 {
		return Reach{None: true, Limits: lacks}
	}
	for high-low > 1 {
		mid := low + (high-low)/2
		if len(g.lacks(mid, but)) > 0 {
			high = mid
		} else {
			low = mid
		}
	}
	low = g.lookOn(low, but)
	r := Reach{To: g.sizing.of(low)}
	if low < g.sizing.most {
		r.Limits = g.lacks(low+1, but)
	}
	return r
}

// mostOn bounds how far is looked on.
const mostOn = 400

// lookOn goes on from a size that fits to larger ones. Oils are rounded so that they sum to the batch's, and so a batch that is a little larger may want a
// step of the scales less of one of them. Once something lacks by more than two steps, rounding does not bring it back.
func (g grower) lookOn(fits int, but []Limit) int {
	step, _ := lot.Weighed(max(g.plan.Show.ScaleStepG, g.plan.Show.LyeStepG))
	last := min(fits+mostOn, g.sizing.most)
	for at := fits + 1; at <= last; at++ {
		lacks := g.lacks(at, but)
		if len(lacks) == 0 {
			fits = at
		}
		if slices.ContainsFunc(lacks, func(l Limit) bool { return l.Rim || l.Need-l.Free > 2*step }) {
			return fits
		}
	}
	return fits
}

// lacks says what there is too little of for a number of steps.
func (g grower) lacks(steps int, but []Limit) []Limit {
	sheet := pour.Weigh(g.sizing.at(g.plan, g.sizing.of(steps)), g.shelf)
	var out []Limit
	const slack = 1e-6 // mm, so that a base that is as high as it may be is not higher
	if sheet.Base.Size.HeightMM > g.fullMM+slack {
		out = append(out, Limit{Rim: true})
	}
	for _, n := range needs(&sheet, g.shelf) {
		if there, kept := g.free[n.Material]; kept && n.Q > there {
			out = append(out, Limit{Material: n.Material, Name: n.Name, Need: n.Q, Free: there})
		}
	}
	return slices.DeleteFunc(out, func(l Limit) bool {
		return slices.ContainsFunc(but, func(b Limit) bool { return b.Rim == l.Rim && b.Material == l.Material })
	})
}
