package paper

import (
	"fmt"
	"strings"

	"pourbench/pour/season"
)

// SeasonText writes a season's board as text: every date with its pours backwards, what has no date, the weeks as a strip, what collides.
func SeasonText(b season.Board) string {
	p := textPage()
	p.raw("SEASON, " + b.Today.Weekday().String() + " " + b.Today.String())
	p.wrapped("", b.TellHouse())
	if len(b.Dates)+len(b.Rows) == 0 {
		p.raw("")
		p.wrapped("", "Nothing is planned. pourbench season add-date adds a market or an order, add-pour the pours for it, house what you have to pour with.")
		return p.text()
	}
	for _, d := range b.Dates {
		p.raw("")
		p.raw(clip(fmt.Sprintf("%s %s  %s", d.Day.Weekday().String()[:3], d.Day, plain(d.Name)), p.wide))
		p.wrapped("  ", b.TellDate(d))
		for _, row := range d.Rows {
			seasonRow(p, b, row)
		}
	}
	loose := false
	for i, r := range b.Rows {
		if r.HasDate {
			continue
		}
		if !loose {
			p.raw("")
			p.raw("For no date")
			loose = true
		}
		seasonRow(p, b, i)
	}
	seasonWeeks(p, b)
	p.raw("")
	p.raw("What collides")
	for _, line := range b.TellCollisions() {
		p.wrapped("  ", strings.TrimSpace(line))
	}
	return p.text()
}

// seasonRow writes a pour with its days.
func seasonRow(p *page, b season.Board, row int) {
	lines := b.TellPlan(row)
	number := ""
	if n := b.Rows[row].Entry; n > 0 {
		number = fmt.Sprintf("%d ", n)
	}
	p.wrapped("  ", b.Rows[row].Verdict.Sign()+" "+number+lines[0])
	for _, line := range lines[1:] {
		p.wrapped("      ", line)
	}
}

// The columns of the strip: names of pours, and the weeks that then fit.
const stripName = 16

// seasonWeeks writes a line of weeks for every pour.
func seasonWeeks(p *page, b season.Board) {
	if len(b.Rows) == 0 {
		return
	}
	from := b.First()
	weeks := (p.wide - stripName - 1) / season.CellsOfWeek
	months, days := season.Head(from, weeks)
	lead := strings.Repeat(" ", stripName+1)
	p.raw("")
	p.raw(strings.TrimRight(lead+months, " "))
	p.raw(strings.TrimRight(lead+days, " "))
	for i, r := range b.Rows {
		line := padded(clip(plain(r.Name), stripName), stripName+1)
		for x, m := range b.Strip(i, from, weeks) {
			sign := m.Sign()
			if m == season.NoMark && x == season.Cell(b.Today, from) {
				sign = "│"
			}
			line += sign
		}
		p.raw(strings.TrimRight(line, " "))
	}
	p.wrapped("", season.Legend())
}

// ResultText writes how each design did, and with whom.
func ResultText(list []season.Result) string {
	p := textPage()
	if len(list) == 0 {
		p.wrapped("", "No pour is in the logbook, so nothing is known of any design.")
	}
	for i, r := range list {
		if i > 0 {
			p.raw("")
		}
		p.raw(clip(plain(r.Design), p.wide))
		p.wrapped("  ", r.Tell())
		for _, o := range r.By {
			p.wrapped("    ", o.Tell())
		}
	}
	return p.text()
}
