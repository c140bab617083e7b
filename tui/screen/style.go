package screen

import (
	"image/color"
	"strconv"
)

// Colour is a true colour, one of the terminal's palette, or the terminal's own where it is zero.
type Colour uint32

const (
	colourSet Colour = 1 << 24
	indexSet  Colour = 1 << 25
)

// Index returns a colour of the terminal's palette, 0 to 255. It has no channels of its own: what it looks like is the terminal's affair.
func Index(i uint8) Colour { return indexSet | Colour(i) }

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

// sgr appends the escape sequence that switches from another style to this one, as short as it goes.
func (s Style) sgr(b []byte, from Style) []byte {
	b = append(b, "\x1b["...)
	if s.Attr != from.Attr || s.Fg == 0 && from.Fg != 0 || s.Bg == 0 && from.Bg != 0 {
		b = append(b, "0;"...)
		for i, code := range [...]byte{'1', '3', '4', '7'} {
			if s.Attr&(1<<i) != 0 {
				b = append(b, code, ';')
			}
		}
		from = Style{}
	}
	if s.Fg != from.Fg {
		b = s.Fg.sgr(b, '3')
	}
	if s.Bg != from.Bg {
		b = s.Bg.sgr(b, '4')
	}
	b[len(b)-1] = 'm' // in place of the last semicolon
	return b
}

// sgr appends the codes of a colour that is not zero, each with a semicolon after it. Ground is '3' for text and '4' for what is behind it.
func (c Colour) sgr(b []byte, ground byte) []byte {
	const plain, bright = 8, 16
	if c&indexSet != 0 {
		switch i := uint8(c); {
		case i < plain:
			return append(b, ground, '0'+i, ';')
		case i < bright:
			return decimal(b, (ground-'3')*10+90+i-plain)
		default:
			return decimal(append(b, ground, '8', ';', '5', ';'), i)
		}
	}
	r, g, bl := c.Channels()
	b = append(b, ground, '8', ';', '2', ';')
	return decimal(decimal(decimal(b, r), g), bl)
}

// decimal appends a byte in decimal and a semicolon.
func decimal(b []byte, v uint8) []byte {
	switch {
	case v >= 100:
		return append(b, '0'+v/100, '0'+v/10%10, '0'+v%10, ';')
	case v >= 10:
		return append(b, '0'+v/10, '0'+v%10, ';')
	default:
		return append(b, '0'+v, ';')
	}
}
