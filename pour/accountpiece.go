package pour

import (
	"math"
	"slices"
)

// pieceAccounts are the pieces one by one: where each stands, and how clear it is.
func pieceAccounts() []accountRow {
	of := func(f func(*EmbedPiece) Figure) func(teller) Figure {
		return func(t teller) Figure {
			p, _, _ := t.sheet.Piece(t.ix[0])
			return f(&p)
		}
	}
	cut := []string{"embed-cut", "embed-tight", "embed-sight"}
	term := func(pattern, label, key string, f func(*EmbedPiece) float64) accountRow {
		return accountRow{
			pattern: pattern, label: label, unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return Know(f(p)) }),
			how: func(t teller) Term { return t.whole(key) },
		}
	}
	return []accountRow{
		{pattern: "embeds[].bar", label: "bar of {}", unit: UnitCount, value: of(func(p *EmbedPiece) Figure { return Figure{V: float64(p.Bar), Known: p.Bar > 0} }), feeds: []string{"embed-astray"}, how: func(t teller) Term {
			p, _, _ := t.sheet.Piece(t.ix[0])
			return t.known("the bar it stands in", float64(p.Bar), UnitCount, "where it stands, and the cuts")
		}},
		{pattern: "embeds[].centre_mm", label: "middle of {} from end A", unit: UnitMM, value: of(func(p *EmbedPiece) Figure { return Know(p.CentreMM) }), feeds: cut, how: teller.centre},
		{pattern: "embeds[].across_mm", label: "middle of {} from the loaf's middle, to the right", unit: UnitMM, value: of(func(p *EmbedPiece) Figure { return Know(p.AcrossMM) }), feeds: []string{"embed-wall", "embed-touch", "embed-iced"}, how: func(t teller) Term {
			p, i, _ := t.sheet.Piece(t.ix[0])
			off := t.whole("top.embed[" + decimal(i) + "].across_mm")
			return sum(t.known("its place side by side with others", p.AcrossMM-off.Value(), UnitMM, "your plan"), off)
		}},
		{pattern: "embeds[].mark_mm", label: "mark of {} from end A", unit: UnitMM, value: of(func(p *EmbedPiece) Figure { return Know(p.MarkMM) }), how: func(t teller) Term {
			if p, i, _ := t.sheet.Piece(t.ix[0]); t.sheet.Embeds[i].Rod {
				return t.known("middle of the rod", p.MarkMM, UnitMM, "it lies along the loaf")
			}
			return nearestStep(t.fig("embeds[].centre_mm", t.ix[0]), t.known("step of marks", markStepMM, UnitMM, "rounded once, from end A"))
		}},
		{pattern: "embeds[].clear_a_mm", label: "room of {} towards end A", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return p.ClearAMM }), how: func(t teller) Term { return t.clearSide(false) }},
		{pattern: "embeds[].clear_b_mm", label: "room of {} towards end B", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return p.ClearBMM }), how: func(t teller) Term { return t.clearSide(true) }},
		{pattern: "embeds[].clear_left_mm", label: "room of {} to the left, seen from end A", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return p.ClearLeftMM }), how: func(t teller) Term { return t.clearAside(false) }},
		{pattern: "embeds[].clear_right_mm", label: "room of {} to the right, seen from end A", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return p.ClearRightMM }), how: func(t teller) Term { return t.clearAside(true) }},
		{pattern: "embeds[].clear_mm", label: "room of {} beside the nearer cut", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return p.ClearMM }), how: teller.clear},
		term("embeds[].place_mm", "{}: set by hand within", "cut.place_mm", func(p *EmbedPiece) float64 { return p.Budget.Placing }),
		term("embeds[].wander_mm", "{}: a cut wanders by", "cut.wander_mm", func(p *EmbedPiece) float64 { return p.Budget.Wander }),
		{pattern: "embeds[].sight_mm", label: "{}: a slanted look is off by", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return Know(p.Budget.Sight) }), how: teller.sight},
		{pattern: "embeds[].half_kerf_mm", label: "{}: half of what a cut takes", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return Know(p.Budget.HalfKerf) }), how: func(t teller) Term {
			p, _, _ := t.sheet.Piece(t.ix[0])
			return t.law("half of what a cut takes, where the plan does not say", p.Budget.HalfKerf, UnitMM, "common practice: a wire takes 0.6 mm", "common practice, no source")
		}},
		{pattern: "embeds[].need_mm", label: "room {} needs at worst", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return Know(p.Budget.Worst()) }), how: func(t teller) Term {
			all := t.terms()
			return sum(all...)
		}, why: "where every error goes the same way"},
		{pattern: "embeds[].usual_mm", label: "room {} needs as a rule", unit: UnitMM, feeds: cut, value: of(func(p *EmbedPiece) Figure { return Know(p.Budget.Usual()) }), how: func(t teller) Term {
			return modelled("root of the summed squares of ", func(v []float64) float64 {
				all := 0.0
				for _, x := range v {
					all += x * x
				}
				return math.Sqrt(all)
			}, t.terms()...)
		}, why: "where the errors are independent of each other, each term twice its standard deviation"},
	}
}

// terms are the errors a side has to leave room for.
func (t teller) terms() []Term {
	var all []Term
	for _, key := range [...]string{"place_mm", "wander_mm", "sight_mm", "half_kerf_mm"} {
		all = append(all, t.fig("embeds[]."+key, t.ix[0]))
	}
	return all
}

// centre is where a piece stands along the loaf.
func (t teller) centre() Term {
	p, i, _ := t.sheet.Piece(t.ix[0])
	e := &t.sheet.Plan.Top.Embeds[i]
	switch {
	case e.Outline == OutlineRod:
		return ratio(t.lengthCut(), bare(2))
	case e.In == EmbedOwn:
		return t.known("your mark", p.CentreMM, UnitMM, "your plan, top.embed["+decimal(i)+"].at_mm")
	}
	off := t.whole("top.embed[" + decimal(i) + "].along_mm")
	return sum(t.known("middle of its bar", p.CentreMM-off.Value(), UnitMM, "the cut plan"), off)
}

// lengthCut is the length that cuts are measured along.
func (t teller) lengthCut() Term {
	if m := t.sheet.Plan.Mould; m.AlongMM() != m.LengthMM {
		return t.known("length that is cut", m.AlongMM(), UnitMM, "your mould and how high it is filled")
	}
	return t.whole("mould.length_mm")
}

// clearSide is the room between a piece and its bar's side towards an end.
func (t teller) clearSide(b bool) Term {
	p, i, _ := t.sheet.Piece(t.ix[0])
	bar, centre, half := t.sheet.Cut.Bars[p.Bar-1], t.fig("embeds[].centre_mm", t.ix[0]), ratio(t.fig("embed_kinds[].extent_mm", i), bare(2))
	if b {
		return less(less(t.known("end of its bar", bar.EndMM, UnitMM, "the cut plan"), centre), half)
	}
	return less(less(centre, half), t.known("start of its bar", bar.StartMM, UnitMM, "the cut plan"))
}

// clearAside is the room between a piece and its bar's left or right side.
func (t teller) clearAside(right bool) Term {
	p, i, _ := t.sheet.Piece(t.ix[0])
	bar, half := t.sheet.Cut.Bars[p.Bar-1], ratio(t.fig("embed_kinds[].extent_across_mm", i), bare(2))
	centre := sum(t.fig("embeds[].across_mm", t.ix[0]), ratio(t.whole("mould.width_mm"), bare(2)))
	if right {
		return less(less(t.known("right side of its bar", bar.RightMM, UnitMM, "the cut plan"), centre), half)
	}
	return less(less(centre, half), t.known("left side of its bar", bar.LeftMM, UnitMM, "the cut plan"))
}

// clear is the room on the side that has least.
func (t teller) clear() Term {
	p, _, _ := t.sheet.Piece(t.ix[0])
	var cut []Term
	for i, side := range [...]Figure{p.ClearAMM, p.ClearBMM, p.ClearLeftMM, p.ClearRightMM} {
		if side.Known {
			cut = append(cut, t.fig("embeds[].clear_"+[...]string{"a", "b", "left", "right"}[i]+"_mm", t.ix[0]))
		}
	}
	if len(cut) == 1 {
		return cut[0]
	}
	return modelled("the smallest of ", slices.Min[[]float64], cut...)
}

// sight is how far a mark seems off for a look from aside.
func (t teller) sight() Term {
	c := t.sheet.Plan.Cut
	rim := t.whole("cut.rim_mm")
	if c.RimMM == 0 {
		rim = larger(less(t.whole("mould.height_mm"), t.whole("mould.fill_mm")), bare(0))
	}
	if c.EyeMM > 0 {
		off := modelled("either way ", func(v []float64) float64 { return math.Abs(v[0] - v[1]/2) }, t.fig("embeds[].centre_mm", t.ix[0]), t.lengthCut())
		if len(t.sheet.Cut.AcrossMM) > 0 {
			off = larger(off, modelled("either way ", func(v []float64) float64 { return math.Abs(v[0]) }, t.fig("embeds[].across_mm", t.ix[0])))
		}
		return ratio(product(rim, off), t.whole("cut.eye_mm"))
	}
	tan := modelled("tangent of ", func(v []float64) float64 { return math.Tan(v[0] * math.Pi / 180) }, t.whole("cut.sight_deg"))
	return product(rim, tan)
}
