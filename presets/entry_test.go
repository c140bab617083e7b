package presets_test

import (
	"testing"

	"pourbench/pour"
	"pourbench/presets"
)

func TestTheKeysOfAnEntryAreTold(t *testing.T) {
	s := shelf(t)
	for _, of := range []pour.EntryName{{Table: "oil", ID: "elder"}, {Table: "barrel", ID: "olive"}} {
		if got := presets.Entry(s, of); got != nil {
			t.Errorf("%v has %d keys, and is not on the shelf", of, len(got))
		}
	}
	if blank := presets.Entry(s, pour.EntryName{Table: "scent"}); len(blank) == 0 {
		t.Error("a blank scent has no keys")
	}
	values := map[string]pour.ShelfKey{}
	for _, k := range presets.Entry(s, pour.EntryName{Table: "oil", ID: "olive"}) {
		values[k.Key] = k
	}
	// Olive oil as presets/oils.toml has it.
	if k := values["sap_koh_mg_g"]; k.Kind != pour.KeyNumber || k.Value != "191.5" {
		t.Errorf("its saponification value is told as %+v", k)
	}
	if k := values["price_per_kg"]; k.Kind != pour.KeyPrice || k.Value != "" {
		t.Errorf("its price is told as %+v", k)
	}
	if k := values["name"]; k.Kind != pour.KeyText || !k.Needed || k.Value != "olive oil" {
		t.Errorf("its name is told as %+v", k)
	}
}
