package sticker

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/shape"
	"pourbench/pour/vector"
)

// How a band is laid out, mm.
const (
	lap     = 12.0 // glued under the other end; what a bar is larger than its forecast takes of it
	open    = 5.0  // of the bar that a band leaves bare at either end, where no height is stated
	tick    = 1.5  // marks of the folds
	padBand = 2.5  // free at the edges of each side
)

// band lays the label out in the sides of a band: its small print on the back, lot and dates on the side after it, what the bar is called and its
// weight on the front, the other side bare, then the lap to glue. A band round a round has its front on 40 % of the way, the rest behind it.
type band struct {
	*Label

	high, least float64
	back, front box
	side        box // of a round none
	folds       []float64
}

// banded is the band for the label's bar.
func (l *Label) banded() (band, error) {
	b := band{Label: l, high: l.BandHigh}
	switch {
	case !l.Bar.known():
		return b, fmt.Errorf("draw the band: the size of the cured bar cannot be told; `pourbench check` names what is missing")
	case b.high == 0:
		b.high = max(l.Bar.Up-2*open, l.Bar.Up/2)
	case b.high > l.Bar.Up+1e-9:
		return b, fmt.Errorf("draw the band: %.1f mm is higher than the cured bar, which is %.1f: make label.high_mm smaller, or 0", b.high, l.Bar.Up)
	}
	if l.Bar.Round {
		front := 0.4 * l.Bar.Around() // 16 CFR 500.21(a): the principal panel of a cylinder
		b.back, b.front = b.panel(0, l.Bar.Around()-front), b.panel(l.Bar.Around()-front, front)
		b.least = l.Market.LetterMM(l.netG, front, l.Bar.Up, max(l.Bar.Front, l.Bar.Up))
		return b, nil
	}
	w, t := l.Bar.Front, l.Bar.Side
	b.back, b.side, b.front = b.panel(0, w), b.panel(w, t), b.panel(w+t, w)
	b.folds = []float64{w, w + t, w + t + w, 2 * (w + t)}
	b.least = l.Market.LetterMM(l.netG, w, l.Bar.Up, max(w, t, l.Bar.Up))
	return b, nil
}

// panel is the room on a side that begins at x.
func (b *band) panel(x, wide float64) box {
	pad := max(padBand, b.Market.Print.ClearMM)
	return box{x + pad, pad, wide - 2*pad, b.high - 2*pad}
}

// long is the length of the paper.
func (b *band) long() float64 { return b.Bar.Around() + lap }

// cm2 is the face of the bar that the front of the band stands for.
func (b *band) cm2() float64 {
	if b.Bar.Round {
		return 0.4 * b.Bar.Around() * b.Bar.Up / 100
	}
	return b.Bar.Front * b.Bar.Up / 100
}

// lay lays everything out and says by how much the fullest side is too high.
func (b *band) lay(s *setter) (over float64, faults []string) {
	if b.high < 8 || b.front.wide < 10 {
		return 0, []string{fmt.Sprintf("a band %.0f mm high on a side of %.0f has no room for words", b.high, b.front.wide)}
	}
	f := b.weight(s, b.least, b.front.wide)
	faults = b.footFaults(&f, b.front, b.high, b.cm2())
	low := f.high() + f.tail()
	b.setFoot(s, b.front, vector.Middle, f, b.front.y+b.front.high)
	over = b.head(s, b.front, vector.Middle) + f.clear + low - b.front.high
	room := b.back
	switch d := b.dates(s, b.side.wide); {
	case d.high == 0:
	case d.wide <= b.side.wide && d.high <= b.side.high && whole(d.lines, b.lot(), b.best()):
		d.draw(s, b.side, b.side.y+(b.side.high-d.high)/2, false)
	default:
		d = b.dates(s, room.wide)
		d.draw(s, room, room.y+room.high-d.high, false)
		room.high -= d.high + apart*s.em()
	}
	over = max(over, s.flow(room, vector.Start, b.smallPrint())-room.high)
	b.marks(s)
	return over, faults
}

// whole reports whether lines hold every word of some texts in one piece.
func whole(lines []string, texts ...string) bool {
	return slices.Equal(words(strings.Join(lines, " ")), words(strings.Join(texts, " ")))
}

// marks are the folds and the lap.
func (b *band) marks(s *setter) {
	if s.d == nil {
		return
	}
	for _, x := range b.folds {
		s.d.Line("fold", x, 0, x, tick, 0.15)
		s.d.Line("fold", x, b.high, x, b.high-tick, 0.15)
	}
	at := b.Bar.Around()
	for _, n := range shape.Hatch(at, 0, lap, b.high, 3) {
		s.d.Line("lap", n[0], n[1], n[2], n[3], 0.1)
	}
}
