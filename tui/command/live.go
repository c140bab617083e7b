package command

import (
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"pourbench/pour/logbook"
	"pourbench/tui/live"
)

// session names this terminal in the events of a pour.
func session() string { return fmt.Sprintf("t%d", os.Getpid()) }

// liveCommand pours a plan live.
func (g *program) liveCommand() *cobra.Command {
	o := live.Options{}
	cmd := &cobra.Command{
		Use: "run [PLAN]", Short: "Pour a plan live: the checklist full screen, the clock running, every mark in the logbook",
		Long: `Pour a plan live: the checklist full screen, the clock running, every mark in the logbook.

A pour of this very plan that was left under way less than two days ago is taken up again, as after a killed
terminal; without PLAN the one that is under way, whatever it pours. Where several are, or one of another plan,
you are asked; --new begins another pour without a question, and a pour in which nothing was marked is not kept.
One that is over is opened again by --resume only after a question. --trial SCENT tries a scent in two small jugs of the plan's batter instead.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			var err error
			if g.plain, err = g.converses(args, cmd.Flags().Changed("plain")); err != nil {
				return err
			}
			if o.Sheet, o.Shelf, o.Hand, err = g.worked(args); err != nil {
				return err
			}
			o.Unnamed = len(args) == 0
			if err := g.pourLive(o); err != nil {
				return err
			}
			g.offerTake()
			return nil
		},
	}
	g.plainFlag(cmd)
	cmd.Flags().StringVar(&o.Resume, "resume", "", "take this pour up again")
	cmd.Flags().BoolVar(&o.Anew, "new", false, "begin another pour although one is under way")
	cmd.Flags().BoolVar(&g.noMouse, "no-mouse", false, "leave the mouse to the terminal")
	cmd.Flags().StringVar(&o.TrialScent, "trial", "", "id of a scent to try instead of pouring")
	return cmd
}

// pourLive opens the live run on this terminal.
func (g *program) pourLive(o live.Options) error {
	plain := g.talk.In != nil || g.plain
	if !plain && !g.terminal() {
		if o.Cut {
			return fmt.Errorf("cut live: there is no terminal to draw on; talk in lines with --plain, or log one bar alone: pourbench logbook cut %s GRAMS", o.Resume)
		}
		return errors.New("pour live: there is no terminal to draw on; talk in lines with --plain, or print the checklist instead: pourbench checklist")
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return err
	}
	o.Keys, o.KeyFaults = g.keys()
	o.Book, o.Colour, o.Background, o.NoMouse, o.Notes = book, g.colour, g.background, g.noMouse, g.Errs
	if plain {
		return live.Converse(o, g.talking())
	}
	return live.Open(o)
}
