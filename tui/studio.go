package tui

import (
	"context"
	"image"
	"image/color"
	"strings"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/relief"
	"pourbench/tui/look"
	"pourbench/tui/picture"
	"pourbench/tui/screen"
)

// studio is how the swirl is looked at, and what was drawn of it.
type studio struct {
	view    picture.View
	bar     int // from 0
	weeks   bool
	bare    bool // real pixels in flat colours
	letters bool
	other   bool          // of two pictures that have no room beside each other the kept one is on show
	mosaic  screen.Mosaic // what a cell is divided into, in true colour
	peek    bool          // the face stands over the bench, on a screen without room beside it
	depth   picture.Depth
	ground  color.NRGBA // of the terminal; clear until it has answered
	judge   *colour.Judge
	play    play
	gloss   gloss

	design   pour.Drawing
	peak     peak
	problem  string // why there is no picture
	kept     *kept
	mounts   [places]mount
	plates   []*picture.Plate // traced lately, the newest last
	measured measured
}

// The places a picture can stand in.
const (
	placeNow  = 0
	placeKept = 1
	places    = 2
)

// mount is one place for a picture: what is wanted there and what is drawn. The ticket tells the picture that is waited for from stale ones.
type mount struct {
	shot   picture.Shot
	dye    picture.Dye
	ticket int
	stop   context.CancelFunc // of the work for the ticket; nil: nothing is wanted
	print  *picture.Print
	why    string // why there is none
}

// printedMsg brings a picture for a place.
type printedMsg struct {
	place, ticket int
	print         *picture.Print
	err           error
}

// cached is how many plates are kept: enough to step through the bars of a loaf and back.
const cached = 24

// newStudio is a studio in true colour, until the terminal has answered, of cells of so many pixels.
func newStudio(way, cells string) studio {
	mosaic, ok := screen.Divided(cells)
	if !ok {
		mosaic = screen.Quarters
	}
	return studio{mosaic: mosaic, judge: colour.NewJudge(), play: play{done: picture.Whole}, gloss: newGloss(way), peak: peak{kept: new(relief.Kept)}}
}

// onGround takes the terminal's background.
func (s *studio) onGround(c color.Color) {
	if c != nil {
		r, g, b, _ := c.RGBA()
		s.ground = color.NRGBA{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8), A: 255}
	}
}

// setDepth takes how many colours the terminal has.
func (s *studio) setDepth(p colorprofile.Profile) {
	switch p {
	case colorprofile.TrueColor:
		s.depth = picture.True
	case colorprofile.ANSI256:
		s.depth = picture.Many
	case colorprofile.ANSI:
		s.depth = picture.Few
	default:
		s.depth = picture.Plain
	}
}

// settleDesign brings the design in step with the sheet. While the clock's figures and the browned colours are worked out again, those
// before stand in, so that the picture does not jump twice.
func (m *model) settleDesign() {
	sheet := *m.session.Sheet()
	d, err := sheet.Drawing()
	if err != nil {
		m.studio.problem = reason(err)
		return
	}
	m.studio.problem = ""
	before := m.studio.design
	if !sheet.Timed && len(before.Palette) > 0 {
		d.Recipe.Thickness = before.Recipe.Thickness
		for _, pair := range [...][2]*relief.Recipe{{d.Stands, before.Stands}, {d.Above, before.Above}} {
			if now, then := pair[0], pair[1]; now != nil && then != nil {
				now.Icing.Sinks = then.Icing.Sinks
			}
		}
	}
	if !sheet.Mingling.Known {
		for i := range d.Weeks {
			if i < len(before.Weeks) && d.Palette[i] == before.Palette[i] {
				d.Weeks[i] = before.Weeks[i]
			}
		}
	}
	if !d.Stands.Equal(before.Stands) {
		m.studio.peak.raise(d.Stands)
	}
	m.studio.design = d
}

// develop has the pictures drawn, beside the keyboard, that the screen wants and does not have.
func (m *model) develop() tea.Cmd {
	if m.asleep {
		return nil
	}
	cmds := []tea.Cmd{m.studio.peak.climb()}
	e, ok := m.easel()
	for place := range places {
		f := &m.studio.mounts[place]
		if !ok || place == placeKept && m.studio.kept == nil || m.studio.problem != "" {
			f.drop()
			continue
		}
		design, at := m.studio.design, e.now
		if place == placeKept {
			design, at = m.studio.kept.design, e.kept
		}
		if at.Empty() {
			f.drop()
			continue
		}
		cmds = append(cmds, m.expose(place, m.shot(design, at), m.dye(design)))
	}
	return tea.Batch(append(cmds, m.measure())...)
}

// drop stops the work for a mount; what is drawn stays for when it is wanted again.
func (f *mount) drop() {
	if f.stop != nil {
		f.stop()
		f.stop = nil
		f.ticket++
	}
}

// shot is the picture of a design in a place of the screen.
func (m *model) shot(d pour.Drawing, at image.Rectangle) picture.Shot {
	s := picture.Shot{
		Recipe: d.Recipe, Stands: d.Stands, Bar: m.studio.bar, Bars: d.Bars, Done: picture.Whole, W: at.Dx(), H: at.Dy(), Kept: m.studio.peak.kept,
	}
	if m.atPicture() {
		s.View, s.Done = m.studio.view, m.studio.play.done
	}
	if s.View == picture.Stands {
		s.Stands, s.Cuts = d.Above, d.Cuts
	}
	dye := m.dye(d)
	s.Mosaic = m.studio.mosaic
	s.Letters = dye.Lettered()
	s.Flat = s.Letters || dye.Depth != picture.True
	return s
}

// dye is the colours a design is drawn in here and now.
func (m *model) dye(d pour.Drawing) picture.Dye {
	out := picture.Dye{
		Base: d.Palette, Top: d.Top, Depth: m.studio.depth, Letters: m.studio.letters || m.still() == stillAccessible,
		Ground: m.studio.ground, DarkTerminal: m.backdrop.Dark(), Looks: d.Looks, Bare: m.studio.bare,
	}
	if m.studio.weeks {
		out.Base = d.Weeks
	}
	for jug := range d.Palette {
		out.BaseL = append(out.BaseL, look.Letter(jug))
	}
	for i := range d.Top {
		letter := strings.ToLower(look.Letter(i))
		if jugs := len(d.Top) - len(d.Stuffs); i >= jugs {
			letter = stuffLetter(i - jugs)
		}
		out.TopL = append(out.TopL, letter)
	}
	return out
}

// expose has one picture drawn: at once from a plate traced before, else first a draft. A picture that is drawn or under way is left alone.
func (m *model) expose(place int, shot picture.Shot, dye picture.Dye) tea.Cmd {
	f := &m.studio.mounts[place]
	if f.stop != nil && f.shot.Same(shot) && f.dye.Same(dye) {
		return nil
	}
	f.drop()
	ctx, stop := context.WithCancel(context.Background())
	f.shot, f.dye, f.stop = shot, dye, stop
	f.ticket++
	ticket, plate := f.ticket, m.traced(shot)
	return func() tea.Msg {
		if ctx.Err() != nil {
			return nil
		}
		if plate == nil {
			draft, err := picture.Draft(shot)
			if err != nil {
				return printedMsg{place: place, ticket: ticket, err: err}
			}
			plate = draft
		}
		return printedMsg{place: place, ticket: ticket, print: plate.Print(dye)}
	}
}

// traced is a plate of a shot that was traced before, or nil. Plates know no colours, so a change of colours alone finds one.
func (m *model) traced(shot picture.Shot) *picture.Plate {
	for _, p := range m.studio.plates {
		if p.Shot.Same(shot) {
			return p
		}
	}
	return nil
}

// printed takes a picture; one that is not waited for any more is dropped. A draft is traced again with smooth edges.
func (m *model) printed(msg printedMsg) tea.Cmd {
	f := &m.studio.mounts[msg.place]
	if msg.ticket != f.ticket || f.stop == nil {
		return nil
	}
	f.print, f.why = msg.print, ""
	if msg.err != nil {
		f.why = reason(msg.err)
		return nil
	}
	plate, dye := msg.print.Plate, f.dye
	m.studio.bar = min(m.studio.bar, plate.Bars-1)
	if plate.Fine {
		m.remember(plate)
		return m.awaitRest(msg.place)
	}
	if m.studio.play.running {
		return nil
	}
	f.stop()
	ctx, stop := context.WithCancel(context.Background())
	f.stop = stop
	return func() tea.Msg {
		fine, err := plate.Refine(ctx)
		if err != nil {
			return nil // no longer wanted
		}
		return printedMsg{place: msg.place, ticket: msg.ticket, print: fine.Print(dye)}
	}
}

// remember keeps a plate for when it is wanted again.
func (m *model) remember(p *picture.Plate) {
	if m.traced(p.Shot) != nil {
		return
	}
	m.studio.plates = append(m.studio.plates, p)
	if len(m.studio.plates) > cached {
		m.studio.plates = append([]*picture.Plate(nil), m.studio.plates[1:]...)
	}
}
