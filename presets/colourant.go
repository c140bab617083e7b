package presets

import (
	"fmt"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// readColourant reads a [[colourant]].
func readColourant(r *row, c *pour.Colourant) {
	r.need("name", "colour", "dose_low_percent", "dose_high_percent")
	if r.fresh {
		c.Class, c.Disperse, c.CarrierParts, c.Alkali, c.Dust = "pigment", pour.DisperseEither, 2, pour.AlkaliUnknown, true
	}
	r.name(&c.Name)
	r.word("class", &c.Class, "what it is", "pigment", "mica", "dye", "lake", "plant")
	r.text("colour_index", &c.ColourIndex, 80, "its CI number, where it has one")
	if r.has("colour_index") {
		c.MadeOf = nil // what was said of another number
	}
	r.madeOf(c.Name, &c.MadeOf)
	r.word("disperse", &c.Disperse, "what it wets in", pour.DisperseOil, pour.DisperseWater, pour.DisperseEither)
	r.number("dose_low_percent", &c.DoseLowPercent, 0, 20, "usual dose, percent of the jug's batter")
	r.number("dose_high_percent", &c.DoseHighPercent, 0.001, 20, "the same, its upper end")
	r.ordered("dose_low_percent", c.DoseLowPercent, "dose_high_percent", c.DoseHighPercent)
	r.number("carrier_parts", &c.CarrierParts, 0, 20, "usual grams of carrier for a gram")
	r.word("alkali", &c.Alkali, "what alkali does to it", pour.AlkaliStable, pour.AlkaliShifts, pour.AlkaliDies, pour.AlkaliUnknown)
	r.text("alkali_note", &c.AlkaliNote, 200, "more on that")
	r.text("caution", &c.Caution, 200, "what else to mind: rules, skin, cloth")
	r.flag("dust", &c.Dust, "a fine powder that must not be breathed")
	r.flag("titanium", &c.Titanium, "titanium white: scatters, and brings glycerin rivers")
	r.flag("white", &c.White, "whitens")
	r.colour("colour", &c.Colour, "a white batter with it at the middle of the dose; of a white, a cream batter")
	r.number("bulk_g_ml", &c.BulkGML, 0, 8, "loose bulk density, for spoon estimates; 0: unknown")
	r.price(&c.PricePerKG)
	r.source("source", &c.Source, "dose_low_percent", "dose_high_percent", "carrier_parts", "alkali", "colour", "bulk_g_ml")
}

// readExtra reads an [[extra]].
func readExtra(r *row, x *pour.Extra) {
	r.need("name")
	if r.fresh {
		x.Kind, x.In, x.DensityGML, x.ClockFactor, x.ClockSD = pour.ExtraPlain, pour.InOils, 1, 1, 0.2
		x.LyeWhen = pour.LyeCooled
		x.DoseHighPercent = 5
	}
	r.name(&x.Name)
	r.word("kind", &x.Kind, "what it is, which decides its cautions",
		pour.ExtraSugar, pour.ExtraMilk, pour.ExtraAlcohol, pour.ExtraAcid, pour.ExtraSalt, pour.ExtraClay, pour.ExtraPlain)
	if r.fresh {
		x.Dust = x.Kind == pour.ExtraClay
	}
	if r.own != "" && r.has("water_percent") && len(x.MadeOf) > 1 {
		x.MadeOf = doubted(x.MadeOf, "its water_percent is your own, its made_of is the shelf's: write both")
	}
	r.madeOf(x.Name, &x.MadeOf)
	r.word("in", &x.In, "where it goes in", pour.InOils, pour.InLye)
	r.word("lye_when", &x.LyeWhen, "when it joins the lye: in the water before the alkali, hot or cooled", pour.LyeBefore, pour.LyeHot, pour.LyeCooled)
	r.flag("dust", &x.Dust, "a fine powder that must not be breathed; a clay is one unless it says otherwise")
	r.number("water_percent", &x.WaterPercent, 0, 100, "water in it, percent of its mass")
	readExtraFat(r, x)
	r.number("alkali_koh_mg_g", &x.AlkaliKOHMgG, 0, 2500, "alkali it uses up beside its fat, mg KOH per g")
	r.number("density_g_ml", &x.DensityGML, 0.3, 8, "density")
	r.number("clock_factor", &x.ClockFactor, 0.2, 10, "what it does to the speed of trace; 1: nothing")
	r.number("clock_sd", &x.ClockSD, 0, 2, "how far that is known: standard deviation of its logarithm")
	r.number("clock_at_percent", &x.ClockAtPercent, 0.001, 50, "dose, percent of the oils, that clock_factor holds for; left out: the middle of the usual doses")
	r.number("dose_low_percent", &x.DoseLowPercent, 0, 50, "usual dose, percent of the oils")
	r.number("dose_high_percent", &x.DoseHighPercent, 0.001, 50, "the same, its upper end")
	r.ordered("dose_low_percent", x.DoseLowPercent, "dose_high_percent", x.DoseHighPercent)
	r.text("caution", &x.Caution, 200, "what to mind")
	r.price(&x.PricePerKG)
	r.source("source", &x.Source, "water_percent", "fat_percent", "fat_sap_koh_mg_g", "alkali_koh_mg_g", "density_g_ml",
		"clock_factor", "clock_sd", "clock_at_percent", "dose_low_percent", "dose_high_percent")
}

// readExtraFat reads the fat an extra brings. Without the saponification value of that fat the lye could not count it.
func readExtraFat(r *row, x *pour.Extra) {
	r.number("fat_percent", &x.FatPercent, 0, 100, "fat that alkali can saponify, percent of its mass")
	r.number("fat_sap_koh_mg_g", &x.FatSapKOHMgG, lowestSap, highestSap, "saponification value of that fat, mg KOH per g")
	if x.FatPercent > 0 && x.FatSapKOHMgG == 0 {
		r.fault("fat_percent", strict.Short(x.FatPercent), "stands without fat_sap_koh_mg_g", "write the saponification value of that fat too, in mg KOH per g")
	}
	if x.WaterPercent+x.FatPercent > 100 {
		r.fault("fat_percent", strict.Short(x.FatPercent), fmt.Sprintf("makes more than 100 with water_percent = %s", strict.Short(x.WaterPercent)), "write each as percent of the extra's mass")
	}
}
