package command

import (
	"fmt"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
)

// writeIn logs a pour that was poured without the live run.
func (g *program) writeIn(book logbook.Book, shelf pour.Shelf, args []string) error {
	doc, err := g.load(args[:1], shelf)
	if err != nil {
		return err
	}
	at, err := momentOfPour(strings.Join(args[1:], " "), g.now())
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
func momentOfPour(text string, now time.Time) (time.Time, error) {
	moment, err := day.ReadMoment(text, day.Of(now))
	if err != nil {
		return time.Time{}, fmt.Errorf("log the pour on %q: %w; its hour stands behind it, if it is known, as 15:30", text, err)
	}
	if at, err := time.ParseInLocation("2006-01-02 15:04", moment, now.Location()); err == nil {
		return at, nil
	}
	at, err := time.ParseInLocation(time.DateOnly, moment, now.Location())
	if err != nil {
		return at, fmt.Errorf("log the pour on %q: %w", text, err)
	}
	at = at.Add(12 * time.Hour)
	if at.After(now) && at.Format(time.DateOnly) == now.Format(time.DateOnly) {
		at = now
	}
	return at, nil
}
