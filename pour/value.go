package pour

import (
	"pourbench/pour/cost"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// Value is what so much of a material costs.
type Value struct {
	Amount money.Amount // as far as it is known
	From   string       // where it is from, in the maker's words
	Lacks  string       // why not all of it is known, and how to get it; empty: it is
}

// Valued is what so much of a material costs if it is taken now: at what its packs cost, by the ledger's formula, as far as they reach; what goes beyond
// them at what the last pack cost, or else at the price your shelf or the house's costs name. Water that has no price is from the tap and is not counted.
func (s Shelf) Valued(m lot.Material, q lot.Quantity) Value {
	amount, beyond := s.Stock.Cost(m, q)
	v := Value{Amount: amount}
	if beyond < q {
		v.From = "from your packs"
	}
	if beyond == 0 {
		return v
	}
	if v.From != "" {
		v.From += "; " + beyond.String() + " " + m.Kind.Unit() + " more than they hold "
	}
	price, unit, from, ok := s.price(m)
	switch {
	case ok:
		v.Amount = v.Amount.Plus(price.Part(int64(beyond), int64(unit)))
		v.From += from
	case m == lot.Material{Kind: lot.Other, ID: lot.Water}:
		v.From += "from the tap, not counted"
	default:
		v.Lacks = "it has no price: receive a pack of it, " + priceMend(m)
	}
	return v
}

// priceMend says where a price is written that no pack has brought.
func priceMend(m lot.Material) string {
	if shelved(m.Kind) {
		return "or write price_per_kg in your shelf file"
	}
	return "or name its price: pourbench cost price " + m.String() + " 1.50"
}

// shelved reports whether the shelf has entries of a kind.
func shelved(k lot.Kind) bool {
	switch k {
	case lot.Oil, lot.Colourant, lot.Extra, lot.Scent, lot.Topping:
		return true
	}
	return false
}

// price is what a quantity of a material cost last or is said to cost.
func (s Shelf) price(m lot.Material) (price money.Amount, of lot.Quantity, from string, ok bool) {
	if p, ok := lastBought(s.Stock.Held[m].Packs); ok {
		return p.Landed(), p.Size - p.Loss, "at what the last pack cost", true
	}
	of = 1000 * lot.One
	if m.Kind.Counted() {
		of = lot.One
	}
	if price := s.PricePerKG(m); price.Sign() > 0 {
		return price, of, "at the price on your shelf", true
	}
	price, ok = s.House.Price(m.String())
	return price, of, "at the price in your costs", ok
}

// lastBought is the pack received last that has a price.
func lastBought(packs []lot.Pack) (last lot.Pack, ok bool) {
	for _, p := range packs {
		if p.Landed().Sign() > 0 && p.Size > p.Loss && (!ok || p.Bought >= last.Bought) {
			last, ok = p, true
		}
	}
	return last, ok
}

// PricePerKG is what the shelf says a kilogram of a material costs; 0: nothing.
func (s Shelf) PricePerKG(m lot.Material) money.Amount {
	switch m.Kind {
	case lot.Oil:
		x, _ := s.Oil(m.ID)
		return x.PricePerKG
	case lot.Colourant:
		x, _ := s.Colourant(m.ID)
		return x.PricePerKG
	case lot.Extra:
		x, _ := s.Extra(m.ID)
		return x.PricePerKG
	case lot.Scent:
		x, _ := s.Scent(m.ID)
		return x.PricePerKG
	case lot.Topping:
		x, _ := s.Topping(m.ID)
		return x.PricePerKG
	}
	return money.Amount{}
}

// anyPrice reports whether the shelf names any price.
func (s Shelf) anyPrice() bool {
	return anyPriced(s.Oils, func(x *Oil) money.Amount { return x.PricePerKG }) || anyPriced(s.Colourants, func(x *Colourant) money.Amount { return x.PricePerKG }) ||
		anyPriced(s.Extras, func(x *Extra) money.Amount { return x.PricePerKG }) || anyPriced(s.Scents, func(x *Scent) money.Amount { return x.PricePerKG }) ||
		anyPriced(s.Toppings, func(x *ToppingMaterial) money.Amount { return x.PricePerKG })
}

func anyPriced[T any](list []T, price func(*T) money.Amount) bool {
	for i := range list {
		if price(&list[i]).Sign() > 0 {
			return true
		}
	}
	return false
}

// Currency is what all amounts are in: as your costs say, or else the ledger.
func (s Shelf) Currency() string {
	if s.House.Currency != "" {
		return s.House.Currency
	}
	return s.Stock.Currency
}

// costed reports whether anything is known of what things cost.
func (s Shelf) costed() bool { return s.priced || len(s.Stock.Held) > 0 || s.House.Stated() }

// line is a material of a bill.
func (s Shelf) line(kind cost.Kind, name string, m lot.Material, q lot.Quantity) cost.Line {
	v := s.Valued(m, q)
	return cost.Line{Kind: kind, Name: name, Amount: v.Amount, Lacks: v.Lacks, From: q.String() + " " + m.Kind.Unit() + " " + v.From}
}
