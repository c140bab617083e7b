package presets

import (
	"fmt"
	"slices"

	"pourbench/pour"
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
	r.word("behaviour", &f.Behaviour, behaviours()...)
	r.text("note", &f.Note, 300)
	r.source("source", &f.Source, "behaviour", "note")
}

// readScent reads a [[scent]]; families are the ids it can name.
func readScent(r *row, s *pour.Scent, families []string) {
	r.need("name")
	if r.fresh {
		s.DensityGML = 0.95 // middle of 0.85 to 1.10, fragrance and essential oils (from memory)
	}
	r.name(&s.Name)
	r.texts("families", &s.Families)
	for _, id := range s.Families {
		if !slices.Contains(families, id) {
			r.fault("families", show(id), "is no family on the shelf", suggest(id, families))
		}
	}
	r.text("notes", &s.Notes, 200)
	r.word("behaviour", &s.Behaviour, behaviours()...)
	r.flag("rices", &s.Rices)
	r.number("test_load_percent", &s.TestLoadPercent, 0, 20)
	r.number("vanillin_percent", &s.VanillinPercent, 0, 100)
	r.number("alkali_koh_mg_g", &s.AlkaliKOHMgG, 0, 600) // phenol itself, the smallest, takes 596
	r.number("limit_percent", &s.LimitPercent, 0, 100)
	r.text("amendment", &s.Amendment, 80)
	r.number("density_g_ml", &s.DensityGML, 0.7, 1.3)
	r.number("flash_c", &s.FlashC, 0, 300)
	readAllergens(r, &s.Allergens)
	r.flag("invented", &s.Invented)
	r.source("source", &s.Source, "behaviour", "rices", "test_load_percent", "vanillin_percent", "alkali_koh_mg_g",
		"limit_percent", "density_g_ml", "flash_c", "allergen")
}

// readAllergens reads the allergens of a scent; a maker's list replaces the one that was there.
func readAllergens(r *row, to *[]pour.Allergen) {
	const key = "allergen"
	v, ok := r.value(key)
	if !ok {
		return
	}
	list, ok := tablesIn(v)
	if !ok {
		r.fault(key, show(v), "is not a list of allergens", `write [[scent.allergen]] with name and percent for each`)
		return
	}
	out := make([]pour.Allergen, len(list))
	sum := 0.0
	for i, keys := range list {
		in := r.inside(fmt.Sprintf("%s[%d]", key, i), keys)
		in.text("name", &out[i].Name, 60)
		in.number("percent", &out[i].Percent, 0, 100)
		if out[i].Name == "" || !in.has("percent") {
			r.fault(key, "", fmt.Sprintf("number %d lacks its name or its percent", i+1), "write both, as the scent's allergen statement has them")
		}
		in.finish()
		sum += out[i].Percent
	}
	if sum > 100 {
		r.fault(key, "", fmt.Sprintf("the allergens sum to %.4g %% of the scent", sum), "write each as percent of the scent, together at most 100")
		return
	}
	*to = out
}

// tablesIn returns a list of tables, however the file wrote it.
func tablesIn(v any) ([]map[string]any, bool) {
	if list, ok := v.([]map[string]any); ok {
		return list, true
	}
	list, ok := v.([]any)
	out := make([]map[string]any, len(list))
	for i, item := range list {
		table, isTable := item.(map[string]any)
		out[i], ok = table, ok && isTable
	}
	return out, ok
}
