package panel

import (
	"slices"
	"strconv"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// The columns of the stick blender's bursts; the last keeps the others at the left.
const (
	burstNumber = iota
	burstAt
	burstSeconds
	burstRoom
)

// newBurstS is how long a new burst lasts, seconds.
const newBurstS = 10

// bursts is the runs of the stick blender.
func bursts(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "bursts")), Title: ofBatch(n, "Stick blender"), cells: keys.Numbers,
		Grid: gridOf(n, (*Facts).burstGrid),
		add: func(f *Facts, _ On) Do {
			all := f.Plan.Batch(n).Blend
			at := 0.0
			if len(all) > 0 {
				at = all[len(all)-1].AtMin + 1
			}
			return Do{
				Name: "new burst", Edit: pour.SetBursts(n, append(slices.Clone(all), pour.Burst{AtMin: at, S: newBurstS})),
				Said: "a new burst: type its minute; {typing commit right} goes on to its seconds", Seek: to(To{Item: len(all), Sub: -1, Col: burstAt}),
			}
		},
		remove: func(f *Facts, on On) Do {
			return Do{Name: "removal of a burst", Edit: pour.SetBursts(n, slices.Delete(slices.Clone(f.Plan.Batch(n).Blend), on.Row.Item, on.Row.Item+1))}
		},
	}
}

func (f *Facts) burstGrid(n pour.BatchName) grid.Grid {
	all := f.Plan.Batch(n).Blend
	g := grid.Grid{
		Empty: "stirred by hand alone: {add} adds a burst",
		Columns: []grid.Column{
			burstNumber: {Head: "burst", W: 8}, burstAt: {Head: "at min", W: 8, Right: true}, burstSeconds: {Head: "seconds", W: 8, Right: true}, burstRoom: {Grow: 1},
		},
	}
	set := func(i int, change func(*pour.Burst)) pour.Edit {
		next := slices.Clone(all)
		change(&next[i])
		return pour.SetBursts(n, next)
	}
	for i, burst := range all {
		path := at(string(n)+".blend", i)
		start := asTyped(f.part(burst.Fields(), "at_min", "burst", "",
			func(v float64) pour.Edit { return set(i, func(x *pour.Burst) { x.AtMin = v }) }))
		start.Hint = "minutes after this batch's lye meets its oils"
		s := f.part(burst.Fields(), "s", "burst", f.percent(burst.S, 0),
			func(v float64) pour.Edit { return set(i, func(x *pour.Burst) { x.S = v }) })
		start.Figure, s.Figure = path+"at_min", path+"s"
		s.Hint = "seconds of blending; each one brings trace nearer"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{burstNumber: f.label(strconv.Itoa(i + 1)), burstAt: start, burstSeconds: s}})
	}
	return g
}
