// Package pixels draws pictures in real pixels on terminals that can: by the kitty graphics protocol, with Unicode placeholders, so that
// a picture is ordinary cells to everything else that draws (https://sw.kovidgoyal.net/kitty/graphics-protocol/).
package pixels

import (
	"image"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
)

// The ways there are to pictures, as the command line names them.
const (
	Auto = "auto" // where the terminal has said that it draws them
	Off  = "off"  // never
	Tmux = "tmux" // handed through tmux, which lets nothing be asked; its option allow-passthrough must be on
)

// Ways lists the ways there are to pictures.
func Ways() []string { return []string{Auto, Off, Tmux} }

// Terminal is what a terminal has said of itself. The zero value has said nothing and is asked nothing.
type Terminal struct {
	Way      string      // one of [Ways]; empty: [Off]
	asked    bool        // the whole question was put
	closed   bool        // the answer that ends all others has come
	graphics bool        // it understood a picture
	name     string      // what it calls itself, with its version
	cell     image.Point // the size of a cell, pixels
}

// queryID is the number of the picture that asks; it is never shown.
const queryID = 31

// cellSize asks for the size of a cell in pixels (XTWINOPS 16, xterm control sequences).
const cellSize = "\x1b[16t"

// Ask is what to send when it is known that the terminal has true colour: the whole question the first time, nothing after that. The
// attributes are asked for last: every terminal answers to them, so what has not been answered before them never will be.
func (t *Terminal) Ask() string {
	if t.asked {
		return ""
	}
	switch t.Way {
	case Auto:
		t.asked = true
		picture := kitty.Options{Action: kitty.Query, ID: queryID, Format: kitty.RGB, ImageWidth: 1, ImageHeight: 1}
		return ansi.KittyGraphics([]byte("AAAA"), picture.Options()...) + ansi.RequestNameVersion + cellSize + ansi.RequestPrimaryDeviceAttributes
	case Tmux:
		t.asked = true
		return cellSize
	}
	return ""
}

// Resized is what to send when the terminal has another size: its letters may be of another size, too.
func (t *Terminal) Resized() string {
	if !t.asked {
		return ""
	}
	return cellSize
}

// Hear takes an answer of the terminal. Other messages are passed over.
func (t *Terminal) Hear(msg tea.Msg) {
	switch msg := msg.(type) {
	case uv.KittyGraphicsEvent:
		if msg.Options.ID == queryID && !t.closed {
			t.graphics = string(msg.Payload) == "OK"
		}
	case tea.TerminalVersionMsg:
		t.name = msg.Name
	case uv.CellSizeEvent:
		t.cell = image.Pt(msg.Width, msg.Height)
	case uv.PrimaryDeviceAttributesEvent:
		t.closed = true
	}
}

// The sizes of a cell that can be true, pixels.
const (
	leastCell = 3
	mostCell  = 200
)

// Cell is the size of a cell in pixels; false where no pictures can be drawn, or it is not known yet.
func (t *Terminal) Cell() (image.Point, bool) {
	sane := t.cell.X >= leastCell && t.cell.Y >= leastCell && t.cell.X <= mostCell && t.cell.Y <= mostCell
	switch {
	case !t.asked || !sane:
		return image.Point{}, false
	case t.Way == Tmux:
		return t.cell, true
	}
	return t.cell, t.closed && t.graphics && placeholders(t.name)
}

// placeholders says whether a terminal of this name and version puts a picture where its placeholders stand. Many that draw pictures do
// not, and there is nothing to ask for it but the name: kitty from 0.28.0 on (its changelog), ghostty in all its versions (its documentation).
func placeholders(name string) bool {
	name, version, _ := strings.Cut(strings.NewReplacer("(", " ", ")", "").Replace(name), " ")
	switch name {
	case "ghostty":
		return true
	case "kitty":
		return atLeast(version, 0, 28)
	}
	return false
}

// atLeast compares the first two numbers of a version.
func atLeast(version string, major, minor int) bool {
	first, rest, _ := strings.Cut(version, ".")
	second, _, _ := strings.Cut(rest, ".")
	a, errA := strconv.Atoi(first)
	b, errB := strconv.Atoi(second)
	return errA == nil && errB == nil && (a > major || a == major && b >= minor)
}
