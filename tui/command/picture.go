package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/paper"
)

// drawing is what picture was asked for.
type drawing struct {
	paper.PictureOptions
	file   string // "-" is standard output
	seed   int64
	reseed bool
}

// pictureCommand draws the swirl.
func (g *program) pictureCommand() *cobra.Command {
	var d drawing
	cmd := &cobra.Command{
		Use: "picture -o FILE.png [PLAN]", Short: "Draw the swirl as a PNG: a bar, all bars, the loaf, the top, a slice to show", Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			d.reseed = cmd.Flags().Changed("seed")
			return g.interruptible(func(ctx context.Context) error { return g.picture(ctx, args, d) })
		},
	}
	cmd.Flags().StringVarP(&d.file, "output", "o", "", "the file to write; \"-\" is standard output")
	cmd.Flags().StringVar(&d.View, "view", paper.ViewBar, strings.Join(paper.Views(), ", ")+"; top is the batter from above, without icing, stands is from above with icing, embeds, toppings and cuts, slice is the loaf with a bar sliced off, to be shown to people")
	cmd.Flags().IntVar(&d.Bar, "bar", 0, "which bar, from 1 (default: the middle one)")
	cmd.Flags().IntVar(&d.Width, "width", 1200, "width in pixels")
	cmd.Flags().BoolVar(&d.Weeks, "weeks", false, "in the colours after some weeks, where vanillin browns a jug")
	cmd.Flags().BoolVar(&d.Bare, "bare", false, "in flat colours, without light, streaks, pores, flakes and grains")
	cmd.Flags().Int64Var(&d.seed, "seed", 0, "another of the faces this technique can pour (default: the plan's)")
	return cmd
}

// interruptible lets Ctrl+C stop what is done in its own way, so that nothing half done is left behind.
func (g *program) interruptible(do func(context.Context) error) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	err := do(ctx)
	if ctx.Err() != nil {
		return errInterrupted
	}
	return err
}

// picture draws the plan and writes the picture whole or not at all.
func (g *program) picture(ctx context.Context, args []string, d drawing) error {
	if d.file == "" {
		return errors.New("draw a picture: say where to, as in -o bar.png")
	}
	if info, err := os.Stat(d.file); d.file != "-" && (err != nil || info.Mode().IsRegular()) && !strings.HasSuffix(d.file, "/") && !strings.EqualFold(filepath.Ext(d.file), ".png") {
		return fmt.Errorf("draw a picture to %s: it is a PNG; give the file a name that ends in .png", d.file)
	}
	sheet, shelf, hand, err := g.worked(args)
	if err != nil {
		return err
	}
	if d.reseed {
		plan, err := pour.Apply(sheet.Plan, shelf, pour.Reseed(d.seed))
		if err != nil {
			return err
		}
		sheet = pour.Work(plan, shelf, hand)
	}
	told := g.progress(fmt.Sprintf("drawing %s, %d pixels wide", d.View, d.Width))
	defer told.end()
	d.Told = told.set
	var undrawn error
	draw := func(w io.Writer) error {
		undrawn = paper.Picture(ctx, w, sheet, d.PictureOptions)
		return undrawn
	}
	if d.file == "-" {
		return draw(g.Out)
	}
	if err := overwrites(d.file, "picture", pngHead()); err != nil {
		return err
	}
	if err := disk.OS().Save(d.file, draw, disk.Want{Mode: disk.Shared, Still: ctx.Err}); err != nil && undrawn == nil {
		return fmt.Errorf("write the picture to %s: %w", d.file, disk.Reason(err))
	}
	return undrawn
}
