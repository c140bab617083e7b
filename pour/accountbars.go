package pour

// barAccounts are what comes off the cutter, and what of a scent is in it.
func barAccounts() []accountRow {
	bars := func(of func(*Bars) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.sheet.Bars)) }
	}
	rows := []accountRow{
		{pattern: "scale_step_g", label: "step of the scale", unit: UnitGram, value: func(t teller) Figure { return Know(t.sheet.Plan.Show.ScaleStepG) }, how: teller.scaleStep},
		{pattern: "lye_step_g", label: "step of the finer scale", unit: UnitGram, value: func(t teller) Figure { return Know(t.sheet.Plan.Show.LyeStepG) }, how: teller.lyeStep},
		{
			pattern: "loss_percent", label: "what stays in pots and jugs", unit: UnitPercent, value: func(t teller) Figure { return Know(t.sheet.Plan.Mould.LossPercent) },
			how: func(t teller) Term { return t.whole("mould.loss_percent") },
		},
		{pattern: "bars.bar_count", label: "bars", unit: UnitCount, value: bars(func(b *Bars) float64 { return float64(b.Count) }), feeds: []string{"mould-offcut"}, how: teller.barCount, why: "whole ones; what is left is trimming"},
		{pattern: "bars.thickness_mm", label: "thickness of a bar", unit: UnitMM, value: bars(func(b *Bars) float64 { return b.ThicknessMM }), how: func(t teller) Term {
			if t.plainCut() {
				return t.thickness()
			}
			return t.meanOf("cut.bars[].thickness_mm")
		}},
		{pattern: "bars.cut_g", label: "a bar as cut", unit: UnitGram, value: bars(func(b *Bars) float64 { return b.CutG }), feeds: []string{"cured-heavier"}, how: func(t teller) Term {
			if !t.plainCut() {
				return t.meanOf("cut.bars[].cut_g")
			}
			return sum(product(t.overBatches(func(at teller) Term { return at.fig("batch.poured_g") }), t.barPart()), t.toppingOn(false))
		}, why: "with its icing, and what was strewn on the loaf"},
		{pattern: "bars.cured_g", label: "a bar cured", unit: UnitGram, value: bars(func(b *Bars) float64 { return b.CuredG }), feeds: []string{"cured-heavier"}, how: func(t teller) Term {
			if !t.plainCut() {
				return t.meanOf("cut.bars[].cured_g")
			}
			return sum(product(t.cured(), t.barPart()), t.toppingOn(true))
		}, why: "once it has dried to the moisture the plan states: weigh your own bars"},
		{pattern: "bars.final_moisture_percent", label: "moisture after cure", unit: UnitPercent, value: bars(func(b *Bars) float64 { return b.FinalMoisturePercent }), how: func(t teller) Term { return t.whole("base.final_moisture_percent") }},
		{pattern: "bars.icing_per_bar_g", label: "icing on a bar", unit: UnitGram, value: bars(func(b *Bars) float64 { return b.IcingPerBarG }), how: func(t teller) Term {
			if t.sheet.Icing == nil {
				return t.known("there is no icing", 0, UnitGram, "your plan")
			}
			if !t.plainCut() {
				return t.meanOf("cut.bars[].icing_g")
			}
			return product(t.at(t.sheet.Icing).fig("batch.poured_g"), t.barPart())
		}},
		{pattern: "bars.stands_mm", label: "how high base and icing stand", unit: UnitMM, value: bars(func(b *Bars) float64 { return b.StandsMM }), feeds: []string{"icing-over-rim"}, how: func(t teller) Term {
			return t.overBatches(func(at teller) Term { return at.fig("batch.height_mm") })
		}, why: "the icing's mean height over the loaf's top: its peaks stand higher, its valleys lower"},
		{pattern: "bars.over_rim_mm", label: "base and icing over the rim", unit: UnitMM, value: bars(func(b *Bars) float64 { return b.OverRimMM }), feeds: []string{"icing-over-rim"}, how: func(t teller) Term {
			return less(t.fig("bars.stands_mm"), t.whole("mould.height_mm"))
		}, why: "below 0 it stands so much under the rim"},
		{pattern: "bars.scent_percent", label: "all scent in the cured bar", unit: UnitPercent, value: bars(func(b *Bars) float64 { return b.BaseScentPercent }), how: func(t teller) Term {
			all := t.overBatches(func(at teller) Term {
				return product(sumOver(len(at.b.Scents), func(i int) Term { return at.fig("batch.scents[].g", i) }), at.kept())
			})
			return product(ratio(all, t.cured()), bare(100))
		}},
	}
	return append(rows, scentAccounts()...)
}

// scentAccounts are what of every scent is in the cured bar.
func scentAccounts() []accountRow {
	scent := func(t teller) *ScentLine { return &t.b.Scents[t.ix[0]] }
	return []accountRow{
		{pattern: "batch.scents[].g", label: "{}", unit: UnitGram, value: func(t teller) Figure { return AsFigure(scent(t).G) }, how: func(t teller) Term {
			i := t.ix[0]
			return product(t.allOils(), percentOf(t.listed("load of all oils", "scent["+decimal(i)+"].percent_of_oils", scent(t).LoadPercent, UnitPercent)))
		}},
		{
			pattern: "batch.scents[].in_bar_percent", label: "{} in the cured bar", unit: UnitPercent, value: func(t teller) Figure { return AsFigure(scent(t).InBarPercent) },
			feeds: []string{"scent-over-limit", "scents-limit-sum", "scent-no-certificate"}, how: func(t teller) Term { return product(ratio(t.inBars(scent(t).ID), t.cured()), bare(100)) },
			why: "of base and icing together, which the certificate's limit is compared with",
		},
		{
			pattern: "batch.scents[].limit_percent", label: "limit of {} in the cured bar", unit: UnitPercent, value: func(t teller) Figure { return AsFigure(scent(t).LimitPercent) },
			feeds: []string{"scent-over-limit", "scents-limit-sum", "scent-no-certificate"}, how: func(t teller) Term {
				sc, _ := t.shelf.Scent(scent(t).ID)
				return t.shelved("limit on its certificate, category 9, amendment "+sc.Amendment, sc.LimitPercent, UnitPercent, sc.Source)
			}, why: "the supplier's certificate rules; 0: none on the shelf",
		},
		{pattern: "batch.scents[].vanillin_in_bar_percent", label: "vanillin of {} in the cured bar", unit: UnitPercent, value: func(t teller) Figure { return AsFigure(scent(t).VanillinInBarPercent) }, how: func(t teller) Term {
			sc, _ := t.shelf.Scent(scent(t).ID)
			return product(t.fig("batch.scents[].in_bar_percent", t.ix[0]), percentOf(t.shelved("vanillin of "+sc.Name, sc.VanillinPercent, UnitPercent, sc.Source)))
		}},
	}
}

// at is a teller at a batch of the sheet.
func (t teller) at(b *BatchSheet) teller {
	t.b, t.plan, t.ix = b, t.sheet.Plan.Batch(b.Name), nil
	return t
}

func (t teller) overBatches(of func(teller) Term) Term {
	all := t.sheet.Batches()
	return sumOver(len(all), func(i int) Term { return of(t.at(all[i])) })
}

func (t teller) kept() Term { return less(bare(1), percentOf(t.fig("batch.loss_percent"))) }

// plainCut reports whether the loaf is cut into bars of the mould's thickness from end A, with nothing set into them and nothing piped onto each.
func (t teller) plainCut() bool {
	c := &t.sheet.Plan.Cut
	if !t.sheet.Plan.Mould.IsCut() {
		return len(t.sheet.Embeds) == 0 && t.sheet.units() == nil
	}
	return (c.By == "" || c.By == CutBars) && c.Left != LeftBars && c.KerfMM+c.TrimAMM+c.TrimBMM+c.SliceMM == 0 && len(t.sheet.Embeds) == 0 && t.sheet.units() == nil
}

// meanOf is the mean of a figure of all bars.
func (t teller) meanOf(pattern string) Term {
	n := len(t.sheet.Cut.Bars)
	return ratio(sumOver(n, func(i int) Term { return t.fig(pattern, i) }), bare(float64(n)))
}

// barPart is one bar's part of the loaf or, of a slab cut both ways, of its area.
func (t teller) barPart() Term {
	m, c := t.sheet.Plan.Mould, &t.sheet.Cut
	switch {
	case !m.IsCut():
		return ratio(bare(1), t.whole("mould.cavities"))
	case len(c.Bars) > 0 && !t.plainCut():
		part := ratio(t.fig("bars.thickness_mm"), t.along())
		if c.sides() {
			return product(part, ratio(t.barAcross(), t.whole("mould.width_mm")))
		}
		return part
	}
	part := ratio(t.whole("mould.bar_mm"), t.along())
	if m.Shape == ShapeSlab && m.BarWidthMM > 0 {
		return product(part, ratio(t.whole("mould.bar_width_mm"), t.whole("mould.width_mm")))
	}
	return part
}

// along is the length that bars are cut from.
func (t teller) along() Term {
	if t.sheet.Plan.Mould.Shape == ShapeTube {
		return t.whole("mould.fill_mm")
	}
	return t.whole("mould.length_mm")
}

// thickness is one bar's, along that length.
func (t teller) thickness() Term {
	if !t.sheet.Plan.Mould.IsCut() {
		return t.whole("mould.length_mm")
	}
	return t.whole("mould.bar_mm")
}

// icingPart is the part of all icing that one usual bar gets.
func (t teller) icingPart() Term {
	switch {
	case t.sheet.units() == nil:
		return t.barPart()
	case t.sheet.Plan.Mould.Shape == ShapeTube:
		return bare(1)
	}
	return ratio(bare(1), t.fig("bars.bar_count"))
}

func (t teller) barCount() Term {
	switch {
	case !t.sheet.Plan.Mould.IsCut():
		return t.whole("mould.cavities")
	case !t.plainCut():
		return t.known("bars of the cut plan", float64(len(t.sheet.Cut.Bars)), UnitCount, "the cut plan")
	}
	along := down(ratio(t.along(), t.whole("mould.bar_mm")), bare(1))
	if m := t.sheet.Plan.Mould; m.Shape == ShapeSlab && m.BarWidthMM > 0 {
		return product(along, down(ratio(t.whole("mould.width_mm"), t.whole("mould.bar_width_mm")), bare(1)))
	}
	return along
}

// cured is the mass of all bars after cure: each batch dried to its own moisture.
func (t teller) cured() Term {
	return t.overBatches(func(at teller) Term {
		return ratio(product(at.fig("batch.dry_g"), at.kept()), less(bare(1), percentOf(at.own("final_moisture_percent"))))
	})
}

// inBars is what of a scent is in all bars, base and icing together.
func (t teller) inBars(id string) Term {
	return t.overBatches(func(at teller) Term {
		var all []Term
		for i, x := range at.b.Scents {
			if x.ID == id {
				all = append(all, at.fig("batch.scents[].g", i))
			}
		}
		return product(sumOver(len(all), func(i int) Term { return all[i] }), at.kept())
	})
}
