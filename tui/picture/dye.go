package picture

import (
	"image/color"
	"slices"
	"strings"

	"pourbench/chem/colour"
	"pourbench/pour/swirl"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Depth is how many colours a terminal has.
type Depth int

// The depths.
const (
	True  Depth = iota // true colour
	Many               // 256 colours
	Few                // 16 colours
	Plain              // none
)

// Dye is the colours a plate is printed in. Lists of the base go by portion, in pour order; lists of the icing by its jugs.
type Dye struct {
	Base, Top    []color.NRGBA
	BaseL, TopL  []string // the letter of each
	Depth        Depth
	Letters      bool        // letters over the colours; without colour, letters in place of signs
	Ground       color.NRGBA // of the terminal; clear where it is not known
	DarkTerminal bool
	Looks        []swirl.Surface // of the cut surface, by portion of the base; for real pixels
	Bare         bool            // real pixels are in flat colours
}

// Same says whether another dye prints the same.
func (d Dye) Same(o Dye) bool {
	return slices.Equal(d.Base, o.Base) && slices.Equal(d.Top, o.Top) && slices.Equal(d.BaseL, o.BaseL) && slices.Equal(d.TopL, o.TopL) &&
		d.Depth == o.Depth && d.Letters == o.Letters && d.Ground == o.Ground && d.DarkTerminal == o.DarkTerminal &&
		d.Bare == o.Bare && slices.Equal(d.Looks, o.Looks)
}

// Lettered says whether a plate has to be traced for letters.
func (d Dye) Lettered() bool { return d.Letters || d.Depth == Plain }

// Ink is how one portion is drawn.
type Ink struct {
	Colour screen.Colour // zero on a terminal without colour
	On     screen.Colour // reads on it
	Letter string
	Glyph  string // fills its cells where there is no colour
}

// inks works out how every portion is drawn, the base's first. A small palette is shared out once for all portions, so that no two of
// them get the same colour and no pixel has to be matched.
func (d Dye) inks() (base, top []Ink) {
	all := slices.Concat(d.Base, d.Top)
	out := make([]Ink, len(all))
	size := map[Depth]int{Many: colour.Palette256, Few: colour.Palette16}[d.Depth]
	index, err := quantised(all, size)
	for i, c := range all {
		out[i].Letter = slices.Concat(d.BaseL, d.TopL)[i]
		seen := screen.RGB(c.R, c.G, c.B)
		switch {
		case d.Depth == Plain:
			continue
		case d.Depth == True || err != nil:
			out[i].Colour = seen
		default:
			out[i].Colour = screen.Index(index[i])
			r, g, b := colour.Terminal(index[i]).Bytes()
			seen = screen.RGB(r, g, b)
		}
		out[i].On = look.Readable(seen)
	}
	if d.Depth == Plain {
		d.glyphs(out, all)
	}
	return out[:len(d.Base)], out[len(d.Base):]
}

func quantised(all []color.NRGBA, size int) ([]uint8, error) {
	if size == 0 {
		return nil, nil
	}
	rgb := make([]colour.RGB, len(all))
	for i, c := range all {
		rgb[i] = colour.FromBytes(c.R, c.G, c.B)
	}
	return colour.Quantise(rgb, size)
}

// ramp is signs by how much ink they have.
const ramp = ".:-=+*#%@"

// glyphs gives every portion a sign, the one that shines most the most ink on a dark terminal and the least on a light one.
// Where there are more portions than signs, and where letters alone are asked for, its letter is its sign.
func (d Dye) glyphs(out []Ink, all []color.NRGBA) {
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	light := func(i int) float64 { return colour.FromBytes(all[i].R, all[i].G, all[i].B).Lab().L }
	slices.SortStableFunc(order, func(a, b int) int {
		if d.DarkTerminal {
			a, b = b, a
		}
		switch x := light(b) - light(a); {
		case x > 0:
			return 1
		case x < 0:
			return -1
		}
		return 0
	})
	for rank, i := range order {
		out[i].Glyph = out[i].Letter
		if len(all) <= len(ramp) && !d.Letters {
			at := 0
			if len(all) > 1 {
				at = rank * (len(ramp) - 1) / (len(all) - 1)
			}
			out[i].Glyph = ramp[at : at+1]
		}
		if len(out[i].Glyph) > 1 { // a cell holds one letter of AA, AB and so on
			out[i].Glyph = strings.ToLower(out[i].Glyph[len(out[i].Glyph)-1:])
		}
	}
}
