package lot

import (
	"pourbench/pour/day"
	"pourbench/pour/money"
)

// Stock is what lies there on a day. The zero value is nothing: no ledger is kept.
type Stock struct {
	Today    day.Day
	Currency string  // of all prices in it: nothing is converted
	Formula  Formula // of all costs
	Held     map[Material]Holding
}

// Holding is what lies there of one material.
type Holding struct {
	Packs    []Pack   // every pack ever received, in the order in which they are picked
	Layers   Layers   // what it cost
	Reserved Quantity // by plans that are to be poured
}

// Left is what lies there by the book, what is past its date apart.
func (h Holding) Left(on day.Day) (usable, blocked Quantity) {
	for _, p := range h.Packs {
		if p.Blocked(on) {
			blocked += max(p.Left, 0)
		} else {
			usable += max(p.Left, 0)
		}
	}
	return usable, blocked
}

// Cost is what so much of a material would cost if it were taken now. Uncovered is what of it no pack covers.
func (s Stock) Cost(m Material, q Quantity) (cost money.Amount, uncovered Quantity) {
	h, ok := s.Held[m]
	if !ok {
		return money.Amount{}, q
	}
	l := h.Layers.Clone()
	return l.Issue(q)
}
