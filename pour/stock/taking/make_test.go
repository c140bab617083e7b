package taking_test

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
	"pourbench/pour/stock/taking"
)

// A master-batch by hand: 3000 g of an oil that came at 40.00 for 4000 g and 1000 g of one at 20.00 for 2000 g cost 30.00 + 10.00, keep as long as
// the first of them does, and go out at 10.00 a kilogram.
func TestABlendCostsWhatWentIntoItAndKeepsAsLongAsTheFirst(t *testing.T) {
	today := on(t, "2026-04-10")
	coconut := lot.Material{Kind: lot.Oil, ID: "coconut"}
	entries := []stock.Entry{
		received("l1", olive(), 4000, on(t, "2026-03-03"), on(t, "2026-11-30")), received("c1", coconut, 2000, on(t, "2026-03-03"), on(t, "2027-06-30")),
	}
	s := stock.Of(entries, today)
	m := taking.Making{
		Material: lot.Material{Kind: lot.Blend, ID: "house-blend"}, Name: "House blend", Pack: "house-blend-1", Q: 4000 * lot.One, On: today,
		Of: []taking.Want{want(3000, ""), {MaterialNeed: pour.MaterialNeed{Material: coconut, Name: "coconut oil", Q: 1000 * lot.One}}},
	}
	made, _, err := m.Entries(s.Stock)
	if err != nil {
		t.Fatal(err)
	}
	for i := range made {
		made[i].ID = string(rune('a' + i))
	}
	if doubts, err := s.Check(made...); err != nil || len(doubts) > 0 {
		t.Errorf("the ledger says %v, %v", doubts, err)
	}
	entries = append(entries, made...)
	entries = append(entries, stock.Entry{ID: "z", Kind: stock.Taken, Day: today, Pack: "house-blend-1", Q: 1500 * lot.One, For: "pour"})
	after := stock.Of(entries, today)
	p, ok := after.Pack("house-blend-1")
	if !ok || !p.Made || p.Expires != on(t, "2026-11-30") || p.Lot != "house-blend-1" || p.Left != 2500*lot.One {
		t.Errorf("the pack is %+v", p)
	}
	if cost := after.Costs["z"]; cost.Cents() != "15.00" {
		t.Errorf("1.5 kg of it cost %s, want 15.00", cost.Cents())
	}
	if l, _ := after.Pack("l1"); l.Left != 1000*lot.One {
		t.Errorf("%s g are left of the oil", l.Left)
	}
}

// What cannot be made is refused, with how to put it right.
func TestWhatCannotBeMadeIsRefused(t *testing.T) {
	today := on(t, "2026-04-10")
	s := stock.Of(three(t), today)
	water := taking.Want{MaterialNeed: pour.MaterialNeed{Material: lot.Material{Kind: lot.Other, ID: lot.Water}, Name: "water", Q: 500 * lot.One}}
	blend := func(q lot.Quantity, of ...taking.Want) taking.Making {
		return taking.Making{Material: lot.Material{Kind: lot.Blend, ID: "b"}, Name: "b", Pack: "b-1", Q: q * lot.One, On: today, Of: of}
	}
	for _, c := range []struct {
		m    taking.Making
		says string
	}{
		{blend(0, want(10, "")), "how much came out"},
		{blend(10), "what went in"},
		{blend(1500, want(1499, "")), "only 1499 g went in"},
		{blend(13_000, want(13_000, "")), "lacks: the packs hold no more"},
	} {
		if _, _, err := c.m.Entries(s.Stock); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v, want %q", c.m, err, c.says)
		}
	}
	if entries, _, err := blend(1500, want(1000, ""), water).Entries(s.Stock); err != nil || len(entries) != 2 {
		t.Errorf("with water of no pack: %v, %v", entries, err)
	}
}

func TestAMaterialIsFoundByWhatItsPacksSay(t *testing.T) {
	today := on(t, "2026-04-10")
	e := received("x1", lot.Material{Kind: lot.Packaging, ID: "olive"}, 40, today, 0)
	named := received("x2", lot.Material{Kind: lot.Blend, ID: "house-blend"}, 40, today, 0)
	named.Name = "House blend"
	s := stock.Of(append(three(t), e, named), today)
	for typed, is := range map[string]string{"Oil Olive": "oil olive", "house BLEND": "blend house-blend", "house-blend": "blend house-blend", "Water": "other water"} {
		if m, _, err := taking.Find(s.Stock, typed); err != nil || m.String() != is {
			t.Errorf("%q is %s, %v", typed, m, err)
		}
	}
	for typed, says := range map[string]string{"olive": "write the kind before it", "house-blond": `did you mean "house-blend"`, "": "no pack of it ever came"} {
		if _, _, err := taking.Find(s.Stock, typed); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want %q", typed, err, says)
		}
	}
}
