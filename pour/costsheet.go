package pour

import (
	"cmp"
	"math"

	"pourbench/pour/cost"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/strict"
)

// CostSheet is what the plan's batch is going to cost and what its bars would earn: planned, for what really went in is known after the pour.
type CostSheet struct {
	Stated   bool // some price, pack or cost is known of
	Bill     cost.Bill
	HandsMin Figure // of the run, the cut and other work
	Why      string // why it is not known what a bar costs, and how to get it; empty: it is
	Sales    []CostSale
	Swings   []cost.Swing // the three largest costs a tenth dearer and cheaper, on the terms of the first sale
}

// CostSale is what selling the bars in one way comes to.
type CostSale struct {
	Terms   cost.Terms
	Earning cost.Earning
	Why     string       // why it is not known what it earns; empty: it is
	Margin  string       // percent, wanted; empty: none is named
	ForIt   money.Amount // the price to ask for that margin, where a bar's cost is known
}

// What is told of costs that change.
const (
	swung        = 3  // how many of the largest
	swungPercent = 10 // and by how much
)

// PerBar is what a good bar costs. False: it is not known, and it is the least it costs.
func (c CostSheet) PerBar() (money.Amount, bool) { return c.Bill.Unit() }

// Told is what a good bar costs as it is shown: the least it costs where not all of it is known, a dash where nothing is.
func (c CostSheet) Told() string {
	text := dash
	switch bar, known := c.PerBar(); {
	case known:
		text = cost.Written(bar, c.Bill.Currency)
	case bar.Sign() > 0:
		text = "> " + cost.Written(bar, c.Bill.Currency)
	}
	return cost.GoodBar + " " + text
}

// SaleableBars is how many bars come off the cutter and how many of them can be sold; sample and trims are none of them.
func (s *Sheet) SaleableBars() cost.Bars {
	n := len(s.Cut.Bars)
	good := max(n-s.Plan.Cost.Rejects, 0)
	return cost.Bars{Cut: n, Good: good, Testers: min(s.Plan.Cost.Testers, good)}
}

// HandsCounted is what the minutes of [Sheet.HandsMin] are of, in the words of screen and paper. What is not among the tasks of run and cut, such as
// weighing out, wrapping and cleaning, counts only as the other work that the plan states.
const HandsCounted = "the run with piping, embeds and toppings, the cut, other work"

// HandsMin is how long the hands work on the batch by the plan: the run's tasks but the cooling of the lye, the cut's, and other work.
func (s *Sheet) HandsMin() float64 {
	sum := s.Plan.Cost.HandsMin
	for _, tasks := range [][]Task{s.Run, s.CutRun} {
		for _, t := range tasks {
			if t.Kind != TaskCoolLye && t.Kind != TaskWatch {
				sum += t.LengthMin
			}
		}
	}
	return sum
}

// nothingCosts is why there is no cost where nothing has a price.
const nothingCosts = "nothing has a price yet: receive packs (pourbench stock receive), write price_per_kg in your shelf file, or state your costs (pourbench cost set)"

// cost works out what the batch costs. Where nothing has a price it says so and does nothing else.
func (s *Sheet) cost(shelf Shelf) {
	if !shelf.costed() {
		s.Cost = CostSheet{Why: nothingCosts}
		return
	}
	why := ""
	for _, b := range s.Batches() {
		why = cmp.Or(why, b.Refused.Masses)
	}
	s.Cost = s.Costed(shelf, s.goods(shelf), s.HandsMin(), s.SaleableBars(), why)
}

// Costed is what a batch of the plan costs with such goods, so many minutes of hands and such bars: planned ones or what really went in. Why says why
// it cannot be known at all; empty: it can.
func (s *Sheet) Costed(shelf Shelf, goods []cost.Line, handsMin float64, bars cost.Bars, why string) CostSheet {
	c := CostSheet{Stated: true, Why: why}
	if AsFigure(handsMin).Known {
		c.HandsMin = Know(handsMin)
	}
	c.Bill = shelf.House.Bill(goods, int64(math.Round(c.HandsMin.V*60)), bars)
	c.Bill.Currency = shelf.Currency()
	if lacking := c.Bill.Lacking(); len(lacking) > 0 {
		c.Why = cmp.Or(c.Why, lacking[0])
	}
	if c.Why != "" {
		c.Bill.Lacks = why
		return c
	}
	c.sell(s.Plan.Cost, shelf)
	return c
}

// goods are the lines of what goes into the batch and on its bars: one for each material, wherever it goes.
func (s *Sheet) goods(shelf Shelf) []cost.Line {
	var needs []MaterialNeed
	at := map[lot.Material]int{}
	for _, n := range s.Needs(shelf) {
		i, there := at[n.Material]
		if !there {
			i = len(needs)
			at[n.Material], needs = i, append(needs, MaterialNeed{Material: n.Material, Name: n.Name})
		}
		needs[i].Q += n.Q
	}
	out := make([]cost.Line, 0, len(needs))
	for _, n := range needs {
		out = append(out, shelf.line(cost.Materials, n.Name, n.Material, n.Q))
	}
	for _, n := range s.Packaging() {
		out = append(out, shelf.line(cost.Packaging, n.Name, n.Material, n.Q))
	}
	return out
}

// sell works out what the bars earn in each way they are sold.
func (c *CostSheet) sell(plan Cost, shelf Shelf) {
	unit, _ := c.PerBar()
	for _, channel := range shelf.House.Selling() {
		price := amount(plan.Price)
		if channel.Wholesale {
			price = amount(plan.WholesalePrice)
		}
		sale := CostSale{Terms: shelf.House.Terms(channel, price)}
		if e, err := c.Bill.Earns(sale.Terms); err != nil {
			sale.Why = err.Error()
		} else {
			sale.Earning = e
		}
		if wanted, err := money.ParsePercent(strict.Short(plan.MarginPercent)); err == nil && wanted.Sign() > 0 {
			sale.ForIt, err = sale.Terms.ForMargin(unit, wanted)
			if err == nil {
				sale.Margin = wanted.String()
			}
		}
		c.Sales = append(c.Sales, sale)
	}
	c.Swings = c.Bill.Swings(&c.Sales[0].Terms, swung, money.WholePercent(swungPercent))
}
