package stock

import (
	"fmt"
	"slices"

	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// count lays one entry onto what lies there.
func (s *State) count(e Entry) {
	switch e.Kind {
	case Rule:
		s.Formula, s.Currency = e.Formula, e.Currency
	case Received, Made:
		s.receive(e)
	case Opened:
		s.change(e, func(p *lot.Pack, _ *lot.Layers) { p.Opened = e.Day })
	case Taken:
		s.change(e, func(p *lot.Pack, l *lot.Layers) {
			p.Taken += e.Q
			s.issue(e, l, e.Q)
		})
	case Lost:
		s.change(e, func(p *lot.Pack, l *lot.Layers) {
			p.Lost += e.Q
			s.issue(e, l, e.Q)
		})
	case Counted:
		s.change(e, func(p *lot.Pack, l *lot.Layers) {
			lost := p.Left - e.Q
			p.Lost += lost
			if lost > 0 {
				s.issue(e, l, lost)
			}
		})
	}
}

// receive lays a pack onto the others of its material.
func (s *State) receive(e Entry) {
	h := s.Held[e.Material]
	h.Layers.Formula = s.Formula
	p := lot.Pack{
		ID: e.Pack, Material: e.Material, Name: e.Name, Lot: e.Lot, Supplier: e.Supplier, Bought: e.Day, Expires: e.Expires,
		Size: e.Q, Tare: e.Tare, Loss: e.Loss, Price: e.Price, Postage: e.Postage, Made: e.Kind == Made, Left: e.Q,
	}
	if p.Made {
		p.Price = s.into(p.ID)
	}
	h.Packs = append(h.Packs, p)
	h.Layers.Receive(lot.Layer{Pack: p.ID, Q: p.Size - p.Loss, Cost: p.Landed()})
	s.Held[e.Material] = h
}

// into is what was taken for a pack that was made.
func (s *State) into(pack string) money.Amount {
	var sum money.Amount
	for _, e := range s.Entries {
		if e.Kind == Taken && e.For == pack {
			sum = sum.Plus(s.Costs[e.ID])
		}
	}
	return sum
}

// change changes the pack an entry is about.
func (s *State) change(e Entry, do func(*lot.Pack, *lot.Layers)) {
	for m, h := range s.Held {
		at := slices.IndexFunc(h.Packs, func(p lot.Pack) bool { return p.ID == e.Pack })
		if at < 0 {
			continue
		}
		p := &h.Packs[at]
		do(p, &h.Layers)
		p.Left = p.Size - p.Taken - p.Lost
		if p.Left < 0 {
			s.doubt(e, fmt.Sprintf("takes %s from %s more than the book has there", -p.Left, p.ID))
		}
		s.Held[m] = h
		return
	}
	s.doubt(e, fmt.Sprintf("is about the pack %q, which never came", e.Pack))
}

// issue takes a quantity out of the layers and notes what it cost.
func (s *State) issue(e Entry, l *lot.Layers, q lot.Quantity) {
	cost, uncovered := l.Issue(q)
	s.Costs[e.ID] = cost
	if uncovered > 0 {
		s.doubt(e, fmt.Sprintf("no cost is known for %s of it", uncovered))
	}
}

func (s *State) doubt(e Entry, text string) { s.Odd = append(s.Odd, Doubt{e.ID, text}) }
