package command

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour/disk"
	"pourbench/pour/labelfile"
	"pourbench/pour/paper"
)

// labelSettings are the commands that write what a maker states once for all her labels.
func (g *program) labelSettings() []*cobra.Command {
	return []*cobra.Command{g.makerCommand(), g.logoCommand(), g.reportCommand(), {
		Use: "keys", Short: "Tell what can stand in " + labelfile.FileName, Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return g.print(labelfile.Reference()) },
	}}
}

func (g *program) labelStore() labelfile.Store { return labelfile.NewStore(g.dataDir()) }

// makerCommand states who stands on labels.
func (g *program) makerCommand() *cobra.Command {
	market := ""
	known := func() error {
		if market == "" {
			return nil
		}
		shelf, err := g.catalogue()
		if err != nil {
			return err
		}
		_, err = marketOf(shelf, "--market", market)
		return err
	}
	cmd := &cobra.Command{
		Use: "maker [KEY [TEXT]]", Short: "State who stands on labels, by market: " + strings.Join(labelfile.MakerKeys(), ", ") + "; without TEXT it is taken out; alone: list them",
		Example: "  pourbench label maker name \"Mill Soaps\"\n  pourbench label maker address \"12 Mill Lane, Oldtown\" --market gb", Args: cobra.MaximumNArgs(2),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				h, err := labelfile.Load(g.dataDir())
				if err != nil {
					return err
				}
				return g.print(paper.MakersText(h))
			}
			if err := known(); err != nil {
				return err
			}
			return g.stated("the maker's "+args[0]+where(market), second(args, 1), g.labelStore().Path(), g.labelStore().SetMaker(market, args[0], second(args, 1)))
		},
	}
	cmd.PersistentFlags().StringVar(&market, "market", "", "the market she stands on labels in; none: wherever no other does")
	cmd.AddCommand(&cobra.Command{
		Use: "drop", Short: "Take out who stands on labels, in the market that --market names or wherever no other does", Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			return g.stated("the maker"+where(market), "", g.labelStore().Path(), g.labelStore().DropMaker(market))
		},
	})
	return cmd
}

// where says a market in words.
func where(market string) string {
	if market == "" {
		return ""
	}
	return " in " + market
}

// logoCommand names the maker's own logo.
func (g *program) logoCommand() *cobra.Command {
	return &cobra.Command{
		Use: "logo [FILE]", Short: "Name your own logo, a PNG or JPEG file; without FILE it is taken out",
		Example: "  pourbench label logo mark.png", Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			path := second(args, 0)
			if path != "" {
				var err error
				if path, err = filepath.Abs(path); err != nil {
					return err
				}
				f, _, err := disk.Given(path)
				if err != nil {
					return fmt.Errorf("name the logo %s: %w", path, disk.Reason(err))
				}
				_ = f.Close() // only looked at
			}
			return g.stated("the logo", path, g.labelStore().Path(), g.labelStore().SetLogo(path))
		},
	}
}
