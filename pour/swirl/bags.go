package swirl

import (
	"cmp"
	"math"
	"slices"
)

// bagged gives every mound one colour. The colours take turns from end to end of the bar, each as often as its share of what is seen asks
// for; then mounds change colours while that brings the areas nearer to the shares.
func (c *Icing) bagged() {
	area := c.areas()
	order := make([]int, len(c.mounds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(c.mounds[a].at, c.mounds[b].at) })
	sum := 0.0
	for _, v := range c.recipe.Shares {
		sum += v
	}
	owed := make([]float64, len(c.recipe.Shares))
	for _, i := range order {
		best := c.portion[0]
		for p, share := range c.recipe.Shares {
			owed[p] += share / sum * area[i]
			if owed[p] > owed[best] {
				best = p
			}
		}
		owed[best] -= area[i]
		c.mounds[i].portion = best
	}
	for c.swap(area, owed) {
	}
}

// areas is what is seen of every mound, as a part of the whole icing.
func (c *Icing) areas() []float64 {
	const across, up = 8, 40 // looks to a mound across, and up to its peak
	index := map[*mound]int{}
	for i := range c.mounds {
		index[&c.mounds[i]] = i
	}
	area, seen := make([]float64, len(c.mounds)), 0.0
	columns := across * len(c.mounds)
	for i := range columns {
		for j := range up {
			y, z := (float64(i)+0.5)/float64(columns)*c.recipe.WidthMM, (float64(j)+0.5)/up*c.peak
			if m, _ := c.mound(y, z); m != nil {
				area[index[m]]++
				seen++
			}
		}
	}
	for i := range area {
		area[i] /= max(seen, 1)
	}
	return area
}

// swap lets the two mounds of different colours change that bring the areas nearest to the shares; it is false where none do.
func (c *Icing) swap(area, owed []float64) bool {
	best, one, other := 1e-9, -1, -1
	for i := range c.mounds {
		for k := range i {
			p, q := c.mounds[i].portion, c.mounds[k].portion
			if p == q {
				continue
			}
			more := area[i] - area[k] // p gets so much less, q so much more
			gain := math.Abs(owed[p]) + math.Abs(owed[q]) - math.Abs(owed[p]+more) - math.Abs(owed[q]-more)
			if gain > best {
				best, one, other = gain, i, k
			}
		}
	}
	if one < 0 {
		return false
	}
	p, q := c.mounds[one].portion, c.mounds[other].portion
	owed[p] += area[one] - area[other]
	owed[q] -= area[one] - area[other]
	c.mounds[one].portion, c.mounds[other].portion = q, p
	return true
}
