package command

import (
	"fmt"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
)

// recordCommand prints the record of a batch.
func (g *program) recordCommand() *cobra.Command {
	cmd := g.book("record ID", "Print the record of a batch: lots and masses, deviations, bars, cure, checks, release to be signed, where it went", 1, "", func(book logbook.Book, shelf pour.Shelf, args []string) error {
		text, err := g.batchRecord(book, shelf, args[0])
		if err != nil {
			return err
		}
		return g.print(text)
	})
	cmd.Example = "  pourbench record " + examplePour
	return cmd
}

// batchRecord is the record of a batch as it is printed.
func (g *program) batchRecord(book logbook.Book, shelf pour.Shelf, id string) (string, error) {
	record, err := book.Read(id, shelf)
	if err != nil {
		return "", err
	}
	if record.PlanErr != nil {
		return "", fmt.Errorf("record %s: its plan cannot be used with today's shelf: %w", id, record.PlanErr)
	}
	hand := g.hand(shelf)
	sheet, b := pour.Work(record.Plan, shelf, pour.Hand{}), life.Of(record, shelf, hand, g.today())
	var l labelsheet
	if market, ok := shelf.Market(record.Plan.Label.Market); ok && b.State != life.Trial {
		l = g.labelOfPour(sheet, shelf, record, b, market)
		l.work()
	}
	return paper.BatchRecord(record, sheet, b, l.told), nil
}
