package desk_test

import (
	"errors"
	"strings"
	"testing"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/pour/stock/invoice"
)

const today = day.Day(20_000)

func price(t *testing.T, s string) money.Amount {
	t.Helper()
	a, err := money.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// after is the stock after some more entries, each with a name.
func after(s stock.State, d desk.Deed) stock.State {
	all := append([]stock.Entry(nil), s.Entries...)
	for _, e := range d.Entries {
		e.ID = "e" + string(rune('a'+len(all)))
		if e.Day == 0 {
			e.Day = today
		}
		all = append(all, e)
	}
	return stock.Of(all, today)
}

func olive(t *testing.T) invoice.Item {
	t.Helper()
	return invoice.Item{
		Material: lot.Material{Kind: lot.Oil, ID: "olive"}, Name: "olive oil", Packs: 2, Each: 5000 * lot.One, Price: price(t, "77.01"), Lot: "A12", Bought: today - 9,
		Tare: 350 * lot.One, Loss: 100 * lot.One, Currency: "EUR",
	}
}

func TestPacksGetNamesOfTheirOwnAndTheSameIsAskedFor(t *testing.T) {
	d, err := desk.Receive(stock.Of(nil, today), []invoice.Item{olive(t)}, false)
	if err != nil || len(d.Entries) != 3 || d.Entries[0].Kind != stock.Rule || d.Entries[0].Currency != "EUR" {
		t.Fatalf("%+v %v", d, err)
	}
	if a, b := d.Entries[1], d.Entries[2]; a.Pack != "olive-1" || b.Pack != "olive-2" || a.Price.Plus(b.Price).String() != "77.01" {
		t.Errorf("the packs are %+v and %+v", a, b)
	}
	s := after(stock.Of(nil, today), d)
	if _, err := desk.Receive(s, []invoice.Item{olive(t)}, false); !errors.Is(err, desk.ErrReceived) {
		t.Errorf("the same again: %v", err)
	}
	again, err := desk.Receive(s, []invoice.Item{olive(t)}, true)
	if err != nil || len(again.Entries) != 2 || again.Entries[0].Pack != "olive-3" {
		t.Errorf("it came again as %+v %v", again.Entries, err)
	}
	other := olive(t)
	other.Currency, other.Lot = "CHF", "B"
	if _, err := desk.Receive(s, []invoice.Item{other}, false); err == nil || !strings.Contains(err.Error(), "nothing is converted") {
		t.Errorf("another currency: %v", err)
	}
}

// By hand: 5000 g by the book, 5300 g with a tub of 350 g are 4950 g, 50 g less, within the usual 100 g; then 4910 g with the tub taken off, 40 g less
// and 90 in all; then 4880 g, 120 in all, which is no usual loss.
func TestACountIsGrossLessTareAndWhatIsNotUsualWantsAReason(t *testing.T) {
	d, err := desk.Receive(stock.Of(nil, today), []invoice.Item{olive(t)}, false)
	if err != nil {
		t.Fatal(err)
	}
	s, none := after(stock.Of(nil, today), d), lot.Quantity(0)
	for _, c := range []struct {
		found lot.Quantity
		tare  *lot.Quantity
		why   string
		left  lot.Quantity
		says  string // of the entry, or of the refusal
	}{
		{5300 * lot.One, nil, "", 4950 * lot.One, "usual loss"},
		{4910 * lot.One, &none, "", 4910 * lot.One, "usual loss"},
		{4880 * lot.One, &none, "", 0, "no usual loss"},
		{4880 * lot.One, &none, "spilled", 4880 * lot.One, "spilled"},
		{4900 * lot.One, &none, "", 0, "20 g more"},
		{5001 * lot.One, &none, "found", 0, "never held more"},
		{349 * lot.One, nil, "", 0, "weigh again"},
	} {
		d, err := desk.Count(s, desk.Weighing{Pack: "olive-1", Found: c.found, Tare: c.tare, Why: c.why, On: today})
		if c.left == 0 {
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%s: %v, want %q", c.found, err, c.says)
			}
			continue
		}
		if err != nil || d.Entries[0].Q != c.left || d.Entries[0].Text != c.says {
			t.Errorf("%s: %+v %v, want %s left, %s", c.found, d.Entries, err, c.left, c.says)
			continue
		}
		s = after(s, d)
		if p, _ := s.Pack("olive-1"); p.Left != c.left {
			t.Errorf("%s are left by the book, want %s", p.Left, c.left)
		}
	}
}

func TestWhatOthersAreAboutStaysAndWhatIsTakenBackIsGone(t *testing.T) {
	d, err := desk.Receive(stock.Of(nil, today), []invoice.Item{olive(t)}, false)
	if err != nil {
		t.Fatal(err)
	}
	s := after(stock.Of(nil, today), d)
	came := "eb" // olive-1: the rule of the currency is written before it
	open, err := desk.Open(s, "olive-1", today)
	if err != nil {
		t.Fatal(err)
	}
	opened := after(s, open)
	if _, err := desk.TakeBack(opened, came, ""); err == nil || !strings.Contains(err.Error(), "take those back first") {
		t.Errorf("a pack that was opened is taken back: %v", err)
	}
	back, err := desk.TakeBack(s, came, "not mine")
	if err != nil {
		t.Fatal(err)
	}
	gone := after(s, back)
	if _, there := gone.Pack("olive-1"); there {
		t.Error("it is there all the same")
	}
	if _, err := desk.Open(s, "olive-1", today-10); err == nil || !strings.Contains(err.Error(), "came on") {
		t.Errorf("opened before it came: %v", err)
	}
	if _, err := desk.Lose(s, "olive-1", 5001*lot.One, "spilled", today); err == nil || !strings.Contains(err.Error(), "count it first") {
		t.Errorf("more is lost than there was: %v", err)
	}
	right, err := desk.Correct(s, came, []string{"price=40", "quantity=4.9 kg"})
	if err != nil || right.Entries[0].Corrects != came || right.Entries[0].Q != 4900*lot.One || right.Entries[0].Price.String() != "40.00" && right.Entries[0].Price.String() != "40" {
		t.Errorf("corrected: %+v %v", right.Entries, err)
	}
	for pair, says := range map[string]string{"pric=4": "the keys are", "text=x": "the keys are", "quantity=0": "take the entry back", "day=2999-01-01": "still to come", "loss=5 kg": "is all of it", "expires=2000-01-01": "before it came", "price=x": "price"} {
		if _, err := desk.Correct(s, came, []string{pair}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want %q", pair, err, says)
		}
	}
}
