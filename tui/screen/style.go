package screen

import (
	"image/color"
	"strconv"
)

// Colour is a true colour, or the terminal's own where it is zero.
type Colour uint32

const colourSet Colour = 1 << 24

// RGB returns the colour of three channels from 0 to 255.
func RGB(r, g, b uint8) Colour { return colourSet | Colour(r)<<16 | Colour(g)<<8 | Colour(b) }

// From returns an opaque colour of the standard library or of Lip Gloss.
func From(c color.Color) Colour {
	r, g, b, _ := c.RGBA()
	return RGB(uint8(r>>8), uint8(g>>8), uint8(b>>8))
}

// Hex reads "#rrggbb"; it says false for anything else.
func Hex(text string) (Colour, bool) {
	if len(text) != 7 || text[0] != '#' {
		return 0, false
	}
	v, err := strconv.ParseUint(text[1:], 16, 32)
	if err != nil {
		return 0, false
	}
	return colourSet | Colour(v), true
}

// Channels returns the three channels of a colour.
func (c Colour) Channels() (r, g, b uint8) { return uint8(c >> 16), uint8(c >> 8), uint8(c) }

// Attr is a set of text attributes.
type Attr uint8

// The text attributes a terminal without colour still shows.
const (
	Bold Attr = 1 << iota
	Faint
	Italic
	Underline
	Reverse
)

// Style is how a cell is drawn. The zero value is the terminal's own text on its own background.
type Style struct {
	Fg, Bg Colour
	Attr   Attr
}

// With returns the style with more attributes.
func (s Style) With(a Attr) Style { s.Attr |= a; return s }

// On returns the style on another background.
func (s Style) On(bg Colour) Style { s.Bg = bg; return s }

// sgr appends the escape sequence that switches from any style to this one.
func (s Style) sgr(b []byte) []byte {
	b = append(b, "\x1b[0"...)
	for i, code := range [...]byte{'1', '2', '3', '4', '7'} {
		if s.Attr&(1<<i) != 0 {
			b = append(b, ';', code)
		}
	}
	b = s.Fg.sgr(b, ";38;2;")
	b = s.Bg.sgr(b, ";48;2;")
	return append(b, 'm')
}

func (c Colour) sgr(b []byte, lead string) []byte {
	if c == 0 {
		return b
	}
	r, g, bl := c.Channels()
	b = append(b, lead...)
	b = strconv.AppendUint(b, uint64(r), 10)
	b = append(b, ';')
	b = strconv.AppendUint(b, uint64(g), 10)
	b = append(b, ';')
	return strconv.AppendUint(b, uint64(bl), 10)
}
