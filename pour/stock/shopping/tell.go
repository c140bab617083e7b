package shopping

import (
	"fmt"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// cents is how many digits after the point money is shown with.
const cents = 2

// Much tells a quantity of a material in its unit.
func Much(m lot.Material, q lot.Quantity) string { return q.String() + " " + m.Kind.Unit() }

// Money tells an amount, rounded half up to the cent, in a currency where one is stated.
func Money(a money.Amount, currency string) string {
	return strings.TrimSpace(a.Over(1, cents).String() + " " + currency)
}

// Tell is so many packs in words.
func (b Buy) Tell(m lot.Material) string {
	text := fmt.Sprintf("%d × %s", b.Count, Much(m, b.Offer.Size))
	if b.Offer.Supplier != "" {
		text += " from " + b.Offer.Supplier
	}
	return text
}

// Tell says what to get of a row: its packs with their price, or how much where no pack is known.
func (r Row) Tell(currency string) string {
	text := r.Name + ": "
	switch {
	case r.Short == 0:
		return text + "enough"
	case r.Made():
		return text + "make " + Much(r.Material, r.Short)
	case !r.Chosen:
		return text + Much(r.Material, r.Short) + ", no pack known"
	}
	for i, b := range r.Choice.Buys {
		if i > 0 {
			text += " and "
		}
		text += b.Tell(r.Material)
	}
	if r.Choice.Priced {
		text += ", " + Money(r.Choice.Cost, currency)
	}
	return text + "; " + r.After()
}

// Why is a row's reckoning in words: what is wanted, what lies there, what of that is spoken for, what is short.
func (r Row) Why() string {
	much := func(q lot.Quantity) string { return Much(r.Material, q) }
	text := fmt.Sprintf("%s wanted for %s; ", much(r.Need), strings.Join(r.For, ", "))
	switch {
	case !r.Kept:
		text += "none ever came"
	default:
		text += much(r.Usable) + " there"
	}
	if r.Reserved > 0 {
		text += fmt.Sprintf(", %s reserved by other pours", much(r.Reserved))
	}
	if r.Blocked > 0 {
		text += fmt.Sprintf(", %s more past its date", much(r.Blocked))
	}
	if r.Short > 0 && (r.Kept || r.Short < r.Need) {
		text += fmt.Sprintf("; %s short", much(r.Short))
		if free := max(r.Usable-r.Reserved, 0); r.Short > r.Need-min(free, r.Need) {
			text += ", as some is past its date before its pour"
		}
	}
	return text
}

// After says what is left over of what is bought, and what is not counted on.
func (r Row) After() string {
	text := Much(r.Material, r.Choice.Leftover) + " left over"
	kept := lot.Quantity(0)
	for _, b := range r.Choice.Buys {
		kept += (b.Offer.Size - b.Offer.Usable) * lot.Quantity(b.Count)
	}
	if kept > 0 {
		text += fmt.Sprintf("; %s of it usually stays in the tub and is not counted on", Much(r.Material, kept))
	}
	if r.Choice.Coarse {
		text += "; enough, but too many packs to be sure that no others are better"
	}
	return text
}

// Says says what a rule does.
func (r Rule) Says() string {
	if r == LeastLeft {
		return "Of all packs that are enough: those that leave least over, then the cheapest, then the fewest."
	}
	return "Of all packs that are enough: the cheapest, then those that leave least over, then the fewest."
}

// TellPours names the pours a list is for, each with its day where it has one; what is the same is counted.
func (l List) TellPours() []string {
	var names []string
	count := map[string]int{}
	for _, p := range l.Pours {
		name := p.Name
		if p.On != 0 {
			name += " on " + p.On.String()
		}
		if count[name]++; count[name] == 1 {
			names = append(names, name)
		}
	}
	for i, name := range names {
		if n := count[name]; n > 1 {
			names[i] = fmt.Sprintf("%d × %s", n, name)
		}
	}
	return names
}
