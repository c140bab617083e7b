package pour

import (
	"math"

	"pourbench/chem"
)

// UnitKOHPerGram is that of a saponification value: mg KOH per g of fat.
const UnitKOHPerGram Unit = "mg/g"

// fixedFigure turns a number of a batch into the value of a row.
func batchFigure(of func(*BatchSheet) float64) func(teller) Figure {
	return func(t teller) Figure { return AsFigure(of(t.b)) }
}

// lyeAccounts are the figures of a batch's lye, in the order they are worked out.
func lyeAccounts() []accountRow {
	lye := func(of func(*LyeSheet) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.b.Lye)) }
	}
	heavy := []string{"lye-heavy", "lye-heavy-worst"}
	return []accountRow{
		{
			pattern: "batch.demand_koh_g", label: "alkali all oils take up", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.DemandKOHG }), how: teller.demand, feeds: heavy,
			why: "as grams of KOH; the oil that carries the colours counts with the others",
		},
		{
			pattern: "batch.acid_koh_g", label: "alkali the acids use up", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.AcidKOHG }), feeds: []string{"lye-meets-acid"},
			how: func(t teller) Term {
				return sumOver(len(t.b.Extras), func(i int) Term { return t.takenBy(t.fig("batch.extras[].g", i), t.acidity(i)) })
			},
		},
		{pattern: "batch.naoh_pure_g", label: "pure NaOH", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.NaOH.PureG }), feeds: heavy, how: func(t teller) Term {
			return product(t.alkaliWanted(), less(bare(1), t.kohMoles()), t.alkaliRatio())
		}},
		{pattern: "batch.koh_pure_g", label: "pure KOH", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.KOH.PureG }), feeds: heavy, how: func(t teller) Term {
			return product(t.alkaliWanted(), t.kohMoles())
		}},
		{
			pattern: "batch.naoh_purity_percent", label: "purity of the NaOH", unit: UnitPercent, value: lye(func(l *LyeSheet) float64 { return l.NaOH.PurityPercent }), feeds: []string{"purity-assumed", "purity-unusual"},
			how: func(t teller) Term { return t.own("naoh_purity_percent") },
		},
		{
			pattern: "batch.koh_purity_percent", label: "purity of the KOH", unit: UnitPercent, value: lye(func(l *LyeSheet) float64 { return l.KOH.PurityPercent }), feeds: []string{"purity-assumed", "purity-unusual"},
			how: func(t teller) Term { return t.own("koh_purity_percent") },
		},
		{
			pattern: "batch.naoh_weighed_g", label: "NaOH, exact", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.NaOH.WeighedG }),
			how: func(t teller) Term { return t.dry("batch.naoh_pure_g", "batch.naoh_purity_percent") },
		},
		{
			pattern: "batch.koh_weighed_g", label: "KOH, exact", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.KOH.WeighedG }),
			how: func(t teller) Term { return t.dry("batch.koh_pure_g", "batch.koh_purity_percent") },
		},
		{
			pattern: "batch.naoh_to_weigh_g", label: "NaOH to weigh", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.NaOH.ToWeighG }), feeds: []string{"alkali-rounding"},
			how: func(t teller) Term { return down(t.fig("batch.naoh_weighed_g"), t.lyeStep()) }, why: roundsDown,
		},
		{
			pattern: "batch.koh_to_weigh_g", label: "KOH to weigh", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.KOH.ToWeighG }), feeds: []string{"alkali-rounding"},
			how: func(t teller) Term { return down(t.fig("batch.koh_weighed_g"), t.lyeStep()) }, why: roundsDown,
		},
		{
			pattern: "batch.stock_lye_percent", label: "strength of the stock lye", unit: UnitPercent, value: lye(func(l *LyeSheet) float64 { return l.Stock.StrengthPercent }),
			how: func(t teller) Term { return t.own("stock_lye_percent") },
		},
		{pattern: "batch.stock_lye_g", label: "stock lye, exact", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.Stock.WeighedG }), how: func(t teller) Term {
			if t.b.Lye.Stock.StrengthPercent <= 0 {
				return t.known("no stock lye is used", 0, UnitGram, "your plan")
			}
			return ratio(t.fig("batch.naoh_pure_g"), percentOf(t.fig("batch.stock_lye_percent")))
		}},
		{
			pattern: "batch.stock_to_weigh_g", label: "stock lye to weigh", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.Stock.ToWeighG }), feeds: []string{"alkali-rounding"},
			how: func(t teller) Term { return down(t.fig("batch.stock_lye_g"), t.lyeStep()) }, why: roundsDown,
		},
	}
}

const roundsDown = "alkali rounds down: a little less of it leaves a little more fat"

// waterAccounts are the water and the strength of a batch's lye.
func waterAccounts() []accountRow {
	lye := func(of func(*LyeSheet) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.b.Lye)) }
	}
	return []accountRow{
		{pattern: "batch.all_water_g", label: "all water", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.AllWaterG }), how: func(t teller) Term {
			c := percentOf(t.own("lye_concentration_percent"))
			return ratio(product(t.alkali(), less(bare(1), c)), c)
		}},
		{pattern: "batch.water_in_extras_g", label: "water in the extras", unit: UnitGram, value: lye(func(l *LyeSheet) float64 { return l.WaterInExtrasG }), how: func(t teller) Term {
			return sumOver(len(t.b.Extras), t.waterOf)
		}},
		{pattern: "batch.water_to_add_g", label: "water to add", unit: UnitGram, value: func(t teller) Figure { return t.b.Lye.WaterToAddG }, feeds: []string{"lye-short-water"}, how: func(t teller) Term {
			return less(t.fig("batch.all_water_g"), sum(t.stockWater(), t.fig("batch.water_in_extras_g")))
		}},
		{
			pattern: "batch.lye_concentration_percent", label: "lye concentration", unit: UnitPercent, value: lye(func(l *LyeSheet) float64 { return l.ConcentrationPercent }),
			feeds: []string{"glycerin-rivers", "soda-ash", "gel"}, how: func(t teller) Term {
				return product(ratio(t.alkali(), sum(t.alkali(), t.fig("batch.all_water_g"))), bare(100))
			}, why: "of what the scale shows: alkali with its impurity, and every gram of water",
		},
		{
			pattern: "batch.lye_as_mixed_percent", label: "lye as it dissolves", unit: UnitPercent, value: lye(func(l *LyeSheet) float64 { return l.AsMixedPercent }),
			feeds: []string{"lye-mixed-strong", "lye-near-boil"}, how: func(t teller) Term {
				before := sumOver(len(t.b.Extras), func(i int) Term {
					if at := t.b.Extras[i].Joins; at != JoinsBefore && at != JoinsOnIce {
						return bare(0)
					}
					return t.waterOf(i)
				})
				return product(ratio(t.alkali(), sum(t.alkali(), t.stockWater(), larger(bare(0), t.fig("batch.water_to_add_g")), before)), bare(100))
			}, why: "before the extras join that join later",
		},
		{
			pattern: "batch.lye_rise_k", label: "how far the lye warms", unit: "K", value: func(t teller) Figure { return t.b.Heat.LyeRiseK }, feeds: []string{"lye-near-boil"},
			how: teller.lyeRise, band: teller.lyeRiseBand,
		},
		{
			pattern: "batch.lye_peak_c", label: "the lye at its hottest", unit: UnitCelsius, value: func(t teller) Figure { return t.b.Heat.LyePeakC }, feeds: []string{"lye-near-boil"},
			how: func(t teller) Term { return sum(t.whole("room.temperature_c"), t.fig("batch.lye_rise_k")) },
		},
	}
}

// allOil is the mass of an oil before carriers are taken out of the batch.
func (t teller) allOil(i int) Term {
	if o := t.b.Oils[i]; t.plan.Carrier == CarrierBatch && o.ID == t.plan.carrierOil() {
		return sum(t.fig("batch.oils[].g", i), t.carriers())
	}
	return t.fig("batch.oils[].g", i)
}

// carriers is the oil that carries all colours of the batch.
func (t teller) carriers() Term {
	var all []Term
	for i, j := range t.b.Jugs {
		for k, d := range j.Colourants {
			if d.Carrier == CarryOil {
				all = append(all, t.fig("batch.jugs[].colourants[].carrier_g", i, k))
			}
		}
	}
	return sumOver(len(all), func(i int) Term { return all[i] })
}

func (t teller) demand() Term {
	return sumOver(len(t.b.Oils), func(i int) Term {
		return product(t.allOil(i), ratio(t.fig("batch.oils[].sap_koh_mg_g", i), bare(1000)))
	})
}

// acidity is the alkali that a gram of an extra uses up beside its fat.
func (t teller) acidity(i int) Term {
	x, _ := t.shelf.Extra(t.b.Extras[i].ID)
	if x.AlkaliKOHMgG == 0 {
		return bare(0)
	}
	return ratio(t.shelved("acid of "+x.Name, x.AlkaliKOHMgG, UnitKOHPerGram, x.Source), bare(1000))
}

// waterOf is the water that an extra brings.
func (t teller) waterOf(i int) Term {
	if t.b.Extras[i].WaterPercent == 0 {
		return bare(0)
	}
	return product(t.fig("batch.extras[].g", i), percentOf(t.fig("batch.extras[].water_percent", i)))
}

// alkaliWanted is the alkali of a batch as grams of KOH: the demand less the superfat, and what the acids use up on top.
func (t teller) alkaliWanted() Term {
	return sum(product(t.fig("batch.demand_koh_g"), less(bare(1), percentOf(t.own("superfat_percent")))), t.fig("batch.acid_koh_g"))
}

// kohMoles is the KOH share by moles, a fraction, however the plan says it.
func (t teller) kohMoles() Term {
	share := percentOf(t.own("koh_share_percent"))
	if t.plan.KOHShareBy != ShareMass {
		return share
	}
	koh := ratio(share, t.molar("molar mass of KOH", chem.MolarKOH))
	return ratio(koh, sum(koh, ratio(less(bare(1), share), t.molar("molar mass of NaOH", chem.MolarNaOH))))
}

func (t teller) molar(name string, v float64) Term {
	return t.law(name, v, "g/mol", "CIAAW atomic weights", "mixed")
}

func (t teller) alkaliRatio() Term {
	return ratio(t.molar("molar mass of NaOH", chem.MolarNaOH), t.molar("molar mass of KOH", chem.MolarKOH))
}

// dry is dry alkali as weighed: none with a stock lye.
func (t teller) dry(pure, purity string) Term {
	if t.b.Lye.Stock.StrengthPercent > 0 {
		return t.known("a stock lye is used instead", 0, UnitGram, "your plan")
	}
	return ratio(t.fig(pure), percentOf(t.fig(purity)))
}

// alkali is the alkali as weighed: the dry alkali, or the pure alkali of a stock lye.
func (t teller) alkali() Term {
	if t.b.Lye.Stock.StrengthPercent > 0 {
		return t.fig("batch.naoh_pure_g")
	}
	return sum(t.fig("batch.naoh_weighed_g"), t.fig("batch.koh_weighed_g"))
}

func (t teller) stockWater() Term {
	if t.b.Lye.Stock.StrengthPercent <= 0 {
		return bare(0)
	}
	return less(t.fig("batch.stock_lye_g"), t.fig("batch.naoh_pure_g"))
}

// lyeRise is read off a table by the pure alkali at the moment of dissolving.
func (t teller) lyeRise() Term {
	rise := func(v []float64) float64 {
		k, _, _ := chem.LyeRise(v[0]/100*(v[1]+v[2])/v[3], t.plan.kohShare())
		return k
	}
	return modelled("rise from the table of heats of solution", rise,
		t.fig("batch.lye_as_mixed_percent"), t.fig("batch.naoh_pure_g"), t.fig("batch.koh_pure_g"), t.alkali())
}

func (t teller) lyeRiseBand() (low, high Figure, why string) {
	alkali := t.alkali().Value()
	pure := t.b.Lye.AsMixedPercent / 100 * (t.b.Lye.NaOH.PureG + t.b.Lye.KOH.PureG) / alkali
	rise, band, ok := chem.LyeRise(pure, t.plan.kohShare())
	if !ok || math.IsNaN(band) {
		return Figure{}, Figure{}, ""
	}
	return Know(rise), Know(rise + band), "published heats of solution differ by that much; a jug that loses heat stays below"
}
