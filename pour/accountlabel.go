package pour

import (
	"strings"

	"pourbench/pour/label"
)

// labelAccounts are what the plan's label has to say.
func labelAccounts() []accountRow {
	line := func(t teller) *label.Line { return &t.sheet.Label.Lines[t.ix[0]] }
	found := func(t teller) *label.Found { return &t.sheet.Label.Allergens[t.ix[0]] }
	stated := func(t teller) bool { return t.sheet.Label.Market != "" && t.sheet.Label.Refused == "" }
	unsure, judged := []string{"label-name-unverified", "label-made-of"}, []string{"label-prohibited", "label-allergen-open"}
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
			return sumOver(len(found(t).From), func(i int) Term {
				x := found(t).From[i]
				return t.known("what "+x.Scent+" brings", x.G, UnitGram, "its scent in a bar, by its statement on the shelf")
			})
		}, why: "one substance from all scents, base, icing and pieces together"},
		{pattern: "label.allergens[].cut_percent", label: "{} in the bar as made", unit: UnitPercent, of: stated, value: func(t teller) Figure { return AsFigure(found(t).CutPercent) }, how: func(t teller) Term {
			return product(bare(100), ratio(t.fig("label.allergens[].g", t.ix[0]), t.fig("label.made_g")))
		}},
		{pattern: "label.allergens[].cured_percent", label: "{} in the cured bar", unit: UnitPercent, feeds: judged, of: stated, value: func(t teller) Figure { return AsFigure(found(t).CuredPercent) }, how: func(t teller) Term {
			return product(bare(100), ratio(t.fig("label.allergens[].g", t.ix[0]), t.fig("label.cured_g")))
		}, why: "what is held against the market's threshold"},
	}
}

// labelLine is what everything that went in brings to a line of the list.
func (t teller) labelLine() Term {
	l := &t.sheet.Label
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
		return t.known("what of "+from[i]+" it is", g[from[i]], UnitGram, "the contents of an average bar")
	})
}
