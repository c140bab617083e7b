package command

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/labelfile"
	"pourbench/pour/lot"
	"pourbench/pour/paper"
	"pourbench/pour/strict"
)

// reportCommand lists what assessors' reports allow, and enters it.
func (g *program) reportCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use: "report [ID]", Short: "List what your assessor's reports allow, or one of them; what it allows is entered by the commands below",
		Example: `  pourbench label report add R-12 --on 2026-03-14 --about "olive bars"
  pourbench label report set R-12 oil olive 25 40
  pourbench label report set R-12 superfat 3 8`, Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error { return g.reports(args) },
	}
	cmd.Long = `List what your assessor's reports allow, as you entered it: the least and the most of
each oil, scent, colourant, extra, topping and embed, percent of the bar as it was made,
of all white pigments together, and of each batch's superfat. A plan that names a report
in its table [label] is held against it on every key. What a report does not name counts
as outside: nobody assessed it.

They are your entries. What holds is what the assessor wrote: check it there.`
	cmd.AddCommand(g.reportAddCommand(), g.reportFromCommand(), g.reportSetCommand(), g.reportDropCommand())
	return cmd
}

// reports prints the reports, or one of them.
func (g *program) reports(args []string) error {
	shelf, err := g.catalogue()
	if err != nil {
		return err
	}
	h, err := labelfile.Load(g.dataDir())
	if err != nil {
		return err
	}
	list := h.Reports
	if len(args) == 1 {
		r, ok := h.Report(args[0])
		if !ok {
			return fmt.Errorf("list what the report %s allows: %w", args[0], unknownReport(args[0], h))
		}
		list = []label.Report{r}
	}
	return g.print(paper.ReportsText(list, shelf))
}

func unknownReport(id string, h label.House) error {
	ids := make([]string, len(h.Reports))
	for i, r := range h.Reports {
		ids[i] = r.ID
	}
	return errors.New("no such report is in your label file: " + strict.Meant(id, ids, "pourbench label report lists them", ""))
}

// headed are the flags of a new report.
type headed struct{ about, on string }

func (f *headed) flags(cmd *cobra.Command, on string) {
	cmd.Flags().StringVar(&f.about, "about", "", "what it is about")
	cmd.Flags().StringVar(&f.on, "on", "", "the day it bears, 2026-03-14"+on)
}

func (g *program) reportAddCommand() *cobra.Command {
	var f headed
	cmd := &cobra.Command{
		Use: "add ID", Short: "Enter a report by the number that stands on it", Example: `  pourbench label report add R-12 --on 2026-03-14 --about "olive bars"`, Args: cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			on, err := g.day(f.on)
			if err != nil {
				return fmt.Errorf("add the report %s with --on and the day it bears: %w", args[0], err)
			}
			return g.stated("the report "+args[0], "there", g.labelStore().Path(), g.labelStore().AddReport(label.Report{ID: args[0], Of: f.about, On: on}))
		},
	}
	f.flags(cmd, "")
	return cmd
}

func (g *program) reportFromCommand() *cobra.Command {
	var f headed
	by := 10.0
	cmd := &cobra.Command{
		Use: "from ID [PLAN]", Short: "Draft a report's ranges around what a plan has, to be corrected by what the assessor wrote",
		Example: "  pourbench label report from R-12 meadow.toml --by 15 --on 2026-03-14", Args: cobra.RangeArgs(1, 2),
		RunE: func(_ *cobra.Command, args []string) error { return g.draftReport(args, f, by) },
	}
	cmd.Flags().Float64Var(&by, "by", by, "so many percent less and more of each amount")
	f.flags(cmd, "; none: today")
	return cmd
}

func (g *program) draftReport(args []string, f headed, by float64) error {
	if !(by >= 0 && by <= 100) {
		return fmt.Errorf("draft the report %s: --by %g: write 0 to 100, percent of each amount", args[0], by)
	}
	on := g.today()
	if f.on != "" {
		var err error
		if on, err = g.day(f.on); err != nil {
			return fmt.Errorf("draft the report %s: --on: %w", args[0], err)
		}
	}
	shelf, err := g.shelf()
	if err != nil {
		return err
	}
	doc, err := g.load(args[1:], shelf)
	if err != nil {
		return err
	}
	sheet := pour.Weigh(doc.Plan, shelf)
	has, err := sheet.Amounts(shelf, nil)
	if err != nil {
		return fmt.Errorf("draft the report %s from %s: %w", args[0], doc.Plan.Name, err)
	}
	r := label.Report{ID: args[0], Of: cmp.Or(f.about, "draft from "+doc.Plan.Name), On: on, Ranges: label.Around(has, by)}
	if err := g.labelStore().AddReport(r); err != nil {
		return err
	}
	g.say("the report %s has %d ranges now, in %s; they are a draft from your own plan: correct each by what the assessor wrote", r.ID, len(r.Ranges), g.labelStore().Path())
	return g.print(paper.ReportsText([]label.Report{r}, shelf))
}

func (g *program) reportSetCommand() *cobra.Command {
	return &cobra.Command{
		Use: "set ID KIND [THING] [LEAST] MOST", Short: "State the least and the most a report allows of one thing, percent of the bar as it was made",
		Long: "State the least and the most a report allows of one thing, percent of the bar as it was made.\nKinds: " + strings.Join(label.RangeKinds(), ", ") +
			". A material has its id on the shelf behind\nits kind; white is all white pigments together and superfat that of each batch: neither has one.",
		Example: "  pourbench label report set R-12 oil olive 25 40\n  pourbench label report set R-12 scent lavender-oil 2.5\n  pourbench label report set R-12 white 0.8", Args: cobra.RangeArgs(3, 5),
		RunE: func(_ *cobra.Command, args []string) error {
			x, ends, err := rangeOf(args[1:])
			if err == nil {
				err = ended(&x, ends)
			}
			if err == nil {
				err = g.onShelf(x)
			}
			if err != nil {
				return fmt.Errorf("state what %s allows: %w", args[0], err)
			}
			said := fmt.Sprintf("%s to %s %%", strict.Short(x.Least), strict.Short(x.Most))
			return g.stated("what "+args[0]+" allows of "+x.Of(), said, g.labelStore().Path(), g.labelStore().SetRange(args[0], x))
		},
	}
}

// rangeOf reads what a range is of from the words of a command, and returns those behind it.
func rangeOf(words []string) (label.Range, []string, error) {
	n := 2
	if label.Whole(words[0]) || len(words) < n {
		n = 1
	}
	x, err := label.RangeOf(strings.Join(words[:n], " "))
	return x, words[n:], err
}

// ended reads the ends of a range: the most alone, or the least and the most.
func ended(x *label.Range, words []string) error {
	if n := len(words); n < 1 || n > 2 {
		return fmt.Errorf("%s: write the most it allows, or the least and the most, in percent", x.Of())
	}
	ends := []float64{0}
	for _, word := range words {
		v, err := strict.ParseNumber(word)
		if err != nil {
			return fmt.Errorf("%s: %w", x.Of(), err)
		}
		ends = append(ends, v)
	}
	ends = ends[len(ends)-2:]
	x.Least, x.Most = ends[0], ends[1]
	return nil
}

// onShelf refuses a range of a material that the shelf has not, since no plan could have it.
func (g *program) onShelf(x label.Range) error {
	kinds := []string{label.RangeOil, label.RangeScent, label.RangeColourant, label.RangeExtra, label.RangeTopping}
	if !slices.Contains(kinds, x.Kind) {
		return nil
	}
	shelf, err := g.catalogue()
	if err != nil {
		return err
	}
	if _, ok := shelf.Colourant(x.ID); ok && x.Kind == label.RangeExtra {
		return fmt.Errorf("%s is a colourant wherever it goes in: write %q", x.ID, label.RangeColourant+" "+x.ID)
	}
	return shelf.Listed(lot.Material{Kind: lot.Kind(x.Kind), ID: x.ID})
}

func (g *program) reportDropCommand() *cobra.Command {
	return &cobra.Command{
		Use: "drop ID [KIND [THING]]", Short: "Take out what a report allows of one thing, or the report", Example: "  pourbench label report drop R-12 oil olive\n  pourbench label report drop R-12", Args: cobra.RangeArgs(1, 3),
		RunE: func(_ *cobra.Command, args []string) error {
			store := g.labelStore()
			if len(args) == 1 {
				return g.stated("the report "+args[0], "", store.Path(), store.DropReport(args[0]))
			}
			x, err := label.RangeOf(strings.Join(args[1:], " "))
			if err != nil {
				return fmt.Errorf("take out what %s allows: %w", args[0], err)
			}
			return g.stated("what "+args[0]+" allows of "+x.Of(), "", store.Path(), store.DropRange(args[0], x))
		},
	}
}
