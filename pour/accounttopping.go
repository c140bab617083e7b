package pour

import "math"

// toppingAccounts are what goes on the top.
func toppingAccounts() []accountRow {
	line := func(of func(*ToppingLine) Figure) func(teller) Figure {
		return func(t teller) Figure { return of(&t.sheet.Toppings[t.ix[0]]) }
	}
	part := func(t teller) ToppingPartLine { return t.sheet.Toppings[t.ix[0]].Parts[t.ix[1]] }
	amounts := []string{"topping-dose", "figure-unknown"}
	return []accountRow{
		{pattern: "toppings[].per_bar_g", label: "{} on a bar", unit: UnitGram, feeds: amounts, value: line(func(l *ToppingLine) Figure { return l.PerBarG }), how: teller.toppingPerBar, why: "a single layer of balls is two thirds of their diameter thick over what it hides; of what lies flat, its thickness"},
		{pattern: "toppings[].all_g", label: "{} for all bars", unit: UnitGram, value: line(func(l *ToppingLine) Figure { return l.AllG }), how: teller.toppingAll, why: "what goes on before the cut lies on the trims too"},
		{pattern: "toppings[].adds_g", label: "what {} adds to a bar", unit: UnitGram, value: line(func(l *ToppingLine) Figure { return l.AddsG }), how: func(t teller) Term {
			return product(t.toppingFig("per_bar_g"), t.overParts(func(_ int, m ToppingMaterial) Term {
				if m.Batter {
					return t.shelved(m.Name+" is weighed with its batch", 0, UnitPercent, m.Use.Source)
				}
				return percentOf(t.shelved(m.Name+" that stays", m.Use.StaysPercent, UnitPercent, m.Use.Source))
			}))
		}, why: "without what evaporates"},
		{pattern: "toppings[].covers_percent", label: "what {} covers", unit: UnitPercent, feeds: []string{"topping-dose"}, value: line(func(l *ToppingLine) Figure { return l.CoversPercent }), how: func(t teller) Term {
			return product(ratio(product(t.toppingFig("per_bar_g"), t.toppingHides()), t.barTop()), bare(100))
		}, why: "of the bar's top, in a single layer: over 100 it lies in several"},
		{pattern: "toppings[].pieces", label: "grains of {} on a bar", unit: UnitCount, value: line(func(l *ToppingLine) Figure { return l.Pieces }), how: func(t teller) Term {
			return product(t.toppingFig("per_bar_g"), t.overBalls(func(ToppingMaterial, Term) Term { return bare(1) }))
		}},
		{pattern: "toppings[].cut_hits", label: "grains of {} that one cut meets", unit: UnitCount, feeds: []string{"topping-wire"}, value: line(func(l *ToppingLine) Figure { return l.CutHits }), how: func(t teller) Term {
			strips := t.overBalls(func(_ ToppingMaterial, size Term) Term { return sum(t.whole("cut.kerf_mm"), size) })
			return product(ratio(t.toppingFig("per_bar_g"), t.barTop()), t.whole("mould.width_mm"), strips)
		}, why: "those in a strip as wide as the kerf and one grain"},
		{pattern: "toppings[].hands_min", label: "time to put {} on", unit: UnitMinute, value: line(func(l *ToppingLine) Figure { return Know(l.HandsMin) }), how: teller.toppingHands, why: "on all bars"},
		{pattern: "toppings[].turn", label: "turn of {}", unit: UnitCount, feeds: []string{"topping-order"}, value: line(func(l *ToppingLine) Figure { return Know(float64(l.Turn)) }), how: func(t teller) Term {
			return t.known("its place among all, by when it goes on", float64(t.topping().Turn), UnitCount, "your plan")
		}, why: "those on the wet top first, then on its skin, after the cut, on the cured bars; otherwise as the plan lists them"},
		{pattern: "toppings[].weeps_rh_percent", label: "humidity from which {} is wet", unit: UnitPercent, feeds: []string{"topping-weeps", "topping-damp"}, value: line(func(l *ToppingLine) Figure { return l.WeepsRH }), how: teller.toppingWeeps, why: "what lies mixed draws water sooner than each alone: the product of their limits (Ross equation, an estimate)"},
		{pattern: "toppings[].melts_c", label: "where {} softens", unit: UnitCelsius, feeds: []string{"topping-melts"}, value: line(func(l *ToppingLine) Figure { return l.MeltsC }), how: teller.toppingMelts, why: "the first of it that does"},
		{pattern: "toppings[].plastic_percent", label: "plastic of {} in the cured bar", unit: UnitPercent, feeds: []string{"topping-plastic"}, value: line(func(l *ToppingLine) Figure { return l.PlasticPercent }), how: func(t teller) Term {
			plastic := t.overParts(func(_ int, m ToppingMaterial) Term {
				if !m.Plastic {
					return bare(0)
				}
				return percentOf(t.shelved(m.Name+" that stays", m.Use.StaysPercent, UnitPercent, m.Use.Source))
			})
			return product(ratio(product(t.toppingFig("per_bar_g"), plastic), t.fig("bars.cured_g")), bare(100))
		}, why: "which Regulation (EU) 2023/2055 draws its line through"},
		{pattern: "toppings[].parts[].percent", label: "part of {}", unit: UnitPercent, value: func(t teller) Figure { return Know(part(t).Percent) }, how: func(t teller) Term { return t.toppingPart(t.ix[1]) }},
		{pattern: "toppings[].parts[].g", label: "{}", unit: UnitGram, value: func(t teller) Figure { return part(t).G }, how: func(t teller) Term {
			return product(t.toppingFig("all_g"), t.toppingFraction(t.ix[1]))
		}},
	}
}

// topping is the line the path leads to, and blend its materials.
func (t teller) topping() *ToppingLine { return &t.sheet.Toppings[t.ix[0]] }
func (t teller) blend() blended        { return t.shelf.blend(t.sheet.Plan.Top.Toppings[t.ix[0]]) }

func (t teller) toppingFig(key string) Term { return t.fig("toppings[]."+key, t.ix[0]) }

// planned is a number of the topping in the plan.
func (t teller) toppingKey(key string) Term {
	return t.whole("top.topping[" + decimal(t.ix[0]) + "]." + key)
}

func (t teller) toppingPart(k int) Term {
	path := "top.topping[" + decimal(t.ix[0]) + "].part[" + decimal(k) + "].percent"
	return t.known("part of "+t.topping().Parts[k].Name, t.topping().Parts[k].Percent, UnitPercent, "your plan, "+path)
}

// toppingFraction is a material's part of its topping.
func (t teller) toppingFraction(k int) Term {
	return ratio(t.toppingPart(k), sumOver(len(t.topping().Parts), t.toppingPart))
}

// overParts adds up a term for each material, by its part.
func (t teller) overParts(of func(i int, m ToppingMaterial) Term) Term {
	b := t.blend()
	return sumOver(len(b.of), func(i int) Term {
		if of := of(i, b.of[i]); !of.nothing() && b.Parts[i].Percent > 0 {
			return product(t.toppingFraction(i), of)
		}
		return bare(0)
	})
}

// overBalls adds up a term for each material of round grains, by how many of them a gram of the topping holds.
func (t teller) overBalls(of func(m ToppingMaterial, size Term) Term) Term {
	return t.overParts(func(_ int, m ToppingMaterial) Term {
		u := m.Use
		if !(u.SizeMM > 0 && u.DensityGML > 0) || u.Flat || m.Batter {
			return bare(0)
		}
		size := t.shelved("grain of "+m.Name, u.SizeMM, UnitMM, u.Source)
		one := product(bare(math.Pi/6), size, size, size, t.shelved("density of "+m.Name, u.DensityGML, UnitDensity, u.Source), bare(0.001))
		return ratio(of(m, size), one)
	})
}

// toppingHides is what a gram of the topping hides, mm².
func (t teller) toppingHides() Term {
	return t.overParts(func(_ int, m ToppingMaterial) Term {
		u, layer := m.Use, t.shelved("grain of "+m.Name, m.Use.SizeMM, UnitMM, m.Use.Source)
		if !u.Flat {
			layer = product(bare(2.0/3), layer)
		}
		return ratio(bare(1), product(layer, t.shelved("density of "+m.Name, u.DensityGML, UnitDensity, u.Source), bare(0.001)))
	})
}

// barAlong and barTop are the thickness and the top of a usual bar.
func (t teller) barAlong() Term {
	along, _, _ := t.sheet.usualBar()
	return t.known("thickness of the bars, on average", along, UnitMM, "your cut plan")
}

func (t teller) barTop() Term {
	return product(t.barAlong(), t.barAcross())
}

// barAcross is how wide a usual bar is.
func (t teller) barAcross() Term {
	m, c := t.sheet.Plan.Mould, &t.sheet.Cut
	switch {
	case len(c.Bars) > 0 && c.sides():
		return t.known("width of the bars, on average", c.usualWideMM(), UnitMM, "your cut plan")
	case m.Shape == ShapeSlab && m.BarWidthMM > 0:
		return t.whole("mould.bar_width_mm")
	}
	return t.whole("mould.width_mm")
}

func (t teller) allBars() Term {
	_, _, count := t.sheet.usualBar()
	return t.known("bars", float64(count), UnitCount, "your cut plan")
}

func (t teller) toppingPerBar() Term {
	b := t.blend()
	m := b.of[0]
	usual := func(name string, low, high float64, u Unit) Term {
		return ratio(sum(t.shelved("least usual "+name+" of "+m.Name, low, u, m.Use.Source), t.shelved("most usual "+name+" of "+m.Name, high, u, m.Use.Source)), bare(2))
	}
	cover := t.toppingKey("coverage_percent")
	switch {
	case b.GPerBar > 0:
		return t.toppingKey("g_per_bar")
	case b.CoveragePercent > 0:
	case m.Use.CoverHighPercent > 0:
		cover = usual("coverage", m.Use.CoverLowPercent, m.Use.CoverHighPercent, UnitPercent)
	default:
		return usual("amount", m.Use.DoseLowG, m.Use.DoseHighG, UnitGram)
	}
	return ratio(product(percentOf(cover), t.barTop()), t.toppingHides())
}

func (t teller) toppingAll() Term {
	if !t.topping().OnLoaf() {
		return product(t.toppingFig("per_bar_g"), t.allBars())
	}
	return product(t.toppingFig("per_bar_g"), ratio(product(t.whole("mould.length_mm"), t.whole("mould.width_mm")), t.barTop()))
}

func (t teller) toppingHands() Term {
	if t.blend().HandsMin > 0 {
		return t.toppingKey("hands_min")
	}
	each := t.overParts(func(_ int, m ToppingMaterial) Term {
		return t.shelved("to put "+m.Name+" on a bar", m.Use.HandsS, UnitSecond, m.Use.Source)
	})
	return ratio(product(each, t.allBars()), bare(60))
}

func (t teller) toppingWeeps() Term {
	b := t.blend()
	return modelled("limit of humidity", func(in []float64) float64 { return b.weepsRH(in[0]).orUnknown() }, t.whole("room.temperature_c"))
}

func (t teller) toppingMelts() Term {
	b := t.blend()
	for i, m := range b.of {
		if b.Parts[i].Percent > 0 && m.Heat.MeltsC == t.topping().MeltsC {
			return t.shelved(m.Name+" softens", m.Heat.MeltsC.V, UnitCelsius, m.Heat.Source)
		}
	}
	return bare(0)
}

// toppingOn is what all toppings add to a bar; nothing where there are none.
func (t teller) toppingOn(cured bool) Term {
	return sumOver(len(t.sheet.Toppings), func(i int) Term {
		if cured || t.sheet.Toppings[i].OnLoaf() {
			return t.fig("toppings[].adds_g", i)
		}
		return bare(0)
	})
}
