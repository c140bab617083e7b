package paper

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/cost"
	"pourbench/pour/money"
)

// Costs is a bill to be told: of a plan, or of a batch as it was poured.
type Costs struct {
	Name   string // of the plan or the batch
	Poured bool   // it was poured: what was taken counts, not what was planned
	Notes  []string
	Sheet  pour.CostSheet
}

// CostText tells what a batch costs and what its bars earn, for a terminal.
func CostText(c Costs) string {
	p := textPage()
	what := "planned"
	if c.Poured {
		what = "as poured"
	}
	p.raw(fmt.Sprintf("Cost of %s, %s", c.Name, what))
	b := &c.Sheet.Bill
	if !c.Sheet.Stated {
		p.wrapped("", "Not known: "+c.Sheet.Why+".")
		return p.text()
	}
	for _, n := range c.Notes {
		p.wrapped("  ", n)
	}
	p.raw("")
	p.costRows(b)
	p.costSum(&c.Sheet)
	p.costSales(&c.Sheet)
	p.costSwings(&c.Sheet)
	p.raw("")
	p.wrapped("", "Amounts are exact and rounded only where they are shown; a total is the rounded sum, not the sum of what the lines show. Selling costs are no part of what a bar costs.")
	return p.text()
}

// costRows are the lines of the bill, largest first within their kind, each with its bar: where the money goes.
func (p *page) costRows(b *cost.Bill) {
	const bar = 16
	total, _ := b.Total()
	var rows [][]string
	for _, kind := range cost.Kinds() {
		lines := slices.DeleteFunc(slices.Clone(b.Lines), func(l cost.Line) bool { return l.Kind != kind })
		if len(lines) == 0 {
			continue
		}
		sum, known := b.Sum(kind)
		if len(lines) > 1 || lines[0].Name != string(kind) {
			rows = append(rows, costRow(strings.ToUpper(string(kind)), sum, known, total, bar))
		}
		slices.SortStableFunc(lines, func(x, y cost.Line) int { return y.Amount.Compare(x.Amount) })
		for _, l := range lines {
			name := l.Name
			if name == string(kind) {
				name = strings.ToUpper(name)
			}
			rows = append(rows, costRow(name, l.Amount, l.Lacks == "", total, bar))
		}
	}
	p.rows([]column{{}, {figure: true}, {figure: true}, {}}, rows)
}

func costRow(name string, a money.Amount, known bool, total money.Amount, bar int) []string {
	share, ok := a.InPercentOf(total)
	if !ok {
		return []string{name, written(a, known), "", ""}
	}
	return []string{name, written(a, known), share.Rounded(0) + " %", strings.Repeat("#", barOf(share, bar))}
}

// barOf is how long the bar of a share is, of so many for all of it; what is anything has one.
func barOf(share money.Percent, most int) int {
	n := 0
	for n < most && money.WholePercent((2*n+1)*50/most).Compare(share) < 0 {
		n++
	}
	if share.Sign() > 0 {
		n = max(n, 1)
	}
	return n
}

// written is an amount as it is shown; one that is not known whole is the least it can be.
func written(a money.Amount, known bool) string {
	switch {
	case known:
		return a.Cents()
	case a.Sign() == 0:
		return "—"
	}
	return "> " + a.Cents()
}

// costSum is what the batch and a bar of it cost, and what is not in it.
func (p *page) costSum(c *pour.CostSheet) {
	b := &c.Bill
	total, known := b.Total()
	unit, whole := b.Unit()
	p.raw("")
	p.raw(fmt.Sprintf("Batch        %s", costIn(total, known, b.Currency)))
	bars := fmt.Sprintf("%d bars cut, %d to sell", b.Bars.Cut, b.Bars.Good)
	if b.Bars.Testers > 0 {
		bars = fmt.Sprintf("%d bars cut, %d good, %d of them given away as testers, %d to sell", b.Bars.Cut, b.Bars.Good, b.Bars.Testers, b.Bars.Sold())
	}
	if b.Bars.Good > 0 {
		p.raw(fmt.Sprintf("%-13s%s", capital(cost.GoodBar), costIn(unit, whole, b.Currency)))
		if b.Bars.Testers > 0 {
			sold, known := b.UnitSold()
			p.raw(fmt.Sprintf("%-13s%s", capital(cost.SoldBar), costIn(sold, known, b.Currency)))
		}
		p.wrapped("  ", bars+"; sample, trims and rejects carry none.")
		if b.Bars.Testers > 0 {
			p.wrapped("  ", fmt.Sprintf("%s: the batch over all good bars. %s: over those to sell, which carry the testers. Margin and markup are of %s, profit is of %s.",
				capital(cost.GoodBar), capital(cost.SoldBar), cost.GoodBar, cost.SoldBar))
		}
	}
	for _, l := range b.Lacking() {
		p.wrapped("  ? ", l)
	}
	if len(b.Uncounted) > 0 {
		p.wrapped("  ", "Not counted: "+strings.Join(b.Uncounted, "; ")+".")
	}
	if c.HandsMin.Known {
		p.wrapped("  ", fmt.Sprintf("Hands: %.0f min: %s. Weighing out, labels, wrapping and cleaning count as far as the plan states them as other work.", c.HandsMin.V, pour.HandsCounted))
	}
}

// capital is a text with its first letter large.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

func costIn(a money.Amount, known bool, currency string) string {
	return strings.TrimSpace(written(a, known) + " " + currency)
}

// costSales is what the bars earn, one way of selling beside the other. A line of which no way has anything is left out.
func (p *page) costSales(c *pour.CostSheet) {
	if len(c.Sales) == 0 {
		p.raw("")
		p.wrapped("", "What selling a bar leaves is not known as long as its cost is not.")
		return
	}
	columns, head := []column{{}}, []string{"sold"}
	for _, s := range c.Sales {
		columns, head = append(columns, column{figure: true}), append(head, s.Terms.Channel.Name)
	}
	rows := [][]string{head}
	for _, line := range saleLines() {
		row, any := []string{line.name}, false
		for i := range c.Sales {
			cell := line.of(&c.Sales[i])
			any = any || cell != ""
			row = append(row, cmp.Or(cell, "—"))
		}
		if any {
			rows = append(rows, row)
		}
	}
	p.raw("")
	p.rows(columns, rows)
	p.costWhys(c)
}

// saleLine is one thing that is told of every way of selling; empty: there is nothing to tell.
type saleLine struct {
	name string
	of   func(s *pour.CostSale) string
}

func saleLines() []saleLine {
	earns := func(name string, of func(e *cost.Earning) string) saleLine {
		return saleLine{name, func(s *pour.CostSale) string {
			if s.Why != "" {
				return ""
			}
			return of(&s.Earning)
		}}
	}
	told := func(known bool, text string) string {
		if !known {
			return ""
		}
		return text
	}
	return []saleLine{
		{"price asked", func(s *pour.CostSale) string { return told(s.Terms.Price.Sign() > 0, s.Terms.Price.Cents()) }},
		earns("without tax", func(e *cost.Earning) string { return e.Net.Cents() }),
		earns("fee", func(e *cost.Earning) string { return e.Fee.Cents() }),
		earns("margin before fee, of the price", func(e *cost.Earning) string { return e.Margin.Rounded(2) + " %" }),
		earns("markup before fee, on the cost", func(e *cost.Earning) string { return told(e.Marked, e.Markup.Rounded(2)+" %") }),
		earns("contribution, before overhead", func(e *cost.Earning) string { return e.Contribution.Cents() }),
		earns("profit of a bar, all counted", func(e *cost.Earning) string { return e.Profit.Cents() }),
		earns("an hour of hands earns", func(e *cost.Earning) string { return told(e.Hours, e.PerHour.Cents()) }),
		earns("breaks even at", func(e *cost.Earning) string { return told(e.Never == "", fmt.Sprintf("%d bars a month", e.BreakEven)) }),
		{"price for it, before fee", func(s *pour.CostSale) string { return told(s.Margin != "", s.ForIt.Cents()+" for "+s.Margin+" %") }},
	}
}

// costWhys says why something of a sale is not known, each reason once.
func (p *page) costWhys(c *pour.CostSheet) {
	var told []string
	for _, s := range c.Sales {
		for _, why := range []string{s.Why, s.Earning.Never} {
			if why != "" && !slices.Contains(told, why) {
				told = append(told, why)
				p.wrapped("  ", s.Terms.Channel.Name+": "+why+".")
			}
		}
	}
}

// costSwings is what it does to a bar when the largest costs change.
func (p *page) costSwings(c *pour.CostSheet) {
	if len(c.Swings) == 0 {
		return
	}
	p.raw("")
	p.raw("A tenth dearer or cheaper, " + cost.GoodBar + " then costs")
	rows := make([][]string, 0, len(c.Swings))
	for _, s := range c.Swings {
		r := []string{"  " + s.Line.Name, s.Share.Rounded(0) + " % of it", "+10 %: " + s.Up.Unit.Cents(), "-10 %: " + s.Down.Unit.Cents()}
		if s.Up.Earn != nil && s.Down.Earn != nil {
			r = append(r, fmt.Sprintf("margin %s to %s %%", s.Up.Earn.Margin.Rounded(1), s.Down.Earn.Margin.Rounded(1)))
		} else {
			r = append(r, "")
		}
		rows = append(rows, r)
	}
	p.rows([]column{{}, {figure: true}, {figure: true}, {figure: true}, {}}, rows)
}
