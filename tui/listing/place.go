// Package listing is what the full-screen pages with a list have in common: where their parts stand, the cursor of the list, the search that
// narrows it, and what is told of the chosen entry, line by line, with marks among the lines that can be chosen.
package listing

import (
	"fmt"
	"image"

	"pourbench/tui/screen"
)

// The smallest screen with a list on it, and the width from which the list and what is chosen of it stand beside each other.
const (
	MinW  = 44
	MinH  = 12
	wideW = 100
)

// Place is where the parts of a page stand. What is not there is empty.
type Place struct {
	Title, Search, List, Chosen, Whole, Status, Footer image.Rectangle

	TooSmall bool
}

// Places lays a page out: the list and what is chosen of it beside each other where both have room, else the one that has the keys; what takes
// the whole page has the place of both.
func Places(w, h int, inside, whole bool) Place {
	if w < MinW || h < MinH {
		return Place{TooSmall: true}
	}
	const top, feet = 2, 2
	p := Place{
		Title: image.Rect(0, 0, w, 1), Search: image.Rect(0, 1, w, top),
		Status: image.Rect(0, h-feet, w, h-1), Footer: image.Rect(0, h-1, w, h),
	}
	body := image.Rect(0, top, w, h-feet)
	switch {
	case whole:
		p.Whole = body
	case w < wideW && inside:
		p.Chosen = body
	case w < wideW:
		p.List = body
	default:
		p.List, p.Chosen = body, body
		p.List.Max.X = listW(w)
		p.Chosen.Min.X = p.List.Max.X
	}
	return p
}

// listW is the width of a list that has what is chosen of it beside it: a little more than half, as far as that is of use.
func listW(w int) int {
	const most = 110
	return min(w*11/20, most)
}

// Within is the place inside a box's border, with a blank column at either side.
func Within(r image.Rectangle) image.Rectangle {
	if r.Empty() {
		return r
	}
	return image.Rect(r.Min.X+2, r.Min.Y+1, r.Max.X-2, r.Max.Y-1)
}

// Rows is how many entries of the list are in sight, under its head.
func (p Place) Rows() int { return max(Within(p.List).Dy()-1, 1) }

// DrawTooSmall says what room a page wants, and what was said last.
func DrawTooSmall(a screen.Area, page, status string) {
	wants := fmt.Sprintf("%s wants %d × %d; there are %d × %d", page, MinW, MinH, a.W(), a.H())
	for y, l := range append(screen.Wrap(wants, a.W()), screen.Wrap(status, a.W())...) {
		a.Text(0, y, l, screen.Style{})
	}
}
