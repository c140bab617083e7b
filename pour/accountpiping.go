package pour

import (
	"slices"
	"strings"

	"pourbench/pour/shape"
)

// pipingAccounts are how the icing is piped: they stand where the plan states a shape.
func pipingAccounts() []accountRow {
	iced := func(t teller) bool { return t.sheet.Icing != nil && t.b != nil && t.b.Name == Icing }
	rows := []accountRow{
		{pattern: "batch.shape_g", label: "one unit", unit: UnitGram, value: piped(func(p *PipingSheet) Figure { return p.UnitG }), of: func(t teller) bool { return iced(t) && stated(t) }, feeds: []string{"piping-unfinished", "icing-unsized"}, how: func(t teller) Term {
			return product(t.fig("piping.unit_ml"), t.fig("piping.density_g_ml"))
		}},
		{pattern: "batch.made_g", label: "all that is made", unit: UnitGram, value: piped(func(p *PipingSheet) Figure { return p.MadeG }), of: iced, feeds: []string{"icing-small", "icing-rest"}, how: func(t teller) Term {
			return sum(t.fig("batch.batter_g"), t.added())
		}, why: "batter, colours and scent, what stays in bags and tips included"},
	}
	for _, r := range slices.Concat(unitAccounts(), bagAccounts(), windowAccounts()) {
		r.of = stated
		rows = append(rows, r)
	}
	return rows
}

func stated(t teller) bool { return t.sheet.Piping.Stated() }

func piped(of func(*PipingSheet) Figure) func(teller) Figure {
	return func(t teller) Figure { return of(&t.sheet.Piping) }
}

// unitAccounts are one unit and where it stands.
func unitAccounts() []accountRow {
	return []accountRow{
		{pattern: "piping.units", label: "units on the loaf", unit: UnitCount, value: piped(func(p *PipingSheet) Figure { return count(p.Units) }), how: func(t teller) Term {
			return t.model("units, by how many fit", func(l pieces) float64 { return float64(l.units) })
		}},
		{pattern: "piping.unit_ml", label: "volume of one unit", unit: UnitML, value: piped(func(p *PipingSheet) Figure { return p.UnitML }), how: func(t teller) Term {
			return t.model("volume of one "+t.sheet.Plan.Piping.called()+", mL,", func(l pieces) float64 { return l.volume / 1000 })
		}, why: "from its measures: geometry, whatever it is made of. A rosette is its strand along each coil, once round at least, and no less than a body that tapers from each coil's rim to the next one's and to a point"},
		{pattern: "piping.density_g_ml", label: "density as it is piped", unit: UnitDensity, value: piped(func(p *PipingSheet) Figure { return p.DensityGML }), how: func(t teller) Term {
			if p := t.sheet.Plan.Piping; p.CupML > 0 && p.CupG > 0 {
				return ratio(t.whole("piping.cup_g"), t.whole("piping.cup_ml"))
			}
			at := t.at(t.sheet.Icing)
			return ratio(ratio(at.fig("batch.poured_g"), at.fig("batch.poured_ml")), sum(bare(1), percentOf(t.whole("piping.overrun_percent"))))
		}, why: "better than the batter's: weigh a cup of your own icing"},
		{pattern: "piping.across_mm", label: "width of one unit", unit: UnitMM, value: piped(func(p *PipingSheet) Figure { return p.WidthMM }), feeds: []string{"embed-iced"}, how: func(t teller) Term {
			return t.model("width", func(l pieces) float64 { return l.wide })
		}},
		{pattern: "piping.high_mm", label: "height of one unit", unit: UnitMM, value: piped(func(p *PipingSheet) Figure { return p.HighMM }), how: func(t teller) Term {
			return t.model("height", func(l pieces) float64 { return l.high })
		}, why: "above the base"},
		{pattern: "piping.mean_mm", label: "mean height of one unit", unit: UnitMM, value: piped(func(p *PipingSheet) Figure { return p.MeanMM }), feeds: []string{"base-soft", "embed-iced"}, how: func(t teller) Term {
			return t.model("volume over what it stands on", func(l pieces) float64 { return l.volume / l.footprint })
		}},
		{pattern: "piping.peak_needed_mm", label: "peak the base has to hold", unit: UnitMM, value: piped(func(p *PipingSheet) Figure { return p.PeakMM }), feeds: []string{"base-soft"}, how: func(t teller) Term {
			l := t.sheet.Plan.Piping.lay(t.sheet.Plan.Mould, t.sheet.Cut)
			return ratio(product(t.fig("piping.mean_mm"), bare(6*shape.Sureness)), t.law("how many times its strength a soft bed carries", l.under, UnitCount, "plasticity of a soft bed: strip (2 + π), round spot 5.69", "memory"))
		}, why: "an estimate: a peak pulled from the base tells its strength; twice what is needed is asked for"},
		{pattern: "piping.gap_mm", label: "left between neighbours", unit: UnitMM, value: piped(func(p *PipingSheet) Figure { return p.GapMM }), feeds: []string{"icing-lane"}, how: func(t teller) Term {
			p := &t.sheet.Piping
			takes := t.known("a unit takes along the loaf", p.AlongMM.V, UnitMM, "worked out from its measures")
			if t.sheet.Plan.Piping.border() {
				takes = product(t.fig("piping.across_mm"), t.known("on each bar", float64(max(1, t.sheet.Plan.Piping.PerBar)), UnitCount, "your plan, piping.per_bar"))
			}
			return less(t.known("least from bar's middle to bar's middle", p.GapMM.V+takes.Value(), UnitMM, "the cut plan"), takes)
		}},
		{pattern: "piping.lane_mm", label: "clear lane over a cut", unit: UnitMM, value: piped(func(p *PipingSheet) Figure { return p.LaneMM }), feeds: []string{"icing-lane"}, how: func(t teller) Term {
			return sum(t.whole("cut.kerf_mm"), t.law("a grain", usualGrainMM, UnitMM, "common practice, no source", "common practice"), product(bare(2), t.whole("cut.wander_mm")))
		}},
	}
}

// bagAccounts are what is made, what stays and how long it takes.
func bagAccounts() []accountRow {
	return []accountRow{
		{pattern: "piping.net_g", label: "all units", unit: UnitGram, value: piped(func(p *PipingSheet) Figure { return p.NetG }), feeds: []string{"icing-mismatch"}, how: func(t teller) Term {
			return product(t.at(t.sheet.Icing).fig("batch.shape_g"), t.fig("piping.units"))
		}},
		{pattern: "piping.need_g", label: "to be made for all units", unit: UnitGram, value: piped(func(p *PipingSheet) Figure { return p.NeedG }), feeds: []string{"icing-rest"}, how: func(t teller) Term {
			if t.byTheBag() {
				return sum(t.fig("piping.net_g"), product(t.fig("piping.bags"), t.whole("piping.residue_bag_g")))
			}
			return ratio(t.fig("piping.net_g"), less(bare(1), percentOf(t.whole("piping.residue_percent"))))
		}},
		{pattern: "piping.left_g", label: "stays in bags and tips", unit: UnitGram, value: piped(func(p *PipingSheet) Figure { return p.LeftG }), feeds: []string{"icing-bags"}, how: teller.leftInBags},
		{pattern: "piping.rest_g", label: "left for a small mould", unit: UnitGram, value: piped(func(p *PipingSheet) Figure { return p.RestG }), feeds: []string{"icing-rest"}, how: func(t teller) Term {
			if t.sheet.Piping.RestG.V == 0 {
				return t.known("no more is made than is piped", 0, UnitGram, "your plan")
			}
			return less(t.at(t.sheet.Icing).fig("batch.made_g"), t.fig("piping.need_g"))
		}},
		{pattern: "piping.bags", label: "bags", unit: UnitCount, value: piped(func(p *PipingSheet) Figure { return p.ifBagged(p.Bags) }), how: func(t teller) Term {
			return t.known("bags", float64(t.sheet.Piping.Bags), UnitCount, "one for each jug, or one for all of them: your plan, icing.bags")
		}},
		{pattern: "piping.fills", label: "fillings of all bags", unit: UnitCount, value: piped(func(p *PipingSheet) Figure { return p.ifBagged(p.Fills) }), how: func(t teller) Term {
			return t.known("fillings", float64(t.sheet.Piping.Fills), UnitCount, "what each jug holds, in bags of your plan's piping.bag_g, every begun one whole")
		}},
		{pattern: "piping.pipe_min", label: "to fill the bags and pipe", unit: UnitMinute, value: piped(func(p *PipingSheet) Figure { return p.PipeMin }), feeds: []string{"pipe-window"}, how: func(t teller) Term {
			if t.sheet.Plan.Piping.Spoons() {
				return product(t.known("jugs of icing", float64(t.sheet.Icing.Script.Filled()), UnitCount, "your plan"), t.whole("run.pipe_min"))
			}
			return sum(t.pipingUnits(1), product(t.fig("piping.fills"), t.whole("piping.fill_min")))
		}},
	}
}

// windowAccounts are when it can be piped: they stand on the clock.
func windowAccounts() []accountRow {
	at := func(of func(*PipeWindow) Figure) func(teller) Figure {
		return piped(func(p *PipingSheet) Figure { return of(&p.Window) })
	}
	return []accountRow{
		{pattern: "piping.window_from_min", label: "can be piped from", unit: UnitMinute, value: at(func(w *PipeWindow) Figure { return w.From }), feeds: []string{"base-soft", "icing-thin"}, how: func(t teller) Term {
			return t.known("icing and base thick", t.sheet.Piping.Window.From.V, UnitMinute, "the clock's middle estimate of the last jug of both batches")
		}},
		{pattern: "piping.window_to_min", label: "can be piped until", unit: UnitMinute, value: at(func(w *PipeWindow) Figure { return w.To }), feeds: []string{"pipe-window", "icing-stiff"}, how: func(t teller) Term {
			return t.known("icing stiff", t.sheet.Piping.Window.To.V, UnitMinute, "the clock's middle estimate of the first jug of the icing")
		}},
	}
}

// count is a whole number of things as a figure: unknown where there is none.
func count(n int) Figure {
	if n == 0 {
		return Figure{}
	}
	return Know(float64(n))
}

// ifBagged is a number of bags, where it is known how much goes into them.
func (p *PipingSheet) ifBagged(n int) Figure {
	if !p.PipeMin.Known {
		return Figure{}
	}
	return Know(float64(n))
}

// byTheBag says whether what stays is stated for each bag.
func (t teller) byTheBag() bool {
	p := &t.sheet.Plan.Piping
	return p.ResidueBagG > 0 && !p.Spoons()
}

// leftInBags is what of the icing stays in bags and tips.
func (t teller) leftInBags() Term {
	made := t.at(t.sheet.Icing).fig("batch.made_g")
	switch p := &t.sheet.Piping; {
	case t.sheet.Plan.Icing.Size == SizeShape:
		return less(t.fig("piping.need_g"), t.fig("piping.net_g"))
	case !t.byTheBag():
		return product(made, percentOf(t.whole("piping.residue_percent")))
	case p.LeftG.V < float64(p.Bags)*t.sheet.Plan.Piping.ResidueBagG:
		return made // no more stays than there is
	}
	return product(t.fig("piping.bags"), t.whole("piping.residue_bag_g"))
}

// pipingUnits is how long a part of all units takes.
func (t teller) pipingUnits(part float64) Term {
	counts := t.model("units, or parts of 100 mm of border,", func(l pieces) float64 { return l.counts })
	all := product(counts, t.whole("piping.unit_s"))
	if part != 1 {
		all = product(leaf(Input{Name: "part", V: part, From: "the jug's share of the icing"}), counts, t.whole("piping.unit_s"))
	}
	return ratio(all, bare(60))
}

// icingLoss is what part of the icing does not come to stand on the loaf, percent.
func (t teller) icingLoss() Term {
	switch p := &t.sheet.Plan.Piping; {
	case !p.Shaped():
		return t.own("loss_percent")
	case t.sheet.Piping.Lacks != "":
		return t.whole("piping.residue_percent")
	case t.plan.Size == SizeShape:
		return product(bare(100), less(bare(1), ratio(t.fig("piping.net_g"), t.fig("batch.made_g"))))
	}
	return product(bare(100), ratio(t.fig("piping.left_g"), t.fig("batch.made_g")))
}

// aired is the room that something of the batch takes as it is piped, the air that is whipped in with it.
func (t teller) aired(room Term) Term {
	if t.b.Name != Icing || !t.sheet.Piping.DensityGML.Known {
		return room
	}
	return product(room, ratio(ratio(t.fig("batch.poured_g"), t.fig("batch.poured_ml")), t.fig("piping.density_g_ml")))
}

// model is what the geometry of the icing makes of the measures of the plan, worked out again by the geometry itself.
func (t teller) model(name string, of func(pieces) float64) Term {
	paths := t.sheet.Plan.pipingPaths()
	inputs := make([]Term, len(paths))
	for i, path := range paths {
		inputs[i] = t.whole(path)
	}
	return modelled(name, func(v []float64) float64 {
		p := t.sheet.Plan.Clone()
		for i, path := range paths {
			next, err := SetNumber(path, v[i])(p)
			if err != nil {
				return Unknown() // the paths are the plan's own
			}
			p = next
		}
		return of(p.Piping.lay(p.Mould, t.sheet.Cut))
	}, inputs...)
}

// pipingPaths are the numbers of the plan that the shape of its icing depends on.
func (p *Plan) pipingPaths() []string {
	keys := []string{}
	for _, m := range p.Piping.measures() {
		keys = append(keys, "piping."+m.key)
	}
	for _, key := range p.Piping.options() {
		if path := "piping." + key; !slices.Contains(keys, path) {
			keys = append(keys, path)
		}
	}
	if p.Piping.Along == PipeLoaf || p.Piping.border() || p.Piping.Spoons() {
		keys = append(keys, "mould.length_mm", "mould.width_mm")
	}
	if p.Mould.Shape == ShapeCavity {
		keys = append(keys, "mould.cavity_ml", "mould.cavities", "mould.fill_mm")
	}
	return keys
}

// options are the numbers that bear upon a shape but need not be stated.
func (p *Piping) options() []string {
	place := "per_bar"
	if p.Along == PipeLoaf {
		place = "rows"
	}
	switch p.Shape {
	case PipeDollop:
		place = "profile " + place
	case PipeRosette:
		place = "swell pull coil_from_mm tiers overlap_percent " + place
	case PipeShells:
		place = "overlap_percent " + place
	case PipeRope:
		place = "swell pull wind_mm " + place
	case PipeRuffle:
		place = "swell pull swing_mm " + place
	default:
		return []string{"layer_mm", "relief_mm"}
	}
	if p.Tip == TipSlot {
		place = "narrow_mm " + place
	}
	return strings.Fields(place)
}
