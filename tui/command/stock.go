package command

import (
	"github.com/spf13/cobra"

	"pourbench/pour/paper"
	"pourbench/pour/stock"
	"pourbench/pour/stock/tables"
)

// stockCommand lists what lies on the shelves, and holds the commands that write into the ledger.
func (g *program) stockCommand() *cobra.Command {
	all, asJSON := false, false
	var cmd *cobra.Command
	cmd = &cobra.Command{
		Use: "stock", Short: "What lies on your shelves by packs and lots, what it cost, what came and what went", Args: cobra.NoArgs,
		Long: `On a terminal, open the page of stock: packs and lots, what came and went of each;
receive, open, weigh, lose and correct there. Else, or with --all, list what lies on
your shelves: of every material how much there is, what is past its
date and what it cost, and its packs in the order in which they are picked, first
expired first out.

It stands in ` + stock.FileName + ` beside your pours, a plain file that only grows. You may mend it
by hand; a correction is better made by an entry of its own.`,
		Example: "  pourbench stock\n  pourbench stock --all      packs that are used up, too",
		RunE: func(*cobra.Command, []string) error {
			var err error
			if g.plain, err = g.converses(nil, cmd.Flags().Changed("plain")); err != nil {
				return err
			}
			if !all && !asJSON && (g.plain || g.terminal()) {
				return g.showStock(nil)
			}
			s, err := g.stocked()
			if err != nil {
				return err
			}
			f, err := g.reserved(s)
			if err != nil {
				g.say("%v", err) // what lies there lies there whatever the season says
			} else {
				s.Stock = f.Stock
			}
			if asJSON {
				return tables.WriteJSON(g.Out, s)
			}
			return g.print(paper.StockList(s, all))
		},
	}
	g.plainFlag(cmd)
	cmd.Flags().BoolVar(&g.noMouse, "no-mouse", false, "leave the mouse to the terminal")
	cmd.Flags().BoolVar(&asJSON, "json", false, "as JSON, all packs")
	cmd.Flags().BoolVar(&all, "all", false, "packs that are used up, too")
	for _, family := range g.stockFamilies() {
		cmd.AddCommand(family()...)
	}
	return cmd
}

// stockFamilies are the commands below stock, a line for each family.
func (g *program) stockFamilies() []func() []*cobra.Command {
	return []func() []*cobra.Command{
		g.deskCommands, g.stockTableCommands,
		g.shoppingCommands,
		g.stockTakeCommands,
		g.stockCloseCommands,
	}
}

// ledger is the maker's ledger of stock.
func (g *program) ledger() stock.Ledger { return stock.New(g.dataDir()) }

// stocked is what lies there today by the ledger.
func (g *program) stocked() (stock.State, error) { return g.ledger().State(g.today()) }
