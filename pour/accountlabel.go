package pour

import (
	"slices"
	"strings"

	"pourbench/pour/label"
)

// labelAccounts are what the plan's label has to say.
func labelAccounts() []accountRow {
	line := func(t teller) *label.Line { return &t.sheet.Label.Lines[t.ix[0]] }
	found := func(t teller) *label.Found { return &t.sheet.Label.Allergens[t.ix[0]] }
	stated := func(t teller) bool { return t.sheet.Label.Market != "" && t.sheet.Label.Refused == "" }
	unsure, judged := []string{"label-name-unverified", "label-made-of"}, []string{"label-prohibited", "label-allergen-open", "label-allergen-unstated"}
	return []accountRow{
		{pattern: "label.made_g", label: "an average bar as it was made", unit: UnitGram, of: stated, value: func(t teller) Figure { return t.sheet.Label.MadeG }, how: func(t teller) Term {
			return sum(t.fig("bars.cut_g"), t.toppingsAfter())
		}, why: "nothing dried, with what goes on after the cut: the mass that ingredients are parts of"},
		{pattern: "label.cured_g", label: "that bar when it has cured", unit: UnitGram, of: stated, value: func(t teller) Figure { return t.sheet.Label.CuredG }, how: func(t teller) Term {
			return t.fig("bars.cured_g")
		}, why: "what allergens are judged on, none of the scents taken to be lost"},
		{
			pattern: "label.lines[].g", label: "{} in the list", unit: UnitGram, feeds: unsure, of: stated, value: func(t teller) Figure { return AsFigure(line(t).G) },
			how: teller.labelLine, why: "of an average bar as it was made; as salts, every fat is taken to react to the same part",
		},
		{pattern: "label.lines[].percent", label: "{} in the list, part", unit: UnitPercent, of: stated, value: func(t teller) Figure { return AsFigure(line(t).Percent) }, how: func(t teller) Term {
			return product(bare(100), ratio(t.fig("label.lines[].g", t.ix[0]), t.fig("label.made_g")))
		}, why: "by which it has its place"},
		{pattern: "label.allergens[].g", label: "{} in a bar", unit: UnitGram, of: stated, value: func(t teller) Figure { return AsFigure(found(t).G) }, how: func(t teller) Term {
			return sumOver(len(found(t).From), func(i int) Term { return t.fig("label.allergens[].from[].g", t.ix[0], i) })
		}, why: "one substance from all scents, base, icing and pieces together"},
		{pattern: "label.allergens[].from[].g", label: "{}", unit: UnitGram, of: stated, value: func(t teller) Figure { return AsFigure(found(t).From[t.ix[1]].G) }, how: teller.labelTraced},
		{pattern: "label.allergens[].cut_percent", label: "{} in the bar as made", unit: UnitPercent, of: stated, value: func(t teller) Figure { return AsFigure(found(t).CutPercent) }, how: func(t teller) Term {
			return product(bare(100), ratio(t.fig("label.allergens[].g", t.ix[0]), t.fig("label.made_g")))
		}},
		{pattern: "label.allergens[].cured_percent", label: "{} in the cured bar", unit: UnitPercent, feeds: judged, of: stated, value: func(t teller) Figure { return AsFigure(found(t).CuredPercent) }, how: func(t teller) Term {
			return product(bare(100), ratio(t.fig("label.allergens[].g", t.ix[0]), t.fig("label.cured_g")))
		}, why: "what is held against the market's threshold"},
		{
			pattern: "label.net_most_g", label: "the most its label may declare", unit: UnitGram, feeds: []string{"label-weight"}, of: stated,
			value: func(t teller) Figure { return aboveNothing(t.sheet.Label.Net.Most) }, how: teller.labelMost,
			why: "in whole grams: by the minimum no bar is lighter, by the average the batch is not; a forecast until bars are weighed",
		},
		{pattern: "label.net_g", label: "the weight on its label", unit: UnitGram, feeds: []string{"label-weight"}, of: stated, value: func(t teller) Figure { return aboveNothing(t.sheet.Label.Net.G) }, how: func(t teller) Term {
			if t.sheet.Plan.Cure.LabelG > 0 {
				return t.whole("cure.label_g")
			}
			return t.fig("label.net_most_g")
		}},
		{pattern: "label.height_mm", label: "least height of the weight's figures", unit: UnitMM, of: stated, value: func(t teller) Figure { return t.sheet.Label.HeightMM }, how: teller.labelHeight},
	}
}

// aboveNothing is a figure that is known where it is above 0.
func aboveNothing(v float64) Figure { return Figure{V: v, Known: v > 0} }

// labelMost is the weight that may be declared, by the forecast: each bar of the cut at the light end, without what goes on later and with it.
func (t teller) labelMost() Term {
	s := *t.sheet
	m, _ := t.shelf.Market(s.Label.Market)
	in := []Term{t.fig("cure.pack_g"), t.fig("cure.pack_light_g"), t.fig("cure.final_g"), t.fig("bars.cut_g"), t.whole("label.scale_error_g"), t.toppingsAfter()}
	bars := len(in)
	for i := range s.Cut.Bars {
		in = append(in, t.fig("cut.bars[].cut_g", i))
	}
	return modelled("the market's rule for a weight ", func(v []float64) float64 {
		w := s.weighing(m, PackedBars{})
		w.Forecast, w.ForecastLow, w.FurtherLoss, w.ScaleErrorG, w.Expected = v[0], v[1], max(0, 1-v[2]/v[0]), v[4], nil
		for _, cut := range v[bars:] {
			w.Expected = append(w.Expected, v[5]+(v[1]-v[5])*cut/v[3])
		}
		return label.Declare(w).Most
	}, in...)
}

// labelHeight is a row of the market's table of heights.
func (t teller) labelHeight() Term {
	s := t.sheet
	m, _ := t.shelf.Market(s.Label.Market)
	wide, high, longest := s.labelFace()
	return modelled("the market's table of heights ", func(v []float64) float64 { return m.LetterMM(v[0], v[1], v[2], v[3]) },
		t.fig("label.net_g"), t.known("width of the face", wide, UnitMM, "the bar's largest side, or the label"), t.known("its height", high, UnitMM, "the same"),
		t.known("longest side of bar or label", longest, UnitMM, "the bar as cut, and the label"))
}

// labelTraced is what a scent brings of an allergen.
func (t teller) labelTraced() Term {
	x := t.sheet.Label.Allergens[t.ix[0]].From[t.ix[1]]
	charges, err := t.sheet.Contents(t.shelf, nil)
	if err != nil {
		return bare(Unknown())
	}
	for _, in := range scentsIn(charges, t.shelf) {
		if in.Name == x.Scent {
			return product(t.scentIn(charges, x.Scent), percentOf(t.known("what of it is that", 100*x.G/in.G, UnitPercent, "its statement on the shelf")))
		}
	}
	return bare(Unknown())
}

// scentIn is how much of a scent is in a bar: in each batch and each embed by itself, so that it is seen where it comes from.
func (t teller) scentIn(charges []label.Charge, scent string) Term {
	var in []string
	g := map[string]float64{}
	for i := range charges {
		c := &charges[i]
		if c.Kind != label.Scent || c.From != scent {
			continue
		}
		if _, known := g[c.In]; !known {
			in = append(in, c.In)
		}
		g[c.In] += c.G
	}
	return sumOver(len(in), func(i int) Term {
		from := "the contents of an average bar"
		if slices.Contains(t.sheet.Label.AsBase, in[i]) {
			from += ": " + in[i] + " is counted as the base's own soap"
		}
		return t.known(scent+" in "+in[i], g[in[i]], UnitGram, from)
	})
}

// labelLine is what everything that went in brings to a line of the list.
func (t teller) labelLine() Term {
	l, source := &t.sheet.Label, "the contents of an average bar"
	if len(l.AsBase) > 0 {
		source += ", " + strings.Join(l.AsBase, ", ") + " counted as the base's own soap"
	}
	m, _ := t.shelf.Market(l.Market)
	charges, err := t.sheet.Contents(t.shelf, nil)
	if err != nil {
		return bare(Unknown())
	}
	entries, err := label.Made(l.Style, charges, m, t.sheet.Plan.Label.Names == NamesEnglish)
	if err != nil {
		return bare(Unknown())
	}
	var from []string
	g := map[string]float64{}
	for _, e := range entries {
		if !strings.EqualFold(e.Text, l.Lines[t.ix[0]].Text) {
			continue
		}
		for _, name := range e.From {
			if _, known := g[name]; !known {
				from = append(from, name)
			}
			g[name] += e.G
		}
	}
	return sumOver(len(from), func(i int) Term {
		return t.known("what of "+from[i]+" it is", g[from[i]], UnitGram, source)
	})
}
