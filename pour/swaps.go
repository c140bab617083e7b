package pour

import (
	"slices"

	"pourbench/pour/script"
)

// cleaner changes two jugs of an order round as long as that makes it less muddy by what its own script says touches. The search in a row
// starts it: that jugs touch as they follow each other is only true of some techniques.
func (s *Sheet) cleaner(order []int, shelf Shelf) []int {
	mud := func(order []int) (Order, []int, bool) {
		acts, err := script.New(s.Plan.brief(shelf, order))
		if err != nil {
			return Order{}, nil, false
		}
		return s.muddy(acts.Contact()), acts.Brief.Order, true
	}
	best, now, ok := mud(order)
	if !ok {
		return order
	}
	for range len(now) { // each round of changes makes it cleaner; few are ever needed
		before := slices.Clone(now)
		for i := range now {
			for k := range i {
				next := slices.Clone(now)
				next[i], next[k] = next[k], next[i]
				if price, settled, ok := mud(next); ok && best.muddier(price) {
					best, now = price, settled
				}
			}
		}
		if slices.Equal(before, now) {
			break
		}
	}
	return now
}

// muddy is what it costs in mud that jugs touch, each pair with its part of all boundary. A pair that hardly touches is not the worst.
func (s *Sheet) muddy(contact [][]float64) Order {
	out := Order{Contact: contact}
	for a := range contact {
		for b := range a {
			score, part := s.Mingling.Mud[a][b], contact[a][b]
			out.Total += score * part
			if part*100 >= hardlyPercent {
				out.Worst = max(out.Worst, score)
			}
		}
	}
	return out
}
