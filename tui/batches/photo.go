package batches

import (
	"image"
	"os"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	"pourbench/pour/plain"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/pixels"
	"pourbench/tui/screen"
)

// photoMsg brings a picture that is ready to be sent to the terminal.
type photoMsg struct {
	name     string
	sequence string
	picture  pixels.Picture
	w, h     int
	err      error
}

// photoPlace is the picture that stands over the page.
type photoPlace struct {
	numbers *pixels.Numbers
	name    string
	picture pixels.Picture
	w, h    int
}

func (p *photoPlace) shown() bool { return p.name != "" }

// seePhoto looks at a picture of the batch; of several it asks which.
func (m *Model) seePhoto() tea.Cmd {
	b, _ := m.chosen()
	photos := b.Of(logbook.Photo)
	if mk, ok := m.chosenMark(); ok && m.inside && mk.Event.Kind == logbook.Photo {
		return m.goPhoto(mk.Event.Life.Path)
	}
	if len(photos) == 1 {
		return m.goPhoto(photos[0].Life.Path)
	}
	l := &dialog.List{Title: "Which picture", Choose: func(path string) tea.Cmd { return m.goPhoto(path) }}
	for _, e := range photos {
		l.Items = append(l.Items, dialog.Item{ID: e.Life.Path, Name: plain.Line(e.Life.Path), Aside: dayOf(e).String(), Detail: []string{m.words(e)}})
	}
	m.dialogs.Open(l)
	return nil
}

// goPhoto looks at a picture by the path that stands in the pour's file. One that leads out of the logbook's folder is told before it is
// opened.
func (m *Model) goPhoto(path string) tea.Cmd {
	full, inside := m.where(path)
	if inside {
		return m.showPhoto(full)
	}
	m.dialogs.Open(&dialog.Question{
		Title: "This picture lies outside the logbook", Text: "The pour's file names " + plain.Line(path) + ", which is " + plain.Line(full) + ".",
		Answers: []dialog.Answer{{Text: "open it", Do: func() tea.Cmd { return m.showPhoto(full) }}, {Text: "leave it"}}, At: 1,
	})
	return nil
}

// where is where a path of a pour's file leads, and whether that is inside the logbook's folder, links followed.
func (m *Model) where(path string) (full string, inside bool) {
	full = path
	if !filepath.IsAbs(path) {
		full = filepath.Join(m.opt.Folder, filepath.FromSlash(path))
	}
	folder, real := m.opt.Folder, full
	if abs, err := filepath.Abs(full); err == nil {
		full, real = abs, abs
	}
	if abs, err := filepath.Abs(folder); err == nil {
		folder = abs
	}
	if to, err := filepath.EvalSymlinks(real); err == nil {
		real = to
	}
	if to, err := filepath.EvalSymlinks(folder); err == nil {
		folder = to
	}
	rel, err := filepath.Rel(folder, real)
	return full, err == nil && filepath.IsLocal(rel)
}

// showPhoto shows a picture: here where the terminal draws pixels, else in the system's own program.
func (m *Model) showPhoto(path string) tea.Cmd {
	cell, draws := m.pixels.Cell()
	if !draws {
		show := m.opt.Show
		return func() tea.Msg {
			if err := IsPicture(path); err != nil {
				return saidMsg{err: err}
			}
			return saidMsg{"opened: " + path, show(path)}
		}
	}
	if m.photo.numbers == nil {
		m.photo.numbers = pixels.NumbersFor(os.Getpid())
	}
	id, way := m.photo.numbers.Next(0), m.pixels.Way
	w, h := min(m.dialogs.Frame.W-2, pixels.MostCells), min(m.dialogs.Frame.H-3, pixels.MostCells)
	return func() tea.Msg {
		msg := photoMsg{name: filepath.Base(path)}
		img, columns, rows, err := develop(path, cell, w, h)
		if err == nil {
			msg.sequence, err = pixels.Send(img, id, columns, rows, way)
		}
		msg.w, msg.h, msg.err = columns, rows, err
		msg.picture = pixels.Picture{ID: id}
		return msg
	}
}

// photoReady shows a picture that was worked out.
func (m *Model) photoReady(msg photoMsg) tea.Cmd {
	if msg.err != nil {
		m.refuse(msg.err.Error())
		return nil
	}
	return tea.Sequence(tea.Raw(msg.sequence), func() tea.Msg { return photoSentMsg(msg) })
}

// photoSentMsg says that the terminal holds a picture now.
type photoSentMsg photoMsg

func (m *Model) photoSent(msg photoSentMsg) {
	m.photo.name, m.photo.picture, m.photo.w, m.photo.h = msg.name, msg.picture, msg.w, msg.h
	m.say("any key closes the picture")
}

// closePhoto takes the picture away and lets the terminal forget it.
func (m *Model) closePhoto() tea.Cmd {
	m.photo.name = ""
	m.status.Clear()
	return raw(m.photo.numbers.Forget(m.pixels.Way))
}

// drawPhoto draws the picture over the page.
func (m *Model) drawPhoto(a screen.Area) {
	if !m.photo.shown() {
		return
	}
	w, h := m.photo.w, m.photo.h
	x, y := max((a.W()-w)/2, 0), max((a.H()-2-h)/2, 0)
	a.Cut(0, 0, a.W(), a.H()-2).Clear()
	a.Text(x, y, screen.Clip(plain.Line(m.photo.name), w), m.look.Quiet)
	box := a.Cut(x, y+1, w, h)
	p := m.photo.picture
	p.Cells = append(p.Cells, image.Rect(0, 0, w, h))
	p.Draw(box)
}

// askPixels asks the terminal what it can draw, once it is known to have true colour.
func (m *Model) askPixels(msg tea.ColorProfileMsg) tea.Cmd {
	if strings.EqualFold(msg.String(), "TrueColor") {
		return raw(m.pixels.Ask())
	}
	return nil
}

// leave leaves the page. Everything that was logged is written by then; what is being written is waited for.
func (m *Model) leave() tea.Cmd {
	if m.busy {
		m.refuse("something is being written; {quit} again in a moment")
		return nil
	}
	if m.photo.numbers != nil {
		return tea.Sequence(raw(m.photo.numbers.Forget(m.pixels.Way)), tea.Quit)
	}
	return tea.Quit
}

// releaseMouse leaves the mouse to the terminal, or takes it back.
func (m *Model) releaseMouse() {
	if m.opt.NoMouse = !m.opt.NoMouse; m.opt.NoMouse {
		m.say("the mouse is the terminal's: it can select text; " + m.key(keys.Mouse) + " takes it back")
		return
	}
	m.say("the mouse is taken: click a batch, a mark or a key")
}
