package pour

import (
	"math"

	"pourbench/pour/shape"
)

// PipedAt is where one unit of icing stands, by its middle.
type PipedAt struct {
	AlongMM  float64 // from end A
	AcrossMM float64 // from the loaf's middle to the right, seen from end A
	Bar      int     // the bar it was meant for, from 1; 0: it stands in a row along the loaf
}

// mostPiped is how many units have a place: no hand pipes more on one loaf, and a picture shows none of them.
const mostPiped = 4000

// pieces are the icing of a plan as they stand on the loaf.
type pieces struct {
	piece
	units  int
	counts float64 // how many times the time for one it takes: a border counts by its length in parts of 100 mm, what is spooned not at all
	at     []PipedAt
}

// borderMM is the length of border that takes as long as one unit.
const borderMM = 100

// topMM is how long the top is that icing is piped on: a tube's is round, cavities stand end to end.
func (m Mould) topMM() float64 {
	if m.Shape == ShapeTube {
		return m.LengthMM
	}
	return m.AlongMM()
}

// tops are the pieces of the top that units are piped on: the bars, or of a tube, which is cut across its height, the one round on top.
func (m Mould) tops(cut CutSheet) CutSheet {
	if m.Shape == ShapeTube {
		return CutSheet{Bars: []BarPiece{{EndMM: m.LengthMM, RightMM: m.LengthMM}}}
	}
	return cut
}

// lay puts a shape that lacks nothing onto the bars or along the loaf.
func (p *Piping) lay(m Mould, cut CutSheet) pieces {
	cut = m.tops(cut)
	switch {
	case p.Spoons():
		long := m.AreaMM2() / m.WidthMM
		return pieces{piece: p.piece(long, m.WidthMM), units: 1, at: []PipedAt{{AlongMM: m.topMM() / 2}}}
	case p.Along == PipeLoaf:
		return p.inRows(m)
	}
	return p.onBars(m, cut)
}

// inRows lays rows along the whole loaf: a border from end to end, of anything else as many as fit.
func (p *Piping) inRows(m Mould) pieces {
	long := m.topMM()
	out := pieces{piece: p.piece(long, m.WidthMM)}
	rows, each := max(1, p.Rows), 1
	step := out.along
	if p.Shape == PipeShells {
		step *= 1 - p.OverlapPercent/100
	}
	if !p.border() {
		each = shape.Fit(long, out.along, step)
	}
	out.units = rows * each
	out.counts = float64(out.units)
	if p.border() {
		out.counts *= long / borderMM
	}
	used := out.along + float64(each-1)*step
	for r := range rows {
		across := out.rowAt(r, rows, m.WidthMM)
		for i := range min(each, mostPiped/rows) {
			out.at = append(out.at, PipedAt{AlongMM: (long-used)/2 + out.along/2 + float64(i)*step, AcrossMM: across})
		}
	}
	return out
}

// rowAt is where a row along the loaf lies across it: one in the middle, more of them from edge to edge.
func (l *pieces) rowAt(r, rows int, width float64) float64 {
	if rows == 1 {
		return 0
	}
	return (width - l.wide) * (float64(r)/float64(rows-1) - 0.5)
}

// onBars lays so many units onto the middle of every bar, side by side across it. A border crosses the bar from edge to edge.
func (p *Piping) onBars(m Mould, cut CutSheet) pieces {
	wide := m.WidthMM
	if len(cut.Bars) > 0 {
		wide = cut.usualWideMM()
	}
	out := pieces{piece: p.piece(wide, wide)}
	each := max(1, p.PerBar)
	out.units = len(cut.Bars) * each
	out.counts = float64(out.units)
	if p.border() {
		out.counts *= wide / borderMM
	}
	for i := range min(out.units, mostPiped) {
		bar := cut.Bars[i/each]
		at := PipedAt{AlongMM: bar.MiddleMM(), AcrossMM: (bar.LeftMM + bar.RightMM - m.WidthMM) / 2, Bar: i/each + 1}
		if p.border() {
			at.AlongMM += out.wide * (float64(i%each) - float64(each-1)/2) // side by side along the loaf
		} else {
			at.AcrossMM += wide * ((float64(i%each)+0.5)/float64(each) - 0.5)
		}
		out.at = append(out.at, at)
	}
	return out
}

// acrossMM is how much of the bar's width the units side by side on it take, and what there is, mm; false where none stand so.
func (p *Piping) acrossMM(m Mould, cut CutSheet, l pieces) (takes, has float64, ok bool) {
	if p.Spoons() || p.border() {
		return 0, 0, false
	}
	takes, has = l.wide*float64(max(1, p.PerBar)), m.WidthMM
	if p.Along == PipeLoaf {
		return l.wide * float64(max(1, p.Rows)), has, true
	}
	if len(cut.Bars) > 0 {
		has = cut.usualWideMM()
	}
	return takes, has, true
}

// gapMM is what is left along the loaf between the units of neighbouring bars, mm; false where they stand in rows or there is but one bar.
func (p *Piping) gapMM(m Mould, cut CutSheet, l pieces) (float64, bool) {
	tops := m.tops(cut)
	rows := tops.Columns()
	if !m.IsCut() || p.Along == PipeLoaf || p.Spoons() || len(rows) < 2 {
		return 0, false
	}
	takes := l.along
	if p.border() {
		takes = l.wide * float64(max(1, p.PerBar))
	}
	gap := math.Inf(1)
	for i := 1; i < len(rows); i++ {
		gap = min(gap, rows[i].MiddleMM()-rows[i-1].MiddleMM()-takes)
	}
	return gap, true
}
