package presets

import "pourbench/pour"

// readName reads a [[name]]: what lists of ingredients call something that is no oil of the shelf.
func readName(r *row, n *pour.ListName) {
	r.need("inci")
	if r.has("inci") {
		n.Plain = ""
	}
	r.text("inci", &n.INCI, 120, "its INCI name, with the English word in brackets; a colourant's name in the US")
	r.text("plain", &n.Plain, 120, "the same as written in the EU, a colourant's number; left out: without what stands in brackets")
	r.text("english", &n.English, 120, "its common English name")
	r.text("french", &n.French, 120, "its common French name")
	r.names("also", &n.Also, "other words for it, as packets and sheets have them")
	r.flag("colour", &n.Colour, "a colourant, which stands last in a list")
	r.text("sodium", &n.Salts.Sodium, 120, "of an acid: the INCI name of its sodium salt")
	r.text("potassium", &n.Salts.Potassium, 120, "of an acid: the INCI name of its potassium salt")
	readSaltSource(r, n)
	r.text("note", &n.Note, 300, "what else to know of it")
	r.sourceOr("source", &n.Source, pour.Source{Text: "INCI name from memory", Confidence: "memory"}, "inci", "plain")
}

// cosing is where assigned names of soaps and salts were looked for.
func cosing() pour.Source {
	return pour.Source{Text: "CosIng ingredient list, a copy of about 2018", Confidence: "read (2nd-hand)"}
}

// readSaltSource reads where the names of an acid's salts are from: what has none needs no source.
func readSaltSource(r *row, n *pour.ListName) {
	const key = "salt_source"
	if r.has(key) || r.told != nil || n.Salts.Sodium != "" {
		r.sourceOr(key, &n.SaltSource, cosing(), "sodium", "potassium")
		return
	}
	r.known = append(r.known, key)
}
