package command

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/house"
	"pourbench/pour/labelfile"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/pour/whatif"
)

// shelfName is the maker's own shelf in her folder of settings.
const shelfName = "shelf.toml"

// planCommands print what is worked out from a plan.
func (g *program) planCommands() []*cobra.Command {
	return []*cobra.Command{
		g.checklistCommand(),
		g.onPlan("figures [PLAN]", "Print every figure as JSON", g.figures),
		g.onPlan("check [PLAN]", "Print the warnings; exit 0 nothing above a note, 1 a caution, 3 a stop", g.check),
	}
}

// onPlan makes a command that works a plan out and hands the sheet on.
func (g *program) onPlan(use, short string, do func(pour.Sheet, pour.Shelf) error) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			sheet, shelf, _, err := g.worked(args)
			if err != nil {
				return err
			}
			return do(sheet, shelf)
		},
	}
}

// checklistCommand prints one of the papers a pour is made from.
func (g *program) checklistCommand() *cobra.Command {
	var bench, large bool
	var file string
	cmd := g.onPlan("checklist [-o FILE.pdf|FILE.txt] [PLAN]", "Print the full checklist or, with --bench, two pages for the bench", func(s pour.Sheet, shelf pour.Shelf) error {
		switch {
		case large && !bench:
			return errors.New("print --large: it is the bench paper that there is in large type: write --bench --large")
		case bench:
			return g.paper("bench paper", file, paper.Bench(s, shelf, large), s)
		}
		return g.paper("checklist", file, paper.Checklist(s, shelf), s)
	})
	cmd.Long = `Print the full checklist or, with --bench, two pages for the bench.

The full checklist and the bench paper are sheets of at most 66 lines of 80
columns with a form feed between two; --large makes sheets of 33 lines of 40
columns, to be printed at twice the size and read from the table. A plan that
does not fit on two pages of bench paper goes on over a third and says so.

With -o it goes to a file: a name that ends in .pdf makes the sheets a PDF, on
Letter for a plan in inches, else on A4, any other name is given the text.`
	cmd.Example = `  pourbench checklist meadow.toml                     the full paper
  pourbench checklist --bench -o meadow.pdf meadow.toml
  pourbench checklist --bench meadow.toml | lp -o cpi=12 -o lpi=7
  pourbench checklist --bench --large meadow.toml | lp -o cpi=6 -o lpi=3.5`
	cmd.Flags().StringVarP(&file, "output", "o", "", "the file to write; a name that ends in .pdf makes it a PDF, \"-\" is standard output")
	cmd.Flags().BoolVar(&bench, "bench", false, "the bench paper: what is weighed, the jugs, the acts in order, on two pages")
	cmd.Flags().BoolVar(&large, "large", false, "the bench paper in large type; print it with lp -o cpi=6 -o lpi=3.5")
	return cmd
}

func (g *program) checklist(s pour.Sheet, shelf pour.Shelf) error {
	return g.print(paper.Checklist(s, shelf))
}

// paper prints a paper, or writes it to a file, whole or not at all and never over another kind of file, such as the plan.
func (g *program) paper(what, file, text string, s pour.Sheet) error {
	if file == "" || file == "-" {
		return g.print(text)
	}
	if err := overwrites(file, what, "%PDF", text[:min(len(text), headBytes)]); err != nil {
		return err
	}
	write, err := paper.For(file, s.Plan.Name, text, s.Plan.Show)
	if err != nil {
		return err
	}
	return saved("the "+what, file, write)
}

func (g *program) figures(s pour.Sheet, _ pour.Shelf) error { return paper.WriteFigures(g.Out, s) }

func (g *program) check(s pour.Sheet, shelf pour.Shelf) error {
	var says [][]string
	for _, mends := range whatif.Mends(s, shelf, g.hand(shelf)) {
		var of []string
		for _, m := range mends {
			of = append(of, m.Says)
		}
		says = append(says, of)
	}
	text, exit := paper.Check(s, says)
	g.exit = exit
	return g.print(text)
}

// worked is the sheet of the plan named, with the shelf and the hand it was worked out with.
func (g *program) worked(args []string) (pour.Sheet, pour.Shelf, pour.Hand, error) {
	shelf, err := g.shelf()
	if err != nil {
		return pour.Sheet{}, shelf, pour.Hand{}, err
	}
	doc, err := g.load(args, shelf)
	if err != nil {
		return pour.Sheet{}, shelf, pour.Hand{}, err
	}
	hand := g.hand(shelf)
	return pour.Work(doc.Plan, shelf, hand), shelf, hand, nil
}

// load reads the plan named, standard input for "-", or the built-in example.
func (g *program) load(args []string, shelf pour.Shelf) (planfile.Document, error) {
	if len(args) == 1 && args[0] != "-" {
		return planfile.Load(args[0], shelf)
	}
	name, reader := "standard input", g.In
	if len(args) == 0 {
		demo := g.built.Plans()[0]
		text, err := g.built.Plan(demo)
		if err != nil {
			return planfile.Document{}, err
		}
		name, reader = demo+" (built in)", bytes.NewReader(text)
	}
	plan, err := planfile.Read(name, reader, shelf)
	return planfile.Document{Plan: plan}, err
}

// shelf is the built-in shelf with the maker's own laid over it, and what lies there of it today. A ledger that cannot be read is told of and keeps
// nobody from designing.
func (g *program) shelf() (pour.Shelf, error) {
	shelf, err := g.catalogue()
	if err != nil {
		return shelf, err
	}
	state, err := g.stocked()
	if err != nil {
		g.say("the ledger cannot be read, so the plan is shown without your stock: %v", err)
		return g.housed(shelf), nil
	}
	shelf.Stock = state.Stock
	return g.housed(shelf), nil
}

// housed lays what the maker's costs are beside materials, and what her labels say, over a shelf.
func (g *program) housed(shelf pour.Shelf) pour.Shelf {
	var err error
	if shelf.House, err = house.Load(g.dataDir()); err != nil {
		g.say("your costs cannot be read, so nothing is counted of them: %v", err)
	}
	if shelf.Label, err = labelfile.Load(g.dataDir()); err != nil {
		g.say("your label file cannot be read, so labels have no maker and no report: %v", err)
	}
	return shelf
}

// catalogue is the built-in shelf with the maker's own laid over it.
func (g *program) catalogue() (pour.Shelf, error) {
	shelf, err := g.built.Shelf()
	if err != nil {
		return shelf, err
	}
	path := g.shelfPath()
	if _, err := os.Stat(path); err != nil && g.shelfFile == "" {
		return shelf, nil // no shelf of her own
	}
	f, _, err := disk.Given(path)
	if err != nil {
		return shelf, fmt.Errorf("open your shelf file %s: %w; name another with --shelf", path, disk.Reason(err))
	}
	defer func() { _ = f.Close() }() // only read
	return g.built.Overlay(shelf, path, f)
}

// shelfPath is the maker's own shelf file.
func (g *program) shelfPath() string {
	if g.shelfFile != "" {
		return g.shelfFile
	}
	return filepath.Join(g.configDir(), shelfName)
}
