package command

import (
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/pour/season"
	"pourbench/pour/stock"
	"pourbench/pour/stock/shopping"
)

// shoppingFlags are what can be typed behind pourbench shopping.
type shoppingFlags struct{ season, csv, print, leastLeft bool }

// shoppingCommand prints what is to be bought.
func (g *program) shoppingCommand() *cobra.Command {
	var flags shoppingFlags
	cmd := &cobra.Command{
		Use: "shopping [PLAN ...]", Short: "What to buy for plans or the season, in which packs, with what lies there taken off",
		Long: `List what some plans want that does not lie on your shelves, in the packs you know it
in; without a plan, for all pours the season has planned.

What is usable counts first, less what the season's other pours have reserved; what is
past its date on the day of a pour does not count. Of all packs that are enough it
picks the cheapest, of equal ones those that leave least over, then the fewest; with
--least-left, those that leave least over, then the cheapest. It tries them all.

Sizes and prices are those of the packs that came, each supplier's last; others can be
typed: pourbench stock offer. Prices are without postage.`,
		Example: `  pourbench shopping meadow.toml meadow.toml      for two pours of one plan
  pourbench shopping --season                     for all that is planned
  pourbench shopping --print | lp -o cpi=12 -o lpi=7
  pourbench shopping --csv > list.csv`,
		RunE: func(_ *cobra.Command, args []string) error { return g.shopping(args, flags) },
	}
	cmd.Flags().BoolVar(&flags.season, "season", false, "for the season's pours too")
	cmd.Flags().BoolVar(&flags.csv, "csv", false, "as a table (RFC 4180)")
	cmd.Flags().BoolVar(&flags.print, "print", false, "as pages to print, with room for what was paid")
	cmd.Flags().BoolVar(&flags.leastLeft, "least-left", false, "of the packs that are enough, those that leave least over")
	return cmd
}

func (g *program) shopping(args []string, flags shoppingFlags) error {
	if flags.csv && flags.print {
		return errors.New("print the shopping list: --csv is a table and --print are pages; choose one")
	}
	if flags == (shoppingFlags{}) {
		text, err := g.shoppingText(args...)
		return errors.Join(err, g.print(text))
	}
	list, unread, err := g.shoppingList(args, flags)
	if err != nil {
		return err
	}
	for _, line := range unread {
		g.say("%s", line)
	}
	switch {
	case flags.csv:
		return list.CSV(g.Out)
	case flags.print:
		return g.print(paper.ShoppingPaper(list))
	}
	return g.print(paper.ShoppingText(list))
}

// shoppingText is the list that pourbench shopping prints, for a page too.
func (g *program) shoppingText(args ...string) (string, error) {
	list, unread, err := g.shoppingList(args, shoppingFlags{})
	if err != nil {
		return "", err
	}
	text := paper.ShoppingText(list)
	for _, line := range unread {
		text += line + "\n"
	}
	return text, nil
}

// shoppingList is what is to be bought for the plans of some files, or for the season, and which planned pours are not in it, in words.
func (g *program) shoppingList(args []string, flags shoppingFlags) (list shopping.List, unread []string, err error) {
	shelf, err := g.shelf()
	if err != nil {
		return list, nil, err
	}
	var pours []shopping.Pour
	for _, file := range args {
		p, err := g.wanted(file, shelf)
		if err != nil {
			return list, nil, err
		}
		pours = append(pours, p)
	}
	f, err := g.provisions()
	if err != nil {
		return list, nil, err
	}
	rule := shopping.Cheapest
	if flags.leastLeft {
		rule = shopping.LeastLeft
	}
	return f.For(pours, flags.season || len(args) == 0, rule), f.TellUnread(), nil
}

// wanted is a pour of the plan in a file.
func (g *program) wanted(file string, shelf pour.Shelf) (shopping.Pour, error) {
	doc, err := g.load([]string{file}, shelf)
	if err != nil {
		return shopping.Pour{}, err
	}
	return shopping.Wanted(doc.Plan, shelf, planID(file))
}

// planID is the name by which planned pours, known plans and the one on the bench are the same file; empty: it is none.
func planID(path string) string {
	if path == "" || path == "-" {
		return ""
	}
	return planfile.SameFile(path)
}

// provisions is what lies there, in which packs things can be bought, and what the season's pours have reserved of it. It says nothing: a screen
// may have the terminal.
func (g *program) provisions() (shopping.Facts, error) {
	state, err := g.stocked()
	if err != nil {
		return shopping.Facts{}, err
	}
	return g.reserved(state)
}

// reserved is what lies there with what the season's pours have reserved of it.
func (g *program) reserved(state stock.State) (shopping.Facts, error) {
	board, err := g.seasonBoard()
	if err != nil {
		return shopping.Facts{}, fmt.Errorf("see what the season has reserved: %w", err)
	}
	f := shopping.Facts{Offers: shopping.Typed(state.Entries)}
	f.Planned, f.Unread = shopping.Reservations(board)
	for i := range f.Planned {
		f.Planned[i].Plan = planID(season.PlanPath(g.dataDir(), f.Planned[i].Plan))
	}
	f.Stock = shopping.Reserve(state.Stock, f.Planned)
	return f, nil
}

// shoppingCommands are those below pourbench stock.
func (g *program) shoppingCommands() []*cobra.Command {
	days := shopping.Month
	expiring := &cobra.Command{
		Use: "expiring", Short: "What is past its date or soon will be, and which plans would use it", Args: cobra.NoArgs,
		Long: `List the packs that are past their date or will be within a month, first the first: which
of the season's pours will take some, and which other plans you have opened or poured
could use what is left over.`,
		Example: "  pourbench stock expiring --days 60",
		RunE: func(*cobra.Command, []string) error {
			if days < 0 || days > mostDaysAhead {
				return fmt.Errorf("look %d days ahead: write --days from 0 to %d", days, mostDaysAhead)
			}
			text, err := g.expiringText(days)
			return errors.Join(err, g.print(text))
		},
	}
	expiring.Flags().IntVar(&days, "days", shopping.Month, "how many days to look ahead")
	largest := &cobra.Command{
		Use: "largest [PLAN]", Short: "The largest batch of a plan that today's stock allows, and what limits it", Args: cobra.MaximumNArgs(1),
		Long: `Say how large a pour of a plan today's stock allows: filled how high, or with how many
cavities or oils, as the plan is sized. What the season's other pours have reserved is
not counted. The plan is weighed anew at every size, so that rounding and lye are true;
an icing of a size of its own grows alike. What limits it is named, and what would
limit it next. On the bench a key makes it so large, and undo takes it back.`,
		Example: "  pourbench stock largest meadow.toml",
		RunE:    func(_ *cobra.Command, args []string) error { return g.largest(args) },
	}
	return []*cobra.Command{expiring, largest, g.offerCommand()}
}

// mostDaysAhead is how far ahead it makes sense to look, days.
const mostDaysAhead = 3650

// expiringText is what pourbench stock expiring prints, for a page too.
func (g *program) expiringText(days int) (string, error) {
	list, err := g.expiring(days)
	if err != nil {
		return "", err
	}
	return paper.ExpiringText(list, days), nil
}

// expiring lists what expires. Designs are read only where something is left over that could go into one.
func (g *program) expiring(days int) ([]shopping.Expiring, error) {
	f, err := g.provisions()
	if err != nil {
		return nil, err
	}
	list := f.Expires(days, nil)
	for _, x := range list {
		if x.Days >= 0 && x.Unused > 0 {
			return f.Expires(days, g.designs()), nil
		}
	}
	return list, nil
}

// largest prints how large a pour the stock allows.
func (g *program) largest(args []string) error {
	shelf, err := g.shelf()
	if err != nil {
		return err
	}
	doc, err := g.load(args, shelf)
	if err != nil {
		return err
	}
	f, err := g.provisions()
	if err != nil {
		return err
	}
	for _, line := range f.TellUnread() {
		g.say("%s", line)
	}
	l, err := f.Largest(doc.Plan, shelf, planID(doc.Path))
	if errors.Is(err, shopping.ErrNothingKept) {
		return g.print(doc.Plan.Name + ": " + err.Error() + "\n")
	}
	if err != nil {
		return err
	}
	return g.print(paper.LargestText(l, doc.Plan.Show, doc.Plan.Name))
}

// designs are the plans that were opened or saved and those of the logbook, of each design the newest. What cannot be read is left out: it is no
// fault of what expires.
func (g *program) designs() []shopping.Pour {
	shelf, err := g.shelf()
	if err != nil {
		return nil
	}
	var out []shopping.Pour
	seen := map[string]bool{}
	add := func(p pour.Plan, file string) {
		if w, err := shopping.Wanted(p, shelf, file); err == nil && !seen[w.Name] {
			seen[w.Name] = true
			out = append(out, w)
		}
	}
	known, _ := planfile.Known(g.stateDir())
	for _, path := range known {
		if doc, err := planfile.Load(path, shelf); err == nil {
			add(doc.Plan, planID(path))
		}
	}
	if _, err := os.Stat(g.bookDir()); err != nil {
		return out // there is no logbook yet
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return out
	}
	list, _ := book.List()
	for _, e := range list {
		if e.Fault != nil || e.TrialScent != "" || seen[e.Name] {
			continue
		}
		if p, err := book.Read(e.ID, shelf); err == nil {
			add(p.Plan, e.ID)
		}
	}
	return out
}
