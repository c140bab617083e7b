package dialog

import (
	"image"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Frame is the screen that dialogs stand on. Its last two lines are left free for what was said and for the keys.
type Frame struct {
	W, H int
	Keys *keys.Map // the keys that are bound
	Low  bool      // boxes stand low, so that what is above them stays in sight; else in the middle, a little above it
}

// feet is how many lines at the foot of the screen no dialog covers.
const feet = 2

// boxW is the width a box likes.
const boxW = 84

// box is where a box of at most a size stands.
func (f Frame) box(w, h int) image.Rectangle {
	w, h = max(min(w, f.W), 0), max(min(h, f.H-feet), 0)
	x, y := (f.W-w)/2, min((f.H-h)*2/5, f.H-feet-h)
	if f.Low {
		y = f.H - feet - h
	}
	return image.Rect(x, y, x+w, y+h)
}

// room is the width inside a box of the width that boxes like.
func (f Frame) room() int { return min(boxW, f.W-4) - 4 }

// inside is the place in a box that text stands in: within the border, with a blank column on either side.
func inside(r image.Rectangle) image.Rectangle {
	return image.Rect(r.Min.X+2, r.Min.Y+1, max(r.Max.X-2, r.Min.X+2), max(r.Max.Y-1, r.Min.Y+1))
}

// boxed clears a box, draws its border and title, and returns the area inside.
func boxed(a screen.Area, r image.Rectangle, title string, l look.Look) screen.Area {
	box := a.At(r)
	box.Clear()
	box.Box(l.Focus)
	box.Text(2, 0, screen.Clip(" "+title+" ", box.W()-4), l.Focus)
	return a.At(inside(r))
}
