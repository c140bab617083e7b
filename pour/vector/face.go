package vector

import (
	"fmt"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the free faces whose letters go into a file.
type Face int

// The faces.
const (
	Regular Face = iota
	Bold
	Mono // every letter of one width
	faces
)

// style is what the PDF library calls the face: of a family it knows four, by these names.
func (f Face) style() string { return [...]string{Regular: "", Bold: "B", Mono: "I"}[f] }

// file is the face as the outlines of its letters.
func (f Face) file() []byte {
	return [...][]byte{Regular: goregular.TTF, Bold: gobold.TTF, Mono: gomono.TTF}[f]
}

// Letters measures letters by their outlines, those that are printed. It is for one goroutine.
type Letters struct {
	fonts [faces]*sfnt.Font
	wide  [faces]map[rune]float64 // of one em; below 0: the face has no such letter
	buf   sfnt.Buffer
}

// ReadLetters reads the faces.
func ReadLetters() (*Letters, error) {
	l := &Letters{}
	for f := range faces {
		font, err := sfnt.Parse(f.file())
		if err != nil {
			return nil, fmt.Errorf("read the letters of the program's own face: %w", err)
		}
		l.fonts[f], l.wide[f] = font, map[rune]float64{}
	}
	return l, nil
}

// advance is how far a letter takes the pen, of one em; below 0: the face has none.
func (l *Letters) advance(f Face, r rune) float64 {
	if w, known := l.wide[f][r]; known {
		return w
	}
	w := -1.0
	if i, err := l.fonts[f].GlyphIndex(&l.buf, r); err == nil && i != 0 {
		if a, err := l.fonts[f].GlyphAdvance(&l.buf, i, l.em(f), font.HintingNone); err == nil {
			w = float64(a) / float64(l.em(f))
		}
	}
	l.wide[f][r] = w
	return w
}

// em is the size at which one unit of the face is one pixel, so that nothing is rounded.
func (l *Letters) em(f Face) fixed.Int26_6 { return fixed.I(int(l.fonts[f].UnitsPerEm())) }

// Missing lists the letters of a text that the face cannot write, each once.
func (l *Letters) Missing(f Face, text string) []rune {
	var out []rune
	seen := map[rune]bool{}
	for _, r := range text {
		if !seen[r] && l.advance(f, r) < 0 {
			out = append(out, r)
		}
		seen[r] = true
	}
	return out
}

// Wide is how wide a text is at an em of size, mm. A letter that the face has not is as wide as its em.
func (l *Letters) Wide(f Face, text string, size float64) float64 {
	w := 0.0
	for _, r := range text {
		if a := l.advance(f, r); a >= 0 {
			w += a
		} else {
			w++
		}
	}
	return w * size
}

// High is how high the outline of a letter stands over its foot, of one em: that of "x" is the height of small letters, that of "H" of capitals;
// round letters reach over both a little.
func (l *Letters) High(f Face, letter rune) float64 {
	return -l.box(f, letter).Min.Y
}

// Tail is how far below its foot a letter reaches, of one em.
func (l *Letters) Tail(f Face, letter rune) float64 { return l.box(f, letter).Max.Y }

type box struct{ Min, Max struct{ X, Y float64 } }

// box is what encloses a letter's outline, of one em, y down from its foot.
func (l *Letters) box(f Face, letter rune) box {
	var b box
	i, err := l.fonts[f].GlyphIndex(&l.buf, letter)
	if err != nil || i == 0 {
		return b
	}
	of, _, err := l.fonts[f].GlyphBounds(&l.buf, i, l.em(f), font.HintingNone)
	if err != nil {
		return b
	}
	k := float64(l.em(f))
	b.Min.X, b.Min.Y = float64(of.Min.X)/k, float64(of.Min.Y)/k
	b.Max.X, b.Max.Y = float64(of.Max.X)/k, float64(of.Max.Y)/k
	return b
}
