package command

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
	"pourbench/pour/stock/taking"
)

// forgetCommand removes a pour's file for good, where nothing else hangs on it.
func (g *program) forgetCommand() *cobra.Command {
	yes := false
	cmd := g.book("forget ID", "Remove a pour's file for good", 1, "forget "+examplePour, func(book logbook.Book, shelf pour.Shelf, args []string) error {
		return g.forget(book, shelf, args[0], yes)
	})
	cmd.Long = `Remove a pour's file for good: its plan as poured and all its marks. It asks first.
A batch for which stock was taken, of which bars were labelled, sold or given away, or
that the season names is not forgotten: it is said what hangs on it, and how that is put
right first. To keep a pour and let it teach nothing: pourbench logbook leave-out.`
	cmd.Flags().BoolVar(&yes, "yes", false, "do not ask")
	return cmd
}

// forget removes a pour's file: one that is read holds nothing that would be lost elsewhere, and is as it was when it was looked at.
func (g *program) forget(book logbook.Book, shelf pour.Shelf, id string, yes bool) error {
	record, err := book.Read(id, shelf)
	if errors.Is(err, fs.ErrNotExist) {
		return err
	}
	marks := "its file cannot be read"
	if err == nil {
		marks = fmt.Sprintf("%s with its plan as poured and %d marks", record.Name, len(record.Events))
	}
	size, err := book.Size(id)
	if err != nil {
		return fmt.Errorf("forget the pour %s: %w", id, err)
	}
	hangs, err := g.hangsOn(record, id)
	switch {
	case err != nil:
		return fmt.Errorf("forget the pour %s: what hangs on it cannot be told: %w", id, err)
	case len(hangs) > 0:
		return fmt.Errorf("forget the pour %s: something else hangs on it, and its file stays. Put this right first, or let it teach nothing (pourbench logbook leave-out %s WHY):\n  %s", id, id, strings.Join(hangs, "\n  "))
	}
	if ask := g.asker(false); !yes && ask.in == nil {
		return fmt.Errorf("forget the pour %s: nobody can be asked here, and its file stays; --yes forgets it unasked", id)
	} else if !yes && !ask.agree(fmt.Sprintf("Forget %s for good? %s.", id, marks)) {
		return g.print(id + " stays\n")
	}
	switch gone, err := book.ForgetAt(id, size); {
	case err != nil:
		return err
	case !gone:
		return fmt.Errorf("forget the pour %s: something was marked in it just now, and its file stays; look at it and forget it again", id)
	}
	return g.print(id + ": forgotten, " + marks + "\n")
}

// hangsOn lists what else hangs on a batch, each with the command that puts it right. Of a file that cannot be read its own marks are not known.
func (g *program) hangsOn(record logbook.Pour, id string) ([]string, error) {
	var out []string
	s, err := g.stocked()
	if err != nil {
		return nil, err
	}
	if n := len(taking.TakenFor(s, id)); n > 0 {
		takes := map[bool]string{true: "1 take", false: fmt.Sprintf("%d takes", n)}[n == 1]
		out = append(out, fmt.Sprintf("%s of stock: pourbench stock back %s", takes, id))
	}
	gone := []logbook.EventKind{logbook.Lotted, logbook.Sold, logbook.Given}
	for _, e := range slices.Backward(life.Events(record)) { // the last first: what was sold of a lot goes before the lot
		if slices.Contains(gone, e.Kind) {
			out = append(out, fmt.Sprintf("%s %s: pourbench logbook take-back %s %s", e.Day(), life.Tell(e, record.Plan.Show), id, e.ID))
		}
	}
	f, err := season.Load(g.dataDir())
	if err != nil {
		return nil, err
	}
	for i, p := range slices.Backward(f.Pours) { // from the last: taking one out renumbers those behind it
		if p.Pour == id {
			out = append(out, fmt.Sprintf("pour %d of the season: pourbench season remove-pour %d", i+1, i+1))
		}
	}
	return out, nil
}
