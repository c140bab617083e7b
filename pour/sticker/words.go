package sticker

import (
	"fmt"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
)

// dated is the lot and until when the bar is good.
func (l *Label) dated(p pour.Plan, d Details) {
	if !p.PourAt.IsZero() {
		if d.Made == 0 {
			d.Made = day.Of(p.PourAt)
		}
		if d.Lot == "" {
			d.Lot = p.PourAt.Format(time.DateOnly)
		}
	}
	l.Lot = d.Lot
	if l.months = int(p.Label.BestBeforeMo); l.months > 0 && d.Made != 0 {
		l.Best = bestBefore(d.Made, l.months)
	}
}

// bestBefore is the last month that has ended by so many months after a day, as month/year: who prints only a month prints none that goes on
// longer than the bar is good for.
func bestBefore(made day.Day, months int) string {
	y, m, d := made.At(0, 0, time.UTC).Date()
	first := time.Date(y, m+time.Month(months), 1, 0, 0, 0, 0, time.UTC)
	if last := first.AddDate(0, 1, -1).Day(); d < last {
		first = first.AddDate(0, -1, 0)
	}
	return first.Format("01/2006")
}

// best is the best-before line.
func (l *Label) best() string {
	if l.Best == "" {
		return ""
	}
	return "Best used before the end of " + l.Best
}

func (l *Label) lot() string {
	if l.Lot == "" {
		return ""
	}
	return "Lot " + l.Lot
}

// asOf says how far the label goes by its market's rules. It stands beside every label, not on it.
func (l *Label) asOf() string {
	old := ""
	if l.Old {
		old = ", over twelve months ago in part"
	}
	return fmt.Sprintf("%s, as looked up %s%s. Help, not legal advice: check the current text, ask locally.", l.Market.Name, l.Market.AsOf, old)
}

// heading names the file.
func (l *Label) heading() string { return l.Plan + ": label. " + l.asOf() }

// Text is the label as plain text, a paragraph for each thing it says, and below a line what does not stand on it.
func (l Label) Text() string {
	var b strings.Builder
	paragraph := func(lines ...string) {
		some := false
		for _, line := range lines {
			if line != "" {
				b.WriteString(line + "\n")
				some = true
			}
		}
		if some {
			b.WriteString("\n")
		}
	}
	paragraph(l.Title, l.Identity)
	paragraph(l.Says)
	paragraph(l.Net)
	paragraph(l.List)
	paragraph(l.Cautions...)
	paragraph(l.Maker...)
	opened := ""
	if l.OpenMonths > 0 {
		opened = fmt.Sprintf("Once opened: good for %d months", l.OpenMonths)
	}
	paragraph(l.lot(), l.best(), opened)
	b.WriteString("---\nNot on the label: " + l.asOf() + "\n")
	return b.String()
}
