package stock_test

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

// fraction is an amount as the standard library's fractions have it.
func fraction(a money.Amount) *big.Rat {
	r, _ := new(big.Rat).SetString(a.Exact())
	return r
}

// A pack of 5000 g for 98.00, of which 100 g usually stay in the tub, costs 98 / 4900 = 0.02 a gram. The steps are worked out by hand.
func TestUsualLossCostsNothingAndTheRestIsWrittenOff(t *testing.T) {
	entries := []stock.Entry{came(t, "olive-1", "2026-03-03")}
	step := func(kind stock.Kind, grams int64, cost string, left, usual, beyond int64) {
		t.Helper()
		id := fmt.Sprint(len(entries))
		entries = append(entries, stock.Entry{ID: id, Kind: kind, Pack: "olive-1", Q: lot.Quantity(grams) * lot.One, For: "meadow", Text: "why", Day: at(t, "2026-04-01")})
		s := stock.Of(entries, at(t, "2026-11-28"))
		p, _ := s.Pack("olive-1")
		want, _ := new(big.Rat).SetString(cost)
		if fraction(s.Costs[id]).Cmp(want) != 0 || p.Left != lot.Quantity(left)*lot.One {
			t.Errorf("%s %d: costs %s and leaves %s, want %s and %d", kind, grams, s.Costs[id].Exact(), p.Left, cost, left)
		}
		if got := (stock.Shrink{Usual: lot.Quantity(usual) * lot.One, Beyond: lot.Quantity(beyond) * lot.One}); s.Shrunk[id] != got {
			t.Errorf("%s %d: shrunk %+v, want %+v", kind, grams, s.Shrunk[id], got)
		}
	}
	step(stock.Taken, 1000, "20", 4000, 0, 0)
	step(stock.Counted, 3960, "0", 3960, 40, 0)     // within the usual 100
	step(stock.Counted, 3850, "1", 3850, 60, 50)    // 60 usual are left, 50 g × 0.02 are written off
	step(stock.Counted, 3870, "-0.4", 3870, 0, -20) // 20 g of them are found again
	step(stock.Counted, 3950, "-0.6", 3950, -50, -30)
	step(stock.Lost, 100, "2", 3850, 0, 100) // a mishap is not the usual loss
	step(stock.Taken, 3800, "76", 50, 0, 0)
	step(stock.Taken, 50, "0", 0, 0, 0) // what nobody thought could be used: its cost went with the rest
	step(stock.Taken, 10, "0", -10, 0, 0)
	if s := stock.Of(entries, at(t, "2026-11-28")); len(s.Odd) != 1 || s.Odd[0].Entry != "9" {
		t.Errorf("%+v", s.Odd)
	}
	step(stock.Counted, 0, "0", 0, 0, -10)
}

// What is made costs what was taken for it, in whatever order the entries of a day were written, and to the last digit what it was made of is what
// it and the rest come to.
func TestWhatIsMadeCostsWhatWentIntoIt(t *testing.T) {
	mix := lot.Material{Kind: lot.Blend, ID: "mix"}
	d := at(t, "2026-04-01")
	parts := []stock.Entry{
		came(t, "olive-1", "2026-04-01"),
		{ID: "a", Kind: stock.Taken, Pack: "olive-1", For: "mix-1", Q: 1000 * lot.One, Day: d},
		{ID: "b", Kind: stock.Taken, Pack: "olive-1", For: "mix-1", Q: 333 * lot.One, Day: d},
		{ID: "c", Kind: stock.Made, Pack: "mix-1", Material: mix, Q: 1333 * lot.One, Day: d},
		{ID: "d", Kind: stock.Taken, Pack: "mix-1", For: "meadow", Q: 1333 * lot.One, Day: d},
	}
	rapid.Check(t, func(t *rapid.T) {
		s := stock.Of(rapid.Permutation(parts).Draw(t, "order"), d)
		p, _ := s.Pack("mix-1")
		if got := fraction(s.Costs["d"]); got.Cmp(big.NewRat(2666, 100)) != 0 || fraction(p.Price).Cmp(got) != 0 || len(s.Odd) != 0 {
			t.Fatalf("%s, of %s, %v", s.Costs["d"].Exact(), p.Price.Exact(), s.Odd)
		}
	})
}

// drawn draws a ledger of a few packs and a lot that happens to them, some of which can hardly be.
func drawn(t *rapid.T) []stock.Entry {
	mix := lot.Material{Kind: lot.Blend, ID: "mix"}
	money := func(what string) money.Amount {
		a, err := money.Parse(rapid.StringMatching(`[0-9]{1,3}\.[0-9]{2}`).Draw(t, what))
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	out := []stock.Entry{{Kind: stock.Rule, Formula: rapid.SampledFrom([]lot.Formula{lot.FIFO, lot.Average}).Draw(t, "formula"), Currency: "EUR"}}
	grams := rapid.Map(rapid.IntRange(1, 500_000), func(n int) lot.Quantity { return lot.Quantity(n) })
	for i := range rapid.IntRange(1, 4).Draw(t, "packs") {
		e := stock.Entry{Kind: stock.Received, Pack: fmt.Sprint("p", i), Material: olive(), Q: 500_000, Price: money("price"), Postage: money("postage")}
		e.Loss = lot.Quantity(rapid.IntRange(0, 90_000).Draw(t, "loss"))
		e.Day = day.Day(rapid.IntRange(100, 130).Draw(t, "day"))
		out = append(out, e)
	}
	packs := len(out) - 1
	out = append(out, stock.Entry{Kind: stock.Made, Pack: "mix", Material: mix, Q: 300_000, Day: 110})
	for range rapid.IntRange(0, 25).Draw(t, "entries") {
		e := stock.Entry{Pack: fmt.Sprint("p", rapid.IntRange(0, packs-1).Draw(t, "pack")), Q: grams.Draw(t, "q"), Day: day.Day(rapid.IntRange(95, 140).Draw(t, "day")), Text: "why"}
		e.Kind = rapid.SampledFrom([]stock.Kind{stock.Taken, stock.Taken, stock.Lost, stock.Counted}).Draw(t, "kind")
		if e.Kind == stock.Taken {
			e.For = rapid.SampledFrom([]string{"meadow", "heath", "mix"}).Draw(t, "for")
		}
		if e.For != "mix" && rapid.IntRange(0, 4).Draw(t, "of the mix") == 0 {
			e.Pack = "mix"
		}
		out = append(out, e)
	}
	for i := range out {
		out[i].ID = fmt.Sprint("e", i)
	}
	return out
}

// What came in is what went out, was lost and is left: of every pack in grams, of all together in money to the last digit, by the fractions of the
// standard library. The cost layers hold what is usable of the packs and not a grain more, and nothing goes below nothing without being said.
func TestWhatComesInGoesOutOrIsLeft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := drawn(t)
		s := stock.Of(entries, 200)
		in, out := new(big.Rat), new(big.Rat)
		below := map[string]bool{}
		for m, h := range s.Held {
			usable := lot.Quantity(0)
			for _, p := range h.Packs {
				if p.Left != p.Size-p.Taken-p.Lost {
					t.Fatalf("%s: %s of %s, %s taken and %s lost", p.ID, p.Left, p.Size, p.Taken, p.Lost)
				}
				usable += max(p.Left, 0)
				below[p.ID] = p.Left < 0
				if !p.Made {
					in.Add(in, fraction(p.Landed()))
				}
			}
			q, cost := h.Layers.Total()
			if q < 0 || q > usable || cost.Sign() < 0 {
				t.Fatalf("%s: the layers hold %s for %s, the packs %s", m, q, cost.Exact(), usable)
			}
			out.Add(out, fraction(cost))
		}
		for _, e := range s.Entries {
			if e.For != "mix" {
				out.Add(out, fraction(s.Costs[e.ID]))
			}
		}
		if in.Cmp(out) != 0 {
			t.Fatalf("%s came in, and %s is accounted for", in.FloatString(20), out.FloatString(20))
		}
		for id, is := range below {
			if is && !slices.ContainsFunc(s.Odd, func(d stock.Doubt) bool {
				return strings.Contains(d.Text, " in "+id+": more is gone than the book has there")
			}) {
				t.Fatalf("%s is below nothing and nobody says so", id)
			}
		}
	})
}

// Taking an entry back leaves what there would be without it; taking that back, what there was.
func TestUndoRestores(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := drawn(t)
		n := rapid.IntRange(0, len(entries)-1).Draw(t, "which")
		back := stock.Entry{ID: "back", Kind: stock.TakenBack, Of: entries[n].ID, Day: 150}
		again := stock.Entry{ID: "again", Kind: stock.TakenBack, Of: "back", Day: 151}
		alike(t, stock.Of(append(slices.Clone(entries), back), 200), stock.Of(slices.Delete(slices.Clone(entries), n, n+1), 200))
		alike(t, stock.Of(append(slices.Clone(entries), back, again), 200), stock.Of(entries, 200))
	})
}

// What a correction of a correction says is what there is, and taking it back leaves the one before.
func TestCorrectionsOfCorrections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := drawn(t)
		n := rapid.IntRange(0, len(entries)-1).Draw(t, "which")
		with := func(q lot.Quantity) []stock.Entry {
			out := slices.Clone(entries)
			if out[n].Kind != stock.Rule {
				out[n].Q = q
			}
			return out
		}
		first, second := with(70_000)[n], with(90_000)[n]
		first.ID, first.Corrects, second.ID, second.Corrects = "c1", entries[n].ID, "c2", rapid.SampledFrom([]string{"c1", entries[n].ID}).Draw(t, "of")
		first.Day, second.Day = 0, 0 // of the day of what they correct
		all := append(slices.Clone(entries), first, second)
		alike(t, stock.Of(all, 200), stock.Of(with(90_000), 200))
		alike(t, stock.Of(append(slices.Clone(all), stock.Entry{ID: "b", Kind: stock.TakenBack, Of: "c2"}), 200), stock.Of(with(70_000), 200))
		alike(t, stock.Of(append(slices.Clone(all), stock.Entry{ID: "b", Kind: stock.TakenBack, Of: "c1"}), 200), stock.Of(with(90_000), 200))
		alike(t, stock.Of(append(slices.Clone(all), stock.Entry{ID: "b", Kind: stock.TakenBack, Of: "c2"}, stock.Entry{ID: "b2", Kind: stock.TakenBack, Of: "c1"}), 200), stock.Of(entries, 200))
	})
}

// Entries that correct each other in a ring end.
func TestARingOfCorrectionsEnds(t *testing.T) {
	a, b := came(t, "olive-1", "2026-03-03"), came(t, "olive-2", "2026-03-03")
	a.ID, a.Corrects, b.ID, b.Corrects = "a", "b", "b", "a"
	if s := stock.Of([]stock.Entry{a, b}, at(t, "2026-11-28")); len(s.Entries) != 1 || s.Entries[0].ID != "b" {
		t.Errorf("%+v", s.Entries)
	}
	a.Corrects = "a"
	if s := stock.Of([]stock.Entry{a}, at(t, "2026-11-28")); len(s.Entries) != 1 {
		t.Errorf("%+v", s.Entries)
	}
}

func alike(t *rapid.T, got, want stock.State) {
	t.Helper()
	if diff := same(want.Held, got.Held); diff != "" {
		t.Fatal(diff)
	}
	if len(got.Entries) != len(want.Entries) || got.Formula != want.Formula {
		t.Fatalf("%d entries count by %s, want %d by %s", len(got.Entries), got.Formula, len(want.Entries), want.Formula)
	}
}
