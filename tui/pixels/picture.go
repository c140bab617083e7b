package pixels

import (
	"fmt"
	"image"
	"strings"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"

	"pourbench/tui/screen"
)

// MostCells is how many columns and rows a picture has at most: there are no more signs to number them with.
const MostCells = 297

// Picture is a picture the terminal holds, and where it shows.
type Picture struct {
	ID    int               // its number at the terminal, from [ID]
	Cells []image.Rectangle // where it shows, in cells of the whole
}

// Numbers hands out the pictures' numbers: two to each of a few places, in turn, so that a new picture never changes one that shows.
// The numbers of two benches in one terminal differ by their processes.
type Numbers struct {
	first int
	flip  map[int]int
}

// perPlace is how many numbers a place has, and places how many there are.
const (
	perPlace = 2
	places   = 4
)

// NumbersFor hands out the numbers of a process.
func NumbersFor(process int) *Numbers {
	const kinds = 0xffffff/(places*perPlace) - 1 // a colour carries 24 bits; 0 is no number
	return &Numbers{first: (process%kinds + 1) * places * perPlace, flip: map[int]int{}}
}

// Next is the number of the next picture at a place, 0 to 3.
func (n *Numbers) Next(place int) int {
	n.flip[place]++
	return n.first + place*perPlace + n.flip[place]%perPlace
}

// Forget is what to send so that the terminal lets go of every picture it was sent; empty where it was sent none.
func (n *Numbers) Forget(way string) string {
	var b strings.Builder
	for place := range places {
		for i := range min(n.flip[place], perPlace) {
			id := n.first + place*perPlace + (n.flip[place]-i)%perPlace
			o := kitty.Options{Action: kitty.Delete, Delete: kitty.DeleteID, DeleteResources: true, ID: id, Quiet: 2}
			b.WriteString(through(way, ansi.KittyGraphics(nil, o.Options()...)))
		}
	}
	clear(n.flip)
	return b.String()
}

// Send is what to send so that the terminal holds a picture under a number, to be shown in so many cells. It has to be opaque: the encoder
// gives what it half covers darker than it is.
func Send(img image.Image, id int, columns, rows int, way string) (string, error) {
	if columns < 1 || rows < 1 || columns > MostCells || rows > MostCells {
		return "", fmt.Errorf("send a picture of %d × %d cells: 1 to %d work", columns, rows, MostCells)
	}
	b := img.Bounds()
	var out strings.Builder
	err := kitty.EncodeGraphics(&out, img, &kitty.Options{
		Action: kitty.TransmitAndPut, Transmission: kitty.Direct, VirtualPlacement: true, Format: kitty.RGB, Compression: kitty.Zlib, Chunk: true, Quiet: 2,
		ID: id, Columns: columns, Rows: rows, ImageWidth: b.Dx(), ImageHeight: b.Dy(),
		ChunkFormatter: func(chunk string) string { return through(way, chunk) },
	})
	if err != nil {
		return "", fmt.Errorf("send a picture of %d × %d pixels: %w", b.Dx(), b.Dy(), err)
	}
	return out.String(), nil
}

// through wraps a sequence for the way it goes.
func through(way, sequence string) string {
	if way == Tmux {
		return ansi.TmuxPassthrough(sequence)
	}
	return sequence
}

// Draw draws the picture into the upper left corner of an area.
func (p *Picture) Draw(a screen.Area) {
	st := screen.Style{Fg: screen.RGB(uint8(p.ID>>16), uint8(p.ID>>8), uint8(p.ID))}
	for _, r := range p.Cells {
		for y := max(r.Min.Y, 0); y < min(r.Max.Y, a.H()); y++ {
			for x := max(r.Min.X, 0); x < min(r.Max.X, a.W()); x++ {
				a.Text(x, y, placeholder(y, x), st)
			}
		}
	}
}

// placeholder is the sign that shows one cell of a picture. Row and column are said in each, as a frame is sent in parts.
func placeholder(row, column int) string {
	return string([]rune{kitty.Placeholder, kitty.Diacritic(row), kitty.Diacritic(column)})
}
