package panel

import "math"

// cutScale is how the length of a loaf is drawn: so many mm to a cell, from so many mm on.
type cutScale struct {
	x, w int     // the first cell, and how many
	from float64 // mm from end A at the first cell's left edge
	per  float64 // mm a cell
}

// The room beside the loaf for the names of its ends, and the least cells a bar is drawn in; where there are fewer, a part of the loaf is
// drawn, with room for its figures.
const (
	endW      = 2
	leastBarW = 4
	barW      = 7
)

// scaleOf is the scale of a map so wide, which shows the place that is looked at.
func (f *Facts) scaleOf(w, chosen int) cutScale {
	length := f.Plan.Mould.AlongMM()
	s := cutScale{x: endW, w: max(w-2*endW, 1)}
	s.per = length / float64(s.w)
	bars := len(f.columnsOfBars())
	if bars == 0 || s.w >= bars*leastBarW {
		return s
	}
	s.per = length / float64(bars*barW)
	middle := 0.0
	if chosen >= 0 {
		middle = f.Sheet.Cut.CutsMM[chosen]
	}
	s.from = max(min(middle-s.per*float64(s.w)/2, length-s.per*float64(s.w)), 0)
	return s
}

// at is the cell of a place along the loaf.
func (s cutScale) at(mm float64) int { return s.x + int(math.Floor((mm-s.from)/s.per+1e-9)) }

// mm is the place along the loaf in the middle of a cell.
func (s cutScale) mm(x int) float64 { return s.from + (float64(x-s.x)+0.5)*s.per }

// shows says whether a cell is one of the loaf's.
func (s cutScale) shows(x int) bool { return x >= s.x && x < s.x+s.w }

// cut is the cell of a cut: one at the very end is drawn on the last.
func (s cutScale) cut(mm float64) int {
	x := s.at(mm)
	if x == s.x+s.w {
		return x - 1
	}
	return x
}
