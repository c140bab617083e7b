package panel

import (
	"slices"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// behaviourLines is about how many lines are said of a scent.
const behaviourLines = 6

// behaviour is how the plan's scents behave in batter.
func behaviour() Panel {
	return Panel{
		ID: "behaviour", Title: "How they behave",
		want: func(f *Facts) int { return behaviourLines * len(f.usedScents()) },
		Draw: (*Facts).drawBehaviour, tell: (*Facts).tellBehaviour,
	}
}

// noScent is said of a plan without any.
const noScent = "no scent in this plan"

// usedScents lists the scents of the plan, each once.
func (f *Facts) usedScents() []pour.Scent {
	var out []pour.Scent
	for _, batch := range f.Sheet.Batches() {
		for _, line := range batch.Scents {
			sc, _ := f.Shelf.Scent(line.ID)
			if !slices.ContainsFunc(out, func(s pour.Scent) bool { return s.ID == sc.ID }) {
				out = append(out, sc)
			}
		}
	}
	return out
}

// drawBehaviour says of every scent of the plan what the shelf says of it.
func (f *Facts) drawBehaviour(a screen.Area, _ grid.Cursor, _ bool) {
	y := 0
	for _, sc := range f.usedScents() {
		for i, par := range f.scentItem(sc).Detail {
			st := f.Look.Quiet
			if i == 0 {
				st = f.Look.Strong
			}
			for _, line := range screen.Wrap(par, a.W()-2) {
				a.Text(1, y, line, st)
				y++
			}
		}
		y++
	}
	if y == 0 {
		a.Text(1, 0, noScent, f.Look.Quiet)
	}
}
