// Package swirl is a mould full of colours.
//
// It draws a script: every act becomes moves that either fill a slab of the mould or move what already lies in it, and every
// move keeps volume: it is the flow of a stream function that is zero on the walls. A picture is drawn by following each of its
// points backwards through the moves to the slab it was poured in. Because fills split a slab exactly and moves keep volume,
// every portion keeps its share without any fitting.
//
// Units: mm. x runs along the loaf from its marked end, y across it from the left wall and z up from the bottom. Portions are the
// script's jugs, by their place in the batch.
// The moves are a stylised picture of viscous batter, not fluid mechanics.
package swirl

import (
	"errors"
	"fmt"

	"pourbench/pour/script"
)

// MaxPortions is the greatest number of portions a recipe may have.
const MaxPortions = script.MostJugs

// Empty is the label of a point where nothing has been poured yet.
const Empty = -1

// ErrRecipe is wrapped by every error of [New]: the recipe cannot be poured.
var ErrRecipe = errors.New("the swirl cannot be drawn")

// Box is the batter in the mould, mm: L along the loaf, W across it, H from the bottom to the fill height.
type Box struct{ L, W, H float64 }

// Recipe is everything a picture depends on; equal recipes give equal pictures.
type Recipe struct {
	Script    script.Script // what is done; its jugs are the portions
	Thickness float64       // of the batter when poured: 0 just emulsified, 1 too thick to run
	Box       Box           // every side 10 to 2000 mm
	Round     bool          // an upright tube: what lies in the corners of the box is not there, and bars are cut level
}

// FaceMM is how wide and how high the cut side of a bar is, mm.
func (r Recipe) FaceMM() (wide, high float64) {
	if r.Round {
		return r.Box.L, r.Box.W
	}
	return r.Box.W, r.Box.H
}

// Equal says whether two recipes give the same picture.
func (r Recipe) Equal(o Recipe) bool {
	return r.Thickness == o.Thickness && r.Box == o.Box && r.Round == o.Round && r.Script.Brief.Equal(o.Script.Brief)
}

// Swirl is a mould poured by a recipe, or part of it. It never changes, so it may be shared between goroutines.
type Swirl struct {
	recipe Recipe
	acts   int // how many acts of the script are done
	ops    []op
	level  float64 // mm, how high the batter stands after ops
	stream *stream // what leaves the pot; nil where there is none
}

// New works out the moves of a pour. It refuses a recipe it cannot pour with an error that wraps [ErrRecipe].
func New(r Recipe) (*Swirl, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	b := newBuilder(r)
	b.pour()
	return &Swirl{recipe: r, acts: len(r.Script.Acts), ops: b.ops, level: b.level, stream: b.stream}, nil
}

func (r Recipe) check() error {
	if len(r.Script.Acts) == 0 {
		return fmt.Errorf("%w: its script has no acts; make one of a plan's technique and jugs", ErrRecipe)
	}
	if !(r.Thickness >= 0 && r.Thickness <= 1) {
		return fmt.Errorf("%w: the thickness is %g; use 0 (thin) to 1 (thick)", ErrRecipe, r.Thickness)
	}
	for _, side := range [...]float64{r.Box.L, r.Box.W, r.Box.H} {
		if !(side >= 10 && side <= 2000) {
			return fmt.Errorf("%w: a side of the batter is %g mm; use 10 to 2000 mm", ErrRecipe, side)
		}
	}
	return nil
}

// Acts returns how many acts of the script are done.
func (s *Swirl) Acts() int { return s.acts }

// LevelMM returns how high the batter stands, mm; the box's height once the pour is done.
func (s *Swirl) LevelMM() float64 { return s.level }

// Upto returns the pour after its first n acts; n is brought into 0 to the number of acts. It is for watching the pour grow.
func (s *Swirl) Upto(n int) *Swirl {
	n = max(0, min(n, s.acts))
	part := &Swirl{recipe: s.recipe, acts: n, stream: s.stream}
	for _, o := range s.ops {
		if o.act >= n {
			break
		}
		if o.slab != nil {
			part.level = o.slab.top
			o.slab = o.slab.upto(n)
		}
		part.ops = append(part.ops, o)
	}
	part.levelPiles()
	return part
}

// Label returns the portion at a point, or [Empty] above the batter; the point is brought inside the mould first.
// It is the plain, slow way that the fast pictures are tested against: draw pictures with [Swirl.Face].
func (s *Swirl) Label(x, y, z float64) int {
	p := vec3{clamp(x, 0, s.recipe.Box.L), clamp(y, 0, s.recipe.Box.W), clamp(z, 0, s.recipe.Box.H)}
	if z > s.level || len(s.ops) == 0 {
		return Empty
	}
	for i := len(s.ops) - 1; i >= 0; i-- {
		o := s.ops[i]
		if o.slab != nil && (i == 0 || p.z >= o.slab.floor(p.x)) {
			return o.slab.fill.label(p.x, p.y, p.z)
		}
		p = o.backwards(p)
	}
	return Empty
}

func clamp(v, low, high float64) float64 { return max(low, min(v, high)) }
