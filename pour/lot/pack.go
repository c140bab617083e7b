package lot

import (
	"cmp"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/money"
)

// Pack is one pack of a material: a tub, a bag, a bottle, a carton, or what was made beforehand.
type Pack struct {
	ID       string // short enough to write on the tub: "olive-3"
	Material Material
	Name     string // what it is called
	Lot      string // its maker's number; empty: none was named
	Supplier string // the supplier's words
	Bought   day.Day
	Opened   day.Day  // 0: not yet
	Expires  day.Day  // the last day it may be used; 0: none is named
	Size     Quantity // as bought
	Tare     Quantity // of the empty tub, g; 0: not known
	Loss     Quantity // of Size, what usually stays in the tub, on scoops and funnels: its cost is spread over the rest
	Price    money.Amount
	Postage  money.Amount // its share
	Made     bool         // by the maker: Price is what went into it

	Taken Quantity // by batches and by what was made of it
	Lost  Quantity // shrunk, spilled, thrown away; below 0: found
	Left  Quantity // by the book: Size - Taken - Lost; below 0: more was taken than there was
}

// Landed is what the pack cost: its price and its share of the postage (IAS 2.11, purchase cost; read 2nd-hand).
func (p Pack) Landed() money.Amount { return p.Price.Plus(p.Postage) }

// Blocked reports whether a pack is past its date on a day.
func (p Pack) Blocked(on day.Day) bool { return p.Expires != 0 && on > p.Expires }

// Part is what is picked of one pack.
type Part struct {
	Pack string // its ID
	Lot  string
	Q    Quantity
}

// Pick picks a quantity of packs of one material: first expired first out, those without a date last, the older receipt first where dates are
// alike; packs past their date are passed over (common practice; reference: cost and stock). Short is what there is too little of.
func Pick(packs []Pack, want Quantity, on day.Day) (parts []Part, short Quantity) {
	for _, p := range InOrder(packs) {
		if want <= 0 {
			break
		}
		if p.Left <= 0 || p.Blocked(on) {
			continue
		}
		q := min(p.Left, want)
		parts = append(parts, Part{p.ID, p.Lot, q})
		want -= q
	}
	return parts, max(want, 0)
}

// InOrder is packs in the order in which they are picked.
func InOrder(packs []Pack) []Pack {
	out := slices.Clone(packs)
	slices.SortStableFunc(out, func(a, b Pack) int {
		return cmp.Or(undatedLast(a, b), cmp.Compare(a.Expires, b.Expires), cmp.Compare(a.Bought, b.Bought))
	})
	return out
}

func undatedLast(a, b Pack) int {
	rank := func(p Pack) int {
		if p.Expires == 0 {
			return 1
		}
		return 0
	}
	return cmp.Compare(rank(a), rank(b))
}
