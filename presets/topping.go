package presets

import (
	"strings"

	"pourbench/chem"
	"pourbench/pour"
)

// readTopping reads a [[topping]].
func readTopping(r *row, m *pour.ToppingMaterial) {
	r.need("name")
	if r.fresh {
		m.Kind, m.When, m.Colour = pour.ToppingGrain, pour.StrewSkin, "#808080"
		m.Alkali.Bleeds, m.Alkali.Browns = pour.ToppingMay, pour.ToppingMay
		m.Use.StaysPercent, m.Use.HandsS = 100, 5
	}
	r.name(&m.Name)
	r.word("kind", &m.Kind, "how it goes on, which decides its turn: what wets first, powder last",
		pour.ToppingDrizzle, pour.ToppingSpray, pour.ToppingPiece, pour.ToppingGrain, pour.ToppingDust)
	r.word("when", &m.When, "usual: on the wet top, on a tacky skin, after the cut, on the cured bar", pour.StrewWet, pour.StrewSkin, pour.StrewCut, pour.StrewCure)
	r.names("ingredients", &m.Ingredients, "what is in it, largest first, as a list of ingredients names it")
	if r.has("ingredients") {
		m.MadeOf = nil // what was said of other ingredients
	}
	r.madeOf(m.Name, &m.MadeOf)
	r.colour("colour", &m.Colour, "its colour in the picture")
	r.text("note", &m.Note, 200, "how it is put on, what else to mind")
	r.flag("dust", &m.Dust, "a fine powder that must not be breathed")
	r.flag("flammable", &m.Flammable, "its vapour burns")
	r.flag("plastic", &m.Plastic, "synthetic polymer particles, which have dates")
	r.flag("batter", &m.Batter, "it is icing batter, thinned: nothing is weighed for it")
	readToppingBehaviour(r, m)
	readToppingUse(r, &m.Use)
}

// readToppingBehaviour reads what heat, water and alkali do to it.
func readToppingBehaviour(r *row, m *pour.ToppingMaterial) {
	r.figure("melts_c", &m.Heat.MeltsC, 0, 3000, "softens or melts from, °C; left out: no melting in play")
	r.text("heat", &m.Heat.Note, 200, "more on that")
	r.price(&m.PricePerKG)
	r.source("heat_source", &m.Heat.Source, "melts_c", "heat")

	r.crystals("crystals", &m.Wet.Crystals)
	r.figure("weeps_rh_percent", &m.Wet.WeepsRH, 0.1, 100, "relative humidity from which it is sticky or wet; left out: as its crystals")
	r.flag("dissolves", &m.Wet.Dissolves, "dissolves on wet soap, whatever the room")
	r.text("wet", &m.Wet.Note, 200, "more on that")
	r.source("wet_source", &m.Wet.Source, "crystals", "weeps_rh_percent", "dissolves", "wet")

	words := []string{pour.ToppingNever, pour.ToppingMay, pour.ToppingDoes}
	r.word("bleeds", &m.Alkali.Bleeds, "its colour runs on fresh soap", words...)
	r.word("browns", &m.Alkali.Browns, "it turns brown on soap", words...)
	r.text("alkali", &m.Alkali.Note, 200, "more on that")
	r.source("alkali_source", &m.Alkali.Source, "bleeds", "browns", "alkali")
}

// readToppingUse reads how much of it goes on.
func readToppingUse(r *row, u *pour.ToppingUse) {
	r.number("size_mm", &u.SizeMM, 0, 100, "diameter of one grain, or thickness where it is flat; 0: not strewn by coverage")
	r.flag("flat", &u.Flat, "it lies flat: size_mm is its thickness")
	r.number("density_g_ml", &u.DensityGML, 0, 25, "density of one grain; 0: unknown")
	r.number("cover_low_percent", &u.CoverLowPercent, 0, 100, "usual, of the bar's top that it hides")
	r.number("cover_high_percent", &u.CoverHighPercent, 0, 100, "the same, its upper end")
	r.ordered("cover_low_percent", u.CoverLowPercent, "cover_high_percent", u.CoverHighPercent)
	r.number("dose_low_g", &u.DoseLowG, 0, 100, "usual grams on a bar")
	r.number("dose_high_g", &u.DoseHighG, 0, 100, "the same, its upper end")
	r.ordered("dose_low_g", u.DoseLowG, "dose_high_g", u.DoseHighG)
	r.number("stays_percent", &u.StaysPercent, 0, 100, "of its mass, stays on the bar; the rest evaporates")
	r.number("hands_s", &u.HandsS, 0, 3600, "seconds to put it on one bar")
	r.source("use_source", &u.Source, "size_mm", "flat", "density_g_ml", "cover_low_percent", "cover_high_percent", "dose_low_g", "dose_high_g",
		"stays_percent", "hands_s", "when", "ingredients", "colour")
}

// crystals reads a list of crystals that draw water.
func (r *row) crystals(key string, to *[]chem.Crystal) {
	known := chem.Crystals()
	names := make([]string, len(known))
	for i, k := range known {
		names[i] = string(k)
	}
	var list []string
	r.ids(key, &list, "what in it draws water from damp air: "+strings.Join(names, ", "), "crystal", names)
	if r.has(key) {
		*to = nil
		for _, name := range list {
			*to = append(*to, chem.Crystal(name))
		}
	}
}
