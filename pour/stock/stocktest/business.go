// Package stocktest draws years of a small business for tests and benchmarks: suppliers, receipts, blends, batches, counts, corrections and sales, as
// the entries of a ledger and the pours of a logbook, beside a plain account of its own of what went where.
package stocktest

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

// Dice gives a number from 0 to n-1.
type Dice func(n int) int

// Seeded are dice that fall alike for a seed.
func Seeded(seed uint64) Dice { return rand.New(rand.NewPCG(seed, seed)).IntN }

// Size is how large a business is.
type Size struct {
	Batches   int
	Materials int  // that it buys, packaging among them
	Each      int  // materials that go into a batch
	Clean     bool // without what can hardly be: lots the ledger has no entry of, packs without a number
}

// TenYears is the size of ten years of a business that pours four times a week: 2000 batches, 60 000 movements.
func TenYears() Size { return Size{Batches: 2000, Materials: 40, Each: 19, Clean: true} }

// Business is what was drawn.
type Business struct {
	Entries []stock.Entry
	Pours   []logbook.Pour
	First   day.Day
	Today   day.Day
	Told    Told
}

// Told is what really happened, kept beside the ledger while it was drawn.
type Told struct {
	Left map[string]lot.Quantity    // in every pack
	Into map[string]map[string]bool // of every pack: the batches and packs it went into at once
	Sold map[string]int             // bars of every batch
}

// Batches are the pours as the logbook tells them on the last day.
func (b Business) Batches() []life.Batch {
	out := make([]life.Batch, len(b.Pours))
	for i, p := range b.Pours {
		out[i] = life.Of(p, pour.Shelf{}, pour.Hand{}, b.Today)
	}
	return out
}

// State is the ledger worked out on the last day.
func (b Business) State() stock.State { return stock.Of(b.Entries, b.Today) }

// Draw draws a business.
func Draw(dice Dice, size Size) Business {
	h := &house{dice: dice, size: size, packs: map[lot.Material][]*pack{}, day: day.Of(time.Date(2016, 1, 4, 0, 0, 0, 0, time.UTC))}
	h.told = Told{map[string]lot.Quantity{}, map[string]map[string]bool{}, map[string]int{}}
	h.out.First = h.day
	h.add(stock.Entry{Kind: stock.Rule, Formula: []lot.Formula{lot.FIFO, lot.Average}[dice(2)], Currency: "EUR"})
	for range size.Batches {
		h.day += day.Day(dice(4))
		h.week()
	}
	h.out.Today = h.day + 30
	for _, list := range h.packs {
		for _, p := range list {
			h.told.Left[p.id] = p.left
		}
	}
	h.out.Told = h.told
	return h.out
}

// house is a business being drawn.
type house struct {
	dice  Dice
	size  Size
	day   day.Day
	packs map[lot.Material][]*pack
	all   []*pack
	out   Business
	told  Told
}

// pack is a pack as its maker knows it.
type pack struct {
	id      string
	lot     string
	m       lot.Material
	expires day.Day
	bought  day.Day
	left    lot.Quantity
	opened  bool
}

// add writes an entry.
func (h *house) add(e stock.Entry) stock.Entry {
	e.ID = fmt.Sprintf("s%d", len(h.out.Entries)+1)
	if e.Day == 0 {
		e.Day = h.day
	}
	e.Wall = e.Day.At(10, 0, time.UTC)
	h.out.Entries = append(h.out.Entries, e)
	return e
}

// one says yes once in n times.
func (h *house) one(n int) bool { return h.dice(n) == 0 }

// errNoPlan stands where a pour would have its plan: none is drawn.
var errNoPlan = errors.New("no plan is drawn")
