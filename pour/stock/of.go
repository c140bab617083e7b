package stock

import (
	"fmt"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// State is what the entries of a ledger come to on a day.
type State struct {
	lot.Stock
	Entries []Entry                 // those that count, in the order of [Standing]
	Costs   map[string]money.Amount // what each entry of Taken, Counted and Lost took out, by its ID; below 0: given back
	Shrunk  map[string]Shrink       // what each entry of Counted and Lost came to, by its ID
	Odd     []Doubt                 // what can hardly be, and what cannot

	all   []Entry // as the file has them
	packs map[string]*tub
	into  map[string]money.Amount // what was taken for something cost so far, by its name
	from  map[string][]string     // the packs it was taken of
}

// Shrink is what was lost of a pack, below 0 where it was found again.
type Shrink struct {
	Usual  lot.Quantity // within the usual loss of the pack, whose cost is spread over the rest: it costs nothing now
	Beyond lot.Quantity // what is written off (IAS 2.16(a), abnormal waste; read 2nd-hand)
}

// Doubt is something about the ledger that can hardly be, or cannot: said, never mended silently.
type Doubt struct {
	Entry string // its ID
	Text  string
	Mend  string // how to put it right; empty: nothing can be said
	Never bool   // it cannot be: [Ledger.Decide] writes no entry that brings it about; in a file mended by hand it is said, and the entry does not count
}

// Of works a ledger out.
func Of(entries []Entry, today day.Day) State {
	s := State{
		Stock: lot.Stock{Today: today, Formula: lot.FIFO, Held: map[lot.Material]lot.Holding{}},
		Costs: map[string]money.Amount{}, Shrunk: map[string]Shrink{},
		packs: map[string]*tub{}, into: map[string]money.Amount{}, from: map[string][]string{},
	}
	s.all = entries
	s.links(entries)
	s.Entries = Standing(entries)
	s.rule()
	held := map[lot.Material]*shelf{}
	for _, e := range s.Entries {
		s.count(e, held)
	}
	for m, h := range held {
		packs := make([]lot.Pack, len(h.tubs))
		for i, t := range h.tubs {
			packs[i] = t.Pack
		}
		s.Held[m] = lot.Holding{Packs: lot.InOrder(packs), Layers: h.layers}
	}
	return s
}

// shelf is what lies there of one material while it is counted.
type shelf struct {
	tubs   []*tub
	layers lot.Layers
}

// Pack finds a pack by its ID.
func (s *State) Pack(id string) (lot.Pack, bool) {
	if t, ok := s.packs[id]; ok {
		return t.Pack, true
	}
	return lot.Pack{}, false
}

// rule finds the formula and the currency, which are the same for every day.
func (s *State) rule() {
	formula := lot.Formula("")
	for _, e := range s.Entries {
		if e.Kind == Rule && e.Formula != "" {
			if formula != "" && e.Formula != formula && e.Text == "" {
				s.never(e, fmt.Sprintf("changes the rule of costs from %s to %s without a reason", formula, e.Formula), "write in its text why; all costs are reckoned anew by it")
				continue
			}
			formula, s.Formula = e.Formula, e.Formula
		}
		switch {
		case e.Currency == "" || e.Currency == s.Currency:
		case s.Currency == "":
			s.Currency = e.Currency
		default:
			s.never(e, fmt.Sprintf("is in %s and the ledger in %s, and nothing is converted", e.Currency, s.Currency),
				fmt.Sprintf("write what was paid in %s; if the ledger's currency is wrong, correct the entry that names it", s.Currency))
		}
	}
}

// links looks for entries that are about others which are not there.
func (s *State) links(entries []Entry) {
	var kinds map[string]Kind
	kindOf := func(id string) (Kind, bool) {
		if kinds == nil { // most ledgers correct little
			kinds = make(map[string]Kind, len(entries))
			for _, e := range entries {
				kinds[e.ID] = e.Kind
			}
		}
		k, ok := kinds[id]
		return k, ok
	}
	back := takenBack(entries)
	for _, e := range entries {
		if e.Kind == Torn && !back[e.ID] {
			s.doubt(e, "an entry was being written when the machine stopped: "+e.Text, "write it again, then take this one back")
		}
		if e.Kind == TakenBack {
			if k, ok := kindOf(e.Of); !ok {
				s.never(e, fmt.Sprintf("takes back %q, and no entry has that id", e.Of), "look the id up in the list of entries")
			} else if k == TakenBack && e.Of == e.ID {
				s.never(e, "takes itself back", "name the entry that does not count")
			}
		}
		if e.Corrects == "" || back[e.ID] {
			continue
		}
		switch k, ok := kindOf(e.Corrects); {
		case !ok:
			s.never(e, fmt.Sprintf("corrects %q, and no entry has that id", e.Corrects), "look the id up in the list of entries")
		case k != e.Kind:
			s.never(e, fmt.Sprintf("is %q and corrects one that is %q", e.Kind, k), "take that one back and write a new one")
		case back[e.Corrects]:
			s.never(e, fmt.Sprintf("corrects %s, which was taken back", e.Corrects), "write it as a new entry")
		}
	}
}

func (s *State) doubt(e Entry, text, mend string) {
	s.Odd = append(s.Odd, Doubt{Entry: e.ID, Text: text, Mend: mend})
}

func (s *State) never(e Entry, text, mend string) {
	s.Odd = append(s.Odd, Doubt{Entry: e.ID, Text: text, Mend: mend, Never: true})
}
