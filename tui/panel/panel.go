// Package panel is the panels of the workbench and the stations they stand on. A panel is a value: what it is called, the grid it fills or
// how it draws itself, and what the keys that act on it come to. Panels are drawn from [Facts] and change nothing: a key comes to a [Do],
// which the workbench carries out.
package panel

import (
	"image"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/screen"
)

// Panel is one panel. What it does not have is nil.
type Panel struct {
	ID    layout.ID
	Title string    // on its border
	Start int       // the column the cursor starts in
	cells keys.Need // what its cells have for keys to act on: numbers, words to switch

	Stays   bool // it stands above the pages of its column
	picture bool // it stands beside the picture, whose keys act on it
	Easel   bool // the picture itself stands in it

	Grid  func(f *Facts) grid.Grid                                   // for its cursor and for what is copied from it, even where it draws itself
	want  func(f *Facts) int                                         // lines it would fill; nil: its grid's
	least func(want int) int                                         // lines it can do with beside others; nil: all it wants
	Draw  func(f *Facts, a screen.Area, c grid.Cursor, focused bool) // nil: its grid is drawn
	Aside func(f *Facts, a screen.Area)                              // how it is drawn, its border with it, while the keys are elsewhere; nil: as ever

	// Of a drawing whose cells are moved with the mouse: the cell that a pointer takes hold of, and what dragging it comes to. Sizes and places
	// are those of the room within its border.
	Grab func(f *Facts, size, at image.Point, c grid.Cursor) (grid.Cursor, bool)
	Drag func(f *Facts, size, was, at image.Point, c grid.Cursor) Do

	tell func(f *Facts) []string // what it draws, in words; nil: its grid says it

	change func(f *Facts, on On) Do // on a cell that cannot be changed itself
	hold   func(f *Facts, on On) Do
	add    func(f *Facts, on On) Do
	spread func(f *Facts, on On) Do

	// These act on the item of the cursor's row; where that has none they are not asked.
	colour func(f *Facts, on On) Do
	remove func(f *Facts, on On) Do
	rename func(f *Facts, on On) Do
	move   func(f *Facts, on On, by int) Do
}

// On is where the cursor stands.
type On struct {
	Cell grid.Cell
	Row  grid.Row
	Col  int
}

// Do is what a key comes to: a reason why not, a list to pick from, or an edit and what follows it.
type Do struct {
	Why    string                    // it cannot be, and nothing else is set
	Pick   *grid.Cell                // a choice whose list is opened
	Picked func(id string) Do        // what picking from that list comes to
	Name   string                    // what the edit is called, for undo
	Edit   pour.Edit                 // nil: nothing is changed
	Shelf  *pour.ShelfChange         // a change of the maker's own shelf file; nil: none
	Try    *Swap                     // tried beside the plan, which stays as it is; nil: nothing is
	Form   *NewEntry                 // asked for before anything is added; nil: nothing is
	Said   string                    // said once it is done
	Seek   func(f *Facts) (To, bool) // where the cursor goes once it is done, on the plan as it is then
	Begin  bool                      // what stands there is typed over
}

// NewEntry is what is asked for a new entry on the shelf: the name of its table in words, and the keys it must have.
type NewEntry struct {
	Table, Called string
	Keys          []pour.ShelfKey
	Into          *pour.ShelfKey // it is one more row of this list of an entry; nil: an entry of its own
	Of            pour.EntryName // the entry of that list
}

// To is a row to go to, by its item and part, and a column.
type To struct {
	Item, Sub int
	Col       int // below 0: the cursor stays in its own
}

// Has is what the panel has for keys to act on.
func (p *Panel) Has() keys.Need {
	has := p.cells
	if p.picture {
		has |= keys.Picture
	} else {
		has |= keys.Elsewhere
	}
	for _, x := range [...]struct {
		there bool
		need  keys.Need
	}{
		{p.hold != nil, keys.Held},
		{p.add != nil, keys.Adding},
		{p.spread != nil, keys.Spreading},
		{p.colour != nil, keys.Coloured},
		{p.remove != nil, keys.Removing},
		{p.rename != nil, keys.Named},
		{p.move != nil, keys.Ordered},
	} {
		if x.there {
			has |= x.need
		}
	}
	return has
}

// noItem is why a key that acts on a row's item cannot where the row has none.
const noItem = "the cursor is on no jug, oil, extra, scent, burst, task, topping, embed or cut"

// Press says what a key comes to; false: the panel has nothing for it.
func (p *Panel) Press(id keys.ID, f *Facts, on On) (Do, bool) {
	var of func(f *Facts, on On) Do
	item := true
	switch id {
	case keys.Add:
		of, item = p.add, false
	case keys.Spread:
		of, item = p.spread, false
	case keys.Hold:
		of, item = p.hold, false
	case keys.Change:
		of, item = p.change, false
	case keys.Colour:
		of = p.colour
	case keys.Remove:
		of = p.remove
	case keys.Rename:
		of = p.rename
	case keys.Earlier, keys.Later:
		if p.move != nil {
			by := 1
			if id == keys.Earlier {
				by = -1
			}
			of = func(f *Facts, on On) Do { return p.move(f, on, by) }
		}
	}
	switch {
	case of == nil:
		return Do{}, false
	case item && on.Row.Item < 0:
		return Do{Why: noItem}, true
	}
	return of(f, on), true
}

// Lay is what the layout is told of the panel.
func (p *Panel) Lay(f *Facts, g grid.Grid) layout.Panel {
	l := layout.Panel{ID: p.ID, Want: g.Lines(), Stays: p.Stays}
	if p.want != nil {
		l.Want = p.want(f)
	}
	l.Least = l.Want
	if p.least != nil {
		l.Least = p.least(l.Want)
	}
	return l
}

// keepCol leaves the cursor in its column.
const keepCol = -1

// pick opens a list of the shelf; what is picked from it is added as the caller says.
func pick(list, name string, picked func(id string) Do) Do {
	return Do{Pick: &grid.Cell{List: list, Name: name}, Picked: func(id string) Do {
		do := picked(id)
		do.Name = name
		return do
	}}
}

// to goes to a place that is known beforehand.
func to(t To) func(*Facts) (To, bool) { return func(*Facts) (To, bool) { return t, true } }
