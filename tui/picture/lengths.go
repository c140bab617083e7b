package picture

import "image"

// Lengths is how a loaf cut along its length is shown: whole or, so that it stays worth looking at, in equal lengths below one another,
// and higher than it is.
type Lengths struct {
	N    int     // lengths, the marked end in the first; 0 where no cut along the loaf is shown
	Tall float64 // heights against widths; 1 is true
}

const (
	mostLengths = 4
	mostTall    = 2    // higher than this no one would know the swirl again
	worthACut   = 1.25 // by so much a picture in one more length must be larger
)

// LengthsFor chooses how a loaf of long by high mm, its icing included, is shown largest in w by h cells.
func LengthsFor(long, high float64, w, h int) Lengths {
	best, size := Lengths{N: 1, Tall: 1}, 0.0
	for n := 1; n <= mostLengths; n++ {
		rows := (h - (n - 1)) / n
		if rows < 1 || w < 1 {
			break
		}
		scale := min(float64(w)/(long/float64(n)), 2*float64(rows)/high)
		tall := min(2*float64(rows)/(high*scale), mostTall)
		if area := scale * scale * tall; area > size*worthACut {
			best, size = Lengths{N: n, Tall: tall}, area
		}
	}
	return best
}

// rects is where the lengths stand, below one another with a line between them, in the middle of w by h cells.
func (l Lengths) rects(long, high float64, w, h int) (out []image.Rectangle) {
	one := fit(long/float64(l.N), high*l.Tall, w, (h-(l.N-1))/l.N)
	top := (h - l.N*(one.Dy()+1) + 1) / 2
	for i := range l.N {
		y := top + i*(one.Dy()+1)
		out = append(out, image.Rect(one.Min.X, y, one.Max.X, y+one.Dy()))
	}
	return out
}
