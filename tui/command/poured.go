package command

import (
	"fmt"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
)

// writeIn logs a pour that was poured without the live run.
func (g *program) writeIn(book logbook.Book, shelf pour.Shelf, args []string) error {
	doc, err := g.load(args[:1], shelf)
	if err != nil {
		return err
	}
	hour := ""
	if len(args) > 2 {
		hour = args[2]
	}
	at, err := momentOfPour(args[1], hour, g.now())
	if err != nil {
		return err
	}
	sheet := pour.Weigh(doc.Plan, shelf)
	id, err := underway.Enter(book, sheet, at, g.now(), session())
	if err != nil {
		return err
	}
	return g.print(fmt.Sprintf("%s: poured on %s, as its plan has it. What was otherwise: pourbench logbook note %s WORDS; what was weighed into it: pourbench logbook weighed %s GRAMS OF-WHAT; what it used: pourbench stock take %s; what became of it: pourbench batches\n", id, at.Format("2006-01-02 15:04"), id, id, id))
}

// momentOfPour reads the day of a pour and its hour. A day without one is its noon, and today, before noon, this moment.
func momentOfPour(day, hour string, now time.Time) (time.Time, error) {
	form, text := time.DateOnly, day
	if hour != "" {
		form, text = "2006-01-02 15:04", day+" "+hour
	}
	at, err := time.ParseInLocation(form, text, now.Location())
	if err != nil {
		return at, fmt.Errorf("log the pour on %q: write its day as year-month-day, such as %s, and its hour behind it, if it is known, as 15:30", text, now.Format(time.DateOnly))
	}
	if hour == "" {
		at = at.Add(12 * time.Hour)
		if at.After(now) && at.Format(time.DateOnly) == now.Format(time.DateOnly) {
			at = now
		}
	}
	return at, nil
}
