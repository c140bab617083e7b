package panel

import (
	"image"
	"math"
	"strconv"

	"pourbench/pour"
	"pourbench/tui/grid"
)

// grabCut is the cut that a pointer at a place of the map takes hold of: the nearest within a cell of it.
func (f *Facts) grabCut(size, at image.Point, c grid.Cursor) (grid.Cursor, bool) {
	s := f.scaleOf(size.X, f.chosenCut(c))
	best, off := -1, 2
	for i, mm := range f.Sheet.Cut.CutsMM {
		if n := abs(s.cut(mm) - at.X); n < off {
			best, off = i, n
		}
	}
	c.Col = firstCut + best
	return c, best >= 0
}

// dragCut moves the cut under the cursor to where the pointer is; on a map that shows a part of the loaf, as far as the pointer went.
func (f *Facts) dragCut(size, was, at image.Point, c grid.Cursor) Do {
	i := f.chosenCut(c)
	if i < 0 {
		return Do{}
	}
	s := f.scaleOf(size.X, i)
	mm := math.Round(s.mm(at.X)/cutStepMM) * cutStepMM
	if s.per*float64(s.w) < f.Plan.Mould.AlongMM()-1e-6 {
		mm = f.Sheet.Cut.CutsMM[i] + float64(at.X-was.X)*s.per
	}
	return Do{Name: "cut " + strconv.Itoa(i+1), Edit: pour.MoveCut(f.Sheet.Cut, i, mm)}
}
