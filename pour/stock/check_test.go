package stock_test

import (
	"errors"
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

func now() time.Time { return time.Date(2026, 11, 28, 10, 0, 0, 0, time.UTC) }

func olive() lot.Material { return lot.Material{Kind: lot.Oil, ID: "olive"} }

// came is a pack of 5000 g of olive oil, of which 100 usually stay in the tub.
func came(t testing.TB, id, on string) stock.Entry {
	return stock.Entry{ID: "r-" + id, Kind: stock.Received, Pack: id, Material: olive(), Q: 5000 * lot.One, Loss: 100 * lot.One, Price: price(t, "98"), Day: at(t, on)}
}

func write(l stock.Ledger, entries ...stock.Entry) ([]stock.Entry, error) {
	return l.Decide(now(), "aa", func(stock.State) ([]stock.Entry, error) { return entries, nil })
}

// stocked is a ledger with a rule, two packs of oil, one of boxes, a blend and what was taken.
func stocked(t testing.TB) stock.Ledger {
	t.Helper()
	l := stock.New(t.TempDir())
	_, err := write(
		l, stock.Entry{ID: "rule", Kind: stock.Rule, Formula: lot.FIFO, Currency: "EUR", Day: at(t, "2026-01-01")},
		came(t, "olive-1", "2026-03-03"), came(t, "olive-2", "2026-03-20"),
		stock.Entry{ID: "r-box", Kind: stock.Received, Pack: "box-1", Material: lot.Material{Kind: lot.Packaging, ID: "box"}, Q: 100 * lot.One, Price: price(t, "36"), Day: at(t, "2026-03-03")},
		stock.Entry{ID: "into", Kind: stock.Taken, Pack: "olive-1", For: "mix-1", Q: 1000 * lot.One, Day: at(t, "2026-04-01")},
		stock.Entry{ID: "made", Kind: stock.Made, Pack: "mix-1", Material: lot.Material{Kind: lot.Blend, ID: "mix"}, Q: 1000 * lot.One, Day: at(t, "2026-04-01")},
		stock.Entry{ID: "took", Kind: stock.Taken, Pack: "mix-1", For: "meadow", Q: 500 * lot.One, Day: at(t, "2026-04-02")},
	)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// What cannot be is refused with how to put it right, and the file stays as it was to the byte.
func TestWhatCannotBeIsRefused(t *testing.T) {
	box := lot.Material{Kind: lot.Packaging, ID: "box"}
	for want, e := range map[string]stock.Entry{
		`on 2026-11-28: kind = "resieved": is not a word this key knows; write one of received`: {Kind: "resieved"},
		"pack: is missing":                                               {Kind: stock.Opened},
		"quantity: is missing":                                           {Kind: stock.Taken, Pack: "olive-1", For: "meadow"},
		"for: is missing":                                                {Kind: stock.Taken, Pack: "olive-1", Q: 1},
		"text: is missing":                                               {Kind: stock.Lost, Pack: "olive-1", Q: 1},
		"quantity = -0.0001: is no quantity":                             {Kind: stock.Taken, Pack: "olive-1", Q: -1, For: "meadow"},
		"is no number of pieces":                                         {Kind: stock.Received, Pack: "box-2", Material: box, Q: 5},
		"write whole pieces":                                             {Kind: stock.Taken, Pack: "box-1", For: "meadow", Q: 5},
		"usual_loss = 2: is all of it":                                   {Kind: stock.Received, Pack: "olive-3", Material: olive(), Q: 2 * lot.One, Loss: 2 * lot.One},
		`about the pack "olive-9", which never came; write first`:        {Kind: stock.Opened, Pack: "olive-9"},
		`brings the pack "olive-1", which came on 2026-03-03 already`:    {Kind: stock.Received, Pack: "olive-1", Material: olive(), Q: 1},
		"takes olive-1 for itself; name what it went into":               {Kind: stock.Taken, Pack: "olive-1", Q: 1, For: "olive-1"},
		"takes mix-1 for itself":                                         {Kind: stock.Taken, Pack: "mix-1", Q: 1, For: "mix-1"},
		"without a reason; write in its text why":                        {Kind: stock.Rule, Formula: lot.Average},
		"is in CHF and the ledger in EUR, and nothing is converted":      {Kind: stock.Rule, Currency: "CHF"},
		"write what was paid in EUR":                                     {Kind: stock.Received, Pack: "olive-3", Material: olive(), Q: 1, Currency: "USD"},
		"is no code of a currency; write its three capital letters":      {Kind: stock.Rule, Currency: "Euro"},
		`takes back "s9", and no entry has that id`:                      {Kind: stock.TakenBack, Of: "s9"},
		`corrects "s9", and no entry has that id`:                        {Kind: stock.Opened, Pack: "olive-1", Corrects: "s9"},
		`is "opened" and corrects one that is "taken"`:                   {Kind: stock.Opened, Pack: "olive-1", Corrects: "took"},
		`the entry "taken" of olive-1 on 2026-04-01: it is about`:        {Kind: stock.TakenBack, Of: "r-olive-1"},
		"none that is paid: what is made costs what was taken for it":    {Kind: stock.Made, Pack: "mix-2", Material: lot.Material{Kind: lot.Blend, ID: "mix"}, Q: 1, Postage: price(t, "1")},
		`write the entry "took": another has that id; leave the id empt`: {ID: "took", Kind: stock.Opened, Pack: "olive-2"},
	} {
		l := stocked(t)
		before, _ := os.ReadFile(l.Path())
		_, err := write(l, e)
		after, _ := os.ReadFile(l.Path())
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v\n got  %v\n want %s", e, err, want)
		}
		if string(before) != string(after) {
			t.Errorf("%+v was refused, and the file changed", e)
		}
	}
}

// A pack that was made of another does not go back into it.
func TestPacksAreNotMadeOfEachOther(t *testing.T) {
	l := stocked(t)
	mix := lot.Material{Kind: lot.Blend, ID: "mix"}
	_, err := write(l, stock.Entry{Kind: stock.Taken, Pack: "mix-1", Q: 1, For: "mix-2"}, stock.Entry{Kind: stock.Made, Pack: "mix-2", Material: mix, Q: 1})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := write(l, stock.Entry{Kind: stock.Taken, Pack: "mix-2", Q: 1, For: "mix-1"}); err == nil || !strings.Contains(err.Error(), "mix-1") {
		t.Errorf("a ring of packs: %v", err)
	}
}

// What can hardly be is written, and said before and after.
func TestWhatCanHardlyBeIsSaid(t *testing.T) {
	for want, e := range map[string]stock.Entry{
		"leaves -500 in mix-1: more is gone than the book has there": {Kind: stock.Taken, Pack: "mix-1", Q: 1000 * lot.One, For: "meadow"},
		"came on 2026-03-20":         {Kind: stock.Opened, Pack: "olive-2", Day: at(t, "2026-03-19")},
		"which is yet to come":       {Kind: stock.Opened, Pack: "olive-2", Day: at(t, "2027-03-19")},
		"after its date 2026-01-01":  {Kind: stock.Received, Pack: "olive-3", Material: olive(), Q: 1, Expires: at(t, "2026-01-01")},
		"finds 9000 more in olive-2": {Kind: stock.Counted, Pack: "olive-2", Q: 14000 * lot.One, Text: "weighed"},
		"which was bought":           {Kind: stock.Taken, Pack: "box-1", Q: lot.One, For: "olive-1"},
	} {
		l := stocked(t)
		s, err := l.State(day.Of(now()))
		if err != nil || len(s.Odd) > 0 {
			t.Fatal(err, s.Odd)
		}
		doubts, err := s.Check(e)
		if err != nil || len(doubts) != 1 || !strings.Contains(doubts[0].Text, want) {
			t.Errorf("%+v\n got  %+v, %v\n want %s", e, doubts, err, want)
		}
		if _, err := write(l, e); err != nil {
			t.Errorf("%+v was refused: %v", e, err)
		}
		if s, _ := l.State(day.Of(now())); len(s.Odd) != 1 || !strings.Contains(s.Odd[0].Text, want) || s.Odd[0].Never {
			t.Errorf("%+v is not said afterwards: %+v", e, s.Odd)
		}
	}
}

// A pack past its date is taken only with a word.
func TestTakingWhatIsPastItsDateIsSaid(t *testing.T) {
	old := came(t, "olive-1", "2026-03-03")
	old.Expires = at(t, "2026-03-31")
	for on, odd := range map[string]int{"2026-03-31": 0, "2026-04-01": 1} {
		s := stock.Of([]stock.Entry{old, {ID: "2", Kind: stock.Taken, Pack: "olive-1", Q: 1, For: "meadow", Day: at(t, on)}}, at(t, "2026-11-28"))
		if len(s.Odd) != odd {
			t.Errorf("on %s: %+v", on, s.Odd)
		}
	}
}

// With a reason the rule changes, and all costs with it.
func TestTheRuleChangesWithAReason(t *testing.T) {
	l := stocked(t)
	if _, err := write(l, stock.Entry{Kind: stock.Rule, Formula: lot.Average, Text: "the accountant wants it"}); err != nil {
		t.Fatal(err)
	}
	s, err := l.State(day.Of(now()))
	if err != nil || s.Formula != lot.Average || s.Currency != "EUR" {
		t.Errorf("%s %s %v", s.Formula, s.Currency, err)
	}
}

// The refusal of who asks for entries comes back as it is.
func TestARefusalComesBackAsItIs(t *testing.T) {
	l, no := stocked(t), errors.New("no")
	if _, err := l.Decide(now(), "aa", func(stock.State) ([]stock.Entry, error) { return nil, no }); !errors.Is(err, no) {
		t.Error(err)
	}
}
