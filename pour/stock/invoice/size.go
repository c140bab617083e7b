package invoice

import (
	"fmt"
	"math/big"
	"strconv"

	"pourbench/pour"
	"pourbench/pour/lot"
)

// sized is how much is in one pack, in g, mL or pieces.
type sized struct {
	amount *big.Rat
	unit   lot.Unit // the one it was written in
}

// size is how much is in one pack of a material, as it was written and as it is kept; why says what cannot be.
func (r *reading) size(m lot.Material, shelf pour.Shelf) (s sized, each lot.Quantity, why string) {
	mass, volume, pieces, why := r.gathered()
	switch {
	case why != "":
		return s, 0, why
	case m.Kind.Counted():
		return r.countedSize(pieces, mass != nil || volume != nil)
	case mass == nil && volume == nil:
		return s, 0, "how much of it? Write its size, as in 5 kg, 500 ml or 2 x 500 g"
	case pieces != nil && r.count == 0 && pieces.amount.IsInt() && pieces.amount.Cmp(big.NewRat(200, 1)) <= 0:
		r.count = int(pieces.amount.Num().Int64())
	case pieces != nil:
		return s, 0, "it has a size and a number of pieces: write 2 x 500 g, or the size alone"
	}
	if s = firstSized(mass, volume); mass != nil {
		each, why = kept(mass.amount, "1000 kg", 1e6)
		return s, each, why
	}
	gml, ok := density(m, shelf)
	if !ok {
		return s, 0, "its density is not on the shelf: write its weight, in g or kg"
	}
	d, ok := new(big.Rat).SetString(gml)
	if !ok {
		return s, 0, "its density cannot be read: write its weight, in g or kg"
	}
	if each, why = kept(d.Mul(d, volume.amount), "1000 kg", 1e6); why == "" {
		r.notes = append(r.notes, fmt.Sprintf("%s g at the shelf's %s g/ml", each, gml))
	}
	return s, each, why
}

func firstSized(a, b *sized) sized {
	if a != nil {
		return *a
	}
	return *b
}

// kept is an amount as the ledger keeps it, above 0 and at most a limit.
func kept(amount *big.Rat, limit string, most int64) (lot.Quantity, string) {
	q, ok := lot.Of(amount)
	switch {
	case !ok || amount.Cmp(big.NewRat(most, 1)) > 0:
		return 0, "that is more than " + limit
	case q == 0:
		return 0, "a pack of nothing cannot be: write its size, as in 5 kg"
	}
	return q, ""
}

// countedSize is how many pieces are in a pack of what is counted.
func (r *reading) countedSize(pieces *sized, weighed bool) (s sized, each lot.Quantity, why string) {
	one, _ := lot.UnitOf("pieces")
	switch {
	case pieces == nil && r.count > 0 && !weighed:
		pieces = &sized{big.NewRat(int64(r.count), 1), one}
		r.count = 0
	case pieces == nil:
		return s, 0, "how many of it? It is counted: write its pieces, as in 100 pieces"
	case !pieces.amount.IsInt():
		return s, 0, "write whole pieces"
	}
	each, why = kept(pieces.amount, "1000000 pieces", 1e6)
	return *pieces, each, why
}

// gathered sorts the sizes of a line by what they measure. Pounds and ounces add up; where the same is said in metric units too, that one counts.
func (r *reading) gathered() (mass, volume, pieces *sized, why string) {
	var metric, imperial *sized
	seen := map[lot.Unit]bool{}
	for _, m := range r.sizes {
		x := &sized{m.unit.Written(m.text), m.unit}
		if x.amount == nil {
			return nil, nil, nil, fmt.Sprintf("the number %s cannot be read: write digits with one decimal point", m.text)
		}
		_, ounces := lot.UnitOf("oz")
		at := map[lot.Dimension]**sized{lot.Volume: &volume, lot.Pieces: &pieces}[m.unit.Of]
		switch {
		case seen[m.unit]:
			return nil, nil, nil, "it has two sizes: leave one, or write 2 x 500 g where it came in several packs"
		case at == nil && ounces && imperialUnit(m.unit) && imperial != nil:
			imperial.amount = new(big.Rat).Add(imperial.amount, x.amount)
		case at == nil && imperialUnit(m.unit):
			imperial = x
		case at == nil && metric != nil, at != nil && *at != nil:
			return nil, nil, nil, "it has two sizes: leave one, or write 2 x 500 g where it came in several packs"
		case at == nil:
			metric = x
		default:
			*at = x
		}
		seen[m.unit] = true
	}
	if metric == nil || imperial == nil {
		return firstOf(metric, imperial), volume, pieces, ""
	}
	if !near(metric.amount, imperial.amount) {
		return nil, nil, nil, "its two sizes differ: leave the right one"
	}
	return metric, volume, pieces, ""
}

func imperialUnit(u lot.Unit) bool {
	oz, _ := lot.UnitOf("oz")
	lb, _ := lot.UnitOf("lb")
	return u == oz || u == lb
}

// near reports whether two amounts differ by no more than rounding on a label does, 2 %.
func near(a, b *big.Rat) bool {
	apart := new(big.Rat).Sub(a, b)
	return apart.Abs(apart).Cmp(new(big.Rat).Mul(a, big.NewRat(2, 100))) <= 0
}

// roomC is how warm a bottle stands when it is filled: common practice, no source.
const roomC = 20

// density is what the shelf has for a material, g/mL, in digits.
func density(m lot.Material, shelf pour.Shelf) (gml string, ok bool) {
	v := 0.0
	switch m.Kind {
	case lot.Oil:
		if o, ok := shelf.Oil(m.ID); ok {
			v = o.Fat.DensityAt(roomC)
		}
	case lot.Extra:
		if x, ok := shelf.Extra(m.ID); ok {
			v = x.DensityGML
		}
	case lot.Scent:
		if x, ok := shelf.Scent(m.ID); ok {
			v = x.DensityGML
		}
	}
	return strconv.FormatFloat(v, 'f', -1, 64), v > 0 && v < 10
}

// smaller reads a tare or a usual loss of a pack of a size; below it.
func (m *measure) smaller(s sized, each lot.Quantity, what string) (lot.Quantity, string) {
	if m == nil {
		return 0, ""
	}
	one, _ := lot.UnitOf("pieces")
	u := m.unit
	if m.percent {
		u = one // a bare number
	}
	r := u.Written(m.text)
	switch {
	case r == nil:
		return 0, fmt.Sprintf("its %s cannot be read: write a number with one decimal point", what)
	case m.percent:
		r.Mul(r, big.NewRat(int64(each), int64(lot.One)*100))
	case what == "loss" && u.Of != s.unit.Of:
		return 0, "write its loss in the unit of its size, or in percent"
	case what == "loss" && u.Of == lot.Volume:
		r.Mul(r, new(big.Rat).Quo(big.NewRat(int64(each), int64(lot.One)), s.amount))
	}
	q, ok := lot.Of(r)
	if !ok || what == "loss" && q >= each {
		return 0, fmt.Sprintf("a %s of %s cannot be", what, m.text)
	}
	return q, ""
}
