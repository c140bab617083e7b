package tui

import (
	"errors"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/panel"
)

// OwnShelf is the maker's own shelf file: read and changed by functions, because the bench knows no file.
type OwnShelf struct {
	Entry  func(shelf pour.Shelf, of pour.EntryName) []pour.ShelfKey // the keys of an entry, of a blank one where it has no id
	Named  func() (map[pour.EntryName][]string, error)               // what the file says
	Change func(c pour.ShelfChange) (back func() error, err error)   // changes the file; back takes the change back
	Shelf  func() (pour.Shelf, error)                                // the shelf by the file as it is now
}

// errNoOwnShelf is why an entry cannot be changed at a bench that was opened without a file for it.
var errNoOwnShelf = errors.New("there is no shelf file of your own here to write into")

// lookAtShelf reads what the maker's own shelf file says.
func (m *model) lookAtShelf() {
	if m.opt.OwnShelf.Named == nil {
		return
	}
	own, err := m.opt.OwnShelf.Named()
	if err != nil {
		m.refuse(reason(err))
		return
	}
	m.own = own
}

// shelve changes the maker's own shelf file, and works the plan out again with it. What another terminal wrote into it meanwhile comes with it.
func (m *model) shelve(c pour.ShelfChange) error {
	o := m.opt.OwnShelf
	if o.Change == nil {
		return errNoOwnShelf
	}
	var takeBack func() error
	err := m.session.Do(c.Name, func(back bool) (pour.Shelf, error) {
		var err error
		if back {
			err = takeBack()
		} else {
			takeBack, err = o.Change(c)
		}
		if err != nil {
			return pour.Shelf{}, err
		}
		return o.Shelf()
	})
	m.lookAtShelf()
	return err
}

// reshelve is [model.shelve] that says what came of it.
func (m *model) reshelve(c pour.ShelfChange, said string) error {
	err := m.shelve(c)
	if err != nil {
		m.refuse(reason(err))
	} else if said != "" {
		m.say(said)
	}
	return err
}

// keepTurned takes a cell of an entry so many steps on: a word round its set, a number up or down.
func (m *model) keepTurned(cell grid.Cell, steps float64) {
	text := ""
	switch n := len(cell.Round); {
	case n > 0:
		text = cell.Round[(int(steps)%n+n)%n]
	default:
		v, err := strict.ParseNumber(cell.Plain)
		if err != nil {
			m.refuse("nothing stands there to nudge; type a number")
			return
		}
		text = strict.Short(panel.Trim(v + steps*cell.Step))
	}
	if err := m.keepTyped(cell, text); err != nil {
		m.refuse(reason(err))
	}
}

// askEntry asks for what a new entry must have, and adds it to the maker's own shelf file.
func (m *model) askEntry(n panel.NewEntry) {
	f := dialog.Form{Title: "New " + n.Called, Text: "It goes into your own shelf file. What else is known of it is typed on the station."}
	for _, k := range n.Keys {
		label, unit := panel.KeyLabel(k)
		f.Fields = append(f.Fields, dialog.Field{Key: k.Key, Label: strings.TrimSpace(label + " " + unit), Hint: k.Means, Need: true, Words: k.Words})
	}
	f.Done = func(texts map[string]string) (tea.Cmd, error) {
		c, err := m.newEntry(n, texts)
		if err != nil {
			return nil, err
		}
		if err := m.shelve(c); err != nil {
			return nil, err
		}
		m.say(texts["name"] + " is in your shelf file; {undo} takes it out")
		m.settle()
		m.seek(func(f *panel.Facts) (panel.To, bool) { return panel.EntryRow(f, c.Of) })
		return nil, nil
	}
	m.dialogs.Open(dialog.NewForm(f))
}

// newEntry is what a filled form comes to. Its id is made of its name; one that is taken gets a number.
func (m *model) newEntry(n panel.NewEntry, texts map[string]string) (pour.ShelfChange, error) {
	name := texts["name"]
	id := plain.Slug(name, "")
	if id == "" {
		return pour.ShelfChange{}, dialog.WrongFieldError{Key: "name", Err: errors.New("give it a name with letters in it")}
	}
	c := pour.ShelfChange{Of: pour.EntryName{Table: n.Table, ID: m.freeID(n.Table, id)}, Name: "new entry " + name}
	for _, k := range n.Keys {
		v, err := k.TOML(texts[k.Key])
		if err != nil {
			return c, dialog.WrongFieldError{Key: k.Key, Err: err}
		}
		c.New = append(c.New, strict.Pair{Key: k.Key, Value: v})
	}
	return c, nil
}

// freeID is an id that no entry of the table has.
func (m *model) freeID(table, id string) string {
	const longest = 36 // letters, with room for a number
	id = strings.Trim(id[:min(len(id), longest)], "-")
	taken := func(id string) bool {
		return m.opt.OwnShelf.Entry(m.session.Shelf(), pour.EntryName{Table: table, ID: id}) != nil
	}
	out := id
	for _, n := range strings.Fields("2 3 4 5 6 7 8 9") {
		if !taken(out) {
			break
		}
		out = id + "-" + n
	}
	return out
}
