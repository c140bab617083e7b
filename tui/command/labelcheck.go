package command

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
)

// labelCheckCommand tells a market's check list, and ticks lines of it for a batch.
func (g *program) labelCheckCommand() *cobra.Command {
	var of labelOf
	var tick, untick []string
	note := ""
	cmd := &cobra.Command{
		Use: "check [PLAN|ID]", Short: "A market's check list: ticked, open or unknown, with document, clause and date; ticks lines for a poured batch",
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := g.tickLines(args, of, tick, untick, note); err != nil {
				return err
			}
			l, err := g.labelled(args, of)
			if err != nil {
				return err
			}
			return g.print(paper.LabelCheckText(l.told))
		},
	}
	cmd.Long = `Tell a market's check list line by line: what the design answers by itself, what you
ticked for the batch, what is open and what nothing here can know, each with its document,
clause, the day it was looked up and how far it was checked. A tick is kept with the batch
as an event of its life, for the market it was ticked in.`
	cmd.Example = "  pourbench label check meadow.toml --market eu\n  pourbench label check " + examplePour + " --tick notified --note \"number 4711\""
	of.flags(cmd)
	cmd.Flags().StringArrayVar(&tick, "tick", nil, "a line that is done, by its id; of a poured batch")
	cmd.Flags().StringArrayVar(&untick, "untick", nil, "a line that is not done after all")
	cmd.Flags().StringVar(&note, "note", "", "your words with the ticks")
	return cmd
}

// tickLines ticks lines of a market's check list for a batch, and takes ticks back.
func (g *program) tickLines(args []string, of labelOf, tick, untick []string, note string) error {
	if len(tick)+len(untick) == 0 {
		if note != "" {
			return errors.New("write --note: it goes with --tick and the id of a line")
		}
		return nil
	}
	book, shelf, err := g.openBook()
	if err != nil {
		return err
	}
	if len(args) != 1 || !g.isBatch(book, args[0]) {
		return fmt.Errorf("tick %s: ticks are kept with a poured batch, so name one by its id; pourbench batches lists them", strings.Join(slices.Concat(tick, untick), ", "))
	}
	record, _, _, err := g.poured("label", book, shelf, args[0])
	if err != nil {
		return err
	}
	_, market, err := of.on(record.Plan, shelf)
	if err != nil {
		return err
	}
	for _, row := range tick {
		e := logbook.Event{Kind: logbook.Ticked, What: row, Text: note, Life: logbook.Life{Market: market.ID}}
		if err := g.logLife(book, shelf, record, e); err != nil {
			return err
		}
	}
	for _, row := range untick {
		stands := life.Of(record, shelf, g.hand(shelf), g.today()).Of(logbook.Ticked)
		stands = slices.DeleteFunc(stands, func(e logbook.Event) bool { return e.Life.Market != market.ID || e.What != row })
		if len(stands) == 0 {
			return fmt.Errorf("untick %s for %s: it is not ticked in %s", row, record.ID, market.Name)
		}
		for _, e := range stands {
			if err := g.logLife(book, shelf, record, logbook.Event{Kind: logbook.TakenBack, What: e.ID}); err != nil {
				return err
			}
		}
	}
	return nil
}
