package command

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/strict"
)

// weighing journals what a bar weighed, says what it wrote and what of it can hardly be.
func (g *program) weighing(kind logbook.EventKind) func(logbook.Book, pour.Shelf, []string) error {
	return func(book logbook.Book, shelf pour.Shelf, args []string) error {
		grams, err := strict.ParseNumber(args[1])
		if err != nil {
			return err
		}
		if grams <= 0 {
			return errors.New("log the weight of a bar: it weighs more than 0 g")
		}
		e := logbook.Event{Kind: kind, Value: grams, Wall: g.now()}
		if len(args) > 2 {
			on, err := g.day(strings.Join(args[2:], " "))
			if err != nil {
				return fmt.Errorf("log the weight of a bar: %w", err)
			}
			e.What = on.String()
		}
		before, readErr := book.Read(args[0], shelf)
		if err := g.mark(book, shelf, args[0], e); err != nil {
			return err
		}
		planned, known := 0.0, readErr == nil && before.PlanErr == nil
		if known {
			planned = plannedBar(before.Plan, shelf, kind)
		}
		if err := g.print(barWords(args[0], e, before.Plan.Show, planned) + "\n"); err != nil {
			return err
		}
		if doubts := barDoubts(before, e, planned); known && len(doubts) > 0 {
			g.say("%s. It is logged all the same; if it was mistyped, take the last [[event]] out of %s", strings.Join(doubts, "; "), book.Path(args[0]))
		}
		return nil
	}
}

// plannedBar is what one bar weighs by the plan when it is cut or after its cure, g.
func plannedBar(p pour.Plan, shelf pour.Shelf, kind logbook.EventKind) float64 {
	bars := pour.Weigh(p, shelf).Bars
	if kind == logbook.Cured {
		return bars.CuredG
	}
	return bars.CutG
}

// barWords says what was written of a bar, beside what the plan says where it can be used.
func barWords(id string, e logbook.Event, show pour.Show, planned float64) string {
	when := map[logbook.EventKind]string{logbook.Cut: "as cut", logbook.Cured: "cured"}[e.Kind]
	text := fmt.Sprintf("%s: one bar weighed %.6g g %s, on %s", id, e.Value, when, e.Day())
	if planned <= 0 {
		return text
	}
	return text + "; planned " + show.Figure(pour.AsFigure(planned), show.Dose)
}

// farOff is how many times the planned mass, or which part of it, is taken for a slip: no bar is cut twice or half as thick by mistake.
const farOff = 2

// barDoubts says what can hardly be of a bar's weight and day, beside the plan and what was logged before.
func barDoubts(before logbook.Pour, e logbook.Event, planned float64) []string {
	var out []string
	switch {
	case planned <= 0:
	case e.Value >= farOff*planned:
		out = append(out, fmt.Sprintf("%.6g g is %.2g times the planned mass", e.Value, e.Value/planned))
	case e.Value*farOff <= planned:
		out = append(out, fmt.Sprintf("%.6g g is %.2g %% of the planned mass", e.Value, 100*e.Value/planned))
	}
	weighed := map[logbook.EventKind]float64{}
	for _, x := range logbook.Standing(before.Events) {
		weighed[x.Kind] = x.Value
	}
	if cut := weighed[logbook.Cut]; e.Kind == logbook.Cured && cut > 0 && e.Value > cut {
		out = append(out, fmt.Sprintf("the cured bar is heavier than the %.6g g it weighed as cut", cut))
	}
	if cured := weighed[logbook.Cured]; e.Kind == logbook.Cut && cured > e.Value {
		out = append(out, fmt.Sprintf("the bar as cut is lighter than the %.6g g it weighed cured", cured))
	}
	if e.Kind == logbook.Cured && e.Day() == before.Opened.Format(time.DateOnly) {
		out = append(out, "it is the day of the pour: a cure takes weeks")
	}
	return out
}
