package panel

import (
	"pourbench/pour"
	"pourbench/pour/swirl"
	"pourbench/pour/whatif"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Facts is what panels are drawn from: the plan, its figures and how to show them. It is made afresh for every plan and never changed.
type Facts struct {
	Plan  pour.Plan
	Sheet *pour.Sheet
	Timed *pour.Sheet // the last sheet with the clock's figures
	Fresh bool        // the clock's figures belong to this plan
	Shelf pour.Shelf
	Show  pour.Show
	Look  look.Look

	Colourless bool      // the terminal has no colours: a word stands in for a sample that nothing else tells of
	Keys       *keys.Map // the keys that are bound

	Entry pour.EntryName                                            // the entry under the cursor of the list of the shelf
	Form  func(shelf pour.Shelf, of pour.EntryName) []pour.ShelfKey // the keys of an entry with what it has there; nil: the shelf cannot be changed here
	Own   map[pour.EntryName][]string                               // what the maker's own shelf file says: keys by entry

	Trial        *Trial // a scent that is tried in the place of another; nil: none is
	Warnings     []pour.Warning
	Mends        [][]whatif.Mend // of every warning; nil: they are not known yet
	Colours      *pour.Sheet     // the last sheet that knows what the colours do; its Mingling may be unknown
	ColoursFresh bool
	Typing       *grid.Typed       // what is typed in the panel in focus, for one that draws itself; nil: nothing is
	Counted      *swirl.Measure    // what was counted on the face of a bar; nil: it is being counted
	Picture      func(screen.Area) // draws the picture on its easel
}

// batch returns the sheet of a batch, or nil.
func (f *Facts) batch(n pour.BatchName) *pour.BatchSheet { return batchOf(f.Sheet, n) }

// batchOf is a batch by its place: the sheet of a plan with faults names none.
func batchOf(s *pour.Sheet, n pour.BatchName) *pour.BatchSheet {
	if n == pour.Icing {
		return s.Icing
	}
	return &s.Base
}

// gridOf is the grid of a batch's panel; it is empty where the sheet has no such batch.
func gridOf(n pour.BatchName, build func(*Facts, pour.BatchName) grid.Grid) func(*Facts) grid.Grid {
	return func(f *Facts) grid.Grid {
		if f.batch(n) == nil {
			return grid.Grid{}
		}
		return build(f, n)
	}
}

// ofBatch names a panel of a batch, or titles it.
func ofBatch(n pour.BatchName, text string) string {
	if n == pour.Icing {
		return text + " of the icing"
	}
	return text
}

// grams is the maker's unit of mass, for the head of a column.
func (f *Facts) grams() string {
	_, unit := f.Show.ToUnit(0, pour.UnitGram)
	return unit
}

// timed marks one of the clock's figures while it is worked out again: the old one stands meanwhile.
func (f *Facts) timed(text string) string {
	if f.Fresh {
		return text
	}
	return text + "…"
}

// percent draws a bare number for a column that says its unit.
func (f *Facts) percent(v float64, places int) string { return f.Show.Number(v, places) }

// whole draws a figure as a whole number, or a dash.
func (f *Facts) whole(v pour.Figure) string {
	return f.Show.Figure(v, func(x float64) string { return f.percent(x, 0) })
}
