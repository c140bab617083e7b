package presets

import (
	"fmt"

	"pourbench/pour"
)

// readColourant reads a [[colourant]].
func readColourant(r *row, c *pour.Colourant) {
	r.need("name", "colour", "dose_low_percent", "dose_high_percent")
	if r.fresh {
		c.Class, c.Disperse, c.CarrierParts, c.Alkali, c.Dust = "pigment", pour.DisperseEither, 2, pour.AlkaliUnknown, true
	}
	r.name(&c.Name)
	r.word("class", &c.Class, "pigment", "mica", "dye", "lake", "plant")
	r.text("colour_index", &c.ColourIndex, 80)
	r.word("disperse", &c.Disperse, pour.DisperseOil, pour.DisperseWater, pour.DisperseEither)
	r.number("dose_low_percent", &c.DoseLowPercent, 0, 20)
	r.number("dose_high_percent", &c.DoseHighPercent, 0.001, 20)
	r.ordered("dose_low_percent", c.DoseLowPercent, "dose_high_percent", c.DoseHighPercent)
	r.number("carrier_parts", &c.CarrierParts, 0, 20)
	r.word("alkali", &c.Alkali, pour.AlkaliStable, pour.AlkaliShifts, pour.AlkaliDies, pour.AlkaliUnknown)
	r.text("alkali_note", &c.AlkaliNote, 200)
	r.text("caution", &c.Caution, 200)
	r.flag("dust", &c.Dust)
	r.flag("titanium", &c.Titanium)
	r.flag("white", &c.White)
	r.colour("colour", &c.Colour)
	r.number("bulk_g_ml", &c.BulkGML, 0, 8)
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
	r.word("kind", &x.Kind, pour.ExtraSugar, pour.ExtraMilk, pour.ExtraAlcohol, pour.ExtraAcid, pour.ExtraSalt, pour.ExtraClay, pour.ExtraPlain)
	if r.fresh {
		x.Dust = x.Kind == pour.ExtraClay
	}
	r.word("in", &x.In, pour.InOils, pour.InLye)
	r.word("lye_when", &x.LyeWhen, pour.LyeBefore, pour.LyeHot, pour.LyeCooled)
	r.flag("dust", &x.Dust)
	r.number("water_percent", &x.WaterPercent, 0, 100)
	readExtraFat(r, x)
	r.number("alkali_koh_mg_g", &x.AlkaliKOHMgG, 0, 2500)
	r.number("density_g_ml", &x.DensityGML, 0.3, 8)
	r.number("clock_factor", &x.ClockFactor, 0.2, 10)
	r.number("clock_sd", &x.ClockSD, 0, 2)
	r.number("clock_at_percent", &x.ClockAtPercent, 0.001, 50)
	r.number("dose_low_percent", &x.DoseLowPercent, 0, 50)
	r.number("dose_high_percent", &x.DoseHighPercent, 0.001, 50)
	r.ordered("dose_low_percent", x.DoseLowPercent, "dose_high_percent", x.DoseHighPercent)
	r.text("caution", &x.Caution, 200)
	r.source("source", &x.Source, "water_percent", "fat_percent", "fat_sap_koh_mg_g", "alkali_koh_mg_g", "density_g_ml",
		"clock_factor", "clock_sd", "clock_at_percent", "dose_low_percent", "dose_high_percent")
}

// readExtraFat reads the fat an extra brings. Without the saponification value of that fat the lye could not count it.
func readExtraFat(r *row, x *pour.Extra) {
	r.number("fat_percent", &x.FatPercent, 0, 100)
	r.number("fat_sap_koh_mg_g", &x.FatSapKOHMgG, lowestSap, highestSap)
	if x.FatPercent > 0 && x.FatSapKOHMgG == 0 {
		r.fault("fat_percent", short(x.FatPercent), "stands without fat_sap_koh_mg_g", "write the saponification value of that fat too, in mg KOH per g")
	}
	if x.WaterPercent+x.FatPercent > 100 {
		r.fault("fat_percent", short(x.FatPercent), fmt.Sprintf("makes more than 100 with water_percent = %s", short(x.WaterPercent)), "write each as percent of the extra's mass")
	}
}
