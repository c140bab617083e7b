package pour

import (
	"fmt"
	"strings"

	"pourbench/pour/money"
	"pourbench/pour/strict"
)

// Cost is what the plan says of its cost and price beside what the house's costs say. Money is text, so that it stays exact.
type Cost struct {
	Price          string  // asked for a bar; empty: none
	WholesalePrice string  // asked of a shop for a bar; empty: none
	MarginPercent  float64 // wanted of the price; 0: none is named
	HandsMin       float64 // weighing out, labels, wrapping, cleaning: hands' time for the batch beside the run and the cut, min
	Rejects        int     // bars that usually cannot be sold, beside sample and trims; they carry no cost
	Testers        int     // good bars given away
	Packaging      []PackagingPart
}

// PackagingPart is what goes on or around every bar that can be sold.
type PackagingPart struct {
	Of     string  // id of the packaging: small letters, digits and hyphens
	PerBar float64 // pieces; 0: 1
}

func costFields(c *Cost) []Field {
	return []Field{
		{Key: "price", Label: "price of a bar", Need: Quiet, Takes: TakesMoney, At: &c.Price, Means: "what you ask for a bar, in your costs' currency"},
		{Key: "wholesale_price", Label: "price to a shop", Need: Quiet, Takes: TakesMoney, At: &c.WholesalePrice, Means: "what you ask of a shop for a bar"},
		{Key: "margin_percent", Label: "margin wanted", Need: Quiet, Unit: UnitPercent, High: 99.9, Step: 1, At: &c.MarginPercent, Means: "of the price, not of the cost: the price that has it is told; 0: none is named"},
		{Key: "hands_min", Label: "other work", Need: Quiet, Unit: UnitMinute, High: 6000, Step: 5, At: &c.HandsMin, Means: "hands' time for the batch beside the run and the cut: weighing out, labels, wrapping, cleaning"},
		{Key: "rejects", Label: "rejects, usually", Need: Quiet, High: 2000, Step: 1, At: &c.Rejects, Means: "bars that usually cannot be sold, beside sample and trims; they carry no cost"},
		{Key: "testers", Label: "testers", Need: Quiet, High: 2000, Step: 1, At: &c.Testers, Means: "good bars given away to be tried; the bars sold carry them"},
		{Key: "packaging", Label: "packaging", Need: Quiet, High: maxParts, At: &c.Packaging, Means: "what goes on or around every bar"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (p *PackagingPart) Fields() []Field {
	return []Field{
		{Key: "of", Label: "packaging", Need: Required, Takes: TakesID, At: &p.Of, Means: "its id, as you receive and price it: small letters, digits and hyphens"},
		{Key: "per_bar", Label: "for each bar", Need: Quiet, High: 100, Step: 1, At: &p.PerBar, Means: "pieces for a bar; 0: 1"},
	}
}

// pieces is how many of it a bar wants.
func (p PackagingPart) pieces() float64 { return orUsual(p.PerBar, 1) }

// amount is a price of the plan; 0: none is named.
func amount(text string) money.Amount {
	a, err := money.Parse(text)
	if err != nil {
		return money.Amount{}
	}
	return a
}

// money checks an amount as a plan writes it.
func (c *checker) money(at spot, f *Field, v string) {
	if _, err := money.Parse(v); err != nil {
		c.add(at.path(f.Key), strict.Quote(v), "is no amount of money", `write it between quotation marks with a point, without a currency: "6.50"`)
	}
}

// id checks an id that stands on no shelf.
func (c *checker) id(at spot, f *Field, v string) {
	const most = 40
	if v == "" || len(v) > most || strings.Trim(v, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
		c.add(at.path(f.Key), strict.Quote(v), "is no id", fmt.Sprintf(`use small letters, digits and hyphens, %d at most: "kraft-box"`, most))
	}
}

// packaging checks what hangs together in the packaging.
func (c *checker) packaging(list []PackagingPart) {
	seen := map[string]bool{}
	for i, p := range list {
		if seen[p.Of] {
			c.add(fmt.Sprintf("cost.packaging[%d].of", i), strict.Quote(p.Of), "stands in the packaging twice", "add the two numbers up")
		}
		seen[p.Of] = true
	}
}
