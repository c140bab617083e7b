package presets

import (
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// behaviours lists the words for how a scent behaves in batter.
func behaviours() []string {
	return []string{
		pour.BehaviourUnknown, pour.BehaviourNone, pour.BehaviourSlows, pour.BehaviourFast, pour.BehaviourStrong, pour.BehaviourSeizes,
	}
}

// readFamily reads a [[family]] of scents.
func readFamily(r *row, f *pour.Family) {
	r.need("name")
	if r.fresh {
		f.Behaviour = pour.BehaviourUnknown
	}
	r.name(&f.Name)
	r.word("behaviour", &f.Behaviour, "how its scents tend to behave in batter", behaviours()...)
	r.text("note", &f.Note, 300, "more on that")
	r.source("source", &f.Source, "behaviour", "note")
}

// readScent reads a [[scent]]. The families it can name are those on the shelf.
func (s *shelf) readScent(r *row, sc *pour.Scent) {
	r.need("name")
	if r.fresh {
		sc.DensityGML = 0.95 // middle of 0.85 to 1.10, fragrance and essential oils (from memory)
	}
	families := make([]string, len(s.Families))
	for i, f := range s.Families {
		families[i] = f.ID
	}
	r.name(&sc.Name)
	r.ids("families", &sc.Families, "families it belongs to", "family", families)
	r.text("notes", &sc.Notes, 200, "what it smells of")
	r.text("inci", &sc.INCI, 120, "its INCI name, where it is an essential oil")
	s.readExtract(r, &sc.Extract)
	r.word("behaviour", &sc.Behaviour, "how it behaves in batter; left out: as the fastest of its families", behaviours()...)
	r.flag("rices", &sc.Rices, "known to rice or separate")
	r.number("test_load_percent", &sc.TestLoadPercent, 0, 20, "of the oils, at which the behaviour was seen; 0: 3")
	r.number("vanillin_percent", &sc.VanillinPercent, 0, 100, "vanillin and ethyl vanillin in it")
	r.number("alkali_koh_mg_g", &sc.AlkaliKOHMgG, 0, 600, "alkali its phenols can take up, mg KOH per g") // phenol itself, the smallest, takes 596
	r.number("limit_percent", &sc.LimitPercent, 0, 100, "of the finished product, by its own certificate; 0: none on the shelf")
	r.text("amendment", &sc.Amendment, 80, "amendment of that certificate")
	r.number("density_g_ml", &sc.DensityGML, 0.7, 1.3, "density")
	r.number("flash_c", &sc.FlashC, 0, 300, "flash point, °C")
	readAllergens(r, &sc.Allergens)
	r.flag("invented", &sc.Invented, "an example: not a product")
	r.price(&sc.PricePerKG)
	r.source("source", &sc.Source, "behaviour", "rices", "test_load_percent", "vanillin_percent", "alkali_koh_mg_g",
		"limit_percent", "density_g_ml", "flash_c", "allergen", "inci", "extract")
}

// readExtract reads which of the listed extracts a scent is.
func (s *shelf) readExtract(r *row, to *string) {
	const key = "extract"
	r.text(key, to, 60, "the natural extract or oil of the list of allergens that it is; left out: it is none")
	if !r.has(key) || *to == "" {
		return
	}
	var known []string
	for _, a := range s.Allergens {
		if a.Extract {
			known = append(known, a.Name)
		}
	}
	if !slices.Contains(known, *to) {
		r.fault(key, strict.Quote(*to), "is no extract of the list of allergens", strict.Meant(*to, known, "write the name that the list has for it, or leave it out", "Write the name that the list has for it, or leave it out"))
	}
}

// allergenKeys are the keys of one allergen.
func allergenKeys(at string, a pour.Allergen) []pour.ShelfKey {
	percent := ""
	if a.Name != "" {
		percent = strict.Short(a.Percent)
	}
	return []pour.ShelfKey{
		{Key: at + ".name", Means: "the substance, as the allergen statement names it", Most: 60, Value: a.Name},
		{Key: at + ".cas", Means: "its CAS number, where the statement gives it", Most: 60, Value: a.CAS, Spare: true},
		{Key: at + ".percent", Means: "percent of the scent", Kind: pour.KeyNumber, High: 100, Value: percent},
	}
}

// readAllergens reads the allergens of a scent; a maker's list replaces the one that was there.
func readAllergens(r *row, to *[]pour.Allergen) {
	const key = "allergen"
	asked := r.ask(key, "[[scent.allergen]] with name, cas and percent", "", "substances to be named above a threshold, percent of the scent")
	r.is(func(k *pour.ShelfKey) {
		k.Kind, k.Row = pour.KeyRows, allergenKeys(key, pour.Allergen{})
		for i, a := range *to {
			k.Parts = append(k.Parts, allergenKeys(fmt.Sprintf("%s[%d]", key, i), a)...)
		}
	})
	if !asked {
		return
	}
	list := r.in.List(key)
	out := make([]pour.Allergen, len(list))
	sum := 0.0
	for i, in := range list {
		in.Only("name", "cas", "percent")
		in.Line("name", &out[i].Name, 60)
		if in.Line("cas", &out[i].CAS, 60) {
			casIn(in, out[i].CAS)
		}
		in.Within("percent", &out[i].Percent, 0, 100)
		if out[i].Name == "" || !in.Has("percent") {
			in.Say("", "", fmt.Sprintf("number %d lacks its name or its percent", i+1), "write both, as the scent's allergen statement has them")
		}
		sum += out[i].Percent
	}
	if sum > 100 {
		r.fault(key, "", fmt.Sprintf("the allergens sum to %.4g %% of the scent", sum), "write each as percent of the scent, together at most 100")
		return
	}
	*to = out
}
