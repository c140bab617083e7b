package sticker

import (
	"fmt"
	"math"
	"strings"

	"pourbench/pour/vector"
)

// How a label is laid out, mm.
const (
	edge      = 3.0 // free at the edges
	lowestX   = 0.9 // height of small letters below which nothing is printed: common practice, no source
	highestX  = 2.2
	headTimes = 2.2  // of the small words' em: what the bar is called,
	headLeast = 1.5  // and where there is not enough room
	nameTimes = 1.25 // and what it is
	logoPart  = 0.28 // of the width that a logo takes at most
	logoHigh  = 0.35 // and of the height
)

// fitted is what was laid out, at the largest letters that fit.
type fitted struct {
	drawing *vector.Drawing
	small   float64 // height of its small letters
	net     float64 // and of its weight
	faults  []string
}

// layout lays something out in letters of a height and says by how many mm it is too high for its room; faults are what no height mends.
type layout func(s *setter) (over float64, faults []string)

// fit finds the largest letters at which a layout fits, or takes those the maker wants, and says what is wrong with them.
func (l *Label) fit(letters *vector.Letters, wide, high, least float64, lay layout) fitted {
	s := &setter{Letters: letters, head: headTimes}
	try := func(x float64) float64 {
		s.small = x
		over, _ := lay(s)
		return over
	}
	least = max(least, lowestX)
	x := l.LetterMM
	if try(max(x, least)) > 0 {
		s.head = headLeast
	}
	var faults []string
	switch {
	case x == 0:
		x = least
		if most := highestX; most > least && try(least) <= 0 {
			x = largest(least, most, func(x float64) bool { return try(x) <= 0 })
		}
	case x < least-1e-9:
		faults = append(faults, fmt.Sprintf("letters of %.2f mm are lower than the %.2f there must be: make label.letter_mm larger, or 0", x, least))
	}
	if over := try(x); over > 0 {
		faults = append(faults, fmt.Sprintf("what it says is %.1f mm too high for it in letters of %.2f mm: it has room on one about %.0f mm high (label.high_mm), or a wider one, or with less said", over, x, math.Ceil(high+over)))
	}
	s.d, s.small = &vector.Drawing{Wide: wide, High: high}, x
	_, more := lay(s)
	return fitted{s.d, x, s.net, append(faults, more...)}
}

// largest is the largest height between two that does, the lower of which does.
func largest(low, high float64, does func(float64) bool) float64 {
	if does(high) {
		return high
	}
	for high-low > 0.01 {
		if mid := (low + high) / 2; does(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// head sets what the bar is called, what it is, what its maker says and her logo, at the top of a box, and is how high that is.
func (l *Label) head(s *setter, b box, at vector.Anchor) float64 {
	logo := 0.0
	if l.logo != nil {
		p := *l.logo
		k := min(logoPart*b.wide/p.Wide, logoHigh*b.high/p.High) * s.head / headTimes
		p.Wide, p.High = k*p.Wide, k*p.High
		p.X, p.Y = b.x+b.wide-p.Wide, b.y
		if s.d != nil {
			s.d.Pictures = append(s.d.Pictures, p)
		}
		b.wide -= p.Wide + s.em()
		logo = p.High
	}
	return max(logo, s.flow(b, at, []block{
		{l.Title, vector.Bold, s.head}, {l.Identity, vector.Bold, nameTimes}, {l.Says, vector.Regular, 1},
	}))
}

// small is the small print: ingredients, cautions, who made it.
func (l *Label) smallPrint() []block {
	out := []block{{l.List, vector.Regular, 1}}
	for _, c := range l.Cautions {
		out = append(out, block{c, vector.Bold, 1})
	}
	return append(out, block{strings.Join(l.Maker, ", "), vector.Regular, 1})
}

// sayable says which letters the faces lack.
func (l *Label) sayable(s *vector.Letters) []string {
	var out []string
	for _, of := range []struct{ what, text string }{
		{"its title", l.Title},
		{"what it is", l.Identity},
		{"what it says", l.Says},
		{"the weight", l.Net},
		{"the list", l.List},
		{"a caution", strings.Join(l.Cautions, " ")},
		{"who made it", strings.Join(l.Maker, " ")},
		{"the lot", l.Lot},
	} {
		if lack := s.Missing(vector.Regular, strings.Join(words(of.text), " ")); len(lack) > 0 {
			out = append(out, fmt.Sprintf("%s has letters that this face cannot print: %s", of.what, string(lack)))
		}
	}
	return out
}
