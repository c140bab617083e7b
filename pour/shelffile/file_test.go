package shelffile

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

const hers = `# what I keep

[[oil]]
id = "olive"          # the mill
sap_koh_mg_g = 190.5  # certificate of March

[[scent]]
id = "rose"
  [[scent.allergen]]
  name = "citral"   # low
  percent = 0.4
  [[scent.allergen]]
  name = "geraniol"
  percent = 2
`

func olive(key, value string) pour.ShelfChange {
	return pour.ShelfChange{Of: pour.EntryName{Table: "oil", ID: "olive"}, Key: key, Value: value}
}

// kept is a shelf file with a text in a fresh folder.
func kept(t *testing.T, text string) File {
	t.Helper()
	f := New(filepath.Join(t.TempDir(), "shelf.toml"), func(text string) error {
		if strings.Contains(text, "999") {
			return errors.New("999 cannot be")
		}
		return nil
	})
	if text != "" {
		if err := os.WriteFile(f.Path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return f
}

func holds(t *testing.T, f File, want string) {
	t.Helper()
	if got, _, err := f.Text(); err != nil || got != want {
		t.Errorf("the file holds (%v)\n%s\nwant\n%s", err, got, want)
	}
}

func TestAChangeIsWrittenAndTakenBackToTheByte(t *testing.T) {
	rose := pour.EntryName{Table: "scent", ID: "rose"}
	for what, x := range map[string]struct {
		c        pour.ShelfChange
		was, now string
	}{
		"a figure":  {olive("sap_koh_mg_g", "189"), "190.5  #", "189  #"},
		"a new key": {olive("price_per_kg", `"7.70"`), "of March\n", "of March\nprice_per_kg = \"7.70\"\n"},
		"a key out": {olive("sap_koh_mg_g", ""), "sap_koh_mg_g = 190.5  # cert", "# cert"},
		"a source": {
			pour.ShelfChange{Of: olive("", "").Of, Key: "sap_source.text", Value: `"x"`, In: "sap_source", Whole: `{ text = "x", confidence = "own" }`},
			"of March\n", "of March\nsap_source = { text = \"x\", confidence = \"own\" }\n",
		},
		"an entry that is built in": {
			pour.ShelfChange{Of: pour.EntryName{Table: "colourant", ID: "blue"}, Key: "dust", Value: "true"},
			"percent = 2\n", "percent = 2\n\n[[colourant]]\nid = \"blue\"\ndust = true\n",
		},
		"a new entry": {
			pour.ShelfChange{Of: pour.EntryName{Table: "extra", ID: "oats"}, New: []strict.Pair{{Key: "name", Value: `"Oats"`}}},
			"percent = 2\n", "percent = 2\n\n[[extra]]\nid = \"oats\"\nname = \"Oats\"\n",
		},
		"an entry out":      {pour.ShelfChange{Of: olive("", "").Of}, hers[strings.Index(hers, "[[oil]]"):strings.Index(hers, "# certificate")] + "# certificate of March\n", "# certificate of March\n"},
		"a figure of a row": {pour.ShelfChange{Of: rose, Key: "allergen[0].percent", Value: "0.5", In: "allergen", Whole: "no"}, "0.4", "0.5"},
		"a row more": {
			pour.ShelfChange{Of: rose, Key: "allergen[2]", Value: "{ name = \"linalool\" }", In: "allergen", Whole: "no", Added: true, New: []strict.Pair{{Key: "name", Value: `"linalool"`}}},
			"percent = 2\n", "percent = 2\n\n  [[scent.allergen]]\n  name = \"linalool\"\n",
		},
		"a row out":    {pour.ShelfChange{Of: rose, Key: "allergen[1]", In: "allergen", Whole: `[{ name = "citral" }]`}, "  [[scent.allergen]]\n  name = \"geraniol\"\n  percent = 2\n", ""},
		"the rows out": {pour.ShelfChange{Of: rose, Key: "allergen[1]", In: "allergen", Whole: `[]`}, hers[strings.Index(hers, "  [[scent.all"):], "allergen = []\n"},
	} {
		f := kept(t, hers)
		done, err := f.Change(x.c)
		if err != nil {
			t.Errorf("%s: %v", what, err)
			continue
		}
		holds(t, f, strings.Replace(hers, x.was, x.now, 1))
		if err := f.Back(done); err != nil {
			t.Errorf("%s: %v", what, err)
		}
		holds(t, f, hers)
		if left, _ := filepath.Glob(filepath.Join(filepath.Dir(f.Path), ".*")); len(left) > 0 {
			t.Errorf("%s leaves %v", what, left)
		}
	}
}

func TestAFileThatWasNotThereComesAndGoes(t *testing.T) {
	f := kept(t, "")
	f.Path = filepath.Join(filepath.Dir(f.Path), "settings", "shelf.toml")
	done, err := f.Change(olive("price_per_kg", `"7.70"`))
	if err != nil {
		t.Fatal(err)
	}
	holds(t, f, "[[oil]]\nid = \"olive\"\nprice_per_kg = \"7.70\"\n")
	if err := f.Back(done); err != nil {
		t.Fatal(err)
	}
	if _, there, _ := f.Text(); there {
		t.Error("the file is still there")
	}
}

func TestWhatAnotherWroteMeanwhileStays(t *testing.T) {
	f := kept(t, hers)
	done, err := f.Change(olive("sap_koh_mg_g", "189"))
	if err != nil {
		t.Fatal(err)
	}
	other, err := f.Change(olive("price_per_kg", `"8"`))
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Back(done); err != nil {
		t.Fatal(err)
	}
	holds(t, f, strings.Replace(hers, "of March\n", "of March\nprice_per_kg = \"8\"\n", 1))
	if _, err := f.Change(olive("price_per_kg", `"9"`)); err != nil {
		t.Fatal(err)
	}
	if err := f.Back(other); !errors.Is(err, ErrChanged) {
		t.Errorf("another's price is taken back: %v", err)
	}
}

func TestWhatCannotBeReadIsNotWritten(t *testing.T) {
	f := kept(t, hers)
	if _, err := f.Change(olive("sap_koh_mg_g", "999")); err == nil || !strings.Contains(err.Error(), "999 cannot be") {
		t.Errorf("it says %v", err)
	}
	holds(t, f, hers)
	broken := kept(t, "[[oil\n")
	if _, err := broken.Change(olive("sap_koh_mg_g", "1")); err == nil || !strings.Contains(err.Error(), "shelf file:2:") {
		t.Errorf("a broken file: %v", err)
	}
	holds(t, broken, "[[oil\n")
}

// An editor that saves while the change is written is not overwritten, and nothing is left beside.
func TestAnEditorThatSavesMeanwhileIsNotOverwritten(t *testing.T) {
	f := kept(t, hers)
	f.Disk.Sync = func(file *os.File) error {
		if err := os.WriteFile(f.Path, []byte("# mine\n"), 0o600); err != nil {
			return err
		}
		return disk.OS().Sync(file)
	}
	if _, err := f.Change(olive("sap_koh_mg_g", "189")); err == nil {
		t.Error("it was written over")
	}
	holds(t, f, "# mine\n")
}

func TestTwoTerminalsLoseNothing(t *testing.T) {
	f := kept(t, hers)
	var all sync.WaitGroup
	for _, key := range []string{"a", "b", "c", "d", "e", "f"} {
		all.Go(func() {
			if _, err := f.Change(olive(key, "1")); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	text, _, _ := f.Text()
	said, err := Named("shelf.toml", text)
	if want := []string{"a", "b", "c", "d", "e", "f", "id", "sap_koh_mg_g"}; err != nil || !slices.Equal(said[olive("", "").Of], want) {
		t.Errorf("the file says %v (%v)\n%s", said, err, text)
	}
}
