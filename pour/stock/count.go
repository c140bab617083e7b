package stock

import (
	"fmt"

	"pourbench/pour/lot"
)

// count lays one entry onto what lies there.
func (s *State) count(e Entry, held map[lot.Material]*shelf) {
	if e.Kind.comes() {
		s.receive(e, held)
		return
	}
	if e.Kind == Rule || e.Kind == Offered {
		return
	}
	t, ok := s.packs[e.Pack]
	if !ok {
		s.never(e, fmt.Sprintf("is about the pack %q, which never came", e.Pack), "write first that it came, or look its name up in the list of packs; take back what is about a pack before the pack itself")
		return
	}
	if t.Material.Kind.Counted() && e.Q%lot.One != 0 {
		s.never(e, fmt.Sprintf("is about %s pieces of %s", e.Q, t.ID), "write whole pieces")
		return
	}
	s.date(e, t)
	l := &held[t.Material].layers
	switch e.Kind {
	case Opened:
		if t.Opened != 0 {
			s.doubt(e, fmt.Sprintf("opens %s, which was open since %s", t.ID, t.Opened), "")
			break
		}
		t.Opened = e.Day
	case Taken:
		s.take(e, t, l)
	case Lost:
		s.Costs[e.ID], s.Shrunk[e.ID] = t.lose(e.Q, l)
		s.below(e, t)
	case Counted:
		s.Costs[e.ID], s.Shrunk[e.ID] = t.count(e.Q, l)
		if t.Lost < 0 {
			s.doubt(e, fmt.Sprintf("finds %s more in %s than ever came, which has no cost", -t.Lost, t.ID), "look whether all receipts and the tare are right")
		}
	}
}

// date says what the day of an entry has against it.
func (s *State) date(e Entry, t *tub) {
	if e.Day < t.Bought {
		s.doubt(e, fmt.Sprintf("is of %s, and %s came on %s", e.Day, t.ID, t.Bought), "correct the day that is wrong")
	}
	s.notYet(e)
}

func (s *State) notYet(e Entry) {
	if e.Day > s.Today {
		s.doubt(e, fmt.Sprintf("is of %s, which is yet to come", e.Day), "correct its day")
	}
}

// receive lays a pack onto the others of its material.
func (s *State) receive(e Entry, held map[lot.Material]*shelf) {
	if first, twice := s.packs[e.Pack]; twice {
		s.never(e, fmt.Sprintf("brings the pack %q, which came on %s already", e.Pack, first.Bought), "give it another name, or write that it corrects the first")
		return
	}
	h, ok := held[e.Material]
	if !ok {
		h = &shelf{layers: lot.Layers{Formula: s.Formula}}
		held[e.Material] = h
	}
	t := newTub(lot.Pack{
		ID: e.Pack, Material: e.Material, Name: e.Name, Lot: e.Lot, Supplier: e.Supplier, Bought: e.Day, Expires: e.Expires,
		Size: e.Q, Tare: e.Tare, Loss: e.Loss, Price: e.Price, Postage: e.Postage, Made: e.Kind == Made, Left: e.Q,
	})
	if t.Made {
		t.Price = s.into[e.Pack]
	}
	s.packs[t.ID] = t
	h.tubs = append(h.tubs, t)
	h.layers.Receive(lot.Layer{Pack: t.ID, Q: t.usable(), Cost: t.Landed()})
	if e.Expires != 0 && e.Expires < e.Day {
		s.doubt(e, fmt.Sprintf("brings %s on %s, after its date %s", t.ID, e.Day, e.Expires), "correct the day that is wrong")
	}
	s.notYet(e)
}

// take takes a quantity of a pack for something.
func (s *State) take(e Entry, t *tub, l *lot.Layers) {
	if e.For == e.Pack {
		s.never(e, fmt.Sprintf("takes %s for itself", t.ID), "name what it went into")
		return
	}
	if p, made := s.packs[e.For]; made {
		if s.madeOf(e.For, e.Pack) {
			s.never(e, fmt.Sprintf("takes %s for %s, of which it was made", t.ID, e.For), "name what it went into")
			return
		}
		s.doubt(e, fmt.Sprintf("takes %s for %s, which %s", t.ID, e.For, map[bool]string{true: "was whole already", false: "was bought"}[p.Made]), "name what it went into")
	}
	if t.Blocked(e.Day) {
		s.doubt(e, fmt.Sprintf("takes %s, which was past its date since %s", t.ID, t.Expires+1), "")
	}
	cost := t.take(e.Q, l)
	s.Costs[e.ID] = cost
	s.into[e.For] = s.into[e.For].Plus(cost)
	s.from[e.For] = append(s.from[e.For], e.Pack)
	s.below(e, t)
}

// madeOf reports whether something of one pack went into another, at once or by way of others.
func (s *State) madeOf(pack, into string) bool {
	seen := map[string]bool{}
	var look func(into string) bool
	look = func(into string) bool {
		for _, from := range s.from[into] {
			if from == pack {
				return true
			}
			if !seen[from] {
				seen[from] = true
				if look(from) {
					return true
				}
			}
		}
		return false
	}
	return look(into)
}

// below says that more is gone than there was.
func (s *State) below(e Entry, t *tub) {
	if t.Left < 0 {
		s.doubt(e, fmt.Sprintf("leaves %s in %s: more is gone than the book has there, and no cost is known for what is beyond", t.Left, t.ID), "count the pack, or correct what is wrong")
	}
}
