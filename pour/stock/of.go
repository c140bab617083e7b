package stock

import (
	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// State is what the entries of a ledger come to on a day.
type State struct {
	lot.Stock
	Entries []Entry                 // those that count, in the order of their days
	Costs   map[string]money.Amount // what each entry of Taken, Counted and Lost took out, by its ID
	Odd     []Doubt                 // what can hardly be
}

// Doubt is something about the ledger that can hardly be: said, never mended silently.
type Doubt struct {
	Entry string // its ID
	Text  string
}

// Of works a ledger out.
func Of(entries []Entry, today day.Day) State {
	s := State{Stock: lot.Stock{Today: today, Formula: lot.FIFO, Held: map[lot.Material]lot.Holding{}}, Costs: map[string]money.Amount{}}
	s.Entries = Standing(entries)
	for _, e := range s.Entries {
		s.count(e)
	}
	for m, h := range s.Held {
		h.Packs = lot.InOrder(h.Packs)
		s.Held[m] = h
	}
	return s
}

// Pack finds a pack by its ID.
func (s *State) Pack(id string) (lot.Pack, bool) {
	for _, h := range s.Held {
		for _, p := range h.Packs {
			if p.ID == id {
				return p, true
			}
		}
	}
	return lot.Pack{}, false
}
