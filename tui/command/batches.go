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

// batchesCommand opens the page of batches or, where there is no terminal to draw on, lists every pour with its state and what is due.
func (g *program) batchesCommand() *cobra.Command {
	sort, state := "", ""
	var cmd *cobra.Command
	cmd = g.book("batches [WORD ...]", "Every pour with its state, what is due, where its bars are", anyWords, "", func(book logbook.Book, shelf pour.Shelf, words []string) error {
		err := knownSort(sort)
		if err != nil {
			return err
		}
		if g.plain, err = g.converses(nil, cmd.Flags().Changed("plain")); err != nil {
			return err
		}
		if !cmd.Flags().Changed("state") && (g.plain || g.terminal()) {
			order := life.Sort("") // the page has an order of its own
			if cmd.Flags().Changed("sort") {
				order = life.Sort(sort)
			}
			return g.batchesHere(shelf, words, order)
		}
		list, err := g.batches(book, shelf, strings.Join(words, " "), sort, state)
		if err != nil {
			return err
		}
		return g.print(paper.BatchList(list, g.today()))
	})
	cmd.Example = "  pourbench batches\n  pourbench batches curing meadow --sort due"
	g.plainFlag(cmd)
	cmd.Flags().BoolVar(&g.noMouse, "no-mouse", false, "leave the mouse to the terminal")
	cmd.Flags().StringVar(&sort, "sort", string(life.ByDay), "by "+strings.Join(words(life.Sorts()), ", "))
	cmd.Flags().StringVar(&state, "state", "", "only those of one state: "+strings.Join(words(life.States()), ", "))
	return cmd
}

// knownSort refuses an order that there is not.
func knownSort(sort string) error {
	if !slices.Contains(words(life.Sorts()), sort) {
		return fmt.Errorf("list the batches: %w", strict.NoWord("--sort", sort, words(life.Sorts())))
	}
	return nil
}

// batches are those that hold every word and are in a state, in an order.
func (g *program) batches(book logbook.Book, shelf pour.Shelf, text, sort, state string) ([]life.Batch, error) {
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
