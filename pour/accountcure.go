package pour

import "pourbench/chem/cure"

// Why the forecast of a drying bar has a band, and what it is.
const (
	cureBand = "80 % of bars like it, by how little is known before one is weighed; too short on the late side"
	cureWhy  = "before a bar was weighed, and leaning early: soap slows as it dries; dry by your criterion says nothing of lye"
	cureLaw  = "the drying law of a block "
)

// cureAccounts are how a usual bar is forecast to dry.
func cureAccounts() []accountRow {
	of := func(f func(*CureSheet) Figure) func(teller) Figure {
		return func(t teller) Figure { return f(&t.sheet.Cure) }
	}
	rows := []accountRow{
		{pattern: "cure.thick_mm", label: "thickness that dries", unit: UnitMM, value: of(func(c *CureSheet) Figure { return c.ThickMM }), how: func(t teller) Term { return t.fig("bars.thickness_mm") }},
		{pattern: "cure.wide_mm", label: "width that dries", unit: UnitMM, value: of(func(c *CureSheet) Figure { return c.WideMM }), how: teller.dryingWide},
		{pattern: "cure.high_mm", label: "height that dries", unit: UnitMM, value: of(func(c *CureSheet) Figure { return c.HighMM }), how: func(t teller) Term {
			if t.sheet.Plan.Mould.Shape == ShapeTube {
				return t.whole("mould.width_mm")
			}
			return t.at(&t.sheet.Base).fig("batch.height_mm")
		}, why: "the base's alone: icing dries sooner"},
		{pattern: "cure.cut_moisture_percent", label: "water in a bar as cut", unit: UnitPercent, value: of(func(c *CureSheet) Figure { return c.CutMoisturePercent }), how: func(t teller) Term {
			return less(bare(100), product(ratio(t.curedBare(), t.fig("bars.cut_g")), less(bare(100), t.whole("base.final_moisture_percent"))))
		}, why: "what is dry in it, from its mass when it has dried to the moisture the plan states"},
		{pattern: "cure.loss_percent", label: "part of a bar that goes", unit: UnitPercent, value: of(func(c *CureSheet) Figure { return c.LossPercent }), how: teller.dryingLoss, why: "of its mass as cut"},
		{pattern: "cure.loss_sd_percent", label: "spread of the part that goes", unit: UnitPercent, value: of(func(c *CureSheet) Figure { return c.LossSDPercent }), how: teller.dryingLossSD},
		{pattern: "cure.tau_days", label: "time of the slowest drying", unit: UnitDay, value: of(func(c *CureSheet) Figure { return c.TauDays }), how: teller.dryingTau, why: "what is left then falls to about a third of it in as many days"},
		{pattern: "cure.ln_tau_sd", label: "spread of ln of that time", unit: UnitCount, value: of(func(c *CureSheet) Figure { return c.LnTauSD }), how: func(t teller) Term {
			if l := t.hand.Rack.LnD; l.Known() {
				return t.law("spread of your own batches", min(l.SD, cure.PriorLnTauSD), UnitCount, "your own batches' weighings", "own, no source")
			}
			return t.law("spread of bars nobody has weighed", cure.PriorLnTauSD, UnitCount, "no figure was found", "assumed")
		}},
		{pattern: "cure.criterion_percent", label: "dry when it loses a week", unit: UnitPercent, value: of(func(c *CureSheet) Figure { return c.CriterionPercent }), how: func(t teller) Term {
			if p := t.sheet.Plan.Cure.WeeklyLossPercent; p > 0 {
				return larger(t.whole("cure.weekly_loss_percent"), bare(leastCriterion))
			}
			return t.law("usual criterion", cure.CriterionLoss, UnitPercent, "common practice, no source", practice)
		}},
		{pattern: "cure.pack_day", label: "day of packing", unit: UnitDay, value: of(func(c *CureSheet) Figure { return c.PackDay }), how: teller.packDay, why: "after the cut"},
		{pattern: "cure.own_batches", label: "own batches it rests on", unit: UnitCount, value: of(func(c *CureSheet) Figure { return c.OwnBatches }), how: func(t teller) Term {
			return t.known("batches of yours that were weighed as they dried", t.sheet.Cure.OwnBatches.V, UnitCount, "your logbook")
		}, why: "from three on they say how the next one dries"},
	}
	return append(rows, dryingAccounts()...)
}

// dryingAccounts are what the law of drying itself gives.
func dryingAccounts() []accountRow {
	row := func(pattern, label string, u Unit, feeds []string, value func(*CureSheet) Figure, read func(f *cure.Fit, v []float64) float64, more ...string) accountRow {
		return accountRow{
			pattern: pattern, label: label, unit: u, feeds: feeds, why: cureWhy, value: func(t teller) Figure { return value(&t.sheet.Cure) },
			how: func(t teller) Term {
				if u == UnitGram {
					return sum(t.dried(read, more...), t.toppingsAfter())
				}
				return t.dried(read, more...)
			},
		}
	}
	ready := func(f *cure.Fit, v []float64) cure.Estimate {
		e, err := f.Ready(v[0])
		if err != nil {
			return cure.Estimate{V: Unknown()}
		}
		return e
	}
	day := row("cure.ready_day", "dry by your criterion on day", UnitDay, []string{"packed-damp"}, func(c *CureSheet) Figure { return c.ReadyDay.Mid },
		func(f *cure.Fit, v []float64) float64 { return ready(f, v).V }, "cure.criterion_percent")
	day.band = func(t teller) (low, high Figure, why string) {
		return t.sheet.Cure.ReadyDay.Low, t.sheet.Cure.ReadyDay.High, cureBand
	}
	packed := row("cure.pack_g", "a bar when it is packed", UnitGram, []string{"label-over-mass"}, func(c *CureSheet) Figure { return c.PackG.Mid },
		func(f *cure.Fit, v []float64) float64 { return f.Mass(v[0]).V }, "cure.pack_day")
	packed.band = func(t teller) (low, high Figure, why string) {
		return t.sheet.Cure.PackG.Low, t.sheet.Cure.PackG.High, cureBand
	}
	return []accountRow{
		day,
		row("cure.ready_early_day", "dry on day, early end", UnitDay, nil, func(c *CureSheet) Figure { return c.ReadyDay.Low },
			func(f *cure.Fit, v []float64) float64 { return max(0, ready(f, v).Low()) }, "cure.criterion_percent"),
		row("cure.ready_late_day", "dry on day, late end", UnitDay, nil, func(c *CureSheet) Figure { return c.ReadyDay.High },
			func(f *cure.Fit, v []float64) float64 { return ready(f, v).High() }, "cure.criterion_percent"),
		row("cure.final_g", "a bar in the end", UnitGram, nil, func(c *CureSheet) Figure { return c.FinalG }, func(f *cure.Fit, _ []float64) float64 { return f.Final().V }),
		packed,
		row("cure.pack_light_g", "a bar when it is packed, light end", UnitGram, nil, func(c *CureSheet) Figure { return c.PackG.Low },
			func(f *cure.Fit, v []float64) float64 { return f.Mass(v[0]).Low() }, "cure.pack_day"),
		row("cure.pack_heavy_g", "a bar when it is packed, heavy end", UnitGram, nil, func(c *CureSheet) Figure { return c.PackG.High },
			func(f *cure.Fit, v []float64) float64 { return f.Mass(v[0]).High() }, "cure.pack_day"),
		row("cure.pack_loss_percent", "what it loses in the week after packing", UnitPercent, []string{"packed-damp"}, func(c *CureSheet) Figure { return c.PackLossPercent },
			func(f *cure.Fit, v []float64) float64 { return f.WeeklyLoss(v[0]).V }, "cure.pack_day"),
		{
			pattern: "cure.cut_for_label_g", label: "to cut for the label", unit: UnitGram, feeds: []string{"label-over-mass"}, value: func(t teller) Figure { return t.sheet.Cure.CutForLabelG },
			of: func(t teller) bool { return t.sheet.Plan.Cure.LabelG > 0 },
			how: func(t teller) Term {
				late := t.toppingsAfter()
				return ratio(product(less(t.whole("cure.label_g"), late), t.fig("bars.cut_g")), less(t.fig("cure.pack_g"), late))
			}, why: "what a bar must weigh as cut to weigh as much as the label says when it is packed, drying as the usual bar does",
		},
	}
}

// dried runs the law of drying again from what is shown and reads something off it.
func (t teller) dried(read func(f *cure.Fit, v []float64) float64, more ...string) Term {
	in := []Term{
		t.fig("cure.thick_mm"), t.fig("cure.wide_mm"), t.fig("cure.high_mm"), t.fig("cure.loss_percent"), t.fig("cure.loss_sd_percent"),
		t.fig("cure.tau_days"), t.fig("cure.ln_tau_sd"), t.fig("bars.cut_g"),
	}
	for _, path := range more {
		in = append(in, t.fig(path))
	}
	return modelled(cureLaw, func(v []float64) float64 {
		f, err := cure.Forecast(cure.Box{ThickMM: v[0], WideMM: v[1], HighMM: v[2]}, cure.PriorOf(v[3]/100, v[4]/100, v[5], v[6]), v[7])
		if err != nil {
			return Unknown()
		}
		return read(f, v[8:])
	}, in...)
}

// toppingsAfter are what goes onto the cured bar.
func (t teller) toppingsAfter() Term {
	return sumOver(len(t.sheet.Toppings), func(i int) Term {
		if t.sheet.Toppings[i].OnLoaf() {
			return bare(0)
		}
		return t.fig("toppings[].adds_g", i)
	})
}

func (t teller) curedBare() Term { return less(t.fig("bars.cured_g"), t.toppingsAfter()) }

// dryingWide is the width of the usual bar.
func (t teller) dryingWide() Term {
	m := t.sheet.Plan.Mould
	switch {
	case m.Shape == ShapeCavity && m.CavityML > 0:
		return ratio(product(t.whole("mould.cavity_ml"), bare(1000)), product(t.whole("mould.fill_mm"), t.whole("mould.length_mm")))
	case !t.sheet.Cut.sides():
		return t.whole("mould.width_mm")
	}
	n := len(t.sheet.Cut.Bars)
	return ratio(sumOver(n, func(i int) Term { return less(t.fig("cut.bars[].right_mm", i), t.fig("cut.bars[].left_mm", i)) }), bare(float64(n)))
}

// dryingLoss is what goes in the end: by the plan's moisture after cure, and by what own batches came to where there are enough.
func (t teller) dryingLoss() Term {
	if l := t.hand.Rack.Moisture; l.Known() {
		return t.byRack("", func(p cure.Prior) float64 { return 100 * p.Loss })
	}
	return product(bare(100), less(bare(1), ratio(t.curedBare(), t.fig("bars.cut_g"))))
}

func (t teller) dryingLossSD() Term {
	if l := t.hand.Rack.Moisture; l.Known() {
		return t.byRack("spread of ", func(p cure.Prior) float64 { return 100 * p.LossSD })
	}
	dry := less(bare(1), percentOf(t.whole("base.final_moisture_percent")))
	return ratio(product(t.law("spread of the moisture after cure", 100*cure.FinalMoistureSD, UnitPercent, "no figure was found", "assumed"), less(bare(1), percentOf(t.fig("cure.cut_moisture_percent")))), product(dry, dry))
}

// byRack is a figure of the prior by own batches and the plan together.
func (t teller) byRack(what string, read func(cure.Prior) float64) Term {
	l := t.hand.Rack.Moisture
	return modelled(what+"the moisture of your own batches and the plan's, each by how well it is known ", func(v []float64) float64 {
		rack := cure.Rack{Moisture: cure.Learnt{Mean: v[2] / 100, SD: v[3] / 100, Batches: l.Batches}}
		p, err := rack.Prior(cure.Box{ThickMM: 1, WideMM: 1, HighMM: 1}, v[0]/100, v[1]/100, cure.FinalMoistureSD)
		if err != nil {
			return Unknown()
		}
		return read(p)
	}, t.fig("cure.cut_moisture_percent"), t.whole("base.final_moisture_percent"),
		t.known("moisture your batches came to", 100*l.Mean, UnitPercent, "your logbook"), t.known("its spread", 100*l.SD, UnitPercent, "your logbook"))
}

// dryingTau is the common one, or that of own batches in a bar of this size.
func (t teller) dryingTau() Term {
	l := t.hand.Rack.LnD
	if !l.Known() {
		return t.law("tau of a usual bar", cure.PriorTauDays, UnitDay, `"four weeks" taken as nine tenths of the water gone`, practice)
	}
	return modelled("tau of this bar by the diffusivity of your own batches ", func(v []float64) float64 {
		return cure.Box{ThickMM: v[0], WideMM: v[1], HighMM: v[2]}.TauDays(v[3] * 1e-12)
	}, t.fig("cure.thick_mm"), t.fig("cure.wide_mm"), t.fig("cure.high_mm"), t.known("diffusivity of your own batches, 1e-12 m²/s", l.Diffusivity()*1e12, UnitCount, "your logbook"))
}

func (t teller) packDay() Term {
	if t.sheet.Plan.Cure.PackDays > 0 {
		return t.whole("cure.pack_days")
	}
	return t.whole("bed.cure_days")
}
