package command

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/logbook"
	"pourbench/pour/paper"
	"pourbench/pour/sticker"
	"pourbench/pour/strict"
)

// labelOf says which label is asked for, beside what the plan says of it.
type labelOf struct {
	market string // id; empty: the plan's
	list   string // label.AsAdded or label.AsSalts; empty: the plan's
	lot    string // as it is printed; empty: the one that bars of the batch were labelled with last
}

// labelCommand tells what a label says, and what is below it.
func (g *program) labelCommand() *cobra.Command {
	var of labelOf
	var out labelOut
	cmd := &cobra.Command{
		Use: "label [PLAN|ID]", Short: "What the label says: ingredients, allergens, weight; of a plan, or better of a poured batch", Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			l, err := g.labelled(args, of)
			if err != nil {
				return err
			}
			return g.labelOut(l, out)
		},
	}
	cmd.Long = `Tell what a label says in a market, and what every line of it rests on: ingredients
by mass as what alkali made of them or as they were added, allergens of the scents on
the cured bar, the weight that bars keep, the height of its letters, the assessor's
report. With -o it is written as it is printed: a PDF or an SVG at true scale in the size the
plan states, a sheet full of them with --sheet, a band round the bar with --band, or its
words alone. What has no room or would be smaller than the market allows is refused.

Of a poured batch, by its name in the logbook, it goes by what was weighed into
it, by what its bars weighed when they were packed, and by what was ticked for it.

The market is the plan's own, in its table [label], or the one that --market names. It
is help and never legal advice: check the current text, ask locally.`
	cmd.Example = "  pourbench label meadow.toml --market eu\n  pourbench label " + examplePour + "\n  pourbench label -o labels.pdf --sheet a4 " + examplePour + "\n  pourbench label check meadow.toml --market gb"
	of.flags(cmd)
	out.flags(cmd)
	cmd.Flags().StringVar(&of.lot, "lot", "", "as it is printed; none: the last one that bars of the batch were labelled with")
	cmd.AddCommand(g.labelCheckCommand(), g.labelMarketsCommand())
	cmd.AddCommand(g.labelSettings()...)
	return cmd
}

// flags are the flags that say which label is asked for.
func (of *labelOf) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&of.market, "market", "", "where the bars are sold: the id of a market (pourbench label markets); none: the plan's")
	cmd.Flags().StringVar(&of.list, "list", "", "ingredients "+string(label.AsSalts)+" or "+string(label.AsAdded)+"; none: as the plan has it")
}

// labelsheet is a label as it was worked out, of a plan or of a batch.
type labelsheet struct {
	sheet pour.Sheet // its Label is that of the batch, where it is one
	shelf pour.Shelf
	of    pour.Labelling
	on    sticker.Details // without the logo
	told  paper.Label
}

// work works the label out, draws it once to see how high its letters come out and whether all has room, and works it out anew with that. A label that
// cannot be drawn says nothing of it.
func (l *labelsheet) work() {
	l.of.Lot = l.on.Lot
	l.sheet.Label = l.sheet.Labelled(l.shelf, l.of)
	if one, err := sticker.Of(l.sheet, l.shelf, l.on); err == nil {
		if drawn, err := one.Measure(sticker.Print{}); err == nil {
			l.of.LetterMM, l.of.Crowded, l.of.Fits = drawn.NetMM, drawn.Fault, drawn.Fault == ""
			l.sheet.Label = l.sheet.Labelled(l.shelf, l.of)
		}
	}
	l.told.Sheet = l.sheet.Label
	for _, w := range l.sheet.Warnings {
		if slices.Contains([]string{"label-made-of", "label-claim", "label-weight", "label-allergen-unstated"}, w.Code) {
			l.told.Warnings = append(l.told.Warnings, w)
		}
	}
}

// labelled works out the label of the plan or the batch that is named.
func (g *program) labelled(args []string, of labelOf) (labelsheet, error) {
	shelf, err := g.shelf()
	if err != nil {
		return labelsheet{}, err
	}
	if len(args) == 1 {
		book, err := logbook.OpenBook(g.bookDir())
		if err == nil && g.isBatch(book, args[0]) {
			return g.labelOfBatch(book, shelf, args[0], of)
		}
	}
	doc, err := g.load(args, shelf)
	if err != nil {
		return labelsheet{}, err
	}
	plan, market, err := of.on(doc.Plan, shelf)
	if err != nil {
		return labelsheet{}, err
	}
	l := labelsheet{
		sheet: pour.Weigh(plan, shelf).Time(shelf, g.hand(shelf)), shelf: shelf, of: pour.Labelling{Today: g.today()}, on: sticker.Details{Lot: of.lot},
		told: paper.Label{Name: plan.Name, Market: market, Show: plan.Show, Today: g.today()},
	}
	l.work()
	return l, nil
}

// errNoMarket says that nobody said for which market a label is.
var errNoMarket = errors.New("for which market: the plan names none in its table [label]; write --market and its id")

// on is the plan with what was asked for in the place of what it says of its label, and its market.
func (of labelOf) on(plan pour.Plan, shelf pour.Shelf) (pour.Plan, label.Market, error) {
	l := &plan.Label
	if of.market != "" {
		l.Market = of.market
	}
	if of.list != "" {
		if styles := []string{string(label.AsSalts), string(label.AsAdded)}; of.list != styles[0] && of.list != styles[1] {
			return plan, label.Market{}, fmt.Errorf("label %s: %w", plan.Name, strict.NoWord("--list", of.list, styles))
		}
		l.List = of.list
	}
	m, err := marketOf(shelf, "--market", l.Market)
	if l.Market == "" {
		err = fmt.Errorf("%w: %s", errNoMarket, strings.Join(marketIDs(shelf), ", "))
	}
	if err != nil {
		return plan, m, fmt.Errorf("label %s: %w", plan.Name, err)
	}
	return plan, m, nil
}

func marketIDs(shelf pour.Shelf) []string {
	var ids []string
	for _, m := range shelf.Markets {
		ids = append(ids, m.ID)
	}
	return ids
}

// marketOf is the market of an id, which was typed in a place.
func marketOf(shelf pour.Shelf, where, id string) (label.Market, error) {
	m, ok := shelf.Market(id)
	if !ok {
		return m, strict.NoWord(where, id, marketIDs(shelf))
	}
	return m, nil
}

// labelMarketsCommand lists the markets, or tells the lines of one.
func (g *program) labelMarketsCommand() *cobra.Command {
	return &cobra.Command{
		Use: "markets [MARKET]", Short: "List the markets, or every line of one with its document, clause, date and how far it was checked",
		Example: "  pourbench label markets\n  pourbench label markets us-soap", Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			shelf, err := g.shelf()
			if err != nil {
				return err
			}
			if len(args) == 0 {
				return g.print(paper.MarketsText(shelf.Markets, g.today()))
			}
			m, err := marketOf(shelf, "market", args[0])
			if err != nil {
				return fmt.Errorf("list the lines of a market: %w", err)
			}
			return g.print(paper.MarketText(m, g.today()))
		},
	}
}
