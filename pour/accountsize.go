package pour

import (
	"math"

	"pourbench/chem"
)

// sizeAccounts are the masses and volumes of a batch.
func sizeAccounts() []accountRow {
	size := func(of func(*Size) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.b.Size)) }
	}
	return []accountRow{
		{pattern: "batch.oils_g", label: "oils", unit: UnitGram, value: size(func(s *Size) float64 { return s.OilsG }), how: teller.oils},
		{
			pattern: "batch.oils_weigh_g", label: "oils to weigh", unit: UnitGram, value: size(func(s *Size) float64 { return s.OilsWeighG }),
			how: func(t teller) Term { return nearestStep(t.fig("batch.oils_g"), t.scaleStep()) },
		},
		{pattern: "batch.oils[].g", label: "{}", unit: UnitGram, value: func(t teller) Figure { return AsFigure(t.b.Oils[t.ix[0]].G) }, feeds: []string{"carrier-short"}, how: teller.oil},
		{pattern: "batch.oils[].weigh_g", label: "{} to weigh", unit: UnitGram, value: func(t teller) Figure { return AsFigure(t.b.Oils[t.ix[0]].WeighG) }, how: func(t teller) Term {
			all := make([]Term, len(t.b.Oils))
			for i := range all {
				all[i] = t.fig("batch.oils[].g", i)
			}
			return place(t.ix[0], t.scaleStep(), all)
		}, why: "so that the oils sum to what all of them weigh on that scale"},
		{
			pattern: "batch.oils[].sap_koh_mg_g", label: "saponification value of {}", unit: UnitKOHPerGram, value: func(t teller) Figure { return Know(t.b.Oils[t.ix[0]].SapKOHMgG) },
			how: func(t teller) Term { return t.sap("working value", func(f chem.Fat) float64 { return f.Sap }) },
			band: func(t teller) (low, high Figure, why string) {
				o := t.b.Oils[t.ix[0]]
				return Know(o.SapLow), Know(o.SapHigh), "the ends of its published range; the low end is never above theory less what does not saponify"
			},
		},
		{
			pattern: "batch.oils[].sap_low_koh_mg_g", label: "lowest saponification value of {}", unit: UnitKOHPerGram, value: func(t teller) Figure { return Know(t.b.Oils[t.ix[0]].SapLow) },
			how: func(t teller) Term { return t.sap("low end", chem.Fat.LowSap) }, why: "the smaller of the published minimum and theory less what does not saponify",
		},
		{
			pattern: "batch.oils[].sap_high_koh_mg_g", label: "highest saponification value of {}", unit: UnitKOHPerGram, value: func(t teller) Figure { return Know(t.b.Oils[t.ix[0]].SapHigh) },
			how: func(t teller) Term { return t.sap("high end", chem.Fat.HighSap) },
		},
		{pattern: "batch.extras[].g", label: "{}", unit: UnitGram, value: func(t teller) Figure { return AsFigure(t.b.Extras[t.ix[0]].G) }, feeds: []string{"dose-unusual", "salt-bar", "glycerin-sweat"}, how: func(t teller) Term {
			i := t.ix[0]
			return product(t.allOils(), percentOf(t.listed("of the oils", "extra["+decimal(i)+"].percent_of_oils", t.b.Extras[i].Percent, UnitPercent)))
		}},
		{pattern: "batch.extras[].water_percent", label: "water of {}", unit: UnitPercent, value: func(t teller) Figure { return Know(t.b.Extras[t.ix[0]].WaterPercent) }, how: func(t teller) Term {
			x, _ := t.shelf.Extra(t.b.Extras[t.ix[0]].ID)
			return t.shelved("water of "+x.Name, x.WaterPercent, UnitPercent, x.Source)
		}},
		{pattern: "batch.extras_g", label: "extras", unit: UnitGram, value: size(func(s *Size) float64 { return s.ExtrasG }), how: func(t teller) Term {
			return sumOver(len(t.b.Extras), func(i int) Term { return t.fig("batch.extras[].g", i) })
		}},
		{pattern: "batch.batter_g", label: "batter", unit: UnitGram, value: size(func(s *Size) float64 { return s.BatterG }), how: func(t teller) Term {
			return sum(t.fig("batch.oils_g"), t.fig("batch.naoh_weighed_g"), t.fig("batch.koh_weighed_g"), t.fig("batch.stock_lye_g"), t.fig("batch.water_to_add_g"), t.fig("batch.extras_g"))
		}},
		{
			pattern: "batch.batter_weigh_g", label: "batter to weigh", unit: UnitGram, value: size(func(s *Size) float64 { return s.BatterWeighG }),
			how: func(t teller) Term { return nearestStep(t.fig("batch.batter_g"), t.scaleStep()) },
		},
	}
}

// volumeAccounts are how much room a batch takes and how high it stands.
func volumeAccounts() []accountRow {
	size := func(of func(*Size) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.b.Size)) }
	}
	kept := func(t teller) Term { return less(bare(1), percentOf(t.fig("batch.loss_percent"))) }
	return []accountRow{
		{pattern: "batch.batter_ml", label: "volume of the batter", unit: UnitML, value: size(func(s *Size) float64 { return s.BatterML }), how: teller.batterML},
		{pattern: "batch.loss_percent", label: "what stays in pots and bags", unit: UnitPercent, value: size(func(s *Size) float64 { return s.LossPercent }), how: func(t teller) Term {
			if t.b.Name == Icing {
				return t.icingLoss()
			}
			return t.whole("mould.loss_percent")
		}},
		{pattern: "batch.poured_ml", label: "volume that is poured", unit: UnitML, value: size(func(s *Size) float64 { return s.PouredML }), how: func(t teller) Term {
			return product(sumOver(len(t.b.Jugs), func(i int) Term { return t.fig("batch.jugs[].total_ml", i) }), kept(t))
		}},
		{pattern: "batch.poured_g", label: "what is poured", unit: UnitGram, value: size(func(s *Size) float64 { return s.PouredG }), how: func(t teller) Term {
			return product(sum(t.fig("batch.batter_g"), t.added()), kept(t))
		}},
		{
			pattern: "batch.height_mm", label: "how high it stands", unit: UnitMM, value: size(func(s *Size) float64 { return s.HeightMM }),
			feeds: []string{"mould-overfull", "mould-high", "mould-underfilled"}, how: func(t teller) Term {
				ml := t.fig("batch.poured_ml")
				if t.b.Name == Base {
					ml = sum(ml, t.displacedML())
				}
				return ratio(t.aired(product(ml, bare(1000))), t.area())
			},
		},
		{
			pattern: "batch.dry_g", label: "dry mass", unit: UnitGram, value: size(func(s *Size) float64 { return s.DryG }), how: teller.dryMass,
			why: "no water, and of the alkali only what is alkali; before loss",
		},
		{
			pattern: "batch.mix_c", label: "batter as oils and lye meet", unit: UnitCelsius, value: batchFigure(func(b *BatchSheet) float64 { return b.Heat.MixC }), feeds: []string{"false-trace"}, how: teller.mixC,
			why: "no heat lost, and before the batter makes its own",
		},
		{
			pattern: "batch.cloud_c", label: "rough cloud point of the oils", unit: UnitCelsius, value: func(t teller) Figure { return t.b.Heat.CloudC }, feeds: []string{"false-trace"},
			how: func(t teller) Term {
				return t.known("cloud point", t.b.Heat.CloudC.V, UnitCelsius, "worked out from the melting of each fatty acid of the blend")
			},
			band: func(t teller) (low, high Figure, why string) {
				c := t.b.Heat.CloudC.V
				return Know(c - chem.CloudBandC), Know(c + chem.CloudBandC), "fats are mixtures: an ideal solution of their acids is only near the truth"
			},
		},
		{pattern: "batch.iodine_value", label: "iodine value of the oils", unit: UnitCount, value: func(t teller) Figure { return t.b.Fats.IodineValue }, how: func(t teller) Term {
			return t.known("iodine value", t.b.Fats.IodineValue.V, UnitCount, "worked out from the fatty acids of each oil, by mass")
		}},
		{pattern: "batch.sap_koh_mg_g", label: "saponification value of the oils", unit: UnitKOHPerGram, value: batchFigure(func(b *BatchSheet) float64 { return b.Fats.SapKOHMgG }), how: func(t teller) Term {
			return ratio(product(t.fig("batch.demand_koh_g"), bare(1000)), t.allOils())
		}},
	}
}

// allOils is the mass of all oils, the carriers' too where they are taken out of the batch.
func (t teller) allOils() Term {
	if t.plan.Carrier != CarrierBatch {
		return t.fig("batch.oils_g")
	}
	return sum(t.fig("batch.oils_g"), t.carriers())
}

// oils is the mass of the oils mixed: as given, or as much as fills what the plan wants filled.
func (t teller) oils() Term {
	all := t.filling()
	switch {
	case t.plan.Carrier != CarrierBatch:
		return all
	case t.b.Refused.Masses != "" && t.plan.Size == SizeOils: // what is in the jugs is not told, what is left of the oils is
		return less(all, t.known("oil that carries the colours", t.plan.OilsG-t.b.Size.OilsG, UnitGram, "your plan's colourants"))
	}
	return less(all, t.carriers())
}

func (t teller) filling() Term {
	p := t.sheet.Plan
	m := mixer{plain: t.shelf.plain, show: p.Show, roomC: p.Room.TemperatureC}
	unit := m.mix(t.shelf.bill(t.b.Name, *t.plan), unitOilsG, t.b.Size.LossPercent).Size
	area := t.area()
	perG := t.known("poured from a gram of oils", unit.PouredML/unitOilsG, "mL/g", "worked out from this recipe")
	switch t.plan.Size {
	case SizeMould:
		return ratio(less(ratio(product(area, t.whole("mould.fill_mm")), bare(1000)), t.displacedML()), perG)
	case SizeLayer:
		return ratio(ratio(product(area, t.own("layer_mm")), bare(1000)), t.aired(perG))
	case SizeBar, SizeShape:
		perBar := t.known("poured from a gram of oils", unit.PouredG/unitOilsG, "g/g", "worked out from this recipe")
		if t.plan.Size == SizeShape {
			return ratio(t.fig("piping.net_g"), perBar)
		}
		return ratio(ratio(t.own("per_bar_g"), t.icingPart()), perBar)
	}
	return t.own("oils_g")
}

// area is the surface of the batter in the whole mould.
func (t teller) area() Term {
	length, width := t.whole("mould.length_mm"), t.whole("mould.width_mm")
	switch m := t.sheet.Plan.Mould; {
	case m.Shape == ShapeTube:
		return product(t.known("a disc's part of the square about it", math.Pi/4, UnitCount, "a quarter of π"), length, length)
	case m.Shape == ShapeCavity && m.CavityML > 0:
		return product(ratio(product(t.whole("mould.cavity_ml"), bare(1000)), t.whole("mould.fill_mm")), t.whole("mould.cavities"))
	case m.Shape == ShapeCavity:
		return product(length, width, t.whole("mould.cavities"))
	}
	return product(length, width)
}

// oil is an oil's part of all oils, less what of it carries the colours.
func (t teller) oil() Term {
	i := t.ix[0]
	parts := func(k int) Term {
		return t.listed("part of "+t.b.Oils[k].Name, "oil["+decimal(k)+"].percent", t.b.Oils[k].Percent, UnitPercent)
	}
	g := ratio(product(t.allOils(), parts(i)), sumOver(len(t.b.Oils), parts))
	if t.plan.Carrier == CarrierBatch && t.b.Oils[i].ID == t.plan.carrierOil() {
		return less(g, t.carriers())
	}
	return g
}

func (t teller) sap(name string, of func(chem.Fat) float64) Term {
	oil, _ := t.shelf.Oil(t.b.Oils[t.ix[0]].ID)
	return t.shelved(name+" of "+oil.Name, of(oil.Fat), UnitKOHPerGram, oil.SapSource)
}

// added is what joins the jugs after the split: pigments, carriers and scents.
func (t teller) added() Term {
	return sumOver(len(t.b.Jugs), func(i int) Term { return t.addedTo(i) })
}

func (t teller) addedTo(i int) Term {
	var all []Term
	for k := range t.b.Jugs[i].Colourants {
		all = append(all, t.fig("batch.jugs[].colourants[].pigment_g", i, k), t.fig("batch.jugs[].colourants[].carrier_g", i, k))
	}
	for k := range t.b.Jugs[i].Scents {
		all = append(all, t.fig("batch.jugs[].scents[].g", i, k))
	}
	return sumOver(len(all), func(k int) Term { return all[k] })
}

// batterML adds the volumes of oils, lye and dry extras at the temperature of the batter.
func (t teller) batterML() Term {
	c := t.b.Heat.MixC
	oils := sumOver(len(t.b.Oils), func(i int) Term {
		oil, _ := t.shelf.Oil(t.b.Oils[i].ID)
		return ratio(t.allOil(i), t.shelved("density of "+oil.Name+", as warm as the batter", oil.Fat.DensityAt(c), "g/mL", oil.DensitySource))
	})
	if t.plan.Carrier == CarrierBatch {
		oils = ratio(product(oils, t.fig("batch.oils_g")), t.allOils())
	}
	lye := modelled("volume of the lye, from tables of its density, ", func(v []float64) float64 {
		l := chem.Lye{NaOHPureG: v[0], KOHPureG: v[1], NaOHWeighedG: v[2], AllWaterG: v[3]}
		return chem.LyeML(l, v[4])
	}, t.fig("batch.naoh_pure_g"), t.fig("batch.koh_pure_g"), t.alkali(), t.fig("batch.all_water_g"), t.fig("batch.mix_c"))
	extras := sumOver(len(t.b.Extras), func(i int) Term {
		x, _ := t.shelf.Extra(t.b.Extras[i].ID)
		density := t.known("density of dissolved solids", solidsGML, "g/mL", "assumed, near sugar's")
		if x.WaterPercent == 0 && x.DensityGML > 0 {
			density = t.shelved("density of "+x.Name, x.DensityGML, "g/mL", x.Source)
		}
		return ratio(less(t.fig("batch.extras[].g", i), t.waterOf(i)), density)
	})
	return sum(oils, lye, extras)
}

func (t teller) dryMass() Term {
	water := sumOver(len(t.b.Jugs), func(i int) Term {
		return sumOver(len(t.b.Jugs[i].Colourants), func(k int) Term {
			if t.b.Jugs[i].Colourants[k].Carrier != CarryWater {
				return bare(0)
			}
			return t.fig("batch.jugs[].colourants[].carrier_g", i, k)
		})
	})
	return less(sum(t.fig("batch.oils_g"), t.fig("batch.naoh_pure_g"), t.fig("batch.koh_pure_g"), t.fig("batch.extras_g"), t.added()),
		sum(t.fig("batch.water_in_extras_g"), water))
}

func (t teller) mixC() Term {
	if t.plan.BatterMeasured {
		return t.known("measured", t.plan.BatterC, UnitCelsius, "your plan, "+string(t.b.Name)+".batter_c")
	}
	mix := func(v []float64) float64 {
		return chem.MixC(v[0], v[1], v[2]+v[3], v[4], t.b.Lye.PureConcentrationPercent/100)
	}
	return modelled("mean of both by mass and specific heat ", mix, t.fig("batch.oils_g"), t.own("oils_c"), t.alkali(), t.fig("batch.all_water_g"), t.own("lye_c"))
}
