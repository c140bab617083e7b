package colour

import (
	"fmt"
	"math"
)

// MostOrdered is the largest number of batters BestOrder puts in order; it tries all orders in effect.
const MostOrdered = 12

// None is the index that stands for no batter in First, Last and Spacer of an OrderProblem.
const None = -1

// OrderProblem asks for the cleanest order of batters in a line or a ring. Batters are indices into
// Mud. Mind that the zero value pins batter 0: write None where nothing is pinned.
type OrderProblem struct {
	Mud   [][]float64 // score of every pair, 0 to 1, symmetric; the diagonal is not read
	Ring  bool        // the last lies beside the first, as sectors in a round pot
	First int         // batter pinned to the beginning, or None
	Last  int         // batter pinned to the end, or None
	// Spacer is a batter poured between every two others, as the pot often is, or None. Then no two
	// others touch: a pair of neighbours costs each one's mud with the spacer, and nothing for each
	// other. The spacer itself stands in no order, neither in Current nor in the answer. In a ring it
	// also lies between the last and the first; in a line it does not lie outside the ends.
	Spacer  int
	Current []int // the maker's order of all batters but the spacer; nil: by index
}

// BestOrder returns the order whose muddiest pair of neighbours is least muddy, and among those the one
// with the least mud in total, with that worst score and that total. Among equals it keeps the maker's
// own order, or what departs from it latest; a ring begins where First says, else so that Last ends it,
// else with the maker's first. Scores count as equal within a billionth. It is exact up to MostOrdered
// batters and refused above, and refused for scores that are not symmetric or not 0 to 1, and for pins
// and orders that contradict each other.
func BestOrder(p OrderProblem) (order []int, worst, total float64, err error) {
	nodes, err := p.nodes()
	if err != nil {
		return nil, 0, 0, fmt.Errorf("order batters: %w", err)
	}
	if len(nodes) == 0 {
		return nil, 0, 0, nil
	}
	l := p.line(nodes)
	for _, i := range l.best() {
		order = append(order, nodes[i])
	}
	worst, total = p.measure(order)
	return order, worst, total, nil
}

// measure returns the worst and the summed mud along an order.
func (p OrderProblem) measure(order []int) (worst, total float64) {
	for i, a := range order {
		next := i + 1
		if next == len(order) {
			if !p.Ring || len(order) == 1 {
				break
			}
			next = 0
		}
		peak, sum := p.touch(a, order[next])
		worst, total = max(worst, peak), total+sum
	}
	return worst, total
}

// touch returns the worst border and the sum of borders between two neighbours.
func (p OrderProblem) touch(a, b int) (peak, sum float64) {
	if p.Spacer == None {
		return p.Mud[a][b], p.Mud[a][b]
	}
	return max(p.Mud[a][p.Spacer], p.Mud[p.Spacer][b]), p.Mud[a][p.Spacer] + p.Mud[p.Spacer][b]
}

// line turns the problem into whole numbers, batters numbered by the maker's order: then ties are exact,
// and the first order by number is the one nearest to the maker's.
func (p OrderProblem) line(nodes []int) *line {
	n := len(nodes)
	l := &line{n: n, ring: p.Ring && n > 1, first: None, last: None}
	for i, a := range nodes {
		if a == p.First {
			l.first = i
		}
		if a == p.Last {
			l.last = i
		}
		for k, b := range nodes {
			peak, sum := p.touch(a, b)
			l.peak[i][k], l.sum[i][k] = int64(math.Round(1e9*peak)), int64(math.Round(1e9*sum))
		}
	}
	if l.ring && l.first == None && l.last == None {
		l.first = 0
	}
	return l
}
