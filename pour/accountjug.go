package pour

// jugAccounts are what goes into a jug.
func jugAccounts() []accountRow {
	jug := func(of func(*JugSheet) float64) func(teller) Figure {
		return func(t teller) Figure { return AsFigure(of(&t.b.Jugs[t.ix[0]])) }
	}
	dose := func(t teller) *DoseLine { return &t.b.Jugs[t.ix[0]].Colourants[t.ix[1]] }
	return []accountRow{
		{pattern: "batch.jugs[].share_percent", label: "share of {}", unit: UnitPercent, value: jug(func(j *JugSheet) float64 { return j.SharePercent }), how: func(t teller) Term { return t.share(t.ix[0]) }},
		{pattern: "batch.jugs[].batter_g", label: "batter of {}, exact", unit: UnitGram, value: jug(func(j *JugSheet) float64 { return j.BatterG }), how: func(t teller) Term {
			return ratio(product(t.fig("batch.batter_g"), t.share(t.ix[0])), sumOver(len(t.b.Jugs), t.share))
		}},
		{pattern: "batch.jugs[].batter_weigh_g", label: "batter of {} to weigh", unit: UnitGram, value: jug(func(j *JugSheet) float64 { return j.BatterWeighG }), how: func(t teller) Term {
			all := make([]Term, len(t.b.Jugs))
			for i := range all {
				all[i] = t.fig("batch.jugs[].batter_g", i)
			}
			return place(t.ix[0], t.scaleStep(), all)
		}, why: "so that the jugs sum to what all of the batter weighs on that scale"},
		{pattern: "batch.jugs[].total_g", label: "{} with its colours and scents", unit: UnitGram, value: jug(func(j *JugSheet) float64 { return j.TotalG }), how: func(t teller) Term {
			return sum(t.fig("batch.jugs[].batter_weigh_g", t.ix[0]), t.addedTo(t.ix[0]))
		}},
		{pattern: "batch.jugs[].total_ml", label: "volume of {}", unit: UnitML, value: jug(func(j *JugSheet) float64 { return j.TotalML }), feeds: []string{"jug-too-small"}, how: teller.jugML},
		{pattern: "batch.jugs[].vessel_ml", label: "what the vessel of {} has to hold", unit: UnitML, value: jug(func(j *JugSheet) float64 { return j.VesselML }), feeds: []string{"jug-too-small"}, how: func(t teller) Term {
			if t.ix[0] == 0 && t.b.Script.Brief.Technique.InPot() {
				return sumOver(len(t.b.Jugs), func(i int) Term { return t.fig("batch.jugs[].total_ml", i) })
			}
			return t.fig("batch.jugs[].total_ml", t.ix[0])
		}},
		{pattern: "batch.jugs[].colourants[].pigment_g", label: "{}", unit: UnitGram, value: func(t teller) Figure { return AsFigure(dose(t).PigmentG) }, feeds: []string{"dose-unusual"}, how: func(t teller) Term {
			path := "jug[" + decimal(t.ix[0]) + "].colourant[" + decimal(t.ix[1]) + "].dose_percent"
			return product(t.fig("batch.jugs[].batter_g", t.ix[0]), percentOf(t.listed("dose", path, dose(t).DosePercent, UnitPercent)))
		}},
		{
			pattern: "batch.jugs[].colourants[].carrier_g", label: "carrier of {}", unit: UnitGram, value: func(t teller) Figure { return AsFigure(dose(t).CarrierG) }, feeds: []string{"superfat-jug", "colour-wrong-carrier"},
			how: func(t teller) Term {
				return product(t.fig("batch.jugs[].colourants[].pigment_g", t.ix[0], t.ix[1]), t.carrierParts())
			},
		},
		{pattern: "batch.jugs[].scents[].g", label: "{}", unit: UnitGram, value: func(t teller) Figure { return AsFigure(t.b.Jugs[t.ix[0]].Scents[t.ix[1]].G) }, how: teller.scentInJug},
		{pattern: "batch.jugs[].scent_load_percent", label: "scent load inside {}", unit: UnitPercent, value: jug(func(j *JugSheet) float64 { return j.ScentLoadPercent }), feeds: []string{"scent-high-in-jug", "scents-add-up"}, how: func(t teller) Term {
			i := t.ix[0]
			if t.b.Jugs[i].BatterG <= 0 {
				return t.emptyJug(UnitPercent)
			}
			scent := sumOver(len(t.b.Jugs[i].Scents), func(k int) Term { return t.fig("batch.jugs[].scents[].g", i, k) })
			return product(ratio(scent, product(t.allOils(), t.jugPart())), bare(100))
		}, why: "of this jug's own part of the oils"},
		{
			pattern: "batch.jugs[].vanillin_percent", label: "vanillin in the part of the bar that is {}", unit: UnitPercent, value: jug(func(j *JugSheet) float64 { return j.VanillinPercent }),
			feeds: []string{"vanillin-white", "vanillin-near-white", "vanillin-browns"}, how: teller.vanillin,
		},
		{pattern: "batch.jugs[].white_percent", label: "titanium white in {}", unit: UnitPercent, value: jug(func(j *JugSheet) float64 { return j.WhitePercent }), feeds: []string{"glycerin-rivers"}, how: teller.white},
	}
}

// emptyJug is what is in a jug without a share: nothing.
func (t teller) emptyJug(u Unit) Term { return t.known("it holds no batter", 0, u, "your plan") }

func (t teller) share(i int) Term {
	return t.listed("share of "+t.b.Jugs[i].Name, "jug["+decimal(i)+"].share_percent", t.b.Jugs[i].SharePercent, UnitPercent)
}

// carrierParts is how many grams of carrier a gram of pigment takes: as the plan says, else as the shelf does.
func (t teller) carrierParts() Term {
	i, k := t.ix[0], t.ix[1]
	d := t.plan.Jugs[i].Colourants[k]
	c, _ := t.shelf.Colourant(d.Colourant)
	parts := t.shelf.dye(d).parts
	switch {
	case parts == 0:
		return t.known("it is stirred in dry", 0, UnitParts, "your plan or the shelf")
	case d.CarrierParts > 0:
		return t.listed("parts of carrier", "jug["+decimal(i)+"].colourant["+decimal(k)+"].carrier_parts", parts, UnitParts)
	}
	return t.shelved("parts of carrier for "+c.Name, parts, UnitParts, c.Source)
}

// jugML adds the volume of a jug's batter and of all that joins it.
func (t teller) jugML() Term {
	i := t.ix[0]
	j := t.b.Jugs[i]
	all := []Term{product(t.fig("batch.batter_ml"), t.jugPart())}
	for k, d := range j.Colourants {
		all = append(all,
			ratio(t.fig("batch.jugs[].colourants[].pigment_g", i, k), t.law("density of a pigment", pigmentGML, "g/mL", "CRC Handbook, between mica and titanium dioxide", "memory")),
			ratio(t.fig("batch.jugs[].colourants[].carrier_g", i, k), t.law("density of its carrier", carrierGML(d.Carrier), "g/mL", "CRC Handbook; an oil: Codex CXS 210", "memory")))
	}
	for k, x := range j.Scents {
		sc, _ := t.shelf.Scent(x.ID)
		all = append(all, ratio(t.fig("batch.jugs[].scents[].g", i, k), t.shelved("density of "+sc.Name, sc.gml(), "g/mL", sc.Source)))
	}
	return sum(all...)
}

// scentInJug is a jug's part of a scent, by its batter among the jugs that the scent goes to.
func (t teller) scentInJug() Term {
	i, seen := t.ix[0], 0
	for n, part := range t.plan.Scents {
		if !part.GoesInto(t.b.Jugs[i].Name) {
			continue
		}
		if seen++; seen <= t.ix[1] {
			continue
		}
		var into []Term
		for k, j := range t.b.Jugs {
			if part.GoesInto(j.Name) {
				into = append(into, t.fig("batch.jugs[].batter_g", k))
			}
		}
		return ratio(product(t.fig("batch.scents[].g", n), t.fig("batch.jugs[].batter_g", i)), sum(into...))
	}
	return bare(0) // the sheet's scents are the plan's
}

func (t teller) vanillin() Term {
	i := t.ix[0]
	j := t.b.Jugs[i]
	if len(j.Scents) == 0 || j.BatterG <= 0 {
		return t.known("no scent goes into it", 0, UnitPercent, "your plan")
	}
	g := sumOver(len(j.Scents), func(k int) Term {
		sc, _ := t.shelf.Scent(j.Scents[k].ID)
		return product(t.fig("batch.jugs[].scents[].g", i, k), percentOf(t.shelved("vanillin of "+sc.Name, sc.VanillinPercent, UnitPercent, sc.Source)))
	})
	cured := ratio(product(t.fig("batch.dry_g"), t.jugPart()), less(bare(1), percentOf(t.own("final_moisture_percent"))))
	return product(ratio(g, cured), bare(100))
}

// white is the titanium white of the whole batter and of the jug's own doses.
func (t teller) white() Term {
	var all []Term
	for i, x := range t.b.Extras {
		if c, ok := t.shelf.Colourant(x.ID); ok && c.Titanium {
			all = append(all, product(ratio(t.fig("batch.extras[].g", i), t.fig("batch.batter_g")), bare(100)))
		}
	}
	for k, d := range t.b.Jugs[t.ix[0]].Colourants {
		if c, ok := t.shelf.Colourant(d.ID); ok && c.Titanium {
			all = append(all, t.listed("its own dose", "jug["+decimal(t.ix[0])+"].colourant["+decimal(k)+"].dose_percent", d.DosePercent, UnitPercent))
		}
	}
	return sumOver(len(all), func(k int) Term { return all[k] })
}
