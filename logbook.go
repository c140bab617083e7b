package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/adrg/xdg"
	"github.com/spf13/cobra"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/paper"
	"pourbench/pour/strict"
	"pourbench/tui/live"
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
	lesson, unread, err := learn.FromBook(book, shelf)
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
	text := paper.PourRecord(record, pour.Work(record.Plan, shelf, clock.Hand{}))
	if record.TrialScent != "" {
		taught, _, err := learn.FromBook(book, shelf)
		if err != nil {
			return err
		}
		result, err := learn.Trial(record, shelf, taught)
		if err != nil {
			return err
		}
		text += paper.TrialText(result)
	}
	_, err = io.WriteString(b.out, text)
	return err
}

func (b *bench) learned(_ logbook.Book, shelf pour.Shelf, _ []string) error {
	text, err := lesson(shelf)
	if err != nil {
		return err
	}
	_, err = io.WriteString(b.out, text)
	return err
}

// lesson says what all pours of the book have taught.
func lesson(shelf pour.Shelf) (string, error) {
	book, err := logbook.OpenBook(bookDir())
	if err != nil {
		return "", err
	}
	taught, unread, err := learn.FromBook(book, shelf)
	if err != nil {
		return "", err
	}
	return paper.LessonText(taught, unread), nil
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
		return logbook.ExportCSV(b.out, pours)
	})
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON instead of CSV")
	return cmd
}

// marking journals an event that carries words.
func (b *bench) marking(kind logbook.EventKind) func(logbook.Book, pour.Shelf, []string) error {
	return func(book logbook.Book, shelf pour.Shelf, args []string) error {
		e := logbook.Event{Kind: kind, Text: strings.Join(args[1:], " ")}
		return underway.Add(book, args[0], shelf, underway.SystemClock(session()), session(), e)
	}
}

// weighing journals what a bar weighed.
func (b *bench) weighing(kind logbook.EventKind) func(logbook.Book, pour.Shelf, []string) error {
	return func(book logbook.Book, shelf pour.Shelf, args []string) error {
		g, err := strict.ParseNumber(args[1])
		if err != nil {
			return err
		}
		if g <= 0 {
			return errors.New("log the weight of a bar: it weighs more than 0 g")
		}
		return underway.Add(book, args[0], shelf, underway.SystemClock(session()), session(), logbook.Event{Kind: kind, Value: g})
	}
}

// runCommand pours a plan live.
func (b *bench) runCommand() *cobra.Command {
	o := live.Options{}
	anew := false
	cmd := &cobra.Command{
		Use: "run [PLAN]", Short: "Pour a plan live: the checklist full screen, the clock running, every mark in the logbook",
		Long: `Pour a plan live: the checklist full screen, the clock running, every mark in the logbook.

A pour of the same plan that was left under way less than two days ago is taken up again, as after a killed
terminal; --new begins another. --trial SCENT tries a scent in two small jugs of the plan's batter instead.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			var err error
			if o.Sheet, o.Shelf, o.Hand, err = b.worked(args); err != nil {
				return err
			}
			return b.pourLive(o, anew)
		},
	}
	cmd.Flags().StringVar(&o.Resume, "resume", "", "take this pour up again")
	cmd.Flags().BoolVar(&anew, "new", false, "begin another pour although one of this plan is under way")
	cmd.Flags().StringVar(&o.TrialScent, "trial", "", "id of a scent to try instead of pouring")
	return cmd
}

// pourLive opens the live run on this terminal.
func (b *bench) pourLive(o live.Options, anew bool) error {
	if !b.terminal() {
		return errors.New("pour live: there is no terminal to draw on; print the checklist instead: pourbench checklist")
	}
	book, err := logbook.OpenBook(bookDir())
	if err != nil {
		return err
	}
	o.Book, o.Colour, o.Background, o.Notes = book, b.colour, b.background, b.errs
	if o.Resume == "" && o.TrialScent == "" && !anew {
		open, err := underWay(book, o.Sheet.Plan.Name)
		if err != nil {
			return err
		}
		if open != "" {
			b.say("taking up %s again; --new begins another pour", open)
			o.Resume = open
		}
	}
	return live.Run(o)
}

// underWay is the latest pour of a plan that was left under way, or "".
func underWay(book logbook.Book, plan string) (string, error) {
	list, err := book.List()
	if err != nil {
		return "", err
	}
	for _, e := range list {
		if e.Name == plan && e.TrialScent == "" && !e.Ended && time.Since(e.Opened) < staleRun {
			return e.ID, nil
		}
	}
	return "", nil
}

// staleRun is how old an unfinished pour may be and still be taken up by itself: lye does not wait for longer.
const staleRun = 48 * time.Hour
