package command

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/paper"
	"pourbench/pour/plain"
	"pourbench/tui/live"
)

// hand is what the maker's pours have taught. Without a logbook it is the prior; a pour that cannot be read is said and passed over.
func (g *program) hand(shelf pour.Shelf) pour.Hand {
	lesson, unread, err := g.taught(shelf)
	if err != nil {
		g.say("times are the model's alone: %v", err)
	}
	for _, u := range unread {
		g.say("pour %s teaches nothing: %v", u.ID, u.Err)
	}
	return lesson.Taught()
}

// quietHand is hand where nothing can be said, because a screen is up: a logbook that cannot be read has taught nothing.
func (g *program) quietHand(shelf pour.Shelf) pour.Hand {
	lesson, _, err := g.taught(shelf)
	if err != nil {
		return pour.Hand{}
	}
	return lesson.Taught()
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

// book wraps a command of the logbook. It takes what its use names, and no more than that but where most is [anyWords].
func (g *program) book(use, short string, most int, example string, do func(logbook.Book, pour.Shelf, []string) error) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Example: "  pourbench logbook " + example, Args: takes(most),
		RunE: func(_ *cobra.Command, args []string) error {
			book, shelf, err := g.openBook()
			if err != nil {
				return err
			}
			return do(book, shelf, args)
		},
	}
}

// openBook is her logbook, and the shelf to read it with.
func (g *program) openBook() (logbook.Book, pour.Shelf, error) {
	shelf, err := g.shelf()
	if err != nil {
		return logbook.Book{}, shelf, err
	}
	book, err := logbook.OpenBook(g.bookDir())
	return book, shelf, err
}

// anyWords is for a command that ends in as many words as are typed.
const anyWords = -1

// mostOfDay is for a command that ends in a day: two words before it, and at most 1 December 2026 15:30.
const mostOfDay = 6

// takes refuses too few and too many words behind a command, and says which are missing and how it is typed.
func takes(most int) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		_, named, _ := strings.Cut(cmd.Use, " ")
		var needed []string
		for _, word := range strings.Fields(named) {
			if strings.HasPrefix(word, "[") {
				break
			}
			needed = append(needed, word)
		}
		name, example := strings.TrimPrefix(cmd.CommandPath(), cmd.Root().Name()+" "), strings.TrimSpace(cmd.Example)
		switch missing := needed[min(len(args), len(needed)):]; {
		case len(missing) > 0:
			are := map[bool]string{true: "are", false: "is"}[len(missing) > 1]
			return fmt.Errorf("%s: %s %s missing; it is typed as: %s", name, strings.Join(missing, " and "), are, example)
		case most != anyWords && len(args) > most:
			return fmt.Errorf("%s: %q is a word too many; it is typed as: %s", name, args[most], example)
		}
		return nil
	}
}

// examplePour is the id in the examples.
const examplePour = "2026-12-05-alpine-meadow"

func (g *program) logbookCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use: "logbook", Short: "List, search, compare and export your pours, and see what they taught",
		Long: "List, search, compare and export your pours, and see what they taught.\n\nEvery pour is one plain file in " + g.bookDir() + ".",
	}
	cmd.AddCommand(
		g.book("list [WORD ...]", "List the pours that hold every word", anyWords, "list meadow", g.listPours),
		g.book("show ID", "Compare plan and pour", 1, "show "+examplePour, g.showPour),
		g.book("learned", "Say what your pours have taught the clock", 0, "learned", g.learned),
		g.exportCommand(),
		g.book("leave-out ID REASON", "Let a pour teach nothing", anyWords, "leave-out "+examplePour+" the lye was wrong", g.marking(logbook.LeftOut)),
		g.book("take-in ID", "Let a pour teach again", 1, "take-in "+examplePour, g.marking(logbook.TakenIn)),
		g.book("result ID WORDS", "Log how a pour came out", anyWords, "result "+examplePour+" ash on top", g.marking(logbook.Result)),
		g.book("note ID WORDS", "Add a note to a pour", anyWords, "note "+examplePour+" wrapped in two towels", g.marking(logbook.Noted)),
		g.book("poured PLAN DAY [HOUR]", "Log a pour that was poured without the live run, on its day, such as 2026-11-14, or at its hour: 2026-11-14 15:30", mostOfDay,
			"poured meadow.toml 2026-11-14 15:30", g.writeIn),
		g.cutCommand(),
		g.book("cured ID GRAMS [DAY]", "Log what one bar weighed after its cure, today or on a day such as 2027-01-10", mostOfDay, "cured "+examplePour+" 131 2027-01-10", g.weighing(logbook.Cured)),
		g.forgetCommand(),
	)
	cmd.AddCommand(g.lifeCommands()...)
	return cmd
}

// cutCommand cuts a loaf live or, with grams, logs what one bar weighed.
func (g *program) cutCommand() *cobra.Command {
	var cmd *cobra.Command
	cmd = g.book("cut ID [GRAMS [DAY]]", "Cut the loaf live: marks, cuts, the true mass of every bar; with GRAMS, log one bar alone, today or on a day such as 2026-12-06", mostOfDay,
		"cut "+examplePour, func(book logbook.Book, shelf pour.Shelf, args []string) error {
			if len(args) > 1 {
				return g.weighing(logbook.Cut)(book, shelf, args)
			}
			var err error
			if g.plain, err = g.converses(nil, cmd.Flags().Changed("plain")); err != nil {
				return err
			}
			return g.pourLive(live.Options{Resume: args[0], Cut: true, Shelf: shelf, Hand: g.hand(shelf)})
		})
	g.plainFlag(cmd)
	cmd.Flags().BoolVar(&g.noMouse, "no-mouse", false, "leave the mouse to the terminal")
	return cmd
}

func (g *program) listPours(book logbook.Book, _ pour.Shelf, words []string) error {
	list, err := book.List()
	if err != nil {
		return err
	}
	found := logbook.Search(list, strings.Join(words, " "))
	if len(found) == 0 && len(list) > 0 {
		return g.print(fmt.Sprintf("None of your %d %s holds %s; logbook list alone lists all.\n", len(list), map[bool]string{true: "pour", false: "pours"}[len(list) == 1], plain.Line(strings.Join(words, ", "))))
	}
	return g.print(paper.PourList(found))
}

func (g *program) showPour(book logbook.Book, shelf pour.Shelf, args []string) error {
	record, err := book.Read(args[0], shelf)
	if err != nil {
		return err
	}
	if record.PlanErr != nil {
		return fmt.Errorf("show %s: its plan cannot be used with today's shelf: %w", args[0], record.PlanErr)
	}
	text := paper.PourRecord(record, pour.Work(record.Plan, shelf, pour.Hand{}))
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
	cmd := g.book("export", "Print every pour as CSV or JSON", 0, "export --json", func(book logbook.Book, shelf pour.Shelf, _ []string) error {
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
