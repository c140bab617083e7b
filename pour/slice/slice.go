// Package slice is the loaf as it is shown to people: cut through, the rest of it with its top, its long side and its cut face, and a bar that has
// been sliced off lying in front of it, on a level ground with soft shadows.
//
// Units: mm. The world's x runs along the loaf away from who looks, y to the right and z up from the ground. The picture is a parallel projection,
// so that equal lengths stay equal. Where everything lies and how the light falls is by eye, no source. What is seen on the faces is what the faces
// of [pour/swirl] show, and what stands on the loaf is the surface of [pour/relief]. The picture knows no colours: its stuffs are the portions of the
// base, by their place in the batch, and then the stuffs of what stands on it.
package slice

import (
	"context"
	"image"
	"math"

	"pourbench/pour/relief"
	"pourbench/pour/swirl"
)

// Scene is a loaf and a bar, ready to be drawn at any size. It never changes once it is made.
type Scene struct {
	poured   *swirl.Swirl
	recipe   swirl.Recipe
	on       *relief.Field // nil: nothing stands on it
	bar      swirl.Bar
	portions int
	peakMM   float64
	planed   swirl.Material
	turned   bool // the loaf is what lies before the bar, seen from its other end

	loaf, piece pose
	low, high   point2 // what the picture shows, mm right and up
}

// point2 is a place of the picture, mm to the right and up.
type point2 struct{ x, y float64 }

// New lays a loaf and one of its bars out. What stands on it may be nil.
func New(poured *swirl.Swirl, recipe swirl.Recipe, on *relief.Field, bar swirl.Bar) *Scene {
	s := &Scene{poured: poured, recipe: recipe, on: on, portions: len(recipe.Script.Brief.Shares)}
	if recipe.Round {
		s.on = nil
	}
	if s.on != nil {
		s.peakMM = s.on.PeakMM()
	}
	s.set(bar)
	return s
}

// Planed is the scene with a material on its flat sides, which only a fine picture shows; a scene has none at first.
func (s *Scene) Planed(m swirl.Material) *Scene {
	with := *s
	with.planed = m
	return &with
}

// SizeMM is how wide and how high the picture of a loaf and one of its bars is on which something stands so high, mm.
func SizeMM(recipe swirl.Recipe, peakMM float64, bar swirl.Bar) (w, h float64) {
	s := &Scene{recipe: recipe}
	if !recipe.Round {
		s.peakMM = peakMM
	}
	s.set(bar)
	return s.SizeMM()
}

// set lays loaf and bar out.
func (s *Scene) set(bar swirl.Bar) {
	long := s.length()
	s.bar.From, s.bar.To = min(max(bar.From, 0), long), min(max(bar.To, bar.From+1), long)
	s.turned = long-s.bar.To < s.bar.From
	s.lay()
	s.frame()
}

// length is how long the loaf is in the way it is cut into bars.
func (s *Scene) length() float64 {
	if s.recipe.Round {
		return s.recipe.Box.H
	}
	return s.recipe.Box.L
}

// SizeMM is how wide and how high the picture is, mm.
func (s *Scene) SizeMM() (w, h float64) { return s.high.x - s.low.x, s.high.y - s.low.y }

// Draft draws the scene w by h pixels with one look in each.
func (s *Scene) Draft(dst *relief.Picture, w, h int) {
	_ = s.draw(context.Background(), dst, w, h, false, func(int) {}) // nothing stops it
}

// Refine draws the scene w by h pixels with smooth edges, and tells of pixels as they are drawn. It stops early with ctx's error.
func (s *Scene) Refine(ctx context.Context, dst *relief.Picture, w, h int, tell func(n int)) error {
	return s.draw(ctx, dst, w, h, true, tell)
}

// How it is looked at and lit, by eye.
const (
	turnDeg   = 33 // from the axis of the loaf to the right
	abovDeg   = 33 // above the ground
	marginMM  = 13
	shadowMM  = 10 // more of it where the shadow falls
	gapMM     = 16 // between loaf and bar
	barTurn   = 14 // degrees the bar lies turned out of the loaf's way
	besideBar = 0.1
)

// towards is the direction to who looks; right and up are those of the picture.
func towards() (v, right, up vec) {
	sa, ca := math.Sincos(turnDeg * math.Pi / 180)
	sp, cp := math.Sincos(abovDeg * math.Pi / 180)
	return vec{-cp * ca, cp * sa, sp}, vec{sa, ca, 0}, vec{sp * ca, -sp * sa, cp}
}

// frame works out what the picture shows: all corners and a margin.
func (s *Scene) frame() {
	_, right, up := towards()
	s.low, s.high = point2{math.Inf(1), math.Inf(1)}, point2{math.Inf(-1), math.Inf(-1)}
	for _, p := range [2]*pose{&s.loaf, &s.piece} {
		for k := range 8 {
			c := p.out(p.corner(k))
			x, y := right.dot(c), up.dot(c)
			s.low, s.high = point2{min(s.low.x, x), min(s.low.y, y)}, point2{max(s.high.x, x), max(s.high.y, y)}
		}
	}
	s.low.x, s.low.y = s.low.x-marginMM, s.low.y-marginMM
	s.high.x, s.high.y = s.high.x+marginMM+shadowMM, s.high.y+marginMM
}

// Fit is the largest picture of the scene in w by h pixels, in the middle of them.
func (s *Scene) Fit(w, h int) image.Rectangle {
	mmW, mmH := s.SizeMM()
	scale := min(float64(w)/mmW, float64(h)/mmH)
	pw, ph := max(1, int(mmW*scale)), max(1, int(mmH*scale))
	x, y := (w-pw)/2, (h-ph)/2
	return image.Rect(x, y, x+pw, y+ph)
}
