package taking_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/planfile"
	"pourbench/pour/stock"
	"pourbench/pour/stock/taking"
	"pourbench/presets"
)

func olive() lot.Material { return lot.Material{Kind: lot.Oil, ID: "olive"} }

func on(t testing.TB, s string) day.Day {
	t.Helper()
	d, err := day.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func received(pack string, m lot.Material, g lot.Quantity, of, expires day.Day) stock.Entry {
	price, _ := money.Parse(fmt.Sprintf("%d.%02d", g/100, g%100))
	return stock.Entry{
		ID: "r-" + pack, Kind: stock.Received, Pack: pack, Material: m, Name: m.ID, Lot: strings.ToUpper(pack), Q: g * lot.One, Day: of, Expires: expires,
		Price: price,
	}
}

// three are the lots of the reference (cost and stock, FEFO check): received 3 and 20 March and 2 April, best before 30 November, 15 August and
// 31 January; 4 kg in each.
func three(t testing.TB) []stock.Entry {
	return []stock.Entry{
		received("l1", olive(), 4000, on(t, "2026-03-03"), on(t, "2026-11-30")),
		received("l2", olive(), 4000, on(t, "2026-03-20"), on(t, "2026-08-15")),
		received("l3", olive(), 4000, on(t, "2026-04-02"), on(t, "2027-01-31")),
	}
}

func want(g lot.Quantity, typed string) taking.Want {
	return taking.Want{MaterialNeed: pour.MaterialNeed{Material: olive(), Name: "olive oil", Batch: pour.Base, Q: g * lot.One}, Lot: typed}
}

func told(t taking.Taking) string {
	var out []string
	for _, d := range t.Draws {
		out = append(out, d.Part.Pack+" "+d.Part.Q.String())
	}
	for _, l := range t.Lacks {
		out = append(out, "lacks "+l.Q.String())
	}
	return strings.Join(out, ", ")
}

// The FEFO check of the reference: 6 kg are 4 kg of the second and 2 kg of the first; on 1 September the second is blocked. What was typed at the
// scale is used even past its date, and what no pack covers is never taken.
func TestWhatIsTakenIsFirstExpiredFirstOut(t *testing.T) {
	s := stock.Of(three(t), on(t, "2026-10-01"))
	for _, c := range []struct {
		day  string
		want []taking.Want
		is   string
	}{
		{"2026-04-10", []taking.Want{want(6000, "")}, "l2 4000, l1 2000"},
		{"2026-09-01", []taking.Want{want(6000, "")}, "l1 4000, l3 2000"},
		{"2026-04-10", []taking.Want{want(3000, ""), want(3000, "")}, "l2 3000, l2 1000, l1 2000"},
		{"2026-04-10", []taking.Want{want(500, "l3")}, "l3 500"},
		{"2026-09-01", []taking.Want{want(500, "L2")}, "l2 500"},
		{"2026-09-01", []taking.Want{want(9000, "")}, "l1 4000, l3 4000, lacks 1000"},
		{"2026-04-10", []taking.Want{want(4500, "L1")}, "l1 4000, lacks 500"},
		{"2026-04-10", []taking.Want{want(500, "L9")}, "lacks 500"},
	} {
		if got := told(taking.Of(c.want, s.Stock, on(t, c.day))); got != c.is {
			t.Errorf("on %s: %s, want %s", c.day, got, c.is)
		}
	}
	if p, _ := s.Pack("l2"); p.Left != 4000*lot.One {
		t.Errorf("trying took %s", 4000*lot.One-p.Left)
	}
}

func example(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read("example", bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	return plan, shelf
}

// What was weighed stands in the place of what was planned, the last weight where it was weighed again, each batch and jug by itself; a weight of an
// older log, of base and icing together, is divided over both and comes to the same.
func TestWhatWasWeighedIsTaken(t *testing.T) {
	plan, shelf := example(t)
	s := pour.Weigh(plan, shelf)
	both := slices.IndexFunc(s.Base.Oils, func(o pour.OilLine) bool {
		return slices.ContainsFunc(s.Icing.Oils, func(x pour.OilLine) bool { return x.ID == o.ID })
	})
	name := s.Base.Oils[both].Name
	find := func(list []taking.Want, n pour.BatchName) taking.Want {
		for _, w := range list {
			if w.Name == name && w.Batch == n && w.Jug == "" {
				return w
			}
		}
		return taking.Want{}
	}
	planned := taking.Wants(&s, shelf, nil)
	if w := find(planned, pour.Base); !w.Planned || fmt.Sprint(w.Q.V()) != fmt.Sprint(s.Base.Oils[both].WeighG) {
		t.Errorf("without a weight it is %+v, the plan's are %v g", w, s.Base.Oils[both].WeighG)
	}
	list := taking.Wants(&s, shelf, []logbook.Event{
		{Kind: logbook.Weighed, Batch: pour.Base, What: name, Value: 300}, {Kind: logbook.Weighed, Batch: pour.Base, What: name, Value: 301.25, Lot: "A"},
	})
	if w := find(list, pour.Base); w.Planned || w.Q != 3012500 || w.Lot != "A" {
		t.Errorf("weighed twice it is %+v", w)
	}
	if w := find(list, pour.Icing); !w.Planned {
		t.Errorf("the icing's, that was not weighed, is %+v", w)
	}
	list = taking.Wants(&s, shelf, []logbook.Event{{Kind: logbook.Weighed, What: name, Value: 400}})
	a, b := find(list, pour.Base), find(list, pour.Icing)
	if a.Planned || b.Planned || a.Q+b.Q != 400*lot.One || a.Q <= b.Q {
		t.Errorf("both together are %s and %s", a.Q, b.Q)
	}
}

// Taking is done once: what was taken is not taken again, what came later is taken then, and given back all is as it was, in grams and in money.
func TestTakingTwiceTakesOnceAndBackGivesAllBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		today := day.Day(20_000)
		var entries []stock.Entry
		for i := range rapid.IntRange(1, 4).Draw(t, "packs") {
			e := received(fmt.Sprintf("p%d", i), olive(), lot.Quantity(rapid.IntRange(1, 5000).Draw(t, "g")), today-day.Day(rapid.IntRange(1, 90).Draw(t, "ago")), 0)
			if rapid.Bool().Draw(t, "dated") {
				e.Expires = today + day.Day(rapid.IntRange(-30, 300).Draw(t, "expires"))
			}
			entries = append(entries, e)
		}
		wants := []taking.Want{want(lot.Quantity(rapid.IntRange(1, 6000).Draw(t, "want")), ""), want(lot.Quantity(rapid.IntRange(1, 6000).Draw(t, "and")), "")}
		before := stock.Of(entries, today)
		first := taking.Of(wants, before.Stock, today)
		sum := lot.Quantity(0)
		for _, d := range first.Draws {
			sum += d.Part.Q
		}
		for _, l := range first.Lacks {
			sum += l.Q
		}
		if all := wants[0].Q + wants[1].Q; sum != all {
			t.Fatalf("taken and lacking come to %s of %s", sum, all)
		}
		after := append([]stock.Entry(nil), entries...)
		for i, e := range first.Entries("pour", today) {
			e.ID = fmt.Sprintf("t%d", i)
			after = append(after, e)
		}
		s := stock.Of(after, today)
		for _, p := range s.Held[olive()].Packs {
			if p.Left < 0 {
				t.Fatalf("%s is left in %s", p.Left, p.ID)
			}
		}
		rest, more := taking.Rest(wants, s, "pour")
		if again := taking.Of(rest, s.Stock, today); len(again.Draws) > 0 || len(more) > 0 {
			t.Fatalf("taken again: %s and %v too much", told(again), more)
		}
		for i, e := range taking.Back(s, "pour", today, "why") {
			e.ID = fmt.Sprintf("b%d", i)
			after = append(after, e)
		}
		back := stock.Of(after, today)
		lies, lay := back.Held[olive()], before.Held[olive()]
		q, cost := lies.Layers.Total()
		was, costWas := lay.Layers.Total()
		if q != was || cost.Compare(costWas) != 0 || told(taking.Of(wants, back.Stock, today)) != told(first) {
			t.Fatalf("given back there are %s g at %s, before %s at %s", q, cost, was, costWas)
		}
	})
}

// The pour says what the ledger says: an event for every entry that counts, none twice, and one that was given back is taken back.
func TestThePourSaysWhatTheLedgerSays(t *testing.T) {
	entries := append(three(t), stock.Entry{ID: "t1", Kind: stock.Taken, Pack: "l2", Q: 1234500, For: "pour", Day: on(t, "2026-04-10"), Planned: true})
	s := stock.Of(entries, on(t, "2026-10-01"))
	events := taking.Drew([]taking.Want{want(6000, "")}, s, "pour", nil)
	if len(events) != 1 || events[0].Value != 123.45 || events[0].Lot != "L2" || events[0].Pack != "l2" || events[0].Entry != "t1" ||
		events[0].What != "olive oil" || events[0].Batch != pour.Base || events[0].Text != taking.Planned {
		t.Fatalf("it says %+v", events)
	}
	events[0].ID = "e1"
	if again := taking.Drew(nil, s, "pour", events); len(again) != 0 {
		t.Errorf("it says it again: %+v", again)
	}
	s = stock.Of(append(entries, stock.Entry{ID: "t2", Kind: stock.TakenBack, Of: "t1", Day: on(t, "2026-04-11")}), on(t, "2026-10-01"))
	if gone := taking.Drew(nil, s, "pour", events); len(gone) != 1 || gone[0].Kind != logbook.TakenBack || gone[0].What != "e1" {
		t.Errorf("given back it says %+v", gone)
	}
}
