package sticker

import (
	"math"
	"strings"

	"pourbench/pour/vector"
)

// setter sets words on a drawing; without one it only says how much room they take.
type setter struct {
	*vector.Letters

	d     *vector.Drawing
	small float64 // height of the small letters of all that is no headline
	head  float64 // how large the headline is, of the em of small words
	net   float64 // height of the weight as it was set
}

// box is room on a label.
type box struct{ x, y, wide, high float64 }

// block is words that stand together, and the room below them.
type block struct {
	text  string
	face  vector.Face
	times float64 // of the em of small words
}

// How lines stand, in ems.
const (
	lineHigh = 1.2
	footAt   = 0.8 // the foot of the first line, below the top of its room: capitals are 0.72 high
	apart    = 0.5 // between blocks
)

// em is the size at which small letters are as high as they are to be, rounded up to what files keep.
func (s *setter) em() float64 { return hundredth(s.small / s.High(vector.Regular, 'x')) }

// hundredth rounds up to a hundredth of a millimetre, which is what the PDF library writes of a size.
func hundredth(mm float64) float64 { return math.Ceil(mm*100-1e-6) / 100 }

// flow sets blocks below each other from the top of a box and is how high they stand.
func (s *setter) flow(b box, at vector.Anchor, blocks []block) float64 {
	y := 0.0
	for _, k := range blocks {
		if k.text == "" {
			continue
		}
		em := hundredth(s.em() * k.times)
		if y > 0 {
			y += apart * s.em()
		}
		for _, line := range s.wrapped(k.face, k.text, em, b.wide) {
			s.write(b, at, b.y+y+footAt*em, em, k.face, line)
			y += lineHigh * em
		}
	}
	return y
}

// write puts one line at the left, in the middle or at the right of a box.
func (s *setter) write(b box, at vector.Anchor, y, em float64, face vector.Face, line string) {
	if s.d == nil {
		return
	}
	x := [...]float64{vector.Start: b.x, vector.Middle: b.x + b.wide/2, vector.End: b.x + b.wide}[at]
	s.d.Texts = append(s.d.Texts, vector.Text{X: x, Y: y, Size: em, At: at, Face: face, Text: line})
}

// wrapped breaks words into lines no wider than so many mm, at spaces or, where one word is wider, inside it. A colour index number stays whole.
func (s *setter) wrapped(face vector.Face, text string, em, wide float64) []string {
	var out []string
	line, at := "", 0.0
	space := s.Wide(face, " ", em)
	for _, word := range words(text) {
		w := s.Wide(face, word, em)
		if line != "" && at+space+w <= wide {
			line, at = line+" "+word, at+space+w
			continue
		}
		if line != "" {
			out = append(out, line)
		}
		for w > wide {
			head, rest := s.part(face, word, em, wide)
			if rest == "" {
				break
			}
			out = append(out, head)
			word, w = rest, s.Wide(face, rest, em)
		}
		line, at = word, w
	}
	if line != "" {
		out = append(out, line)
	}
	return out
}

// part is as much of a word as there is room for, one letter at least, and its rest.
func (s *setter) part(face vector.Face, word string, em, wide float64) (head, rest string) {
	at := 0.0
	for i, r := range word {
		if at += s.Wide(face, string(r), em); at > wide && i > 0 {
			return word[:i], word[i:]
		}
	}
	return word, ""
}

// words are what a text may be broken between: its words, "CI" with the number after it being one.
func words(text string) []string {
	all := strings.Fields(text)
	out := make([]string, 0, len(all))
	for _, w := range all {
		if n := len(out); n > 0 && strings.TrimLeft(out[n-1], "(+/-") == "CI" && w[0] >= '0' && w[0] <= '9' {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}
