package command

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour/disk"
	"pourbench/pour/logbook/life"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/pour/stock/tables"
	"pourbench/pour/strict"
)

// stockTableCommands hand stock on and take it in as CSV.
func (g *program) stockTableCommands() []*cobra.Command {
	give := &cobra.Command{
		Use: "export packs|movements|costs|sales", Short: "Print packs, movements, what batches took and cost, or sales as CSV (RFC 4180)", Args: takes(1),
		Example: "  pourbench stock export packs > packs.csv",
		RunE:    func(_ *cobra.Command, args []string) error { return g.exportStock(args[0]) },
	}
	take := &cobra.Command{
		Use: "import packs|movements|sales FILE", Short: "Take in packs, movements or sales from CSV; what is known already is passed over", Args: takes(2),
		Long: `Take in packs, movements or sales from a table as export prints it; - reads standard
input. What is known already by its name is passed over. Of packs and movements all is
taken in or nothing. Packs need the columns kind, id, size, price and bought; movements
kind and day; sales pour, day and count.`,
		Example: "  pourbench stock import packs packs.csv",
		RunE:    func(_ *cobra.Command, args []string) error { return g.importStock(args[0], args[1]) },
	}
	return []*cobra.Command{give, take}
}

func (g *program) exportStock(what string) error {
	if what == "sales" {
		all, err := g.logged()
		if err != nil {
			return err
		}
		return tables.WriteSales(g.Out, all.batches)
	}
	write := map[string]func(io.Writer, stock.State) error{"packs": tables.WritePacks, "movements": tables.WriteMovements, "costs": tables.WriteCosts}[what]
	if write == nil {
		return noTable("export", what, "packs", "movements", "costs", "sales")
	}
	s, err := g.stocked()
	if err != nil {
		return err
	}
	return write(g.Out, s)
}

func (g *program) importStock(what, file string) error {
	if !slices.Contains([]string{"packs", "movements", "sales"}, what) {
		return noTable("import", what, "packs", "movements", "sales")
	}
	from := g.In
	if file != "-" {
		f, _, err := disk.Given(file)
		if err != nil {
			return fmt.Errorf("open the table %s: %w", file, disk.Reason(err))
		}
		defer func() { _ = f.Close() }() // only read
		from = f
	}
	if what == "sales" {
		return g.importSales(from)
	}
	text, err := io.ReadAll(from)
	if err != nil {
		return fmt.Errorf("read the table %s: %w", file, err)
	}
	entries, err := g.ledger().Read()
	if err != nil {
		return err
	}
	var ever []string
	for _, e := range entries {
		ever = append(ever, e.ID)
	}
	return g.atDesk(func(s stock.State) (desk.Deed, error) {
		if what == "packs" {
			return tables.ReadPacks(strings.NewReader(string(text)), s)
		}
		return tables.ReadMovements(strings.NewReader(string(text)), s, ever)
	})
}

// importSales logs sales, each checked by its batch.
func (g *program) importSales(from io.Reader) error {
	all, err := g.logged()
	if err != nil {
		return err
	}
	sales, known, err := tables.ReadSales(from, all.batches)
	if err != nil {
		return err
	}
	for i, s := range sales {
		out, err := life.Log(all.book, all.shelf, s.Pour, s.Event, g.now(), session())
		if err != nil {
			return fmt.Errorf("take in sales: line %d: %w; the %d before it are logged", s.Line, err, i)
		}
		if len(out.Doubts) > 0 {
			g.say("line %d: %s. It is logged all the same", s.Line, strings.Join(out.Doubts, "; "))
		}
	}
	return g.print(fmt.Sprintf("%d sales taken in, %d known already\n", len(sales), known))
}

// noTable refuses a table that there is not.
func noTable(does, what string, words ...string) error {
	return fmt.Errorf("%s %q: there is no such table; %s", does, what, strict.Meant(what, words, "write one of "+strings.Join(words, ", "), ""))
}
