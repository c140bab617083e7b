package command

import (
	"errors"
	"fmt"
	"os"
	"time"

	"github.com/spf13/cobra"

	"pourbench/pour/logbook"
	"pourbench/tui/live"
)

// session names this terminal in the events of a pour.
func session() string { return fmt.Sprintf("t%d", os.Getpid()) }

// liveCommand pours a plan live.
func (g *program) liveCommand() *cobra.Command {
	o := live.Options{}
	anew := false
	cmd := &cobra.Command{
		Use: "run [PLAN]", Short: "Pour a plan live: the checklist full screen, the clock running, every mark in the logbook",
		Long: `Pour a plan live: the checklist full screen, the clock running, every mark in the logbook.

A pour of the same plan that was left under way less than two days ago is taken up again, as after a killed
terminal; --new begins another. --trial SCENT tries a scent in two small jugs of the plan's batter instead.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			var err error
			if g.plain, err = g.converses(args, cmd.Flags().Changed("plain")); err != nil {
				return err
			}
			if o.Sheet, o.Shelf, o.Hand, err = g.worked(args); err != nil {
				return err
			}
			return g.pourLive(o, anew)
		},
	}
	g.plainFlag(cmd)
	cmd.Flags().StringVar(&o.Resume, "resume", "", "take this pour up again")
	cmd.Flags().BoolVar(&anew, "new", false, "begin another pour although one of this plan is under way")
	cmd.Flags().StringVar(&o.TrialScent, "trial", "", "id of a scent to try instead of pouring")
	return cmd
}

// pourLive opens the live run on this terminal.
func (g *program) pourLive(o live.Options, anew bool) error {
	plain := g.talk.In != nil || g.plain
	if !plain && !g.terminal() {
		return errors.New("pour live: there is no terminal to draw on; talk in lines with --plain, or print the checklist instead: pourbench checklist")
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return err
	}
	o.Book, o.Colour, o.Background, o.NoMouse, o.Notes = book, g.colour, g.background, g.noMouse, g.Errs
	if o.Resume == "" && o.TrialScent == "" && !anew {
		open, err := underWay(book, o.Sheet.Plan.Name)
		if err != nil {
			return err
		}
		if open != "" {
			g.say("taking up %s again; --new begins another pour", open)
			o.Resume = open
		}
	}
	if plain {
		return live.Converse(o, g.talking())
	}
	return live.Open(o)
}

// underWay is the latest pour of a plan that was left under way, or "".
func underWay(book logbook.Book, plan string) (string, error) {
	list, err := book.List()
	if err != nil {
		return "", err
	}
	for _, e := range list {
		if e.Name == plan && e.TrialScent == "" && !e.Ended && time.Since(e.Opened) < staleRun {
			return e.ID, nil
		}
	}
	return "", nil
}

// staleRun is how old an unfinished pour may be and still be taken up by itself: lye does not wait for longer.
const staleRun = 48 * time.Hour
