package presets

import (
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/strict"
)

// readAllergen reads an [[allergen]]: a row of the list of substances that labels name above a threshold.
func readAllergen(r *row, a *label.Allergen) {
	r.need("name")
	r.name(&a.Name)
	r.names("covers", &a.Covers, "other names it stands for, as statements of scents have them")
	r.cas("cas", &a.CAS)
	r.flag("group", &a.Group, "one name for the sum of what it covers")
	r.flag("old", &a.Old, "one of the 24 that were named before the list grew")
	r.flag("extract", &a.Extract, "a natural extract or oil, which counts with all of its mass")
	r.flag("prohibited", &a.Prohibited, "it may not be there at all")
	r.flag("cap_only", &a.CapOnly, "it is limited and not named on labels")
	r.number("most_rinse_percent", &a.MostRinse, 0, 100, "of the cured bar, that may be there; 0: no limit is known here")
	r.text("note", &a.Note, 200, "anything worth knowing")
	source := pour.Source{Text: a.From, Confidence: a.Confidence}
	r.source("source", &source, "name", "covers", "cas", "group", "old", "extract", "prohibited", "cap_only", "most_rinse_percent")
	a.From, a.Confidence = source.Text, source.Confidence
}

// cas reads a list of CAS numbers, whose last digits check them.
func (r *row) cas(key string, to *[]string) {
	r.names(key, to, "its CAS numbers")
	if !r.has(key) {
		return
	}
	for _, number := range *to {
		if fault := casFault(number); fault != "" {
			r.fault(key, strict.Quote(number), fault, `write it as on the statement: "78-70-6"`)
		}
	}
}

// casIn faults what is no CAS number in a statement, which may give several.
func casIn(in *strict.Table, text string) {
	for _, number := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;/", r) }) {
		if fault := casFault(number); fault != "" {
			in.Say("cas", strict.Quote(number), fault, `write it as on the statement, "78-70-6", or leave it out`)
		}
	}
}

// casFault is what is wrong with a CAS number; empty: nothing.
func casFault(number string) string {
	if label.CheckCAS(number) {
		return ""
	}
	return "is no CAS number: digits, two digits and a last one that checks them"
}
