package command

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/calendar"
	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/logbook/life"
	"pourbench/pour/planfile"
	"pourbench/pour/season"
	"pourbench/pour/strict"
)

// calendarCommand lists what is due, or hands it out as a file for a calendar.
func (g *program) calendarCommand() *cobra.Command {
	var file string
	cmd := &cobra.Command{
		Use: "calendar [-o FILE.ics] [ID ... | PLAN ...]", Short: "List what is due, or hand it out for your calendar",
		Long: `List what is due of all pours, of those named or of plans that say when they are
poured: unmould, cut, weigh, turn, ready with its band; with all pours, markets and
orders of your season too, and the days by which to pour for them. With -o, write
it as an iCalendar file.

Import the file into a calendar of its own: then it can be hidden, or thrown away
and imported afresh, and nothing else of yours is touched. Every entry keeps its
name, so that importing a later file moves what has moved and cancels what is due
no more; a calendar program that adds copies instead is best emptied first. What
was handed out is remembered in calendar.toml beside your pours.

Hours are those on the wall of your room and belong to no zone. Ready means dry
by your criterion and the plan's own days of cure over, never safe.`,
		Example: `  pourbench calendar                          what is due, as a list
  pourbench calendar -o soap.ics              everything, for your calendar
  pourbench calendar -o soap.ics meadow.toml  a pour that is planned`,
		RunE: func(_ *cobra.Command, args []string) error { return g.calendar(file, args) },
	}
	cmd.Flags().StringVarP(&file, "output", "o", "", "the file to write, .ics; \"-\" is standard output")
	return cmd
}

// registerWait is how long an export waits for another.
const registerWait = 2 * time.Second

// calendar prints the list, or writes the file whole or not at all.
func (g *program) calendar(file string, names []string) error {
	if file != "" {
		said, notes, err := g.handOut(file, names)
		g.notes(notes)
		return errors.Join(g.print(said), err)
	}
	a, err := g.agenda(names)
	if err != nil {
		return err
	}
	g.notes(a.notes)
	text := calendar.List(a.due, g.today())
	if text == "" {
		text = "nothing is due\n"
	}
	return g.print(text)
}

// notes are said one by one.
func (g *program) notes(notes []string) {
	for _, note := range notes {
		g.say("%s", note)
	}
}

// handOut writes what is due to a file, or to standard output for "-", and returns what to say of it and of what was left out. It says
// nothing itself: a screen may have the terminal.
func (g *program) handOut(file string, names []string) (said string, notes []string, err error) {
	if file != "-" && !strings.EqualFold(filepath.Ext(file), ".ics") {
		return "", nil, fmt.Errorf("write the calendar to %s: name a file that ends in .ics", file)
	}
	if file != "-" {
		if err := overwrites(file, "calendar", "BEGIN:VCALENDAR"); err != nil {
			return "", nil, err
		}
	}
	a, err := g.agenda(names)
	if err != nil {
		return "", nil, err
	}
	entries, err := calendar.HandOut(disk.OS(), g.registerPath(), registerWait, a.due, a.covers, g.now())
	if err != nil {
		return "", nil, err
	}
	if file == "-" {
		return "", a.notes, calendar.Write(g.Out, entries)
	}
	var unwritten error
	err = disk.OS().Save(file, func(w io.Writer) error { unwritten = calendar.Write(w, entries); return unwritten }, disk.Want{Mode: disk.Shared})
	switch {
	case err != nil && errors.Is(err, unwritten):
		return "", a.notes, err
	case err != nil:
		return "", a.notes, fmt.Errorf("write the calendar to %s: %w", file, disk.Reason(err))
	}
	t := calendar.Count(entries)
	return fmt.Sprintf("%s: %d entries, %d moved, %d cancelled; import it into a calendar of its own\n", file, t.Entries, t.Moved, t.Cancelled), a.notes, nil
}

// calendarFile hands everything out to a file, for a screen.
func (g *program) calendarFile(file string) (string, error) {
	said, notes, err := g.handOut(file, nil)
	return strings.TrimSpace(strings.Join(append(notes, said), "; ")), err
}

// registerPath is where it is kept what the calendar was told.
func (g *program) registerPath() string { return filepath.Join(g.dataDir(), calendar.FileName) }

// agenda is what is due, and which batches that covers.
type agenda struct {
	due    []calendar.Entry
	named  []string // what the entries of batches that were asked for are known by; empty: all
	unread []string // batches of which nothing is known just now
	notes  []string // why

	noSeason bool // nothing is known of the season just now
}

// covers reports whether a batch is covered: of one that is not, the calendar keeps what it was told.
func (a *agenda) covers(batch string) bool {
	switch {
	case slices.Contains(a.unread, batch), a.noSeason && calendar.OfTheSeason(batch):
		return false
	}
	return len(a.named) == 0 || slices.Contains(a.named, batch)
}

// leave leaves what the calendar was told of a batch as it is.
func (a *agenda) leave(batch, name string, why error) {
	a.unread = append(a.unread, batch)
	a.notes = append(a.notes, fmt.Sprintf("%s is left in the calendar as it is: %v", name, why))
}

// add adds a loaf.
func (a *agenda) add(l calendar.Loaf) { a.due = append(a.due, l.Entries()...) }

// agenda gathers what is due of everything, or of pours and plans that are named.
func (g *program) agenda(names []string) (*agenda, error) {
	l, err := g.logged()
	if err != nil {
		return nil, err
	}
	a := &agenda{}
	if len(names) == 0 {
		for _, b := range l.batches {
			g.addBatch(a, b)
		}
		g.addSeason(a, l)
		return a, g.addRemembered(a, l)
	}
	for _, name := range names {
		switch at := slices.IndexFunc(l.batches, func(b life.Batch) bool { return b.ID == name }); {
		case name == "-":
			err = errors.New("put a plan into the calendar: one from standard input has no file to know it by; name its file")
		case isPlan(name):
			err = a.addPlan(name, l)
		case at < 0:
			err = fmt.Errorf("put %s into the calendar: the logbook has no pour of that id, and a plan's file ends in .toml", strict.Quote(name))
		case !slices.Contains(a.named, name):
			a.named = append(a.named, name)
			g.addBatch(a, l.batches[at])
		}
		if err != nil {
			return nil, err
		}
	}
	return a, nil
}

// addBatch adds a pour of the logbook.
func (g *program) addBatch(a *agenda, b life.Batch) {
	if !calendar.Known(b) {
		a.leave(b.ID, b.ID, errors.Join(b.Fault, b.PlanErr))
	}
	if l, ok := calendar.OfBatch(b, g.now().Location()); ok {
		a.add(l)
	}
}

// addSeason adds markets, orders and the pours that are planned for them. What the calendar was told of a season that cannot be read stays.
func (g *program) addSeason(a *agenda, l loggedPours) {
	facts, err := season.Gather(g.dataDir(), l.book, l.shelf, l.hand, l.batches, g.today())
	if err != nil {
		a.noSeason = true
		a.notes = append(a.notes, fmt.Sprintf("the season is left in the calendar as it is: %v", err))
		return
	}
	info, err := os.Stat(filepath.Join(g.dataDir(), season.FileName))
	if err != nil {
		return // she has none
	}
	board := season.Of(facts)
	for _, r := range board.Rows {
		if r.Planned() && r.Fault != nil {
			a.leave(calendar.PlannedBatch(r), r.Name, r.Fault)
		}
	}
	a.due = append(a.due, calendar.OfSeason(board, info.ModTime())...)
}

// addPlan adds a pour that is planned.
func (a *agenda) addPlan(path string, l loggedPours) error {
	doc, err := planfile.Load(path, l.shelf)
	if err != nil {
		return err
	}
	whole, err := filepath.Abs(path)
	if err != nil {
		return fmt.Errorf("put %s into the calendar: %w", path, err)
	}
	sheet := pour.Work(doc.Plan, l.shelf, l.hand)
	loaf, err := calendar.OfPlan(&sheet, whole, doc.Stamp.ModTime)
	if err != nil {
		return err
	}
	if !slices.Contains(a.named, loaf.Batch) {
		a.named = append(a.named, loaf.Batch)
		a.add(loaf)
	}
	return nil
}

// addRemembered adds the plans that the calendar was told of before, but those that were poured since; what it was told of a plan that is
// gone or has no day any more is cancelled.
func (g *program) addRemembered(a *agenda, l loggedPours) error {
	r, err := calendar.ReadRegister(g.registerPath())
	if err != nil { // an export says so itself and stops
		a.notes = append(a.notes, fmt.Sprintf("plans that were handed out before are left out: %v", err))
		return nil
	}
	for _, path := range r.Planned() {
		doc, err := planfile.Load(path, l.shelf)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			continue
		case err != nil:
			a.leave(calendar.PlanBatch(path), path, err)
			continue
		case doc.Plan.PourAt.IsZero() || isPoured(doc.Plan, l.batches):
			continue
		}
		sheet := pour.Work(doc.Plan, l.shelf, l.hand)
		loaf, err := calendar.OfPlan(&sheet, path, doc.Stamp.ModTime)
		if err != nil {
			return err
		}
		a.add(loaf)
	}
	return nil
}

// isPoured reports whether a pour of the logbook is the one that a plan plans: of its name, at most a day from its own, and no trial.
func isPoured(p pour.Plan, poured []life.Batch) bool {
	on := day.Of(p.PourAt)
	return slices.ContainsFunc(poured, func(b life.Batch) bool {
		return b.Name == p.Name && !b.Is(life.Trial) && max(b.Poured-on, on-b.Poured) <= 1
	})
}
