package tui

import (
	"errors"
	"fmt"
	"slices"
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
		if back {
			if err := takeBack(); err != nil {
				return pour.Shelf{}, err
			}
			return o.Shelf()
		}
		var err error
		if takeBack, err = o.Change(c); err != nil {
			return pour.Shelf{}, err
		}
		next, err := o.Shelf()
		if err == nil {
			err = m.stillCarries(next)
		}
		if err != nil {
			err = errors.Join(err, takeBack())
		}
		return next, err
	})
	m.lookAtShelf()
	return ofTyped(err, c)
}

// ofTyped is what is wrong with the very value that was typed, without the file and the key, which the maker has before her: one line holds it then.
func ofTyped(err error, c pour.ShelfChange) error {
	var e *strict.Error
	if !errors.As(err, &e) || c.Key == "" {
		return err
	}
	for _, f := range e.Faults {
		if f.Path == fmt.Sprintf("%s %q, %s", c.Of.Table, c.Of.ID, c.Key) {
			return fmt.Errorf("%s %s; %s", f.Value, f.Problem, f.Mend)
		}
	}
	return err
}

// stillCarries says what the plan on the bench would miss on another shelf, or would have too much of.
func (m *model) stillCarries(next pour.Shelf) error {
	plan := m.session.Plan()
	faults := plan.Check(next)
	if len(faults) <= len(plan.Check(m.session.Shelf())) {
		return nil
	}
	return fmt.Errorf("the plan on the bench would not hold with it: %w", faults[0])
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
		f.Fields = append(f.Fields, dialog.Field{Key: k.Key, Label: strings.TrimSpace(label + " " + unit), Hint: k.Means, Need: !k.Spare, Words: k.Words})
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
		if n.Into != nil {
			return nil, nil
		}
		m.settle()
		m.seek(func(f *panel.Facts) (panel.To, bool) { return panel.EntryRow(f, c.Of) })
		return nil, nil
	}
	m.dialogs.Open(dialog.NewForm(f))
}

// newEntry is what a filled form comes to. Its id is made of its name; one that is taken gets a number.
func (m *model) newEntry(n panel.NewEntry, texts map[string]string) (pour.ShelfChange, error) {
	name := texts["name"]
	if n.Into != nil {
		return oneMore(n, texts)
	}
	id := plain.Slug(name, "")
	if id == "" {
		return pour.ShelfChange{}, dialog.WrongFieldError{Key: "name", Err: errors.New("give it a name with letters in it")}
	}
	c := pour.ShelfChange{Of: pour.EntryName{Table: n.Table, ID: m.freeID(n.Table, id)}, Name: "new entry " + name}
	var err error
	c.New, err = pairs(n.Keys, texts)
	return c, err
}

// pairs is what was typed at keys as a shelf file has it.
func pairs(all []pour.ShelfKey, texts map[string]string) ([]strict.Pair, error) {
	var out []strict.Pair
	for _, k := range all {
		v, err := k.TOML(texts[k.Key])
		if err != nil {
			return nil, dialog.WrongFieldError{Key: k.Key, Err: err}
		}
		if v == "" && k.Spare {
			continue
		}
		out = append(out, strict.Pair{Key: k.Last(), Value: v})
	}
	return out, nil
}

// oneMore is one more row of a list of an entry.
func oneMore(n panel.NewEntry, texts map[string]string) (pour.ShelfChange, error) {
	list, row := *n.Into, len(n.Into.Parts)/max(len(n.Into.Row), 1)
	c := pour.ShelfChange{Of: n.Of, Key: fmt.Sprintf("%s[%d]", list.Key, row), In: list.Key, Added: true, Name: "new " + n.Called}
	var err error
	if c.New, err = pairs(n.Keys, texts); err != nil {
		return c, err
	}
	list.Parts = slices.Clone(list.Parts)
	for _, k := range n.Keys {
		k.Value = texts[k.Key]
		list.Parts = append(list.Parts, k)
	}
	c.Value, c.Whole = list.Whole(), list.Whole()
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
