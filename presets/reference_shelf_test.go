package presets_test

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"pourbench/presets"
)

// TestTheReferenceTellsEveryKeyTheBuiltInShelfUses compares it with the files themselves, read by the library alone.
func TestTheReferenceTellsEveryKeyTheBuiltInShelfUses(t *testing.T) {
	text := presets.Reference()
	for _, name := range []string{"oils", "colourants", "extras", "families", "allergens", "scents", "moulds", "techniques", "toppings", "names"} {
		var file map[string]any
		if _, err := toml.DecodeFile(name+".toml", &file); err != nil {
			t.Fatal(err)
		}
		for table, entries := range file {
			_, part, ok := strings.Cut(text, "\n[["+table+"]]  ")
			if !ok {
				t.Fatalf("[[%s]] is not told", table)
			}
			part, _, _ = strings.Cut(part, "\n\n")
			for _, entry := range entries.([]map[string]any) {
				for key := range entry {
					if key != "id" && !strings.Contains(part, "\n  "+key+" ") {
						t.Errorf("%s of [[%s]] is not told", key, table)
					}
				}
			}
		}
	}
	for _, want := range []string{
		"\n  sap_koh_mg_g               1 to 800              required  working saponification value, mg KOH per g\n",
		"\n  density_c                  -20 to 120            20        temperature of that density, °C\n",
		"\n  inci_source                { text, confidence }            source of inci, inci_plain\n",
		"\n  carrier_parts              0 to 20               2         usual grams of carrier for a gram\n",
		"\n  dust                       true or false         true      a fine powder that must not be breathed\n",
		"\n  free_acid_source           { text, confidence }            source of free_acid_percent\n",
		"\n                             { c6_0, c8_0,",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in:\n%s", want, text)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > 122 {
			t.Errorf("a line of %d letters: %s", n, line)
		}
	}
}
