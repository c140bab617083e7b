// Package picture turns a swirl into terminal cells. A shot says what is looked at and how large; tracing it gives a plate, which knows
// portions but no colours; printing a plate with dyes gives cells ready to be drawn. There are no keys and no messages here.
package picture

import (
	"image"
	"slices"

	"pourbench/pour/relief"
	"pourbench/pour/swirl"
	"pourbench/tui/screen"
)

// View is what of the loaf is looked at.
type View int

// The views.
const (
	Bar    View = iota // the face of one bar
	Bars               // the faces of all bars
	Long               // a cut along the middle of the loaf
	Top                // the batter from above, without what stands on it
	Stands             // the loaf from above as it stands before the cut
	Slice              // the loaf with a bar sliced off, as it is shown to people
	Views  int  = iota
)

// String is what a view shows, in words.
func (v View) String() string {
	return [Views]string{"one bar", "all bars", "cut along the loaf", "the batter from above", "from above as it stands", "a bar sliced off"}[v]
}

// Whole is the number of acts of a pour that is done.
const Whole = -1

// Shot is everything a traced picture depends on. Colours are no part of it.
type Shot struct {
	Recipe  swirl.Recipe
	Stands  *relief.Recipe // what stands on it and sticks in it, as the view shows it; nil: nothing
	View    View
	Bar     int           // from 0, for [Bar] and [Slice]
	Bars    []swirl.Bar   // along the loaf, one or more
	Cuts    []float64     // mm from the marked end, for [Stands]
	Done    int           // acts of the pour that are done, or [Whole]
	W, H    int           // the cells there is room for
	Mosaic  screen.Mosaic // what a cell is divided into
	Letters bool          // traced for one letter or sign in a cell, not for pixels
	Flat    bool          // the icing's portions are wanted, not its shades: for letters and small palettes, which have half blocks
	Grain   image.Point   // real pixels of a cell, across and down; zero: those of the mosaic
	Kept    *relief.Kept  // what was worked out for other shots, and is for this; the plate is the same without
}

// Same says whether another shot gives the same plate.
func (s Shot) Same(o Shot) bool {
	return s.Recipe.Equal(o.Recipe) && s.View == o.View && s.Bar == o.Bar && s.Done == o.Done &&
		s.W == o.W && s.H == o.H && s.Mosaic == o.Mosaic && s.Letters == o.Letters && s.Flat == o.Flat && s.Grain == o.Grain &&
		s.Stands.Equal(o.Stands) && slices.Equal(s.Bars, o.Bars) && slices.Equal(s.Cuts, o.Cuts)
}

// at is a bar of the loaf; one that is not there is the last or the first.
func (s Shot) at(bar int) swirl.Bar {
	if len(s.Bars) == 0 {
		return swirl.Bar{To: s.Recipe.Box.L}
	}
	return s.Bars[min(max(bar, 0), len(s.Bars)-1)]
}
