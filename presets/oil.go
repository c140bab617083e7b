package presets

import (
	"fmt"
	"math"
	"strings"

	"pourbench/chem"
	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/strict"
)

// readOil reads an [[oil]]: an oil, butter, wax or free acid.
func readOil(r *row, o *pour.Oil) {
	r.need("name", "sap_koh_mg_g", "density_g_ml")
	if r.fresh {
		o.Fat.Kind, o.Fat.DensityC = chem.Triglyceride, 20
	}
	r.name(&o.Name)
	r.names("also", &o.Also, "other names it goes by, as recipes write it")
	readOilNames(r, o)
	before, published := o.Fat.Kind, o.Fat
	kind := string(before)
	r.word("kind", &kind, "what its esters are", string(chem.Triglyceride), string(chem.WaxEster), string(chem.FreeAcid))
	o.Fat.Kind = chem.Kind(kind)
	readSap(r, &o.Fat, published)
	r.source("sap_source", &o.SapSource, "sap_koh_mg_g", "sap_low_koh_mg_g", "sap_high_koh_mg_g", "unsaponifiable_g_kg")
	r.number("iodine_low", &o.Fat.IodineLow, 0, 300, "published iodine value, g per 100 g")
	r.number("iodine_high", &o.Fat.IodineHigh, 0, 300, "the same, its upper end")
	r.ordered("iodine_low", o.Fat.IodineLow, "iodine_high", o.Fat.IodineHigh)
	r.source("iodine_source", &o.IodineSource, "iodine_low", "iodine_high")
	r.number("unsaponifiable_g_kg", &o.Fat.UnsaponifiableGKg, 0, 900, "what alkali leaves, g per kg")
	r.number("density_g_ml", &o.Fat.DensityGML, 0.7, 1.2, "density at density_c")
	r.number("density_c", &o.Fat.DensityC, -20, 120, "temperature of that density, °C")
	r.price(&o.PricePerKG)
	r.source("density_source", &o.DensitySource, "density_g_ml", "density_c")
	readProfile(r, &o.Fat.Profile)
	slippedSap(r, o.Fat, published)
	r.source("fatty_acid_source", &o.FattyAcidSource, "fatty_acids_percent")
	readFreeAcid(r, o, before)
	readTint(r, o)
	r.flag("resin", &o.Fat.Resin, "a resin: no fatty acids are expected of it")
	r.number("melt_c", &o.Fat.MeltC, 10, 120, "melting point of a wax or resin, °C")
	r.text("note", &o.Note, 600, "anything worth knowing")
}

// readOilNames reads what lists of ingredients call an oil and its soaps. A name that a file changes stands by itself: what was said of the one before it
// (its form in the EU, that no assigned name was found) goes with that one.
func readOilNames(r *row, o *pour.Oil) {
	if r.has("inci") {
		o.INCIPlain = ""
	}
	if r.has("inci_soap") {
		o.SaltUnassigned, o.INCIPotassium = false, ""
	}
	r.text("inci", &o.INCI, 120, "its INCI name as added, with the English word in brackets")
	r.text("inci_plain", &o.INCIPlain, 120, "the same as written in the EU; left out: without what stands in brackets")
	r.source("inci_source", &o.INCISource, "inci", "inci_plain")
	r.text("inci_soap", &o.INCISoap, 120, "its INCI name as sodium soap")
	r.text("inci_potassium", &o.INCIPotassium, 120, "its INCI name as potassium soap: of the same stem, checked for none on the shelf")
	r.flag("inci_soap_unassigned", &o.SaltUnassigned, "inci_soap is what makers write: no assigned name was found, and none goes onto a label")
	r.sourceOr("salt_source", &o.SaltSource, cosing(), "inci_soap", "inci_soap_unassigned")
}

// readFreeAcid reads what an oil holds of free fatty acid. Nothing stated is unknown, not none; a free acid is all of it by
// its kind unless it says otherwise, as a tar does. before is the kind the entry had before the file.
func readFreeAcid(r *row, o *pour.Oil, before chem.Kind) {
	const key = "free_acid_percent"
	if before == chem.FreeAcid && o.Fat.Kind != before {
		o.FreeAcidPercent, o.FreeAcidSource = pour.Figure{}, pour.Source{}
	}
	r.figure(key, &o.FreeAcidPercent, 0, 100, "free fatty acid as it is sold, percent of its mass as oleic acid; left out: not known")
	if o.Fat.Kind == chem.FreeAcid && !o.FreeAcidPercent.Known {
		o.FreeAcidPercent = pour.Know(100)
		o.FreeAcidSource = pour.Source{Text: "all of it, by its kind", Confidence: "derived"}
	}
	const source = "free_acid_source"
	if r.has(key) || r.has(source) || r.told != nil {
		r.source(source, &o.FreeAcidSource, key)
		return
	}
	r.known = append(r.known, source)
}

// readTint reads the colour of a batter of the oil alone. What the shelf says of it is by eye; an oil that says nothing is cream.
func readTint(r *row, o *pour.Oil) {
	const key, source = "tint", "tint_source"
	if r.fresh {
		o.Tint = colour.PlainBatter
		o.TintSource = pour.Source{Text: "by eye, common practice, no source", Confidence: "common practice"}
	}
	r.colour(key, &o.Tint, "a batter of it alone, without a colourant; left out: cream, "+colour.PlainBatter)
	if r.told == nil && !r.has(source) && (r.own == "" || !r.has(key)) {
		r.known = append(r.known, source)
		return
	}
	r.source(source, &o.TintSource, key)
}

// What the fatty acids of a file may sum to, percent: the middles of published ranges of one oil can sum to 94 (tamanu,
// whose resin is no fatty acid) and to 108 (almond).
const (
	leastAcidsPercent = 90
	mostAcidsPercent  = 112
)

// acidPercent draws a part of the fatty acids as percent, to as many places as a profile is known at best; empty: none of it.
func acidPercent(part float64) string {
	const places = 1e4
	if part == 0 {
		return ""
	}
	return strict.Short(math.Round(100*part*places) / places)
}

// readProfile reads fatty_acids_percent and scales it to sum to 1.
func readProfile(r *row, to *chem.Profile) {
	const key = "fatty_acids_percent"
	acids := make([]string, chem.AcidCount)
	for a := range acids {
		acids[a] = chem.Acid(a).Key()
	}
	const means = "percent of each fatty acid; scaled to sum to 100"
	asked := r.ask(key, "{ "+strings.Join(acids, ", ")+" }", "", means)
	r.is(func(k *pour.ShelfKey) {
		k.Kind = pour.KeyParts
		for a, acid := range acids {
			k.Parts = append(k.Parts, pour.ShelfKey{Key: key + "." + acid, Means: means, Kind: pour.KeyNumber, High: 100, Value: acidPercent(to[a])})
		}
	})
	if !asked {
		return
	}
	in, ok := r.in.Section(key)
	if !ok {
		return
	}
	in.Only(acids...)
	var p chem.Profile
	sum := 0.0
	for a, acid := range acids {
		ok = (!in.Has(acid) || in.Within(acid, &p[a], 0, 100)) && ok
		sum += p[a]
	}
	if ok && (sum < leastAcidsPercent || sum > mostAcidsPercent) {
		r.fault(key, "", fmt.Sprintf("the fatty acids sum to %.4g %%", sum), fmt.Sprintf("make them sum to 100, or at least to %d to %d", leastAcidsPercent, mostAcidsPercent))
		return
	}
	*to = p.Normalised()
}
