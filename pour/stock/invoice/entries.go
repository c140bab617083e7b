package invoice

import (
	"fmt"

	"pourbench/pour/money"
	"pourbench/pour/stock"
)

// Items are what came, each with its part of the postage and of the discounts of the whole invoice, which are shared by price (one rule, kept:
// reference, cost and stock). Money is shared to the cent, and the parts are the whole.
func (inv *Invoice) Items() []Item {
	var out []Item
	for _, l := range inv.Lines {
		if l.Kind == Taken {
			out = append(out, l.Item)
		}
	}
	prices := make([]money.Amount, len(out))
	for i, x := range out {
		prices[i] = x.Price
	}
	post, off := money.Share(inv.sum(Postage), prices), money.Share(inv.sum(Discount), prices)
	for i := range out {
		out[i].Postage = out[i].Postage.Plus(post[i])
		out[i].Price = out[i].Price.Minus(off[i])
	}
	return out
}

// sum is what the lines of a kind come to.
func (inv *Invoice) sum(k Kind) money.Amount {
	var sum money.Amount
	for _, l := range inv.Lines {
		if l.Kind == k {
			sum = sum.Plus(l.Amount)
		}
	}
	return sum
}

// Refused says why nothing of an invoice can be taken as it stands, or nothing.
func (inv *Invoice) Refused() string {
	var goods money.Amount
	for _, l := range inv.Lines {
		if l.Kind == Taken {
			goods = goods.Plus(l.Item.Price)
		}
	}
	odd := inv.Count(Odd) + inv.Cut
	switch {
	case inv.Count(Taken) == 0:
		return "no line of it is understood as something that came; one is written so: " + example
	case odd > 0 && inv.Count(Postage)+inv.Count(Discount) > 0:
		return "postage and discounts are shared over all that came: mend or leave out what is not understood first"
	case inv.sum(Discount).Compare(goods) > 0:
		return "the discount is more than all of it cost"
	}
	return ""
}

// Check says what of the sums on the invoice does not come to what was understood; nothing where none is written or one of them agrees. A sum may be
// that of the goods alone, or with postage and less discounts.
func (inv *Invoice) Check() []string {
	var goods money.Amount
	post := inv.sum(Postage)
	for _, l := range inv.Lines {
		if l.Kind == Taken {
			goods, post = goods.Plus(l.Item.Price), post.Plus(l.Item.Postage)
		}
	}
	less := goods.Minus(inv.sum(Discount))
	var out []string
	for _, l := range inv.Lines {
		if l.Kind != Sum {
			continue
		}
		agrees := false
		for _, may := range []money.Amount{goods, less, goods.Plus(post), less.Plus(post)} {
			agrees = agrees || may.Compare(l.Amount) == 0
		}
		if !agrees {
			out = append(out, fmt.Sprintf("%q: what was understood comes to %s, with postage and less discounts to %s", l.Text, goods, less.Plus(post)))
		}
	}
	return out
}

// Entries are what came as entries of the ledger, one for each pack and without a name of the pack.
func (x Item) Entries() []stock.Entry {
	even := make([]money.Amount, x.Packs)
	prices, posts := money.Share(x.Price, even), money.Share(x.Postage, even)
	out := make([]stock.Entry, x.Packs)
	for i := range out {
		out[i] = stock.Entry{
			Kind: stock.Received, Day: x.Bought, Material: x.Material, Name: x.Name, Lot: x.Lot, Supplier: x.Supplier, Expires: x.Expires,
			Q: x.Each, Tare: x.Tare, Loss: x.Loss, Price: prices[i], Postage: posts[i],
		}
	}
	return out
}
