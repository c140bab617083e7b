package season

import (
	"cmp"
	"slices"
)

// cover shares the bars out among the dates, the earliest first. A date takes of the pours that are for it, then of those that are for none,
// those first that are dry first, then of what earlier dates have left over; what is for a later date is left to that. Only bars count that are dry by the middle of
// the band when labelling begins.
func (b *Board) cover() {
	left := make([]int, len(b.Rows))
	for i, r := range b.Rows {
		if r.BarsKnown && r.Placed && !r.Missed && r.Fault == nil {
			left[i] = max(r.Bars, 0)
		}
	}
	for n := range b.Dates {
		d := &b.Dates[n]
		for _, w := range d.Wants {
			c := Cover{Design: w.Design, Wanted: w.Bars, Short: w.Bars}
			for _, i := range b.sources(d, w.Design) {
				r := b.Rows[i]
				if !r.BarsKnown {
					c.Unknown++
					continue
				}
				take := min(c.Short, left[i])
				if take == 0 {
					continue
				}
				c.From = append(c.From, Share{i, take})
				left[i] -= take
				if c.Short -= take; r.Ready.Late > d.Label {
					c.Unsure += take
				}
			}
			d.Covers = append(d.Covers, c)
		}
	}
}

// sources are the pours a date may take bars of a design from, in the order it takes them.
func (b *Board) sources(d *DateRow, design string) []int {
	var out []int
	rank := func(i int) int {
		r := b.Rows[i]
		switch {
		case r.HasDate && same(r.For, d.Name):
			return 0
		case !r.HasDate:
			return 1
		}
		return 2
	}
	for i, r := range b.Rows {
		if r.Placed && !r.Missed && r.Fault == nil && sameDesign(r.Name, design) && r.Ready.Middle <= d.Label && (!r.HasDate || same(r.For, d.Name) || r.Due < d.Day) {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(x, y int) int {
		return cmp.Or(cmp.Compare(rank(x), rank(y)), cmp.Compare(b.Rows[x].Ready.Middle, b.Rows[y].Ready.Middle), cmp.Compare(x, y))
	})
	return out
}
