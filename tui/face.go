package tui

import (
	"fmt"
	"image"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/keys"
	"pourbench/tui/picture"
	"pourbench/tui/screen"
)

// drawPinned draws the face beside or over the panels of the other stations.
func (m *model) drawPinned(a screen.Area) {
	r, ok := m.faceRect()
	if !ok || m.atPicture() {
		return
	}
	box := a.At(r)
	box.Clear()
	box.Box(m.look.Rule)
	title := " The face of a bar "
	if text, ok := m.cutText(); ok {
		title = " The " + text + " "
	}
	if m.placed.Face.Empty() {
		title = " Face, " + m.key(keys.ShowFace) + " puts it away "
	}
	box.Text(2, 0, screen.Clip(title, box.W()-4), m.look.Quiet)
	m.drawFace(a)
}

// drawFace draws the picture with its legend and caption, or two pictures that are compared. The area is the whole screen.
func (m *model) drawFace(a screen.Area) {
	e, ok := m.easel()
	if !ok {
		return
	}
	if m.studio.problem != "" {
		m.drawWhy(a.At(e.in), m.studio.problem)
		return
	}
	m.drawFrame(a.At(e.now), placeNow)
	if m.studio.kept != nil && m.atPicture() {
		m.drawFrame(a.At(e.kept), placeKept)
		m.drawCompared(a, e)
	}
	m.drawLegend(a.At(e.legend))
	a.At(e.caption).Text(1, 0, screen.Clip(m.caption(), e.caption.Dx()-2), m.look.Quiet)
}

func (m *model) drawWhy(a screen.Area, why string) {
	for i, l := range screen.Wrap(why, a.W()-2) {
		a.Text(1, i, l, m.look.Quiet)
	}
}

// drawFrame draws one picture. One of another size than its place, left from before a resize, is not drawn.
func (m *model) drawFrame(a screen.Area, place int) {
	f := &m.studio.mounts[place]
	switch {
	case a.W() < 1: // the other picture stands in its place
		return
	case f.why != "":
		m.drawWhy(a, f.why)
		return
	case f.print == nil || f.print.Plate.Shot.W != a.W() || f.print.Plate.Shot.H != a.H():
		return
	}
	if !m.drawCoat(a, place) {
		f.print.Draw(a)
	}
	plate := f.print.Plate
	tiles := plate.Tiles()
	if plate.Shot.View == picture.Bars {
		for _, t := range tiles {
			m.drawNumber(a, t)
		}
	}
	if plate.Shot.View == picture.Stands && len(tiles) == 1 {
		m.drawMarks(a, tiles[0].Rect, plate.Shot)
	}
	if plate.Shot.Done != picture.Whole && plate.Shot.View == picture.Bar && len(tiles) == 1 && !plate.Pot {
		m.drawMould(a, tiles[0].Rect)
	}
}

// drawNumber writes the number of a bar below its face.
func (m *model) drawNumber(a screen.Area, t picture.Tile) {
	text, st := fmt.Sprint(t.Bar+1), m.look.Quiet
	if t.Bar == m.studio.bar {
		text, st = "►"+text, m.look.Focus
	}
	a.Text((t.Rect.Min.X+t.Rect.Max.X-screen.Width(text))/2, t.Rect.Max.Y, text, st)
}

// drawMarks writes below the loaf where it is cut, and the bars' numbers between the cuts where they have room.
func (m *model) drawMarks(a screen.Area, r image.Rectangle, s picture.Shot) {
	column := func(mm float64) int {
		return min(r.Min.X+int(mm/s.Recipe.Box.L*float64(r.Dx())), r.Max.X-1)
	}
	for _, at := range s.Cuts {
		a.Text(column(at), r.Max.Y, "┴", m.look.Quiet)
	}
	for i, b := range s.Bars {
		text := fmt.Sprint(i + 1)
		if w := screen.Width(text); column(b.To)-column(b.From) > w {
			a.Text((column(b.From)+column(b.To)+1-w)/2, r.Max.Y, text, m.look.Quiet)
		}
	}
}

// drawMould draws walls and bottom round a pour that is under way.
func (m *model) drawMould(a screen.Area, r image.Rectangle) {
	for y := r.Min.Y; y < r.Max.Y; y++ {
		a.Text(r.Min.X-1, y, "║", m.look.Quiet)
		a.Text(r.Max.X, y, "║", m.look.Quiet)
	}
	a.Text(r.Min.X-1, r.Max.Y, "╚"+strings.Repeat("═", r.Dx())+"╝", m.look.Quiet)
}

// cutText names the face that is drawn of a slab, which goes through several bars side by side; false: it is that of one bar.
func (m *model) cutText() (string, bool) {
	cut := m.session.Sheet().Cut
	columns := len(cut.Columns())
	if len(cut.AcrossMM) == 0 || columns == 0 {
		return "", false
	}
	n := len(cut.Bars) / columns
	return fmt.Sprintf("cut through bars %d to %d", m.studio.bar*n+1, (m.studio.bar+1)*n), true
}

// caption says what the picture shows.
func (m *model) caption() string {
	parts := []string{fmt.Sprintf("bar %d of %d", m.studio.bar+1, m.bars())}
	if text, ok := m.cutText(); ok {
		parts[0] = fmt.Sprintf("%s of %d", text, m.session.Sheet().Bars.Count)
	}
	if m.atPicture() {
		if text := m.stepText(); text != "" {
			return text
		}
		if v := m.studio.view; v != picture.Bar {
			parts[0] = v.String()
			if v == picture.Bars {
				parts[0] = m.barsText()
			}
			if v == picture.Long {
				parts = append(parts, m.lengthsText()...)
			}
		}
		if m.studio.kept == nil {
			parts = append(parts, fmt.Sprintf("face %d", m.session.Plan().Swirl.Seed))
		}
	}
	if m.studio.weeks {
		parts = append(parts, "after some weeks")
	}
	return strings.Join(parts, ", ")
}

// barsText says which bars are shown side by side.
func (m *model) barsText() string {
	f := m.studio.mounts[placeNow].print
	if f == nil || len(f.Plate.Tiles()) == 0 || len(f.Plate.Tiles()) >= f.Plate.Bars {
		return picture.Bars.String()
	}
	tiles := f.Plate.Tiles()
	return fmt.Sprintf("bars %d to %d of %d", tiles[0].Bar+1, tiles[len(tiles)-1].Bar+1, f.Plate.Bars)
}

// lengthsText says how a cut along the loaf differs from the loaf's own shape.
func (m *model) lengthsText() (parts []string) {
	f := m.studio.mounts[placeNow].print
	if f == nil || f.Plate.Cut.N == 0 {
		return nil
	}
	if f.Plate.Cut.N > 1 {
		parts = append(parts, fmt.Sprintf("in %d lengths from the marked end", f.Plate.Cut.N))
	}
	if f.Plate.Cut.Tall > 1.05 {
		parts = append(parts, "heights × "+m.facts.Show.Number(f.Plate.Cut.Tall, 1))
	}
	return parts
}

// stepText is the step of the pour that is shown, in words; "" for a pour that is done.
func (m *model) stepText() string {
	f := m.studio.mounts[placeNow].print
	if f == nil || f.Plate.Shot.Done == picture.Whole {
		return ""
	}
	text := "the mould is empty"
	if f.Plate.Pot {
		text = "the pot from above"
	}
	if done := f.Plate.Shot.Done; done > 0 {
		text = m.session.Sheet().TellAct(pour.Base, done-1)
	}
	return fmt.Sprintf("step %d of %d  %s", f.Plate.Shot.Done, f.Plate.Steps, text)
}

// inPourOrder is the places of the base's jugs in the order they are poured.
func (m *model) inPourOrder() []int {
	var out []int
	for _, j := range m.studio.design.Recipe.Script.Brief.Order {
		if j < len(m.session.Sheet().Base.Jugs) {
			out = append(out, j)
		}
	}
	return out
}

// clickFace chooses the bar that was clicked on.
func (m *model) clickFace(at image.Point) {
	e, ok := m.easel()
	p := m.studio.mounts[placeNow].print
	if !ok || p == nil || p.Plate.Shot.View != picture.Bars {
		return
	}
	tiles := p.Plate.Tiles()
	if i := slices.IndexFunc(tiles, func(t picture.Tile) bool { return at.Sub(e.now.Min).In(t.Rect) }); i >= 0 {
		m.studio.bar = tiles[i].Bar
	}
}
