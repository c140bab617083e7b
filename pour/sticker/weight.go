package sticker

import (
	"math"
	"strings"
	"unicode"

	"pourbench/pour/vector"
)

// foot is the weight as it stands at the foot of a panel.
type foot struct {
	lines []string
	face  vector.Face
	em    float64
	least float64 // height its letters must have
	wide  float64
	clear float64 // left free above and beside it
}

// usualNet is how high a weight's figures stand where the market states no height, mm.
const usualNet = 3

// weight sets the weight in letters of the height that is asked for; where it is too wide it stands in two lines, its ounces over its grams.
func (l *Label) weight(s *setter, least, wide float64) foot {
	if l.Net == "" {
		return foot{}
	}
	f := foot{lines: []string{l.Net}, least: least}
	if l.Market.Print.BoldNet {
		f.face = vector.Bold
	}
	if least <= 0 {
		least = usualNet
	}
	f.em = hundredth(max(least, s.small*1.2) / l.measured(s.Letters, f.face))
	if l.Market.Print.TextMM > 0 { // the rest of the declaration has its own least height
		f.em = max(f.em, hundredth(l.Market.Print.TextMM/s.High(f.face, 'x')))
	}
	if head, rest, two := strings.Cut(l.Net, " ("); two && s.Wide(f.face, l.Net, f.em) > wide {
		f.lines = []string{head, "(" + rest}
	}
	for _, line := range f.lines {
		f.wide = max(f.wide, s.Wide(f.face, line, f.em))
	}
	s.net = f.em * l.measured(s.Letters, f.face)
	f.clear = max(l.Market.Print.ClearMM, f.em*s.High(f.face, 'x'))
	return f
}

// measured is the height by which the weight's letters are judged, of one em: in the market's words that of its figures or, where they go by
// capitals, that of capitals if it is written in nothing else, and of small letters if it is.
func (l *Label) measured(s *vector.Letters, face vector.Face) float64 {
	if l.Market.Print.ByCapital {
		if strings.ContainsFunc(l.Net, unicode.IsLower) {
			return s.High(face, 'x')
		}
		return s.High(face, 'H')
	}
	lowest := math.Inf(1)
	for r := '0'; r <= '9'; r++ {
		lowest = min(lowest, s.High(face, r))
	}
	return lowest
}

// high is how high the weight stands, from the top of its figures to its last foot.
func (f *foot) high() float64 {
	if len(f.lines) == 0 {
		return 0
	}
	return f.em * (footAt + float64(len(f.lines)-1)*lineHigh)
}

// tail is what its letters reach below its last foot.
func (f *foot) tail() float64 {
	if len(f.lines) == 0 {
		return 0
	}
	return 0.21 * f.em // "g" reaches 420 of 2048 down
}
