package command

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/drying"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
)

// cureCommand tells how a batch dries, or draws it.
func (g *program) cureCommand() *cobra.Command {
	file := ""
	cmd := g.book("cure ID", "How a batch dries: fit, masses, weekly loss, ready day and how sure that is; -o draws it", 1, "", func(book logbook.Book, shelf pour.Shelf, args []string) error {
		of, err := g.drying(book, shelf, args[0])
		if err != nil {
			return err
		}
		if file == "" {
			return g.print(paper.DriesText(of))
		}
		return g.drawDrying(drying.Of(of.Batch, of.Drying, of.Sheet.Plan.Show, of.Today), file)
	})
	cmd.Long = `How a batch dries, by the bars that were weighed: the fit of the drying law, what a
bar weighs today, when packed and in the end, what it loses a week, the day it is
ready by your own criterion with its 80 % band, and what all that rests on; or in
words why it cannot be told. With -o the same as a picture.

Ready means dry by that criterion. It says nothing of how safe a bar is.`
	cmd.Example = "  pourbench cure " + examplePour + "\n  pourbench cure " + examplePour + " -o cure.png"
	cmd.Flags().StringVarP(&file, "output", "o", "", "the picture to write, .png; \"-\" is standard output")
	return cmd
}

// drying works out how a batch dries.
func (g *program) drying(book logbook.Book, shelf pour.Shelf, id string) (paper.Dries, error) {
	p, err := book.Read(id, shelf)
	if err != nil {
		return paper.Dries{}, err
	}
	if p.PlanErr != nil {
		return paper.Dries{}, fmt.Errorf("tell how %s dries: its plan cannot be used with today's shelf: %w", id, p.PlanErr)
	}
	of := paper.Dries{Batch: life.Of(p, shelf, g.hand(shelf), g.today()), Sheet: pour.Weigh(p.Plan, shelf), Today: g.today()}
	of.Drying = of.Batch.Drying
	if of.Batch.Is(life.Trial) {
		of.Drying = life.Drying{Why: errors.New("it is a trial of two small jugs: no loaf is cut")}
	}
	if of.Batch.Is(life.Failed) {
		of.Drying.Fit, of.Drying.Known, of.Drying.Why = nil, false, errors.New("the batch is logged as failed")
	}
	if d := of.Drying; d.Known {
		if s, err := d.Fit.Posterior(d.Criterion); err == nil {
			of.Spread = &s
		}
	}
	return of, nil
}

// drawDrying writes the picture whole or not at all.
func (g *program) drawDrying(p drying.Plot, file string) error {
	if file == "-" {
		return p.PNG(g.Out)
	}
	if !strings.EqualFold(filepath.Ext(file), ".png") {
		return fmt.Errorf("draw how it dries to %s: give the file a name that ends in .png", file)
	}
	if err := overwrites(file, "picture", pngHead()); err != nil {
		return err
	}
	return saved("the picture", file, p.PNG)
}
