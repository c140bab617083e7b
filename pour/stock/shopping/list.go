package shopping

import (
	"cmp"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// Row is one material of a shopping list.
type Row struct {
	Material lot.Material
	Name     string
	For      []string     // names of the pours that want it
	Need     lot.Quantity // by the chosen pours
	Usable   lot.Quantity // lies there and is not past its date today
	Blocked  lot.Quantity // lies there past its date
	Reserved lot.Quantity // by other pours
	Short    lot.Quantity // of the need, what neither lies there nor is free
	Kept     bool         // there was ever a pack of it
	Offers   []Offer      // the packs it is known in
	Choice   Choice       // what to buy of them; where Chosen
	Chosen   bool
}

// Made reports whether the maker makes it herself: a blend, a lye or embeds that are not known to be bought.
func (r Row) Made() bool {
	return len(r.Offers) == 0 && (r.Material.Kind == lot.Blend || r.Material.Kind == lot.Embed || r.Material.ID == lot.StockLye)
}

// List is what is to be bought.
type List struct {
	Today    day.Day
	Currency string
	Rule     Rule
	Pours    []Pour // that it is for
	Rows     []Row  // by kind and name
	Cost     money.Amount
	Unpriced int // of the rows with something to buy, those of which not all has a price
}

// Of is what some pours want that does not lie there, in packs. What is usable and not reserved by others comes first, each pour picking on its day as
// it would be picked: what is past its date by then does not count. Water that was never bought comes from the tap.
func Of(s lot.Stock, typed map[lot.Material][]Offer, chosen, others []Pour, rule Rule) List {
	l := List{Today: s.Today, Currency: s.Currency, Rule: rule, Pours: inOrder(chosen, s.Today)}
	shelf := newLarder(s)
	for _, p := range inOrder(others, s.Today) {
		shelf.pour(p)
	}
	short := map[lot.Material]lot.Quantity{}
	for _, p := range l.Pours {
		_, lacks := shelf.pour(p)
		for m, q := range lacks {
			short[m] += q
		}
	}
	reserved := totals(others)
	for _, row := range l.wanted() {
		h := s.Held[row.Material]
		row.Kept = len(h.Packs) > 0
		if row.Material == tap() && !row.Kept {
			continue
		}
		row.Usable, row.Blocked = h.Left(s.Today)
		row.Reserved, row.Short = reserved[row.Material], short[row.Material]
		row.Offers = Offers(h.Packs, typed[row.Material])
		if row.Short > 0 {
			row.Choice, row.Chosen = Choose(row.Short, row.Offers, rule)
			l.Cost = l.Cost.Plus(row.Choice.Cost)
			if !row.Made() && !(row.Chosen && row.Choice.Priced) {
				l.Unpriced++
			}
		}
		l.Rows = append(l.Rows, row)
	}
	return l
}

// wanted are the rows with what the chosen pours want.
func (l *List) wanted() []Row {
	var out []Row
	for _, p := range l.Pours {
		for _, n := range p.Needs {
			at := slices.IndexFunc(out, func(r Row) bool { return r.Material == n.Material })
			if at < 0 {
				at = len(out)
				out = append(out, Row{Material: n.Material, Name: cmp.Or(n.Name, n.Material.ID)})
			}
			out[at].Need += n.Q
			if !slices.Contains(out[at].For, p.Name) {
				out[at].For = append(out[at].For, p.Name)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Row) int {
		return cmp.Or(cmp.Compare(slices.Index(lot.Kinds(), a.Material.Kind), slices.Index(lot.Kinds(), b.Material.Kind)), cmp.Compare(a.Name, b.Name))
	})
	return out
}

// tap is what comes from the tap unless it was ever bought.
func tap() lot.Material { return lot.Material{Kind: lot.Other, ID: lot.Water} }
