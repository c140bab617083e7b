package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/pour/stock/shopping"
)

// ShoppingText writes a shopping list: what to buy with a box for every pack size, what no pack is known of, what to make beforehand, and of what
// there is enough.
func ShoppingText(l shopping.List) string {
	p := textPage()
	p.raw("SHOPPING LIST, " + l.Today.Weekday().String() + " " + l.Today.String())
	shoppingList(p, l)
	return p.text()
}

// ShoppingPaper is the list to print and take along, with room to write what was paid.
func ShoppingPaper(l shopping.List) string {
	p := &page{format: benchFormat()}
	p.most = 0
	shoppingList(p, l)
	return p.printed("Shopping list, " + l.Today.String())
}

// shoppingList writes the list onto a page.
func shoppingList(p *page, l shopping.List) {
	if len(l.Pours) == 0 {
		p.wrapped("", "No pour is chosen: name plans, or plan pours with pourbench season add-pour.")
		return
	}
	p.wrapped("for ", strings.Join(l.TellPours(), ", "))
	buy, unknown, own, enough := shoppingParts(l)
	shoppingBuys(p, l, buy)
	if len(unknown) > 0 {
		p.headed("To buy, no pack known", "")
		p.wrapped("", `Say what packs there are, and the list picks among them: pourbench stock offer "olive 5 kg 38.50 from the mill"`)
	}
	for _, r := range unknown {
		p.keep(func() {
			p.tick(row{text: r.Name, figure: shopping.Much(r.Material, r.Short), write: true})
			p.info(r.Why())
		})
	}
	if len(own) > 0 {
		p.headed("To make beforehand", "")
	}
	for _, r := range own {
		p.keep(func() {
			p.tick(row{text: r.Name, figure: shopping.Much(r.Material, r.Short), write: true})
			p.info(r.Why())
		})
	}
	if len(enough) > 0 {
		p.headed("Enough of", "")
		p.wrapped("", strings.Join(enough, "; "))
	}
}

// shoppingParts parts the rows: with packs to buy, without a known pack, made by the maker, and those there is enough of, in words.
func shoppingParts(l shopping.List) (buy, unknown, own []shopping.Row, enough []string) {
	for _, r := range l.Rows {
		switch {
		case r.Short == 0:
			enough = append(enough, fmt.Sprintf("%s (%s of %s)", r.Name, r.Need, shopping.Much(r.Material, r.Usable)))
		case r.Made():
			own = append(own, r)
		case !r.Chosen:
			unknown = append(unknown, r)
		default:
			buy = append(buy, r)
		}
	}
	return buy, unknown, own, enough
}

// shoppingBuys writes what is bought in packs, and what it comes to.
func shoppingBuys(p *page, l shopping.List, rows []shopping.Row) {
	if len(rows) == 0 {
		return
	}
	p.heading("To buy", strings.TrimSpace("price "+l.Currency), "paid")
	for _, r := range rows {
		p.keep(func() {
			for _, b := range r.Choice.Buys {
				price := "no price"
				if b.Offer.Priced {
					price = shopping.Money(b.Offer.Price.Times(b.Count), "")
				}
				p.tick(row{text: r.Name + ", " + b.Tell(r.Material), figure: price, write: true})
			}
			p.info(r.Why() + "; " + r.After())
		})
	}
	p.raw("")
	sum := shopping.Money(l.Cost, l.Currency) + " at the prices paid last, postage apart"
	if l.Unpriced > 0 {
		sum += fmt.Sprintf("; without a price: %d", l.Unpriced)
	}
	p.wrapped("In all ", sum+". "+l.Rule.Says())
}

// ExpiringText writes what is past its date or will be within some days, and which plans would use it.
func ExpiringText(list []shopping.Expiring, within int) string {
	p := textPage()
	if len(list) == 0 {
		p.wrapped("", fmt.Sprintf("Nothing on the shelves is past its date, nor will be within %d days.", within))
		return p.text()
	}
	for i, x := range list {
		if i > 0 {
			p.raw("")
		}
		p.wrapped("", fmt.Sprintf("%s %s, %s", x.Pack.ID, x.Name(), x.Tell()))
		for _, line := range x.TellUses() {
			p.wrapped("    ", line)
		}
	}
	return p.text()
}

// LargestText writes how large a pour of a plan the stock allows, and what limits it.
func LargestText(l shopping.Largest, show pour.Show, name string) string {
	p := textPage()
	p.wrapped("", name+": "+l.Tell(show))
	for _, line := range l.TellLimits(show) {
		p.wrapped("  ", line)
	}
	if line := l.TellUnkept(); line != "" {
		p.wrapped("  ", line)
	}
	if !l.None {
		oils := l.Sheet.Base.Size.OilsG
		if l.Sheet.Icing != nil {
			oils += l.Sheet.Icing.Size.OilsG
		}
		p.wrapped("  ", fmt.Sprintf("so large: %s of oils, %d bars", show.Weight(oils), l.Sheet.Bars.Count))
	}
	return p.text()
}
