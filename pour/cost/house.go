// Package cost is what a batch and a bar of it cost and earn: a bill of lines, the cost of a bar that can be sold, and what selling it at a
// price leaves. It knows no plan, no stock and no file. Money is exact: it is rounded where it is shown, and a total shown is the rounded sum, not
// the sum of what the lines show.
//
// The words are those of IAS 2 and of cost accounting (reference: cost and stock, as of 28 Nov 2026).
package cost

import "pourbench/pour/money"

// House is what a maker's costs are beside materials: what holds for every batch until she says otherwise. What is zero is not stated, and not
// counted. The zero value states nothing.
type House struct {
	Currency         string // how it is written behind an amount; all prices are in it, nothing is converted
	WagePerHour      money.Amount
	EnergyPerBatch   money.Amount
	OverheadPerBatch money.Amount // a batch's share of what the workplace costs
	FixedPerMonth    money.Amount // what a month costs however many bars are sold: what breaking even has to cover
	ProfitPerMonth   money.Amount // wanted on top of it
	TaxPercent       money.Percent
	Channels         []Channel
	Prices           []Price // of what no pack has brought yet
}

// Channel is a way bars are sold.
type Channel struct {
	Name        string
	Wholesale   bool          // sold at the wholesale price
	FeePercent  money.Percent // of what is paid, its tax too
	FeePerSale  money.Amount
	BarsPerSale int  // bars that usually go in one sale and share its fee; 0: 1
	TaxIncluded bool // the price asked holds the sales tax
}

// Price is what a material costs that no pack has brought yet.
type Price struct {
	Of  string       // kind and id, "packaging box"
	Per money.Amount // a kilogram, or a piece of what is counted
}

// Stated reports whether anything at all is stated.
func (h House) Stated() bool {
	costs := []money.Amount{h.WagePerHour, h.EnergyPerBatch, h.OverheadPerBatch, h.FixedPerMonth, h.ProfitPerMonth}
	for _, a := range costs {
		if a.Sign() != 0 {
			return true
		}
	}
	return h.Currency != "" || h.TaxPercent.Sign() != 0 || len(h.Channels) > 0 || len(h.Prices) > 0
}

// Price is the price of a material by its kind and id. False: none is stated.
func (h House) Price(of string) (money.Amount, bool) {
	for _, p := range h.Prices {
		if p.Of == of {
			return p.Per, true
		}
	}
	return money.Amount{}, false
}

// Selling lists the channels; where none is stated, a sale by hand and one to a shop, both without a fee.
func (h House) Selling() []Channel {
	if len(h.Channels) > 0 {
		return h.Channels
	}
	return []Channel{{Name: "retail"}, {Name: "wholesale", Wholesale: true}}
}

// Written writes an amount as it is shown: to the cent, with the currency where one is stated.
func Written(a money.Amount, currency string) string {
	if currency == "" {
		return a.Cents()
	}
	return a.Cents() + " " + currency
}
