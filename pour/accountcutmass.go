package pour

// cutMassAccounts are what the pieces of the cut loaf weigh.
func cutMassAccounts() []accountRow {
	g := func(pattern, label string, of func(*CutSheet, teller) Figure, how func(teller) Term, why string, feeds ...string) accountRow {
		return accountRow{pattern: pattern, label: label, unit: UnitGram, feeds: feeds, why: why, how: how, value: func(t teller) Figure { return of(&t.sheet.Cut, t) }}
	}
	bar := func(of func(*BarPiece) Figure) func(*CutSheet, teller) Figure {
		return func(c *CutSheet, t teller) Figure { return of(&c.Bars[t.ix[0]]) }
	}
	return []accountRow{
		g("cut.bars[].base_g", "base of {}", bar(func(b *BarPiece) Figure { return b.BaseG }), func(t teller) Term { return t.baseIn(t.barShare(), t.inBar().displacedMM3) }, "less what embeds take the place of"),
		g("cut.bars[].icing_g", "icing of {}", bar(func(b *BarPiece) Figure { return b.IcingG }), teller.icingOn, ""),
		g("cut.bars[].embed_g", "embeds of {}", bar(func(b *BarPiece) Figure { return b.EmbedG }), func(t teller) Term {
			return t.known("what stands in it", t.inBar().g, UnitGram, "the embeds of your plan, with its part of every rod")
		}, ""),
		g("cut.bars[].topping_g", "toppings of {}", bar(func(b *BarPiece) Figure { return b.ToppingG }), func(t teller) Term { return product(t.strewnAll(), t.barShare()) }, "what was strewn on the loaf, less what does not stay"),
		g("cut.bars[].cut_g", "{} as cut", bar(func(b *BarPiece) Figure { return b.CutG }), func(t teller) Term {
			return sum(t.fig("cut.bars[].base_g", t.ix[0]), t.fig("cut.bars[].icing_g", t.ix[0]), t.fig("cut.bars[].embed_g", t.ix[0]), t.fig("cut.bars[].topping_g", t.ix[0]))
		}, "", "bars-uneven"),
		g("cut.bars[].cured_g", "{} cured", bar(func(b *BarPiece) Figure { return b.CuredG }), teller.curedBar, "once it has dried to the moisture the plan states: weigh your own bars"),
		g("cut.trims[].g", "{}", func(c *CutSheet, t teller) Figure { return c.Trims()[t.ix[0]].G }, func(t teller) Term {
			r := t.sheet.rests()
			if t.sheet.Cut.Trims()[t.ix[0]].End == LeftEndA {
				return t.restG(r.trimA)
			}
			return t.restG(r.trimB)
		}, "with what stands on it"),
		{pattern: "cut.trims[].start_mm", label: "where {} begins", unit: UnitMM, value: func(t teller) Figure { return Know(t.sheet.Cut.Trims()[t.ix[0]].StartMM) }, how: func(t teller) Term { return t.edge(t.sheet.Cut.Trims()[t.ix[0]].StartMM, 1) }},
		{pattern: "cut.trims[].end_mm", label: "where {} ends", unit: UnitMM, value: func(t teller) Figure { return Know(t.sheet.Cut.Trims()[t.ix[0]].EndMM) }, how: func(t teller) Term { return t.edge(t.sheet.Cut.Trims()[t.ix[0]].EndMM, -1) }},
		{pattern: "cut.sample.start_mm", label: "where the sample slice begins", unit: UnitMM, value: sliced(func(c *CutSheet) float64 { return c.SliceAt }), how: func(t teller) Term { return t.edge(t.sheet.Cut.SliceAt, 1) }},
		{pattern: "cut.sample.end_mm", label: "where the sample slice ends", unit: UnitMM, value: sliced(func(c *CutSheet) float64 { return c.SliceAt + c.SliceMM }), how: func(t teller) Term { return t.edge(t.sheet.Cut.SliceAt+t.sheet.Cut.SliceMM, -1) }},
		g("cut.sample.g", "the sample slice", func(c *CutSheet, _ teller) Figure { return c.SliceG }, func(t teller) Term { return t.restG(t.sheet.rests().slice) }, "with what stands on it"),
		g("cut.sample_g", "the sample slice", func(c *CutSheet, _ teller) Figure { return c.SliceG }, func(t teller) Term { return t.restG(t.sheet.rests().slice) }, "with what stands on it"),
		g("cut.sides_g", "trimmed off the sides of the slab", func(c *CutSheet, _ teller) Figure { return c.SidesG }, func(t teller) Term { return t.restG(t.sheet.rests().sides) }, ""),
		g("cut.trims_g", "all trims", func(c *CutSheet, _ teller) Figure { return c.TrimsG }, func(t teller) Term {
			return sum(sumOver(len(t.sheet.Cut.Trims()), func(i int) Term { return t.fig("cut.trims[].g", i) }), t.fig("cut.sides_g"))
		}, ""),
		g("cut.kerf_g", "crumbs", func(c *CutSheet, _ teller) Figure { return c.KerfG }, func(t teller) Term { return t.restG(t.sheet.rests().kerf) }, "a wire parts the soap rather than taking it away: booked as crumbs"),
		g("cut.lightest_g", "the lightest bar", func(c *CutSheet, _ teller) Figure { return c.LightG }, func(t teller) Term { return t.oneBar(t.sheet.Cut.LightG) }, "", "bars-uneven"),
		g("cut.heaviest_g", "the heaviest bar", func(c *CutSheet, _ teller) Figure { return c.HeavyG }, func(t teller) Term { return t.oneBar(t.sheet.Cut.HeavyG) }, "", "bars-uneven"),
	}
}

func sliced(of func(*CutSheet) float64) func(teller) Figure {
	return func(t teller) Figure {
		if t.sheet.Cut.SliceMM == 0 {
			return Figure{}
		}
		return Know(of(&t.sheet.Cut))
	}
}

// oneBar is the bar that has a mass.
func (t teller) oneBar(g Figure) Term {
	for i, b := range t.sheet.Cut.Bars {
		if b.CutG == g {
			return t.fig("cut.bars[].cut_g", i)
		}
	}
	return bare(0)
}

func (t teller) inBar() inBar { return t.sheet.embedded(t.ix[0]) }

// barShare is the bar's part of the loaf's area.
func (t teller) barShare() Term {
	part := ratio(t.fig("cut.bars[].thickness_mm", t.ix[0]), t.along())
	if t.sheet.Cut.sides() {
		return product(part, ratio(less(t.fig("cut.bars[].right_mm", t.ix[0]), t.fig("cut.bars[].left_mm", t.ix[0])), t.whole("mould.width_mm")))
	}
	return part
}

// baseIn is the base in a part of the loaf: as if nothing stood in it, less what embeds take the place of there.
func (t teller) baseIn(part Term, displacedMM3 float64) Term {
	at := t.at(&t.sheet.Base)
	all := at.fig("batch.poured_g")
	if t.sheet.displaced() == 0 {
		return product(all, part)
	}
	gml := t.sheet.Base.gml()
	taken := t.known("batter that all embeds take the place of", t.sheet.displaced()/1000*gml, UnitGram, "what of them is below the surface")
	here := t.known("and those here", displacedMM3/1000*gml, UnitGram, "what of them is below the surface")
	return less(product(sum(all, taken), part), here)
}

// icingOn is a bar's icing: what is piped onto it, or its part of what lies along the loaf.
func (t teller) icingOn() Term {
	s := t.sheet
	if s.Icing == nil {
		return t.known("there is no icing", 0, UnitGram, "your plan")
	}
	all := t.at(s.Icing).fig("batch.poured_g")
	if on := s.units(); on != nil {
		return product(all, t.known("part of the icing's units that stand on it", on[t.ix[0]], UnitCount, "where they stand"))
	}
	return product(all, t.barShare())
}

// strewnAll is what was strewn on the whole loaf and stays on it.
func (t teller) strewnAll() Term {
	return t.known("toppings on the whole loaf", t.sheet.weights().all.topping, UnitGram, "your toppings that go on before the cut, less what does not stay")
}

// curedBar is a bar once it has dried: base and icing to their own moistures, embeds as they dry, toppings with those that go on later.
func (t teller) curedBar() Term {
	i, w := t.ix[0], t.sheet.weights()
	dries := func(at teller) Term {
		return ratio(product(at.fig("batch.dry_g"), at.kept()), product(at.fig("batch.poured_g"), less(bare(1), percentOf(at.own("final_moisture_percent")))))
	}
	all := []Term{product(t.fig("cut.bars[].base_g", i), dries(t.at(&t.sheet.Base)))}
	if t.sheet.Icing != nil {
		all = append(all, product(t.fig("cut.bars[].icing_g", i), dries(t.at(t.sheet.Icing))))
	}
	if in := t.inBar(); in.curedG != 0 {
		all = append(all, t.known("embeds of the bar, cured", in.curedG, UnitGram, "cold-process pieces dry on, others stay as they are"))
	}
	all = append(all, t.fig("cut.bars[].topping_g", i))
	if w.strewnLate != 0 {
		all = append(all, t.known("toppings that go on after the cut", w.strewnLate, UnitGram, "your toppings, less what does not stay"))
	}
	return sum(all...)
}

// restG is a piece that is no bar.
func (t teller) restG(r cutRest) Term {
	s, w := t.sheet, t.sheet.weights()
	in := w.standsIn(s, r)
	part := t.known("its part of the loaf", r.part, UnitCount, "the cut plan")
	all := []Term{t.baseIn(part, in.displacedMM3)}
	if s.Icing != nil && w.onBars == nil {
		all = append(all, product(t.at(s.Icing).fig("batch.poured_g"), part))
	}
	if in.g != 0 {
		all = append(all, t.known("embeds in it", in.g, UnitGram, "the embeds of your plan"))
	}
	if w.all.topping != 0 {
		all = append(all, product(t.strewnAll(), part))
	}
	return sum(all...)
}
