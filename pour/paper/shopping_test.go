package paper_test

import (
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/mattn/go-runewidth"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/paper"
	"pourbench/pour/stock/shopping"
)

// shoppingSample is a list with a row of every sort.
func shoppingSample(t *testing.T) shopping.List {
	t.Helper()
	price := func(s string) money.Amount {
		a, err := money.Parse(s)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	today, kg := day.Day(20000), 1000*lot.One
	m := func(k lot.Kind, id string) lot.Material { return lot.Material{Kind: k, ID: id} }
	olive, mica, lye := m(lot.Oil, "olive"), m(lot.Colourant, "mica"), m(lot.Alkali, lot.NaOH)
	s := lot.Stock{Today: today, Currency: "EUR", Held: map[lot.Material]lot.Holding{
		olive: {Packs: []lot.Pack{
			{ID: "o", Size: kg, Loss: kg / 50, Price: price("8.10"), Supplier: `=the "mill", upstream; ` + strings.Repeat("a long name ", 6), Left: kg / 4, Expires: today + 1},
			{ID: "p", Size: kg, Left: kg, Price: price("8"), Supplier: "x", Expires: today - 1},
		}},
		lye: {Packs: []lot.Pack{{ID: "l", Size: kg, Left: kg, Price: price("5")}}},
	}}
	need := func(m lot.Material, name string, q lot.Quantity) pour.MaterialNeed {
		return pour.MaterialNeed{Material: m, Name: name, Q: q}
	}
	chosen := []shopping.Pour{{Name: "Meadow", Needs: []pour.MaterialNeed{
		need(olive, "olive oil", 3*kg), need(mica, "@gold", 12500), need(lye, "NaOH", kg/10), need(m(lot.Embed, "moon"), "moon", 12*lot.One),
	}}}
	other := []shopping.Pour{{Name: "Hay", Needs: []pour.MaterialNeed{need(olive, "olive oil", kg/8)}}}
	return shopping.Of(s, nil, chosen, other, shopping.Cheapest)
}

func TestTheShoppingListHasAPlaceForEveryRow(t *testing.T) {
	l := shoppingSample(t)
	for name, text := range map[string]string{"text": paper.ShoppingText(l), "paper": paper.ShoppingPaper(l)} {
		for _, line := range strings.Split(text, "\n") {
			if runewidth.StringWidth(strings.TrimPrefix(line, "\f")) > 80 {
				t.Errorf("%s: %q is over 80 columns", name, line)
			}
		}
		whole := strings.Join(strings.Fields(text), " ")
		for _, want := range []string{
			"TO BUY", "[ ] olive oil, 3 x 1000 g from x", "24.00", "3000 g wanted for Meadow; 250 g there, 125 g reserved by other pours, 1000 g more past its date; 2875 g short; 125 g left over",
			"In all 24.00 EUR", "without a price: 1", "TO BUY, NO PACK KNOWN", "[ ] @gold", "1.25 g", "TO MAKE BEFOREHAND", "[ ] moon", "12 pieces", "ENOUGH OF", "NaOH (100 of 1000 g)",
		} {
			if !strings.Contains(whole, want) {
				t.Errorf("%s does not say %q:\n%s", name, want, text)
			}
		}
	}
	if text := paper.ShoppingPaper(shopping.List{}); !strings.Contains(text, "No pour is chosen") {
		t.Error(text)
	}
}

// The table is read back by the standard library's reader (RFC 4180), and runs nothing in a spreadsheet.
func TestTheShoppingListAsATable(t *testing.T) {
	l := shoppingSample(t)
	var b strings.Builder
	if err := l.CSV(&b); err != nil {
		t.Fatal(err)
	}
	if strings.Count(b.String(), "\r\n") != strings.Count(b.String(), "\n") {
		t.Error("a line does not end as the standard has it")
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil || len(rows) != 5 {
		t.Fatalf("%d rows, %v\n%s", len(rows), err, b.String())
	}
	got := map[string]map[string]string{}
	for _, r := range rows[1:] {
		cells := map[string]string{}
		for i, v := range r {
			cells[rows[0][i]] = v
			if v != "" && strings.ContainsRune("=+-@", rune(v[0])) {
				t.Errorf("%q is run by a spreadsheet", v)
			}
		}
		got[cells["id"]] = cells
	}
	for _, want := range [][3]string{
		{"olive", "packs", "3"},
		{"olive", "pack_size", "1000"},
		{"olive", "price", "8.00"},
		{"olive", "cost", "24.00"},
		{"olive", "left_over", "125"},
		{"olive", "short", "2875"},
		{"olive", "currency", "EUR"},
		{"mica", "short", "1.25"},
		{"mica", "cost", ""},
		{"moon", "unit", "pieces"},
		{"naoh", "short", "0"},
		{"mica", "name", "'@gold"},
	} {
		if v := got[want[0]][want[1]]; v != want[2] {
			t.Errorf("%s: %s is %q, want %q", want[0], want[1], v, want[2])
		}
	}
	_, disk := io.Pipe()
	_ = disk.CloseWithError(errors.New("no room"))
	if err := l.CSV(disk); err == nil || !strings.Contains(err.Error(), "shopping list") {
		t.Errorf("a full disk: %v", err)
	}
}
