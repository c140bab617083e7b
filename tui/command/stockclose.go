package command

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"pourbench/pour/day"
	"pourbench/pour/money"
	"pourbench/pour/paper"
	"pourbench/pour/stock"
	"pourbench/pour/stock/closing"
)

// stockCloseCommands close the books.
func (g *program) stockCloseCommands() []*cobra.Command {
	from, to, csv := "", "", false
	cmd := &cobra.Command{
		Use: "close", Short: "The books of some days: what there was and came is what was used, shrank and is left, in grams and in money", Args: cobra.NoArgs,
		Long: `Close the books over some days: of every material what there was, what was bought and
made, what was used, shrank and is left, in grams or pieces and in money; and of the
bars what they cost by where they are: on hand, sold, given, missing, in loaves not
cut yet. Seconds and samples carry no cost, the good bars carry all.

A bar's cost here is that of what the ledger has taken for its batch, packaging
included. Without --from it is all since the first entry, without --to until today.`,
		Example: "  pourbench stock close --from 2026-01-01 --to 2026-03-31",
		RunE: func(*cobra.Command, []string) error {
			m, b, err := g.closed(from, to)
			if err != nil {
				return err
			}
			if csv {
				return paper.ClosingCSV(g.Out, m, b)
			}
			return g.print(paper.ClosingText(m, b))
		},
	}
	cmd.Flags().StringVar(&from, "from", "", "the first day, year-month-day")
	cmd.Flags().StringVar(&to, "to", "", "the last day, year-month-day")
	cmd.Flags().BoolVar(&csv, "csv", false, "as a table with exact amounts, one row for every line (RFC 4180)")
	return []*cobra.Command{cmd}
}

// closed closes the books over the days that were typed.
func (g *program) closed(from, to string) (closing.Materials, closing.Bars, error) {
	var m closing.Materials
	var b closing.Bars
	entries, err := g.ledger().Read()
	if err != nil {
		return m, b, err
	}
	first, last, err := closingDays(entries, from, to, g.today())
	if err != nil {
		return m, b, fmt.Errorf("close the books: %w", err)
	}
	batches, err := g.everyBatch()
	if err != nil {
		return m, b, err
	}
	m = closing.Of(entries, first, last)
	b = closing.BarsOf(batches, func(id string, until day.Day) (money.Amount, bool) { return m.Cost(id, until), true }, first, last)
	return m, b, nil
}

// closingDays reads the days that were typed: from the first entry to today where none were.
func closingDays(entries []stock.Entry, from, to string, today day.Day) (first, last day.Day, err error) {
	first, last = today, today
	for _, e := range entries {
		if e.Day != 0 {
			first = min(first, e.Day)
		}
	}
	if from != "" {
		if first, err = day.Read(from, today); err != nil {
			return first, last, err
		}
	}
	if to != "" {
		if last, err = day.Read(to, today); err != nil {
			return first, last, err
		}
	}
	if first > last {
		return first, last, errors.New("the first day, " + first.String() + ", is after the last, " + last.String() + "; turn --from and --to round")
	}
	return first, last, nil
}
