package command

import (
	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/paper"
)

// costCommand tells what a batch costs and what its bars earn.
func (g *program) costCommand() *cobra.Command {
	cmd := g.onPlan("cost [PLAN]", "What the batch and a bar of it cost, where the money goes, and what selling it leaves", func(s pour.Sheet, _ pour.Shelf) error {
		return g.print(paper.CostText(paper.Costs{Name: s.Plan.Name, Sheet: s.Cost}))
	})
	planned := cmd.RunE
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if is, err := g.costOfBatch(args); is {
			return err
		}
		return planned(cmd, args)
	}
	cmd.Long = `Tell what a plan's batch is going to cost: its materials at what their packs cost, or
where no pack reaches at the price your shelf or your costs name; packaging of the bars
that can be sold, energy, hands' time by the run, overhead. Then what a good bar costs
and, where testers are given away, a bar sold, and what it leaves, sold by hand and to a
shop: margin (of the price) and markup (on the cost), an hour's earnings, bars to break
even, what a tenth more or less of the three largest costs does.

Of a poured batch, by its name in the logbook, it tells what it really cost: what was taken
of its packs, its own bars, and what was not taken at what it would cost today.

Prices asked, packaging and other work are the plan's own, in its table [cost]. It is no
tax advice: your local rules decide what you must count and charge.`
	cmd.Example = "  pourbench cost\n  pourbench cost meadow.toml\n  pourbench cost " + examplePour
	cmd.AddCommand(g.costSettings()...)
	return cmd
}
