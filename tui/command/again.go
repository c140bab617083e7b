package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/again"
	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/tui"
)

// againCommand makes a new plan of a pour, and says what happened when it was poured.
func (g *program) againCommand() *cobra.Command {
	file, take := "", []int{}
	cmd := &cobra.Command{
		Use: "again ID [-o FILE]", Short: "Pour a pour again: its plan as a new one, what happened beside it, what the logbook suggests", Args: takes(1),
		Example: "  pourbench again " + examplePour + " -o again.toml\n  pourbench again " + examplePour + " -o again.toml --take 1,3    with two of the suggestions made",
		RunE: func(_ *cobra.Command, args []string) error {
			shelf, err := g.shelf()
			if err != nil {
				return err
			}
			return g.again(shelf, args[0], file, take)
		},
	}
	cmd.Flags().StringVarP(&file, "output", "o", "", "the file to write the plan to (default: standard output, and what happened is told beside it)")
	cmd.Flags().IntSliceVar(&take, "take", nil, "make these of the suggestions, by their numbers")
	return cmd
}

// again writes the plan of a pour that is poured again, and tells what happened and what is suggested.
func (g *program) again(shelf pour.Shelf, id, file string, take []int) error {
	past, others, err := g.lookBack(shelf, id)
	if err != nil {
		return err
	}
	plan := past.Plan()
	suggestions := past.Suggest(plan, others, shelf, g.hand(shelf))
	text := paper.Again(past, suggestions, plan.Show)
	for _, n := range take {
		if n < 1 || n > len(suggestions) {
			return fmt.Errorf("take the suggestion %d: there are %d of them, numbered from 1", n, len(suggestions))
		}
		if plan, err = pour.Apply(plan, shelf, suggestions[n-1].Edit); err != nil {
			return fmt.Errorf("take the suggestion %d: %w", n, err)
		}
	}
	if file == "" || file == "-" {
		if _, err := fmt.Fprint(g.Errs, text); err != nil {
			return err
		}
		return planfile.Write(g.Out, plan)
	}
	if _, err := planfile.Save(file, plan, planfile.SaveOptions{}); errors.Is(err, planfile.ErrExists) {
		return fmt.Errorf("write the plan: there is a file %s already, and it is left as it is; name another with -o", file)
	} else if err != nil {
		return err
	}
	return g.print(text, "\nwritten: "+file+"\n")
}

// mostOthers is how many of her other pours are looked back on, the latest.
const mostOthers = 200

// lookBack reads a pour that is poured again, and the others that may tell of the same.
func (g *program) lookBack(shelf pour.Shelf, id string) (again.Past, []again.Past, error) {
	past, err := g.past(shelf, id)
	if err != nil {
		return past, nil, err
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return past, nil, err
	}
	list, err := book.List()
	if err != nil {
		return past, nil, err
	}
	var others []logbook.Pour
	for _, e := range list[:min(len(list), mostOthers)] {
		if e.Fault != nil || e.ID == id {
			continue
		}
		if o, err := book.Read(e.ID, shelf); err == nil {
			others = append(others, o)
		}
	}
	return past, again.Seen(others, shelf), nil
}

// past reads a pour that is poured again.
func (g *program) past(shelf pour.Shelf, id string) (again.Past, error) {
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return again.Past{}, err
	}
	p, err := book.Read(id, shelf)
	if err != nil {
		return again.Past{}, err
	}
	lesson, _, _ := g.taught(shelf) // without it her own rack is not known, and the pour is looked back on all the same
	return again.Of(p, shelf, pour.Hand{Clock: lesson.Hand})
}

// pouredAgain is the new plan of a pour, and what is said of it on the bench.
func (g *program) pouredAgain(shelf pour.Shelf, id string) (pour.Plan, string, error) {
	past, err := g.past(shelf, id)
	if err != nil {
		return pour.Plan{}, "", err
	}
	return past.Plan(), "a new plan of " + id + ": * stands beside what went otherwise then; {what happened} tells all of it and what the logbook suggests", nil
}

// pours lists the pours that can be poured again, the latest first.
func (g *program) pours() ([]tui.Past, error) {
	if _, err := os.Stat(g.bookDir()); err != nil {
		return nil, nil // there is no logbook yet
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return nil, err
	}
	list, err := book.List()
	if err != nil {
		return nil, err
	}
	var out []tui.Past
	for _, e := range list {
		if e.Fault == nil && e.TrialScent == "" {
			out = append(out, tui.Past{ID: e.ID, Name: e.Name, Day: e.Opened.Format(time.DateOnly), Words: strings.Join(append(slices.Clone(e.Troubles), e.Result), ", ")})
		}
	}
	return out, nil
}

// compareCommand sets two plans or pours side by side.
func (g *program) compareCommand() *cobra.Command {
	o, file := paper.PictureOptions{}, ""
	cmd := &cobra.Command{
		Use: "compare A B", Short: "Two plans or pours side by side: every field and figure that differs, and their pictures", Args: takes(2),
		Example: "  pourbench compare meadow.toml " + examplePour + "\n  pourbench compare meadow.toml other.toml -o both.png",
		Long: "Two plans or pours side by side: every field and figure that differs, and their pictures.\n\n" +
			"A and B are plan files, ids of pours in the logbook, or \"-\" for a plan on standard input.",
		RunE: func(_ *cobra.Command, args []string) error {
			return g.interruptible(func(ctx context.Context) error { return g.compare(ctx, args, file, o) })
		},
	}
	cmd.Flags().StringVarP(&file, "output", "o", "", "draw both as a PNG too, faces above and the loaves from above below")
	cmd.Flags().IntVar(&o.Width, "width", 1600, "width of the picture in pixels")
	cmd.Flags().BoolVar(&o.Weeks, "weeks", false, "the picture in the colours after some weeks")
	return cmd
}

func (g *program) compare(ctx context.Context, args []string, file string, o paper.PictureOptions) error {
	if args[0] == "-" && args[1] == "-" {
		return errors.New("compare - with -: standard input holds one plan; name a file or a pour for the other")
	}
	shelf, err := g.shelf()
	if err != nil {
		return err
	}
	hand := g.hand(shelf)
	var sheets [2]pour.Sheet
	for i, name := range args {
		plan, err := g.planOrPour(name, shelf)
		if err != nil {
			return err
		}
		sheets[i] = pour.Work(plan, shelf, hand)
	}
	if err := g.print(paper.Compared(again.Compare(sheets[0], sheets[1]), sideName(sheets[0].Plan, args[0]), sideName(sheets[1].Plan, args[1]))); err != nil || file == "" {
		return err
	}
	var undrawn error
	draw := func(w io.Writer) error {
		undrawn = paper.Pair(ctx, w, sheets[0], sheets[1], o)
		return undrawn
	}
	if err := disk.OS().Save(file, draw, disk.Want{Mode: disk.Shared, Still: ctx.Err}); err != nil && undrawn == nil {
		return fmt.Errorf("write the pictures to %s: %w", file, disk.Reason(err))
	}
	return undrawn
}

// sideName is a plan's name with where it comes from.
func sideName(p pour.Plan, from string) string { return p.Name + " (" + from + ")" }

// planOrPour reads a plan by its file, or that of a pour by its id.
func (g *program) planOrPour(name string, shelf pour.Shelf) (pour.Plan, error) {
	if isPlan(name) || strings.ContainsAny(name, `/\`) {
		doc, err := g.load([]string{name}, shelf)
		return doc.Plan, err
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return pour.Plan{}, err
	}
	p, err := book.Read(name, shelf)
	if err == nil && p.PlanErr != nil {
		err = fmt.Errorf("compare %s: its plan cannot be used with today's shelf; put what it names back on your own shelf file, under its old id: %w", name, p.PlanErr)
	}
	return p.Plan, err
}
