package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"
	"github.com/spf13/cobra"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/paper"
)

// session names this terminal in the events of a pour.
func session() string { return fmt.Sprintf("t%d", os.Getpid()) }

// bookDir is where the maker's pours are kept.
func bookDir() string {
	if home := os.Getenv("XDG_DATA_HOME"); home != "" {
		return filepath.Join(home, "pourbench", "pours")
	}
	return filepath.Join(xdg.DataHome, "pourbench", "pours")
}

// hand is what the maker's pours have taught. Without a logbook it is the prior; a pour that cannot be read is said and passed over.
func (b *bench) hand(shelf pour.Shelf) clock.Hand {
	if _, err := os.Stat(bookDir()); err != nil {
		return clock.Hand{}
	}
	book, err := logbook.OpenBook(bookDir())
	if err != nil {
		b.say("the logbook cannot be opened, times are the model's alone: %v", err)
		return clock.Hand{}
	}
	lesson, unread, err := book.Learn(shelf)
	if err != nil {
		b.say("the logbook cannot be learnt from, times are the model's alone: %v", err)
		return clock.Hand{}
	}
	for _, u := range unread {
		b.say("pour %s teaches nothing: %v", u.ID, u.Err)
	}
	return lesson.Hand
}

func (b *bench) say(format string, args ...any) {
	_, _ = fmt.Fprintf(b.errs, "pourbench: "+format+"\n", args...)
}

// book wraps a command of the logbook.
func (b *bench) book(use, short string, args cobra.PositionalArgs, do func(logbook.Book, pour.Shelf, []string) error) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: args,
		RunE: func(_ *cobra.Command, args []string) error {
			shelf, err := b.shelf()
			if err != nil {
				return err
			}
			book, err := logbook.OpenBook(bookDir())
			if err != nil {
				return err
			}
			return do(book, shelf, args)
		},
	}
}

func (b *bench) logbookCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use: "logbook", Short: "List, search, compare and export your pours, and see what they taught",
		Long: "List, search, compare and export your pours, and see what they taught.\n\nEvery pour is one plain file in " + bookDir() + ".",
	}
	cmd.AddCommand(
		b.book("list [WORD ...]", "List the pours that hold every word", cobra.ArbitraryArgs, b.listPours),
		b.book("show ID", "Compare plan and pour", cobra.ExactArgs(1), b.showPour),
		b.book("learned", "Say what your pours have taught the clock", cobra.NoArgs, b.learned),
		b.exportCommand(),
		b.book("leave-out ID REASON", "Let a pour teach nothing", cobra.MinimumNArgs(2), b.marking(logbook.LeftOut)),
		b.book("take-in ID", "Let a pour teach again", cobra.ExactArgs(1), b.marking(logbook.TakenIn)),
		b.book("result ID WORDS", "Log how a pour came out", cobra.MinimumNArgs(2), b.marking(logbook.Result)),
		b.book("note ID WORDS", "Add a note to a pour", cobra.MinimumNArgs(2), b.marking(logbook.Noted)),
		b.book("cut ID GRAMS", "Log what one bar weighed when it was cut", cobra.ExactArgs(2), b.weighing(logbook.Cut)),
		b.book("cured ID GRAMS", "Log what one bar weighed after its cure", cobra.ExactArgs(2), b.weighing(logbook.Cured)),
		b.book("forget ID", "Remove a pour's file for good", cobra.ExactArgs(1), func(book logbook.Book, _ pour.Shelf, args []string) error {
			return book.Forget(args[0])
		}),
	)
	return cmd
}

func (b *bench) listPours(book logbook.Book, _ pour.Shelf, words []string) error {
	list, err := book.List()
	if err != nil {
		return err
	}
	_, err = io.WriteString(b.out, paper.PourList(logbook.Search(list, strings.Join(words, " "))))
	return err
}

func (b *bench) showPour(book logbook.Book, shelf pour.Shelf, args []string) error {
	record, err := book.Read(args[0], shelf)
	if err != nil {
		return err
	}
	if record.PlanErr != nil {
		return fmt.Errorf("show %s: its plan cannot be used with today's shelf: %w", args[0], record.PlanErr)
	}
	_, err = io.WriteString(b.out, paper.PourRecord(record, pour.Work(record.Plan, shelf, clock.Hand{})))
	return err
}

func (b *bench) learned(book logbook.Book, shelf pour.Shelf, _ []string) error {
	lesson, unread, err := book.Learn(shelf)
	if err != nil {
		return err
	}
	_, err = io.WriteString(b.out, paper.LessonText(lesson, unread))
	return err
}

func (b *bench) exportCommand() *cobra.Command {
	asJSON := false
	cmd := b.book("export", "Print every pour as CSV or JSON", cobra.NoArgs, func(book logbook.Book, shelf pour.Shelf, _ []string) error {
		list, err := book.List()
		if err != nil {
			return err
		}
		pours := make([]logbook.Pour, 0, len(list))
		for _, e := range list {
			record, err := book.Read(e.ID, shelf)
			if err != nil {
				b.say("%s is left out: %v", e.ID, err)
				continue
			}
			pours = append(pours, record)
		}
		if asJSON {
			return logbook.ExportJSON(b.out, shelf, pours)
		}
		return logbook.ExportCSV(b.out, shelf, pours)
	})
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON instead of CSV")
	return cmd
}

// marking journals an event that carries words.
func (b *bench) marking(kind logbook.EventKind) func(logbook.Book, pour.Shelf, []string) error {
	return func(book logbook.Book, shelf pour.Shelf, args []string) error {
		e := logbook.Event{Kind: kind, Text: strings.Join(args[1:], " ")}
		return book.Add(args[0], shelf, logbook.SystemClock(session()), session(), e)
	}
}

// weighing journals what a bar weighed.
func (b *bench) weighing(kind logbook.EventKind) func(logbook.Book, pour.Shelf, []string) error {
	return func(book logbook.Book, shelf pour.Shelf, args []string) error {
		g, err := pour.ParseNumber(args[1])
		if err != nil {
			return err
		}
		if g <= 0 {
			return errors.New("log the weight of a bar: it weighs more than 0 g")
		}
		return book.Add(args[0], shelf, logbook.SystemClock(session()), session(), logbook.Event{Kind: kind, Value: g})
	}
}
