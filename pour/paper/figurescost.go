package paper

import (
	"pourbench/pour"
	"pourbench/pour/money"
)

// CostReport is what the batch is going to cost and what its bars would earn. Amounts are decimal text, exact; null: not known.
type CostReport struct {
	Currency  string           `json:"currency"`
	Lines     []CostLineReport `json:"lines"`
	Batch     *string          `json:"batch"`
	PerBar    *string          `json:"per_bar"`      // of a good bar: the batch over saleable_bars, testers among them
	PerSold   *string          `json:"per_bar_sold"` // of a bar sold: the batch over saleable_bars less testers, which those carry
	Bars      Number           `json:"bars"`
	Saleable  Number           `json:"saleable_bars"`
	Testers   Number           `json:"testers"`
	HandsMin  Number           `json:"hands_min"` // the run with piping, embeds and toppings, the cut, and the plan's other work
	Uncounted []string         `json:"uncounted"`
	Lacking   []string         `json:"lacking"`
	Sales     []SaleReport     `json:"sales"`
}

// CostLineReport is one cost of the batch.
type CostLineReport struct {
	Kind   string  `json:"kind"`
	Name   string  `json:"name"`
	Amount *string `json:"amount"`
	From   string  `json:"from"`
}

// SaleReport is what selling a bar in one way leaves.
type SaleReport struct {
	Channel       string  `json:"channel"`
	Price         *string `json:"price"`
	Net           *string `json:"net"`
	Fee           *string `json:"fee"`
	MarginPercent *string `json:"margin_percent"`
	MarkupPercent *string `json:"markup_percent"`
	Contribution  *string `json:"contribution"`
	Profit        *string `json:"profit"` // of a bar sold, fee, overhead and testers counted
	PerHour       *string `json:"per_hour"`
	BreakEvenBars *int    `json:"break_even_bars"`
	ForMargin     *string `json:"price_for_margin"`
}

// costReport is null where nothing has a price.
func costReport(s pour.Sheet) *CostReport {
	c := &s.Cost
	if !c.Stated {
		return nil
	}
	b := &c.Bill
	r := &CostReport{
		Currency: b.Currency, Lines: []CostLineReport{}, Bars: finite(float64(b.Bars.Cut)), Saleable: finite(float64(b.Bars.Good)), Testers: finite(float64(b.Bars.Testers)),
		HandsMin: known(c.HandsMin), Uncounted: append([]string{}, b.Uncounted...), Lacking: append([]string{}, b.Lacking()...), Sales: []SaleReport{},
	}
	r.Batch, r.PerBar, r.PerSold = exact(b.Total()), exact(b.Unit()), exact(b.UnitSold())
	for _, l := range b.Lines {
		r.Lines = append(r.Lines, CostLineReport{string(l.Kind), l.Name, exact(l.Amount, l.Lacks == ""), l.From})
	}
	for i := range c.Sales {
		r.Sales = append(r.Sales, saleReport(&c.Sales[i]))
	}
	return r
}

func saleReport(s *pour.CostSale) SaleReport {
	e := &s.Earning
	r := SaleReport{Channel: s.Terms.Channel.Name, Price: exact(s.Terms.Price, s.Terms.Price.Sign() > 0), ForMargin: exact(s.ForIt, s.Margin != "")}
	if s.Why != "" {
		return r
	}
	r.Net, r.Fee, r.Contribution, r.Profit, r.PerHour = exact(e.Net, true), exact(e.Fee, true), exact(e.Contribution, true), exact(e.Profit, true), exact(e.PerHour, e.Hours)
	margin, markup := e.Margin.String(), e.Markup.String()
	r.MarginPercent = &margin
	if e.Marked {
		r.MarkupPercent = &markup
	}
	if e.Never == "" {
		r.BreakEvenBars = &e.BreakEven
	}
	return r
}

func exact(a money.Amount, known bool) *string {
	if !known {
		return nil
	}
	text := a.Exact()
	return &text
}
