package shopping_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/season"
	"pourbench/pour/stock/shopping"
)

const kg = 1000 * lot.One

func oil(id string) lot.Material { return lot.Material{Kind: lot.Oil, ID: id} }

func wanting(name string, on day.Day, of ...pour.MaterialNeed) shopping.Pour {
	return shopping.Pour{Name: name, Plan: name + ".toml", On: on, Needs: of}
}

func need(m lot.Material, q lot.Quantity) pour.MaterialNeed {
	return pour.MaterialNeed{Material: m, Name: m.ID, Q: q}
}

// holding is packs of one material with all of each left.
func holding(packs ...lot.Pack) lot.Holding {
	for i := range packs {
		packs[i].Left = packs[i].Size
	}
	return lot.Holding{Packs: packs}
}

func line(r shopping.Row) string {
	return strings.TrimSpace(fmt.Sprintf("%s: need %s, usable %s, blocked %s, reserved %s, short %s; %s", r.Name, r.Need, r.Usable, r.Blocked, r.Reserved, r.Short, told(r.Choice)))
}

// By hand: two pours want 3 kg and 2 kg of olive oil, 4 kg lie there of which another pour has reserved 1 kg, and 1 kg is past its date: 2 kg are
// short, for which a can of 5 kg at 30.00 is dearer than two of 1 kg at 8.00.
func TestAListByHand(t *testing.T) {
	today := day.Day(20000)
	olive, box := oil("olive"), lot.Material{Kind: lot.Packaging, ID: "box"}
	s := lot.Stock{Today: today, Currency: "EUR", Held: map[lot.Material]lot.Holding{olive: holding(
		lot.Pack{ID: "o1", Material: olive, Size: kg, Price: price(t, "8.00"), Expires: today - 1},
		lot.Pack{ID: "o2", Material: olive, Size: 4 * kg, Price: price(t, "30.00"), Expires: today + 100},
	)}}
	s.Held[olive].Packs[1].Size = 5 * kg
	chosen := []shopping.Pour{wanting("a", 0, need(olive, kg), need(olive, 2*kg)), wanting("b", today+3, need(olive, 2*kg), need(box, 12*lot.One)), wanting("c", 0, need(lot.Material{Kind: lot.Other, ID: lot.Water}, kg))}
	others := []shopping.Pour{wanting("c", today+1, need(olive, kg))}
	l := shopping.Of(s, map[lot.Material][]shopping.Offer{box: {{Size: 50 * lot.One, Usable: 50 * lot.One}}}, chosen, others, shopping.Cheapest)
	want := []string{
		"olive: need 5000, usable 4000, blocked 1000, reserved 1000, short 2000; 2×1000 16.00 left 0",
		"box: need 12, usable 0, blocked 0, reserved 0, short 12; 1×50 0.00 left 38",
	}
	if len(l.Rows) != len(want) {
		t.Fatalf("%+v", l.Rows)
	}
	for i, r := range l.Rows {
		if line(r) != want[i] {
			t.Errorf("%s\nwant %s", line(r), want[i])
		}
	}
	if l.Cost.String() != "16.00" || l.Unpriced != 1 || strings.Join(l.Rows[0].For, " ") != "a b" {
		t.Errorf("%s, %d without a price, for %q", l.Cost, l.Unpriced, l.Rows[0].For)
	}
}

// A pour on a day when a pack is past its date cannot use it, and one before that day does.
func TestWhatIsPastItsDateByThenDoesNotCount(t *testing.T) {
	today := day.Day(20000)
	olive := oil("olive")
	s := lot.Stock{Today: today, Held: map[lot.Material]lot.Holding{olive: holding(
		lot.Pack{ID: "soon", Material: olive, Size: kg, Price: price(t, "9"), Expires: today + 5},
		lot.Pack{ID: "late", Material: olive, Size: kg, Price: price(t, "9"), Expires: today + 50},
	)}}
	for on, short := range map[day.Day]lot.Quantity{today + 5: 0, today + 6: kg, today + 51: 2 * kg} {
		l := shopping.Of(s, nil, []shopping.Pour{wanting("a", on, need(olive, 2*kg))}, nil, shopping.Cheapest)
		if l.Rows[0].Short != short {
			t.Errorf("on %s %s g are short, want %s", on, l.Rows[0].Short, short)
		}
	}
	// What is promised for the day after takes the pack that lasts, so that today's pour finds the other.
	free := shopping.Free(s, []shopping.Pour{wanting("b", today+6, need(olive, kg))}, 0)
	if free[olive] != kg {
		t.Errorf("%s are free", free[olive])
	}
}

// With what is on the list bought, every pour has all it wants, and with a pack less some has not: by laying the packs there and asking again.
func TestWithTheListBoughtThereIsEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		today := day.Day(20000)
		m := oil("olive")
		var packs []lot.Pack
		for i := range rapid.IntRange(0, 4).Draw(t, "packs") {
			packs = append(packs, lot.Pack{
				ID: fmt.Sprint("p", i), Material: m, Size: lot.Quantity(rapid.IntRange(1, 40).Draw(t, "size")) * kg / 10, Price: price(t, "5"),
				Expires: today + day.Day(rapid.IntRange(-3, 20).Draw(t, "expires")),
			})
		}
		s := lot.Stock{Today: today, Held: map[lot.Material]lot.Holding{m: holding(packs...)}}
		pours := func(name string) []shopping.Pour {
			var out []shopping.Pour
			for i := range rapid.IntRange(0, 4).Draw(t, name) {
				out = append(out, wanting(fmt.Sprint(name, i), today+day.Day(rapid.IntRange(0, 20).Draw(t, "on")), need(m, lot.Quantity(rapid.IntRange(1, 30).Draw(t, "wants"))*kg/10)))
			}
			return out
		}
		chosen, others := pours("chosen"), pours("other")
		offer := map[lot.Material][]shopping.Offer{m: {{Size: kg / 10, Usable: kg / 10, Price: price(t, "1"), Priced: true}}}
		l := shopping.Of(s, offer, chosen, others, shopping.LeastLeft)
		if len(l.Rows) == 0 || l.Rows[0].Short == 0 {
			return
		}
		bought := l.Rows[0].Short + l.Rows[0].Choice.Leftover
		for lacks, q := range map[bool]lot.Quantity{false: bought, true: l.Rows[0].Short - lot.One} {
			h := holding(append(append([]lot.Pack(nil), packs...), lot.Pack{ID: "new", Material: m, Size: q})...)
			again := shopping.Of(lot.Stock{Today: today, Held: map[lot.Material]lot.Holding{m: h}}, offer, chosen, others, shopping.LeastLeft)
			// others that find too little stay short themselves: what is bought for the chosen must not go to them
			if promised := shopping.Of(s, offer, others, nil, shopping.LeastLeft); len(promised.Rows) > 0 && promised.Rows[0].Short > 0 {
				return
			}
			if got := again.Rows[0].Short > 0; got != lacks {
				t.Fatalf("with %s more %s are short", q, again.Rows[0].Short)
			}
		}
	})
}

func TestReservedIsWhatTheSeasonHasPlannedAndNothingElse(t *testing.T) {
	today := day.Day(20000)
	late := today - 3
	designs := map[string]season.Design{
		"a.toml": {Name: "A", Needs: []pour.MaterialNeed{need(oil("olive"), kg), need(oil("olive"), kg), need(oil("coconut"), kg)}},
		"b.toml": {Name: "B", Fault: fmt.Errorf("gone")},
	}
	on := today + 9
	b := season.Of(season.Facts{Today: today, Designs: designs, File: season.File{Pours: []season.Planned{
		{Plan: "a.toml", Day: &on}, {Plan: "a.toml", Day: &late}, {Plan: "b.toml"}, {Plan: "a.toml"}, {Pour: "2026-01-01-a"},
	}}})
	pours, unread := shopping.Reservations(b)
	if len(pours) != 3 || len(unread) != 1 || unread[0] != "B" {
		t.Fatalf("%+v, unread %q", pours, unread)
	}
	for _, p := range pours {
		if p.On != 0 && p.On < today {
			t.Errorf("%s is poured on %s, which is over", p.Name, p.On)
		}
	}
	rest, own, ok := shopping.Without(pours, "a.toml")
	if !ok || len(rest) != 2 || own.On != 0 && own.On != today { // the one whose day is over is due first, from today on
		t.Errorf("own %+v of %d", own, len(rest)+1)
	}
	if _, _, ok := shopping.Without(pours, ""); ok {
		t.Error("a plan without a file was found among the planned pours")
	}
	s := lot.Stock{Today: today, Held: map[lot.Material]lot.Holding{oil("olive"): {Packs: []lot.Pack{{Left: kg}}, Reserved: 77}, oil("palm"): {Reserved: 5}}}
	r := shopping.Reserve(s, pours)
	if r.Held[oil("olive")].Reserved != 6*kg || r.Held[oil("coconut")].Reserved != 3*kg || r.Held[oil("palm")].Reserved != 0 || s.Held[oil("olive")].Reserved != 77 {
		t.Errorf("reserved %+v of %+v", r.Held, s.Held)
	}
}

func TestWhatExpiresAndWhoWouldUseIt(t *testing.T) {
	today := day.Day(20000)
	olive, mica := oil("olive"), lot.Material{Kind: lot.Colourant, ID: "mica"}
	s := lot.Stock{Today: today, Held: map[lot.Material]lot.Holding{
		olive: holding(
			lot.Pack{ID: "past", Material: olive, Size: kg, Expires: today - 1}, lot.Pack{ID: "month", Material: olive, Size: 3 * kg, Expires: today + 30},
			lot.Pack{ID: "later", Material: olive, Size: kg, Expires: today + 31}, lot.Pack{ID: "never", Material: olive, Size: kg},
		),
		mica: holding(lot.Pack{ID: "mica", Material: mica, Size: lot.One, Expires: today}),
	}}
	planned := []shopping.Pour{wanting("in time", today+30, need(olive, kg)), wanting("too late", today+31, need(olive, kg))}
	others := []shopping.Pour{wanting("small", 0, need(olive, kg)), wanting("large", 0, need(olive, 2*kg)), wanting("large", 0, need(olive, kg)), wanting("none", 0, need(oil("palm"), kg))}
	got := ""
	for _, x := range shopping.Expires(s, shopping.Month, planned, others) {
		got += fmt.Sprintf("%s %d left over %s:", x.Pack.ID, x.Days, x.Unused)
		for _, u := range x.Taken {
			got += fmt.Sprintf(" %s takes %s", u.Name, u.Q)
		}
		for _, u := range x.Could {
			got += fmt.Sprintf(" %s could %s", u.Name, u.Q)
		}
		got += "\n"
	}
	want := "past -1 left over 1000:\nmica 0 left over 1:\nmonth 30 left over 2000: in time takes 1000 large could 2000 small could 1000\n"
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// Of very many offers the newest count.
func TestOldOffersAreOldNews(t *testing.T) {
	var packs []lot.Pack
	for i := range 100 {
		packs = append(packs, lot.Pack{Size: kg + lot.Quantity(i), Price: price(t, "5"), Bought: day.Day(1000 - i)})
	}
	got := shopping.Offers(packs, nil)
	if len(got) != 36 {
		t.Fatalf("%d offers", len(got))
	}
	for _, o := range got {
		if o.Day < 1000-35 {
			t.Errorf("one of day %d counts", o.Day)
		}
	}
}
