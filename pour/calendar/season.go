package calendar

import (
	"fmt"
	"strings"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/season"
)

// What begins the names of a season's entries: those of a date, and those of a pour that is planned for one.
const (
	dateMark    = "date "
	plannedMark = "planned "
)

// dayBefore is nine in the morning of the day before a whole day.
const dayBefore = -15 * time.Hour

// What things have to be bought for: a pour, and embeds.
const (
	kindPourBy = "pour-by"
	embedMark  = "embed-"
)

// ahead is nine in the morning a week before a whole day, time enough to buy oils; common practice, no source.
const ahead = inMorning - 7*24*time.Hour

// early is an earlier reminder than the entry's own, for what has to be bought first; false: it needs none.
func (e Entry) early() (time.Duration, bool) {
	return ahead, e.Reminded && e.AllDay && (e.Kind == kindPourBy || strings.HasPrefix(e.Kind, embedMark)) && OfTheSeason(e.Batch)
}

// OfTheSeason reports whether entries are the season's.
func OfTheSeason(batch string) bool {
	return strings.HasPrefix(batch, dateMark) || strings.HasPrefix(batch, plannedMark)
}

// PlannedBatch is what the entries of a row of the season's board are known by that is not poured yet.
func PlannedBatch(r season.Row) string { return strings.TrimSpace(plannedMark + r.Key) }

// OfSeason is a season in the calendar: its markets and orders, the first day of labelling for each, and for every pour that is planned the
// day by which to pour and to make its embeds. Revised is when the season's file was written last.
func OfSeason(b season.Board, revised time.Time) []Entry {
	var out []Entry
	for _, d := range b.Dates {
		out = append(out, dated(d, revised)...)
	}
	for _, r := range b.Rows {
		if r.Planned() && r.Placed && r.Fault == nil {
			out = append(out, planned(r, b.Today, revised)...)
		}
	}
	return out
}

// seasonal is an entry of one day.
func seasonal(batch, kind, what string, on day.Day, remind time.Duration, revised time.Time, words ...string) Entry {
	e := Entry{Batch: batch, Kind: kind, What: what, Words: strings.Join(words, "\n"), Reminded: true, Remind: remind, Revised: revised}
	return e.on(on)
}

// dated is a market or an order. Its kind is no part of its name: an order that becomes a market stays the same.
func dated(d season.DateRow, revised time.Time) []Entry {
	what := map[season.Kind]string{season.Market: "Market", season.Order: "Order"}[d.Kind]
	var words []string
	if d.Audience != "" {
		words = append(words, "For "+d.Audience)
	}
	for _, c := range d.Covers {
		line := fmt.Sprintf("%d of %s", c.Wanted, c.Design)
		if c.Short > 0 {
			line += fmt.Sprintf(", %d short", c.Short)
		}
		words = append(words, line)
	}
	out := []Entry{seasonal(dateMark+d.Name, "date", what+": "+d.Name, d.Day, dayBefore, revised, words...)}
	if d.Label < d.Day {
		out = append(out, seasonal(dateMark+d.Name, "label", "Label and pack for: "+d.Name, d.Label, inMorning, revised))
	}
	return out
}

// planned is a pour of the season that is to come.
func planned(r season.Row, today day.Day, revised time.Time) []Entry {
	batch, name := PlannedBatch(r), r.Name
	if r.For != "" {
		name += " for " + r.For
	}
	var out []Entry
	if r.Fixed {
		out = append(out, seasonal(batch, "pour", "Pour: "+name, r.Pour, dayBefore, revised))
	}
	if by, ok := pourBy(r, today); ok {
		out = append(out, seasonal(batch, kindPourBy, "Pour by: "+name, by, inMorning, revised, byWords(r)))
	}
	for i, e := range r.Embeds {
		out = append(out, seasonal(batch, fmt.Sprintf(embedMark+"%d", i+1), "Make embeds by: "+e.Name+", "+name, e.By, inMorning, revised))
	}
	return out
}

// pourBy is the day by which to pour that is still to come: the one to be sure, or else the one by the middle of the cure's band, or by its
// early end.
func pourBy(r season.Row, today day.Day) (day.Day, bool) {
	if !r.HasDate {
		return 0, false
	}
	for _, d := range []day.Day{r.By.Late, r.By.Middle, r.By.Early} {
		if d >= today {
			return d, true
		}
	}
	return 0, false
}

// byWords say how sure the day is.
func byWords(r season.Row) string {
	words := "Then its bars are dry by the first day of labelling, " + r.Label.Short()
	if r.By.Late != r.By.Early {
		words += fmt.Sprintf(": poured by %s to be sure, by %s by the middle of the forecast, by %s with luck", r.By.Late.Short(), r.By.Middle.Short(), r.By.Early.Short())
	}
	return words + "."
}
