package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
	"pourbench/pour/strict"
)

// batchesCommand lists every pour with its state and what is due.
func (g *program) batchesCommand() *cobra.Command {
	sort, state := "", ""
	cmd := g.book("batches [WORD ...]", "Every pour with its state, what is due, where its bars are", anyWords, "", func(book logbook.Book, shelf pour.Shelf, words []string) error {
		list, err := g.batches(book, shelf, strings.Join(words, " "), sort, state)
		if err != nil {
			return err
		}
		return g.print(paper.BatchList(list, g.today()))
	})
	cmd.Example = "  pourbench batches\n  pourbench batches curing meadow --sort due"
	cmd.Flags().StringVar(&sort, "sort", string(life.ByDay), "by "+strings.Join(words(life.Sorts()), ", "))
	cmd.Flags().StringVar(&state, "state", "", "only those of one state: "+strings.Join(words(life.States()), ", "))
	return cmd
}

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
	return paper.BatchRecord(record, pour.Work(record.Plan, shelf, pour.Hand{}), life.Of(record, shelf, hand, g.today())), nil
}

// batches are those that hold every word and are in a state, in an order.
func (g *program) batches(book logbook.Book, shelf pour.Shelf, text, sort, state string) ([]life.Batch, error) {
	if !slices.Contains(words(life.Sorts()), sort) {
		return nil, fmt.Errorf("list the batches: %w", strict.NoWord("--sort", sort, words(life.Sorts())))
	}
	if state != "" && !slices.Contains(words(life.States()), state) {
		return nil, fmt.Errorf("list the batches: %w", strict.NoWord("--state", state, words(life.States())))
	}
	all, err := life.All(book, shelf, g.hand(shelf), g.today())
	if err != nil {
		return nil, err
	}
	found := life.Search(all, text)
	if state != "" {
		found = slices.DeleteFunc(found, func(b life.Batch) bool { return !b.Is(life.State(state)) })
	}
	return life.Sorted(found, life.Sort(sort)), nil
}

// words are words of one kind as text.
func words[W ~string](list []W) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}
