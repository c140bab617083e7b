package command

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"time"

	"github.com/natefinch/atomic"
	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/paper"
)

// pictureCommand draws the swirl.
func (g *program) pictureCommand() *cobra.Command {
	o := paper.PictureOptions{}
	file, seed := "", int64(0)
	var cmd *cobra.Command
	cmd = g.onPlan("picture -o FILE.png [PLAN]", "Draw the swirl as a PNG: a bar, all bars, the loaf, the top", func(s pour.Sheet, shelf pour.Shelf) error {
		if cmd.Flags().Changed("seed") {
			plan, err := pour.Apply(s.Plan, shelf, pour.Reseed(seed))
			if err != nil {
				return err
			}
			s = pour.Work(plan, shelf, g.hand(shelf))
		}
		return g.picture(s, file, o)
	})
	cmd.Flags().StringVarP(&file, "output", "o", "", "the file to write; \"-\" is standard output")
	cmd.Flags().StringVar(&o.View, "view", paper.ViewBar, strings.Join(paper.Views(), ", "))
	cmd.Flags().IntVar(&o.Bar, "bar", 0, "which bar, from 1 (default: the middle one)")
	cmd.Flags().IntVar(&o.Width, "width", 1200, "width in pixels")
	cmd.Flags().BoolVar(&o.Weeks, "weeks", false, "in the colours after some weeks, where vanillin browns a jug")
	cmd.Flags().Int64Var(&seed, "seed", 0, "another of the faces this technique can pour (default: the plan's)")
	return cmd
}

// picture writes the picture whole or not at all; what takes longer than a moment says so on standard error.
func (g *program) picture(s pour.Sheet, file string, o paper.PictureOptions) error {
	if file == "" {
		return errors.New("draw a picture: say where to, as in -o bar.png")
	}
	ctx, cancel := signal.NotifyContext(context.Background(), os.Interrupt)
	defer cancel()
	working := time.AfterFunc(time.Second, func() { _, _ = fmt.Fprintf(g.Errs, "drawing %s, %d pixels wide ...\n", o.View, o.Width) })
	defer working.Stop()
	var png bytes.Buffer
	if err := paper.Picture(ctx, &png, s, o); err != nil {
		return err
	}
	if file == "-" {
		_, err := png.WriteTo(g.Out)
		return err
	}
	if err := atomic.WriteFile(file, &png); err != nil {
		return fmt.Errorf("write %s: %w", file, err)
	}
	return nil
}
