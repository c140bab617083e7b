package panel

import (
	"strings"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// OnShelf is the list of the shelf's entries: what stands under its cursor is the entry whose form is shown beside it.
const OnShelf layout.ID = "entries"

// kind is a table of the shelf that is shown with its entries.
type kind struct {
	table, head, called string
	items               func(f *Facts) []dialog.Item
}

// kinds are the tables of the shelf in the order they are listed.
func kinds() []kind {
	return []kind{
		{"oil", "Oils, butters and waxes", "oil", func(f *Facts) []dialog.Item { return f.Items(listOils) }},
		{"colourant", "Colourants", "colourant", func(f *Facts) []dialog.Item { return f.Items(listColourants) }},
		{"extra", "Extras", "extra", func(f *Facts) []dialog.Item { return each(f.Shelf.Extras, f.extraItem) }},
		{"scent", "Scents", "scent", func(f *Facts) []dialog.Item { return f.Items(listScents) }},
		{"topping", "Toppings", "topping", func(f *Facts) []dialog.Item { return f.Items(listToppings) }},
		{"mould", "Moulds", "mould", func(f *Facts) []dialog.Item { return f.Items(listMoulds) }},
	}
}

// listEntries is everything on the shelf that has a form, to be searched.
const listEntries = "entries"

// onShelf lists what is on the shelf, and which of it is the maker's own.
func onShelf() Panel {
	return Panel{
		ID: OnShelf, Title: "On the shelf", Grid: (*Facts).shelfGrid,
		least: func(int) int { return leastEntries },
		change: func(*Facts, On) Do {
			return Do{Pick: &grid.Cell{List: listEntries, Name: "entry"}, Picked: func(id string) Do {
				table, id, _ := strings.Cut(id, "/")
				return Do{Seek: func(f *Facts) (To, bool) { return EntryRow(f, pour.EntryName{Table: table, ID: id}) }}
			}}
		},
		add: func(f *Facts, _ On) Do {
			of := f.Entry
			if f.Form == nil {
				return Do{Why: noForm}
			}
			n := NewEntry{Table: of.Table, Called: kindOf(of.Table).called}
			for _, k := range f.Form(f.Shelf, pour.EntryName{Table: of.Table}) {
				if k.Needed {
					n.Keys = append(n.Keys, k)
				}
			}
			return Do{Form: &n}
		},
		remove: func(f *Facts, on On) Do {
			if len(f.Own[f.Entry]) == 0 {
				return Do{Why: "it is as it came with the program; your shelf file says nothing of it"}
			}
			c := pour.ShelfChange{Of: f.Entry, Name: "what your file says of " + on.Cell.Text}
			return Do{Shelf: &c, Said: "your shelf file says nothing of " + on.Cell.Text + " any more; {undo} puts it back"}
		},
	}
}

// leastEntries is the lines with which the list can do beside the form.
const leastEntries = 8

// noForm is why entries cannot be changed at this bench.
const noForm = "there is no shelf file of your own here to write into"

// kindOf is a table of the shelf by its name.
func kindOf(table string) kind {
	for _, k := range kinds() {
		if k.table == table {
			return k
		}
	}
	return kind{}
}

// The columns of the list.
const (
	entryName = iota
	entryAside
	entryOwn
)

func (f *Facts) shelfGrid() grid.Grid {
	g := grid.Grid{Columns: []grid.Column{entryName: {W: 22, Grow: 1}, entryAside: {W: 16}, entryOwn: {W: 7}}}
	n := 0
	for _, k := range kinds() {
		g.Rows = append(g.Rows, heading(k.head))
		for _, it := range k.items(f) {
			name := grid.Cell{Kind: grid.Shown, Text: it.Name, Hint: "{change} searches the shelf, {next panel} goes to its form, {add} adds one of your own"}
			g.Rows = append(g.Rows, grid.Row{Item: n, Sub: -1, Cells: []grid.Cell{
				entryName: name, entryAside: f.label(it.Aside), entryOwn: f.label(f.ownWord(pour.EntryName{Table: k.table, ID: it.ID})),
			}})
			n++
		}
	}
	return g
}

// ownWord says whether the maker's own shelf file says anything of an entry.
func (f *Facts) ownWord(of pour.EntryName) string {
	if len(f.Own[of]) > 0 {
		return "yours"
	}
	return ""
}

// EntryAt is the entry in a row of the list; the zero name: there is none.
func EntryAt(f *Facts, row int) pour.EntryName {
	for _, k := range kinds() {
		items := k.items(f)
		if row--; row >= 0 && row < len(items) {
			return pour.EntryName{Table: k.table, ID: items[row].ID}
		}
		row -= len(items)
	}
	return pour.EntryName{}
}

// EntryRow is where an entry stands in the list.
func EntryRow(f *Facts, of pour.EntryName) (To, bool) {
	n := 0
	for _, k := range kinds() {
		for _, it := range k.items(f) {
			if k.table == of.Table && it.ID == of.ID {
				return To{Item: n, Sub: -1, Col: keepCol}, true
			}
			n++
		}
	}
	return To{}, false
}

// entryItems is everything on the shelf that has a form.
func (f *Facts) entryItems() []dialog.Item {
	var out []dialog.Item
	for _, k := range kinds() {
		for _, it := range k.items(f) {
			it.ID = k.table + "/" + it.ID
			out = append(out, it)
		}
	}
	return out
}

// entryForm is every key of the entry under the cursor of the list.
func entryForm() Panel {
	return Panel{
		ID: "entry", Title: "Entry", Start: formValue, cells: keys.Numbers | keys.Words, Grid: (*Facts).entryGrid,
		add: func(f *Facts, _ On) Do {
			for _, k := range f.entryKeys() {
				if k.Kind == pour.KeyRows {
					return Do{Form: &NewEntry{Table: f.Entry.Table, Called: k.Key + " of " + f.entryName(), Keys: k.Row, Into: &k, Of: f.Entry}}
				}
			}
			return Do{Why: "this entry has no list to add to; go to the list of the shelf to add an entry"}
		},
		remove: func(f *Facts, on On) Do {
			all := f.entryKeys()
			if on.Row.Item >= len(all) {
				return Do{Why: noItem}
			}
			k := all[on.Row.Item]
			switch {
			case k.Kind == pour.KeyRows && on.Row.Sub >= 0:
				c := f.without(k, on.Row.Sub/len(k.Row))
				return Do{Shelf: &c, Said: "gone; {undo} brings it back"}
			case !k.Own:
				return Do{Why: "your shelf file does not say it; there is nothing to take out"}
			}
			c := pour.ShelfChange{Of: f.Entry, Key: k.Key, Name: f.changeName(k)}
			return Do{Shelf: &c, Said: "taken out of your shelf file; {undo} puts it back"}
		},
	}
}
