package invoice

import (
	"fmt"

	"pourbench/pour/lot"
)

// Quantity reads how much of a kind of material a text says: a number in g or pieces, or with a unit behind it.
func Quantity(text string, kind lot.Kind) (lot.Quantity, error) {
	r := words{details(), ""}.readLine(text)
	refused := func(why string) (lot.Quantity, error) {
		return 0, fmt.Errorf("read %q: %s", text, why)
	}
	if n := len(r.prices); n == 1 && len(r.sizes) == 0 && len(r.words) == 0 && r.prices[0].currency == "" && r.prices[0].of == ofUnknown {
		one, _ := lot.UnitOf(kind.Unit())
		r.sizes, r.prices = []measure{{text: r.prices[0].text, unit: one}}, nil
	}
	mass, volume, pieces, why := r.gathered()
	switch {
	case r.why != "":
		return refused(r.why)
	case why != "":
		return refused(why)
	case len(r.words)+len(r.prices)+r.count > 0 || len(r.sizes) == 0:
		return refused(map[bool]string{true: "write pieces, as in 40", false: "write a weight, as in 1850 g or 1.85 kg"}[kind.Counted()])
	case volume != nil:
		return refused("write its weight, in g or kg")
	case pieces != nil && !pieces.amount.IsInt():
		return refused("write whole pieces")
	case kind.Counted() != (pieces != nil):
		return refused("it is measured in " + kind.Unit())
	}
	q, ok := lot.Of(firstSized(mass, pieces).amount)
	if !ok {
		return refused("that is more than a hundred tonnes")
	}
	return q, nil
}

// CodeOf is the code of a currency as it was written; empty: its sign stands for several.
func CodeOf(written string) string {
	switch {
	case len(written) == 3 && written[0] < 0x80:
		return written
	case written == "€":
		return "EUR"
	}
	return ""
}
