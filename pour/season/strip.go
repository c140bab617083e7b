package season

import (
	"strings"

	"pourbench/pour/day"
)

// Mark is what stands in one cell of a strip of weeks.
type Mark int

// The marks, a later one before an earlier one where both would stand in one cell.
const (
	NoMark     Mark = iota
	DryingMark      // from the cut to the early end of the band
	BandMark        // from its early end to its late end
	EmbedsMark      // by when embeds are made
	CutMark         // of the loaf
	LabelMark       // the first day of labelling
	OrderMark       // the day of an order
	MarketMark      // the day of a market
	PourMark        // the day of the pour
)

// marks are their signs and what those mean, in the order of a legend.
func marks() []struct {
	Mark
	sign, means string
} {
	return []struct {
		Mark
		sign, means string
	}{
		{EmbedsMark, "E", "embeds made"},
		{PourMark, "P", "pour"},
		{CutMark, "C", "cut"},
		{DryingMark, "─", "dries"},
		{BandMark, "▒", "dry within"},
		{LabelMark, "L", "label"},
		{MarketMark, "M", "market"},
		{OrderMark, "O", "order"},
	}
}

// Sign is the letter of a mark; a blank for none.
func (m Mark) Sign() string {
	for _, k := range marks() {
		if k.Mark == m {
			return k.sign
		}
	}
	return " "
}

// Legend says what the signs mean, in one line.
func Legend() string {
	text := ""
	for _, k := range marks() {
		text += k.sign + " " + k.means + "  "
	}
	return text + "│ today"
}

// CellsOfWeek is how many cells a week has on a strip.
const CellsOfWeek = 3

// Head is what stands above a strip that begins on a Monday: the months, and the days of the Mondays. A month of which one Monday alone is shown
// before the next is left out, so that no two run together.
func Head(from day.Day, weeks int) (months, days string) {
	parts := func(k int) (number, month string) {
		number, month, _ = strings.Cut((from + day.Day(k*week)).Short(), " ")
		return number, month
	}
	before := ""
	for k := range weeks {
		number, month := parts(k)
		days += number + strings.Repeat(" ", CellsOfWeek-len(number))
		name := month
		if _, next := parts(k + 1); month == before || next != month {
			name = ""
		}
		if name != "" {
			before = month
		}
		months += name + strings.Repeat(" ", CellsOfWeek-len(name))
	}
	return months, days
}

// Strip is a pour's days as cells, from a Monday on. A mark that finds its cell taken by one that goes before it stands beside it.
func (b Board) Strip(row int, from day.Day, weeks int) []Mark {
	r := b.Rows[row]
	out := make([]Mark, weeks*CellsOfWeek)
	if r.HasDate {
		kind := MarketMark
		if at := b.dateAt(r.For); at >= 0 && b.Dates[at].Kind == Order {
			kind = OrderMark
		}
		put(out, Cell(r.Due, from), kind, -1)
		if r.Label < r.Due {
			put(out, Cell(r.Label, from), LabelMark, -1)
		}
	}
	if !r.Placed {
		return out
	}
	put(out, Cell(r.Pour, from), PourMark, +1)
	if r.Missed {
		return out
	}
	put(out, Cell(r.Cut, from), CutMark, +1)
	for _, e := range r.Embeds {
		put(out, Cell(e.By, from), EmbedsMark, -1)
	}
	fill(out, Cell(r.Ready.Early, from), Cell(r.Ready.Late, from)+1, BandMark)
	fill(out, Cell(r.Cut, from), Cell(r.Ready.Early, from), DryingMark)
	return out
}

// Cell is the place of a day on a strip that begins on a Monday; below 0 before it.
func Cell(d, from day.Day) int {
	n := int(d - from)
	weeks := n / week
	if n%week < 0 {
		weeks--
	}
	return weeks*CellsOfWeek + (n-weeks*week)*CellsOfWeek/week
}

// put marks a cell or, where it has a mark, the one beside it that is free.
func put(cells []Mark, at int, m Mark, beside int) {
	for range 2 {
		if at < 0 || at >= len(cells) {
			return
		}
		if cells[at] == NoMark {
			cells[at] = m
			return
		}
		at += beside
	}
}

// fill marks the cells that have no mark.
func fill(cells []Mark, from, to int, m Mark) {
	for at := max(from, 0); at < min(to, len(cells)); at++ {
		if cells[at] == NoMark {
			cells[at] = m
		}
	}
}

// Monday is that of a day's week.
func Monday(d day.Day) day.Day { return monday(d) }

// First is the Monday on which a strip of so many weeks begins that shows most: a week before today or, where all that is planned begins
// later, before that.
func (b Board) First() day.Day {
	first, any := b.Today, false
	for _, r := range b.Rows {
		if r.Placed && r.onRack && (!any || r.Pour < first) {
			first, any = r.Pour, true
		}
	}
	const back = 4 // weeks before today at most, so that most of a strip is what comes
	return monday(max(first, b.Today-back*week))
}
