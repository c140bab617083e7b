package pour

import "pourbench/chem"

// totalAccounts are what is weighed of a thing in base and icing together.
func totalAccounts() []accountRow {
	return []accountRow{{
		pattern: "totals[].g", label: "{}, all together", unit: UnitGram, value: func(t teller) Figure { return AsFigure(t.sheet.Totals[t.ix[0]].G) }, how: teller.total,
		why: "as the scale shows each, for having enough on the bench: the steps of the checklist weigh it where it is used",
	}}
}

// total adds up every place in which a thing is used.
func (t teller) total() Term {
	want := t.sheet.Totals[t.ix[0]]
	var all []Term
	for _, b := range t.sheet.Batches() {
		at := t.at(b)
		at.each(func(kind, name string, g Term) {
			if kind == want.Kind && name == want.Name {
				all = append(all, t.onScale(kind, g))
			}
		})
	}
	for i, k := range t.sheet.Embeds {
		if want.Kind == WeighEmbed && k.Name == want.Name {
			all = append(all, t.onScale(WeighEmbed, t.fig("embed_kinds[].all_g", i)))
		}
	}
	for i, l := range t.sheet.Toppings {
		for k, part := range l.Parts {
			if m, _ := t.shelf.Topping(part.ID); want.Kind == WeighTopping && part.Name == want.Name && !m.Batter {
				all = append(all, t.onScale(WeighTopping, t.fig("toppings[].parts[].g", i, k)))
			}
		}
	}
	return sumOver(len(all), func(i int) Term { return all[i] })
}

// onScale is a mass as its scale shows it; oils and alkali in grams are on its step as they are.
func (t teller) onScale(kind string, g Term) Term {
	show := t.sheet.Plan.Show
	switch {
	case show.Mass == MassOunce:
		return nearestStep(g, t.known("step on which these ounces are drawn", show.drawnStep(kind, g.Value()), UnitGram, "your scale"))
	case kind == WeighOil || kind == WeighAlkali:
		return g
	case kind == WeighWater:
		return nearestStep(g, t.scaleStep())
	default:
		return nearestStep(g, t.lyeStep())
	}
}

// each visits everything that is weighed of a batch, as [BatchSheet.weighings] does.
func (t teller) each(visit func(kind, name string, g Term)) {
	if t.b.ReadyBlend != "" {
		visit(WeighOil, nameReadyOils+t.b.ReadyBlend, t.fig("batch.oils_weigh_g"))
	} else {
		for i, o := range t.b.Oils {
			visit(WeighOil, o.Name, t.fig("batch.oils[].weigh_g", i))
		}
	}
	visit(WeighAlkali, NameNaOH, t.fig("batch.naoh_to_weigh_g"))
	visit(WeighAlkali, NameKOH, t.fig("batch.koh_to_weigh_g"))
	visit(WeighAlkali, NameStock, t.fig("batch.stock_to_weigh_g"))
	visit(WeighWater, NameWater, t.fig("batch.water_to_add_g"))
	for i, x := range t.b.Extras {
		visit(WeighExtra, x.Name, t.fig("batch.extras[].g", i))
	}
	for i, j := range t.b.Jugs {
		for k, d := range j.Colourants {
			visit(WeighColour, d.Name, t.fig("batch.jugs[].colourants[].pigment_g", i, k))
			visit(WeighCarrier, d.CarrierName, t.fig("batch.jugs[].colourants[].carrier_g", i, k))
		}
		for k, x := range j.Scents {
			visit(WeighScent, x.Name, t.fig("batch.jugs[].scents[].g", i, k))
		}
	}
}

// familyAccounts are the fatty acids of a blend by family.
func familyAccounts() []accountRow {
	row := func(key, label string, of func(*chem.Families) float64) accountRow {
		return accountRow{
			pattern: "batch." + key, label: label, unit: UnitPercent, value: func(t teller) Figure { return AsFigure(of(&t.b.Fats.Families)) },
			how: func(t teller) Term {
				parts := sumOver(len(t.b.Oils), func(i int) Term {
					oil, _ := t.shelf.Oil(t.b.Oils[i].ID)
					own := chem.Blend{{Fat: oil.Fat, G: 1}}.Families()
					return product(t.allOil(i), t.shelved("in "+oil.Name, of(&own), UnitPercent, oil.FattyAcidSource))
				})
				return ratio(parts, t.allOils())
			},
		}
	}
	return []accountRow{
		row("short_percent", "C8 to C14", func(f *chem.Families) float64 { return f.ShortPercent }),
		row("palmitic_stearic_percent", "palmitic and stearic acid", func(f *chem.Families) float64 { return f.PalmiticStearicPercent }),
		row("oleic_percent", "oleic acid", func(f *chem.Families) float64 { return f.OleicPercent }),
		row("linoleic_linolenic_percent", "linoleic and linolenic acid", func(f *chem.Families) float64 { return f.LinoleicLinolenicPercent }),
		row("ricinoleic_percent", "ricinoleic acid", func(f *chem.Families) float64 { return f.RicinoleicPercent }),
		row("other_percent", "other fatty acids, and oils without a profile", func(f *chem.Families) float64 { return f.OtherPercent }),
	}
}
