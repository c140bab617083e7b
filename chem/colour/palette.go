package colour

import "fmt"

// Sizes of terminal palettes.
const (
	Palette16  = 16
	Palette256 = 256
	themed     = 16 // the first sixteen of 256 belong to the terminal's theme
)

// Terminal returns the usual colour of a terminal palette index. 16 to 255 are fixed: a 6 by 6 by 6 cube
// and 24 greys. 0 to 15 are the defaults of the oldest colour terminals, from memory; themes change them.
func Terminal(index uint8) RGB {
	switch {
	case index < themed:
		return themedColour(index)
	case index < 232:
		i := index - themed
		return FromBytes(cubeLevel(i/36), cubeLevel(i/6%6), cubeLevel(i%6))
	default:
		level := 8 + 10*(index-232)
		return FromBytes(level, level, level)
	}
}

func cubeLevel(i uint8) uint8 {
	if i == 0 {
		return 0
	}
	return 55 + 40*i
}

func themedColour(index uint8) RGB {
	c := [themed][3]uint8{
		{0, 0, 0},
		{205, 0, 0},
		{0, 205, 0},
		{205, 205, 0},
		{0, 0, 238},
		{205, 0, 205},
		{0, 205, 205},
		{229, 229, 229},
		{127, 127, 127},
		{255, 0, 0},
		{0, 255, 0},
		{255, 255, 0},
		{92, 92, 255},
		{255, 0, 255},
		{0, 255, 255},
		{255, 255, 255},
	}[index]
	return FromBytes(c[0], c[1], c[2])
}

// Quantise returns a terminal palette index for each colour so that no two share one, with the least
// summed squared distance in OKLab. Size is Palette16 or Palette256; of 256 the first sixteen are left
// out, because themes change them. It is refused for another size, for more colours than there are
// indices, and for a colour that is not a number.
func Quantise(colours []RGB, size int) ([]uint8, error) {
	first := 0
	switch size {
	case Palette16:
	case Palette256:
		first = themed
	default:
		return nil, fmt.Errorf("fit colours to a terminal: a palette of %d is not known: use %d or %d", size, Palette16, Palette256)
	}
	if len(colours) > size-first {
		return nil, fmt.Errorf("fit colours to a terminal: %d colours into %d indices: draw letters instead", len(colours), size-first)
	}
	cost := make([][]float64, len(colours))
	for i, c := range colours {
		if err := c.Valid(); err != nil {
			return nil, fmt.Errorf("fit colour %d to a terminal: %w", i, err)
		}
		cost[i] = distances(c.clip(0, 1).OKLab(), first, size)
	}
	picked := make([]uint8, len(colours))
	for i, column := range assign(cost) {
		picked[i] = uint8(first + column)
	}
	return picked, nil
}

func distances(c OKLab, first, size int) []float64 {
	d := make([]float64, 0, size-first)
	for index := first; index < size; index++ {
		t := Terminal(uint8(index)).OKLab()
		d = append(d, square(c.L-t.L)+square(c.A-t.A)+square(c.B-t.B))
	}
	return d
}
