// Package shopping says what is to be bought for the pours that are planned, in which packs; how large a batch today's stock allows; what
// expires soon and which plans would use it; and what the season's pours have reserved. It reads no file and no clock.
package shopping

import (
	"cmp"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

// Offer is a size of pack that can be bought.
type Offer struct {
	Size     lot.Quantity // what is paid for
	Usable   lot.Quantity // of it, what does not usually stay in the tub
	Price    money.Amount // of one pack, without postage
	Priced   bool         // false: nobody said what it costs
	Supplier string
	Day      day.Day // of that price
	Typed    bool    // nothing was ever received of it: it was typed
}

// mostOffers bounds in how many packs a material is known.
const mostOffers = 36

// Offers are the sizes of pack a material is known in, each supplier's by itself with the price paid last: those of the packs that came, and
// those that were typed. A pack that cost nothing was no offer, and what the maker made herself is not bought. Of more than a few dozen the newest count: what was offered before is old news. The larger packs stand first.
func Offers(packs []lot.Pack, typed []Offer) []Offer {
	var all []Offer
	for _, p := range packs {
		if p.Made || p.Price.Sign() <= 0 || p.Size <= p.Loss {
			continue
		}
		all = append(all, Offer{Size: p.Size, Usable: p.Size - max(p.Loss, 0), Price: p.Price, Priced: true, Supplier: p.Supplier, Day: p.Bought})
	}
	for _, o := range typed {
		if o.Usable > 0 {
			o.Typed = true
			all = append(all, o)
		}
	}
	slices.SortStableFunc(all, func(a, b Offer) int { return cmp.Compare(a.Day, b.Day) })
	var out []Offer
	for _, o := range all {
		at := slices.IndexFunc(out, func(x Offer) bool { return x.Size == o.Size && x.Supplier == o.Supplier })
		switch {
		case at < 0:
			out = append(out, o)
		case o.Priced || !out[at].Priced:
			out[at] = o
		}
	}
	slices.SortStableFunc(out, func(a, b Offer) int { return cmp.Compare(b.Day, a.Day) })
	out = out[:min(len(out), mostOffers)]
	slices.SortStableFunc(out, func(a, b Offer) int {
		return cmp.Or(cmp.Compare(b.Size, a.Size), a.Price.Compare(b.Price), cmp.Compare(a.Supplier, b.Supplier))
	})
	return out
}

// Typed are the offers that were typed into a ledger, by material: the entries that stand.
func Typed(entries []stock.Entry) map[lot.Material][]Offer {
	out := map[lot.Material][]Offer{}
	for _, e := range entries {
		if e.Kind == stock.Offered && e.Q > e.Loss {
			out[e.Material] = append(out[e.Material], Offer{
				Size: e.Q, Usable: e.Q - max(e.Loss, 0), Price: e.Price, Priced: e.Price.Sign() > 0, Supplier: e.Supplier, Day: e.Day, Typed: true,
			})
		}
	}
	return out
}
