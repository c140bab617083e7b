package panel

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// cutStepMM is how far a cut is nudged, mm.
const cutStepMM = 0.5

// The lines the map of the cuts likes, and those it can do with.
const (
	cutMapLines = 16
	leastCutMap = 8
)

// cutMap is the loaf from above with its cuts. Its grid has a cell for each of them, which is chosen, nudged and typed as any number is.
func cutMap() Panel {
	return Panel{
		ID: "cuts", Title: "The loaf from above", cells: keys.Numbers, Grid: (*Facts).cutGrid, Stays: true,
		want: func(*Facts) int { return cutMapLines }, least: func(int) int { return leastCutMap },
		Draw: (*Facts).drawCuts, Grab: (*Facts).grabCut, Drag: (*Facts).dragCut, tell: (*Facts).tellCuts,
		add: (*Facts).addCut, remove: (*Facts).removeCut,
	}
}

// firstCut is the column of the first cut; before it stands what the row is of.
const firstCut = 1

// noCuts says why there is nothing to move.
const noCuts = "nothing is cut: the cut plan says where cuts run, {add} makes one in the middle"

// singles says why single moulds have no cuts.
const singles = "single moulds: what comes out of each is a bar, and nothing is cut"

func (f *Facts) cutGrid() grid.Grid {
	c := f.Sheet.Cut
	g := grid.Grid{Frozen: firstCut, Empty: noCuts, Columns: []grid.Column{{W: 5}}}
	if !f.Plan.Mould.IsCut() {
		g.Empty = singles
	}
	if len(c.CutsMM) == 0 {
		return g
	}
	cells := []grid.Cell{{Text: "cuts"}}
	for i, at := range c.CutsMM {
		g.Columns = append(g.Columns, grid.Column{Head: "cut " + strconv.Itoa(i+1), W: 7, Right: true})
		cells = append(cells, f.cutCell(i, at))
	}
	g.Rows = []grid.Row{{Item: 0, Sub: -1, Cells: cells}}
	return g
}

// cutCell is the place of a cut.
func (f *Facts) cutCell(i int, at float64) grid.Cell {
	c := f.number("cut "+strconv.Itoa(i+1), f.mm(at), at, pour.UnitMM, cutStepMM, func(mm float64) pour.Edit { return pour.MoveCut(f.Sheet.Cut, i, mm) })
	c.Nudge = func(steps float64) (pour.Edit, error) { return pour.NudgeCut(f.Sheet.Cut, i, steps*cutStepMM), nil }
	c.Figure = at2("cut.cuts_mm", i)
	if f.Plan.Cut.By == pour.CutGang {
		c.Said = "all wires move together: they are fixed to each other; own cuts move one by one"
	}
	c.Hint = fmt.Sprintf("cut %d, %s from end A; {more} {less} move it %s, {much more} {much less} ten times that, or drag it", i+1, f.Show.LenNear(at), f.Show.LenNear(cutStepMM))
	return c
}

// at2 is the path of a figure that is itself an item of a list.
func at2(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// near is a length to a tenth of a millimetre or a thousandth of an inch: what is marked and what is left beside it are told so.
func (f *Facts) near(mm float64) pour.Amount {
	v, unit := f.Show.ToUnit(mm, pour.UnitMM)
	if unit == string(pour.UnitMM) {
		return pour.Amount{Number: f.Show.Number(v, 1), Unit: unit}
	}
	return pour.Amount{Number: f.Show.Number(v, 3), Unit: unit}
}

// mm is a place or a length along the loaf without its unit.
func (f *Facts) mm(v float64) string { return f.near(v).Number }

// columnsOfBars are the pieces between one cut across the loaf and the next.
func (f *Facts) columnsOfBars() []pour.BarPiece { return f.Sheet.Cut.Columns() }

// barsOf is the number of the bar between two cuts; on a slab, those of the first and the last that stand there side by side.
func (f *Facts) barsOf(column pour.BarPiece) string {
	first, last := 0, 0
	for i, b := range f.Sheet.Cut.Bars {
		if b.StartMM != column.StartMM {
			continue
		}
		if first == 0 {
			first = i + 1
		}
		last = i + 1
	}
	if first == last {
		return strconv.Itoa(first)
	}
	return fmt.Sprintf("%d–%d", first, last)
}

// besideCut says how thick the bars beside a cut are.
func (f *Facts) besideCut(at float64) string {
	var said []string
	half := f.Plan.Cut.KerfMM/2 + 1e-6
	for _, b := range f.columnsOfBars() {
		if math.Abs(b.EndMM-at) <= half || math.Abs(b.StartMM-at) <= half {
			said = append(said, "bar "+f.barsOf(b)+" is "+f.mm(b.ThicknessMM()))
		}
	}
	if len(said) == 0 {
		return ""
	}
	return ": " + strings.Join(said, ", ")
}

// chosenCut is the cut under the cursor; below 0: there is none.
func (f *Facts) chosenCut(c grid.Cursor) int {
	if len(f.Sheet.Cut.CutsMM) == 0 {
		return -1
	}
	return min(max(c.Col-firstCut, 0), len(f.Sheet.Cut.CutsMM)-1)
}

// addCut makes one more cut, in the middle of the piece behind the one under the cursor.
func (f *Facts) addCut(on On) Do {
	if !f.Plan.Mould.IsCut() {
		return Do{Why: singles}
	}
	c, length := f.Sheet.Cut, f.Plan.Mould.AlongMM()
	at := length / 2
	i := on.Col - firstCut
	if i >= 0 && i < len(c.CutsMM) {
		next := length
		if i+1 < len(c.CutsMM) {
			next = c.CutsMM[i+1]
		}
		at = (c.CutsMM[i] + next) / 2
	} else {
		i = -1
	}
	return Do{Name: "new cut", Edit: pour.AddCut(c, at), Said: "a cut more, at " + f.Show.LenNear(at) + "; the cuts are your own now", Seek: to(To{Item: 0, Sub: -1, Col: firstCut + i + 1})}
}

// removeCut leaves the cut under the cursor out.
func (f *Facts) removeCut(on On) Do {
	i := on.Col - firstCut
	if i < 0 || i >= len(f.Sheet.Cut.CutsMM) {
		return Do{Why: "the cursor is on no cut"}
	}
	return Do{Name: "removal of a cut", Edit: pour.RemoveCut(f.Sheet.Cut, i), Said: "the cut is gone, its two bars are one; {undo} brings it back"}
}

// tellCuts says the map in words, from end A to end B.
func (f *Facts) tellCuts() []string {
	c := f.Sheet.Cut
	said := []string{fmt.Sprintf("%s long, cut %s; all places are from end A", f.Show.Len(f.Plan.Mould.AlongMM()), many(len(c.CutsMM), "time"))}
	for i, at := range c.CutsMM {
		said = append(said, fmt.Sprintf("cut %d at %s", i+1, f.Show.LenNear(at)))
	}
	if c.TrimAMM > 0 {
		said = append(said, "trim at end A: "+f.Show.LenNear(c.TrimAMM))
	}
	if c.SliceMM > 0 {
		said = append(said, "sample slice from "+f.mm(c.SliceAt)+" to "+f.Show.LenNear(c.SliceAt+c.SliceMM))
	}
	for _, b := range f.columnsOfBars() {
		text := fmt.Sprintf("bar %s from %s to %s: %s", f.barsOf(b), f.mm(b.StartMM), f.mm(b.EndMM), f.Show.LenNear(b.ThicknessMM()))
		if verdict, _, there := f.columnVerdict(b); there {
			text += ", embed " + verdict
		}
		said = append(said, text)
	}
	if c.TrimBMM > 0 {
		said = append(said, "trim at end B: "+f.Show.LenNear(c.TrimBMM))
	}
	return []string{strings.Join(said, ". ") + "."}
}

// many counts things in words.
func many(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// columnVerdict is the worst that is said of an embed between two cuts; false where there stands none.
func (f *Facts) columnVerdict(b pour.BarPiece) (verdict string, s pour.Severity, there bool) {
	for _, k := range f.Sheet.Embeds {
		for _, p := range k.Pieces {
			if p.CentreMM < b.StartMM || p.CentreMM > b.EndMM || k.Rod {
				continue
			}
			if g := grade(p.Verdict); !there || g > s {
				verdict, s, there = p.Verdict, g, true
			}
		}
	}
	return verdict, s, there
}
