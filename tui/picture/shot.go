// Package picture turns a swirl into terminal cells. A shot says what is looked at and how large; tracing it gives a plate, which knows
// portions but no colours; printing a plate with dyes gives cells ready to be drawn. There are no keys and no messages here.
package picture

import (
	"image"
	"slices"

	"pourbench/pour/swirl"
)

// View is what of the loaf is looked at.
type View int

// The views.
const (
	Bar   View = iota // the face of one bar
	Bars              // the faces of all bars
	Long              // a cut along the middle of the loaf
	Top               // the loaf from above
	Views int  = iota
)

// String is what a view shows, in words.
func (v View) String() string {
	return [Views]string{"one bar", "all bars", "cut along the loaf", "from above"}[v]
}

// Whole is the number of acts of a pour that is done.
const Whole = -1

// Shot is everything a traced picture depends on. Colours are no part of it.
type Shot struct {
	Recipe  swirl.Recipe
	Icing   *swirl.IcingRecipe // on top of a pour that is done, but for the view from above; nil: none
	View    View
	Bar     int         // from 0, for [Bar]
	BarMM   float64     // thickness of a bar along the loaf
	Done    int         // acts of the pour that are done, or [Whole]
	W, H    int         // the cells there is room for
	Letters bool        // traced for one letter or sign in a cell, not for two pixels
	Flat    bool        // the icing's portions are wanted, not its shades: for letters and small palettes
	Grain   image.Point // pixels of a cell, across and down; zero: two half blocks
}

// Same says whether another shot gives the same plate.
func (s Shot) Same(o Shot) bool {
	return SameIcing(s.Icing, o.Icing) && s.Recipe.Equal(o.Recipe) && s.View == o.View && s.Bar == o.Bar && s.BarMM == o.BarMM && s.Done == o.Done &&
		s.W == o.W && s.H == o.H && s.Letters == o.Letters && s.Flat == o.Flat && s.Grain == o.Grain
}

// SameIcing says whether two recipes pipe the same icing.
func SameIcing(a, b *swirl.IcingRecipe) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Piping == b.Piping && a.Striped == b.Striped && a.WidthMM == b.WidthMM && a.MeanMM == b.MeanMM && a.Seed == b.Seed && slices.Equal(a.Shares, b.Shares)
}

// middle is the place along the loaf of the first cut side of a bar, mm, a little inside the bar.
func (s Shot) middle(bar int) float64 { return (float64(bar) + 0.5) * s.BarMM }
