package season

import (
	"fmt"
	"strings"
)

// TellHouse says what the maker has to pour with, and how full her rack is today.
func (b Board) TellHouse() string {
	h := b.House
	dry := 0
	for _, i := range b.drying(b.Today) {
		dry += b.Rows[i].Bars
	}
	parts := []string{counted(dry, "bar") + " on the rack"}
	if h.RackBars > 0 {
		parts[0] += fmt.Sprintf(" of %d places", h.RackBars)
	}
	var days []string
	for n := range weekdays() {
		d := (n + 1) % week // from Monday
		for _, on := range h.BenchDays {
			if int(on) == d {
				days = append(days, on.String()[:3])
			}
		}
	}
	if len(days) > 0 {
		parts = append(parts, "bench days "+strings.Join(days, " "))
	}
	if h.MostPours > 0 {
		parts = append(parts, counted(h.MostPours, "pour")+" a day at most")
	}
	for _, m := range h.Moulds {
		parts = append(parts, fmt.Sprintf("%d × %s", m.Count, m.Name))
	}
	return strings.Join(parts, "; ")
}

// TellDate says what a date is, what it wants and what it gets.
func (b Board) TellDate(d DateRow) string {
	text := string(d.Kind)
	if d.Audience != "" {
		text += " for " + d.Audience
	}
	switch n := int(d.Day - b.Today); {
	case n < 0:
		text += ", over"
	case n == 0:
		text += ", today"
	default:
		text += ", in " + counted(n, "day")
	}
	if d.LabelDays > 0 {
		text += ", labels from " + b.told(d.Label)
	}
	for _, c := range d.Covers {
		text += fmt.Sprintf("; %s of %s: ", counted(c.Wanted, "bar"), c.Design)
		switch {
		case c.Short > 0:
			text += fmt.Sprintf("%d short", c.Short)
		case c.Unsure > 0:
			text += fmt.Sprintf("covered, %d of them likely but not sure", c.Unsure)
		default:
			text += "covered"
		}
	}
	return text
}

// Tell says where the bars of a design went.
func (r Result) Tell() string {
	text := counted(r.Pours, "pour")
	if r.Failed > 0 {
		text += fmt.Sprintf(", %d failed", r.Failed)
	}
	text += "; " + counted(r.Bars, "bar") + ":"
	for _, part := range []struct {
		n    int
		what string
	}{{r.Sold, "sold"}, {r.Given, "given"}, {r.Kept, "kept"}, {r.Seconds, "seconds"}, {r.Missing, "missing"}, {r.Left, "left"}} {
		if part.n != 0 || part.what == "sold" || part.what == "left" {
			text += fmt.Sprintf(" %d %s,", part.n, part.what)
		}
	}
	text = strings.TrimSuffix(text, ",")
	if r.Unknown > 0 {
		text += fmt.Sprintf("; of %s nobody knows how many bars there were", counted(r.Unknown, "pour"))
	}
	if len(r.SoldOut) > 0 {
		text += fmt.Sprintf("; sold out after %s from the first bar (%s)", span(r.SoldOut), counted(len(r.SoldOut), "pour"))
	}
	return text
}

// span is the shortest and the longest of some days, which are in order.
func span(days []int) string {
	first, last := days[0], days[len(days)-1]
	if first == last {
		return counted(first, "day")
	}
	return fmt.Sprintf("%d to %s", first, counted(last, "day"))
}

// Tell says what went to an audience by a channel, and at which price.
func (o Outlet) Tell() string {
	who, how := o.Audience, o.Channel
	if who == "" {
		who = "audience not said"
	}
	if how == "" {
		how = "channel not said"
	}
	text := fmt.Sprintf("%s, %s: %d sold", who, how, o.Sold)
	if o.Given > 0 {
		text += fmt.Sprintf(", %d given", o.Given)
	}
	for _, t := range o.Takings {
		currency := t.Currency
		if currency == "" {
			currency = "in a currency nobody said"
		}
		text += fmt.Sprintf("; %s %s a bar on average (%s, %s in all)", t.Average(), currency, counted(t.Bars, "bar"), t.Sum)
	}
	if o.Unpriced > 0 {
		text += fmt.Sprintf("; price not said of %s", counted(o.Unpriced, "bar"))
	}
	if len(o.Days) > 0 {
		text += fmt.Sprintf("; the last went %s after the pour's first", span(o.Days))
	}
	return text
}
