package tables_test

import (
	"bytes"
	"encoding/csv"
	"maps"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/plain"
	"pourbench/pour/stock"
	"pourbench/pour/stock/stocktest"
	"pourbench/pour/stock/tables"
)

// The movements of a random business, handed on and taken into an empty ledger, come to the same stock and the same costs, and the standard library's
// reader of RFC 4180 sees every cell as it is.
func TestMovementsComeBackAsTheyWere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := stocktest.Draw(stocktest.Seeded(rapid.Uint64().Draw(t, "seed")), stocktest.Size{Batches: 4, Materials: 6, Each: 4, Clean: rapid.Bool().Draw(t, "clean")})
		was := b.State()
		var out bytes.Buffer
		if err := tables.WriteMovements(&out, was); err != nil {
			t.Fatal(err)
		}
		all, err := csv.NewReader(bytes.NewReader(out.Bytes())).ReadAll()
		if err != nil || len(all) != len(was.Entries)+1 {
			t.Fatalf("%d rows of %d entries: %v", len(all), len(was.Entries), err)
		}
		if !strings.HasSuffix(out.String(), "\r\n") {
			t.Fatal("a line ends without CRLF (RFC 4180, section 2)")
		}
		for i, e := range was.Entries {
			if row := all[i+1]; row[0] != e.ID || row[6] != plain.Cell(e.Lot) || row[20] != plain.Cell(e.Text) || row[9] != e.Q.String() {
				t.Fatalf("%+v is handed on as %q", e, row)
			}
		}
		empty := stock.Of(nil, b.Today)
		deed, err := tables.ReadMovements(bytes.NewReader(out.Bytes()), empty, nil)
		if err != nil {
			t.Fatal(err)
		}
		now := stock.Of(deed.Entries, b.Today)
		if !reflect.DeepEqual(now.Materials(), was.Materials()) {
			t.Fatal("other materials")
		}
		for m, h := range was.Held {
			same(t, now.Held[m], h)
		}
		for id, cost := range was.Costs {
			if cost.Compare(now.Costs[id]) != 0 {
				t.Fatalf("%s cost %s and now %s", id, cost, now.Costs[id])
			}
		}
		again, err := tables.ReadMovements(bytes.NewReader(out.Bytes()), was, ids(was.Entries))
		if err != nil || len(again.Entries) != 0 {
			t.Fatalf("%d are taken in a second time: %v", len(again.Entries), err)
		}
	})
}

func ids(entries []stock.Entry) []string {
	var out []string
	for _, e := range entries {
		out = append(out, e.ID)
	}
	return out
}

func same(t *rapid.T, now, was lot.Holding) {
	if len(now.Packs) != len(was.Packs) {
		t.Fatalf("%d packs, were %d", len(now.Packs), len(was.Packs))
	}
	for i, p := range was.Packs {
		q := now.Packs[i]
		if q.ID != p.ID || q.Left != p.Left || q.Taken != p.Taken || q.Lost != p.Lost || q.Lot != p.Lot || q.Expires != p.Expires || q.Opened != p.Opened || q.Loss != p.Loss ||
			q.Landed().Compare(p.Landed()) != 0 {
			t.Fatalf("%+v\nwas %+v", q, p)
		}
	}
	q, cost := now.Layers.Total()
	if wasQ, wasCost := was.Layers.Total(); q != wasQ || cost.Compare(wasCost) != 0 {
		t.Fatalf("%s at %s, was %s at %s", q, cost, wasQ, wasCost)
	}
}

// Packs that were bought come back with what is left of them.
func TestPacksComeBackWithWhatIsLeft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := stocktest.Draw(stocktest.Seeded(rapid.Uint64().Draw(t, "seed")), stocktest.Size{Batches: 3, Materials: 5, Each: 3, Clean: true})
		was := b.State()
		bought := stock.State{Stock: was.Stock}
		bought.Held = map[lot.Material]lot.Holding{}
		want := map[string]lot.Quantity{}
		for m, h := range was.Held {
			var packs []lot.Pack
			for _, p := range h.Packs {
				if !p.Made && p.Left >= 0 {
					packs = append(packs, p)
					want[p.ID] = p.Left
				}
			}
			if len(packs) > 0 {
				h.Packs = packs
				bought.Held[m] = h
			}
		}
		var out bytes.Buffer
		if err := tables.WritePacks(&out, bought); err != nil {
			t.Fatal(err)
		}
		deed, err := tables.ReadPacks(bytes.NewReader(out.Bytes()), stock.Of(nil, b.Today))
		if err != nil {
			t.Fatal(err)
		}
		got := map[string]lot.Quantity{}
		for _, h := range stock.Of(deed.Entries, b.Today).Held {
			for _, p := range h.Packs {
				got[p.ID] = p.Left
			}
		}
		if !maps.Equal(got, want) {
			t.Fatalf("%v are left, want %v", got, want)
		}
	})
}

func TestATableThatCannotBeIsRefusedWithItsLine(t *testing.T) {
	today, err := day.Parse("2026-11-28")
	if err != nil {
		t.Fatal(err)
	}
	s := stock.Of(nil, today)
	const packs = "kind,id,size,price,bought\r\n"
	for _, c := range []struct{ text, says string }{
		{"", "names no columns"},
		{"kind,id,size,price\r\n", `"bought" is missing`},
		{"kind,id,size,price,bougt\r\n", `did you mean "bought"`},
		{"kind,kind,id,size,price,bought\r\n", "twice"},
		{packs + "oil,olive,5000,38.50\r\n", "line 2"},
		{packs + "oyl,olive,5000,38.50,2026-11-20\r\n", "line 2: read the material"},
		{packs + "oil,olive,0,38.50,2026-11-20\r\n", "line 2: a pack of 0"},
		{packs + "oil,olive,-5,38.50,2026-11-20\r\n", "line 2: size"},
		{packs + "oil,olive,5000,x,2026-11-20\r\n", "line 2: price"},
		{packs + "oil,olive,5000,38.50,20.11.2026\r\n", "line 2: day"},
		{packs + "oil,olive,5000,38.50,2027-11-20\r\n", "no day to come"},
		{packs + "oil,olive,5000,\"38.50,2026-11-20\r\n", "line"},
	} {
		if _, err := tables.ReadPacks(strings.NewReader(c.text), s); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %v, want %q in it", c.text, err, c.says)
		}
	}
	const moves = "kind,day,pack,material,quantity,formula\r\n"
	for _, c := range []struct{ text, says string }{
		{moves + "tken,2026-11-20,olive-1,,5,\r\n", "no kind of entry"},
		{moves + "taken,2026-11-20,olive-1,,5,\r\n", "never came"},
		{moves + "received,2026-11-20,,oil olive,5,\r\n", "which pack"},
		{moves + "received,2026-11-20,olive-1,oil olive,5,\r\nreceived,2026-11-20,olive-1,oil olive,5,\r\n", "line 3: another pack"},
		{moves + "received,2026-11-20,olive-1,oil olive,5,\r\ntaken,2026-11-20,olive-1,,0,\r\n", "line 3: a quantity of nothing"},
		{moves + "rule,2026-11-20,,,,lifo\r\n", "no rule of costs"},
		{moves + "received,2027-11-20,olive-1,oil olive,5,\r\n", "no day to come"},
	} {
		if _, err := tables.ReadMovements(strings.NewReader(c.text), s, nil); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %v, want %q in it", c.text, err, c.says)
		}
	}
	semicolons := "\ufeffkind;id;size;price;bought;lot\nOIL;olive;5000;38,50;2026-11-20;'=1\n"
	deed, err := tables.ReadPacks(strings.NewReader(strings.Replace(semicolons, "OIL", "oil", 1)), s)
	if err != nil || len(deed.Entries) != 1 || deed.Entries[0].Price.String() != "38.50" || deed.Entries[0].Lot != "=1" || deed.Entries[0].Pack != "olive-1" {
		t.Errorf("a table of semicolons: %+v %v", deed, err)
	}
}

// A text that a spreadsheet would run is handed on with an apostrophe and comes back without.
func TestNoCellIsAFormula(t *testing.T) {
	const today = day.Day(20_000)
	e := stock.Entry{ID: "e1", Kind: stock.Received, Day: today, Pack: "olive-1", Material: lot.Material{Kind: lot.Oil, ID: "olive"}, Q: lot.One, Lot: "=1+1", Supplier: "@mill"}
	var out bytes.Buffer
	if err := tables.WriteMovements(&out, stock.Of([]stock.Entry{e}, today)); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(out.String(), ",'=1+1,'@mill,") {
		t.Errorf("handed on as %q", out.String())
	}
	d, err := tables.ReadMovements(&out, stock.Of(nil, today), nil)
	if err != nil || len(d.Entries) != 1 || d.Entries[0].Lot != e.Lot || d.Entries[0].Supplier != e.Supplier {
		t.Errorf("came back as %+v %v", d.Entries, err)
	}
}
