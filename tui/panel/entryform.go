package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// entryKeys are the keys of the entry under the cursor of the list, each with whether the maker's own file says it.
func (f *Facts) entryKeys() []pour.ShelfKey {
	if f.Form == nil || f.Entry.Table == "" {
		return nil
	}
	all := f.Form(f.Shelf, f.Entry)
	for i := range all {
		all[i].Own = slices.Contains(f.Own[f.Entry], all[i].Key)
	}
	return all
}

// entryName is what the entry is called.
func (f *Facts) entryName() string {
	for _, k := range f.Form(f.Shelf, f.Entry) {
		if k.Key == "name" {
			return k.Value
		}
	}
	return f.Entry.ID
}

func (f *Facts) changeName(k pour.ShelfKey) string {
	label, _ := KeyLabel(k)
	return label + " of " + f.Entry.ID
}

func (f *Facts) entryGrid() grid.Grid {
	g := grid.Grid{
		Columns: []grid.Column{formLabel: {W: 20}, formValue: {W: 14, Grow: 1}, formUnit: {W: 9}, formRemark: {W: 5}},
		Empty:   "go to an entry in the list of the shelf",
	}
	if f.Form == nil {
		g.Empty = noForm
	}
	for i, k := range f.entryKeys() {
		g.Rows = append(g.Rows, f.keyRows(i, k)...)
	}
	return g
}

// keyRows is the rows of a key: one, or one for each of its parts.
func (f *Facts) keyRows(i int, k pour.ShelfKey) []grid.Row {
	switch k.Kind {
	case pour.KeyParts, pour.KeyRows:
	default:
		return []grid.Row{f.keyRow(i, -1, k, k.Own, func(typed string) (pour.ShelfChange, error) {
			v, err := k.TOML(typed)
			return pour.ShelfChange{Of: f.Entry, Key: k.Key, Value: v, Name: f.changeName(k)}, err
		})}
	}
	var rows []grid.Row
	if len(k.Parts) != 2 || k.Kind == pour.KeyRows {
		label, unit := KeyLabel(k)
		rows = append(rows, heading(strings.TrimSpace(label+" "+unit)))
	}
	for n, part := range k.Parts {
		rows = append(rows, f.keyRow(i, n, part, k.Own, func(typed string) (pour.ShelfChange, error) { return f.changedPart(k, n, typed) }))
	}
	if k.Kind == pour.KeyRows && len(k.Parts) == 0 {
		rows = append(rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{formLabel: f.label("none stated"), formValue: f.shown("–", "", k.Means+"; {add} adds one")}})
	}
	return rows
}

// changedPart is a change of a part of a key.
func (f *Facts) changedPart(k pour.ShelfKey, n int, typed string) (pour.ShelfChange, error) {
	part := k.Parts[n]
	v, err := part.TOML(typed)
	next := k.With(n, typed)
	isSource := k.Kind == pour.KeyParts && part.Last() == "text"
	switch {
	case err != nil:
		return pour.ShelfChange{}, err
	case isSource && v == "":
		return pour.ShelfChange{Of: f.Entry, Key: k.Key, Name: f.changeName(k)}, nil
	case isSource && k.Parts[1].Value == "":
		next = next.With(1, "own")
	case k.Kind == pour.KeyRows && v == "" && !part.Spare:
		return pour.ShelfChange{}, fmt.Errorf("%s cannot be empty; remove the whole line of it", part.Last())
	}
	return pour.ShelfChange{Of: f.Entry, Key: part.Key, Value: v, In: k.Key, Whole: next.Whole(), Name: f.changeName(part)}, nil
}

// without is a list of a key with one row taken out.
func (f *Facts) without(k pour.ShelfKey, row int) pour.ShelfChange {
	n := len(k.Row)
	left := k
	left.Parts = slices.Delete(slices.Clone(k.Parts), row*n, (row+1)*n)
	return pour.ShelfChange{
		Of: f.Entry, Key: fmt.Sprintf("%s[%d]", k.Key, row), In: k.Key, Whole: left.Whole(), Name: k.Parts[row*n].Value + " of " + f.Entry.ID,
	}
}

// keyRow is the row of one value.
func (f *Facts) keyRow(item, sub int, k pour.ShelfKey, own bool, keep func(string) (pour.ShelfChange, error)) grid.Row {
	label, unit := KeyLabel(k)
	c := grid.Cell{Kind: grid.Words, Text: k.Value, Plain: k.Value, Name: f.changeName(k), Keep: keep, Hint: k.Means}
	if k.Value == "" {
		c.Text = "–"
	}
	switch k.Kind {
	case pour.KeyNumber:
		c.Kind, c.Step = grid.Number, keyStep(k)
		c.Hint = fmt.Sprintf("%s: %g to %g; nothing typed takes it out of your file", k.Means, k.Low, k.High)
	case pour.KeyPrice:
		c.Kind = grid.Number
	case pour.KeyWord:
		c.Kind, c.Round, c.Text = grid.Tick, round(k.Words, k.Value), "‹ "+k.Value+" ›"
		c.Hint += ": " + join(k.Words)
	case pour.KeyFlag:
		c.Kind, c.Round, c.Text = grid.Tick, yesNo(k.Value == "yes"), "‹ "+k.Value+" ›"
	case pour.KeyColour:
		c.Swatch, _ = screen.Hex(k.Value)
	case pour.KeyList:
		c.Hint += ", with semicolons between them"
	case pour.KeyText, pour.KeyParts, pour.KeyRows:
	}
	remark := ""
	if own {
		remark = "yours"
	}
	return grid.Row{Item: item, Sub: sub, Cells: []grid.Cell{formLabel: {Text: label}, formValue: c, formUnit: f.label(unit), formRemark: f.label(remark)}}
}

// keyStep is what a nudge of a number adds, by how far it can go.
func keyStep(k pour.ShelfKey) float64 {
	switch {
	case k.High <= 2:
		return 0.01
	case k.High <= 20:
		return 0.1
	}
	return 1
}

// KeyLabel is a key of an entry in words, and the unit its name ends in.
func KeyLabel(k pour.ShelfKey) (label, unit string) {
	name := k.Last()
	if i := strings.IndexByte(k.Key, '.'); i > 0 && (name == "text" || name == "confidence") {
		name = map[string]string{"text": k.Key[:i], "confidence": "checked"}[name]
	}
	for _, u := range [...][2]string{
		{"_koh_mg_g", "mg KOH/g"},
		{"_g_ml", "g/mL"},
		{"_g_kg", "g/kg"},
		{"_rh_percent", "% r.h."},
		{"_percent", "%"},
		{"_per_kg", "a kg"},
		{"_ml", "mL"},
		{"_mm", "mm"},
		{"_c", "°C"},
		{"_s", "s"},
		{"_g", "g"},
	} {
		if cut, ok := strings.CutSuffix(name, u[0]); ok {
			name, unit = cut, u[1]
			break
		}
	}
	return strings.ReplaceAll(name, "_", " "), unit
}
