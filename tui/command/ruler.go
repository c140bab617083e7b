package command

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/ruler"
)

// rulerCommand prints what is laid along the mould.
func (g *program) rulerCommand() *cobra.Command {
	var file, sheets string
	cmd := g.onPlan("ruler [-o FILE.pdf|FILE.svg] [PLAN]", "Print where cuts and embeds are, or draw it at true scale to lay along the mould", func(s pour.Sheet, _ pour.Shelf) error {
		return g.ruler(s, file, sheets)
	})
	var names []string
	for _, p := range ruler.Papers() {
		names = append(names, p.Name)
	}
	cmd.Long = `Print the distances of cuts and embeds from end A of the mould or, with -o, draw
them at true scale.

A PDF is a ruler for sheets of paper: strips of up to 277 mm on A4, several on a
sheet, that share 20 mm and two crosses to lay one on the next by. Print it at
100 %, not fit to page, and measure its bar of 100 mm. An SVG is the ruler in one
piece, however long the loaf: it is drawn in mm from end A, for a plotter, a
laser or a roll printer. Words and list are in the plan's units.`
	cmd.Example = `  pourbench ruler meadow.toml                 the list of distances
  pourbench ruler -o ruler.pdf meadow.toml    to print, cut out and lay along the mould
  pourbench ruler -o - meadow.toml | lp       the PDF straight to the printer`
	cmd.Flags().StringVarP(&file, "output", "o", "", "the file to write, .pdf or .svg; \"-\" is the PDF on standard output")
	cmd.Flags().StringVar(&sheets, "paper", "", "of the PDF: "+strings.Join(names, " or ")+" (default: letter for a plan in inches, else a4)")
	return cmd
}

// ruler prints the list, or writes the drawing whole or not at all.
func (g *program) ruler(s pour.Sheet, file, sheets string) error {
	r, err := ruler.Of(s)
	if err != nil {
		return err
	}
	on, err := r.PaperOf(sheets)
	if err != nil {
		return err
	}
	switch file {
	case "":
		return g.print(r.List())
	case "-":
		return r.PDF(g.Out, on)
	}
	draw, err := r.For(file, on)
	if err != nil {
		return err
	}
	if err := overwrites(file, "ruler", "%PDF", "<?xml", "<svg"); err != nil {
		return err
	}
	return saved("the ruler", file, draw)
}

// saved writes what is drawn to a file, whole or not at all.
func saved(what, file string, draw func(io.Writer) error) error {
	var undrawn error
	err := disk.OS().Save(file, func(w io.Writer) error { undrawn = draw(w); return undrawn }, disk.Want{Mode: disk.Shared})
	if err != nil && !errors.Is(err, undrawn) {
		return fmt.Errorf("write %s to %s: %w", what, file, disk.Reason(err))
	}
	return err
}
