package tui

import (
	"context"
	"io"
	"os"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/picture"
	"pourbench/tui/pixels"
	"pourbench/tui/screen"
)

// gloss is the pictures in real pixels, on a terminal that draws them: each lies over the print of a mount once the hand has rested.
type gloss struct {
	terminal pixels.Terminal
	numbers  *pixels.Numbers
	over     [places]coat
}

// coat is a picture in real pixels of one print. It shows as long as that print does: whatever is drawn anew is drawn in cells first.
type coat struct {
	of      *picture.Print
	picture pixels.Picture
}

// Messages of the pictures in real pixels.
type (
	restedMsg struct{ place, ticket int } // the hand has rested on a picture
	glossMsg  struct {                    // a picture in real pixels is ready to be sent
		place, ticket int
		coat          coat
		sequence      string
		err           error
	}
	coatedMsg struct { // it was sent
		place, ticket int
		coat          coat
	}
)

// rest is how long nothing must have changed before a picture is drawn in real pixels: by eye, longer than between two keys.
const rest = 350 * time.Millisecond

func newGloss(way string) gloss {
	return gloss{terminal: pixels.Terminal{Way: way}, numbers: pixels.NumbersFor(os.Getpid())}
}

// askPixels asks the terminal what it can draw, once it is known to have true colour.
func (m *model) askPixels() tea.Cmd {
	if m.studio.depth != picture.True {
		return nil
	}
	return raw(m.studio.gloss.terminal.Ask())
}

// raw sends a sequence as it is; nothing where it is empty.
func raw(sequence string) tea.Cmd {
	if sequence == "" {
		return nil
	}
	return tea.Raw(sequence)
}

// awaitRest waits until the hand has rested on a picture that was drawn with smooth edges.
func (m *model) awaitRest(place int) tea.Cmd {
	f := &m.studio.mounts[place]
	if _, ok := m.studio.gloss.terminal.Cell(); !ok || f.shot.Letters || f.dye.Depth != picture.True || f.dye.Ground.A == 0 || m.studio.play.running {
		return nil
	}
	if f.shot.W > pixels.MostCells || f.shot.H > pixels.MostCells {
		return nil
	}
	ticket := f.ticket
	return tea.Tick(rest, func(time.Time) tea.Msg { return restedMsg{place, ticket} })
}

// rested has a picture drawn in real pixels, beside the keyboard.
func (m *model) rested(msg restedMsg) tea.Cmd {
	f := &m.studio.mounts[msg.place]
	cell, ok := m.studio.gloss.terminal.Cell()
	if !ok || msg.ticket != f.ticket || f.stop == nil || f.print == nil {
		return nil
	}
	f.stop() // what was worked out for the print is done
	ctx, stop := context.WithCancel(context.Background())
	f.stop = stop
	shot, dye, way := f.shot, f.dye, m.studio.gloss.terminal.Way
	shot.Grain = picture.GrainFor(cell, shot.W, shot.H)
	c := coat{of: f.print, picture: pixels.Picture{ID: m.studio.gloss.numbers.Next(msg.place)}}
	for _, t := range f.print.Plate.Tiles() {
		c.picture.Cells = append(c.picture.Cells, t.Rect)
	}
	return func() tea.Msg {
		sequence, err := developPixels(ctx, shot, dye, c.picture.ID, way)
		return glossMsg{place: msg.place, ticket: msg.ticket, coat: c, sequence: sequence, err: err}
	}
}

// developPixels draws a shot in real pixels and says what to send. It stops early with ctx's error.
func developPixels(ctx context.Context, shot picture.Shot, dye picture.Dye, id int, way string) (string, error) {
	draft, err := picture.Draft(shot)
	if err != nil {
		return "", err
	}
	fine, err := draft.Refine(ctx)
	if err != nil {
		return "", err
	}
	img, err := fine.Image(ctx, dye)
	if err != nil {
		return "", err
	}
	return pixels.Send(img, id, shot.W, shot.H, way)
}

// glossed sends a picture; one that is not waited for any more, or could not be drawn, leaves the cells as they are.
func (m *model) glossed(msg glossMsg) tea.Cmd {
	if msg.err != nil || msg.ticket != m.studio.mounts[msg.place].ticket {
		return nil
	}
	return tea.Sequence(tea.Raw(msg.sequence), func() tea.Msg { return coatedMsg{msg.place, msg.ticket, msg.coat} })
}

// coated shows a picture that the terminal holds now.
func (m *model) coated(msg coatedMsg) {
	if msg.ticket == m.studio.mounts[msg.place].ticket {
		m.studio.gloss.over[msg.place] = msg.coat
	}
}

// drawCoat draws the picture in real pixels that lies over a print; false where none does.
func (m *model) drawCoat(a screen.Area, place int) bool {
	c := &m.studio.gloss.over[place]
	if c.of == nil || c.of != m.studio.mounts[place].print {
		return false
	}
	c.picture.Draw(a)
	return true
}

// hear takes what a terminal says of itself. What it can draw may only be known now: then the pictures on show are drawn in real pixels.
func (m *model) hear(msg tea.Msg) tea.Cmd {
	t := &m.studio.gloss.terminal
	before, _ := t.Cell()
	t.Hear(msg)
	if now, _ := t.Cell(); now == before {
		return nil
	}
	return m.back()
}

// forget lets the terminal forget the pictures it was sent, at the very end, whatever ended the bench.
func (g *gloss) forget(out io.Writer) {
	_, _ = io.WriteString(out, g.numbers.Forget(g.terminal.Way)) // a terminal that is gone has forgotten them
}

// parted lets the terminal forget the pictures it was sent and then does something that gives it away: suspends, pours.
func (m *model) parted(then tea.Cmd) tea.Cmd {
	m.studio.gloss.over = [places]coat{}
	forget := raw(m.studio.gloss.numbers.Forget(m.studio.gloss.terminal.Way))
	if forget == nil {
		return then
	}
	return tea.Sequence(forget, then)
}

// back has the pictures sent again once the terminal is the bench's own.
func (m *model) back() tea.Cmd {
	return tea.Batch(m.awaitRest(placeNow), m.awaitRest(placeKept))
}
