package invoice

import (
	"fmt"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/strict"
)

// Tell says what was understood of a line.
func (l Line) Tell() string {
	switch l.Kind {
	case Taken:
		return strings.Join(append([]string{l.Item.Tell()}, l.Notes...), "; ")
	case Postage:
		return fmt.Sprintf("postage %s, shared over all by price", l.Amount)
	case Discount:
		return fmt.Sprintf("a discount of %s, shared over all by price", l.Amount)
	case Sum:
		return fmt.Sprintf("a sum of %s, to check by", l.Amount)
	case Heading:
		var words []string
		if l.reading.supplier != "" {
			words = append(words, "from "+l.reading.supplier)
		}
		if l.reading.bought != 0 {
			words = append(words, "bought "+l.reading.bought.String())
		}
		return "for all lines: " + strings.Join(words, ", ")
	case Odd:
		return l.refusal()
	case Aside:
		return l.Why
	}
	return l.Kind.String()
}

// Tell says what came, in words that [One] understands again.
func (x Item) Tell() string {
	unit := x.Material.Kind.Unit()
	size := digits(x.Each) + " " + unit
	if x.Packs > 1 {
		size = fmt.Sprintf("%d x %s", x.Packs, size)
	}
	price := x.Price.String()
	if x.Currency != "" {
		price += " " + x.Currency
	}
	if x.Packs > 1 {
		price += " together"
	}
	words := []string{string(x.Material.Kind) + ": " + x.Name, size, price}
	add := func(is bool, text string) {
		if is {
			words = append(words, text)
		}
	}
	add(x.Postage.Sign() > 0, "postage "+x.Postage.String())
	add(x.Lot != "", `lot "`+x.Lot+`"`)
	add(x.Supplier != "", `from "`+x.Supplier+`"`)
	add(x.Bought != 0, "bought "+x.Bought.String())
	add(x.Expires != 0, "expires "+x.Expires.String())
	add(x.Tare > 0, "tare "+digits(x.Tare)+" g")
	add(x.Loss > 0, "loss "+digits(x.Loss)+" "+unit)
	return strings.Join(words, ", ")
}

// digits writes a quantity so that no point in it could part thousands.
func digits(q lot.Quantity) string {
	text := q.String()
	if strict.PointThousands(text) != "" {
		text += "0"
	}
	return text
}
