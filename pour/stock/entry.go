// Package stock is the ledger of what came, went and was made of it: a file of dated entries that only grows, what lies on the shelves by it, and
// which lot went where. Only the ledger holds movements.
package stock

import (
	"time"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// Kind is what an entry says.
type Kind string

// The kinds of entry.
const (
	Received  Kind = "received"   // a pack came: everything of it
	Opened    Kind = "opened"     // Pack was opened
	Taken     Kind = "taken"      // Q of Pack went into For, weighed or Planned
	Counted   Kind = "counted"    // Q is left in Pack by weighing or counting it; Text: why it differs
	Lost      Kind = "lost"       // Q of Pack was spilled or thrown away; Text: why
	Made      Kind = "made"       // a pack was made: as Received, its cost what was Taken For it
	Rule      Kind = "rule"       // Formula and Currency of all costs from the first entry on; Text: why
	TakenBack Kind = "taken back" // the entry with the ID in Of does not count
	Offered   Kind = "offered"    // packs of Q of Material can be bought at Price from Supplier: nothing came
	Torn      Kind = "torn"       // Text: an entry that was being written when the machine stopped
)

// kinds lists the kinds of entry.
func kinds() []Kind {
	return []Kind{Received, Opened, Taken, Counted, Lost, Made, Rule, TakenBack, Offered, Torn}
}

// Entry is one line of the ledger. Which fields count depends on the kind.
type Entry struct {
	ID   string
	Kind Kind
	Day  day.Day // when it was

	Pack     string // ID of the pack it is about
	Material lot.Material
	Name     string
	Lot      string
	Supplier string
	Expires  day.Day // 0: none
	Q        lot.Quantity
	Tare     lot.Quantity
	Loss     lot.Quantity // usual, of Q
	Price    money.Amount
	Postage  money.Amount

	For     string // of Taken: id of the pour in the logbook, or of the pack that was made
	Jug     string // of Taken: which jug it went into; empty: the whole batch
	Planned bool   // of Taken: nobody weighed it; what the plan has

	Formula  lot.Formula
	Currency string
	Text     string
	Of       string // of TakenBack
	Corrects string // ID of the entry in whose place this one stands
	Wall     time.Time
}
