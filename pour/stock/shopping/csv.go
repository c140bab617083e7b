package shopping

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"pourbench/pour/plain"
)

// CSV writes the list as a table after RFC 4180: a line for every offer something is bought of, and one for every material of which nothing is,
// or of which no pack is known. Quantities are in g, or in pieces of what is counted.
func (l List) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	_ = out.Write([]string{ // what goes wrong comes out of Error below
		"kind", "id", "name", "unit", "for", "wanted", "usable", "past_its_date", "reserved", "short", "packs", "pack_size", "pack_usable", "supplier", "price", "cost", "currency", "left_over",
	})
	for _, r := range l.Rows {
		lead := []string{
			string(r.Material.Kind), plain.Cell(r.Material.ID), plain.Cell(r.Name), r.Material.Kind.Unit(), plain.Cell(strings.Join(r.For, "; ")), r.Need.String(), r.Usable.String(), r.Blocked.String(), r.Reserved.String(),
			r.Short.String(),
		}
		if len(r.Choice.Buys) == 0 {
			_ = out.Write(append(lead, "", "", "", "", "", "", "", ""))
		}
		for i, b := range r.Choice.Buys {
			price, cost, left := "", "", ""
			if b.Offer.Priced {
				price, cost = b.Offer.Price.String(), b.Offer.Price.Times(b.Count).String()
			}
			if i == len(r.Choice.Buys)-1 {
				left = r.Choice.Leftover.String()
			}
			row := append(append([]string(nil), lead...), strconv.Itoa(b.Count), b.Offer.Size.String(), b.Offer.Usable.String(), plain.Cell(b.Offer.Supplier), price, cost, l.Currency, left)
			_ = out.Write(row)
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("write the shopping list as CSV: %w", err)
	}
	return nil
}
