package cost

import (
	"errors"
	"fmt"

	"pourbench/pour/money"
)

// Terms is on what terms a bar is sold.
type Terms struct {
	Channel Channel
	Price   money.Amount  // what is asked for a bar
	Tax     money.Percent // the rate of the sales tax: in the price where the channel says so
	Fixed   money.Amount  // a month's fixed cost
	Profit  money.Amount  // wanted of a month on top
}

// Terms is the house's terms for a channel and a price.
func (h House) Terms(c Channel, price money.Amount) Terms {
	return Terms{Channel: c, Price: price, Tax: h.TaxPercent, Fixed: h.FixedPerMonth, Profit: h.ProfitPerMonth}
}

// Net is the price without the sales tax.
func (t Terms) Net() money.Amount {
	if t.Channel.TaxIncluded {
		return t.Price.BeforeAdding(t.Tax)
	}
	return t.Price
}

// Fee is what the channel keeps of one bar: its percentage of what is paid, tax and all, and the bar's part of what a sale costs.
func (t Terms) Fee() money.Amount {
	paid := t.Price
	if !t.Channel.TaxIncluded {
		paid = paid.Plus(paid.Percent(t.Tax))
	}
	return paid.Percent(t.Channel.FeePercent).Plus(t.feeOfSale())
}

func (t Terms) feeOfSale() money.Amount {
	return t.Channel.FeePerSale.Part(1, int64(max(t.Channel.BarsPerSale, 1)))
}

// Earning is what selling bars of a batch leaves. Margin, markup and contribution are those of one bar.
type Earning struct {
	Terms        Terms
	Net, Fee     money.Amount
	Unit         money.Amount  // cost of a good bar; selling costs are no part of it
	Margin       money.Percent // (net - unit) ÷ net
	Markup       money.Percent // (net - unit) ÷ unit
	Marked       bool          // the bar costs something, so that Markup is known
	Testers      money.Amount  // what those given away cost, spread over the bars sold
	Variable     money.Amount  // what one more bar sold costs: materials, packaging, energy and labour over the bars sold, and the fee
	Contribution money.Amount  // net - variable: what is left towards the fixed cost of a month, overhead being no part of it
	Profit       money.Amount  // net - fee - all that the batch costs over the bars sold: overhead and testers are in it
	PerHour      money.Amount  // what all bars sold leave for an hour of hands: net - fees - all costs but labour
	Hours        bool          // hands' time is known, so that PerHour is
	BreakEven    int           // bars to sell in a month until its fixed cost and the profit wanted are covered, rounded up
	Never        string        // why there is no breaking even; empty: there is
}

// Earns works out what selling a batch's bars on such terms leaves. It is refused, in words, where the cost of a bar is not known or nothing is asked
// for it.
func (b Bill) Earns(t Terms) (Earning, error) {
	unit, known := b.Unit()
	switch {
	case !known:
		return Earning{}, errors.New("what a bar earns: what it costs is not known")
	case t.Price.Sign() <= 0:
		return Earning{}, errors.New("what a bar earns: no price is asked for it")
	case b.Bars.Sold() == 0:
		return Earning{}, fmt.Errorf("what a bar earns: all %d good bars are given away as testers", b.Bars.Good)
	}
	sold := int64(b.Bars.Sold())
	e := Earning{Terms: t, Net: t.Net(), Fee: t.Fee(), Unit: unit}
	gross := e.Net.Minus(unit)
	e.Margin, _ = gross.InPercentOf(e.Net)
	e.Markup, e.Marked = gross.InPercentOf(unit)
	total, _ := b.Total()
	e.Testers = total.Part(int64(b.Bars.Testers), int64(b.Bars.Good)).Part(1, sold)
	variable, _ := b.Sum(Materials, Packaging, Energy, Labour)
	e.Variable = variable.Part(1, sold).Plus(e.Fee)
	e.Contribution = e.Net.Minus(e.Variable)
	e.Profit = e.Net.Minus(e.Fee).Minus(total.Part(1, sold))
	e.hour(b, total)
	e.even()
	return e, nil
}

// hour works out what an hour of hands earns.
func (e *Earning) hour(b Bill, total money.Amount) {
	if b.HandsS <= 0 {
		return
	}
	labour, _ := b.Sum(Labour)
	left := e.Net.Minus(e.Fee).Times(b.Bars.Sold()).Minus(total.Minus(labour))
	e.PerHour, e.Hours = left.Part(3600, b.HandsS), true
}

// even works out how many bars break even.
func (e *Earning) even() {
	n, ok := e.Contribution.TimesToReach(e.Terms.Fixed.Plus(e.Terms.Profit))
	switch {
	case e.Terms.Fixed.Plus(e.Terms.Profit).Sign() == 0:
		e.Never = "no fixed cost of a month is stated"
	case e.Contribution.Sign() <= 0:
		e.Never = "a bar sold leaves nothing towards the fixed cost, so no number of bars covers it"
	case !ok:
		e.Never = "a bar sold leaves so little that more than a billion would be needed"
	default:
		e.BreakEven = n
	}
}

// ForMargin is the price to ask, on the same terms, at which a bar of that cost has a wanted margin before the fee: cost ÷ (1 - margin), and the sales
// tax on top where the price holds it.
func (t Terms) ForMargin(unit money.Amount, margin money.Percent) (money.Amount, error) {
	net, ok := unit.BeforeTaking(margin)
	if !ok {
		return money.Amount{}, fmt.Errorf("a price for a margin of %s %%: a margin is a part of the price, so it stays below 100; a markup may be more", margin)
	}
	return t.asked(net), nil
}

// ForProfit is the price to ask at which a bar of that cost leaves a wanted profit after the fee: (cost + profit + the sale's fee) ÷ (1 - the fee's
// percentage), the percentage being of what is paid, tax and all.
func (t Terms) ForProfit(unit, profit money.Amount) (money.Amount, error) {
	fee := t.Channel.FeePercent
	net, ok := unit.Plus(profit).Plus(t.feeOfSale()).BeforeTaking(fee.Grown(t.Tax))
	if !ok {
		return money.Amount{}, fmt.Errorf("a price that leaves a profit: the channel keeps %s %% of what is paid, so nothing would be left", fee)
	}
	return t.asked(net), nil
}

// asked is the price that is asked so that its net is that.
func (t Terms) asked(net money.Amount) money.Amount {
	if t.Channel.TaxIncluded {
		return net.Plus(net.Percent(t.Tax))
	}
	return net
}

// MarkupOf is the markup of a margin: margin ÷ (1 - margin). False: the margin is 100 % or more.
func MarkupOf(margin money.Percent) (money.Percent, bool) {
	left := money.WholePercent(100).Minus(margin)
	if left.Sign() <= 0 {
		return money.Percent{}, false
	}
	return margin.PercentOf(left), true
}
