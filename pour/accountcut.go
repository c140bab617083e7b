package pour

import (
	"math"

	"pourbench/pour/shape"
)

// cutAccounts are where the loaf is cut, and what every piece of it weighs.
func cutAccounts() []accountRow {
	mm := func(pattern, label string, of func(*CutSheet, teller) float64, how func(teller) Term, why string, feeds ...string) accountRow {
		return accountRow{pattern: pattern, label: label, unit: UnitMM, feeds: feeds, why: why, how: how, value: func(t teller) Figure { return AsFigure(of(&t.sheet.Cut, t)) }}
	}
	cut := func(how func(teller, int) Term) func(teller) Term {
		return func(t teller) Term { return how(t, t.ix[0]) }
	}
	bar := func(t teller) BarPiece { return t.sheet.Cut.Bars[t.ix[0]] }
	rows := []accountRow{
		mm("cut.cuts_mm[]", "{}", func(c *CutSheet, t teller) float64 { return c.CutsMM[t.ix[0]] }, cut(teller.cutAt), "the middle of the wire or blade, from end A"),
		mm("cut.marks_mm[]", "mark of {}", func(c *CutSheet, t teller) float64 { return c.MarksMM[t.ix[0]] }, cut(func(t teller, i int) Term {
			return nearestStep(t.fig("cut.cuts_mm[]", i), bare(shape.MarkStep))
		}), "rounded once, so that no two errors add up"),
		mm("cut.across_mm[]", "{} along the slab", func(c *CutSheet, t teller) float64 { return c.AcrossMM[t.ix[0]] }, cut(func(t teller, i int) Term {
			return t.known("cut "+decimal(i+1)+" from the left side", t.sheet.Cut.AcrossMM[i], UnitMM, "mould.bar_width_mm, one bar beside the other")
		}), "the middle of the wire or blade, from the left side seen from end A"),
		mm("cut.across_marks_mm[]", "mark of {} along the slab", func(c *CutSheet, t teller) float64 { return c.AcrossMarkMM[t.ix[0]] }, cut(func(t teller, i int) Term {
			return nearestStep(t.fig("cut.across_mm[]", i), bare(shape.MarkStep))
		}), "rounded once"),
		mm("cut.kerf_mm", "what one cut takes", func(c *CutSheet, _ teller) float64 { return c.KerfMM }, teller.kerf, ""),
		mm("cut.lane_mm", "lane to leave free over a cut", func(c *CutSheet, _ teller) float64 { return c.LaneMM }, func(t teller) Term {
			if !t.sheet.Plan.Mould.IsCut() {
				return t.kerf()
			}
			return sum(t.kerf(), t.known("a grain", usualGrainMM, UnitMM, "sanding sugar and the like, common practice"), product(bare(2), t.whole("cut.wander_mm")))
		}, "grains in it are hit by the wire"),
		mm("cut.bars[].start_mm", "where {} begins", func(_ *CutSheet, t teller) float64 { return bar(t).StartMM }, func(t teller) Term { return t.edge(bar(t).StartMM, 1) }, "from end A"),
		mm("cut.bars[].end_mm", "where {} ends", func(_ *CutSheet, t teller) float64 { return bar(t).EndMM }, func(t teller) Term { return t.edge(bar(t).EndMM, -1) }, "from end A"),
		mm("cut.bars[].left_mm", "left side of {}", func(_ *CutSheet, t teller) float64 { return bar(t).LeftMM }, func(t teller) Term { return t.side(bar(t).LeftMM, 1) }, "from the left side of the mould, seen from end A"),
		mm("cut.bars[].right_mm", "right side of {}", func(_ *CutSheet, t teller) float64 { return bar(t).RightMM }, func(t teller) Term { return t.side(bar(t).RightMM, -1) }, "from the left side of the mould, seen from end A"),
		mm("cut.bars[].thickness_mm", "thickness of {}", func(_ *CutSheet, t teller) float64 { return bar(t).ThicknessMM() }, func(t teller) Term {
			return less(t.fig("cut.bars[].end_mm", t.ix[0]), t.fig("cut.bars[].start_mm", t.ix[0]))
		}, ""),
		mm("cut.trimmed_a_mm", "trim at end A", func(c *CutSheet, _ teller) float64 { return c.TrimAMM }, func(t teller) Term { return t.trimEnd(t.sheet.Cut.TrimAMM, -1) }, "as it is cut; the plan states the least", "mould-offcut"),
		mm("cut.trimmed_b_mm", "trim at end B", func(c *CutSheet, _ teller) float64 { return c.TrimBMM }, func(t teller) Term {
			if t.sheet.Cut.TrimBMM == 0 {
				return t.known("end B is kept", 0, UnitMM, "the cut plan")
			}
			return less(t.along(), t.trimEnd(t.sheet.Plan.Mould.AlongMM()-t.sheet.Cut.TrimBMM, 1))
		}, "as it is cut; the plan states the least", "mould-offcut"),
		mm("cut.sliced_mm", "sample slice", func(c *CutSheet, _ teller) float64 { return c.SliceMM }, func(t teller) Term {
			return t.known("sample slice", t.sheet.Cut.SliceMM, UnitMM, "your plan, cut.slice_mm, or your own marks")
		}, ""),
		mm("cut.gang_at_mm", "first wire at", func(c *CutSheet, _ teller) float64 { return c.Gang.AtMM.orUnknown() }, func(t teller) Term {
			return t.known("first wire", t.sheet.Cut.Gang.AtMM.V, UnitMM, "your plan, cut.gang_at_mm, or where it leaves most whole bars and most embeds clear")
		}, "from end A", "wires-off-pitch"),
		mm("cut.gang_pitch_mm", "from wire to wire", func(c *CutSheet, _ teller) float64 { return c.Gang.PitchMM.orUnknown() }, func(t teller) Term {
			w := t.sheet.Plan.Cut.gang().Wires
			return ratio(less(t.known("last wire", w[len(w)-1], UnitMM, "your plan, cut.wires_mm"), t.known("first wire", w[0], UnitMM, "your plan, cut.wires_mm")), bare(float64(len(w)-1)))
		}, "on average", "wires-off-pitch"),
		mm("cut.gang_worst_mm", "worst placed embed off the middle of its bar", func(c *CutSheet, _ teller) float64 { return c.Gang.WorstMM.orUnknown() }, func(t teller) Term {
			return t.known("the furthest off", t.sheet.Cut.Gang.WorstMM.V, UnitMM, "your embeds' places against your wires, all wires placed as well as they can be")
		}, "", "wires-off-pitch"),
		mm("cut.opening_need_mm", "what the cutter has to let through", func(c *CutSheet, _ teller) float64 { return c.OpeningNeedMM.orUnknown() }, func(t teller) Term { return t.cutterNeed(t.sheet.Plan.Cut.Lay != LaySide) }, "an icing put on by eye has higher peaks", "cutter-low"),
		mm("cut.bed_need_mm", "how deep the cutter's bed has to be", func(c *CutSheet, _ teller) float64 { return c.BedNeedMM.orUnknown() }, func(t teller) Term { return t.cutterNeed(t.sheet.Plan.Cut.Lay == LaySide) }, "an icing put on by eye has higher peaks", "cutter-shallow"),
	}
	return append(rows, cutMassAccounts()...)
}

// kerf is what one cut takes.
func (t teller) kerf() Term {
	if !t.sheet.Plan.Mould.IsCut() {
		return t.known("nothing is cut", 0, UnitMM, "the mould")
	}
	return t.whole("cut.kerf_mm")
}

// cutAt is where a cut stands: of bars that are all alike after so many of them, of wires by the first of them.
func (t teller) cutAt(i int) Term {
	c, own := &t.sheet.Cut, &t.sheet.Plan.Cut
	x := c.CutsMM[i]
	from := "your plan, cut.marks_mm"
	switch own.By {
	case CutGang:
		return sum(t.fig("cut.gang_at_mm"), t.known("from the first wire", x-c.Gang.AtMM.V, UnitMM, "your plan, cut.wires_mm; a sample slice is cut off by hand"))
	case CutMass:
		from = "bars of one mass laid end to end"
	case CutBest:
		from = "the best plan: most bars, placed embeds clear, bars alike, embeds in their middles, least left over"
	case "", CutBars, CutCount:
		if before := c.before(x); before > 0 {
			first := c.Columns()[0]
			return sum(t.known("where the first bar begins", first.StartMM, UnitMM, "trim and sample slice, each with its cut"),
				product(bare(float64(before)), t.known("thickness of a bar", first.ThicknessMM(), UnitMM, "the cut plan")),
				product(bare(float64(before)-0.5), t.whole("cut.kerf_mm")))
		}
		from = "the trim, and the sample slice with its cut"
	}
	return t.known("cut "+decimal(i+1), x, UnitMM, from)
}

// before is how many columns of bars lie before a cut, where they and it follow each other with nothing but cuts between.
func (c *CutSheet) before(x float64) int {
	columns := c.Columns()
	if len(columns) == 0 {
		return 0
	}
	n := 0
	for _, b := range columns {
		if b.EndMM <= x {
			n++
		}
	}
	first := columns[0]
	alike := float64(n)*first.ThicknessMM() + (float64(n)-0.5)*c.KerfMM + first.StartMM
	if math.Abs(alike-x) > noise {
		return 0
	}
	return n
}

// edge is where a face of a bar is: beside the cut that made it, or at the end of the loaf.
func (t teller) edge(at, side float64) Term {
	return t.face(at, side, t.sheet.Cut.CutsMM, "cut.cuts_mm[]", t.along())
}

// side is the same across a slab.
func (t teller) side(at, side float64) Term {
	return t.face(at, side, t.sheet.Cut.AcrossMM, "cut.across_mm[]", t.whole("mould.width_mm"))
}

func (t teller) face(at, side float64, cuts []float64, pattern string, whole Term) Term {
	for i, x := range cuts {
		if math.Abs(x+side*t.sheet.Cut.KerfMM/2-at) < noise {
			half := ratio(t.whole("cut.kerf_mm"), bare(2))
			if side > 0 {
				return sum(t.fig(pattern, i), half)
			}
			return less(t.fig(pattern, i), half)
		}
	}
	if math.Abs(whole.Value()-at) < noise {
		return whole
	}
	return t.known("the mould's own side", at, UnitMM, "the mould")
}

// trimEnd is where a trim ends; 0: the end is kept.
func (t teller) trimEnd(at, side float64) Term {
	if at == 0 {
		return t.known("end A is kept", 0, UnitMM, "the cut plan")
	}
	return t.edge(at, side)
}

// cutterNeed is the loaf's height with what stands on it, or its width.
func (t teller) cutterNeed(tall bool) Term {
	if !tall {
		return t.whole("mould.width_mm")
	}
	s := t.sheet
	on := bare(0)
	if s.Icing != nil {
		on = t.at(s.Icing).fig("batch.height_mm")
	}
	for i, e := range s.Embeds {
		on = larger(on, t.known(e.Name+" over the base", s.Embeds[i].OutMM, UnitMM, "your plan"))
	}
	return sum(t.at(&s.Base).fig("batch.height_mm"), on)
}
