package ruler

import (
	"errors"
	"math"

	"pourbench/pour"
)

// Of is the ruler of a sheet: its cut plan, and where its embeds stand. A mould that is not cut and a plan that could not be worked out have
// none, with the reason.
func Of(s pour.Sheet) (Ruler, error) {
	switch {
	case len(s.Base.Jugs) == 0:
		return Ruler{}, errors.New("draw the ruler: the plan cannot be worked out; put right what `pourbench check` names and draw it again")
	case !s.Plan.Mould.IsCut():
		return Ruler{}, errors.New("draw the ruler: what comes out of cavities is not cut, so that there is nothing to mark; a loaf, a slab or a tube has a ruler")
	}
	r := Ruler{Plan: s.Plan.Name, Show: s.Plan.Show, KerfMM: s.Cut.KerfMM, Edges: []Edge{lengthwise(s)}}
	if len(s.Cut.AcrossMM) > 0 {
		r.Edges = append(r.Edges, crosswise(s))
	}
	if at := s.Plan.PourAt; !at.IsZero() {
		r.Day = at.Format("2006-01-02")
	}
	return r, nil
}

// lengthwise is what is laid along the mould from its end A; of a tube along what comes out of it, from its lower end.
func lengthwise(s pour.Sheet) Edge {
	cut, m := s.Cut, s.Plan.Mould
	e := Edge{Along: "along the " + m.Shape, EndA: "end A", LengthMM: m.AlongMM(), Cuts: cut.CutsMM, Marks: cut.MarksMM}
	if m.Shape == pour.ShapeTube {
		e.EndA = "its lower end, end A,"
	}
	columns := cut.Columns()
	for i, b := range columns {
		span := Span{Kind: Bar, Number: i + 1, From: b.StartMM, To: b.EndMM}
		if n := len(cut.Bars) / len(columns); n > 1 { // bars are counted from the left wall on, column after column
			span.Number, span.Last = i*n+1, (i+1)*n
		}
		e.Spans = append(e.Spans, span)
	}
	if cut.TrimAMM > slack {
		e.Spans = append(e.Spans, Span{Kind: Trim, To: cut.TrimAMM})
	}
	if cut.TrimBMM > slack {
		e.Spans = append(e.Spans, Span{Kind: Trim, From: e.LengthMM - cut.TrimBMM, To: e.LengthMM})
	}
	if cut.SliceMM > slack {
		e.Spans = append(e.Spans, Span{Kind: Slice, From: cut.SliceAt, To: cut.SliceAt + cut.SliceMM})
	}
	for _, kind := range s.Embeds {
		for _, p := range kind.Pieces {
			if p.Verdict != pour.VerdictThrough { // a rod lies along the whole loaf
				e.centre(Centre{Name: kind.Name, MM: p.CentreMM, Mark: p.MarkMM})
			}
		}
	}
	return e
}

// crosswise is what is laid across a slab from its left side, seen from end A.
func crosswise(s pour.Sheet) Edge {
	cut := s.Cut
	e := Edge{Along: "across the slab", EndA: "left side, seen from end A,", LengthMM: s.Plan.Mould.WidthMM, Cuts: cut.AcrossMM, Marks: cut.AcrossMarkMM}
	end := 0.0
	for i, b := range cut.Bars {
		if b.StartMM != cut.Bars[0].StartMM {
			break
		}
		if i == 0 && b.LeftMM > slack {
			e.Spans = append(e.Spans, Span{Kind: Trim, To: b.LeftMM})
		}
		e.Spans = append(e.Spans, Span{Kind: Bar, Number: i + 1, Row: true, From: b.LeftMM, To: b.RightMM})
		end = b.RightMM
	}
	if end < e.LengthMM-s.Cut.KerfMM-slack {
		e.Spans = append(e.Spans, Span{Kind: Trim, From: end, To: e.LengthMM})
	}
	for _, kind := range s.Embeds {
		for _, p := range kind.Pieces {
			at := p.AcrossMM + e.LengthMM/2
			e.centre(Centre{Name: kind.Name, MM: at, Mark: math.Round(at*2) / 2})
		}
	}
	return e
}

// centre adds a middle; pieces of one kind in one line across the ruler have one, and what lies beside the mould none.
func (e *Edge) centre(c Centre) {
	if c.MM < -slack || c.MM > e.LengthMM+slack {
		return
	}
	for _, there := range e.Centres {
		if d := there.MM - c.MM; there.Name == c.Name && d < slack && d > -slack {
			return
		}
	}
	e.Centres = append(e.Centres, c)
}
