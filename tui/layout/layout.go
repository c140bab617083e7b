// Package layout says where everything on the screen stands. It is a pure function of what is asked; nothing is drawn here.
package layout

import (
	"image"
	"slices"
)

// The smallest screen the bench works on.
const (
	MinW = 60
	MinH = 16
)

// The widths from which a second and a third column of panels pay.
const (
	twoColumnsW   = 108
	threeColumnsW = 168
)

// faceBesideW is the width from which the station of the swirl shows its picture beside the panel in focus.
const faceBesideW = 76

// The height from which the warnings get a panel of their own.
const warningsH = 30

// ID names a panel.
type ID string

// Warnings is the panel of the warnings, which stands below the others on every station where it has room.
const Warnings ID = "warnings"

// Boxed says whether the warnings have room for a panel of their own.
func Boxed(h int) bool { return h >= warningsH }

// Panel is what a layout knows of a panel.
type Panel struct {
	ID    ID
	Want  int  // rows it would fill, without its border
	Least int  // rows it can do with beside others
	Stays bool // of the first of a column: it stands above every page of the others
}

// Ask is what a layout depends on.
type Ask struct {
	W, H     int
	Columns  [3][]Panel // the station's panels, the most important first; narrow screens put columns one below the other
	Picture  ID         // the panel of the picture, where the station has one; elsewhere a face is pinned beside the panels
	Focus    ID
	Warnings int  // lines the warnings would fill
	Reading  bool // the warnings have the keys, and may take up to half of the screen
}

// Placed is a panel and its rectangle, border included.
type Placed struct {
	ID   ID
	Rect image.Rectangle
}

// Layout is the rectangle of everything on the screen.
type Layout struct {
	TooSmall bool
	Title    image.Rectangle // name and totals
	Tabs     image.Rectangle
	Panels   []Placed
	Face     image.Rectangle // the face of a bar beside the station's own panels; empty on narrow screens
	Warnings image.Rectangle // a bordered panel, or one line
	Boxed    bool            // the warnings have a border
	Status   image.Rectangle
	Footer   image.Rectangle
}

// Split divides the screen.
func Split(ask Ask) Layout {
	if ask.W < MinW || ask.H < MinH {
		return Layout{TooSmall: true}
	}
	l := Layout{
		Title:  image.Rect(0, 0, ask.W, 1),
		Tabs:   image.Rect(0, 1, ask.W, 2),
		Status: image.Rect(0, ask.H-2, ask.W, ask.H-1),
		Footer: image.Rect(0, ask.H-1, ask.W, ask.H),
	}
	top, bottom := 2, ask.H-2
	warn := 1
	if Boxed(ask.H) {
		most := (ask.H-warningsH)/4 + 4
		if ask.Reading {
			most = ask.H/2 - frame
		}
		l.Boxed = true
		warn = min(max(ask.Warnings, 2), most) + frame
	}
	l.Warnings = image.Rect(0, bottom-warn, ask.W, bottom)
	body := image.Rect(0, top, ask.W, bottom-warn)
	cs := columns(body, ask)
	l.Face = pin(cs, ask)
	for _, c := range cs {
		l.Panels = append(l.Panels, stack(c, ask.Focus)...)
	}
	return l
}

type column struct {
	rect   image.Rectangle
	panels []Panel
}

// columns deals a station's panels to as many columns as the width carries.
func columns(body image.Rectangle, ask Ask) []column {
	p := ask.Columns
	switch {
	case ask.Picture != "" && ask.W >= threeColumnsW && tall(slices.Concat(p[1], p[2])) <= body.Dy(): // none needs a column of its own: the picture takes its room
		return inTwo(body, 66, p)
	case ask.W >= threeColumnsW:
		first, second := thirds(ask)
		a, b := body.Min.X+body.Dx()*first/100, body.Min.X+body.Dx()*second/100
		return []column{
			{image.Rect(body.Min.X, body.Min.Y, a, body.Max.Y), p[0]},
			{image.Rect(a, body.Min.Y, b, body.Max.Y), p[1]},
			{image.Rect(b, body.Min.Y, body.Max.X, body.Max.Y), p[2]},
		}
	case ask.W >= twoColumnsW:
		return inTwo(body, 64, p)
	case ask.Picture != "" && ask.W >= faceBesideW && ask.Focus != ask.Picture: // the picture stays in sight while its numbers change
		return inTwo(body, 45, p)
	default:
		return []column{{body, slices.Concat(p[0], p[1], p[2])}}
	}
}

// thirds is where the first and the second of three columns end, percent of the width: the panels get what their text takes, the
// picture the rest.
func thirds(ask Ask) (first, second int) {
	switch {
	case ask.Picture != "":
		return 42, 69
	case len(ask.Columns[1]) == 0: // a face stands there
		return 43, 75
	default:
		return 44, 71
	}
}

// inTwo gives the first column a percentage of the width and the others the rest.
func inTwo(body image.Rectangle, percent int, p [3][]Panel) []column {
	a := body.Min.X + body.Dx()*percent/100
	return []column{
		{image.Rect(body.Min.X, body.Min.Y, a, body.Max.Y), p[0]},
		{image.Rect(a, body.Min.Y, body.Max.X, body.Max.Y), slices.Concat(p[1], p[2])},
	}
}

// leastPinnedH is the height of a column from which the face of a bar has room above its panels.
const leastPinnedH = 18

// pin takes room for the face of a bar: a column without panels, or the top of the last one.
func pin(cs []column, ask Ask) image.Rectangle {
	if len(cs) < 2 || ask.Picture != "" {
		return image.Rectangle{}
	}
	for _, c := range cs {
		if len(c.panels) == 0 {
			return c.rect
		}
	}
	last := &cs[len(cs)-1]
	w, h := last.rect.Dx(), last.rect.Dy()
	if h < leastPinnedH {
		return image.Rectangle{}
	}
	face := last.rect
	face.Max.Y = face.Min.Y + max(min(w*2/5+3, h*11/20), min(w*3/5+3, h-wanted(last.panels)))
	last.rect.Min.Y = face.Max.Y
	return face
}

// wanted is the height in which panels below each other show all they have.
func wanted(panels []Panel) int {
	h := 0
	for _, p := range panels {
		h += p.Want + frame
	}
	return h
}

// Find returns the rectangle of a panel, if it is on the screen.
func (l Layout) Find(id ID) (image.Rectangle, bool) {
	if id == Warnings {
		return l.Warnings, l.Boxed
	}
	for _, x := range l.Panels {
		if x.ID == id {
			return x.Rect, true
		}
	}
	return image.Rectangle{}, false
}

// Hit returns the panel at a point.
func (l Layout) Hit(at image.Point) (Placed, bool) {
	for _, x := range l.Panels {
		if at.In(x.Rect) {
			return x, true
		}
	}
	if l.Boxed && at.In(l.Warnings) {
		return Placed{Warnings, l.Warnings}, true
	}
	return Placed{}, false
}
