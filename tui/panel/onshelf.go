package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/strict"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// OnShelf is the panel of the list of the shelf: where its cursor stands is [Facts.Entry].
const OnShelf layout.ID = "on the shelf"

// shelfTable is a table of the shelf file as the station lists it.
type shelfTable struct {
	key, title, called string
	entries            func(s *pour.Shelf) []shelfEntry
}

type shelfEntry struct{ id, name string }

func shelved[T any](list []T, of func(*T) shelfEntry) []shelfEntry {
	out := make([]shelfEntry, len(list))
	for i := range list {
		out[i] = of(&list[i])
	}
	return out
}

// shelfTables are what a maker buys and has a certificate or a price of; moulds and techniques are changed in the file.
func shelfTables() []shelfTable {
	return []shelfTable{
		{"oil", "Oils", "oil", func(s *pour.Shelf) []shelfEntry {
			return shelved(s.Oils, func(x *pour.Oil) shelfEntry { return shelfEntry{x.ID, x.Name} })
		}},
		{"colourant", "Colourants", "colourant", func(s *pour.Shelf) []shelfEntry {
			return shelved(s.Colourants, func(x *pour.Colourant) shelfEntry { return shelfEntry{x.ID, x.Name} })
		}},
		{"scent", "Scents", "scent", func(s *pour.Shelf) []shelfEntry {
			return shelved(s.Scents, func(x *pour.Scent) shelfEntry { return shelfEntry{x.ID, x.Name} })
		}},
		{"extra", "Extras", "extra", func(s *pour.Shelf) []shelfEntry {
			return shelved(s.Extras, func(x *pour.Extra) shelfEntry { return shelfEntry{x.ID, x.Name} })
		}},
		{"topping", "Toppings", "topping", func(s *pour.Shelf) []shelfEntry {
			return shelved(s.Toppings, func(x *pour.ToppingMaterial) shelfEntry { return shelfEntry{x.ID, x.Name} })
		}},
	}
}

// The columns of the list.
const (
	shelfName = iota
	shelfOwn
)

// onShelf lists the shelf; what the maker's own file says anything of is marked.
func onShelf() Panel {
	return Panel{
		ID: OnShelf, Title: "On the shelf",
		Grid: (*Facts).shelfGrid,
		add: func(f *Facts, _ On) Do {
			t, ok := tableOf(f.Entry.Table)
			if why := f.noForm(); why != "" || !ok {
				return Do{Why: why}
			}
			n := NewEntry{Table: t.key, Called: t.called}
			for _, k := range f.Form(f.Shelf, pour.EntryName{Table: t.key}) {
				if k.Needed {
					n.Keys = append(n.Keys, k)
				}
			}
			return Do{Form: &n}
		},
		remove: func(f *Facts, _ On) Do {
			if why := f.noForm(); why != "" {
				return Do{Why: why}
			}
			if len(f.Own[f.Entry]) == 0 {
				return Do{Why: "your shelf file says nothing of it: it is of the shelf that came with the program"}
			}
			return Do{Shelf: &pour.ShelfChange{Of: f.Entry, Name: "removal of " + f.Entry.ID}, Said: f.Entry.ID + " is out of your shelf file; {undo} brings it back"}
		},
	}
}

// noForm is why the shelf cannot be changed here; empty: it can.
func (f *Facts) noForm() string {
	if f.Form == nil {
		return "there is no shelf file of your own here to write into"
	}
	return ""
}

func tableOf(key string) (shelfTable, bool) {
	all := shelfTables()
	i := slices.IndexFunc(all, func(t shelfTable) bool { return t.key == key })
	if i < 0 {
		return shelfTable{}, false
	}
	return all[i], true
}

func (f *Facts) shelfGrid() grid.Grid {
	g := grid.Grid{Columns: []grid.Column{shelfName: {W: 24, Grow: 1}, shelfOwn: {W: 5}}}
	n := 0
	for _, t := range shelfTables() {
		g.Rows = append(g.Rows, heading(t.title))
		for _, e := range t.entries(&f.Shelf) {
			own := ""
			if len(f.Own[pour.EntryName{Table: t.key, ID: e.id}]) > 0 {
				own = "yours"
			}
			g.Rows = append(g.Rows, grid.Row{Item: n, Sub: -1, Cells: []grid.Cell{
				shelfName: {Kind: grid.Shown, Text: e.name, Hint: t.called + " " + e.id + ": {next panel} goes to what is known of it; {add} adds one, {remove} takes yours out of your shelf file"},
				shelfOwn:  {Text: own},
			}})
			n++
		}
	}
	return g
}

// EntryAt is the entry in a row of the list of the shelf; the first where there is none.
func EntryAt(f *Facts, row int) pour.EntryName {
	g := f.shelfGrid()
	at := 0
	if row >= 0 && row < len(g.Rows) {
		at = max(g.Rows[row].Item, 0)
	}
	for _, t := range shelfTables() {
		list := t.entries(&f.Shelf)
		if at < len(list) {
			return pour.EntryName{Table: t.key, ID: list[at].id}
		}
		at -= len(list)
	}
	return pour.EntryName{}
}

// EntryRow is where an entry stands in the list of the shelf.
func EntryRow(f *Facts, of pour.EntryName) (To, bool) {
	n := 0
	for _, t := range shelfTables() {
		list := t.entries(&f.Shelf)
		if i := slices.IndexFunc(list, func(e shelfEntry) bool { return e.id == of.ID }); i >= 0 && t.key == of.Table {
			return To{Item: n + i, Sub: -1, Col: keepCol}, true
		}
		n += len(list)
	}
	return To{}, false
}

// KeyLabel is a key of an entry in words, and the unit its name ends in.
func KeyLabel(k pour.ShelfKey) (label, unit string) {
	name := k.Last()
	for _, u := range [][2]string{
		{"_percent", string(pour.UnitPercent)}, {"_koh_mg_g", "mg KOH/g"}, {"_g_ml", string(pour.UnitDensity)}, {"_g_kg", "g/kg"}, {"_mm", string(pour.UnitMM)}, {"_ml", "mL"}, {"_c", "°C"}, {"_g", string(pour.UnitGram)}, {"_s", "s"},
	} {
		if before, ok := strings.CutSuffix(name, u[0]); ok && before != "" {
			name, unit = before, u[1]
			break
		}
	}
	return strings.ReplaceAll(name, "_", " "), unit
}

// The columns of the form of an entry.
const (
	keyLabel = iota
	keyValue
	keyUnit
	keyOwn
)

// entryForm is all that the shelf knows of the entry under the cursor of the list.
func entryForm() Panel {
	return Panel{
		ID: "entry", Title: "What is known of it", cells: keys.Numbers, Start: keyValue,
		Grid: (*Facts).entryGrid,
		add: func(f *Facts, _ On) Do {
			if why := f.noForm(); why != "" {
				return Do{Why: why}
			}
			return f.addRow()
		},
		remove: func(f *Facts, on On) Do { return f.removeKey(on.Row) },
	}
}

// entryKeys are the keys of the entry under the cursor.
func (f *Facts) entryKeys() []pour.ShelfKey {
	if f.Form == nil || f.Entry.ID == "" {
		return nil
	}
	return f.Form(f.Shelf, f.Entry)
}

func (f *Facts) entryGrid() grid.Grid {
	g := grid.Grid{
		Empty:   "nothing can be changed here: there is no shelf file of your own",
		Columns: []grid.Column{keyLabel: {W: 20, Grow: 1}, keyValue: {W: 14, Grow: 2, Right: true}, keyUnit: {W: 8}, keyOwn: {W: 5}},
	}
	for i, k := range f.entryKeys() {
		switch k.Kind {
		case pour.KeyParts, pour.KeyRows:
			label, _ := KeyLabel(k)
			g.Rows = append(g.Rows, heading(label))
			for p := range k.Parts {
				g.Rows = append(g.Rows, f.keyRow(k.Parts[p], &k, i, p))
			}
			if k.Kind == pour.KeyRows && len(k.Parts) == 0 {
				g.Rows = append(g.Rows, grid.Row{Item: i, Sub: 0, Cells: []grid.Cell{keyLabel: f.label("none"), keyValue: {Kind: grid.Shown, Text: "–", Hint: k.Means + ": {add} adds one"}}})
			}
		default:
			g.Rows = append(g.Rows, f.keyRow(k, nil, i, -1))
		}
	}
	return g
}

// keyRow is a key of the entry, or a part of one.
func (f *Facts) keyRow(k pour.ShelfKey, in *pour.ShelfKey, i, part int) grid.Row {
	label, unit := KeyLabel(k)
	lead, own := "", ""
	if in != nil {
		lead = "  "
	}
	if k.Own {
		own = "yours"
	}
	return grid.Row{Item: i, Sub: part, Cells: []grid.Cell{
		keyLabel: f.label(lead + label), keyValue: f.keyCell(k, in, part), keyUnit: f.label(unit), keyOwn: {Text: own},
	}}
}

func (f *Facts) keyCell(k pour.ShelfKey, in *pour.ShelfKey, part int) grid.Cell {
	label, _ := KeyLabel(k)
	of := f.Entry
	c := grid.Cell{
		Text: k.Value, Plain: k.Value, Name: label + " of " + of.ID, Hint: k.Means + "; written into your own shelf file, {remove} takes it out of there",
		Keep: func(text string) (pour.ShelfChange, error) { return keyChange(of, k, in, part, text) },
	}
	if c.Text == "" {
		c.Text = "–"
	}
	switch k.Kind {
	case pour.KeyNumber, pour.KeyPrice:
		c.Kind, c.Step = grid.Number, stepOf(k)
	case pour.KeyWord, pour.KeyFlag:
		c.Kind, c.Round = grid.Tick, roundOf(k)
	default:
		c.Kind = grid.Words
	}
	return c
}

// stepOf is one step up of a number: a hundredth of what it can be, as a power of ten.
func stepOf(k pour.ShelfKey) float64 {
	step := 0.01
	for step*100 < k.High-k.Low && step < 1 {
		step *= 10
	}
	return step
}

// roundOf is the words a key goes round, the one it has first.
func roundOf(k pour.ShelfKey) []string {
	words := k.Words
	if k.Kind == pour.KeyFlag {
		words = []string{"no", "yes"}
	}
	if at := slices.Index(words, k.Value); at >= 0 {
		return slices.Concat(words[at:], words[:at])
	}
	return append([]string{""}, words...)
}

// keyChange is what a key of an entry that was typed comes to in the shelf file.
func keyChange(of pour.EntryName, k pour.ShelfKey, in *pour.ShelfKey, part int, typed string) (pour.ShelfChange, error) {
	v, err := k.TOML(typed)
	if err != nil {
		return pour.ShelfChange{}, err
	}
	label, _ := KeyLabel(k)
	c := pour.ShelfChange{Of: of, Key: k.Key, Value: v, Name: label + " of " + of.ID}
	if in != nil {
		c.In, c.Whole = in.Key, in.With(part, typed).Whole()
	}
	return c, nil
}

// addRow adds a row to the list of the entry: an allergen of a scent.
func (f *Facts) addRow() Do {
	for i, k := range f.entryKeys() {
		if k.Kind != pour.KeyRows || len(k.Row) == 0 {
			continue
		}
		n := len(k.Parts) / len(k.Row)
		whole := k
		whole.Parts = slices.Clone(k.Parts)
		var inline []string
		c := pour.ShelfChange{Of: f.Entry, Key: fmt.Sprintf("%s[%d]", k.Key, n), In: k.Key, Added: true, Name: "new " + k.Key + " of " + f.Entry.ID}
		for _, r := range k.Row {
			typed := newPart(r)
			v, err := r.TOML(typed)
			if err != nil {
				return Do{Why: err.Error()}
			}
			r.Value = typed
			whole.Parts = append(whole.Parts, r)
			c.New = append(c.New, strict.Pair{Key: r.Last(), Value: v})
			inline = append(inline, r.Last()+" = "+v)
		}
		c.Value, c.Whole = "{ "+strings.Join(inline, ", ")+" }", whole.Whole()
		return Do{Shelf: &c, Said: "type its name, then its percent", Seek: to(To{Item: i, Sub: n * len(k.Row), Col: keyValue}), Begin: true}
	}
	return Do{Why: "this entry has no list to add to; a new entry is added in the list of the shelf"}
}

// newPart is what a new row begins with, to be typed over at once.
func newPart(k pour.ShelfKey) string {
	if k.Kind == pour.KeyNumber {
		return "0.01"
	}
	return "name it"
}

// removeKey takes a key of the entry out of the maker's own file, so that what came with the program counts again; of a row of a list the row.
func (f *Facts) removeKey(row grid.Row) Do {
	all := f.entryKeys()
	if row.Item < 0 || row.Item >= len(all) {
		return Do{Why: noItem}
	}
	k := all[row.Item]
	c := pour.ShelfChange{Of: f.Entry, Key: k.Key, Name: "removal of " + k.Key + " of " + f.Entry.ID}
	switch {
	case k.Kind == pour.KeyRows && len(k.Row) > 0 && row.Sub >= 0 && row.Sub < len(k.Parts):
		n := row.Sub / len(k.Row)
		rest := k
		rest.Parts = slices.Concat(k.Parts[:n*len(k.Row)], k.Parts[(n+1)*len(k.Row):])
		c.Key, c.In, c.Whole = fmt.Sprintf("%s[%d]", k.Key, n), k.Key, rest.Whole()
	case !slices.Contains(f.Own[f.Entry], k.Key):
		return Do{Why: "your shelf file says nothing of it: it is what came with the program"}
	}
	return Do{Shelf: &c, Said: k.Key + " is out of your shelf file; {undo} brings it back"}
}
