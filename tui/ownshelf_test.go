package tui

import (
	"errors"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/shelffile"
	"pourbench/presets"
	"pourbench/tui/panel"
)

// shelving is a bench with a shelf file of the maker's own, which the test reads.
func shelving(t *testing.T) (m *model, text func() string) {
	t.Helper()
	base, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	lay := func(text string) (pour.Shelf, error) {
		return presets.Overlay(base, "shelf.toml", strings.NewReader(text))
	}
	file := shelffile.New(t.TempDir()+"/shelf.toml", func(text string) error {
		_, err := lay(text)
		return err
	})
	text = func() string {
		s, _, err := file.Text()
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	m = opened(t, 120, 36)
	m.opt.OwnShelf = OwnShelf{
		Entry: presets.Entry,
		Named: func() (map[pour.EntryName][]string, error) { return shelffile.Named("shelf.toml", text()) },
		Change: func(c pour.ShelfChange) (func() error, error) {
			done, err := file.Change(c)
			return func() error { return file.Back(done) }, err
		},
		Shelf: func() (pour.Shelf, error) { return lay(text()) },
	}
	drive(m, "F")
	return m, text
}

// onKey puts the cursor of the form on a key of the entry.
func onKey(t *testing.T, m *model, name string) {
	t.Helper()
	drive(m, "tab")
	for range 80 {
		if cell, _, ok := m.cell(); ok && strings.HasPrefix(cell.Name, name+" of ") {
			return
		}
		drive(m, "down")
	}
	t.Fatalf("there is no row for %s", name)
}

func TestAPriceIsTypedOnTheShelfAndUndone(t *testing.T) {
	m, text := shelving(t)
	onKey(t, m, "price")
	drive(m, "7 , 7 0 enter")
	if got := text(); got != "[[oil]]\nid = \"olive\"\nprice_per_kg = \"7.70\"\n" {
		t.Fatalf("the shelf file holds\n%s", got)
	}
	sheet := m.session.Sheet()
	// olive oil alone has a price: 343.8 g of it at 7.70 a kilogram are 2.64726.
	for _, l := range sheet.Cost.Bill.Lines {
		if l.Name == "olive oil" && l.Amount.Cents() != "2.65" {
			t.Errorf("olive oil costs %s", l.Amount)
		}
	}
	if total, known := sheet.Cost.Bill.Total(); total.Cents() != "2.65" || known {
		t.Errorf("the batch costs %s, known %v", total, known)
	}
	drive(m, "u")
	if got := text(); got != "" || m.session.Sheet().Cost.Stated {
		t.Errorf("undone the shelf file holds\n%s", got)
	}
	drive(m, "U")
	if !strings.Contains(text(), "7.70") {
		t.Errorf("done again the shelf file holds\n%s", text())
	}
}

func TestWhatCannotBeOnTheShelfIsRefusedAtItsCell(t *testing.T) {
	m, text := shelving(t)
	onKey(t, m, "sap")
	drive(m, "9 9 9 9 enter")
	if m.typing == nil || m.typing.Refused == "" || text() != "" {
		t.Errorf("a saponification value of 9999 was taken; the file holds %q", text())
	}
}

// A value in another unit, or for NaOH, is told at its cell with the figure that was meant, and not the file it would have gone into: olive oil, the
// first of the list, takes 190 mg KOH a gram, in g of NaOH 0.1354. Some two hundred is what can be, for another oil.
func TestASaponificationValueInAnotherUnitSaysWhatWasMeant(t *testing.T) {
	for typed, want := range map[string]string{
		"0 . 1 9":     "0.19 looks like g KOH per g; write 190.0 mg KOH per g: ",
		"0 , 1 3 5 4": "0.1354 looks like g NaOH per g; write 189.9 mg KOH per g: ",
		"2 6 6 . 6":   "266.6 looks like mg KOH per g times 1.403 again; write 190.1 mg KOH per g: ",
		"9 9 9 9":     "9999 is outside what can be; write a number from 1 to 800",
	} {
		m, text := shelving(t)
		onKey(t, m, "sap")
		drive(m, typed+" enter")
		if m.typing == nil || !strings.HasPrefix(m.typing.Refused, want) || text() != "" {
			t.Errorf("%s: %+v; the file holds %q", typed, m.typing, text())
		}
	}
}

// toEntry puts the cursor of the list on an entry.
func toEntry(t *testing.T, m *model, table, id string) {
	t.Helper()
	of := pour.EntryName{Table: table, ID: id}
	place, ok := panel.EntryRow(m.facts, of)
	if !ok {
		t.Fatalf("%s is not listed", id)
	}
	m.seek(func(*panel.Facts) (panel.To, bool) { return place, true })
	m.settle()
	if m.facts.Entry != of {
		t.Fatalf("the cursor is on %v", m.facts.Entry)
	}
}

// Nothing is written of an allergen but what was typed: its percent stands on labels.
func TestAnAllergenIsAskedForAndGoes(t *testing.T) {
	m, text := shelving(t)
	toEntry(t, m, "scent", "alp-rose")
	was, _ := m.session.Shelf().Scent("alp-rose")
	drive(m, "tab a f a r n e s o l ctrl+s")
	if m.dialogs.Top() == nil || text() != "" {
		t.Fatalf("without a percent the file holds\n%s", text())
	}
	drive(m, "0 . 2 5 ctrl+s")
	sc, _ := m.session.Shelf().Scent("alp-rose")
	if n := len(sc.Allergens); m.dialogs.Top() != nil || n != len(was.Allergens)+1 || sc.Allergens[n-1] != (pour.Allergen{Name: "farnesol", Percent: 0.25}) {
		t.Fatalf("alp rose has %v, and the file holds\n%s", sc.Allergens, text())
	}
	if strings.Contains(text(), `cas = ""`) {
		t.Errorf("a number that was not typed stands in the file:\n%s", text())
	}
	drive(m, "u")
	if text() != "" {
		t.Errorf("undone the file holds\n%s", text())
	}
}

func TestAnEntryThatThePlanUsesStays(t *testing.T) {
	m, text := shelving(t)
	toEntry(t, m, "scent", "alp-rose")
	drive(m, "a e l d e r ctrl+s")
	if !strings.Contains(text(), `id = "elder"`) {
		t.Fatalf("the file holds\n%s", text())
	}
	if err := m.session.Apply("scent", pour.AddScent(pour.Base, "elder", 1, []string{"pot"})); err != nil {
		t.Fatal(err)
	}
	m.settle()
	toEntry(t, m, "scent", "elder")
	drive(m, "d")
	if !strings.Contains(text(), `id = "elder"`) || !strings.Contains(m.status.Text(), "would not hold") {
		t.Errorf("it says %q, and the file holds\n%s", m.status.Text(), text())
	}
	drive(m, "u d")
	if strings.Contains(text(), "elder") {
		t.Errorf("out of the plan it stays in\n%s", text())
	}
}

// A price of the shelf and one of the plan are typed over like any number, with what to type where it is none.
func TestAPriceThatIsNoneSaysWhatToType(t *testing.T) {
	m, text := shelving(t)
	onKey(t, m, "price")
	drive(m, "7 enter up enter - 8 enter")
	if said := m.status.Text(); !strings.Contains(said, `"-8" is no price: type a number`) {
		t.Errorf("of -8 it says %q", said)
	}
	drive(m, "esc")
	if !strings.Contains(text(), `"7"`) {
		t.Errorf("the shelf file holds\n%s", text())
	}
}

func TestWhatIsHersIsMarkedAndTheListIsSearched(t *testing.T) {
	m, _ := shelving(t)
	onKey(t, m, "price")
	drive(m, "7 enter")
	g := m.grids["entry"]
	marked := 0
	for _, r := range g.Rows {
		if n := len(r.Cells); n > 0 && r.Cells[n-1].Text == "yours" {
			marked++
		}
	}
	if marked != 1 {
		t.Errorf("%d lines are marked as hers", marked)
	}
	drive(m, "shift+tab enter c a s t o r enter")
	if m.facts.Entry.ID != "castor" {
		t.Errorf("the search goes to %v", m.facts.Entry)
	}
}

func TestABenchWithoutAShelfFileSaysSo(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "F a")
	if !strings.Contains(m.status.Text(), "no shelf file") {
		t.Errorf("it says %q", m.status.Text())
	}
	if err := m.shelve(pour.ShelfChange{}); !errors.Is(err, errNoOwnShelf) {
		t.Errorf("a change without a file came to %v", err)
	}
}
