package ruler

import (
	"errors"

	"pourbench/pour"
)

// Of is the ruler of a sheet: its cut plan, and where its embeds stand. A mould that is not cut and a plan that could not be worked out have
// none, with the reason.
func Of(s pour.Sheet) (Ruler, error) {
	if len(s.Cut.Bars) == 0 && len(s.Cut.CutsMM) == 0 {
		return Ruler{}, errors.New("draw the ruler: no cut of this plan could be worked out; put right what `pourbench check` names and draw it again")
	}
	r := Ruler{Plan: s.Plan.Name, KerfMM: s.Plan.Cut.KerfMM, Edges: []Edge{lengthwise(s)}}
	if at := s.Plan.PourAt; !at.IsZero() {
		r.Day = at.Format("2006-01-02")
	}
	return r, nil
}

// lengthwise is what is laid along the mould from its end A.
func lengthwise(s pour.Sheet) Edge {
	cut, m := s.Cut, s.Plan.Mould
	e := Edge{Along: "along the " + m.Shape, LengthMM: m.LengthMM, Cuts: cut.CutsMM, Marks: cut.MarksMM}
	for i, b := range cut.Bars {
		e.Spans = append(e.Spans, Span{Kind: Bar, Number: i + 1, From: b.StartMM, To: b.EndMM})
	}
	if cut.TrimAMM > slack {
		e.Spans = append(e.Spans, Span{Kind: Trim, To: cut.TrimAMM})
	}
	if cut.TrimBMM > slack {
		e.Spans = append(e.Spans, Span{Kind: Trim, From: m.LengthMM - cut.TrimBMM, To: m.LengthMM})
	}
	if cut.SliceMM > slack {
		e.Spans = append(e.Spans, Span{Kind: Slice, From: cut.SliceAt, To: cut.SliceAt + cut.SliceMM})
	}
	for _, kind := range s.Embeds {
		for _, p := range kind.Pieces {
			e.centre(Centre{Name: kind.Name, MM: p.CentreMM, Mark: p.MarkMM})
		}
	}
	return e
}

// centre adds a middle; pieces of one kind side by side across the mould have one.
func (e *Edge) centre(c Centre) {
	for _, there := range e.Centres {
		if d := there.MM - c.MM; there.Name == c.Name && d < slack && d > -slack {
			return
		}
	}
	e.Centres = append(e.Centres, c)
}
