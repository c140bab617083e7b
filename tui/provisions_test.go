package tui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/lot"
	"pourbench/pour/planfile"
	"pourbench/pour/stock/shopping"
)

// provided is a bench with so many times of everything its plan wants of one oil, and no end of the rest.
func provided(t *testing.T, times float64) (*model, *shopping.Facts) {
	t.Helper()
	shelf, plan := built(t)
	sheet := pour.Weigh(plan, shelf)
	f := &shopping.Facts{Stock: lot.Stock{Today: 20000, Held: map[lot.Material]lot.Holding{}}}
	for _, n := range sheet.Needs(shelf) {
		q := 1000 * n.Q
		if n.Material == (lot.Material{Kind: lot.Oil, ID: "olive"}) {
			q = lot.Quantity(times * float64(n.Q))
		}
		f.Stock.Held[n.Material] = lot.Holding{Packs: []lot.Pack{{ID: n.Material.ID + "-1", Material: n.Material, Left: q, Size: q, Expires: 20009}}}
	}
	m := newModel(Options{
		Document: planfile.Document{Plan: plan}, Shelf: shelf, Background: "dark",
		Provisions: Provisions{
			Read: func() (shopping.Facts, error) { return *f, nil },
			Designs: func() []shopping.Pour {
				return []shopping.Pour{{Name: "Hay Day", Plan: "hay.toml", Needs: sheet.Needs(shelf)}}
			},
		},
	})
	finish(m, m.Init())
	resize(m, 120, 36)
	return m, f
}

func TestAKeyMakesTheBatchAsLargeAsTheStockAllowsAndUndoTakesItBack(t *testing.T) {
	m, f := provided(t, 0.5)
	before := m.session.Plan()
	drive(m, "Z")
	now := m.session.Plan()
	if now.Mould.FillMM >= before.Mould.FillMM || now.Mould.FillMM < before.Mould.FillMM*0.4 {
		t.Fatalf("filled %g mm, before %g: %s", now.Mould.FillMM, before.Mould.FillMM, m.status.Text())
	}
	sheet := pour.Weigh(now, m.session.Shelf())
	var olive lot.Quantity
	for _, n := range sheet.Needs(m.session.Shelf()) {
		if n.Material.ID == "olive" {
			olive += n.Q
		}
	}
	if free := f.Stock.Held[lot.Material{Kind: lot.Oil, ID: "olive"}].Packs[0].Left; olive > free || olive < free*98/100 {
		t.Errorf("it takes %s of %s", olive, free)
	}
	if said := m.status.Text(); !strings.Contains(said, "limited by olive oil") || !strings.Contains(said, "the mould") {
		t.Errorf("said %q", said)
	}
	drive(m, "Z")
	if said := m.status.Text(); !strings.Contains(said, "it is the largest the stock allows") {
		t.Errorf("again: said %q", said)
	}
	drive(m, "u")
	if m.session.Plan().Mould.FillMM != before.Mould.FillMM {
		t.Error("undo did not take it back")
	}
}

func TestThePageOfWhatToGetTellsAndDoes(t *testing.T) {
	m, _ := provided(t, 0.5)
	drive(m, "G")
	page := frame(m)
	for _, want := range []string{"What to get", "largest", "fill height of", "limited by olive oil", "□", "no pack known", "enough of", "this list as a page to print"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page does not say %q:\n%s", want, page)
		}
	}
	drive(m, "pgdown pgdown pgdown")
	if page := frame(m); !strings.Contains(page, "Hay Day could use") {
		t.Errorf("nothing tells who would use what expires:\n%s", page)
	}
	before := m.session.Plan().Mould.FillMM
	drive(m, "home enter")
	if m.session.Plan().Mould.FillMM >= before || m.dialogs.Top() != nil {
		t.Errorf("enter left the fill at %g mm", m.session.Plan().Mould.FillMM)
	}
}

func TestTheListIsWrittenToAFile(t *testing.T) {
	m, f := provided(t, 0.5)
	m.provided(provisionsMsg{own: f.For([]shopping.Pour{{Name: "Meadow"}}, false, shopping.Cheapest), largest: largestMsg{err: shopping.ErrNothingKept}})
	drive(m, "enter")
	path := filepath.Join(t.TempDir(), "list.txt")
	m.dialogs.Paste("") // the line of the name has the keys
	drive(m, "ctrl+u")
	m.dialogs.Paste(path)
	drive(m, "enter")
	if text, err := os.ReadFile(path); err != nil || !strings.Contains(string(text), "Shopping list") {
		t.Errorf("%v: %s; said %q", err, text, m.status.Text())
	}
}

func TestWhereTheStockSaysNothingTheKeysSayWhy(t *testing.T) {
	m := opened(t, 80, 24)
	for _, key := range []string{"G", "Z"} {
		if drive(m, key); !strings.Contains(m.status.Text(), "no ledger was opened with this bench") {
			t.Errorf("%s: said %q", key, m.status.Text())
		}
	}
	m, _ = provided(t, 0)
	if drive(m, "Z"); !strings.Contains(m.status.Text(), "the stock allows none of any size; limited by olive oil") {
		t.Errorf("said %q", m.status.Text())
	}
	m.opt.Provisions.Read = func() (shopping.Facts, error) { return shopping.Facts{}, errors.New("read the ledger: line 7") }
	for _, key := range []string{"G", "Z"} {
		if drive(m, key); !strings.Contains(m.status.Text(), "line 7") || m.dialogs.Top() != nil {
			t.Errorf("%s: said %q", key, m.status.Text())
		}
	}
	m, _ = provided(t, 0.5)
	before := m.session.Plan().Mould.FillMM
	m.enlarged(largestMsg{rev: m.session.Revision() - 1})
	if m.session.Plan().Mould.FillMM != before || !strings.Contains(m.status.Text(), "changed meanwhile") {
		t.Errorf("for an older plan: said %q", m.status.Text())
	}
}
