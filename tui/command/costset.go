package command

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour/house"
	"pourbench/pour/lot"
)

// costSettings are the commands that write what a maker's costs are, one line each.
func (g *program) costSettings() []*cobra.Command {
	store := func() house.Store { return house.NewStore(g.dataDir()) }
	return []*cobra.Command{
		{
			Use: "set KEY [TEXT]", Short: "State what holds for every batch: currency, wage_per_hour, energy_per_batch, overhead_per_batch …; without TEXT it is taken out",
			Example: "  pourbench cost set currency EUR\n  pourbench cost set wage_per_hour 16.00", Args: cobra.RangeArgs(1, 2),
			RunE: func(_ *cobra.Command, args []string) error {
				return g.stated(args[0], second(args, 1), store().Path(), store().Set(args[0], second(args, 1)))
			},
		},
		{
			Use: "channel NAME KEY [TEXT]", Short: "State something of a way bars are sold: fee_percent, fee_per_sale, bars_per_sale, wholesale, tax_included; without TEXT it is taken out",
			Example: "  pourbench cost channel market fee_percent 1.75\n  pourbench cost channel shop wholesale true", Args: cobra.RangeArgs(2, 3),
			RunE: func(_ *cobra.Command, args []string) error {
				return g.stated(args[0]+", "+args[1], second(args, 2), store().Path(), store().SetChannel(args[0], args[1], second(args, 2)))
			},
		},
		{
			Use: "price KIND ID [TEXT]", Short: "Name what a kilogram, or a piece, costs of what no pack has brought; without TEXT it is taken out",
			Example: "  pourbench cost price packaging kraft-box 0.36\n  pourbench cost price alkali naoh 4.20", Args: cobra.RangeArgs(2, 3),
			RunE: func(_ *cobra.Command, args []string) error {
				m, err := lot.ParseMaterial(args[0] + " " + args[1])
				if err != nil {
					return err
				}
				if text := second(args, 2); text != "" { // a price that stands for nothing may still be taken out
					shelf, err := g.catalogue()
					if err == nil {
						err = shelf.Listed(m)
					}
					if err != nil {
						return fmt.Errorf("name a price of %s: %w", m, err)
					}
				}
				return g.stated("price of "+m.String(), second(args, 2), store().Path(), store().SetPrice(m, second(args, 2)))
			},
		},
		{
			Use: "keys", Short: "Tell what can stand in " + house.FileName, Args: cobra.NoArgs,
			RunE: func(*cobra.Command, []string) error { return g.print(house.Reference()) },
		},
	}
}

// second is an argument that may be left out.
func second(args []string, i int) string {
	if i < len(args) {
		return args[i]
	}
	return ""
}

// stated says what was written.
func (g *program) stated(what, text, path string, err error) error {
	if err != nil {
		return err
	}
	said := fmt.Sprintf("%s is %s now", what, text)
	if strings.TrimSpace(text) == "" {
		said = what + " is stated no more"
	}
	g.say("%s, in %s", said, path)
	return nil
}
