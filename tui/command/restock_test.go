package command

import (
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"pourbench/presets"
)

func TestTheShelfIsReadAgainWhenAFileBehindItChanges(t *testing.T) {
	dir := t.TempDir()
	g := &program{
		built: Builtin{Shelf: presets.Shelf, Overlay: presets.Overlay}, shelfFile: filepath.Join(dir, "shelf.toml"),
		Process: Process{Errs: io.Discard, Now: time.Now, Environ: []string{"XDG_DATA_HOME=" + dir}},
	}
	if err := os.WriteFile(g.shelfFile, []byte("[[oil]]\nid = \"olive\"\nprice_per_kg = \"7.70\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	look := g.restock()
	if _, changed, err := look(); changed || err != nil {
		t.Fatalf("nothing changed, and it says %v, %v", changed, err)
	}
	if err := os.MkdirAll(g.dataDir(), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(g.dataDir(), "costs.toml"), []byte("format = 1\ncurrency = \"CHF\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	shelf, changed, err := look()
	if !changed || err != nil || shelf.House.Currency != "CHF" {
		t.Errorf("changed %v, %v, currency %q", changed, err, shelf.House.Currency)
	}
	if _, changed, _ := look(); changed {
		t.Error("it is read again though nothing changed since")
	}
	if err := os.WriteFile(filepath.Join(g.dataDir(), "label.toml"), []byte("format = 1\n[[maker]]\nname = \"Mill\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if shelf, changed, err := look(); !changed || err != nil || len(shelf.Label.Makers) != 1 {
		t.Errorf("changed %v, %v, makers %+v", changed, err, shelf.Label.Makers)
	}
}
