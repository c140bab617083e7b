package tui

import (
	"image"

	"pourbench/tui/picture"
)

// easel is where picture, kept picture, legend and caption stand, in screen coordinates.
type easel struct {
	in        image.Rectangle // all of it, without the border
	now, kept image.Rectangle // the pictures; kept is empty while nothing is compared
	legend    image.Rectangle // empty where there is no room
	caption   image.Rectangle
}

// The room around a picture.
const (
	figuresH  = 3  // a title above and two lines of figures below each of two pictures
	legendGap = 2  // between picture and legend
	leastPicW = 16 // below this a legend beside the picture costs too much
)

// nearWhole is how much of its size a picture may keep for a legend to be worth it on the other stations.
const nearWhole = 0.85

// faceRect is the border of the panel the face stands in; it says false where no face is in view.
func (m *model) faceRect() (image.Rectangle, bool) {
	switch {
	case m.placed.TooSmall:
		return image.Rectangle{}, false
	case m.atPicture():
		return m.placed.Find(m.here().Picture)
	case !m.placed.Face.Empty():
		return m.placed.Face, true
	case m.studio.peek:
		return m.peekRect(), true
	}
	return image.Rectangle{}, false
}

// peekH is the height of the face over the bench, its border and caption included.
const peekH = 15

// leastPeekW is the width in which the border of that face says which key puts it away.
const leastPeekW = 27

// peekRect is where the face stands over the bench: at the right, no wider than its picture, away from the line of the cursor.
func (m *model) peekRect() image.Rectangle {
	bottom := m.placed.Warnings.Min.Y
	h := min(peekH, bottom-2)
	wmm, hmm := m.viewMM(image.Rectangle{})
	w := min(max(int(2*float64(h-3)*wmm/hmm)+4, leastPeekW), m.w/2)
	r := image.Rect(m.w-w, bottom-h, m.w, bottom)
	at, ok := m.cursorOf()
	if !ok || at.Y < r.Min.Y {
		return r
	}
	if above := at.Y - 2; above > bottom-at.Y-1 {
		return image.Rect(r.Min.X, 2, r.Max.X, 2+min(h, above))
	}
	r.Min.Y = at.Y + 1
	return r
}

// easel lays the panel of the face out; it says false where no face is in view.
func (m *model) easel() (easel, bool) {
	r, ok := m.faceRect()
	if !ok || r.Dx() < 6 || r.Dy() < 4 {
		return easel{}, false
	}
	e := easel{in: r.Inset(1)}
	room := e.in
	if room.Dy() >= 5 {
		e.caption = image.Rect(room.Min.X, room.Max.Y-1, room.Max.X, room.Max.Y)
		room.Max.Y--
	}
	if m.studio.kept != nil && m.atPicture() {
		room.Min.Y, room.Max.Y = room.Min.Y+1, room.Max.Y-figuresH+1
		e.now, e.kept = m.pair(room)
		return e, true
	}
	e.now, e.legend = m.besideOrBelow(room)
	return e, true
}

// pair is where two pictures stand that are compared: beside each other where that leaves them nearly the size of one, else one in the
// place of the other.
func (m *model) pair(room image.Rectangle) (now, kept image.Rectangle) {
	half := room.Dx() / 2
	now, kept = room, room
	kept.Max.X, now.Min.X = room.Min.X+half-1, room.Min.X+half+1
	switch {
	case m.scale(kept) >= nearWhole*m.scale(room):
		return now, kept
	case m.studio.other:
		return image.Rectangle{}, room
	}
	return room, image.Rectangle{}
}

// scale is how large what the view shows gets in a room, pixels per mm.
func (m *model) scale(room image.Rectangle) float64 {
	wmm, hmm := m.viewMM(room)
	return min(float64(room.Dx())/wmm, 2*float64(room.Dy())/hmm)
}

// besideOrBelow puts the legend beside the picture or below it, whichever leaves the picture larger. On the other stations, whose grids
// name the jugs already, the legend gets little more than the room that the picture leaves over.
func (m *model) besideOrBelow(room image.Rectangle) (pic, legend image.Rectangle) {
	scale := func(r image.Rectangle) float64 {
		if r.Dx() < leastPicW || r.Dy() < 4 {
			return 0
		}
		return m.scale(r)
	}
	w, lines := m.legendW(true), len(m.legend())
	flow := m.legendFlow(room.Dx())
	beside, below := room, room
	beside.Max.X -= w + legendGap
	below.Max.Y -= flow.rows + 1
	a, b, whole := scale(beside), scale(below), scale(room)
	if least := whole * nearWhole; !m.atPicture() && a < least && b < least || a == 0 && b == 0 {
		return room, image.Rectangle{}
	}
	if b > a {
		_, hmm := m.viewMM(below)
		used := min(int(b*hmm/2+0.5), below.Dy())
		below.Max.Y = below.Min.Y + used
		return below, image.Rect(room.Min.X+1, below.Max.Y+1, room.Max.X, below.Max.Y+1+flow.rows)
	}
	wmm, _ := m.viewMM(beside)
	used := min(int(a*wmm+0.5)+2, beside.Dx()) // no wider than the picture, so that the legend stands at its side
	left := room.Min.X + (room.Dx()-used-legendGap-w)/2
	pic = image.Rect(left, room.Min.Y, left+used, room.Max.Y)
	top := room.Min.Y + max((room.Dy()-lines)/2, 0)
	return pic, image.Rect(pic.Max.X+legendGap, top, pic.Max.X+legendGap+w, min(top+lines, room.Max.Y))
}

// viewMM is the size of what the view shows in a room, mm: for all bars, of the sheet of them; for a cut along the loaf, of its lengths as they
// are shown.
func (m *model) viewMM(room image.Rectangle) (w, h float64) {
	box, peak := m.studio.design.Recipe.Box, m.studio.peak.mm
	wide, high := m.studio.design.Recipe.FaceMM()
	view := picture.Bar
	if m.atPicture() {
		view = m.studio.view
	}
	switch view {
	case picture.Bars:
		return picture.BarsMM(len(m.studio.design.Bars), wide, high+peak, room.Dx(), room.Dy())
	case picture.Long:
		if m.studio.design.Recipe.Round {
			return box.W, box.H
		}
		l := picture.LengthsFor(box.L, box.H+peak, room.Dx(), room.Dy())
		return box.L / float64(l.N), (box.H + peak) * l.Tall * float64(l.N)
	case picture.Slice:
		return picture.SliceMM(m.studio.design.Recipe, m.studio.peak.mm, m.studio.design.Bars, m.studio.bar)
	case picture.Top, picture.Stands:
		return box.L, box.W
	default:
		return wide, high + peak
	}
}
