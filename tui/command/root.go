package command

import (
	"bytes"
	"fmt"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/again"
	"pourbench/pour/planfile"
	"pourbench/tui"
	"pourbench/tui/live"
	"pourbench/tui/pixels"
	"pourbench/tui/screen"
)

// root is the command without a name, which opens the workbench, with all others below it.
func (g *program) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "pourbench [PLAN]",
		Short: "Design a multi-colour soap pour before lye meets oil",
		Long: `Design a multi-colour soap pour before lye meets oil.

Opens the workbench on PLAN, or on the built-in example. When standard output is
no terminal it prints the checklist instead. PLAN "-" reads standard input.`,
		Example: `  pourbench                          open the built-in example
  pourbench meadow.toml              open a plan
  pourbench checklist meadow.toml    print its checklist
  pourbench figures meadow.toml      every figure as JSON
  pourbench check meadow.toml        warnings; exit 1 a caution, 3 a stop`,
		Args:          cobra.MaximumNArgs(1),
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE:          func(cmd *cobra.Command, args []string) error { return g.open(cmd, args) },

		PersistentPreRunE: func(*cobra.Command, []string) error { return g.checkLook() },
	}
	own := filepath.Join("~", ".config", folderName, shelfName)
	root.PersistentFlags().StringVar(&g.shelfFile, "shelf", "", "your own shelf file, laid over the built-in shelf (default: "+own+" if it is there)")
	root.PersistentFlags().StringVar(&g.colour, "color", "auto", "auto, always, never, 16, 256 or truecolor")
	root.PersistentFlags().StringVar(&g.background, "background", "auto", "auto, dark or light")
	g.plainFlag(root)
	root.Flags().StringVar(&g.pixels, "pixels", pixels.Auto, "pictures in real pixels: auto (where the terminal says that it draws them), off, or tmux (through tmux with allow-passthrough on, to a terminal that does)")
	root.Flags().StringVar(&g.cells, "cells", "4", "pixels in each character of a picture where real ones are not drawn: 4, 6 (for fonts that have sextants) or 2 (for fonts that lack quadrants)")
	root.Flags().BoolVar(&g.noMouse, "no-mouse", false, "leave the mouse to the terminal")
	root.SetFlagErrorFunc(func(_ *cobra.Command, err error) error { return flagFault(err) })
	cobra.MousetrapHelpText = "" // started by a double click on Windows it opens, like from a shell
	root.AddCommand(g.newCommand())
	root.AddCommand(g.planCommands()...)
	root.AddCommand(g.explainCommand(), g.pictureCommand(), g.rulerCommand(), g.liveCommand(), g.logbookCommand())
	root.AddCommand(g.batchesCommand(), g.calendarCommand())
	root.AddCommand(g.againCommand(), g.compareCommand())
	root.AddCommand(g.cureCommand(), g.scentCommand())
	root.AddCommand(g.recordCommand(), g.traceCommand())
	root.AddCommand(g.seasonCommand(), g.stockCommand(), g.shoppingCommand(), g.costCommand(), g.labelCommand())
	root.AddCommand(g.backupCommands()...)
	root.AddCommand(g.referenceCommands(root)...)
	return root
}

// checkLook refuses a colour or background that there is not, which would else be passed over as if nothing had been typed.
func (g *program) checkLook() error {
	for _, f := range []struct {
		flag, typed string
		words       []string
	}{
		{"color", g.colour, []string{"auto", "always", "never", "16", "256", "truecolor"}},
		{"background", g.background, []string{"auto", "dark", "light"}},
		{"pixels", g.pixels, pixels.Ways()},
		{"cells", g.cells, screen.Divisions()},
	} {
		if !slices.Contains(f.words, f.typed) {
			return fmt.Errorf("read --%s %q: write one of %s", f.flag, f.typed, strings.Join(f.words, ", "))
		}
	}
	return nil
}

// open opens the workbench, or prints the checklist where there is no terminal to draw on.
func (g *program) open(cmd *cobra.Command, args []string) error {
	shelf, err := g.shelf()
	if err != nil {
		return err
	}
	doc, err := g.load(args, shelf)
	if err != nil {
		return err
	}
	plain, err := g.converses(args, cmd.Flags().Changed("plain"))
	if err != nil {
		return err
	}
	if !plain && !g.terminal() {
		return g.checklist(pour.Work(doc.Plan, shelf, g.hand(shelf)), shelf)
	}
	say := ""
	if len(args) == 0 {
		say = "the built-in example; save as makes it your own"
	}
	return g.bench(doc, shelf, say, plain)
}

// bench opens the workbench on a plan, or talks of it in lines.
func (g *program) bench(doc planfile.Document, shelf pour.Shelf, say string, plain bool) error {
	bound, faults := g.keys()
	o := tui.Options{
		Document: doc, Shelf: shelf, Hand: g.hand(shelf), Examples: func() []tui.Example { return g.examples(shelf) }, StateDir: g.stateDir(),
		Colour: g.colour, Background: g.background, Pixels: g.pixels, Cells: g.cells, NoMouse: g.noMouse, Say: say, Environ: g.Environ, Notes: g.Errs,
		Keys: bound, KeyFaults: faults,
		Learned: func() (string, error) { return g.lesson(shelf) },
		ReadHand: func() (pour.Hand, error) {
			lesson, _, err := g.taught(shelf)
			return lesson.Taught(), err
		},
		Pour: func(p pour.Plan) error {
			shelf := g.asItIs(shelf) // an entry that was added at the bench may be in the plan
			hand := g.hand(shelf)
			return g.pourLive(live.Options{Shelf: shelf, Hand: hand, Sheet: pour.Work(p, shelf, hand)})
		},
	}
	o.Past = func(id string) (again.Past, []again.Past, error) { return g.lookBack(g.asItIs(shelf), id) }
	o.Pours = g.pours
	o.PourAgain = func(id string) (tui.Poured, error) {
		plan, said, err := g.pouredAgain(g.asItIs(shelf), id)
		return tui.Poured{Plan: &plan, Said: said}, err
	}
	o.Provisions = tui.Provisions{Read: g.provisions, Designs: g.designs}
	o.OwnShelf, o.Restock = g.ownShelf(), g.restock()
	o.Stock = func() error { return g.showStock(nil) }
	o.Batches = func() (tui.Poured, error) { return g.showBatches(g.asItIs(shelf), nil, "") }
	if plain {
		return tui.Converse(o, g.talking())
	}
	return tui.Open(o)
}

// examples reads the plans that come with the program. One that a maker's own shelf does not carry is left out.
func (g *program) examples(shelf pour.Shelf) []tui.Example {
	var list []tui.Example
	for _, name := range g.built.Plans() {
		text, err := g.built.Plan(name)
		if err != nil {
			continue // it is built in: it cannot fail
		}
		plan, err := planfile.Read(name+" (built in)", bytes.NewReader(text), shelf)
		if err != nil {
			continue // the maker's shelf has taken away what it needs
		}
		list = append(list, tui.Example{Name: name, Plan: plan})
	}
	return list
}

// terminal says whether there is a terminal that can hold a full screen.
func (g *program) terminal() bool {
	return g.outIsTerminal() && !g.dumb()
}

// version is the module version, or the commit it was built from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			return "0.1 (" + s.Value[:12] + ")"
		}
	}
	return "0.1"
}
