package stocktest_test

import (
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/stock/stocktest"
)

// small is a size whose years are drawn in a moment.
func small() stocktest.Size { return stocktest.Size{Batches: 12, Materials: 12, Each: 6} }

// What lies on the shelves by the ledger is what the business has by its own plain account, and nothing went below nothing.
func TestALedgerOfYearsHoldsWhatTheBusinessHas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := stocktest.Draw(stocktest.Seeded(rapid.Uint64().Draw(t, "seed")), small())
		s := b.State()
		for id, want := range b.Told.Left {
			if p, ok := s.Pack(id); !ok || p.Left != want || p.Left < 0 {
				t.Fatalf("%s has %s left (%t), want %s", id, p.Left, ok, want)
			}
		}
		for _, x := range b.Batches() {
			if x.Bars.Sold != b.Told.Sold[x.ID] || x.Bars.Over != 0 {
				t.Fatalf("of %s %d bars are sold, want %d; over %d", x.ID, x.Bars.Sold, b.Told.Sold[x.ID], x.Bars.Over)
			}
		}
	})
}
