package command

import (
	"fmt"
	"os"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
	"pourbench/pour/stock/taking"
)

// isBatch reports whether a name is that of a pour in the logbook and of no file here.
func (g *program) isBatch(book logbook.Book, name string) bool {
	if _, err := os.Stat(name); err == nil {
		return false
	}
	_, err := os.Stat(book.Path(name))
	return err == nil
}

// batchCost is what a poured batch cost.
func (g *program) batchCost(book logbook.Book, shelf pour.Shelf, id string) (paper.Costs, error) {
	record, sheet, _, err := g.poured("count", book, shelf, id)
	if err != nil {
		return paper.Costs{}, err
	}
	state, err := g.stocked()
	if err != nil {
		return paper.Costs{}, err
	}
	b := life.Of(record, shelf, pour.Hand{}, g.today())
	c, notes := taking.True(state, shelf, &sheet, b, taking.Wants(&sheet, shelf, logbook.Standing(record.Events)))
	return paper.Costs{Name: record.Name, Poured: true, Notes: notes, Sheet: c}, nil
}

// costOfBatch prints what a poured batch cost. False: the name is no batch's.
func (g *program) costOfBatch(args []string) (bool, error) {
	if len(args) != 1 {
		return false, nil
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil || !g.isBatch(book, args[0]) {
		return false, nil //nolint:nilerr // without a logbook it is a plan, and that is told of
	}
	shelf, err := g.shelf()
	if err != nil {
		return true, err
	}
	c, err := g.batchCost(book, shelf, args[0])
	if err != nil {
		return true, fmt.Errorf("cost of a batch: %w", err)
	}
	return true, g.print(paper.CostText(c))
}
