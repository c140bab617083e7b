package sticker

import (
	"fmt"

	"pourbench/pour/vector"
)

// Small things of a panel, in ems of the small words.
const (
	jarWide = 2.6
	jarHigh = 2.9
)

// single lays everything out on one label: what the bar is called at the top, small print under it, and at its foot the weight, with lot and
// dates beside it or, where that is too narrow, over it.
func (l *Label) single(s *setter) (over float64, faults []string) {
	pad := max(edge, l.Market.Print.ClearMM)
	in := box{pad, pad, l.Wide - 2*pad, l.High - 2*pad}
	if in.wide < 10 || in.high < 5 {
		return 0, []string{fmt.Sprintf("a label of %.0f by %.0f mm has no room for words: make it larger", l.Wide, l.High)}
	}
	f := l.weight(s, l.NetMM, in.wide)
	faults = l.footFaults(&f, in, l.High, l.Wide*l.High/100)
	head := l.head(s, in, vector.Start)
	dates := l.dates(s, in.wide)
	beside := dates.high > 0 && f.wide+2*f.clear+dates.wide <= in.wide
	low := f.high() + f.tail()
	if beside {
		low = max(low, dates.high)
	}
	bottom := in.y + in.high
	l.setFoot(s, in, vector.Start, f, bottom)
	if dates.high > 0 {
		at := bottom - dates.high
		if !beside {
			at -= low + f.clear
		}
		dates.draw(s, in, at, beside)
		if !beside {
			low += f.clear + dates.high
		}
	}
	if low > 0 {
		low += max(f.clear, apart*s.em())
	}
	body := (&setter{Letters: s.Letters, small: s.small}).flow(in, vector.Start, l.smallPrint())
	gap := s.em()
	s.flow(box{in.x, bottom - low - body, in.wide, body}, vector.Start, l.smallPrint())
	return head + gap + body + low - in.high, faults
}

// footFaults is what is wrong with the weight on a panel, of its own width and height and so many cm².
func (l *Label) footFaults(f *foot, in box, high, cm2 float64) []string {
	var out []string
	if f.wide > in.wide+1e-9 {
		out = append(out, fmt.Sprintf("the weight is %.1f mm wide in letters of %.2f mm, and there is room for %.1f: make the label wider", f.wide, f.least, in.wide))
	}
	if p := l.Market.Print; p.AtFoot(cm2) {
		if top := high - in.y - in.high + f.high() + f.tail(); top > p.Lowest/100*high {
			out = append(out, fmt.Sprintf("the weight reaches %.1f mm up, out of the lowest %.0f %% of the label where it has to stand in this market: make the label higher or wider", top, p.Lowest))
		}
	}
	return out
}

// setFoot writes the weight so that it ends at the bottom.
func (l *Label) setFoot(s *setter, in box, at vector.Anchor, f foot, bottom float64) {
	y := bottom - f.tail()
	for i := len(f.lines) - 1; i >= 0; i-- {
		s.write(in, at, y, f.em, f.face, f.lines[i])
		y -= lineHigh * f.em
	}
}

// dates are lot, best-before and the open jar with its months, as one thing: the jar at the right of the words.
type dates struct {
	lines      []string
	months     int
	wide, high float64
}

// dates sets them in lines no wider than they may be with the jar beside them.
func (l *Label) dates(s *setter, most float64) dates {
	d := dates{months: l.OpenMonths}
	beside := 0.0
	if d.months > 0 {
		beside = (jarWide + 1) * s.em()
	}
	for _, line := range []string{l.lot(), l.best()} {
		d.lines = append(d.lines, s.wrapped(vector.Regular, line, s.em(), most-beside)...)
	}
	for _, line := range d.lines {
		d.wide = max(d.wide, s.Wide(vector.Regular, line, s.em()))
	}
	d.wide += beside
	d.high = float64(len(d.lines)) * lineHigh * s.em()
	if d.months > 0 {
		d.high = max(d.high, jarHigh*s.em())
	}
	return d
}

// draw sets them into a box from a height on, at its right or at its left.
func (d dates) draw(s *setter, in box, y float64, right bool) {
	em := s.em()
	b := box{in.x, y, d.wide, d.high}
	if right {
		b.x = in.x + in.wide - b.wide
	}
	at := y + d.high - float64(len(d.lines))*lineHigh*em
	for _, line := range d.lines {
		s.write(b, vector.Start, at+footAt*em, em, vector.Regular, line)
		at += lineHigh * em
	}
	if d.months > 0 {
		jar(s, b.x+b.wide-jarWide*em, y+d.high-jarHigh*em, em, d.months)
	}
}

// jar is the sign of an opened jar with its months, "12M": how long the bar is good for once opened (Reg (EC) 1223/2009 Annex VII; its form from
// memory).
func jar(s *setter, x, y, em float64, months int) {
	if s.d == nil {
		return
	}
	const class = "jar"
	thick := 0.09 * em
	wide, high := jarWide*em, jarHigh*em
	line := func(x1, y1, x2, y2 float64) { s.d.Line(class, x+x1*wide, y+y1*high, x+x2*wide, y+y2*high, thick) }
	// The lid, lifted off and slanting.
	line(0.02, 0.22, 0.86, 0.02)
	line(0.06, 0.33, 0.90, 0.13)
	line(0.02, 0.22, 0.06, 0.33)
	line(0.86, 0.02, 0.90, 0.13)
	// The jar.
	line(0.06, 0.42, 0.94, 0.42)
	line(0.06, 0.42, 0.06, 1)
	line(0.94, 0.42, 0.94, 1)
	line(0.06, 1, 0.94, 1)
	text := fmt.Sprintf("%dM", months)
	s.write(box{x, y, wide, high}, vector.Middle, y+0.42*high+0.29*high+0.36*em, em, vector.Regular, text)
}
