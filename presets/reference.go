package presets

import (
	"strings"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// keyTold is what the reference says of one key of a shelf file.
type keyTold struct {
	key, takes, standard, means string
	needed                      bool // a new entry must have it
	is                          pour.ShelfKey
}

// Reference tells every key a shelf file can have, table by table: what can stand there, what a new entry has where it is
// left out and what it is. The calls that read a shelf file tell it.
func Reference() string {
	var b strings.Builder
	b.WriteString("A shelf file is TOML: [[table]] entries with an id each, in small letters, digits and hyphens. An entry whose id is on the\n" +
		"shelf changes only the keys it names; a new id is a new entry, which needs the keys that are required.\n" +
		"A source is { text = \"the certificate of lot 12\", confidence = \"read\" }; confidence is one of\n" + strings.Join(confidences(), ", ") + ".\n")
	for _, t := range (&shelf{}).tables() {
		told, _ := t.tell("")
		keys := make([]strict.Told, len(told))
		for i, k := range told {
			keys[i] = strict.Told{Key: k.key, Takes: k.takes, Default: k.standard, Means: k.means}
			if k.needed {
				keys[i].Default = "required"
			}
		}
		b.WriteString("\n" + strict.Reference("[["+t.name+"]]", t.means, keys))
	}
	return b.String()
}
