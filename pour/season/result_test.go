package season_test

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
)

// went is an event of bars that were sold or, without a price, given.
func went(kind logbook.EventKind, on string, bars int, channel, audience, price, currency string) logbook.Event {
	return logbook.Event{Kind: kind, What: channel, Life: logbook.Life{Day: on, Count: bars, Audience: audience, Price: price, Currency: currency}}
}

// Added up by hand: the town paid 3 × 7.50 + 4 × 8.00 + 1 × 7.75 = 62.25 EUR for 8 bars, 7.78 each, and 2 bars in francs; for 1 nobody said.
func TestADesignIsToldByAudienceAndChannel(t *testing.T) {
	sold, given := logbook.Sold, logbook.Given
	batches := []life.Batch{
		{
			Name: "Rose", State: life.SoldOut, Bars: life.Account{Known: true, Bars: 12, Sold: 9, Given: 2, Kept: 1},
			Events: []logbook.Event{
				went(sold, "2026-12-19", 3, "market", "town", "7.50", "EUR"), went(sold, "2026-12-20 11:00", 4, "market", "Town", "8", "eur"),
				went(sold, "2027-01-02", 2, "shop", "", "9", "CHF"), went(given, "2027-01-05", 2, "", "friends", "", ""),
			},
		},
		{
			Name: " rose", State: life.Labelled, Bars: life.Account{Known: true, Bars: 10, Sold: 2, Seconds: 1, Missing: 1, Left: 6},
			Events: []logbook.Event{went(sold, "2027-02-01", 1, "market", "town", "7.75", "EUR"), went(sold, "2027-02-01", 1, "market", "town", "", "")},
		},
		{Name: "Rose", State: life.Curing},
		{Name: "Rose", State: life.Failed},
		{Name: "Rose", State: life.Trial},
		{Name: "Moss", State: life.Ready, Bars: life.Account{Known: true, Bars: 8, Left: 8}},
	}
	got := season.Results(batches)
	if len(got) != 2 || got[0].Design != "Rose" || got[1].Design != "Moss" {
		t.Fatalf("%+v", got)
	}
	r := got[0]
	if r.Pours != 4 || r.Failed != 1 || r.Unknown != 1 || r.Bars != 22 || r.Sold != 11 || r.Given != 2 || r.Kept != 1 || r.Seconds != 1 || r.Missing != 1 || r.Left != 6 {
		t.Errorf("%+v", r)
	}
	if !slices.Equal(r.SoldOut, []int{17}) || len(r.By) != 3 {
		t.Errorf("sold out after %v, %+v", r.SoldOut, r.By)
	}
	town, shop, friends := r.By[0], r.By[1], r.By[2]
	if town.Audience != "town" || town.Sold != 9 || town.Unpriced != 1 || len(town.Takings) != 1 || !slices.Equal(town.Days, []int{1}) {
		t.Errorf("%+v", town)
	}
	if m := town.Takings[0]; m.Currency != "EUR" || m.Bars != 8 || m.Sum.String() != "62.25" || m.Average().String() != "7.78" {
		t.Errorf("%+v: %s, %s", m, m.Sum, m.Average())
	}
	if friends.Given != 2 || friends.Sold != 0 || friends.Unpriced != 0 || shop.Channel != "shop" || shop.Takings[0].Currency != "CHF" || !slices.Equal(shop.Days, []int{14}) {
		t.Errorf("%+v\n%+v", friends, shop)
	}
}

// Bars = sold + given + kept + seconds + missing + left over all pours that are known, and takings are the sum of the prices, as fractions
// add them.
func TestSumsOfResultsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(what string, high int) int { return rapid.IntRange(0, high).Draw(t, what) }
		var batches []life.Batch
		exact, priced, sold, unpriced := new(big.Rat), 0, 0, 0
		for range n("pours", 5) {
			b := life.Batch{Name: rapid.SampledFrom([]string{"Rose", "Rose, again", "rose, again 2"}).Draw(t, "name"), State: life.Labelled}
			for range n("events", 4) {
				price := ""
				bars := n("bars", 9) + 1
				if sold += bars; rapid.Bool().Draw(t, "priced") {
					price = rapid.StringMatching(`[0-9]{1,3}\.[0-9]{2}`).Draw(t, "price")
					p, _ := new(big.Rat).SetString(price)
					exact.Add(exact, p.Mul(p, big.NewRat(int64(bars), 1)))
					priced += bars
				} else {
					unpriced += bars
				}
				e := went(logbook.Sold, fmt.Sprint(day.Day(20_000+n("day", 300))), bars, rapid.SampledFrom([]string{"market", "shop", ""}).Draw(t, "channel"), "", price, "EUR")
				e.Wall = time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
				b.Events = append(b.Events, e)
				b.Bars.Sold += bars
			}
			b.Bars.Left, b.Bars.Kept = n("left", 9), n("kept", 2)
			b.Bars.Bars, b.Bars.Known = b.Bars.Sold+b.Bars.Left+b.Bars.Kept, true
			batches = append(batches, b)
		}
		all := season.Results(batches)
		if len(batches) == 0 {
			return
		}
		r := all[0]
		if len(all) != 1 || !strings.EqualFold(r.Design, "Rose") {
			t.Fatalf("one design is told as %d, the first as %q", len(all), r.Design)
		}
		if r.Bars != r.Sold+r.Given+r.Kept+r.Seconds+r.Missing+r.Left || r.Sold != sold {
			t.Fatalf("%+v", r)
		}
		sum, bars, without, here := new(big.Rat), 0, 0, 0
		for _, o := range r.By {
			here += o.Sold
			without += o.Unpriced
			for _, k := range o.Takings {
				v, _ := new(big.Rat).SetString(k.Sum.String())
				sum.Add(sum, v)
				bars += k.Bars
			}
		}
		if sum.Cmp(exact) != 0 || bars != priced || without != unpriced || here != sold {
			t.Fatalf("%s for %d bars, want %s for %d; %d without a price", sum, bars, exact, priced, without)
		}
	})
}

// An event whose day cannot be read is of the day it was marked.
func TestADayThatIsNotSaidIsThatOfTheMark(t *testing.T) {
	e := went(logbook.Sold, "", 1, "", "", "", "")
	e.Wall = time.Date(2026, 12, 5, 23, 30, 0, 0, time.FixedZone("", 3600))
	f := e
	f.Wall = f.Wall.AddDate(0, 0, 3)
	r := season.Results([]life.Batch{{Name: "Rose", State: life.SoldOut, Bars: life.Account{Known: true, Bars: 2, Sold: 2}, Events: []logbook.Event{e, f}}})[0]
	if !slices.Equal(r.SoldOut, []int{3}) || strings.TrimSpace(r.By[0].Channel) != "" {
		t.Errorf("%+v", r)
	}
}
