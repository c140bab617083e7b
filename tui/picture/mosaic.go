package picture

import (
	"pourbench/chem/colour"
	"pourbench/tui/screen"
)

// mostPixels is the most pixels a cell is divided into.
const mostPixels = 6

// splitter finds the two colours of a cell that show its pixels best.
type splitter struct {
	seen map[screen.Colour]colour.OKLab // colours worked out before
}

// split says which pixels of a cell get the first of two colours, the others get the second. Pixels without colour are the terminal's own:
// where there are any they are the others.
func (s *splitter) split(pixels []screen.Colour) (set uint8, on, off screen.Colour) {
	var all, clear uint8
	for i, c := range pixels {
		all |= 1 << i
		if c == 0 {
			clear |= 1 << i
		}
	}
	if clear != 0 {
		return all &^ clear, s.nearest(pixels, all&^clear), 0
	}
	set, on, off, two := twoColours(pixels)
	if two {
		return set, on, off
	}
	return s.best(pixels)
}

// twoColours says which pixels have the first one's colour and what the others have; false where there are more colours.
func twoColours(pixels []screen.Colour) (set uint8, first, second screen.Colour, two bool) {
	first, second = pixels[0], pixels[0]
	for i, c := range pixels {
		switch {
		case c == first:
			set |= 1 << i
		case second == first || c == second:
			second = c
		default:
			return 0, 0, 0, false
		}
	}
	return set, first, second, true
}

// best tries every two of a cell's own colours, each pixel in the nearer one, and takes those with the least sum of squared distances in
// OKLab. A mean of several would be nearer yet, but is a colour no jug has: a swirl of fine lines would turn grey.
func (s *splitter) best(pixels []screen.Colour) (set uint8, on, off screen.Colour) {
	var apart [mostPixels][mostPixels]float64
	for i := range pixels {
		for j := range i {
			apart[i][j] = distance(s.tone(pixels[i]), s.tone(pixels[j]))
			apart[j][i] = apart[i][j]
		}
	}
	least := -1.0
	for i := range pixels {
		for j := range i {
			sum, nearer := 0.0, uint8(0)
			for k := range pixels {
				sum += min(apart[k][i], apart[k][j])
				if apart[k][j] < apart[k][i] {
					nearer |= 1 << k
				}
			}
			if least < 0 || sum < least {
				least, set, on, off = sum, nearer, pixels[j], pixels[i]
			}
		}
	}
	return set, on, off
}

// nearest is the colour of some of the pixels that lies nearest to all of them; 0 where there are none.
func (s *splitter) nearest(pixels []screen.Colour, set uint8) (best screen.Colour) {
	least := -1.0
	for i, c := range pixels {
		sum := 0.0
		for j, d := range pixels {
			if set>>j&1 == 1 && c != d {
				sum += distance(s.tone(c), s.tone(d))
			}
		}
		if set>>i&1 == 1 && (least < 0 || sum < least) {
			least, best = sum, c
		}
	}
	return best
}

// tone is a colour as it is seen, worked out once.
func (s *splitter) tone(c screen.Colour) colour.OKLab {
	t, ok := s.seen[c]
	if !ok {
		t = colour.FromBytes(c.Channels()).OKLab()
		s.seen[c] = t
	}
	return t
}

// distance is the square of how far two colours lie apart.
func distance(a, b colour.OKLab) float64 {
	l, x, y := a.L-b.L, a.A-b.A, a.B-b.B
	return l*l + x*x + y*y
}
