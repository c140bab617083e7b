package command

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/stock"
	"pourbench/pour/stock/taking"
)

// stockTakeCommands are the commands with which batches take out of packs and give back.
func (g *program) stockTakeCommands() []*cobra.Command {
	take := g.book("take ID", "Take what a poured batch used out of its packs, first expired first out", 1, "", func(book logbook.Book, shelf pour.Shelf, args []string) error {
		said, err := g.takeStock(book, shelf, args[0])
		return errors.Join(g.print(said), err)
	})
	take.Example = "  pourbench stock take " + examplePour
	take.Long = `Take what a poured batch used out of its packs: what was weighed by the marks of its run,
and what the plan has where nothing was weighed, which is marked. A lot that was typed at
the scale is taken; else packs are picked first expired first out, and those past their
date on the day of the pour are left alone. What no pack covers is said, and taken when
you ask again after it was written in. The lots are written into the pour.`
	back := g.book("back ID [WHY]", "Give back to its packs what was taken for a batch", anyWords, "", func(book logbook.Book, shelf pour.Shelf, args []string) error {
		said, err := g.giveBack(book, shelf, args[0], strings.Join(args[1:], " "))
		return errors.Join(g.print(said), err)
	})
	back.Example = "  pourbench stock back " + examplePour + " it was the wrong batch"
	return []*cobra.Command{take, back, g.packCommand(), g.makeCommand()}
}

// poured is a pour whose loaf was mixed, its sheet and the day it was poured; what it is wanted for stands in a refusal.
func (g *program) poured(wanted string, book logbook.Book, shelf pour.Shelf, id string) (logbook.Pour, pour.Sheet, day.Day, error) {
	record, err := book.Read(id, shelf)
	if err != nil {
		return record, pour.Sheet{}, 0, err
	}
	switch _, mixed := logbook.LyeInAt(logbook.Standing(record.Events), pour.Base); {
	case record.PlanErr != nil:
		return record, pour.Sheet{}, 0, fmt.Errorf("%s %s: its plan cannot be used with today's shelf: %w", wanted, id, record.PlanErr)
	case record.TrialScent != "":
		return record, pour.Sheet{}, 0, fmt.Errorf("%s %s: it is a trial in two small jugs, not its plan; write what went in as lost (pourbench stock lose)", wanted, id)
	case !mixed:
		return record, pour.Sheet{}, 0, fmt.Errorf("%s %s: lye has not met oil, so nothing was used", wanted, id)
	}
	on := life.Of(record, shelf, pour.Hand{}, g.today()).Poured
	return record, pour.Weigh(record.Plan, shelf), on, nil
}

// takeStock takes what a pour used out of the packs, as far as it was not taken yet, writes it into the pour, and says what it took.
func (g *program) takeStock(book logbook.Book, shelf pour.Shelf, id string) (string, error) {
	record, sheet, on, err := g.poured("take stock for", book, shelf, id)
	if err != nil {
		return "", err
	}
	return g.draw(book, shelf, id, on, taking.Wants(&sheet, shelf, logbook.Standing(record.Events)))
}

// errNothing says that a deed writes nothing.
var errNothing = errors.New("nothing to write")

// draw takes for a pour what is wanted and was not taken yet. What was taken is in the ledger first, and then in the pour.
func (g *program) draw(book logbook.Book, shelf pour.Shelf, id string, on day.Day, wants []taking.Want) (string, error) {
	var t taking.Taking
	var more []taking.Lack
	_, err := g.ledger().Decide(g.now(), session(), func(s stock.State) ([]stock.Entry, error) {
		rest, beyond := taking.Rest(wants, s, id)
		t, more = taking.Of(rest, s.Stock, on), beyond
		if len(t.Draws) == 0 {
			return nil, errNothing
		}
		return t.Entries(id, on), nil
	})
	if err != nil && !errors.Is(err, errNothing) {
		return "", err
	}
	said := t.Tell() + taking.TellLacks(more)
	if said == "" {
		said = "nothing is left to take: it was all taken\n"
	}
	return said, g.enterDrawn(book, shelf, id, wants)
}

// enterDrawn makes the pour say what the ledger says was taken for it.
func (g *program) enterDrawn(book logbook.Book, shelf pour.Shelf, id string, wants []taking.Want) error {
	s, err := g.stocked()
	if err != nil {
		return err
	}
	_, err = life.LogAll(book, shelf, id, g.now(), session(), func(p logbook.Pour) []logbook.Event {
		return taking.Drew(wants, s, id, logbook.Standing(p.Events))
	})
	if err != nil {
		return fmt.Errorf("%w; the ledger has it, and pourbench stock take %s writes it into the pour", err, id)
	}
	return nil
}

// giveBack gives back all that was taken for a pour, and takes it out of the pour's marks.
func (g *program) giveBack(book logbook.Book, shelf pour.Shelf, id, reason string) (string, error) {
	s, err := g.stocked()
	if err != nil {
		return "", err
	}
	// A batch whose file is gone may have left its takes behind: they are given back all the same.
	_, gone := book.Read(id, shelf)
	if gone != nil && (!errors.Is(gone, fs.ErrNotExist) || len(taking.TakenFor(s, id)) == 0) {
		return "", gone
	}
	if reason == "" {
		reason = "given back"
	}
	n := 0
	_, err = g.ledger().Decide(g.now(), session(), func(s stock.State) ([]stock.Entry, error) {
		out := taking.Back(s, id, g.today(), reason)
		if n = len(out); n == 0 {
			return nil, errNothing
		}
		return out, nil
	})
	if err != nil && !errors.Is(err, errNothing) {
		return "", err
	}
	if gone == nil {
		err = g.enterDrawn(book, shelf, id, nil)
	} else {
		err = nil // there is no pour to write it into
	}
	if err != nil {
		return "", err
	}
	if n == 0 {
		return "nothing was taken for " + id + "\n", nil
	}
	return fmt.Sprintf("%d takes for %s are given back to their packs\n", n, id), nil
}

// offerTake says how to take what the run that just ended used, where a ledger is kept and nothing was taken for it. What cannot be read is told of
// elsewhere.
func (g *program) offerTake() {
	s, err := g.stocked()
	if err != nil || len(s.Held) == 0 {
		return
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return
	}
	list, err := book.List()
	if err != nil || len(list) == 0 {
		return
	}
	last := slices.MaxFunc(list, func(a, b logbook.Entry) int { return cmp.Compare(a.Modified, b.Modified) })
	if last.Ended && last.Fault == nil && last.TrialScent == "" && len(taking.TakenFor(s, last.ID)) == 0 {
		g.say("%s is poured: pourbench stock take %s takes what it used out of your packs", last.Name, last.ID)
	}
}
