package pour

import (
	"fmt"
	"math"

	"pourbench/pour/script"
)

// tellUnits says how a jug of an icing that has a shape is piped: through which tip, in how many units of what size, and where they stand.
func (s *Sheet) tellUnits(a script.Act) string {
	if a.Times == 0 {
		return ""
	}
	p, own, show := &s.Piping, &s.Plan.Piping, s.Plan.Show
	text := fmt.Sprintf("; %d %s", a.Times, own.called())
	if a.Times > 1 {
		text += "s"
	}
	text += fmt.Sprintf(" of %s, %s wide and %s high, %s, %s", show.Figure(p.UnitG, show.Dose), show.Figure(p.WidthMM, show.Len), show.Figure(p.HighMM, show.Len), own.tellTip(show), s.tellRows())
	if a.Jug != script.Whole && p.Bags > 1 {
		text += ", the bags in turn"
	}
	if p.RestG.V > 0 {
		text += "; what is over into the small mould"
	}
	return text
}

// tellTip is the tip as it is picked out of the drawer; a round one whose opening the shape does not need is not measured.
func (p *Piping) tellTip(show Show) string {
	text := "round tip"
	switch p.Tip {
	case TipStar:
		text = fmt.Sprintf("star tip of %d points", p.Points)
	case TipSlot:
		text = "slot tip"
	}
	if p.TipMM > 0 {
		text += ", " + show.LenTold(p.TipMM) + " open"
	}
	return text
}

// tellRows says where the units stand, by the places they have.
func (s *Sheet) tellRows() string {
	own, show, at := &s.Plan.Piping, s.Plan.Show, s.Piping.At
	if own.Along == PipeLoaf {
		rows := max(1, own.Rows)
		text := "in one row along the loaf's middle"
		if rows > 1 {
			text = fmt.Sprintf("in %d rows along the loaf", rows)
			if len(at) == s.Piping.Units {
				text += fmt.Sprintf(", middles %s apart", show.Len(math.Abs(at[len(at)/rows].AcrossMM-at[0].AcrossMM)))
			}
		}
		return text
	}
	each := max(1, own.PerBar)
	piece := "bar"
	if s.Plan.Mould.Shape == ShapeTube {
		piece = "top"
	}
	switch {
	case own.border() && each == 1:
		return "one across every " + piece + ", edge to edge"
	case own.border():
		return fmt.Sprintf("%d side by side across every %s, edge to edge", each, piece)
	case each == 1 || len(at) < 2:
		return "one on every " + piece + "'s middle"
	}
	return fmt.Sprintf("%d in a row across every %s, middles %s apart", each, piece, show.Len(math.Abs(at[1].AcrossMM-at[0].AcrossMM)))
}
