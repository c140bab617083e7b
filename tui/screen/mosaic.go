package screen

import (
	"strconv"
	"unicode/utf8"
)

// Mosaic is into how many pixels each cell of a picture is divided. A cell has two colours, whatever its pixels are.
type Mosaic int

// The mosaics, of block elements that a terminal draws from edge to edge.
const (
	Halves   Mosaic = iota // two pixels one above the other; every terminal draws them
	Quarters               // two by two
	Sixths                 // two across and three down, of Unicode 13's symbols for legacy computing, which older fonts lack
	Mosaics  int    = iota
)

// Divided is the mosaic of cells of so many pixels, one of [Divisions]; false: there is none.
func Divided(pixels string) (Mosaic, bool) {
	for m := range Mosaic(Mosaics) {
		if m.divided() == pixels {
			return m, true
		}
	}
	return 0, false
}

// Divisions are the numbers of pixels that a cell can be divided into, the fewest first.
func Divisions() []string {
	var all []string
	for m := range Mosaic(Mosaics) {
		all = append(all, m.divided())
	}
	return all
}

func (m Mosaic) divided() string {
	across, down := m.Grain()
	return strconv.Itoa(across * down)
}

// Grain is how many pixels a cell has across and down.
func (m Mosaic) Grain() (across, down int) {
	switch m {
	case Quarters:
		return 2, 2
	case Sixths:
		return 2, 3
	default:
		return 1, 2
	}
}

// The glyphs of each mosaic by which of its pixels are set, row by row from the upper left one, which counts 1: Unicode 16, blocks 2580 and
// 1FB00. Where none or all are set there is no glyph, but a blank; the sixths lack the two that are half blocks.
const (
	halves      = "█▀▄"
	quarters    = "█▘▝▀▖▌▞▛▗▚▐▜▄▙▟"
	sixths      = "🬀🬁🬂🬃🬄🬅🬆🬇🬈🬉🬊🬋🬌🬍🬎🬏🬐🬑🬒🬓🬔🬕🬖🬗🬘🬙🬚🬛🬜🬝🬞🬟🬠🬡🬢🬣🬤🬥🬦🬧🬨🬩🬪🬫🬬🬭🬮🬯🬰🬱🬲🬳🬴🬵🬶🬷🬸🬹🬺🬻"
	sixthsLeft  = 0b010101
	sixthsRight = 0b101010
)

// glyph is the sign that sets some of a cell's pixels, neither none nor all.
func (m Mosaic) glyph(set uint8) string {
	from, text, size := int(set), quarters, utf8.RuneLen('█')
	switch {
	case m == Halves:
		text = halves
	case m == Sixths && set == sixthsLeft:
		from = 0b0101
	case m == Sixths && set == sixthsRight:
		from = 0b1010
	case m == Sixths:
		from, text, size = from-1, sixths, utf8.RuneLen('🬀')
		for _, lacks := range [...]uint8{sixthsLeft, sixthsRight} {
			if set > lacks {
				from--
			}
		}
	}
	return text[from*size : (from+1)*size]
}

// Mosaic draws the pixels of a cell: those that are set in one colour, the others in another. Set has a bit for each, row by row, the lowest
// for the upper left one. What has no colour is left to the terminal.
func (a Area) Mosaic(x, y int, m Mosaic, set uint8, on, off Colour) {
	if x < 0 || y < 0 || x >= a.W() || y >= a.H() {
		return
	}
	across, down := m.Grain()
	all := uint8(1)<<(across*down) - 1
	if on == 0 { // a glyph has a colour, only its ground can be without
		set, on, off = all&^set, off, on
	}
	text, st := "", Style{Bg: off}
	switch {
	case set&all == all:
		st.Bg = on
	case set&all != 0 && on != off:
		text, st.Fg = m.glyph(set&all), on
	}
	a.screen.put(a.rect.Min.X+x, a.rect.Min.Y+y, 1, text, st)
}
