package command

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/paper"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// hand is what the maker's pours have taught. Without a logbook it is the prior; a pour that cannot be read is said and passed over.
func (g *program) hand(shelf pour.Shelf) clock.Hand {
	lesson, unread, err := g.taught(shelf)
	if err != nil {
		g.say("times are the model's alone: %v", err)
	}
	for _, u := range unread {
		g.say("pour %s teaches nothing: %v", u.ID, u.Err)
	}
	return lesson.Hand
}

// taught is what the maker's pours teach by now, and which teach nothing. Nothing is said: the bench may have the terminal.
func (g *program) taught(shelf pour.Shelf) (learn.Lesson, []learn.Unread, error) {
	if _, err := os.Stat(g.bookDir()); err != nil {
		return learn.Lesson{}, nil, nil // there is no logbook yet
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return learn.Lesson{}, nil, err
	}
	lesson, unread, err := learn.FromBook(book, shelf)
	if err != nil {
		return learn.Lesson{}, nil, fmt.Errorf("learn from the logbook: %w", err)
	}
	return lesson, unread, nil
}

// book wraps a command of the logbook.
func (g *program) book(use, short string, args cobra.PositionalArgs, do func(logbook.Book, pour.Shelf, []string) error) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: args,
		RunE: func(_ *cobra.Command, args []string) error {
			shelf, err := g.shelf()
			if err != nil {
				return err
			}
			book, err := logbook.OpenBook(g.bookDir())
			if err != nil {
				return err
			}
			return do(book, shelf, args)
		},
	}
}

func (g *program) logbookCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use: "logbook", Short: "List, search, compare and export your pours, and see what they taught",
		Long: "List, search, compare and export your pours, and see what they taught.\n\nEvery pour is one plain file in " + g.bookDir() + ".",
	}
	cmd.AddCommand(
		g.book("list [WORD ...]", "List the pours that hold every word", cobra.ArbitraryArgs, g.listPours),
		g.book("show ID", "Compare plan and pour", cobra.ExactArgs(1), g.showPour),
		g.book("learned", "Say what your pours have taught the clock", cobra.NoArgs, g.learned),
		g.exportCommand(),
		g.book("leave-out ID REASON", "Let a pour teach nothing", cobra.MinimumNArgs(2), g.marking(logbook.LeftOut)),
		g.book("take-in ID", "Let a pour teach again", cobra.ExactArgs(1), g.marking(logbook.TakenIn)),
		g.book("result ID WORDS", "Log how a pour came out", cobra.MinimumNArgs(2), g.marking(logbook.Result)),
		g.book("note ID WORDS", "Add a note to a pour", cobra.MinimumNArgs(2), g.marking(logbook.Noted)),
		g.book("cut ID GRAMS [DAY]", "Log what one bar weighed when it was cut, today or on a day such as 2026-12-06", cobra.RangeArgs(2, 3), g.weighing(logbook.Cut)),
		g.book("cured ID GRAMS [DAY]", "Log what one bar weighed after its cure, today or on a day such as 2027-01-10", cobra.RangeArgs(2, 3), g.weighing(logbook.Cured)),
		g.book("forget ID", "Remove a pour's file for good", cobra.ExactArgs(1), func(book logbook.Book, _ pour.Shelf, args []string) error {
			return book.Forget(args[0])
		}),
	)
	return cmd
}

func (g *program) listPours(book logbook.Book, _ pour.Shelf, words []string) error {
	list, err := book.List()
	if err != nil {
		return err
	}
	return g.print(paper.PourList(logbook.Search(list, strings.Join(words, " "))))
}

func (g *program) showPour(book logbook.Book, shelf pour.Shelf, args []string) error {
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
		result, err := learn.Trial(record, taught)
		if err != nil {
			return err
		}
		text += paper.TrialText(result)
	}
	return g.print(text)
}

func (g *program) learned(_ logbook.Book, shelf pour.Shelf, _ []string) error {
	text, err := g.lesson(shelf)
	if err != nil {
		return err
	}
	return g.print(text)
}

// lesson says what all pours of the book have taught.
func (g *program) lesson(shelf pour.Shelf) (string, error) {
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return "", err
	}
	taught, unread, err := learn.FromBook(book, shelf)
	if err != nil {
		return "", err
	}
	return paper.LessonText(taught, unread), nil
}

func (g *program) exportCommand() *cobra.Command {
	asJSON := false
	cmd := g.book("export", "Print every pour as CSV or JSON", cobra.NoArgs, func(book logbook.Book, shelf pour.Shelf, _ []string) error {
		list, err := book.List()
		if err != nil {
			return err
		}
		pours := make([]logbook.Pour, 0, len(list))
		for _, e := range list {
			record, err := logbook.Pour{}, e.Fault
			if err == nil {
				record, err = book.Read(e.ID, shelf)
			}
			if err != nil {
				g.say("%s is left out: %v", e.ID, err)
				continue
			}
			pours = append(pours, record)
		}
		if asJSON {
			return logbook.ExportJSON(g.Out, shelf, pours)
		}
		return logbook.ExportCSV(g.Out, pours)
	})
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON instead of CSV")
	return cmd
}

// marking journals an event that carries words, and says what it wrote.
func (g *program) marking(kind logbook.EventKind) func(logbook.Book, pour.Shelf, []string) error {
	return func(book logbook.Book, shelf pour.Shelf, args []string) error {
		e := logbook.Event{Kind: kind, Text: strings.Join(args[1:], " ")}
		if err := g.mark(book, shelf, args[0], e); err != nil {
			return err
		}
		return g.print(strings.TrimSuffix(fmt.Sprintf("%s: %s: %s", args[0], kind, plain.Line(e.Text)), ": ") + "\n")
	}
}

// mark adds an event to a pour.
func (g *program) mark(book logbook.Book, shelf pour.Shelf, id string, e logbook.Event) error {
	return underway.Add(book, id, shelf, underway.SystemClock(session()), session(), e)
}

// weighing journals what a bar weighed, and says what it wrote.
func (g *program) weighing(kind logbook.EventKind) func(logbook.Book, pour.Shelf, []string) error {
	return func(book logbook.Book, shelf pour.Shelf, args []string) error {
		grams, err := strict.ParseNumber(args[1])
		if err != nil {
			return err
		}
		if grams <= 0 {
			return errors.New("log the weight of a bar: it weighs more than 0 g")
		}
		e := logbook.Event{Kind: kind, Value: grams, Wall: time.Now()}
		if len(args) > 2 {
			e.What = args[2]
		}
		if err := g.mark(book, shelf, args[0], e); err != nil {
			return err
		}
		return g.print(barWords(book, shelf, args[0], e) + "\n")
	}
}

// barWords says what was written of a bar, beside what the plan says where it can be used.
func barWords(book logbook.Book, shelf pour.Shelf, id string, e logbook.Event) string {
	when := map[logbook.EventKind]string{logbook.Cut: "as cut", logbook.Cured: "cured"}[e.Kind]
	text := fmt.Sprintf("%s: one bar weighed %.6g g %s, on %s", id, e.Value, when, e.Day())
	record, err := book.Read(id, shelf)
	if err != nil || record.PlanErr != nil {
		return text
	}
	bars := pour.Weigh(record.Plan, shelf).Bars
	planned := map[logbook.EventKind]float64{logbook.Cut: bars.CutG, logbook.Cured: bars.CuredG}[e.Kind]
	return text + "; planned " + record.Plan.Show.Figure(pour.AsFigure(planned), record.Plan.Show.Dose)
}
