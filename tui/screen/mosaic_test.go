package screen

import (
	"strings"
	"testing"
)

func TestHalvesDrawTwoPixelsAndLeaveTheTerminalItsOwn(t *testing.T) {
	s := New(4, 1)
	a := s.Area()
	a.Mosaic(0, 0, Halves, 1, Index(1), Index(2))
	a.Mosaic(1, 0, Halves, 1, Index(1), 0)
	a.Mosaic(2, 0, Halves, 1, 0, Index(2))
	a.Mosaic(3, 0, Halves, 1, Index(4), Index(4))
	a.Mosaic(9, 0, Halves, 1, Index(4), Index(4)) // outside
	if got, want := s.String(), "\x1b[31;42m▀\x1b[0;31m▀\x1b[32m▄\x1b[0;44m \x1b[0m"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// glyphOf is what a cell with some pixels set holds.
func glyphOf(m Mosaic, set uint8, on, off Colour) string {
	s := New(1, 1)
	s.Area().Mosaic(0, 0, m, set, on, off)
	return s.cells[0].text
}

// The names of U+2596 to U+259F and of the halves in Unicode 16's list of names, as corners: upper left 1, upper right 2, lower left 4, lower right 8.
func TestQuartersAreTheQuadrantsOfTheirNames(t *testing.T) {
	const ul, ur, ll, lr = 1, 2, 4, 8
	for glyph, set := range map[string]uint8{
		"▖": ll, "▗": lr, "▘": ul, "▙": ul | ll | lr, "▚": ul | lr, "▛": ul | ur | ll, "▜": ul | ur | lr, "▝": ur, "▞": ur | ll, "▟": ur | ll | lr,
		"▀": ul | ur, "▄": ll | lr, "▌": ul | ll, "▐": ur | lr,
	} {
		if got := glyphOf(Quarters, set, Index(1), Index(2)); got != glyph {
			t.Errorf("%04b is drawn %q, want %q", set, got, glyph)
		}
	}
}

// The names of U+1FB00 to U+1FB3B go through the sets of places 1 to 6 in the order of binary numbers, without BLOCK SEXTANT-135 and -246,
// which are the left and the right half block: 1FB00 is -1, 1FB01 -2, 1FB02 -12, and so on to 1FB3B, which is -23456.
func TestSixthsAreTheSextantsInTheOrderOfTheirNames(t *testing.T) {
	next := rune(0x1fb00)
	for set := uint8(1); set < 63; set++ {
		places := ""
		for i := range 6 {
			if set>>i&1 == 1 {
				places += string(rune('1' + i))
			}
		}
		want := string(next)
		switch places {
		case "135":
			want = "▌"
		case "246":
			want = "▐"
		default:
			next++
		}
		if got := glyphOf(Sixths, set, Index(1), Index(2)); got != want {
			t.Errorf("sextant-%s is drawn %q, want %q", places, got, want)
		}
	}
	if next != 0x1fb3c {
		t.Errorf("the sextants end before %U", next)
	}
}

func TestACellOfOneColourIsABlankAndOneOfNoneIsTheTerminals(t *testing.T) {
	for m := range Mosaic(Mosaics) {
		across, down := m.Grain()
		all := uint8(1)<<(across*down) - 1
		for _, c := range []struct {
			set     uint8
			on, off Colour
			want    Style
		}{
			{0, Index(1), Index(2), Style{Bg: Index(2)}},
			{all, Index(1), Index(2), Style{Bg: Index(1)}},
			{1, Index(3), Index(3), Style{Bg: Index(3)}},
			{all, 0, Index(2), Style{}},
			{0, 0, Index(2), Style{Bg: Index(2)}},
			{1, 0, 0, Style{}},
		} {
			s := New(1, 1)
			s.Area().Mosaic(0, 0, m, c.set, c.on, c.off)
			if got := s.cells[0]; got != (cell{style: c.want}) {
				t.Errorf("mosaic %d, %06b of %x and %x: %+v", m, c.set, c.on, c.off, got)
			}
		}
		for set := uint8(1); set < all; set++ { // what has no colour is behind the glyph
			s := New(1, 1)
			s.Area().Mosaic(0, 0, m, set, 0, Index(2))
			if got, want := s.cells[0], (cell{text: glyphOf(m, all&^set, Index(1), 0), style: Style{Fg: Index(2)}}); got != want {
				t.Errorf("mosaic %d, all but %06b: %+v, want %+v", m, set, got, want)
			}
		}
	}
}

// Every glyph takes one cell: a terminal that disagreed would tear the picture.
func TestEveryGlyphOfAMosaicIsOneCellWide(t *testing.T) {
	for m := range Mosaic(Mosaics) {
		across, down := m.Grain()
		for set := uint8(1); set < 1<<(across*down)-1; set++ {
			if g := glyphOf(m, set, Index(1), Index(2)); Width(g) != 1 || strings.TrimSpace(g) == "" {
				t.Errorf("mosaic %d, %06b is %q, %d wide", m, set, g, Width(g))
			}
		}
	}
}
