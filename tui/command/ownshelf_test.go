package command

import (
	"os"
	"path/filepath"
	"testing"

	"pourbench/pour"
	"pourbench/presets"
)

// A key of an entry goes into the maker's file and onto the shelf at once, and back to the byte.
func TestTheBenchChangesTheMakersOwnShelfFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "shelf.toml")
	const hers = "# mine\n[[oil]]\nid = \"olive\"\nsap_koh_mg_g = 190 # certificate\n"
	if err := os.WriteFile(path, []byte(hers), 0o600); err != nil {
		t.Fatal(err)
	}
	g := &program{built: Builtin{Shelf: presets.Shelf, Overlay: presets.Overlay, Entry: presets.Entry}, shelfFile: path}
	g.Environ = []string{"XDG_DATA_HOME=" + dir}
	o := g.ownShelf()
	olive := pour.EntryName{Table: "oil", ID: "olive"}
	back, err := o.Change(pour.ShelfChange{Of: olive, Key: "price_per_kg", Value: `"7.70"`})
	if err != nil {
		t.Fatal(err)
	}
	shelf, err := o.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	oil, _ := shelf.Oil("olive")
	if oil.PricePerKG.String() != "7.70" || oil.Fat.Sap != 190 {
		t.Errorf("olive costs %s and its value is %g", oil.PricePerKG, oil.Fat.Sap)
	}
	if own, err := o.Named(); err != nil || len(own[olive]) != 3 {
		t.Errorf("the file says %v, %v", own, err)
	}
	if _, err := o.Change(pour.ShelfChange{Of: olive, Key: "sap_koh_mg_g", Value: "-5"}); err == nil {
		t.Error("a saponification value below 0 was written")
	}
	if err := back(); err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(path); err != nil || string(text) != hers {
		t.Errorf("taken back the file holds\n%s", text)
	}
}
