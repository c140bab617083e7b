package command

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour/stock"
	"pourbench/pour/stock/invoice"
	"pourbench/pour/stock/shopping"
)

// offerCommand types a pack that can be bought.
func (g *program) offerCommand() *cobra.Command {
	return &cobra.Command{
		Use: "offer LINE", Short: "Type a size of pack that can be bought and what it costs; nothing comes of it but a better shopping list", Args: cobra.MinimumNArgs(1),
		Long: `Type a size of pack that can be bought, in the words of a pack that came: what it is,
its size, its price, whom it is from. The shopping list picks among these and the packs
that came. What is typed again, of the same size from the same supplier, takes the place
of what was typed before. It stands in the ledger as an entry that moves nothing.`,
		Example: `  pourbench stock offer "olive 5 kg 38.50 from the mill"`,
		RunE:    func(_ *cobra.Command, args []string) error { return g.offer(strings.Join(args, " ")) },
	}
}

func (g *program) offer(text string) error {
	shelf, err := g.shelf()
	if err != nil {
		return err
	}
	said := ""
	_, err = g.ledger().Decide(g.now(), session(), func(s stock.State) ([]stock.Entry, error) {
		line, err := invoice.One(text, invoice.Known{Shelf: shelf, Held: s.Stock, Currency: s.Currency, Today: g.today()})
		if err != nil {
			return nil, err
		}
		x := line.Item
		if x.Currency != "" && s.Currency != "" && x.Currency != s.Currency {
			return nil, fmt.Errorf("note what can be bought: the ledger is in %s, and nothing is converted; write the price in it", s.Currency)
		}
		one := x.Entries()[0]
		said = fmt.Sprintf("%s: packs of %s can be bought for %s", one.Name, shopping.Much(one.Material, one.Q), shopping.Money(one.Price, s.Currency))
		if one.Supplier != "" {
			said += " from " + one.Supplier
		}
		return []stock.Entry{{Kind: stock.Offered, Day: g.today(), Material: one.Material, Name: one.Name, Supplier: one.Supplier, Q: one.Q, Loss: one.Loss, Price: one.Price}}, nil
	})
	if err != nil {
		return err
	}
	return g.print(said + "\n")
}
