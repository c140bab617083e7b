package panel

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pourbench/pour"
	"pourbench/pour/cost"
	"pourbench/pour/money"
	"pourbench/pour/plain"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// costs is what the batch is going to cost, what its bars would earn, and what the plan says of both.
func costs() Panel {
	return Panel{
		ID: "cost", Title: "Cost", cells: keys.Numbers | keys.Words, Grid: (*Facts).costGrid,
		add: func(f *Facts, _ On) Do {
			n := len(f.Plan.Cost.Packaging)
			return Do{Name: "new packaging", Edit: pour.AddPackaging(), Seek: to(To{Item: n, Sub: -1, Col: formValue}), Begin: true, Said: "type the packaging's id, as you receive and price it"}
		},
		remove: func(f *Facts, on On) Do {
			i := on.Row.Item
			of := f.Plan.Cost.Packaging[i].Of
			return Do{Name: "removal of " + of, Edit: pour.RemovePackaging(i), Said: of + " is gone; {undo} brings it back"}
		},
	}
}

// The room of the panel's columns, and of the bar of a cost that is all of it.
const (
	costLabelW = 23
	costValueW = 10
	costBar    = 12
)

func (f *Facts) costGrid() grid.Grid {
	typed := []grid.Row{f.money("cost.price"), f.money("cost.wholesale_price"), f.stated("cost.margin_percent"), f.stated("cost.hands_min")}
	if c := &f.Sheet.Cost; c.Stated {
		typed = append(typed, f.worth("hands in all", f.Show.Figure(c.HandsMin, func(v float64) string { return f.Show.Number(v, 0) }), "min", pour.HandsCounted))
	}
	typed = append(typed, f.stated("cost.rejects"), f.stated("cost.testers"))
	told := f.costLines()
	for i := range f.Sheet.Cost.Sales {
		told = append(told, f.costSale(&f.Sheet.Cost.Sales[i])...)
	}
	told = append(told, f.costSwings()...)
	rows := slices.Concat(ofNone(f.costSums()), ofNone(typed), f.packagingRows(), ofNone(told))
	return grid.Grid{Columns: formColumns(costLabelW, costValueW), Rows: rows}
}

// ofNone says of rows that they are of no item that could be removed.
func ofNone(rows []grid.Row) []grid.Row {
	for i := range rows {
		rows[i].Item = -1
	}
	return rows
}

// costSums is what a bar and the batch cost, or why that is not known.
func (f *Facts) costSums() []grid.Row {
	c := &f.Sheet.Cost
	bar, known := c.PerBar()
	total, whole := c.Bill.Total()
	over := fmt.Sprintf("over %d good bars", c.Bill.Bars.Good)
	if c.Bill.Bars.Testers > 0 {
		over += fmt.Sprintf(", %d testers among them", c.Bill.Bars.Testers)
	}
	rows := []grid.Row{f.worth(cost.GoodBar+" costs", f.least(bar, known), c.Bill.Currency, cmp.Or(c.Why, over))}
	if c.Bill.Bars.Testers > 0 {
		sold, known := c.Bill.UnitSold()
		rows = append(rows, f.worth(cost.SoldBar+" costs", f.least(sold, known), c.Bill.Currency, fmt.Sprintf("over %d to sell, which carry the testers", c.Bill.Bars.Sold())))
	}
	return append(rows, f.worth("the batch", f.least(total, whole && c.Stated), c.Bill.Currency, strings.Join(c.Bill.Uncounted, "; ")))
}

// least is an amount, the least it can be where not all of it is known, or a dash where nothing is.
func (f *Facts) least(a money.Amount, known bool) string {
	switch {
	case known:
		return a.Cents()
	case a.Sign() > 0:
		return "> " + a.Cents()
	}
	return f.Show.Number(pour.Unknown(), 0)
}

// worth is a form's row for an amount that was worked out.
func (f *Facts) worth(label, amount, unit, remark string) grid.Row {
	return f.figure(label, pour.Amount{Number: amount, Unit: unit}, "", remark)
}

// money is a form's row for an amount of the plan, which is typed over like any number and kept as text, so that it stays exact.
func (f *Facts) money(path string) grid.Row {
	v, field, _ := pour.Text(f.Plan, path)
	c := words(field.Label, v, func(s string) pour.Edit { return pour.SetText(path, s) })
	c.Kind = grid.Number
	c.Set = func(typed string) (pour.Edit, error) {
		price, err := money.Typed(typed)
		if err != nil {
			return nil, err
		}
		return pour.SetText(path, price), nil
	}
	if c.Hint, c.Figure = field.Means+`; as in 6.50`, path; v == "" {
		c.Text = "none"
	}
	r := formRow(field.Label, c)
	r.Cells = append(r.Cells, f.label(f.Sheet.Cost.Bill.Currency))
	return r
}

// packagingRows is what goes on every bar, a row for each.
func (f *Facts) packagingRows() []grid.Row {
	rows := ofNone([]grid.Row{heading("on every bar")})
	for i, p := range f.Plan.Cost.Packaging {
		own := at("cost.packaging", i)
		c := words("packaging", p.Of, func(s string) pour.Edit { return pour.SetText(own+"of", plain.Slug(s, p.Of)) })
		c.Figure, c.Hint = own+"of", "its id, as you receive and price it: small letters, digits and hyphens"
		name := formRow("packaging", c)
		each := f.stated(own + "per_bar")
		name.Item, each.Item, each.Sub = i, i, 0
		rows = append(rows, name, each)
	}
	return rows
}

// costLines is where the money goes, largest first.
func (f *Facts) costLines() []grid.Row {
	b := &f.Sheet.Cost.Bill
	total, _ := b.Total()
	if len(b.Lines) == 0 {
		return nil
	}
	rows := []grid.Row{heading("where the money goes")}
	for _, i := range b.Largest(len(b.Lines)) {
		l := b.Lines[i]
		remark := l.Lacks
		if share, ok := l.Amount.InPercentOf(total); ok && remark == "" {
			remark = shareBar(share, costBar) + " " + share.Rounded(0) + " %"
		}
		r := f.worth(l.Name, f.least(l.Amount, l.Lacks == ""), "", remark)
		r.Cells[formValue].Hint = l.Name + ", " + string(l.Kind) + ": " + l.From
		rows = append(rows, r)
	}
	return rows
}

// shareBar is a share as a bar of cells; what is anything has one.
func shareBar(share money.Percent, most int) string {
	n := 1
	for n < most && money.WholePercent((2*n+1)*50/most).Compare(share) < 0 {
		n++
	}
	return strings.Repeat("█", n) + strings.Repeat("·", most-n)
}

// costSale is what selling in one way comes to.
func (f *Facts) costSale(s *pour.CostSale) []grid.Row {
	e, unit := &s.Earning, f.Sheet.Cost.Bill.Currency
	rows := []grid.Row{heading("sold: " + s.Terms.Channel.Name)}
	if s.Why != "" {
		rows = append(rows, f.worth("earns", f.Show.Number(pour.Unknown(), 0), "", s.Why))
	} else {
		rows = append(rows, f.worth("without tax", e.Net.Cents(), unit, ""), f.worth("fee", e.Fee.Cents(), unit, "a selling cost, no part of a bar's"),
			f.worth("margin", e.Margin.Rounded(1), "%", "of the price, before the fee"), f.markup(e),
			f.worth("contribution", e.Contribution.Cents(), unit, "before overhead"), f.worth("profit", e.Profit.Cents(), unit, "fee, overhead, testers"))
		if e.Hours {
			rows = append(rows, f.worth("an hour earns", e.PerHour.Cents(), unit, ""))
		}
		rows = append(rows, f.even(e))
	}
	if s.Margin != "" {
		rows = append(rows, f.worth("price to ask", s.ForIt.Cents(), unit, "margin of "+s.Margin+" % before the fee"))
	}
	return rows
}

func (f *Facts) markup(e *cost.Earning) grid.Row {
	if !e.Marked {
		return f.worth("markup", f.Show.Number(pour.Unknown(), 0), "%", "the bar costs nothing")
	}
	return f.worth("markup", e.Markup.Rounded(1), "%", "on the cost, before the fee")
}

func (f *Facts) even(e *cost.Earning) grid.Row {
	if e.Never != "" {
		return f.worth("breaks even", f.Show.Number(pour.Unknown(), 0), "", e.Never)
	}
	return f.worth("breaks even", strconv.Itoa(e.BreakEven), "", "bars sold in a month")
}

// costSwings is what a bar costs when one of the largest costs is a tenth dearer or cheaper.
func (f *Facts) costSwings() []grid.Row {
	if len(f.Sheet.Cost.Swings) == 0 {
		return nil
	}
	rows := []grid.Row{heading("a tenth dearer, " + cost.GoodBar + " costs")}
	for _, s := range f.Sheet.Cost.Swings {
		rows = append(rows, f.worth(s.Line.Name, s.Up.Unit.Cents(), f.Sheet.Cost.Bill.Currency, "a tenth cheaper "+s.Down.Unit.Cents()))
	}
	return rows
}
