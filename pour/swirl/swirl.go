// Package swirl is a mould full of colours.
//
// A technique is a list of steps of the pour. Each step either fills a slab of the mould or moves what
// already lies in it, and every move keeps volume: it is the flow of a stream function that is zero on the walls.
// A picture is drawn by following each of its points backwards through the steps to the slab it was poured in.
// Because fills split a slab exactly and moves keep volume, every portion keeps its share without any fitting.
//
// Units: mm. x runs along the loaf, y across it and z up from the bottom. Portions are numbered in pour order from 0.
// The moves are a stylised picture of viscous batter, not fluid mechanics.
package swirl

import (
	"errors"
	"fmt"
	"math"
)

// MaxPortions is the greatest number of portions a recipe may have.
const MaxPortions = 32

// Empty is the label of a point above the batter poured so far.
const Empty = -1

// ErrRecipe is wrapped by every error of [New]: the recipe cannot be poured.
var ErrRecipe = errors.New("the swirl cannot be drawn")

// Box is the batter in the mould, mm: L along the loaf, W across it, H from the bottom to the fill height.
type Box struct{ L, W, H float64 }

// Recipe is everything a picture depends on; equal recipes give equal pictures.
type Recipe struct {
	Technique Technique
	Shares    []float64 // fractions of the batter in pour order; they sum to 1 within 0.001
	Thickness float64   // of the batter when poured: 0 just emulsified, 1 too thick to run
	Passes    int       // pours, strokes or drops; 0 is the technique's own, at most [Technique.MostPasses] is used
	Turns     float64   // turns of the tool; 0 is the technique's own, at most 8 is used
	HeightMM  float64   // poured from, above the batter; 0 is the technique's own, at most 600 is used
	Seed      int64     // which of the many faces
	Box       Box       // every side 10 to 2000 mm
}

// mostOff is the most by which a share may be known to miss the recipe's, as a fraction of the batter.
const mostOff = 0.004

// Swirl is a mould poured by a recipe, or part of it. It never changes, so it may be shared between goroutines.
type Swirl struct {
	recipe Recipe
	ops    []op
	level  float64 // mm, how high the batter stands after ops
}

// New works out the steps of a pour. It refuses a recipe it cannot pour with an error that wraps [ErrRecipe].
func New(r Recipe) (*Swirl, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	r.Shares = append([]float64(nil), r.Shares...)
	sum := 0.0
	for _, v := range r.Shares {
		sum += v
	}
	for i := range r.Shares {
		r.Shares[i] /= sum
	}
	b := newBuilder(r)
	b.pour()
	if b.off > mostOff {
		return nil, fmt.Errorf("%w: with %d dollops a share would be %.1f points off; use more", ErrRecipe, b.Passes, 100*b.off)
	}
	return &Swirl{recipe: r, ops: b.ops, level: b.level}, nil
}

func (r Recipe) check() error {
	if !r.Technique.Known() {
		return fmt.Errorf("%w: technique %q is not known; use one of %v", ErrRecipe, r.Technique, Techniques())
	}
	if n := len(r.Shares); n < 1 || n > MaxPortions {
		return fmt.Errorf("%w: it has %d portions; use 1 to %d", ErrRecipe, n, MaxPortions)
	}
	sum := 0.0
	for i, v := range r.Shares {
		if !(v >= 0 && v <= 1.001) {
			return fmt.Errorf("%w: portion %d has a share of %g; use a fraction from 0 to 1", ErrRecipe, i, v)
		}
		sum += v
	}
	if math.Abs(sum-1) > 0.001 {
		return fmt.Errorf("%w: the shares sum to %g; make them sum to 1", ErrRecipe, sum)
	}
	if !(r.Thickness >= 0 && r.Thickness <= 1) {
		return fmt.Errorf("%w: the thickness is %g; use 0 (thin) to 1 (thick)", ErrRecipe, r.Thickness)
	}
	if r.Passes < 0 || !(r.Turns >= 0) || !(r.HeightMM >= 0) || math.IsInf(r.Turns+r.HeightMM, 0) {
		return fmt.Errorf("%w: passes %d, turns %g and height %g mm must not be negative or infinite; use 0 for the technique's own",
			ErrRecipe, r.Passes, r.Turns, r.HeightMM)
	}
	for _, side := range [...]float64{r.Box.L, r.Box.W, r.Box.H} {
		if !(side >= 10 && side <= 2000) {
			return fmt.Errorf("%w: a side of the batter is %g mm; use 10 to 2000 mm", ErrRecipe, side)
		}
	}
	return nil
}

// Recipe returns the recipe the swirl was poured by; its shares sum to 1 exactly as drawn.
func (s *Swirl) Recipe() Recipe {
	r := s.recipe
	r.Shares = append([]float64(nil), r.Shares...)
	return r
}

// LevelMM returns how high the batter stands, mm; the box's height once the pour is done.
func (s *Swirl) LevelMM() float64 { return s.level }

// Upto returns the pour after its first n steps; n is brought into 0 to the number of steps. It is for watching the pour grow.
func (s *Swirl) Upto(n int) *Swirl {
	n = max(0, min(n, len(s.ops)))
	part := &Swirl{recipe: s.recipe, ops: s.ops[:n]}
	for _, o := range part.ops {
		if o.slab != nil {
			part.level = o.slab.top
		}
	}
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
		if o.slab != nil && (p.z >= o.slab.bottom || i == 0) {
			return o.slab.fill.label(p.x, p.y, p.z)
		}
		p = o.backwards(p)
	}
	return Empty
}

func clamp(v, low, high float64) float64 { return max(low, min(v, high)) }
