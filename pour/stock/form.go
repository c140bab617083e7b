package stock

import (
	"fmt"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/strict"
)

// FileFormat is the version of the ledger's file.
const FileFormat = 1

// FileName is the ledger's file in the maker's folder of data.
const FileName = "ledger.toml"

const (
	headLine  = "# What came, went and was made of it. You may mend this file by hand; a correction is better made by an entry of its own."
	entryLine = "[[entry]]"
	lastKey   = "wall"
	wallForm  = "2006-01-02T15:04:05.000Z07:00"
)

// head is the part of the file written once.
func head() string { return fmt.Sprintf("%s\nformat = %d\n", headLine, FileFormat) }

// keys are the keys of an entry, in the order they are written. The last is in every entry, so that a torn one shows.
func keys() []string {
	return []string{
		"kind", "id", "day", "pack", "material", "name", "lot", "supplier", "expires", "quantity", "tare_g", "usual_loss", "price", "postage",
		"for", "jug", "planned", "formula", "currency", "text", "of", "corrects", lastKey,
	}
}

// text is the entry as it stands in the file, an empty line before it.
func (e Entry) text() string {
	var b strings.Builder
	b.WriteString("\n" + entryLine + "\n")
	word := func(key, v string) {
		if v != "" {
			fmt.Fprintf(&b, "%s = %s\n", key, strict.Quote(v))
		}
	}
	number := func(key, v string, is bool) {
		if is {
			fmt.Fprintf(&b, "%s = %s\n", key, v)
		}
	}
	date := func(key string, d day.Day) { number(key, d.String(), d != 0) }
	word("kind", string(e.Kind))
	word("id", e.ID)
	date("day", e.Day)
	word("pack", e.Pack)
	if e.Material.ID != "" {
		word("material", e.Material.String())
	}
	word("name", e.Name)
	word("lot", e.Lot)
	word("supplier", e.Supplier)
	date("expires", e.Expires)
	number("quantity", e.Q.String(), e.Q != 0 || e.Kind == Counted)
	number("tare_g", e.Tare.String(), e.Tare != 0)
	number("usual_loss", e.Loss.String(), e.Loss != 0)
	if e.Kind == Received || e.Kind == Offered && e.Price.Sign() > 0 {
		word("price", e.Price.String())
	}
	if e.Postage.Sign() != 0 {
		word("postage", e.Postage.String())
	}
	word("for", e.For)
	word("jug", e.Jug)
	number("planned", "true", e.Planned)
	word("formula", string(e.Formula))
	word("currency", e.Currency)
	word("text", e.Text)
	word("of", e.Of)
	word("corrects", e.Corrects)
	fmt.Fprintf(&b, "%s = %s\n", lastKey, e.Wall.Format(wallForm))
	return b.String()
}
