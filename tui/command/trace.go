package command

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
	"pourbench/pour/stock/trace"
)

// traceCommand follows a lot, a pack, a batch or bars both ways.
func (g *program) traceCommand() *cobra.Command {
	csv := false
	cmd := &cobra.Command{
		Use: "trace NUMBER", Short: "Follow a lot to every bar and every sale, and a bar back to every lot", Args: takes(1),
		Long: `Follow what bears a number, both ways: a supplier's lot or a pack by blends and embeds
to batches, to their bars and to where these were sold, given or kept; a batch or the
lot on a bar's label back to every lot that is in it, packaging included.

Under it stand the balance of the lot in grams and every sale that a recall has to
name. The page carries the moment it was asked for: keep it as the record of a drill.
A lot that was typed in a pour but is not in the ledger is followed too, and marked.
NUMBER is a supplier's lot, a pack as olive-3, a batch by its id, or the lot on a bar.`,
		Example: "  pourbench trace A12",
		RunE: func(_ *cobra.Command, args []string) error {
			if !csv {
				text, err := g.traceText(args[0])
				if err != nil {
					return err
				}
				return g.print(text)
			}
			graph, things, err := g.traced(args[0])
			if err != nil {
				return err
			}
			return paper.TraceCSV(g.Out, graph, things)
		},
	}
	cmd.Flags().BoolVar(&csv, "csv", false, "as a table, one row for every step (RFC 4180)")
	return cmd
}

// traceText is what the command trace prints of a number.
func (g *program) traceText(what string) (string, error) {
	graph, things, err := g.traced(what)
	if err != nil {
		return "", err
	}
	return paper.TraceText(graph, things, g.now()), nil
}

// traced is what bears a number, in all that can be traced.
func (g *program) traced(what string) (trace.Graph, []trace.Thing, error) {
	graph, err := g.traceGraph()
	if err != nil {
		return graph, nil, err
	}
	things, err := graph.Find(what)
	return graph, things, err
}

// traceGraph is all that can be traced: the ledger and the batches.
func (g *program) traceGraph() (trace.Graph, error) {
	s, err := g.stocked()
	if err != nil {
		return trace.Graph{}, err
	}
	batches, err := g.everyBatch()
	if err != nil {
		return trace.Graph{}, err
	}
	return trace.Of(s, batches), nil
}

// everyBatch is every batch of the logbook, none where no logbook is there.
func (g *program) everyBatch() ([]life.Batch, error) {
	if _, err := os.Stat(g.bookDir()); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	shelf, err := g.shelf()
	if err != nil {
		return nil, err
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return nil, err
	}
	batches, err := life.All(book, shelf, g.quietHand(shelf), g.today())
	if err != nil {
		return nil, fmt.Errorf("trace: %w", err)
	}
	return batches, nil
}
