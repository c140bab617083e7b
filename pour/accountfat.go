package pour

// oilsAlone says which fats the batch's low and high end count.
const oilsAlone = "fat in the extras, as in milk, is left out, so that no caution of lye-heavy soap rests on it; a jug's low end counts it"

// superfatAccounts are the superfats of a batch.
func superfatAccounts() []accountRow {
	fat := func(of func(*BatchSuperfat) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.b.Superfat)) }
	}
	rangeBand := func(t teller) (low, high Figure, why string) {
		return AsFigure(t.b.Superfat.LowPercent), AsFigure(t.b.Superfat.HighPercent), "every oil at the low, and at the high end of its published range"
	}
	heavy := heavyCodes()
	return []accountRow{
		{
			pattern: "batch.superfat_percent", label: "superfat", unit: UnitPercent, value: fat(func(s *BatchSuperfat) float64 { return s.PlannedPercent }), feeds: heavy,
			how: func(t teller) Term { return t.own("superfat_percent") }, band: rangeBand,
		},
		{
			pattern: "batch.superfat_exact_percent", label: "superfat with the fat of the extras", unit: UnitPercent, value: fat(func(s *BatchSuperfat) float64 { return s.ExactPercent }), feeds: heavy,
			how: func(t teller) Term {
				return leftOver(t.fig("batch.alkali_koh_g"), sum(t.fig("batch.demand_koh_g"), t.extraFat()))
			},
		},
		{
			pattern: "batch.superfat_mixed_percent", label: "superfat before the carriers join", unit: UnitPercent, value: fat(func(s *BatchSuperfat) float64 { return s.MixedPercent }),
			how: func(t teller) Term { return leftOver(t.fig("batch.alkali_koh_g"), t.fig("batch.fat_koh_g")) },
		},
		{
			pattern: "batch.superfat_as_weighed_percent", label: "superfat as weighed", unit: UnitPercent, value: fat(func(s *BatchSuperfat) float64 { return s.AsWeighedPercent }), feeds: heavy,
			how: func(t teller) Term {
				return leftOver(t.fig("batch.alkali_shown_koh_g"), sum(t.fig("batch.fat_shown_koh_g"), t.carriersShown()))
			}, why: "of what the scales show of oils, alkali, acids and carriers",
		},
		{
			pattern: "batch.superfat_low_percent", label: "superfat of the oils alone, at their low end", unit: UnitPercent, value: fat(func(s *BatchSuperfat) float64 { return s.LowPercent }), feeds: heavy,
			how: func(t teller) Term {
				return leftOver(t.fig("batch.alkali_koh_g"), t.demandAt("batch.oils[].sap_low_koh_mg_g"))
			}, why: oilsAlone,
		},
		{
			pattern: "batch.superfat_high_percent", label: "superfat of the oils alone, at their high end", unit: UnitPercent, value: fat(func(s *BatchSuperfat) float64 { return s.HighPercent }),
			how: func(t teller) Term {
				return leftOver(t.fig("batch.alkali_koh_g"), t.demandAt("batch.oils[].sap_high_koh_mg_g"))
			}, why: oilsAlone,
		},
	}
}

// jugFatAccounts are the superfats of jugs.
func jugFatAccounts() []accountRow {
	jug := func(of func(*JugSuperfat) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.b.Jugs[t.ix[0]].Superfat)) }
	}
	left := func(t teller, alkali, fat Term) Term { // a jug that holds no fat keeps what was planned
		if fat.Value() <= 0 {
			return t.own("superfat_percent")
		}
		return leftOver(alkali, fat)
	}
	heavy := heavyCodes()
	return []accountRow{
		{
			pattern: "batch.jugs[].superfat_percent", label: "superfat of {}", unit: UnitPercent, value: jug(func(s *JugSuperfat) float64 { return s.HeldPercent }), feeds: append([]string{"superfat-jug"}, heavy...),
			how: func(t teller) Term {
				return left(t, less(product(t.jugPart(), t.fig("batch.alkali_koh_g")), t.scentsTake()), sum(product(t.jugPart(), t.fig("batch.fat_koh_g")), t.carried(false, exactly)))
			}, why: "its scents take up as much alkali as they can: the most there can be",
		},
		{
			pattern: "batch.jugs[].superfat_firm_percent", label: "superfat of {}, scents taking up none", unit: UnitPercent, value: jug(func(s *JugSuperfat) float64 { return s.FirmPercent }), feeds: heavy,
			how: func(t teller) Term {
				return left(t, product(t.jugPart(), t.fig("batch.alkali_koh_g")), sum(product(t.jugPart(), t.fig("batch.fat_koh_g")), t.carried(false, exactly)))
			},
		},
		{
			pattern: "batch.jugs[].superfat_low_percent", label: "superfat of {}, oils at their low end", unit: UnitPercent, value: jug(func(s *JugSuperfat) float64 { return s.LowPercent }), feeds: heavy,
			how: func(t teller) Term {
				low := t.fig("batch.fat_low_koh_g")
				return left(t, product(t.jugPart(), t.fig("batch.alkali_koh_g")), sum(product(t.jugPart(), low), t.carried(true, exactly)))
			}, why: "fat in the extras counts here; the batch's low end leaves it out",
		},
		{pattern: "batch.jugs[].superfat_as_weighed_percent", label: "superfat of {} as weighed", unit: UnitPercent, value: jug(func(s *JugSuperfat) float64 { return s.AsWeighedPercent }), feeds: heavy, how: teller.jugAsWeighed},
	}
}

// takingAccounts are what takes up alkali in a batch and what alkali there is, all as grams of KOH: the superfats are made of them.
func takingAccounts() []accountRow {
	row := func(key, label string, how func(teller) Term) accountRow {
		return accountRow{
			pattern: "batch." + key, label: label, unit: UnitGram, feeds: heavyCodes(), how: how, why: "as grams of KOH",
			value: func(t teller) Figure { return AsFigure(how(t).Value()) },
		}
	}
	return []accountRow{
		row("alkali_koh_g", "alkali left for the fats", teller.alkaliKOH),
		row("fat_koh_g", "what the batter takes up", teller.oilFat),
		row("fat_low_koh_g", "what the batter takes up, oils at their low end", func(t teller) Term {
			return sum(t.mixedAt("batch.oils[].sap_low_koh_mg_g"), t.extraFat())
		}),
		row("alkali_shown_koh_g", "alkali left for the fats, as weighed", teller.alkaliShown),
		row("fat_shown_koh_g", "what the batter takes up, as weighed", teller.fatShown),
	}
}

// heavyCodes are the warnings of too much alkali.
func heavyCodes() []string { return []string{"lye-heavy", "lye-heavy-worst", "alkali-rounding"} }

// leftOver is the fat that alkali leaves, percent of what would take it up.
func leftOver(alkali, fat Term) Term { return product(less(bare(1), ratio(alkali, fat)), bare(100)) }

// asKOH is pure alkali as what the same moles of KOH would weigh.
func (t teller) asKOH(naoh, koh Term) Term { return sum(ratio(naoh, t.alkaliRatio()), koh) }

// alkaliKOH is the batch's pure alkali less what its acids take.
func (t teller) alkaliKOH() Term {
	return less(t.asKOH(t.fig("batch.naoh_pure_g"), t.fig("batch.koh_pure_g")), t.fig("batch.acid_koh_g"))
}

// mixedAt is the alkali that the oils of the batter take up, at one of their saponification values.
func (t teller) mixedAt(sap string) Term {
	return sumOver(len(t.b.Oils), func(i int) Term { return product(t.fig("batch.oils[].g", i), ratio(t.fig(sap, i), bare(1000))) })
}

// demandAt is the same of all oils, the carriers' too.
func (t teller) demandAt(sap string) Term {
	return sumOver(len(t.b.Oils), func(i int) Term { return product(t.allOil(i), ratio(t.fig(sap, i), bare(1000))) })
}

// extraFat is the alkali that the fat in the extras takes up.
func (t teller) extraFat() Term {
	return sumOver(len(t.b.Extras), func(i int) Term { return t.takenBy(t.fig("batch.extras[].g", i), t.fatOf(i)) })
}

// takenBy is what grams of an extra take up, nothing where it takes none.
func (t teller) takenBy(g, each Term) Term {
	if each.nothing() {
		return each
	}
	return product(g, each)
}

// fatOf is the alkali that the fat in a gram of an extra takes up.
func (t teller) fatOf(i int) Term {
	x, _ := t.shelf.Extra(t.b.Extras[i].ID)
	if x.FatPercent == 0 {
		return bare(0)
	}
	return product(percentOf(t.shelved("fat in "+x.Name, x.FatPercent, UnitPercent, x.Source)),
		ratio(t.shelved("saponification value of that fat", x.FatSapKOHMgG, UnitKOHPerGram, x.Source), bare(1000)))
}

func (t teller) oilFat() Term { return sum(t.mixedAt("batch.oils[].sap_koh_mg_g"), t.extraFat()) }

// shownExtra is an extra as its scale shows it.
func (t teller) shownExtra(i int) Term { return t.shown(t.fig("batch.extras[].g", i)) }

// alkaliShown is the pure alkali of what the scales show, less what the acids of the extras take as they are shown.
func (t teller) alkaliShown() Term {
	naoh := product(t.fig("batch.naoh_to_weigh_g"), percentOf(t.fig("batch.naoh_purity_percent")))
	if t.b.Lye.Stock.StrengthPercent > 0 {
		naoh = product(t.fig("batch.stock_to_weigh_g"), percentOf(t.fig("batch.stock_lye_percent")))
	}
	koh := product(t.fig("batch.koh_to_weigh_g"), percentOf(t.fig("batch.koh_purity_percent")))
	acids := sumOver(len(t.b.Extras), func(i int) Term { return t.takenBy(t.shownExtra(i), t.acidity(i)) })
	return less(t.asKOH(naoh, koh), acids)
}

// fatShown is what takes up alkali in what the scales show of the batter: oils and fat in the extras.
func (t teller) fatShown() Term {
	oils := sumOver(len(t.b.Oils), func(i int) Term {
		return product(t.fig("batch.oils[].weigh_g", i), ratio(t.fig("batch.oils[].sap_koh_mg_g", i), bare(1000)))
	})
	if t.b.ReadyBlend != "" { // one weighing: the parts are for information
		oils = ratio(product(t.mixedAt("batch.oils[].sap_koh_mg_g"), t.fig("batch.oils_weigh_g")), t.fig("batch.oils_g"))
	}
	return sum(oils, sumOver(len(t.b.Extras), func(i int) Term { return t.takenBy(t.shownExtra(i), t.fatOf(i)) }))
}

// carriersShown is what the carriers' oil takes up where it was taken out of the batch: it is the batch's own.
func (t teller) carriersShown() Term {
	if t.plan.Carrier != CarrierBatch {
		return bare(0)
	}
	return sumOver(len(t.b.Jugs), func(i int) Term {
		at := t
		at.ix = []int{i}
		return at.carried(false, t.shown)
	})
}

// carried is what the oil takes up that carries this jug's colours, each dose of it measured as given, by its working value or its low end.
func (t teller) carried(low bool, measured func(Term) Term) Term {
	oil, _ := t.shelf.Oil(t.plan.carrierOil())
	sap, name := oil.Fat.Sap, "saponification value of "
	if low {
		sap, name = oil.Fat.LowSap(), "lowest saponification value of "
	}
	var all []Term
	for k, d := range t.b.Jugs[t.ix[0]].Colourants {
		if d.Carrier == CarryOil {
			g := measured(t.fig("batch.jugs[].colourants[].carrier_g", t.ix[0], k))
			all = append(all, product(g, ratio(t.shelved(name+oil.Name, sap, UnitKOHPerGram, oil.SapSource), bare(1000))))
		}
	}
	return sumOver(len(all), func(k int) Term { return all[k] })
}

func exactly(g Term) Term { return g }

// shown measures as the finer scale shows it.
func (t teller) shown(g Term) Term { return nearestStep(g, t.lyeStep()) }

// scentsTake is the alkali that this jug's scents can take up at most.
func (t teller) scentsTake() Term {
	i := t.ix[0]
	return sumOver(len(t.b.Jugs[i].Scents), func(k int) Term {
		sc, _ := t.shelf.Scent(t.b.Jugs[i].Scents[k].ID)
		if sc.AlkaliKOHMgG == 0 {
			return bare(0)
		}
		return product(t.fig("batch.jugs[].scents[].g", i, k), ratio(t.shelved("alkali that "+sc.Name+" can take up", sc.AlkaliKOHMgG, UnitKOHPerGram, sc.Source), bare(1000)))
	})
}

// jugPart is this jug's part of the batter.
func (t teller) jugPart() Term {
	return ratio(t.fig("batch.jugs[].batter_g", t.ix[0]), t.fig("batch.batter_g"))
}

// jugAsWeighed is the superfat of what the scales show of this jug; one too small for a step of the scale keeps its exact one.
func (t teller) jugAsWeighed() Term {
	i := t.ix[0]
	if t.b.Size.BatterWeighG <= 0 || t.b.Jugs[i].BatterWeighG <= 0 {
		return t.fig("batch.jugs[].superfat_firm_percent", i)
	}
	part := ratio(t.fig("batch.jugs[].batter_weigh_g", i), t.fig("batch.batter_weigh_g"))
	return leftOver(product(part, t.fig("batch.alkali_shown_koh_g")), sum(product(part, t.fig("batch.fat_shown_koh_g")), t.carried(false, t.shown)))
}
