package colour

import (
	"math"
	"math/bits"
	"slices"
)

// line is an order problem in whole numbers. A state is the set of batters already laid and the one
// laid last; rest holds the least sum that finishes from it.
type line struct {
	n           int
	ring        bool
	first, last int
	peak, sum   [MostOrdered][MostOrdered]int64
	limit       int64
	rest        []int64
}

const impossible = math.MaxInt64 / 4

// best returns the order with the least worst border, then the least sum, then the first by number.
func (l *line) best() []int {
	l.rest = make([]int64, l.n<<l.n)
	limits := []int64{0}
	for i := range l.n {
		limits = append(limits, l.peak[i][:i]...)
	}
	slices.Sort(limits)
	limits = slices.Compact(limits)
	low, high := 0, len(limits)-1
	for low < high {
		mid := (low + high) / 2
		if l.solve(limits[mid]) < impossible {
			high = mid
		} else {
			low = mid + 1
		}
	}
	return l.trace(l.solve(limits[low]))
}

// solve fills rest with borders up to limit allowed, and returns the least sum.
func (l *line) solve(limit int64) int64 {
	l.limit = limit
	full := uint(1)<<l.n - 1
	near := l.neighbours()
	for j := range l.n {
		l.rest[int(full)*l.n+j] = l.end(j)
	}
	for mask := full - 1; mask > 0; mask-- {
		for in := mask; in != 0; in &= in - 1 {
			j := bits.TrailingZeros(in)
			least := int64(impossible)
			for out := near[j] &^ mask; out != 0; out &= out - 1 {
				k := bits.TrailingZeros(out)
				least = min(least, l.sum[j][k]+l.rest[int(mask|1<<k)*l.n+k])
			}
			l.rest[int(mask)*l.n+j] = least
		}
	}
	least := int64(impossible)
	for i := range l.n {
		least = min(least, l.from(i))
	}
	return least
}

// neighbours returns, for each batter, the set that may lie beside it.
func (l *line) neighbours() (near [MostOrdered]uint) {
	for i := range l.n {
		for k := range l.n {
			if i != k && l.peak[i][k] <= l.limit {
				near[i] |= 1 << k
			}
		}
	}
	return near
}

// end is the cost of ending with j: with the first known, a ring closes here.
func (l *line) end(j int) int64 {
	if l.last != None && j != l.last {
		return impossible
	}
	if l.ring && l.first != None {
		return l.border(j, l.first)
	}
	return 0
}

// from is the least cost of an order that begins with i: with only the last known, a ring closes here.
func (l *line) from(i int) int64 {
	if l.first != None && i != l.first {
		return impossible
	}
	cost := l.rest[l.n<<i+i]
	if l.ring && l.first == None {
		cost += l.border(l.last, i)
	}
	return min(cost, impossible)
}

func (l *line) border(i, k int) int64 {
	if i == k || l.peak[i][k] > l.limit {
		return impossible
	}
	return l.sum[i][k]
}

// trace lays the first order by number whose cost is least.
func (l *line) trace(least int64) []int {
	at := 0
	for l.from(at) != least {
		at++
	}
	order := []int{at}
	mask := uint(1) << at
	near := l.neighbours()
	for len(order) < l.n {
		left := l.rest[int(mask)*l.n+at]
		for out := near[at] &^ mask; out != 0; out &= out - 1 {
			k := bits.TrailingZeros(out)
			if l.sum[at][k]+l.rest[int(mask|1<<k)*l.n+k] == left {
				at = k
				break
			}
		}
		order, mask = append(order, at), mask|1<<at
	}
	return order
}
